import { describe, expect, it } from 'vitest';
import { closedPeriod, firstOpenDay, isClosed } from '../../../src/model/checks/closedPeriod.ts';
import { checkOf, checksOf, coefficients } from './fixture.ts';

const find = (id: string) => coefficients.get(id);

describe('air', () => {
  it('shows stack sum and handbook rules side by side', () => {
    const { words } = checkOf('ridgeSlot');
    expect(words).toContain('Irish rule asks 450 mm');
    expect(words).toContain('North American 200 mm');
    expect(words).toContain('stack sum');
  });

  it('stops when nothing lets air out', () => {
    expect(checkOf('stackAir', { shed: { ridgeSlotM: 0 } })).toMatchObject({ status: 'stop', value: 0 });
  });
});

describe('loads', () => {
  it('are numbers for the engineer, never a pass', () => {
    const loads = checksOf().filter((c) => c.theme === 'loads');
    expect(loads.length).toBeGreaterThanOrEqual(4);
    for (const check of loads) {
      expect(check.status, check.id).toBe('look');
      expect(check.words, check.id).toContain('engineer');
    }
  });
});

describe('slurry', () => {
  it('is measured against the store below its freeboard', () => {
    // 60 m² × (2.4 − 0.2) m.
    expect(checkOf('slurryStore', { system: 'slatted' })).toMatchObject({ status: 'stop', limit: 190 });
    expect(checkOf('slurryStore', { system: 'slatted' }).value).toBeCloseTo(132, 9);
    expect(checkOf('slurryStore', { system: 'slatted', slats: { areaM2: 90 } }).status).toBe('pass');
  });

  it('warns of its gas whatever else holds', () => {
    expect(checkOf('slurryGas', { system: 'slatted' }).words).toContain('animals out');
    expect(checksOf().some((c) => c.id === 'slurryGas')).toBe(false);
  });

  it('stops cows on slats in Sweden and nowhere else', () => {
    expect(checkOf('slattedCowsSweden', { system: 'slatted' }).status).toBe('stop');
    expect(
      checksOf({ system: 'slatted', place: { country: 'IE' } }).some((c) => c.id === 'slattedCowsSweden'),
    ).toBe(false);
  });
});

describe('land', () => {
  it('compares area needed with area at hand', () => {
    expect(checkOf('phosphorusCap').status).toBe('pass');
    expect(checkOf('phosphorusCap', {}, 0.5, { areaForPhosphorusHa: 31 }).status).toBe('stop');
    expect(checkOf('nitrogenCap', {}, 0.5, { areaForNitrogenHa: 31 }).status).toBe('stop');
  });

  it('knows the closed period across the new year', () => {
    // Sensitive areas in Sweden, municipal wording (published): 1 November to 28 February.
    const sweden = closedPeriod('SE', 'solid', true, find);
    if (!sweden) throw new Error('no period');
    expect(isClosed(sweden, '2025-12-24')).toBe(true);
    expect(isClosed(sweden, '2026-03-01')).toBe(false);
    expect(firstOpenDay(sweden, '2026-01-10')).toBe('2026-03-01');
    expect(firstOpenDay(sweden, '2026-05-10')).toBe('2026-05-10');
    expect(closedPeriod('GB', 'solid', true, find)).toBeNull();
    // Farmyard manure in Ireland: from 1 November (from memory).
    expect(closedPeriod('IE', 'solid', true, find)?.from.central).toBe(305);
    expect(checkOf('closedPeriod', { rest: { spreading: { month: 12 } } }).status).toBe('stop');
    expect(checkOf('closedPeriod', { place: { country: 'FR' } }).status).toBe('look');
  });

  it('measures the wintering paddock', () => {
    expect(checkOf('paddockLoad', { system: 'outwintered' }, 0.5, { nitrogenLoadKgPerHa: 200 }).status).toBe(
      'stop',
    );
    expect(checkOf('outdoorShelter', { system: 'outwintered' }).status).toBe('stop');
    // Elsewhere the Swedish rule is said to be for comparison, and stops nothing.
    const away = checkOf('outdoorShelter', { system: 'outwintered', place: { country: 'IE' } });
    expect(away).toMatchObject({ status: 'look', foreign: true });
    expect(away.words).toMatch(/^No rule for IE in the tables; that of Sweden, for comparison: /);
  });
});

describe('the bed', () => {
  it('is judged on water, air and carbon', () => {
    expect(checkOf('bedMoisture', {}, 0.5, { packMoisture: 0.8 }).status).toBe('stop');
    expect(checkOf('bedAirSpace', {}, 0.5, { packFreeAirSpace: 0.2 }).status).toBe('look');
    expect(checkOf('bedCarbonNitrogen', {}, 0.5, { packCarbonNitrogen: 18 }).status).toBe('stop');
    expect(
      checkOf('chipMoisture', {
        farm: { materials: [{ material: 'softwoodChips', tonnes: 9, moistureFraction: 0.5 }] },
      }).status,
    ).toBe('look');
  });

  it('asks for the stock of the scarcest material', () => {
    // 20 t of chips at a share of 0.3 make 66.7 t of mix, 30 t of straw at 0.7 make 42.9 t.
    expect(checkOf('beddingStock').value).toBeCloseTo(30 / 0.7, 9);
    expect(checkOf('beddingStock', {}, 0.5, { beddingTonnes: 60 }).status).toBe('stop');
  });
});
