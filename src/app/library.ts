/** What can be done with the kept notebooks from the list of them: fetched when it is done. */

import type { KeptAct } from '../elements/page/wk-kept.ts';
import { offer } from '../elements/parts/offer.ts';
import { decodeNotebook, MAX_BYTES } from '../notebook/decode.ts';
import { setInput } from '../notebook/write.ts';
import { unzip, zipOf } from '../store/bundle.ts';
import { checksum } from '../store/checksum.ts';
import { push, startHistory } from '../store/history.ts';
import { historyOf, newId, type Shelf } from '../store/shelf.ts';
import type { Problem } from '../units/problem.ts';
import { type Done, gone } from './kept.ts';
import { titleOf } from './titles.ts';

export async function actOnKept(shelf: Shelf, act: KeptAct): Promise<Done> {
  if (act.act === 'copy') {
    const copied = await shelf.copy(act.id);
    const kept = copied === undefined ? undefined : await shelf.get(copied);
    if (!kept) return { problems: [gone(act.id)] };
    // The text says it as well, or the next change would give the copy its old title; a text at fault is left.
    await rename(shelf, kept.id, kept.title, true);
    return {};
  }
  if (act.act === 'delete') {
    const removed = await shelf.remove(act.id);
    return removed ? { removed, words: `Deleted “${removed.title}”.` } : {};
  }
  return rename(shelf, act.id, act.title);
}

/** A copy is another notebook: notes on one are not the other's. */
async function rename(shelf: Shelf, id: string, title: string, parted = false): Promise<Done> {
  const kept = await shelf.get(id);
  if (!kept) return { problems: [gone(id)] };
  try {
    const named = setInput(kept.text, 'title', title);
    const text = parted ? setInput(named, 'id', undefined) : named;
    const basis = { revision: kept.revision, from: [checksum(kept.text)] };
    const history = push(historyOf(kept), { text, what: `title to ${title}` });
    await shelf.put(id, { title, history }, basis);
    return {};
  } catch (error) {
    return {
      problems: [
        {
          what: 'the notebook could not be renamed',
          file: kept.title,
          found: error instanceof Error ? error.message : String(error),
          todo: 'open it, and mend its text first',
        },
      ],
    };
  }
}

/** Puts every kept notebook into one file of the keeper's. */
export async function exportAll(shelf: Shelf): Promise<Done> {
  const all = await Promise.all((await shelf.list()).map(({ id }) => shelf.get(id)));
  const bytes = zipOf(all.filter((kept) => kept !== undefined));
  offer(
    new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/zip' }),
    'winterkeep-notebooks.zip',
  );
  return {};
}

/** Takes notebooks, one by one or in a zip, onto the shelf. */
export async function importFiles(shelf: Shelf, files: readonly File[]): Promise<Done> {
  const problems: Problem[] = [];
  let count = 0;
  for (const file of files) {
    if (!/\.zip$/i.test(file.name)) {
      const kept = await keepFile(shelf, file);
      if ('problem' in kept) problems.push(kept.problem);
      else count++;
      continue;
    }
    const unzipped = unzip(new Uint8Array(await file.arrayBuffer()), MAX_BYTES);
    if ('problem' in unzipped)
      problems.push({
        what: 'the zip could not be opened',
        file: file.name,
        found: unzipped.problem,
        allowed: 'a zip of notebooks that end in .md',
      });
    else
      for (const { name, text } of unzipped.files) {
        await keepText(shelf, name, text);
        count++;
      }
  }
  return {
    problems,
    words: `${count} ${count === 1 ? 'notebook is' : 'notebooks are'} on the list.`,
  };
}

/** A file as a kept notebook: the id of it, so that a reload finds it again. */
export async function keepFile(
  shelf: Shelf,
  file: File,
): Promise<{ readonly id: string; readonly text: string } | { readonly problem: Problem }> {
  if (file.size > MAX_BYTES)
    return {
      problem: {
        what: 'the file is too large to be a notebook',
        file: file.name,
        found: `${(file.size / 1e6).toFixed(1)} MB`,
        allowed: `at most ${MAX_BYTES / 1e6} MB`,
      },
    };
  const decoded = decodeNotebook(new Uint8Array(await file.arrayBuffer()), file.name);
  if ('problem' in decoded) return decoded;
  return { id: await keepText(shelf, file.name, decoded.text), text: decoded.text };
}

/** The same file opened again, unchanged on either side, is the same notebook. */
export async function keepText(shelf: Shelf, file: string, text: string): Promise<string> {
  const sum = checksum(text);
  const same = (await shelf.list()).find((entry) => entry.file === file && entry.sum === sum);
  if (same) return same.id;
  const id = newId(file);
  const state = { title: titleOf(text) ?? file, history: startHistory(text) };
  await shelf.put(id, state, { revision: 0, from: [sum] }, { file });
  return id;
}
