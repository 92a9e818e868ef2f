/** Whether the ration can be eaten, and whether it gives more or less than the wanted gain. */
import type { ResultName } from '../quantities.ts';
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

/** Kilograms of dry matter a head and day; null where nothing is fed. */
function daily(c: Context) {
  const [head, days] = [c.value('headCount') ?? 0, c.value('winterDays') ?? 0];
  const per = (name: ResultName) => (c.value(name) ?? Number.NaN) / (head * days);
  const found = {
    need: per('dryMatterNeedKg'),
    appetite: per('dryMatterAppetiteKg'),
    eaten: per('dryMatterEatenKg'),
    unmet: per('needUnmetKg'),
  };
  return Object.values(found).every(Number.isFinite) && found.need > 0 ? found : null;
}

const rationReach: CheckRule<Context> = {
  id: 'rationReach',
  theme: 'feed',
  run: (c) => {
    const fed = daily(c);
    if (!fed) return null;
    const row = c.row('needUnmetLookFraction');
    const part = fed.unmet / fed.need;
    const said = `The herd needs ${say(fed.need, 1)} kg of dry matter a head and day of this ration and would eat ${say(fed.appetite, 1)} kg`;
    const left = fed.appetite / Math.max(fed.need, fed.eaten) - 1;
    return {
      status: part > row.high ? 'stop' : part > row.central ? 'look' : 'pass',
      value: part,
      limit: row.central,
      unit: 'fraction',
      row,
      words:
        part > row.central
          ? `${said}: ${say(part * 100, 0)} % of the need cannot be eaten, so animals lose condition whatever is put out. Use feed that is better digested, or ask for less gain; ask a feed adviser.`
          : left > 0.01
            ? `${said}. Fed less than they would eat they need it measured out and room to eat all at once; a feeder that is never empty feeds to appetite.`
            : `${said}.`,
    };
  },
};

const condition: CheckRule<Context> = {
  id: 'condition',
  theme: 'feed',
  run: (c) => {
    const head = c.value('headCount') ?? 0;
    if (!daily(c)) return null;
    const row = c.row('conditionLookKgPerHead');
    const gained = (c.value('conditionGainedKg') ?? 0) / head;
    const lost = (c.value('conditionLostKg') ?? 0) / head;
    const more = gained >= lost;
    const most = Math.max(gained, lost);
    const off = most > row.central;
    return {
      status: lost > row.high ? 'stop' : off ? 'look' : 'pass',
      value: most,
      limit: row.central,
      unit: 'kg/head',
      row,
      words: !off
        ? `By spring animals end ${say(gained - lost, 0)} kg a head off the wanted gain; ${say(row.central, 0)} kg is about half a condition score of a cow.`
        : more
          ? `By spring the ration puts ${say(gained, 0)} kg a head on animals beyond the wanted gain, more than the ${say(row.central, 0)} kg of half a condition score. Fat cows calve harder: feed less or feed that is less digested, or let thin cows use it.`
          : `By spring animals fall ${say(lost, 0)} kg a head short of the wanted gain, more than the ${say(row.central, 0)} kg of half a condition score. Thin cows calve and come in calf worse: score them by hand each month and feed better; ask a vet or feed adviser.`,
    };
  },
};

export const FEED_RULES: readonly CheckRule<Context>[] = [rationReach, condition];
