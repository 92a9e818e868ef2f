/**
 * Ammonium and nitrate of the paddock at three places, kg N: urine round the feeding places, urine on the rest, and
 * what dung frees. One row at a time passes through; nothing is kept between rows.
 */

export const SPOT = 0;
export const REST = 1;
export const DUNG = 2;
export const PLACES = 3;

export const ammonium = new Float64Array(PLACES);
export const nitrate = new Float64Array(PLACES);
/** What herbage has taken, kg N. */
export const taken = new Float64Array(PLACES);
/** What herbage may still take in this growth year, kg N. */
const room = new Float64Array(PLACES);
/** Living sward that feeds at each place, ha. */
const swardHa = new Float64Array(PLACES);

/** Empties everything, for sward of so many hectares at the places; dung lies where urine does. */
export function beginRow(spotHa: number, restHa: number): void {
  ammonium.fill(0);
  nitrate.fill(0);
  taken.fill(0);
  swardHa[SPOT] = spotHa;
  swardHa[REST] = restHa;
  swardHa[DUNG] = spotHa + restHa;
}

/** A growth year begins, in which a hectare of sward takes at most `mostKgPerHa`. */
export function beginGrowthYear(mostKgPerHa: number): void {
  for (let p = 0; p < PLACES; p++) room[p] = mostKgPerHa * swardHa[p];
}

/** Takes a share of the nitrate at the places from `from` up to `to`, and of their ammonium, with the drainage; kg. */
export function drain(from: number, to: number, ofNitrate: number, ofAmmonium: number): number {
  let lost = 0;
  for (let p = from; p < to; p++) {
    const deep = ofNitrate * nitrate[p];
    const beside = ofAmmonium * ammonium[p];
    nitrate[p] -= deep;
    ammonium[p] -= beside;
    lost += deep + beside;
  }
  return lost;
}

/** Turns a share of the ammonium at the places from `from` up to `to` into nitrate; gives the part of it that is new. */
export function nitrify(from: number, to: number, share: number): number {
  let all = 0;
  let young = 0;
  for (let p = from; p < to; p++) {
    const turned = share * ammonium[p];
    ammonium[p] -= turned;
    nitrate[p] += turned;
    young += turned;
    all += nitrate[p];
  }
  return all > 0 ? young / all : 0;
}

/** Herbage takes up to `kgPerHa` of both alike, at most its room and what is there. */
export function takeUp(kgPerHa: number): void {
  for (let p = 0; p < PLACES; p++) {
    const mineral = ammonium[p] + nitrate[p];
    if (mineral <= 0) continue;
    const take = Math.min(kgPerHa * swardHa[p], room[p], mineral);
    if (!(take > 0)) continue;
    room[p] -= take;
    taken[p] += take;
    const left = 1 - take / mineral;
    ammonium[p] *= left;
    nitrate[p] *= left;
  }
}

/** Ammonium and nitrate still there, kg. */
export function mineralKg(): number {
  let sum = 0;
  for (let p = 0; p < PLACES; p++) sum += ammonium[p] + nitrate[p];
  return sum;
}
