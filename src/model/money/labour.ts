/** Hours: each task is a rate times its quantity plus fixed minutes; every rate is a row the keeper can replace. */
import { defineStage, type Quantity, WEEKS, winterDaysInWeek } from '../stage.ts';

const hours = (
  label: string,
  formula: string,
  from: readonly string[],
  route?: Quantity['route'],
): Quantity => ({
  label,
  unit: 'h',
  formula,
  from,
  source: ['own'],
  ...(route ? { route } : {}),
});

const MINUTES = 60;

const weekOf = (day: number) => Math.min(WEEKS - 1, Math.max(0, Math.floor(day / 7)));

export const labourStage = defineStage({
  name: 'labour',
  about: 'Hours of the keeper, the tractor and the contractor by task, over the winter and by week',
  // biome-ignore format: one list of names
  reads: [
    'winterDays', 'headCount', 'bedShare', 'slatsShare', 'pastureShare', 'frozenDays', 'feedTonnes',
    'beddingTonnes', 'startMaterialKg', 'packTonnes', 'packM3', 'packDepthM', 'startDepthM', 'compostTonnes',
    'compostDays', 'compostTurns', 'slurryM3', 'spreadDay', 'shedLengthM', 'stanceDepthM', 'hardStandingM2',
    'openYardM2', 'feedingHoursPerTonne', 'checkMinutesPerHeadDay', 'siteMinutesPerDay',
    'bedSpreadTonnesPerHour', 'bedSpreadMinutesPerDay', 'fenceMovesPerDay', 'fenceMinutesPerMove',
    'fenceCheckMinutesPerDay', 'waterMinutesPerDay', 'iceMinutesPerFrozenDay', 'scrapeMinutesPerM2Day',
    'scrapeMinutesPerDay', 'barrierRaiseStepM', 'barrierHoursPerStep', 'packLoadTonnesPerHour', 'turnM3PerHour',
    'turningUsedShare', 'agitateHoursPerM3', 'slurrySpreadM3PerHour', 'solidSpreadTonnesPerHour',
    'contractorShare', 'tractorFeedingShare', 'tractorBeddingShare',
  ],
  families: { material: ['Share', 'HoursPerTonne'] },
  readsTracks: ['weekFrozenDays'],
  makes: {
    feedingHours: hours('feeding', 'feed put out times the hours a tonne takes with this feeder', [
      'feedTonnes',
      'feedingHoursPerTonne',
    ]),
    checkingHours: hours(
      'checking the herd',
      'minutes a head a day and fixed minutes a day on the site, over the winter',
      ['headCount', 'winterDays', 'checkMinutesPerHeadDay', 'siteMinutesPerDay'],
    ),
    beddingHours: hours(
      'bedding up',
      'bedding over the rate it is spread at, and fixed minutes a day',
      ['beddingTonnes', 'bedSpreadTonnesPerHour', 'bedSpreadMinutesPerDay', 'winterDays', 'bedShare'],
      'pack',
    ),
    chippingHours: hours(
      'chipping, sawing, hauling and stacking bedding',
      'tonnes of each material times own hours a tonne',
      ['beddingTonnes', 'material*Share', 'material*HoursPerTonne'],
      'pack',
    ),
    fenceHours: hours(
      'moving and walking fence',
      'moves in the winter times the minutes of a move, and a look at the fence each day',
      ['pastureShare', 'winterDays', 'fenceMovesPerDay', 'fenceMinutesPerMove', 'fenceCheckMinutesPerDay'],
      'paddock',
    ),
    waterHours: hours(
      'water',
      'minutes a day at bowls and troughs, and ice on frozen days for the time spent outdoors',
      [
        'winterDays',
        'headCount',
        'waterMinutesPerDay',
        'frozenDays',
        'iceMinutesPerFrozenDay',
        'pastureShare',
      ],
    ),
    scrapingHours: hours(
      'scraping stance and yard',
      'scraped area times minutes a square metre, and fixed minutes a day',
      [
        'shedLengthM',
        'stanceDepthM',
        'hardStandingM2',
        'openYardM2',
        'scrapeMinutesPerM2Day',
        'scrapeMinutesPerDay',
        'winterDays',
        'bedShare',
        'slatsShare',
      ],
    ),
    barrierHours: hours(
      'raising barrier and trough',
      'rise of the bed over the step it is raised by, times the hours of a step',
      ['packDepthM', 'startDepthM', 'barrierRaiseStepM', 'barrierHoursPerStep', 'bedShare'],
      'pack',
    ),
    pushOutHours: hours(
      'pushing out the bed',
      'weight of the pack over the loading rate',
      ['packTonnes', 'packLoadTonnesPerHour'],
      'pack',
    ),
    turningHours: hours(
      'turning the compost',
      'volume of the pack times turns over the turning rate, when it is turned',
      ['packM3', 'compostTurns', 'turnM3PerHour', 'turningUsedShare'],
      'pack',
    ),
    agitatingHours: hours(
      'stirring slurry (gas: animals and people out first)',
      'slurry times the hours a cubic metre takes',
      ['slurryM3', 'agitateHoursPerM3'],
      'slurry',
    ),
    spreadingHours: hours('spreading', 'slurry and compost over their spreading rates', [
      'slurryM3',
      'slurrySpreadM3PerHour',
      'compostTonnes',
      'solidSpreadTonnesPerHour',
    ]),
    contractorSlurryHours: hours(
      'contractor spreading slurry',
      "the contractor's share of the hours",
      ['slurryM3', 'slurrySpreadM3PerHour', 'contractorShare'],
      'slurry',
    ),
    contractorAgitatingHours: hours(
      'contractor stirring slurry',
      "the contractor's share of the hours",
      ['agitatingHours', 'contractorShare'],
      'slurry',
    ),
    contractorSolidHours: hours(
      'contractor spreading compost or dung',
      "the contractor's share of the hours",
      ['compostTonnes', 'solidSpreadTonnesPerHour', 'contractorShare'],
      'pack',
    ),
    tractorHours: hours(
      'own tractor',
      "the tractor's share of feeding and bedding, and all scraping, pushing out, turning and own stirring and spreading",
      [
        'feedingHours',
        'tractorFeedingShare',
        'beddingHours',
        'tractorBeddingShare',
        'scrapingHours',
        'pushOutHours',
        'turningHours',
        'agitatingHours',
        'spreadingHours',
        'contractorShare',
      ],
    ),
    labourHours: hours("keeper's hours", 'all tasks less what a contractor does', [
      'feedingHours',
      'checkingHours',
      'beddingHours',
      'chippingHours',
      'fenceHours',
      'waterHours',
      'scrapingHours',
      'barrierHours',
      'pushOutHours',
      'turningHours',
      'agitatingHours',
      'spreadingHours',
      'contractorShare',
    ]),
    labourHoursPerHeadDay: {
      ...hours(
        "keeper's hours a head and winter day",
        "keeper's hours over head and days; 0 for no animals",
        ['labourHours', 'headCount', 'winterDays'],
      ),
      unit: 'h/head/d',
    },
  },
  tracks: {
    weekLabourHours: {
      label: "keeper's hours in the week",
      unit: 'h',
      formula:
        'daily tasks evenly over the winter, ice by frozen days, own bedding and the first layer in the first week, pushing out in the last, turning in the weeks after, spreading in its week',
      from: ['labourHours', 'frozenDays', 'spreadDay', 'compostDays', 'startMaterialKg', 'winterDays'],
    },
  },
  run({ count, read: r, family, readTrack, write: w, track, tracked }) {
    const week = track.weekLabourHours;
    for (let i = 0; i < count; i++) {
      const days = r.winterDays[i];
      const head = r.headCount[i];
      // A site without animals takes no work.
      const on = head > 0 ? days / MINUTES : 0;
      const bed = r.bedShare[i] > 0 ? on : 0;
      const out = r.pastureShare[i];
      const scraped =
        (r.bedShare[i] > 0 ? r.shedLengthM[i] * r.stanceDepthM[i] : 0) +
        (r.slatsShare[i] > 0 ? r.openYardM2[i] : 0) +
        r.hardStandingM2[i];

      const feeding = r.feedTonnes[i] * r.feedingHoursPerTonne[i];
      const checking = on * (head * r.checkMinutesPerHeadDay[i] + r.siteMinutesPerDay[i]);
      const bedding = r.beddingTonnes[i] / r.bedSpreadTonnesPerHour[i] + bed * r.bedSpreadMinutesPerDay[i];
      let chipping = 0;
      for (let k = 0; k < family.material.length; k++) {
        const part = r.beddingTonnes[i] * family.material[k].Share[i];
        if (part !== 0) chipping += part * family.material[k].HoursPerTonne[i];
      }
      const fence =
        out > 0 ? on * (r.fenceMovesPerDay[i] * r.fenceMinutesPerMove[i] + r.fenceCheckMinutesPerDay[i]) : 0;
      const ice = head > 0 ? (out * r.frozenDays[i] * r.iceMinutesPerFrozenDay[i]) / MINUTES : 0;
      const water = on * r.waterMinutesPerDay[i] + ice;
      const scraping =
        scraped > 0 ? on * (scraped * r.scrapeMinutesPerM2Day[i] + r.scrapeMinutesPerDay[i]) : 0;
      const rise = bed > 0 ? Math.max(0, r.packDepthM[i] - r.startDepthM[i]) : 0;
      const barrier = (rise / r.barrierRaiseStepM[i]) * r.barrierHoursPerStep[i];
      const pushOut = r.packTonnes[i] / r.packLoadTonnesPerHour[i];
      const turning = (r.packM3[i] * r.compostTurns[i] * r.turningUsedShare[i]) / r.turnM3PerHour[i];
      const agitating = r.slurryM3[i] * r.agitateHoursPerM3[i];
      const slurry = r.slurryM3[i] / r.slurrySpreadM3PerHour[i];
      const solid = r.compostTonnes[i] / r.solidSpreadTonnesPerHour[i];
      const byContractor = r.contractorShare[i];
      const own = 1 - byContractor;

      w.feedingHours[i] = feeding;
      w.checkingHours[i] = checking;
      w.beddingHours[i] = bedding;
      w.chippingHours[i] = chipping;
      w.fenceHours[i] = fence;
      w.waterHours[i] = water;
      w.scrapingHours[i] = scraping;
      w.barrierHours[i] = barrier;
      w.pushOutHours[i] = pushOut;
      w.turningHours[i] = turning;
      w.agitatingHours[i] = agitating;
      w.spreadingHours[i] = slurry + solid;
      w.contractorSlurryHours[i] = slurry * byContractor;
      w.contractorAgitatingHours[i] = agitating * byContractor;
      w.contractorSolidHours[i] = solid * byContractor;
      w.tractorHours[i] =
        feeding * r.tractorFeedingShare[i] +
        bedding * r.tractorBeddingShare[i] +
        scraping +
        pushOut +
        turning +
        (agitating + slurry + solid) * own;
      const daily = feeding + checking + fence + water - ice + scraping + barrier;
      const total = daily + ice + bedding + chipping + pushOut + turning + (agitating + slurry + solid) * own;
      w.labourHours[i] = total;
      w.labourHoursPerHeadDay[i] = head > 0 && days > 0 ? total / (head * days) : 0;

      if (!tracked) continue;
      // The weeks add up to the total: each task is shared out by weights that sum to 1.
      const at = i * WEEKS;
      let frozen = 0;
      for (let k = 0; k < WEEKS; k++)
        if (winterDaysInWeek(k, days) > 0) frozen += Math.max(0, readTrack.weekFrozenDays[at + k]) || 0;
      const startShare =
        r.beddingTonnes[i] > 0 ? Math.min(1, r.startMaterialKg[i] / 1000 / r.beddingTonnes[i]) : 0;
      for (let k = 0; k < WEEKS; k++) {
        const part = days > 0 ? winterDaysInWeek(k, days) / days : k === 0 ? 1 : 0;
        const icy =
          frozen > 0 && part > 0 ? (Math.max(0, readTrack.weekFrozenDays[at + k]) || 0) / frozen : part;
        week[at + k] = (daily + bedding * (1 - startShare)) * part + ice * icy;
      }
      week[at] += chipping + bedding * startShare;
      const last = Math.min(WEEKS - 1, Math.max(0, Math.ceil(days / 7) - 1));
      week[at + last] += pushOut;
      const turns = Math.max(1, Math.ceil(r.compostTurns[i]));
      for (let k = 1; k <= turns; k++) week[at + Math.min(WEEKS - 1, last + k)] += turning / turns;
      week[at + weekOf(r.spreadDay[i])] += (agitating + slurry) * own;
      week[at + weekOf(days + r.compostDays[i])] += solid * own;
    }
  },
});
