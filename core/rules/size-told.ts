import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { UNIT_AFTER } from './places/place-tokens.ts';

/** What a quilt is called; its size is told right behind. */
const QUILT =
  /^(?:quilts?|qlt|coverlet|comforter|throw|bedspread|eiderdown|whole ?cloth|cloth|sampler|patchwork|wagga|medallion|cabin|top|cover|blanket|one|hexagons?|stars?|fans?|baskets?|chain|bars)$/;
const NOUN = /^(?:rows?|blocks?|squares?|columns?)$/;
const WAY = /^(?:down|across|deep|wide|high|along|over|tall|up|each|way)$/;

/** One of the two counts, with its "rows" or "down" behind. */
function sideAt(
  tokens: Token[],
  i: number,
): { value: number; next: number; named: boolean; down: boolean } | undefined {
  const count = readCount(tokens, i);
  if (!count) return undefined;
  let next = count.next;
  let named = false;
  let down = false;
  while ((NOUN.test(tokens[next]?.w ?? '') || WAY.test(tokens[next]?.w ?? '')) && next < count.next + 3) {
    named = true;
    down ||= /^(?:rows?|down|deep|high|tall)$/.test(tokens[next]!.w);
    next++;
  }
  return { value: count.value, next, named, down };
}

/**
 * "right the crazy quilt four down three across um the silk is shattered", "the sampler, four rows by three": how many blocks the
 * quilt has, told with its name, where block 4-3 is not meant. The tokens without it, with a pause in its place.
 */
export function withoutSize(tokens: Token[], grid: QuiltGrid): Token[] {
  for (let at = 1; at < Math.min(tokens.length - 3, 9); at++) {
    if (!QUILT.test(tokens[at - 1]!.w)) continue;
    const from = tokens[at]!.w === ',' ? at + 1 : at;
    const first = sideAt(tokens, from);
    if (!first) continue;
    let joint = first.next;
    while (/^(?:and|by|x|,|of)$/.test(tokens[joint]?.w ?? '') && joint < first.next + 2) joint++;
    const second = sideAt(tokens, joint);
    if (!second || !(tokens[joint - 1]!.w === 'by' || tokens[joint - 1]!.w === 'of' || first.named)) continue;
    if (!(first.named || second.named) || UNIT_AFTER.has(tokens[second.next]?.w ?? '')) continue;
    const [rows, blocks] = second.down ? [second, first] : [first, second];
    if (rows.value !== grid.rows || blocks.value !== grid.blocks) continue;
    const rest = tokens.slice(second.next);
    return rest[0]?.kind === 'mark'
      ? [...tokens.slice(0, at), ...rest]
      : [...tokens.slice(0, at), { ...tokens[at]!, w: ',', kind: 'mark', glued: false }, ...rest];
  }
  return tokens;
}
