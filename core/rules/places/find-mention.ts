import type { Action, Finding, RemovedObject, Stitch, TreatmentState } from '../../../shared/vocabulary.ts';
import { COUNT_WORDS } from '../../text/number-words.ts';
import { isBareThing } from '../conditions/bare-thing.ts';
import type { Item } from '../item.ts';
import { isPlainWord } from '../plain-word.ts';
import { splitBlock, unique } from './grid.ts';

/** Something told before, with the places it was told of: what "the tear", "the worn ones", "that old patch" can mean. */
export type Mention = {
  places: string[];
  finding?: Finding;
  action?: Action;
  object?: RemovedObject;
  state?: TreatmentState;
  stitch?: Stitch;
  /** The words each of its places was told in, where they tell the one from the other. */
  tellings?: Telling[];
};

/** Damage as it was told at its places: with what it was made ("ink"), and in which words ("long", "fist"). */
export type Telling = {
  finding: Finding;
  places: string[];
  made: string[];
  words: string[];
  /** What of a block it is that has it: "the duck's wing", "a petal". */
  thing?: string;
};

const DETERMINERS = new Set(['the', 'that', 'those', 'these', 'this', 'both', 'all', 'my', 'our', 'same']);
/** "those three", "both": words that point to places by themselves, and are but determiners before "torn blocks". */
const POINTERS = new Set(['place.those', 'place.both', 'place.all-of-them']);
const HEADS = new Set(
  'one ones block blocks square squares piece pieces lot bit bits spot spots side edge corner row column'.split(
    ' ',
  ),
);
const PLURALS = new Set('ones blocks squares pieces lot bits spots those these'.split(' '));
/** A head that is itself a kind of place: "the frayed side", "the lumpy row". */
const HEAD_PLACES: Record<string, RegExp> = {
  side: /^(edge|border)-/,
  edge: /^edge-/,
  corner: /^corner-/,
};
/** Damage told as a thing: "the tear", not "the torn". */
const THINGS =
  /\b(tear|rip|rent|slit|slash|hole|gap|split|stain|mark|spot|blotch|ring|seam|patch|mend|repair|darn|darning|bleed|run|mould|mold|mildew|pucker|ruck|fray|lump|loss|break|damage|burst)s?$/;
/** "the ink stays", "that rust won't shift": a stain told by what made it. */
const STUFF = /^(inky?|rust|blood|wine|coffee|jam|wax|grease|oil|scorch|paint|gravy|chocolate|tar|soot)$/;
const BEHIND_STUFF =
  /^(|[.,;:!?)]|stays?|will|wo|wont|'ll|'s|is|has|came|come|comes|can|ca|needs?|wants?|gets?|on|in|off|out|alone|as|where|there|and|but|i)$/;
const MARKS = /^(mark|marks|blotch|blotches|spot|spots|splash|ring)$/;

const THING_TOLD: Record<string, Described> = Object.fromEntries(
  (
    [
      [{ finding: 'tear' }, 'tear rip rent slit'],
      [{ finding: 'hole' }, 'hole'],
      [{ finding: 'stain' }, 'stain mark spot blotch'],
      [{ finding: 'dye-bleed' }, 'bleed'],
      [{ finding: 'missing' }, 'gap'],
      [{ patch: true }, 'patch'],
      [{ action: 'darn' }, 'darn'],
    ] as [Described, string][]
  ).flatMap(([is, nouns]) => nouns.split(' ').map((noun) => [noun, is])),
);

/** "(the one to the right of) that tear": the block that such damage was last told of, where it was one. */
export function blockOfThing(noun: string, mentions: Mention[]): string | undefined {
  const is = Object.hasOwn(THING_TOLD, noun) ? THING_TOLD[noun] : undefined;
  const places = is && placesOf({ is, plural: false }, mentions);
  return places?.length === 1 && splitBlock(places[0]!) ? places[0] : undefined;
}

const COUNTS = new Map(
  COUNT_WORDS.slice(1, 11).flatMap((word, n): [string, number][] => [
    [word, n + 1],
    [String(n + 1), n + 1],
  ]),
);

type Described = {
  finding?: Finding;
  action?: Action;
  seam?: boolean;
  patch?: boolean;
  gap?: boolean;
  old?: boolean;
  darn?: boolean;
};

/**
 * A thing of the conversation named again by what it is: "sewed up the tear", "the worn ones want net", "those three
 * stained blocks", "the patched one". Gives the places it was told of, newest telling first; nothing where no telling
 * fits, or where "the tear" is followed by words of another place.
 */
export function findMention(items: Item[], mentions: Mention[]): string[] | undefined {
  // "tear darned, 20 min": as if "the" had been said
  if (
    items
      .slice(0, 3)
      .some((x, k) => isBareThing(items, k) || (x.finding && /^ones?$/.test(items[k + 1]?.w ?? '')))
  ) {
    const phrase = describedAt(items, -1);
    const places = phrase && placesOf(phrase, mentions);
    if (places) return places;
  }
  for (let k = 0; k < items.length; k++) {
    if (!DETERMINERS.has(items[k]!.w) && !POINTERS.has(items[k]!.place?.rule ?? '')) continue;
    // "another of those rusty marks" is none of them
    if (items[k - 1]?.w === 'of' && /^(another|one|some|any|none)$/.test(items[k - 2]?.w ?? '')) continue;
    const phrase = describedAt(items, k);
    if (!phrase) {
      const made = madeOf(items, k, mentions) ?? ofThing(items, k, mentions);
      if (made) return made;
      continue;
    }
    const pick = pickBefore(items, k);
    const places = pick ? picked(pick, phrase, mentions) : placesOf(phrase, mentions);
    if (places) return places;
  }
  return undefined;
}

/** "patched the burn", "the wax came off": damage named by what made it, where it was told so once. */
function madeOf(items: Item[], k: number, mentions: Mention[]): string[] | undefined {
  const item = items[k + 1];
  if (!item || !isPlainWord(item) || !/^(the|that|this)$/.test(items[k]!.w)) return undefined;
  // "slip stitched the three-cornered one"
  const one = items.findIndex((x, m) => m > k + 1 && m < k + 6 && x.w === 'one');
  const like = one < 0 ? [] : items.slice(k + 1, one).filter((x) => x.w !== '-');
  if (one > 0 && like.every((x) => isPlainWord(x) || x.quantity) && !like.some((x) => NO_STUFF.has(x.w))) {
    const so = mentions
      .flatMap((m) => m.tellings ?? [])
      .filter((t) => like.every((x) => t.words.includes(x.w)));
    return so.length === 1 ? so[0]!.places : undefined;
  }
  if (NO_STUFF.has(item.w) || !BEHIND_STUFF.test(items[k + 2]?.w ?? '')) return undefined;
  const told = mentions
    .flatMap((m) => m.tellings ?? [])
    .filter((t) => THING_FINDINGS.has(t.finding) && t.made.includes(item.w));
  return told.length === 1 ? told[0]!.places : undefined;
}
/** "that wing is patched": a shape of the patchwork, by its name, that was found damaged. */
function ofThing(items: Item[], k: number, mentions: Mention[]): string[] | undefined {
  if (!/^(?:the|that|this)$/.test(items[k]!.w)) return undefined;
  const at = items[k + 1]?.w === 'little' || items[k + 1]?.w === 'poor' ? k + 2 : k + 1;
  const item = items[at];
  const behind = items[at + 1];
  if (!item || !isPlainWord(item) || NO_STUFF.has(item.w) || behind?.w === 'of') return undefined;
  // "the red floss": said of another thing
  if (behind && (isPlainWord(behind) || behind.material || behind.fabric || behind.object)) return undefined;
  return mentions.flatMap((m) => m.tellings ?? []).findLast((t) => t.thing === item.w)?.places;
}

/** Damage that is a thing, and no state of the cloth. */
const THING_FINDINGS = new Set<Finding>(['stain', 'hole', 'tear', 'old-repair', 'missing']);
/** Said of damage, and nothing that it could be called by. */
const NO_STUFF = new Set(
  'other old new big little small long short nasty bad good whole first last same left right top bottom upper lower one two three owner quilt water sun light iron needle pin'.split(
    ' ',
  ),
);

type Phrase = {
  is: Described;
  count?: number;
  plural: boolean;
  other?: boolean;
  head?: RegExp;
  /** What else is said of it: "long", "coffee". */
  like?: string[];
};

type Pick = { end: string; count: number };
/** "the first two of the moth-eaten ones", "the top one of the torn ones": which of them. */
function pickBefore(items: Item[], k: number): Pick | undefined {
  if (items[k - 1]?.w !== 'of') return undefined;
  let m = k - 2;
  const number = items[m]?.quantity;
  const count = (!number?.unit && number?.value) || 1;
  if (number?.value) m--;
  const end = items[m]?.w ?? '';
  return /^(first|last|top|upper|bottom|lower|left|right)$/.test(end) ? { end, count } : undefined;
}

/** Of the places that were told so, in the order told or as they lie, those at one end. */
function picked({ end, count }: Pick, phrase: Phrase, mentions: Mention[]): string[] | undefined {
  const told = mentions.filter((m) => m.places.length && fits(phrase.is, m));
  const last = told.at(-1)?.places ?? [];
  const all = last.length > count ? last : unique(told.flatMap((m) => m.places));
  if (all.length <= count) return undefined;
  if (/^(first|last)$/.test(end)) return end === 'first' ? all.slice(0, count) : all.slice(-count);
  const lies = (p: string): number => {
    const at = splitBlock(p);
    return /^(left|right)$/.test(end) ? (at?.block ?? 0) : (at?.row ?? 0);
  };
  if (!all.every((p) => splitBlock(p))) return undefined;
  const sorted = [...all].sort((a, b) => lies(a) - lies(b));
  return /^(top|upper|left)$/.test(end) ? sorted.slice(0, count) : sorted.slice(-count);
}

/** Determiner, number, what it is like, and a head: "those three stained blocks", "the tear". */
function describedAt(items: Item[], from: number): Phrase | undefined {
  const determiner = items[from]?.w ?? 'the';
  let plural = /^(those|these|both|all)\b/.test(determiner);
  let count = determiner === 'both' ? 2 : COUNTS.get(determiner.split(' ').at(-1)!);
  const is: Described = {};
  const like: string[] = [];
  let other = false;
  for (let k = from + 1; k < Math.min(items.length, from + 6); k++) {
    const item = items[k]!;
    const { w } = item;
    if (w === 'of' && pickBefore(items, k + 1)) return undefined;
    if (/^(other|others|remaining)$/.test(w)) other = true;
    if (isPlainWord(item)) like.push(w);
    if (
      DETERMINERS.has(w) ||
      /^(old|other|new|big|little|small|long|nasty|worst|same|whole|first|poor|of)$/.test(w)
    )
      continue;
    // "the torn one": the head, and no number
    const number = w !== 'one' || !described(is);
    if (number && item.quantity && item.quantity.unit === undefined && item.quantity.value) {
      // "three-cornered" counts no tears
      if (items[k + 1]?.w === '-') continue;
      count = item.quantity.value;
      plural ||= count > 1;
      continue;
    }
    if (HEADS.has(w.split(' ')[0]!)) {
      if (!described(is)) return undefined;
      const head = HEAD_PLACES[w];
      return {
        is,
        ...(count ? { count } : {}),
        ...(other ? { other } : {}),
        ...(head ? { head } : {}),
        like,
        plural: plural || PLURALS.has(w.split(' ')[0]!),
      };
    }
    // "those five with the moth"
    if (w === 'with' && !described(is) && (count || plural)) {
      const damage = items.slice(k + 1, k + 4).find((x) => x.finding);
      return damage?.finding
        ? { is: { finding: damage.finding }, ...(count ? { count } : {}), plural: true }
        : undefined;
    }
    if (item.place || item.fabric) return undefined;
    if (STUFF.test(w) && /^(the|that|this)$/.test(determiner) && BEHIND_STUFF.test(items[k + 1]?.w ?? ''))
      return { is: { finding: 'stain' }, plural: false, like: [w] };
    if (MARKS.test(w)) is.finding = 'stain';
    else if (/^gaps?$/.test(w)) is.gap = true;
    else if (item.seam || item.finding === 'split-seam') is.seam = true;
    else if (/^darns?$/.test(w) && !/\bold|earlier|previous\b/.test(items[k - 1]?.w ?? '')) is.darn = true;
    else if (item.object === 'old-patch' || /^(patch|patches)$/.test(w)) {
      is.patch = true;
      // "took off the old repair", right after another hole was patched
      if (/\b(old|earlier|previous|existing)\b/.test(`${items[k - 1]?.w} ${w}`)) is.old = true;
    } else if (item.finding) is.finding = item.finding;
    else if (item.fail && /^(open|split|burst|gaping|loose)$/.test(w)) is.finding = 'split-seam';
    else if (item.action?.form === 'past') is.action = item.action.v;
    else if (isPlainWord(item)) continue;
    else return undefined;
    if (THINGS.test(w) && !HEADS.has((items[k + 1]?.w ?? '').split(' ')[0]!))
      return {
        is,
        ...(count ? { count } : {}),
        ...(other ? { other } : {}),
        like,
        plural: plural || /[^s]s$/.test(w),
      };
  }
  return undefined;
}

const described = (is: Described): boolean =>
  is.finding !== undefined ||
  is.action !== undefined ||
  is.seam === true ||
  is.patch === true ||
  is.gap === true ||
  is.darn === true;

/** The seam last found open that no one has closed since. */
const openSeam = (mentions: Mention[]): Mention | undefined =>
  mentions.findLast(
    (m, k) =>
      m.finding === 'split-seam' &&
      !mentions.slice(k).some(
        (n) =>
          n.action === 'resew' &&
          n.places.some((p) => m.places.includes(p)) &&
          // sewing up a tear in the one block closes no seam between the two
          (n.places.length > 1 || m.places.length === 1),
      ),
  );

const fits = (is: Described, m: Mention): boolean =>
  is.seam
    ? m.finding === 'split-seam' || m.action === 'resew'
    : is.gap
      ? m.finding === 'missing' || m.finding === 'hole'
      : is.patch
        ? m.finding === 'old-repair' || m.object === 'old-patch' || (m.action === 'patch' && !is.old)
        : is.darn
          ? m.action === 'darn' || m.finding === 'old-repair'
          : is.finding !== undefined
            ? m.finding === is.finding
            : m.action === is.action;

function placesOf(phrase: Phrase, mentions: Mention[]): string[] | undefined {
  const { is, count, plural, head } = phrase;
  if (phrase.other) return othersOf(phrase, mentions);
  const told = mentions
    .filter((m) => fits(is, m))
    .map((m) => (head ? { ...m, places: m.places.filter((p) => head.test(p)) } : m))
    .filter((m) => m.places.length)
    .reverse();
  const alike = likeTold(phrase, mentions);
  if (alike && !count) return head ? alike.filter((p) => head.test(p)) : alike;
  const newest = (is.seam ? openSeam(mentions) : undefined) ?? told[0];
  if (!newest) return undefined;
  if (!count) {
    if (!plural || newest.places.length > 1 || is.seam) return newest.places;
    return unique(told.flatMap((m) => m.places));
  }
  if (is.seam) return seamsOf(told, count);
  const gathered: string[] = [];
  for (const m of told) {
    gathered.push(...m.places.filter((p) => !gathered.includes(p)));
    if (gathered.length >= count) break;
  }
  return gathered.length === count ? gathered : undefined;
}

/** "both seams", "those three seams": each joins two blocks, and three blocks in a line have two of them between them. */
function seamsOf(told: Mention[], count: number): string[] | undefined {
  let seams = 0;
  const gathered: string[] = [];
  for (const { places } of told) {
    if (places.every((p) => gathered.includes(p))) continue;
    gathered.unshift(...places.filter((p) => !gathered.includes(p)));
    seams += Math.ceil(places.length / 2);
    if (seams >= count) break;
  }
  return seams === count ? gathered : undefined;
}

/** "the long rip", "the ink": of several told so, the places where most of these words were said. */
function likeTold({ is, like, plural }: Phrase, mentions: Mention[]): string[] | undefined {
  if (!like?.length) return undefined;
  const told = mentions.filter((m) => fits(is, m)).flatMap((m) => m.tellings ?? []);
  const shared = (t: Telling): number => like.filter((w) => t.words.includes(w)).length;
  const most = Math.max(0, ...told.map(shared));
  if (most === 0) return undefined;
  const best = told.filter((t) => shared(t) === most);
  if (best.length === told.length) return undefined;
  return plural ? unique(best.flatMap((t) => t.places)) : best.at(-1)!.places;
}

/** "the other frayed one": of those told so, what nothing was done to as yet, or what was not spoken of last. */
function othersOf({ is, count, plural }: Phrase, mentions: Mention[]): string[] | undefined {
  const told = unique(mentions.filter((m) => fits(is, m)).flatMap((m) => m.places));
  // "the other one" is a block, where there are any
  const all = told.some((p) => splitBlock(p)) ? told.filter((p) => splitBlock(p)) : told;
  const worked = unique(mentions.filter((m) => m.action).flatMap((m) => m.places));
  const last = mentions.at(-1)?.places ?? [];
  const rest = [worked, last]
    .map((gone) => all.filter((p) => !gone.includes(p)))
    .find((left) => left.length && left.length < all.length);
  return rest && (count ? rest.length === count : plural || rest.length === 1) ? rest : undefined;
}
