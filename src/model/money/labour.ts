/**
 * Hours: each task is a rate times its quantity plus fixed minutes; every rate is a row the keeper can replace. Daily
 * work is by the keeper's own pace (one number a farm, whatever the way), work a head also by the size of the herd, and
 * work outdoors by how much slower it is there. Machine jobs (pushing out, turning, stirring, spreading) are not.
 */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';

const MINUTES = 60;

const hours = (label: string, formula: string, when?: string) =>
  quantity(label, 'h', formula, { source: ['own'], ...(when === undefined ? {} : { when }) });

/** Hours that a minute a day comes to over the winter; a site without animals takes no work. */
const winterHours = (head: number, days: number) => (head > 0 ? days / MINUTES : 0);

/** How long the same work takes this keeper, with this many head, outdoors: one number a farm, one a scenario. */
const pace = {
  headWorkFactor: quantity(
    'time a head, by keeper and size of herd',
    '×',
    "keeper's own pace × (head ÷ head the rates were timed at)^−power; a larger herd takes less time a head",
    { source: ['bostad2013', 'mcbrideMathews2011'] },
  ).of(
    ['labourSkillFactor', 'headCount', 'labourReferenceHead', 'labourSizeExponent'],
    (i, skill, head, at, power) => (head[i] > 0 ? skill[i] * (head[i] / at[i]) ** -power[i] : 0),
  ),
  outdoorWorkFactor: quantity(
    'time outdoors against under a roof',
    '×',
    '1 + share of the time outdoors × (factor outdoors − 1)',
    { source: ['ahdb2022'] },
  ).of(['pastureShare', 'outdoorHoursFactor'], (i, out, factor) => 1 + out[i] * (factor[i] - 1)),
};

const tasks = {
  feedingHours: hours(
    'feeding',
    'feed put out times the hours a tonne takes with this feeder, by keeper, herd and place',
  ).product(['feedTonnes', 'feedingHoursPerTonne', 'headWorkFactor', 'outdoorWorkFactor']),
  checkingHours: hours(
    'checking the herd',
    'minutes a head a day by keeper and herd, and fixed minutes a day on the site by keeper, over the winter, by place',
  ).of(
    [
      'headCount', 'winterDays', 'checkMinutesPerHeadDay', 'headWorkFactor', 'siteMinutesPerDay', 'labourSkillFactor',
      'outdoorWorkFactor',
    ], // biome-ignore format: one list
    (i, head, days, perHead, byHead, site, skill, out) =>
      winterHours(head[i], days[i]) * (head[i] * perHead[i] * byHead[i] + site[i] * skill[i]) * out[i],
  ),
  beddingHours: hours(
    'bedding up',
    "bedding over the rate it is spread at, and where animals are fixed minutes a day and minutes a m² for each time the bed is stirred; times the keeper's own pace",
    'packShare',
  ).of(
    [
      'headCount', 'winterDays', 'bedShare', 'beddingTonnes', 'bedSpreadTonnesPerHour', 'bedSpreadMinutesPerDay',
      'bedStirredPerWeek', 'bedStirMinutesPerM2', 'bedM2', 'labourSkillFactor',
    ], // biome-ignore format: one list
    (i, head, days, bed, tonnes, rate, minutes, stirred, perM2, area, skill) =>
      (tonnes[i] / rate[i] +
        (bed[i] > 0 ? winterHours(head[i], days[i]) : 0) *
          (minutes[i] + (stirred[i] / 7) * perM2[i] * area[i])) *
      skill[i],
  ),
  chippingHours: hours(
    'chipping, sawing, hauling and stacking bedding',
    'tonnes of each material, strewn or mixed into the heap, times own hours a tonne',
    'packShare',
  ).of(
    [
      'beddingTonnes', 'material*Share', 'material*HoursPerTonne', 'heapAddedKg', 'amendment*Tonnes', 'amendment*HoursPerTonne',
    ], // biome-ignore format: one list
    (i, tonnes, share, perTonne, added, mixed, perTonneMixed) => {
      let sum = 0;
      for (let k = 0; k < share.length; k++) {
        const part = tonnes[i] * share[k][i];
        if (part !== 0) sum += part * perTonne[k][i];
      }
      if (added[i] > 0)
        for (let k = 0; k < mixed.length; k++) if (mixed[k][i] > 0) sum += mixed[k][i] * perTonneMixed[k][i];
      return sum;
    },
  ),
  fenceHours: hours(
    'moving and walking fence',
    'moves in the winter times the minutes of a move, and a look at the fence each day, where animals are out, by keeper and place',
    'paddockShare',
  ).of(
    [
      'headCount', 'winterDays', 'pastureShare', 'fenceMovesPerDay', 'fenceMinutesPerMove',
      'fenceCheckMinutesPerDay', 'labourSkillFactor', 'outdoorHoursFactor',
    ], // biome-ignore format: one list
    (i, head, days, out, moves, move, look, skill, slower) =>
      out[i] > 0 ? winterHours(head[i], days[i]) * (moves[i] * move[i] + look[i]) * skill[i] * slower[i] : 0,
  ),
  iceHours: hours(
    'breaking ice outdoors',
    'minutes a frozen day, for the time animals spend outdoors, by keeper and place',
    'paddockShare',
  ).of(
    [
      'headCount', 'pastureShare', 'frozenDays', 'iceMinutesPerFrozenDay', 'labourSkillFactor', 'outdoorHoursFactor',
    ], // biome-ignore format: one list
    (i, head, out, frozen, minutes, skill, slower) =>
      head[i] > 0 ? (out[i] * frozen[i] * minutes[i] * skill[i] * slower[i]) / MINUTES : 0,
  ),
  waterHours: hours(
    'water',
    'minutes a day at bowls and troughs by keeper and place, and ice on frozen days for the time spent outdoors',
  ).of(
    ['headCount', 'winterDays', 'waterMinutesPerDay', 'labourSkillFactor', 'outdoorWorkFactor', 'iceHours'],
    (i, head, days, minutes, skill, out, ice) =>
      winterHours(head[i], days[i]) * minutes[i] * skill[i] * out[i] + ice[i],
  ),
  scrapedM2: quantity(
    'area scraped',
    'm²',
    'stance of the bedded shed, fouled yard of the slatted one, and hard standing',
    { source: ['own'] },
  ).of(
    ['shedLengthM', 'stanceDepthM', 'bedShare', 'openYardM2', 'slatsShare', 'hardStandingM2'],
    (i, length, stance, bed, yard, slats, standing) =>
      (bed[i] > 0 ? length[i] * stance[i] : 0) + (slats[i] > 0 ? yard[i] : 0) + standing[i],
  ),
  scrapingHours: hours(
    'scraping stance and yard',
    'scraped area times minutes a square metre, and fixed minutes a day, where animals are, by keeper',
  ).of(
    [
      'headCount',
      'winterDays',
      'scrapedM2',
      'scrapeMinutesPerM2Day',
      'scrapeMinutesPerDay',
      'labourSkillFactor',
    ],
    (i, head, days, area, perM2, fixed, skill) =>
      area[i] > 0 ? winterHours(head[i], days[i]) * (area[i] * perM2[i] + fixed[i]) * skill[i] : 0,
  ),
  barrierHours: hours(
    'raising barrier and trough',
    'rise of the bed over the winter, where animals are, over the step it is raised by, times the hours of a step',
    'packShare',
  ).of(
    [
      'headCount', 'winterDays', 'bedShare', 'packDepthM', 'startDepthM', 'barrierRaiseStepM',
      'barrierHoursPerStep',
    ], // biome-ignore format: one list
    (i, head, days, bed, end, start, step, perStep) => {
      const rises = bed[i] > 0 && winterHours(head[i], days[i]) > 0;
      return ((rises ? Math.max(0, end[i] - start[i]) : 0) / step[i]) * perStep[i];
    },
  ),
  pushOutHours: hours('pushing out the bed', 'weight of the pack over the loading rate', 'packShare').of(
    ['packTonnes', 'packLoadTonnesPerHour'],
    (i, tonnes, rate) => tonnes[i] / rate[i],
  ),
  turningHours: hours(
    'turning the compost',
    'volume of the pack times turns over the turning rate, when it is turned',
    'packShare',
  ).of(
    ['packM3', 'compostTurns', 'turningUsedShare', 'turnM3PerHour'],
    (i, pack, turns, used, rate) => (pack[i] * turns[i] * used[i]) / rate[i],
  ),
  agitatingHours: hours(
    'stirring slurry (gas: animals and people out first)',
    'slurry times the hours a cubic metre takes',
    'slurryShare',
  ).product(['slurryM3', 'agitateHoursPerM3']),
  slurrySpreadingHours: hours('spreading slurry', 'slurry over its spreading rate', 'slurryShare').of(
    ['slurryM3', 'slurrySpreadM3PerHour'],
    (i, slurry, rate) => slurry[i] / rate[i],
  ),
  solidSpreadingHours: hours(
    'spreading compost or dung',
    'compost or dung over its spreading rate',
    'packShare',
  ).of(['compostTonnes', 'solidSpreadTonnesPerHour'], (i, tonnes, rate) => tonnes[i] / rate[i]),
  spreadingHours: hours('spreading', 'slurry and compost over their spreading rates').sum([
    'slurrySpreadingHours',
    'solidSpreadingHours',
  ]),
};

const BY_CONTRACTOR = "the contractor's share of the hours";

const totals = {
  contractorSlurryHours: hours('contractor spreading slurry', BY_CONTRACTOR, 'slurryShare').product([
    'slurrySpreadingHours',
    'contractorShare',
  ]),
  contractorAgitatingHours: hours('contractor stirring slurry', BY_CONTRACTOR, 'slurryShare').product([
    'agitatingHours',
    'contractorShare',
  ]),
  contractorSolidHours: hours('contractor spreading compost or dung', BY_CONTRACTOR, 'packShare').product([
    'solidSpreadingHours',
    'contractorShare',
  ]),
  ownSpreadingHours: hours(
    'own stirring and spreading',
    'stirring and spreading less what a contractor does',
  ).of(
    ['agitatingHours', 'slurrySpreadingHours', 'solidSpreadingHours', 'contractorShare'],
    (i, stirring, slurry, solid, contractor) => (stirring[i] + slurry[i] + solid[i]) * (1 - contractor[i]),
  ),
  tractorHours: hours(
    'own tractor',
    "the tractor's share of feeding and bedding, and all scraping, pushing out, turning and own stirring and spreading",
  ).of(
    [
      'feedingHours', 'tractorFeedingShare', 'beddingHours', 'tractorBeddingShare', 'scrapingHours',
      'pushOutHours', 'turningHours', 'ownSpreadingHours',
    ], // biome-ignore format: one list
    (i, feeding, feedingShare, bedding, beddingShare, scraping, pushOut, turning, spreading) =>
      feeding[i] * feedingShare[i] +
      bedding[i] * beddingShare[i] +
      scraping[i] +
      pushOut[i] +
      turning[i] +
      spreading[i],
  ),
  labourHours: hours("keeper's hours", 'all tasks less what a contractor does').sum([
    'feedingHours', 'checkingHours', 'fenceHours', 'waterHours', 'scrapingHours', 'barrierHours', 'beddingHours',
    'chippingHours', 'pushOutHours', 'turningHours', 'ownSpreadingHours',
  ]), // biome-ignore format: one list
  labourHoursPerHeadDay: quantity(
    "keeper's hours a head and winter day",
    'h/head/d',
    "keeper's hours over head and days; 0 for no animals",
    { source: ['own'] },
  ).of(['labourHours', 'headCount', 'winterDays'], (i, all, head, days) =>
    head[i] > 0 && days[i] > 0 ? all[i] / (head[i] * days[i]) : 0,
  ),
};

const weekOf = (day: number) => Math.min(WEEKS - 1, Math.max(0, Math.floor(day / 7)));

const weeks = walk({
  name: 'labour by week',
  about: "The keeper's hours shared out over the weeks",
  // biome-ignore format: one list of names
  reads: [
    'winterDays', 'feedingHours', 'checkingHours', 'fenceHours', 'waterHours', 'iceHours', 'scrapingHours',
    'barrierHours', 'beddingHours', 'chippingHours', 'pushOutHours', 'turningHours', 'agitatingHours',
    'slurrySpreadingHours', 'solidSpreadingHours', 'contractorShare', 'weekFrozenDays', 'beddingTonnes',
    'startMaterialKg', 'compostTurns', 'heapDay', 'compostDays', 'spreadDay',
  ],
  makes: {
    weekLabourHours: week(
      "keeper's hours in the week",
      'h',
      'daily tasks evenly over the winter, ice by frozen days, own bedding and the first layer in the first week, pushing out in the last, turning in the weeks after, spreading in its week',
    ),
  },
  run({ count, read: r, write: { weekLabourHours: all } }) {
    // The weeks add up to the total: each task is shared out by weights that sum to 1.
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const days = r.winterDays[i];
      const own = 1 - r.contractorShare[i];
      const ice = r.iceHours[i];
      const bedding = r.beddingHours[i];
      const daily =
        r.feedingHours[i] +
        r.checkingHours[i] +
        r.fenceHours[i] +
        r.waterHours[i] -
        ice +
        r.scrapingHours[i] +
        r.barrierHours[i];
      let frozen = 0;
      for (let k = 0; k < WEEKS; k++)
        if (winterDaysInWeek(k, days) > 0) frozen += Math.max(0, r.weekFrozenDays[at + k]) || 0;
      const startShare =
        r.beddingTonnes[i] > 0 ? Math.min(1, r.startMaterialKg[i] / 1000 / r.beddingTonnes[i]) : 0;
      for (let k = 0; k < WEEKS; k++) {
        const part = days > 0 ? winterDaysInWeek(k, days) / days : k === 0 ? 1 : 0;
        const icy = frozen > 0 && part > 0 ? (Math.max(0, r.weekFrozenDays[at + k]) || 0) / frozen : part;
        all[at + k] = (daily + bedding * (1 - startShare)) * part + ice * icy;
      }
      all[at] += r.chippingHours[i] + bedding * startShare;
      const last = Math.min(WEEKS - 1, Math.max(0, Math.ceil(days / 7) - 1));
      all[at + last] += r.pushOutHours[i];
      const turns = Math.max(1, Math.ceil(r.compostTurns[i]));
      for (let k = 1; k <= turns; k++) all[at + Math.min(WEEKS - 1, last + k)] += r.turningHours[i] / turns;
      all[at + weekOf(r.spreadDay[i])] += (r.agitatingHours[i] + r.slurrySpreadingHours[i]) * own;
      all[at + weekOf(r.heapDay[i] + r.compostDays[i])] += r.solidSpreadingHours[i] * own;
    }
  },
});

/** Hours of the keeper, the tractor and the contractor by task, over the winter and by week. */
export const labour = [pace, tasks, totals, weeks] as const;
