import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { madeFor } from '../../rules/materials/purpose-at.ts';
import { blockAt, splitBlock } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import type { Cue } from '../cues.ts';
import { placesOf, put, type Standing, takePlaces } from '../standing.ts';
import { numberOf } from './mend-numbers.ts';

/**
 * Mends that pick a part of the last note by its order or keep but one of its parts: "scratch the second one", "only the
 * tear". Each gives what stands afterwards, or undefined where the words say no such thing.
 */

const NTH: Record<string, number> = { first: 0, former: 0, second: 1, third: 2, fourth: 3 };
const STRIKE_NTH =
  /^ (?:(?:no|oh|ah|actually|please|sorry|just|and|but|wait|hang on|,|\.) )*(?:scratch|strike|delete|cross|rub|leave|forget|drop|lose|ignore|remove|take|never mind|disregard|bin|scrap|wipe|cancel|erase|undo|not)(?: (?:out|off|about))? (?:just |only )?the (first|second|third|fourth|last|latter|former|other|middle) ?(one|bit|part|thing|half|entry|item|note|of those|of them|of the two|)(?: (?:out|off|please|again|there|though|i said))*(?: [.!])* $/;

/** "the second bit can go" */
const NTH_GOES =
  / the (first|second|third|fourth|last|latter|former|other|middle) (one|bit|part|thing|half|entry|item|note) (?:can|should|must|has to|needs to|wants to|ought to) (?:go|come (?:back )?(?:out|off)|be (?:deleted|struck|scratched|removed|taken out))(?: again)?(?= )/;

const main = (s: Standing): boolean =>
  s.was.kind !== 'remark' && !(s.was.kind === 'material' && s.was.quantity === undefined);
const begins = (s: Standing): number => s.draft.origins['entry']?.from ?? 0;

/** "scratch the second one", "forget the last bit": a block of the one list that stands, else one of several entries. */
export function strikeNth(standing: Standing[], words: string): Standing[] | undefined {
  const found = STRIKE_NTH.exec(words.replace(NTH_GOES, ' scratch the $1 $2'));
  if (!found) return undefined;
  const [, nth, noun] = found as unknown as [string, string, string];
  const entries = standing.filter(main).sort((a, b) => begins(a) - begins(b));
  const lists = entries.filter(({ was }) => placesOf(was).length > 1);
  const index = (length: number): number =>
    nth === 'last'
      ? length - 1
      : nth === 'latter' || nth === 'other'
        ? length === 2
          ? 1
          : -1
        : nth === 'middle'
          ? length === 3
            ? 1
            : -1
          : NTH[nth]!;
  if (
    /^(one|of those|of them|of the two|)$/.test(noun) &&
    lists.length === 1 &&
    // "not the last one", of the blocks of one deed and no other list
    (entries.length === 1 || (noun === 'one' && / not the /.test(words) && !/ one entry /.test(words)))
  ) {
    const places = placesOf(lists[0]!.was);
    const gone = places[index(places.length)];
    if (!gone) return undefined;
    put(
      lists[0]!.draft,
      'places',
      places.filter((p) => p !== gone),
      'amend.struck',
      [],
    );
    return standing;
  }
  const gone = entries.length > 1 ? entries[index(entries.length)] : undefined;
  // what a deed has used goes with it
  return (
    gone &&
    standing.filter((s) => s !== gone && !(gone.was.kind === 'treatment' && !main(s) && sameTelling(s, gone)))
  );
}

/** Was it told with the deed: among its words, or right behind them? */
const sameTelling = (s: Standing, deed: Standing): boolean => {
  const [told, own] = [s.draft.origins['entry'], deed.draft.origins['entry']];
  return told !== undefined && own !== undefined && told.from >= own.from && told.from <= own.to;
};

const STRIKE_PLACE =
  /^ (?:(?:no|oh|ah|actually|please|sorry|just|and|but|wait|,|\.) )*(?:take|strike|scratch|cross|rub|leave out|leave off|wipe|delete|forget|forget about|ignore|remove|never mind|disregard|cancel|erase|undo|pull)(?: (?:out|off))? (?:just |only )?(?:the |that )?$/;
/** "(the four five) bit off again, I never touched that one": what may stand behind the place. */
const STRUCK_TAIL =
  /^ (?:(?:bit|part|one|entry|note|block) )?(?:(?:off|out|back) )?(?:(?:again|please|though|then|altogether) )*(?:$|(?:[,.!] )?(?:i |we |it |that |this |cos |because |since )*(?:have n't|never|did n't|has n't|was n't|is n't|had n't)(?: (?:even|actually|really))? (?:touched|touch|did|do|done|started|start|got to|get to|reached|reach|been done|been touched|finished|finish)\b.{0,20}$)/;
/** Of these only a noun of the log or a reason tells that no thing of the bench is meant. */
const OF_THE_BENCH = / (?:take|remove|pull|wipe|rub|cross) /;

/** "take the four five bit off again, I never touched that one", "forget 4-5": a place of what stands goes. */
export function strikePlaces(standing: Standing[], items: Item[]): Standing[] | undefined {
  const k = items.findIndex((x) => x.place?.places.length);
  if (k < 1 || k > 8 || items.length > 20) return undefined;
  const lead = ` ${items
    .slice(0, k)
    .map((x) => x.w)
    .join(' ')} `;
  const tail = ` ${items
    .slice(k + 1)
    .map((x) => x.w)
    .join(' ')} `.replace(/^ +$/, ' ');
  if (!STRIKE_PLACE.test(lead) || !STRUCK_TAIL.test(tail)) return undefined;
  if (OF_THE_BENCH.test(lead) && !/^ (?:bit|part|one|entry|note) |\b(?:never|n't)\b/.test(tail))
    return undefined;
  const gone = items[k]!.place!.places;
  const held = standing.filter(({ was }) => placesOf(was).some((p) => gone.includes(p)));
  if (!held.length || !gone.every((p) => held.some(({ was }) => placesOf(was).includes(p)))) return undefined;
  const whole = held.filter(({ was }) => placesOf(was).every((p) => gone.includes(p)));
  const left = standing.filter(
    (s) =>
      !whole.includes(s) &&
      !(s.was.kind === 'material' && !main(s) && whole.some((w) => w.draft.clause === s.draft.clause)),
  );
  if (!left.length) return undefined;
  for (const s of held) if (left.includes(s)) takePlaces(s, gone, 'amend.struck', [items[k]!]);
  return left;
}

const LEFT_OUT =
  /\b(?:(?:i |we |'d |had |have |'ve )*(?:forgot(?:ten)?|missed|left (?:(?:it|that|that one|this one|one|them|those) )?(?:out|off)|overlooked|skipped)(?: (?:it|that|that one|this one|one|them|those|out|off))*|should (?:have|of|'ve) (?:said|added|put)|meant to (?:say|add|put))(?: (?:too|as well|earlier|before|there))*(?: [.!])*$/;

/** "and 3-3, forgot that one", "3-3 as well, should have said": one more place of what was just told. */
export function addLeftOut(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 12 || !LEFT_OUT.test(words.trim()) || !/ (?:and|also|plus|too|as well|add) /.test(words))
    return false;
  if (
    items.some(
      (x) => x.finding || x.quantity?.unit || x.duration || x.clock || x.cost || x.stitch || x.material,
    )
  )
    return false;
  const said = items.filter((x) => x.place?.kind === 'blocks' && x.place.places.length);
  const more = said.flatMap((x) => x.place!.places);
  const lists = standing.filter(({ was }) => placesOf(was).some((p) => splitBlock(p)));
  const last = lists.at(-1);
  if (!more.length || !last || lists.some(({ was }) => more.some((p) => placesOf(was).includes(p))))
    return false;
  put(last.draft, 'places', [...placesOf(last.was), ...more], 'amend.left-out', said);
  return true;
}

const SAID_LATE =
  /\b(?:should (?:have|of|'ve) (?:said|mentioned|added)|i should (?:say|add|mention)|by the way|btw|forgot to (?:say|mention|add)|meant to (?:say|add|mention))\b/;
const OF_PUT_IN =
  / (?:patch|patches|piece|pieces|support|lining|cloth|fabric|bit|(?:patched|used|backed|lined|pieced|replaced)) /;

/** "the patch is green calico, I should have said": the cloth of what was put in, told afterwards. */
export function clothToldLate(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 16 || !SAID_LATE.test(words) || !OF_PUT_IN.test(words)) return false;
  if (items.some((x) => x.finding || x.duration || x.clock || x.cost || x.quantity?.unit || x.stitch))
    return false;
  const open = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      /^(?:patch|replace|stabilize)$/.test(was.action ?? '') &&
      /^(?:done|doing)$/.test(was.state) &&
      was.fabric === undefined,
  );
  const [target] = open;
  const cloth = items.find((x) => x.fabric?.names.length === 1);
  if (open.length !== 1 || !target || !cloth) return false;
  if (standing.some(({ was }) => was.kind === 'material' && was.material === 'fabric')) return false;
  const name = cloth.fabric!.names[0]!;
  put(target.draft, 'fabric', name, 'amend.cloth', [cloth]);
  const used: Draft = {
    entry: { kind: 'material', material: 'fabric', use: 'used', name },
    origins: {},
    placed: 'unneeded',
    clause: 0,
    sentence: 0,
  };
  put(used, 'material', 'fabric', 'amend.cloth', [cloth]);
  used.origins['entry'] = used.origins['material']!;
  standing.splice(standing.indexOf(target) + 1, 0, { draft: used, was: used.entry });
  return true;
}

const PURPOSE =
  /^ (?:(?:oh|and|so|sorry|no|well|,) )*(?:(?:it|that|this|they|those|these|all|both|the lot) ?(?:'s|is|are|'re|was|were|'ll be|will be)? )?(?:all )?(?:for|meant for|going to be|to be|will be|'ll be) (?:the |a |my |her )?(?:new )?(back|backing|binding|batting|wadding|filling|ties|tying|border|borders)(?: (?:, )?(?:that is|that was|that|by the way|btw|i mean|i meant|of it|of course|[.!]))* $/;
const MADE_FOR: Record<string, Parameters<typeof madeFor>[1]> = {
  back: 'backing',
  backing: 'backing',
  binding: 'binding',
  batting: 'batting',
  wadding: 'batting',
  filling: 'batting',
  ties: 'ties',
  tying: 'ties',
  border: 'none',
  borders: 'none',
};

/** "for the backing, that is", "that's for the back": what the one stuff that was told is for. */
export function forPart(standing: Standing[], items: Item[], words: string): boolean {
  const part = items.length <= 12 ? PURPOSE.exec(words)?.[1] : undefined;
  const goods = standing.filter(({ was }) => was.kind === 'material');
  const only = goods[0];
  if (!part || goods.length !== 1 || only?.was.kind !== 'material') return false;
  const material = madeFor(only.was.material, MADE_FOR[part]!);
  if (material) put(only.draft, 'material', material, 'amend.purpose', items);
  return true;
}

const KEEP_ONLY = /^ (?:(?:no|oh|ah|actually|sorry|wait|well|it|that|'s|is|was|,|\.) )*(?:only|just) /;

/** "only the tear", "no, just the stain": the other findings go. */
export function keepOnly(standing: Standing[], items: Item[], words: string): Standing[] | undefined {
  if (items.length > 7 || !KEEP_ONLY.test(words)) return undefined;
  const kept = items.flatMap((x) => (x.finding ? [x.finding] : []));
  if (!kept.length || items.some((x) => x.place?.places.length || x.action)) return undefined;
  const conditions = standing.filter(({ was }) => was.kind === 'condition');
  const stays = ({ was }: Standing): boolean => was.kind !== 'condition' || kept.includes(was.finding);
  return conditions.some(stays) && !conditions.every(stays) ? standing.filter(stays) : undefined;
}

/** "did I say two? I meant three": the number of a row or a block, where but one of them is the wrong one. */
export function swapIndex(state: ReaderState, standing: Standing[], wrong: number, right: number): boolean {
  const placed = standing.filter(({ was }) => placesOf(was).length > 0);
  const at = placed.map(({ was }) =>
    placesOf(was).length === 1 ? splitBlock(placesOf(was)[0]!) : undefined,
  );
  if (!placed.length || at.some((b) => !b)) return false;
  const row = at.every((b) => b!.row === wrong);
  const block = at.every((b) => b!.block === wrong);
  if (row === block) return false;
  const moved = at.map((b) =>
    row ? blockAt(state.grid, right, b!.block) : blockAt(state.grid, b!.row, right),
  );
  if (moved.some((p) => !p)) return false;
  placed.forEach((s, k) => {
    put(s.draft, 'places', [moved[k]!], 'amend.place', []);
  });
  return true;
}

const WRONG_LINE =
  / (?:wrong (row|block|column)|(?:the )?(row|block|column)(?: number)? (?:'s|is|was) wrong|(?:the )?(row|block|column) (?:should|ought to) (?:be|have been)) /;

/** "wrong row, should be three", "the block's wrong, it's four": the one number of the place that stands. */
export function wrongLine(state: ReaderState, standing: Standing[], items: Item[], words: string): boolean {
  const found = items.length <= 12 ? WRONG_LINE.exec(words) : null;
  if (!found) return false;
  const line = (found[1] ?? found[2] ?? found[3])!;
  const at = items.find((x) => splitBlock(x.place?.places[0] ?? '') && /\b(row|column|block)\b/.test(x.w));
  const told = splitBlock(at?.place?.places[0] ?? '');
  const right = told
    ? line === 'row'
      ? told.row
      : told.block
    : items.map((x) => numberOf(state, x)).find((n) => n !== undefined);
  const placed = standing.filter(({ was }) => placesOf(was).length > 0);
  const blocks = placed.map(({ was }) => placesOf(was).map((p) => splitBlock(p)));
  if (right === undefined || !placed.length || blocks.some((list) => list.some((b) => !b))) return false;
  const moved = blocks.map((list) =>
    list.map((b) =>
      line === 'row' ? blockAt(state.grid, right, b!.block) : blockAt(state.grid, b!.row, right),
    ),
  );
  if (moved.some((list) => list.some((p) => !p))) return false;
  placed.forEach((s, k) => {
    put(s.draft, 'places', [...new Set(moved[k]! as string[])], 'amend.place', items);
  });
  return true;
}

const OPPOSITE: Record<string, string> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };
const OTHER_SIDE =
  /^ (?:(?:no|oh|sorry|wait|i mean|,) )*(?:the )?other (?:side|one|end|edge)(?:(?: ,)?(?: the)?(?: (left|right|top|bottom))?(?: one| side| hand| edge)*)?(?: [.!])* $/;

/** "other side", "the other one, the right", of a side of the border or the edge. */
export function otherSide(standing: Standing[], words: string): boolean {
  const found = OTHER_SIDE.exec(words);
  if (!found) return false;
  const sided = standing.filter(({ was }) => placesOf(was).some((p) => /^(border|edge)-/.test(p)));
  if (!sided.length || sided.some(({ was }) => placesOf(was).length !== 1)) return false;
  for (const s of sided) {
    const [family, side] = placesOf(s.was)[0]!.split('-') as [string, string];
    put(s.draft, 'places', [`${family}-${found[1] ?? OPPOSITE[side]}`], 'amend.other-side', []);
  }
  return true;
}

const NO_STUFF =
  /^ (?:(?:oh|ah|actually|sorry|but|well|wait|,) )*(?:no|not any|without(?: any| the)?|with no) (?!, )/;

/** "no soap actually": a stuff that was not used after all. */
export function noStuff(standing: Standing[], items: Item[], words: string): Standing[] | undefined {
  if (!NO_STUFF.test(words) || items.length > 6) return undefined;
  if (
    items.some(
      (x) => x.finding || x.place?.places.length || x.quantity || x.duration || x.action?.form === 'past',
    )
  )
    return undefined;
  const told = items.filter((x) => x.material || x.fabric);
  // "no brown calico", where it was patched with gingham: the cloth is another one, and none has gone
  const gone = standing.filter(
    ({ was }) =>
      was.kind === 'material' &&
      was.use === 'used' &&
      told.some(
        (x) =>
          x.material === was.material &&
          !(x.fabric && was.name !== undefined && !x.fabric.names.includes(was.name)),
      ),
  );
  return told.length === 1 && gone.length === 1 && standing.length > 1
    ? standing.filter((s) => s !== gone[0])
    : undefined;
}

/** "no, brown", "I mean quilt": the one matter that stands is settled in another way. */
export function otherChoice(standing: Standing[], items: Item[]): boolean {
  const only = standing[0];
  if (standing.length !== 1 || only?.was.kind !== 'decision' || items.length > 6) return false;
  // "no, not washing it", where that stood open: settled, and no mend
  if (only.was.status === 'open' && items.some((x) => /^(not|n't)$/.test(x.w))) return false;
  if (
    items.some(
      (x) =>
        x.finding ||
        x.place?.places.some((p) => splitBlock(p)) ||
        x.quantity ||
        x.duration ||
        x.cost ||
        x.clock,
    )
  )
    return false;
  const way = items.find(
    (x) => x.action?.v === 'tie' || x.action?.v === 'quilt' || x.task === 'tying' || x.task === 'quilting',
  );
  if (way && /^(tying|quilting)$/.test(only.was.about))
    put(
      only.draft,
      'about',
      way.action?.v === 'tie' || way.task === 'tying' ? 'tying' : 'quilting',
      'amend.choice',
      [way],
    );
  return true;
}

const BUT =
  /^ (?:(?:no|oh|sorry|well|wait|actually|,) )*(?:(?:it was |that was |i did )?(?:all|everything|every one|the lot|all of (?:it|them|those)) )?(?:but|bar|except|except for|apart from|other than|barring|excepting|minus|all but) (?:for )?(?:(?:the |that )?(?:one |ones )?(?:in |on |at |from |along )?(?:the )?)?$/;

const BUT_END =
  /^ (?:(?:no|oh|sorry|well|wait|actually|,) )*(?:all )?(?:but|bar|except|except for|apart from|barring) (?:for )?the (first|last|end) (one|two|three|2|3)?(?: (?:ones?|blocks?))?(?: (?:of (?:them|those|it)|[.!]))* $/;

/** "all but the last three": the end of the one list that stands. */
function allButEnd(standing: Standing[], items: Item[]): boolean {
  const found = BUT_END.exec(` ${items.map((x) => x.w).join(' ')} `);
  const lists = standing.filter(({ was }) => placesOf(was).filter((p) => splitBlock(p)).length > 3);
  const [list] = lists;
  if (!found || lists.length !== 1 || !list) return false;
  const n = { one: 1, two: 2, three: 3, 2: 2, 3: 3 }[found[2] ?? 'one']!;
  const now = placesOf(list.was);
  put(list.draft, 'places', found[1] !== 'first' ? now.slice(0, -n) : now.slice(n), 'amend.all-but', items);
  return true;
}

/**
 * "all but the last block of row two", "bar 2-3", "except 2-4, that's only faded": what was left out of the one list that
 * stands, and what is found there instead. Gives what is told beside.
 */
export function allBut(state: ReaderState, standing: Standing[], items: Item[]): Draft[] | undefined {
  if (allButEnd(standing, items)) return [];
  const k = items.findIndex((x) => x.place?.places.length);
  if (k < 0 || items.length > 16 || items.some((x) => x.material || x.quantity?.unit)) return undefined;
  const instead = items.some((x) => x.finding);
  const told = state.drafts.filter((d) => d.entry.kind === 'condition');
  if (
    instead &&
    (told.length !== 1 ||
      state.drafts.length !== 1 ||
      !/^ (?:, )?(?:that|that one|it|which|this|this one|they|those)(?: (?:is|'s|was|has|are|were))+ /.test(
        ` ${items
          .slice(k + 1)
          .map((x) => x.w)
          .join(' ')} `,
      ))
  )
    return undefined;
  if (
    !BUT.test(
      ` ${items
        .slice(0, k)
        .map((x) => x.w)
        .join(' ')} `,
    )
  )
    return undefined;
  const said = items[k]!.place!.places;
  const all = standing.flatMap(({ was }) => placesOf(was));
  // "except the one in the bottom row": that of those told
  const one = /\bones? (?:in|on|at|from|along)\b/.test(
    items
      .slice(0, k + 1)
      .map((x) => x.w)
      .join(' '),
  );
  const out = one ? said.filter((p) => all.includes(p)) : said;
  const lists = standing.filter(({ was }) => {
    const now = placesOf(was);
    return out.length > 0 && now.length > out.length && out.every((p) => now.includes(p));
  });
  if (instead && lists.length !== 1) return undefined;
  for (const s of lists) takePlaces(s, out, 'amend.all-but', [items[k]!]);
  if (!lists.length) return undefined;
  if (instead) {
    const [found] = told;
    put(found!, 'places', out, 'amend.all-but', [items[k]!]);
    const { was } = lists[0]!;
    if (was.kind === 'condition' && was.fabric) put(found!, 'fabric', was.fabric, 'amend.all-but', []);
    return [found!];
  }
  // "apart from 3-4, I patched that one"
  return state.drafts.filter(
    ({ entry: e }) =>
      e.kind === 'treatment' &&
      e.action !== undefined &&
      e.places?.length &&
      e.places.every((p) => out.includes(p)) &&
      !lists.some(({ was }) => was.kind === 'treatment' && was.action === e.action),
  );
}

const TAKES_BACK =
  /^ (?:(?:oh|no|and|but|so|well|,) )*(?:take back|scratch|strike|forget|undo|i take back|changed? my mind (?:on|about)) /;

/** "take back the cream, backing's still open": a matter that the last note settled is open again, or the other way round. */
export function mendMatters(
  state: ReaderState,
  standing: Standing[],
  words: string,
  cue: Cue,
): Draft[] | undefined {
  if (cue !== 'strong' && !TAKES_BACK.test(words)) return undefined;
  if (!state.drafts.length || state.drafts.some((d) => d.entry.kind !== 'decision')) return undefined;
  let changed = false;
  for (const d of state.drafts) {
    const e = d.entry;
    if (e.kind !== 'decision') continue;
    const s = standing.find(({ was }) => was.kind === 'decision' && was.about === e.about);
    if (s?.was.kind !== 'decision' || s.was.status === e.status) return undefined;
    put(s.draft, 'status', e.status, 'amend.matter', []);
    changed = true;
  }
  return changed ? standing.map((s) => s.draft) : undefined;
}
