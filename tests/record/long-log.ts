import { fold } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import type { Entry } from '../../shared/entry.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { ACTIONS, FINDINGS } from '../../shared/vocabulary.ts';

/** A log of so many entries and photographs, made by rule: three months of evenings on a large quilt. */
export function longLog(entries: number, photos = 0): { log: Log; events: NumberedEvent[] } {
  const rows = 9;
  const blocks = 8;
  const events: NumberedEvent[] = [];
  const push = (event: LogEvent, at: string): void => {
    events.push({ seq: events.length + 1, at, event });
  };
  const start = Date.UTC(2026, 0, 5, 18);
  const details = QuiltDetails.parse({
    name: 'The ferry quilt',
    owner: 'Orla Pennick',
    mender: 'Ishbel Corrow',
    rows,
    blocks,
    zone: 'Europe/London',
    fabrics: { 'blue gingham': ['1-1', '2-4', '4-2'], 'red spot': ['2-2', '3-5'] },
  });
  push(
    { type: 'quilt-made', quilt: { ...details, id: 'long', madeAt: new Date(start).toISOString() } },
    new Date(start).toISOString(),
  );
  const done = ACTIONS.filter((action) => action !== 'leave');
  for (let i = 0; i < entries; i++) {
    // 40 notes an evening, three minutes apart.
    const at = new Date(start + Math.floor(i / 40) * 86_400_000 + (i % 40) * 180_000).toISOString();
    const place = `${1 + (i % rows)}-${1 + (Math.floor(i / rows) % blocks)}`;
    const entry: Entry =
      i % 3 === 0
        ? { kind: 'condition', finding: FINDINGS[i % FINDINGS.length]!, places: [place] }
        : i % 7 === 0
          ? {
              kind: 'material',
              material: 'thread',
              use: 'used',
              quantity: 1,
              unit: 'spool',
              name: `thread ${i % 30}`,
            }
          : {
              kind: 'treatment',
              action: done[i % done.length]!,
              state: i % 5 ? 'done' : 'planned',
              places: [place],
              minutes: 5,
            };
    const noteId = `n${i}`;
    push({ type: 'note-taken', note: { id: noteId, at, text: `note ${i}`, source: 'typed' } }, at);
    push(
      {
        type: 'note-read',
        noteId,
        reading: {
          act: 'log',
          entries: [{ entry, origins: {} }],
          ask: null,
          reply: '',
          entryIds: [`e${i}`],
          rules: 'made',
          conversation: {},
        },
      },
      at,
    );
  }
  for (let i = 0; i < photos; i++) {
    const at = new Date(start + i * 3_600_000).toISOString();
    push(
      {
        type: 'photo-added',
        photo: {
          id: `p${i}`,
          file: `photo-${i % 8}.jpg`,
          places: [`${1 + (i % rows)}-${1 + (i % blocks)}`],
          stage: i % 3 === 0 ? 'before' : i % 3 === 1 ? 'during' : 'after',
          caption: `Photograph ${i + 1}`,
          takenAt: at,
        },
      },
      at,
    );
  }
  return { log: fold(events), events };
}
