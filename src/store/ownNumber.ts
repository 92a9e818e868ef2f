/** An own number in place of a row of the tables, as it was typed: read, weighed, or asked about. */
import { rowOf, type Usual, usualOfRow } from '../model/usual.ts';
import type { Tables } from '../tables/coefficient.ts';
import { readTyped, type TypedAs } from '../units/typed.ts';
import { limitWords, questionOf } from './weigh.ts';

export interface OwnNumber {
  readonly id: string;
  readonly typed: string;
  readonly sure: boolean;
  readonly as: TypedAs;
}

export type Weighed =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'ask'; readonly words: string }
  | { readonly kind: 'refused'; readonly words: string };

/** The span of a row the keeper may put a number in place of. */
export function usualOfId(tables: Tables, currency: string, id: string): Usual | undefined {
  const row = rowOf(tables, currency, id);
  return row && usualOfRow(row);
}

export function weighOwn(tables: Tables, currency: string, { id, typed, sure, as }: OwnNumber): Weighed {
  const row = rowOf(tables, currency, id);
  const unit = row?.unit ?? '';
  const read = readTyped(typed, unit, as);
  if ('refused' in read) return { kind: 'refused', words: read.refused };
  const weighed = { label: row?.appliesTo ?? id, unit, usual: row && usualOfRow(row) };
  const wrong = limitWords(weighed, read.value, as);
  if (wrong) return { kind: 'refused', words: wrong };
  const words = sure ? undefined : questionOf(weighed, read.value, as);
  return words === undefined ? { kind: 'value', value: read.value } : { kind: 'ask', words };
}
