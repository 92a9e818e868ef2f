/** The notebook as plain text, as a person would write it: farm, three scenarios, and the question in words. */
import { inFlow } from '../notebook/yamlWrite.ts';
import { bodyOf, type Worked } from './body.ts';
import type { Plan } from './plan.ts';
import { countryInSentence, spoken } from './words.ts';

export const SCENARIOS = { paddock: 'Paddock', slats: 'Slats', bed: 'Deep bed' } as const;

type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value | undefined };

/** Twelve figures at most: no tails of binary sums. */
const tidy = (value: Value): Value => {
  if (typeof value === 'number') return Number(value.toPrecision(12));
  if (Array.isArray(value)) return value.map((each) => tidy(each as Value));
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(
      Object.entries(value).flatMap(([key, v]) => (v === undefined ? [] : [[key, tidy(v as Value)]])),
    );
  return value;
};
const flow = (value: Value) => inFlow(tidy(value));

export function notebookText(plan: Plan, worked: Worked): string {
  return `${['---', ...farmLines(plan, worked), '', ...scenarioLines(plan, worked), '---', ''].join('\n')}\n${bodyOf(plan, worked)}`;
}

/** Says that what stands there is a start and not the keeper's: the keys of the line that are. */
function starts(plan: Plan, keys: Readonly<Record<string, string>>): string {
  const open = Object.entries(keys).filter(([, at]) => !plan.given.has(at));
  if (open.length === 0) return '';
  const all = open.length === Object.keys(keys).length;
  return ` # ${all ? '' : `${open.map(([key]) => key).join(', ')}: `}a start, put your own`;
}

function farmLines(plan: Plan, worked: Worked): string[] {
  const { herd, winter, system } = plan;
  const head = herd.reduce((sum, group) => sum + group.head, 0);
  const place = ['country', 'latitudeDeg', 'longitudeDeg'] as const;
  const prices = plan.strawPerTonne === undefined ? [] : strawOf(plan);
  const moneyKeys = {
    currency: 'money.currency',
    labourPerHour: 'money.labourPerHour',
    interestRate: 'money.interestRate',
  };
  const money = {
    currency: plan.currency,
    year: plan.start('priceYear'),
    labourPerHour: plan.labourPerHour,
    interestRate: plan.interestRate,
    ...(plan.loanYears > 20 ? { horizonYears: plan.loanYears } : {}),
  };
  return [
    'winterkeep: 1',
    `title: ${flow(plan.given.has('place.name') ? `How ${plan.placeName} will winter ${head} head` : `How to winter ${head} head in ${countryInSentence(plan.countryLabel)}`)}`,
    `units: ${system}`,
    '',
    'farm:',
    '  place:',
    `    name: ${flow(plan.placeName)}`,
    ...place.flatMap((key) =>
      key === 'country' && plan.country === 'other'
        ? []
        : [
            `    ${key}: ${flow(plan[key])}${key === 'country' ? '' : starts(plan, { [key]: `place.${key}` })}`,
          ],
    ),
    `  winter: ${flow(winter)}${starts(plan, { start: 'place.winterStart', end: 'place.winterEnd' })}`,
    ...weatherLines(plan, worked),
    `  soil: ${flow({ texture: plan.texture })}${starts(plan, { texture: 'ground.texture' })}`,
    '  herd:',
    ...herd.map((group) => `    - ${flow(group1(group))}`),
    `  feed: # shares of the dry matter${plan.given.has('feed.0.amount') || plan.given.has('feed.1.amount') ? '' : '; starts, put your own'}`,
    ...plan.feed.map((feed) => `    - ${flow(feed)}`),
    '  materials: # what lies within reach for this winter',
    ...plan.materials.map(({ material, tonnes, own }) => {
      const bought = tonnes === undefined ? ' # to be bought: what the bed needs, by the model' : '';
      return `    - ${flow({ material, tonnes: worked.tonnes.get(material) ?? 0, ...(own ? { own, pricePerTonne: 0 } : {}) })}${bought}`;
    }),
    `  land: ${flow({ receivingHa: plan.landHa, crop: plan.crop, nitrateZone: plan.nitrateZone })}${starts(plan, { receivingHa: 'ground.landHa', crop: 'ground.crop', nitrateZone: 'ground.nitrateZone' })}`,
    ...(prices.length === 0
      ? [`  money: ${flow(money)}${starts(plan, moneyKeys)}`]
      : [
          '  money:',
          ...Object.entries(money).map(([key, value]) => {
            const at = moneyKeys[key as keyof typeof moneyKeys];
            return `    ${key}: ${flow(value)}${at === undefined ? '' : starts(plan, { [key]: at })}`;
          }),
          '    prices:',
          ...prices.map(
            (material) =>
              `      materialPricePerTonne.${material}: ${flow({ value: plan.strawPerTonne, because: 'what straw costs here, as the keeper says' })}`,
          ),
        ]),
    `  spaceRules: ${worked.sizes.spaceRules} # ask which rule holds where you are`,
  ];
}

/** A group without what is nought or by default. */
function group1({
  milkKgPerDay: _,
  gainKgPerDay,
  pregnantShare,
  hornedShare,
  ...group
}: Plan['herd'][number]): Value {
  return {
    ...group,
    ...(gainKgPerDay === 0 ? {} : { gainKgPerDay }),
    ...(pregnantShare === 0 ? {} : { pregnantShare }),
    ...(hornedShare === 0 ? {} : { hornedShare }),
  };
}

/** Bought straws of the notebook: what a price of straw is for. */
const strawOf = (plan: Plan) =>
  plan.materials
    .filter(({ material, own }) => !own && material.endsWith('Straw'))
    .map(({ material }) => material);

function weatherLines(plan: Plan, { weatherYear }: Worked): string[] {
  const { weatherFile: file, ownWeather, rainFactor } = plan;
  const weather = { file, year: weatherYear, ...(rainFactor === 1 ? {} : { rainFactor }) };
  const what = ownWeather ? 'the keeper’s own file' : 'invented days; bring the nearest station’s';
  return [
    `  weather: ${flow(weather)} # ${what}${weatherYear === undefined ? '' : '; a middling winter for rain'}`,
  ];
}

function scenarioLines(plan: Plan, worked: Worked): string[] {
  return [
    'scenarios:',
    ...paddockLines(plan),
    '',
    ...slatsLines(plan, worked),
    '',
    ...bedLines(plan, worked),
    '',
    'decide:',
    '  weights: { netCost: 2, nitrogenKeptKg: 1, labourHours: 1 } # what weighs how much: yours to set',
  ];
}

function paddockLines(plan: Plan): string[] {
  return [
    `  - name: ${SCENARIOS.paddock}`,
    '    system: outwintered',
    `    because: ${plan.standing === undefined ? 'What can be done without a shed, as long as the ground carries them' : 'What the same herd would do out of doors'}`,
    `    exposure: ${plan.exposure}${starts(plan, { exposure: 'ground.exposure' })}`,
    `    paddock: ${flow({ areaHa: plan.paddockHa, moved: plan.paddockMoved })}${starts(plan, { areaHa: 'ground.paddockHa', moved: 'ground.paddockMoved' })}`,
  ];
}

/** Lines of a shed that both have, the measures of the place last. */
function shedLines(
  plan: Plan,
  { sizes }: Worked,
  use: 'slats' | 'bed',
  own: Readonly<Record<string, Value>>,
): string[] {
  const stands = plan.standing?.use === use;
  const pairs: Readonly<Record<string, Value>> = {
    lengthM: sizes[use].lengthM,
    depthM: sizes[use].depthM,
    ...own,
    pitchDeg: plan.start('pitchDeg'),
    bayM: plan.start('bayM'),
    waterBowls: sizes.waterBowls,
    exits: plan.start('exits'),
    calvingPensM2: sizes[use].calvingPensM2,
    ...(plan.ownTimber ? { ownTimber: true } : {}),
  };
  const place = ['longestTimberM', 'snowLoadKnPerM2'] as const;
  return [
    `    shed: # ${stands ? 'it stands already' : 'sized to the herd by the space rules above'}`,
    ...Object.entries(pairs).map(([key, value]) => `      ${key}: ${flow(value)}`),
    ...place.map((key) => `      ${key}: ${flow(plan[key])}${starts(plan, { [key]: `there.${key}` })}`),
    ...(plan.frostDepthM === undefined ? [] : [`      frostDepthM: ${flow(plan.frostDepthM)}`]),
    `      basicWindMPerS: ${flow(plan.start('basicWindMPerS'))} # a start, read yours off the local map`,
  ];
}

function financeLines(plan: Plan, use: 'slats' | 'bed'): string[] {
  if (plan.standing?.use === use)
    return [
      '    finance:',
      `      baseline: ${SCENARIOS.paddock}`,
      '      capital: 0 # the shed stands; put here what has still to be spent on it',
    ];
  return [
    '    finance:',
    `      baseline: ${SCENARIOS.paddock}`,
    ...(plan.grant > 0 ? [`      grant: ${flow(plan.grant)}`] : []),
    ...(plan.ownMoney === undefined ? [] : [`      ownMoney: ${flow(plan.ownMoney)}`]),
    ...(plan.loan > 0
      ? [
          '      loans:',
          `        - ${flow({ name: 'building loan', amount: plan.loan, rate: plan.loanRate, years: plan.loanYears })}${starts(plan, { rate: 'money.loanRate', years: 'money.loanYears' })}`,
        ]
      : []),
  ];
}

function slatsLines(plan: Plan, worked: Worked): string[] {
  const stands = plan.standing?.use === 'slats';
  return [
    `  - name: ${SCENARIOS.slats}`,
    '    system: slatted',
    `    because: ${stands ? 'The shed that stands already' : 'Little bedding to find, and a tank to empty in spring'}`,
    ...shedLines(plan, worked, 'slats', { eaveM: plan.start('eaveSlatsM') }),
    `    slats: ${flow({ areaM2: worked.sizes.slats.areaM2, tankDepthM: worked.sizes.slats.tankDepthM, store: 'underSlats' })}`,
    `    spreading: ${flow({ technique: plan.startWord('slurryTechnique'), month: plan.start('slurryMonth') })} # a start`,
    ...financeLines(plan, 'slats'),
  ];
}

function bedLines(plan: Plan, worked: Worked): string[] {
  const stands = plan.standing?.use === 'bed';
  const materials = worked.mix.map(({ material }) => spoken(material)).join(', ');
  return [
    `  - name: ${SCENARIOS.bed}`,
    '    system: deep-bedded',
    `    because: ${flow(stands ? `The shed that stands already, bedded with ${materials}` : `A dry bed of ${materials} that becomes compost for the land`)}`,
    ...shedLines(plan, worked, 'bed', {
      stanceDepthM: worked.sizes.bed.stanceDepthM,
      eaveM: plan.start('eaveBedM'),
      pushWallM: plan.start('pushWallM'),
      barrierLiftM: plan.start('barrierLiftM'),
      bowlLiftM: plan.start('bowlLiftM'),
    }),
    '    bed:',
    `      startDepthM: ${flow(plan.start('startDepthM'))}`,
    ...(worked.rateKgPer100Kg === undefined
      ? []
      : [`      rateKgPer100Kg: ${worked.rateKgPer100Kg} # more than usual, or the bed would end too wet`]),
    '      mix:',
    ...worked.mix.map((part) => `        - ${flow(part)}`),
    `    compost: ${flow({ way: 'turned', cover: 'fleece', turns: plan.start('compostTurns') })}`,
    `    spreading: ${flow({ month: plan.start('compostMonth') })}`,
    ...financeLines(plan, 'bed'),
  ];
}
