import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { push, redo, startHistory, undo } from '../../src/store/history.ts';

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
});
