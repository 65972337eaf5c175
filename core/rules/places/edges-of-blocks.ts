import type { Clause } from '../clause/clause.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { splitBlock } from './grid.ts';

/**
 * "3-2, sewed the loose edge down", "turned its edges under", "the frayed edges I ran a stitch round": where blocks are spoken of
 * an edge that has come loose is theirs. The quilt's own edge is told without such a word, or of a binding.
 */
export function edgesOfBlocks(state: ReaderState, clause: Clause, items: Item[]): Item[] {
  const headed = underBlock(state, clause, items);
  if (headed) return headed;
  if (!items.some((x) => isPlainEdge(x))) return items;
  const ofCloth = items.findIndex((_x, k) => isEdgeOfCloth(items, k));
  if (ofCloth >= 0)
    return items.map((x, k) => (k === ofCloth ? { ...x, place: undefined, part: undefined } : x));
  const places = blocksSpokenOf(state, clause, items);
  if (!places) return items;
  return items.map((x, k) =>
    isPlainEdge(x) && isLoose(state, clause, items, k)
      ? { ...x, place: { ...x.place!, places, how: 'implied', rule: 'place.edge-of-block', kind: 'pointer' } }
      : x,
  );
}

/** "row one, block two: the seam along the outside edge has come undone", "2-3: torn at the bottom edge": where on the block that heads it. */
function underBlock(state: ReaderState, clause: Clause, items: Item[]): Item[] | undefined {
  const places = state.topic?.sentence === clause.sentence ? state.topic.places : [];
  if (!places.length || places.length > 2 || !places.every((p) => splitBlock(p))) return undefined;
  if (!items.some((x) => x.finding || x.fail || x.seam)) return undefined;
  if (items.some((x) => x.part === 'binding' || x.part === 'border' || x.object === 'binding'))
    return undefined;
  const placed = items.filter((x) => x.place?.places.length);
  const [edge] = placed;
  if (placed.length !== 1 || !edge || !/^edge(?:-|$)/.test(edge.place!.places.join())) return undefined;
  const k = items.indexOf(edge);
  const led =
    / (?:at|along|on|near|by|down|from|round|around)(?: (?:the|its|that|one|outside|outer|very))* $/.test(
      wordsBetween(items, Math.max(0, k - 4), k),
    );
  if (!led && !items.some((x) => x.seam)) return undefined;
  return items.map((x) =>
    x === edge
      ? { ...x, place: { ...x.place!, places, how: 'implied', rule: 'place.edge-of-block', kind: 'pointer' } }
      : x,
  );
}

const isPlainEdge = (x: Item): boolean => x.part === 'edge' && x.place?.places.join() === 'edge';

/** "both pinstripes are frayed round the edges", "the twill's worn along its edges": the edges of the cloth's blocks. */
const isEdgeOfCloth = (items: Item[], k: number): boolean =>
  isPlainEdge(items[k]!) &&
  /^(the|its|their|all)$/.test(items[k - 1]?.w ?? '') &&
  /^(round|around|along|at|on)$/.test(items[k - 2]?.w ?? '') &&
  items.slice(0, k - 2).some((x) => x.finding) &&
  items.slice(0, k - 2).some((x) => x.fabric && !x.place) &&
  !items.some((x) => x.part && x.part !== 'edge');

const LOOSE =
  /^(loose|raw|frayed|frayed-out|fraying|ragged|torn|cut|lifted|lifting|worn|ravel(?:l?ed|l?ing)|unravel(?:l?ed|l?ing)|open|flapping|curling|curled|broken|free|split|its|their|whose)$/;
const DOWN = / (?:down|under|in|back|together|flat|over) /;

function isLoose(state: ReaderState, clause: Clause, items: Item[], k: number): boolean {
  if (/^of$/.test(items[k + 1]?.w ?? '')) return false;
  // the cut may fall behind the word: "4-3, loose | edge re-sewn"
  const before = k ? items[k - 1] : state.clauses[state.clauses.indexOf(clause) - 1]?.items.at(-1);
  // "whipstitched the plaid edge down": the edge of a cloth
  if (before && (LOOSE.test(before.w) || before.fabric)) return true;
  // "a tear in 2-3, its edges all frayed" is read above; "there's a hole in 2-3 and the edges are frayed"
  const damage = state.drafts.findLast((d) => d.entry.kind === 'condition');
  if (
    damage?.entry.kind === 'condition' &&
    damage.sentence === clause.sentence &&
    /^(hole|tear|missing)$/.test(damage.entry.finding) &&
    /^edges\b/.test(items[k]!.w) &&
    !/ (?:all|right|round|around) /.test(wordsBetween(items, k + 1)) &&
    !/^(round|around|along|at)$/.test(items[k - 2]?.w ?? '')
  )
    return true;
  // "caught the edge down", "tucked the edges under"
  return (
    items.slice(0, k).some((x) => x.action || /^(caught|tucked|turned|folded|eased|drew)$/.test(x.w)) &&
    DOWN.test(wordsBetween(items, k + 1, k + 3))
  );
}

/** The blocks that this note speaks of, or before it has named any place those that the last one spoke of. */
function blocksSpokenOf(state: ReaderState, clause: Clause, items: Item[]): string[] | undefined {
  // "3-2 is worn along the edge": read where the block is in the clause itself
  if (items.some((x) => x.place && !isPlainEdge(x))) return undefined;
  if (items.some((x) => x.part === 'binding' || x.part === 'border' || x.object === 'binding'))
    return undefined;
  const topic = state.topic?.sentence === clause.sentence ? state.topic.places : [];
  const told = topic.length ? topic : state.carried;
  const places = told.length || state.drafts.length ? told : state.memory.focus;
  return places.length && places.length <= 6 && places.every((p) => splitBlock(p)) ? places : undefined;
}
