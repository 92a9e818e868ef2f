/** What is to be built, in words and to scale. */

import { show } from '../plots/reading.ts';
import { type Html, html, made } from './html.ts';
import type { Report } from './report.ts';
import { type ShedPicture, shedPictures } from './sheds.ts';

const m = (value: number) => `${Number(value.toFixed(2))} m`;

export function proposalSection(report: Report): Html {
  const { result, timber, index } = report.proposal;
  const pictures = shedPictures(report, index);
  const { scenario, values } = result;
  const { shed, placement, slats, paddock } = scenario;
  const facts: string[] = [];
  if (placement.bedShare > 0)
    facts.push(
      `${shed.roofed ? 'A shed' : 'An open pad without a roof,'} ${m(shed.lengthM)} long and ${m(shed.depthM)} deep${shed.roofed ? `, ${m(shed.eaveM)} to the eave` : ''}, with a stance of ${m(shed.stanceDepthM)} along the feed and push walls of ${m(shed.pushWallM)}.`,
      `The bed starts ${m(scenario.bed.startDepthM)} deep and is expected to stand ${show(values.packDepthM, 'm', report.reading).text} at the end of the winter.`,
    );
  if (placement.slatsShare > 0)
    facts.push(
      `${show(values.slatsUsedM2, 'm²', report.reading).text} of slats over ${slats.store === 'underSlats' ? `a tank ${m(slats.tankDepthM)} deep` : 'a channel to an outside store'}; ${show(values.slurryM3, 'm³', report.reading).text} of slurry a winter.`,
    );
  if (placement.pastureShare > 0)
    facts.push(
      `${show(paddock.areaHa, 'ha', report.reading).text} of pasture for the winter, moved ${String(paddock.moved)}.`,
    );
  facts.push(
    `The works are counted over ${scenario.farm.money.horizonYears} years; what wears out sooner is bought again.`,
  );
  return html`<section><h2>The proposal: ${result.name}</h2>
    <p>${facts.join(' ')}</p>
    ${pictures.map(figureOf)}
    ${timber.length === 0 ? '' : html`<h3>Timber that is too long in one piece</h3><ul>${timber.map(({ member, neededM, longestM, alternatives }) => html`<li>A ${member} would be ${m(neededM)}; the longest to be had is ${m(longestM)}. Instead: ${alternatives.join('; or ')}.</li>`)}</ul>`}
  </section>`;
}

function figureOf({ markup, words }: ShedPicture): Html {
  return markup === null
    ? html`<p class="gap">${words}</p>`
    : html`<figure class="section">${made(markup)}<figcaption>${words}</figcaption></figure>`;
}

/** The sheds the proposal is compared with, drawn the same way, each once; nothing where no other one is built. */
export function otherSheds(report: Report): Html {
  const same = (k: number) => {
    const { scenario: { shed, placement, slats }, values } = report.results[k];
    return JSON.stringify([shed, placement.bedShare, placement.slatsShare, slats, values.packDepthM]);
  }; // biome-ignore format: one line of names
  const seen = new Set([same(report.proposal.index)]);
  const drawn = report.results.flatMap((_, k) => {
    if (seen.has(same(k))) return [];
    seen.add(same(k));
    return shedPictures(report, k);
  });
  return drawn.length === 0
    ? html``
    : html`<section><h2>The other sheds, drawn the same way</h2>${drawn.map(figureOf)}</section>`;
}
