import { COLOURS, PATTERN_WORDS } from '../../lexicon/colours.ts';
import { CLOTH_WORDS } from '../../lexicon/materials.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';

const OLD = wordSet('old earlier previous existing');
const PATCHES = wordSet('patch patches');
/** "there's a denim patch on 2-3", "2-3 has a denim patch": found, where nothing says that it was put on just now. */
const FOUND = wordSet("'s is has got are with");
const NOW = wordSet('now finally tonight today');
const MOST_CLOTH_WORDS = 3;

/**
 * "an old flannelette patch on 2-3" is "an old patch of flannelette on 2-3"; what is found as "a denim patch" is an old one. The
 * tokens so.
 */
export function withPatchesOfCloth(tokens: Token[]): Token[] {
  const at = tokens.findIndex((t, k) => PATCHES.has(t.w) && clothBefore(tokens, k) > 0);
  if (at < 0) return tokens;
  const cloth = clothBefore(tokens, at);
  const from = at - cloth;
  const before = tokens[from - 1];
  // and not "2-4's got a calico patch on it now"
  const found =
    /^(?:a|an|another)$/.test(before?.w ?? '') &&
    FOUND.has(tokens[from - 2]?.w ?? '') &&
    !tokens.slice(at + 1, at + 6).some((t) => NOW.has(t.w));
  const rest = withPatchesOfCloth(tokens.slice(at + 1));
  if (!before || !(OLD.has(before.w) || found)) return [...tokens.slice(0, at + 1), ...rest];
  const patch = tokens[at]!;
  return [
    ...tokens.slice(0, from),
    ...(found ? [{ ...patch, w: 'old' }] : []),
    patch,
    { ...patch, w: 'of' },
    ...tokens.slice(from, at),
    ...rest,
  ];
}

/** How many words before `k` tell the cloth: "blue cotton (patch)". */
function clothBefore(tokens: Token[], k: number): number {
  let n = 0;
  while (n < MOST_CLOTH_WORDS && isCloth(tokens[k - n - 1]?.w ?? '')) n++;
  return n;
}
const isCloth = (w: string): boolean => CLOTH_WORDS.has(w) || COLOURS.has(w) || PATTERN_WORDS.has(w);
