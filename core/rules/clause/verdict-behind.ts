import { GIVE_IT_UP, GIVEN_UP_HEADS, VERDICTS } from '../../lexicon/verdicts.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import { boundaryBefore, type Item, wordsAt } from '../item.ts';
import { isCloth } from '../treatments/is-cloth.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';
import { isStop } from './joints.ts';
import { namesDeed, REMOVING } from './names-deed.ts';

type Verdict = { state: 'dropped' | 'planned'; from: number; end: number };

const SAID = new PhraseTrie<'dropped' | 'planned'>();
for (const [state, phrases] of VERDICTS) for (const words of phrases) SAID.add(words, state);
const GIVEN_UP = new PhraseTrie<true>();
for (const words of GIVE_IT_UP) GIVEN_UP.add(words, true);

/** Words without which no verdict is told here. */
const MAY_TELL =
  /^(?:decided|advised|voted|dropped|scrapped|cancelled|canceled|abandoned|ditched|binned|rejected|vetoed|nixed|axed|aborted|canned|discarded|called|ruled|thrown|chucked|tossed|knocked|given|table|cards|list|menu|question|longer|needed|wanted|necessary|required|happening|happen|going|be|surplus|board|through|nothing|no|go|starter|nonstarter|nogo|duck|loss|cause|dead|history|toast|altogether|off|out|hold|ice|burner|shelf|postponed|deferred|delayed|put|pushed|moved|held|shelved|parked|pencilled|penciled|booked|scheduled|bumped|shifted|day|time|wait|keep|job|cancel|scrap|forget|drop|bin|ditch|nix|kill|shelve|abandon|skip|lose|never|mind|not|better|plan|idea|intention|yes|worth|so|thanks|chance|any|nope|nah|tomorrow|tmrw|tonight|next|later|monday|tuesday|wednesday|thursday|friday|saturday|sunday)$/;

/** Words that may stand in what names a deed, beside the deed, its places, cloths and things. */
const LIGHT =
  /^(?:a|an|the|that|this|those|these|my|its|their|both|all|another|other|one|ones|new|fresh|old|second|third|little|small|big|bit|piece|pieces|scrap|layer|strip|square|proper|whole|full|light|quick|silk|cotton|linen|wool|fine|of|on|over|in|for|at|behind|under|underneath|across|round|around|along|from|off|out|up|down|into|onto|to|between|and|&|\+|plus|row|rows|block|blocks|column|columns|idea|thing|lot|side|sides)$/;
const OPENS = /^(?:so|and|but|right|ok|okay|well|then|now|also|plus|oh|um|uh|,|;|:|--|-|\(|&)$/;
/** Nothing is told behind the verdict that would be of something else. */
const ENDS =
  /^(?:|[.,;:!?)(]|--|-|now|then|today|tonight|i|we|it|she|he|the|they|so|and|but|because|cos|since|after|any|anymore|as|for|till|until|too|not|that|there|too|though|instead|by|monday|tuesday|wednesday|thursday|friday|saturday|sunday|tomorrow|next|to|in|on|over|at|from|while|morning|afternoon|evening|night|week|weekend)$/;
const mayStand = (items: Item[], k: number): boolean => {
  const x = items[k]!;
  if (x.quantity?.unit || x.cost || x.duration || x.clock || x.span || x.fail) return false;
  return (
    LIGHT.test(x.w) ||
    namesDeed(items, k) ||
    namesSupport(items, k) ||
    (x.place !== undefined && x.place.kind !== 'pointer') ||
    x.fabric !== undefined ||
    x.material === 'fabric' ||
    (x.object !== undefined && x.action?.form !== 'past') ||
    x.stitch !== undefined
  );
};

/** The first item of the statement that ends before `end` and does nothing but name a deed, its things and its places. */
function startOfDeed(items: Item[], end: number): number | undefined {
  let from = end;
  while (from > 0 && end - from < 14 && mayStand(items, from - 1)) from--;
  while (from < end && /^(?:for|of|about|with|to)$/.test(items[from]!.w)) from++;
  // "3-4: patch cancelled"
  if (items[from - 1]?.w === ':' && items[from - 2]?.place && items[from]) {
    let m = from - 2;
    while (m > 0 && (items[m - 1]!.place || /^(?:and|&|,|row|the)$/.test(items[m - 1]!.w))) m--;
    if (m === 0 || isStop(items[m - 1]!) || items[m - 1]!.w === ',') from = m;
  }
  // "the patch I'd planned for 5-1"
  const once = ONCE_MEANT.exec(wordsBetween(items, 0, from))?.[0]
    .trim()
    .split(' ').length;
  if (once && from > once) {
    from -= once;
    while (from > 0 && mayStand(items, from - 1)) from--;
  }
  const before = items[from - 1];
  if (before && !isStop(before) && !OPENS.test(before.w) && !leadBefore(items, from)) {
    // "darned 2-3 and net dropped": what stands before the "and" is another statement
    const joint = items.findLastIndex((x, m) => m >= from && m < end && /^(?:and|&|\+|plus)$/.test(x.w));
    if (joint < 0) return undefined;
    from = joint + 1;
  }
  while (from < end && /^(?:and|&|\+|plus)$/.test(items[from]!.w)) from++;
  const run = items.slice(from, end).map((_x, m) => from + m);
  return run.some((m) => namesDeed(items, m) || namesSupport(items, m)) ? from : undefined;
}

/** "cloth behind", "the muslin underneath": a support, named by its stuff and where it would lie. */
const namesSupport = (items: Item[], k: number): boolean =>
  /^(?:behind|underneath|at the back)$/.test(items[k + 1]?.w ?? '') &&
  (/^(?:cloth|stuff|something)$/.test(items[k]!.w) ||
    (isCloth(items[k]) && !/^(?:patch|piece)$/.test(items[k]!.w) && items[k]!.material !== 'interfacing'));

const ONCE_MEANT =
  / (?:i|we) (?:'d |had |was |were )?(?:planned|meant|intended|wanted|promised|pencilled in|going to put|thinking of)(?: to put)? $/;
const LEAD =
  / (?:as for|so much for|(?:i|we) (?:'d |had |have |'ve |were |was )?(?:talked|thought|spoken|thinking|toyed|toying) (?:about|of|with)) $/;
/** How many words lead to the deed at `from`: "as for netting 4-1", "we'd talked about tying the border". */
const leadBefore = (items: Item[], from: number): number =>
  LEAD.exec(wordsBetween(items, Math.max(0, from - 5), from))?.[0]
    .trim()
    .split(' ').length ?? 0;

/** A verdict in words that begins at `k`. */
function verdictAt(items: Item[], k: number): Verdict | undefined {
  const ahead: { w: string; end: number }[] = [];
  for (let m = k; m < Math.min(items.length, k + 9); m++)
    for (const w of items[m]!.w.split(' ')) ahead.push({ w, end: m + 1 });
  const hit = SAID.longestAt(ahead, 0);
  if (hit) {
    const { end } = ahead[hit.next - 1]!;
    const next = items[end];
    if (
      ENDS.test(next?.w ?? '') &&
      !/^(?:the floor|floor)/.test(wordsBetween(items, end + 1, end + 3).trim())
    )
      return { state: hit.payloads[0]!, from: k, end };
  }
  // "taking the binding off is out"
  if (OUT.test(wordsBetween(items, k, k + 4))) return { state: 'dropped', from: k, end: k + 2 };
  // "crepeline over 2-3: forget it", "net on 2-3, not any more", "patch 2-3? I don't think so"
  const lead = /^(?:,|:|;|-|--|but|\?)$/.test(items[k]!.w) ? 1 : 0;
  const given = GIVEN_UP.longestAt(ahead, lead);
  if (given && lead) {
    const { end } = ahead[given.next - 1]!;
    if (/^(?:|[.,;!]|--|-|it|i|the|too|because|since|cos|not)$/.test(items[end]?.w ?? ''))
      return { state: 'dropped', from: k, end };
  }
  // "wash no", "net on 2-3: no"
  const no = k + lead;
  if (/^(?:no|nope|nah)$/.test(items[no]?.w ?? '') && /^(?:|[.;!])$/.test(items[no + 1]?.w ?? ''))
    return { state: 'dropped', from: k, end: no + 1 };
  // "darn: yes"
  if (
    lead &&
    /^[:-]$/.test(items[k]!.w) &&
    items[no]?.w === 'yes' &&
    /^(?:|[.,;!])$/.test(items[no + 1]?.w ?? '')
  )
    return { state: 'planned', from: k, end: no + 1 };
  // "net no, patch yes"
  if (
    /^(?:no|yes)$/.test(items[no]?.w ?? '') &&
    items.some((x, m) => m !== no && /^(?:no|yes)$/.test(x.w) && x.w !== items[no]!.w) &&
    /^(?:|[.,;!]|and|but)$/.test(items[no + 1]?.w ?? '')
  )
    return { state: items[no]!.w === 'no' ? 'dropped' : 'planned', from: k, end: no + 1 };
  // "pressing 5-2 was the plan but I've gone off it"
  const once = WAS_THE_PLAN.exec(wordsBetween(items, k, k + 14));
  if (once) return { state: 'dropped', from: k, end: k + itemsIn(items, k, once[0]) };
  return undefined;
}
const OUT = /^ (?:is|'s|are) (?:off|out) (?:$|[,.;]|then |now |after |i |so |because |it |instead )/;
const WAS_THE_PLAN =
  /^ (?:was|had been|used to be) (?:the|my|our) (?:(?:first|original|whole) )?(?:plan|idea|intention|thought)(?: once| at first| originally)?(?: ,)?(?: but)? (?:(?:i|we) (?:'ve |have |'m |am |are |'re )?(?:now )?(?:gone off (?:it|that)|changed (?:my|our) minds?|thought better of it|went off it|decided (?:against it|not to)|not (?:now|any ?more|any longer)|not going to(?: now)?|dropped (?:it|that)|given (?:it )?up(?: on it)?)|not (?:any ?more|any longer|now)|no longer|no) /;

/** Places that are told behind the verdict: "net dropped on 3-4". */
function placesBehind(items: Item[], k: number): number {
  if (!/^(?:on|for|in|over|at|from|behind)$/.test(items[k]?.w ?? '')) return k;
  let m = k + 1;
  while (
    items[m] &&
    (items[m]!.place || items[m]!.fabric || /^(?:the|all|both|row|ones?)$/.test(items[m]!.w)) &&
    items[m]!.place?.kind !== 'pointer'
  )
    m++;
  return items.slice(k, m).some((x) => x.place || x.fabric) ? m : k;
}

/**
 * A deed that is only named, and behind it the word that settles it: "net dropped on 3-4", "wash no", "the new piece isn't going
 * ahead", "pressing 5-2 was the plan but I've gone off it", "dropped: net on 3-4, patch on 2-3". All are put into the one form in which
 * the rules for states know them: what is named, its places, and "is called off" or "is planned".
 */
export function withVerdicts(items: Item[]): Item[] {
  if (!items.some((x) => MAY_TELL.test(x.w.slice(x.w.lastIndexOf(' ') + 1)))) return items;
  const list = withoutRefusal(unwrapped(underHeads(items)));
  const out: Item[] = [];
  let k = 0;
  while (k < list.length) {
    const verdict = k > 0 && (list[k]!.w === '?' || !isStop(list[k]!)) ? verdictAt(list, k) : undefined;
    const from = verdict ? startOfDeed(list, k) : undefined;
    if (!verdict || from === undefined || !settles(list, from, verdict)) {
      out.push(list[k++]!);
      continue;
    }
    let end = placesBehind(list, verdict.end);
    // "isn't needed any more", "called off after all"
    const told = / (?:any ?more|after all|now|then|(?:morning|afternoon|evening|night|week|weekend)) /.exec(
      wordsBetween(list, end, end + 2),
    );
    if (told?.index === 0) end += told[0].trim().split(' ').length;
    // "it shall be the crepeline, and the support is abandoned": a statement of its own
    const joint = out.length - (k - from) - 1;
    if (joint > 0 && /^(?:,|and|but|so|then|--|-|&)$/.test(out[joint]!.w)) {
      out[joint] = boundaryBefore(list[from]!, ';');
    }
    const named = asDeed(out.splice(out.length - (k - from)).filter((_x, m, all) => !isOnceMeant(all, m)));
    out.splice(out.length - leadBefore(list, from));
    const places = list.slice(verdict.end, placesBehind(list, verdict.end));
    // "patch 2-3? don't think so": the verb keeps its place
    const asVerb = named[0]?.action?.form === 'base' && (named[1]?.place || named[1]?.fabric);
    out.push(
      ...(asVerb ? wordsAt(named[0]!, verdict.state === 'dropped' ? 'not going to' : 'will') : []),
      ...named,
      ...places,
      ...(asVerb ? [] : settled(list[k]!, verdict.state)),
    );
    k = end;
    // what follows is told by itself: a reason, or the next deed
    if (list[k] && /^(?:,|and|but|so|--|-|:|&)$/.test(list[k]!.w)) k++;
    if (list[k] && !isStop(list[k]!)) out.push(boundaryBefore(list[k]!, ';'));
  }
  return out;
}

/** "(the patch) I'd planned (for 5-1)". */
const isOnceMeant = (named: Item[], m: number): boolean => {
  const from = named.findIndex((x) => /^(?:i|we)$/.test(x.w));
  const to = named.findIndex((x, k) => k > from && /^(?:for|on|in|over|behind|at)$/.test(x.w));
  return from > 0 && to > from && m >= from && m < to;
};

/** "the washing is on hold": the deed, and neither a thing nor a matter to decide. */
function asDeed(named: Item[]): Item[] {
  const at = named.findIndex((x) => x.action?.form === 'ing' && !x.place);
  if (at < 0 || !named.slice(0, at).every((x) => /^(?:the|that|this|my|all)$/.test(x.w))) return named;
  const deed: Item = {
    ...named[at]!,
    deed: true,
    part: undefined,
    object: undefined,
    stitches: undefined,
    topic: undefined,
    material: undefined,
  };
  return [deed, ...named.slice(at + 1)];
}

/** "is off" behind what is on the quilt already tells that it was taken off: only a deed meant for a place is called off so. */
function settles(items: Item[], from: number, { from: at, end }: Verdict): boolean {
  const named = items.slice(from, at);
  if (named.some((x) => x.w === 'old' || x.finding)) return named.some((x) => REMOVING.test(x.w));
  return (
    !/ (?:is|'s|are) (?:off|out) /.test(wordsBetween(items, at, end)) ||
    named.some(
      (x, m) =>
        x.w === 'for' ||
        namesSupport(named, m) ||
        (x.action?.form === 'ing' && !x.object) ||
        REMOVING.test(x.w),
    )
  );
}

/** Words that hold what is given up between them. */
const WRAPS: [RegExp, RegExp][] = [
  [/^(?:knocked|knocking|knock)$/, /^ on the head $/],
  [/^(?:kicked|put|booted)$/, /^ into touch $/],
  [/^(?:struck|crossed|scratched|taken|took)$/, /^ off (?:my |the )list $/],
  [/^(?:called|calling)$/, /^ off $/],
  [/^(?:ruled|ruling|thrown|threw|chucked|crossed|counted)$/, /^ out $/],
  [/^(?:written|wrote)$/, /^ off $/],
];

/** "I've knocked the washing on the head", "ruled the net out", "called the quilting off". */
function unwrapped(items: Item[]): Item[] {
  for (let k = 0; k < items.length - 2; k++) {
    const wrap = WRAPS.find(([verb]) => verb.test(items[k]!.w));
    if (!wrap) continue;
    let from = k;
    while (/^(?:i|we|'ve|have|had|just|already|finally)$/.test(items[from - 1]?.w ?? '')) from--;
    const first =
      IDEA_OF.exec(wordsBetween(items, k + 1, k + 5))?.[0]
        .trim()
        .split(' ').length ?? 0;
    for (let end = k + 2 + first; end < items.length && end < k + 12 + first; end++) {
      if (!mayStand(items, end - 1)) break;
      const long = [3, 2, 1].find((n) => wrap[1].test(wordsBetween(items, end, end + n)));
      if (!long || !ENDS.test(items[end + long]?.w ?? '')) continue;
      const named = items.slice(k + 1 + first, end);
      if (startOfDeed(named, named.length) !== 0) break;
      return [
        ...items.slice(0, from),
        ...named,
        ...settled(items[end]!, 'dropped'),
        ...unwrapped(items.slice(end + long)),
      ];
    }
  }
  return items;
}
const IDEA_OF = /^ (?:the |that |my )?(?:whole )?(?:idea|plan|notion|thought)(?: of)? /;

/** "no new piece for 1-2 then, too fiddly", "no net on 2-3 in the end": refused by words of its own, where a bare "no zigzag" says how it was done. */
function withoutRefusal(items: Item[]): Item[] {
  const k = items.findIndex(
    (x, m) => x.w === 'no' && (m === 0 || isStop(items[m - 1]!) || OPENS.test(items[m - 1]!.w)),
  );
  if (k < 0) return items;
  let end = k + 1;
  while (items[end] && mayStand(items, end)) end++;
  const named = items.slice(k + 1, end);
  const refused = REFUSED.exec(wordsBetween(items, end, end + 4));
  if (
    !refused ||
    !named.some((x) => x.place && x.place.kind !== 'part') ||
    startOfDeed(named, named.length) !== 0
  )
    return items;
  return [...items.slice(0, k), ...named, ...settled(items[k]!, 'dropped'), ...items.slice(end)];
}
const REFUSED =
  /^ (?:then|after all|in the end|now|either|any ?more)(?: $| [.;!-])|^ (?:(?:then|after all|in the end|now) )?, (?:too|it 'd|that 'd|it would|that would|they 'd|not worth) |^ (?:after all|in the end) ,/;

/** "dropped: net on 3-4, patch on 2-3": each deed of the list with its verdict behind it. */
function underHeads(items: Item[]): Item[] {
  const colon = items.findIndex((x) => x.w === ':');
  if (colon < 1 || colon > 4) return items;
  const start = items.slice(0, colon).findLastIndex(isStop) + 1;
  if (!GIVEN_UP_HEADS.test(wordsBetween(items, start, colon).trim())) return items;
  let end = colon + 1;
  while (items[end] && !isStop(items[end]!)) end++;
  const out = items.slice(0, start);
  let from = colon + 1;
  for (let k = from; k <= end; k++) {
    const ends = k === end || (/^(?:,|and|&)$/.test(items[k]!.w) && !items[k + 1]?.place);
    if (!ends) continue;
    const part = items.slice(from, k);
    if (startOfDeed(part, part.length) === undefined) return items;
    out.push(...part, ...settled(items[k] ?? part.at(-1)!, 'dropped'));
    if (k < end) out.push(boundaryBefore(items[k]!, ';'));
    from = k + 1;
  }
  return [...out, ...items.slice(end)];
}

function settled(at: Item, state: Verdict['state']): Item[] {
  return wordsAt(at, state === 'dropped' ? 'is called off' : 'is planned');
}
