/** Changes of the answers: a bare number keeps the unit it was typed in when other units are shown. */
import {
  type Answers,
  LISTS,
  type ListName,
  MOST_ROWS,
  type Row,
  SECTIONS,
  type SectionName,
} from './answers.ts';
import { FIELDS, type Field, ROW_FIELDS } from './fields.ts';
import { type Begun, feedRows, materialRows, systemOf } from './reader.ts';
import { withUnitSaid } from './typed.ts';

/** Rows as they stand on the page; starts among them until one is touched. */
export function rowsShown(begun: Begun, list: ListName): readonly Row[] {
  if (list === 'feed') return feedRows(begun);
  return list === 'materials' ? materialRows(begun) : begun.answers.herd;
}

export function setAnswer(begun: Begun, section: SectionName, key: string, value: string): Answers {
  const { answers } = begun;
  return inOldUnits(begun, { ...answers, [section]: { ...answers[section], [key]: value } });
}

export function setRow(begun: Begun, list: ListName, at: number, key: string, value: string): Answers {
  const rows = rowsShown(begun, list).map((row, k) => (k === at ? { ...row, [key]: value } : row));
  return { ...begun.answers, [list]: rows };
}

/** Another row, of the first option that is not on the list yet; the same answers where the list is full. */
export function addRow(begun: Begun, list: ListName): Answers {
  const rows = rowsShown(begun, list);
  const key = list === 'herd' ? 'class' : list === 'feed' ? 'feed' : 'material';
  const field = ROW_FIELDS[list][key];
  const options = field.kind === 'choice' ? field.options.map(([option]) => option) : [];
  const next = options.find((option) => !rows.some((row) => row[key] === option)) ?? options[0];
  if (rows.length >= MOST_ROWS[list]) return begun.answers;
  return { ...begun.answers, [list]: [...rows, { [key]: next }] };
}

/** The list without a row; its last row stays. */
export function removeRow(begun: Begun, list: ListName, at: number): Answers {
  const rows = rowsShown(begun, list);
  return rows.length < 2 ? begun.answers : { ...begun.answers, [list]: rows.filter((_, k) => k !== at) };
}

function inOldUnits(begun: Begun, answers: Answers): Answers {
  const was = systemOf(begun);
  if (systemOf({ ...begun, answers }) === was) return answers;
  const said = (row: Row, fields: Readonly<Record<string, Field>>): Row =>
    Object.fromEntries(
      Object.entries(row).map(([key, value]) => {
        const field = fields[key];
        return [key, field?.kind === 'number' ? withUnitSaid(value, field.unit, was) : value];
      }),
    );
  return {
    ...answers,
    ...Object.fromEntries(SECTIONS.map((name) => [name, said(answers[name], FIELDS[name])])),
    ...Object.fromEntries(
      LISTS.map((name) => [name, answers[name].map((row) => said(row, ROW_FIELDS[name]))]),
    ),
  };
}
