/**
 * Notebooks from somebody who means harm: what runs, fetches or breaks out elsewhere, put wherever a notebook takes words.
 * Fixed seed, so that a case is its number.
 */
import { type Chance, chanceOf } from '../fuzz/chance.ts';

/** Every payload calls or fetches this, so that one look tells whether any of it worked. */
export const SIGN = 'hostile';
const RUN = `window.${SIGN}=1`;
const FETCH = `http://${SIGN}.invalid/x`;

const PAYLOADS: readonly string[] = [
  `<script>${RUN}</script>`,
  `</script><script>${RUN}</script>`,
  `<img src=x onerror="${RUN}">`,
  `<svg onload="${RUN}">`,
  `<svg><script>${RUN}</script></svg>`,
  `<svg><animate onbegin="${RUN}" attributeName=x>`,
  `<math><mi xlink:href="javascript:${RUN}">`,
  `<iframe srcdoc="<script>parent.${SIGN}=1</script>"></iframe>`,
  `<iframe src="${FETCH}"></iframe>`,
  `<object data="${FETCH}"></object><embed src="${FETCH}">`,
  `<link rel=stylesheet href="${FETCH}"><style>@import "${FETCH}";</style>`,
  `<meta http-equiv=refresh content="0;url=${FETCH}"><base href="${FETCH}">`,
  `<video src="${FETCH}" onerror="${RUN}"><audio src="${FETCH}">`,
  `<input autofocus onfocus="${RUN}"><details open ontoggle="${RUN}">`,
  `<body onload="${RUN}"><marquee onstart="${RUN}">`,
  `" onmouseover="${RUN}" x="`,
  `' onfocus='${RUN}' autofocus x='`,
  `"><script>${RUN}</script>`,
  `--><script>${RUN}</script>`,
  `]]><script>${RUN}</script>`,
  `</style><script>${RUN}</script>`,
  `</title><script>${RUN}</script>`,
  `</textarea><script>${RUN}</script>`,
  `</svg><script>${RUN}</script>`,
  `[a](javascript:${RUN})`,
  `[a](JaVaScRiPt:${RUN})`,
  `[a](java&#115;cript:${RUN})`,
  `[a](&#x6A;avascript:${RUN})`,
  `[a](javascript&colon;${RUN})`,
  `[a]( \u0001javascript:${RUN})`,
  `[a](java\tscript:${RUN})`,
  `[a](<javascript:${RUN}>)`,
  `[a](data:text/html,<script>${RUN}</script>)`,
  `[a](vbscript:${RUN}) [b](file:///etc/passwd) [c](blob:x)`,
  `[a]: javascript:${RUN}\n\n[a]`,
  `<javascript:${RUN}> <${FETCH}>`,
  `![a](${FETCH}) ![b][r]\n\n[r]: ${FETCH}`,
  `[![a](${FETCH})](javascript:${RUN})`,
  `[a](${FETCH} "\\" onclick=\\"${RUN}")`,
  `\`<script>${RUN}</script>\` \`=netCost of <img src=x onerror=${RUN}>\``,
  `\`=netCost of " onclick="${RUN}\``,
  `| <script>${RUN}</script> | ![a](${FETCH}) |\n|---|---|\n| <img src=x onerror=${RUN}> | x |`,
  `url(${FETCH})`,
  `x; background: url("${FETCH}")`,
  `\\"; } * { background: url(${FETCH}) } @import "${FETCH}"; x { y: "`,
  `\${${RUN}} {{${RUN}}} <%= ${RUN} %> #{${RUN}}`,
  `=HYPERLINK("${FETCH}") +1 @SUM(1) -2+3`,
  'constructor',
  '__proto__',
  'toString',
  '../../../../etc/passwd',
  '\u202etxt.exe \u2066x\u2069',
  '\u0007\u001b[2J\u009b1A',
  '\uFEFF\u200b\u2028\u2029',
  'a\u0301\u0301\u0301\u0301 \ud800',
];

const quoted = (text: string) => JSON.stringify(text);
const indented = (text: string, by: string) => text.split('\n').join(`\n${by}`);

/** Where words stand in a notebook, each with how they are written there. */
interface Places {
  title: string;
  place: string;
  group: string;
  because: string;
  name: string;
  file: string;
  key: string;
  more: string;
  prose: string;
}

const frontOf = (p: Places) => `---
winterkeep: 1
title: ${p.title}
invented: true
farm:
  place: { name: ${p.place}, latitudeDeg: 57, longitudeDeg: 15 }
  winter: { start: 2025-11-01, end: 2026-04-30 }
  weather:
    ${p.file}
  soil: { texture: loam }
  herd: [{ name: ${p.group}, class: sucklerCow, head: 16, weightKg: 620 }]
  feed: [{ feed: hay, share: 1 }]
  materials: [{ material: barleyStraw, tonnes: 50 }]
  land: { receivingHa: 20 }
  money: { currency: EUR, year: 2024, labourPerHour: 15 }
scenarios:
  - { name: ${p.name}, system: outwintered, because: ${p.because} }
  - { name: Deep bed, system: deep-bedded, because: To see, bed: { mix: [{ material: barleyStraw, share: 1 }] } }
${p.more}${p.key}---

# Words

The bed keeps \`=nitrogenKeptKg of Deep bed\`.

${p.prose}
`;

const MONTHLY =
  'monthly: { rainMm: [40, 30, 35, 40, 50, 70, 80, 80, 60, 60, 55, 50], temperatureC: [-5, -5, -1, 5, 11, 15, 17, 16, 11, 6, 1, -3] }';

const PLAIN: Places = {
  title: 'Words',
  place: 'Nowhere',
  group: 'cows',
  because: 'As it is',
  name: 'Out',
  file: MONTHLY,
  key: '',
  more: '',
  prose: '```ledger\n```\n',
};

/** A sound notebook of the same size, to measure the machine with. */
export const PLAIN_NOTEBOOK = frontOf(PLAIN);

const PUT: readonly ((words: string, chance: Chance) => Partial<Places>)[] = [
  (words) => ({ title: quoted(words.slice(0, 190)) }),
  (words) => ({ place: quoted(words.slice(0, 190)) }),
  (words) => ({ group: quoted(words.slice(0, 190)) }),
  (words) => ({ because: quoted(words) }),
  (words) => ({ name: quoted(words.slice(0, 60)) }),
  (words) => ({ file: `file: ${quoted(words)}` }),
  (words) => ({ key: `${quoted(words)}: 1\n` }),
  (words) => ({ key: `? ${quoted(words)}\n: 1\n` }),
  (words) => ({ more: `decide: { weights: { ${quoted(words)}: 1 } }\n` }),
  (words) => ({
    more: `coefficients: [{ id: packDryDensityKgPerM3, value: 200, because: ${quoted(words)} }]\n`,
  }),
  (words) => ({ more: `coefficients: [{ id: ${quoted(words)}, value: 200, because: x }]\n` }),
  (words) => ({
    more: `diary: [{ kind: note, date: 2025-12-01, note: ${quoted(words)} }]\n`,
    prose: '```diary\n```\n',
  }),
  (words) => ({ prose: words }),
  (words) => ({ prose: `- ${indented(words, '  ')}` }),
  (words) => ({ prose: `> ${indented(words, '> ')}` }),
  (words) => ({ prose: `## ${words}` }),
  (words) => ({ prose: `**${words}** _${words}_ ~~${words}~~` }),
  (words) => ({ prose: `[${words}](${words} "${words}")` }),
  (words) => ({ prose: `[r]: <${words}> '${words}'\n\n[r] [${words}][r]` }),
  (words) => ({ prose: `\`${words}\` \`\`${words}\`\`` }),
  (words) => ({ prose: `\`\`\`${words}\n${words}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`js ${words}\n${words}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`weather ${words}\nday,rain\n${words}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`ledger\ncaption: ${quoted(words)}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`sources\ncaption: ${quoted(words)}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`compare\nmeasure: ${quoted(words)}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`compare\nmeasure: netCost\n${quoted(words)}: 1\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`section\nscenario: ${quoted(words)}\n\`\`\`` }),
  (words) => ({ prose: `\`\`\`cards\nmeasures: [${quoted(words)}]\n\`\`\`` }),
  (words) => ({ prose: `\`=${words}\` \`=netCost of ${words}\`` }),
  (words) => ({ prose: `| a | ${words} |\n|---|---|\n| ${words} | b |` }),
  (words) => ({ prose: `    ${words}\n\n${words}\n===` }),
];

export function hostile(number: number): string {
  const chance = chanceOf(number, 'hostile');
  const places = { ...PLAIN };
  // Each payload is met in turn, so that none is left out by chance.
  const words = [PAYLOADS[number % PAYLOADS.length], chance.one(PAYLOADS)];
  for (let k = 0; k < 1 + chance.upTo(2); k++) Object.assign(places, chance.one(PUT)(words[k], chance));
  return frontOf(places);
}
