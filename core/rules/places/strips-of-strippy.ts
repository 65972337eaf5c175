import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const WHICH =
  /^(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|last|middle|\d+(?:st|nd|rd|th)|hand|left|right|outer|centre|center)$/;
const NUMBER = /^(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten)$/;
/** Strips that are cut or sewn on are no part of the top yet. */
const OF_MAKING =
  /^(?:cut|cutting|binding|border|borders|sashing|label|backing|bias|lining|new|inch|inches|cm|mm|wide|pieced|piecing)$/;

/** Is it a quilt of long strips: has a column but one cloth from top to foot? */
const isStrippy = ({ rows, fabrics }: QuiltGrid): boolean =>
  Object.values(fabrics ?? {}).some((blocks) => {
    const counts = new Map<string, number>();
    for (const block of blocks) {
      const column = block.split('-')[1] ?? '';
      counts.set(column, (counts.get(column) ?? 0) + 1);
    }
    return [...counts.values()].some((n) => n > 2 && n >= rows);
  });

/** "faded all the way down the second strip", of a strippy: its strips are the columns. */
export function withStripsOfStrippy(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => /^strips?$/.test(t.w)) || !isStrippy(grid)) return tokens;
  return tokens.map((t, k) => {
    if (!/^strips?$/.test(t.w)) return t;
    const told = WHICH.test(w(tokens, k - 1)) || NUMBER.test(w(tokens, k + 1));
    const made = tokens.slice(Math.max(0, k - 5), k + 5).some((x) => OF_MAKING.test(x.w));
    return told && !made ? { ...t, w: t.w.replace('strip', 'column') } : t;
  });
}
