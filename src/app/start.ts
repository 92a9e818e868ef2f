/** Starts the page. */
import { startEngine } from './engine.ts';
import { WkShell } from './shell.ts';

const { engine, problems } = startEngine();
const shell = document.querySelector('wk-shell');
if (shell instanceof WkShell) {
  shell.problems = problems;
  shell.engine = engine;
}
