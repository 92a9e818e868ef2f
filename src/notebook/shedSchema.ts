/** The shed as the front matter gives it: its size, openings, heights and what it is built of. */
import { z } from 'zod';

/** Square metres beyond any shed; lengths have spans of their own, wider than any building for cattle and its machines. */
const MOST = 1e5;
const upTo = (most: number) => z.number().min(0).max(most);
const aboveTo = (most: number) => z.number().positive().max(most);
const amount = upTo(MOST);
const share = z.number().min(0).max(1);

export const shed = z.strictObject({
  roofed: z
    .boolean()
    .default(true)
    .describe('Whether the bed lies under a roof; without one it is an open pad that rain falls on'),
  lengthM: z.number().min(0.1).max(1000),
  depthM: z
    .number()
    .min(0.1)
    .max(200)
    .describe('From the feed barrier to the rear wall; the feed road lies outside'),
  feedRoadRoofed: z
    .boolean()
    .default(false)
    .describe('Whether the roof runs on over the feed road outside the barrier, in a shed of any kind'),
  stanceDepthM: upTo(200).default(3).describe('Scraped feed stance along the barrier, not part of the bed'),
  eaveM: z
    .number()
    .min(0.5)
    .max(25)
    .default(4.2)
    .describe('Lowest roof member above the floor at the open side'),
  rearEaveM: z.number().min(0.5).max(25).optional(),
  pitchDeg: z.number().min(0).max(70).default(12),
  overhangM: upTo(10).default(0.6),
  bayM: z.number().min(0.5).max(50).default(4.8),
  openSideAzimuthDeg: z.number().min(0).max(360).default(180),
  pushWallM: aboveTo(10).default(1.8),
  barrierM: aboveTo(5).default(0.5).describe('Throat of the feed barrier above the stance at the start'),
  barrierLiftM: upTo(5).default(1).describe('How far barrier and trough can be raised'),
  machineHeightM: aboveTo(10).default(2.6),
  machineWidthM: aboveTo(10).default(2),
  machineTurnM: aboveTo(50).default(6.5).describe('Outer turning diameter'),
  gateHeightM: aboveTo(5).default(1.3),
  waterBowls: z.number().int().min(0).max(1000).default(2),
  bowlHeightM: aboveTo(5).default(0.8),
  bowlLiftM: upTo(5).default(0),
  exits: z.number().int().min(0).max(100).default(2).describe('Ways out of the lying area'),
  hardStandingM2: amount.default(0).describe('Hard, slightly rough standing outside the bed'),
  calvingPensM2: amount.default(0),
  ridgeSlotM: upTo(5).default(0.3),
  inletM2: amount.optional().describe('Opening that lets air in; the open side when absent'),
  longestTimberM: z.number().min(0.5).max(50).default(6),
  ownTimber: z.boolean().default(false),
  ownBuildShare: share.default(0).describe('Share of the erection done by own hands'),
  basicWindMPerS: upTo(120)
    .default(24)
    .describe('Basic wind speed, from the local map: 10 minutes’ mean at 10 m, once in 50 years'),
  frostDepthM: upTo(5)
    .optional()
    .describe(
      'Depth to which the ground freezes, from the local code; foundations go below it. From the winters of the weather in use when absent',
    ),
  snowLoadKnPerM2: upTo(50).default(2).describe('Characteristic ground snow load, from the local map'),
});
