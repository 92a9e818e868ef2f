/** What a bedding really binds, beside what its C:N seems to promise; and what the field says against both. */
import { immobilisedPerKg, type Microbes } from '../model/bed/immobilisation.ts';

export interface BindingMaterial {
  readonly material: string;
  readonly moistureFraction: number;
  readonly carbonFraction: number;
  readonly nitrogenFraction: number;
  readonly availableCarbonFraction: number;
  /** The row of the material, kg N per kg dry matter. */
  readonly immobilisationKgPerKg: number;
}

export interface Binding {
  readonly material: string;
  /** kg N per tonne as it lies, if microbes could use all of its carbon. */
  readonly byTotalCarbonKgPerTonne: number;
  /** kg N per tonne as it lies from the carbon a season can use; never more than the row of the material. */
  readonly byAvailableCarbonKgPerTonne: number;
}

/** Both figures for each material. The first is what a recipe by total C:N takes for granted. */
export function bindingOf(materials: readonly BindingMaterial[], microbes: Microbes): Binding[] {
  return materials.map((m) => {
    const dryPerTonne = 1000 * (1 - m.moistureFraction);
    const all = immobilisedPerKg(m.carbonFraction, m.nitrogenFraction, 1, microbes);
    const season = immobilisedPerKg(
      m.carbonFraction,
      m.nitrogenFraction,
      m.availableCarbonFraction,
      microbes,
    );
    return {
      material: m.material,
      byTotalCarbonKgPerTonne: dryPerTonne * all,
      byAvailableCarbonKgPerTonne: dryPerTonne * Math.min(season, m.immobilisationKgPerKg),
    };
  });
}

/** Field evidence that points the other way, to stand beside the figures wherever they are shown. */
export const CONTRARY_EVIDENCE =
  'Counted by the carbon microbes can use, wood chips bind little nitrogen. Yet Hao, Chang and Larney (2004) ' +
  'composted feedlot manure and lost 11.8 % of its nitrogen where it was bedded with wood chips, against 41.6 % ' +
  'with straw. Part of that is dilution: the chip manure held only about 60 % as much nitrogen per tonne of dry ' +
  'matter (derived), and more may have gone in the pen before. Take both figures, and no more precision than that.';
