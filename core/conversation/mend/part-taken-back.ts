import type { Item } from '../../rules/item.ts';
import { placesOf, put, type Standing, takePlaces } from '../standing.ts';
import { POINTERS } from './items.ts';

/**
 * One of several things that were told is taken back by its name, in whatever words: "the stain wasn't there, just a shadow", "i never
 * darned 4-4", "the pins can come off that", "keep the hole, lose the rest". In the patterns `#` is the thing and `@` a place.
 */

const LEAD = String.raw`^ (?:(?:no|nope|oh|ah|well|actually|sorry|wait|hang on|hold on|but|and|so|um|uh|er|please|just|hmm|,|-|\.) )*`;
/** Verbs that take back words; of the others (`BENCH`) only a reason or "from that" tells that no work is meant. */
const TAKE_BACK = String.raw`(?:forget|ignore|scrub|disregard|bin|scrap|cancel|erase|undo|never mind|take back|lose|strike|scratch|delete|strike out|cross out)`;
const BENCH = String.raw`(?:drop|take out|take off|take|leave off|leave out|leave|pull|remove|cut|knock off)`;
const NAME = String.raw`(?:(?:the |that )?(?:(?:bit|part|one|note) )?(?:about|with|on) )?(?:the |that |my |those )?#`;
const WHY = String.raw`(?:.* )?(?:wrong|was n't|were n't|did n't|never|forgot|not this|not today|by mistake|a mistake|after all|(?:was|were|is|'s) (?:yesterday|last (?:week|night|month)|(?:an|the) ?other|another|somebody|someone|my \S+ 's|a different))\b.*`;

const GONE = [
  // "the stain wasn't there, just a shadow", "the darn's not mine"
  String.raw`(?:the |that |my )?# (?:was|were|is|are|'s) (?:n't|not|never)(?: really| actually)? (?:there|real|so|one|mine|today|here|anything|on (?:here|this|that)|(?:for |from |on )?this (?:quilt|one|block))\b.*`,
  // "the darning was yesterday's", "the wash was the other quilt"
  String.raw`(?:the |that |my )?# (?:was|were|is|'s) (?:yesterday|last (?:week|night|month)|(?:for |on |from )?(?:the other|another|a different) (?:quilt|one|job)|somebody|someone)\b.*`,
  // "scratch the basting on that"
  String.raw`${TAKE_BACK} (?:about )?${NAME}(?: (?:out|off|back|again|please|one|bit))*(?: (?:on|for|at|in|from|of|off) (?:@|that|it|this|there|them|those|both)(?: (?:one|two|block|row|blocks|ones|last one))?)?(?: ,? ?(?:${WHY}|i .*))?`,
  String.raw`${BENCH} ${NAME}(?: (?:out|off|back|again|please))* ,? ?${WHY}`,
  String.raw`${BENCH} ${NAME}(?: (?:out|off))? ?(?:from|of|off) (?:that|there|it|the (?:list|note|log))\b.*`,
  // "the stain can come out of there"
  String.raw`(?:the |that )?# (?:can|should|must|has to|needs to|ought to|wants to) (?:come|go|be taken|be struck) (?:out|off|back)(?: of)? (?:that|there|the (?:list|note|log))\b.*`,
  // "not the patch, scrub that bit", "scrub that bit, the patch"
  String.raw`not (?:the |that |my )#(?: [,:.;-])? ?(?:(?:please|just) )*${TAKE_BACK} (?:that|it|this)(?: one| bit| part| lot| out| off| again| please)*`,
  // "there was no darning, I misspoke"
  String.raw`there (?:was|were|is|'s) (?:no|never any|never a|n't any|n't a) #(?: .*)?`,
  // "I never darned 4-4"
  String.raw`i (?:never|did n't) (?:actually |even )?#(?: (?:@|it|that|them|any|anything|at all|after all|in the end|today))*(?: ,.*)?`,
];
/** Goods: "I didn't get the pins after all", "no pins, they were out of them", "leave the pins off". */
const NOT_BOUGHT = [
  String.raw`i (?:never|did n't) (?:actually |even )?(?:get|got|buy|bought|use|used|take|have|pick up)(?: any| the| those| that)? #(?: .*)?`,
  String.raw`no # ,? ?(?:they|it|i|we|the shop|she|he)\b.*`,
  // "oh and no thread after all"
  String.raw`no (?:\w+ )?# (?:after all|in the end|either|though|actually|i (?:find|see))(?: .*)?`,
  String.raw`(?:leave|take|strike|cross) (?:the |those |that )?# (?:off|out)(?: (?:that|it|the list|of that|again|please|i|they|,).*)?`,
];
const KEEP = String.raw`(?:keep|leave) (?:the |that )?#(?: in)? ,? ?(?:and |but )?(?:lose|forget|drop|scrap|bin|scrub|strike|scratch|cancel|delete|ignore|take out) (?:the (?:rest|other|others|other one|other bit|lot)|everything else|all the rest)(?: .*)?`;
const LATER = String.raw`not (?:the |that |my )?# ,? ?(?:that|it|they|those)? ?(?:'s|is|are|'re|'ll be|'ll)? ?(?:still )?(?:to do|to come|to go|tomorrow|later|next|planned|for (?:tomorrow|later|tonight)|only planned)(?: .*)?`;

const whole = (pattern: string): RegExp => new RegExp(`${LEAD}${pattern}(?: [.!])* $`);
const [GONE_RE, GOODS_RE] = [GONE, NOT_BOUGHT].map((list) => list.map(whole)) as [RegExp[], RegExp[]];
const [KEEP_RE, LATER_RE] = [whole(KEEP), whole(LATER)];

/** Gives what stands afterwards, or undefined where nothing is taken back so. */
export function partTakenBack(standing: Standing[], items: Item[]): Standing[] | undefined {
  if (items.length > 22) return undefined;
  const main = standing.filter(({ was }) => was.kind !== 'remark' && !isUsed(was));
  if (main.length < 2) return undefined;
  for (const [k, x] of items.entries()) {
    const named = standing.filter((s) => isNamed(s, x));
    const [s] = named;
    if (!s || named.length > 1) continue;
    const words = ` ${items.map((y, n) => (n === k ? '#' : n > k && y.place?.places.length && !POINTERS.has(y.place.rule) ? '@' : y.w)).join(' ')} `;
    // "the stain on 2-2 wasn't there", of another block: nothing of the last note
    const at = items.flatMap((y) => (y.place && !POINTERS.has(y.place.rule) ? y.place.places : []));
    if (at.some((p) => !placesOf(s.was).includes(p))) continue;
    const done = s.was.kind !== 'treatment' || /^(?:done|doing)$/.test(s.was.state);
    if (s.was.kind === 'treatment' && done && LATER_RE.test(words)) {
      put(s.draft, 'state', 'planned', 'amend.not-yet', []);
      put(s.draft, 'minutes', undefined, 'amend.not-yet', []);
      return standing;
    }
    if (KEEP_RE.test(words)) return standing.filter((o) => o === s || (isUsed(o.was) && toldWith(o, s)));
    const gone =
      GONE_RE.some((r) => r.test(words)) ||
      (s.was.kind === 'material' && GOODS_RE.some((r) => r.test(words)));
    // "I didn't patch it, I darned it": another deed in its stead
    if (!gone || !done || items.slice(k + 1).some((y) => y.action?.form === 'past')) continue;
    // "leave off the twenty minutes": the length alone
    if (x.duration && s.was.kind === 'treatment') {
      put(s.draft, 'minutes', undefined, 'amend.taken-back', [x]);
      return standing;
    }
    // "forget the pinning on 2-5", of two: it stands at the other
    if (at.length && at.length < placesOf(s.was).length) {
      takePlaces(s, at, 'amend.taken-back', [x]);
      return standing;
    }
    return standing.filter(
      (o) => o !== s && !(s.was.kind === 'treatment' && isUsed(o.was) && toldWith(o, s)),
    );
  }
  return undefined;
}

const isUsed = (e: Standing['was']): boolean =>
  e.kind === 'material' && e.use === 'used' && e.quantity === undefined;

/** Was it told in the words of that deed? */
function toldWith(s: Standing, deed: Standing): boolean {
  const [told, own] = [s.draft.origins['entry'], deed.draft.origins['entry']];
  return told !== undefined && own !== undefined && told.from >= own.from && told.from <= own.to;
}

function isNamed({ was: e }: Standing, x: Item): boolean {
  if (x.place?.places.length) return false;
  if (e.kind === 'condition') return x.finding === e.finding;
  if (e.kind === 'treatment')
    return (
      (x.action !== undefined && x.action.v === e.action) ||
      (x.duration !== undefined && x.duration.minutes === e.minutes)
    );
  if (e.kind === 'material') return x.material !== undefined && x.material === e.material && !isUsed(e);
  if (e.kind === 'work')
    return (
      (x.task !== undefined && x.task === e.task) ||
      (x.duration !== undefined && x.duration.minutes === e.minutes)
    );
  return false;
}
