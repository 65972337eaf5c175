import { boundaryBefore, type Item, wordsAt } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const NOT_IT = /^ (?:not|(?:do|does|did|wo|will|is|are|was|were|has|have|had) (?:n't|not)) $/;
const ENDS = /^(?:,|\.|;|!|\n|and|but|--|-|\))$/;
const JOINS = /^(?:,|and|but|while|whereas|-|--)$/;
const POINTS_BACK = /^place\.(?:it|them|both|those|that-one)$/;

/**
 * "row 1 to be darned, row 2 not", "the top row needs pressing and the next one doesn't": a plain denial behind the place, with the deed left out
 * because it was just said. Read as "…, not row 2", so that the deed does not reach over to it.
 */
export function withNotThere(items: Item[]): Item[] {
  for (let k = 2; k < items.length - 1; k++) {
    const x = items[k]!;
    if (!x.place?.places.length || POINTS_BACK.test(x.place.rule) || x.part || x.material) continue;
    const length = [1, 2].find(
      (n) =>
        NOT_IT.test(wordsBetween(items, k + 1, k + 1 + n)) &&
        (items[k + 1 + n] === undefined || ENDS.test(items[k + 1 + n]!.w)),
    );
    if (!length || !isToldBefore(items, k)) continue;
    const from = JOINS.test(items[k - 1]!.w) ? k - 1 : k;
    return withNotThere([
      ...items.slice(0, from),
      boundaryBefore(x, ','),
      ...wordsAt(x, 'not'),
      ...items.slice(k, k + 1),
      ...items.slice(k + 1 + length),
    ]);
  }
  return items;
}

/** Is a deed with a place of its own told in the same sentence before? */
function isToldBefore(items: Item[], k: number): boolean {
  let from = k;
  while (from > 0 && !/^[.;!?\n:]$/.test(items[from - 1]!.w)) from--;
  const before = items.slice(from, k);
  return (
    before.some((x) => x.place?.places.length && !x.part) &&
    before.some((x) => (x.action && !x.place) || x.material === 'net') &&
    !before.some((x) => /^(?:not|n't|if|whether|maybe|or)$/.test(x.w))
  );
}
