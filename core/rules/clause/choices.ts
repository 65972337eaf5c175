import { BEFORE_WAYS, BEHIND_WAYS, LEADS_TO_WAY, WITHIN_WAY } from '../../lexicon/choosing.ts';
import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import { boundaryBefore, type Item, makeItem, wordsAt } from '../item.ts';
import { looksUndecided } from '../mood.ts';
import { isCloth } from '../treatments/is-cloth.ts';
import { wordsBetween } from '../words-between.ts';
import { isStop } from './joints.ts';
import { namesDeed } from './names-deed.ts';

const OR = /^(?:or|vs|versus|\/)$/;
const OPENS = /^(?:and|but|so|then|,|;|:|--|-|also|oh|well)$/;
/** Behind a deed these words begin the doubt about it, and no other way. */
const DOUBT_BEGINS =
  /^(?:i|we|ca|can|not|no|undecided|tbd|tbc|unsure|dunno|do|does|has|have|that|which|what|still|hmm?|hm|open|jury|haven't|don't|undec)$/;

const PERHAPS = /^(?:maybe|perhaps|possibly)$/;

type Ways = { ways: Item[][]; lead: Item[]; tail: Item[]; from: number; end: number };

/** A place in words of its own; the front and the back only tell on which side. */
const isWhere = (x: Item): boolean =>
  x.place !== undefined &&
  x.place.kind !== 'pointer' &&
  x.place.how === 'said' &&
  x.place.places.length > 0 &&
  !isSide(x) &&
  x.w !== 'back' &&
  !Object.hasOwn(WORK_THINGS, x.w);
const isSide = (x: Item): boolean =>
  x.place?.kind === 'part' && /^(?:top|backing)$/.test(x.place.places[0]!) && !x.object;
const isBlocks = (x: Item): boolean => isWhere(x) && x.place!.kind !== 'part';
/** "for the plum sateen": in the words before the ways a cloth tells where, within them it is what is put in. */
const tellsWhere = (x: Item): boolean => isWhere(x) || x.fabric !== undefined;

/** "spot 4-4": the verb. */
const isSpot = (items: Item[], k: number): boolean =>
  items[k]!.w === 'spot' && (isWhere(items[k + 1] ?? items[k]!) || items[k + 1]?.w === 'the');
const isDeed = (items: Item[], k: number): boolean =>
  items[k]!.w === 'back' ? isBacking(items, k) : isOtherDeed(items, k) || isClothBehind(items, k);

/** "silk behind", "a bit of lawn underneath it": a support, by what it is of. */
const isClothBehind = (items: Item[], k: number): boolean =>
  isCloth(items[k]) &&
  !items[k]!.place &&
  /^(?:behind|underneath|under)$/.test(items[k + 1]?.w ?? '') &&
  !/^(?:piece|patch)$/.test(items[k]!.w);

/** "back it", "back 5-4"; "back and forth" and "on the back" are no deed. */
const isBacking = (items: Item[], k: number): boolean =>
  items[k + 1]?.w === 'it' || (isBlocks(items[k + 1] ?? items[k]!) && items[k - 1]?.w !== 'the');
const isOtherDeed = (items: Item[], k: number): boolean =>
  namesDeed(items, k) ||
  isSpot(items, k) ||
  items[k]!.action?.v === 'leave' ||
  items[k]!.w === 'nothing' ||
  (items[k]!.action?.form === 'base' && items[k]!.action.v === 'resew' && items[k]!.w !== 'stitch') ||
  (items[k]!.w === 'stitch' && /^(?:it|up|shut|closed|the|over)$/.test(items[k + 1]?.w ?? ''));

/** "a lining sewn in behind", "net laid over": how it would be put there. */
const FASTENED = /^(?:sewn|stitched|laid|put|set|let|fused|ironed|tacked|slipped)$/;
const isStuff = (items: Item[], k: number): boolean =>
  items[k] !== undefined &&
  (items[k]!.material !== undefined || Object.hasOwn(WORK_THINGS, items[k]!.w) || items[k]!.w === 'piece');
/** "a silk support", "velvet patch"; "the velvet patch" is one that is there. */
const isOfCloth = (items: Item[], k: number): boolean =>
  items[k]!.fabric !== undefined &&
  !/^(?:the|all|both|every|that|those)$/.test(items[k - 1]?.w ?? '') &&
  /^(?:patch|support|lining|backing|overlay|piece|square|backing cloth)$/.test(items[k + 1]?.w ?? '');
/** "flannel patch", "big patch". */
const isOfSome = ([first, next]: Item[]): boolean =>
  /^(?:patch|support|lining|overlay)$/.test(next?.w ?? '') &&
  !/^(?:an?|the|that|this|some|another|its|my|new|to|with|in|or|not|it)$/.test(first!.w) &&
  !first!.action &&
  !first!.place;
const PLAIN_POINTER = /^place\.(?:it|them|that-one)$/;

/** "patch 2-2 and 3-3": a list of blocks, where behind it nothing is told of the last of them. */
const joinsBlocks = (items: Item[], k: number): boolean => {
  if (!/^(?:and|&|\+)$/.test(items[k]!.w) || !isBlocks(items[k - 1] ?? items[k]!)) return false;
  let at = k + 1;
  while (/^(?:the|both|all)$/.test(items[at]?.w ?? '')) at++;
  const next = items[at + 1];
  return (
    isBlocks(items[at] ?? items[k]!) &&
    (next === undefined ||
      isStop(next) ||
      /^(?:,|or|and|&|\+|\?|-|--)$/.test(next.w) ||
      DOUBT_BEGINS.test(next.w))
  );
};

const withinWay = (items: Item[], k: number): boolean => {
  const x = items[k]!;
  if (x.quantity?.unit || x.cost || x.duration || x.clock || x.span || x.action?.form === 'past')
    return false;
  return (
    isDeed(items, k) ||
    LEADS_TO_WAY.test(x.w) ||
    WITHIN_WAY.test(x.w) ||
    isWhere(x) ||
    joinsBlocks(items, k) ||
    isSide(x) ||
    PLAIN_POINTER.test(x.place?.rule ?? '') ||
    /^(?:the (?:whole )?lot|the whole thing)$/.test(x.w) ||
    (FASTENED.test(x.w) && k > 0 && isStuff(items, k - 1)) ||
    x.material !== undefined ||
    isOfCloth(items, k) ||
    x.object !== undefined ||
    x.seam === true ||
    (x.finding !== undefined && /^(?:the|that)$/.test(items[k - 1]?.w ?? ''))
  );
};

/** The ways told from `from` on, one of which is to be chosen; a single one where a doubt about its place stands before or behind it. */
function waysAt(items: Item[], from: number): Ways | undefined {
  let k = from;
  while (items[k] && !isDeed(items, k) && (tellsWhere(items[k]!) || leadsOn(items, from, k))) {
    // "2-2: a silk support or net": where it is has been said, so the cloth is what the support is of
    if (isOfCloth(items, k) && items.slice(from, k).some(tellsWhere)) break;
    k++;
  }
  const lead = items.slice(from, k);
  // "2-5 is torn, not sure whether to darn 5-5": found, and no "torn between"
  if (lead.some((x, m) => x.finding && !/^(?:between|on|over|about)$/.test(items[from + m + 1]?.w ?? '')))
    return undefined;
  const between = lead.some((x) => x.w === 'between');
  const ways: Item[][] = [];
  let joined = false;
  for (;;) {
    // "(a) patch (b) replace"
    while (/^[()abc]$/.test(items[k]?.w ?? '') && /^[()]$/.test(items[k]!.w + (items[k + 1]?.w ?? ''))) k++;
    const start = k;
    let deeds = 0;
    while (
      items[k] &&
      withinWay(items, k) &&
      !(deeds && (DOUBT_BEGINS.test(items[k]!.w) || goesOn(items, k)))
    ) {
      if (isDeed(items, k)) deeds++;
      k++;
    }
    if (!deeds) return undefined;
    ways.push(items.slice(start, k));
    const next = items[k]?.w === ',' ? k + 1 : k;
    if (OR.test(items[next]?.w ?? '') || (between && ways.length === 1 && items[next]?.w === 'and')) {
      joined = true;
      k = next + 1;
      // "to net or not to net 2-3", "patch it or not"
      if (items[k]?.w !== 'not' && items[k]?.w !== 'leave it') continue;
      if (items[k]!.w !== 'not') continue;
      k++;
      if (items[k]?.w === 'to') k++;
      if (items[k] && isDeed(items, k)) {
        k++;
        const rest = k;
        while (items[k] && isWhere(items[k]!)) k++;
        ways[0]!.push(...items.slice(rest, k));
      }
      break;
    }
    // "maybe net, maybe a darn"
    const perhaps = [...lead, ...ways[0]!].some((x) => PERHAPS.test(x.w));
    if (perhaps && next > k && PERHAPS.test(items[next]?.w ?? '') && startsWay(items, next)) {
      joined = true;
      k = next;
      continue;
    }
    // "patch, or darn, or leave", "darn it, net it or leave it"
    if (next > k && items.slice(next, next + 12).some((x) => OR.test(x.w)) && startsWay(items, next)) {
      k = next;
      continue;
    }
    break;
  }
  // "or just vacuum and leave it": one way of two deeds
  if (/^(?:and|then|&)$/.test(items[k]?.w ?? '') && startsWay(items, k + 1)) return undefined;
  if (!joined && !isPerhaps(lead, ways[0]!)) return undefined;
  // "can't decide on the binding, not sure whether to darn 5-5": what leads to the ways is another statement
  if (lead.some(tellsWhere) && ways.some((way) => way.some(isBlocks))) return undefined;
  const end = endOfDoubt(items, k);
  // "or just spot clean those two": more is told of the last way than is known here
  if (end === k && items[k] && !isStop(items[k]!) && !OPENS.test(items[k]!.w)) return undefined;
  return { ways, lead, tail: items.slice(k, end), from, end };
}

/** "(or leave it) then put crepeline over 6-4": the next statement. */
const goesOn = (items: Item[], k: number): boolean =>
  /^(?:then|also)$/.test(items[k]!.w) && items[k + 1] !== undefined && items[k + 1]!.token.kind !== 'mark';

/** Words that lead to the ways; the end of a sentence too, where all of it was the doubt about a place. */
const leadsOn = (items: Item[], from: number, k: number): boolean =>
  BEFORE_WAYS.test(items[k]!.w) ||
  (items[k]!.w === '.' && looksUndecided(wordsBetween(items, from, k)) && items.slice(from, k).some(isWhere));

/** "jury's out on 6-1, crepeline perhaps", "2-3 a darn maybe": one way, and the doubt behind it. */
const isPerhaps = (lead: Item[], way: Item[]): boolean =>
  lead.some(isWhere) &&
  PERHAPS.test(way.at(-1)!.w) &&
  !way.some((x) => x.place || x.action?.v === 'leave') &&
  way.length < 6 &&
  (lead.every((x) => isWhere(x) || /^(?::|,|-|and|&|the)$/.test(x.w)) || looksUndecided(wordsBetween(lead)));

const startsWay = (items: Item[], k: number): boolean => {
  let m = k;
  while (LEADS_TO_WAY.test(items[m]?.w ?? '') && m < k + 4) m++;
  return items[m] !== undefined && isDeed(items, m);
};

/** Where the words of doubt that follow the ways end: with the sentence, or at the joint before other words. */
export function endOfDoubt(items: Item[], k: number): number {
  let m = k;
  let last = k;
  while (m < items.length && m < k + 16) {
    const x = items[m]!;
    if (isStop(x)) {
      // "? tbd", ". can't make up my mind"
      last = m;
      let n = m + 1;
      while (
        items[n] &&
        !isStop(items[n]!) &&
        !ofOther(items[n]!) &&
        (isWhere(items[n]!) || BEHIND_WAYS.test(items[n]!.w)) &&
        n < m + 9
      )
        n++;
      return (n === items.length || isStop(items[n]!)) &&
        (looksUndecided(wordsBetween(items, m + 1, n)) || SETTLES_NOT.test(wordsBetween(items, m + 1, n)))
        ? n
        : last;
    }
    if (ofOther(x) || (!tellsWhere(x) && !BEHIND_WAYS.test(x.w) && x.w !== ':')) {
      // only what was told up to the last joint is of the doubt
      return last;
    }
    if (/^(?:,|and|but|-|--)$/.test(x.w)) last = m;
    m++;
  }
  return m;
}
/** "(leave it.) I can't decide on the binding": another matter. */
const ofOther = (x: Item): boolean =>
  x.topic !== undefined || x.place?.kind === 'part' || x.finding !== undefined;
const SETTLES_NOT = / (?:tbd|tbc|hmm?|no idea|we 'll see|sleep on it|beats me|question|mean) /;

/** "the whole thing", "it all": a wash is of the quilt, wherever the other way would be. */
const ofWhole = (way: Item[]): boolean =>
  way.some((x) => x.action?.v === 'wash') && !way.some((x) => isBlocks(x) || x.place?.kind === 'part');

/** The places that the words name, in the order said and with what joins them. */
function placesIn(words: Item[]): Item[] {
  const first = words.findIndex(tellsWhere);
  const last = words.findLastIndex(tellsWhere);
  const told = first < 0 ? [] : words.slice(first, last + 1);
  // "that white twill one": one of its blocks, which another rule finds
  if (last >= 0 && /^(?:one|ones|that)$/.test(words[last + 1]?.w ?? '') && words[last]!.fabric) return [];
  // "bottom border, square it up": a part has its article
  if (told.length === 1 && told[0]!.place?.kind === 'part') return [...wordsAt(told[0]!, 'the'), ...told];
  return told.every((x) => tellsWhere(x) || /^(?:and|&|,|\+|the|row|block)$/.test(x.w)) ? told : [];
}

/** One way with its place, as a statement of its own: "maybe net over 2-3". */
function statement(given: Item[], common: Item[]): Item[] {
  let way = given.slice(given.findIndex((x, k) => !LEADS_TO_WAY.test(x.w) || isDeed(given, k)));
  const at = way[0]!;
  const maybe = wordsAt(at, 'maybe');
  if (PERHAPS.test(way.at(-1)!.w)) way = way.slice(0, -1);
  // "velvet patch": a patch of it, and not the velvet patched
  if (isOfCloth(way, 0) || isOfSome(way)) way = [...wordsAt(at, 'a'), ...way];
  const head = way.findIndex((_x, k) => isDeed(way, k));
  const deed = way[head]!;
  const own = way.some((x) => isWhere(x) && !x.object);
  const where = own ? placesIn(way.slice(head).filter((x) => !x.fabric)) : common;
  // "tulle over the face": what it lies over is told by its place
  const side = way.findIndex((x, k) => k > 0 && /^(?:over|on|across)$/.test(x.w) && isSide(way[k + 2] ?? x));
  if (side > 0 && !own && common.length) way = [...way.slice(0, side + 1), ...way.slice(side + 3)];
  if (deed.action?.v === 'leave' || deed.w === 'nothing')
    return [...maybe, ...wordsAt(at, 'leave'), ...(where.length ? where : wordsAt(at, 'it'))];
  if (isSpot(way, head))
    way = [
      ...way.slice(0, head),
      { ...deed, w: 'clean', action: { v: 'clean', form: 'base' }, deed: true },
      ...way.slice(head + 1),
    ];
  if (deed.w === 'stitch' || deed.w === 'sew')
    way = [
      ...way.slice(0, head),
      { ...deed, deed: true, stitch: undefined },
      ...way.slice(head + 1).filter((x) => !/^(?:shut|closed|up|it)$/.test(x.w)),
    ];
  if (ofWhole(way)) {
    const wash = way.find((x) => x.action?.v === 'wash')!;
    return [
      ...maybe,
      { ...wash, w: 'wash', action: { v: 'wash', form: 'base' }, deed: true, topic: undefined },
      ...wordsAt(at, 'it'),
    ];
  }
  if (own || !common.length) return [...maybe, ...way];
  const it = way.findIndex((x) => /^(?:it|them|that one|this one)$/.test(x.w) || x.place?.kind === 'pointer');
  if (it > 0) {
    const particle = way.slice(it + 1).filter((x) => /^(?:up|off|out|down|over)$/.test(x.w));
    const rest = way.slice(it + 1).filter((x) => !particle.includes(x));
    return deed.action?.v === 'square-up'
      ? [...maybe, ...way.slice(0, it), ...common, ...rest, ...particle]
      : [...maybe, ...way.slice(0, it), ...particle, ...common, ...rest];
  }
  way = way.filter((x, m) => !(FASTENED.test(x.w) && isStuff(way, m - 1)));
  if (way.some((x) => isWhere(x))) return [...maybe, ...way];
  // "replace with the shawl cloth": the place stands behind the verb
  const verb = way.findIndex((_x, k) => isDeed(way, k));
  if (
    /^(?:with|w|in|by|again|instead|properly)$/.test(way[verb + 1]?.w ?? '') &&
    deed.action?.form === 'base'
  )
    return [...maybe, ...way.slice(0, verb + 1), ...common, ...way.slice(verb + 1)];
  return [...maybe, ...way, ...prepositionFor(way, at), ...common];
}

/** What stands between a way and its place. */
function prepositionFor(way: Item[], at: Item): Item[] {
  const last = way.at(-1)!;
  if (/^(?:over|behind|on|under|underneath|in|into|off|across|for|at)$/.test(last.w)) return [];
  if (last.w === 'top' || last.w === 'out') return wordsAt(at, 'of');
  if (last.finding || last.seam) return wordsAt(at, 'in');
  const deed = way.find((_x, k) => isDeed(way, k))!;
  if (deed.action && deed.action.form !== 'past' && way.length === 1 && !deed.material) return [];
  if (deed.material === 'net') return wordsAt(at, 'over');
  if (/^(?:support|lining|backing cloth|underlay)$/.test(deed.w) || deed.material === 'interfacing')
    return wordsAt(at, 'behind');
  if (/^(?:piece|block|square|darn|darns)$/.test(deed.w)) return wordsAt(at, 'in');
  return /^(?:a|an|the|new|some|another)$/.test(way[0]!.w) || /^patch(?:es)?$/.test(deed.w)
    ? wordsAt(at, 'on')
    : [];
}

/** "tie or quilt", "wash or dry clean": a matter of how to finish, and no treatment of a place. */
const ofFinishing = (ways: Item[][]): boolean =>
  ways.every((way) => way.some((x) => /^(?:tie|quilt|bind|layer|baste|wash)$/.test(x.action?.v ?? '')));

/** "cut it out and piece new in or patch": both are of one way. */
const CUT_OUT = / cut (?:\S+ ){0,4}out (?:and|&|then|\+) (?:then )?$/;

const MAY_CHOOSE = /^(?:or|vs|versus|\/|between|maybe|perhaps|possibly)$/;

/**
 * Ways told to choose from, where they are and the doubt about them, however put: "1-1: restitch or net over? tbd", "torn between a new
 * piece and a patch for 3-1", "wash the whole thing or just spot 4-4?", "patch, or darn, or leave alone: 3-3 has me stumped". Each becomes a
 * statement of its own, "maybe net over 1-1", which the rules for single deeds read.
 */
export function withChoices(given: Item[]): Item[] {
  if (!given.some((x) => MAY_CHOOSE.test(x.w))) return given;
  const items = asOneDeed(given);
  const out: Item[] = [];
  let chosen = false;
  let k = 0;
  while (k < items.length) {
    const opens =
      k === 0 ||
      isStop(items[k - 1]!) ||
      (OPENS.test(items[k - 1]!.w) && !CUT_OUT.test(wordsBetween(items, k - 7, k)));
    const told = opens ? waysAt(items, k) : undefined;
    const lines = told && !ofFinishing(told.ways) ? statements(told, out) : undefined;
    if (!told || !lines) {
      out.push(items[k++]!);
      continue;
    }
    chosen = true;
    while (out.length && OPENS.test(out.at(-1)!.w) && !isStop(out.at(-1)!)) out.pop();
    if (out.length && !isStop(out.at(-1)!)) out.push(boundaryBefore(items[k]!, ';'));
    lines.forEach((line, n) => {
      if (n) out.push(boundaryBefore(line[0]!, ';'));
      out.push(...line);
    });
    k = told.end;
    while (items[k] && (OPENS.test(items[k]!.w) || items[k]!.w === '?')) k++;
    if (items[k] && !isStop(items[k]!)) out.push(boundaryBefore(items[k]!, ';'));
  }
  return chosen ? out : given;
}

const CUTS = /^(?:cut|take|cutting|taking)$/;
const PUTS_NEW =
  /^ (?:and|&|\+|then|and then|,) (?:replace|replacing|(?:put|piece|let)(?: a| some)? (?:new|fresh)(?: one| piece| bit| cloth)?(?: in)?|(?:put|let|piece) in a (?:new|fresh) (?:one|piece|bit)) $/;

/** "net, or cut out and replace": two words for one deed, which is said with one. */
function asOneDeed(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) => CUTS.test(x.w) && items.slice(k + 1, k + 4).some((y) => y.w === 'out'),
  );
  if (at < 0) return items;
  const out = items.findIndex((x, k) => k > at && x.w === 'out');
  if (items.slice(at + 1, out).some((x) => !/^(?:it|them|the|that|piece|bit|block)$/.test(x.w))) return items;
  let end = 0;
  for (let k = out + 2; k < Math.min(items.length, out + 8); k++)
    if (PUTS_NEW.test(wordsBetween(items, out + 1, k + 1))) end = k + 1;
  // "… and put in a new piece of the green": of what is told too
  if (!end || /^(?:of|with|from|in|using|cut)$/.test(items[end]?.w ?? '')) return items;
  const { i, token } = items[at]!;
  const deed: Item = {
    ...makeItem(i, items[end - 1]!.j, 'replace', token),
    action: { v: 'replace', form: 'base' },
  };
  return [...items.slice(0, at), deed, ...asOneDeed(items.slice(end))];
}

/** What "it" is of which the ways are told: the place that the sentence before has told. */
function toldBefore(out: Item[], ways: Item[][], tail: Item[]): Item[] {
  const at = ways[0]![0]!;
  const place = out.findLast((x) => x.place?.places.length);
  // "2-2 frayed, 3-1 torn. Replace or patch them?": several are meant
  if (ways.flat().some((x) => /^(?:them|those|these)$/.test(x.w))) return [];
  if (!place || !isBlocks(place) || !looksUndecided(wordsBetween(tail))) return [];
  return wordsAt(at, place.place!.places.length > 1 ? 'them' : 'it');
}

function statements({ ways, lead, tail }: Ways, out: Item[]): Item[][] | undefined {
  const around = [placesIn(lead), placesIn(tail)].find((x) => x.length) ?? [];
  const last = ways.findLast((way) => way.some(isBlocks));
  const named = around.length ? around : last ? placesIn(last.filter((x) => !x.fabric)) : [];
  const common = named.length ? named : toldBefore(out, ways, tail);
  // "whip on a bit of green": a patch by the way it is put on, which is another rule's
  if (ways.some((way) => / on (?:a|some) /.test(wordsBetween(way)))) return undefined;
  if (!common.length && !ways.every((way) => way.some(isWhere))) return undefined;
  return ways.map((way) => statement(way, common));
}
