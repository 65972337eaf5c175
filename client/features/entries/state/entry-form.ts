import type { Entry } from '../../../../shared/entry.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';
import {
  ACTIONS,
  DECISION_STATUSES,
  FINDINGS,
  type Kind,
  LENGTH_UNITS,
  MARKS,
  MATERIAL_UNITS,
  MATERIALS,
  MEASURES,
  OBJECTS,
  PARTS,
  STATES,
  STITCHES,
  TASKS,
  TOPICS,
  USES,
} from '../../../../shared/vocabulary.ts';
import { readPlaces } from '../../quilts/state/read-places.ts';

/** How one slot of an entry is asked for in a form. */
export type FormField =
  | { slot: string; name: string; as: 'choice'; options: readonly string[]; needed?: true }
  | { slot: string; name: string; as: 'text' | 'places' | 'number' | 'moment' | 'tick' };

const PLACES: FormField = { slot: 'places', name: 'Where', as: 'places' };

/** The slots of each kind of entry, in the order in which they are asked for. */
export const ENTRY_FIELDS: Record<Kind, FormField[]> = {
  condition: [
    { slot: 'finding', name: 'Finding', as: 'choice', options: FINDINGS, needed: true },
    PLACES,
    { slot: 'fabric', name: 'Fabric', as: 'text' },
  ],
  treatment: [
    { slot: 'action', name: 'Treatment', as: 'choice', options: ACTIONS },
    { slot: 'state', name: 'How it stands', as: 'choice', options: STATES, needed: true },
    PLACES,
    { slot: 'object', name: 'What is taken off', as: 'choice', options: OBJECTS },
    { slot: 'stitch', name: 'Stitch', as: 'choice', options: STITCHES },
    { slot: 'minutes', name: 'Minutes', as: 'number' },
    { slot: 'fabric', name: 'Cloth put in', as: 'text' },
  ],
  material: [
    { slot: 'material', name: 'Material', as: 'choice', options: MATERIALS },
    { slot: 'use', name: 'Use', as: 'choice', options: USES, needed: true },
    { slot: 'name', name: 'Called', as: 'text' },
    { slot: 'quantity', name: 'How much', as: 'number' },
    { slot: 'unit', name: 'Unit', as: 'choice', options: MATERIAL_UNITS },
    { slot: 'cost.amount', name: 'Cost', as: 'number' },
    { slot: 'cost.each', name: 'The cost is for each', as: 'tick' },
  ],
  measurement: [
    { slot: 'of', name: 'Measure', as: 'choice', options: MEASURES, needed: true },
    { slot: 'value', name: 'Value', as: 'number' },
    { slot: 'unit', name: 'Unit', as: 'choice', options: LENGTH_UNITS },
    PLACES,
  ],
  work: [
    { slot: 'task', name: 'Task', as: 'choice', options: TASKS },
    { slot: 'mark', name: 'Mark', as: 'choice', options: MARKS },
    { slot: 'time', name: 'At', as: 'moment' },
    { slot: 'start', name: 'From', as: 'moment' },
    { slot: 'end', name: 'To', as: 'moment' },
    { slot: 'minutes', name: 'Minutes', as: 'number' },
  ],
  decision: [
    { slot: 'about', name: 'About', as: 'choice', options: TOPICS, needed: true },
    { slot: 'status', name: 'How it stands', as: 'choice', options: DECISION_STATUSES, needed: true },
  ],
  remark: [PLACES],
};

export type FormValues = Record<string, string>;

/** The entry as the form shows it. */
export function formValues(entry: Entry): FormValues {
  const values: FormValues = {};
  for (const { slot, as } of ENTRY_FIELDS[entry.kind]) {
    const value = slot
      .split('.')
      .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], entry);
    if (as === 'places') values[slot] = ((value as string[] | undefined) ?? []).join(', ');
    else if (as === 'tick') values[slot] = value ? 'yes' : '';
    else values[slot] = value === undefined ? '' : String(value);
  }
  return values;
}

/** The entry that the form says, or what is wrong with which field. */
export function entryOfForm(
  kind: Kind,
  values: FormValues,
  grid: QuiltGrid,
): { entry: Entry } | { faults: Record<string, string> } {
  const faults: Record<string, string> = {};
  const entry: Record<string, unknown> = { kind };
  const cost: { amount?: number; each?: true } = {};
  for (const field of ENTRY_FIELDS[kind]) {
    const text = (values[field.slot] ?? '').trim();
    if (field.as === 'choice' && field.needed && !text) faults[field.slot] = 'Choose one.';
    if (!text) continue;
    let value: unknown = text;
    if (field.as === 'number') {
      const number = Number(text.replace(',', '.'));
      if (!Number.isFinite(number) || number <= 0)
        faults[field.slot] = 'A number above nothing, such as 12 or 2.5.';
      value = number;
    } else if (field.as === 'places') {
      const read = placesOfForm(text, grid);
      if (Array.isArray(read)) value = read;
      else faults[field.slot] = read.fault;
    } else if (field.as === 'moment') {
      if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(text)) faults[field.slot] = 'A day and a time.';
      value = text.slice(0, 16);
    }
    if (field.slot === 'cost.amount') cost.amount = value as number;
    else if (field.slot === 'cost.each') cost.each = true;
    else entry[field.slot] = value;
  }
  if (cost.amount !== undefined) entry.cost = cost;
  if (entry.start && entry.end && (entry.start as string) >= (entry.end as string)) {
    faults.end = 'It ends before it starts.';
  }
  return Object.keys(faults).length ? { faults } : { entry: entry as Entry };
}

/** Blocks, named parts and names of places mixed: `3-2, border-top, the medallion`. */
export function placesOfForm(text: string, grid: QuiltGrid): string[] | { fault: string } {
  const parts: string[] = [];
  const rest: string[] = [];
  const pieces = text.split(/[,;]+/).flatMap((piece) => {
    const named = grid.placeNames?.[piece.trim().toLowerCase().replace(/^the /, '')];
    if (!named) return piece.split(/\s+/).filter(Boolean);
    parts.push(...named);
    return [];
  });
  for (const piece of pieces) {
    const part = PARTS.find((name) => name === piece.toLowerCase());
    if (part) parts.push(part);
    else rest.push(piece);
  }
  const blocks = readPlaces(rest.join(' '), grid);
  return Array.isArray(blocks) ? [...new Set([...blocks, ...parts])] : blocks;
}
