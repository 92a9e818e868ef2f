/** Money as the front matter gives it: what the farm says once for all scenarios, and how each is paid for. */
import { z } from 'zod';
import { HAD_NAMES, MOST_HAD } from './billIds.ts';

/** Beyond any farm, its prices and its debts. */
const MOST = 1e9;
const amount = z.number().min(0).max(MOST);
const share = z.number().min(0).max(1);
const taxRate = z.number().min(0).max(0.5);
const month = z.number().int().min(1).max(12);

export const money = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/),
  year: z.number().int().min(1990).max(2100),
  labourPerHour: amount,
  interestRate: z
    .number()
    .min(0)
    .max(1)
    .default(0.05)
    .describe('Yearly and nominal, for capital charge and discounting; a loan has its own'),
  inflation: z
    .number()
    .min(-0.05)
    .max(0.3)
    .default(0)
    .describe('Rise of all prices a year, the same for every scenario; at 0 all is in prices of the year'),
  horizonYears: z
    .number()
    .int()
    .min(1)
    .max(60)
    .default(20)
    .describe('Years the works are counted over, the same for every scenario'),
  incomePerHead: z
    .number()
    .min(-1e6)
    .max(1e6)
    .optional()
    .describe(
      'Left a head and year after all costs but the wintering shown here and after living costs, before interest, tax and depreciation',
    ),
  debtServicePerYear: amount.default(0).describe('What loans the farm already has take a year'),
  vat: z
    .strictObject({
      worksFraction: taxRate
        .optional()
        .describe(
          'One rate of value added tax on all works, over their price; where no rate of a kind stands below',
        ),
      winterFraction: taxRate
        .optional()
        .describe(
          'One rate on feed, bedding, machines, repairs, vet; where no rate of a kind stands below. None where only worksFraction is given',
        ),
      rates: z
        .strictObject({
          materials: taxRate.optional().describe('Building materials, and what repairs take'),
          services: taxRate.optional().describe('Builder, engineer, contractor, vet'),
          feed: taxRate.optional().describe('Feed and straw'),
          machinery: taxRate.optional().describe('Equipment: bowls, feeders, energiser, troughs'),
          fuel: taxRate.optional().describe('Fuel and running of own machines'),
        })
        .prefault({})
        .describe(
          'Own rates by kind of purchase; those of the country’s table where absent and no one rate is given',
        ),
      reclaimed: z
        .boolean()
        .default(false)
        .describe('Whether the farm is registered and gets it back; where it does not, it is a cost'),
      worksReclaimed: z
        .boolean()
        .optional()
        .describe(
          'Whether it gets back that on the works, where that differs: some countries refund a flat-rate farmer for farm buildings',
        ),
      pricesHoldIt: z
        .boolean()
        .default(false)
        .describe(
          'Whether own prices, quotes and prices of feed and bedding in this notebook hold the tax; it is taken out of them first',
        ),
      refundMonths: z
        .number()
        .int()
        .min(0)
        .max(24)
        .default(2)
        .describe('Months from paying it to the refund'),
    })
    .optional()
    .describe('Value added tax; the tables hold prices without it, and none is counted when absent'),
  paidIn: z
    .strictObject({
      income: month.optional().describe('Month the herd brings its money; evenly over the year when absent'),
      feed: month.optional().describe('Month feed is paid for; as it is fed when absent'),
      bedding: month.optional().describe('Month bedding is paid for; as it is strewn when absent'),
    })
    .prefault({})
    .describe('When money moves, for the cash by month'),
  prices: z
    .record(
      z.string(),
      z.strictObject({
        value: amount,
        low: amount.optional(),
        high: amount.optional(),
        because: z.string().min(1).max(2000),
      }),
    )
    .default({})
    .describe('Own prices by id, in place of rows of the price table'),
});

const loan = z.strictObject({
  name: z.string().min(1).max(200),
  amount: amount,
  rate: z.number().min(0).max(1),
  years: z.number().int().min(1).max(60),
  graceYears: z.number().int().min(0).max(20).default(0),
  kind: z.enum(['annuity', 'straightLine']).default('annuity'),
});

const gain = z
  .strictObject({
    name: z.string().min(1).max(60).describe('What is gained, such as calves saved or a payment for welfare'),
    amount: amount.describe('Money a year'),
    low: amount.optional(),
    high: amount.optional(),
    cash: z.boolean().default(true).describe('Whether it comes as money to the bank'),
    because: z.string().min(1).max(2000).describe('Why it is expected, and how the amount was reckoned'),
  })
  .refine(({ low, amount: middle, high }) => (low ?? middle) <= middle && middle <= (high ?? middle), {
    message: 'the range of the gain does not hold its amount',
    path: ['low'],
  });

const age = z.number().min(0).max(60);

const hadLine = z.strictObject({
  what: z
    .enum(HAD_NAMES)
    .describe('A line of the bill, or a group of them; a line’s own name stands before its group'),
  share: share.default(1).describe('Part of it that stands already; at 0 all of it is bought'),
  ageYears: age.describe('How old it is'),
  leftYears: age
    .optional()
    .describe('Years until it must be bought again, as it stands; its usual life less its age when absent'),
  condition: z
    .string()
    .min(1)
    .max(300)
    .optional()
    .describe('Its condition, in the keeper’s own words, for whoever lends on it'),
});

/** What a lender asks for and no program can make; ticked where it lies with the paper. */
export const BY_HAND = [
  'accounts', 'balanceSheet', 'security', 'permission', 'grantLetter', 'quotes', 'engineer', 'insurance', 'tax',
] as const; // biome-ignore format: one short list

export const finance = z.strictObject({
  capital: amount.optional().describe('All works; from the bill of quantities when absent'),
  alreadyHave: z
    .strictObject({
      share: share
        .default(0)
        .describe(
          'Part of the works, by worth, that stands already and need not be bought; of what no line below names',
        ),
      ageYears: age.default(0).describe('How old it is; it is bought again when its life is over'),
      lines: z
        .array(hadLine)
        .max(MOST_HAD)
        .default([])
        .describe('Lines and groups of the bill that stand already, each with an age of its own'),
    })
    .optional()
    .describe('What of the works the farm has already, as a baseline often does'),
  worksMonths: z
    .number()
    .int()
    .min(1)
    .max(24)
    .default(3)
    .describe('Months before the first winter over which the works are paid for'),
  grant: amount.default(0),
  grantMonths: z
    .number()
    .int()
    .min(0)
    .max(120)
    .default(0)
    .describe('Months after the works are finished until the grant is paid'),
  gains: z
    .array(gain)
    .max(8)
    .default([])
    .describe('What the keeper expects beyond the model a year, against a farm without these works'),
  reason: z
    .string()
    .min(1)
    .max(600)
    .optional()
    .describe('Why it may be done though it does not pay, in the keeper’s own words'),
  byHand: z
    .array(z.enum(BY_HAND))
    .max(BY_HAND.length)
    .default([])
    .describe('What of the list of papers to add by hand lies with the case already'),
  ownMoney: amount.optional(),
  loans: z.array(loan).max(6).default([]),
  baseline: z.string().optional().describe('Name of the scenario this one is compared with'),
  quotes: z
    .array(
      z.strictObject({
        line: z.string().min(1).max(200),
        unitPrice: amount,
        because: z.string().min(1).max(2000),
      }),
    )
    .default([])
    .describe('Own quotes that replace unit prices of bill lines'),
});
