import { z } from 'zod';
import type { Hours } from '../../core/hours/hours.ts';
import type { LoggedNote, QuiltState } from '../../core/log/state.ts';
import { EXPORT_VERSION, type ExportedNote, QuiltExport } from '../../shared/quilt-export.ts';

const exportedNote = ({
  note,
  reading,
  entryIds,
  replacedBy,
  replaces,
  refiledAs,
}: LoggedNote): ExportedNote => ({
  note,
  ...(reading ? { reading } : {}),
  entryIds,
  ...(replacedBy === undefined ? {} : { replacedBy }),
  ...(replaces === undefined ? {} : { replaces }),
  ...(refiledAs === undefined ? {} : { refiledAs }),
});

/** Everything that stands in the log; checked against the schema that is published beside it. */
export function quiltJson(state: QuiltState, hours: Hours): string {
  const whole: QuiltExport = {
    format: 'quiltside-quilt',
    version: EXPORT_VERSION,
    seq: state.seq,
    quilt: state.quilt,
    notes: state.notes.map(exportedNote),
    entries: state.entries,
    hours: {
      totalMin: hours.totalMin,
      spans: hours.spans.map(({ id, task, how, start, end, minutes, noteIds, entryIds }) => ({
        id,
        ...(task ? { task } : {}),
        how,
        start,
        end,
        minutes,
        noteIds,
        entryIds,
      })),
    },
    confirmedDays: state.confirmedDays,
    estimateSettings: state.estimateSettings,
    recordEdits: state.recordEdits,
    agreements: state.agreements,
    photos: state.photos,
    recordings: state.recordings,
  };
  return `${JSON.stringify(whole, null, 1)}\n`;
}

/** The JSON Schema (2020-12) of `quiltJson`, made from the definitions that the program itself uses. */
export function quiltJsonSchema(): string {
  const schema = z.toJSONSchema(QuiltExport, { io: 'output', reused: 'ref' });
  return `${JSON.stringify({ title: 'A quilt and everything in its log', ...schema }, null, 1)}\n`;
}

/** The notes as JSON Lines: one note with its reading a line, in the order they were said. */
export function notesLines(state: QuiltState): string {
  return state.notes.map((logged) => `${JSON.stringify(exportedNote(logged))}\n`).join('');
}
