import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { type FabricIndex, findFabric } from '../fabrics/find-fabric.ts';
import type { FabricFound } from '../item.ts';
import { liesInLines, unique } from './grid.ts';
import { lineAt } from './line/line-at.ts';
import type { PlaceFound } from './place-found.ts';

const LINE_HEAD =
  /^(?:row|column|col|top|bottom|first|second|third|fourth|fifth|sixth|last|middle|left|right)$/;

/**
 * "row three, the flannel one, has a hole", "column two: the check block is torn": a line, and behind it which of its blocks by the
 * cloth. Of the line the cloth's own blocks.
 */
export function clothOfLine(
  tokens: Token[],
  i: number,
  index: FabricIndex,
  grid: QuiltGrid,
): { place: PlaceFound; fabric: FabricFound } | undefined {
  if (!LINE_HEAD.test(w(tokens, i))) return undefined;
  const line = lineAt(tokens, i, { grid, focus: [], earlier: [] });
  if (line?.how !== 'said' || line.lines.length !== 1) return undefined;
  if (!/^(?:,|:|-|--)$/.test(w(tokens, line.next)) || w(tokens, line.next + 1) !== 'the') return undefined;
  const cloth = findFabric(tokens, line.next + 2, index);
  if (!cloth || !/^(?:one|ones|block|square)$/.test(w(tokens, cloth.next))) return undefined;
  const places = unique(cloth.found.names.flatMap((name) => index.blocks[name] ?? [])).filter((p) =>
    liesInLines(p, line.axis, line.lines),
  );
  if (!places.length) return undefined;
  const closed =
    w(tokens, cloth.next + 1) === ',' &&
    /^(?:is|'s|has|was|wants|needs|got|gets|looks)$/.test(w(tokens, cloth.next + 2));
  return {
    place: {
      next: cloth.next + (closed ? 2 : 1),
      places,
      how: 'said',
      rule: 'place.cloth-within',
      kind: 'blocks',
    },
    fabric: cloth.found,
  };
}
