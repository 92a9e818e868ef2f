/** Value added tax on a list of purchases, from its definition alone: price without tax × rate of the kind. */
export interface Purchase {
  readonly kind: 'materials' | 'services' | 'feed' | 'machinery' | 'fuel';
  readonly net: number;
}
export type Rates = Readonly<Record<Purchase['kind'], number>>;

export const taxOn = (bought: readonly Purchase[], rates: Rates): number =>
  bought.reduce((sum, { kind, net }) => sum + net * rates[kind], 0);

/** What a price that holds the tax is without it. */
export const withoutTax = (gross: number, rate: number): number => gross - (gross * rate) / (1 + rate);
