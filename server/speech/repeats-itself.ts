/** A run shorter than this is repeated on purpose: "row two, row two". */
const SHORTEST_WORDS = 7;
/** The share of words that a run has in common with the run before it, from which it is the same said again. */
const ALIKE = 0.8;

/**
 * Is a run of words said twice over, nearly word for word, at the end of a text? A search that keeps several readings steps
 * around the same tokens twice ("machine's exact", then "machines exact"), which the detector of token loops can't see.
 */
export function repeatsItself(text: string): boolean {
  const words = text
    .toLowerCase()
    .split(/[^a-z0-9']+/)
    .filter(Boolean);
  for (let length = SHORTEST_WORDS; length * 2 <= words.length; length++) {
    const last = words.slice(-length);
    const before = words.slice(-2 * length, -length);
    const alike = last.filter((word, k) => word === before[k]).length;
    if (alike >= ALIKE * length) return true;
  }
  return false;
}
