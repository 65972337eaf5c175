import { CURRENCY_SIGNS } from '../../lexicon/units.ts';
import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { findCost, findQuantity } from '../amounts/find-amount.ts';
import { spentOn } from '../amounts/spent-on.ts';
import { findFabric } from '../fabrics/find-fabric.ts';
import { hedgedPhraseAt } from '../hedged-phrase.ts';
import { type Item, makeItem } from '../item.ts';
import { LEXICON } from '../lexicon-index.ts';
import { numberedThread, THREAD_NUMBER } from '../materials/numbered-thread.ts';
import { findClothBlock } from '../places/find-cloth-block.ts';
import type { PlaceFound } from '../places/place-found.ts';
import { findPointer, findPart as sidedPlace } from '../places/place-pipeline.ts';
import { applySenses } from './apply-senses.ts';
import { blocksAt } from './blocks-at.ts';
import { dropSenses } from './drop-senses.ts';
import { numberAt } from './number-at.ts';
import type { ScanContext } from './scan-context.ts';
import { isSpotting } from './spot-as-deed.ts';
import { widenItem } from './widen-item.ts';

/** What begins at a token, with every sense that its words can have; a word without one where nothing is known. */
export function itemAt(tokens: Token[], i: number, so: ScanContext): Item {
  const { ctx, fabrics, commerce } = so;
  const token = tokens[i]!;
  const item = makeItem(i, i + 1, token.w, token);
  // "on 2026-03-10 from 9 to 10": a day as it is written, and no stretch of time
  if (token.kind === 'number' && isWrittenDay(tokens, i))
    return { ...item, j: i + 5, end: tokens[i + 4]!.to };
  const before = tokens[i - 1]?.w ?? '';
  if (token.kind === 'mark' && !/^["@=]$/.test(token.w) && !CURRENCY_SIGNS.has(token.w)) return item;
  const numeric = token.kind === 'number' || startsNumber(token.w);
  const thread = numeric || THREAD_NUMBER.test(token.w) ? numberedThread(tokens, i) : undefined;
  if (thread) {
    item.material = 'thread';
    widenItem(item, tokens, thread);
    return item;
  }
  if (numberAt(tokens, i, item, so)) return item;
  const cost = token.w === 'at' && tellsMoment(tokens, i) ? undefined : findCost(tokens, i, commerce);
  if (
    cost &&
    !(
      token.w === 'for' &&
      // "there was a hole in for three": a block, as it was heard
      (/^(row|rows|block|blocks)$/.test(tokens[i - 2]?.w ?? '') || /^(in|on|at|of)$/.test(before))
    )
  ) {
    item.cost = cost;
    widenItem(item, tokens, cost.next);
    return item;
  }
  // "we've run out of pins": nothing that has bled
  if (
    /^('ve|have|has|had|'s|'d)$/.test(token.w) &&
    tokens[i + 1]?.w === 'run' &&
    /^(out|low|short)$/.test(tokens[i + 2]?.w ?? '')
  )
    return item;
  const spent = token.w === 'spent' ? spentOn(tokens, i) : undefined;
  if (spent) {
    item.cost = spent;
    widenItem(item, tokens, spent.next);
    return item;
  }
  const block = blocksAt(tokens, i, ctx) ?? sidedPlace(tokens, i, ctx);
  const pointed = findPointer(tokens, i, ctx);
  const place = !block
    ? pointed
    : !pointed
      ? block
      : pointed.next > block.next || isPicked(pointed, block)
        ? pointed
        : block;
  const fabric = findFabric(tokens, i, fabrics);
  const plain = phraseAt(tokens, i);
  const hedged = hedgedPhraseAt(tokens, i);
  const hit = hedged && hedged.next > (plain?.next ?? 0) ? hedged : plain;
  const longest = Math.max(place?.next ?? 0, fabric?.next ?? 0, hit?.next ?? 0);
  const picked = findClothBlock(tokens, i, fabrics, fabric, ctx.grid);
  if (picked && picked.place.next > longest) {
    item.place = picked.place;
    item.fabric = picked.fabric;
    widenItem(item, tokens, picked.place.next);
    return item;
  }
  if (longest === 0) {
    if (token.w === 'spot' && isSpotting(tokens, i)) item.action = { v: 'clean', form: 'base' };
    else if (
      token.w === 'a' ||
      token.w === 'an' ||
      token.w === 'another' ||
      token.w === 'inch' ||
      token.w === 'yard'
    ) {
      const quantity = findQuantity(tokens, i);
      if (quantity?.unit) {
        item.quantity = quantity;
        widenItem(item, tokens, quantity.next);
      }
    }
    return item;
  }
  if (place && place.next === longest && !(fabric && fabric.next === longest)) {
    item.place = place;
    if (place.places.length && place.places.every((p) => p.startsWith('border'))) item.object = 'border';
    // "the seam on its right": where, and of what
    if (place.rule === 'place.seam-beside') {
      const seam = LEXICON.longestAt(tokens, token.w === 'seam' ? i : i + 1);
      applySenses(item, seam?.payloads ?? []);
    }
    if (hit && hit.next === longest) applySenses(item, hit.payloads);
    widenItem(item, tokens, pastTheQuilt(tokens, place));
    // "the left binding", told by its edge
    if (place.kind === 'part' && / (?:bindings?|bdg)$/.test(item.w))
      applySenses(item, LEXICON.longestAt(tokens, longest - 1)?.payloads ?? []);
    return item;
  }
  widenItem(item, tokens, longest);
  if (hedged && hit === hedged && hit.next === longest) item.w = hedged.words;
  if (fabric && fabric.next === longest) {
    item.fabric = fabric.found;
    item.material = 'fabric';
  }
  if (hit && hit.next === longest) applySenses(item, hit.payloads);
  dropSenses(item, tokens, i);
  // "squares 3-1 and 3-2 have been treated": the word for blocks, and no squaring up
  if (/^squares?$/.test(item.w) && blocksAt(tokens, item.j, ctx)?.places.length) item.action = undefined;
  if (item.part && !item.place)
    item.place = { next: longest, places: [item.part], how: 'said', rule: 'place.part', kind: 'part' };
  return item;
}

/** "the row two one": of those told of together the one in row two, and no block of that number. */
const isPicked = (pointed: PlaceFound, block: PlaceFound): boolean =>
  pointed.among !== undefined && pointed.next === block.next;

/** A phrase of the lexicon; "the blocks are sound" tells no size, and the verb is no part of it. */
function phraseAt(tokens: Token[], i: number): ReturnType<typeof LEXICON.longestAt> {
  const hit = LEXICON.longestAt(upToManner(tokens, i), i);
  // "it was running stitch": how it was sewn, and no dye that ran
  if (
    hit &&
    hit.next > i + 1 &&
    /^(?:sts?|stitch|stitches|stitching)$/.test(tokens[hit.next]?.w ?? '') &&
    LEXICON.longestAt(tokens, hit.next - 1)?.payloads.some((s) => s.k === 'stitch')
  ) {
    const before = LEXICON.longestAt(tokens.slice(i, hit.next - 1), 0);
    return before && { payloads: before.payloads, next: i + before.next };
  }
  if (
    !hit ||
    hit.next < i + 2 ||
    !/^(is|are|'s|was|were)$/.test(tokens[hit.next - 1]!.w) ||
    !hit.payloads.every((s) => s.k === 'measure') ||
    tokens.slice(hit.next, hit.next + 4).some((t) => t.kind === 'number' || startsNumber(t.w))
  )
    return hit;
  const noun = LEXICON.longestAt(tokens.slice(i, hit.next - 1), 0);
  return noun && { payloads: noun.payloads, next: i + noun.next };
}

const OF_THE_QUILT = /^(?:quilt|coverlet|comforter|throw|bedspread|spread|blanket|top)$/;

/** Where "the top right corner of the quilt" ends: a side or corner needs no other place behind it. */
function pastTheQuilt(tokens: Token[], { places, next }: PlaceFound): number {
  if (!places.length || !places.every((p) => /^(?:corner|edge|border)-/.test(p)) || tokens[next]?.w !== 'of')
    return next;
  const at = /^(?:the|this|that)$/.test(tokens[next + 1]?.w ?? '') ? next + 2 : next + 1;
  return OF_THE_QUILT.test(tokens[at]?.w ?? '') && !tokens[at + 1]?.w.startsWith('row') ? at + 1 : next;
}

/** "quit at nine fifteen, need to buy more thread": when the work stopped, and no price. */
const tellsMoment = (tokens: Token[], i: number): boolean =>
  /\b(?:quit|quitting|stop|stopped|stopping|start|started|starting|begin|began|begun|beginning|finish|finished|finishing|back|worked|working|mending|piecing|tying|quilting|sewing|(?:packed|packing|wrapped|wrapping|gave|give|got|knocked|broke|clocked|knocking|jacked)(?: it)? (?:in|up|off|out|on|to))(?: (?!(?:bought|paid|cost|costs|was|were|yards?|metres?|spools?|balls?|packs?)\b)[a-z]+){0,4}$/.test(
    tokens
      .slice(Math.max(0, i - 6), i)
      .map((t) => t.w)
      .join(' '),
  );

const isWrittenDay = (tokens: Token[], i: number): boolean =>
  /^\d{4}$/.test(tokens[i]!.w) &&
  /^-\d\d-\d\d$/.test(
    tokens
      .slice(i + 1, i + 5)
      .map((t) => t.w)
      .join(''),
  );

/** "patched the back by hand", where "back by" is no date: the words end before how it was done. */
const upToManner = (tokens: Token[], i: number): Token[] =>
  tokens[i]!.w === 'back' && tokens[i + 1]?.w === 'by' && /^(?:hand|machine)$/.test(tokens[i + 2]?.w ?? '')
    ? tokens.slice(0, i + 1)
    : tokens;
