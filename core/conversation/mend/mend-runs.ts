import type { Item } from '../../rules/item.ts';
import { blockAt, isWholeRow, rowOf, splitBlock, unique } from '../../rules/places/grid.ts';
import { countsOf } from '../../text/number-words.ts';
import { placesOf, type Standing } from '../standing.ts';
import { POINTERS } from './items.ts';
import { change, type Work } from './mending.ts';

const COUNT: Record<string, number> = { ...countsOf(1, 10), to: 2, for: 4 };

const count = (word: string | undefined): number | undefined =>
  word === undefined ? undefined : (COUNT[word] ?? (/^\d{1,2}$/.test(word) ? Number(word) : undefined));

const AS_FAR_AS = /^(?:.* )?(?:as far as|up to|(?:got|went|managed|made it|did) to|stopped at|through to) $/;

/** "no, only as far as three", "I only got to row two": the end of what stands comes sooner. */
function mendEnd(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const k = items.findLastIndex(
    (x) =>
      (x.place?.places.length && placed.includes(x)) || (x.quantity?.value !== undefined && !x.quantity.unit),
  );
  const end = items[k];
  if (!end) return false;
  const ahead = items
    .slice(Math.max(0, k - 6), k)
    .filter((x) => x.w !== 'the' && !(x.place && POINTERS.has(x.place.rule)))
    .map((x) => `${x.w} `)
    .join('');
  // "in row three I only did the first two", "only up to block two": of one row, its beginning
  const said = end.place?.places ?? [];
  const few =
    said.length < work.state.grid.blocks &&
    (/ only (?:did|tied|quilted|finished|managed) /.test(work.words) || /\b(?:as far as|up to) /.test(end.w));
  if (!AS_FAR_AS.test(ahead) && !few) return false;
  const target = pool.findLast(({ draft }) => placesOf(draft.entry).filter((p) => splitBlock(p)).length > 1);
  if (!target) return false;
  const now = placesOf(target.draft.entry);
  const rowLast = splitBlock(now.findLast((p) => splitBlock(p))!)!.row;
  const row = isWholeRow(work.state.grid, said) ? splitBlock(said[0]!)?.row : undefined;
  const block = said.length === 1 || few ? splitBlock(said.at(-1) ?? '') : undefined;
  if (end.place && row === undefined && !block) return false;
  const n = end.quantity?.value;
  const kept = now.filter((p) => {
    const at = splitBlock(p);
    if (!at) return true;
    if (block) return at.row < block.row || (at.row === block.row && at.block <= block.block);
    return row !== undefined ? at.row <= row : at.row !== rowLast || at.block <= n!;
  });
  if (!kept.length || kept.length === now.length) return false;
  change(work, target, 'places', kept, 'place', [end, ...placed]);
  return true;
}

const RUN =
  /\b(?:blocks? )?(\w+) (?:to|through|thru|till|until|up to|-) (\w+) (?=$|[.,;!?:] |(?:please|sorry|instead|then|in|on|of|i|that|not|it|only|as) )/;

/** "make that one to four": the blocks of the row last named in the entry. */
export function mendRun(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  if (work.cue !== 'none' && mendEnd(work, items, placed, pool)) return true;
  if (mendRows(work, items, placed, pool)) return true;
  // "sorry, row three was one to four": the row is named with it
  const named = placed.filter((x) => x.place!.how !== 'implied');
  const inRow = named.length === 1 ? rowNamed(work, named[0]!, pool) : undefined;
  if (
    work.cue === 'none' ||
    (inRow === undefined && placed.some((x) => x.place!.rule !== 'place.pair' && x.place!.how !== 'implied'))
  )
    return false;
  const run = RUN.exec(` ${items.map((x) => x.w).join(' ')} `);
  // "3-2 to 3-3. I did 3-4 in running stitch" names its blocks in full
  const more = run && run.index + run[0].length < run.input.trimEnd().length;
  if (more && placed.some((x) => x.place!.rule === 'place.pair')) return false;
  // "2-1 and 2-2, not 1-1 and 1-2": blocks, each by its two numbers
  if (items.filter((x) => x.place?.rule === 'place.pair').length + work.wrong.size > 1) return false;
  const from = count(run?.[1]);
  const to = count(run?.[2]);
  if (from === undefined || to === undefined || to < from) return false;
  const target = pool.findLast(({ draft }) => placesOf(draft.entry).filter((p) => splitBlock(p)).length > 1);
  if (!target) return false;
  const now = placesOf(target.draft.entry);
  const row = inRow ?? splitBlock(now.findLast((p) => splitBlock(p))!)!.row;
  // "no, it was one to three, I had it right the first time": of a row told in part, and no hours
  const held = now.filter((p) => splitBlock(p)?.row === row).map((p) => splitBlock(p)!.block);
  const shares = from === Math.min(...held) || to === Math.max(...held);
  if (work.cue === 'weak' && (held.length === work.state.grid.blocks || !shares)) return false;
  const fresh = Array.from({ length: to - from + 1 }, (_, k) =>
    blockAt(work.state.grid, row, from + k),
  ).filter((p): p is string => p !== undefined);
  if (!fresh.length) return false;
  change(
    work,
    target,
    'places',
    unique([...now.filter((p) => splitBlock(p)?.row !== row), ...fresh]),
    'place',
    items.filter((x) => x.quantity || x.span || x.clock || x.place || count(x.w) !== undefined),
  );
  return true;
}

/** The row of what is named as a whole row, where an entry stands at blocks of it. */
function rowNamed(work: Work, item: Item, pool: Standing[]): number | undefined {
  const places = item.place!.places;
  const row = isWholeRow(work.state.grid, places) ? splitBlock(places[0]!)?.row : undefined;
  return row !== undefined &&
    pool.some(({ draft }) => placesOf(draft.entry).some((p) => splitBlock(p)?.row === row))
    ? row
    : undefined;
}

/** "no, one and two": whole rows told by their numbers alone. */
function mendRows(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const { grid } = work.state;
  if (work.cue === 'none' || placed.length) return false;
  const numbers = items.filter((x) => x.quantity?.value !== undefined || x.token.kind === 'number');
  if (
    !numbers.length ||
    items.some(
      (x) =>
        !numbers.includes(x) &&
        !/^(no|nope|sorry|and|,|&|just|only|rows?|to|it|was|make|that|correction|actually|wait|i|meant)$/.test(
          x.w,
        ),
    )
  )
    return false;
  const rows = numbers.map((x) => x.quantity?.value ?? x.token.value ?? 0);
  if (
    rows.some((r) => !Number.isInteger(r) || r < 1 || r > grid.rows) ||
    numbers.some((x) => x.quantity?.unit)
  )
    return false;
  const whole = pool.filter(({ was }) => {
    const places = placesOf(was);
    return (
      places.length > 0 &&
      places.every((p) => rowOf(grid, splitBlock(p)?.row ?? 0).every((q) => places.includes(q)))
    );
  });
  if (!whole.length || work.standing.some(({ was }) => was.kind === 'work' || was.kind === 'material'))
    return false;
  const joined =
    items.some((x) => x.w === 'to') && rows.length === 2
      ? Array.from({ length: Math.max(0, rows[1]! - rows[0]! + 1) }, (_, k) => rows[0]! + k)
      : rows;
  for (const s of whole)
    change(
      work,
      s,
      'places',
      joined.flatMap((r) => rowOf(grid, r)),
      'place',
      numbers,
    );
  return true;
}
