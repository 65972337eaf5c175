import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { LEXICON } from '../lexicon-index.ts';
import { blockAt, blockFrom, countUp, gridOfRow, splitBlock, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { UNIT_AFTER } from './place-tokens.ts';

/** How far she has come along one row, telling block after block what is found there. */
export type RowWalk = {
  row: number;
  /** The block last told; 0 where only the row was named. */
  reached: number;
  /** Blocks told so far, for "the rest". */
  seen: number[];
  /** Told by bare numbers: "three one", "2: torn". */
  bare: boolean;
  /** Told as row and block in one: "3-2". */
  pair: boolean;
  /** The row was named at the head of what is said, and not behind a verb. */
  heads: boolean;
  /** Something has been said of what was told last. */
  told: boolean;
  /** Index of the token after the words that it was told with. */
  end: number;
};

/** Rules that name blocks by their row, so that a bare number behind them goes on along it. */
const BY_ROW = /^place\.(row|ordinal|counted-rows|side-row|along-row|next|block|of-line|pair)/;

/** The walk after a place was named: begun, gone on with, or left. */
export function walkAfter(
  ctx: PlaceContext,
  found: PlaceFound,
  tokens: Token[],
  i: number,
): RowWalk | undefined {
  const at = found.places.map((p) => splitBlock(p));
  const row = at[0]?.row;
  if (row === undefined || !at.every((p) => p?.row === row) || found.outside) return undefined;
  // "2-2, 3-4 and 5-1 are frayed, the last one …": of the three told together
  const together = (ctx.told?.length ?? 0) > 2 ? ctx.told! : ctx.focus;
  if (together.some((p) => (splitBlock(p)?.row ?? row) !== row)) return undefined;
  const before = ctx.walk?.row === row ? ctx.walk : undefined;
  if (!BY_ROW.test(found.rule) && !(before && found.kind === 'pointer')) return undefined;
  const blocks = at.map((p) => p!.block);
  const whole = blocks.length === gridOfRow(ctx.grid, row).blocks && blocks.length > 1;
  const named = tokens
    .slice(i, found.next)
    .some((t) => /^(block|blocks|blk|blks|b|square|squares)$/.test(t.w));
  const pair = found.rule === 'place.pair' && tokens[i]!.kind === 'number';
  if (found.rule.startsWith('place.pair') && !pair) return undefined;
  return {
    row,
    reached: whole && found.rule !== 'place.along-row' ? 0 : Math.max(...blocks),
    seen: whole ? [] : unique([...(before?.seen ?? []), ...blocks]),
    bare: found.rule === 'place.along-row' ? (before?.bare ?? false) || !named : !named,
    pair: pair || (found.rule === 'place.along-row' && (before?.pair ?? false)),
    heads: i === 0 || tokens[i - 1]!.kind === 'mark' || HEADS.test(tokens[i - 1]!.w),
    told: false,
    end: found.next,
  };
}

const HEADS =
  /^(\n|the|now|so|then|ok|okay|right|well|next|and|on|onto|to|in|along|for|is|'s|um|uh|here|survey|starting|started|start|at|with)$/;

/** What may stand between a row and the first of its blocks. */
const BETWEEN = /^(\n|now|so|then|ok|okay|right|well|next|and|um|uh)$/;

/** How many words may lie between a block of the row and the next one that is told by its number. */
const REACH = 14;
/** Before these words a number counts something, or belongs to what stands before it. */
const NOT_BEFORE =
  /^(in|of|at|by|with|x|about|another|those|these|the|other|all|both|first|last|next|some|no|than|to|for|into|over|under|from|between|half|every|like|or|\$|£|€|@|-|\/)$/;
const LIGHT =
  /^(is|'s|are|'re|was|were|has|have|had|got|a|an|all|both|also|too|still|slightly|very|quite|really|just|badly|bit|little|looks|look|seems|seem|now|only|half|going|gone|rather|pretty|fairly|completely|totally|mostly|nearly|small|big|long|nasty|tiny|large|bad|old|some|with|:|=|--)$/;
/** Damage told as a thing that can be counted, or a word for it behind. */
const COUNTED =
  /(holes|tears|rips|spots|stains|patches|marks|splits|slits|places|areas|seams|repairs|darns)$/;
const COUNTED_NEXT =
  /^(spots?|places?|patch|patches|areas?|bits?|edges?|marks?|corners?|seams?|ties?|stitch|stitches|blocks?|squares?|pieces?|rows?|holes?|stains?|threads?)$/;
const THING = /(?:^| )(hole|tear|rip|split|slit|gap|stain|mark|spot|patch|darn|repair)$/;

type Said = { direct: boolean; finding: boolean; words: string };
/** Is it said at `j`, with only light words between, what is so of the place before it? */
function saidAt(tokens: Token[], j: number): Said | undefined {
  let k = j;
  while (k < j + 4 && LIGHT.test(w(tokens, k))) k++;
  const direct = k === j;
  if (/^(same|ditto|likewise)$/.test(w(tokens, k))) return { direct, finding: true, words: 'same' };
  const hit = LEXICON.longestAt(tokens, k);
  if (!hit) return undefined;
  const words = tokens
    .slice(k, hit.next)
    .map((t) => t.w)
    .join(' ');
  const finding = hit.payloads.some((s) => s.k === 'finding' || s.k === 'fail');
  const done = hit.payloads.some((s) => s.k === 'action' && s.form === 'past');
  if (!finding && !done) return undefined;
  if (COUNTED_NEXT.test(w(tokens, hit.next)) && !/^(a|an)$/.test(w(tokens, k - 1))) return undefined;
  return { direct, finding, words };
}

/** "row three one to three sound": the numbers right behind a row, where at once it is said what is so of those blocks. */
export function numbersTold(
  tokens: Token[],
  i: number,
  total: number,
): { values: number[]; next: number } | undefined {
  const list = numbersAt(tokens, i, total);
  return list &&
    list.values[0]! <= total &&
    !UNIT_AFTER.has(w(tokens, list.next)) &&
    saidAt(tokens, list.next)
    ? list
    : undefined;
}

const listedTo = (w: string): boolean => /^(to|through|thru|-|till)$/.test(w);

/** "four", "three to five", "3-5", "four five and six", "1, 3 and 4": blocks of the row, in order. */
function numbersAt(
  tokens: Token[],
  i: number,
  total: number,
): { values: number[]; next: number } | undefined {
  const first = readCount(tokens, i);
  if (!first || !Number.isInteger(first.value) || first.value < 1) return undefined;
  const values = [first.value];
  let next = first.next;
  for (;;) {
    const joint = w(tokens, next);
    const last = values.at(-1)!;
    if (listedTo(joint)) {
      const to = readCount(tokens, next + 1);
      if (!to || to.value <= last || to.value > total) return undefined;
      values.push(...countUp(last + 1, to.value));
      next = to.next;
      continue;
    }
    const joined = /^(and|&|\+|,)$/.test(joint);
    const k = joined ? (joint === ',' && /^(and|&)$/.test(w(tokens, next + 1)) ? next + 2 : next + 1) : next;
    const more = readCount(tokens, k);
    if (!more || more.value <= last || more.value > total) return { values, next };
    // "three torn, four five and six": words follow one another without a comma, figures do not
    if (!joined && tokens[k]!.kind === 'number') return { values, next };
    // "1 torn, 2 sound": the next number has a verb of its own where this one has one too
    if (joined && saidAt(tokens, next)) return { values, next };
    values.push(more.value);
    next = more.next;
  }
}

/** "the third", "third and fourth ones": blocks of the row by their order. */
function ordinalsAt(
  tokens: Token[],
  i: number,
  total: number,
): { values: number[]; next: number; noun: boolean } | undefined {
  let k = w(tokens, i) === 'the' ? i + 1 : i;
  const values: number[] = [];
  let next = k;
  for (;;) {
    const nth = readOrdinal(tokens, k);
    if (!nth || nth.value > total || nth.value <= (values.at(-1) ?? 0)) break;
    values.push(nth.value);
    next = nth.next;
    if (!/^(and|&|,)$/.test(w(tokens, next))) break;
    k = w(tokens, next + 1) === 'the' ? next + 2 : next + 1;
  }
  if (!values.length) return undefined;
  const noun = /^(one|ones|block|blocks|square|squares)$/.test(w(tokens, next));
  return { values, next: noun ? next + 1 : next, noun };
}

/** "the last two", "last", "the last one in the row": the end of the row. */
function lastAt(tokens: Token[], i: number, total: number): { values: number[]; next: number } | undefined {
  let k = w(tokens, i) === 'the' ? i + 1 : i;
  if (!/^(last|final)$/.test(w(tokens, k))) return undefined;
  k++;
  const couple = w(tokens, k) === 'couple' ? { value: 2, next: k + 1 } : undefined;
  const n = couple ?? readCount(tokens, k);
  if (n) k = n.next;
  if (/^(one|ones|block|blocks|square|squares)$/.test(w(tokens, k))) k++;
  const count = n?.value ?? 1;
  if (count >= total) return undefined;
  return { values: countUp(total - count + 1, total), next: ofRow(tokens, k) };
}

/** "first three", "the first couple of blocks": the beginning of the row. */
function firstAt(tokens: Token[], i: number, total: number): { values: number[]; next: number } | undefined {
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  if (w(tokens, k) !== 'first') return undefined;
  const n = w(tokens, k + 1) === 'couple' ? { value: 2, next: k + 2 } : readCount(tokens, k + 1);
  if (!n || n.value < 2 || n.value >= total) return undefined;
  const next = /^(ones|blocks|squares)$/.test(w(tokens, n.next)) ? n.next + 1 : n.next;
  return { values: countUp(1, n.value), next: ofRow(tokens, next) };
}

/** "the rest", "rest of them", "the others", "the remaining three": what has not been told of the row. */
function restAt(
  tokens: Token[],
  i: number,
  total: number,
  seen: number[],
): { values: number[]; next: number } | undefined {
  let k = /^(the|all)$/.test(w(tokens, i)) ? i + 1 : i;
  if (w(tokens, k) === 'the') k++;
  const values = countUp(1, total).filter((b) => !seen.includes(b));
  if (/^(other|remaining)$/.test(w(tokens, k))) {
    const n = readCount(tokens, k + 1);
    return n && n.value === values.length
      ? {
          values,
          next: ofRow(tokens, /^(ones|blocks|squares)$/.test(w(tokens, n.next)) ? n.next + 1 : n.next),
        }
      : undefined;
  }
  if (!/^(rest|others|remainder)$/.test(w(tokens, k))) return undefined;
  return values.length ? { values, next: ofRow(tokens, k + 1) } : undefined;
}

/** "… in the row", "… of that row", "… of them", "… of it" behind what was picked. */
function ofRow(tokens: Token[], k: number): number {
  if (!/^(of|in|on|along)$/.test(w(tokens, k))) return k;
  if (/^(them|it)$/.test(w(tokens, k + 1))) return k + 2;
  return /^(the|that|this)$/.test(w(tokens, k + 1)) && w(tokens, k + 2) === 'row' && !readCount(tokens, k + 3)
    ? k + 3
    : k;
}

/** "next thin", "next, a hole", "next same again": the block after the one told last. */
function nextAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'next') return undefined;
  const begins = i === 0;
  const told = ctx.focus.at(-1);
  if (!told || !splitBlock(told) || !(begins || ctx.walk?.told)) return undefined;
  const door = w(tokens, i + 1) === 'door' ? (w(tokens, i + 2) === 'to' ? i + 4 : i + 2) : i + 1;
  if (door === i + 4 && !/^(it|that)$/.test(w(tokens, i + 3))) return undefined;
  const j = begins && w(tokens, door) === ',' ? door + 1 : door;
  const said = saidAt(tokens, j);
  if (!said?.finding) return undefined;
  const place = blockFrom(ctx.grid, told, 0, 1);
  return {
    next: door,
    places: place ? [place] : [],
    how: 'implied',
    rule: 'place.along-row',
    kind: 'blocks',
    ...(place ? {} : { outside: true }),
  };
}

/** "(row four: …) and a tear in the fourth": damage told as a thing before the block it is in. */
const damageBefore = (tokens: Token[], i: number): boolean =>
  /^(in|on|at)$/.test(w(tokens, i - 1)) &&
  Boolean(tokens[i - 2] && LEXICON.longestAt([tokens[i - 2]!], 0)?.payloads.some((s) => s.k === 'finding'));
const ENDS_HERE = /^(|[,.;:-]|--|and|but|maybe|about|though|too|as|that|which|so|i)$/;

/**
 * "Row three, one to three sound, four a hole, five and six mould", "row one block one sound, next thin, the last two stained, the rest
 * all right": she goes along one row and tells of each block by its number alone, where what is so of it is said at once.
 */
export function alongRow(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const onward = nextAt(tokens, i, ctx);
  if (onward) return onward;
  const walk = ctx.walk;
  if (!walk || i - walk.end > REACH || i < walk.end) return undefined;
  const headed =
    walk.reached === 0 &&
    walk.heads &&
    tokens.slice(walk.end, i).every((t) => t.kind === 'mark' || BETWEEN.test(t.w));
  const total = gridOfRow(ctx.grid, walk.row).blocks;
  const of = (values: number[], next: number): PlaceFound | undefined => {
    const places = values.flatMap((b) => blockAt(ctx.grid, walk.row, b) ?? []);
    return {
      next,
      places,
      how: 'implied',
      rule: 'place.along-row',
      kind: 'blocks',
      ...(places.length < values.length ? { outside: true } : {}),
    };
  };
  const nth = damageBefore(tokens, i) ? ordinalsAt(tokens, i, total) : undefined;
  if (nth && nth.values[0]! > walk.reached && ENDS_HERE.test(w(tokens, nth.next)))
    return of(nth.values, nth.next);
  if (!walk.told && !headed) return undefined;
  if (NOT_BEFORE.test(w(tokens, i - 1))) return undefined;
  const numbers = numbersAt(tokens, i, total);
  if (numbers) {
    const { values, next } = numbers;
    // "row three is sound. 2-4 is torn"
    if (walk.reached === 0 && !headed && (values.length > 1 || w(tokens, next) === ',')) return undefined;
    // "the first block of row four is stained and 2-3 is torn": a block by its two numbers
    const isPair = tokens[i]!.kind === 'number' && w(tokens, i + 1) === '-' && tokens[i + 1]!.glued;
    // "the bottom row and 1-4 are sound"
    if (isPair && headed && /^(and|&|\+|plus)$/.test(w(tokens, i - 1)) && i - 1 === walk.end)
      return undefined;
    if (isPair && walk.reached > 0 && !walk.bare && values.length > 1) return undefined;
    if (values[0]! <= walk.reached || UNIT_AFTER.has(w(tokens, next))) return undefined;
    if (values[0]! > total && (!walk.bare || tokens[i]!.kind !== 'number')) return undefined;
    // "row two block one torn, four five faded" names a block by two numbers
    if (values.length > 1 && !walk.bare && readCount(tokens, readCount(tokens, i)!.next)) return undefined;
    const said = saidAt(tokens, next);
    if (!said) return undefined;
    const one = values.length === 1;
    // "two are torn", "two holes", "one tear": how many, and not which
    if (one && /^(are|'re|were|have)$/.test(w(tokens, next))) return undefined;
    if (one && COUNTED.test(said.words)) return undefined;
    // "row four is mostly sound, three has a hole", but not "… the ties came out, one broken"
    if (walk.reached === 0 && !headed && (said.direct || values[0] === 1)) return undefined;
    if (walk.pair && (tokens[i]!.kind !== 'number' || values.length > 1 || !said.direct)) return undefined;
    return of(values, next);
  }
  const ordinals = ordinalsAt(tokens, i, total);
  if (ordinals && ordinals.values[0]! > walk.reached) {
    const said = saidAt(tokens, ordinals.next);
    // "second hole": the second of them
    if (said && (ordinals.noun || !said.direct || !(THING.test(said.words) || COUNTED.test(said.words))))
      return of(ordinals.values, ordinals.next);
  }
  const first = headed ? firstAt(tokens, i, total) : undefined;
  if (first && saidAt(tokens, first.next)) return of(first.values, first.next);
  if (walk.reached === 0) return undefined;
  const end =
    lastAt(tokens, i, total) ??
    (walk.seen.length > 1 || walk.bare ? restAt(tokens, i, total, walk.seen) : undefined);
  return end && saidAt(tokens, end.next) ? of(end.values, end.next) : undefined;
}
