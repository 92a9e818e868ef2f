/** What can be done with a paragraph or a cell of the notebook: the buttons beside it, and what they ask. */
import { html, nothing, type TemplateResult } from 'lit';
import { movePart, removePart } from '../../notebook/bodyEdits.ts';
import { CELL_WORDS } from '../../notebook/cellWords.ts';
import type { Edited } from '../../notebook/edit.ts';
import type { BodyPart } from '../../notebook/parts.ts';
import type { Problem } from '../../units/problem.ts';
import { ask } from '../parts/events.ts';
import { saidProblem } from '../parts/saidProblem.ts';

/** What is open at a part: its buttons, its words, its options, the list of what to add, new words behind it, or a note on it. */
export interface Writing {
  readonly place: number;
  readonly act: 'tools' | 'words' | 'form' | 'add' | 'newWords' | 'note';
}

export interface Tools {
  readonly part: BodyPart;
  readonly place: number;
  readonly count: number;
  readonly open: (writing: Writing | undefined) => void;
  /** Moved to another place, or taken out: where the keyboard goes. */
  readonly moved: (to: number | undefined) => void;
  readonly refused: (problem: Problem | undefined) => void;
}

/** The name of a part, for who cannot see what the buttons stand beside. */
export function namedPart({ block, from, to }: BodyPart): string {
  if (block.type === 'cell') return CELL_WORDS[block.kind].name;
  if (block.type === 'broken') return `cell ${block.kind}`;
  const words = block.text
    .slice(from - block.from, to - block.from)
    .replace(/[#*>`_|-]/g, '')
    .trim();
  return words.length > 40 ? `${words.slice(0, 39).trimEnd()}…` : words;
}

export function partTools(
  { part, place, count, open, moved, refused }: Tools,
  problem: Problem | undefined,
): TemplateResult {
  const send = (event: Event, make: Parameters<typeof ask<'wk-edit'>>[2]['make'], to: number | undefined) =>
    ask(event.target as HTMLElement, 'wk-edit', {
      make,
      done: (edited: Edited) => {
        refused('refused' in edited ? edited.refused : undefined);
        if ('text' in edited) moved(to);
      },
    });
  const move = (by: -1 | 1) => (event: Event) => send(event, (at) => movePart(at, place, by), place + by);
  const shift = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
    if (by === 0 || !event.altKey) return;
    event.preventDefault();
    if (place + by >= 0 && place + by < count) send(event, (at) => movePart(at, place, by), place + by);
  };
  return html`<div class="tools screen" role="group" aria-label="What to do with ${namedPart(part)}" @keydown=${shift}>
      ${part.block.type === 'cell' ? html`<button type="button" class="plain" @click=${() => open({ place, act: 'form' })}>Options</button>` : nothing}
      <button type="button" class="plain" data-act="up" ?disabled=${place === 0} title="Alt and arrow up" @click=${move(-1)}>Move up</button>
      <button type="button" class="plain" data-act="down" ?disabled=${place === count - 1} title="Alt and arrow down" @click=${move(1)}>Move down</button>
      <button type="button" class="plain" @click=${() => open({ place, act: 'add' })}>Add below</button>
      <button type="button" class="plain" @click=${() => open({ place, act: 'note' })}>Put a note</button>
      <button type="button" class="plain" @click=${(event: Event) => send(event, (at) => removePart(at, place), undefined)}>Take out</button>
      <button type="button" class="plain" data-act="close" @click=${() => open(undefined)}>Close</button>
    </div>
    ${problem ? html`<p class="refused" role="alert">${saidProblem(problem)}</p>` : nothing}`;
}
