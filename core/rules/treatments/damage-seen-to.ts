import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { planFor } from './as-planned.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

const DONE = String.raw`(?:done|finished|sorted|sorted out|seen to|dealt with|taken care of|fixed|put right|out of the way|mended|repaired|closed(?: up)?|shut)`;
/** "that seam's done", "the hole in 3-3 is dealt with", "both tears are finished now": the damage, told as seen to. */
const IS_DONE = new RegExp(
  String.raw`^ (?:(?:right|ok|okay|so|and|there|well|,|now|good) )*(?:the|that|this|those|these|both|all(?: the)?) (?:\S+ ){0,3}?(?:(?:in|at|on|between) (?:\S+ ){1,8}?)?(?:(?:'s|is|are|has been|have been|'s been)(?: all| both| now| finally)* |(?<=(?:tear|rip|hole|split|gap|slit|seam|stain|mark|spot)s? ))${DONE} `,
);
/** "did that hole", "I've sorted the tears out". */
const DID =
  /^ (?:(?:right|ok|okay|so|and|there|well|,|now|then|i|we|'ve|have|just|also|finally) )*(?:did|done|finished|sorted|saw to|seen to|dealt with|fixed|mended|repaired) (?:the|that|this|those|these|both|all the) /;
const NOT_SO = / (?:n't|not|never|no|yet|to be|once|when|if|until|until|before|nearly|almost|half) /;

/**
 * Damage told of before, and now that it is seen to, by words that do not say how: what was planned for it, else, of a seam or with a
 * stitch, that it is sewn; else what was done is asked for. The damage is only pointed at, and no finding of this note.
 */
export function damageSeenTo(
  state: ReaderState,
  v: ClauseView,
  words: string,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): { draft: Draft; damage: Item[] } | undefined {
  if (!(IS_DONE.test(words) || DID.test(words)) || NOT_SO.test(words)) return undefined;
  const { items } = v;
  const damage = items.filter((x) => (x.finding && x.finding !== 'sound') || x.seam);
  if (!damage.length || placed.outside) return undefined;
  // "both holes are mended": where they were found
  const places = /^(?:specific|pronoun)$/.test(placed.kind)
    ? placed.places
    : placed.kind === 'none' && damage.length === 1
      ? (state.memory.found[damage[0]!.finding ?? 'split-seam'] ?? [])
      : [];
  if (!places.length) return undefined;
  const action =
    planFor(state, places)?.action ??
    (damage.some((x) => x.seam) || stitch || / (?:closed|shut) /.test(words) ? 'resew' : undefined);
  const draft = makeDraft(
    'treatment',
    v,
    {
      ...(action ? { action: [action, 'treatment.seen-to', undefined, 'implied'] as const } : {}),
      state: ['done', 'treatment.seen-to', undefined],
      places: [places, 'place.spoken-of', damage],
      ...(stitch && action && TAKES_STITCH.has(action)
        ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] as const }
        : {}),
    } as Parameters<typeof makeDraft>[2],
    'said',
  );
  return { draft, damage };
}
