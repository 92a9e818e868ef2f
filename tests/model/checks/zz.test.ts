import { writeFileSync } from 'node:fs';
import { test } from 'vitest';
import { coefficients, resultWith } from './fixture.ts';
import { planScene, planDrawing, planFinding } from '../../../src/plots/plan.ts';
import { toMarkup } from '../../../src/plots/drawing.ts';
test('x', () => {
  for (const [name, patch] of [['p', { shed: { depthM: 9 } }], ['q', { shed: { depthM: 12, stanceDepthM: 4.5, exits: 3, waterBowls: 3 } }]] as const) {
    const r = resultWith(patch as never);
    for (const w of [390, 1280]) {
      const s = planScene({ ...r, coefficients }); if (typeof s === 'string') throw new Error(s);
      writeFileSync(`/tmp/wk/shots/${name}-${w}.svg`, toMarkup(planDrawing(s, w - 32), planFinding(s)));
      if (w === 390) console.log(planFinding(s));
    }
  }
});
