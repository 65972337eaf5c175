import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const MAY_HEAD = /^(?:open|undecided|unsettled|settled|decided|agreed|fixed|air)$/;
/** "and what's still open is", "still to be settled are", "settled is that": what stands before the list, and the verb that leads to it. */
const HEAD =
  /^ ((?:(?:and|but|so|now) )*)((?:(?:what 's|what is|all that 's|all that is) )?(?:(?:still|left|yet|as yet|now|already|definitely) )*(?:open|undecided|unsettled|to be (?:settled|decided|agreed|fixed)|to (?:decide|settle|agree|choose)|up in the air|not (?:settled|decided|agreed)|settled|decided|agreed|fixed)(?: (?:still|yet|now|so far|then))*) (?:is|are)(?: that| whether)? /;
/** Behind these the words lead no list: "the backing is settled is all I know". */
const NO_HEAD = /^(?:is|are|'s|'re|was|were|been|be|it|that|not|n't|have|has|i|we)$/;
/** What a new matter of a list that is said without marks opens with. */
const OPENS_MATTER = /^(?:the|what|which|whether|how|if|will|hand|border|and)$/;

/**
 * "Still open is the weight of the batting, border or no border and the thread, settled is a cold wash only": puts a colon where
 * such a list begins, as it would be written, and a stop before it, so that each list is read under what was said of it.
 */
export function withMatterHeads(items: Item[]): Item[] {
  if (!items.some((x) => MAY_HEAD.test(x.w))) return items;
  const out: Item[] = [];
  let listed = false;
  for (let k = 0; k < items.length; k++) {
    listed ||= MAY_HEAD.test(items[k]!.w) && items[k + 1]?.w === ':';
    const head =
      NO_HEAD.test(items[k - 1]?.w ?? '') && !/^what$/.test(items[k]!.w)
        ? null
        : HEAD.exec(wordsBetween(items, k, k + 12));
    if (!head || (listed === false && k > 0 && !head[2]!.includes(' ') && !endsBefore(items, k))) {
      out.push(items[k]!);
      continue;
    }
    const joints = wordCount(head[1]!);
    const words = wordCount(head[2]!);
    // "still open is the seam between 2-2 and 2-3"
    if (items.slice(k + joints + words, k + joints + words + 4).some((x) => x.seam)) return items;
    if (out.length) {
      while (out.at(-1)?.w === ',') out.pop();
      out.push(boundaryBefore(items[k]!, ';'));
    }
    out.push(...items.slice(k + joints, k + joints + words));
    out.push(boundaryBefore(items[k + joints + words]!, ':'));
    k += joints + words + (/ (?:that|whether) $/.test(head[0]) ? 1 : 0);
    listed = true;
  }
  return listed ? out : items;
}

const wordCount = (words: string): number => words.split(' ').filter(Boolean).length;
const endsBefore = (items: Item[], k: number): boolean => /^[.;,!?]$/.test(items[k - 1]!.w);

/** The matters of a list that runs on: "the binding colour the thread and what fabric for 3-2". `about` tells what a word is of. */
export function splitListed(items: Item[], about: (x: Item, k: number) => string | undefined): Item[][] {
  const out: Item[][] = [[]];
  let told: string | undefined;
  items.forEach((x, k) => {
    const own = about(x, k);
    if (
      told &&
      OPENS_MATTER.test(x.w.split(' ')[0]!) &&
      !/^(?:of|for|or|in|by|to|the|what|which)$/.test(items[k - 1]?.w ?? '')
    ) {
      const next = items.slice(k, k + 7).findIndex((y, m) => about(y, k + m) !== undefined);
      if (next >= 0 && about(items[k + next]!, k + next) !== told) {
        out.push([]);
        told = undefined;
      }
    }
    told ??= own;
    out.at(-1)!.push(x);
  });
  return out.filter((p) => p.length);
}
