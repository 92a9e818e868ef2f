/** All declarations together: every quantity by name, what it depends on, and the steps that make it. */
import type { Quantity } from './quantity.ts';
import { isSeries, type Made, type Series, type Walk } from './walk.ts';

/** Quantities by name, or a walk. Methods are compared loosely, so that every walk fits whatever it reads. */
// biome-ignore lint/suspicious/noExplicitAny: a list of walks forgets what each of them reads
export type Part = Readonly<Record<string, Quantity>> | Walk<any, any>;

/** One step of a run: a quantity, or a walk with all it makes. */
export interface Step {
  readonly name: string;
  readonly reads: readonly string[];
  readonly makes: readonly Entry[];
  readonly quantity?: Quantity;
  readonly walk?: Walk;
}

export interface Entry {
  readonly name: string;
  readonly made: Made | Series;
  /** What it depends on directly: columns, patterns of families, series, `@` resources. */
  readonly from: readonly string[];
  /** Numbers a row. */
  readonly width: number;
  readonly onDemand: boolean;
  /** Name of the part it is declared in. */
  readonly part: string;
}

export interface Catalogue {
  /** In the order of declaration. */
  readonly entries: ReadonlyMap<string, Entry>;
  /** The step that makes a name. */
  readonly stepOf: ReadonlyMap<string, Step>;
}

const isWalk = (part: Part): part is Walk => typeof part.run === 'function';

/** Parts by name: what one file declares. Throws when two declarations have one name. */
export function catalogue(parts: Readonly<Record<string, Part | readonly Part[]>>): Catalogue {
  const entries = new Map<string, Entry>();
  const stepOf = new Map<string, Step>();
  const add = (step: Step) => {
    for (const entry of step.makes) {
      if (entries.has(entry.name)) throw new Error(`${entry.name} is declared twice`);
      entries.set(entry.name, entry);
      stepOf.set(entry.name, step);
    }
  };
  const flat = Object.entries(parts).flatMap(([part, declared]) =>
    [declared].flat().map((one) => [part, one as Part] as const),
  );
  for (const [part, declared] of flat) {
    if (isWalk(declared)) {
      const { name, reads, makes } = declared;
      add({
        name,
        reads,
        walk: declared,
        makes: Object.entries<Made | Series>(makes).map(([own, made]) => ({
          name: own,
          made,
          from: made.from ?? reads,
          width: isSeries(made) ? made.width : 1,
          onDemand: isSeries(made) && made.onDemand === true,
          part,
        })),
      });
    } else
      for (const [name, quantity] of Object.entries(declared)) {
        const entry = { name, made: quantity, from: quantity.reads, width: 1, onDemand: false, part };
        add({ name, reads: quantity.reads, quantity, makes: [entry] });
      }
  }
  return { entries, stepOf };
}

/** Names that parts make, as a type: what stands in no declaration does not compile. */
export type NamesIn<Parts> = Parts extends readonly (infer One)[]
  ? NamesIn<One>
  : Parts extends Walk<infer _Reads, infer Name>
    ? Name
    : keyof Parts & string;

/** Of these names, those that walks make as series: several numbers a row, and of a kind where one is given. */
export type SeriesIn<Parts, Kind = { readonly width: number }> = Parts extends readonly (infer One)[]
  ? SeriesIn<One, Kind>
  : Parts extends { readonly makes: infer Makes }
    ? { [Name in keyof Makes]: Makes[Name] extends Kind ? Name : never }[keyof Makes] & string
    : never;
