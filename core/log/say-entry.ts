import type { Entry } from '../../shared/entry.ts';
import type { Quilt } from '../../shared/quilt.ts';
import { durationPhrase } from '../record/wording/figure-phrases.ts';
import { inPlaces } from '../record/wording/places-phrase.ts';
import { tradeTerms } from '../record/wording/trade-terms.ts';

/** More phrases than this are counted instead of listed: a spoken sentence has to be short. */
const MOST_PLACES = 3;

/**
 * What an entry says, as a short phrase to be spoken: "re-sewn in the second block of row 3, by hand".
 * `bare` leaves out what a heading over it says already: planned, considered, bought.
 */
export function sayEntry(entry: Entry, quilt: Quilt, bare = false): string {
  const terms = tradeTerms(quilt.spelling);
  const places =
    'places' in entry && entry.places?.length ? ` ${inPlaces(entry.places, quilt, MOST_PLACES)}` : '';
  switch (entry.kind) {
    case 'condition':
      return `${terms.finding(entry.finding, (entry.places?.length ?? 0) > 1)}${places}`;
    case 'treatment': {
      const { action, state, object, stitch, minutes } = entry;
      const what = object && action === 'remove' ? `${terms.object(object, true)} ` : '';
      const said = action === undefined ? 'work' : sayAction(action, state, quilt, bare);
      const how = stitch === undefined ? '' : `, ${terms.stitch(stitch)}`;
      const took = minutes === undefined ? '' : `, ${durationPhrase(minutes)}`;
      return `${what}${said}${places}${how}${took}`;
    }
    case 'material': {
      const name =
        entry.name ?? (entry.material === undefined ? 'something' : terms.material(entry.material));
      const amount = sayAmount(entry, quilt);
      return `${amount === '' ? '' : `${amount} of `}${name}${bare ? '' : ` ${USES[entry.use]}`}`;
    }
    case 'measurement':
      return `${terms.measure(entry.of)} ${entry.value ?? ''} ${entry.unit ?? ''}${places}`
        .replace(/\s+/g, ' ')
        .trim();
    case 'work': {
      const task = entry.task === undefined ? 'work' : terms.task(entry.task);
      if (entry.mark === 'start') return `started ${task}`;
      if (entry.mark === 'stop') return `stopped${entry.task === undefined ? '' : ` ${task}`}`;
      if (entry.start && entry.end) return `${task} from ${entry.start.slice(11)} to ${entry.end.slice(11)}`;
      return `${task}${entry.minutes === undefined ? '' : ` for ${durationPhrase(entry.minutes)}`}`;
    }
    case 'decision':
      return bare
        ? terms.question(entry.about)
        : `${terms.topic(entry.about)} ${entry.status === 'open' ? 'still open' : 'settled'}`;
    case 'remark':
      return `a remark${places}`;
  }
}

const USES = { used: 'used', bought: 'bought', needed: 'to buy', 'on-hand': 'on hand' } as const;

type Treatment = Extract<Entry, { kind: 'treatment' }>;

function sayAction(
  action: NonNullable<Treatment['action']>,
  state: Treatment['state'],
  quilt: Quilt,
  bare: boolean,
): string {
  const terms = tradeTerms(quilt.spelling);
  if (bare && state !== 'done') return terms.plan(action);
  switch (state) {
    case 'done':
      return terms.did(action);
    case 'doing':
      return `${terms.doing(action)} in hand`;
    case 'planned':
      return `${terms.plan(action)} planned`;
    case 'considering':
      return `${terms.plan(action)} considered`;
    case 'dropped':
      return `${terms.plan(action)} dropped`;
  }
}

/** "2 yards", "half a metre" is "0.5 m": figures as they were said, units in the quilt's spelling. */
export function sayAmount({ quantity, unit }: Extract<Entry, { kind: 'material' }>, quilt: Quilt): string {
  if (quantity === undefined) return '';
  const figure = Math.round(quantity * 1000) / 1000;
  return unit === undefined ? `${figure}` : `${figure} ${tradeTerms(quilt.spelling).unit(unit, figure)}`;
}
