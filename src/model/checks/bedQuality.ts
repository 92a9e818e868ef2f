/** Is the bed dry, airy and rich enough in carbon, and is there enough bedding in the stack? */

import { sayWeek } from './bedSeries.ts';
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

const moisture: CheckRule<Context> = {
  id: 'bedMoisture',
  theme: 'bed',
  run: (c) => {
    const value = c.bedded ? c.value('packMoisture') : null;
    if (value === null) return null;
    const row = c.row('bedMoistureLimitFraction');
    const track = c.tracks.weekPackMoisture ?? new Float64Array();
    const at = track.findIndex((wet) => wet > row.central);
    const week = at < 0 ? undefined : at + 1;
    return {
      status: value <= row.central ? 'pass' : value <= row.high ? 'look' : 'stop',
      value: value * 100,
      limit: row.central * 100,
      unit: '%',
      row,
      week,
      words: `The bed ends at ${say(value * 100, 1)} % moisture; above ${say(row.central * 100, 1)} % hides get dirty and the bed stays cold${week ? `, passed first in ${sayWeek(c.scenario, week)}` : ''}. Bedding, area and air dry it, in that order of cost.`,
    };
  },
};

const airSpace: CheckRule<Context> = {
  id: 'bedAirSpace',
  theme: 'bed',
  run: (c) => {
    const value = c.bedded ? c.value('packFreeAirSpace') : null;
    if (value === null) return null;
    const row = c.row('bedAirSpaceFraction');
    return {
      status: value >= row.central ? 'pass' : 'look',
      value: value * 100,
      limit: row.central * 100,
      unit: '%',
      row,
      words: `${say(value * 100, 0)} % of the bed is air; below ${say(row.central * 100, 0)} % it does not warm by itself.`,
    };
  },
};

const carbonNitrogen: CheckRule<Context> = {
  id: 'bedCarbonNitrogen',
  theme: 'bed',
  run: (c) => {
    const value = c.bedded ? c.value('packCarbonNitrogen') : null;
    if (value === null) return null;
    const row = c.row('bedCarbonNitrogenAim');
    return {
      status: value >= row.central ? 'pass' : value >= row.low ? 'look' : 'stop',
      value,
      limit: row.central,
      unit: 'C:N',
      row,
      words: `C:N ${say(value, 0)} at the end; below ${say(row.central)} ammonia is smelt, below ${say(row.low)} add carbon.`,
    };
  },
};

const availableCarbon: CheckRule<Context> = {
  id: 'bedAvailableCarbon',
  theme: 'bed',
  run: (c) => {
    const value = c.bedded ? c.value('packAvailableCarbonNitrogen') : null;
    if (value === null) return null;
    const row = c.row('bedAvailableCarbonNitrogenAim');
    return {
      status: value >= row.low ? 'pass' : 'look',
      value,
      limit: row.low,
      unit: 'C:N',
      row,
      words: `Counting only carbon that rots within the season, C:N is ${say(value, 1)}; ${say(row.low)} to ${say(row.high)} binds nitrogen. Wood counts little here whatever its C:N; field heaps of wood-chip manure have lost little nitrogen all the same.`,
    };
  },
};

const stock: CheckRule<Context> = {
  id: 'beddingStock',
  theme: 'bed',
  run: (c) => {
    const need = c.bedded ? c.value('beddingTonnes') : null;
    if (need === null) return null;
    const row = c.row('stackMarginFraction');
    const shares = c.scenario.bed.mix.filter((part) => part.share > 0);
    if (shares.length === 0)
      return {
        status: 'stop',
        value: 0,
        limit: need,
        unit: 't',
        row,
        words: 'The bed has no materials: name a mix and what is on hand.',
      };
    const tonnesOf = (material: string) =>
      c.scenario.farm.materials.filter((m) => m.material === material).reduce((sum, m) => sum + m.tonnes, 0);
    // The material that runs out first decides; tonnes are compared as they lie.
    const enough = Math.min(...shares.map((part) => tonnesOf(part.material) / part.share));
    const limit = need * (1 + row.central);
    return {
      status: enough >= limit ? 'pass' : enough >= need ? 'look' : 'stop',
      value: enough,
      limit,
      unit: 't',
      row,
      words: `Materials on hand or within reach make ${say(enough, 1)} t of this mix; the winter takes ${say(need, 1)} t, ${say(limit, 1)} t with a margin of ${say(row.central * 100, 0)} % for a wet one. Stack it before the ground freezes.`,
      ...(enough >= limit ? {} : { passesWith: `${say(limit, 1)} t of the mix within reach` }),
    };
  },
};

const WOOD = ['softwoodChips', 'hardwoodChips', 'branchChips', 'bark'];

const wetChips: CheckRule<Context> = {
  id: 'chipMoisture',
  theme: 'bed',
  run: (c) => {
    if (!c.bedded) return null;
    const chips = c.scenario.bed.mix.filter((part) => part.share > 0 && WOOD.includes(part.material));
    if (chips.length === 0) return null;
    const row = c.row('chipMoistureFraction');
    const store = c.row('chipStoreMoistureFraction');
    const given = chips.map((part) => {
      const own = c.scenario.farm.materials.find((m) => m.material === part.material)?.moistureFraction;
      return own ?? c.coefficients.get(`materialMoistureFraction.${part.material}`)?.central ?? null;
    });
    const wettest = given.includes(null) ? null : Math.max(...given.map(Number));
    return {
      status: wettest !== null && wettest <= row.central ? 'pass' : 'look',
      value: wettest === null ? null : wettest * 100,
      limit: row.central * 100,
      unit: '%',
      row,
      words: `Chips ${wettest === null ? 'of unknown moisture' : `at ${say(wettest * 100, 0)} % moisture`}; wetter than ${say(row.central * 100, 0)} % they do not make a bed, wetter than ${say(store.central * 100, 0)} % a heap of them heats and grows mould: dry them under a roof, no higher than ${say(c.row('pileHeightM').central)} m, and wear a mask.`,
    };
  },
};

export const BED_RULES: readonly CheckRule<Context>[] = [
  moisture,
  airSpace,
  carbonNitrogen,
  availableCarbon,
  stock,
  wetChips,
];
