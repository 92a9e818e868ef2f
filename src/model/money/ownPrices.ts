/** Own prices as a notebook gives them, brought to what the model reckons with: prices without value added tax. */

import { CHOICES } from '../../notebook/inputs.ts';
import type { Scenario } from '../../notebook/schema.ts';
import { oneRateOf, type VatKind, vatName } from '../../notebook/vat.ts';
import type { Tables } from '../../tables/coefficient.ts';
import { BILL_LINES } from '../works/billLines.ts';

/** By the beginning of a price's name, for what is bought each winter. */
const WINTER: readonly (readonly [RegExp, VatKind])[] = [
  [/^(feed|material)PricePerTonne$/, 'feed'],
  [/^(tractor|chipping)Price/, 'fuel'],
  [/^(slurrySpread|solidSpread|agitate|reseed|vet|hoof)Price/, 'services'],
];

/** What kind of purchase a price is of, and whether of the works; nothing for what is no purchase, as worth of nutrients. */
export function purchaseOf(id: string): { readonly kind: VatKind; readonly works: boolean } | undefined {
  const name = id.split('.')[0];
  const line = BILL_LINES.find(({ price, own, onTop }) => price === name && !own && !onTop);
  if (line) return { kind: line.taxed ?? 'materials', works: true };
  const kind = WINTER.find(([start]) => start.test(name))?.[1];
  return kind && { kind, works: false };
}

/**
 * The scenario with its own prices, quotes and prices of feed and bedding less the tax they hold, where the notebook says
 * that they hold it; the same scenario where it does not.
 */
export function pricesWithoutTax(scenario: Scenario, tables: Tables): Scenario {
  const { money, feed, materials } = scenario.farm;
  const { vat } = money;
  if (!vat?.pricesHoldIt) return scenario;
  const less = (price: number, kind: VatKind, works: boolean) => {
    const own = vat.rates[kind] ?? oneRateOf(vat, works ? 'works' : 'winter');
    const row = `${vatName(kind, 'Fraction')}.${CHOICES.country(scenario)}`;
    return price / (1 + (own ?? tables.coefficients.get(row)?.central ?? 0));
  };
  const ofTonne = <Item extends { readonly pricePerTonne?: number }>(items: readonly Item[]) =>
    items.map((item) =>
      item.pricePerTonne === undefined
        ? item
        : { ...item, pricePerTonne: less(item.pricePerTonne, 'feed', false) },
    );
  const prices = Object.fromEntries(
    Object.entries(money.prices).map(([id, price]) => {
      const of = purchaseOf(id);
      if (!of) return [id, price];
      const net = (value: number) => less(value, of.kind, of.works);
      const { low, high } = price;
      return [
        id,
        {
          ...price,
          value: net(price.value),
          ...(low !== undefined && { low: net(low) }),
          ...(high !== undefined && { high: net(high) }),
        },
      ];
    }),
  );
  return {
    ...scenario,
    farm: {
      ...scenario.farm,
      feed: ofTonne(feed),
      materials: ofTonne(materials),
      money: { ...money, prices },
    },
  };
}
