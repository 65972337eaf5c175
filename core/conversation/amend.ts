import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { unique } from '../rules/places/grid.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { wordsBetween } from '../rules/words-between.ts';
import { answer } from './answer.ts';
import { answerDay } from './answer-day.ts';
import { tellsLate } from './belated.ts';
import { cueOf, SECOND_LOOK } from './cues.ts';
import { anotherWayThere } from './mend/another-way.ts';
import { bareAgain } from './mend/bare-again.ts';
import { correct } from './mend/correct.ts';
import { goodsAgain } from './mend/goods-again.ts';
import { POINTERS, sensed } from './mend/items.ts';
import { ofLineAgain } from './mend/of-line-again.ts';
import { placesOf, standingOf } from './standing.ts';

/**
 * The last note's entries with what this note changes: an answer to the question that was asked, or a correction. Gives
 * undefined where the words change nothing that was said, so that the note is read as a new one.
 */
export function amend(state: ReaderState, items: Item[], words: string): Draft[] | undefined {
  const { last } = state.memory;
  if (!last) return undefined;
  if (choosesWay(state, words) || givesUpOpen(state)) return undefined;
  if (!last.ask && tellsLate(state.drafts, standingOf(last), words)) return undefined;
  const said = withoutReason(items);
  const head = restStands(items);
  const mended =
    head &&
    correct(
      {
        ...state,
        drafts: state.drafts.filter((d) => d.entry.kind !== 'condition' || d.entry.finding !== 'sound'),
      },
      standingOf(last),
      head,
      head.map((x) => x.w).join(' '),
      'strong',
    );
  if (mended) return mended;
  const goods = goodsAgain(standingOf(last), items);
  if (goods) return goods;
  const ofLine = ofLineAgain(standingOf(last), items, words, state.grid);
  if (ofLine) return ofLine;
  const otherwise = anotherWayThere(state, items, words);
  if (otherwise) return otherwise;
  return (
    answerDay(state, last, items, words) ??
    answer(state, last, said, words) ??
    (tellsDone(state, words) ? undefined : correct(state, standingOf(last), said, words))
  );
}

/** "1-5 I mean. rest ok", "that should be 3-4, everything else is right": what is mended, without the word that the rest stands. */
function restStands(items: Item[]): Item[] | undefined {
  if (items.length > 24) return undefined;
  const words = items.map((x) => x.w);
  // "everything else" and "the rest of it" may have been read as places
  const at = words.findIndex((w, k) => k > 0 && /(^| )(rest|else|otherwise|others?|remainder)( |$)/.test(w));
  if (
    at < 1 ||
    !REST_STANDS.test(
      ` ${words
        .slice(at)
        .join(' ')
        .replace(/^(?:the|all|everything|anything) /, '')} `,
    )
  )
    return undefined;
  let from = at;
  while (from > 0 && /^(the|all|everything|anything|and|but|,|\.|;)$/.test(words[from - 1]!)) from--;
  const head = items.slice(0, from);
  return head.some((x) => x.place?.places.length || x.quantity || x.duration || x.clock || x.fabric) &&
    !head.some((x) => x.finding || x.fail || x.seam || (x.action && !x.place))
    ? head
    : undefined;
}
const REST_STANDS =
  /^ (?:rest|else|otherwise|others?|remainder)(?: (?:of (?:it|that|them|the note)|stuff|bits?|things?|parts?|is|'s|was|are|were|all|i said))* (?:ok|okay|right|fine|good|correct|stands?|stays?|holds?|as (?:i )?(?:said|was|it was|before)|the same|true)(?: (?:as (?:i )?(?:said|it was)|then|though))?(?: [.!])* $/;

/** "that's darned", "it's pressed", where nothing was told as done: work done since, and no mend of what was to be done. */
const tellsDone = (state: ReaderState, words: string): boolean =>
  /^(?:(?:and|so|right|ok|okay|well|there) ,? ?)*(?:that|it|they|those|both) (?:'s|is|are|'re) /.test(
    words,
  ) &&
  state.drafts.length > 0 &&
  state.drafts.every(
    ({ entry: e }) => e.kind === 'treatment' && e.state === 'done' && e.action !== 'leave',
  ) &&
  !state.memory.last!.entries.some(({ entry: e }) => e.kind === 'treatment' && e.state === 'done');

/** "Tying it, not quilting", where no way was settled in the last note: the "not" is of the two ways, and mends nothing. */
const choosesWay = (state: ReaderState, words: string): boolean =>
  !/^(?:no|nope|sorry|wait|oh|actually)\b/.test(words) &&
  state.drafts.some(
    ({ entry: e, origins }) =>
      e.kind === 'decision' && e.status === 'settled' && origins['about']?.rule.startsWith('decision.way'),
  ) &&
  !state.memory.last?.entries.some(({ entry: e }) => e.kind === 'decision' && e.status === 'settled');

/** "never mind the cloth behind 3-1": a way that stood open there is given up, and nothing that was told is struck out. */
const givesUpOpen = ({ drafts, memory }: ReaderState): boolean =>
  drafts.some(
    ({ entry: e }) =>
      e.kind === 'treatment' &&
      e.state === 'dropped' &&
      memory.open.some((o) => o.action === e.action && o.places.some((p) => e.places?.includes(p))),
  );

/** "no, thirty, because I had to redo the corner", "block six then, I was counting the border": why it was wrong mends nothing. */
function withoutReason(items: Item[]): Item[] {
  if (items.length > 24) return items;
  const struck = struckForReason(items);
  if (struck) return items.slice(0, struck);
  const led = reasonFirst(items);
  if (led) return items.slice(led);
  const at = items.findIndex(
    (x, k) =>
      k > 0 &&
      (/^(because|cause|cos|coz|'cause)$/.test(x.w) ||
        (x.w === 'i' &&
          /^(,|-|--|;|\.)$/.test(items[k - 1]!.w) &&
          / (?:ca n't|can not|could n't|never could) (?:even )?(?:read|count|see|tell|add|spell|hear) | (?:was|were|had|must have|have|'d|'ve) (?:been )?(?:just |only |still )?(?:counting|looking|reading|holding|thinking|counted|looked|misread|miscounted|forgotten|forgot|redo|to redo) | (?:'ve |have |had |'d )?(?:got|had) (?:it|that|this|the (?:quilt|thing)) (?:upside down|back to front|backwards|turned|the wrong way|round the wrong way|sideways) /.test(
            ` ${items
              .slice(k + 1, k + 6)
              .map((y) => y.w)
              .join(' ')} `,
          ))),
  );
  if (at < 1 || !items.slice(0, at).some((x) => sensed(x) || x.place)) return items;
  // "cos it's 3-3": what is right is told in the reason
  return items
    .slice(at)
    .some(
      (x) =>
        x.w === 'not' ||
        (x.place?.kind === 'blocks' && x.place.how === 'said' && x.place.places.length === 1),
    )
    ? items
    : items.slice(0, at);
}

/** "Scratch the border width. I had the tape on the wrong edge.": where a reason begins behind something that is taken back. */
function struckForReason(items: Item[]): number {
  const at = items.findIndex((x, k) => k > 1 && k < 12 && /^[.,;-]$/.test(x.w) && items[k + 1]?.w === 'i');
  return at > 1 &&
    TAKES_BACK.test(wordsBetween(items, 0, at)) &&
    WHY_WRONG.test(wordsBetween(items, at + 1, at + 5)) &&
    !items
      .slice(at)
      .some(
        (x) =>
          x.finding ||
          x.cost ||
          x.quantity?.value !== undefined ||
          x.duration ||
          (x.place?.kind === 'blocks' && x.place.how === 'said'),
      )
    ? at
    : 0;
}
const TAKES_BACK =
  /^ (?:(?:no|oh|ah|sorry|wait|actually|please|and|but|,) )*(?:scratch|strike(?: out)?|delete|cross out|rub out|cross off|scrub|forget|ignore|disregard) /;
const WHY_WRONG =
  / i (?:had|held|was|were|'d|must|read|took|got|misread|mixed|muddled|forgot|thought|counted|looked) /;

/** "I was counting the border as a row. Row five.": where the reason that was told first ends. */
function reasonFirst(items: Item[]): number {
  const stop = items.findIndex((x) => /^[.,;!]$/.test(x.w) && x.token.kind === 'mark');
  if (stop < 4 || stop > 12) return 0;
  return REASON_FIRST.test(wordsBetween(items, 0, stop)) &&
    items.slice(stop + 1).some((x) => x.place?.kind === 'blocks')
    ? stop + 1
    : 0;
}
const REASON_FIRST =
  / i (?:was|were|had|must have|have|'d|'ve) (?:been )?(?:just |only |still )?(?:counting|counted|included|including|looking at|reading|misreading|holding|forgotten|forgot) /;

const SMALL = new Set(
  "the a an it was is 's that in on at by with of for more like about around nearer closer to roughly nearly almost approximately say only just actually though way took me all well um uh er yes yeah no not sorry i mean meant made make were they one ones and , . ? ! - * : or rather think reckon probably really called ah oh hmm instead them those this used old so bit it's ish nope wait hang hold right same different one my mistake apologies correction both total altogether be should do enough plenty came comes total worked rang up out set back reflection will 'll 'd say tell think s / b course obviously naturally turns turned better best".split(
    ' ',
  ),
);

/**
 * A scrap of speech with nothing to tell of itself, "closer to forty", "*4-2", "blanket stitch by the way", can only be said
 * of the last note. Asked of notes from which nothing else was read.
 */
export function amendByScrap(state: ReaderState, items: Item[], words: string): Draft[] | undefined {
  const { last } = state.memory;
  if (!last) return undefined;
  const told = items.filter(sensed);
  if (!told.length) return undefined;
  // "and two spools of thread" tells more of the same, and mends nothing
  if (/^(?:oh |, )*(?:and|also|plus) (?:the|a|an|some|two|three|\d+) /.test(words) && cueOf(words) === 'none')
    return undefined;
  // "3-4 is the same print"
  if (
    /(?: is| 's|^is) the same (?:stripe|print|check|plaid|cloth|fabric|stuff|colou?r|pattern|material)\b/.test(
      words,
    )
  )
    return undefined;
  const small = items.length <= 10 && items.every((x) => sensed(x) || SMALL.has(x.w));
  const looked = SECOND_LOOK.test(words);
  if (!small && (items.length > 18 || !looked)) return undefined;
  const standing = standingOf(last);
  const again = bareAgain(state, standing, items);
  if (again) return again;
  const placed = told.filter(
    (x) => x.place?.places.length && !POINTERS.has(x.place.rule) && !x.stitch && !x.quantity,
  );
  if (placed.length) {
    // a row or a group may be where the work goes on
    // "four-four, I think. Yes, four-four."
    const places = unique(placed.flatMap((x) => x.place!.places));
    const held = standing.filter(({ was }) => placesOf(was).length);
    if (
      (places.length !== 1 && !looked) ||
      !held.length ||
      held.some(({ was }) => placesOf(was).length !== 1)
    )
      return undefined;
  }
  return correct(state, standing, items, words, 'strong');
}
