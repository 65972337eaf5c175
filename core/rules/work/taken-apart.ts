import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const TAKES = /^(?:take|takes|taking|took|taken|pull|pulling|pulled|pick|picking|picked)$/;
const LED = /^(?:the|this|that|my|our|her|his|their|your)$/;
/** Words of no quilt's name: joints, verbs, places, and what is taken apart without the quilt being so. */
const NO_NAME =
  /^(?:and|or|but|so|i|it|we|is|was|'s|in|on|off|out|of|at|to|from|by|for|with|row|rows|column|block|blocks|seam|seams|binding|border|borders|patch|patches|stitch|stitches|stitching|repair|knot|knots|piece|pieces|machine|not|n't|no)$/;
/** The most words that a quilt is called by: "the old hexagon picnic throw". */
const MOST = 5;

/** "taking the hexagon throw apart", "took this old star quilt to bits": whatever the quilt is called, it is taken apart. */
export function withQuiltApart(tokens: Token[]): Token[] {
  if (!tokens.some((t) => /^(?:apart|pieces|bits)$/.test(t.w))) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    out.push(t);
    // "I'll take the quilt apart" is no work yet
    const meant = /^(?:will|'ll|to|gonna|must|should|could|might)$/.test(w(tokens, i - 1));
    const end = TAKES.test(t.w) && LED.test(w(tokens, i + 1)) && !meant ? apartAt(tokens, i + 2) : undefined;
    if (end === undefined) continue;
    out.push({ ...tokens[i + 1]!, w: 'it', to: tokens[end - 1]!.to });
    i = end - 1;
  }
  return out;
}

/** The index behind a name that begins at `k` and is followed by "apart". */
function apartAt(tokens: Token[], k: number): number | undefined {
  for (let m = k; m <= k + MOST; m++) {
    const told =
      w(tokens, m) === 'apart' || (w(tokens, m) === 'to' && /^(?:pieces|bits)$/.test(w(tokens, m + 1)));
    if (told) return m > k ? m : undefined;
    if (tokens[m]?.kind !== 'word' || NO_NAME.test(w(tokens, m))) return undefined;
  }
  return undefined;
}
