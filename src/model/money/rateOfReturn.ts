/** The rate at which flows are worth nothing today: none, one or several of them. */
import { netPresentValue } from './presentValue.ts';

export interface RateOfReturn {
  /** The rate when there is exactly one between −99 % and 1000 %, else null. */
  readonly rate: number | null;
  /** All rates found, ascending. */
  readonly rates: readonly number[];
  /** Why there is no single rate, in words a keeper can follow; empty when there is one. */
  readonly why: string;
}

const LOWEST = Math.log(0.01);
const HIGHEST = Math.log(11);
const STEPS = 600;
/** The grid, even in ln(1 + rate), as rates. */
const RATES = Float64Array.from(
  { length: STEPS + 1 },
  (_, step) => Math.exp(LOWEST + ((HIGHEST - LOWEST) * step) / STEPS) - 1,
);

/**
 * Brackets every change of sign of the present value on a grid of rates, then narrows each bracket. Roots that only
 * touch zero without crossing it are not counted. Stretches of the grid where the sign cannot change are passed over.
 */
export function rateOfReturn(flows: readonly number[]): RateOfReturn {
  const none = (why: string): RateOfReturn => ({ rate: null, rates: [], why });
  if (flows.some((flow) => !Number.isFinite(flow))) return none('a yearly amount is missing');
  if (!flows.some((flow) => flow < 0)) return none('no year costs money, so no rate balances it');
  if (!flows.some((flow) => flow > 0)) return none('no year brings money in, so nothing is ever paid back');
  const rates = crossings(flows).map((step) => narrow(flows, RATES[step - 1], RATES[step]));
  if (rates.length === 0)
    return none(
      netPresentValue(0, flows) < 0
        ? 'at any rate of interest more goes out than comes back'
        : 'at any rate of interest more comes back than goes out',
    );
  if (rates.length === 1) return { rate: rates[0], rates, why: '' };
  const list = rates.map((rate) => `${(rate * 100).toFixed(1)} %`).join(', ');
  return {
    rate: null,
    rates,
    why: `several rates fit because the flows change sign more than once: ${list}`,
  };
}

/** How much more the one side must be, so that rounding cannot turn the sign. */
const CLEARLY = 1 + 1e-9;

/** Worth of all that comes in, of all that goes out, and growth over the whole time, at each step looked at. */
const comesIn = new Float64Array(STEPS + 1);
const goesOut = new Float64Array(STEPS + 1);
const growth = new Float64Array(STEPS + 1);
/** Stretches still to be looked at, as pairs of steps; halving a stretch leaves two, so that few ever wait. */
const waiting = new Int32Array(64);

/**
 * Steps of the grid whose present value has another sign than the step before, ascending. What comes in and what goes
 * out are each worth less the higher the rate, seen from today, and more, seen from the end: so where the one is
 * more at its least than the other at its most, the sign holds over the whole stretch. Otherwise its halves are asked.
 */
function crossings(flows: readonly number[]): number[] {
  const found: number[] = [];
  look(flows, 0);
  look(flows, STEPS);
  let depth = 0;
  waiting[depth++] = STEPS;
  waiting[depth++] = 0;
  while (depth > 0) {
    const low = waiting[--depth];
    const high = waiting[--depth];
    if (holds(comesIn, goesOut, low, high) || holds(goesOut, comesIn, low, high)) continue;
    if (high === low + 1) {
      const y0 = netPresentValue(RATES[low], flows);
      const y1 = netPresentValue(RATES[high], flows);
      if (y0 !== 0 && (y1 === 0 || y0 > 0 !== y1 > 0)) found.push(high);
      continue;
    }
    const middle = (low + high) >> 1;
    look(flows, middle);
    waiting[depth++] = high;
    waiting[depth++] = middle;
    waiting[depth++] = middle;
    waiting[depth++] = low;
  }
  return found;
}

function look(flows: readonly number[], step: number): void {
  const discount = 1 / (1 + RATES[step]);
  let plus = 0;
  let minus = 0;
  for (let t = flows.length - 1; t >= 0; t--) {
    const flow = flows[t];
    plus = plus * discount + Math.max(0, flow);
    minus = minus * discount - Math.min(0, flow);
  }
  comesIn[step] = plus;
  goesOut[step] = minus;
  growth[step] = (1 + RATES[step]) ** (flows.length - 1);
}

/** Whether `more` is above `less` at every rate from step `low` to step `high`, seen from today or from the end. */
const holds = (more: Float64Array, less: Float64Array, low: number, high: number): boolean =>
  more[high] > less[low] * CLEARLY || more[low] * growth[low] > less[high] * growth[high] * CLEARLY;

/** Newton's step, kept between rates whose present values differ in sign; what is left of a short step is its square. */
const SHORT = 1e-11;

function narrow(flows: readonly number[], low: number, high: number): number {
  let a = low;
  let b = high;
  const atLow = netPresentValue(low, flows);
  let rate = (a + b) / 2;
  for (let k = 0; k < 100; k++) {
    const discount = 1 / (1 + rate);
    let value = 0;
    let slope = 0;
    for (let t = flows.length - 1; t >= 0; t--) {
      slope = value + slope * discount;
      value = flows[t] + value * discount;
    }
    if (value === 0) return rate;
    if (value > 0 === atLow > 0) a = rate;
    else b = rate;
    const next = rate + value / (slope * discount * discount);
    const inside = next > a && next < b;
    const to = inside ? next : (a + b) / 2;
    const short = Math.abs(to - rate) <= SHORT * (1 + rate);
    rate = to;
    if (inside ? short : rate === a || rate === b) break;
  }
  return rate;
}
