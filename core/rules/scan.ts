import type { QuiltGrid } from '../../shared/quilt.ts';
import { CURRENCY_SIGNS, LENGTH_UNIT_SET } from '../lexicon/units.ts';
import { COUNT_WORDS, TEN_WORDS } from '../text/number-words.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { wordSet } from '../text/word-set.ts';
import { type CostFound, findCost, findQuantity, isSetBack, readUnit } from './amounts/find-amount.ts';
import { settleDeeds } from './clause/governor.ts';
import { type FabricIndex, findFabric } from './fabrics/find-fabric.ts';
import { hedgedPhraseAt } from './hedged-phrase.ts';
import { type Item, makeItem } from './item.ts';
import { LEXICON } from './lexicon-index.ts';
import { walkAfter } from './places/along-row.ts';
import { type ClothInHand, clothTaken, ofClothInHand, staysInHand } from './places/cloth-in-hand.ts';
import { findClothBlock } from './places/find-cloth-block.ts';
import { findMention, type Mention } from './places/find-mention.ts';
import { splitBlock } from './places/grid.ts';
import type { PlaceContext, PlaceFound } from './places/place-found.ts';
import { findBlocks, findPointer, findPart as sidedPlace } from './places/place-pipeline.ts';
import { findClock, findDuration, findSpan, hoursOfWork } from './times/find-time.ts';

/** After these a bare number is a clock time, when the note is about work at all. */
const CLOCK_LEADS = new Set(
  'at since till until til from by around about between before after stopped started quit finished began begun was off packed ended ceased starting stopping start stop begin finish say'.split(
    ' ',
  ),
);
/** After these it is one even where it could be a block. */
const STRONG_LEADS = new Set(['since', 'till', 'until', 'til', 'o']);
/** Words that put a note into talk of buying. */
const COMMERCE = wordSet(
  'bought buy got get paid pd rs chf kr cost costs spent price @ £ $ € needed picked ordered were was each lot apiece shopping shop receipt costing came purchased bt bght total',
);
const WORK_TALK = wordSet(
  "wrapped called downed start started starting stop stopped stopping began begun begin beginning finish finished finishing quit quitting since till until til from worked working between knocked packed hour hours o'clock oclock am pm clocked resume resumed resuming paused back commenced ceased ended complete completed off done on went was were sat break minus less out half meant at to",
);

export type Scan = {
  items: Item[];
  places: PlaceFound[];
  focus: string[];
  earlier: string[][];
  cloth?: string[];
};

/**
 * Goes through the tokens once, from left to right, and gives each run of words every sense that it can have. The longest
 * reading at a place wins; of equally long ones the earlier in this list: stretch of time, length of time, clock, price,
 * block, part, quantity, pointer, cloth, lexicon.
 */
export function scan(
  tokens: Token[],
  grid: QuiltGrid,
  fabrics: FabricIndex,
  focus: string[],
  earlier: string[][],
  cloth?: string[],
  mentions?: Mention[],
  list?: string[],
): Scan {
  const items: Item[] = [];
  const places: PlaceFound[] = [];
  const ctx: PlaceContext = {
    grid,
    focus,
    earlier: [...earlier],
    ...(cloth ? { cloth } : {}),
    ...(list ? { list } : {}),
    ...(mentions ? { mentions } : {}),
  };
  let commerce = false;
  let work = false;
  let measuring = false;
  let sides = 0;
  let inMillimetres = false;
  let inCentimetres = false;
  for (const { w } of tokens) {
    if (COMMERCE.has(w)) commerce = true;
    if (WORK_TALK.has(w)) work = true;
    if (MEASURE_TALK.has(w)) measuring = true;
    if (SIDE.has(w)) sides++;
    if (MILLIMETRES.has(w)) inMillimetres = true;
    if (CENTIMETRES.has(w)) inCentimetres = true;
  }
  const sided = sides > 2;
  if (!commerce) commerce = sentencesOf(tokens).some(tellsPrice);
  const stretch = stretchAtComma(tokens);
  const untilHours = tokens.slice(0, Math.max(0, stretch));
  let hand: ClothInHand | undefined;
  const cloths: ClothSpokenOf[] = [];
  let i = 0;
  while (i < tokens.length) {
    const item =
      clothsOwn(tokens, i, hand, grid) ??
      (measuring ? blockSize(tokens, i) : undefined) ??
      (measuring ? (sideLetter(tokens, i) ?? seamFraction(tokens, i)) : undefined) ??
      (sided ? sideLength(tokens, i) : undefined) ??
      (inMillimetres ? fourFigures(tokens, i) : undefined) ??
      (inCentimetres ? threeFigures(tokens, i) : undefined) ??
      itemAt(i < stretch ? untilHours : tokens, i, ctx, fabrics, commerce, work, items);
    if (measuring && item.clock?.rule === 'time.four-digits') lengthForClock(item, items);
    items.push(item);
    if (item.place) {
      narrowToCloth(item.place, items, ctx.cloth ?? fewSpokenOf(ctx), fabrics);
      narrowToNamedCloth(items, grid, fabrics, tokens[item.j]);
      places.push(item.place);
      if (item.place.places.length && (item.place.kind !== 'part' || item.place.places[0]!.includes('-')))
        moveFocus(ctx, item.place, items);
      rememberCloth(ctx, item.place, items, fabrics);
      const walk = walkAfter(ctx, item.place, tokens, i);
      if (walk) ctx.walk = walk;
      else if (!/^place\.(it|that-one|there)$/.test(item.place.rule)) delete ctx.walk;
      if (
        item.place.rule !== 'place.those' &&
        item.place.rule !== 'place.them' &&
        item.place.rule !== 'place.both' &&
        item.place.rule !== 'place.all-of-them'
      )
        delete ctx.cloth;
    } else if (item.fabric) {
      narrowToClothBehind(items, fabrics);
      const places = blocksOfSubject(items, fabrics, tokens[item.j]);
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
    if (mentions?.length && (item.finding || item.seam) && !item.place)
      pointBack(ctx, items, mentions, tokens);
    if (ctx.walk && (item.finding || item.fail || item.action || /^(same|ditto)\b/.test(item.w)))
      ctx.walk.told = true;
    // "twenty minutes or so and pressed them": no second way
    i = item.j + (item.duration || item.quantity || item.clock || item.cost ? orSo(tokens, item.j) : 0);
  }
  for (const cloth of cloths) clothBesideBlock(items, cloth);
  if (places.some((p) => p.outside)) crossOutside(items);
  metresAsMinutes(items, commerce);
  wideCloth(items);
  minutesOfNext(items);
  settleDeeds(items);
  return {
    items,
    places,
    focus: ctx.focus,
    earlier: ctx.earlier,
    ...(ctx.cloth ? { cloth: ctx.cloth } : {}),
  };
}

/** "column five row two" where there is no column five: no block of row two either. */
function crossOutside(items: Item[]): void {
  const isLine = (x: Item | undefined, axis: RegExp): boolean =>
    x?.place !== undefined && axis.test(x.place.rule);
  items.forEach((item, k) => {
    const other = /^(,|in|of)$/.test(items[k + 1]?.w ?? '') ? items[k + 2] : items[k + 1];
    // "column seven, second block down"
    if (
      item.place?.outside &&
      !item.place.places.length &&
      other?.place?.how === 'implied' &&
      items[k + 1]?.w === ','
    )
      other.place = { ...other.place, places: [], outside: true };
    if (!other?.place || !item.place || Boolean(item.place.outside) === Boolean(other.place.outside)) return;
    const crossed =
      (isLine(item, ROW_LINE) && isLine(other, COLUMN_LINE)) ||
      (isLine(item, COLUMN_LINE) && isLine(other, ROW_LINE));
    if (!crossed) return;
    for (const x of [item, other]) x.place = { ...x.place!, places: [], outside: true };
  });
}
const ROW_LINE = /^place\.(row|ordinal-row)$/;
const COLUMN_LINE = /^place\.(column|ordinal-column)$/;

/** Where among the items a cloth is spoken of, and the blocks where it lies. */
type ClothSpokenOf = { at: number; places: string[] };

/** "the velvet and 3-3 are torn", "3-3 and the velvet", "the velvet's torn and so is 3-3": in one list with a block it is its own blocks. */
function clothBesideBlock(items: Item[], { at, places }: ClothSpokenOf): void {
  const item = items[at]!;
  const isBlock = (x: Item | undefined): boolean =>
    x?.place !== undefined && x.place.kind !== 'part' && x.place.places.length > 0;
  let first = at;
  while (first > 0 && /^(the|all|of|both|whole)$/.test(items[first - 1]!.w)) first--;
  let behind = at + 1;
  while (/^(one|ones|block|blocks)$/.test(items[behind]?.w ?? '')) behind++;
  // "the velvet 's torn and so is"
  const so = items.findIndex(
    (x, k) =>
      k > at && k < at + 7 && x.w === 'so' && /^(is|are|'s|has|have|'ve)$/.test(items[k + 1]?.w ?? ''),
  );
  if (
    so > 0 &&
    items.slice(at + 1, so).some((x) => x.finding) &&
    !items.slice(at + 1, so).some((x) => x.place || /^[.;]$/.test(x.w))
  )
    behind = so + 2;
  else if (/^(and|&|\+)$/.test(items[behind]?.w ?? ''))
    do behind++;
    while (/^(the|all|of|whole|all of|entire)$/.test(items[behind]?.w ?? ''));
  else behind = -1;
  const isSo = behind > at + 2;
  const cue = (k: number): string => items[k]?.w ?? '';
  const end = /^(one|ones|block|blocks|pieces?)$/.test(cue(at + 1)) ? at + 2 : at + 1;
  // "all bunched up in the bottom row and the velvets are faded"
  const said = items.slice(Math.max(0, first - 8), first).some((x) => x.finding);
  const joined =
    (behind > 0 && isBlock(items[behind]) && (isSo || GO_TOGETHER.test(cue(behind + 1)))) ||
    (/^(and|&|\+)$/.test(cue(first - 1)) &&
      isBlock(items[first - 2]) &&
      items[first - 2]!.place!.rule !== 'place.it' &&
      GO_TOGETHER.test(cue(end)) &&
      !(said && /^(are|were|have)$/.test(cue(end)))) ||
    // "2-2 is torn and so's the velvet"
    (/^(is|are|'s)$/.test(cue(first - 1)) &&
      cue(first - 2) === 'so' &&
      said &&
      items.slice(Math.max(0, first - 8), first).some(isBlock) &&
      GO_TOGETHER.test(cue(end)));
  if (joined) item.place = { next: item.j, places, how: 'said', rule: 'place.cloth', kind: 'blocks' };
}

/** What may follow the second of two that are told together: "3-3 is frayed, that's the twill, and the one beside it has a hole" are not. */
const GO_TOGETHER =
  /^(|[.,;:!]|\n|and|are|were|have|need|want|get|both|all|too|as|with|in|now|today|tomorrow|tonight|by|then|done|for|still|only)$/;

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
  widen(item, tokens, place.next);
  return item;
}

/** "or so", "or thereabouts", "or near enough" behind a figure: how many words they are. */
function orSo(tokens: Token[], i: number): number {
  if (tokens[i]?.w !== 'or') return 0;
  if (/^(?:so|thereabouts|thereabout)$/.test(tokens[i + 1]?.w ?? '')) return 2;
  return tokens[i + 1]?.w === 'near' && tokens[i + 2]?.w === 'enough' ? 3 : 0;
}

/** "darned the hole, and the one below it": from then on it is where that hole is. */
function pointBack(ctx: PlaceContext, items: Item[], mentions: Mention[], tokens: Token[]): void {
  const the = items.slice(-3).findIndex((x) => /^(the|that|this)$/.test(x.w));
  if (
    the < 0 ||
    /^(in|on|at|of|between|from|along|near|by|beside|next|below|above|under|underneath|over|that|which|joining|where|just|right|left|either|around|round|down|up|across)$/.test(
      tokens[items.at(-1)!.j]?.w ?? '',
    )
  )
    return;
  const places = findMention(items.slice(-3).slice(the), mentions);
  if (!places || places.length > 4) return;
  if (ctx.focus.length) ctx.earlier.push(ctx.focus);
  ctx.focus = places;
}

/** "row seven, two till half three": the comma at which hours begin, so that no row takes the first of them for its block. */
function stretchAtComma(tokens: Token[]): number {
  for (let c = 1; c < tokens.length - 2; c++)
    if (
      tokens[c]!.w === ',' &&
      (tokens[c + 1]!.kind === 'number' || startsNumber(tokens[c + 1]!.w)) &&
      /^(to|till|til|until)$/.test(tokens[c + 2]!.w)
    ) {
      const span = findSpan(tokens, c + 1, 'none');
      if (span?.sure || (span && tokens[c + 2]!.w !== 'to')) return c;
    }
  return -1;
}

/**
 * "patched 3-2, 20m", "r3 b1 ditto, 25m": minutes where the note tells of a deed or a block and of nothing that is sold by the metre. A quarter of
 * an hour is written so as often as fifteen metres, but never beside cloth that is bought or cut.
 */
function metresAsMinutes(items: Item[], commerce: boolean): void {
  if (
    commerce ||
    !(
      items.length === 1 ||
      items.some(
        (x) =>
          x.action || x.stitch || x.task || x.span || x.clock || x.w === 'off' || x.place?.kind === 'blocks',
      )
    )
  )
    return;
  for (let k = 0; k < items.length; k++) {
    const { quantity, w } = items[k]!;
    if (quantity?.unit !== 'm' || !/^\d+ ?m$/.test(w) || quantity.value! < 5 || quantity.value! > 240)
      continue;
    const before = items[k - 1];
    const after = items[k + 1];
    const rest = after !== undefined && RESTING.test(after.w);
    if (
      (before &&
        !before.action &&
        !before.stitch &&
        !BEFORE_MINUTES.test(before.w) &&
        // "darn 2-2 15m", "patch 5-4 muslin 30m"
        !(
          quantity.value! >= 10 &&
          (before.place?.kind === 'blocks' || items[k - 2]?.place?.kind === 'blocks')
        )) ||
      (after &&
        !rest &&
        !AFTER_MINUTES.test(after.w) &&
        // "1h cutting, 20m piecing": hours of work stand beside it, or what nobody buys by the metre
        !(after.task && (!after.material || items.some((x) => x.duration))) &&
        // "40m unpick", "darn 2-2 15m grey thr"
        !(after.action?.form === 'base' && !after.material && items.length === 2) &&
        !(quantity.value! >= 10 && before?.place?.kind === 'blocks' && items[k - 2]?.action))
    )
      continue;
    if (rest && !items.some((x) => x.span || x.clock || x.task)) continue;
    const said = items.slice(items.slice(0, k).findLastIndex((x) => /^[.;\n]$/.test(x.w)) + 1, k);
    // "backing washed, 25m" took its time; "backing, 6m" is cloth
    const done = said.some(
      (x) => (x.action?.form === 'past' && !/^(cut|measure)$/.test(x.action.v)) || x.w === 'off',
    );
    // nobody lays twenty metres of net over one block
    const many = quantity.value! >= 10 && said.some((x) => x.place?.kind === 'blocks');
    if (
      !done &&
      !many &&
      said.some(
        (x) => x.part || /^(binding|backing|batting|net|thread|tie-thread)$/.test(x.material ?? '') || x.cost,
      )
    )
      continue;
    const item = items[k]!;
    item.duration = { next: quantity.next, minutes: quantity.value!, rule: 'time.minutes' };
    delete item.quantity;
  }
}

/** "50 min cutting 35 piecing", "an hour of tying and 40 on the binding": the unit said before holds for the next kind of work. */
function minutesOfNext(items: Item[]): void {
  const first = items.findIndex((x) => x.duration);
  if (first < 0) return;
  const taskAt = (k: number): boolean => {
    const at = /^(on|of|at)$/.test(items[k]?.w ?? '') ? k + 1 : k;
    return items[/^(the)$/.test(items[at]?.w ?? '') ? at + 1 : at]?.task !== undefined;
  };
  for (let k = first + 2; k < items.length; k++) {
    const item = items[k]!;
    const { quantity } = item;
    if (!quantity || quantity.unit || !quantity.value || quantity.value < 5 || quantity.value > 240) continue;
    // "resewed 2-3, fifteen minutes, and dabbed at the stain in 3-3 for ten", "12 min on 3-3, 8 on the other"
    if (isLengthOfNext(items, first, k)) {
      item.duration = { next: quantity.next, minutes: quantity.value, rule: 'time.minutes' };
      delete item.quantity;
      continue;
    }
    if (!taskAt(k + 1)) continue;
    const told = items.slice(Math.max(0, k - 6), k).findLastIndex((x) => x.duration);
    if (told < 0) continue;
    const at = Math.max(0, k - 6) + told;
    if (!taskAt(at + 1) || items.slice(at, k).some((x) => /^[.;!?\n]$/.test(x.w))) continue;
    item.duration = { next: quantity.next, minutes: quantity.value, rule: 'time.minutes' };
    delete item.quantity;
  }
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

/** Behind a length in minutes: a bare number for which the next thing was done. */
function isLengthOfNext(items: Item[], first: number, k: number): boolean {
  const { duration } = items[first]!;
  if (duration!.rule !== 'time.minutes' || k - first > 16) return false;
  const after = items[k + 1];
  const ends = !after || /^(?:[,.;!?\n]|and|but|then)$/.test(after.w);
  if (items[k - 1]!.w === 'for') return ends && items.slice(first, k).some((x) => x.action || x.place);
  return (
    /^(?:,|and|&)$/.test(items[k - 1]!.w) &&
    after?.w === 'on' &&
    items[first + 1]?.w === 'on' &&
    items.slice(k + 2, k + 4).some((x) => x.place || x.w === 'other')
  );
}

const BEFORE_MINUTES =
  /^([,;.:(=+-]|--|took|abt|about|approx|only|another|less|minus|same|again|same again|ditto|likewise|done|off|shut|closed|over|together|behind|on|down|again|too|by hand|by machine)$/;
const AFTER_MINUTES =
  /^([,;.!)\n(&+-]|in all|all told|total|tot|both|each|ea|for (both|all|the pair|two)|for|in|tog|together|off|break|less|and|so)$/;
const RESTING = /^(tea|supper|lunch|dinner|coffee|break|phone|rest|dog|door|call|nap|cuppa|smoko|off)$/;

/** "the calico was three fifty": a sum behind a material, and no hour. */
const isSum = (tokens: Token[], i: number): boolean =>
  /^(was|were|is|came|cost)$/.test(tokens[i - 1]?.w ?? '') &&
  (Boolean(LEXICON.longestAt(tokens, i - 2)?.payloads.some((s) => s.k === 'material')) ||
    // "bought a fat quarter of rose print that was four fifty"
    (/^(that|which|it|they|those)$/.test(tokens[i - 2]?.w ?? '') &&
      tokens.slice(Math.max(0, i - 24), i - 2).some((t) => /^(bought|got|ordered|picked)$/.test(t.w)) &&
      !tokens.slice(i - 3, i).some((t) => /^(at|when|since|till|until)$/.test(t.w)) &&
      tokens
        .slice(Math.max(0, i - 8), i - 2)
        .some((_t, k, few) =>
          LEXICON.longestAt(tokens, i - 2 - few.length + k)?.payloads.some((s) => s.k === 'material'),
        )));

/** "90 cm iron-on interfacing 6.30": a sum right behind goods with their amount. */
const isListedPrice = (token: Token, before: Item[]): boolean =>
  /^\d+\.\d\d$/.test(token.w) &&
  before.at(-1)?.material !== undefined &&
  before.slice(-4, -1).some((x) => x.quantity?.unit);

const SOLD_BY = /^(pack|packet|package|roll|bolt|spool|reel|skein|ball|hank)s?$/;
/** "a queen size pack of batting thirty two ninety nine": goods and, at the very end, dollars and cents in words. */
/** Things of a shop, and words of the tape measure. */
const SOLD =
  /^(thread|vinegar|net|tulle|muslin|calico|interfacing|fusible|detergent|soap|needles?|sharps|betweens|pins|thimbles?|yarn|floss|wadding|batting|soap|chalk|scissors)$/;
const MEASURED =
  /^(wide|long|width|length|by|x|side|diagonal|diag|strips?|seam|border|cm|mm|inches|used|start|stop|at)$/;
/** The tokens of each sentence: a price ends its own and not the note. */
function sentencesOf(tokens: Token[]): Token[][] {
  const out: Token[][] = [[]];
  for (const t of tokens)
    if (t.kind === 'mark' && /^[.;!?\n]$/.test(t.w)) out.push([]);
    else out.at(-1)!.push(t);
  return out;
}

function tellsPrice(tokens: Token[]): boolean {
  if (tokens.some((_t, i) => isSetBack(tokens, i))) return true;
  // "pins 3.50, needles 2.80"
  if (tokens.filter((t, i) => /^\d{1,3}\.\d\d$/.test(t.w) && i > 0 && SOLD.test(tokens[i - 1]!.w)).length > 1)
    return true;
  // "5 yds at 8.99 = 44.95"
  if (
    tokens.some(
      (t, i) => t.w === '=' && /^\d+\.\d\d$/.test(tokens[i + 1]?.w ?? '') && !readUnit(tokens, i + 2, true),
    )
  )
    return true;
  // "linen for the binding, 1.5 m, 12 a metre"
  if (
    tokens.some(
      (t, i) =>
        /^(\/|a|per)$/.test(t.w) &&
        /^(yd|yard|m|metre|meter|reel|spool|skein|ball|pack|packet|roll)$/.test(tokens[i + 1]?.w ?? '') &&
        tokens[i - 1]?.kind === 'number' &&
        tokens[i - 2]?.w === ',' &&
        tokens.slice(0, i - 2).some((_x, n) => n > 0 && readUnit(tokens, n, true)),
    )
  )
    return true;
  // "olive flannel 11.50/yd", "worked out at 4.20 a yard"
  if (
    tokens.some(
      (t, i) =>
        /^(\/|a|per)$/.test(t.w) &&
        /^(yd|yard|m|metre|meter|reel|spool|skein|ball|pack|packet|roll)$/.test(tokens[i + 1]?.w ?? '') &&
        /\.\d\d$/.test(tokens[i - 1]?.w ?? ''),
    )
  )
    return true;
  const end = tokens.findLastIndex((t) => !/^(?:[.!]|ea|each|tot|total|both)$/.test(t.w));
  const cents = tokens[end];
  // "and a spool of cream thread 3.20", "a thimble, 2.10"
  if (cents?.kind === 'number' && /^\d{1,3}\.\d\d$/.test(cents.w))
    return tokens.some((t) => SOLD_BY.test(t.w) || SOLD.test(t.w)) && !tokens.some((t) => MEASURED.test(t.w));
  if (
    !cents ||
    cents.kind !== 'word' ||
    !startsNumber(cents.w) ||
    !startsNumber(tokens[tokens.indexOf(cents) - 1]?.w ?? '')
  )
    return false;
  if (!/^(ninety|fifty|forty|twenty|nine|five|seventy|eighty)$/.test(cents.w)) return false;
  // "the calico was three fifty"
  const was = tokens.findLastIndex((t) => /^(was|were|is|came|cost)$/.test(t.w));
  return (
    tokens.some((t) => SOLD_BY.test(t.w)) || (was > 0 && tokens.length - was <= 5 && isSum(tokens, was + 1))
  );
}

/** "2-2, 3-3 and 4-4 have holes", then "patched the one in row two": a few blocks that were told together. */
const fewSpokenOf = ({ focus }: PlaceContext): string[] | undefined =>
  focus.length > 1 && focus.length < 7 && focus.every((p) => splitBlock(p)) ? focus : undefined;

/** "the strawberry print has faded, and the piece in row two is torn": of the row, the block of the cloth spoken of. */
function narrowToCloth(
  place: PlaceFound,
  items: Item[],
  spoken: string[] | undefined,
  fabrics: FabricIndex,
): void {
  if (!/row|column/.test(place.rule) || place.places.length < 2) return;
  const lead = items
    .slice(-5, -1)
    .map((x) => x.w)
    .join(' ');
  if (
    !/\b(?:the|that) (?:one|ones|piece|pieces|bit|bits) (?:in|from|on|along|at|down in|up in)(?: the)?$/.test(
      lead,
    )
  )
    return;
  // "the check in row two is torn, the one in row four is fine"
  const names = items.findLast((x) => x.fabric)?.fabric?.names ?? [];
  const cloth = spoken ?? (names.length === 1 ? fabrics.blocks[names[0]!] : undefined);
  const inside = place.places.filter((p) => cloth?.includes(p));
  if (inside.length) place.places = inside;
}

/** Stuff that is put in, and not what lies there: "with the red dot in row three", "a piece of the check from the end". */
const PUT_IN =
  / (with|w|from|using|bought|of|out|into|onto|a|an|some|yards?|metres?|piece|scrap|bit|for|used) /;
const TO_ITS_PLACE =
  /^(in|on|at|of|along|down|up|over|from|by|near|inside|within|the|that|this|its|one|ones|block|blocks|piece|pieces|square|squares|there)$/;

/** "the duck in row two", "the shattered taffeta in the first row", "the tweed in the corner": of the place, the cloth's own blocks. */
function narrowToNamedCloth(
  items: Item[],
  grid: QuiltGrid,
  fabrics: FabricIndex,
  after: Token | undefined,
): void {
  const item = items.at(-1)!;
  const place = item.place!;
  const corner = CORNERS[place.places.length === 1 ? place.places[0]! : ''];
  if (item.fabric || (!corner && (place.places.length < 2 || place.kind !== 'blocks'))) return;
  let k = items.length - 2;
  while (k >= 0 && k > items.length - 6 && TO_ITS_PLACE.test(items[k]!.w)) k--;
  // "lavender check, col 4: both faded"
  const heading = after !== undefined && /^(:|-|--)$/.test(after.w) && opensSentence(items, k - 1);
  if (heading && items[k]?.w === ',' && k === items.length - 2 && items[k - 1]?.fabric) k--;
  const cloth = items[k]?.fabric;
  if (!cloth || items[k]!.place || k === items.length - 2) return;
  const lead = items.slice(Math.max(0, k - 4), k).map((x) => x.w);
  if (
    PUT_IN.test(` ${lead.slice(-3).join(' ')} `) &&
    !/ (all|each|every|both|piece) of (the )?$/.test(` ${lead.join(' ')} `)
  )
    return;
  const blocks = cloth.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const named = corner ? [corner(grid)] : place.places;
  const inside = named.filter((p) => blocks.includes(p));
  if (!inside.length || (!corner && inside.length === named.length)) return;
  const { soft: _soft, ...kept } = place;
  item.place = { ...kept, places: inside, kind: 'blocks', rule: 'place.cloth-within' };
}
const opensSentence = (items: Item[], k: number): boolean =>
  k <= 0 || /^[.;\n]$/.test(items[k - 1]!.w) || (items[k - 1]!.w === 'the' && opensSentence(items, k - 1));

/** "r3 teal dot: torn": of the row named first, the cloth's own blocks. */
function narrowToClothBehind(items: Item[], fabrics: FabricIndex): void {
  const place = items.at(-2)?.place;
  const cloth = items.at(-1)!.fabric!;
  if (!place || place.kind !== 'blocks' || place.places.length < 2 || !opensSentence(items, items.length - 2))
    return;
  const blocks = cloth.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const inside = place.places.filter((p) => blocks.includes(p));
  if (!inside.length || inside.length === place.places.length) return;
  items.at(-2)!.place = { ...place, places: inside, rule: 'place.cloth-within' };
}

const CORNERS: Record<string, (grid: QuiltGrid) => string> = {
  'corner-top-left': () => '1-1',
  'corner-top-right': ({ blocks }) => `1-${blocks}`,
  'corner-bottom-left': ({ rows }) => `${rows}-1`,
  'corner-bottom-right': ({ rows, blocks }) => `${rows}-${blocks}`,
};

/** "the scarlet", "there's a hole in the scarlet one": the block of a cloth that is in but one, where it is not put in. */
function onlyBlockOf(items: Item[], fabrics: FabricIndex): string | undefined {
  const at = items.length - 1;
  const blocks = items[at]!.fabric!.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const lead = ` ${items
    .slice(Math.max(0, at - 3), at)
    .map((x) => x.w)
    .join(' ')} `;
  return blocks.length === 1 &&
    !/ (?:with|w|from|using|bought|a|an|some|yards?|metres?|piece|scrap|bit|for|used|into|onto) /.test(lead)
    ? blocks[0]
    : undefined;
}

/** "the strawberry print has faded", "about the sateen": the cloth's blocks, where it is spoken of and not put in. */
function blocksOfSubject(items: Item[], fabrics: FabricIndex, next: Token | undefined): string[] {
  const at = items.length - 1;
  const names = items[at]!.fabric!.names;
  if (names.length !== 1) return [];
  const lead = items.slice(Math.max(0, at - 4), at).map((x) => x.w);
  // "Stains, teal dot."
  const alone = lead.at(-1) === ',' && lead.length < 3 && (!next || /^[.;\n]$/.test(next.w));
  if (
    !alone &&
    !/^(the|all|every|both|each|those|that|two|three|four|five|six|[2-6]|)$/.test(lead.at(-1) ?? '') &&
    !/ (there 's|there is)$/.test(` ${lead.join(' ')}`)
  )
    return [];
  // "one of the checks is torn, the left-hand one"
  if (
    / (every|all|every bit|every scrap|rest|most|each|both|one|two|either|neither|third|half|quarter|part|much|corner|edge|middle|centre|center) of the $/.test(
      ` ${lead.join(' ')} `,
    )
  )
    return fabrics.blocks[names[0]!] ?? [];
  // "Of the olive twill, 2-2 and 2-5 have crepeline over them": what is told of
  if (lead.at(-2) === 'of' && /^(|[.;:\n])$/.test(items[at - 3]?.w ?? ''))
    return fabrics.blocks[names[0]!] ?? [];
  if (
    / (with|w|from|using|bought|of|in|into|onto|a|some|yards?|metres?|piece|scrap|bit|for|used) /.test(
      ` ${lead.slice(-2).join(' ')} `,
    )
  )
    return [];
  return fabrics.blocks[names[0]!] ?? [];
}

const MEASURE_TALK = wordSet(
  'measured measure measures wide width long length border borders inches inch in cm mm centimetre centimetres centimeter centimeters diagonal diagonals diag diags by x × seam seams w',
);

/** "blocks 10", "blocks 11 1/2 in": the size of the blocks and no block, where a note tells lengths. */
function blockSize(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(blocks|blks)$/.test(token.w)) return oneBlockSize(tokens, i);
  const before = tokens[i - 1]?.w ?? '';
  let k = i + 1;
  // "with blocks of 30 cm"
  const of = tokens[k]?.w === 'of';
  if (of || tokens[k]?.w === ':' || tokens[k]?.w === '=') k++;
  const quantity = findQuantity(tokens, k);
  if (!quantity?.value || (of && !quantity.unit)) return undefined;
  // "two and a half yards long blocks eleven inches"
  if (
    !/^(,|\.|;|the|and|with|)$/.test(before) &&
    (!quantity.unit || !/^(long|wide|inches|in|cm|high|tall)$/.test(before))
  )
    return undefined;
  const after = tokens[quantity.next]?.w ?? '';
  if (!quantity.unit && !/^(,|\.|;|)$/.test(after)) return undefined;
  if (quantity.unit && !/^(in|cm|mm|ft)$/.test(quantity.unit)) return undefined;
  // "blocks 3, 4 and 5" is a list of blocks
  if (!quantity.unit && after === ',' && tokens[quantity.next + 1]?.kind === 'number') return undefined;
  return { ...makeItem(i, i + 1, token.w, token), measure: 'block' };
}

/** `block 12", border 4"` */
function oneBlockSize(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(block|blk)$/.test(token.w) || !/^(,|\.|;|)$/.test(tokens[i - 1]?.w ?? '')) return undefined;
  const quantity = findQuantity(tokens, i + 1);
  const unit = tokens[(quantity?.next ?? 0) - 1]?.w ?? '';
  if (
    !quantity?.value ||
    !(
      /^("|inch|inches|cm|mm)$/.test(unit) ||
      (!quantity.unit &&
        (!Number.isInteger(quantity.value) ||
          // "sizes in cm: w 150, l 190, block 30"
          (quantity.value > 15 && tokens.some((t) => /^(?:cm|mm)$/.test(t.w)))))
    ) ||
    !/^(,|\.|;|)$/.test(tokens[quantity.next]?.w ?? '')
  )
    return undefined;
  return { i, j: i + 1, w: token.w, token, measure: 'block' };
}

/** "L 204, R 204.5": the letters of two sides, where a block could not be meant. */
function sideLetter(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (token.w !== 'r' && token.w !== 'l') return undefined;
  const k = /^(side|edge|:|=)$/.test(tokens[i + 1]?.w ?? '') ? i + 2 : i + 1;
  const quantity = tokens[k]?.kind === 'number' ? findQuantity(tokens, k) : undefined;
  // "border L 9.5 cm, R 9": the other side was told just before
  const other = (): boolean =>
    tokens[i - 1]?.w === ',' &&
    tokens.slice(Math.max(0, i - 6), i).some((t) => t.w === 'l' || t.w === 'left');
  if (!quantity?.value) return undefined;
  if (quantity.value < 20 && Number.isInteger(quantity.value) && !quantity.unit && !other()) return undefined;
  if (quantity.unit && !/^(in|cm|mm|ft|m)$/.test(quantity.unit)) return undefined;
  return {
    ...makeItem(i, i + 1, token.w, token),
    ...(token.w === 'l' ? { measure: 'length' as const } : {}),
  };
}

/** "1/4 seams", "seams 3/8, top 71 in": how much is sewn in, and no block. */
function seamFraction(tokens: Token[], i: number): Item | undefined {
  const [above, slash, below] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (slash?.w !== '/' || !/^[1357]$/.test(above!.w) || !/^(?:4|8|16)$/.test(below?.w ?? ''))
    return undefined;
  if (!tokens.some((t) => /^(?:in|inch|inches|"|cm|mm|ft)$/.test(t.w))) return undefined;
  const seams = /^(?:seams?|sa|allowance|allowances)$/;
  const before = /^(?:of|is|are|at|:|=)$/.test(tokens[i - 1]?.w ?? '') ? i - 2 : i - 1;
  const after = tokens[i + 3]?.w ?? '';
  if (!seams.test(after) && !(seams.test(tokens[before]?.w ?? '') && /^[,.;&]?$/.test(after)))
    return undefined;
  const quantity = { next: i + 3, value: above!.value! / below!.value!, rule: 'amount.number' };
  return { ...makeItem(i, i + 3, `${above!.w} / ${below!.w}`, above!), end: below!.to, quantity };
}

/** "one diagonal at 99 inches and the other at 101": a length where lengths are told, and not one minute past one. */
function lengthForClock(item: Item, before: Item[]): void {
  const { clock, token } = item;
  if (clock!.firm || clock!.fixed || !/^\d{3}$/.test(token.w) || item.j !== item.i + 1) return;
  const last = before.findLast(
    (x) => x.quantity?.unit || /^(start|stop|quit|finish|beg[aiu]n|back|since|until|till|done|off)/.test(x.w),
  );
  if (!last?.quantity?.unit || !LENGTH_UNIT_SET.has(last.quantity.unit)) return;
  item.quantity = { next: item.j, value: Number(token.w), rule: 'amount.number' };
  item.clock = undefined;
}

const SIDE = wordSet('top bottom btm left right l r t b');
/** "top 1.62 m, bottom 1.6, left 2.05": a length behind each side, and no block. */
function sideLength(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (token.kind !== 'number' || !SIDE.has(tokens[i - 1]?.w ?? '') || !/^\d+\.\d+$/.test(token.w))
    return undefined;
  const quantity = findQuantity(tokens, i);
  if (!quantity || (quantity.unit && !/^(in|cm|mm|ft|m)$/.test(quantity.unit))) return undefined;
  return {
    i,
    j: quantity.next,
    w: tokens
      .slice(i, quantity.next)
      .map((t) => t.w)
      .join(' '),
    token,
    end: tokens[quantity.next - 1]!.to,
    quantity,
  };
}

const CENTIMETRES = wordSet('cm centimetre centimetres centimeter centimeters');
/** "one eighty by two ten centimetres", "two oh five long" where centimetres are told: 180, 210, 205. */
function threeFigures(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(?:one|two|three)$/.test(token.w) || /^(?:rows?|columns?|blocks?)$/.test(tokens[i - 1]?.w ?? ''))
    return undefined;
  const oh = tokens[i + 1]?.w === 'oh';
  const rest = readCount(tokens, oh ? i + 2 : i + 1);
  if (!rest?.inWords || (oh ? rest.value > 9 : rest.value < 10 || rest.value > 99)) return undefined;
  const unit = readUnit(tokens, rest.next, false);
  const after = tokens[rest.next]?.w ?? '';
  if (
    unit
      ? unit.unit !== 'cm'
      : tokens[i - 1]?.w !== 'by' && !/^(?:by|wide|across|long|high|down|x|×)$/.test(after)
  )
    return undefined;
  const next = unit ? unit.next : rest.next;
  const value = readCount(tokens, i)!.value * 100 + rest.value;
  return {
    ...makeItem(
      i,
      next,
      tokens
        .slice(i, next)
        .map((t) => t.w)
        .join(' '),
      token,
    ),
    end: tokens[next - 1]!.to,
    quantity: { next, value, ...(unit ? { unit: 'cm' as const } : {}), rule: 'amount.number' },
  };
}

const MILLIMETRES = wordSet('mm mil mils millimetre millimetres millimeter millimeters');
/** "sixteen twenty", "eighteen oh five" where millimetres are told: 1620, 1805. */
function fourFigures(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  const first = token.kind === 'word' ? readCount(tokens, i) : undefined;
  if (!first || first.value < 10 || first.value > 99) return undefined;
  const oh = tokens[first.next]?.w === 'oh';
  const second = readCount(tokens, oh ? first.next + 1 : first.next);
  if (!second?.inWords || (oh ? second.value > 9 : second.value < 10)) return undefined;
  const unit = readUnit(tokens, second.next, false);
  if (unit && unit.unit !== 'mm' && unit.unit !== 'ml') return undefined;
  const next = unit?.next ?? second.next;
  const words = tokens.slice(i, next).map((t) => t.w);
  return {
    ...makeItem(i, next, words.join(' '), token),
    end: tokens[next - 1]!.to,
    quantity: { next, value: first.value * 100 + second.value, unit: 'mm', rule: 'amount.four-figures' },
  };
}

/** Places named one after the other with only "and" or a comma between are one group. */
/** "the gingham in row two is torn, the other two are fine": of one of its blocks the cloth's others can be spoken of. */
function rememberCloth(ctx: PlaceContext, found: PlaceFound, items: Item[], fabrics: FabricIndex): void {
  if (!/^place\.cloth-(?:block|within)$/.test(found.rule)) return;
  const names = items.findLast((x) => x.fabric)?.fabric?.names ?? [];
  const blocks = names.flatMap((name) => fabrics.blocks[name] ?? []);
  if (blocks.length > found.places.length && found.places.every((p) => blocks.includes(p)))
    ctx.earlier.push(blocks);
}

function moveFocus(ctx: PlaceContext, found: PlaceFound, items: Item[]): void {
  const before = items.at(-2);
  // the seams "2-1/2-2 and 3-1/3-2" are one group as well
  const joint = before && /^(,|and|&|\+|\/)$/.test(before.w) ? items.at(-3) : undefined;
  if (found.rule === 'place.it' || found.rule === 'place.them') {
    if (found.places !== ctx.focus && found.places.length) {
      ctx.earlier.push(ctx.focus);
      ctx.focus = found.places;
    }
    return;
  }
  if (joint?.place && joint.place.kind !== 'part' && joint.place.places.length && found.kind !== 'pointer') {
    ctx.focus = [...new Set([...ctx.focus, ...found.places])];
    return;
  }
  if (ctx.focus.length) ctx.earlier.push(ctx.focus);
  // "the blue: a hole in 3-1, the other two are sound": one of the cloth's blocks, so that the others are known
  const { cloth } = ctx;
  if (
    cloth &&
    // "the twill: a new piece for the top one. The bottom one stays"
    (found.kind === 'blocks' || (found.rule === 'place.one-of-them' && !ctx.earlier.includes(cloth))) &&
    found.places.length < cloth.length &&
    found.places.every((p) => cloth.includes(p))
  )
    ctx.earlier.push(cloth);
  ctx.focus = found.places;
}

/** "not row three, row four": what is denied at the beginning of a note ends at the comma. */
function blocksAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (i > 0 && i < 6 && /^(not|n't)$/.test(tokens[i - 1]!.w)) {
    const comma = tokens.findIndex((t, k) => k > i && t.w === ',');
    if (comma > 0) return findBlocks(tokens.slice(0, comma), i, ctx);
  }
  return findBlocks(tokens, i, ctx);
}

const OF_THE_QUILT = /^(?:quilt|coverlet|comforter|throw|bedspread|spread|blanket|top)$/;

/** Where "the top right corner of the quilt" ends: a side or corner needs no other place behind it. */
function pastTheQuilt(tokens: Token[], { places, next }: PlaceFound): number {
  if (!places.length || !places.every((p) => /^(?:corner|edge|border)-/.test(p)) || tokens[next]?.w !== 'of')
    return next;
  const at = /^(?:the|this|that)$/.test(tokens[next + 1]?.w ?? '') ? next + 2 : next + 1;
  return OF_THE_QUILT.test(tokens[at]?.w ?? '') && !tokens[at + 1]?.w.startsWith('row') ? at + 1 : next;
}

function itemAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  fabrics: FabricIndex,
  commerce: boolean,
  work: boolean,
  items: Item[],
): Item {
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
    widen(item, tokens, thread);
    return item;
  }
  // "0910 survey", "1340: piecing"
  const opens =
    i === 0 &&
    /^(?:[01]\d|2[0-3])[0-5]\d$/.test(token.w) &&
    namesWork(tokens, /^[:,-]$/.test(tokens[1]?.w ?? '') ? 2 : 1);
  const twelve = TWELVE.has(token.w);
  const mendsClock = work && (numeric || twelve) ? correctsClock(items) : undefined;
  const expected =
    work &&
    (numeric || twelve || ROUGHLY.has(token.w)) &&
    (mendsClock !== undefined || isClockExpected(tokens, i));
  if (numeric || twelve || expected) {
    const listed = listedAfter(items);
    const led = before === 'from' ? 'from' : before === 'between' ? 'between' : 'none';
    const block = blocksAt(tokens, i, ctx);
    // Two bare numbers are a block before they are a stretch of time: "between 5-1 and 5-2", "three one to three four".
    const named = block !== undefined && (block.places.length > 0 || tokens[i + 1]?.w === '-');
    const span = findSpan(
      tokens,
      i,
      led !== 'none'
        ? led
        : STRONG_LEADS.has(before) || mendsClock === 'moment'
          ? 'since'
          : listed !== undefined || mendsClock === 'stretch'
            ? 'from'
            : led,
    );
    const timely = span && (span.sure || STRONG_LEADS.has(before));
    const another =
      listed !== undefined &&
      span !== undefined &&
      isLater(span, listed) &&
      /^(|,|\.|;|on|at|of|doing|and|\w+ing)$/.test(tokens[span.next]?.w ?? '');
    if (
      span &&
      (!named ||
        another ||
        (timely &&
          (span.next > block.next ||
            !block.places.length ||
            DAY.test(before) ||
            hoursOfWork(tokens, i, span.next))))
    ) {
      item.span = span;
      widen(item, tokens, span.next);
      return item;
    }
    const duration = findDuration(tokens, i);
    const clock = findClock(tokens, i, expected || opens);
    if (duration && (!clock || duration.next >= clock.next)) {
      item.duration = duration;
      widen(item, tokens, duration.next);
      return item;
    }
    const quantity = findQuantity(tokens, i);
    const cost = findCost(tokens, i, commerce);
    if (
      clock &&
      // "it's 143 by 190 cm"
      !(/^(by|x|×)$/.test(tokens[clock.next]?.w ?? '') && isNumberAt(tokens, clock.next + 1)) &&
      !(
        cost &&
        (cost.next > clock.next ||
          (cost.next === clock.next &&
            !clock.firm &&
            (isSum(tokens, i) || (commerce && isListedPrice(token, items)))))
      ) &&
      !(quantity?.unit && quantity.next >= clock.next) &&
      !(named && !clock.firm && block.next >= clock.next && !STRONG_LEADS.has(before) && !mendsClock)
    ) {
      item.clock = clock;
      widen(item, tokens, clock.next);
      return item;
    }
    if (
      cost &&
      (!quantity?.unit || cost.next > quantity.next) &&
      !(block?.places.length && block.next >= cost.next && !/[£$€]/.test(token.w))
    ) {
      item.cost = cost;
      widen(item, tokens, cost.next);
      return item;
    }
    if (block && !(quantity?.unit && quantity.next > block.next && quantity.unit !== 'piece')) {
      item.place = block;
      widen(item, tokens, block.next);
      return item;
    }
    // "one below it", "two along from that"
    const beside =
      quantity && !quantity.unit ? (sidedPlace(tokens, i, ctx) ?? findPointer(tokens, i, ctx)) : undefined;
    if (beside && beside.next > quantity!.next) {
      item.place = beside;
      widen(item, tokens, beside.next);
      return item;
    }
    // "pieced in a new one brown serge on the machine": a pronoun, and no count
    if (quantity && !(token.w === 'one' && !quantity.unit && /^(new|fresh|other|different)$/.test(before))) {
      // "two spot-cleaned", "one" as a pronoun: a bare small word number is only a number where something is counted.
      item.quantity = quantity;
      widen(item, tokens, quantity.next);
      return item;
    }
  }
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
    widen(item, tokens, cost.next);
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
    widen(item, tokens, spent.next);
    return item;
  }
  const block = blocksAt(tokens, i, ctx) ?? sidedPlace(tokens, i, ctx);
  const pointed = findPointer(tokens, i, ctx);
  const place = !block ? pointed : !pointed ? block : pointed.next > block.next ? pointed : block;
  const fabric = findFabric(tokens, i, fabrics);
  const plain = phraseAt(tokens, i);
  const hedged = hedgedPhraseAt(tokens, i);
  const hit = hedged && hedged.next > (plain?.next ?? 0) ? hedged : plain;
  const longest = Math.max(place?.next ?? 0, fabric?.next ?? 0, hit?.next ?? 0);
  const picked = findClothBlock(tokens, i, fabrics, fabric);
  if (picked && picked.place.next > longest) {
    item.place = picked.place;
    item.fabric = picked.fabric;
    widen(item, tokens, picked.place.next);
    return item;
  }
  if (longest === 0) {
    if (
      token.w === 'a' ||
      token.w === 'an' ||
      token.w === 'another' ||
      token.w === 'inch' ||
      token.w === 'yard'
    ) {
      const quantity = findQuantity(tokens, i);
      if (quantity?.unit) {
        item.quantity = quantity;
        widen(item, tokens, quantity.next);
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
    widen(item, tokens, pastTheQuilt(tokens, place));
    // "the left binding", told by its edge
    if (place.kind === 'part' && / (?:bindings?|bdg)$/.test(item.w))
      applySenses(item, LEXICON.longestAt(tokens, longest - 1)?.payloads ?? []);
    return item;
  }
  widen(item, tokens, longest);
  if (hedged && hit === hedged && hit.next === longest) item.w = hedged.words;
  if (fabric && fabric.next === longest) {
    item.fabric = fabric.found;
    item.material = 'fabric';
  }
  if (hit && hit.next === longest) applySenses(item, hit.payloads);
  if ((item.w === 'back' && !isBacking(tokens, i)) || (item.w === 'top' && !isPatchwork(tokens, i))) {
    item.part = undefined;
    item.material = undefined;
    item.object = undefined;
  }
  // "a splash of vinegar": a little of what was used, and nothing spilt
  if (/^(splash|blob|dribble|drip|smear)$/.test(item.w) && tokens[item.j]?.w === 'of')
    if (LEXICON.longestAt(tokens, item.j + 1)?.payloads.some((s) => s.k === 'material'))
      item.finding = undefined;
  // "ran out before the bottom": of binding, and no dye
  if (item.finding === 'dye-bleed' && /^(ran|run|running)$/.test(item.w) && tokens[item.j]?.w === 'out')
    item.finding = undefined;
  // "I'm fixing to take the binding off": a plan, and no mending
  if (/^fixing?$/.test(item.w) && tokens[i + 1]?.w === 'to') {
    item.task = undefined;
    item.action = undefined;
  }
  // "out on the line", "a line of stitching": only "to line it" is a deed
  if (
    /^lines?$/.test(item.w) &&
    !/^(|[.,;:\n-]|--|to|will|'ll|n't|not|i|we|gonna|could|might|may|should|must|and|or|then|maybe|perhaps|possibly|better|tomorrow|next)$/.test(
      tokens[i - 1]?.w ?? '',
    ) &&
    !(tokens[i - 1]!.w === "'s" && tokens[i - 2]?.w === 'let')
  )
    item.action = undefined;
  // "squares 3-1 and 3-2 have been treated": the word for blocks, and no squaring up
  if (/^squares?$/.test(item.w) && blocksAt(tokens, item.j, ctx)?.places.length) item.action = undefined;
  if (item.part && !item.place)
    item.place = { next: longest, places: [item.part], how: 'said', rule: 'place.part', kind: 'part' };
  return item;
}

/** A phrase of the lexicon; "the blocks are sound" tells no size, and the verb is no part of it. */
function phraseAt(tokens: Token[], i: number): ReturnType<typeof LEXICON.longestAt> {
  const hit = LEXICON.longestAt(tokens, i);
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

/** A finder that looks past the last word ("both of", "£3 /") ends where the note ends. */
function widen(item: Item, tokens: Token[], reached: number): void {
  const next = Math.min(reached, tokens.length);
  item.j = next;
  item.w = tokens
    .slice(item.i, next)
    .map((t) => t.w)
    .join(' ');
  item.end = tokens[next - 1]!.to;
}

/** "quit at nine fifteen, need to buy more thread": when the work stopped, and no price. */
const tellsMoment = (tokens: Token[], i: number): boolean =>
  /\b(?:quit|quitting|stop|stopped|stopping|start|started|starting|begin|began|begun|beginning|finish|finished|finishing|back|worked|working|mending|piecing|tying|quilting|sewing|(?:packed|packing|wrapped|wrapping|gave|give|got|knocked|broke|clocked|knocking|jacked)(?: it)? (?:in|up|off|out|on|to))(?: (?!(?:bought|paid|cost|costs|was|were|yards?|metres?|spools?|balls?|packs?)\b)[a-z]+){0,4}$/.test(
    tokens
      .slice(Math.max(0, i - 6), i)
      .map((t) => t.w)
      .join(' '),
  );

/** Does a note end in the name of a kind of work from token `k` on? */
const namesWork = (tokens: Token[], k: number): boolean => {
  const hit = LEXICON.longestAt(tokens, k);
  return (
    Boolean(hit?.payloads.some((s) => s.k === 'task')) && /^(|[.;,\n])$/.test(tokens[hit!.next]?.w ?? '')
  );
};

/** "spent 18 on batting", "spent twenty on some thread": a round sum, where goods are named that it went on. */
function spentOn(tokens: Token[], i: number): CostFound | undefined {
  let k = i + 1;
  while (/^(about|around|nearly|another|over)$/.test(tokens[k]?.w ?? '')) k++;
  const sum = readCount(tokens, k);
  if (!sum || tokens[sum.next]?.w !== 'on') return undefined;
  let on = sum.next + 1;
  while (/^(the|some|more|a|new|my|enough|good)$/.test(tokens[on]?.w ?? '')) on++;
  const goods = LEXICON.longestAt(tokens, on)?.payloads;
  return goods?.some((s) => s.k === 'material') &&
    !goods.some((s) => s.k === 'task' || (s.k === 'part' && tokens[on - 1]?.w === 'the'))
    ? { amount: sum.value, next: sum.next, each: false, rule: 'cost.spent-on' }
    : undefined;
}

const THREAD_NUMBER = /^(?:number|size|no|nr)$/;
/** "number fifty cotton", "no. 40 thread", "size 12 perle", "50 weight cotton", "50wt thread": the number tells which thread. Where it ends. */
function numberedThread(tokens: Token[], i: number): number | undefined {
  const led = THREAD_NUMBER.test(tokens[i]!.w);
  let k = led ? i + 1 : i;
  if (led && tokens[k]?.w === '.') k++;
  const count = readCount(tokens, k);
  if (!count) return undefined;
  k = count.next;
  const weight = /^(?:weight|wt)$/.test(tokens[k]?.w ?? '');
  if (weight) k++;
  if (!led && !weight) return undefined;
  if (
    /^(?:pearl|perle|silk|linen|quilting|sewing)$/.test(tokens[k]?.w ?? '') &&
    /^(?:cotton|thread)$/.test(tokens[k + 1]?.w ?? '')
  )
    k++;
  return /^(?:cotton|thread|linen|silk|perle|pearl)$/.test(tokens[k]?.w ?? '') ? k + 1 : undefined;
}

/** Right behind the name of a day two numbers with a dash are hours, where a kind of work follows. */
const DAY = /^(mon|tues?|wed|thur?s?|fri|sat|sun)(day|nesday|sday|urday)?$/;
const TWELVE = wordSet('noon midday midnight');
const ROUGHLY = wordSet('about around just like roughly oh maybe say gone nearly bang only somewhere');
/** Is what stands at `i` a clock time, in a note that tells of work? */
const isClockExpected = (tokens: Token[], i: number): boolean =>
  // "pieced from 5 strips"
  !/^(strips?|pieces?|scraps?|lengths?|widths?|squares|blocks|patches|sides|edges|corners)$/.test(
    tokens[i + 1]?.w ?? '',
  ) &&
  ((CLOCK_LEADS.has(tokens[i - 1]?.w ?? '') && !isSecondSide(tokens, i)) ||
    clockAwaited(tokens, i) ||
    // "that was three till now"
    (/^(till|until|til)$/.test(tokens[i + 1]?.w ?? '') &&
      tokens[/^(just|right)$/.test(tokens[i + 2]?.w ?? '') ? i + 3 : i + 2]?.w === 'now'));

const isWrittenDay = (tokens: Token[], i: number): boolean =>
  /^\d{4}$/.test(tokens[i]!.w) &&
  /^-\d\d-\d\d$/.test(
    tokens
      .slice(i + 1, i + 5)
      .map((t) => t.w)
      .join(''),
  );

/** "9-11.30, 12-1", "9.40 to 11.15, then 1.30 to 3": the end of the stretch of time that a list has begun with. */
function listedAfter(items: Item[]): number | undefined {
  let k = items.length - 1;
  while (k >= 0 && k >= items.length - 3 && /^(,|and|&|\+|then|again|;)$/.test(items[k]!.w)) k--;
  // "9-11 mending, 1-3 piecing"
  const joined = k < items.length - 1;
  while (
    joined &&
    k > 0 &&
    (items[k]!.task || /^(on|at|doing|of|the)$/.test(items[k]!.w)) &&
    k > items.length - 7
  )
    k--;
  return joined ? items[k]?.span?.end.minute : undefined;
}
/** "at one no one twenty", "from nine, wait, nine thirty till ten": a time is put right, and the next number is one too. */
function correctsClock(items: Item[]): 'moment' | 'stretch' | undefined {
  let k = items.length - 1;
  let marked = false;
  while (k > 0 && k >= items.length - 6 && PUTS_RIGHT.has(items[k]!.w)) {
    marked ||= /^(no|wait|sorry|rather|exactly|precisely|correction|mean|make)$/.test(items[k]!.w);
    k--;
  }
  if (!marked || !(items[k]?.clock || items[k]?.span)) return undefined;
  // "from ten past one, sorry, ten to one, until three": a clock again
  if (items[k]!.clock?.rule === 'time.past-to') return 'moment';
  return items[k]!.span || /^(from|between)$/.test(items[k - 1]?.w ?? '') ? 'stretch' : 'moment';
}
const PUTS_RIGHT = wordSet(
  'no wait sorry or rather more exactly precisely correction i mean make that it was at from hang hold on actually , - --',
);
/** Does a stretch begin after another has ended, by less than half a day? */
const isLater = (span: { start: { minute: number }; end: { minute: number } }, after: number): boolean =>
  (span.start.minute - after + 1440) % 720 < 420 && (span.end.minute - span.start.minute + 1440) % 720 < 420;

/** "75 centimetres by 110": the other side of what is measured, and no time. */
const isSecondSide = (tokens: Token[], i: number): boolean =>
  tokens[i - 1]?.w === 'by' &&
  (/^(in|inch|inches|cm|mm|m|ft|foot|feet|centimetres?|centimeters?|metres?|meters?|")$/.test(
    tokens[i - 2]?.w ?? '',
  ) ||
    tokens[i - 2]?.kind === 'number');

/** "survey done 7.40", "it's ten to nine": a time although no "at" stands before it. */
function clockAwaited(tokens: Token[], i: number): boolean {
  const before = tokens[i - 1]?.w ?? '';
  if (before === "'s" && /^(it|now)$/.test(tokens[i - 2]?.w ?? '')) return true;
  // "1045 started survey"
  if (
    /^([01]?\d|2[0-3])[.:]?[0-5]\d$/.test(tokens[i]!.w) &&
    (i === 0 || /^[.;,\n]$/.test(before)) &&
    /^(started|start|starting|began|begin|beginning|stopped|stop|stopping|finished|finish|quit|survey|back|done)$/.test(
      tokens[i + 1]?.w ?? '',
    )
  )
    return true;
  // "0905 on, mending", "11.40 off"
  if (
    /^(?:[01]\d|2[0-3])[0-5]\d$|^(?:[01]?\d|2[0-3])[.:][0-5]\d$/.test(tokens[i]!.w) &&
    (i === 0 || /^[.;,\n]$/.test(before)) &&
    /^(?:on|off|in|out)$/.test(tokens[i + 1]?.w ?? '') &&
    /^(?:|,|;|\.|-|\n)$/.test(tokens[i + 2]?.w ?? '')
  )
    return true;
  // "start survey 0915"
  const figures =
    /^0\d[0-5]\d$/.test(tokens[i]!.w) ||
    // "ceased 1030", "resumed 1100 with the survey"
    (/^(?:1\d|2[0-3])[0-5][05]$/.test(tokens[i]!.w) &&
      /^(ceased|ended|stopped|finished|started|resumed|commenced|began|restarted|paused|completed|complete|quit|until|till|from|off|back)$/.test(
        before,
      ));
  // "finished mending 415", "done for today 245"
  const bare =
    /^(?:1[0-2]|[1-9])[0-5][05]$/.test(tokens[i]!.w) &&
    /^(?:mending|cutting|piecing|tying|quilting|binding|cleaning|basting|layering|today|tonight|survey)$/.test(
      before,
    ) &&
    !/^(?:cm|mm|in|m|yd|yds|yards?|ml|g|x|by|stitches|ties|blocks|pieces|minutes|mins?)$/.test(
      tokens[i + 1]?.w ?? '',
    );
  if (!figures && !bare && !/^([01]?\d|2[0-3])[.:][0-5]\d$/.test(tokens[i]!.w)) return false;
  for (let k = i - 1; k >= Math.max(0, i - 3); k--)
    if (
      /^(done|finished|finish|stopped|stop|started|start|begin|began|off|on|over|closed|ended|quit|back|paused|resum(?:ed?|ing)|commenced|survey|mending|cutting|piecing|tying|quilting|binding|cleaning|basting|layering|unpicking|paperwork)$/.test(
        tokens[k]!.w,
      )
    )
      return !/^(cm|mm|in|m|yd|yds|yards?|metres?|inches|g|oz|ml|each|apiece|ea)$/.test(
        tokens[i + 1]?.w ?? '',
      );
  return false;
}

const NUMBER_STARTS = new Set([
  ...COUNT_WORDS.slice(1),
  ...TEN_WORDS,
  ...'fourty a an half quarter hundred couple dozen another hour hr inch yard metre meter'.split(' '),
]);
/** Stitch words that may be something else. */
const WEAK_STITCHES = new Set([
  'hand',
  'machine',
  'blanket',
  'running',
  'slip',
  'ladder',
  'whip',
  'ditch',
  'couch',
  'straight',
  'mach',
  'little running',
]);
const isNumberAt = (tokens: Token[], i: number): boolean =>
  tokens[i]?.kind === 'number' || startsNumber(tokens[i]?.w ?? '');
const startsNumber = (word: string): boolean => NUMBER_STARTS.has(word);

function applySenses(item: Item, senses: { k: string; v?: unknown; form?: unknown }[]): void {
  for (const s of senses) {
    if (s.k === 'finding') item.finding ??= s.v as NonNullable<Item['finding']>;
    else if (s.k === 'fail') item.fail = true;
    else if (s.k === 'seam') item.seam = true;
    else if (s.k === 'stitches') item.stitches = true;
    else if (s.k === 'action') item.action ??= { v: s.v, form: s.form } as NonNullable<Item['action']>;
    else if (s.k === 'stitch') item.stitch ??= s.v as NonNullable<Item['stitch']>;
    else if (s.k === 'material') item.material ??= s.v as NonNullable<Item['material']>;
    else if (s.k === 'object') item.object ??= s.v as NonNullable<Item['object']>;
    else if (s.k === 'part') item.part ??= s.v as string;
    else if (s.k === 'task') item.task ??= s.v as NonNullable<Item['task']>;
    else if (s.k === 'topic') item.topic ??= s.v as NonNullable<Item['topic']>;
    else if (s.k === 'measure') item.measure ??= s.v as NonNullable<Item['measure']>;
  }
  // "seams are letting go" begins like "seams are a quarter inch"
  if (item.measure === 'seam' && /^seams? (are|is|'s)$/.test(item.w)) item.seam = true;
  if (item.stitch && WEAK_STITCHES.has(item.w)) item.weakStitch = true;
}

/** "at the top", "the top one", "top left": a direction, and no word for the patchwork. */
function isPatchwork(tokens: Token[], i: number): boolean {
  const after = tokens[i + 1]?.w ?? '';
  if (
    /^(left|right|one|ones|two|three|four|middle|row|rows|half|third|end|edge|side|border|corner|corners|block|blocks|square|hand|strip|of|to|down|most|seam)$/.test(
      after,
    )
  )
    return false;
  const before = tokens[i - 1]?.w ?? '';
  const lead = before === 'the' ? (tokens[i - 2]?.w ?? '') : before;
  // "squared up the top"
  if (lead === 'up' && /^(squared?|square|trued?|true|evened|even)$/.test(tokens[i - 3]?.w ?? ''))
    return true;
  return !/^(at|up|near|nearest|toward|towards|along|across|from)$/.test(lead);
}

/** "sewed it back", "back together", "back on it": no backing. */
function isBacking(tokens: Token[], i: number): boolean {
  const before = tokens[i - 1]?.w ?? '';
  const after = tokens[i + 1]?.w ?? '';
  if (
    /^(the|its|new|old|whole|this|that|quilt|a|for|and|&|\+|,|or|of|front|her)$/.test(before) &&
    !/^(on|to|together|at|home|again|in|down|into|onto)$/.test(after)
  )
    return true;
  // "mildew on back, not front"
  if (
    /^(on|of)$/.test(before) &&
    /^(|[.,;]|not|but|and|&|\+|only)$/.test(after) &&
    !/^(put|went|going|go|sewed|stitched|sew)$/.test(tokens[i - 2]?.w ?? '')
  )
    return true;
  // "3 tears in back", "stain on back"
  if (
    /^(on|in)$/.test(before) &&
    /^(|[.,;\n]|too|as|also|and|&)$/.test(after) &&
    LEXICON.longestAt(tokens, i - 2)?.payloads.some((s) => s.k === 'finding')
  )
    return true;
  // "label to go on back"
  if (
    before === 'on' &&
    /^(|[.,;\n]|by|tomorrow|tmrw|in)$/.test(after) &&
    tokens.slice(Math.max(0, i - 6), i).some((t) => /^labels?$/.test(t.w))
  )
    return true;
  return (
    /^(the|its|new|old)$/.test(before) ||
    (/^(|\.|;|,|\n|-)$/.test(before) &&
      !/^(on|to|at|in|together|home|it|again|where|with|from|up|tomorrow|later|after|for|i)$/.test(after))
  );
}
