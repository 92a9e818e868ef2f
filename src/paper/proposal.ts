/** What is to be built, in words and to scale. */

import { toMarkup } from '../plots/drawing.ts';
import { show } from '../plots/reading.ts';
import { sceneAt } from '../plots/scene.ts';
import { sectionDrawing } from '../plots/section.ts';
import { type Html, html, made } from './html.ts';
import type { Report } from './report.ts';

/** Drawn wider than it is printed, so that its letters stay apart. */
const SECTION_WIDTH = 780;

const m = (value: number) => `${Number(value.toFixed(2))} m`;

export function proposalSection(report: Report): Html {
  const { result, timber } = report.proposal;
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
    ${placement.bedShare > 0 ? section(report) : ''}
    ${timber.length === 0 ? '' : html`<h3>Timber that is too long in one piece</h3><ul>${timber.map(({ member, neededM, longestM, alternatives }) => html`<li>A ${member} would be ${m(neededM)}; the longest to be had is ${m(longestM)}. Instead: ${alternatives.join('; or ')}.</li>`)}</ul>`}
  </section>`;
}

/** The section as it stands when the bed is highest. */
function section({ proposal: { result }, run }: Report): Html {
  const { scenario, values, tracks, bands } = result;
  const week = Math.max(0, Math.ceil((values.winterDays ?? 7) / 7) - 1);
  const scene = sceneAt(
    { scenario, values, tracks, coefficients: run.tables.coefficients, ...(bands ? { bands } : {}) },
    week,
  );
  if (typeof scene === 'string') return html`<p class="gap">${scene}</p>`;
  return html`<figure class="section">${made(toMarkup(sectionDrawing(scene, SECTION_WIDTH, 'paper-section'), 'The shed cut across at the end of the winter'))}
    <figcaption>The shed cut across at the end of the winter, to scale. It is a drawing to talk over, not to build from.</figcaption></figure>`;
}
