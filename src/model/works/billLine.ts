/** What a line of the bill of quantities is, and how one is declared: what is counted, from what, at which price. */
import { type Quantity, quantity } from '../engine/quantity.ts';

export interface BillSpec<Column extends string = string> {
  /** What a keeper's quote names. */
  readonly id: string;
  readonly label: string;
  /** Column with the quantity. */
  readonly quantity: Column;
  readonly cost: Column;
  readonly unit: string;
  /** Column with the price of one unit; for the share at the foot, a fraction of the lines above. */
  readonly price: string;
  /** Choice of the scenario the price hangs on, if any. */
  readonly choice?: 'store' | 'feeder' | 'cover';
  readonly works: 'shed' | 'deep bed' | 'slats' | 'outdoors' | 'all';
  /** Kind of purchase, for value added tax; building materials where it does not say. */
  readonly taxed?: 'services' | 'machinery' | 'fuel';
  /** Paid in own timber or own hours, not in cash. */
  readonly own?: true;
  /** Bought again before the buildings are worn out. */
  readonly shortLived?: true;
  /** A share of the cash lines of sheds and stores. */
  readonly onTop?: true;
  /** The two columns of the line. */
  readonly makes: { readonly [C in Column]: Quantity };
}

interface Terms
  extends Pick<BillSpec, 'price' | 'works' | 'choice' | 'taxed' | 'own' | 'shortLived' | 'onTop'> {
  /** How it is counted, in words. */
  readonly formula: string;
  /** Column that must be above 0 for the line to exist. */
  readonly when?: string;
}

/** Money is kept to the cent, so that printed lines add up to the printed sum. */
export const cents = (amount: number) => Math.round(amount * 100) / 100;
/** Whole pieces; the slack keeps 12.000000001 from becoming 13. */
export const pieces = (number: number) => Math.ceil(number - 1e-9);

/**
 * A line called `id`; its columns are `bill` + id + `counted` and `cost` + id. `count` finishes the declaration of
 * the quantity.
 */
export function line<const Id extends string, const Counted extends string>(
  id: Id,
  counted: Counted,
  label: string,
  unit: string,
  { formula, when, ...terms }: Terms,
  count: (quantity_: ReturnType<typeof quantity>) => Quantity,
): BillSpec<`bill${Capitalize<Id>}${Counted}` | `cost${Capitalize<Id>}`> {
  const name = (id[0].toUpperCase() + id.slice(1)) as Capitalize<Id>;
  const amount = `bill${name}${counted}` as const;
  const cost = `cost${name}` as const;
  const exists = when === undefined ? {} : { when };
  const makes = {
    [amount]: count(quantity(`${label}, quantity`, unit, formula, { source: ['own'], ...exists })),
    [cost]: quantity(label, 'money', 'quantity times price, to the cent', exists).whole(
      [amount as string, terms.price],
      priceAll,
    ),
  };
  return { id, label, quantity: amount, cost, unit, makes, ...terms } as never;
}

/** Nothing to build costs nothing, with or without a price; a price that is missing or below 0 is no price. */
function priceAll(count: number, out: Float64Array, number: Float64Array, price: Float64Array): void {
  for (let i = 0; i < count; i++)
    out[i] = number[i] === 0 ? 0 : price[i] >= 0 ? cents(number[i] * price[i]) : Number.NaN;
}
