/** What must hold between parts of a notebook, beyond what each part's own schema says. */
import { dayAfter, daysBetween } from '../units/days.ts';
import type { Problem } from '../units/problem.ts';
import type { DiaryEntry } from './diary.ts';
import { nearestScenarios, quotedNames } from './nearest.ts';
import type { Note } from './noteSchema.ts';
import type { Path } from './path.ts';
import type { Farm, Override, Scenario } from './schema.ts';

export interface Parts {
  readonly farm: Farm;
  readonly scenarios: readonly Scenario[];
  readonly overrides: readonly Override[];
  readonly diary: readonly DiaryEntry[];
  readonly readerNotes: readonly Note[];
}

/** A problem before it is given its file and line. */
type Finding = Omit<Problem, 'file' | 'line' | 'key'> & { readonly path: Path };

/** A year of weather is all the model reads from the first winter day on. */
const LONGEST_WINTER = 366;

export function breachesOf(parts: Parts, file: string, lineOf: (path: Path) => number): Problem[] {
  return [
    ...farmFindings(parts.farm, ['farm']),
    ...overrideFindings(parts),
    ...scenarioFindings(parts),
    ...diaryFindings(parts),
    ...twice(
      parts.readerNotes.map((note) => note.id),
      'two notes have the same id',
      (k) => ['notes', k, 'id'],
    ),
  ].map(({ path, ...rest }) => ({ ...rest, file, line: lineOf(path), key: path.join('.') }));
}

function farmFindings(farm: Farm, at: Path): Finding[] {
  const out: Finding[] = [];
  const { file, monthly } = farm.weather;
  if (file === undefined && monthly === undefined)
    out.push({
      path: [...at, 'weather'],
      what: 'there is no weather',
      allowed: 'file (a daily CSV) or monthly (normals)',
      todo: 'name one of the shipped files or write twelve months of rain and temperature',
    });
  const days = daysBetween(farm.winter.start, farm.winter.end);
  if (days > LONGEST_WINTER)
    out.push({
      path: [...at, 'winter', 'end'],
      what: 'the winter is longer than a year',
      found: `${days} days`,
      allowed: `at most ${LONGEST_WINTER} days`,
      todo: 'check the two years',
    });
  for (const [id, price] of Object.entries(farm.money.prices))
    out.push(...rangeFindings(price, [...at, 'money', 'prices', id]));
  out.push(
    ...twice(
      farm.materials.map((m) => m.material),
      'the material is on the list twice',
      (k) => [...at, 'materials', k, 'material'],
    ),
  );
  out.push(
    ...twice(
      farm.feed.map((f) => f.feed),
      'the feed is on the list twice',
      (k) => [...at, 'feed', k, 'feed'],
    ),
  );
  return out;
}

function rangeFindings(
  { value, low, high }: { value: number; low?: number; high?: number },
  path: Path,
): Finding[] {
  if ((low ?? value) <= value && value <= (high ?? value)) return [];
  return [
    {
      path,
      what: 'low, value and high are not in order',
      found: `low ${low ?? value}, value ${value}, high ${high ?? value}`,
      allowed: 'low ≤ value ≤ high',
    },
  ];
}

function twice(names: readonly string[], what: string, path: (k: number) => Path): Finding[] {
  return names.flatMap((name, k) =>
    names.indexOf(name) < k
      ? [
          {
            path: path(k),
            what,
            found: `"${name}" ${names.filter((n) => n === name).length} times`,
            allowed: 'once',
          },
        ]
      : [],
  );
}

function overrideFindings({ overrides }: Parts): Finding[] {
  return [
    ...overrides.flatMap((o, k) => rangeFindings(o, ['coefficients', k, 'value'])),
    ...twice(
      overrides.map((o) => o.id),
      'the coefficient is replaced twice',
      (k) => ['coefficients', k, 'id'],
    ),
  ];
}

/** One price level: what money is reckoned in is the notebook's, whatever else a scenario changes. */
const ONE_FOR_ALL = ['currency', 'year', 'inflation', 'interestRate', 'horizonYears'] as const;

function priceLevelFindings(farm: Farm, scenario: Scenario, at: Path): Finding[] {
  const out: Finding[] = ONE_FOR_ALL.flatMap((key): Finding[] =>
    scenario.farm.money[key] === farm.money[key]
      ? []
      : [
          {
            path: [...at, 'farm', 'money', key],
            what: 'the scenario has another price level than the farm',
            found: String(scenario.farm.money[key]),
            allowed: `${farm.money[key]}, as in farm.money`,
            todo: 'write it once, under farm.money; a scenario may change prices, not what they are reckoned in',
          },
        ],
  );
  scenario.finance.loans.forEach((loan, k) => {
    if (loan.years > farm.money.horizonYears)
      out.push({
        path: [...at, 'finance', 'loans', k, 'years'],
        what: 'the loan is still owed when the years counted are over',
        found: `${loan.years} years`,
        allowed: `at most ${farm.money.horizonYears} years, farm.money.horizonYears`,
        todo: 'shorten the loan, or count more years if the works last them',
      });
  });
  return out;
}

function scenarioFindings({ farm, scenarios }: Parts): Finding[] {
  const names = scenarios.map((s) => s.name);
  const out = twice(names, 'two scenarios have the same name', (k) => ['scenarios', k, 'name']);
  scenarios.forEach((scenario, index) => {
    const at: Path = ['scenarios', index];
    const { bed, compost, placement, shed } = scenario;
    const written = new Set(farmFindings(farm, []).map((f) => f.what));
    out.push(...farmFindings(scenario.farm, [...at, 'farm']).filter((f) => !written.has(f.what)));
    out.push(...priceLevelFindings(farm, scenario, at));
    const onHand: readonly string[] = scenario.farm.materials.map((m) => m.material);
    bed.mix.forEach(({ material }, k) => {
      if (!onHand.includes(material))
        out.push({
          path: [...at, 'bed', 'mix', k, 'material'],
          what: "the material is not among the farm's materials",
          found: `"${material}"`,
          allowed: onHand.join(', ') || 'none yet',
          todo: 'add it under farm.materials with its tonnes',
        });
    });
    out.push(
      ...twice(
        bed.mix.map((m) => m.material),
        'the material is in the mix twice',
        (k) => [...at, 'bed', 'mix', k, 'material'],
      ),
    );
    out.push(...heapFindings(compost, onHand, at));
    out.push(...roofFindings(scenario, [...at]), ...slatsFindings(scenario, at));
    if (placement.bedShare > 0 && bed.mix.length === 0)
      out.push({
        path: [...at, 'bed'],
        what: 'the bed has no bedding',
        found: 'no mix',
        allowed: 'one to six materials whose shares sum to 1',
        todo: 'write bed: with mix: [{ material: barleyStraw, share: 1 }]',
      });
    if (placement.bedShare > 0 && shed.stanceDepthM >= shed.depthM)
      out.push({
        path: [...at, 'shed', 'stanceDepthM'],
        what: 'the feed stance leaves no room for the bed',
        found: `${shed.stanceDepthM}`,
        allowed: `less than the shed's depth of ${shed.depthM}`,
      });
    if (bed.cleanOut !== undefined && bed.cleanOut <= scenario.farm.winter.start)
      out.push({
        path: [...at, 'bed', 'cleanOut'],
        what: 'the bed is cleaned out before the winter starts',
        found: bed.cleanOut,
        allowed: `a date after ${scenario.farm.winter.start}`,
      });
    out.push(...financeFindings(scenario, names, at));
  });
  return out;
}

/** Loans that end, a baseline that is there, and what stands already named once. */
function financeFindings({ name, finance }: Scenario, names: readonly string[], at: Path): Finding[] {
  const out: Finding[] = twice(
    (finance.alreadyHave?.lines ?? []).map(({ what }) => what),
    'this stands already twice',
    (k) => [...at, 'finance', 'alreadyHave', 'lines', k, 'what'],
  );
  finance.loans.forEach((loan, k) => {
    if (loan.graceYears >= loan.years)
      out.push({
        path: [...at, 'finance', 'loans', k, 'graceYears'],
        what: 'the grace is as long as the loan',
        found: `${loan.graceYears}`,
        allowed: `less than ${loan.years}`,
      });
  });
  if (finance.baseline === name)
    out.push({
      path: [...at, 'finance', 'baseline'],
      what: 'a scenario cannot be compared with itself',
      found: `"${finance.baseline}"`,
      allowed: quotedNames(names.filter((other) => other !== name)) || 'no baseline',
    });
  if (finance.baseline !== undefined && !names.includes(finance.baseline))
    out.push({
      path: [...at, 'finance', 'baseline'],
      what: 'no scenario has this name',
      found: `"${finance.baseline}"`,
      allowed: nearestScenarios(finance.baseline, names),
    });
  return out;
}

/** What is mixed into a heap must be there, and so must the heap. */
function heapFindings(
  { way, amendments }: Scenario['compost'],
  onHand: readonly string[],
  at: Path,
): Finding[] {
  const out = amendments.flatMap(({ material }, k): Finding[] =>
    onHand.includes(material)
      ? []
      : [
          {
            path: [...at, 'compost', 'amendments', k, 'material'],
            what: "the material is not among the farm's materials",
            found: `"${material}"`,
            allowed: onHand.join(', ') || 'none yet',
            todo: 'add it under farm.materials with its tonnes',
          },
        ],
  );
  if (way === 'none' && amendments.some(({ tonnes }) => tonnes > 0))
    out.push({
      path: [...at, 'compost', 'amendments'],
      what: 'there is no heap to mix anything into',
      found: 'way: none',
      allowed: 'way: turned or static, or no amendments',
    });
  return out;
}

/** A slatted area that is written must lie in the shed that is written: without a bed beside the pens, else in the stance. */
function slatsFindings({ placement, shed, slats }: Scenario, at: Path): Finding[] {
  const { areaM2 } = slats;
  if (!(placement.slatsShare > 0) || areaM2 === undefined) return [];
  const bedded = placement.bedShare > 0;
  const room = bedded
    ? shed.lengthM * Math.min(shed.stanceDepthM, shed.depthM)
    : Math.max(0, shed.lengthM * shed.depthM - shed.calvingPensM2);
  if (areaM2 <= room + 1e-9) return [];
  const pens = shed.calvingPensM2 > 0 ? `, less ${shed.calvingPensM2} m² of calving pens` : '';
  return [
    {
      path: [...at, 'slats', 'areaM2'],
      what: 'the slats do not fit into the shed',
      found: `${areaM2} m² of slats`,
      allowed: bedded
        ? `at most ${room.toFixed(1)} m², the stance of ${shed.lengthM} × ${shed.stanceDepthM} m: beside a bed the slats lie in it`
        : `at most ${room.toFixed(1)} m², the shed of ${shed.lengthM} × ${shed.depthM} m${pens}`,
      todo: 'make the shed larger under shed.lengthM and shed.depthM, or give the slats less area',
    },
  ];
}

/** Without a roof only a bed is known: rain on slats, and animals called housed under none, are not. */
function roofFindings({ shed, placement, exposure }: Scenario, at: Path): Finding[] {
  if (shed.roofed) return [];
  const out: Finding[] = [];
  if (shed.feedRoadRoofed)
    out.push({
      path: [...at, 'shed', 'feedRoadRoofed'],
      what: 'there is no roof that could run on over the feed road',
      found: 'feedRoadRoofed: true with roofed: false',
      allowed: 'feedRoadRoofed: false, or roofed: true',
    });
  if (placement.slatsShare > 0)
    out.push({
      path: [...at, 'shed', 'roofed'],
      what: 'slats without a roof are not known: the rain that falls through them is not counted',
      found: `roofed: false with slatsShare ${placement.slatsShare}`,
      allowed: 'roofed: true where animals stand on slats',
      todo: 'write the open part as slats.openYardM2, whose rain goes to the store, or leave the slats out',
    });
  if (placement.bedShare > 0 && exposure === 'shed')
    out.push({
      path: [...at, 'exposure'],
      what: 'animals on a bed without a roof are not sheltered by a shed',
      found: 'exposure: shed with roofed: false',
      allowed: 'open, windbreak',
      todo: 'say what keeps the wind off the open bed',
    });
  return out;
}

function diaryFindings({ farm, scenarios, diary }: Parts): Finding[] {
  const names = scenarios.map((s) => s.name);
  const last = dayAfter(farm.winter.start, LONGEST_WINTER);
  return diary.flatMap((entry, k): Finding[] => [
    ...(entry.date < farm.winter.start || entry.date > last
      ? [
          {
            path: ['diary', k, 'date'],
            what: 'the day is not of this winter',
            found: entry.date,
            allowed: `${farm.winter.start} to ${last}`,
          },
        ]
      : []),
    ...(entry.scenario !== undefined && !names.includes(entry.scenario)
      ? [
          {
            path: ['diary', k, 'scenario'],
            what: 'no scenario has this name',
            found: `"${entry.scenario}"`,
            allowed: nearestScenarios(entry.scenario, names),
          },
        ]
      : []),
  ]);
}
