import type { MeasurementEntry } from '../../shared/entry.ts';
import type { LoggedEntry } from '../log/state.ts';
import { exact } from './exact.ts';

export interface Measured {
  value: number;
  noteIds: string[];
}

const CM_PER: Record<string, string> = { in: '2.54', ft: '30.48', yd: '91.44', cm: '1', m: '100', mm: '0.1' };
/** A measure of one block or corner says nothing of the whole quilt. */
const WHOLE = new Set(['quilt', 'top']);
const OF_WHOLE = new Set(['width', 'length', 'diagonal']);

/** What was measured of one kind, in the wanted unit, in the order it was said. */
export const measuredOf = (
  entries: readonly LoggedEntry[],
  of: MeasurementEntry['of'],
  unit: 'in' | 'cm',
): Measured[] =>
  entries.flatMap(({ entry, noteId }) => {
    if (entry.kind !== 'measurement' || entry.of !== of || entry.value === undefined) return [];
    if (OF_WHOLE.has(of) && (entry.places ?? []).some((place) => !WHOLE.has(place))) return [];
    const value = exact(entry.value)
      .mul(CM_PER[entry.unit ?? unit]!)
      .div(CM_PER[unit]!);
    return [{ value: Number(value.valueOf()), noteIds: noteId === undefined ? [] : [noteId] }];
  });
