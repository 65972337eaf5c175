import type { SlipRow } from './slips.ts';
import { UP_TO_NINE } from './small-numbers.ts';

const HOURS = [
  ...UP_TO_NINE,
  ...['ten', 'eleven', 'twelve', '10', '11', '12'],
  // as they are misheard themselves
  ...['ate', 'won', 'to', 'too', 'for'],
];
const MINUTES = ['quarter', 'half', 'five', 'ten', 'twenty', 'minutes', '5', '10', '20', '25'];
const CLOCK_LEADS = ['at', 'since', 'till', 'until', 'til'];
const MINUTES_AFTER = ['ten', 'fifteen', 'twenty', 'thirty', 'forty', 'fifty', 'oh', 'pm', "o'clock"];
/** What can follow a whole clock time: nothing, a joint, or a new matter. */
const AFTER_CLOCK = [
  '',
  ',',
  '.',
  ';',
  'and',
  'on',
  'in',
  'i',
  'so',
  'till',
  'until',
  'this',
  'last',
  'when',
];
const ENDS_OF_QUILT = [
  ...['top', 'bottom', 'upper', 'lower', 'first', 'last', 'next', 'middle', 'other', 'left', 'right', 'hand'],
  ...['these', 'those', 'outer', 'outside', 'end'],
];
const COUNTED = [
  ...['ball', 'balls', 'skein', 'skeins', 'spool', 'spools', 'reel', 'reels', 'pack', 'packs', 'yards'],
  ...['metres', 'meters', 'inches', 'inch', 'centimetres', 'centimeters', 'cm', 'blocks', 'ties', 'pins'],
  ...['minutes', 'hours', 'dollars', 'pounds', 'euros', 'by'],
];

/**
 * Numbers that the ear writes as the words that sound like them, and the "past" of a clock: "quarter passed two", "half past
 * ate", "block four ate", "ate balls of wool", "at to thirty".
 */
export const NUMBER_SLIPS: SlipRow[] = [
  { heard: 'passed', meant: 'past', before: MINUTES, after: HOURS },
  // "the top for rows", "the last to columns"
  ...Object.entries({ for: 'four', fore: 'four', to: 'two', too: 'two', tree: 'three', free: 'three' }).map(
    ([heard, meant]) => ({
      heard,
      meant,
      before: ENDS_OF_QUILT,
      after: ['rows', 'columns', 'blocks', 'squares'],
    }),
  ),
  { heard: 'ate', meant: 'eight', before: ['past', 'block', 'blocks', 'row', 'rows', ...CLOCK_LEADS] },
  {
    heard: 'ate',
    meant: 'eight',
    before: ['to', 'of', 'and'],
    after: [...COUNTED, ...AFTER_CLOCK.slice(0, 4)],
  },
  {
    heard: 'ate',
    meant: 'eight',
    before: UP_TO_NINE,
    notAfter: [
      'the',
      'it',
      'a',
      'through',
      'into',
      'away',
      'up',
      'at',
      'some',
      'my',
      'all',
      'that',
      'this',
      'holes',
    ],
  },
  { heard: 'ate', meant: 'eight', after: COUNTED.filter((word) => word !== 'by') },
  { heard: 'to', meant: 'two', before: CLOCK_LEADS, after: MINUTES_AFTER },
  { heard: 'for', meant: 'four', before: CLOCK_LEADS, after: MINUTES_AFTER },
  { heard: 'won', meant: 'one', before: CLOCK_LEADS, after: [...MINUTES_AFTER, ...AFTER_CLOCK] },
  { heard: 'to', meant: 'two', before: ['past'], after: AFTER_CLOCK },
  { heard: 'too', meant: 'two', before: ['past'], after: AFTER_CLOCK },
  { heard: 'for', meant: 'four', before: ['past'], after: AFTER_CLOCK },
  // "ties for inches apart", "for skeins of floss"
  {
    heard: 'for',
    meant: 'four',
    after: [
      'inches',
      'inch',
      'cm',
      'centimetres',
      'centimeters',
      'skeins',
      'spools',
      'reels',
      'metres',
      'yards',
    ],
    notBefore: ['enough', 'plenty', 'in', 'only', 'goes', 'on', 'went', 'sold', 'wide'],
  },
  { heard: 'won', meant: 'one', before: ['past'] },
  { heard: 'sentimetres', meant: 'centimetres' },
  { heard: 'sentimeters', meant: 'centimetres' },
  { heard: 'sentimetre', meant: 'centimetre' },
];
