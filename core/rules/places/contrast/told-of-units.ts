import type { Action, Finding } from '../../../../shared/vocabulary.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { Item } from '../../item.ts';
import { LEXICON } from '../../lexicon-index.ts';
import { splitBlock } from '../grid.ts';
import type { PlaceContext } from '../place-found.ts';

type Told = { places: string[]; finding?: Finding; action?: Action };

/** What this note has told so far of blocks, one statement at a time. */
function toldSoFar(items: Item[]): Told[] {
  const told: Told[] = [];
  let places: string[] = [];
  let ended = true;
  for (const [k, x] of items.entries()) {
    if (/^([.,;:!?]|and|but|then|&)$/.test(x.w)) {
      ended = true;
      continue;
    }
    if (x.place?.places.length && x.place.places.every((p) => splitBlock(p))) {
      // "holes in 1-1, 3-2 and 6-5": one list
      const last = told.at(-1);
      if (
        ended &&
        /^(,|and|&)$/.test(items[k - 1]?.w ?? '') &&
        items[k - 2]?.place &&
        last?.places === places
      ) {
        places = last.places = [...places, ...x.place.places];
        continue;
      }
      // the finding said before its place, in the same statement
      if (!ended && told.at(-1)?.places.length === 0) told.at(-1)!.places = x.place.places;
      places = x.place.places;
      ended = false;
    }
    const what = x.finding
      ? { finding: x.finding }
      : x.action?.form === 'past'
        ? { action: x.action.v }
        : undefined;
    if (!what) continue;
    told.push({ places: ended ? [] : places, ...what });
    ended = false;
  }
  return told.filter((t) => t.places.length);
}

/** What "the torn one", "the patched one", "the tear one" tells at `k`, and the index behind "one". */
function likenessAt(tokens: Token[], k: number): { is: Omit<Told, 'places'>[]; next: number } | undefined {
  // "the left one" lies to the left
  const hit = w(tokens, k) === 'left' ? undefined : LEXICON.longestAt(tokens, k);
  if (!hit || !/^(one|block|square)$/.test(w(tokens, hit.next)) || w(tokens, hit.next + 1) === 'of')
    return undefined;
  const is = hit.payloads.flatMap((s): Omit<Told, 'places'>[] =>
    s.k === 'finding' ? [{ finding: s.v }] : s.k === 'action' && s.form === 'past' ? [{ action: s.v }] : [],
  );
  return is.length ? { is, next: hit.next + 1 } : undefined;
}

/** "the one with the tear": what it has. */
function damageOf(tokens: Token[], k: number): { is: Omit<Told, 'places'>[]; next: number } | undefined {
  if (w(tokens, k) !== 'one') return undefined;
  // "the one in ribbons", "the one gone thin"
  const having = /^(with|having)$/.test(w(tokens, k + 1));
  const at = having ? (/^(the|a|an)$/.test(w(tokens, k + 2)) ? k + 3 : k + 2) : k + 1;
  if (!having && !/^(in|gone|worn|that)$/.test(w(tokens, at))) return undefined;
  const hit = LEXICON.longestAt(tokens, at);
  const is = hit?.payloads.flatMap((s) => (s.k === 'finding' ? [{ finding: s.v }] : [])) ?? [];
  return hit && is.length ? { is, next: hit.next } : undefined;
}

/** Of several things told, the one that alone was told to be so: "the torn one", "the one with the hole", "patched one". */
export function toldSo(
  tokens: Token[],
  k: number,
  units: string[][],
  { items, mentions }: PlaceContext,
): { unit: string[]; next: number } | undefined {
  const like = likenessAt(tokens, k) ?? damageOf(tokens, k);
  if (!like) return undefined;
  const told: Told[] = [...(mentions ?? []), ...toldSoFar(items ?? [])];
  // the newest telling counts: "the faded one" of an hour ago is none of these
  const newest = told.findLast((t) =>
    like.is.some((is) => (is.finding ? t.finding === is.finding : t.action === is.action)),
  );
  const fits = units.filter((unit) => unit.every((p) => newest?.places.includes(p)));
  if (fits.length === 1) return { unit: fits[0]!, next: like.next };
  // no two things are spoken of: the one block that was told to be so
  const [block] = newest?.places ?? [];
  return !fits.length &&
    newest?.places.length === 1 &&
    splitBlock(block!) &&
    !/^(in|on|at|of|from|near|by|along)$/.test(w(tokens, like.next))
    ? { unit: [block!], next: like.next }
    : undefined;
}

/** "(darned) the hole in row five", "the row two tear": of the things told to have such damage. */
export function thingAt(
  tokens: Token[],
  k: number,
  units: string[][],
  { items, mentions }: PlaceContext,
): { units: string[][]; next: number } | undefined {
  const hit = LEXICON.longestAt(tokens, k);
  const finding = hit?.payloads
    .map((s) => (s.k === 'finding' ? s.v : s.k === 'seam' ? ('split-seam' as const) : undefined))
    .find(Boolean);
  if (!hit || !finding || finding === 'sound' || !THING.test(w(tokens, hit.next - 1))) return undefined;
  const told: Told[] = [...(mentions ?? []), ...toldSoFar(items ?? [])].filter((t) => t.finding === finding);
  const those = units.filter((u) => told.some((t) => u.every((p) => t.places.includes(p))));
  return those.length > 1 ? { units: those, next: hit.next } : undefined;
}
const THING =
  /^(tear|rip|rent|slit|hole|split|seam|stain|mark|spot|patch|mend|repair|darn|pucker|bleed|run|gap)$/;
