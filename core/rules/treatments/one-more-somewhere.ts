import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';

/** "there's a third one somewhere", "and another gone as well", "there's one more I can't place": behind it nothing that would name a place or a thing. */
const SOMEWHERE =
  /^ (?:(?:and|then|also|plus|oh|but|,|i 'm sure|i think) )*(?:(?:there 's|there is|there was|there are|i 've|i|we|'ve|have|found|saw|seen|noticed) )*(?:a (?:second|third|fourth|fifth|further)|another|one more)(?: one)?(?: (?:like (?:it|that)|of (?:them|those)|just the same))* (?:(?:gone|somewhere|someplace|too|as well|besides|about|else|,|as|well) )*(?:$|(?:i|we|that|which|but|only|though|can't|don't|not sure|no idea|lord|god|dear) )/;
const IN_LINE =
  /^ (?:(?:and|then|also|oh|but|,) )*(?:(?:there 's|there is|there was) )?(?:a (?:second|third|fourth) one|another(?: one)?|one more) (?:gone )?(?:somewhere|someplace) (?:in|on|along|down|up) /;
/** Findings of which nobody tells one and then another. */
export const NO_SECOND = /^(?:sound|fading|out-of-square|lumpy-batting)$/;

/** The damage just told, found once more, and nobody says where: the place is to be asked for. */
export function oneMoreSomewhere(
  state: ReaderState,
  v: ClauseView,
  words: string,
  placed: ClausePlaces,
  last: Draft | undefined,
): boolean {
  if (
    last?.entry.kind !== 'condition' ||
    last.sentence < v.sentence - 1 ||
    NO_SECOND.test(last.entry.finding)
  )
    return false;
  // "there's one more somewhere in row three": in which of its blocks, nobody has said
  const inLine = placed.places.length > 2 && IN_LINE.test(words);
  if (!inLine && (!/^(?:none|pronoun)$/.test(placed.kind) || placed.outside || !SOMEWHERE.test(words)))
    return false;
  if (
    v.items.some((x) => x.finding || x.action || x.material || x.fabric || x.object || x.duration || x.cost)
  )
    return false;
  state.drafts.push(
    makeDraft(
      'condition',
      v,
      {
        finding: [last.entry.finding, 'condition.one-more', undefined, 'implied'],
        places: [[], 'place.none', undefined, 'implied'],
      },
      'none',
    ),
  );
  return true;
}
