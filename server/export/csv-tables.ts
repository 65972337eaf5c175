import { stringify } from 'csv-stringify/sync';
import type { Hours } from '../../core/hours/hours.ts';
import type { QuiltState } from '../../core/log/state.ts';
import { localClock } from '../../core/record/wording/local-clock.ts';

type Cell = string | number | undefined;

/**
 * RFC 4180: commas, CRLF, quotes where needed, UTF-8 with a byte order mark so that spreadsheets read
 * accents right. A cell that a spreadsheet would take for a formula is defused with a leading quote mark.
 */
function table(columns: readonly string[], rows: readonly Cell[][]): Buffer {
  const safe = rows.map((row) =>
    row.map((cell) => (typeof cell === 'string' ? cell.replaceAll('\0', '') : cell)),
  );
  return Buffer.from(
    stringify([[...columns], ...safe], { bom: true, record_delimiter: 'windows', escape_formulas: true }),
    'utf8',
  );
}

/** Every entry that stands, one a row, with the words it came from. */
export function entriesCsv(state: QuiltState): Buffer {
  const words = new Map(state.notes.map(({ note }) => [note.id, note.text]));
  const { zone } = state.quilt;
  return table(
    [
      'date',
      'time',
      'kind',
      'what',
      'state',
      'places',
      'object',
      'stitch',
      'fabric or name',
      'quantity',
      'unit',
      'cost',
      'cost each',
      'minutes',
      'start',
      'end',
      'reason',
      'confirmed',
      'words',
      'entry',
      'note',
    ],
    state.entries.map(({ id, noteId, at, entry, reason, confirmed }) => {
      const { date, time } = localClock(at, zone);
      const row: Record<string, Cell> = {};
      switch (entry.kind) {
        case 'condition':
          Object.assign(row, { what: entry.finding, fabric: entry.fabric });
          break;
        case 'treatment':
          Object.assign(row, {
            what: entry.action,
            state: entry.state,
            object: entry.object,
            stitch: entry.stitch,
            fabric: entry.fabric,
            minutes: entry.minutes,
          });
          break;
        case 'material':
          Object.assign(row, {
            what: entry.material,
            state: entry.use,
            fabric: entry.name,
            quantity: entry.quantity,
            unit: entry.unit,
            cost: entry.cost?.amount,
            each: entry.cost?.each ? 'yes' : '',
          });
          break;
        case 'measurement':
          Object.assign(row, { what: entry.of, quantity: entry.value, unit: entry.unit });
          break;
        case 'work':
          Object.assign(row, {
            what: entry.task,
            state: entry.mark,
            start: entry.start ?? entry.time,
            end: entry.end,
            minutes: entry.minutes,
          });
          break;
        case 'decision':
          Object.assign(row, { what: entry.about, state: entry.status });
          break;
        case 'remark':
      }
      const places = 'places' in entry ? entry.places?.join(' ') : undefined;
      return [
        date,
        time,
        entry.kind,
        row.what,
        row.state,
        places,
        row.object,
        row.stitch,
        row.fabric,
        row.quantity,
        row.unit,
        row.cost,
        row.each,
        row.minutes,
        row.start,
        row.end,
        reason,
        confirmed ? 'yes' : 'no',
        noteId === undefined ? '' : words.get(noteId),
        id,
        noteId,
      ];
    }),
  );
}

/** The stretches of work that count, one a row. */
export function hoursCsv(hours: Hours): Buffer {
  return table(
    ['date', 'start', 'end', 'minutes', 'task', 'known by', 'notes'],
    hours.spans.map(({ start, end, minutes, task, how, noteIds }) => [
      start.slice(0, 10),
      start,
      end,
      minutes,
      task,
      how,
      noteIds.join(' '),
    ]),
  );
}

/** What was used, bought, needed and on hand, one a row. */
export function materialsCsv(state: QuiltState): Buffer {
  return table(
    ['date', 'use', 'material', 'name', 'quantity', 'unit', 'cost', 'cost each', 'currency'],
    state.entries.flatMap(({ at, entry }) =>
      entry.kind === 'material'
        ? [
            [
              localClock(at, state.quilt.zone).date,
              entry.use,
              entry.material,
              entry.name,
              entry.quantity,
              entry.unit,
              entry.cost?.amount,
              entry.cost?.each ? 'yes' : '',
              entry.cost ? state.quilt.currency : '',
            ],
          ]
        : [],
    ),
  );
}
