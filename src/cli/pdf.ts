/** An HTML text printed to PDF by the Chromium on this machine, without a window and without a network. */
import { CHROMIUM_ARGS, findChromium } from './chromium.mjs';

export type Printed = { readonly pdf: Uint8Array } | { readonly why: string };

/** The PDF, or in words why there is none. The pages take their size from the document's own print rules. */
export async function printPdf(html: string): Promise<Printed> {
  const asked = process.env.CHROMIUM_PATH;
  const executablePath = findChromium();
  if (asked && executablePath !== asked)
    return { why: `CHROMIUM_PATH names no program that can be run (${asked})` };
  if (!executablePath) return { why: 'no Chromium was found on this machine' };
  try {
    const { chromium } = await import('playwright-core');
    const browser = await chromium.launch({
      executablePath,
      args: CHROMIUM_ARGS,
    });
    try {
      const context = await browser.newContext({ javaScriptEnabled: false, offline: true });
      const page = await context.newPage();
      await page.setContent(html, { waitUntil: 'load' });
      return {
        pdf: await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true }),
      };
    } finally {
      await browser.close();
    }
  } catch (error) {
    const [first] = (error instanceof Error ? error.message : String(error)).split('\n');
    return { why: `${executablePath} could not print: ${first}` };
  }
}
