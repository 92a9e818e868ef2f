/** An input of the strip that was let go, written into the text. */
import { setInput } from '../notebook/write.ts';
import { HERD_WORDS, turnOf, worksWritten } from '../whatif/turn.ts';
import { knobs, type StripOf } from './strip.ts';

/** The text with an input let go of, and the words for undoing it. Works built to match are written with the herd. */
export function edited(
  text: string,
  { notebook, tables, setting, herd }: StripOf,
  id: string,
  value: number,
): { readonly text: string; readonly what: string } {
  const knob = knobs(notebook, tables).find((each) => each.id === id);
  if (!knob) return { text, what: '' };
  const turn = turnOf(setting, knob.turns, herd);
  const works = turn ? worksWritten(turn, value) : [];
  const next = [...knob.edits(value), ...works].reduce((so, [path, to]) => setInput(so, path, to), text);
  const said = id === 'head' ? `, ${HERD_WORDS[herd]}` : '';
  return { text: next, what: `${knob.label} to ${value} ${knob.unit}${said}` };
}
