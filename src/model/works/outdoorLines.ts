/** Lines of the bill for animals kept out: fence, water and shelter. */
import { line, pieces } from './billLine.ts';

export const OUTDOOR_LINES = [
  line(
    'fence',
    'M',
    'electric fence round the paddock',
    'm',
    {
      price: 'fencePricePerM',
      works: 'outdoors',
      formula: 'outline of a square of the paddock area',
      when: 'paddockShare',
      shortLived: true,
    },
    (counted) =>
      counted.of(['paddockSideM', 'pastureShare'], (i, side, out) => (out[i] > 0 ? 4 : 0) * side[i]),
  ),
  line(
    'movableFence',
    'M',
    'movable fence on reels',
    'm',
    {
      price: 'movableFencePricePerM',
      taxed: 'machinery',
      works: 'outdoors',
      formula: 'side of that square times the lengths needed for how it is moved',
      when: 'paddockShare',
      shortLived: true,
    },
    (counted) =>
      counted.of(
        ['paddockSideM', 'movableFenceLengths', 'pastureShare'],
        (i, side, lengths, out) => (out[i] > 0 ? 1 : 0) * side[i] * lengths[i],
      ),
  ),
  line(
    'energiser',
    'Count',
    'fence energiser and earth',
    'sets',
    {
      price: 'energiserPriceEach',
      taxed: 'machinery',
      works: 'outdoors',
      formula: 'one where animals are out',
      when: 'paddockShare',
      shortLived: true,
    },
    (counted) => counted.of(['pastureShare'], (i, out) => (out[i] > 0 ? 1 : 0)),
  ),
  line(
    'waterPipe',
    'M',
    'water pipe in the ground',
    'm',
    {
      price: 'waterPipePricePerM',
      works: 'outdoors',
      formula: 'two sides of that square',
      when: 'paddockShare',
    },
    (counted) =>
      counted.of(['paddockSideM', 'pastureShare'], (i, side, out) => (out[i] > 0 ? 2 : 0) * side[i]),
  ),
  line(
    'troughs',
    'Count',
    'troughs outdoors',
    'troughs',
    {
      price: 'troughPriceEach',
      taxed: 'machinery',
      works: 'outdoors',
      formula: 'head over head a trough, rounded up',
      when: 'paddockShare',
      shortLived: true,
    },
    (counted) =>
      counted.of(
        ['headCount', 'headPerTrough', 'pastureShare'],
        (i, head, perTrough, out) => (out[i] > 0 ? 1 : 0) * pieces(head[i] / perTrough[i]),
      ),
  ),
  line(
    'windbreak',
    'M',
    'windbreak',
    'm',
    {
      price: 'windbreakPricePerM',
      works: 'outdoors',
      formula: 'head times length a head, where the scenario has one',
      when: 'paddockShare',
    },
    (counted) =>
      counted.of(
        ['headCount', 'windbreakMPerHead', 'pastureShare'],
        (i, head, perHead, out) => (out[i] > 0 ? 1 : 0) * head[i] * perHead[i],
      ),
  ),
] as const;
