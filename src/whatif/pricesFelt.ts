/** Which prices a notebook's money hangs on: turned a little, one at a time, they move it. */
import type { Binding } from '../model/bind.ts';
import { repeatScenarios, runBlock, type Setting } from '../study/rows.ts';
import { setTurn } from './turn.ts';

/** What a price can move: what is built, and what a year costs or brings. */
const MONEY = ['capitalCost', 'netCost', 'nutrientValue'] as const;
/** How much each is turned by; linear sums show any turn, and this one is far above rounding. */
const TURN = 1.01;
const ROUNDING = 1e-12;

const known = new WeakMap<Setting['bound'], readonly Binding[]>();

/** Prices in use, each by its id once; those of things that nobody builds, feeds or beds with are not among them. */
export function pricesFelt(setting: Setting): readonly Binding[] {
  const before = known.get(setting.bound);
  if (before) return before;
  const found = new Map<string, { binding: Binding; at: { scenario: number; column: string }[] }>();
  setting.bound.forEach(({ bindings }, scenario) => {
    for (const binding of bindings.values()) {
      if (binding.origin !== 'price' || !(binding.value > 0)) continue;
      const entry = found.get(binding.id) ?? { binding, at: [] };
      entry.at.push({ scenario, column: binding.column });
      found.set(binding.id, entry);
    }
  });
  const prices = [...found.values()];
  const block = repeatScenarios(setting, prices.length + 1, MONEY);
  prices.forEach(({ binding, at }, k) => {
    setTurn(block, { at, herds: [] }, k + 1, binding.value * TURN);
  });
  const made = runBlock(block, setting.weather);
  const moves = (name: (typeof MONEY)[number], repeat: number) =>
    setting.bound.some((_, scenario) => {
      const [still, turned] = [made[name][scenario], made[name][repeat * block.scenarios + scenario]];
      return Math.abs(turned - still) > ROUNDING * Math.max(1, Math.abs(still));
    });
  const felt = prices.flatMap(({ binding }, k) =>
    MONEY.some((name) => moves(name, k + 1)) ? [binding] : [],
  );
  known.set(setting.bound, felt);
  return felt;
}
