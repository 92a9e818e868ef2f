/**
 * The wintering systems a scenario can name. A system is a label plus defaults: where the animals spend the
 * day decides which stages do any work, so a new system is one entry here and rows in the tables.
 */
export interface SystemDefaults {
  readonly label: string;
  /** Merged under what the scenario says, before validation. */
  readonly defaults: Readonly<Record<string, unknown>>;
}

export const SYSTEMS = {
  outwintered: {
    label: 'out on pasture',
    defaults: {
      placement: { bedShare: 0, slatsShare: 0, yardShare: 0, pastureShare: 1 },
      feeder: 'ring',
      exposure: 'open',
    },
  },
  slatted: {
    label: 'slatted shed over slurry',
    defaults: {
      placement: { bedShare: 0, slatsShare: 1, yardShare: 0, pastureShare: 0, yardTo: 'slurry' },
      feeder: 'barrier',
      exposure: 'shed',
    },
  },
  'deep-bedded': {
    label: 'deep bed that becomes compost',
    defaults: {
      placement: { bedShare: 0.75, slatsShare: 0, yardShare: 0.25, pastureShare: 0, yardTo: 'pack' },
      feeder: 'barrier',
      exposure: 'shed',
    },
  },
} as const satisfies Record<string, SystemDefaults>;

export type System = keyof typeof SYSTEMS;
export const SYSTEM_NAMES = Object.keys(SYSTEMS) as [System, ...System[]];
