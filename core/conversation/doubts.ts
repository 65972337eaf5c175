import type { Action, MaterialUnit, Task } from '../../shared/vocabulary.ts';
import { COLOURS, PATTERN_WORDS } from '../lexicon/colours.ts';
import { UNIT_WORDS } from '../lexicon/units.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { sinceOutside } from '../rules/places/carried-places.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { isTreatment } from '../rules/treatments/is-treatment.ts';
import { wordsBetween } from '../rules/words-between.ts';
import { POINTERS } from './mend/items.ts';
import { put } from './standing.ts';

/** What "one of the …" may stand before when a block is meant, and not a seam or a tie in it. */
const BLOCKISH =
  /^(blocks?|squares?|patches|pieces|ones|them|these|those|diamonds|stars|hexagons|fans|panels|rounds|bits|corners|others|prints|checks|stripes|dots|spots)$/;

const mendsUnplaced = ({ drafts }: ReaderState, draft: Draft): boolean =>
  draft.entry.kind === 'treatment' &&
  /^(?:darn|patch|resew|overlay|stabilize|replace)$/.test(draft.entry.action ?? '') &&
  drafts.some(
    (d) =>
      d.entry.kind === 'condition' &&
      d.clause === draft.clause &&
      d.placed === 'none' &&
      !d.entry.places?.length &&
      !d.outside,
  );

/**
 * Takes back places that the words do not bear out: a block outside the grid, one of several that is not told apart, a cloth
 * that the quilt does not name. The entry then stands without a place, and the place is asked for.
 */
export function doubtPlaces(state: ReaderState): void {
  placeSewnSeam(state);
  // the blocks of which an unknown one was just told of
  let among: string | undefined;
  for (const draft of state.drafts) {
    const { entry } = draft;
    if (entry.kind !== 'condition' && entry.kind !== 'treatment') continue;
    const items = state.clauses[draft.clause]?.items;
    if (!items || entry.places === undefined) continue;
    const named = items.filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
    if (items.some((x) => x.place?.outside && (!x.place.places.length || x.place.kind === 'blocks'))) {
      // beside blocks of the grid only the one outside is doubtful
      if (!named.some((x) => x.place!.kind !== 'part')) take(draft);
      draft.outside = true;
      continue;
    }
    // "closed the 2-2/2-3 seam, then darned a hole": mended where the hole is, wherever that may be
    if (
      entry.kind === 'treatment' &&
      draft.placed === 'carried' &&
      !named.length &&
      mendsUnplaced(state, draft)
    ) {
      take(draft);
      continue;
    }
    const words = items.map((x) => x.w).join(' ');
    const whole = items.find((x) => x.fabric?.names.length === 1)?.fabric?.names[0];
    if (
      !entry.places.length &&
      entry.kind === 'condition' &&
      whole !== undefined &&
      /\b(?:every|each)(?: single)? (?:last )?one of\b|\b(?:every|each) one\b/.test(words)
    ) {
      put(
        draft,
        'places',
        [...(state.fabrics.blocks[whole] ?? [])],
        'place.every-of-cloth',
        items.filter((x) => x.fabric),
      );
      draft.placed = 'said';
      continue;
    }
    const cloth = unnamedCloth(headed(state, draft, items));
    if (cloth && !items.some((x) => x.fabric) && !named.length) {
      take(draft);
      draft.cloth = cloth.words;
      if (entry.kind === 'condition') put(draft, 'fabric', cloth.words, 'fabric.unnamed', cloth.items);
      continue;
    }
    const told =
      entry.kind === 'condition'
        ? (clothTold(items) ?? oneOfCloths(items) ?? otherCloth(items))
        : draft.placed === 'none' && !PUT_IN.test(` ${words} `)
          ? clothTold(items)
          : undefined;
    const everywhere = told !== undefined && WHEREVER_IT_IS.test(wordsOfSentence(state, draft));
    if (
      told &&
      (!named.length || (everywhere && named.every((x) => x.place!.rule === 'place.every-block'))) &&
      (told.several || everywhere || draft.placed === 'none') &&
      !items.some((x) => x.fabric && !told.several)
    ) {
      take(draft);
      draft.cloth = told.words;
      put(draft, 'fabric', told.words, 'fabric.unnamed', told.items);
      continue;
    }
    if (
      entry.kind === 'treatment' &&
      entry.places.length &&
      !named.length &&
      (moreBlocks(words) || countsOnly(items, entry.places.length))
    )
      take(draft);
    else if (
      entry.places.length > 1 &&
      // "in row six most of them were broken": of the stitches
      !(entry.kind === 'condition' && entry.finding === 'broken-stitching') &&
      oneOfSeveral(items, named, entry.places.length)
    ) {
      among = entry.places.join();
      take(draft);
    }
    // "one of the blocks in row two is thin, netted it": that one, whichever it is
    else if (among && draft.origins['places']?.rule === 'place.carried' && entry.places.join() === among)
      take(draft);
    // "one of the sage prints has net over it", after a block that was told of before
    else if (
      entry.kind === 'treatment' &&
      draft.placed === 'carried' &&
      !named.length &&
      items.some((x, k) => x.fabric && SOME_OF.test(wordsBetween(items, k - 5, k)))
    ) {
      among = entry.places.join();
      take(draft);
    } else if (!entry.places.length) trustPointing(state, draft, items);
  }
}

/** "…, every block of it", "wherever it occurs": of a cloth, and of no block that was spoken of. */
const WHEREVER_IT_IS =
  / (?:every (?:single |last )?(?:block|bit|one|piece|square|scrap|patch)|wherever|everywhere|throughout|(?:each|all) of them|each (?:block|one|piece)) /;

const wordsOfSentence = (state: ReaderState, { sentence }: Draft): string =>
  ` ${state.clauses
    .filter((c) => c.sentence === sentence)
    .flatMap((c) => c.items.map((x) => x.w))
    .join(' ')} `;

/** "plum blocks, all: thin": what stands before the colon with it. */
function headed(state: ReaderState, draft: Draft, items: Item[]): Item[] {
  const { joint, sentence } = state.clauses[draft.clause]!;
  return joint === ':'
    ? state.clauses.slice(0, draft.clause + 1).flatMap((c) => (c.sentence === sentence ? c.items : []))
    : items;
}

/** Words with which she owns that the place is not known, or that it is one that has not been spoken of. */
const ELSEWHERE =
  /\b(?:somewhere|someplace|which|wherever|where|another|other|one more|(?:second|third|further) \w+ (?:followed|after|since)|more of|\w+ of (?:the|those|these)|of them|bit of|some of|few|couple|several|any|a second(?! (?:time|go|look|coat|row|block|wash)))\b/;
const BENEATH = /^(a|an|another|some|one|two|three)$/;

/**
 * "I stitched that gaping seam", "the handle's back down", "darned, in drab wool": told as something that is known, so it is where the talk last was,
 * though the rules found none of what was said there. "A hole", "another one" and "somewhere" leave the place open.
 */
function trustPointing(state: ReaderState, draft: Draft, items: Item[]): void {
  const { memory } = state;
  const { entry } = draft;
  if (countsOnly(items, 1)) return;
  if (draft.placed !== 'none' || draft.cloth !== undefined || memory.last?.ask === 'place') return;
  if (entry.kind === 'treatment' ? !entry.action || entry.state !== 'done' : true) return;
  if (draft.origins['action']?.rule === 'treatment.same-again') return;
  const sentence = state.clauses.filter((c) => c.sentence === draft.sentence).flatMap((c) => c.items);
  if (ELSEWHERE.test(sentence.map((x) => x.w).join(' '))) return;
  // "closed up a seam that had come open": where that is, has been said as little
  const nowhere = state.drafts.some(
    (d) => d.entry.kind === 'condition' && d.placed === 'none' && d.sentence === draft.sentence,
  );
  const words = nowhere ? sentence : items;
  const open = words.some(
    (x, k) =>
      (x.seam || x.finding || x.object || x.place?.outside || BLOCKISH.test(x.w)) &&
      (BENEATH.test(words[k - 1]?.w ?? '') || BENEATH.test(words[k - 2]?.w ?? '')),
  );
  if (open || items.some((x) => x.place?.outside) || sinceOutside(state, draft.clause)) return;
  const told = state.drafts.findLast(
    (d) =>
      d !== draft &&
      d.clause <= draft.clause &&
      d.placed === 'said' &&
      'places' in d.entry &&
      d.entry.places?.length &&
      // "took the label and the binding off": what came off too is not where the label was
      !(d.clause === draft.clause && isTreatment(d) && d.entry.object === d.entry.places.join()),
  )?.entry as { places?: string[] } | undefined;
  const places = told?.places ?? memory.focus;
  // so many are a survey's, and no place of one deed
  if (!places.length || places.length > 4) return;
  put(draft, 'places', [...places], 'place.trusted', []);
  draft.placed = 'carried';
}

function take(draft: Draft): void {
  (draft.entry as { places?: string[] }).places = [];
  delete draft.origins['places'];
  draft.placed = 'none';
}

const SOME_OF =
  /(?<! (?:with|from|using|in|of)) (?:one|two|three|several|1|2|3) of (?:the|those|these|my|our) $/;

/** How many an indefinite word takes; Infinity where it takes an unknown part of them. */
const SOME: Record<string, number> = {
  one: 1,
  a: 1,
  an: 1,
  another: 1,
  some: Number.POSITIVE_INFINITY,
  several: Number.POSITIVE_INFINITY,
  few: Number.POSITIVE_INFINITY,
  couple: 2,
  many: Number.POSITIVE_INFINITY,
  most: Number.POSITIVE_INFINITY,
  part: Number.POSITIVE_INFINITY,
};
const DEFINITE =
  /^(every|each|the|that|this|last|first|next|other|middle|second|third|fourth|fifth|end|same|all|both|those|these|no|not)$/;

/**
 * "one of the bunny prints", "another one in row six", "a block in row two", "somewhere in row three": of the blocks that the
 * group word names some are meant, and which is not told.
 */
function oneOfSeveral(items: Item[], named: Item[], places: number): boolean {
  const group = (x: Item): boolean => Boolean(x.fabric) || (x.place?.places.length ?? 0) > 1;
  // "one of the blocks in row three, 3-2": told after all
  if (!named.every((x) => group(x) || x.place!.kind === 'part')) return false;
  if (named.some((x) => /pair|range|list/.test(x.place!.rule) && !/row|column/.test(x.place!.rule)))
    return false;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const after = items.slice(k + 1, k + 8);
    const leads = after.some((y) => group(y));
    if (x.place?.rule === 'place.one-of') {
      // "row three has a tear in one of them"
      if (leads || named.some(group)) return true;
      continue;
    }
    if (/^(somewhere|someplace)$/.test(x.w) && leads) return true;
    // "every one of them", "the last one in that row" leave no doubt
    if (DEFINITE.test(items[k - 1]?.w ?? '')) continue;
    const count = x.quantity?.unit
      ? undefined
      : (x.quantity?.value ?? (Object.hasOwn(SOME, x.w) ? SOME[x.w] : undefined));
    if (count === undefined || (Number.isFinite(count) && (!Number.isInteger(count) || count >= places)))
      continue;
    const words = after.map((y) => y.w);
    if (words[0] === 'of' && /^(the|them|those|these|her|his|my|its?|our)( |$)/.test(words[1] ?? '')) {
      // "one of the corners of the binding" is a thing of its own; "one of the seams" a seam
      if (/^(them|these|those)$/.test(words[1]!)) return true;
      // "most of the ties in row three", "some of the stitching in 2-2": part of what is there, and no block among several
      const head = after.slice(2).find((y) => y.place || y.fabric || BLOCKISH.test(y.w) || isStuff(y));
      if (head && isStuff(head) && (!Number.isFinite(count) || (head.stitches && !head.seam))) continue;
      if (after.slice(1).some((y) => y.fabric || BLOCKISH.test(y.w) || y.place)) return true;
    }
    // "another one in row six", "a block in the bottom row", "two more along the left side"
    let m = 0;
    while (m < 3 && /^(more|other|others|single|whole|little|big|bad)$/.test(words[m] ?? '')) m++;
    const noun =
      BLOCKISH.test(words[m] ?? '') || words[m] === 'one' || words[m] === 'block' || words[m] === 'square';
    if (noun) m++;
    else if (!(m > 0 || x.w === 'another' || (x.quantity?.value === 1 && x.w === 'one'))) continue;
    if (
      /^(in|on|along|from|down|up|of|near|across)$/.test(words[m] ?? '') &&
      after.slice(m + 1).some(group)
    ) {
      if (/^(a|an)$/.test(x.w) && words[m] === 'of') continue;
      return true;
    }
  }
  return false;
}

/** "tied another three blocks", "did two more squares": some that have not been named. */
const moreBlocks = (words: string): boolean =>
  /\b(?:another|(?:one|two|three|four|five|six|\d|a few|a couple|some|several) more)(?: (?:one|two|three|four|five|six|\d|few|couple|of))* (?:blocks?|squares?|pieces|patches)\b(?! (?:of|in|along|on|from|down|up) )/.test(
    words,
  );

/** "patched one with the gingham", "netted a couple", "darned some more": so many of them, and no word of which. */
function countsOnly(items: Item[], places: number): boolean {
  return items.some((x, k) => {
    if (x.action?.form !== 'past' || x.place) return false;
    const lead = items[k + 1]?.w === 'a' ? k + 2 : k + 1;
    const count = items[lead];
    if (!count || count.place || !(COUNT.test(count.w) || (count.quantity && !count.quantity.unit)))
      return false;
    // "patched two", after two were spoken of
    if (places > 1 && count.quantity?.value === places) return false;
    return COUNT_ENDS.test(
      items[count.w === 'some' && items[lead + 1]?.w === 'more' ? lead + 2 : lead + 1]?.w ?? '',
    );
  });
}
const COUNT = /^(?:one|another|two|three|four|five|some|couple|few|several)$/;
/** What may stand behind such a count, so that nothing is counted by it: "patched one with …", "darned two, hand". */
const COUNT_ENDS =
  /^(?:|[,.;:-]|--|with|w|using|by|and|but|then|too|also|already|today|tonight|yesterday|this|last|before|after|earlier|now|since|half an hour|took|just|which|that|so)(?: |$)/;

const isStuff = (x: Item): boolean =>
  !x.place && !BLOCKISH.test(x.w) && Boolean(x.stitches || x.seam || x.object || x.part || x.material);

/** "the green ones", "all the plum pieces" where no cloth of that colour is named. */
function unnamedCloth(items: Item[]): { words: string; items: Item[] } | undefined {
  const whole = clothOfAll(items);
  if (whole) return whole;
  for (let k = 1; k < items.length; k++) {
    if (
      !/^(ones?|blocks?|pieces?|patches|squares?|bits?|fabrics?|cloths?|prints?|stripes?|checks?)$/.test(
        items[k]!.w,
      )
    )
      continue;
    const words: Item[] = [];
    let m = k - 1;
    for (; m >= 0 && m >= k - 3; m--) {
      const x = items[m]!;
      // "brown stripe ones: net or leave": a cloth that the quilt has
      if (!x.fabric && (COLOURS.has(x.w) || x.material === 'fabric')) words.unshift(x);
      else break;
    }
    if (
      words.length &&
      !words.some((x) => x.fabric) &&
      words.some((x) => COLOURS.has(x.w) || x.material === 'fabric') &&
      // "gold brocade ones all fraying" at the head of a note
      (m < 0 ||
        (items[m]!.token.kind === 'mark' && m === 0) ||
        /^(the|all|those|these|every|both|any|other)$/.test(items[m]!.w))
    )
      return { words: words.map((x) => x.w).join(' '), items: words };
  }
  return undefined;
}

/** Words for a cloth in general, which tell none apart. */
const ANY_CLOTH =
  /^(fabrics?|cloths?|materials?|stuff|pieces?|scraps?|bits?|patch|patches|remnants?|linings?|prints?|muslin|blocks?|squares?)$/;
const isClothWord = (x: Item): boolean =>
  !x.fabric &&
  (COLOURS.has(x.w) ||
    PATTERN_WORDS.has(x.w) ||
    (x.material === 'fabric' && !x.place && !ANY_CLOTH.test(x.w.split(' ').at(-1)!)));

/** With these a cloth is put in, and is not what the work is on. */
const PUT_IN = / (?:with|using|from|in|some|a|out of|used|behind) (?:the |some |that )?/;

type ClothTold = { words: string; items: Item[]; several?: boolean };
/** "the corduroy is torn", "a hole in the paisley", "the stripey ones": a cloth told by its stuff, its pattern or its colour, and none of this quilt. */
function clothTold(items: Item[]): ClothTold | undefined {
  for (let k = 1; k < items.length; k++) {
    if (!isClothWord(items[k]!) || !/^(the|all|those|these|every|both)$/.test(items[k - 1]!.w)) continue;
    let end = k + 1;
    while (items[end] && isClothWord(items[end]!)) end++;
    const next = items[end];
    if (
      !next ||
      next.token.kind === 'mark' ||
      next.finding ||
      /^(ones?|blocks?|pieces?|patches|squares?|bits?|is|'s|are|has|have|was|were|looks?|and|there)$/.test(
        next.w,
      )
    )
      return {
        words: items
          .slice(k, end)
          .map((x) => x.w)
          .join(' '),
        items: items.slice(k, end),
      };
  }
  return undefined;
}

/** "The pink has faded" of a quilt with a pink check and a pink dot: one of them, and nobody has said which. */
function oneOfCloths(items: Item[]): ClothTold | undefined {
  const k = items.findIndex((x) => x.fabric && !x.fabric.full && x.fabric.names.length > 1);
  // "rust ones are frayed" of a rust check and a rust stripe: those of one cloth, and nobody has said which
  if (
    k >= 0 &&
    items[k + 1]?.w === 'ones' &&
    /^(|the|,|[.]|and)$/.test(items[k - 1]?.w ?? '') &&
    !items.some(
      (x, m) =>
        /^(all|every|each|both|any|other|of)$/.test(x.w) &&
        // "splitting all over": how far, and not how many
        !(x.w === 'all' && /^(over|along|round|around|the)$/.test(items[m + 1]?.w ?? '') && m > k),
    )
  )
    return { words: items[k]!.fabric!.words, items: [items[k]!], several: true };
  if (k < 0 || !isSingular(items, k)) return undefined;
  if (/s$/.test(items[k]!.w) || items.slice(0, k).some((x) => /^(all|every|each|both|of)$/.test(x.w)))
    return undefined;
  return { words: items[k]!.fabric!.words, items: [items[k]!], several: true };
}

/**
 * "the pink has faded", "tartan's frayed", "moth in the tartan", "a stain on the tartan": of one cloth. "The tartan in row two" is told apart by
 * its place, and "the tartan ones" and "the tartans" are all of them.
 */
function isSingular(items: Item[], k: number): boolean {
  const before = items[k - 1]?.w ?? '';
  const next = items[k + 1]?.w ?? '';
  if (/^(?:is|'s|has|was)$/.test(next)) return before === 'the' || k === 0;
  const lead = before === 'the' ? items[k - 2]?.w : before;
  return (
    /^(?:in|on|through)$/.test(lead ?? '') &&
    items.slice(0, k).some((x) => x.finding) &&
    (next === '' || /^[,.;!]$/.test(next)) &&
    !items.slice(k + 1).some((x) => x.place?.places.length)
  );
}

/** "The green sprig is fraying" of a quilt with a blue sprig: a colour that none of the cloths of that name has. */
function otherCloth(items: Item[]): ClothTold | undefined {
  const k = items.findIndex((x) => x.fabric && !x.fabric.full);
  const colour = items[k - 1];
  if (k < 1 || !colour || colour.fabric || !COLOURS.has(colour.w) || /^(dark|light|pale)$/.test(colour.w))
    return undefined;
  if (
    items[k]!.fabric!.names.some((n) =>
      n
        .toLowerCase()
        .split(/[^a-z]+/)
        .some((w) => w === colour.w),
    )
  )
    return undefined;
  if (!/^(|the|all|every|both|those|these)$/.test(items[k - 2]?.w ?? '')) return undefined;
  return { words: `${colour.w} ${items[k]!.fabric!.words}`, items: [colour, items[k]!], several: true };
}

/** "all of the polka dot is puckered", "every bit of the paisley": so much is said of cloth only. */
function clothOfAll(items: Item[]): { words: string; items: Item[] } | undefined {
  const words = items.map((x) => x.w);
  const of = words.findIndex(
    (w, k) => w === 'of' && /^(all|bit|scrap|inch|rest)$/.test(words[k - 1] ?? '') && words[k + 1] === 'the',
  );
  if (of < 1 || of > 4) return undefined;
  const verb = words.findIndex((w, k) => k > of && /^(is|'s|has|have|are)$/.test(w));
  const named = items.slice(of + 2, verb);
  if (verb < 0 || !named.length || named.length > 3) return undefined;
  const plain = (x: Item): boolean =>
    x.token.kind === 'word' &&
    !x.place &&
    !x.part &&
    !x.object &&
    !x.seam &&
    !x.stitches &&
    !x.finding &&
    !x.topic;
  if (
    !named.every(plain) ||
    named.some((x) =>
      /^(ones?|blocks?|squares?|quilt|thing|lot|edges?|corners?|rows?|time|stitch|stitching|damage)$/.test(
        x.w,
      ),
    )
  )
    return undefined;
  return { words: named.map((x) => x.w).join(' '), items: named };
}

const DEED_OF_TASK: Partial<Record<Task, Action>> = { tying: 'tie', quilting: 'quilt' };

/** "the bottom row's done too" while tying: where one deed fills the task, the deed is named. */
export function nameDeeds(state: ReaderState): void {
  const said = state.drafts.find((d) => d.entry.kind === 'work' && d.entry.task)?.entry;
  const task = said?.kind === 'work' ? (said.task as Task) : state.memory.running;
  const action = task === undefined ? undefined : DEED_OF_TASK[task];
  if (!action) return;
  for (const draft of state.drafts)
    if (draft.entry.kind === 'treatment' && draft.entry.action === undefined) {
      const { kind, ...rest } = draft.entry;
      draft.entry = { kind, action, ...rest };
      draft.origins['action'] = { rule: 'treatment.of-task', how: 'implied', from: 0, to: 0 };
    }
}

/** "so many yards", "some number of metres": a unit without a number leaves the quantity open. */
export function openAmounts(state: ReaderState): void {
  const words = ` ${state.tokens.map((t) => t.w).join(' ')} `;
  const found =
    / (?:so many|some number of|however many|a number of|so much|i forget how many|not sure how many|do n't know how many|x) (\w+) /.exec(
      words,
    );
  const unit: MaterialUnit | undefined =
    found && Object.hasOwn(UNIT_WORDS, found[1]!) ? UNIT_WORDS[found[1]!] : undefined;
  if (!unit) return;
  const open = state.drafts.findLast(
    (d) => d.entry.kind === 'material' && d.entry.quantity === undefined && d.entry.material !== undefined,
  );
  if (open) put(open, 'unit', unit, 'amount.open', []);
}

/** "sewed up the seam by machine, it had come open between 1-2 and 1-3": where it was sewn is told with why. */
function placeSewnSeam(state: ReaderState): void {
  for (const draft of state.drafts) {
    const { entry } = draft;
    if (entry.kind !== 'treatment' || entry.action !== 'resew' || entry.places?.length || draft.outside)
      continue;
    const seams = state.drafts.filter(
      (d) =>
        d.clause > draft.clause &&
        d.entry.kind === 'condition' &&
        d.entry.finding === 'split-seam' &&
        d.entry.places?.length,
    );
    const [seam] = seams;
    if (seams.length !== 1 || seam?.entry.kind !== 'condition') continue;
    entry.places = seam.entry.places!;
    draft.placed = 'carried';
    draft.origins['places'] = seam.origins['places']!;
  }
}
