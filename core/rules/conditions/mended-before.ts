import { EARLIER_HAND, LONG_AGO, MENDED, PUT, REPAIR_STUFF } from '../../lexicon/earlier-hands.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { type ClausePlaces, placesOfClause } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';

/** What may stand between who it was and what they did: "whoever had it before glued", "an earlier owner has since darned". */
const BETWEEN =
  "(?:(?:had it(?: last| before| first)?|has|have|had|'s|'d|must have|must 've|before|before me|once|since|long ago|years ago|at some (?:point|time)|in the past|obviously|clearly|evidently|apparently|already|kindly|even|just|then|who|went and|gone and|has gone and|back then|,|(?:did|made|mended|fixed|worked on|pieced|had) (?:it|this|that|this one|that one|\\d - \\d)) )*";
const DID = `(?:${MENDED}|${PUT} (?:\\S+ ){0,5}?${REPAIR_STUFF})`;
const WAS = "(?:was|were|been|got|is|are|'s|had|has|have)";

/** "whoever had it before glued tape behind 2-3", "somebody's aunt patched that with curtain stuff" */
const BY_ANOTHER = new RegExp(` ${EARLIER_HAND} ${BETWEEN}${DID} `);
/** "2-1 had been backed with flannel by somebody", "2-4, darned by a previous owner", "has a heart appliquéd over it by a former owner" */
const DONE_BY = new RegExp(
  ` ${MENDED} (?:\\S+ ){0,8}?by (?:${EARLIER_HAND}|another hand|persons? unknown|others|other hands|whoever) `,
);
/** "2-4 (darned, not by me)", "not my work" */
const NOT_MINE = new RegExp(
  ` ${MENDED} (?:\\S+ ){0,4}?(?:, )?(?:but )?not (?:by me|my (?:work|doing)|mine) `,
);
/** "at some point 3-3 was patched", "the seam has been resewn in the past" */
const PAST_THEN_DEED = new RegExp(` ${LONG_AGO} (?:\\S+ ){0,8}?${WAS} (?:\\S+ ){0,3}?${MENDED} `);
const DEED_THEN_PAST = new RegExp(` ${WAS} (?:\\S+ ){0,3}?${MENDED} (?:\\S+ ){0,7}?${LONG_AGO} `);
/** "6-3 mended in the past", in short hand */
const BARE_PAST = new RegExp(
  ` ${MENDED} (?:\\S+ ){0,3}?(?:in the past|at some (?:point|time|stage)|(?:\\S+ )?years ago|long ago|once before|before my time|by an earlier hand) `,
);
/** "2-1 had net over it from the last restoration" */
const FROM_BEFORE = new RegExp(
  ` (?:has|had|'s got|is|are|was|were|there 's|there is|there was) (?:\\S+ ){0,2}?${REPAIR_STUFF} (?:\\S+ ){0,6}?from (?:before|the last restoration|an earlier (?:restoration|campaign|repair)|a previous (?:restoration|campaign|repair)|last time) `,
);

/** "there's an old bit of interfacing glued on behind 3-1", "3-4 has old net stitched over it": put there before, as it is old */
const OLD_STUFF = new RegExp(
  ` (?:has|have|had|'s got|got|is|are|was|were|'s) (?:(?:an?|the|some|this|these|strip|bit|piece|scrap|patch|of) )*old (?:\\S+ )??${REPAIR_STUFF} (?:of (?:\\S+ ){1,2}?)?(?:(?:that|which|it|has|had|been|'s|is|was|all) )*(?:${MENDED}|${PUT}|sewn|stitched|glued|stuck|fused|ironed|tacked|pinned|behind|underneath) `,
);

/** "a patch on it that somebody's granny put there", "the darn in 2-2 some restorer did" */
const MEND_OF = new RegExp(
  ` (?:patch|darn|mend|repair|piece|bit|scrap)(?:es|s)? (?:(?:on|in|over|across|at|to|of) (?:\\S+ ){1,5}?)?(?:(?:that|which|who) )?${EARLIER_HAND} ${BETWEEN}(?:${MENDED}|${PUT}|did|made|done|worked|left) `,
);

/** Work of these days, by whomever, and what is meant or asked: no old repair. */
const OF_TODAY =
  / (?:i|we|me today|for me|helped|today|tonight|yesterday|this morning|this afternoon|this evening|last night|just now|will|'ll|wants?|asked|should|could|might|going to|needs?|to be|says?|said|thinks?) /;

/** Do these words tell of a mend that was there before the work began? */
export const tellsMendBefore = (words: string): boolean =>
  (BY_ANOTHER.test(words) ||
    DONE_BY.test(words) ||
    NOT_MINE.test(words) ||
    PAST_THEN_DEED.test(words) ||
    DEED_THEN_PAST.test(words) ||
    BARE_PAST.test(words) ||
    FROM_BEFORE.test(words) ||
    (words.includes(' old ') && OLD_STUFF.test(words))) &&
  !OF_TODAY.test(words.replace(/ i (?:got|had)(?: to)? it /, ' '));

/** An old repair that a clause tells as the deed of an earlier hand; nothing where no place is said or spoken of. */
export function mendedBefore(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  placed: ClausePlaces,
): Draft | undefined {
  const words = wordsBetween(clause.items);
  const told = tellsMendBefore(words) || (MEND_OF.test(words) && !OF_TODAY.test(words));
  if (clause.items.some((x) => x.finding === 'old-repair') || !told) return undefined;
  const lead = state.clauses[v.index - 1];
  const headed =
    placed.kind === 'none' && lead?.sentence === v.sentence && lead.items.every((x) => x.place)
      ? placesOfClause(lead.items)
      : placed;
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : [];
  const places = headed.places.length ? headed.places : topical;
  const outside = headed.outside && !headed.places.length;
  if (!outside && (!places.length || places.every((p) => /^(quilt|top)$/.test(p)))) return undefined;
  const draft = makeDraft(
    'condition',
    v,
    {
      finding: ['old-repair', 'condition.mended-by-others', v.items],
      places: [outside ? [] : places, 'place.said', headed.items],
    },
    outside ? 'none' : 'said',
  );
  if (outside) draft.outside = true;
  return draft;
}
