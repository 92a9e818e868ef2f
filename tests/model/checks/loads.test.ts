import { describe, expect, it } from 'vitest';
import { checkOf, coefficients } from './fixture.ts';

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
    const shallow = checkOf('frostDepth', {});
    const deep = checkOf('frostDepth', { shed: { frostDepthM: 1.4 } });
    expect(shallow).toMatchObject({
      status: 'look',
      value: 0.6,
      limit: coefficients.get('padDepthM')!.central,
    });
    expect(deep.value).toBe(1.4);
    expect(deep.words).toContain('counts 0.8 m of stub');
    expect(deep.words).toContain('local code');
  });
});
