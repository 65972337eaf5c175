import { isBareThing } from '../conditions/bare-thing.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { putsStuff } from './begins-another-way.ts';
import { isGiven } from './given-form.ts';
import { goesOnTo } from './goes-on-to.ts';
import { governorOf } from './governor.ts';
import { sameElsewhere } from './is-boundary.ts';
import { BE, isPredicate, PREPOSITIONS } from './is-predicate.ts';
import { FINITE, hasPredicate, hasWork, isQuantifier, newSubject, tellsWorst } from './new-subject.ts';
import { PARTICLES, REMOVE_VERBS, removalAt } from './removal-at.ts';
import { isToldOfDeed } from './told-behind.ts';

const PUT = /^(put|laid|slipped|tucked|slid)$/;

const HELPS = /^(to|have|has|'ve|been|not|n't|just|still|really|be)$/;

const FOUND_SO = /^(a|an|the|small|little|big|large|bad|nasty|long|two|three|another|more|and|also)$/;
/** "hole 3-1", "two small tears 2-4 & 2-5": nothing but what is found and where. */
const isFoundAt = (current: Item[]): boolean => {
  const place = current.findIndex((x) => x.place);
  return (
    place > 0 &&
    current.slice(0, place).some((x) => x.finding) &&
    current.slice(0, place).every((x) => x.finding || FOUND_SO.test(x.w)) &&
    current.slice(place).every((x) => x.place || /^(and|&|,|\+|\/|too|also)$/.test(x.w))
  );
};

/** Said of damage: it was not seen before. */
const OVERLOOKED = /^ (?:'d|had|have|'ve)(?: not| n't| never)? (?:missed|overlooked|seen|noticed|spotted) /;

/**
 * In running speech: does the item at `k` begin, or complete, a second statement in the current clause? `says` tells of each
 * item of the note whether it says that something is so or is done.
 */
export function startsStatement(items: Item[], k: number, current: Item[], says: boolean[]): boolean {
  const item = items[k]!;
  const before = current.at(-1)!;
  // "… down as we speak forget the net"
  if (/^(forget|scrap|skip|ditch|nix|bin)$/.test(item.w))
    return (
      says[k]! &&
      // "going with the darn forget the patch"
      (hasPredicate(current) || current.slice(1).some((x) => x.action || x.material === 'net'))
    );
  if (/^(i|we)$/.test(item.w) && goesOnTo(items, k)) return true;
  // "closed that seam by hand | same again on 1-1"
  if (
    item.w === 'same' &&
    items[k + 1]?.w === 'again' &&
    current.some((x) => x.action && x.action.form !== 'base') &&
    !/^(?:the|and|did|done|then|that|it|just|exactly|,)$/.test(before.w) &&
    sameElsewhere(items, k)
  )
    return true;
  // "a hole I'd missed in 4-2", "the stain I hadn't seen"
  if (before.finding && item.w === 'i' && OVERLOOKED.test(wordsBetween(items, k + 1, k + 5))) return false;
  // "(2-1 frayed,) ditto 2-5, 3-3 has a hole": what it holds for
  if ((item.place || item.seam) && current.length === 1 && /^(ditto|likewise)$/.test(before.w)) return false;
  // looked at where they stand in the note, so that "took the old patch off" knows its "off"
  const start = k - current.length;
  const last = says.lastIndexOf(true, k - 1) - start;
  if (last < 0) {
    // "next same again | next sound"
    if (item.place?.kind === 'blocks' && /^(same|same again|ditto|likewise|again)$/.test(before.w))
      return current[0]!.place !== undefined;
    if (
      item.w === 'i' &&
      (hasWork(current) || current.some((x) => x.cost)) &&
      !['and', 'but', 'so'].includes(before.w)
    )
      return items[k + 1]?.w !== 'was';
    return false;
  }
  if (
    (item.w === 'i' || item.w === 'there' || item.w === 'she' || item.w === 'he') &&
    (BE.has(items[k + 1]?.w ?? '') ||
      items[k + 1]?.action ||
      Object.hasOwn(REMOVE_VERBS, items[k + 1]?.w ?? '') ||
      [
        "'ll",
        "'ve",
        "'m",
        "'d",
        'started',
        'stopped',
        'need',
        'think',
        'could',
        'might',
        'want',
        'wants',
        'would',
        'did',
        'do',
        'used',
        'put',
        'bought',
        'quit',
        'finished',
        'worked',
        'says',
        'said',
      ].includes(items[k + 1]?.w ?? ''))
  ) {
    return (
      ![
        'where',
        'which',
        'that',
        'what',
        'as',
        'when',
        'if',
        'until',
        'till',
        'before',
        'since',
        'how',
        'while',
      ].includes(before.w) && !(item.w === 'there' && !BE.has(items[k + 1]?.w ?? ''))
    );
  }
  // "started it right after lunch"
  const then =
    /^(right|just)$/.test(items[k + 1]?.w ?? '') && /^(after|before|at|when|on)$/.test(items[k + 2]?.w ?? '');
  if (item.w === 'it' && !then && BE.has(items[k + 1]?.w ?? '') && items[k + 1]?.w !== 'all')
    return (
      !PREPOSITIONS.has(before.w) &&
      !/^(off|out|where|which|what|as|when|if|before|since|how|while|let|way|than|like|just|exactly|that|because|wants?|needs?|call|calling|make|leave|leaving)$/.test(
        before.w,
      ) &&
      !before.action &&
      !removalAt(items, k - 1)
    );
  // "under the first one it's fine | under the second one it's shattered"
  if (
    /^(under|underneath|beneath|behind|in|on|at)$/.test(item.w) &&
    items[k + 1]?.place?.rule === 'place.one-of-them' &&
    /^(it|there|that)$/.test(items[k + 2]?.w ?? '') &&
    !/^(and|but|,|is|'s)$/.test(before.w)
  )
    return true;
  // "the twill is sound top left but …"
  if (item.place?.rule === 'place.cloth-end' && before.finding && !BE.has(items[k + 1]?.w ?? ''))
    return false;
  if (
    item.place?.kind === 'blocks' &&
    !PREPOSITIONS.has(before.w.split(' ').at(-1)!) &&
    !/^(\/|-|the|and|,|&|all|every|that|of|or|seam|block|is|'s|where|which|what|when|how|if|because|than|as)$/.test(
      before.w,
    ) &&
    !before.place &&
    newSubject(items, k)
  ) {
    // "finished 5-2 and row two needs pressing": what was finished; "finished 2-4 too" goes on with the deed before
    if (
      /^(?:finished|completed|tackled|managed|cracked|sorted|did|done)$/.test(before.w) &&
      !/^(?:too|as well|also)$/.test(items[k + 1]?.w ?? '') &&
      (current.length === 1 || /^(?:i|we|'ve|have|and|just|also)$/.test(current.at(-2)!.w))
    )
      return false;
    if ((before.action || current.at(-2)?.action) && isToldOfDeed(items, k, k - current.length)) return false;
    const verb = items[k + 1]?.w ?? '';
    // "closed 2-4's seam"
    if (before.action && verb === "'s" && items[k + 2]?.seam) return false;
    // "leaving 2-4 just as it is": an adverb is no verb of its own
    return !(before.action && verb !== "'s") || (FINITE.has(verb) && !/^(just|only|too|same)$/.test(verb));
  }
  // "darned 1-2 | put some net over 1-3"
  if (
    PUT.test(item.w) &&
    !/^(to|will|'ll|and|or|then|i|we|be|was|were|is|'s|has|have|had|got|'ve|not|gonna|,)$/.test(before.w) &&
    putsStuff(items, k)
  )
    return true;
  // "3-3 darned 3-4 patched": what is done stands behind each of them
  if (
    item.place?.kind === 'blocks' &&
    before.action?.form === 'past' &&
    says[k - 1] &&
    current.at(-2)?.place?.kind === 'blocks' &&
    current.slice(0, -2).every((x) => x.place || /^(and|&|,|then|so|the|also)$/.test(x.w)) &&
    (items[k + 1]?.action?.form === 'past' || items[k + 1]?.w === 'left')
  )
    return true;
  if (item.fabric && !item.place && clothBegins(items, k, before)) return true;
  // "the red dot is thin all over worst in 4-4"
  if (tellsWorst(items, k) && current[last]!.finding && !BE.has(before.w)) return true;
  if (!says[k]) return false;
  const lastItem = current[last]!;
  // "forget about netting 2-2", "haven't made up my mind about lining it": what governs the deed says nothing of its own
  const governed = item.action && item.action.form !== 'past' ? governorOf(items, k)?.from : undefined;
  if (
    governed !== undefined &&
    items.slice(start + last + 1, Math.max(start + last + 1, governed)).every((x) => HELPS.test(x.w))
  )
    return false;
  // "replacing 3-4 is finished", "netting row two is out": said of the deed
  if (isToldOfDeed(items, k, start)) return false;
  // "the backing is good no stains no splits or holes": what is not found belongs to what was said before
  const none = /^(no|without)$/.test(current[last - 1]?.w ?? '');
  if (item.finding && /^(no|without)$/.test(before.w) && (lastItem.finding || none)) return false;
  if (item.finding && /^(or|nor)$/.test(before.w) && none) return false;
  // "took the tacking out", "have come off the bottom row": the particle belongs to the verb before
  if (PARTICLES.has(item.w) && Object.hasOwn(REMOVE_VERBS, lastItem.w)) return false;
  const between = current.slice(last + 1);
  // "gave up patching 2-5"
  if (/^(gave|given|giving) up$/.test(lastItem.w) && item.action?.form === 'ing' && between.length < 3)
    return false;
  // "washing is out", "washing's finished"
  if (
    (PARTICLES.has(item.w) || /^(?:finished|completed?)$/.test(item.w)) &&
    lastItem.action &&
    between.every((x) => BE.has(x.w))
  )
    return false;
  // "darned the hole", "pressed the puckers out", "closed the split seam": the finding is what the work is done to.
  const doing =
    lastItem.action ||
    removalAt(current, last) ||
    // "ran a zigzag over the tear", "ran a straight stitch on the machine down the seam"
    (/^(ran|run)$/.test(lastItem.w) && current.slice(last + 1, last + 5).some((x) => x.stitch)) ||
    // "slipped a scrap of lawn under the hole"
    (/^(slipped|slid|eased|popped)$/.test(lastItem.w) && current.slice(last + 1).some((x) => x.material)) ||
    /^(live|living|leave|leaving|keep|keeping)$/.test(lastItem.w);
  // "tear darned, 20 min": what was worked on
  const seamTold = between.some((x, m) => x.seam && /^('s|is|are|was|were)$/.test(between[m + 1]?.w ?? ''));
  if (lastItem.finding && !lastItem.action && !seamTold && isBareThing(items, start + last)) return false;
  // "over the hole", "on the worn spot", "across a tear": what the work is done to stands after a preposition
  if (item.finding && !item.action && doing && ledByPreposition(between)) return false;
  // "the old patch on 6-2 could come off"
  if (
    lastItem.finding === 'old-repair' &&
    removalAt(items, k) &&
    between.some((x) => /^(can|could|will|'ll|may|might|should|must|to|needs|wants)$/.test(x.w))
  )
    return false;
  // "too thin to darn"
  if (item.action?.form === 'base' && before.w === 'to' && lastItem.finding && current[last - 1]?.w === 'too')
    return false;
  // "the tear in 3-1 needs closing": the damage is what is spoken of
  if (
    /^(needs?|wants?)$/.test(item.w) &&
    (lastItem.finding || lastItem.fail) &&
    !lastItem.action &&
    between.every(
      (x) => x.place || PREPOSITIONS.has(x.w) || /^(the|and|there|one|really|all|still|both)$/.test(x.w),
    ) &&
    !current.some((x) => BE.has(x.w) && !/^(all|still|both|a|little|bit|right|well|whole|badly)$/.test(x.w))
  )
    return false;
  // "pressed the seams open"
  if (/^(open|flat)$/.test(item.w) && lastItem.action?.v === 'press') return false;
  // "the stain on 3-2 can stay"
  if (
    /^(stay|stays|left|remain|remains|leave)$/.test(item.w) &&
    lastItem.finding &&
    !lastItem.action &&
    between.some((x) => /^(can|could|will|'ll|may|might|should|must|to|be|gets|is|just)$/.test(x.w)) &&
    current.slice(Math.max(0, last - 3), last).some((x) => /^(the|that|this|its|those)$/.test(x.w))
  )
    return false;
  if (
    item.finding &&
    !item.action &&
    doing &&
    between.every(
      (x) => !BE.has(x.w) || ['a', 'little', 'right', 'bit', 'all', 'both', 'only'].includes(x.w),
    ) &&
    between.length <= 4 &&
    // "darned both holes"
    !between.some((x) => x.place && !x.part && x.place.rule !== 'place.both')
  )
    return false;
  // "blanket stitched all the way round", "by machine straight stitched" after a treatment says how.
  if (
    item.stitch &&
    item.action &&
    doing &&
    lastItem.action &&
    // "tear's darned seam's whipstitched"
    !seamTold &&
    !between.some((x) => x.w === 'and' || x.w === ',')
  )
    return false;
  // "get a support stitched in behind them"
  if (item.action?.form === 'past' && lastItem.action && between.length <= 1 && isGiven(current, last))
    return false;
  // "whipped closed", "zigzagged shut": one act
  if (item.action && lastItem.action && lastItem.stitch && between.length === 0) return false;
  // "both stains in row two spotted": what was done to them
  if (item.w === 'spotted' && lastItem.finding === 'stain') return false;
  // "the backing's good no stains"
  if (item.finding && !item.action && /^(no|not|without|hardly)$/.test(before.w)) return false;
  // findings side by side: "splitting into strips", "stained and torn" is cut elsewhere
  if (item.finding && lastItem.finding && between.length === 0) return false;
  // "the loss in 3-2 is patched": the damage is what the work was done to
  if (
    (item.action?.form === 'past' || removalAt(items, k)?.form === 'past') &&
    lastItem.finding &&
    !lastItem.action &&
    // "the hole is patched", "I have the rip closed now"
    (between.some((x) => /^(is|are|was|were|been|be|gets|got|'s|'re)$/.test(x.w)) ||
      between.every((x) => /^(all|now|finally)$/.test(x.w))) &&
    current.slice(Math.max(0, last - 3), last).some((x) => /^(the|that|this|its|those)$/.test(x.w))
  )
    return false;
  if (item.fail && (lastItem.fail || lastItem.finding) && between.length <= 1) return false;
  if (item.fail && !item.finding && !between.some((x) => x.seam || x.stitches || x.part)) return false;
  if (lastItem.fail && !lastItem.finding && item.finding && between.every((x) => DEGREE.has(x.w)))
    return false;
  // "black spots of mould"
  if (item.finding && lastItem.finding && between.length === 1 && between[0]!.w === 'of') return false;
  if (item.action && lastItem.w === 'left' && between.length <= 1) return false;
  // "cut out and pieced in", "needs taking out", "wants re-sewing", "started tying"
  if (
    /^(need|needs|want|wants|gets|started|starting|stopped|finished|began|decided|used|stays|stay|left|going|getting|quit)$/.test(
      lastItem.w,
    ) &&
    between.length <= 4
  )
    return false;
  // "row five wants a lining of fine lawn sewn in behind", "gets a piece of old brown muslin put behind it"
  if (
    item.action?.form === 'past' &&
    /^(needs?|wants?|gets?|getting)$/.test(lastItem.w) &&
    /^(a|an|some|the|another|new)$/.test(between[0]?.w ?? '') &&
    between.length <= 9 &&
    between.some((x) => x.material || x.fabric || x.object === 'piece') &&
    !between.some(
      (x) => x.token.kind === 'mark' || /^(and|but|so|i|it|there)$/.test(x.w) || x.place?.kind === 'blocks',
    )
  )
    return false;
  // "photograph the back before washing"
  if (item.action?.form === 'ing' && (PREPOSITIONS.has(before.w) || before.w === 'before')) return false;
  if (item.action?.form === 'base' && /^(to|of|or)$/.test(before.w) && lastItem.action)
    return before.w !== 'or';
  if (
    removalAt(items, k)?.form === 'base' &&
    item.w !== 'remove' &&
    ['have', 'has', 'get', 'gets'].includes(item.w)
  )
    return false;
  return true;
}

/** "… on every block of it | tan twill in row three's got a hole", "… all raveled | the gray flannel though that's held up": a cloth with a verb of its own. */
function clothBegins(items: Item[], k: number, before: Item): boolean {
  if (
    PREPOSITIONS.has(before.w) ||
    /^(and|,|&|or|a|an|some|of|with|new|piece|bit|is|'s|are|was|in|that|which|where|how|than|as|same)$/.test(
      before.w,
    )
  )
    return false;
  if (before.w === 'the' && PREPOSITIONS.has(items[k - 2]?.w ?? '')) return false;
  let m = k + 1;
  while (
    m < k + 6 &&
    (/^(one|ones|block|blocks|bit|though|that|in|at|on|there|both|all|the|,)$/.test(items[m]?.w ?? '') ||
      items[m]?.place)
  )
    m++;
  return /^('s|is|are|has|have|'ve|looks|needs|wants|was|were|came|came out|came through|held|held up|got)$/.test(
    items[m]?.w ?? '',
  );
}

/** Do these words end in a preposition and what may stand between it and its noun ("over the", "across a nasty long")? */
function ledByPreposition(between: Item[]): boolean {
  for (let m = between.length - 1; m >= 0 && m >= between.length - 4; m--) {
    const x = between[m]!;
    if (/^(over|on|across|onto|around|round|behind|under|at|along|through|into|in|of)$/.test(x.w))
      return m > 0;
    // "darn it is for that tear"
    if (x.w === 'for' && /^(that|the|this|those)$/.test(between[m + 1]?.w ?? '')) return m > 0;
    if (x.token.kind === 'mark' || x.place || x.action || (BE.has(x.w) && x.w !== 'a' && x.w !== 'little'))
      return false;
  }
  return false;
}

const DEGREE = new Set(
  'ever so very quite rather really all a bit little right too pretty awfully terribly dreadfully clean clear completely'.split(
    ' ',
  ),
);

/** Where in the current clause the new statement's own words begin: at its subject, if that is not led by a preposition. */
export function statementStart(current: Item[], items: Item[], k: number): number {
  const first = items[k]!;
  if (/^(forget|scrap|skip|ditch|nix|bin)$/.test(first.w) || tellsWorst(items, k)) return current.length;
  // "old patches on 3-4 and 3-5 too | pulled both of those"
  if (/^(pulled|under|underneath|beneath|behind|in|on|at)$/.test(first.w)) return current.length;
  const thing = first.w === 'i' ? thingFirst(current, items, k) : undefined;
  if (thing !== undefined) return thing;
  if (first.w === 'i' && toldFirst(current, items, k)) {
    let at = current.findLastIndex((x) => x.place || x.fabric);
    while (/^(the|and|,|all|of|both|old)$/.test(current[at - 1]?.w ?? '')) at--;
    return at;
  }
  if (
    first.w === 'i' ||
    first.w === 'we' ||
    first.w === 'there' ||
    first.w === 'it' ||
    first.w === 'she' ||
    first.w === 'he'
  )
    return current.length;
  if (deedWithItsThing(current, items, k)) return current.length;
  // "hole 3-1 | patched with muslin"
  if (first.action?.form === 'past' && isFoundAt(current)) return current.length;
  // "backing's good | no holes"
  if (first.finding && current.at(-1)!.w === 'no' && current.length > 1) return current.length - 1;
  let at = current.length;
  let sawPlace = false;
  for (let m = current.length - 1; m >= 0; m--) {
    const item = current[m]!;
    if (isPredicate(current, m) && !(BE.has(item.w) && item.w !== 'gone')) break;
    const light =
      BE.has(item.w) ||
      SIZES.test(item.w) ||
      [
        'the',
        'that',
        'this',
        'those',
        'these',
        'one',
        'ones',
        'i',
        'it',
        'and',
        ',',
        '&',
        'of',
        'side',
        'every',
        'each',
        'all',
        'other',
        'old',
        'new',
        'little',
        'for',
        'to',
        'an',
        "'m",
        "'d",
      ].includes(item.w);
    // "patched it with a piece of the denim zigzagged round": what was put in is no subject
    if (
      item.w === 'of' &&
      !BE.has(current[m - 1]?.w ?? '') &&
      /^(piece|scrap|bit|strip|length|patch|square|remnant)s?$/.test(
        (current[m - 1]?.w ?? '').split(' ').at(-1)!,
      )
    )
      return current.length;
    // "the binding's off the bottom too | the ties come out next"
    if (item.w === 'too' && m > 0 && sawPlace && /^(the|a|an)$/.test(current[m + 1]!.w)) return m + 1;
    const subject =
      item.place || item.fabric || item.seam || item.stitches || item.part || item.object || item.material;
    if (subject) {
      sawPlace = true;
      at = m;
      continue;
    }
    if (light) {
      if (item.w === 'and' || item.w === ',' || item.w === '&') {
        if (!sawPlace) at = m;
        continue;
      }
      if (item.w === 'of' && !isQuantifier(current[m - 1])) {
        // "out of that whole row | the batting's clumped": the place stays with what was said before
        return sawPlace ? afterPlaces(current, m + 1) : m;
      }
      // "most of the stain is out": how much of it belongs to the subject
      if (item.w === 'of' && /^(most|half|some|part|much|all|none)$/.test(current[m - 1]!.w)) {
        at = --m;
        continue;
      }
      if (!PREPOSITIONS.has(item.w) || item.w === 'to' || item.w === 'of' || item.w === 'for') {
        at = m;
        continue;
      }
    }
    if (PREPOSITIONS.has(item.w)) {
      // the place after a preposition belongs to what was said before
      if (sawPlace) return afterPlaces(current, m + 1);
      at = m;
      continue;
    }
    break;
  }
  // "patched 3-1 3-2 is torn" is not spoken; a place right after a verb stays with the verb.
  if (at < current.length && at > 0) {
    const prior = current[at - 1]!;
    const hasAux = current.slice(at).some((x) => BE.has(x.w));
    // "stitched in behind, herringbone | 2-3 darned": a stitch behind a deed waits for no place
    const how = prior.stitch !== undefined && current.slice(0, at - 1).some((x) => x.action?.form === 'past');
    if (prior.action && !how && !hasAux && current.slice(at).some((x) => x.place))
      return afterPlaces(current, at);
  }
  return at;
}

/** "4-5 wee hole": what is found is small or bad, and the place before that is where. */
const SIZES = /^(?:wee|small|tiny|big|large|huge|long|short|nasty|bad|slight|faint|nasty|deep|round|odd)$/;

/** "photographed the back and the front | vacuumed it all over": what is done next has a thing of its own behind it. */
function deedWithItsThing(current: Item[], items: Item[], k: number): boolean {
  if (items[k]!.action?.form !== 'past' || !/^(it|them|all|every|the)$/.test(items[k + 1]?.w ?? ''))
    return false;
  const last = current.findLastIndex((x) => x.action?.form === 'past');
  return (
    last >= 0 &&
    !current[last]!.place &&
    current.slice(last + 1).every((x) => x.place?.kind === 'part' || /^(the|and|&|its|,)$/.test(x.w))
  );
}

/** "pressed | the rest of the row I'm leaving", "…, and | that one I've netted": what the verb behind "I" is done to stands before it. */
function toldFirst(current: Item[], items: Item[], k: number): boolean {
  if (current.length < 2) return false;
  // "the holes in 2-2 and 4-1 I patched": all that stands before is what was worked on
  if (current.some((x) => x.finding || x.seam) && current.every(namesDamage)) return false;
  const last = current.at(-1)!;
  const ones = /^(ones|blocks|squares)$/.test(last.w) && !last.place ? current.at(-2)! : last;
  const { place } = ones;
  // "all of the calico blocks I'm going to back"
  if (ones.fabric && !place) {
    let m = current.indexOf(ones) - 1;
    if (current[m]?.w === 'the') m--;
    if (current[m]?.w === 'of' && current[m - 1]?.w === 'all') m -= 2;
    if (m >= 0 && !/^(and|,|but|so|then|all|both)$/.test(current[m]!.w)) return false;
  } else {
    if (ones !== last || !place?.places.length || /^place\.(it|them)$/.test(place.rule)) return false;
    // "it's stained all over | old batting I'm leaving"
    const allOver = current.at(-2)!.w === 'old' && current.at(-4)?.w === 'all';
    if (PREPOSITIONS.has(current.at(-2)!.w) || (PREPOSITIONS.has(current.at(-3)?.w ?? '') && !allOver))
      return false;
  }
  return endsInDeed(items, k);
}

const namesDamage = (x: Item): boolean =>
  Boolean(x.place || x.finding || x.seam) ||
  /^(and|&|,|\+|the|both|all|those|these|that|in|on|at|of|two|three|other|small|big|little)$/.test(x.w);

/** Is it, behind "I", a verb of work with nothing more to be done to? */
function endsInDeed(items: Item[], k: number): boolean {
  if (putsOverIt(items, k)) return true;
  const verb = items.findIndex((x, m) => m > k && m < k + 6 && x.action !== undefined);
  if (verb < 0 || items.slice(k + 1, verb).some((x) => x.token.kind === 'mark' || x.place)) return false;
  const after = items[verb + 1];
  return (
    !after ||
    after.token.kind === 'mark' ||
    /^(and|but|so|be|alone|as|for|until|till|tomorrow|too|well|out|now|today|tonight|already|with|by|then|right|where|just|there|in|on|exactly|well|up|down|shut|closed)$/.test(
      after.w,
    )
  );
}

/** "(the velvet ones I'm) putting tulle over", "giving a patch", "putting a bit of lawn behind". */
function putsOverIt(items: Item[], k: number): boolean {
  const verb = items.findIndex(
    (x, m) => m > k && m < k + 6 && /^(putting|put|laying|laid|lay|slipping|giving|gave|give)$/.test(x.w),
  );
  if (verb < 0) return false;
  const stuff = items.findIndex(
    (x, m) =>
      m > verb &&
      m < verb + 6 &&
      (x.material !== undefined || x.fabric !== undefined || /^(patch|darn|support)$/.test(x.w)),
  );
  if (stuff < 0 || items.slice(k + 1, stuff).some((x) => x.token.kind === 'mark' || x.place)) return false;
  const after = /^(gave|give|giving)$/.test(items[verb]!.w)
    ? stuff + 1
    : /^(over|behind|on|under|underneath)$/.test(items[stuff + 1]?.w ?? '')
      ? stuff + 2
      : -1;
  if (after < 0) return false;
  const next = items[after];
  return (
    !next ||
    next.token.kind === 'mark' ||
    /^(and|but|so|then|tomorrow|today|tonight|too|now|already|by|as|just|later)$/.test(next.w)
  );
}

/** "…, and | those rust spots I'm just going to leave", "but | the stain I'm leaving be": damage pointed at, with what is done to it behind. */
function thingFirst(current: Item[], items: Item[], k: number): number | undefined {
  // "and | the torn ones I'm darning"
  const ones = /^(ones?|blocks?|bits?)$/.test(current.at(-1)?.w ?? '') ? 1 : 0;
  const last = current.at(-1 - ones);
  if (!last || !(last.finding || last.seam) || last.action?.form === 'past' || !endsInDeed(items, k))
    return undefined;
  let at = current.length - 2 - ones;
  while (at > 0 && at > current.length - 5 && !/^(the|that|those|this|these)\b/.test(current[at]!.w)) at--;
  if (at < 1 || !/^(the|that|those|this|these)\b/.test(current[at]!.w)) return undefined;
  return /^(and|but|,|so|then)$/.test(current[at - 1]!.w) ? at - 1 : undefined;
}

/** The index after the places, joined by "and" or commas, that stand from `from` on. A new subject with a part or seam ends them. */
function afterPlaces(current: Item[], from: number): number {
  let after = from;
  while (after < current.length) {
    const item = current[after]!;
    // "watermark on the left border | column three mildewed": blocks behind a part are no list with it
    if (
      item.place &&
      item.place.kind !== 'part' &&
      current[after - 1]?.place?.kind === 'part' &&
      after > from
    )
      break;
    if (item.place && item.place.kind !== 'part') after++;
    // "quilted along the sashing | pulled the pins out"
    else if (item.place && (after === from || (after === from + 1 && current[from]!.w === 'the'))) after++;
    else if (item.w === 'the' && after === from) after++;
    else if (
      /^(and|,|&|the)$/.test(item.w) &&
      current
        .slice(after + 1, after + 3)
        .some((x, n) => x.place && x.place.kind !== 'part' && (n === 0 || current[after + 1]!.w === 'the'))
    )
      after++;
    else break;
  }
  return after;
}
