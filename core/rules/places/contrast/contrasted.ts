import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { pickedFrom } from '../group-spoken-of.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { begins, type Member, memberAt } from './member-at.ts';
import { standsAlone } from './stands-alone.ts';
import { toldSo } from './told-of-units.ts';
import { unitsInHand } from './units-in-hand.ts';

/**
 * One of two or three things told of together, and then the other: "(2-3 and 4-1 are torn,) the row two one gets net, the other I'll
 * leave", "re-sewed the first by hand, the second by machine".
 */
export function contrasted(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  // "first two patched, third darned": of the list that the two were picked from
  const whole = pickedFrom(w(tokens, w(tokens, i) === 'the' ? i + 1 : i), ctx)?.map((p) => [p]);
  const units = whole ?? unitsInHand(ctx) ?? [];
  if (units.length > 6) return undefined;
  const found = (m: Member | undefined, rule: string): PlaceFound | undefined =>
    m && {
      next: m.next,
      places: m.unit,
      how: 'implied',
      rule,
      kind: 'pointer',
      ...(units.some((u) => u.every((p) => m.unit.includes(p))) ? { among: units.flat() } : {}),
    };
  return (
    found(theOther(tokens, i, units, ctx), 'place.the-other') ??
    found(memberAt(tokens, i, units, ctx), 'place.one-of-them')
  );
}

/** As `contrasted`, where any word may begin: "torn one whipstitched, stained one left". */
export function contrastedBare(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (!begins(tokens, i) || tokens[i]?.kind !== 'word') return undefined;
  if (![1, 2, 3].some((n) => w(tokens, i + n) === 'one')) return undefined;
  const units = unitsInHand(ctx);
  const m = units && units.length > 1 && units.length < 7 ? toldSo(tokens, i, units, ctx) : undefined;
  return (
    m && {
      next: m.next,
      places: m.unit,
      how: 'implied',
      rule: 'place.one-of-them',
      kind: 'pointer',
      among: units!.flat(),
    }
  );
}

/** "the other", "other one", "the remaining one", where all but one of them were just spoken of. */
function theOther(
  tokens: Token[],
  i: number,
  units: string[][],
  { focus, cloth, earlier }: PlaceContext,
): Member | undefined {
  const the = /^(the|that)$/.test(w(tokens, i));
  const k = the ? i + 1 : i;
  if (!/^(other|remaining)$/.test(w(tokens, k))) return undefined;
  if (!the && !begins(tokens, i)) return undefined;
  const one = /^(one|block)$/.test(w(tokens, k + 1));
  if (!one && !(standsAlone(tokens, k + 1) && w(tokens, k) === 'other')) return undefined;
  const next = one ? k + 2 : k + 1;
  if (
    one &&
    /^(of|in|on|at|along)$/.test(w(tokens, next)) &&
    /^(row|column|the|that|those|these|them)$/.test(w(tokens, next + 1))
  )
    return undefined;
  const apart = units.filter((u) => !u.some((p) => focus.includes(p)));
  // two seams may meet in a block: the other is the one of which not all is spoken of
  const left = apart.length ? apart : units.filter((u) => !u.every((p) => focus.includes(p)));
  if (left.length === 1 && units.length > 1) return { unit: left[0]!, next };
  // "the ginghams in row one are torn, other one sound": of the cloth that those belong to
  const whole = [...(cloth ? [cloth] : []), ...[...earlier].reverse()].find(
    (g) =>
      g.length === focus.length + 1 && g.length < 7 && focus.length > 0 && focus.every((p) => g.includes(p)),
  );
  return whole ? { unit: whole.filter((p) => !focus.includes(p)), next } : undefined;
}
