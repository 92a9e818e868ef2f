/** What would have to be true for a scenario to pay against its baseline: the level of each price at which both are even. */
import type { Setting } from '../study/rows.ts';
import { breakEvens } from './breakEven.ts';
import { type Turn, turnOf } from './turn.ts';

/** Prices are looked at up to so many times what they are, works up to twice. */
export const PRICE_REACH = 4;
const WORKS_REACH = 2;

export interface Need {
  readonly kind: 'bedding' | 'feed' | 'hour' | 'works';
  /** As the tables or the notebook call it. */
  readonly label: string;
  /** Money, or money a tonne or hour. */
  readonly unit: string;
  readonly now: number;
  /** Furthest level looked at; the nearest is 0. */
  readonly furthest: number;
  /** Level at which the scenario is even with its baseline, the one nearest to `now`; null where there is none. */
  readonly at: number | null;
}

/** Nearest first, what has no such level last. `capital` is what the works cost as it stands. */
export function needsOf(setting: Setting, scenario: number, baseline: number, capital: number): Need[] {
  const { bindings } = setting.bound[scenario];
  const priced = (family: 'material' | 'feed') => [
    ...new Set(
      [...bindings.values()].flatMap(({ column, id, value }) => {
        const member = new RegExp(`^${family}(\\d+)PricePerTonne$`).exec(column)?.[1];
        const used = (bindings.get(`${family}${member}Share`)?.value ?? 0) > 0;
        return member !== undefined && used && value > 0 ? [id] : [];
      }),
    ),
  ];
  const price = (kind: Need['kind'], id: string) => {
    const turn = turnOf(setting, id);
    return turn && turn.now > 0
      ? [needOf(setting, kind, turn, turn.now * PRICE_REACH, scenario, baseline)]
      : [];
  };
  const works: Turn = {
    name: 'capitalGiven',
    label: 'the works',
    unit: 'money',
    now: capital,
    at: [{ scenario, column: 'capitalGiven' }],
    herds: [],
  };
  const near = ({ at, now }: Need) =>
    at === null ? Number.POSITIVE_INFINITY : Math.abs(Math.log(Math.max(at, now * 1e-6) / now));
  return [
    ...priced('material').flatMap((id) => price('bedding', id)),
    ...priced('feed').flatMap((id) => price('feed', id)),
    ...price('hour', 'labourPricePerHour'),
    ...(capital > 0 ? [needOf(setting, 'works', works, capital * WORKS_REACH, scenario, baseline)] : []),
  ].sort((a, b) => near(a) - near(b));
}

function needOf(
  setting: Setting,
  kind: Need['kind'],
  turn: Turn,
  furthest: number,
  scenario: number,
  baseline: number,
): Need {
  const { now, label, unit } = turn;
  const { ties } = breakEvens(setting, turn, [0, furthest], 'netPresentValue', scenario, baseline);
  const nearest = ties.reduce<(typeof ties)[number] | undefined>(
    (best, tie) => (best === undefined || Math.abs(tie.at - now) < Math.abs(best.at - now) ? tie : best),
    undefined,
  );
  return {
    kind,
    label,
    unit,
    now,
    furthest,
    at: nearest?.at ?? null,
  };
}
