import { isStop } from './clause/joints.ts';
import { boundaryBefore, type Item } from './item.ts';
import { readGoods } from './materials/goods/read-goods.ts';
import { readLengths } from './measurements/read-lengths.ts';
import type { ReaderState } from './reader-state.ts';
import type { DayFound } from './times/find-day.ts';
import { readTimes } from './work/times/read-times.ts';
import { withoutEndsAgain } from './work/times/without-ends-again.ts';

/** One sentence of a note: its items without the stop, and its number as the clauses count it. */
export type Sentence = { items: Item[]; number: number };

/** What a reader of amounts took for itself. `cut` leaves a boundary behind, `drop` closes up as if it had not been said. */
export type Claims = { cut: Set<Item>; drop: Set<Item> };

/**
 * Reads what a note tells in figures before anything else is looked at: time at work, lists of goods, lengths. Their words
 * are taken out of the note, so that no rule for damage or treatments trips over "bleached muslin", "tape for binding"
 * or "an hour of cutting". Gives the items that are left; the lengths of time of single treatments stay among them.
 */
export function readAmounts(state: ReaderState, items: Item[], days: DayFound[]): Item[] {
  const claims: Claims = { cut: new Set(), drop: new Set() };
  const sentences = sentencesOf(items);
  sentences.forEach((sentence, k) => {
    readTimes(state, sentence, sentences[k - 1], sentences[k + 1], days, claims);
  });
  withoutEndsAgain(state);
  const left = (): Sentence[] =>
    sentences.map((s) => ({
      ...s,
      items: s.items.filter((x) => !claims.cut.has(x) && !claims.drop.has(x)),
    }));
  if (items.some(mayBeGoods)) readGoods(state, left(), claims);
  if (items.some(mayBeLength)) readLengths(state, left(), claims);
  const rest: Item[] = [];
  for (const item of items) {
    if (claims.drop.has(item)) continue;
    if (claims.cut.has(item)) {
      const before = rest.at(-1);
      if (before && !isStop(before) && before.w !== '--') rest.push(boundaryBefore(item));
      continue;
    }
    rest.push(item);
  }
  return rest;
}

/** A list of goods has a thing, a sum or a count in it, lengths have a figure or what they are of: most notes have neither. */
const mayBeGoods = (x: Item): boolean => Boolean(x.material || x.fabric || x.cost || x.quantity || x.object);
const mayBeLength = (x: Item): boolean =>
  Boolean(x.quantity || x.measure || x.cost || x.clock || x.part === 'border');

function sentencesOf(items: Item[]): Sentence[] {
  const out: Sentence[] = [];
  let current: Item[] = [];
  let number = 0;
  let before: Item | undefined;
  for (const item of items) {
    if (isStop(item)) {
      if (current.length) out.push({ items: current, number });
      current = [];
      // as the clauses count them: "patched!!" ends once
      if (item.w !== '!' || before?.w !== '!') number++;
    } else current.push(item);
    before = item;
  }
  if (current.length) out.push({ items: current, number });
  return out;
}
