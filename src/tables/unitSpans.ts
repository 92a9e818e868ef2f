/** The widest span a unit allows at all: what lies beyond is a slip, whatever the table or the keeper means by it. */
export interface UnitSpan {
  readonly low: number;
  readonly high: number;
  /** Why nothing lies beyond. */
  readonly because: string;
}

/** A part of a whole: nitrogen of nitrogen, a feed's protein of its dry matter, dry matter eaten of an animal's weight. */
const PART = /^(fraction|(kg|m³)( \w+)?\/\2 (DM|LW|N|P|K|C|TAN)(\/d)?|kg DM\/kg|m³\/m³)$/;

const SPANS: Readonly<Record<string, UnitSpan>> = {
  form: { low: 0, high: 1, because: 'it weighs the second of two forms' },
  'curve number': { low: 0, high: 100, because: 'at 100 all rain runs off' },
  'day of year': { low: 1, high: 366, because: 'the longest year has 366 days' },
  'h/d': { low: 0, high: 24, because: 'a day has 24 hours' },
  pH: { low: 0, high: 14, because: 'the scale ends there' },
  '%': { low: 0, high: 100, because: 'it is a part of a hundred' },
  '°C': { low: -90, high: 2000, because: 'no winter is colder, no heap and no fire of a farm hotter' },
  '°': { low: -360, high: 360, because: 'a circle has 360 degrees' },
};

/** Beyond any number of a farm. */
const MOST = 1e9;
const ANY: UnitSpan = { low: -MOST, high: MOST, because: 'no number of a farm is so large' };
const WHOLE: UnitSpan = { low: 0, high: 1, because: 'a part is at most the whole' };

export const unitSpan = (unit: string): UnitSpan => SPANS[unit] ?? (PART.test(unit) ? WHOLE : ANY);
