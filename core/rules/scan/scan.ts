import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { tellsPrice } from '../amounts/tells-price.ts';
import { settleDeeds } from '../clause/governor.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import { type Item, makeItem } from '../item.ts';
import { lengthAt, lengthTalk } from '../measurements/length-at.ts';
import { lengthForClock } from '../measurements/length-for-clock.ts';
import { walkAfter } from '../places/along-row.ts';
import { blocksOfSubject, onlyBlockOf, othersOf } from '../places/blocks-of-subject.ts';
import { type ClothSpokenOf, clothBesideBlock } from '../places/cloth-beside-block.ts';
import { clothHere } from '../places/cloth-here.ts';
import { type ClothInHand, clothTaken, ofClothInHand, staysInHand } from '../places/cloth-in-hand.ts';
import { crossOutside } from '../places/cross-outside.ts';
import { moveFocus, pointBack, rememberCloth } from '../places/move-focus.ts';
import {
  fewSpokenOf,
  narrowToCloth,
  narrowToClothBehind,
  narrowToNamedCloth,
} from '../places/narrow-to-cloth.ts';
import { takenAsModel } from '../places/place-as-model.ts';
import type { PlaceContext, PlaceFound } from '../places/place-found.ts';
import { seamWith } from '../places/seam-with.ts';
import { metresAsMinutes, minutesOfNext } from '../times/minutes-meant.ts';
import { stretchAtComma } from '../times/stretch-at-comma.ts';
import { itemAt } from './item-at.ts';
import { widenItem } from './widen-item.ts';

/** Words that put a note into talk of buying. */
const COMMERCE = wordSet(
  'bought buy got get paid pd rs chf kr cost costs spent price @ £ $ € needed picked ordered were was each ea lot apiece shopping shop shops haberdasher haberdashers haberdashery draper drapers receipt costing came purchased bt bght total arrived delivered charged',
);

/** Words that put a note into talk of work. */
const WORK_TALK = wordSet(
  "wrapped called downed start started starting stop stopped stopping began begun begin beginning finish finished finishing quit quitting since till until til from worked working between knocked packed hour hours o'clock oclock am pm clocked resume resumed resuming paused back commenced ceased ended complete completed off done on went was were sat break minus less out half meant at to picked settled jacked gave took when",
);

/** "survey over 7.25": here "over" ends the work; behind anything else it is where something lies. */
const TASKS_OVER = wordSet(
  'survey mending cutting piecing layering tying quilting cleaning unpicking shopping paperwork',
);

/** The items of a note, the places named in it, and what is spoken of when it ends. */
type Scan = {
  items: Item[];
  places: PlaceFound[];
  focus: string[];
  earlier: string[][];
  cloth?: string[];
  counted?: { from: string[]; to: string[] };
};

/**
 * Goes through the tokens once, from left to right, and gives each run of words every sense that it can have. The longest
 * reading at a place wins; of equally long ones the earlier in this list: stretch of time, length of time, clock, price,
 * block, part, quantity, pointer, cloth, lexicon.
 * `known` is what places may lean on; what comes of it is handed back, and it stays as it was.
 */
export function scan(tokens: Token[], fabrics: FabricIndex, known: Omit<PlaceContext, 'walk'>): Scan {
  const { grid, mentions } = known;
  const items: Item[] = [];
  const places: PlaceFound[] = [];
  const ctx: PlaceContext = { ...known, fabrics, earlier: [...known.earlier], items };
  const talk = lengthTalk(tokens);
  const so = {
    ctx,
    fabrics,
    items,
    commerce: tokens.some(({ w }) => COMMERCE.has(w)) || tellsPrice(tokens),
    work: tokens.some(
      ({ w }, k) => WORK_TALK.has(w) || (w === 'over' && TASKS_OVER.has(tokens[k - 1]?.w ?? '')),
    ),
  };
  const stretch = stretchAtComma(tokens);
  const untilHours = tokens.slice(0, Math.max(0, stretch));
  let hand: ClothInHand | undefined;
  const cloths: ClothSpokenOf[] = [];
  let i = 0;
  while (i < tokens.length) {
    const item =
      clothsOwn(tokens, i, hand, grid) ??
      lengthAt(tokens, i, talk) ??
      itemAt(i < stretch ? untilHours : tokens, i, so);
    if (talk.measuring && item.clock?.rule === 'time.four-digits') lengthForClock(item, items);
    items.push(item);
    if (item.place && takenAsModel(items, tokens[item.j]?.w ?? '')) {
      i = item.j;
      continue;
    }
    // "(the patch is off 3-4,) the cocoa dot underneath has a tear"
    if (item.fabric) clothHere(items, tokens, ctx, fabrics);
    if (item.place) {
      narrowToCloth(item.place, items, ctx.cloth ?? fewSpokenOf(ctx), fabrics);
      narrowToNamedCloth(items, grid, fabrics, tokens[item.j]);
      seamWith(items, ctx);
      places.push(item.place);
      if (item.place.places.length && (item.place.kind !== 'part' || item.place.places[0]!.includes('-')))
        moveFocus(ctx, item.place, items);
      if (isLost(item.place)) ctx.lost = true;
      else if (item.place.places.length) delete ctx.lost;
      // "another one with a hole in it", "a stain in 2-9, cleaned it": what "it" is, nobody has said
      if (
        ((item.place.rule === 'place.one-of' && /^another\b/.test(item.w)) || isLost(item.place)) &&
        ctx.focus.length
      ) {
        ctx.earlier.push(ctx.focus);
        ctx.focus = [];
      }
      rememberCloth(ctx, item.place, items, fabrics);
      const walk = walkAfter(ctx, item.place, tokens, i);
      if (walk) ctx.walk = walk;
      else if (!/^place\.(it|that-one|there)$/.test(item.place.rule)) delete ctx.walk;
      if (
        item.place.rule !== 'place.those' &&
        item.place.rule !== 'place.them' &&
        item.place.rule !== 'place.both' &&
        item.place.rule !== 'place.all-of-them' &&
        // "the taffeta: net over the face, both blocks"
        !/^(?:the )?face$/.test(item.w)
      )
        delete ctx.cloth;
    } else if (item.fabric) {
      narrowToClothBehind(items, fabrics);
      const places = othersOf(items, blocksOfSubject(items, fabrics, tokens[item.j]), ctx);
      if (places.length) {
        ctx.cloth = places;
        if (!item.place) cloths.push({ at: items.length - 1, places });
      }
      // "net over the velvet, and the one to the left of it I'm patching": its only block
      const only = item.place || PIECED.test(items.at(-3)?.w ?? '') ? undefined : onlyBlockOf(items, fabrics);
      if (only) {
        if (ctx.focus.length) ctx.earlier.push(ctx.focus);
        ctx.focus = [only];
      }
    }
    if (hand) hand = staysInHand(hand, item);
    if (hand && item.place?.rule.startsWith('place.cloth-')) hand.told.push(...item.place.places);
    if (item.fabric && !item.place) hand = clothTaken(items, ctx.cloth ?? [], tokens[item.j]);
    // "patch the thin ones? or darn them?"
    const those =
      item.w === 'ones' &&
      items.at(-2)?.finding !== undefined &&
      !/^(both|all|of)$/.test(items.at(-4)?.w ?? '');
    if (mentions?.length && (item.finding || item.seam || those) && !item.place)
      pointBack(ctx, items, mentions, tokens);
    if (ctx.walk && (item.finding || item.fail || item.action || /^(same|ditto)\b/.test(item.w)))
      ctx.walk.told = true;
    // "twenty minutes or so and pressed them": no second way
    i = item.j + (item.duration || item.quantity || item.clock || item.cost ? orSo(tokens, item.j) : 0);
  }
  for (const cloth of cloths) clothBesideBlock(items, cloth);
  if (places.some((p) => p.outside)) crossOutside(items);
  metresAsMinutes(items, so.commerce);
  wideCloth(items);
  minutesOfNext(items);
  settleDeeds(items);
  return {
    items,
    places,
    focus: ctx.focus,
    earlier: ctx.earlier,
    ...(ctx.cloth ? { cloth: ctx.cloth } : {}),
    ...(ctx.counted ? { counted: ctx.counted } : {}),
  };
}

/** A block told in so many words that this quilt has not got. */
const isLost = (place: PlaceFound): boolean =>
  place.outside === true && !place.places.length && place.kind === 'blocks' && place.how === 'said';

/** Before "the velvet", these make it stuff to work with. */
const PIECED = /^(pieced|piece|cut|bought|got|used|using|ordered|washed|ironed|found|put)$/;

/** What the words tell of the cloth in hand: "(the sateen is weak) in the second row". */
function clothsOwn(
  tokens: Token[],
  i: number,
  hand: ClothInHand | undefined,
  grid: QuiltGrid,
): Item | undefined {
  const place = hand && ofClothInHand(tokens, i, hand, grid);
  if (!place) return undefined;
  const token = tokens[i]!;
  const item = makeItem(i, i + 1, token.w, token);
  item.place = place;
  widenItem(item, tokens, place.next);
  return item;
}

/** "or so", "or thereabouts", "or near enough" behind a figure: how many words they are. */
function orSo(tokens: Token[], i: number): number {
  if (tokens[i]?.w !== 'or') return 0;
  if (/^(?:so|thereabouts|thereabout)$/.test(tokens[i + 1]?.w ?? '')) return 2;
  return tokens[i + 1]?.w === 'near' && tokens[i + 2]?.w === 'enough' ? 3 : 0;
}

/** "10 yd wide cotton": of what kind the cloth is, and nothing that was measured. */
function wideCloth(items: Item[]): void {
  for (let k = 0; k < items.length - 1; k++)
    if (
      items[k]!.w === 'wide' &&
      items[k]!.measure &&
      items[k + 1]!.material &&
      !/^(?:in|cm|mm)$/.test(items[k - 1]?.quantity?.unit ?? '')
    )
      items[k]!.measure = undefined;
}
