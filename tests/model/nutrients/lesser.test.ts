/** The lesser of supply and need over varied ground, against a spreadsheet engine's distributions: no code is shared. */
import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { describe, expect, it } from 'vitest';
import { lesserOverGround } from '../../../src/model/nutrients/lesser.ts';

const SPOTS = 4000;

/** The ground as so many spots of equal size, each with the need at its place of the engine's own lognormal. */
function spotBySpot(supply: number, need: number, cv: number): number {
  const sigma = Math.sqrt(Math.log(1 + cv * cv));
  const rows = Array.from({ length: SPOTS }, (_, k) => [
    `=MIN(${supply},LOGNORM.INV(${(k + 0.5) / SPOTS},${Math.log(need) - (sigma * sigma) / 2},${sigma}))`,
  ]);
  const engine = HyperFormula.buildFromArray([...rows, [`=AVERAGE(A1:A${SPOTS})`]], {
    licenseKey: 'gpl-v3',
  });
  const mean = engine.getCellValue({ sheet: 0, row: SPOTS, col: 0 });
  engine.destroy();
  return mean as number;
}

describe('the lesser of supply and need, spot by spot', () => {
  it.each([
    [30, 30, 0.365],
    [30, 30, 0.18],
    [12, 20, 0.55],
    [50, 20, 0.55],
    [19, 20, 1.2],
  ])('of %d and %d at a variation of %d is what a spreadsheet engine adds up', (supply, need, cv) => {
    expect(lesserOverGround(supply, need, cv)).toBeCloseTo(spotBySpot(supply, need, cv), 1);
    expect(lesserOverGround(supply, need, cv) / spotBySpot(supply, need, cv)).toBeCloseTo(1, 3);
  });

  it('of ground that is alike everywhere, or of nothing, is the lesser of the two', () => {
    expect(lesserOverGround(3, 5, 0)).toBe(3);
    expect(lesserOverGround(5, 3, 0)).toBe(3);
    expect(lesserOverGround(0, 3, 0.4)).toBe(0);
    expect(lesserOverGround(3, 0, 0.4)).toBe(0);
  });

  it('never passes either, grows with both, and falls with the variation', () => {
    const amount = fc.double({ min: 1e-6, max: 1e4, noNaN: true });
    const cv = fc.double({ min: 0.01, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(amount, amount, cv, (supply, need, variation) => {
        const of = lesserOverGround(supply, need, variation);
        const slack = 1e-6 * (supply + need);
        expect(of).toBeGreaterThanOrEqual(0);
        expect(of).toBeLessThanOrEqual(Math.min(supply, need));
        expect(lesserOverGround(supply * 1.1, need, variation)).toBeGreaterThanOrEqual(of - slack);
        expect(lesserOverGround(supply, need * 1.1, variation)).toBeGreaterThanOrEqual(of - slack);
        expect(lesserOverGround(supply, need, variation * 1.2)).toBeLessThanOrEqual(of + slack);
      }),
    );
  });
});
