import { readFileSync } from 'node:fs';
import { decide } from '../../core/log/decide.ts';
import { evolve, fold } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import type { Entry } from '../../shared/entry.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import type { Act, QueryName } from '../../shared/vocabulary.ts';

export type CorpusLine = {
  at: string;
  text: string;
  gold: { act: Act; entries: Entry[]; query?: QueryName };
};

/**
 * The demo quilt's log, folded from its notes as a person annotated them, not from today's rules. `entriesOf`
 * says which entries of a note are taken.
 */
export function demoLog(
  more: readonly LogEvent[] = [],
  entriesOf: (line: CorpusLine) => Entry[] = ({ gold }) => gold.entries,
): { log: Log; events: NumberedEvent[] } {
  const details = QuiltDetails.parse(JSON.parse(readFileSync('server/demo/quilt.json', 'utf8')));
  const lines = readFileSync('tests/corpus/demo.jsonl', 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as CorpusLine);
  const events: NumberedEvent[] = [];
  let log = fold([]);
  let ids = 0;
  const push = (event: LogEvent, at: string): void => {
    const numbered = { seq: events.length + 1, at, event };
    events.push(numbered);
    log = evolve(log, numbered);
  };
  const made = lines[0]!.at;
  push({ type: 'quilt-made', quilt: { ...details, id: 'demo', madeAt: made } }, made);
  lines.forEach((line, i) => {
    const { at, text, gold } = line;
    const decision = decide(
      log,
      { type: 'take-note', clientId: `n${i + 1}`, text, at },
      {
        at,
        id: () => `e${++ids}`,
        reading: {
          rules: 'gold',
          conversation: {},
          reading: {
            act: gold.act,
            entries: entriesOf(line).map((entry) => ({ entry, origins: {} })),
            ask: null,
            reply: '',
            ...(gold.query ? { query: gold.query } : {}),
          },
        },
      },
    );
    if ('refused' in decision) throw new Error(decision.refused);
    for (const event of decision.events) push(event, at);
  });
  for (const event of more) push(event, '2026-03-14T13:00:00Z');
  return { log, events };
}
