/** What is said between the page and its workers, and among the workers themselves. */
import type { Setting } from '../study/rows.ts';
import type { Answer, Request } from './job.ts';

/** Settings one that answers keeps; older ones are of notebooks no longer shown. */
export const SETTINGS_KEPT = 4;
/** Draws that fit in a frame or two, made at each move of a slider. */
export const WHILE_DRAGGING = 300;

export type ToServer =
  | { readonly say: 'setting'; readonly setting: number; readonly value: Setting }
  | {
      readonly say: 'ask';
      readonly version: number;
      readonly setting: number;
      readonly request: Request;
      readonly changes: ReadonlyMap<string, number>;
      /** Waits for no other job, and lets only another urgent one between. */
      readonly urgent?: boolean;
    }
  | { readonly say: 'stop'; readonly version: number }
  /** Others that answer as this one does and take a share of long work; none when one of them was lost. */
  | { readonly say: 'crew'; readonly ports: readonly MessagePort[] }
  /** Answer what comes in by this port too. */
  | { readonly say: 'serve'; readonly port: MessagePort };

export type FromServer =
  | { readonly say: 'progress'; readonly version: number; readonly done: number }
  | { readonly say: 'answer'; readonly version: number; readonly answer: Answer }
  | { readonly say: 'failed'; readonly version: number; readonly words: string };

/** What a worker's own scope and a message port have in common. */
export interface Port {
  postMessage(message: unknown, transfer?: Transferable[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  start?(): void;
}
