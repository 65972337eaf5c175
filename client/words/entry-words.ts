import type { Entry } from '../../shared/entry.ts';
import type { Quilt } from '../../shared/quilt.ts';
import { lengthWords, moneyWords, spanWords } from './figure-words.ts';
import { placesWords } from './place-words.ts';
import { tradeLabels } from './trade-labels.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the page needs of a quilt to put an entry into words. */
export type QuiltVoice = Pick<Quilt, 'rows' | 'blocks' | 'spelling' | 'currency'>;

/**
 * An entry as a workbook line: what, and beside it where. `what` starts with a capital and has no
 * full stop; `where` is empty where the entry has no place.
 */
export function entryWords(entry: Entry, quilt: QuiltVoice): { what: string; where: string } {
  const say = tradeLabels(quilt.spelling);
  const where =
    'places' in entry && entry.places?.length ? placesWords(entry.places, quilt, quilt.spelling) : '';
  switch (entry.kind) {
    case 'condition':
      return {
        what: capital(say.finding(entry.finding)) + (entry.fabric ? ` in the ${entry.fabric}` : ''),
        where,
      };
    case 'treatment': {
      const finished = entry.state === 'done';
      let act = entry.action ? (finished ? say.did(entry.action) : say.toDo(entry.action)) : 'work on it';
      if (entry.object && entry.action === 'remove') {
        act = finished
          ? `${say.object(entry.object)} ${say.did('remove')}`
          : `take off ${say.object(entry.object)}`;
      } else if (entry.object) act += `, ${say.object(entry.object)}`;
      const details = [
        entry.stitch ? say.stitch(entry.stitch) : '',
        entry.fabric ? `with ${entry.fabric}` : '',
        entry.minutes ? spanWords(entry.minutes) : '',
      ].filter(Boolean);
      const lead =
        entry.state === 'planned'
          ? 'To do: '
          : entry.state === 'considering'
            ? 'Undecided: '
            : entry.state === 'dropped'
              ? 'Decided against: '
              : entry.state === 'doing'
                ? 'In hand: '
                : '';
      return { what: capital(`${lead}${act}${details.length ? `, ${details.join(', ')}` : ''}`), where };
    }
    case 'material': {
      const name = entry.name ?? (entry.material ? say.material(entry.material) : 'material');
      const amount =
        entry.quantity === undefined
          ? ''
          : `${lengthWords(entry.quantity)} ${entry.unit ? say.unit(entry.unit, entry.quantity) : ''}`.trim();
      const cost = entry.cost
        ? `${moneyWords(entry.cost.amount, quilt.currency)}${entry.cost.each ? ' each' : ''}`
        : '';
      return {
        what: capital([`${say.use(entry.use)}: ${name}`, amount, cost].filter(Boolean).join(', ')),
        where,
      };
    }
    case 'measurement':
      return {
        what: capital(
          `${say.measure(entry.of)} ${entry.value === undefined ? '' : lengthWords(entry.value)} ${entry.unit ?? ''}`.trim(),
        ),
        where,
      };
    case 'work': {
      const clock = (time: string | undefined) => time?.slice(11) ?? '';
      const task = entry.task ? say.task(entry.task) : 'work';
      const parts = [
        entry.mark === 'start' ? `started ${task}` : entry.mark === 'stop' ? `stopped ${task}` : task,
        entry.time ? `at ${clock(entry.time)}` : '',
        entry.start || entry.end ? `${clock(entry.start) || '…'} to ${clock(entry.end) || '…'}` : '',
        entry.minutes ? spanWords(entry.minutes) : '',
      ].filter(Boolean);
      return { what: capital(parts.join(', ')), where };
    }
    case 'decision':
      return {
        what:
          entry.status === 'open' ? `Open: ${say.topic(entry.about)}` : `Settled: ${say.topic(entry.about)}`,
        where,
      };
    case 'remark':
      return { what: 'Kept as a remark', where };
  }
}
