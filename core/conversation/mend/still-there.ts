import type { Item } from '../../rules/item.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { POINTERS } from './items.ts';

/** As `wordsBetween`; a single space where there are none. */
const said = (items: Item[], from: number, to?: number): string =>
  wordsBetween(items, from, to).replace(/ +/g, ' ');

type Told = { from: number; next: number; places: string[]; side?: string };

const SIDE = /^(?:the )?(top|bottom|left|right)(?: hand)?(?: (?:one|side|edge|border))?$/;

/** The places that are named, a side by its word alone. */
function told(items: Item[]): Told[] {
  const out: Told[] = [];
  items.forEach((x, k) => {
    const side = SIDE.exec(x.w)?.[1];
    if (side) out.push({ from: k, next: k + 1, places: [], side });
    else if (x.place?.places.length && x.place.kind === 'blocks' && !POINTERS.has(x.place.rule))
      out.push({ from: k, next: k + 1, places: x.place.places });
  });
  return out;
}

const STILL_THERE =
  /^ (?:(?:one|ones|hand|side|edge|border|block) )*(?:is|'s|are|'re|was|were|has|have) (?:still (?:on|in|there|to (?:do|go|come|be done)|as it was|untouched|not done)|not (?:done|off|out)(?: yet)?|n't (?:done|off|out)(?: yet)?)(?: (?:it|that|i|they|and|so|but|,|\.|;|--))* (?:was|were|is|'s|are|meant|did) (?:(?:the|in|on|only|row|block) )*$/;
const LEAD =
  /^ (?:(?:no|nope|oh|ah|wait|sorry|hang on|actually|well|tell a lie|the|,|\.|hand|row|block|in|on|and|but|my mistake|correction) )*$/;
const NOT_LEAD =
  /^ (?:(?:no|oh|ah|wait|sorry|actually|well|,|\.|it|that|was|is|'s|and|but) )*not (?:(?:the|in|on|row|block) )*$/;
const BUT =
  /^ (?:(?:one|side|edge|border|hand) )*(?:(?:,|but|it|was|'s|--|\.) )+(?:(?:the|in|on|row|block) )*$/;
const WAS_LEAD =
  /^ (?:(?:no|oh|ah|wait|sorry|actually|well|,|\.) )*(?:it|that|i|they) (?:was|'s|meant|were) (?:(?:the|in|on|row|block) )*$/;
const NOT = /^ (?:(?:one|side|edge|border|hand) )*(?:(?:,|and|--) )*not (?:(?:the|in|on|row|block) )*$/;
const END = /^ (?:(?:one|side|edge|border|hand|that|came|off|out|,|\.|!) )*$/;

/**
 * Of several places told, one is the wrong one: "(took the binding off the top and the left.) No, the left one's still on, it was the right", "it was
 * 1-3, not 1-2". The right one stands in its stead, and the others stand.
 */
export function stillThere(standing: Standing[], items: Item[]): boolean {
  const [p, q, more] = told(items);
  if (!p || more) return false;
  if (!q) return onlyStillThere(standing, items, p);
  const lead = said(items, 0, p.from);
  const between = said(items, p.next, q.from);
  if (!END.test(said(items, q.next))) return false;
  const wrongFirst =
    (LEAD.test(lead) && STILL_THERE.test(between)) || (NOT_LEAD.test(lead) && BUT.test(between));
  if (!wrongFirst && !(WAS_LEAD.test(lead) && NOT.test(between))) return false;
  const [wrong, right] = wrongFirst ? [p, q] : [q, p];
  const moved = standing.flatMap((s) => {
    const had = placesOf(s.was);
    const gone = named(had, wrong);
    const come = named(had, right);
    if (!gone.length || !come.length || !gone.every((x) => had.includes(x))) return [];
    if (come.some((x) => had.includes(x))) return [];
    return [{ s, places: had.flatMap((x) => (x === gone[0] ? come : gone.includes(x) ? [] : [x])) }];
  });
  for (const { s, places } of moved) put(s.draft, 'places', places, 'amend.still-there', []);
  return moved.length > 0;
}

const ON_STILL =
  /^ (?:(?:one|ones|hand|side|edge|border) )*(?:is|'s|are|'re) (?:still (?:on|in|there)|(?:not|n't) (?:off|out))(?: (?:yet|though|actually|of course))* (?:[.!] )*$/;

/** "no, the left one's still on": only that one is not so. */
function onlyStillThere(standing: Standing[], items: Item[], p: Told): boolean {
  if (!LEAD.test(said(items, 0, p.from)) || !ON_STILL.test(said(items, p.next))) return false;
  const moved = standing.flatMap((s) => {
    const had = placesOf(s.was);
    const gone = named(had, p);
    const kept = had.filter((x) => !gone.includes(x));
    return s.was.kind === 'treatment' && s.was.action === 'remove' && kept.length && kept.length < had.length
      ? [{ s, kept }]
      : [];
  });
  for (const { s, kept } of moved) put(s.draft, 'places', kept, 'amend.still-there', []);
  return moved.length > 0;
}

/** The places that are meant: a side is one of the border or of the edge, as was told before. */
function named(had: string[], { side, places }: Told): string[] {
  if (!side) return places;
  const stem = /^(edge|border)-/.exec(had.find((x) => /^(?:edge|border)-/.test(x)) ?? '')?.[1];
  return stem ? [`${stem}-${side}`] : [];
}
