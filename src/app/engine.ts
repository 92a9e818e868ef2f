/** The same as reads any text, with the tables whole and a worker for draws: what stands behind an open notebook. */
import numbers from 'virtual:ahead/tables';
import words from 'virtual:ahead/words';
import type { WholeEngine } from '../store/engine.ts';
import { tablesOf } from '../tables/packed.ts';
import { readerEngine } from './readerEngine.ts';
import { startExplorer } from './startExplorer.ts';

export const startEngine = (): WholeEngine => ({
  ...readerEngine(),
  tables: tablesOf(numbers, words),
  explorer: startExplorer(),
});
