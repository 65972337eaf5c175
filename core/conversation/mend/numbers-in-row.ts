import type { Finding } from '../../../shared/vocabulary.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { blockAt, splitBlock, unique } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { numberOf } from './mend-numbers.ts';

/**
 * Along a row that was told block by block, some of its blocks again by their number alone: "no, four's a tear", "no, only five's mould, six
 * is a stain". Of the other blocks everything stands.
 */

const LEAD =
  /^(?:no|nope|oh|ah|sorry|wait|actually|um|uh|er|well|hang|hold|on|i|mean|meant|it's|only|just|,|\.|;|and|but|block|number|that|'s|is|was)$/;
const LINK = /^(?:'s|is|was|a|an|the|really|actually|only|just|more|of|like|has|got|had|bit|rather|,)$/;
const STARTS =
  /^(?:(?:oh|ah|um|er|well|,|\.) )*(?:no|nope|sorry|wait|actually|hang on|hold on|i mean|i meant|only)\b/;

type Told = { block: string; finding: Finding; items: Item[] };

/** What is told of blocks of that row by number, or undefined where the note says anything else. */
function toldOf(state: ReaderState, items: Item[], row: number): Told[] | undefined {
  const out: Told[] = [];
  let at: Item | undefined;
  for (const x of items) {
    if (x.finding) {
      const n = at && numberOf(state, at);
      const block = n === undefined ? undefined : blockAt(state.grid, row, n);
      if (!at || !block) return undefined;
      out.push({ block, finding: x.finding, items: [at, x] });
      at = undefined;
    } else if (
      !at &&
      (x.quantity || x.token.kind === 'number') &&
      !x.quantity?.unit &&
      !x.place?.places.length
    )
      at = x;
    else if (!(at ? LINK : LEAD).test(x.w)) return undefined;
  }
  return at ? undefined : out;
}

/** Gives the whole set as it stands then; undefined where no block of one row is told again. */
export function numbersInRow(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
): Draft[] | undefined {
  if (items.length > 16 || !STARTS.test(words.trim())) return undefined;
  const found = standing.filter(({ was }) => was.kind === 'condition' && placesOf(was).length);
  const blocks = found.flatMap(({ was }) => placesOf(was).map(splitBlock));
  const row = blocks[0]?.row;
  if (found.length < 2 || row === undefined || blocks.some((b) => b?.row !== row)) return undefined;
  const told = toldOf(state, items, row);
  const all = found.flatMap(({ was }) => placesOf(was));
  if (!told?.length || !told.every(({ block }) => all.includes(block))) return undefined;
  const added: Draft[] = [];
  for (const { block, finding, items: said } of told) {
    const holding = found.filter(({ draft }) => placesOf(draft.entry).includes(block));
    if (holding.some(({ was }) => was.kind === 'condition' && was.finding === finding)) continue;
    for (const s of holding)
      put(
        s.draft,
        'places',
        placesOf(s.draft.entry).filter((p) => p !== block),
        'amend.in-row',
        said,
      );
    const like = found.find(({ was }) => was.kind === 'condition' && was.finding === finding);
    if (like) {
      put(like.draft, 'places', unique([...placesOf(like.draft.entry), block]), 'amend.in-row', said);
      continue;
    }
    const draft: Draft = {
      entry: { kind: 'condition', finding, places: [block] },
      origins: {},
      placed: 'said',
      clause: 0,
      sentence: 0,
    };
    for (const slot of ['finding', 'places', 'entry'] as const)
      draft.origins[slot] = {
        rule: 'amend.in-row',
        how: 'said',
        from: said[0]!.token.from,
        to: said[1]!.end ?? said[1]!.token.to,
      };
    added.push(draft);
  }
  return [
    ...standing.filter((s) => !found.includes(s) || placesOf(s.draft.entry).length).map((s) => s.draft),
    ...added,
  ];
}
