import type { Entry } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { together } from './gold-notes.ts';

/** A statement put together from a small grammar, and what it says. */
type Statement = { words: string; entries: Entry[] };
type Place = { words: string; places: string[]; several: boolean };

/** A note of one to three statements, with the entries that they make together. */
export type MadeNote = { text: string; joint: string; entries: Entry[] };

/** The invented quilt that the notes speak of. */
export const MADE_QUILT: QuiltGrid = {
  rows: 6,
  blocks: 5,
  fabrics: {
    'brown gingham': ['1-2', '4-4'],
    'blue check': ['2-1', '3-5', '5-3'],
    'plum velvet': ['6-2'],
  },
};

const NUMBER = ['', 'one', 'two', 'three', 'four', 'five', 'six'];
const ADJECTIVES = [
  ['torn', 'tear'],
  ['frayed', 'fraying'],
  ['stained', 'stain'],
  ['faded', 'fading'],
  ['puckered', 'puckering'],
  ['shattered', 'shattered'],
  ['threadbare', 'fraying'],
] as const;
const THINGS = [
  ['a tear', 'tear'],
  ['a hole', 'hole'],
  ['a stain', 'stain'],
  ['an old patch', 'old-repair'],
  ['moth holes', 'insect-damage'],
] as const;
/** Past, base and -ing form of a deed, and what it is. */
const DEEDS = [
  ['darned', 'darn', 'darning', 'darn'],
  ['patched', 'patch', 'patching', 'patch'],
  ['vacuumed', 'vacuum', 'vacuuming', 'clean'],
  ['photographed', 'photograph', 'photographing', 'photograph'],
  ['replaced', 'replace', 'replacing', 'replace'],
  ['pressed', 'press', 'pressing', 'press'],
  ['restitched', 'restitch', 'restitching', 'resew'],
] as const;
const STITCHES = [
  ['whipstitch', 'whipstitch'],
  ['running stitch', 'running'],
  ['a ladder stitch', 'ladder'],
  ['herringbone', 'herringbone'],
] as const;
const JOINTS = ['. ', '; ', ', and ', ' and '];

/** Makes notes, the same ones for the same seed. */
export function makeNotes(count: number, seed: number): MadeNote[] {
  let state = seed * 7919 + 17;
  const below = (n: number): number => {
    state = (state * 48271) % 2147483647;
    return state % n;
  };
  const pick = <T>(list: readonly T[]): T => list[below(list.length)]!;
  const row = (r: number): string[] => Array.from({ length: MADE_QUILT.blocks }, (_x, k) => `${r}-${k + 1}`);
  const column = (c: number): string[] => Array.from({ length: MADE_QUILT.rows }, (_x, k) => `${k + 1}-${c}`);
  const one = (words: string, ...places: string[]): Place => ({ words, places, several: false });
  const more = (words: string, ...places: string[]): Place => ({ words, places, several: true });

  const block = (): Place => {
    const [r, b] = [1 + below(6), 1 + below(5)];
    return one(
      pick([
        `${r}-${b}`,
        `row ${NUMBER[r]} block ${NUMBER[b]}`,
        `row ${r}, block ${b}`,
        `block ${NUMBER[b]} in row ${NUMBER[r]}`,
      ]),
      `${r}-${b}`,
    );
  };
  const pair = (): Place => {
    const [r, b] = [1 + below(6), 1 + below(5)];
    const other = `${(r % 6) + 1}-${1 + below(5)}`;
    return more(pick([`${r}-${b} and ${other}`, `both ${r}-${b} and ${other}`]), `${r}-${b}`, other);
  };
  const line = (): Place => {
    const r = 1 + below(6);
    const c = 1 + below(5);
    return pick([
      one(`row ${NUMBER[r]}`, ...row(r)),
      one(`all of row ${r}`, ...row(r)),
      one(`column ${NUMBER[c]}`, ...column(c)),
      one('the bottom row', ...row(6)),
      more('the top two rows', ...row(1), ...row(2)),
    ]);
  };
  const fixed = (): Place =>
    pick([
      one('the brown gingham', '1-2', '4-4'),
      more('both brown ginghams', '1-2', '4-4'),
      more('the blue check ones', '2-1', '3-5', '5-3'),
      one('the plum velvet', '6-2'),
      one('the blue check in row three', '3-5'),
      one('the top left block', '1-1'),
      more('the four corner blocks', '1-1', '1-5', '6-1', '6-5'),
      more('the last two blocks of row three', '3-4', '3-5'),
      one('the backing', 'backing'),
      one('the binding', 'binding'),
      one('the left border', 'border-left'),
      one('the bottom edge', 'edge-bottom'),
    ]);
  const anywhere = (): Place => pick([block, block, pair, line, fixed])();
  const place = (): Place => {
    const first = anywhere();
    if (below(5)) return first;
    const second = anywhere();
    // cloth told together with one of its own blocks is no plain sentence
    if (second.places.some((p) => first.places.includes(p))) return first;
    return more(`${first.words} and ${second.words}`, ...first.places, ...second.places);
  };

  const found = (): Statement => {
    const at = place();
    const [adjective, finding] = pick(ADJECTIVES);
    const [thing, what] = pick(THINGS);
    const of = (f: typeof finding | typeof what): Entry[] => [
      { kind: 'condition', finding: f, places: at.places },
    ];
    return pick([
      { words: `${at.words} ${at.several ? 'are' : 'is'} ${adjective}`, entries: of(finding) },
      { words: `${at.words} ${at.several ? 'have' : 'has'} ${thing}`, entries: of(what) },
      { words: `there's ${thing} in ${at.words}`, entries: of(what) },
    ]);
  };
  const done = (): Statement => {
    const at = place();
    const [past, base, ing, action] = pick(DEEDS);
    const minutes = pick([10, 20, 35, 40]);
    const [words, stitch] = pick(STITCHES);
    const entry = (state: 'done' | 'doing' | 'planned' | 'considering', rest = {}): Entry[] => [
      { kind: 'treatment', action, state, places: at.places, ...rest },
    ];
    const sewn = /darn|patch|resew/.test(action);
    return pick([
      {
        words: `I ${past} ${at.words} ${pick(['tonight', 'this morning', 'yesterday', 'earlier'])}`,
        entries: entry('done'),
      },
      { words: `${past} ${at.words}, ${minutes} minutes`, entries: entry('done', { minutes }) },
      sewn
        ? { words: `${past} ${at.words} with ${words}`, entries: entry('done', { stitch }) }
        : { words: `I've ${past} ${at.words}`, entries: entry('done') },
      { words: `${at.words} ${at.several ? 'have' : 'has'} been ${past}`, entries: entry('done') },
      { words: `I'll ${base} ${at.words} tomorrow`, entries: entry('planned') },
      { words: `${at.words} ${at.several ? 'need' : 'needs'} ${ing}`, entries: entry('planned') },
      { words: `I might ${base} ${at.words}`, entries: entry('considering') },
      { words: `I'm ${ing} ${at.words} now`, entries: entry('doing') },
    ]);
  };
  const besides = (): Statement =>
    pick<Statement>([
      {
        words: 'bought three yards of muslin for the backing',
        entries: [{ kind: 'material', material: 'backing', use: 'bought', quantity: 3, unit: 'yd' }],
      },
      {
        words: 'need two spools of grey thread',
        entries: [{ kind: 'material', material: 'thread', use: 'needed', quantity: 2, unit: 'spool' }],
      },
      {
        words: 'the quilt measures 60 by 72 inches',
        entries: [
          { kind: 'measurement', of: 'width', value: 60, unit: 'in' },
          { kind: 'measurement', of: 'length', value: 72, unit: 'in' },
        ],
      },
      {
        words: 'the batting is settled, wool',
        entries: [{ kind: 'decision', about: 'batting', status: 'settled' }],
      },
      {
        words: "haven't decided on the binding color",
        entries: [{ kind: 'decision', about: 'binding', status: 'open' }],
      },
      { words: 'her grandmother made it in 1931', entries: [{ kind: 'remark' }] },
    ]);

  return Array.from({ length: count }, () => {
    const kinds = [found, found, done, done, besides];
    const told = Array.from({ length: 1 + below(3) }, () => pick(kinds)());
    const statements = told.filter((s, k) => told.findIndex((o) => o.words === s.words) === k);
    const joint = pick(JOINTS);
    return {
      text: statements.map((s) => s.words).join(joint),
      joint,
      entries: together(statements.flatMap((s) => s.entries)),
    };
  });
}
