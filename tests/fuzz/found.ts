/** Cases that once broke something, as kind, seed and what was broken; they stay. */
import type { Kind } from './cases.ts';

export const FOUND: readonly (readonly [Kind, number, string])[] = [
  ['inputs', 3000122, 'feed without dry matter, and an endless bill for it'],
  ['inputs', 3000575, 'feed without dry matter in a scenario'],
  ['inputs', 3001446, 'a rear eave of 99,900 m, and fifteen seconds of posts'],
  ['values', 3000722, 'a shed of no length, and ammonia that is no number'],
  ['values', 3001004, 'a thousandfold weight of a form, and nitrous oxide below nothing'],
  ['tables', 42000058, 'a choice named constructor, and an exception'],
  ['tables', 42000062, 'an open quote in a header, and a message as long as the table'],
  ['tables', 7008093, 'a row taken out of a table, and every figure of a way gone without a word'],
];
