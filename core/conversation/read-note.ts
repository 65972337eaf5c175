import type { Entry } from '../../shared/entry.ts';
import type { Ask, Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { findNextQuestion, findQuery } from '../rules/acts/find-query.ts';
import { chanceDrafts, isAside, isPlainAside } from '../rules/acts/is-aside.ts';
import { isUndo } from '../rules/acts/is-undo.ts';
import { isToolTrouble } from '../rules/acts/tool-trouble.ts';
import { nameBlanks } from '../rules/amounts/blank-amounts.ts';
import { withBlankSides } from '../rules/amounts/blank-sides.ts';
import { withRands } from '../rules/amounts/rand-prices.ts';
import { withUnitsFirst } from '../rules/amounts/units-first.ts';
import { withoutUnknown } from '../rules/amounts/unknown-amounts.ts';
import { withVagueCounts } from '../rules/amounts/vague-counts.ts';
import { answeredHerself } from '../rules/clause/answered-herself.ts';
import { withApprovedAndRejected } from '../rules/clause/approved-and-rejected.ts';
import { askedAndTold } from '../rules/clause/asked-and-told.ts';
import { withBetweenWays } from '../rules/clause/between-ways.ts';
import { withButOnly } from '../rules/clause/but-only.ts';
import { withChoices } from '../rules/clause/choices.ts';
import { withChosenApart } from '../rules/clause/chosen-for.ts';
import { cutClauses } from '../rules/clause/cut-clauses.ts';
import { withDrawnShut } from '../rules/clause/drawn-shut.ts';
import { withNotSo, withReasons } from '../rules/clause/given-why.ts';
import { withLayersLaid } from '../rules/clause/laid-and-basted.ts';
import { withMemoApart } from '../rules/clause/memo-apart.ts';
import { withoutNotChosen } from '../rules/clause/not-chosen.ts';
import { withOffOrNot } from '../rules/clause/off-or-not.ts';
import { withoutOnlyWhen } from '../rules/clause/only-when.ts';
import { withoutOnlyWhy } from '../rules/clause/only-why.ts';
import { withRunOns } from '../rules/clause/run-on.ts';
import { shareObjects } from '../rules/clause/shared-object.ts';
import { withShortDeeds } from '../rules/clause/short-deeds.ts';
import { withTooAsked } from '../rules/clause/too-asked.ts';
import { withTurns } from '../rules/clause/turns-to.ts';
import { withVerdicts } from '../rules/clause/verdict-behind.ts';
import { withWholeStatements } from '../rules/clause/whole-statements.ts';
import { withoutDenied } from '../rules/conditions/asked-and-denied.ts';
import { askedAndFound } from '../rules/conditions/asked-and-found.ts';
import { withFusedBehind } from '../rules/conditions/fused-behind.ts';
import { withoutGuessed, withPlaceBehindStop } from '../rules/conditions/guessed-between.ts';
import { withoutHowBig, withoutOfWhat } from '../rules/conditions/how-big.ts';
import { withMendedToo } from '../rules/conditions/mended-too.ts';
import { withNotForNone } from '../rules/conditions/none-there.ts';
import { withOldRepairsListed } from '../rules/conditions/old-repairs-listed.ts';
import { withMeetings, withParted } from '../rules/conditions/parted-from.ts';
import { withPatchesOfCloth } from '../rules/conditions/patch-of-cloth.ts';
import { withSomethingFusedOn } from '../rules/conditions/something-fused-on.ts';
import { forThisRead } from '../rules/corrections/for-this-read.ts';
import { withDashHeads, withoutHeadColon } from '../rules/dash-heads.ts';
import { withStatusStops } from '../rules/decisions/after-status.ts';
import { withBareLists } from '../rules/decisions/bare-lists.ts';
import { withMatterHeads } from '../rules/decisions/matter-heads.ts';
import { nameHeads } from '../rules/decisions/name-heads.ts';
import { MATTER_CHOSEN, readMatters } from '../rules/decisions/read-matters.ts';
import { deedFirst } from '../rules/deed-first.ts';
import { deniedAgain } from '../rules/denied-again.ts';
import { type Draft, readEntryOf } from '../rules/draft.ts';
import { dropAsides } from '../rules/drop-asides.ts';
import { withoutAllOfIt } from '../rules/fabrics/all-of-the-cloth.ts';
import { indexFabrics } from '../rules/fabrics/find-fabric.ts';
import { withoutQuiltsCloth } from '../rules/fabrics/quilts-cloth.ts';
import { nameHeadedNumbers } from '../rules/headed-numbers.ts';
import { interpret } from '../rules/interpret.ts';
import { boundaryBefore, type Item } from '../rules/item.ts';
import { nameKnockedOff } from '../rules/knocked-off.ts';
import { withLaterLines } from '../rules/later-lines.ts';
import { withLaterPlaces } from '../rules/later-places.ts';
import { nameLineByLine } from '../rules/line-by-line.ts';
import { withListStops, withTopics } from '../rules/list-stops.ts';
import { withGoodsApart } from '../rules/materials/goods-apart.ts';
import { withoutNoneToBuy } from '../rules/materials/none-to-buy.ts';
import { withSizesApart } from '../rules/measurements/sizes-apart.ts';
import { mendCorrections } from '../rules/mend-corrections.ts';
import { mendCounts } from '../rules/mend-counts.ts';
import { tellingsOf } from '../rules/mentions-of.ts';
import { nameBetween } from '../rules/name-between.ts';
import { nameLineOne } from '../rules/name-line-one.ts';
import { nameLines } from '../rules/name-lines.ts';
import { nameNextLine } from '../rules/name-next-line.ts';
import { nameRest } from '../rules/name-rest.ts';
import { nameTheSame } from '../rules/name-the-same.ts';
import { nameUnderLine } from '../rules/name-under-line.ts';
import { newOneNamed } from '../rules/new-one-named.ts';
import { withNowThere } from '../rules/now-there.ts';
import { ofWholeQuilt } from '../rules/of-whole-quilt.ts';
import { namePlaceMarks, withoutShortStops, withRowHeadings } from '../rules/place-marks.ts';
import { exceptPlaces } from '../rules/places/except-places.ts';
import { namesOf } from '../rules/places/names-of.ts';
import { withNotThere } from '../rules/places/not-there.ts';
import { withSeamOfLine } from '../rules/places/seam-of-line.ts';
import { withStripsOfStrippy } from '../rules/places/strips-of-strippy.ts';
import { readAmounts } from '../rules/read-amounts.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { withRelatives } from '../rules/relatives.ts';
import { echoesOf, findRemarks, type RemarkFound } from '../rules/remarks/find-remarks.ts';
import { withStoriesApart } from '../rules/remarks/story-apart.ts';
import { scan } from '../rules/scan/scan.ts';
import { withUnsaidSewing } from '../rules/sewn-on-unsaid.ts';
import { nameShortSides } from '../rules/short-sides.ts';
import { withoutSize } from '../rules/size-told.ts';
import { putSlipsRight } from '../rules/slips/put-right.ts';
import { withSoIs } from '../rules/so-is-that.ts';
import { withTheForYour } from '../rules/spoken-to-quilt.ts';
import { withSpreads } from '../rules/spread-to.ts';
import { stuffLast } from '../rules/stuff-last.ts';
import { stuffPutOn } from '../rules/stuff-put-on.ts';
import { stuffToldBehind } from '../rules/stuff-told-behind.ts';
import { withoutTakenBack } from '../rules/taken-back.ts';
import { withoutThatsAll } from '../rules/thats-all-there.ts';
import { themAsThose } from '../rules/them-as-those.ts';
import { through } from '../rules/through.ts';
import { findDays } from '../rules/times/find-day.ts';
import { findImpossibleDay } from '../rules/times/find-impossible-day.ts';
import { wallOf } from '../rules/times/local-time.ts';
import { withLaidThenOff } from '../rules/treatments/laid-then-off.ts';
import { withMannerFirst } from '../rules/treatments/manner-first.ts';
import { withPiecesByShape } from '../rules/treatments/new-shapes.ts';
import { OWNERS_WORD } from '../rules/treatments/owners-word.ts';
import { withWetCleaning } from '../rules/treatments/wet-cleaning.ts';
import { hoursBeforeTask } from '../rules/work/hours-before-task.ts';
import { withOwnLengths } from '../rules/work/own-lengths.ts';
import { withQuiltApart } from '../rules/work/taken-apart.ts';
import { withoutRather } from '../rules/would-rather.ts';
import { withPlainWords } from '../text/broad-speech.ts';
import { withApostrophes } from '../text/lost-apostrophe.ts';
import { withPauses } from '../text/pauses.ts';
import { withoutStammer } from '../text/said-twice.ts';
import { withSpokenMarks } from '../text/spoken-marks.ts';
import { tokenise } from '../text/tokenise.ts';
import { withoutTalk } from '../text/without-talk.ts';
import { wordsOf } from '../text/words-of.ts';
import { amend, amendByScrap } from './amend.ts';
import { withBareAnswer } from './answers/bare-answer.ts';
import { askFor, askUnknown } from './ask.ts';
import { type Read, readInTwo } from './in-two.ts';
import { findListeningOrder } from './listening-order.ts';
import { type Memory, recall, takenBack } from './memory.ts';
import { aboutTakenBack, namesPart } from './mend/about-taken-back.ts';
import { isStillToDo } from './mend/not-yet.ts';
import { mendsInTurn } from './mends-in-turn.ts';
import { pointedFrom } from './pointed-anew.ts';
import { remember, saidOf } from './remember.ts';
import { replyTo } from './reply.ts';
import { pointSentenceBySentence } from './sentence-by-sentence.ts';
import { settle } from './settle.ts';
import { placesOf } from './standing.ts';

/** Goes up whenever a rule changes what some note means; old notes can then be read anew. */
export const RULES_VERSION = '17';

/** A conversation in which nothing has been said. */
export const SILENCE: Conversation = {};

/** What the reader is given beside the words. */
export type Circumstances = {
  /** When it was said: ISO 8601 with the offset of the quilt's place. */
  at: string;
  quilt: QuiltGrid & { taught?: Record<string, string> | undefined };
  /** What has been said before, as the previous call returned it. */
  conversation: Conversation;
  /** It was said aloud and recognised, and not typed. */
  spoken?: boolean;
  /** It is one sentence of a note that is read as a whole besides. */
  withinNote?: boolean;
};

/** Longer at a stretch nobody works; the hours say so too (core/hours). */
const LONGEST_HOURS = 16;

/** Beyond this many tokens a note is kept whole but only its beginning is read. */
const READ_TOKENS = 1500;

/**
 * Reads one note: words in, structured entries out. Pure: the same words in the same circumstances
 * always give the same reading. Never throws; words that mean nothing are kept as a remark.
 *
 * The stages, in the order that matters:
 *  1. words -> tokens with their offsets (text/tokenise)
 *  2. slips of the ear put right where the words make no sense (rules/slips)
 *  3. tokens -> items with every sense they can have (rules/scan: times, amounts, places, cloth, lexicon)
 *  4. taking back the last note, before anything else is looked at (rules/acts)
 *     and what is said to the tool about its ears (conversation/listening-order)
 *  5. what is said last wins: corrections inside the note (rules/mend-corrections); asides between a subject and its verb fall out (rules/drop-asides); what "the new one" is (rules/new-one-named), the deed before what was used for it (rules/deed-first), the stuff before the place that it lies on (rules/stuff-last)
 *  6. questions to the log (rules/acts/find-query)
 *  7. matters open and settled (rules/decisions); what is told in figures: time at work, lists of goods, lengths (rules/read-amounts); then the other items -> clauses
 *     -> drafts of entries (rules/clause, rules/interpret)
 *  8. answers and mends of the last note (conversation/amend)
 *  9. talk that is no part of the work; remarks (rules/acts/is-aside, rules/remarks)
 * 10. drafts settled: merged, put in order (conversation/settle)
 *     where an answer, a mend or the closing of a choice has news behind it, the two are read one after the other (conversation/in-two)
 * 11. what is missing is asked for, and what was understood is said back (conversation/ask, reply)
 */
export function readNote(said: string, circumstances: Circumstances): Read {
  const text = withSpokenMarks(said);
  const whole = readWhole(text, circumstances);
  const note = {
    text,
    before: circumstances.conversation,
    whole,
    read: (part: string, conversation: Conversation) => readWhole(part, { ...circumstances, conversation }),
  };
  return readInTwo({ ...note, grid: circumstances.quilt }) ?? mendsInTurn(note) ?? whole;
}

/** The note as one piece. */
function readWhole(text: string, circumstances: Circumstances): Read {
  const { quilt, at } = circumstances;
  const memory = recall(circumstances.conversation);
  const grid: QuiltGrid = quilt;
  const local = wallOf(at);
  const typed = through(
    tokenise(withPoint(text, memory)),
    withPlainWords,
    withApostrophes,
    withoutStammer,
    withoutTalk,
    (said) => withBareAnswer(said, memory.last?.ask),
  );
  const unread = typed.length > READ_TOKENS;
  const known = withoutUnknown(
    withVagueCounts(withTheForYour(themAsThose(typed.slice(0, READ_TOKENS), grid), grid)),
  );
  const blanks = through(
    withRands(known.tokens, grid),
    forThisRead,
    withoutRather,
    withoutShortStops,
    withRowHeadings,
    (said) => withStripsOfStrippy(said, grid),
    namePlaceMarks,
    nameKnockedOff,
    nameBlanks,
    ofWholeQuilt,
    withBlankSides,
    nameRest,
  );
  const under = nameHeadedNumbers(
    nameLineByLine(withoutSize(nameShortSides(withPauses(blanks, text)), grid), grid),
    grid,
  );
  const plain = nameHeads(nameUnderLine(under, grid));
  const said = memory.last?.ask ? plain : nameLines(plain, memory.focus, grid);
  const { tokens: heard, slips } = putSlipsRight(
    said.slice(0, READ_TOKENS),
    quilt.taught,
    namesOf(grid),
    circumstances.spoken,
    grid,
  );
  const tokens = through(
    nameBetween(nameLineOne(nameNextLine(heard, grid)), grid),
    withoutThatsAll,
    withApprovedAndRejected,
    withBetweenWays,
    askedAndTold,
    askedAndFound,
    withNotForNone,
    withFusedBehind,
    withoutOfWhat,
    withoutHowBig,
    withPatchesOfCloth,
    withOldRepairsListed,
    withSomethingFusedOn,
    withLaidThenOff,
    withWetCleaning,
    withPiecesByShape,
    mendCounts,
    withUnitsFirst,
    withLaterLines,
    withGoodsApart,
    withSizesApart,
    withQuiltApart,
    hoursBeforeTask,
    withUnsaidSewing,
    nameTheSame,
  );
  const fabrics = indexFabrics(grid);
  const joined = wordsOf(tokens);
  const scanned = scan(tokens, fabrics, {
    grid,
    ...pointedFrom(memory, joined),
    cloth: memory.cloth,
    mentions: memory.mentions,
    list: memory.list,
    ...(memory.counted ? { counted: memory.counted } : {}),
  });
  const withSlips = slips.length ? { slips } : {};

  const state: ReaderState = {
    grid,
    fabrics,
    tokens,
    clauses: [],
    memory,
    local,
    drafts: [],
    carried: [],
  };
  const amendTo = (mended: Draft[], ask: Ask | null): Read => ({
    reading: {
      act: 'amend',
      entries: mended.map(readEntryOf),
      ask,
      reply: reply(ask, mended, grid, unread),
      ...withSlips,
    },
    conversation: { memory: remember(memory, mended, ask, state, scanned, text, true) },
  });

  // "scratch that about the hall": a part is named
  const withoutPart = aboutTakenBack(memory.last, joined);
  if (withoutPart) return amendTo(withoutPart, null);

  if (
    !namesPart(memory.last, joined, scanned.items) &&
    isUndo(
      joined,
      scanned.items,
      memory.last?.entries.some(({ entry }) => takeable(entry)),
      new Set(memory.last?.entries.map(({ entry }) => placesOf(entry).join(' '))).size === 1,
    )
  ) {
    return {
      reading: {
        act: 'undo',
        entries: [],
        ask: null,
        reply: memory.last ? 'Taken back.' : 'There is nothing to take back.',
        ...withSlips,
      },
      conversation: { memory: takenBack(memory) },
    };
  }

  // "Not listening for ten minutes" is said to the tool about its ears, and is no time at work.
  if (findListeningOrder(text, local)?.rest === '') {
    return {
      reading: { act: 'aside', entries: [], ask: null, reply: '', ...withSlips },
      conversation: { memory },
    };
  }

  // "the needle's snapped, second one today"
  if (isToolTrouble(joined, scanned.items))
    return {
      reading: { act: 'aside', entries: [], ask: null, reply: '', ...withSlips },
      conversation: { memory },
    };

  // "and 3-4 too?", where a question went before, asks the same of that
  const settled = through(
    withSeamOfLine(memory.asked ? scanned.items : withTooAsked(scanned.items), memory.mentions ?? []),
    withMannerFirst,
    withDrawnShut,
    stuffToldBehind,
    withoutQuiltsCloth,
    withButOnly,
    withParted,
    withMeetings,
    withoutGuessed,
    withPlaceBehindStop,
    withoutAllOfIt,
    withMendedToo,
    withReasons,
    withNotSo,
    deniedAgain,
    withoutDenied,
    answeredHerself,
    stuffPutOn,
    withOffOrNot,
    withChoices,
    withChosenApart,
    withVerdicts,
    withDashHeads,
    withoutHeadColon,
    withListStops,
    withMemoApart,
    withNotThere,
  );
  const placed = exceptPlaces(withTopics(withLaterPlaces(settled)), fabrics, grid);
  const saidLast = dropAsides(mendCorrections(withoutTakenBack(placed), grid));
  const items = through(saidLast, withoutOnlyWhen, withoutNotChosen, withoutOnlyWhy, withoutNoneToBuy);
  // a slip put right in the note itself mends no other note
  const wordsLeft = items.map((x) => x.w).join(' ');
  const named = findDays(text, local);
  // asked when it was, "from seven till nine" is of the day that was told
  const days =
    !named.length && memory.last?.ask === 'time'
      ? findDays(memory.last.said, local)
          .slice(0, 1)
          .map((d) => ({ ...d, index: 0, length: 0 }))
      : named;
  const day = named[0];
  const asked = /\?\s*$/.test(text);
  const query =
    findNextQuestion(memory.asked, joined, items, day, local) ?? findQuery(joined, items, asked, day, local);
  const ofPlace = query?.query === 'place-history' || query?.query === 'to-do';
  if (
    query &&
    // "does the border come off? not sure": asked of herself, and put as a way in question
    !(items.some((x) => x.w === 'maybe') && !/\bmaybe\b/.test(joined)) &&
    !(
      (ofPlace ||
        (/^(?:open-matters|yardage)$/.test(query.query) &&
          (WILL_I.test(joined) || items.some((x) => x.model)))) &&
      isTreatmentQuestion(items, joined)
    ) &&
    !(memory.last?.ask && ANSWERED.test(joined)) &&
    !(memory.last && SAID_WRONG.test(joined)) &&
    // "row two, the last one": a block, where it was asked which
    !(
      query.query === 'last-entry' &&
      memory.last?.ask === 'place' &&
      !asked &&
      !/\b(?:what|which|read|tell|say|said|note|entry|log|did)\b/.test(joined) &&
      items.some((x) => x.place?.kind === 'blocks' && x.place.places.length)
    ) &&
    !(query.query === 'to-do' && !asked && isStillToDo(memory.last, joined))
  ) {
    const { query: name, rule: _rule, ...args } = query;
    const places = args.places;
    const wrongDay = /^(?:hours-day|day-review|hours-total|hours-task)$/.test(name)
      ? askDay(text, local)
      : null;
    return {
      reading: {
        act: 'query',
        entries: [],
        ask: wrongDay,
        reply: wrongDay?.question ?? '',
        query: name,
        arguments: args,
        ...withSlips,
      },
      conversation: {
        memory: {
          ...memory,
          ...(places ? { focus: places, earlier: [...memory.earlier, memory.focus].slice(-6) } : {}),
          ...(args.about ? { topic: args.about } : {}),
          asked: { query: name },
        },
      },
    };
  }

  const meant = through(
    items,
    withWholeStatements,
    withStoriesApart,
    withLayersLaid,
    withOwnLengths,
    newOneNamed,
    withRelatives,
    withSpreads,
    withSoIs,
    withNowThere,
    withStatusStops,
    withBareLists,
    withMatterHeads,
    withShortDeeds,
    stuffLast,
    deedFirst,
    withRunOns,
    withTurns,
  );
  const matters = readMatters(state, meant);
  const figured = readAmounts(state, withoutItems(meant, matters.first), days);
  const remarks = findRemarks(meant);
  const clauses = shareObjects(cutClauses(withMarksApart(withoutItems(figured, matters.later), remarks)));

  state.clauses = clauses;
  interpret(state);

  // an old mend at a place is a finding, whatever is told of who made it
  const told = remarks.filter(
    (r) =>
      !(
        r.kind === 'wish' &&
        state.drafts.some((d) => saidWithin(d, OWNERS_WORD, r) || saidWithin(d, MATTER_CHOSEN, r))
      ) &&
      (r.kind !== 'history' ||
        !state.drafts.some((d) => saidWithin(d, 'condition.mended-by-others', r) || namesMender(d, text, r))),
  );
  const chance = chanceDrafts(tokens, clauses, state.drafts);
  // the baby and the owner's wish answer no question of the tool and mend no note
  const toldFirst = told.some((r) => r.from <= (items[0]?.token.from ?? 0));
  const apart = toldFirst || (chance.size === state.drafts.length && isPlainAside(tokens, items));
  const amended = (mended: Draft[]): Read => {
    mended.push(...remarksOf(told, text));
    return amendTo(mended, askFor(mended, grid, state) ?? askLongSpan(mended));
  };
  const mended = apart ? undefined : amend(state, items, wordsLeft);
  if (mended) return amended(mended);

  const echoes = echoesOf(told, state.drafts);
  state.drafts = state.drafts.filter((d) => !chance.has(d) && !echoes.has(d));
  const tellings = tellingsOf(state.drafts, state.clauses);
  const drafts = settle(state, items);
  if (!drafts.length && !told.length && !apart && !chance.size) {
    const byScrap = amendByScrap(state, items, wordsLeft);
    if (byScrap) return amended(byScrap);
  }
  if (!drafts.length && !told.length && (chance.size > 0 || isAside(tokens, items))) {
    return {
      reading: { act: 'aside', entries: [], ask: null, reply: '', ...withSlips },
      conversation: { memory },
    };
  }
  if (!circumstances.withinNote)
    pointSentenceBySentence(
      drafts,
      text,
      circumstances.conversation,
      quilt.fabrics ?? {},
      (sentence, conversation) => readNote(sentence, { ...circumstances, conversation, withinNote: true }),
    );
  // "cut the strips but I've forgotten how wide"
  if (known.unknown === 'width' && drafts.every((d) => d.entry.kind !== 'measurement')) {
    const cut = drafts.find(({ entry: e }) => e.kind === 'treatment' && e.action === 'cut');
    if (cut && /\bstrips?\b/.test(joined))
      drafts.push({
        ...cut,
        entry: { kind: 'measurement', of: 'strip' },
        origins: { entry: cut.origins['entry']! },
        placed: 'unneeded',
      });
  }
  drafts.push(...remarksOf(told, text));
  if (!drafts.length) drafts.push(remarkDraft([], 0, text.length, 'remark.unread'));
  const ask =
    askFor(drafts, grid, state) ??
    askUnknown(known.unknown, drafts) ??
    (toldOfTime(drafts) ? askDay(text, local) : null) ??
    askLongSpan(drafts);
  return {
    reading: {
      act: 'log',
      entries: drafts.map(readEntryOf),
      ask,
      reply: reply(ask, drafts, grid, unread),
      ...withSlips,
    },
    conversation: { memory: remember(memory, drafts, ask, state, scanned, text, false, tellings) },
  };
}

/** "6,5": a decimal where a quantity was asked for, and no row and block. */
const withPoint = (text: string, memory: Memory): string =>
  memory.last?.ask === 'quantity' && /^\s*\d{1,3},\d{1,3}\s*\.?\s*$/.test(text)
    ? text.replace(',', '.')
    : text;

/** "which? oh, four four", "the last one then": asked back, and answered. */
const ANSWERED =
  /^(?:(?:oh|um|uh|er|sorry) )*(?:(?:which|what|where|was it|is it|did i|you mean|do you mean)\b[^?]*\? (?:\S+ ?)+|the last one(?: then)?)$/;

/** "did I say 3-4? it was 3-3", "did I put 20, meant 30": asked of herself, and put right. */
const SAID_WRONG =
  /\bdid i (?:just )?(?:say|put|write|tell you|call it)\b[^?.!]{1,40}[?.!,-] (?:(?:no|sorry|oh|well|,|i) )*(?:it (?:was|is|'s|should)|they (?:were|are|'re)|meant|should|make|that (?:should|was)|actually)\b|\bdid i (?:just )?(?:say|put|write)\b[^?.!]{1,20}\? (?:(?:no|sorry|oh|well|,) )*(?:row|block|\d+|one|two|three|four|five|six|seven|eight|nine)\b/;

/** Something that can be taken off, taken out or left at the bench: "take it off" then speaks of that. */
const takeable = (e: Entry): boolean =>
  (e.kind === 'treatment' && (e.action === 'remove' || e.action === 'leave' || e.state === 'considering')) ||
  (e.kind === 'condition' && e.finding === 'old-repair');

const toldOfTime = (drafts: Draft[]): boolean => drafts.some((d) => d.entry.kind === 'work');

/** The question for a stretch whose end lies before its start by the clock, so that it would run on through most of a day. */
function askLongSpan(drafts: Draft[]): Ask | null {
  for (const { entry } of drafts) {
    if (entry.kind !== 'work' || !entry.start || !entry.end) continue;
    const hours = (Date.parse(`${entry.end}Z`) - Date.parse(`${entry.start}Z`)) / 3_600_000;
    if (hours <= LONGEST_HOURS) continue;
    const [from, to] = [entry.start.slice(11), entry.end.slice(11)];
    return {
      slot: 'time',
      question: `From ${from} to ${to} ends before it starts, or goes on for ${Math.round(hours)} hours. When was it?`,
    };
  }
  return null;
}

/** The question for a day that the calendar has not got: its hours would be counted on the day of the note. */
function askDay(text: string, local: string): Ask | null {
  const day = findImpossibleDay(text, local);
  return day ? { slot: 'time', question: `There is no ${day}. Which day do you mean?` } : null;
}

const reply = (ask: Ask | null, drafts: Draft[], grid: QuiltGrid, unread: boolean): string =>
  [
    replyTo(
      drafts.map((d) => d.entry),
      grid,
    ),
    ...(unread
      ? [
          `Only the first ${READ_TOKENS} words were read; all of them are kept. Say the rest in shorter notes.`,
        ]
      : []),
    ...(ask ? [ask.question] : []),
  ].join(' ');

/** The items without those taken; where a run is taken out a boundary stays behind. */
function withoutItems(items: Item[], taken: Set<Item>): Item[] {
  if (!taken.size) return items;
  const rest: Item[] = [];
  for (const item of items) {
    if (!taken.has(item)) {
      rest.push(item);
      continue;
    }
    const before = rest.at(-1);
    if (before && before.token.kind !== 'mark') rest.push(boundaryBefore(item));
  }
  return rest;
}

/** "a seam is open on the back and initials worked in red at the top right": a boundary before the mark, whose places are its own. */
function withMarksApart(items: Item[], remarks: RemarkFound[]): Item[] {
  const marks = remarks.filter((r) => r.apart || r.cutAt !== undefined);
  return marks.length
    ? items.flatMap((x) =>
        marks.some((r) => r.cutAt === x.token.from)
          ? [boundaryBefore(x, ';'), x]
          : marks.some((r) => r.apart && r.from === x.token.from)
            ? [boundaryBefore(x), x]
            : [x],
      )
    : items;
}

/** Was the draft told by that rule, within the words of the remark? */
const saidWithin = ({ origins }: Draft, rule: string, { from, to }: RemarkFound): boolean =>
  [origins['finding'], origins['action'], origins['about']].some(
    (at) => at?.rule === rule && at.from >= from && at.to <= to,
  );

/** "4-1 has a patch someone sewed on in the seventies": who made the repair and when is no story of its own. */
const namesMender = (d: Draft, text: string, r: RemarkFound): boolean =>
  saidWithin(d, 'condition.old-repair', r) &&
  /\b(?:some(?:one|body)|whoever|they|she|he|gran\w*|nana?)\b/i.test(saidOf(d.origins['finding'], text));

/** A note's remarks as drafts: those without a place of their own are one, but what the owner wishes. */
function remarksOf(told: RemarkFound[], text: string): Draft[] {
  const placed = told.filter((r) => r.places.length);
  const plain = told.filter((r) => !r.places.length);
  const drafts = placed.map((r) => remarkDraft(r.places, r.from, r.to, `remark.${r.kind}`));
  // what the owner wishes is one remark, the quilt's story in sentences of its own another
  const [wishes, others] = [plain.filter((r) => r.kind === 'wish'), plain.filter((r) => r.kind !== 'wish')];
  const isApart = wishes.every((wish) =>
    others.every((r) => /[.!?\n]/.test(text.slice(Math.min(wish.to, r.to), Math.max(wish.from, r.from)))),
  );
  for (const part of isApart ? [wishes, others] : [plain])
    if (part.length) drafts.push(remarkDraft([], part[0]!.from, part.at(-1)!.to, `remark.${part[0]!.kind}`));
  return drafts;
}

const remarkDraft = (places: string[], from: number, to: number, rule: string): Draft => ({
  entry: { kind: 'remark', ...(places.length ? { places } : {}) },
  origins: { entry: { rule, how: 'said', from, to } },
  placed: 'unneeded',
  clause: 0,
  sentence: 0,
});

/** "1-1 & 2-2: patch them or leave them?", "net over 2-2?" are matters under consideration and no questions to the log. */
function isTreatmentQuestion(items: Item[], words: string): boolean {
  // "what about net over 2-2?"
  if (!WHAT_ABOUT.test(words) && ASKS_THE_LOG.test(words)) return false;
  // "what about netting 2-2", "how about a darn on 3-4"
  if (
    WHAT_ABOUT.test(words) &&
    items.some((x) => x.deed || (x.action && x.action.form !== 'past' && !x.task))
  )
    return true;
  // "was 2-3 patched or darned"
  if (
    /^(?:so |and )?(?:was|were) (?!it\b|that\b|this\b)/.test(words) &&
    !/\b(?:to|maybe|better)\b/.test(words)
  )
    return false;
  const ways = items.filter((x) => x.action || x.w === 'leave' || x.material || x.topic || x.model);
  if (ways.length > 0 && /\b(or|vs|versus|maybe|should i|shall i|do i|could i|might)\b| \/ /.test(words))
    return true;
  // "patch 3-3?", but "patched 3-3?" asks whether it is done
  return (
    /\?\s*$/.test(words) &&
    !/\b(done|did|have|has|had|was|were|is|are|been|any|anything|yet|so far|history|story|ever|left|last)\b/.test(
      words,
    ) &&
    items.some(
      (x) => (x.action && x.action.form !== 'past') || (x.material && /^(net|interfacing)$/.test(x.material)),
    )
  );
}

const WHAT_ABOUT = /^(?:so |and |right |okay |ok |oh |hmm |or |well )*(?:what|how) about\b/;

/** "will I net that one or cut it out, I'm in two minds": the ways are told, and nothing is asked of the log. */
const WILL_I = /\b(?:will|shall|should|do) (?:i|we) (?!have\b|need\b|buy\b|get\b).* or /;
const ASKS_THE_LOG =
  /^(so |and |right |okay )?(what|how|which|when|show|read|list|tell|total|hrs|hours|anything|any|have i|did i|remind)\b/;
