/**
 * The words and cells of a new notebook. Nothing typed by the keeper stands in them, and no figure that is not worked
 * out anew when the notebook is: what is said here stays true when the numbers above are changed.
 */

import type { Plan } from './plan.ts';
import type { Sizes } from './size.ts';
import { countryInSentence } from './words.ts';

/** What is known only when the model has run once. */
export interface Worked {
  readonly sizes: Sizes;
  readonly mix: readonly { readonly material: string; readonly share: number }[];
  /** Tonnes of each material the notebook names. */
  readonly tonnes: ReadonlyMap<string, number>;
  /** Bedding a day where the usual rate would leave the bed wetter than its check lets pass. */
  readonly rateKgPer100Kg: number | undefined;
  /** A middling winter of the weather file; undefined where it has no whole one. */
  readonly weatherYear: number | undefined;
}

/** Starts that weigh on the answer, in the order a keeper can find them out. */
const TELLING: readonly (readonly [string, string])[] = [
  ['place.climate', 'the climate'],
  ['place.winterStart', 'the first day of the winter'],
  ['place.winterEnd', 'its last day'],
  ['herd.0.weightKg', 'what the animals weigh'],
  ['feed.0.amount', 'the ration'],
  ['ground.texture', 'the soil'],
  ['ground.landHa', 'the land'],
  ['ground.paddockHa', 'the paddock'],
  ['money.labourPerHour', 'the worth of an own hour'],
  ['there.snowLoadKnPerM2', 'the snow load'],
];

export function bodyOf(plan: Plan, worked: Worked): string {
  return [question(plan), open(plan), stays(), takes(plan), shed(worked), sure(plan)].join('\n');
}

const cell = (kind: string, ...options: string[]) => `\`\`\`${[kind, ...options].join('\n')}\n\`\`\`\n`;

function question({ standing }: Plan): string {
  return `# How shall they winter?

\`=headCount of Paddock\` animals have to be brought through \`=winterDays of Paddock\` days of winter. In that time they
eat \`=dryMatterEatenKg of Paddock\` of dry matter and drop \`=nitrogenExcretedKg of Paddock\` of nitrogen. Where it lies in
spring, how many hours it took and what it cost are the questions of this notebook.

${wrapped(
  `Three ways stand side by side: out on the paddock, on slats over a tank, and on a deep bed that becomes compost. ${
    standing === undefined
      ? 'Neither shed stood when this was begun; both are drawn to the size of the herd.'
      : `The shed ${standing.use === 'bed' ? 'for the bed' : 'with slats'} stood already when this was begun; the other is drawn to the size of the herd.`
  }`,
)}

${cell('cards')}`;
}

/** What was left open when the notebook was begun: true whatever is changed later. */
function open({ given, countryLabel, ownWeather }: Plan): string {
  const left = TELLING.filter(([at]) => !given.has(at) && !(ownWeather && at === 'place.climate')).map(
    ([, words]) => words,
  );
  if (left.length === 0) return '';
  const list = left.length === 1 ? left[0] : `${left.slice(0, -1).join(', ')} and ${left[left.length - 1]}`;
  return `${wrapped(`When this notebook was begun, these were left as starts for ${countryInSentence(countryLabel)} and are nobody’s measurement: ${list}. Change them first where your farm differs.`)}\n`;
}

const WIDTH = 118;

/** Lines of plain text, broken at spaces but not inside a figure. */
function wrapped(text: string): string {
  const lines = [''];
  for (const word of text.replace(/`[^`]*`/g, (figure) => figure.replaceAll(' ', '\u0000')).split(/\s+/)) {
    const last = lines[lines.length - 1];
    if (last === '') lines[lines.length - 1] = word;
    else if (last.length + word.length < WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.join('\n').replaceAll('\u0000', ' ');
}

function stays(): string {
  return `## What stays

Of the nitrogen that the animals drop and of the feed they waste, \`=nitrogenKeptKg of Paddock\` are still on the farm after
the winter out of doors, \`=nitrogenKeptKg of Slats\` from the slats and \`=nitrogenKeptKg of Deep bed\` from the bed, on ground
that was chosen, after the rain that follows has drained.

${cell('ledger', 'element: nitrogen')}
${cell('ledger', 'element: potassium')}`;
}

function built({ standing }: Plan): string {
  const quotes = 'Quotes of your own replace the prices line by line.';
  if (standing === undefined)
    return `To build, the slatted shed costs \`=capitalCost of Slats\` and the shed for the bed \`=capitalCost of Deep bed\`. ${quotes}`;
  return standing.use === 'bed'
    ? `Beside the shed that stands, the slatted one would cost \`=capitalCost of Slats\` to build. ${quotes}`
    : `Beside the shed that stands, the one for the bed would cost \`=capitalCost of Deep bed\` to build. ${quotes}`;
}

function takes(plan: Plan): string {
  return `## What it takes

${cell('compare', 'measure: labourHours', 'caption: Hours of our own work over the winter and the spreading that follows')}
The bed wants \`=beddingTonnes of Deep bed\` of bedding, to be stacked under cover before the first snow. It leaves
\`=compostTonnes of Deep bed\` of compost.

${cell('compare', 'measure: netCost', 'caption: A year’s cost, less what the kept nutrients are worth')}
${cell('costs')}
${wrapped(built(plan))}

${cell('bill', 'scenario: Deep bed')}
${cell('bill', 'scenario: Slats')}
## The money

Set against the winter out of doors, over the years the works are counted:

${cell('cashflow')}
${cell('case', 'scenario: Deep bed')}`;
}

function shed({ mix }: Worked): string {
  return `## Whether the shed still fits in April

${wrapped(`By the end of the winter the bed${mix.length > 1 ? ', mixed of what lies in reach,' : ''} stands \`=packDepthM of Deep bed\` above the floor. Animals, barrier, gates and loader must all still fit on top of it.`)}

${cell('section', 'scenario: Deep bed')}
${cell('checks')}
Loads on walls, roof and slab are for a licensed engineer. Space for animals, storing and spreading are matters of local
rule, and in some countries cows may not be housed on slats alone: ask the authority before the first post is set. Where a
slurry tank is stirred, its gas kills without warning: everyone and every animal out first, doors open, and nobody goes
back in, not even for one who fell.
`;
}

function sure({ loan, grant }: Plan): string {
  return `## How sure

The same draws are used for every column, so that two columns are compared under the same luck.

${cell('draws', 'measure: netCost')}
If one number is to be measured before deciding, it is the first of these:

${cell('rank', 'measure: netCost', 'between: [Paddock, Deep bed]', 'top: 8')}
${
  loan > 0 || grant > 0
    ? 'What is written above of loan and grant is wished for, not promised. Terms, tax and security are for a professional to settle.\n\n'
    : ''
}${cell('calendar', 'scenario: Deep bed')}
${cell('sources')}`;
}
