import { isStop } from './clause/joints.ts';
import type { Item } from './item.ts';
import { wordsBetween } from './words-between.ts';

/** Verbs that lay a stuff somewhere ("put X over it"), and those that are done with it ("patched it with X"). */
const LAYS = /^(?:put|laid|lay|slipped|set|stuck|sewn|sewed|stitched|tacked|basted|ironed|fused|used)$/;
const WHAT_I = /^ what (?:i|we) (?:(?:'ve|have|had|'d) )?(?:just )?$/;
const IS = /^(?:is|was|'s)$/;
const FRONT = /^(?:behind|over|under|underneath|beneath|across)$/;

const isStuff = (x: Item): boolean => x.material !== undefined || x.fabric !== undefined;

/**
 * "what I've put over it is a scrap of muslin", "behind 4-3 and 4-4, a piece of silk, herringboned down": the stuff is told last, or behind
 * the place that it lies on. Gives the items in the plain order, "put a scrap of muslin over it", "a piece of silk behind 4-3 and 4-4".
 */
export function stuffLast(items: Item[]): Item[] {
  return whatIPut(items) ?? placeFirst(items) ?? items;
}

function whatIPut(items: Item[]): Item[] | undefined {
  const what = items.findIndex((x) => x.w === 'what');
  if (what < 0) return undefined;
  const verb = [3, 2, 4]
    .map((n) => what + n)
    .find((k) => WHAT_I.test(wordsBetween(items, what, k)) && items[k]);
  if (verb === undefined) return undefined;
  const deed = items[verb]!;
  if (!LAYS.test(deed.w) && deed.action?.form !== 'past') return undefined;
  const is = items.findIndex((x, k) => k > verb && k < verb + 9 && IS.test(x.w));
  if (is < 0 || items.slice(verb, is).some(isStop)) return undefined;
  let end = is + 1;
  while (items[end] && !isStop(items[end]!) && !/^(?:,|and|but|so)$/.test(items[end]!.w)) end++;
  const stuff = items.slice(is + 1, end);
  if (!stuff.some(isStuff) || stuff.some((x) => x.finding || x.action?.form === 'past')) return undefined;
  const where = items.slice(verb + 1, is);
  const withIt = /^(?:with|in)$/.test(where.at(-1)?.w ?? '');
  if (!LAYS.test(deed.w) && !withIt) return undefined;
  const told = withIt ? [deed, ...where, ...stuff] : [deed, ...stuff, ...where];
  return [...items.slice(0, what), items[what + 1]!, ...told, ...items.slice(end)];
}

function placeFirst(items: Item[]): Item[] | undefined {
  if (!FRONT.test(items[0]?.w ?? '')) return undefined;
  const comma = items.findIndex((x, k) => k > 1 && x.w === ',' && isStuffAhead(items, k + 1));
  if (comma < 0 || comma > 9) return undefined;
  const where = items.slice(0, comma);
  if (!where.slice(1).every((x) => x.place || /^(?:the|and|,|both|all|row|block|of)$/.test(x.w)))
    return undefined;
  if (!where.some((x) => x.place?.kind === 'blocks')) return undefined;
  let end = comma + 1;
  while (items[end] && !isStop(items[end]!) && !/^(?:,|and|but|so)$/.test(items[end]!.w)) end++;
  const stuff = items.slice(comma + 1, end);
  return stuff.some((x) => x.finding || x.place || (x.action && !x.material))
    ? undefined
    : [...stuff, ...where, ...items.slice(end)];
}

/** "a piece of silk", "muslin": the stuff, within a few words and with nothing but what describes it before it. */
const isStuffAhead = (items: Item[], k: number): boolean => {
  const at = items.findIndex((x, m) => m >= k && m < k + 6 && isStuff(x));
  return (
    at >= 0 && items.slice(k, at).every((x) => x.token.kind === 'word' && !x.action && !x.finding && !x.place)
  );
};
