/** The shed as the front matter gives it: its size, openings, heights and what it is built of. */
import { z } from 'zod';

/** Metres and square metres beyond any shed. */
const MOST = 1e5;
const positive = z.number().positive().max(MOST);
const amount = z.number().min(0).max(MOST);
const share = z.number().min(0).max(1);

export const shed = z.strictObject({
  roofed: z
    .boolean()
    .default(true)
    .describe('Whether the bed lies under a roof; without one it is an open pad that rain falls on'),
  lengthM: positive.max(1000),
  depthM: positive.max(1000).describe('From the feed barrier to the rear wall; the feed road lies outside'),
  feedRoadRoofed: z
    .boolean()
    .default(false)
    .describe('Whether the roof runs on over the feed road outside the barrier, in a shed of any kind'),
  stanceDepthM: amount.default(3).describe('Scraped feed stance along the barrier, not part of the bed'),
  eaveM: positive.max(50).default(4.2).describe('Lowest roof member above the floor at the open side'),
  rearEaveM: positive.optional(),
  pitchDeg: z.number().min(0).max(70).default(12),
  overhangM: amount.default(0.6),
  bayM: z.number().min(0.5).max(50).default(4.8),
  openSideAzimuthDeg: z.number().min(0).max(360).default(180),
  pushWallM: positive.default(1.8),
  barrierM: positive.default(0.5).describe('Throat of the feed barrier above the stance at the start'),
  barrierLiftM: amount.default(1).describe('How far barrier and trough can be raised'),
  machineHeightM: positive.default(2.6),
  machineWidthM: positive.default(2),
  machineTurnM: positive.default(6.5).describe('Outer turning diameter'),
  gateHeightM: positive.default(1.3),
  waterBowls: z.number().int().min(0).default(2),
  bowlHeightM: positive.default(0.8),
  bowlLiftM: amount.default(0),
  exits: z.number().int().min(0).default(2).describe('Ways out of the lying area'),
  hardStandingM2: amount.default(0).describe('Hard, slightly rough standing outside the bed'),
  calvingPensM2: amount.default(0),
  ridgeSlotM: amount.default(0.3),
  inletM2: amount.optional().describe('Opening that lets air in; the open side when absent'),
  longestTimberM: z.number().min(0.5).max(50).default(6),
  ownTimber: z.boolean().default(false),
  ownBuildShare: share.default(0).describe('Share of the erection done by own hands'),
  basicWindMPerS: amount
    .default(24)
    .describe('Basic wind speed, from the local map: 10 minutes’ mean at 10 m, once in 50 years'),
  frostDepthM: amount
    .max(5)
    .optional()
    .describe(
      'Depth to which the ground freezes, from the local code; foundations go below it. From the winters of the weather in use when absent',
    ),
  snowLoadKnPerM2: amount.default(2).describe('Characteristic ground snow load, from the local map'),
});
