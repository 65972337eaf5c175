import { readCount, readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { findFabric } from '../../fabrics/find-fabric.ts';
import { findClothBlock } from '../find-cloth-block.ts';
import { splitBlock } from '../grid.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';

/**
 * "(the block under) the sateen", "(the one above) the lower linen", "the linen in row four": the one block of a cloth that another is
 * counted from. A cloth of several blocks tells nothing.
 */
export function blockOfCloth(
  tokens: Token[],
  i: number,
  { fabrics, grid }: PlaceContext,
): PlaceFound | undefined {
  if (!fabrics?.names.size) return undefined;
  const cloth = findFabric(tokens, i, fabrics);
  const told = findClothBlock(tokens, i, fabrics, cloth, grid)?.place;
  if (told?.places.length === 1) return { ...told, rule: 'place.cloth-one' };
  if (!cloth) return undefined;
  const blocks = cloth.found.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const noun = w(tokens, cloth.next);
  const next = noun === 'one' || BLOCK_NOUNS.has(noun) ? cloth.next + 1 : cloth.next;
  if (blocks.length === 1) return blocksSaid(next, blocks, 'place.cloth-one');
  const line = lineAt(tokens, next, grid.rows);
  const inLine = line ? blocks.filter((p) => splitBlock(p)?.[line.axis] === line.value) : [];
  return inLine.length === 1 ? blocksSaid(line!.next, inLine, 'place.cloth-one') : undefined;
}

/** "in row four", "in the bottom row", "in column 2". */
function lineAt(
  tokens: Token[],
  i: number,
  rows: number,
): { axis: 'row' | 'block'; value: number; next: number } | undefined {
  if (!/^(in|of)$/.test(w(tokens, i))) return undefined;
  const k = w(tokens, i + 1) === 'the' ? i + 2 : i + 1;
  const axis = /^(row|rose|road)$/.test(w(tokens, k))
    ? 'row'
    : /^col(umn)?$/.test(w(tokens, k))
      ? 'block'
      : undefined;
  const n = axis ? readCount(tokens, k + 1) : undefined;
  if (axis && n) return { axis, value: n.value, next: n.next };
  const end = { top: 1, bottom: rows, last: rows }[w(tokens, k)];
  const nth = end ? { value: end, next: k + 1 } : readOrdinal(tokens, k);
  return nth && w(tokens, nth.next) === 'row'
    ? { axis: 'row', value: nth.value, next: nth.next + 1 }
    : undefined;
}
