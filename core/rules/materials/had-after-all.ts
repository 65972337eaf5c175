import type { Item } from '../item.ts';

/** Words one of which every such second thought begins with. */
const FIRST = new Set(
  'no nope oh wait hang hold actually sorry scratch scrap forget never skip not except although but i we there'.split(
    ' ',
  ),
);
const DOUBT =
  '(?:(?:oh|er|um|ah|wait|no|nope|hang on|hold on|actually|sorry|scratch that|scrap that|forget that|never mind|skip that|not that|except|although|but|on second thoughts?|come to think of it|then again|now i (?:look|think)|in fact|,|-|--) )+';
/** "the needles,", "scrap the needles,", "thread": the goods that it is about. */
const GOODS =
  '(?:(?:not|scrap|scratch|forget|skip|never mind|as for) )?(?:(?:the|my|that|any|more) )?<(\\d+)>(?: ,)? ';
const HAVE =
  "(?:(?:i|we) )?(?:(?:'ve|have|already|still|do|just|actually) )*(?:got|have|own|found|'ve found|'ve|there (?:'s|is|are|was)) ";
const WHAT =
  '(?:(?:already|one|some|that|those|them|it|these|enough|plenty|loads|a couple|both|all that|of|the) ){0,5}';
const KEPT =
  '(?:(?:already|here|left|somewhere|over|spare|put by|at home|upstairs|downstairs|in stock|to hand|in the house|by me|(?:in|on) (?:the|my) \\S+) )*';
const END = '(?=$|[,.;:)-] |and |but |so )';
/** "wait, I have thread": named behind it. */
const BEHIND = '(?:(?:the|some|that|enough|plenty|of|a|my) )*<(\\d+)> ';
const STRUCK =
  '(?:not|scrap|scratch|forget|skip|never mind|leave off|leave out) (?:(?:the|my|that|any) )?<(\\d+)>(?: ,)? ';
const WITH_DOUBT = new RegExp(
  `^(?:${DOUBT}(?:${GOODS})?|${STRUCK})${HAVE}(?:${BEHIND}|${WHAT})${KEPT}${END}`,
);
/** "thread I've got", "the needles I have already": what it is stands first and nothing else of it is told. */
const NAMED = new RegExp(`^${GOODS}(?:i|we) ${HAVE}${KEPT}${END}`);

/** What was to be got is there after all: the index behind the words, the item that names it where one does, and whether its number goes. */
export type HadAfterAll = { next: number; named?: Item; some: boolean };

/** "no hang on, I've got one of those in the drawer", "scrap the needles, I found some", "no, thread I've got" at item `k`. */
export function hadAfterAll(items: Item[], k: number): HadAfterAll | undefined {
  const first = items[k];
  if (!first) return undefined;
  const doubt = FIRST.has(first.w.split(' ')[0]!);
  const named = first.material ?? (/^(the|my|any|that)$/.test(first.w) && items[k + 1]?.material);
  if (!doubt && !named) return undefined;
  const run = items.slice(k, k + 20);
  const told = `${wordsOf(run)} `;
  const found = (doubt ? WITH_DOUBT : NAMED).exec(told);
  if (!found) return undefined;
  const said = found[0].trim();
  // the items that the words are
  let next = k;
  while (next < k + run.length && wordsOf(items.slice(k, next)).length < said.length) next++;
  const at = found.slice(1).find((n) => n !== undefined);
  return {
    next,
    ...(at === undefined ? {} : { named: run[Number(at)]! }),
    some: /\b(?:some|enough|plenty|loads|a couple)\b/.test(said),
  };
}

const wordsOf = (run: Item[]): string =>
  run.map((x, n) => (x.material && !x.quantity && x.w !== 'scrap' ? `<${n}>` : x.w)).join(' ');
