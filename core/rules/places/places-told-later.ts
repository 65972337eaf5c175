import type { Clause } from '../clause/clause.ts';
import { MARKS_OFF } from '../clause/headed-clause.ts';
import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { splitBlock, unique } from './grid.ts';
import type { ClausePlaces } from './places-of-clause.ts';

/** "stained: 2-1, 2-5": places that a colon adds to what was just found without any. */
export function placesAfterColon(state: ReaderState, clause: Clause, placed: ClausePlaces): boolean {
  const named = placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt');
  const last = state.drafts.at(-1);
  const e = last?.entry;
  // "label on, bottom L corner"
  const label = e?.kind === 'treatment' && e.action === 'label' && !e.places?.length && clause.joint === ',';
  if (!(MARKS_OFF.test(clause.joint) || label) || !named) return false;
  // "label's on, bottom right, took a quarter of an hour"
  const took = label && clause.items.some((x) => x.duration);
  if (
    !clause.items.every(
      (x) =>
        x.place ||
        BETWEEN_PLACES.test(x.w) ||
        // "the net's on: 2-2 and 2-3, herringbone"
        (x.stitch && e?.kind === 'treatment' && clause.joint === ':') ||
        (took && (x.duration || /^(?:took|me|it|about|just)$/.test(x.w))),
    )
  )
    return false;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  // "binding worn: left side, bottom": of the part, its sides
  const sides =
    e.places?.length === 1 &&
    /^(binding|border|edge)$/.test(e.places[0]!) &&
    placed.places.every((p) => /^(edge|border|corner)-/.test(p));
  if (!sides && !label && (clause.joint !== ':' || (e.places?.length && last.placed === 'said')))
    return false;
  e.places = placed.places;
  last.placed = 'said';
  if (placed.outside) last.outside = true;
  if (took) tookIn(clause, last);
  const sewn = clause.items.find((x) => x.stitch);
  if (sewn && e.kind === 'treatment') e.stitch ??= sewn.stitch!;
  return true;
}

/** "stains in columns three and four, but only from row four down": of the places just told, those that are named now. */
export function placesNarrowed(state: ReaderState, clause: Clause, placed: ClausePlaces): boolean {
  if (!/^(but|,|--|-)$/.test(clause.joint) || placed.kind !== 'specific') return false;
  // "the damask has bled, 2-4 only"
  // "binding sewn on, left edge only, two hours"
  const told = clause.items.filter((x) => !x.duration && x.w !== ',');
  if (!/^(only|just)$/.test(clause.items[0]!.w) && told.at(-1)?.w !== 'only') return false;
  if (!clause.items.every((x) => x.place || x.duration || NARROWING.test(x.w))) return false;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  const whole = e.places?.length === 1 && e.places[0] === 'quilt';
  const left = whole ? placed.places : (e.places?.filter((p) => placed.places.includes(p)) ?? []);
  if (!left.length) return false;
  e.places = left;
  return true;
}

const NARROWING =
  /^(,|only|just|in|on|at|along|from|of|over|across|onto|behind|for|the|and|,|to|down|up|blocks?|really|mind|you|though)$/;

/**
 * What joins the places of a list: "where 3-2 meets 4-2, and 4-2 to 4-3", "5-1 with 5-2, 6-1 with 6-2"; and what is said of one of
 * them ("3-1, 3-2 and a small one in 5-5", "3-3 only", "mostly row four").
 */
const BETWEEN_PLACES =
  /^(,|\/|and|&|\+|the|in|on|also|all|full|whole|of|where|meets?|joins?|to|with|between|from|at|both|plus|too|as|well|again|along|down|across|over|near|by|inside|only|just|mostly|mainly|chiefly|especially|particularly|worst|possibly|slightly|badly|every|each|a|an|another|one|ones|small|smaller|little|wee|tiny|big|bigger|large|larger|great|long|short|bad|nasty|faint|slight|few|more|bits?|spots?|there|here|mind|though)$/;

const SITS = /^(sits?|runs?|goes|reaches|lies|spreads?|stretches|crosses|is|'s|ran|went)$/;

/** "a brown ring, coffee I'd have said, that sits right across 4-4 and 4-5": where the damage lies that was told without a place. */
export function placesWhereItSits(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ClausePlaces,
): boolean {
  const { items, joint } = clause;
  if (placed.kind !== 'specific') return false;
  const relative = items.findIndex(
    (x, k) => /^(that|which)$/.test(x.w) && (k === 0 || items[k - 1]!.w === ','),
  );
  // "that's the third split seam I've found, this one's between 4-4 and 5-4"
  const one =
    /^ (?:(?:and|but|so|,) )*(?:this one|this|it|that one|that) (?:'s|is|runs|goes|lies|sits) (?:in|on|at|between|along|across|under|near|from|over|right|all|down) /.test(
      wordsBetween(items),
    );
  if (!one && !SITS.test(items[joint === 'which' ? 0 : relative + 1]?.w ?? '')) return false;
  if (!one && joint !== 'which' && relative < 0) return false;
  if (items.some((x) => x.finding || x.fail || (x.action && !x.seam) || x.material)) return false;
  const last = state.drafts.at(-1);
  if (
    last?.entry.kind !== 'condition' ||
    last.placed === 'said' ||
    last.sentence !== clause.sentence ||
    last.clause === index
  )
    return false;
  last.entry.places = placed.places;
  last.placed = 'said';
  return true;
}

/**
 * "moth: the first three of the top row, and then the two under those", "vacuumed the front and then the back, twenty minutes in
 * all": more places of what was just told.
 */
export function placesAdded(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ClausePlaces,
): boolean {
  if (!/^(then|also)$/.test(clause.joint)) return false;
  const parts = placed.kind === 'general' && placed.places[0] !== 'quilt';
  if (placed.kind !== 'specific' && !parts) return false;
  if (
    !clause.items.every(
      (x) =>
        x.place ||
        x.duration ||
        /^(,|and|&|\+|the|in|on|also|all|of|for|then|too|straight|down|altogether|both|pair|two|lot|it|took|me|so|far|now|done|together)$/.test(
          x.w,
        ),
    )
  )
    return false;
  const next = state.clauses[index + 1];
  if (
    next?.sentence === clause.sentence &&
    next.items.some((x) => x.finding || x.fail || x.action || x.stitch)
  )
    return false;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  // "top and bottom borders are on and then the left one"
  const ofParts = parts || !placed.places.some(splitBlock);
  if (!e.places?.some((p) => (ofParts ? p !== 'quilt' && !splitBlock(p) : splitBlock(p)))) return false;
  e.places = unique([...e.places, ...placed.places]);
  tookIn(clause, last);
  return true;
}

/** The length told with the places of a treatment that is told already. */
function tookIn({ items }: Clause, draft: Draft): void {
  const took = items.find((x) => x.duration);
  const e = draft.entry;
  if (!took || e.kind !== 'treatment' || e.minutes !== undefined) return;
  e.minutes = took.duration!.minutes;
  draft.origins['minutes'] = {
    rule: 'time.minutes',
    how: 'said',
    from: took.token.from,
    to: took.end ?? took.token.to,
  };
}
