/** Hours by task. Rates are our own split of recalled totals, so hand-worked figures are regression checks. */
import { describe, expect, it } from 'vitest';
import { WEEKS } from '../../../src/model/series.ts';
import { central, type Options, type Row, runMoney } from '../moneyRig.ts';

const one = (row: Row, options: Options = {}, frozen?: (week: number) => number) =>
  runMoney(['labour'], [{ ...EVEN, ...row }], options, frozen)[0];

/** A keeper of middling pace, a herd as large as those that were timed, and fields as handy as a shed. */
const EVEN: Row = { labourSkillFactor: 1, labourSizeExponent: 0, outdoorHoursFactor: 1 };

const HERD: Row = { headCount: 35, winterDays: 180 };
/** 35 cows at about 14.5 kg of hay a day, put out. */
const FED: Row = { ...HERD, feedTonnes: 91, frozenDays: 60, spreadDay: 190 };
const DAILY = [
  'feedingHours',
  'checkingHours',
  'beddingHours',
  'fenceHours',
  'waterHours',
  'scrapingHours',
  'barrierHours',
];

const BEDDED: Row = {
  ...FED, bedShare: 0.75, beddingTonnes: 46, startMaterialKg: 4000, packTonnes: 180, packM3: 260, packDepthM: 1.1,
  startDepthM: 0.3, compostTonnes: 100, compostDays: 120, compostTurns: 4, shedLengthM: 30, stanceDepthM: 3,
  material1Share: 1, material1HoursPerTonne: 0,
}; // biome-ignore format: one short list
const OUT: Row = { ...FED, pastureShare: 1 };
const SLATTED: Row = { ...FED, slatsShare: 1, slurryM3: 200 };

describe('tasks, worked by hand', () => {
  it('feeding: tonnes times hours a tonne', () =>
    expect(one({ ...FED, feedingHoursPerTonne: 0.6 }).values.feedingHours).toBeCloseTo(54.6, 9));
  it('checking: 180 d × (35 × 0.4 + 20) min', () =>
    expect(
      one({ ...HERD, checkMinutesPerHeadDay: 0.4, siteMinutesPerDay: 20 }).values.checkingHours,
    ).toBeCloseTo(102, 9));
  it('bedding: 46 t at 4 t/h and 10 min a day', () =>
    expect(
      one({ ...BEDDED, bedSpreadTonnesPerHour: 4, bedSpreadMinutesPerDay: 10 }).values.beddingHours,
    ).toBeCloseTo(41.5, 9));
  it('fence by how it is moved', () => {
    const at = (moved: string) => one(OUT, { system: 'outwintered', moved }).values.fenceHours;
    // 180/7 moves of an hour and 5 min a day.
    expect(at('weekly')).toBeCloseTo((180 / 7) * 1 + 15, 3);
    expect(at('fixed')).toBeCloseTo(15, 9);
    expect(at('daily')).toBeCloseTo(180 * (20 / 60) + 15, 9);
  });
  it('ice only for the time outdoors', () => {
    const hours = (pastureShare: number) =>
      one({ ...FED, pastureShare, waterMinutesPerDay: 0, iceMinutesPerFrozenDay: 30 }).values.waterHours;
    expect(hours(1)).toBeCloseTo(30, 9);
    expect(hours(0.5)).toBeCloseTo(15, 9);
    expect(hours(0)).toBe(0);
  });
  it('the barrier follows the bed: 0.8 m in steps of 0.2 m of 1.5 h', () =>
    expect(
      one({ ...BEDDED, barrierRaiseStepM: 0.2, barrierHoursPerStep: 1.5 }).values.barrierHours,
    ).toBeCloseTo(6, 9));
  it('pushing out, turning and spreading', () => {
    const { values } = one({
      ...BEDDED,
      packLoadTonnesPerHour: 30,
      turnM3PerHour: 30,
      solidSpreadTonnesPerHour: 20,
      contractorShare: 0,
    });
    expect(values.pushOutHours).toBeCloseTo(6, 9);
    expect(values.turningHours).toBeCloseTo((260 * 4) / 30, 9);
    expect(values.spreadingHours).toBeCloseTo(5, 9);
  });
  it('a heap that is not turned takes no turning', () =>
    expect(one(BEDDED, { way: 'static' }).values.turningHours).toBe(0));
  it("own chips cost the keeper's hours", () =>
    expect(one({ ...BEDDED, material1HoursPerTonne: 0.5 }).values.chippingHours).toBeCloseTo(23, 9));
  it("the contractor's hours are not the keeper's", () => {
    const hired = one({ ...SLATTED, contractorShare: 1 }).values;
    const own = one({ ...SLATTED, contractorShare: 0 }).values;
    expect(own.labourHours - hired.labourHours).toBeCloseTo(
      hired.contractorSlurryHours + hired.contractorAgitatingHours,
      9,
    );
    expect(own.contractorSlurryHours).toBe(0);
  });
});

describe('keeper, herd and place', () => {
  const daily = (row: Row) => {
    const { values } = one(row, { system: row.pastureShare ? 'outwintered' : 'slatted' });
    return DAILY.reduce((sum, task) => sum + values[task], 0);
  };
  it("all daily work goes by the keeper's pace", () => {
    expect(daily({ ...OUT, labourSkillFactor: 0.37 }) / daily(OUT)).toBeCloseTo(0.37, 9);
    expect(daily({ ...SLATTED, labourSkillFactor: 1.6 }) / daily(SLATTED)).toBeCloseTo(1.6, 9);
  });
  it('outdoors it is slower, under a roof not', () => {
    expect(daily({ ...OUT, outdoorHoursFactor: 1.4 }) / daily(OUT)).toBeCloseTo(1.4, 9);
    expect(daily({ ...SLATTED, outdoorHoursFactor: 1.4 })).toBe(daily(SLATTED));
  });
  it('a larger herd takes less time a head (McBride and Mathews 2011: 31 h a cow at 20 to 49 cows, 6 at 500)', () => {
    const perHead = (head: number, power: number) =>
      daily({ ...SLATTED, headCount: head, feedTonnes: 2.6 * head, labourSizeExponent: power }) / head;
    for (const power of [0, 0.2, 0.5]) expect(perHead(35, power)).toBeGreaterThan(perHead(700, power) * 1.2);
    // Of the published fall, 5.2 times, the high end gives all and the middle part.
    expect(perHead(35, 0.5) / perHead(700, 0.5)).toBeGreaterThan(4);
    expect(perHead(35, 0.2) / perHead(700, 0.2)).toBeLessThan(31 / 6);
  });
});

describe('daily work a head lies in the span that is recalled for each way', () => {
  // General handbooks, from memory: 2.5 (1.5 to 6) min outwintered, 1.3 (0.8 to 2.5) slatted, 2.2 (1.5 to 4) deep bed,
  // without the 20 (10 to 40) min a day that any site takes.
  it.each([
    ['outwintered', OUT, { system: 'outwintered', feeder: 'ring' }, 1.5, 6],
    ['slatted', SLATTED, { system: 'slatted' }, 0.8, 2.5],
    ['deep-bedded', BEDDED, {}, 1.5, 4],
  ] as const)('%s', (_, row, options, low, high) => {
    const { values } = runMoney(['labour'], [row], options)[0]; // the rows of the tables, size of herd and all
    const site = (180 * central('siteMinutesPerDay')!) / 60;
    const minutes = ((DAILY.reduce((sum, task) => sum + values[task], 0) - site) * 60) / (35 * 180);
    expect(minutes).toBeGreaterThan(low);
    expect(minutes).toBeLessThan(high);
  });
});

describe('weeks', () => {
  it.each([
    ['outwintered', OUT, { system: 'outwintered', feeder: 'ring' }],
    ['slatted', { ...SLATTED, contractorShare: 0.3 }, { system: 'slatted' }],
    ['deep-bedded', { ...BEDDED, contractorShare: 0, material1HoursPerTonne: 0.4 }, {}],
  ] as const)('add up to the total: %s', (_, row, options) => {
    const { values, week } = one(row, options, (k) => (k > 5 && k < 20 ? 4 : 0));
    expect(week.length).toBe(WEEKS);
    expect(week.reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(values.labourHours, 8);
    expect(Math.min(...week)).toBeGreaterThanOrEqual(0);
  });
  it('ice falls in the frozen weeks', () => {
    const { week } = one(OUT, { system: 'outwintered' }, (k) => (k === 10 ? 7 : 0));
    expect(week[10]).toBeGreaterThan(week[9] * 1.5);
    expect(week[9]).toBeCloseTo(week[11], 9);
  });
  it('a winter of 180 days ends in the 26th week', () => {
    const { week } = one(HERD);
    expect(week[25]).toBeCloseTo((week[0] * 5) / 7, 9);
    expect(week[26]).toBe(0);
  });
});

describe('nothing in, nothing out', () => {
  it('no animals', () => {
    const { values, week } = one({
      winterDays: 180,
      pastureShare: 1,
      frozenDays: 60,
      bedShare: 0.75,
      shedLengthM: 24,
      stanceDepthM: 3,
    });
    expect(values.labourHours).toBe(0);
    expect(values.labourHoursPerHeadDay).toBe(0);
    expect(week.every((hours) => hours === 0)).toBe(true);
  });
  it('no days', () => {
    const { values, week } = one({ headCount: 35, winterDays: 0 });
    expect(values.labourHours).toBe(0);
    expect(week.every((hours) => hours === 0)).toBe(true);
  });
});
