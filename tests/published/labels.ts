/**
 * What each check of this folder is: its title carries one of these labels; refuseUnlabelled.ts refuses a test that carries
 * none or two. Only the first is proof of the model. `npm run published` counts them.
 */
import { LABELS } from './labelTexts.ts';

const labelled =
  (label: string) =>
  (title: string): string =>
    `${title} [${label}]`;

/**
 * A result of product code against a figure that others printed or measured and that was read, or that another library
 * computes; the figure is no row of the tables and set none.
 */
export const figure = labelled(LABELS.published);

/** The same against a figure that is remembered, or that keepers hold without a source. */
export const recalled = labelled(LABELS.recalled);

/** The same against a study that rows of the tables were taken from: it says that the parts still fit, no more. */
export const fitted = labelled(LABELS.fitted);

/** A coefficient or price of the tables, or a rule read off them, against what its source says. */
export const tableRow = labelled(LABELS.row);

/** A result of product code against our own arithmetic or plain logic: guards against change, proves nothing new. */
export const sum = labelled(LABELS.sum);
