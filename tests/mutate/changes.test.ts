import { describe, expect, it } from 'vitest';
import { changesOf } from './changes.ts';
import { tableChangesOf } from './tableChanges.ts';

const faults = (text: string) => changesOf('a.ts', text).map((change) => change.text);

describe('faults in code', () => {
  it('turn operators, conditions, numbers, signs and methods, one at a time', () => {
    expect(faults('const a: number = b * 4;')).toEqual([
      'const a: number = b / 4;',
      'const a: number = b * 5;',
    ]);
    expect(faults('if (a < b) c();')).toEqual(['if (!(a < b)) c();', 'if (a >= b) c();']);
    expect(faults('a = -b;')).toEqual(['a = (b);']);
    expect(faults('Math.max(a, b);')).toEqual(['Math.min(a, b);']);
  });

  it('exchange columns and returned names', () => {
    expect(faults("q.of(['x', 'y'], (i, x, y) => x[i]);")).toEqual(["q.of(['y', 'x'], (i, x, y) => x[i]);"]);
    expect(faults('function f() { return { a: x, b: y }; }')).toEqual([
      'function f() { return { a: x, b: x }; }',
    ]);
  });

  it('leave types, words, keys and what is thrown as they are', () => {
    const quiet =
      "import { a } from 'b';\ntype T = 1 | 2;\nconst w = 'x' + y;\nconst o = { 1: z };\nthrow new Error(n - 1);";
    expect(faults(quiet)).toEqual([]);
  });

  it('say the line and what was done', () => {
    const [{ line, what }] = changesOf('a.ts', '\n\nconst a = b + c;');
    expect([line, what]).toEqual([3, '+ → - in b + c']);
  });
});

describe('faults in tables', () => {
  const head = 'id,choice,low,central,high,unit\n';

  it('put a centre off, ends with it, delete a row and take the figures of another option', () => {
    const table = `${head}rate.clay,texture,1,10,11,kg\nrate.sand,texture,2,20,40,kg`;
    const clay = tableChangesOf('t.csv', table).filter(({ what }) => what.startsWith('rate.clay'));
    expect(clay.map(({ line, what, text }) => [line, what, text.split('\n')[1]])).toEqual([
      [2, 'rate.clay × 1.3', 'rate.clay,texture,1,13,13,kg'],
      [2, 'rate.clay × 0.7', 'rate.clay,texture,1,7,11,kg'],
      [2, 'rate.clay deleted', 'rate.sand,texture,2,20,40,kg'],
      [2, 'rate.clay with the figures of rate.sand', 'rate.clay,texture,2,20,40,kg'],
    ]);
  });

  it('are none in a table without figures', () => {
    expect(tableChangesOf('t.csv', 'id,author\na,b')).toEqual([]);
  });
});
