import { describe, expect, it } from 'vitest';
import { checkOf, checksOf, coefficients } from './fixture.ts';

describe('wind on a shed', () => {
  it('is a number for the engineer beside the snow, and no design', () => {
    const at = (basicWindMPerS: number) => checkOf('windLoad', { shed: { basicWindMPerS } });
    expect(at(24).status).toBe('look');
    expect(at(24).words).toContain('A number for the engineer, not a design');
    expect(at(30).value! / at(20).value!).toBeCloseTo(1.5 ** 2, 9);
  });
});

describe('frost under a shed', () => {
  it('asks for foundations below it, and says what the bill counts', () => {
    const shallow = checkOf('frostDepth', { shed: { frostDepthM: 0.6 } });
    const deep = checkOf('frostDepth', { shed: { frostDepthM: 1.4 } });
    expect(shallow).toMatchObject({
      status: 'look',
      value: 0.6,
      limit: coefficients.get('padDepthM')!.central,
    });
    expect(deep.value).toBe(1.4);
    expect(deep.words).toContain('counts 0.8 m of stub');
    expect(deep.words).toContain('local code');
    const reckoned = checkOf('frostDepth', {}, 0.5, { frostDepthM: 0.9 });
    expect(reckoned.value).toBe(0.9);
    expect(reckoned.words).toContain('0.9 m reckoned from the winters of the weather in use');
  });
});

describe('rain on snow', () => {
  const at = (country: string, snowLoadKnPerM2 = 2) =>
    checksOf({ place: { country }, shed: { snowLoadKnPerM2 } }).find(({ id }) => id === 'rainOnSnow');
  it('is asked about only where the code of the country has it', () => {
    expect(at('SE')).toBeUndefined();
    expect(at('CA')).toMatchObject({ status: 'look', value: 0.4, unit: 'kN/m²' });
    // 0.8 × 2 kN/m² of snow on a low slope, and 0.4.
    expect(at('CA')!.words).toContain('2 kN/m² on the roof in all');
    expect(at('CA', 0)).toBeUndefined();
  });
  it('falls away in the American standard where snow is deep', () => {
    expect(at('US', 0.9)!.value).toBe(0.24);
    expect(at('US', 0.9)!.words).toContain('0.96 kN/m² in all');
    expect(at('US', 1)!.value).toBe(0);
    expect(at('US', 1)!.words).toContain('adds rain on snow only where');
  });
});

describe('a trough under the eave', () => {
  const at = (shed: Record<string, unknown>) => checkOf('troughUnderEave', { shed });
  it('is seen as such, and not where the roof runs on', () => {
    expect(at({ overhangM: 0.6 })).toMatchObject({ status: 'look', value: 0.6, limit: 0.8 });
    expect(at({ overhangM: 0.6 }).words).toContain('snow slides into it');
    const metres = /edge ([\d.]+) m/.exec(at({ overhangM: 0.6 }).passesWith ?? '')?.[1];
    expect(at({ overhangM: Number(metres) }).status).toBe('pass');
    expect(at({ overhangM: Number(metres) - 0.01 }).status).toBe('look');
    expect(at({ overhangM: 1 }).passesWith).toBeUndefined();
    expect(at({ overhangM: 1 }).status).toBe('pass');
    expect(at({ overhangM: 0.6, feedRoadRoofed: true })).toMatchObject({ status: 'pass', value: 5 });
  });
});
