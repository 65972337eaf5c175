import type { TreatmentState } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

/** What stands before a verb and can stand before nothing else, with the state that it gives the deed. */
type Governor = { form: 'ing' | 'base'; words: string; state?: TreatmentState };

/** Spaces part items; the longest that fits wins. Behind "to", "about" and the like only these tell a deed of their own. */
const GOVERNORS: Governor[] = [
  // "busy basting 6-4", "halfway through backing row two"
  ...spell('ing', 'doing', [
    'busy',
    'busy with',
    'still',
    'currently',
    'in the middle of',
    'midway through',
    'halfway through',
    'half way through',
    'partway through',
    'part way through',
    'in the process of',
    'on with',
    'cracking on with',
    'getting on with',
    'pressing on with',
    'carrying on',
    'carrying on with',
  ]),
  // "finished stitching up 6-4"
  ...spell('ing', 'done', [
    'finished',
    'done',
    'done with',
    'ended up',
    'wound up',
    'completed',
    'got through',
  ]),
  // "wondering about lining 2-1"
  ...spell('ing', 'considering', [
    'wondering about',
    'thinking about',
    'thinking of',
    'toying with',
    'toying with the idea of',
    'considering',
    'contemplating',
    'debating',
    'weighing up',
    'not sure about',
    "n't sure about",
    'unsure about',
    'undecided about',
    'in two minds about',
    'tempted by',
    'may need',
    'might need',
    'could need',
    'may want',
    'might want',
    'maybe needs',
    'perhaps needs',
    'possibly needs',
    'probably needs',
  ]),
  // "changed my mind about vacuuming 3-5"
  ...spell('ing', 'dropped', [
    'changed my mind about',
    'decided against',
    'gave up on',
    'given up on',
    'giving up on',
    'thought better of',
    'gone off',
    'went off',
    'not bothering with',
    'dropped the idea of',
    'scrapped the idea of',
    'forget',
    'forget about',
    'never mind',
  ]),
  // "I'm netting 6-1": in hand or to come, as the clause says
  ...spell('ing', undefined, [
    "'m",
    'am',
    "'re",
    'now',
    'then',
    'need',
    'needs',
    'want',
    'wants',
    'still needs',
    'still need',
  ]),
  // "half a mind to line row five", "I'm tempted to vacuum 1-4"
  ...spell('base', 'considering', [
    'half a mind to',
    'tempted to',
    'might have to',
    'may have to',
    'may well',
    'might well',
    'might just',
    'whether to',
    'maybe',
    'perhaps',
    'possibly',
    'might',
    'may',
    'could',
  ]),
  // "let's spot clean row five"
  ...spell('base', 'planned', [
    "let 's",
    'should',
    'must',
    'will',
    "'ll",
    'shall',
    'gonna',
    'gotta',
    'better',
    'to',
    'remember to',
    'tomorrow',
    'next',
  ]),
  // "managed to net 6-2"
  ...spell('base', 'done', ['managed to']),
  ...spell('base', 'dropped', ['decided not to']),
  ...spell('base', undefined, ["wo n't", 'will not', 'not', "n't", 'no need to']),
];

const BY_LAST = new Map<string, Governor[]>();
for (const governor of GOVERNORS) {
  const last = governor.words.slice(governor.words.lastIndexOf(' ') + 1);
  BY_LAST.set(
    last,
    [...(BY_LAST.get(last) ?? []), governor].sort((a, b) => b.words.length - a.words.length),
  );
}

function spell(form: Governor['form'], state: TreatmentState | undefined, words: string[]): Governor[] {
  return words.map((w) => ({ form, words: w, state }));
}

const BETWEEN = /^(just|also|then|now|only|really|actually|carefully|quickly|all|even|simply)$/;

/** What governs the verb at `k`, in the form in which it stands; nothing where the words before it could stand before a thing too. */
export function governorOf(items: Item[], k: number): Governor | undefined {
  const form = items[k]!.action?.form;
  if (form !== 'ing' && form !== 'base') return undefined;
  let last = k - 1;
  while (last > 0 && BETWEEN.test(items[last]!.w)) last--;
  const tail = items[last]?.w;
  if (tail === undefined) return undefined;
  const known = BY_LAST.get(tail.slice(tail.lastIndexOf(' ') + 1));
  if (!known) return undefined;
  const before = wordsBetween(items, last - 5, last + 1);
  return known.find((g) => g.form === form && before.endsWith(` ${g.words} `));
}

const LEADS_TO_PLACE = /^(up|down|out|all|of|the|both|every|each|whole|blocks?|squares?|number)$/;

/** "3-4: net?", "row two - line": a deed told behind its place. */
const isNoted = (items: Item[], k: number): boolean =>
  items[k]!.action?.form === 'base' &&
  !items[k]!.w.endsWith('s') &&
  /^(:|-|--|=|→)$/.test(items[k - 1]?.w ?? '') &&
  items[k - 2]?.place?.kind === 'blocks' &&
  isLast(items, k);

/** Is the word at `k` a deed done to blocks, by the words before it and the blocks behind or before it: "maybe pin 3-4", "2-1 wants backing"? */
function isDoneToBlocks(items: Item[], k: number): boolean {
  const onBlocks = (x: Item | undefined): boolean =>
    x?.fabric !== undefined || (x?.place !== undefined && x.place.kind !== 'part');
  if (isNoted(items, k)) return true;
  let next = k + 1;
  while (LEADS_TO_PLACE.test(items[next]?.w ?? '') && next < k + 4) next++;
  // "back row five tomorrow", "interfacing 2-4 at the moment"; "tacking out of row one" is no deed of its own
  if (!governorOf(items, k))
    return (
      opensNote(items, k) &&
      items[next]?.place?.kind === 'blocks' &&
      !items.slice(k + 1, next).some((x) => /^(out|off|of)$/.test(x.w)) &&
      isLast(items, endOfPlaces(items, next))
    );
  return onBlocks(items[next]) || (isLast(items, k) && blocksBefore(items, k));
}

/** Are blocks told before the word at `k` in its own sentence? */
function blocksBefore(items: Item[], k: number): boolean {
  for (let m = k - 1; m >= Math.max(0, k - 9); m--) {
    const { place, w } = items[m]!;
    if (/^[.;!?\n]$/.test(w)) return false;
    if (place && place.kind !== 'part') return true;
  }
  return false;
}

const opensNote = (items: Item[], k: number): boolean =>
  items[k]!.action?.form !== 'past' &&
  (k === 0 || /^([.;:,-]|--|reminder|note|ok|okay|right|so|well)$/.test(items[k - 1]!.w));

/** The last of the places that are told one after the other from `k` on. */
function endOfPlaces(items: Item[], k: number): number {
  let last = k;
  while (
    items[last + 1]?.place ||
    (/^(and|&|,|\+)$/.test(items[last + 1]?.w ?? '') && items[last + 2]?.place)
  )
    last++;
  return last;
}

/** Does the clause end with the word at `k`, but for when? */
const isLast = (items: Item[], k: number): boolean =>
  /^(|[.,;!?\n]|tomorrow|next|later|today|at the moment|right now|too|as well|then|now|right|at|soon|tonight|and|but|or|after all|with|in|by)$/.test(
    items[k + 1]?.w ?? '',
  );

/** "other three: leave/replace", "2-3 patch / darn": two ways to choose from. */
const isEitherWay = (x: Item | undefined): boolean =>
  x?.action?.form === 'base' &&
  /^(leave|replace|patch|darn|overlay|stabilize|remove|wash|clean)$/.test(x.action.v);

/** "seam 3-2/4-2 resewn", "seams 3-3, 3-4: closed": what was worked on stands before its verb. */
function isSeamWorkedOn(items: Item[], k: number): boolean {
  let at = k + 1;
  while (items[at]?.place || (/^(\/|and|&|,|\+|to|between|at)$/.test(items[at]?.w ?? '') && at < k + 8)) at++;
  if (at === k + 1) return false;
  while (/^(:|-|is|are|was|were|now|all|both|has|have|been)$/.test(items[at]?.w ?? '') && at < k + 11) at++;
  return items[at]?.action?.form === 'past';
}

/** Words that are deeds where they stand are no things there: "busy backing 3-4", "maybe net 2-1". "Plus" between places joins them as "and" does, and a slash between two ways is an "or". */
export function settleDeeds(items: Item[]): void {
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (item.w === '/' && isEitherWay(items[k - 1]) && isEitherWay(items[k + 1])) item.w = 'or';
    if (item.w === 'plus' && items[k - 1]?.place && items[k + 1]?.place) item.w = 'and';
    if (item.seam && item.action && isSeamWorkedOn(items, k)) item.action = undefined;
    if (!item.action || item.place?.kind === 'blocks' || !isDoneToBlocks(items, k)) continue;
    item.deed = true;
    item.part = undefined;
    item.place = undefined;
    item.object = undefined;
    item.material = undefined;
    item.measure = undefined;
    item.topic = undefined;
    item.stitches = undefined;
  }
}
