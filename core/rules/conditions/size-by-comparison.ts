import type { Token } from '../../text/tokenise.ts';

/** Damage that one can put a hand through. */
const OPENING =
  /^(?:holes?|tears?|rips?|gaps?|slits?|rents?|split|splits|one|ones|big|wide|large|gash|gashes)$/;
const WHO = /^(?:i|you|we|one|she|he)$/;
const CAN = /^(?:could|can|'d|might|would)$/;
const NEARLY = /^(?:just|almost|nearly|easily|well|about|practically|probably|actually|quite|'ve|have|get)$/;
const PUT = /^(?:put|get|poke|stick|push|fit|drive|pass|shove|slip|post|lose|drop)$/;
/** What is put through and mends nothing: a hand, a thing of that size. */
const THING =
  /^(?:fist|fists|finger|fingers|thumb|hand|arm|head|foot|toe|elbow|pencil|pen|coin|penny|egg|apple|orange|plate|bus|horse|cat|dog|mouse|ball|bottle|cup|saucer|dinner|tennis|golf|football|broom|knitting|nail)$/;
const ARTICLE = /^(?:a|an|my|your|her|his|the|whole|two|three|little|pinky|index|clenched)$/;
const FURTHEST = 6;

/**
 * "a hole I could put my fist through in the bottom row", "a tear you could just about get two fingers in, 3-2": how big it is, and nothing
 * that is done or found. The tokens without it.
 */
export function withoutSizeByComparison(tokens: Token[]): Token[] {
  const from = tokens.findIndex(
    (t, k) => k > 0 && WHO.test(t.w) && CAN.test(tokens[k + 1]?.w ?? '') && opensIn(tokens, k),
  );
  if (from < 0) return tokens;
  let k = from + 2;
  while (NEARLY.test(tokens[k]?.w ?? '')) k++;
  if (!PUT.test(tokens[k]?.w ?? '')) return tokens;
  k++;
  while (ARTICLE.test(tokens[k]?.w ?? '')) k++;
  if (!THING.test(tokens[k]?.w ?? '')) return tokens;
  while (/^(?:needle|handle)$/.test(tokens[k + 1]?.w ?? '') || THING.test(tokens[k + 1]?.w ?? '')) k++;
  k++;
  while (/^(?:right|clean|straight|up)$/.test(tokens[k]?.w ?? '')) k++;
  if (/^(?:through|into|down)$/.test(tokens[k]?.w ?? '')) k++;
  else if (tokens[k]?.w === 'in' && /^(?:|[,.;:]|it|and|in|on)$/.test(tokens[k + 1]?.w ?? '')) k++;
  else return tokens;
  if (/^(?:it|them|that)$/.test(tokens[k]?.w ?? '')) k++;
  // "so big", "that", "which" led to it
  let start = from;
  while (/^(?:that|which|so|big|wide|large|enough)$/.test(tokens[start - 1]?.w ?? '')) start--;
  return [...tokens.slice(0, start), ...tokens.slice(k)];
}

/** Does such damage stand before `k`? */
const opensIn = (tokens: Token[], k: number): boolean =>
  tokens.slice(Math.max(0, k - FURTHEST), k).some((t) => OPENING.test(t.w));
