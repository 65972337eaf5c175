import { foundToo, withFoundAsWell } from './found-too.ts';
import { isStuffWord } from './is-stuff-word.ts';
import { boundaryBefore, type Item } from './item.ts';
import { withSoDoes } from './so-does.ts';
import { isToCome } from './to-come.ts';
import { wordsBetween } from './words-between.ts';

const STOP = /^([.;!?:\n(),]|--)$/;
const BE = /^(is|'s|are|was|were|has|have)$/;
const OFF = /^(off|out|away)$/;
const MOST_WORDS = 9;

const isThing = (x: Item): boolean =>
  Boolean((x.object && !x.seam) || x.part || x.finding === 'old-repair' || x.action?.form === 'ing');

/** Where the thing ends that begins at `from`; nothing where none is named. */
function endOfThing(items: Item[], from: number): number | undefined {
  let end = from;
  while (
    end < items.length &&
    end < from + MOST_WORDS &&
    !STOP.test(items[end]!.w) &&
    !/^(and|but|so|i)$/.test(items[end]!.w)
  )
    end++;
  return items.slice(from, end).some(isThing) ? end : undefined;
}

/** Back over the joints that stand before the word at `m`. */
function beforeJoints(items: Item[], m: number): number {
  let joint = m;
  while (joint > 0 && /^(,|and|&|\+|but|too|also|--)$/.test(items[joint - 1]!.w)) joint--;
  return joint;
}

/** "the binding is off, and so is the backing", "squaring it up is for Monday, as is the label": what is said of the one, told of the other. */
function soIs(items: Item[]): Item[] {
  const m = items.findIndex(
    (x, k) =>
      k > 2 &&
      /^(so|as)$/.test(x.w) &&
      BE.test(items[k + 1]?.w ?? '') &&
      /^(,|and|&|--)$/.test(items[k - 1]!.w),
  );
  if (m < 0) return items;
  const joint = beforeJoints(items, m);
  const verb = items.slice(0, joint).findLastIndex((x) => BE.test(x.w));
  if (verb < 1 || joint - verb > 7 || joint - verb < 2) return items;
  const said = items.slice(verb, joint);
  if (said.some((x) => STOP.test(x.w))) return items;
  const end =
    said.some((x) => OFF.test(x.w)) || isToCome(wordsBetween(said))
      ? endOfThing(items, m + 2)
      : foundToo(items, verb, joint, m + 2);
  if (end === undefined) return items;
  return [
    ...items.slice(0, joint),
    boundaryBefore(items[m]!, ';'),
    ...items.slice(m + 2, end),
    ...said.map((x) => ({ ...x })),
    ...soIs(items.slice(end)),
  ];
}

/** How many words "with it", "too" or "as well" are at `k`, where a statement ends with them. */
function asWellAt(items: Item[], k: number): number {
  const words = / (?:(with (?:it|them))|too|as well) /.exec(wordsBetween(items, k, k + 2));
  const count = !words || words.index > 0 ? 0 : words[1] || items[k]!.w === 'as' ? 2 : 1;
  if (!count) return 0;
  const next = items[k + count];
  if (next && !STOP.test(next.w) && !/^(and|but|so)$/.test(next.w)) return 0;
  if (words![1]) return count;
  // "the batting as well", "the old wool batting too": a bare thing, or it has a verb of its own
  let head = k - 2;
  while (head > k - 5 && isStuffWord(items[head])) head--;
  return items[k - 1]?.object && /^(the|its|old|all|,|and|&|[.;])$/.test(items[head]?.w ?? '') ? count : 0;
}

/** "the backing is off, and the wadding with it", "the backing came off and the batting came with it", "…, the batting as well". */
function withIt(items: Item[]): Item[] {
  const m = items.findIndex((_x, k) => k > 3 && asWellAt(items, k) > 0);
  if (m < 0) return items;
  const before = /^(came|come|comes|coming|went|is|was|has come)$/.test(items[m - 1]!.w) ? m - 1 : m;
  let from = before;
  while (from > 0 && !/^(,|and|&|\+|--|[.;])$/.test(items[from - 1]!.w) && before - from < 5) from--;
  // "Backing's off. Binding too."
  const parted = /^[.;]$/.test(items[from - 1]?.w ?? '');
  const joint = parted ? from - 1 : beforeJoints(items, from);
  const at = items.slice(0, joint).findLastIndex((x) => OFF.test(x.w));
  const off = items[at];
  if (
    parted &&
    (items.slice(at, joint).some((x) => STOP.test(x.w)) || items.slice(from, m).some((x) => OFF.test(x.w)))
  )
    return items;
  if (joint === from || !off || !items.slice(from, before).some((x) => x.object && !x.seam)) return items;
  return withIt([
    ...items.slice(0, joint),
    boundaryBefore(items[from]!, ';'),
    ...items.slice(from, m),
    { ...off },
    // "that border's coming off tomorrow, and the binding with it"
    ...(isToCome(wordsBetween(items, at + 1, joint))
      ? items.slice(at + 1, joint).map((x) => ({ ...x }))
      : []),
    ...items.slice(m + asWellAt(items, m)),
  ]);
}

/** Gives the items with what is said of a second thing by "so is", "as is" or "with it" told in full. */
export function withSoIs(items: Item[]): Item[] {
  let asWell = false;
  let so = false;
  for (const { w } of items) {
    if (/^(with|too|as|as well|likewise)$/.test(w)) asWell = true;
    if (w === 'so' || w === 'as') so = true;
  }
  const told = so ? withSoDoes(soIs(items)) : items;
  return asWell ? withIt(withFoundAsWell(told)) : told;
}
