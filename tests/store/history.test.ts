import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightOf } from '../../src/store/difference.ts';
import {
  type History,
  historyChange,
  laterHistory,
  push,
  redo,
  startHistory,
  undo,
} from '../../src/store/history.ts';

describe('history', () => {
  it('goes back and forth', () => {
    let history = push(push(startHistory('a'), { text: 'b', what: 'to b' }), { text: 'c', what: 'to c' });
    history = undo(history);
    expect(history.now.text).toBe('b');
    expect(redo(history).now.text).toBe('c');
    expect(undo(undo(undo(history))).now.text).toBe('a');
  });

  it('takes steps with one mark as one step', () => {
    let history = startHistory('a');
    for (const text of ['ab', 'abc', 'abcd'])
      history = push(history, { text, what: 'typed', mark: 'typing 1' });
    expect(history.past).toHaveLength(1);
    expect(undo(history).now.text).toBe('a');
  });

  it('does not record a step that changes nothing', () => {
    expect(push(startHistory('a'), { text: 'a', what: 'nothing' }).past).toHaveLength(0);
  });

  it('undoes any run of steps back to the start, and redoes it to the end', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            text: fc.string(),
            what: fc.string(),
            mark: fc.option(fc.constantFrom('x', 'y'), { nil: undefined }),
          }),
        ),
        (steps) => {
          let history = startHistory('start');
          for (const step of steps) history = push(history, step);
          const end = history.now.text;
          while (history.past.length > 0) history = undo(history);
          expect(history.now.text).toBe('start');
          while (history.future.length > 0) history = redo(history);
          expect(history.now.text).toBe(end);
        },
      ),
    );
  });

  it('is led from any state to any later one by what changed, also through a copy of itself', () => {
    const act = fc.oneof(
      fc.record({ text: fc.string(), what: fc.constant('typed'), mark: fc.constantFrom('x', 'y') }),
      fc.constantFrom('undo' as const, 'redo' as const),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), fc.integer({ min: 1, max: 7 }), (acts, every) => {
        let history: History = startHistory('start');
        let seen = history;
        // As it comes back from a database: equal, but made of other objects.
        let kept = structuredClone(history);
        acts.forEach((each, k) => {
          history = each === 'undo' ? undo(history) : each === 'redo' ? redo(history) : push(history, each);
          if (k % every > 0) return;
          kept = laterHistory(kept, structuredClone(historyChange(seen, history)));
          seen = history;
          expect(kept).toEqual(history);
        });
      }),
    );
  });

  it('holds differences: 300 edits of a large notebook weigh less than the notebook', () => {
    const line = 'a line of a notebook that is as long as lines are\n';
    let history = startHistory(line.repeat(38_000));
    const started = history.now.text;
    for (let k = 0; k < 300; k++) {
      const at = (k * 7919) % 38_000;
      const { text } = history.now;
      history = push(history, {
        text: `${text.slice(0, at * line.length)}edit ${k} ${text.slice(at * line.length)}`,
        what: `edit ${k}`,
      });
    }
    expect(history.past.length).toBeGreaterThanOrEqual(200);
    expect(history.past.length).toBeLessThanOrEqual(250);
    expect(history.past.reduce((sum, { difference }) => sum + weightOf(difference), 0)).toBeLessThan(10_000);
    let back = history;
    while (back.past.length > 0) back = undo(back);
    expect(back.now.text).not.toBe(started);
    while (back.future.length > 0) back = redo(back);
    expect(back.now.text).toBe(history.now.text);
  });

  it('lets the oldest steps go when whole texts are replaced again and again', () => {
    let history = startHistory('');
    for (let k = 0; k < 30; k++)
      history = push(history, { text: String.fromCharCode(97 + k).repeat(1_000_000), what: 'pasted' });
    expect(history.past.length).toBeLessThan(9);
    expect(history.past.length).toBeGreaterThan(2);
  });
});
