import { describe, expect, it } from 'vitest';
import { barrierRaises } from '../../../src/model/checks/barrier.ts';
import { bedSeries } from '../../../src/model/checks/bedSeries.ts';
import { checkOf, checksOf, coefficients, problems, resultWith } from './fixture.ts';

describe('the tables of the shed', () => {
  it('are read without a complaint', () => {
    expect(problems.filter((p) => /shed|loads/.test(p.file ?? ''))).toEqual([]);
  });
});

describe('the weekly fit', () => {
  it('lists at least fifteen checks for a deep bed, each with a source, a sentence and no NaN', () => {
    const checks = checksOf();
    expect(checks.length).toBeGreaterThanOrEqual(15);
    for (const check of checks) {
      expect(check.words, check.id).toMatch(/^[A-Z0-9].*[.]$/s);
      expect(check.words, check.id).not.toMatch(/NaN|undefined|Infinity/);
      expect(check.source, check.id).not.toBe('');
      for (const number of [check.value, check.limit])
        if (number !== null) expect(Number.isFinite(number), check.id).toBe(true);
    }
    expect(new Set(checks.map((c) => c.id)).size).toBe(checks.length);
  });

  it('passes the roof at 4.8 m and stops, naming the week, when the eave is a metre lower', () => {
    const high = checkOf('roofClearance', { shed: { eaveM: 4.8 } });
    expect(high).toMatchObject({ status: 'pass', limit: 2.9 });
    expect(high.week).toBeUndefined();
    const low = checkOf('roofClearance', { shed: { eaveM: 3.8 } });
    // Bed 0.30 m + 0.035 m a week; 3.8 m less 2.9 m is 0.9 m, passed in week 18 (0.93 m).
    expect(low).toMatchObject({ status: 'stop', week: 18 });
    expect(low.words).toContain('week 18 (from 16 Feb 2026)');
    expect(low.words).toContain('week 17 (from 9 Feb 2026) is the latest week that still fits');
  });

  it('uses the reach of horned cattle where the loader is lower', () => {
    const check = checkOf('roofClearance', { shed: { machineHeightM: 1.5 } });
    // Horn tips 2.1 m and 0.2 m of margin: rows of our own, basis invented.
    expect(check.limit).toBeCloseTo(2.3, 9);
    expect(check.words).toContain('horned cattle');
    const polled = { herd: [{ name: 'cows', class: 'sucklerCow', head: 16, weightKg: 600 }] };
    expect(checkOf('roofClearance', { shed: { machineHeightM: 1.5 }, farm: polled }).limit).toBeCloseTo(
      1.95,
      9,
    );
  });

  it('uses the lower of two eaves', () => {
    expect(checkOf('roofClearance', { shed: { eaveM: 5, rearEaveM: 3.5 } }).status).toBe('stop');
  });

  it('warns before the bed stops: the loose end of the range fails first', () => {
    const look = checkOf('pushWallHeight');
    expect(look.status).toBe('look');
    const stop = checkOf('pushWallHeight', { shed: { pushWallM: 1.2 } });
    expect(stop.status).toBe('stop');
    // 1.2 m less 0.3 m of wall above the bed: 0.9 m, passed in week 18.
    expect(stop.week).toBe(18);
  });

  it('says in one sentence how long the shed works', () => {
    expect(checkOf('weeksThatFit', { shed: { eaveM: 4.8 } })).toMatchObject({
      status: 'pass',
      value: 27,
      limit: 27,
    });
    expect(checkOf('weeksThatFit', { shed: { eaveM: 3.8 } })).toMatchObject({
      status: 'stop',
      value: 17,
      week: 18,
    });
    expect(checkOf('weeksThatFit', { shed: { eaveM: 3 } }).words).toContain('from the first week');
  });

  it('sinks bowls that stand on the bed and spares those on the stance', () => {
    expect(checkOf('bowlHeight').status).toBe('pass');
    // Rim 0.3 + 0.8 m, 0.4 m at least: the bed may reach 0.7 m, passed in week 12 (0.72 m).
    expect(checkOf('bowlHeight', { shed: { stanceDepthM: 0 } })).toMatchObject({ status: 'stop', week: 12 });
  });

  it('sees the step down to a scraped stance', () => {
    const check = checkOf('stanceStep');
    expect(check.status).toBe('look');
    expect(check.words).toContain('ramps');
  });

  it('follows the drawn range when draws were run', () => {
    const result = resultWith();
    const at = (packDepthM: number) => ({ packDepthM });
    const bands = { p10: at(1), p50: at(1.25), p90: at(1.5) };
    const bed = bedSeries({ ...result, coefficients, bands });
    // The draws' own ends, whatever their middle; as wide in proportion before.
    expect(bed?.end.low).toBeCloseTo(1, 9);
    expect(bed?.end.high).toBeCloseTo(1.5, 9);
    expect((bed?.highM[9] ?? 0) / (bed?.depthM[9] ?? 1)).toBeCloseTo(1.5 / 1.245, 9);
    expect(bed?.drawn).toBe(true);
  });
});

describe('barrier and trough', () => {
  const rows = () => {
    const throat = coefficients.get('barrierThroatM');
    const step = coefficients.get('barrierRaiseStepM');
    if (!throat || !step) throw new Error('rows are missing');
    return { throat, step };
  };

  it('rise about a metre where animals eat from the bed (common practice, no source)', () => {
    const result = resultWith({ shed: { stanceDepthM: 0 } });
    const bed = bedSeries({ ...result, coefficients });
    const raises = bed ? barrierRaises(result.scenario, bed, rows()) : [];
    const total = raises.at(-1)?.totalM ?? 0;
    expect(total).toBeGreaterThanOrEqual(0.6);
    expect(total).toBeLessThanOrEqual(1.5);
    // Before each lift the sill stands no lower than the least useful height above last week's bed.
    raises.forEach((raise, k) => {
      const before = k === 0 ? 0 : raises[k - 1].totalM;
      const last = bed?.depthM[raise.week - 2] ?? 0.3;
      expect(0.3 + 0.5 + before - last).toBeGreaterThanOrEqual(0.45 - 1e-9);
    });
    expect(checkOf('barrierLift', { shed: { stanceDepthM: 0 } }).words).toContain(
      'Raise barrier and trough together: ',
    );
  });

  it('stop where they cannot be lifted far enough', () => {
    const check = checkOf('barrierLift', { shed: { stanceDepthM: 0, barrierLiftM: 0.5 } });
    expect(check.status).toBe('stop');
    expect(check.week).toBeGreaterThan(10);
  });

  it('stay where the stance is scraped', () => {
    expect(checkOf('barrierLift')).toMatchObject({ status: 'pass', value: 0 });
  });
});

describe('a bed by rule of thumb', () => {
  it('starts at 0.3 m and grows about 0.5 cm a day (common practice, no source)', () => {
    expect(checkOf('bedGrowth')).toMatchObject({ status: 'pass' });
    expect(checkOf('bedGrowth').value).toBeCloseTo(0.5, 6);
    expect(checkOf('bedGrowth', {}, 1.4).status).toBe('look');
    expect(coefficients.get('bedStartCheckM')?.central).toBe(0.3);
  });
});
