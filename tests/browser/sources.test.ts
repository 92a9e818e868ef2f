// Under the sources the page says how the model fared against measurements, with the score that is kept.
import { afterEach, expect, it } from 'vitest';
import score from '../../data/cases/score.json';
import '../../src/elements/cells/wk-sources.ts';
import type { Run } from '../../src/study/evaluate.ts';

afterEach(() => document.body.replaceChildren());

it('shows the score beside the sources, failures with it', async () => {
  const element = document.createElement('wk-sources');
  element.run = {
    bound: [],
    tables: { coefficients: new Map(), prices: new Map(), sources: new Map() },
  } as unknown as Run;
  document.body.append(element);
  await element.updateComplete;
  const { outputs, studies, pass, near, fail, insideDraws } = score.independent;
  const text = (element.shadowRoot?.textContent ?? '').replace(/\s+/g, ' ');
  expect(text).toContain(`${outputs} measurements of ${studies} published studies`);
  expect(text).toContain(
    `${pass} agree, ${near} are near, ${fail} are off; ${insideDraws} lie inside the range`,
  );
});
