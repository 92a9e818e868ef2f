/** The rows of `batch` as CSV text or as an Arrow file, a parcel at a time, so that memory stays flat. */
import {
  Field,
  Float64,
  makeData,
  RecordBatch,
  RecordBatchFileWriter,
  Schema,
  Struct,
  Utf8,
  vectorFromArray,
} from 'apache-arrow';
import { csvLines as linesOf } from '../tables/csvLines.ts';
import { type BatchAnswer, NUMBER_COLUMNS, TEXT_COLUMNS } from './batchWorker.ts';

export async function* csvLines(answers: AsyncIterable<BatchAnswer>): AsyncGenerator<string> {
  yield linesOf([[...TEXT_COLUMNS, ...NUMBER_COLUMNS]]);
  for await (const { text, numbers } of answers) {
    yield linesOf(
      text.file.map((_, row) => [
        ...TEXT_COLUMNS.map((name) => text[name][row]),
        ...numbers.map((n) => (Number.isNaN(n[row]) ? null : n[row])),
      ]),
    );
  }
}

const SCHEMA = new Schema([
  ...TEXT_COLUMNS.map((name) => new Field(name, new Utf8(), false)),
  ...NUMBER_COLUMNS.map((name) => new Field(name, new Float64(), true)),
]);

/**
 * The bytes of an Arrow file. The writer queues without limit, so what it has made is handed on before the next
 * parcel is asked for: a slow disk holds the computing back.
 */
export async function* arrowBytes(answers: AsyncIterable<BatchAnswer>): AsyncGenerator<Uint8Array> {
  const writer = new RecordBatchFileWriter();
  const made = writer[Symbol.asyncIterator]();
  let next = made.next();
  let written = 0;
  for await (const answer of answers) {
    writer.write(recordBatch(answer));
    written++;
    for (;;) {
      const ready = await Promise.race([
        next,
        new Promise<undefined>((resolve) => setImmediate(resolve, undefined)),
      ]);
      if (!ready || ready.done) break;
      yield ready.value;
      next = made.next();
    }
  }
  // Without rows there is still a file, with its columns and no batch.
  if (written === 0) writer.write(recordBatch(EMPTY));
  writer.finish();
  writer.close();
  for (let last = await next; !last.done; last = await made.next()) yield last.value;
}

const EMPTY: BatchAnswer = {
  id: 0,
  text: { file: [], scenario: [], system: [], currency: [] },
  numbers: NUMBER_COLUMNS.map(() => new Float64Array(0)),
  problems: [],
};

/** A parcel of rows as one batch. */
export function recordBatch({ text, numbers }: BatchAnswer): RecordBatch {
  const length = text.file.length;
  const children = [
    ...TEXT_COLUMNS.map((name) => vectorFromArray(text[name], new Utf8()).data[0]),
    ...numbers.map((values) => makeData({ type: new Float64(), length, data: values, ...nullsOf(values) })),
  ];
  return new RecordBatch(
    SCHEMA,
    makeData({ type: new Struct(SCHEMA.fields), length, nullCount: 0, children }),
  );
}

/** The bitmap of what is there: bit k of byte k/8 is 1 where value k is. */
function nullsOf(values: Float64Array): { nullCount: number; nullBitmap: Uint8Array } {
  const nullBitmap = new Uint8Array(Math.ceil(values.length / 8));
  let nullCount = 0;
  values.forEach((value, k) => {
    if (Number.isNaN(value)) nullCount++;
    else nullBitmap[k >> 3] |= 1 << (k & 7);
  });
  return { nullCount, nullBitmap };
}
