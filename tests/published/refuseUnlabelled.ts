/**
 * Before every test of this folder: its title carries exactly one of the labels. A set-up file, so that it holds even
 * where files share what they import: a hook put up by an import would then hold for the first file alone.
 */
import { beforeEach, expect } from 'vitest';
import { LABELS } from './labelTexts.ts';

beforeEach(({ task }) => {
  if (!/\/tests\/published\//.test(task.file.filepath)) return;
  const name = expect.getState().currentTestName ?? '';
  const said = Object.values(LABELS).filter((label) => name.includes(`[${label}]`));
  expect(said, `labels of "${name}"; exactly one of labels.ts is needed`).toHaveLength(1);
});
