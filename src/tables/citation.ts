/** Where a row's number comes from: faults that every table words alike. */
import type { Problem } from '../units/problem.ts';
import { BASES, type Basis, type Source } from './coefficient.ts';

type Fault = Omit<Problem, 'file' | 'line' | 'key'>;

/** What is wrong with a row's source, if anything. */
export const sourceFault = (id: string, sources: ReadonlyMap<string, Source>): Fault | undefined =>
  sources.has(id)
    ? undefined
    : {
        what: 'unknown source',
        found: id || '(empty)',
        allowed: 'ids in data/sources.csv',
        todo: 'add the source there first',
      };

/** What is wrong with a row's basis, if anything. */
export const basisFault = (basis: string): Fault | undefined =>
  BASES.includes(basis as Basis)
    ? undefined
    : { what: 'unknown basis', found: basis || '(empty)', allowed: BASES.join(', ') };
