import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Entry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

/** An invented quilt: seven rows of six, four cloths, one of them in a single block. */
export const QUILT: QuiltGrid = {
  rows: 7,
  blocks: 6,
  fabrics: {
    'blue gingham': ['1-1', '2-4', '5-6'],
    'brown stripe': ['1-5', '3-2'],
    'plum silk': ['4-3', '4-4'],
    'rosebud lawn': ['6-1'],
  },
};

/** Reads the notes of one conversation in turn, each a quarter of an hour after the other, and gives the last reading. */
export function readLast(notes: string | string[], quilt: QuiltGrid = QUILT): Reading {
  let conversation: Conversation = SILENCE;
  let reading: Reading | undefined;
  [notes].flat().forEach((text, k) => {
    const at = `2026-03-10T${String(17 + Math.floor(k / 4)).padStart(2, '0')}:${String((k % 4) * 15).padStart(2, '0')}:00+00:00`;
    const read = readNote(text, { at, quilt, conversation });
    conversation = read.conversation;
    reading = read.reading;
  });
  return reading!;
}

type Placed = { places?: string[] };

/** All blocks and parts named by the last note's conditions and treatments, in order. */
export const placesSaid = (notes: string | string[]): string[] => [
  ...new Set(
    readLast(notes).entries.flatMap(({ entry }) =>
      entry.kind === 'condition' || entry.kind === 'treatment' ? ((entry as Placed).places ?? []) : [],
    ),
  ),
];

/** The last note's conditions, `finding place place`, one a line. */
export const conditionsSaid = (notes: string | string[]): string[] =>
  readLast(notes).entries.flatMap(({ entry }) =>
    entry.kind === 'condition' ? [`${entry.finding} ${(entry.places ?? []).join(' ')}`.trim()] : [],
  );

/** The last note's treatments: action, state, object, stitch, minutes, places, one a line. */
export const treatmentsSaid = (notes: string | string[]): string[] =>
  readLast(notes).entries.flatMap(({ entry }) => (entry.kind === 'treatment' ? [treatmentLine(entry)] : []));

function treatmentLine(entry: Extract<Entry, { kind: 'treatment' }>): string {
  const { action, state, object, stitch, minutes, places } = entry;
  return [
    action ?? '?',
    state,
    object,
    stitch,
    minutes === undefined ? undefined : `${minutes}min`,
    ...(places ?? []),
  ]
    .filter((x) => x !== undefined)
    .join(' ');
}
