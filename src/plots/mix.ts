/** The cheapest bedding of what lies in reach: how much of each a day, what it costs, what it comes to. */
import { type Freed, givenMix, type MixAnswer, type MixedWeek } from '../bedmix/leastCost.ts';
import type { LimitName } from '../bedmix/lines.ts';
import type { BeddingQuestion } from '../bedmix/question.ts';
import { hundredthsOf } from '../uncertainty/sentences.ts';
import { axisIn } from './axes.ts';
import { emptyFigure, type Pattern, type PrintFigure } from './figure.ts';
import { GREYS, PAPER } from './palette.ts';
import { capital, inWords, moneyOf, type Reading, show } from './reading.ts';
import { fitted, HALO, patternText, picture, says, stroke, tag, textWidth, toSvg, words } from './svgText.ts';

/** Weeks of the same mix day by day, one after the other. */
export interface MixSpell {
  /** Weeks of the winter, from 1, both ends within. */
  readonly from: number;
  readonly to: number;
  readonly days: number;
  /** kg a day as it lies, in the order of the materials. */
  readonly kgPerDay: readonly number[];
  readonly week: MixedWeek;
  /** Days of `week`. */
  readonly weekDays: number;
}

type Found = Extract<MixAnswer, { status: 'found' }>;

const LOOKS: readonly { readonly fill: string; readonly pattern: Pattern }[] = [
  { fill: '#e6cb8b', pattern: 'solid' },
  { fill: '#b98a5e', pattern: 'crossed' },
  { fill: '#d8b58f', pattern: 'dots' },
  { fill: '#8d99a6', pattern: 'rising' },
  { fill: '#b9c98c', pattern: 'upright' },
  { fill: '#cfc9bb', pattern: 'falling' },
];
/** Less of a material than this share is rounding in the solver. */
const TRACE = 1e-6;

const spelt = (id: string) => id.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
/** `barley straw`, `own softwood chips`. */
export const materialWords = ({ material, own }: { readonly material: string; readonly own?: boolean }) =>
  `${own ? 'own ' : ''}${spelt(material)}`;

/** What a limit is called where it decides or stands in the way. */
export function limitWords(limit: LimitName): string {
  const named: Readonly<Record<string, string>> = {
    moisture: 'how wet the bed may be',
    absorbency: 'urine to soak up',
    carbonNitrogen: 'C:N',
    availableCarbonNitrogen: 'available C:N',
    depth: 'the height of the wall',
    handling: 'what can be carried in a day',
  };
  return named[limit] ?? `the stock of ${spelt(limit.slice('stock.'.length))}`;
}

/** Weeks put together where the day's bedding is the same. */
export function mixSpells({ weeks: asked }: BeddingQuestion, { weeks }: Found): MixSpell[] {
  const spells: MixSpell[] = [];
  weeks.forEach((week, w) => {
    const { days } = asked[w];
    const kgPerDay = week.kg.map((kg) => kg / days);
    const last = spells[spells.length - 1];
    const same = last?.kgPerDay.every((kg, k) => Math.abs(kg - kgPerDay[k]) <= TRACE * (1 + kg));
    if (same) spells[spells.length - 1] = { ...last, to: w + 1, days: last.days + days };
    else spells.push({ from: w + 1, to: w + 1, days, kgPerDay, week, weekDays: days });
  });
  return spells;
}

/** "Cheapest bed within the limits: 68 % barley straw, 32 % own chips, EUR 41 a week, 0.8 h of own work in it." */
export function mixFinding(
  question: BeddingQuestion | null,
  answer: MixAnswer | null,
  name: string,
  reading: Reading,
): string {
  if (!question || !answer) return `“${name}” has no bed to lay bedding on.`;
  if (question.materials.length === 0)
    return `There is no bedding to choose from for “${name}”: no material within reach has a price. List what you have or can buy under farm, materials.`;
  if (answer.status === 'impossible') {
    const by = answer.frees.map(({ limit }) => limitWords(limit));
    const why =
      by.length === 0
        ? 'even with every limit eased.'
        : answer.frees[0].together
          ? `because of ${inWords(by)} together.`
          : by.length === 1
            ? `because of ${by[0]}.`
            : `Easing any one of these would free it: ${inWords(by)}.`;
    return `No mix of what lies in reach keeps the bed of “${name}” within its limits all winter${/^[A-Z]/.test(why) ? '. ' : ', '}${why}`;
  }
  const total = answer.tonnes.reduce((sum, t) => sum + t, 0);
  if (!(total > TRACE))
    return `The bed of “${name}” keeps within its limits without any bedding, by these sums.`;
  const parts = question.materials
    .map((material, k) => ({ words: materialWords(material), share: answer.tonnes[k] / total }))
    .filter(({ share }) => share > TRACE)
    .sort((a, b) => b.share - a.share);
  // Whole percents that sum to 100.
  const percents = hundredthsOf(parts.map(({ share }) => share));
  const said = parts.map(({ words: material }, k) => `${percents[k]} % ${material}`);
  const days = question.weeks.reduce((sum, week) => sum + week.days, 0);
  const hours =
    (7 / days) * answer.tonnes.reduce((sum, t, k) => sum + t * (question.hoursPerTonne?.[k] ?? 0), 0);
  const work = hours < 0.05 ? '' : `, ${show(hours, 'h', reading, 2).text} of own work in it`;
  return `Cheapest bed within the limits: ${said.join(', ')}, ${show((7 * answer.cost) / days, 'money', reading).text} a week${work}.`;
}

/** The bed as the notebook has it, by the same sums, and what the sums do not mind of the mix found; each a sentence. */
export function mixBeside(
  question: BeddingQuestion | null,
  answer: MixAnswer | null,
  name: string,
  reading: Reading,
): string[] {
  if (!question) return [];
  const { materials, asWritten, chipMoistureMost = Number.NaN } = question;
  const out: string[] = [];
  if (asWritten && question.weeks.length > 0) {
    const { winter, broken } = givenMix(question, asWritten);
    const kg = asWritten.reduce((sum, each) => sum + each, 0);
    const days = question.weeks.reduce((sum, week) => sum + week.days, 0);
    const keeps =
      broken.length === 0
        ? 'keeps within the limits as well'
        : `does not keep ${broken.length === 1 ? 'the limit of' : 'the limits of'} ${inWords(broken.map(limitWords))}`;
    const cost = show((7 * winter.cost) / days, 'money', reading).text;
    out.push(
      `As the notebook has it, “${name}” takes ${show(kg, 'kg', reading).text} a day at ${cost} a week by the same sums, and ${keeps}.`,
    );
  }
  const wet = materials.filter(
    ({ material, moistureFraction }, k) =>
      /chips|bark/i.test(material) &&
      moistureFraction > chipMoistureMost &&
      answer?.status === 'found' &&
      answer.tonnes[k] > TRACE,
  );
  for (const material of wet)
    out.push(
      `These sums take ${materialWords(material)} at ${show(material.moistureFraction, 'fraction', reading).text} moisture; wetter than ${show(chipMoistureMost, 'fraction', reading).text} they do not make a bed, so they have to be dried first.`,
    );
  return out;
}

/** Why it is this mix and no cheaper one; empty without one. */
export function mixDecides(answer: MixAnswer | null): string {
  if (answer?.status !== 'found' || answer.binding.length === 0) return '';
  const stocks = answer.binding.filter((limit) => limit.startsWith('stock.'));
  const others = answer.binding.filter((limit) => !limit.startsWith('stock.'));
  const parts = [
    ...(others.length > 0
      ? [`Only ${inWords(others.map(limitWords))} decide${others.length > 1 ? '' : 's'} it`]
      : []),
    ...(stocks.length > 0
      ? [
          `${others.length > 0 ? 'all' : 'All'} the ${inWords(stocks.map((limit) => spelt(limit.slice('stock.'.length))))} within reach is used up`,
        ]
      : []),
  ];
  return `${parts.join('; ')}.`;
}

/** What would free a mix that cannot be, each in a sentence. */
export function mixFrees(frees: readonly Freed[]): string[] {
  return frees.map(({ words: said }) => `${capital(said)}.`);
}

/** Materials left out, named; empty where none are. */
export function unpricedWords(question: BeddingQuestion | null): string {
  if (!question || question.unpriced.length === 0) return '';
  const list = inWords(question.unpriced.map(spelt));
  return `Left out, since neither the notebook nor the price table says what ${question.unpriced.length > 1 ? 'they cost' : 'it costs'}: ${list}. Give pricePerTonne to count ${question.unpriced.length > 1 ? 'them' : 'it'} in.`;
}

/** The figure of one scenario's cheapest mix. */
export function mixFigure(
  question: BeddingQuestion | null,
  answer: MixAnswer | null,
  name: string,
  reading: Reading,
): PrintFigure {
  const finding = mixFinding(question, answer, name, reading);
  if (!question || answer?.status !== 'found') return { ...emptyFigure(finding), markup: null };
  const used = question.materials
    .map((material, k) => ({ k, label: materialWords(material), look: LOOKS[k % LOOKS.length] }))
    .filter(({ k }) => answer.tonnes[k] > TRACE);
  if (used.length === 0) return { ...emptyFigure(finding), markup: null };
  const spells = mixSpells(question, answer);
  const markup = (width: number, ids = 'wk-mix') => drawMix(spells, used, reading, width, ids, finding);
  return {
    finding,
    legend: used.map(({ label, look }) => ({ label, ...look })),
    caption: `Bedding a day as it lies. Own material costs the hours it takes. Money in ${moneyOf(reading)}.`,
    table: mixTable(question, spells, reading),
    markup,
    draw: (width) => toSvg(markup(width)),
  };
}

const spellWords = ({ from, to, weekDays }: MixSpell) =>
  from === to ? `week ${from}${weekDays === 7 ? '' : `, ${weekDays} days`}` : `weeks ${from} to ${to}`;

/** Kilograms a day, cost, and each limit beside what the mix comes to. */
function mixTable(question: BeddingQuestion, spells: readonly MixSpell[], reading: Reading) {
  const { materials, limits } = question;
  const kg = (value: number) => show(value, 'kg', reading).number;
  const unit = show(1, 'kg', reading).unit;
  const tonne = show(1, 't', reading).unit;
  const row = (heading: string, of: (spell: MixSpell, at: number) => string) => [heading, ...spells.map(of)];
  const ratio = (value: number) => value.toFixed(1);
  const least = (value: number | null) => (value === null ? '' : ` (${ratio(value)} at least)`);
  const soaked = ({ kgPerDay }: MixSpell) =>
    materials.reduce((sum, m, k) => sum + kgPerDay[k] * m.absorbencyKgPerKg * limits.fieldFraction, 0);
  /** Stock left after a spell, kg. */
  const left = (k: number, at: number) =>
    materials[k].stockKg -
    spells.slice(0, at + 1).reduce((sum, { kgPerDay, days }) => sum + kgPerDay[k] * days, 0);
  return {
    caption: 'The cheapest mix and what it comes to',
    head: ['', ...spells.map(spellWords)],
    rows: [
      ...materials.map((m, k) =>
        row(`${capital(materialWords(m))}, ${unit} a day`, (s) => kg(s.kgPerDay[k])),
      ),
      row(`Bedding together, ${unit} a day`, (s) => kg(s.kgPerDay.reduce((sum, each) => sum + each, 0))),
      row(
        `Cost, ${moneyOf(reading)} a week`,
        (s) => show((7 * s.week.cost) / s.weekDays, 'money', reading).text,
      ),
      row(
        `Moisture of what is laid with what falls on it, % (${show(limits.moistureMost, 'fraction', reading).text} at most)`,
        (s) => show(s.week.moisture, 'fraction', reading, 3).text,
      ),
      row(`Urine it can soak up, ${unit} a day`, (s) => kg(soaked(s))),
      row(`Urine to soak up, ${unit} a day`, (s) => {
        const week = question.weeks[s.from - 1];
        return kg(week.liquidKg / week.days);
      }),
      row(`C:N${least(limits.carbonNitrogenLeast)}`, (s) => ratio(s.week.carbonNitrogen)),
      row(`Available C:N${least(limits.availableCarbonNitrogenLeast)}`, (s) =>
        ratio(s.week.availableCarbonNitrogen),
      ),
      ...materials.map((m, k) =>
        row(`${capital(materialWords(m))} left after it, ${tonne}`, (_, at) => {
          const rest = left(k, at) / 1000;
          return show(Math.abs(rest) < 0.005 ? 0 : rest, 't', reading).number;
        }),
      ),
    ],
  };
}

export interface BindingWords {
  readonly sentence: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const WOOD = /chips|sawdust|shavings|bark/i;

/** What each bedding binds in a season beside what its C:N suggests; null without materials. */
export function bindingWords({ binds }: BeddingQuestion, reading: Reading): BindingWords | null {
  if (binds.length === 0) return null;
  const perTonne = (value: number) => show(value, 'kg/t', reading, 2).text;
  const most = binds
    .filter(({ material }) => WOOD.test(material))
    .sort((a, b) => b.byTotalCarbonKgPerTonne - a.byTotalCarbonKgPerTonne)[0];
  const shown = most ?? binds[0];
  return {
    sentence: `By C:N alone ${spelt(shown.material)} would bind ${perTonne(shown.byTotalCarbonKgPerTonne)} of nitrogen; microbes can use so little of that carbon in a season that it is about ${perTonne(shown.byAvailableCarbonKgPerTonne)}.`,
    head: ['Nitrogen bound, as it lies', 'by C:N alone', 'in a season'],
    rows: binds.map((b) => [
      capital(spelt(b.material)),
      perTonne(b.byTotalCarbonKgPerTonne),
      perTonne(b.byAvailableCarbonKgPerTonne),
    ]),
  };
}

const ROW = 58;
const BAR = 26;

function drawMix(
  spells: readonly MixSpell[],
  used: readonly { readonly k: number; readonly label: string; readonly look: (typeof LOOKS)[number] }[],
  reading: Reading,
  asked: number,
  ids: string,
  finding: string,
): string {
  const width = Math.max(240, asked);
  const said = (kg: number) => show(kg, 'kg', reading).text;
  const sum = (spell: MixSpell) => spell.kgPerDay.reduce((a, b) => a + b, 0);
  const axis = axisIn('kg', reading);
  const most = axis.end(Math.max(...spells.map(sum)));
  const bottom = ROW * spells.length;
  const x = (kg: number) => 1 + ((width - 6) * kg) / most;
  const body: string[] = [
    tag('defs', {}, ...used.map(({ k, look }) => patternText(`${ids}-${k}`, look.pattern, look.fill))),
  ];
  for (const mark of axis.places(0, most, Math.max(2, Math.min(6, Math.floor(width / 120))))) {
    const anchor = mark === 0 ? 'start' : x(mark) > width - 30 ? 'end' : 'middle';
    body.push(stroke(x(mark), 20, x(mark), bottom, { stroke: GREYS.rule }));
    body.push(
      words(anchor === 'start' ? 0 : anchor === 'end' ? width : x(mark), bottom + 16, said(mark), {
        fill: GREYS.quiet,
        'text-anchor': anchor,
        'font-size': 12,
      }),
    );
  }
  spells.forEach((spell, at) => {
    const top = ROW * at;
    body.push(
      words(1, top + 14, capital(spellWords(spell)), { 'font-weight': 600 }),
      words(width - 1, top + 14, `${said(sum(spell))} a day`, { 'text-anchor': 'end' }),
    );
    let from = 0;
    for (const { k, label: material } of used) {
      const kg = spell.kgPerDay[k];
      if (!(kg > TRACE)) continue;
      const [left, wide] = [x(from), Math.max(0.5, x(from + kg) - x(from))];
      body.push(
        tag(
          'rect',
          {
            x: left,
            y: top + 22,
            width: wide,
            height: BAR,
            fill: `url(#${ids}-${k})`,
            stroke: PAPER,
            'stroke-width': 1,
          },
          says(`${capital(spellWords(spell))}, ${material}: ${said(kg)} a day`),
        ),
      );
      const label = said(kg);
      if (textWidth(label) + 10 < wide)
        body.push(
          words(left + wide / 2, top + 22 + BAR / 2 + 5, fitted(label, wide), {
            'text-anchor': 'middle',
            ...HALO,
          }),
        );
      from += kg;
    }
    body.push(stroke(x(0), top + 20, x(0), top + 22 + BAR + 4));
  });
  return picture(width, bottom + 22, finding, ...body);
}
