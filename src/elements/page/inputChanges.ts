/** What panel and workings ask of the open notebook: its inputs as the text reads now, and changes written into it. */
import { inputAt } from '../../notebook/catalogue.ts';
import type { Path } from '../../notebook/path.ts';
import { readNotebook } from '../../notebook/read.ts';
import { type Change, change, type Outcome, writtenAt } from '../../store/change.ts';
import { type Field, type FieldsOf, fieldOf } from '../../store/fields.ts';
import type { OpenNotebook } from '../../store/opening.ts';
import { type OwnNumber, usualOfId, type Weighed, weighOwn } from '../../store/ownNumber.ts';
import { changeRows, type RowAct } from '../../store/rows.ts';
import type { Leaf } from '../parts/wk-trace.ts';

export class InputChanges {
  readonly #open: () => OpenNotebook | undefined;
  /** The last text read; the page's own notebook follows a moment later, when its weather is found. */
  #read: { readonly text: string; readonly of: FieldsOf | undefined } | undefined;

  constructor(open: () => OpenNotebook | undefined) {
    this.#open = open;
  }

  /** Undefined where no notebook is open, or its text has a fault. */
  get of(): FieldsOf | undefined {
    const open = this.#open();
    if (!open) return undefined;
    const text = open.text.value;
    if (this.#read?.text !== text) {
      const { notebook } = readNotebook(text, open.file);
      this.#read = { text, of: notebook && { notebook, text, tables: open.tables } };
    }
    return this.#read.of;
  }

  /** Words of the step an undo would take back. */
  get undone(): string {
    const history = this.#open()?.history.value;
    return history && history.past.length > 0 ? history.now.what : '';
  }

  readonly undo = (): void => this.#open()?.undo();

  readonly change = (asked: Change): Outcome => this.#write((of) => change(of, asked));

  readonly changeRows = (act: RowAct): Outcome => this.#write((of) => changeRows(of, act));

  readonly weigh = (own: OwnNumber): Weighed => {
    const { of } = this;
    return of
      ? weighOwn(of.tables, of.notebook.farm.money.currency, own)
      : { kind: 'refused', words: 'the text of the notebook has a fault: mend that first' };
  };

  readonly usualOf = (id: string) => {
    const { of } = this;
    return of && usualOfId(of.tables, of.notebook.farm.money.currency, id);
  };

  /** The fields behind a number a working ends in, by its place in the scenario; none where it is no single input. */
  leavesOf(scenario: number, id: string): Leaf[] {
    const { of } = this;
    if (!of?.notebook.scenarios[scenario]) return [];
    const path = id.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part));
    const paths: Path[] = id === 'farm.winter' ? ['start', 'end'].map((end) => [...path, end]) : [path];
    return paths.flatMap((each) => {
      const at = placeOf(of.text, scenario, each);
      const input = inputAt(at);
      const field: Field | undefined = input && fieldOf(of, input, at);
      return field
        ? [{ field, scenario: at[0] === 'scenarios' ? of.notebook.scenarios[scenario].name : null }]
        : [];
    });
  }

  #write(make: (of: FieldsOf) => Outcome): Outcome {
    const [open, of] = [this.#open(), this.of];
    if (!open || !of)
      return { kind: 'refused', words: 'the text of the notebook has a fault: mend that first' };
    const outcome = make(of);
    if (outcome.kind === 'done') open.edit(outcome.text, outcome.what);
    return outcome;
  }
}

/** Where a scenario's number is written: in the scenario where it has its own, a list whole, otherwise in the farm. */
function placeOf(text: string, scenario: number, path: Path): Path {
  const own: Path = ['scenarios', scenario, ...path];
  if (path[0] !== 'farm') return own;
  const list = path.findIndex((part) => typeof part === 'number');
  return writtenAt(text, list < 0 ? own : own.slice(0, list + 2)) === undefined ? path : own;
}
