import { describe, expect, it } from 'vitest';
import { checkOf, checksOf } from './fixture.ts';

/** 24 head for 189 days, as the fixture has them: kilograms a head and day into the herd's winter. */
const fed = (need: number, appetite: number, eaten: number, unmet = Math.max(0, need - appetite)) => ({
  dryMatterNeedKg: need * 24 * 189,
  dryMatterAppetiteKg: appetite * 24 * 189,
  dryMatterEatenKg: eaten * 24 * 189,
  needUnmetKg: unmet * 24 * 189,
  conditionGainedKg: 0,
  conditionLostKg: 0,
});
const ask = (id: string, values: Record<string, number>) => checkOf(id, {}, 0.5, values);

describe('the ration', () => {
  it('passes when it can be eaten, and says that less than appetite must be measured out', () => {
    const check = ask('rationReach', fed(9, 11, 9));
    expect(check).toMatchObject({ status: 'pass', value: 0 });
    expect(check.words).toContain('measured out');
    expect(ask('rationReach', fed(9, 11, 11)).words).not.toContain('measured out');
  });

  it('is looked at when a little of the need cannot be eaten, and stopped when much cannot', () => {
    expect(ask('rationReach', fed(10, 9.5, 9.5)).status).toBe('look');
    expect(ask('rationReach', fed(15, 11, 11))).toMatchObject({ status: 'stop', limit: 0.02 });
  });

  it('finds one group that cannot eat its need beside another that eats more', () => {
    expect(ask('rationReach', fed(10, 11, 10, 0.5)).status).toBe('look');
  });

  it('cautions where animals end fatter or thinner than wanted', () => {
    const kg = (gained: number, lost: number) => ({
      ...fed(9, 11, 10),
      conditionGainedKg: gained * 24,
      conditionLostKg: lost * 24,
    });
    expect(ask('condition', kg(10, 0)).status).toBe('pass');
    expect(ask('condition', kg(80, 0))).toMatchObject({ status: 'look', value: 80 });
    expect(ask('condition', kg(80, 0)).words).toContain('calve harder');
    expect(ask('condition', kg(0, 45)).words).toContain('short of the wanted gain');
    expect(ask('condition', kg(0, 90)).status).toBe('stop');
  });

  it('is not asked of a farm without animals', () => {
    const none = checksOf({}, 0.5, { ...fed(9, 11, 9), headCount: 0 });
    expect(none.filter((c) => c.theme === 'feed')).toEqual([]);
  });
});
