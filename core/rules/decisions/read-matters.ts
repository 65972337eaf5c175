import type { DecisionStatus, Topic } from '../../../shared/vocabulary.ts';
import { COLOURS } from '../../lexicon/colours.ts';
import { OPEN_HEAD, SETTLED_HEAD } from '../../lexicon/matters.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { isPlainWord } from '../plain-word.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isBareDate, isDeadline } from './is-deadline.ts';
import { choiceUnder, chosenOf, sewnBefore, wonOf } from './matter/chosen-of.ts';
import { cueOf } from './matter/cue-of.ts';
import { dateOf } from './matter/date-of.ts';
import { matterIn } from './matter/matter-in.ts';
import { BLOCKS, isTakingOff, type Part, WELL, YARN } from './matter/part.ts';
import { partsOf } from './matter/parts-of.ts';
import { isSumOfJob, priceOf, priceTold, struckDeal } from './matter/price-of.ts';
import { sentencesOf } from './matter/sentences-of.ts';
import { spread } from './matter/spread.ts';
import { senseOf, topicOf } from './matter/topic-of.ts';
import { wayAnswered, wayOver } from './matter/way-over.ts';
import { isWholeOrPart, waysStandOpen } from './matter/whole-or-part.ts';
import { splitListed } from './matter-heads.ts';
import { isHandOrMachine, plainMatter } from './plain-matter.ts';

/** Which items the matters took: `first` before figures are read, `later` once the figures among them have been. */
export type MatterClaims = { first: Set<Item>; later: Set<Item> };

/** The rule of an open matter closed by naming one of its ways: the wish it was told by is no remark besides. */
export const MATTER_CHOSEN = 'decision.chosen';

/**
 * Matters about how to finish, which cloth, the price and the date, open or settled, read off the whole note before its
 * clauses are: they come in lists ("open: wadding weight, border y/n"), with what was decided said after them ("…, that's
 * settled") or before ("settled: …"). Doing or not doing a treatment at a place is a treatment and is left alone.
 */
export function readMatters(state: ReaderState, items: Item[]): MatterClaims {
  const claims: MatterClaims = { first: new Set(), later: new Set() };
  const sentences = sentencesOf(items);
  const add = (
    about: Topic,
    status: DecisionStatus,
    part: Part,
    rule: string,
    number: number,
    on: Item[] = part.items,
  ): void => {
    part.taken = true;
    const item = part.topic?.item;
    // "tying or quilting, and it'll be tied": what was open is settled in the same breath
    const twin = state.drafts.find(
      ({ entry: e }) =>
        e.kind === 'decision' &&
        (e.about === about || (e.status === 'open' && isOtherWay(e.about, about) && status === 'settled')),
    );
    if (
      twin?.entry.kind === 'decision' &&
      twin.entry.status === 'open' &&
      status === 'settled' &&
      twin.sentence >= number - 1
    ) {
      twin.entry.status = 'settled';
      twin.entry.about = about;
    } else if (!twin) {
      const draft = makeDraft(
        'decision',
        { index: 0, sentence: number, items: on.length ? on : part.items },
        { about: [about, rule, item], status: [status, rule, item] },
        'unneeded',
      );
      draft.clause = -1;
      state.drafts.push(draft);
    }
    const set = about === 'price' || about === 'deadline' ? claims.first : claims.later;
    for (const x of part.items) set.add(x);
  };
  let heading: DecisionStatus | undefined;
  let settledBefore = false;
  sentences.forEach(({ items: own, stop }, number) => {
    let parts = partsOf(own);
    if (parts.length === 0 || isWholeOrPart(own) || waysStandOpen(state.memory, own)) return;
    // "the wadding I haven't settled. No, I have: the thinner"
    if (
      /^ (?:no|actually|in fact)(?: ,)? (?:i|we) (?:have|do|am|'ve)(?: (?:decided|settled|now))*(?: :| ,)? /.test(
        wordsBetween(own),
      )
    ) {
      const open = state.drafts.findLast((d) => d.entry.kind === 'decision');
      if (open?.entry.kind === 'decision' && open.entry.status === 'open' && open.sentence >= number - 1) {
        open.entry.status = 'settled';
        for (const x of own.slice(0, own.findIndex((y) => y.token.kind === 'mark') + 1 || own.length))
          claims.later.add(x);
      }
    }
    // "tie vs quilt → tie", "tie/quilt? quilt": the question, and the answer behind it
    const chosenWay = wayAnswered(stop === '?' ? [...own, ...(sentences[number + 1]?.items ?? [])] : own);
    if (chosenWay) {
      add(chosenWay, 'settled', parts[0]!, 'decision.way-answered', number, own);
      for (const x of [...own, ...(stop === '?' ? sentences[number + 1]!.items : [])]) claims.later.add(x);
      return;
    }
    // "quilt.", where tying or quilting stood open
    if (
      sentences.length === 1 &&
      BARE_QUILT.test(wordsBetween(own)) &&
      state.memory.matters?.some((m) => m.about === 'tying' || m.about === 'quilting')
    ) {
      add('quilting', 'settled', parts[0]!, 'decision.way-bare', number, own);
      return;
    }
    // the heading of a list holds until the next full stop
    const first = parts[0]!;
    const leads = /^(:|--|-)$/.test(parts[1]?.joint ?? '');
    const opensList = leads && OPEN_HEAD.test(first.words.trim());
    const settlesList = leads && SETTLED_HEAD.test(first.words.trim());
    if (opensList) heading = 'open';
    else if (settlesList) heading = 'settled';
    else if (number > 0 && sentences[number - 1]!.stop !== ';') heading = undefined;
    const headed = heading;
    if (opensList || settlesList) {
      for (const x of first.items) claims.later.add(x);
      parts.shift();
    }
    if (headed)
      parts = parts.flatMap((part) =>
        splitListed(part.items, (x, k) => senseOf(x, part.items, k)).map((list, k) => ({
          items: list,
          words: wordsBetween(list),
          joint: k ? ',' : part.joint,
        })),
      );
    const asked = stop === '?';
    // an afterthought of its own ("Can't decide.", "I keep going back and forth.") speaks of the sentence before
    const tail = sentences[number + 1];
    const after =
      tail && tail.items.length <= 9 && !tail.items.some((x) => topicOf([x]) || BLOCKS(x))
        ? cueOf(wordsBetween(tail.items))
        : undefined;
    for (const part of parts) {
      part.cue = cueOf(part.words);
      const topic = topicOf(part.items);
      if (topic) part.topic = topic;
    }
    const before = state.drafts.findLast((d) => d.entry.kind === 'decision' && d.sentence >= number - 2);
    const earlier = before?.entry.kind === 'decision' ? before.entry.status : undefined;
    spread(parts, headed, after, asked, earlier);
    // "Tie or quilt? Leaving that open": said of the matter, and no treatment
    if (after === 'open' && tail!.items.some((x) => x.action?.v === 'leave') && parts.some((p) => p.topic))
      for (const x of tail!.items) claims.later.add(x);
    const sentence = wordsBetween(own);
    const around = { state, parts, sentence, asked, settledBefore };
    if (!headed && struckDeal(sentence, own)) {
      const part = parts.find((p) => p.items.some(isSumOfJob))!;
      add('price', 'settled', part, 'decision.price', number);
      for (const p of parts) p.taken = true;
      for (const x of own) claims.first.add(x);
      return;
    }
    for (const [k, part] of parts.entries()) {
      if (part.taken) continue;
      const price =
        priceOf(parts, k, headed) ?? (number === 0 && k === 0 ? priceTold(state, parts) : undefined);
      if (price) {
        add('price', price, part, 'decision.price', number);
        if (isDeadline(part.words, part.items)) add('deadline', 'settled', part, 'decision.deadline', number);
        continue;
      }
      const plain =
        plainMatter(part.words) ??
        (isHandOrMachine(part.words, parts[k + 1]?.words ?? '')
          ? { topic: 'quilting' as const, status: 'settled' as const }
          : undefined);
      if (plain && !part.items.some(BLOCKS)) {
        add(plain.topic, plain.status, part, 'decision.plain', number);
        if (plain.topic === 'quilting') for (const x of parts[k + 1]!.items) claims.later.add(x);
        // "warm or cold, I don't know yet": the words that said so go with it
        if (plain.topic === 'washing' && plain.status === 'open')
          for (let q = k + 1; q < parts.length && !parts[q]!.topic && parts[q]!.cue === 'open'; q++)
            for (const x of parts[q]!.items) claims.later.add(x);
        continue;
      }
      const date =
        dateOf(parts, k) ??
        (headed && !part.topic && !part.items.some(BLOCKS) && isBareDate(part.words) ? part : undefined);
      if (date) {
        const open =
          /\b(?:no (?:deadline|due date)|not sure|n't know|undecided|open|no date|n't said|tbd|tbc|(?:n't|not) (?:yet )?(?:fixed|agreed|settled|set)|still to be|to be (?:agreed|settled|decided|fixed|confirmed)|up in the air)\b/.test(
            date.words,
          ) ||
          (part.status === 'open' && part.topic?.topic === 'deadline') ||
          // "deadline? still to ask"
          (asked && parts.length === 1 && part.items.length <= 3) ||
          (/\b(?:deadline|date)\b/.test(date.words) &&
            (part.cue === 'open' || (parts[k + 1]?.cue === 'open' && !parts[k + 1]!.topic))) ||
          // "price still to be agreed, deadline too"
          (parts[k - 1]?.status === 'open' && / (?:too|as well|also|likewise) $/.test(part.words)) ||
          // "when it's due back, don't know yet"
          (/^ (?:and |but )*(?:when|what day|what date) /.test(part.words) &&
            parts[k + 1]?.cue === 'open' &&
            !parts[k + 1]!.topic);
        for (const x of date.items) claims.first.add(x);
        add('deadline', open ? 'open' : 'settled', part, 'decision.deadline', number);
        continue;
      }
      if (headed) {
        const yarn =
          !part.topic &&
          part.items.some((x) => YARN.test(x.w)) &&
          state.drafts.some(
            (d) => d.entry.kind === 'decision' && d.entry.about === 'tying' && d.sentence === number,
          );
        const goesIn =
          headed === 'open' && GOES_IN.test(part.words) && part.items.some(BLOCKS)
            ? { topic: 'fabric' as const, item: part.items.find(BLOCKS)! }
            : undefined;
        if (goesIn) part.topic = goesIn;
        const listed =
          part.topic ??
          // "decisions: tie it, red wool"
          (yarn ? { topic: 'tie-thread' as const, item: part.items.at(-1)! } : undefined) ??
          (part.items.length > 1 ? { topic: 'other' as const, item: part.items[0]! } : undefined);
        if (!listed || strayed(part) || isTakingOff(part.words)) {
          // "settled: quilt it, don't tie it": the other way goes with the one chosen
          if (DENIED.test(part.words) && /^(?:tying|quilting)$/.test(listed?.topic ?? ''))
            for (const x of part.items) claims.later.add(x);
          continue;
        }
        part.topic = listed;
        // "still open are the thread and the border, but it's a cold wash, that's fixed": the list has turned
        const turned =
          headed === 'open' &&
          parts.slice(1, k + 1).some((p) => p.joint === 'but') &&
          parts.slice(k).some((p) => !p.topic && p.cue === 'settled');
        add(
          listed.topic,
          turned
            ? 'settled'
            : part.cue &&
                part.topic.topic !== 'other' &&
                part.cue !== headed &&
                // "still open is the binding, but the backing is settled"
                (headed === 'settled' || part.joint === 'but')
              ? part.cue
              : headed,
          part,
          'decision.listed',
          number,
        );
        continue;
      }
      const over = wayOver(part);
      if (over) {
        add(over, 'settled', part, 'decision.way-over', number);
        if (part.topic?.topic === 'tie-thread')
          add('tie-thread', 'settled', part, 'decision.cloth-for', number);
        continue;
      }
      const chosen = k === 0 ? chosenOf(state, part, parts, asked) : asked ? undefined : wonOf(state, part);
      if (chosen) {
        add(chosen, 'settled', part, MATTER_CHOSEN, number);
        continue;
      }
      // "resewn, ladder stitch. Thread: silk, cream": what it was sewn with
      const sewn = parts[0]!.topic?.topic === 'thread' && sewnBefore(sentences[number - 1]?.items ?? []);
      const under = k === 1 && part.joint === ':' && !asked && !sewn ? choiceUnder(parts) : undefined;
      if (under) {
        add(under, 'settled', part, 'decision.choice-under', number);
        for (const x of parts[0]!.items) claims.later.add(x);
        continue;
      }
      const found = matterIn(around, k);
      // "backing: leave or replace, undecided": two treatments of it stand open
      if (
        found?.status === 'open' &&
        (TWO_TREATMENTS.test(parts[k + 1]?.words ?? '') ||
          // "the front's been pressed, the back hasn't yet": not done there
          (NOT_YET_DONE.test(part.words) &&
            parts.slice(0, k).some((p) => p.items.some((x) => x.action?.form === 'past'))))
      )
        continue;
      if (found) {
        // "back: calico or the brown sheet, open": the ways in question belong to its words
        const told = [...part.items];
        for (let q = k + 1; q < parts.length && !parts[q]!.topic; q++) told.push(...parts[q]!.items);
        add(found.topic, found.status, part, found.rule, number, told);
        if (part.joint === ':' && parts[k - 1] && isOfMatter(parts[k - 1]!, found.topic))
          for (const x of parts[k - 1]!.items) claims.later.add(x);
        // "how to wash it: cool water in the bath, that is settled": what it is about is told behind the colon
        for (
          let q = k + 1;
          parts[k + 1]?.joint === ':' && q < parts.length && isOfMatter(parts[q]!, found.topic);
          q++
        ) {
          parts[q]!.taken = true;
          for (const x of parts[q]!.items) claims.later.add(x);
        }
        // "tying it, not quilting": the other way goes with the one chosen
        if (found.rule.startsWith('decision.way') && found.status === 'settled')
          for (const other of parts.slice(k + 1))
            if (
              /^ (?:and |but )*(?:not|no|never) /.test(other.words) &&
              /^(?:tying|quilting)$/.test(other.topic?.topic ?? '')
            ) {
              other.taken = true;
              for (const x of other.items) claims.later.add(x);
            }
        // the words that said so go with it
        for (
          let q = k + 1;
          q < parts.length &&
          ((!parts[q]!.topic && parts[q]!.cue) ||
            isPlainChoice(parts[q]!) ||
            (q === k + 1 && found.status === 'settled' && namesChoice(parts[q]!)));
          q++
        )
          for (const x of parts[q]!.items) claims.later.add(x);
      }
    }
    if (
      parts.some((p) => p.taken && p.status === 'settled') ||
      (headed === 'settled' && parts.some((p) => p.taken)) ||
      state.drafts.some(
        (d) => d.entry.kind === 'decision' && d.entry.status === 'settled' && d.sentence === number,
      )
    )
      settledBefore = true;
  });
  return claims;
}

/** Of tying and quilting, the one and the other. */
const isOtherWay = (a: Topic, b: Topic): boolean =>
  (a === 'tying' && b === 'quilting') || (a === 'quilting' && b === 'tying');

/** "what goes in 2-2", "what to put in the middle block": the cloth for it. */
const GOES_IN =
  /^ (?:and |or )*what (?:fabric |cloth |to put |to use |goes |i put |i use |i 'll put |is going |'s going |should go )+(?:in|into|on|for|at) /;

const BARE_QUILT =
  /^ (?:ok |okay |so |right |then |well |oh |um |, )*(?:hand |machine )?quilt(?: it| then| please)*(?: (?:,|i think|we said|she said|i reckon|in the end|so|then|that 's that|that 's settled|definitely|decided|and|it is))* $/;
const TREAT = '(?:just )?(?:leave|keep|replace|remove|take|unpick|strip|pull|patch|darn|net|mend|resew|redo)';
/** "should I take it off or leave it on", "leave or replace". */
const TWO_TREATMENTS = new RegExp(
  `^ (?:(?:should|shall|do|could) (?:i|we) |whether to |to |either |it )*${TREAT}(?: it| them)?(?: off| out| on| be| alone)? or (?:(?:should|shall|do) (?:i|we) |to )?${TREAT}(?: it| them)?(?: off| out| on| be| alone| as it is)? $`,
);
const NOT_YET_DONE =
  /^ (?:the |and |but |its )*\S+ (?:has|have|is|are)(?: n't| not)(?: been)?(?: done)?(?: yet)? $/;

/** A part that tells of the same matter, or of none, and of no work at a place. */
const isOfMatter = (part: Part, topic: Topic): boolean =>
  (!part.topic || part.topic.topic === topic) &&
  !part.items.some(
    (x) => BLOCKS(x) || x.duration || x.span || x.clock || x.cost || (x.finding && !WELL.test(x.w)),
  );

/** "…, calico or drill", "…, the red or the navy": the ways in question, with nothing said of them. */
const isPlainChoice = ({ items }: Part): boolean =>
  items.some((x) => x.w === 'or') &&
  items.every(
    (x) =>
      /^(?:or|the|a|some|plain|either|maybe|new|old|pieced|mitred|mitered|wide|wider|narrow|narrower|thick|thin|scrappy|striped|dark|light|one|two|none|single|double|bias|straight|grain)$/.test(
        x.w,
      ) ||
      x.fabric ||
      x.material ||
      COLOURS.has(x.w),
  );

/** "the batting is settled, wool", "the binding's settled, unbleached calico": what was chosen, and no goods. */
const namesChoice = ({ items }: Part): boolean =>
  items.length < 5 &&
  (items.at(-1)!.material !== undefined || items.at(-1)!.fabric !== undefined || items.length < 4) &&
  items.every(
    (x, k) =>
      /^(?:the|a|plain|some|dark|light)$/.test(x.w) ||
      COLOURS.has(x.w) ||
      // "unbleached", "washed"
      (k < items.length - 1 && isPlainWord(x) && /(?:ed|y|en|ish)$/.test(x.w)) ||
      ((x.material || x.fabric) && !x.place && !x.action && !x.quantity),
  );

const DENIED = /^ (?:and |but )*(?:not|no|never|do n't|do not|wo n't|rather than|instead of) /;

/** A part of a list that has run on into the work: lengths of time, goods, damage at a place. */
const strayed = (part: Part): boolean =>
  part.items.some(
    (x) =>
      x.duration ||
      (x.finding && !WELL.test(x.w)) ||
      x.clock ||
      x.span ||
      x.cost ||
      (x.quantity?.unit && !x.topic),
  ) ||
  // "settled: no washing" is a matter of its own
  (DENIED.test(part.words) && !/^ (?:and )?no (?:washing|wash|dry cleaning) $/.test(part.words)) ||
  (part.topic?.topic !== 'fabric' && part.items.some((x) => BLOCKS(x) || (!part.topic && x.action))) ||
  (part.topic === undefined && part.items.length <= 1);
