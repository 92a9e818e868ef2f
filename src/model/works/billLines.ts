/**
 * All lines of the bill of quantities, in the order they are printed; each is declared once. Every line has a price
 * row of its own, so that a quote for one line never moves another.
 */
import { type BillSpec, cents, line } from './billLine.ts';
import { INDOOR_LINES } from './indoorLines.ts';
import { OUTDOOR_LINES } from './outdoorLines.ts';
import { SHED_LINES } from './shedLines.ts';

/** Places by the head, for a scenario that names no shed. */
const PLACE_LINES = [
  line(
    'beddedPlaces',
    'Head',
    'bedded places, not drawn',
    'head',
    {
      price: 'beddedPlacePrice',
      works: 'deep bed',
      formula: 'head, where no shed is given',
      when: 'packShare',
    },
    (counted) =>
      counted.of(['headCount', 'builtLengthM', 'bedShare'], (i, head, length, bed) =>
        length[i] > 0 ? 0 : (bed[i] > 0 ? 1 : 0) * head[i],
      ),
  ),
  line(
    'slattedPlaces',
    'Head',
    'slatted places, not drawn',
    'head',
    {
      price: 'slattedPlacePrice',
      works: 'slats',
      formula: 'head, where no slatted area is given or known',
      when: 'slurryShare',
    },
    (counted) =>
      counted.of(['headCount', 'billSlatsM2', 'slatsShare'], (i, head, slats, share) =>
        slats[i] > 0 ? 0 : (share[i] > 0 ? 1 : 0) * head[i],
      ),
  ),
] as const;

const ON_TOP_LINES = [
  line(
    'engineer',
    'Sum',
    'engineer and drawings',
    'money',
    {
      price: 'engineerFraction',
      works: 'all',
      formula: 'share of the cash lines of sheds and stores',
      onTop: true,
    },
    (counted) => counted.of(['capitalLinesBuildings'], (i, below) => cents(below[i])),
  ),
  line(
    'vat',
    'Sum',
    'value added tax that is not reclaimed',
    'money',
    {
      price: 'worksVatFraction',
      works: 'all',
      formula: 'cash lines and the engineer, each by its kind, where the farm does not get the tax back',
      onTop: true,
    },
    (counted) =>
      counted.of(['capitalLinesCash', 'costEngineer', 'worksVatFraction'], (i, cash, engineer, tax) =>
        tax[i] > 0 ? cents(cash[i] + engineer[i]) : 0,
      ),
  ),
  line(
    'alreadyHave',
    'Sum',
    'less what the farm has already',
    'money',
    {
      price: 'alreadyHavePart',
      works: 'all',
      formula: 'all lines, taken off as far as the works stand already',
      onTop: true,
    },
    (counted) =>
      counted.of(['capitalLinesAll', 'alreadyHavePart'], (i, all, share) => (share[i] > 0 ? -all[i] : 0)),
  ),
] as const;

const LINES = [...SHED_LINES, ...INDOOR_LINES, ...OUTDOOR_LINES, ...PLACE_LINES, ...ON_TOP_LINES] as const;

type ColumnOfLine<Line> = Line extends BillSpec<infer Column> ? Column : never;
/** Quantity and cost columns of all lines. */
export type BillColumn = ColumnOfLine<(typeof LINES)[number]>;

/** A line with its columns by name. */
export type BillRowSpec = Omit<BillSpec, 'quantity' | 'cost'> & {
  readonly quantity: BillColumn;
  readonly cost: BillColumn;
};

export const BILL_LINES: readonly BillRowSpec[] = LINES;

/** Cash lines of sheds and stores: the engineer comes on top of them. */
export const isEngineered = ({ own, onTop, works }: BillRowSpec): boolean =>
  !own && !onTop && works !== 'outdoors' && works !== 'all';

/** What a real project also pays for and this bill leaves out; said in the printed case. */
export const BILL_LEFT_OUT: readonly string[] = [
  'planning permission, surveys and fees of authorities',
  'access road, electricity and water connection to the site',
  'land',
  'the surface of a feed road that is not roofed',
  'machines the farm already has',
];
