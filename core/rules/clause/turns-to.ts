import { COLOURS } from '../../lexicon/colours.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { looksUndecided } from '../mood.ts';
import { tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';
import { BE } from './is-predicate.ts';
import { isStop, joinsPlaces } from './joints.ts';
import { REMOVE_VERBS } from './removal-at.ts';

/** What a stretch of a note is about. */
type Told =
  | 'deed'
  | 'bare deed'
  | 'label'
  | 'found'
  | 'said'
  | 'open'
  | 'doubt'
  | 'plan'
  | 'given up'
  | 'goods'
  | 'matter'
  | 'length'
  | 'pause';

/** What a stretch that opens so does not go on in one sentence with: there a stop is put. */
const TURNS: Record<Told, Told[]> = {
  deed: ['open', 'plan', 'given up', 'goods', 'matter', 'length', 'pause'],
  // "vacuumed it", with no place of its own
  'bare deed': ['given up'],
  label: ['deed', 'bare deed', 'found', 'said', 'plan', 'goods', 'matter', 'length', 'pause', 'open'],
  found: ['open', 'plan', 'given up', 'goods', 'matter', 'length', 'pause'],
  said: ['goods', 'matter', 'length', 'pause'],
  'given up': ['deed', 'plan'],
  pause: ['deed', 'found', 'goods', 'matter', 'length', 'open', 'plan'],
  goods: ['deed', 'found', 'open', 'matter', 'length'],
  matter: ['deed', 'found', 'goods', 'length'],
  length: ['deed', 'found', 'goods', 'open', 'plan', 'matter'],
  open: ['deed', 'goods', 'matter', 'length', 'open'],
  // "two options, not decided: a patch, or cloth set in" is one doubt
  doubt: ['deed', 'goods', 'matter', 'length'],
  plan: ['given up'],
};

const JOINT = /^(,|and|&|\+|then)$/;
const FILLER = /^(um|uh|er|erm|ah|oh|also|then|and|so|well|i|we|'ve|have|just|now|instead)$/;
const DETERMINER = /^(the|all|both|that|this|those|every|each|my|its)$/;
/** Verbs that are no treatment of their own, told of what was done: "put crepeline over 6-4". */
const LIGHT_PAST = /^(put|laid|gave|stuck|slipped|tucked|ran|covered)$/;
const DOUBT =
  /^ (?:(?:maybe|perhaps|possibly) |(?:i 'm |i am |still )?not (?:sure|decided) |(?:ca n't|can not) (?:decide|choose) |n't (?:decided|settled|made up) |undecided |torn between )/;
/** "half hour break", "back in ten", "stopping for tea": the work rests. */
const PAUSE =
  /^ (?:(?:a|an|short|quick|little|tea|coffee|lunch|dinner|half|hour|\S+ minutes?|half hour) )*break (?!in )|^ back in (?:a |about )?(?:\S+ minutes?|five|ten|fifteen|twenty|bit|half)\b|^ (?:taking|having|stopping|stopped) (?:five|ten|for (?:a )?(?:tea|coffee|lunch|dinner|supper|break)|a break|ten minutes|five minutes) /;
/** "replacement was rejected", "the silk support has been ruled out", "so the bath is off": an idea is given up. */
const GIVEN_UP =
  /^ (?:the |that |this |my |\S+ ){1,5}(?:is|'s|was|were|are|has been|have been) (?:now |also |all )?(?:rejected|dropped|scrapped|abandoned|ruled out|given up|called off|cancelled|shelved) $|^ (?:the |that )?(?:bath|wash|patch|patching|netting|lining|darn|overlay|idea|plan) (?:is|'s|are) off $/;
/** "label to go on the bottom right corner", "a name tag still has to go on". */
const LABEL =
  /^ (?:the |a |my |its |new )*(?:label|name tag|name tape) (?:is |has |still |yet |also )*(?:to go|to be sewn|to be stitched|to sew|goes|going|needs|must|will|'ll|sewn|stitched|put) /;
const TO_BUY =
  /^ (?:put|write|jot|note|stick|add)(?: me)?(?: down)?(?: for)? .*(?:to (?:buy|get|order)|(?:on|to) (?:the|my) (?:shopping )?list) $/;
const PLANNED =
  / (need|needs|will|'ll|going to|gonna|to buy|to get|must|should|wants|to be|to do|has to|have to) /;

/** What the words from `from` up to `to` begin to tell, by how they open; nothing where that leans on what was said before. */
function opens(items: Item[], from: number, to: number): Told | undefined {
  const rest = items.slice(from, to);
  const first = rest[0];
  if (!first) return undefined;
  const words = wordsBetween(rest);
  if (DOUBT.test(words)) {
    let end = to;
    while (end < items.length && !isStop(items[end]!)) end++;
    const own = items.slice(from, end);
    return own.some((x) => x.place?.kind === 'blocks')
      ? 'open'
      : own.some((x) => x.topic)
        ? 'doubt'
        : undefined;
  }
  if (PAUSE.test(words)) return 'pause';
  // "put down two reels of white thread to buy", "add a yard of net to the list"
  if (TO_BUY.test(words) && rest.some((x) => x.material || x.fabric)) return 'goods';
  if (LABEL.test(words)) return 'label';
  if (GIVEN_UP.test(words) && rest.some((x) => x.action)) return 'given up';
  // "… is off, it will have net over it instead"
  if (/^ (?:it |they )?(?:will|'ll|gets?|going to) /.test(words)) return 'plan';
  const past =
    first.action?.form === 'past' ||
    (REMOVE_VERBS[first.w]?.form === 'past' && !rest[1]?.duration && !rest[1]?.quantity?.unit) ||
    LIGHT_PAST.test(first.w);
  // "going to put net over 3-3, couched round the edge": only how
  const how = first.stitch !== undefined && rest.filter(tellsPlace).every((x) => x.part === 'edge');
  if (past) return how ? undefined : rest.some(tellsPlace) ? 'deed' : 'bare deed';
  // "it measures 62 by 74 inches", "the strips are two inches wide"
  if (
    (first.w === 'it' &&
      (/^(measures|measured|came)$/.test(rest[1]?.w ?? '') ||
        (/^(is|'s)$/.test(rest[1]?.w ?? '') && rest.some((x) => /^(by|x)$/.test(x.w)))) &&
      rest.some((x) => x.quantity)) ||
    (/^(measures|measured)$/.test(first.w) && rest.some((x) => x.quantity))
  )
    return 'length';
  let at = 0;
  while (DETERMINER.test(rest[at]?.w ?? '') && at < 3) at++;
  const head = rest[at];
  const next = rest[at + 1]?.w ?? '';
  // "the backing will be the blue stripe", "binding: navy", "blue for the backing"
  if (
    head?.topic &&
    (/^(:|undecided|unsettled|settled|colou?r)$/.test(next) ||
      (/^(will|'ll)$/.test(next) && rest[at + 2]?.w === 'be') ||
      / (?:undecided|up in the air|not (?:yet )?decided|to be decided|still open|an open question) /.test(
        words,
      ))
  )
    return 'matter';
  if (COLOURS.has(first.w) && rest[1]?.w === 'for' && rest[3]?.topic) return 'matter';
  // "still need binding, six yards"
  const want = /^(still|also)$/.test(first.w) ? 1 : 0;
  if (
    /^(need|needing|must|buy)$/.test(rest[want]?.w ?? '') &&
    rest.slice(want + 1, want + 6).some((x) => x.material && x.action?.form !== 'past') &&
    (rest.some((x) => x.quantity?.unit) ||
      (items[to]?.w === ',' && items[to + 1]?.quantity?.unit) ||
      / (buy|more) /.test(words))
  )
    return 'goods';
  // "bought three yards of net"
  if (/^(bought|ordered)$/.test(first.w) && rest.some((x) => x.material || x.fabric)) return 'goods';
  // "two fat quarters of check, 3 pounds apiece"
  if (first.quantity?.unit && rest.slice(1, 6).some((x) => x.material) && isPriced(items, from, to))
    return 'goods';
  // "there's a stain on 2-3", "2-3 torn", "holes and stains all over the backing"
  const found = rest.findIndex((x) => x.finding !== undefined || x.fail);
  // "2-3 needs patching", "row two got a press"
  if (found < 0)
    return head && tellsPlace(head) && /^(needs|wants|is|'s|has|got|gets|will|'ll)$/.test(next)
      ? 'said'
      : undefined;
  const before = rest.slice(at, found);
  const light = (x: Item): boolean =>
    BE.has(x.w) || tellsPlace(x) || x.quantity !== undefined || /^(and|a|an|some)$/.test(x.w);
  if (head && (tellsPlace(head) || head.fabric)) return before.slice(1).every(light) ? 'found' : undefined;
  return before.every(
    (x) => /^(there|'s|are|is|a|an|some|few|couple|of|two|three|found|the)$/.test(x.w) || x.quantity,
  ) && rest.slice(found).some(tellsPlace)
    ? 'found'
    : undefined;
}

/** "…, 3 pounds apiece" behind a comma is the price of the goods before it. */
const isPriced = (items: Item[], from: number, to: number): boolean =>
  items.slice(from, to).some((x) => x.cost) || (items[to]?.w === ',' && items[to + 1]?.cost !== undefined);

/** What the words before a joint have told. */
function tells(current: Item[]): Told[] {
  const words = wordsBetween(current);
  const told: Told[] = [];
  if (/ (?:rejected|scrapped|abandoned|ruled out|called off|shelved|is off|'s off) $/.test(words))
    told.push('given up');
  if (looksUndecided(words)) told.push('open');
  else if (PLANNED.test(words)) told.push('plan');
  if (
    current.some((x) => x.cost) ||
    (/ (bought|buy|ordered|running low|out of|there are|have|list) /.test(words) &&
      current.some((x) => x.material))
  )
    told.push('goods');
  const opening = opens(current, 0, current.length);
  if (/^(?:matter|length|pause|given up)$/.test(opening ?? '')) told.push(opening!);
  if (
    (/ (measures|measured|wide|long) /.test(words) ||
      current.some((x) => x.measure && x.measure !== 'seam')) &&
    current.some((x) => x.quantity?.unit)
  )
    told.push('length');
  const done = current.some(
    (x) => x.action?.form === 'past' || REMOVE_VERBS[x.w]?.form === 'past' || LIGHT_PAST.test(x.w),
  );
  if (done && !told.length && !current.some(tellsPlace)) told.push('bare deed');
  if (!told.length && current.some(tellsPlace)) {
    if (done) told.push('deed');
    else if (current.some((x) => x.finding || x.fail)) told.push('found');
  }
  return told;
}

/** Does what stands behind the last joint only name places, or one of two: "both 2-3", "the seam between 4-4"? */
function isListed(current: Item[]): boolean {
  const last = current.slice(current.findLastIndex((x) => JOINT.test(x.w)) + 1);
  return (
    last.some((x) => x.w === 'between') ||
    last.every((x) => x.place !== undefined || DETERMINER.test(x.w) || FILLER.test(x.w))
  );
}

const LEADS_FROM_DOUBT = /^(about|on|over|what|to|do|with|of|for|know|sure|decided|certain|yet|the)$/;
/** Places named by what is left of those spoken of. */
const OF_THE_REST =
  /^place\.(?:other-sides|rest-of-row|rest-of-column|rest-of-line|rest-of-it|other-rows|other-corner)$/;
const LEADS_TO_REST = /^(,|and|&|but|so|with|as|for|then|um|uh|er|well|oh)$/;
const WAYS_OPEN =
  / (?:might|either|maybe|perhaps|undecided|tbd|whether|not sure|no idea|dunno|n't (?:know|decided|decide|made up|make up)|not (?:decided|settled|made up)) | or (?!so |two )| [/?] /;

/** "left border coming off now the other three I might leave or replace": what is left is in doubt, and what was told of the one is not. */
function turnsToTheRest(items: Item[], k: number, current: Item[]): boolean {
  // "… now leave the other three or replace them": the verb stands before
  // "… at the moment, undecided about the other three, leave them or replace them": the doubt does
  let at = items[k]!.action?.form === 'base' ? k + 1 : k;
  const doubtful = DOUBTS.has(items[k]!.w) && DOUBT_OF.test(wordsBetween(items, k, k + 7));
  if (doubtful)
    while (
      at < k + 7 &&
      !items[at]?.place &&
      (DOUBTS.has(items[at]?.w ?? '') || LEADS_FROM_DOUBT.test(items[at]?.w ?? ''))
    )
      at++;
  if (!OF_THE_REST.test(items[at]?.place?.rule ?? '')) return false;
  if (!current.some(tellsPlace) || !current.some((x) => x.action || /^(off|out|removing|on)$/.test(x.w)))
    return false;
  if (
    looksUndecided(wordsBetween(current)) ||
    current.at(-1)!.action ||
    /^(or|from|off|on|in|of|over|to|leave|not)$/.test(current.at(-1)!.w)
  )
    return false;
  let end = k + 1;
  while (end < items.length && !isStop(items[end]!)) end++;
  return (doubtful && at > k) || WAYS_OPEN.test(wordsBetween(items.slice(at + 1, end)));
}

/** What may lead to another block, behind a comma or an "and". */
const LEADS_TO_OTHER = /^(and|but|so|then|now|um|uh|er|well|oh|as for|as|for|with|the|that|,)$/;
/** "3-4 I can't decide", "3-4 could go either way", "3-4 maybe too": a block in doubt; "3-4 are torn" is a tear. */
const SAID_IN_DOUBT =
  /^ (?:(?:i|we|it|one|block|is|'s|are|was|still|just|really|though|on the other hand|,|also) )*(?:ca n't|can not|do n't know|dunno|n't know|not sure|'m not|am not|n't decided|not decided|undecided|unsure|unresolved|could (?:go|be|do|take|have)|maybe|perhaps|possibly|might|may|tbd|tbc|'m torn|am torn|torn (?:between|about|over|on)|(?:'m|am) (?:still |just )?thinking|needs thinking|'m in two|in two minds|to be decided|have n't (?:made|decided)|no idea|either|needs (?:thinking|a think)|is another)\b/;
/** "not sure about 3-4", "I don't know yet about 3-4", "might do 3-4 as well": a doubt, and then the block. */
const DOUBT_OF =
  /^ (?:(?:i|we|'m|am|still|just|really) )*(?:(?:do n't|n't|not) (?:know|sure|decided|certain)|ca n't (?:decide|make)|undecided|unsure|might (?:do|have)|maybe|perhaps|possibly|thinking (?:about|of)|wondering|in two minds|no idea|dunno|torn (?:between|about|over|on))\b/;

/** "and for the border", "but with the backing". */
const isLedTo = (items: Item[], k: number, from: number): boolean =>
  items.slice(k, from).some((x) => /^(for|as for|with)$/.test(x.w));

/** "(3-3) now darn it or patch it, I don't know": two ways, and the doubt behind them. */
function isEitherOr(items: Item[], from: number): boolean {
  let to = from;
  while (to < items.length && to < from + 18 && !isStop(items[to]!)) to++;
  const rest = items.slice(from, to);
  const or = rest.findIndex((x) => x.w === 'or');
  return (
    or > 0 &&
    or < 8 &&
    rest.slice(0, or).some((x) => x.action?.form === 'base' || x.material === 'net') &&
    rest.slice(or).some((x) => x.action || x.material === 'net') &&
    looksUndecided(wordsBetween(rest.slice(or)))
  );
}

const DOUBTS = new Set(
  "i we 'm am still just really do n't not ca undecided unsure might maybe perhaps possibly thinking wondering in no dunno torn".split(
    ' ',
  ),
);
/** "…, and then maybe a patch on top": one thing more, in doubt. */
const ONE_MORE =
  /^ (?:then |also )?(?:maybe|perhaps|possibly|might do|might have) (?:also |then )?(?:a|an|some) (?:\S+ ){1,4}?(?:on top|too|as well|over (?:it|that|the top)|after)\b/;

/** "will darn 3-3, 3-4 I can't decide on": what is in doubt is another block, and what was told of the first is not. */
function turnsToDoubt(items: Item[], k: number, current: Item[]): boolean {
  if (
    (DOUBTS.has(items[k + 1]?.w ?? '') || DOUBTS.has(items[k + 2]?.w ?? '')) &&
    ONE_MORE.test(wordsBetween(items, k + 1, k + 11)) &&
    !looksUndecided(wordsBetween(current)) &&
    current.some((x) => x.action) &&
    current.some(tellsPlace)
  )
    return true;
  let from = k + 1;
  while (LEADS_TO_OTHER.test(items[from]?.w ?? '') && from < k + 5) from++;
  // "and for the border either a patch or I sew it up": led to by words of its own
  const blocks =
    items[from]?.place !== undefined && (items[from]!.place!.kind !== 'part' || isLedTo(items, k, from));
  if (!blocks && !DOUBTS.has(items[from]?.w ?? '')) return false;
  let end = from;
  while (blocks && (items[end]?.place || joinsPlaces(items, end)) && end < from + 9) end++;
  const words = wordsBetween(items, blocks ? end : from, (blocks ? end : from) + 8);
  if (!(blocks ? SAID_IN_DOUBT : DOUBT_OF).test(words) && !(blocks && isEitherOr(items, end))) return false;
  const places = (blocks ? items.slice(from, end) : items.slice(from, from + 9)).flatMap((x) =>
    x.place && (blocks || x.place.kind !== 'part') ? x.place.places : [],
  );
  const told = current.flatMap((x) => (x.place && x.place.kind !== 'part' ? x.place.places : []));
  return (
    places.length > 0 &&
    (told.length > 0 ||
      (blocks && current.some((x) => x.fabric !== undefined)) ||
      (blocks && current.some((x) => /^(it|that|them|those|this)$/.test(x.w)))) &&
    !places.some((p) => told.includes(p)) &&
    !looksUndecided(wordsBetween(current)) &&
    current.some((x) => x.action || x.material === 'net' || /^(off|out|needs|wants|gets|leaving)$/.test(x.w))
  );
}

/** What a stretch may begin with that turns to what is open, to goods, a rest or a length, where it begins with no matter. */
const MAY_TURN = new Set(
  "maybe perhaps possibly i still also not n't ca can undecided torn need needing must buy bought ordered measures measured a an short quick little tea coffee lunch dinner half hour back taking having stopping stopped name label".split(
    ' ',
  ),
);

/** Does the talk turn at `from`, without any joint, to what is open, bought, settled or measured, to a rest, or to a label? */
export function turnsWithin(items: Item[], from: number, current: Item[]): boolean {
  // "two yards of plain | red for the binding", "measured the top | it's 71 by 84" lean on the words before them
  // and so does "bought | three yards of ticking"
  const first = items[from]!;
  if (COLOURS.has(first.w) || first.w === 'it' || first.quantity) return false;
  const head = DETERMINER.test(first.w) ? (items[from + 1] ?? first) : first;
  if (!head.topic && !head.part && head.object !== 'label' && !MAY_TURN.has(first.w)) return false;
  const next = opens(items, from, endOfStretch(items, from));
  return (
    next !== undefined &&
    /^(?:open|goods|matter|length|pause|label)$/.test(next) &&
    tells(current).some((x) => TURNS[next].includes(x))
  );
}

function endOfStretch(items: Item[], from: number): number {
  let to = from;
  while (to < items.length && !isStop(items[to]!) && (!JOINT.test(items[to]!.w) || joinsPlaces(items, to)))
    to++;
  return to;
}

/**
 * Puts a stop where, inside a sentence, the talk turns to another kind of thing: from what is undecided, planned or bought to
 * what was done or found, and the other way round ("can't decide on 2-3 and then took the ties out of row five"). What
 * colours the one (a doubt, a price, a plan) is then no longer looked for in the other.
 */
export function withTurns(items: Item[]): Item[] {
  const out: Item[] = [];
  let current: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (isStop(item)) current = [];
    else if (turnsToTheRest(items, k, current)) {
      while (LEADS_TO_REST.test(out.at(-1)?.w ?? '')) out.pop();
      out.push(boundaryBefore(item, ';'));
      current = [item];
    } else if (
      /^(,|and|&|\+|but|so|--)$/.test(item.w) &&
      !item.place &&
      current.length > 1 &&
      turnsToDoubt(items, k, current)
    ) {
      out.push(boundaryBefore(item, ';'));
      current = [];
      continue;
    } else if (
      JOINT.test(item.w) &&
      !item.place &&
      current.length > 1 &&
      !(joinsPlaces(items, k) && isListed(current))
    ) {
      let from = k + 1;
      while (FILLER.test(items[from]?.w ?? '') && from < k + 6) from++;
      const next = opens(items, from, endOfStretch(items, from));
      if (next && tells(current).some((x) => TURNS[next].includes(x))) {
        out.push(boundaryBefore(item, ';'));
        current = [];
        continue;
      }
      current.push(item);
    } else current.push(item);
    out.push(item);
  }
  return out;
}
