import { boundaryBefore, type Item } from '../item.ts';
import { pointsElsewhere, tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';
import { findingBegins, isDamageAsThing } from './finding-begins.ts';
import { isFronted } from './fronted.ts';
import { BE, PREPOSITIONS } from './is-predicate.ts';
import { isStop, joinsPlaces } from './joints.ts';
import { hasPredicate } from './new-subject.ts';
import { beginsOff, endsOff } from './off-and-done.ts';
import { REMOVE_VERBS } from './removal-at.ts';
import { doneNext, seamTold, subjectTold } from './subject-told.ts';
import { taleBegins } from './tale-begins.ts';
import { turnsWithin } from './turns-to.ts';

/** Words that lean on what follows them: no statement ends with one. */
const LEANS =
  /^(the|a|an|some|any|no|not|n't|never|this|that|these|those|its|my|her|his|their|of|or|and|&|\+|but|so|then|because|cos|if|as|than|like|while|when|where|which|who|what|whose|until|till|before|after|since|is|'s|are|'re|was|were|be|been|being|am|'m|has|have|had|'ve|'d|get|gets|got|getting|will|'ll|would|could|should|might|may|must|can|ca|to|i|we|she|he|it|they|you|someone|somebody|just|also|only|really|very|too|quite|all|both|every|each|another|new|old|one|um|uh|er|,|:|-|--|\/|\()$/;
/** Does the word at `k` lean on what follows it? "Leaving 3-3 as it is" does not. */
export const leans = (items: Item[], k: number): boolean =>
  LEANS.test(items[k]!.w) &&
  !(
    /^(is|are|was)$/.test(items[k]!.w) &&
    /^(it|they)$/.test(items[k - 1]?.w ?? '') &&
    items[k - 2]?.w === 'as'
  );
const JOINT = /^(,|and|&|\+|then|but|so|or|while|because)$/;
const DETERMINER = /^(the|a|an|all|both|every|each|that|this|those|its|my|another|some)$/;
const FINITE =
  /^('s|is|are|'re|has|have|was|were|needs?|wants?|looks?|smells?|feels?|stays?|will|'ll|gets?|goes|could|might|can|should)$/;
/** "the one below" and "both of them" begin what is told of them; "it" and "they" go on with what was said. */
const pointsTo = (x: Item): boolean =>
  x.place !== undefined && x.place.places.length > 0 && !/^place\.(it|them)$/.test(x.place.rule);
/** "pressed the one below" is a deed of its own, "pressed them" goes on with the one before it. */
const tellsWhere = (x: Item): boolean => tellsPlace(x) || pointsElsewhere(x);

/** "darned 2-3", "pressed the pinstripe ones", "cut a new square", "took the backing off": somebody did it, and to what. */
export function isDeed(items: Item[], k: number): boolean {
  const verb = items[k]!;
  if (
    verb.action?.form !== 'past' &&
    !(REMOVE_VERBS[verb.w]?.form === 'past' && !/^(had|have|got|come|came|off|out)$/.test(verb.w))
  )
    return false;
  if (verb.place || verb.part) return false;
  let at = k + 1;
  while (DETERMINER.test(items[at]?.w ?? '') && at < k + 4) at++;
  const object = items[at];
  // "quilted along the sashing, pulled the pins out as I went": part of the work before it
  if (!object || object.object === 'pins') return false;
  const before = items[k - 1];
  // "2-3 darned 2-4 patched": the place before it is what was darned
  const passive = before !== undefined && (before.place !== undefined || before.fabric !== undefined);
  if (at === k + 1) {
    const behind = items[at + 1];
    const told =
      behind && (behind.action?.form === 'past' || behind.finding || behind.fail || FINITE.test(behind.w));
    return tellsWhere(object) && !(passive && told);
  }
  return Boolean(object.place || object.fabric || object.object || object.part || object.material);
}

/** "the backing needs washing", "row four smells musty", "the seam between 3-1 and 3-2 has split". */
export function isSubject(items: Item[], k: number): boolean {
  let at = k;
  while (/^(the|that|both|all|those|its|old|new)$/.test(items[at]?.w ?? '') && at < k + 3) at++;
  const subject = items[at];
  if (!subject) return false;
  if (subject.seam && /^(between|at|on|in)$/.test(items[at + 1]?.w ?? '')) {
    at += 2;
    while (items[at]?.place && joinsPlaces(items, at + 1)) at += 2;
  } else if (!(pointsTo(subject) || subject.fabric || subject.object || subject.part || subject.seam))
    return false;
  else if (at === k && !pointsTo(subject) && !subject.fabric) return false;
  // "the quilt's right-hand column", "the top's 64 inches"
  const behind = items[at + 2];
  // "the top one I've darned"
  if (
    PICKED.test(subject.place?.rule ?? '') &&
    /^(i|we)$/.test(items[at + 1]?.w ?? '') &&
    (/^('ve|'ll|'m|have|will|am|left|just)$/.test(behind?.w ?? '') || behind?.action)
  )
    return true;
  // "row one it's all good | row two it's torn"
  if (
    subject.place?.kind === 'blocks' &&
    subject.place.how === 'said' &&
    items[at + 1]?.w === 'it' &&
    /^(?:'s|is|has|was)$/.test(behind?.w ?? '')
  )
    return true;
  // "the block below has a piece missing"
  const measured = behind?.quantity !== undefined && behind.quantity.unit !== 'piece';
  return FINITE.test(items[at + 1]?.w ?? '') && !behind?.place && !measured;
}

/** One of several spoken of, or the other. */
const PICKED = /^place\.(the-other|one-of-them)$/;

/** "stain on 5-1 and 5-2 | tear in 4-3": the next finding with its own place. */
function isFindingAt(items: Item[], k: number, current: Item[]): boolean {
  const before = items[k - 1]!;
  // "… all down | wadding gone to lumps in 2-2": its subject stands before it
  if (before.part && !isDamageAsThing(items[k]!)) return false;
  if (!items[k]!.finding || !(before.place || before.fabric) || !current.some((x) => x.finding)) return false;
  if (!/^(in|on|at|along|across)$/.test(items[k + 1]?.w ?? '')) return false;
  let at = k + 2;
  while (DETERMINER.test(items[at]?.w ?? '') && at < k + 4) at++;
  const where = items[at];
  return where !== undefined && (tellsWhere(where) || where.fabric !== undefined || where.part !== undefined);
}

/** "a tear | the two after that the quilting's gone": a place that neither verb nor preposition ties to what was said before it. */
function isLoosePlace(items: Item[], k: number): boolean {
  if (!items[k - 1]?.place) return false;
  let at = k - 2;
  while (at > 0 && (items[at]!.place || DETERMINER.test(items[at]!.w) || /^(and|&|,|\+)$/.test(items[at]!.w)))
    at--;
  const lead = items[at];
  return !lead || !(PREPOSITIONS.has(lead.w) || lead.action || REMOVE_VERBS[lead.w]);
}

/** "patched 3-2 and 5-4 | both are sound": the "and" of a list of places. */
const listsPlaces = (current: Item[], m: number): boolean =>
  Boolean(current[m - 1]?.place && current[m + 1]?.place);

/** Do the words before a point say something whole? */
const isWhole = (current: Item[]): boolean =>
  // "(there's a hole in 4-1) and one in 4-5 | the right-hand one I darned"
  (/^(one|another)$/.test(current[0]?.w ?? '') &&
    /^(in|on|at)$/.test(current[1]?.w ?? '') &&
    current.length < 5 &&
    current.some((x) => x.place)) ||
  current.some((x) => x.cost || x.duration || x.span || x.clock) ||
  // "2-2 fusible behind, done", "the side borders are on"
  (current.at(-1)!.w === 'done' && current.some((x) => x.place)) ||
  // "did one four with vinegar | I'll do the other one tomorrow"
  (/^ (?:(?:i|we|'ve|have|just|and|so|then) )*(?:did|done|tackled|dealt with) $/.test(
    wordsBetween(
      current,
      0,
      current.findIndex((x) => x.place),
    ),
  ) &&
    current.some((x) => x.place)) ||
  (current.some((x) => /^(border|binding)/.test(x.part ?? x.place?.places[0] ?? '')) &&
    current.some((x, m) => x.w === 'on' && BE.has(current[m - 1]?.w ?? ''))) ||
  current.some(
    (x) => x.quantity?.unit && current.some((y) => y.material || y.measure || y.w.endsWith('block')),
  ) ||
  (current.some((x) => x.topic) && current.some((x) => FINITE.test(x.w))) ||
  endsInDoubt(current) ||
  // "sewed the rip shut with a whipstitch | the mildew I brushed off"
  (current.some((x) => x.action?.form === 'past' && !x.place) &&
    current.some(
      (x, m) => (x.finding || x.seam) && /^(the|that|both|those|its)$/.test(current[m - 1]?.w ?? ''),
    )) ||
  (current.some((x) => x.place || x.fabric || x.topic) && hasPredicate(current));

/** "2-2 a darn or a patch, not sure yet |", "either net over 3-3 or leave it, I can't decide |": ways, and the doubt that closes them. */
const endsInDoubt = (current: Item[]): boolean =>
  current.some((x) => x.action || x.material) &&
  / (?:n't know|not sure|unsure|not decided|n't decided|n't decide|undecided|two minds|n't made (?:up my mind|my mind up)|n't made up|dunno|no idea)(?: yet| either| still| really)* $/.test(
    wordsBetween(current),
  );

/** "did one four with vinegar | I'll do the other one tomorrow" */
const DOES_NEXT =
  /^ (?:i|we) (?:'ll|will|shall|am going to|'m going to|'m gonna|might|can|could|must|need to|have to) (?:do|tackle|get to|see to|try|start|finish) /;

/** "not sure about 2-2 |", "undecided on the middle block |": nothing but what is in doubt. */
const doubtOnly = (current: Item[]): boolean =>
  current.at(-1)?.place !== undefined &&
  /^ (?:(?:i|'m|am|still|just|really) )*(?:not sure|undecided|unsure|(?:have n't|not|n't) decided|(?:ca n't|can not) decide|in two minds)(?: yet| still)? (?:about|on|over|with) (?:the |that )*$/.test(
    wordsBetween(current.slice(0, -1)),
  );

/** Does a statement that leans on nothing before it begin at `k`, in the middle of running words? */
function beginsAnew(items: Item[], k: number, current: Item[]): boolean {
  const before = items[k - 1]!;
  if (endsOff(items, k, current)) return true;
  if (leans(items, k - 1) || PREPOSITIONS.has(before.w)) return false;
  if (taleBegins(items, k) && isWhole(current)) return true;
  if (
    (findingBegins(items, k, current) ||
      subjectTold(items, k, current) ||
      seamTold(items, k, current) ||
      doneNext(items, k, current)) &&
    isWhole(current)
  )
    return true;
  if (
    DOES_NEXT.test(wordsBetween(items, k, k + 6)) &&
    items.slice(k, k + 7).some(tellsWhere) &&
    isWhole(current)
  )
    return true;
  if ((endsInDoubt(current) || doubtOnly(current)) && (isSubject(items, k) || isDeed(items, k))) return true;
  if (isLoosePlace(items, k)) return false;
  if (beginsOff(items, k, current) && isWhole(current)) return true;
  if (isFronted(items, k) && isWhole(current)) return true;
  if (!isDeed(items, k) && !isSubject(items, k) && !isFindingAt(items, k, current))
    return turnsWithin(items, k, current);
  // "…, and in the first two blocks the batting's gone lumpy": what stands behind the last joint only tells where
  const own = current.slice(
    current.findLastIndex((x, m) => JOINT.test(x.w) && !x.place && !listsPlaces(current, m)) + 1,
  );
  // "the seam where 5-4 meets 6-4 has come loose"
  // "two three is torn and needs a patch | two four is fine": the subject was said before the joint
  const carriedOn =
    own.length > 1 &&
    /^(needs?|wants?|gets?|has|is|was|will|'ll)$/.test(own[0]!.w) &&
    own.length < current.length;
  const whole = carriedOn
    ? isWhole([current.find((x) => x.place ?? x.fabric) ?? own[0]!, ...own])
    : isWhole(own);
  return whole && !own.some((x) => /^(where|which|who|between)$/.test(x.w));
}

/**
 * Puts a stop where, in running speech without marks, a statement begins that has its own verb and its own place or thing
 * ("a block is nine inches | darned 2-3", "rust all over the backing | pressed the pinstripe ones").
 */
export function withRunOns(items: Item[]): Item[] {
  const out: Item[] = [];
  let current: Item[] = [];
  items.forEach((item, k) => {
    if (isStop(item)) current = [];
    else {
      // "and whether | the backing comes off" is one
      if (current.length > 1 && current.at(-1)!.w !== 'whether' && beginsAnew(items, k, current)) {
        out.push(boundaryBefore(item, ';'));
        current = [];
      }
      current.push(item);
    }
    out.push(item);
  });
  return out;
}
