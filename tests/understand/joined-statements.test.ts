import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
// @ts-expect-error the contract's own scorer is plain JavaScript
import { compare } from '../contract/score.mjs';
import { AFTERNOON, QUILT } from './two-cloths.ts';

/**
 * Statements that lean on nothing said before: whichever two of them are told in one breath, and however they are joined,
 * each means what it means alone. Common ways of talking, no source.
 */
type Statement = { kind: Kind; text: string; entries: Record<string, unknown>[] };
type Kind = 'deed' | 'found' | 'plan' | 'open' | 'matter' | 'goods' | 'length' | 'work' | 'remark';

const MARKS = ['. ', '; '];
const JOINTS = [', ', ' and ', ' and then ', ' and um ', ', and ', ' then '];

const row = (r: number): string[] => [1, 2, 3, 4, 5].map((b) => `${r}-${b}`);
const work = (
  action: string,
  state: string,
  places: string[],
  more: object = {},
): Record<string, unknown> => ({
  kind: 'treatment',
  action,
  state,
  places,
  ...more,
});
const found = (finding: string, ...places: string[]): Record<string, unknown> => ({
  kind: 'condition',
  finding,
  places,
});
const goods = (material: string, use: string, more: object = {}): Record<string, unknown> => ({
  kind: 'material',
  material,
  use,
  ...more,
});
const matter = (about: string, status: string): Record<string, unknown> => ({
  kind: 'decision',
  about,
  status,
});
const length = (of: string, value: number): Record<string, unknown> => ({
  kind: 'measurement',
  of,
  value,
  unit: 'in',
});

const STATEMENTS: Statement[] = (
  [
    ['deed', 'darned 2-3', work('darn', 'done', ['2-3'])],
    [
      'deed',
      'patched row four block one with muslin',
      work('patch', 'done', ['4-1']),
      goods('fabric', 'used'),
    ],
    ['deed', 'took the old patch off 3-5', work('remove', 'done', ['3-5'], { object: 'old-patch' })],
    ['deed', 'I ironed the backing', work('press', 'done', ['backing'])],
    ['deed', 'vacuumed the top', work('clean', 'done', ['top'])],
    [
      'deed',
      're-sewed the seam between 5-1 and 5-2 by hand',
      work('resew', 'done', ['5-1', '5-2'], { stitch: 'hand' }),
    ],
    ['deed', 'put crepeline over 6-4', work('overlay', 'done', ['6-4']), goods('net', 'used')],
    ['found', '2-5 is torn', found('tear', '2-5')],
    ['found', 'there is a hole in 1-4', found('hole', '1-4')],
    ['found', 'the binding is worn along the top edge', found('fraying', 'edge-top')],
    ['found', 'all the pinstripe has faded', found('fading', '2-2', '4-4')],
    ['found', 'the backing has two stains', found('stain', 'backing')],
    ['found', 'row six is puckered', found('puckering', ...row(6))],
    ['found', 'moth in 3-4', found('insect-damage', '3-4')],
    ['plan', 'I need to line 4-3', work('stabilize', 'planned', ['4-3'])],
    ['plan', "I'll quilt row one tomorrow", work('quilt', 'planned', row(1))],
    ['plan', 'the border has to be washed', work('wash', 'planned', ['border'])],
    ['plan', '4-5 needs patching', work('patch', 'planned', ['4-5'])],
    [
      'open',
      'not sure whether to darn 5-5 or leave it',
      work('darn', 'considering', ['5-5']),
      work('leave', 'considering', ['5-5']),
    ],
    ['open', 'maybe net over 6-1', work('overlay', 'considering', ['6-1'])],
    ['matter', "I can't decide on the binding", matter('binding', 'open')],
    ['matter', 'the backing will be grey flannel', matter('backing', 'settled')],
    ['matter', 'batting still undecided', matter('batting', 'open')],
    [
      'goods',
      'bought three yards of ticking for the backing at nine dollars a yard',
      goods('backing', 'bought', { quantity: 3, unit: 'yd', cost: { amount: 9, each: true } }),
    ],
    [
      'goods',
      'need to buy two spools of cream thread',
      goods('thread', 'needed', { quantity: 2, unit: 'spool' }),
    ],
    [
      'goods',
      'there are six skeins of wool in the drawer for ties',
      goods('tie-thread', 'on-hand', { quantity: 6, unit: 'skein' }),
    ],
    ['length', 'it measures 62 by 74 inches', length('width', 62), length('length', 74)],
    ['length', 'the strips are two and a quarter inches wide', length('strip', 2.25)],
    ['work', 'spent an hour and a half on paperwork', { kind: 'work', task: 'paperwork', minutes: 90 }],
    [
      'work',
      'cutting took me from nine to half past ten',
      { kind: 'work', task: 'cutting', start: '2026-03-14T09:00', end: '2026-03-14T10:30' },
    ],
    ['remark', 'her grandmother made it in 1931', { kind: 'remark' }],
  ] as [Kind, string, ...Record<string, unknown>[]][]
).map(([kind, text, ...entries]) => ({ kind, text, entries }));

/** May these two be told in one breath without the one colouring the other? A plan told behind a doubt is doubted too. */
function standApart(a: Statement, b: Statement): boolean {
  if (a === b) return false;
  if (a.kind === b.kind) return a.kind === 'found' || a.kind === 'deed';
  const kinds = new Set([a.kind, b.kind]);
  return !(kinds.has('open') && kinds.has('plan'));
}

function misread(first: Statement): string[] {
  return STATEMENTS.filter((second) => standApart(first, second)).flatMap((second) => {
    const spoken = first.kind !== 'remark' && second.kind !== 'remark';
    return [...MARKS, ...(spoken ? JOINTS : [])].flatMap((joint) => {
      const note = `${first.text}${joint}${second.text}`;
      const { reading } = readNote(note, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE });
      const points = compare(
        [...first.entries, ...second.entries],
        reading.entries.map(({ entry }) => entry),
      );
      return reading.act === 'log' && !points.miss.length && !points.extra.length
        ? []
        : [`${note}: missing ${points.miss.join(', ')}; too much ${points.extra.join(', ')}`];
    });
  });
}

describe('two statements told in one breath mean what each means alone', () => {
  it.each(STATEMENTS.map((s) => [s.text, s] as const))('%s, and …', (_, first) => {
    expect(misread(first)).toEqual([]);
  });
});
