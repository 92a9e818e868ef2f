/** Three ways of editing. Each sends edits until it is told to stop, and notes when each was sent. */
import type { Page } from 'playwright-core';

export interface Sent {
  /** Milliseconds since 1970 at which each edit was sent. */
  readonly at: number[];
  /** What each edit wrote: a letter, or the number of animals. */
  readonly what: string[];
  /** How many the page has taken in: the rest were still on their way to a page that was busy. */
  reached: number;
}

export interface Way {
  readonly name: string;
  edit(page: Page, random: () => number, sent: Sent, stopped: () => boolean): Promise<void>;
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

async function atTheEnd(page: Page): Promise<void> {
  if ((await page.locator('wk-text .cm-content').count()) === 0)
    await page.getByRole('button', { name: 'Edit the text' }).click();
  await page.locator('wk-text .cm-content').focus();
  await page.keyboard.press('Control+End');
}

async function key(page: Page, sent: Sent): Promise<void> {
  const letter = LETTERS[sent.at.length % LETTERS.length];
  sent.at.push(Date.now());
  sent.what.push(letter);
  await page.keyboard.press(letter);
  sent.reached++;
}

export const WAYS: readonly Way[] = [
  {
    name: 'slider',
    async edit(page, random, sent, stopped) {
      const slider = page.getByRole('slider', { name: /^Animals/ });
      const now = Number(await slider.inputValue());
      let last = now;
      while (!stopped()) {
        // Never one of the last few, so that what is found says which edit it is.
        do last = 10 + Math.floor(random() * 40);
        while (last === now || sent.what.slice(-20).includes(String(last)));
        sent.at.push(Date.now());
        sent.what.push(String(last));
        await slider.evaluate((element, value) => {
          (element as HTMLInputElement).value = value;
          element.dispatchEvent(new Event('input', { bubbles: true }));
          element.dispatchEvent(new Event('change', { bubbles: true }));
        }, String(last));
        sent.reached++;
        await pause(100 + random() * 500);
      }
    },
  },
  {
    name: 'typing without pause',
    async edit(page, random, sent, stopped) {
      await atTheEnd(page);
      while (!stopped()) {
        await key(page, sent);
        await pause(60 + random() * 120);
      }
    },
  },
  {
    name: 'typing with pauses',
    async edit(page, random, sent, stopped) {
      await atTheEnd(page);
      while (!stopped()) {
        for (let k = 0; k < 4 + random() * 14 && !stopped(); k++) {
          await key(page, sent);
          await pause(60 + random() * 120);
        }
        await pause(300 + random() * 1500);
      }
    },
  },
];
