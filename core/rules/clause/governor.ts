import type { TreatmentState } from '../../../shared/vocabulary.ts';
import { BEFORE_DEED, BEFORE_THING } from '../../lexicon/deed-frames.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import type { Item } from '../item.ts';
import { toldBehind } from './told-behind.ts';

/** What stands before a verb and can stand before nothing else, with the state that it gives the deed; `words` are those that stand there, from item `from` on. */
type Governor = { state?: TreatmentState; words: string; from: number };

/** The frames of each form, their words from the last to the first. Behind "to", "about" and the like only these tell a deed of their own. */
const BEFORE = new Map(
  (['ing', 'base'] as const).map((form) => {
    const trie = new PhraseTrie<TreatmentState | undefined>();
    for (const frames of BEFORE_DEED)
      if (frames.form === form)
        for (const words of frames.words) trie.add(words.split(' ').reverse().join(' '), frames.state);
    return [form, trie];
  }),
);
const MOST_WORDS = 9;

const BETWEEN = /^(just|also|then|now|only|really|actually|carefully|quickly|all|even|simply|maybe|perhaps)$/;

/** The last words of all frames: nothing governs behind another. */
const LAST_WORDS = new Set(
  [...BEFORE_DEED.flatMap((x) => x.words), ...BEFORE_THING.flatMap(([, words]) => words)].flatMap((words) => {
    const last: string[] = [];
    for (const part of words.split(' ').reverse()) {
      last.push(...part.replace(/\?$/, '').split('|'));
      if (!part.endsWith('?')) break;
    }
    return last;
  }),
);

function longestBefore(
  frames: PhraseTrie<TreatmentState | undefined>,
  items: Item[],
  last: number,
): Governor | undefined {
  const tail = items[last]?.w ?? '';
  if (!LAST_WORDS.has(tail.slice(tail.lastIndexOf(' ') + 1))) return undefined;
  const back: { w: string; from: number }[] = [];
  for (let m = last; m >= 0 && back.length < MOST_WORDS; m--)
    for (const w of items[m]!.w.split(' ').reverse()) back.push({ w, from: m });
  const hit = frames.longestAt(back, 0);
  if (!hit) return undefined;
  const words = back
    .slice(0, hit.next)
    .map((x) => x.w)
    .reverse()
    .join(' ');
  const state = hit.payloads[0];
  const { from } = back[hit.next - 1]!;
  return state ? { state, words, from } : { words, from };
}

/** What governs the verb at `k`, in the form in which it stands; nothing where the words before it could stand before a thing too. */
export function governorOf(items: Item[], k: number): Governor | undefined {
  const form = items[k]!.action?.form;
  if (form !== 'ing' && form !== 'base') return undefined;
  for (let last = k - 1; last >= 0; last--) {
    const hit = longestBefore(BEFORE.get(form)!, items, last);
    if (hit) return hit;
    if (!BETWEEN.test(items[last]!.w)) return undefined;
  }
  return undefined;
}

const BEFORE_NOUN = new PhraseTrie<TreatmentState | undefined>();
for (const frames of BEFORE_DEED)
  if (frames.form === 'ing' && frames.state)
    for (const words of frames.words) BEFORE_NOUN.add(words.split(' ').reverse().join(' '), frames.state);
for (const [state, phrases] of BEFORE_THING)
  for (const words of phrases) BEFORE_NOUN.add(words.split(' ').reverse().join(' '), state);

const HOW_IT_IS =
  /^(quick|little|small|new|fresh|bit|of|proper|good|light|nice|neat|tiny|wee|decent|careful|simple|fine|gentle|big|big|thin|soft|second|cotton|muslin|calico|silk|linen|denim|fabric|cloth|net|tulle|crepeline|full|fabric|one|thorough|other|overall)$/;
const ARTICLE = /^(a|an|the|its|their|some|another|my|that|just)$/;

/** What governs the treatment told as a thing at `k` ("calls for a darn", "no longer getting its patch"). */
export function governorOfThing(items: Item[], k: number): Governor | undefined {
  let last = k - 1;
  while (last > 0 && (HOW_IT_IS.test(items[last]!.w) || items[last]!.fabric || items[last]!.stitch)) last--;
  while (last > 0 && ARTICLE.test(items[last]!.w)) last--;
  const hit = longestBefore(BEFORE_NOUN, items, last);
  if (!hit?.state) return undefined;
  // "doesn't need a patch": a plain no is another rule's
  return /^(n't|not|no|never|old)$/.test(items[hit.from - 1]?.w ?? '') ? undefined : hit;
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
function isDoneToBlocks(items: Item[], k: number, governed = governorOf(items, k) !== undefined): boolean {
  const onBlocks = (x: Item | undefined): boolean =>
    x?.fabric !== undefined || (x?.place !== undefined && x.place.kind !== 'part');
  if (isNoted(items, k)) return true;
  let next = k + 1;
  while (LEADS_TO_PLACE.test(items[next]?.w ?? '') && next < k + 4) next++;
  // "back row five tomorrow", "interfacing 2-4 at the moment"; "tacking out of row one" is no deed of its own
  if (!governed)
    return (
      opensNote(items, k) &&
      items[next]?.place?.kind === 'blocks' &&
      !items.slice(k + 1, next).some((x) => /^(out|off|of)$/.test(x.w)) &&
      (isLast(items, endOfPlaces(items, next)) || toldBehind(items, k) !== undefined)
    );
  const end = /^(up|down|out)$/.test(items[k + 1]?.w ?? '') ? k + 1 : k;
  return onBlocks(items[next]) || (isLast(items, end) && blocksBefore(items, k));
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

/** "between patching and darning 3-3", "whether 2-1 wants patching or netting": what is told of the one deed holds for the other. */
function isOneOfTwo(items: Item[], k: number): boolean {
  if (items[k]!.action!.form !== 'ing') return false;
  for (const step of [1, -1]) {
    let m = k + step;
    while (
      /^(and|or|just|only|,|simply|it|either|else|versus|vs)$/.test(items[m]?.w ?? '') &&
      Math.abs(m - k) < 5
    )
      m += step;
    const joins = items
      .slice(Math.min(m, k) + 1, Math.max(m, k))
      .some((x) => /^(and|or|versus|vs)$/.test(x.w));
    if (!joins || items[m]?.action?.form !== 'ing') continue;
    if (step < 0 ? items[m]!.deed : governorOf(items, k) !== undefined && isDoneToBlocks(items, m, true))
      return true;
  }
  return false;
}

/** Words that are deeds where they stand are no things there: "busy backing 3-4", "maybe net 2-1". "Plus" between places joins them as "and" does, and a slash between two ways is an "or". */
export function settleDeeds(items: Item[]): void {
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (item.w === '/' && isEitherWay(items[k - 1]) && isEitherWay(items[k + 1])) item.w = 'or';
    if (item.w === 'plus' && items[k - 1]?.place && items[k + 1]?.place) item.w = 'and';
    if (item.seam && item.action && isSeamWorkedOn(items, k)) item.action = undefined;
    if (!item.action || item.place?.kind === 'blocks') continue;
    if (!isDoneToBlocks(items, k) && !isOneOfTwo(items, k)) continue;
    item.deed = true;
    // "leaning towards netting 2-1", "backed out of lining it": no finding and no deed of their own
    for (const x of items.slice(governorOf(items, k)?.from ?? k, k)) {
      x.finding = undefined;
      x.fail = undefined;
      if (x.action?.form === 'past') x.action = undefined;
    }
    item.part = undefined;
    item.place = undefined;
    item.object = undefined;
    item.material = undefined;
    item.measure = undefined;
    item.topic = undefined;
    item.stitches = undefined;
  }
}
