import { describe, expect, it } from 'vitest';
import { cowHeatW, growingHeatW, heatAtW, sensibleHeatW } from '../../src/model/works/animalHeat.ts';
import {
  effectiveOpeningM2,
  openingForM2,
  type Stack,
  stackFlowM3PerS,
  stackWarmingK,
} from '../../src/model/works/stackEffect.ts';
import { sum } from './labels.ts';

const HOUR = 3600;

describe(sum('heat of cattle'), () => {
  // CIGR, Climatization of animal houses, 4th report (2002); equations from memory, numbers derived (regression).
  const cow = cowHeatW(600, 0, 200);
  it('a dry cow of 600 kg at day 200 gives 806.9 W at 20 °C', () => {
    expect(Math.abs(cow - 806.9)).toBeLessThanOrEqual(0.5);
  });
  it.each([
    [0, 871, 619],
    [10, 839, 593],
  ])('and at %d °C %d W, of which %d W warm the air', (temperature, total, sensible) => {
    expect(Math.abs(heatAtW(cow, temperature) - total)).toBeLessThanOrEqual(0.6);
    expect(Math.abs(sensibleHeatW(cow, temperature) - sensible)).toBeLessThanOrEqual(0.6);
  });
  it('a steer of 350 kg that gains 0.6 kg a day on 10 MJ/kg gives 576.7 W', () => {
    expect(
      Math.abs(growingHeatW({ weightKg: 350, gainKgPerDay: 0.6, feedMjPerKg: 10 }) - 576.7),
    ).toBeLessThanOrEqual(0.5);
  });
  it('milk adds 22 W a kilogram', () => {
    expect(cowHeatW(600, 10, 0) - cowHeatW(600, 0, 0)).toBeCloseTo(220, 9);
  });
  it('never cools the house in great heat', () => {
    expect(sensibleHeatW(800, 200)).toBe(0);
  });
});

describe(sum('air by stack effect'), () => {
  // Orifice and heat balance together (theory of Bruce 1978); numbers derived (regression). Forty such cows at 0 °C.
  const stack: Stack = {
    sensibleW: 24_749,
    heightM: 3,
    outsideK: 275,
    discharge: 0.6,
    densityKgPerM3: 1.27,
    heatJPerKgK: 1010,
  };
  const opening = effectiveOpeningM2(0.3 * 16, 2 * 0.3 * 16);
  const within = (value: number, wanted: number) =>
    expect(Math.abs(value / wanted - 1)).toBeLessThanOrEqual(0.01);

  it('a ridge of 0.3 × 16 m with twice the inlets acts as 4.293 m²', () => {
    expect(opening).toBeCloseTo(4.293, 3);
  });
  it('and draws 3.015 m³/s, 271 m³/h a cow, 6.4 K warmer', () => {
    const flow = stackFlowM3PerS(opening, stack);
    within(flow, 3.015);
    within((flow * HOUR) / 40, 271);
    within(stackWarmingK(flow, stack) ?? 0, 6.4);
  });
  it('a ridge of 0.45 m draws 356 m³/h a cow, 4.9 K warmer', () => {
    const flow = stackFlowM3PerS(effectiveOpeningM2(0.45 * 16, 2 * 0.45 * 16), stack);
    within((flow * HOUR) / 40, 356);
    within(stackWarmingK(flow, stack) ?? 0, 4.9);
  });
  it('180 m³/h a cow need 2.32 m², a ridge of 2.59 m² with twice the inlets', () => {
    const need = openingForM2((180 * 40) / HOUR, stack) ?? 0;
    within(need, 2.32);
    within((need * Math.sqrt(5)) / 2, 2.59);
  });
  it('the opening and the flow undo each other', () => {
    for (const area of [0.5, 2, 9])
      expect(openingForM2(stackFlowM3PerS(area, stack), stack)).toBeCloseTo(area, 9);
  });
  it('nothing moves without heat, height or an opening', () => {
    expect(stackFlowM3PerS(4, { ...stack, sensibleW: 0 })).toBe(0);
    expect(stackFlowM3PerS(4, { ...stack, heightM: -1 })).toBe(0);
    expect(effectiveOpeningM2(0, 0)).toBe(0);
    expect(openingForM2(1, { ...stack, sensibleW: 0 })).toBeNull();
    expect(stackWarmingK(0, stack)).toBeNull();
  });
});
