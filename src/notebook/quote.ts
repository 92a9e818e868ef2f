/** A keeper's own quote for a line of the bill, written into the scenario it was asked for. */
import type { Scenario } from './schema.ts';
import { addItem, setInput } from './write.ts';

type Quote = Scenario['finance']['quotes'][number];

/**
 * The text with the quote in the scenario at `scenario`, whose quotes so far are `before`; a `unitPrice` of null
 * takes the quote of that line out again. Throws when the text cannot be edited.
 */
export function setQuote(
  text: string,
  scenario: number,
  before: readonly Quote[],
  { line, unitPrice, because }: Omit<Quote, 'unitPrice'> & { readonly unitPrice: number | null },
): string {
  const list = ['scenarios', scenario, 'finance', 'quotes'];
  const index = before.findIndex((quote) => quote.line === line);
  if (unitPrice === null) return index < 0 ? text : setInput(text, [...list, index], undefined);
  if (index < 0) return addItem(text, list, { line, unitPrice, because });
  return setInput(
    setInput(text, [...list, index, 'unitPrice'], unitPrice),
    [...list, index, 'because'],
    because,
  );
}
