import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { unique } from './grid.ts';
import type { ClausePlaces } from './places-of-clause.ts';

const PUT_IN =
  /^(piece|pieced|piecing|set|setting|let|letting|put|putting|sewed|sew|stitched|stitch|slid|slipped|tucked|laid|fresh|new)$/;
const COMES_IN = /^(goes|go|going|went|gone|is|'s)$/;
const SMALL_COUNTS = ['two', 'three', 'four'];

/** The cloth that is worked on ("all the brown check ones want …"), not the one put in: where it occurs in the quilt. */
export function mendedCloth(items: Item[], state: ReaderState): { places: string[]; item: Item } | undefined {
  const item = items.find((x) => x.fabric);
  if (!item?.fabric || item.fabric.names.length !== 1) return undefined;
  const k = items.indexOf(item);
  const before = items.slice(Math.max(0, k - 4), k).map((x) => x.w);
  // "now that I have seen what the crimson does": why, and not where
  if (
    before.includes('what') &&
    /^(does|did|would|will|has|had|might|could|'d|'ll)$/.test(items[k + 1]?.w ?? '')
  )
    return undefined;
  // "pieced pinstripe in on the machine", "green twill laid in behind": what is put in
  const verb = /^(the|that|this|some|my)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
  if (
    /^(in|into|behind|under|underneath|inside)$/.test(items[k + 1]?.w ?? '') &&
    PUT_IN.test(items[verb]?.w ?? '')
  )
    return undefined;
  // "4-3: velvet pieced in"
  if (PUT_IN.test(items[k + 1]?.w ?? '') && /^(in|into|behind|under|underneath)$/.test(items[k + 2]?.w ?? ''))
    return undefined;
  // "brown gingham goes in"
  if (COMES_IN.test(items[k + 1]?.w ?? '') && items[k + 2]?.w === 'in' && !items[k + 3]?.place)
    return undefined;
  const one = toldOfCloth(items, k, state) ?? oneOfCloth(items, k, state);
  if (one) return one.length ? { places: one, item } : undefined;
  const led = before.filter(
    (_, n) => n >= before.findLastIndex((b, m) => b && items[k - before.length + m]?.action),
  );
  if (
    // "the idea of crepeline on the green twill ones": the "of" is of what is laid there
    !/ (?:on|over|across|for|behind) (?:the |all the |all |both |those |both the )$/.test(
      wordsBetween(items, k - 3, k),
    ) &&
    led.some((b) => /^(with|w|from|using|some|bought|in|of|a|use)$/.test(b)) &&
    !/\b(all|every|each|both|two|three)( single| last| one){0,3} (of )?(the |those |them )?$/.test(
      wordsBetween(items, k - 6, k),
    )
  )
    return undefined;
  const subject =
    k <= 3 || /^(all|every|each|the|those|two|three|both|four|2|3|4)$/.test(before.at(-1) ?? '');
  if (!subject) return undefined;
  const { bar } = item.fabric;
  const places = (state.fabrics.blocks[item.fabric.names[0]!] ?? []).filter((p) => !bar?.includes(p));
  return places.length ? { places, item } : undefined;
}

/** "the homespun that was ravelling": of the cloth's blocks, those that this was told of. */
function toldOfCloth(items: Item[], k: number, state: ReaderState): string[] | undefined {
  const is = /^(one|ones|block|blocks|piece|pieces)$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1;
  if (!/^(that|which)$/.test(items[is]?.w ?? '')) return undefined;
  if (!/^(was|were|is|'s|are|had|has|'d)$/.test(items[is + 1]?.w ?? '')) return undefined;
  const finding = items.slice(is + 2, is + 5).find((x) => x.finding)?.finding;
  if (!finding) return undefined;
  const blocks = (items[k]!.fabric?.names ?? []).flatMap((n) => state.fabrics.blocks[n] ?? []);
  const told = (state.memory.mentions ?? []).filter((m) => m.finding === finding).flatMap((m) => m.places);
  const inside = unique(told.filter((p) => blocks.includes(p)));
  return inside.length ? inside : undefined;
}

/**
 * "the white twill one", "the other yellow", "one of the prints", "the bunny underneath it": one block of a cloth that is in
 * several. The one last spoken of, or the one not yet spoken of; an empty list where it can't be known. Undefined where the
 * words mean all of it.
 */
export function oneOfCloth(items: Item[], k: number, state: ReaderState): string[] | undefined {
  const item = items[k]!;
  const blocks = unique((item.fabric?.names ?? []).flatMap((n) => state.fabrics.blocks[n] ?? []));
  if (blocks.length < 2) return undefined;
  // "the other two blocks with that shirting"
  let from = k;
  if (/^(the|that|this|those|my)$/.test(items[from - 1]?.w ?? '')) from--;
  if (
    /^(with|of|in)$/.test(items[from - 1]?.w ?? '') &&
    /^(blocks?|pieces?|squares?)$/.test(items[from - 2]?.w ?? '')
  )
    from -= 2;
  else from = k;
  const lead = ` ${items
    .slice(Math.max(0, from - 3), from)
    .map((x) => x.w)
    .join(' ')} `;
  // "every last one of the madder stripes"
  const led = items.slice(Math.max(0, from - 6), from).map((x) => x.w);
  if (/(^| )(every|each) (single |last )?one of( the| these| those)?$/.test(led.join(' '))) return undefined;
  if (/ (one|1|another|which) of (the|these|those|my)? ?$/.test(lead)) return [];
  const other = / (other|others|remaining|rest of the|last remaining)( two| three| four| five| \d)? $/.test(
    lead,
  );
  const noun = items[k + 1]?.w ?? '';
  const single =
    /^(one|block|piece|square)$/.test(noun) &&
    !/ (every|each|all|the two|any|two|three|both) $/.test(lead) &&
    !/ (every|each) $/.test(lead);
  const final = single && / last $/.test(lead);
  // "those two homespun ones": the two last spoken of together
  const pointed = /^(?:those|these) (two|three|four)$/.exec(items[k - 1]?.w ?? '')?.[1];
  const few = pointed ? SMALL_COUNTS.indexOf(pointed) + 2 : 0;
  if (!other && !single && !(few && few < blocks.length)) return undefined;
  const spoken = [
    ...[...state.drafts].reverse().map((d) => (d.entry as { places?: string[] }).places ?? []),
    state.memory.focus,
    ...[...state.memory.earlier].reverse(),
  ];
  if (few) return spoken.map((g) => g.filter((p) => blocks.includes(p))).find((g) => g.length === few);
  const last = spoken.find((g) => g.some((p) => blocks.includes(p)));
  if (other || final) {
    if (!last) return [];
    const rest = blocks.filter((p) => !last.includes(p));
    const count = items.slice(Math.max(0, from - 2), from).find((x) => x.quantity && !x.quantity.unit)
      ?.quantity?.value;
    return rest.length === 1 ||
      count === rest.length ||
      (!final &&
        (/^(ones|blocks|pieces|squares)$|s$/.test(from < k ? items[from]!.w : noun || item.w) ||
          (/^(are|were|have|look|need|want|get|'re|stay|still|both|all)$/.test(noun) && /s$/.test(item.w))))
      ? rest
      : [];
  }
  const within = last?.filter((p) => blocks.includes(p)) ?? [];
  return within.length === 1 ? within : [];
}

/** "over the madder stripe in rows two and five": of the rows or columns named, the blocks of the cloth that is worked on. */
export function clothWithin(state: ReaderState, items: Item[], placed: ClausePlaces): string[] | undefined {
  const k = items.findIndex((x) => x.fabric?.names.length === 1);
  if (
    k < 0 ||
    !placed.items.some((x) => /row|column|area|all-/.test(x.place!.rule) && x.place!.places.length > 1)
  )
    return undefined;
  if (!/^(the|that|those|all|every)$/.test(items[k - 1]?.w ?? '')) return undefined;
  // "the pinstripe in row two and the right-hand column": the cloth was looked for in its own row
  if (placed.items.some((x) => /^place\.cloth-(within|line)$/.test(x.place!.rule))) return undefined;
  if (/^(with|w|from|using|by)$/.test(items[k - 2]?.w ?? '')) return undefined;
  // "pressed row seven and the plum silk ones": both
  const at = placed.items.map((x) => items.indexOf(x));
  if (at.some((m) => listedWith(items, Math.min(m, k), Math.max(m, k)))) return undefined;
  const blocks = state.fabrics.blocks[items[k]!.fabric!.names[0]!] ?? [];
  const inside = placed.places.filter((p) => blocks.includes(p));
  return inside.length ? inside : undefined;
}

const JOINS = /^(and|&|\+|plus|well|along with|as well as|together with)$/;
const LISTED =
  /^(,|and|&|\+|plus|as|well|along|along with|as well as|together with|then|also|the|all|of|both|every|each|single|last|those|that|these|ones?|blocks?|pieces?|squares?|two|three|four|five|other|remaining|rest)$/;
const PUT_BEFORE =
  /^(with|w|using|from|some|a|an|in|into|bought|yards?|metres?|piece|scrap|bit|for|used|use|new|fresh|spare)$/;

/**
 * "tied both the brown stripe ones and all of row two", "the scarlet and the plum silk are stained", "the seam between the scarlet and
 * the one above it": the blocks of a cloth told in one list with others.
 */
export function withCloths(state: ReaderState, given: Item[], told: ClausePlaces): ClausePlaces {
  if (
    !given.some((x) => x.fabric && !x.place) ||
    !given.some((x, k) => JOINS.test(x.w) || isJoinedByComma(given, k))
  )
    return told;
  const items = asList(given);
  const at = items.flatMap((x, k) => (isBlocks(x) || clothAt(state, items, k).length ? [k] : []));
  const list = at.filter((k, n) => listedWith(items, at[n - 1], k) || listedWith(items, k, at[n + 1]));
  if (list.length < 2 || !list.some((k) => !items[k]!.place)) return told;
  const within = (x: Item): boolean => list.includes(items.indexOf(x)) || POINTS.test(x.place!.rule);
  if (!told.items.every((x) => !items.includes(x) || within(x))) return told;
  const places = unique(
    list.flatMap((k) => (items[k]!.place ? items[k]!.place!.places : clothAt(state, items, k))),
  );
  return { ...told, places, kind: 'specific', items: told.items, withCloths: true };
}

/**
 * The items as a list of places is read: "all three" before a cloth is its count, and of "the blue check in row three" the block is
 * meant, and not the cloth and its row.
 */
function asList(items: Item[]): Item[] {
  const taken = new Set<Item>();
  const counts = new Set<Item>();
  items.forEach((x, k) => {
    if (x.fabric && COUNTS_CLOTH.test(items[k - 1]?.place?.rule ?? '')) counts.add(items[k - 1]!);
    if (x.place?.rule !== 'place.cloth-within') return;
    const cloth = items.slice(0, k).findLastIndex((y) => y.fabric);
    if (cloth < 0 || k - cloth > 4) return;
    for (const y of items.slice(cloth, k)) taken.add(y);
  });
  return taken.size || counts.size
    ? items
        .filter((x) => !taken.has(x))
        .map((x) => (counts.has(x) ? { ...x, w: 'all', place: undefined } : x))
    : items;
}
const COUNTS_CLOTH = /^place\.(all-of-them|both|those)$/;

const isBlocks = (x: Item): boolean =>
  x.place !== undefined &&
  !POINTS.test(x.place.rule) &&
  x.place.places.length > 0 &&
  x.place.places[0] !== 'quilt' &&
  !x.fabric;

/** "netted 2-3, all the green twill". */
const isJoinedByComma = (items: Item[], k: number): boolean =>
  items[k]!.w === ',' && /^(all|both|every|each)$/.test(items[k + 1]?.w ?? '');
const POINTS = /^place\.(it|them|both|those|that-one)$/;

/** Is the second of two joined to the first as in a list, and no cloth that is put in there? */
function listedWith(items: Item[], a: number | undefined, b: number | undefined): boolean {
  if (a === undefined || b === undefined || b - a > 7) return false;
  const between = items.slice(a + 1, b).map((x) => x.w);
  const joins = between.some((x, k) => JOINS.test(x) || isJoinedByComma(items, a + 1 + k));
  if (!joins || !between.every((x) => LISTED.test(x))) return false;
  // "patched 2-2, blue gingham, whipstitch"
  return (
    Boolean(items[b]!.place) ||
    /^(the|all|both|every|each|those|these|of|other|remaining)$/.test(between.at(-1) ?? '') ||
    // "net on 1-1 and the other two army blanket blocks"
    / (?:other|remaining) (?:two|three|four|five|\d) $/.test(` ${between.join(' ')} `) ||
    / (?:all|the|those|these|all the|all of the) (?:two|three|four|five) $/.test(` ${between.join(' ')} `) ||
    /^(ones?|blocks?|pieces|squares)$/.test(items[b + 1]?.w ?? '') ||
    // "brown gingham and blue check are faded", "… both torn"
    /^(is|'s|are|were|has|have|both|all)$/.test(items[b + 1]?.w ?? '') ||
    items[b + 1]?.finding !== undefined
  );
}

/** The blocks of the cloth named at `k`, where it lies there and is not put in. */
function clothAt(state: ReaderState, items: Item[], k: number): string[] {
  const item = items[k]!;
  if (!item.fabric || item.place || item.fabric.names.length !== 1) return [];
  if (items.slice(Math.max(0, k - 2), k).some((x) => PUT_BEFORE.test(x.w) && x.w !== 'in')) return [];
  if (items[k - 1]?.w === 'in') return [];
  const { bar } = item.fabric;
  // "patched 3-3 and the other brown tweed": where none of it is named beside, the one not spoken of last
  if (
    / (?:other|remaining)(?: two| three| four| five| \d)? $| rest of the $/.test(
      wordsBetween(items, k - 3, k),
    )
  ) {
    const own = state.fabrics.blocks[item.fabric.names[0]!] ?? [];
    if (!items.some((x) => x.place?.places.some((p) => own.includes(p))))
      return oneOfCloth(items, k, state) ?? [];
  }
  return (state.fabrics.blocks[item.fabric.names[0]!] ?? []).filter((p) => !bar?.includes(p));
}
