/**
 * The front matter of a notebook: one definition gives the strict type, the defaults, the checks and
 * `shared/notebook.schema.json`. Units stand at the end of each key; fractions are 0..1 of what is named.
 */
import { z } from 'zod';
import { finance, money } from './moneySchema.ts';
import { shed } from './shedSchema.ts';
import { SYSTEM_NAMES } from './systems.ts';

// The page forbids code made from strings, so the validators must not compile themselves.
z.config({ jitless: true });

export const FORMAT_VERSION = 1;

const share = z.number().min(0).max(1);
/** Beyond any farm, its prices and its debts: what is larger was mistyped, and would turn every sum into nonsense. */
const MOST = 1e9;
const positive = z.number().positive().max(MOST);
const amount = z.number().min(0).max(MOST);
/** Dates as the winters, the weather and the prices of the tables have them: other years are slips. */
const isoDate = z.iso.date().refine((date) => date >= '1900' && date < '2101', {
  message: 'the date lies outside the years 1900 to 2100',
});
/** Longer than any name; and than any reason or note, which a page must still be able to show. */
const named = z.string().min(1).max(200);
const reason = z.string().min(1).max(2000);
const twelve = (each: z.ZodNumber) => z.array(each).length(12);

export const TEXTURES = [
  'sand',
  'loamySand',
  'sandyLoam',
  'loam',
  'siltLoam',
  'siltyClayLoam',
  'clay',
] as const;
export const ANIMAL_CLASSES = [
  'sucklerCow',
  'bull',
  'heifer',
  'steer',
  'weanling',
  'calf',
  'finisher',
] as const;
export const FEEDS = ['grassSilage', 'haylage', 'hay', 'barleyStraw', 'oatStraw', 'wheatStraw'] as const;
export const FEEDERS = ['ring', 'openRing', 'cone', 'cradle', 'trailer', 'ground', 'barrier'] as const;
export const MATERIALS = [
  'wheatStraw', 'barleyStraw', 'oatStraw', 'spoiledHay', 'softwoodChips', 'hardwoodChips', 'branchChips',
  'shavings', 'softwoodSawdust', 'hardwoodSawdust', 'bark', 'peat', 'leaves', 'reed', 'hempHurds',
] as const; // biome-ignore format: one short list
export const CROPS = ['hillPasture', 'grassCut1', 'grassCut2', 'springCereal', 'garden'] as const;
export const STORE_COVERS = ['none', 'crust', 'straw', 'balls', 'sheet', 'lid', 'underSlats'] as const;
export const HOUSE_WALLS = ['closed', 'openSided'] as const;
export const TECHNIQUES = ['broadcast', 'trailingHose', 'trailingShoe', 'openSlot', 'closedSlot'] as const;
export const INCORPORATIONS = ['never', 'atOnce', 'within4h', 'within12h', 'within24h'] as const;
export const IMPLEMENTS = ['plough', 'harrow'] as const;
export const COMPOST_WAYS = ['turned', 'static', 'none'] as const;
export const HEAP_COVERS = ['open', 'fleece', 'sheet', 'roof'] as const;
export const PADDOCK_MOVES = ['fixed', 'monthly', 'weekly', 'daily'] as const;
export const EXPOSURES = ['open', 'windbreak', 'shed'] as const;
export const FED_TO = ['need', 'appetite'] as const;
export const SPACE_RULES = [
  'commonPracticeHorned',
  'sweden',
  'ireland',
  'euOrganic',
  'unitedKingdom',
] as const;

const place = z.strictObject({
  name: named,
  country: z.string().length(2).optional().describe('Two-letter country code, for local rules to check'),
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  horizonDeg: z.number().min(0).max(60).default(0).describe('Height of hill or forest towards the noon sun'),
});

const winter = z
  .strictObject({ start: isoDate, end: isoDate })
  .refine((w) => w.end > w.start, { message: 'the winter ends before it starts', path: ['end'] });

const weather = z.strictObject({
  file: z
    .string()
    .max(300)
    .optional()
    .describe('Daily CSV beside the notebook or one shipped under data/weather'),
  year: z
    .number()
    .int()
    .min(1900)
    .max(2100)
    .optional()
    .describe('Which winter of the file to use, by the year it starts in'),
  monthly: z
    .strictObject({
      rainMm: twelve(z.number().min(0).max(10_000)),
      temperatureC: twelve(z.number().min(-60).max(45)),
      rangeC: twelve(z.number().min(0).max(30)).default([5, 6, 7, 8, 9, 9, 9, 9, 8, 6, 5, 5]),
      wetDays: twelve(z.number().min(0).max(31)).default([15, 13, 14, 12, 12, 12, 13, 13, 14, 15, 16, 16]),
    })
    .optional()
    .describe('January to December normals, used when no daily file is named'),
  seed: z
    .number()
    .int()
    .min(0)
    .max(2_147_483_647)
    .default(1)
    .describe('Fixes the made-up days when only monthly normals are given'),
  rainFactor: z.number().min(0).max(5).default(1),
});

const soil = z.strictObject({
  texture: z.enum(TEXTURES),
  rootDepthMm: z.number().min(100).max(2000).default(600),
  needs: z
    .array(z.enum(['phosphorus', 'potassium']))
    .optional()
    .describe(
      'What a soil test finds short; [] where it has enough of both; left out where no test is known',
    ),
});

const group = z.strictObject({
  name: named,
  class: z.enum(ANIMAL_CLASSES),
  head: z.number().min(0).max(100_000),
  weightKg: z.number().min(15).max(1500),
  gainKgPerDay: z.number().min(-1).max(2.5).default(0),
  pregnantShare: share.default(0),
  milkKgPerDay: z.number().min(0).max(40).default(0),
  hornedShare: share.default(0),
  calvingDate: isoDate.optional().describe('When those in calf calve; the last winter day when absent'),
  fedTo: z
    .enum(FED_TO)
    .optional()
    .describe(
      'Feed to the need of the animals or as much as they will eat; when absent cows and bulls to need, growing classes to appetite',
    ),
  dryMatterKgPerDay: z
    .number()
    .positive()
    .max(60)
    .optional()
    .describe('Dry matter eaten a head and day where it is known; fedTo does not count then'),
});

const feed = z.strictObject({
  feed: z.enum(FEEDS),
  share: share.describe('Share of the dry matter fed; the shares of all feeds sum to 1'),
  // Beyond what any forage or straw has, as the feeds of the tables show: a percentage written as a fraction, or a slip.
  crudeProteinFraction: z.number().min(0).max(0.5).optional(),
  phosphorusFraction: z.number().min(0).max(0.05).optional(),
  potassiumFraction: z.number().min(0).max(0.1).optional(),
  digestibilityFraction: z.number().min(0.1).max(0.95).optional(),
  dryMatterFraction: z.number().min(0.05).max(1).optional(),
  pricePerTonne: amount.optional().describe('Per tonne as fed, in the currency of the notebook'),
});

const material = z.strictObject({
  material: z.enum(MATERIALS),
  tonnes: amount.describe('On hand or within reach for this winter, as it lies'),
  own: z.boolean().default(false),
  // Wetter than this it is no bedding but slurry.
  moistureFraction: z.number().min(0).max(0.95).optional(),
  pricePerTonne: amount.optional().describe('Cash per tonne as delivered; own material may cost only hours'),
  machineHoursPerTonne: amount.optional().describe('Own hours to saw, chip, bale or haul a tonne'),
});

const sumsToOne = (items: { share: number }[]) =>
  items.length === 0 || Math.abs(items.reduce((sum, item) => sum + item.share, 0) - 1) < 1e-6;

const land = z.strictObject({
  receivingHa: positive.describe('Ground that can take the manure or compost'),
  crop: z.enum(CROPS).default('grassCut1'),
  nitrateZone: z.boolean().default(true),
});

export const farmSchema = z.strictObject({
  place,
  winter,
  weather,
  soil,
  herd: z.array(group).min(1).max(12),
  feed: z.array(feed).min(1).max(6).refine(sumsToOne, { message: 'the shares of the feeds do not sum to 1' }),
  materials: z.array(material).max(12).default([]),
  land,
  money,
  spaceRules: z.enum(SPACE_RULES).default('commonPracticeHorned'),
});

const placement = z
  .strictObject({
    bedShare: share,
    slatsShare: share,
    yardShare: share.describe('Feed stance and hard standing'),
    pastureShare: share,
    yardTo: z.enum(['pack', 'slurry']).default('pack').describe('Where yard scrapings go'),
  })
  .refine((p) => Math.abs(p.bedShare + p.slatsShare + p.yardShare + p.pastureShare - 1) < 1e-6, {
    message: 'the shares of the day do not sum to 1',
  });

const paddock = z.strictObject({
  areaHa: positive.default(2),
  moved: z.enum(PADDOCK_MOVES).default('weekly'),
});

const slats = z.strictObject({
  areaM2: positive.optional().describe('Slatted area; taken from the space rules when absent'),
  tankDepthM: z.number().min(0.5).max(6).default(2.4),
  washLitresPerDay: amount.default(0),
  house: z
    .enum(HOUSE_WALLS)
    .default('closed')
    .describe('Walls of the slatted house: closed with vents, or open on a side'),
  store: z.enum(STORE_COVERS).default('underSlats'),
  storeDepthM: z.number().min(0.5).max(8).default(3).describe('Depth of an outside store'),
  storeSurfaceM2: positive
    .optional()
    .describe('Surface of an outside store; from volume and depth when absent'),
  timesStirred: z
    .number()
    .min(0)
    .max(52)
    .default(1)
    .describe('Times an outside store is stirred, the last before spreading'),
  emptiedClean: z
    .boolean()
    .default(false)
    .describe('Store emptied clean in autumn, with no old slurry left in it'),
  openStoreM2: amount.default(0).describe('Area of an outside store that catches rain'),
  openYardM2: amount.default(0).describe('Fouled yard that drains to the store'),
});

const spreading = z.strictObject({
  technique: z.enum(TECHNIQUES).default('broadcast'),
  incorporation: z.enum(INCORPORATIONS).default('never'),
  implement: z.enum(IMPLEMENTS).default('plough').describe('What works manure in, where it is worked in'),
  windMPerS: z
    .number()
    .min(0)
    .max(12)
    .optional()
    .describe('Wind at 2 m on the day; a middling field when absent'),
  month: z.number().int().min(1).max(12).default(4),
});

const bed = z.strictObject({
  startDepthM: z.number().min(0).max(1).default(0.3),
  rateKgPer100Kg: z
    .number()
    .min(0)
    .max(5)
    .optional()
    .describe(
      'Bedding a day, kg per 100 kg live weight; the usual rate for ration, place and mix when absent',
    ),
  stirredPerWeek: z.number().min(0).max(21).default(0).describe('Times a week the top of the bed is stirred'),
  mix: z
    .array(z.strictObject({ material: z.enum(MATERIALS), share }))
    .max(6)
    .refine(sumsToOne, { message: 'the shares of the bedding mix do not sum to 1' }),
  cleanOut: isoDate.optional(),
});

const compost = z.strictObject({
  way: z.enum(COMPOST_WAYS).default('turned'),
  cover: z
    .enum(HEAP_COVERS)
    .default('fleece')
    .describe(
      'What keeps rain off: nothing, a breathing fleece, a tight sheet, or a roof that stands already',
    ),
  turns: z.number().int().min(0).max(30).default(4),
  days: z
    .number()
    .min(0)
    .max(1095)
    .optional()
    .describe('How long the heap lies; until the middle of the month of spreading when absent'),
  compacted: z.boolean().default(false).describe('Pressed down by the loader when it was heaped'),
  amendments: z
    .array(z.strictObject({ material: z.enum(MATERIALS), tonnes: amount }))
    .max(6)
    .default([])
    .describe('What is mixed into the heap, as it lies; each must be among the materials of the farm'),
});

/** What differs from the farm: any part of the farm again, shallowly partial at each level, arrays whole. */
export const scenarioSchema = z.strictObject({
  name: z
    .string()
    .min(1)
    .max(60)
    .regex(/^(?!\s*$)\P{Cc}+$/u)
    .describe('Heading of the column: one line of words'),
  system: z.enum(SYSTEM_NAMES),
  because: reason.describe('Why this scenario is in the notebook'),
  placement,
  feeder: z.enum(FEEDERS),
  exposure: z.enum(EXPOSURES),
  paddock: paddock.prefault({}),
  slats: slats.prefault({}),
  spreading: spreading.prefault({}),
  shed: shed.prefault({ lengthM: 24, depthM: 9 }),
  bed: bed.prefault({ mix: [] }),
  compost: compost.prefault({}),
  finance: finance.prefault({}),
  farm: farmSchema,
});

export const overrideSchema = z.strictObject({
  id: named,
  value: z.number().min(-MOST).max(MOST),
  low: z.number().min(-MOST).max(MOST).optional(),
  high: z.number().min(-MOST).max(MOST).optional(),
  because: reason.describe('Why the table is wrong for this farm: a measurement, a quote'),
});

export type Farm = z.output<typeof farmSchema>;
/** A scenario as the model sees it: its own keys and the whole farm it stands on. */
export type Scenario = z.output<typeof scenarioSchema>;
export type Override = z.output<typeof overrideSchema>;
export type HerdGroup = z.output<typeof group>;
