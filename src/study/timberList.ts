/** The members of one scenario's shed, where the bill counts its timber from the same geometry. */

import { MissingRow } from '../model/checks/check.ts';
import { contextOf } from '../model/checks/context.ts';
import { frameMembers, type Member } from '../model/works/members.ts';
import type { Run } from './evaluate.ts';

export interface TimberList {
  readonly members: readonly Member[];
  /** What the members add up to: the timber of the bill, m³. */
  readonly timberM3: number;
  /** Boards above the walls, billed by the square metre in a line of their own. */
  readonly boardsM2: number;
  readonly boardM: number;
}

/**
 * Null where no frame is billed: without a shed or a roof, with a capital given as one sum, and while an input is
 * turned that the drawn shed does not know yet.
 */
export function timberList(run: Run, index: number): TimberList | null {
  const { values, scenario, tracks } = run.results[index];
  const { coefficients, bindings } = run.bound[index];
  const billed = values.shedTimberM3 ?? 0;
  if (!(billed > 0) || Number.isFinite(bindings.get('capitalGiven')?.value ?? Number.NaN)) return null;
  try {
    const context = contextOf({ scenario, values, tracks, coefficients });
    const { frameShape, frame } = context.built();
    const row = (id: string) => context.row(id).central;
    const section = (name: string) => ({ areaM2: row(`${name}SectionM2`), widthM: row(`${name}WidthM`) });
    const members = frameMembers(frameShape, frame, {
      post: section('post'),
      rafter: section('rafter'),
      purlin: section('purlin'),
      snowFactor: values.snowTimberFactor ?? 1,
      bracingFraction: row('timberBracingFraction'),
      wasteFraction: row('timberWasteFraction'),
    });
    const timberM3 = members.reduce((sum, { m3 }) => sum + m3, 0);
    if (Math.abs(timberM3 - billed) > 1e-6 * billed) return null;
    return {
      members,
      timberM3,
      boardsM2: values.shedCladdingM2 ?? 0,
      boardM: row('claddingBoardM'),
    };
  } catch (error) {
    if (error instanceof MissingRow) return null;
    throw error;
  }
}
