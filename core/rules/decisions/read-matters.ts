import type { DecisionStatus, Topic } from '../../../shared/vocabulary.ts';
import { COLOURS } from '../../lexicon/colours.ts';
import {
  BOUGHT,
  CHOICE_CUE,
  DOING,
  JOB,
  OPEN_CUE,
  OPEN_HEAD,
  SETTLED_CUE,
  SETTLED_HEAD,
} from '../../lexicon/matters.ts';
import { PatternSet, plainWordsOf } from '../../text/pattern-set.ts';
import { isStop } from '../clause/joints.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isDeadline } from './is-deadline.ts';
import { splitListed } from './matter-heads.ts';
import { isHandOrMachine, plainMatter } from './plain-matter.ts';

type Part = {
  items: Item[];
  words: string;
  joint: string;
  topic?: { topic: Topic; item: Item };
  cue?: DecisionStatus;
  status?: DecisionStatus;
  taken?: boolean;
};

/** Which items the matters took: `first` before figures are read, `later` once the figures among them have been. */
export type MatterClaims = { first: Set<Item>; later: Set<Item> };

const SPLITS = new Set([
  ',',
  'and',
  '&',
  '+',
  'but',
  'so',
  'because',
  'though',
  'although',
  'nor',
  '(',
  ')',
  '--',
  ':',
  'ditto',
]);
/** "Back and forth" is one phrase. */
const PAIRS = /^(?:back forth|humming hawing|hemming hawing|by by|once for|y n|ifs buts|umming ahing)$/;
const SHORT = /^(c|ca|col|cols|bdg|bkg|acc|approx|qltg|betw|wadd|batt|thr|fab)$/;

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
    if (parts.length === 0) return;
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
    // the heading of a list holds until the next full stop
    const first = parts[0]!;
    if (/^(:|--|-)$/.test(parts[1]?.joint ?? '') && OPEN_HEAD.test(first.words.trim())) heading = 'open';
    else if (/^(:|--|-)$/.test(parts[1]?.joint ?? '') && SETTLED_HEAD.test(first.words.trim()))
      heading = 'settled';
    else if (number > 0 && sentences[number - 1]!.stop !== ';') heading = undefined;
    const headed = heading;
    const headPart =
      headed &&
      /^(:|--|-)$/.test(parts[1]?.joint ?? '') &&
      (OPEN_HEAD.test(first.words.trim()) || SETTLED_HEAD.test(first.words.trim()));
    if (headPart) {
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
    spread(parts, headed, after, asked);
    // "Tie or quilt? Leaving that open": said of the matter, and no treatment
    if (after === 'open' && tail!.items.some((x) => x.action?.v === 'leave') && parts.some((p) => p.topic))
      for (const x of tail!.items) claims.later.add(x);
    const sentence = wordsBetween(own);
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
        continue;
      }
      const date = dateOf(parts, k);
      if (date) {
        const open =
          /\b(?:no (?:deadline|due date)|not sure|n't know|undecided|open|no date|n't said|tbd|n't fixed)\b/.test(
            date.words,
          );
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
        if (!listed || strayed(part)) {
          // "settled: quilt it, don't tie it": the other way goes with the one chosen
          if (DENIED.test(part.words) && /^(?:tying|quilting)$/.test(listed?.topic ?? ''))
            for (const x of part.items) claims.later.add(x);
          continue;
        }
        part.topic = listed;
        add(
          listed.topic,
          part.cue &&
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
      const chosen = k === 0 ? chosenOf(state, part, parts, asked) : undefined;
      if (chosen) {
        add(chosen, 'settled', part, 'decision.chosen', number);
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
      const found = matterIn(state, part, parts, k, asked, settledBefore, sentence);
      // "backing: leave or replace, undecided": two treatments of it stand open
      if (
        found?.status === 'open' &&
        /^ (?:it )?(?:leave|keep|replace|remove|take off)(?: it)? or (?:leave|keep|replace|remove|take it off)(?: it)? $/.test(
          parts[k + 1]?.words ?? '',
        )
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
          q < parts.length && ((!parts[q]!.topic && parts[q]!.cue) || isPlainChoice(parts[q]!));
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

/** "tying it not quilting", "it's going to be tied instead of quilted", "tying wins over quilting": of the two, the one it is to be. */
function wayOver({ items, words }: Part): Topic | undefined {
  if (!WAY_OVER_HINT.test(words)) return undefined;
  const told = WAY_OVER.exec(words);
  if (!told || TIE_NOW.test(words) || items.some((x) => BLOCKS(x) || x.span || x.clock)) return undefined;
  const [, way, other] = told;
  const chosen = way!.startsWith('t') ? 'tying' : 'quilting';
  // "tied it, not quilted": done
  if (
    /^(tied|quilted)$/.test(way!) &&
    !/ (?:be|gets?|getting|is|'s|'re|are|being) (?:all |just )?(?:tied|quilted) /.test(words)
  )
    return undefined;
  return chosen === (other!.startsWith('t') ? 'tying' : 'quilting') ? undefined : chosen;
}
const WAY_OVER_HINT = /\b(?:ties?|tying|tied)\b.*\bquilt|\bquilt.*\b(?:ties?|tying|tied)\b/;
const WAY_OVER =
  /^ (?!.*\b(?:n't|whether|or|if|might|maybe|could|thinking)\b)(?:\S+ ){0,8}?(ties?|tying|tied|quilting|quilted|quilt)(?: it| this| the (?:quilt|lot|whole (?:thing|lot)))?(?: (?:by|together|hand|machine))* (?:(?:wins?|won)(?: out)? (?:over|against)|(?:and )?not|instead of|rather than|over|(?:and )?no) (?:be |being |going to be |to be |for )?(?:hand |machine )?(ties?|tying|tied|quilting|quilted|quilt)\b/;

const BOTH_WAYS =
  /^ (?:to )?(?:(?:ties?|tying|tied) (?:or|vs|versus|,|\/) (?:\w+ )?(?:quilt|quilting|quilted)|(?:\w+ )?(?:quilt|quilting|quilted) (?:or|vs|versus|,|\/) (?:ties?|tying|tied))(?: it)?(?: (?:[:,=-]|--|decided|settled|answer))* (?:(?:it 's|going for|go with) )?(?:\w+ )?(tie|ties|tying|tied|quilt|quilting|quilted)(?: it| then| ,| by hand| it is| wins| won)* $/;

const HAND_OR_MACHINE =
  /^ (?:(?:by )?(?:hand|machine) (?:or|vs|versus|,|\/) (?:by )?(?:hand|machine) quilt(?:ing|ed)?|quilt(?:ing|ed)? (?:it )?(?:by )?(?:hand|machine) (?:or|vs|versus|,|\/) (?:by )?(?:hand|machine))(?: (?:[:,=?-]|--|decided|settled))* (?:(?:by|it 's) )?(?:hand|machine)(?: it is| then| wins)* $/;

/** "tie vs quilt: tie": which of the two it is to be. */
function wayAnswered(items: Item[]): Topic | undefined {
  if (
    items.length > 12 ||
    !/^(ties?|tying|tied|quilt|quilting|quilted|to|hand|machine)$/.test(items[0]?.w.split(' ')[0] ?? '')
  )
    return undefined;
  const words = wordsBetween(items);
  // "hand or machine quilting: hand"
  if (HAND_OR_MACHINE.test(words)) return 'quilting';
  const way = BOTH_WAYS.exec(words)?.[1];
  if (!way) return undefined;
  return way.startsWith('t') ? 'tying' : 'quilting';
}

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
      /^(?:or|the|a|some|plain|either|maybe|new|old)$/.test(x.w) ||
      x.fabric ||
      x.material ||
      COLOURS.has(x.w),
  );

const TELLS_OPEN = new PatternSet([
  OPEN_CUE,
  /\b(?:could|might|may|maybe|perhaps) (?:\w+ )?(?:go|going|pick|choose|stick|opt)\b/,
]);
const TELLS_SETTLED = new PatternSet([SETTLED_CUE]);

function cueOf(words: string): DecisionStatus | undefined {
  // "some of the tying before breakfast, no idea how long": the time is not known, and nothing is open
  if (
    / (?:how long|how many (?:hours|minutes)|what time)(?: it took| i (?:was|spent)[^,]*| that took| for)? $/.test(
      words,
    )
  )
    return undefined;
  const plain = plainWordsOf(words);
  if (TELLS_OPEN.test(words, plain)) return 'open';
  if (
    TELLS_SETTLED.test(words, plain) &&
    !/\b(?:settled|fixed) (?:along|in|into|down|at|to|towards)\b/.test(words) &&
    !/\bdecided (?:to|against|not)\b/.test(words)
  )
    return 'settled';
  return undefined;
}

function sentencesOf(items: Item[]): { items: Item[]; stop: string }[] {
  const out: { items: Item[]; stop: string }[] = [];
  let current: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const short = item.w === '.' && SHORT.test(items[k - 1]?.w ?? '');
    if (short) continue;
    if (isStop(item)) {
      out.push({ items: current, stop: item.w });
      current = [];
    } else current.push(item);
  }
  if (current.length) out.push({ items: current, stop: '' });
  return out;
}

function partsOf(items: Item[]): Part[] {
  const out: Part[] = [];
  let current: Item[] = [];
  let joint = '';
  const close = (next: string): void => {
    if (current.length) out.push({ items: current, words: wordsBetween(current), joint });
    if (current.length || /^(:|ditto|nor|as|or|so is)$/.test(next)) joint = next;
    current = [];
  };
  items.forEach((item, k) => {
    const next = items[k + 1]?.w ?? '';
    const dash = item.w === '-' && !item.token.glued;
    const or = item.w === 'or' && /^(whether|how|what|which|who|if)$/.test(next);
    const as = item.w === 'as' && /^(is|are|does|do)$/.test(next);
    // "and so is the backing"
    if (item.w === 'so' && /^(is|are|'s|'re|was|were|do|does|have|has)$/.test(next)) {
      close('so is');
      return;
    }
    const pair = item.w === 'and' && PAIRS.test(`${items[k - 1]?.w ?? ''} ${next}`);
    // "can't decide between the check and the plain for the binding"
    const both = item.w === 'and' && current.some((x) => x.w === 'between');
    if (pair || both) {
      current.push(item);
      return;
    }
    // "I can't decide on the binding then patched 2-3"; "it's settled then, cotton"
    if (item.w === 'then' && current.length > 2 && items[k + 1] && items[k + 1]!.token.kind !== 'mark') {
      close('and');
      return;
    }
    if ((SPLITS.has(item.w) && !item.place && !item.span && !item.clock && !item.cost) || dash || or || as) {
      close(item.w);
      return;
    }
    current.push(item);
  });
  close('');
  return out;
}

/** Gives each part that names a matter the word that was said of it: its own, the list's, or the next one that stands alone. */
function spread(
  parts: Part[],
  headed: DecisionStatus | undefined,
  after: DecisionStatus | undefined,
  asked: boolean,
): void {
  for (let k = 0; k < parts.length; k++) {
    const part = parts[k]!;
    if (part.cue) {
      part.status = part.cue;
      continue;
    }
    if (headed) {
      part.status = headed;
      continue;
    }
    // "don't know if I'm tying it or what colour the back ought to be"
    if (part.topic && part.joint === 'or' && parts[k - 1]?.status === 'open') {
      part.status = 'open';
      continue;
    }
    if (part.topic && isEcho(part)) {
      // "not settled what thread, nor if it gets a border"
      const told = parts.slice(0, k).findLast((p) => p.topic && p.status)?.status;
      if (told) {
        part.status = told;
        continue;
      }
    }
    if (!part.topic || CHOICE_CUE.test(part.words)) {
      if (!part.topic) continue;
      // "cotton batting it is, and the backing is open": the choice stands; "it gets tied, that's settled" is settled
      const next = parts[k + 1];
      if (next && !next.topic && next.cue) part.status = next.cue;
      continue;
    }
    // "binding colour + price still open", "calico or the brown sheet, open", "…, that's settled"
    for (let q = k + 1; q < parts.length; q++) {
      const next = parts[q]!;
      if (next.cue && (!next.topic || /^(and|&|\+|,|nor)$/.test(next.joint))) {
        if (next.topic && next.cue === 'settled') break;
        part.status = next.cue;
        break;
      }
      if (next.topic && !/^(and|&|\+|,)$/.test(next.joint)) break;
      if (next.topic && q > k + 1) break;
    }
    const before = parts[k - 1];
    // "it's settled then, cotton batting"
    if (
      !part.status &&
      k === 1 &&
      before?.cue &&
      !before.topic &&
      before.items.length <= 6 &&
      /^[,:]$/.test(part.joint) &&
      part.items.length <= 6
    )
      part.status = before.cue;
    if (!part.status && before?.status && /^(as|ditto|or)$/.test(part.joint)) part.status = before.status;
    // "settled on the grey backing and a cotton batting"
    if (
      !part.status &&
      before?.status === 'settled' &&
      /\b(?:(?:settled|decided|agreed) on|(?:going|go|went|gone|sticking) with|plumped for|opted for|chose|chosen|picked)\b/.test(
        before.words,
      ) &&
      /^(and|&|\+|,)$/.test(part.joint) &&
      part.items.length <= 5 &&
      !DOING.test(part.words)
    )
      part.status = 'settled';
    if (!part.status && after && (k === parts.length - 1 || (after === 'settled' && isShort(parts))))
      part.status = after;
    // "thread colour: ecru or grey?", "thread colour?"
    if (!part.status && asked) {
      const told = [part.words];
      for (let q = k + 1; q < parts.length && !parts[q]!.topic; q++) told.push(parts[q]!.words);
      if (
        /\b(?:or|which|what|how|whether|vs|versus)\b| \/ /.test(told.join(' ')) ||
        (parts.length === 1 && part.items.length <= 3)
      )
        part.status = 'open';
    }
    // "changed my mind about the backing: it's going to be the blue"
    const said = parts[k + 1];
    if (!part.status && said && !said.topic && /\bmind\b/.test(part.words) && CHOICE_CUE.test(said.words))
      part.status = 'settled';
  }
}

/** "The price is open, and so is the backing", "neither have I the thread", "same goes for the border": as was said of the one before. */
const isEcho = ({ words, joint }: Part): boolean =>
  joint === 'so is' ||
  joint === 'nor' ||
  /^ (?:neither|nor|likewise|same (?:goes |thing )?(?:for|with)|the same (?:goes |is true )?(?:for|with|of)) /.test(
    words,
  );

/** "Tying it, no quilting. Settled.": so few words that what is said of them holds for all. */
const isShort = (parts: Part[]): boolean => parts.reduce((n, p) => n + p.items.length, 0) <= 8;

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
  DENIED.test(part.words) ||
  (part.topic?.topic !== 'fabric' && part.items.some((x) => BLOCKS(x) || (!part.topic && x.action))) ||
  (part.topic === undefined && part.items.length <= 1);

/** "asked 240, she said 225, shook on it" */
const struckDeal = (words: string, items: Item[]): boolean =>
  /\b(?:shook (?:hands )?on (?:it|that)|shook hands|what we shook on|struck a (?:deal|bargain)|met (?:me )?(?:in the middle|half ?way)|it 's a deal|we have a deal)\b/.test(
    words,
  ) && items.some(isSumOfJob);

const isSumOfJob = (x: Item): boolean =>
  (x.cost?.amount ?? (x.quantity?.unit ? 0 : (x.quantity?.value ?? 0))) >= 10;

/** "240 agreed", "agreed on 240 with her": a sum, and nothing beside it but that it stands. */
const isSumAgreed = (items: Item[]): boolean =>
  items.length <= 7 &&
  items.some((x) => /^(agreed|settled)$/.test(x.w)) &&
  items.filter((x) => isSumOfJob(x) && (x.cost || (x.quantity?.value ?? 0) >= 30)).length === 1 &&
  items.every((x) => isSumOfJob(x) || AGREED_ON.has(x.w));
const AGREED_ON = new Set(
  'agreed settled on at for it we is was then and so ok with her him them the owner client she he has have now all'.split(
    ' ',
  ),
);

/** The part that names the price of the job, and whether it is agreed. */
function priceOf(parts: Part[], k: number, headed: DecisionStatus | undefined): DecisionStatus | undefined {
  const part = parts[k]!;
  const sum = part.items.find((x) => x.cost);
  const near = `${part.words}${/^(,|and|&|\+|but|so|--)$/.test(parts[k + 1]?.joint ?? '') && !parts[k + 1]?.topic ? parts[k + 1]!.words : ''}`;
  const named =
    (/\b(?:told|quoted|offered) (?:her|him|them|the (?:owner|client))\b/.test(part.words) &&
      part.items.some((x) => (x.cost?.amount ?? x.quantity?.value ?? 0) >= 10 && !x.quantity?.unit)) ||
    /\b(?:(?<!same )price|fee|quote|deposit|charging|what (?:do|should|shall|to|can) i? ?(?:charge|ask)|what to charge|how much to charge)\b/.test(
      part.words,
    );
  const bareSum =
    !sum &&
    JOB.test(part.words) &&
    part.items.some((x) => x.quantity?.value !== undefined && !x.quantity.unit && x.quantity.value >= 10);
  if (isSumAgreed(part.items)) return 'settled';
  if (!sum && !named && !bareSum) return undefined;
  if (BOUGHT.test(part.words)) return undefined;
  // "charging her by the hour, twenty five dollars"
  const next = parts[k + 1];
  const sumNext =
    next !== undefined && !next.topic && next.items.length <= 3 && next.items.some((x) => x.cost);
  const agreed =
    SETTLED_CUE.test(near) &&
    !/\b(?:n't|not|still to be|to be) (?:yet )?(?:agreed|settled|decided|fixed)\b/.test(near);
  if (!named && !JOB.test(near) && !agreed) return undefined;
  if (sum && !named && !JOB.test(near) && !agreed) return undefined;
  if (headed) return part.joint === 'but' && agreed ? 'settled' : headed;
  if (
    part.status === 'open' ||
    (OPEN_CUE.test(part.words) && !sum) ||
    /\b(?:waiting|thinking (?:about|it|on)|n't (?:answered|said|agreed|heard)|not (?:yet )?(?:heard|agreed|answered))\b/.test(
      near,
    )
  )
    return 'open';
  if (sum || bareSum || sumNext) return 'settled';
  return part.status ?? (part.cue || agreed ? 'settled' : 'open');
}

/** "She says 250", where the price stood open: the sum of the job. */
function priceTold(state: ReaderState, parts: Part[]): DecisionStatus | undefined {
  if (parts.length > 2 || !state.memory.matters?.some((m) => m.about === 'price')) return undefined;
  const { items, words } = parts[0]!;
  const sums = items.filter((x) => isSumOfJob(x) && !x.quantity?.unit);
  return items.length <= 6 &&
    sums.length === 1 &&
    !BOUGHT.test(words) &&
    !items.some((x) => x.action || x.finding || x.material || x.duration) &&
    / (?:happy|pleased|says|said|ok|okay|fine|make it|it is|it 's|agreed|go with|going with|settled on|asking|ask) /.test(
      parts.map((p) => p.words).join(''),
    )
    ? 'settled'
    : undefined;
}

/** The part, with the next where only the two together name the date, if they say when it must be finished. */
function dateOf(parts: Part[], k: number): Part | undefined {
  const part = parts[k]!;
  if (isDeadline(part.words, part.items)) return part;
  const next = parts[k + 1];
  if (
    !next ||
    (next.topic && next.topic.topic !== 'other') ||
    !/^(,|and|&|--|:|so|but)$/.test(next.joint) ||
    next.taken
  )
    return undefined;
  const both = { ...part, items: [...part.items, ...next.items], words: `${part.words}${next.words}` };
  if (part.topic && part.topic.topic !== 'deadline') return undefined;
  if (!isDeadline(both.words, both.items) || isDeadline(next.words, next.items)) return undefined;
  next.taken = true;
  return both;
}

const sewnBefore = (items: Item[]): boolean =>
  items.some(
    (x) =>
      x.action?.form === 'past' && /^(?:darn|resew|patch|stabilize|overlay|quilt|bind)$/.test(x.action.v),
  );

/** "Ties: red perle cotton, 5 in apart", "backing -> blue flannel", "tie or quilt: tie": what was chosen stands by itself behind what it is for. */
function choiceUnder(parts: Part[]): Topic | undefined {
  const [head, choice] = parts as [Part, Part];
  const about = head.topic?.topic;
  if (!about || head.status === 'open' || parts.some((p) => p.cue === 'open')) return undefined;
  // the rest may tell lengths, and nothing of work, goods or damage
  if (
    parts
      .slice(2)
      .some((p) => p.topic || p.items.some((x) => x.action || x.finding || x.fabric || x.cost || x.material))
  )
    return undefined;
  if (about === 'tying' || about === 'quilting') {
    const way = choice.items.length <= 2 ? choice.topic?.topic : undefined;
    if (way === 'tying' || way === 'quilting')
      return / (?:or|vs|versus|\/) /.test(head.words) ? way : undefined;
  }
  if (
    !head.items.every(
      (x) => x.topic || x.part || x.material || /^(?:the|new|colou?r|ties|for|of)$/.test(x.w),
    ) ||
    head.items.length > 3
  )
    return undefined;
  if (!choice.items.every(isPlainStuff) || choice.items.length > 4) return undefined;
  if (!choice.items.some((x) => x.fabric || x.material || COLOURS.has(x.w) || YARN.test(x.w)))
    return undefined;
  if (about === 'tying') return /^ (?:the )?ties $/.test(head.words) ? 'tie-thread' : undefined;
  return about === 'price' || about === 'deadline' || about === 'other' || about === 'washing'
    ? undefined
    : about;
}

/** "So it's the brown sheet, settled": one of the ways that an open matter was told with. */
function chosenOf(state: ReaderState, part: Part, parts: Part[], asked: boolean): Topic | undefined {
  const matters = state.memory.matters;
  if (!matters?.length || (part.topic && part.topic.topic !== 'fabric') || part.items.length > 8)
    return undefined;
  // "plain", as all that is said, where "back: ink stripe or plain" stood open
  const alone =
    // "wool, then, and it gets quilted"
    (parts.length === 1 ||
      parts.slice(1).every((p) => p.topic || p.cue || /^ (?:then|final|definitely) $/.test(p.words))) &&
    part.items.length <= 3 &&
    !asked
      ? optionOf(matters, part.items)
      : undefined;
  if (alone) return alone;
  // "she said cold water, so that's settled": the matter that was told last
  if (parts.length <= 4 && !parts.some((p) => p.topic) && parts.some((p) => THAT_SETTLED.test(p.words)))
    return matters.at(-1)!.about;
  // "she picked the ticking": said of the matter that was told last
  const last = matters.at(-1)!.about;
  if (
    PICKED.test(part.words) &&
    part.items.length <= 8 &&
    part.items.some((x) => x.fabric || x.material || COLOURS.has(x.w) || YARN.test(x.w)) &&
    !part.items.some((x) => BLOCKS(x) || x.quantity || x.cost || x.finding) &&
    /^(?:backing|batting|binding|border|thread|tie-thread)$/.test(last)
  )
    return last;
  const settled = part.status === 'settled' || (parts[1]?.cue === 'settled' && !parts[1].topic);
  if (!settled && !/ (?:it 's|it is|going with|we 'll have|i 'll have|make it) /.test(part.words))
    return undefined;
  if (part.items.some((x) => BLOCKS(x) || x.action || x.finding || x.quantity?.unit || x.cost))
    return undefined;
  const said = part.items.map((x) => x.w).filter((w) => w.length > 2 && !COMMON.test(w));
  return matters.findLast((m) => said.some((w) => m.words.includes(w)))?.about;
}
const PICKED =
  /^ (?:and |so |well |right |then |ok )*(?:she|he|they|i|we|client|owner|the owner)? ?(?:'s |'ve |'m |'re |has |have |am |are )?(?:picked|chose|chosen|gone for|went for|plumped for|opted for|going with|going for|going to use|gonna use|'ll use|will use) /;
const THAT_SETTLED =
  /^ (?:and |so |now )*that (?:'s|is) (?:it )?(?:settled|decided|agreed|sorted)(?: then| now)? $/;
/** The matter of which these words are one of the ways, word for word. */
function optionOf(matters: NonNullable<ReaderState['memory']['matters']>, items: Item[]): Topic | undefined {
  const said = items.map((x) => x.w).filter((w) => !/^(?:the|a|then|ok|okay|right|so)$/.test(w));
  if (!said.length || items.some((x) => x.action || x.finding || x.place || x.quantity)) return undefined;
  return matters.findLast(
    (m) => / or | vs | versus |\//.test(m.words) && said.every((w) => m.words.split(/[^a-z]+/).includes(w)),
  )?.about;
}
const COMMON =
  /^(?:the|that|then|its|for|settled|decided|going|with|have|make|final|right|and|but|still|open)$/;

/** A colour, a cloth, or what describes it: no verb, no place, no amount. */
const isPlainStuff = (x: Item): boolean =>
  !(x.action || x.place?.kind === 'blocks' || x.finding || x.quantity || x.cost || x.clock || x.duration) &&
  (Boolean(x.material || x.fabric || x.part || x.topic) ||
    COLOURS.has(x.w) ||
    YARN.test(x.w) ||
    DESCRIBES.test(x.w));
const DESCRIBES =
  /^(?:a|the|some|new|plain|dark|light|pale|bright|thin|thick|heavy|soft|washed|unbleached|bleached|brushed|striped?|checked?|spotted|white|pearl|perle|crochet|embroidery|low|high|loft|weight)$/;

const YARN = /\b(?:wool|cotton|floss|yarn|twine|string|silk|linen)\b/;

const BLOCKS = (x: Item): boolean =>
  x.place !== undefined &&
  (x.place.kind === 'blocks' ||
    (x.place.kind === 'pointer' && !/^place\.(it|that-one|both|them|those|the-other)$/.test(x.place.rule)));

const TO_BE_SO =
  /^ (?:(?:and|so|now|well|right) )*(?:it|this|this one|the quilt|that one)(?: (?:'ll|will|is going to|'s going to|is to|'s to|gonna|'s gonna))+ be (?:all )?(bound|backed) (?:in|with) /;
function matterIn(
  state: ReaderState,
  part: Part,
  parts: Part[],
  k: number,
  asked: boolean,
  settledBefore: boolean,
  sentence: string,
): { topic: Topic; status: DecisionStatus; rule: string } | undefined {
  const { items, words } = part;
  // "it'll be bound in navy, that's decided", "it's to be backed with flannel, agreed"
  const toBe = TO_BE_SO.exec(words)?.[1];
  if (
    toBe &&
    (part.cue ?? (parts[k + 1]?.topic ? undefined : parts[k + 1]?.cue)) === 'settled' &&
    !items.some(BLOCKS)
  )
    return { topic: toBe === 'bound' ? 'binding' : 'backing', status: 'settled', rule: 'decision.to-be' };
  // "Tie. Red wool, four inches apart": the yarn, as it stands beside the ties
  const ties = state.drafts.some(
    (d) => d.entry.kind === 'decision' && d.entry.about === 'tying' && d.entry.status === 'settled',
  );
  const spaced =
    ties && parts.slice(0, 6).some((p) => p !== part && / (?:apart|every|spaced) /.test(p.words) && !p.topic);
  if (
    ties &&
    spaced &&
    k === 0 &&
    items.length <= 4 &&
    items.some((x) => x.material || YARN.test(x.w)) &&
    !items.some((x) => x.action)
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  // "Client says ties. Red floss." , "… ties then and dark red cotton for them every three inches", "Tying it. Ties in red."
  if (
    ties &&
    (!part.topic || /^(?:tie-thread|thread|fabric|tying)$/.test(part.topic.topic)) &&
    (part.topic?.topic === 'tie-thread' || items.some((x) => x.material || YARN.test(x.w))) &&
    ((parts.length === 1 && items.length <= 4 && items.every(isPlainStuff)) ||
      / for (?:them|the ties|tying|these) /.test(words) ||
      /^ (?:the )?ties in /.test(words)) &&
    !DOING.test(words)
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  // "it's getting tied, and in red wool"
  if (
    ties &&
    parts[k - 1]?.taken &&
    /^ (?:in|with) /.test(words) &&
    items.length <= 5 &&
    items.some((x) => x.material === 'tie-thread' || YARN.test(x.w))
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  const topic = part.topic?.topic;
  if (!topic) {
    // "which fabric I'd use, or whether it ships rolled or folded"
    const before = parts[k - 1];
    return before?.taken &&
      before.status === 'open' &&
      /^ (?:whether|who|how|when|where|if) /.test(words) &&
      !items.some((x) => BLOCKS(x) || x.finding)
      ? { topic: 'other', status: 'open', rule: 'decision.other' }
      : undefined;
  }
  // "muslin on the back of it, or a patch over the top?": a support, and not what the backing is made of
  if (
    topic === 'backing' &&
    /\b(?:at|on) the (?:back|reverse)\b/.test(words) &&
    liesBehind(state, words, sentence)
  )
    return undefined;
  // "each of the gingham ones gets a lining put in behind it"
  if (
    topic === 'backing' &&
    / (?:put|sewn|set|slipped|tacked|basted) (?:in )?(?:behind|underneath) /.test(words)
  )
    return undefined;
  const cloth = topic === 'fabric';
  // "… patch it? Or new backing altogether?": the other of two treatments
  if (asked && k === 0 && /^ or /.test(words)) return undefined;
  if (items.some(BLOCKS) && !cloth) return undefined;
  // "3-4: crepeline over the face or cloth behind?": two ways to mend it
  if (cloth && / (?:behind|underneath|over) /.test(`${words}${parts[k + 1]?.words ?? ''}`)) return undefined;
  if (
    items.some(
      (x, m) =>
        // "torn between tying and quilting"
        (x.finding &&
          !WELL.test(x.w) &&
          !(x.w === 'torn' && items[m + 1]?.w === 'between') &&
          // "the thin cotton batting"
          !(x.w === 'thin' && items[m + 1]?.material)) ||
        x.duration ||
        x.span ||
        x.clock,
    )
  )
    return undefined;
  const way = topic === 'tying' || topic === 'quilting' || topic === 'washing';
  const works = items.filter(
    (x) => x.action && !(x.part && x.action.form === 'ing') && !['tie', 'quilt', 'wash'].includes(x.action.v),
  );
  const binding = topic === 'binding' && /\bhow to\b/.test(words);
  const otherWork = works.filter(
    (x) =>
      !(binding && x.action?.v === 'bind') &&
      !(x.w === 'air' && part.status === 'open') &&
      // "width of the border still not fixed"
      !(x.w === 'fixed' && / (?:not|n't|be|been|is|yet|to) (?:yet )?fixed /.test(words)) &&
      // "nor if it gets a border"
      !(x.action?.v === 'add-border' && part.status === 'open' && / (?:if|whether|does) it /.test(words)) &&
      // "leave the border off, that's decided"
      !(x.action?.v === 'leave' && / leave (?:the |that |any )?\S+ (?:off|out) $/.test(words)) &&
      !(
        x.action?.v === 'leave' &&
        /\b(?:open|question|decision|matter|choice|to (?:my|her|his|the owner|a higher))\b/.test(words)
      ) &&
      // "the fabric for the patches"
      !(x.action?.v === 'patch' && /^(?:the|a|for|that|this)$/.test(items[items.indexOf(x) - 1]?.w ?? '')) &&
      !(x.topic && !/ed$/.test(x.w)) &&
      !x.material &&
      !x.stitch,
  );
  if (otherWork.length) return undefined;
  if (way) return wayIn(state, part, parts, k, sentence, asked);
  if (part.status === 'open') {
    if (/\b(?:bought|got(?! to\b))\b/.test(words)) return undefined;
    return { topic, status: 'open', rule: 'decision.open' };
  }
  if (part.status === 'settled') {
    if (items.some((x) => x.quantity?.unit || x.cost) && !/\b(?:colou?r|width|wide)\b/.test(words))
      return undefined;
    return cloth && !/\bfabric|cloth|print\b/.test(words)
      ? undefined
      : { topic, status: 'settled', rule: 'decision.settled' };
  }
  if (cloth || topic === 'deadline' || topic === 'other' || topic === 'price') return undefined;
  // "the ties will be in white every three inches"
  const spacing = topic === 'tie-thread' && / (?:every|apart) /.test(words);
  if (items.some((x) => (x.quantity?.unit && !spacing) || x.cost)) return undefined;
  if (DOING.test(words.replace(' got to be ', ' '))) return undefined;
  if (
    /\b(?:maybe|perhaps|possibly|might|could(?! do with)|may|probably|likely|thinking)\b/.test(words) &&
    (items.some((x) => namesCloth(x, topic)) || / (?:go with|use|do|try|have) /.test(words))
  )
    return { topic, status: 'open', rule: 'decision.perhaps' };
  // "cotton batting it is", "the binding is to be the blue", "black sateen for the back, then", "border: yes"
  const said = `${words.trim()}${parts[k + 1] && !parts[k + 1]!.topic && parts[k + 1]!.items.length <= 2 ? ` ${parts[k + 1]!.joint} ${parts[k + 1]!.words.trim()}` : ''}`;
  const chooses = CHOICE_CUE.test(`${said} `) || CHOICE_CUE.test(said);
  const named = items.some((x) => namesCloth(x, topic) || /^(none|yes|no)$/.test(x.w)) || items.length <= 4;
  if (chooses && named) return { topic, status: 'settled', rule: 'decision.choice' };
  const forIt =
    /\bfor (?:the |my |its |her )?(?:ties|tying|backing|back|lining|binding|border|borders|batting|wadding)\b/.test(
      words,
    ) || topic === 'tie-thread';
  // "Wool batting." where the batting stood open
  if (
    k === 0 &&
    !asked &&
    items.length <= 4 &&
    items.length > 1 &&
    items.every(isPlainStuff) &&
    items.some((x) => namesCloth(x, topic)) &&
    parts.slice(1).every((p) => p.topic && p.items.length <= 5) &&
    state.memory.matters?.some((m) => m.about === topic)
  )
    return { topic, status: 'settled', rule: 'decision.bare-choice' };
  // "Red wool for the ties. 4 in apart": by itself, with nothing of buying or work
  if (
    // "wool for the batting, navy for the binding"
    (parts.length === 1 ||
      (parts.filter((p) => CLOTH_FOR.test(p.words)).length > 1 &&
        !BOUGHT.test(sentence) &&
        !DOING.test(sentence))) &&
    items.length <= 6 &&
    !asked &&
    CLOTH_FOR.test(words) &&
    (items[0]!.material || items[0]!.fabric || COLOURS.has(items[0]!.w) || items[0]!.w === 'the')
  )
    return { topic, status: 'settled', rule: 'decision.cloth-for' };
  if (
    (settledBefore ||
      parts.slice(Math.max(0, k - 6), k).some((p) => p.taken && p.status === 'settled') ||
      state.drafts.some((d) => d.entry.kind === 'decision' && d.entry.status === 'settled')) &&
    forIt &&
    items.length <= 9
  )
    return { topic, status: 'settled', rule: 'decision.cloth-for' };
  return undefined;
}

const CLOTH_FOR =
  /^ (?:the )?(?:\w+ ){1,3}for (?:the )?(?:ties|backing|back|binding|batting|wadding|border|borders) $/;

const liesBehind = (state: ReaderState, words: string, sentence: string): boolean =>
  / back of (?:it|that|them|that one|this|this one|both|those)\b/.test(words) ||
  /\b(?:net|netting|tulle|crepeline|patch(?:ed)?|on top|on the (?:face|front)|over the (?:top|face|front))\b/.test(
    sentence,
  ) ||
  state.memory.open.some((o) => o.action === 'stabilize' && !o.passed);

/** A cloth, a fibre or a colour beside the thing that it is for. */
const namesCloth = (x: Item, topic: Topic): boolean =>
  x.material === 'fabric' ||
  x.fabric !== undefined ||
  (x.material !== undefined && x.material !== topic) ||
  /^(?:wool|cotton|linen|silk|bamboo|polyester|poly|black|white|cream|blue|red|green|gr[ae]y|brown|ecru|navy|pink|yellow|purple|orange|scalloped|narrow|narrower|wide|wider|bias)\b/.test(
    x.w,
  );

/** "Alright", "fine": a breath or a word of consent; "leaning towards the flannel": no finding. */
const WELL = /^(?:alright|all right|fine|good|ok|okay|right|leaning(?: towards?| to)?)$/;

const TIE_NOW =
  /\b(?:now|tonight|today|tomorrow|started|starting|next|since|rows?|blocks?|first|later|morning|evening|half (?:the|of)|tied off|so far|yet to|once|when|after|then i)\b/;

/** Tie or quilt, by hand or machine, wash or not: the way for the whole quilt. */
function wayIn(
  state: ReaderState,
  part: Part,
  parts: Part[],
  k: number,
  sentence: string,
  asked: boolean,
): { topic: Topic; status: DecisionStatus; rule: string } | undefined {
  const { items, words } = part;
  let topic = part.topic!.topic;
  if (part.status === 'open') {
    if (
      topic === 'washing' &&
      !/\b(?:whether|if (?:she|he|they|i|we)|how|or|y ?\/ ?n|warm|lukewarm|cold|hot|dry clean\w*|washing|ever)\b/.test(
        words,
      )
    )
      return undefined;
    return { topic, status: 'open', rule: 'decision.way-open' };
  }
  // "washed it in the bath, that's settled": done
  if (topic === 'washing' && /^ (?:and |i |i 've |have )*washed /.test(words)) return undefined;
  const senses = items.map((x, at) => senseOf(x, items, at));
  const both =
    senses.includes('tying') && senses.includes('quilting') && /\b(?:or|vs|versus|\/)\b|\//.test(words);
  // "tie it again or quilt it": both, and no more
  if (both && BARE_WAYS.test(words)) return { topic, status: 'open', rule: 'decision.tie-or-quilt' };
  if (
    both &&
    (asked || OPEN_CUE.test(sentence) || /\b(?:could|might|may|maybe|perhaps|either|should)\b/.test(words))
  )
    return { topic, status: 'open', rule: 'decision.tie-or-quilt' };
  if (
    /\b(?:decided|made up my mind|settled) (?:to|on) (?:hand |machine )?(?:tie|quilt|tying|quilting)\b/.test(
      words,
    ) &&
    !TIE_NOW.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way' };
  const negated = /\b(?:not|n't|no|rather than|instead of)\b/.test(words);
  const deniedFirst =
    /^ (?:and |but )*(?:not|no|never) /.test(words) || /\bwas (?:thinking|going)\b/.test(words);
  if (deniedFirst) return undefined;
  if (negated) {
    // "tied, not quilted" within one breath
    const at = words.search(/\b(?:not|n't|rather than|instead of)\b/);
    const head = topicOf(items.filter((x) => x.token.from < items[0]!.token.from + at));
    if (head && (head.topic === 'tying' || head.topic === 'quilting')) topic = head.topic;
  }
  if (part.status === 'settled' && !TIE_NOW.test(words))
    return { topic, status: 'settled', rule: 'decision.way' };
  if (topic === 'washing') return undefined;
  const against = parts
    .slice(k + 1, k + 5)
    .some(
      (p) =>
        /^ (?:and |but )*(?:(?:i|we) )?(?:not|no|do n't|wo n't|'m not|'re not|are not) /.test(p.words) &&
        p.topic &&
        (p.topic.topic === 'tying' || p.topic.topic === 'quilting'),
    );
  if (
    TIE_NOW.test(words) ||
    items.some((x) => x.place && !/^place\.it$/.test(x.place.rule) && x.place.places[0] !== 'quilt')
  )
    return undefined;
  const gets =
    /(?<![a-z])(?:gets|getting|it is|shall be|will be|'ll be|(?:is|'s) to be|going to be|(?:we|i) ?(?:'re|'m|am|are) (?:going to |gonna )?(?:tie|quilt|tying|quilting)(?: it)?|(?:i|we) ?(?:'ll|will) (?:tie|quilt) it|(?:it 's|it is|it 'll be) (?:to be |going to be )?(?:hand |machine )?(?:tied|quilted|ties|tying|quilting)|then ?$|by hand|going to (?:tie|quilt) it)\b/.test(
      words,
    );
  // "so we tie it and we don't quilt it"
  const plainly = against && / (?:i|we) (?:tie|quilt) it $/.test(words);
  if (
    (gets || plainly) &&
    (against || /\b(?:it|quilting|tying|we)\b/.test(words)) &&
    !/\b(?:'m|am) (?:tying|quilting) (?!it)/.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way-chosen' };
  // "Client says ties", "she went for tying it"
  if (
    parts.length === 1 &&
    items.length <= 6 &&
    / (?:client|owner|she|he|they) (?:says|said|chose|picked|went for|goes for) /.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way-told' };
  // "Hand quilting, no ties", "tying it, not quilting"; "Tied, not quilted" where it stood open
  const stoodOpen = state.memory.matters?.some((m) => m.about === 'tying' || m.about === 'quilting');
  if (
    k === 0 &&
    (against || (stoodOpen && isChoiceOfOpen(parts))) &&
    (BARE_WAY.test(words) || (stoodOpen && BARE_WAY_DONE.test(words)))
  )
    return { topic, status: 'settled', rule: 'decision.way-bare' };
  // "Tie." as an answer to the open question; "tie it, every four inches, navy perle cotton"
  const bare = items.filter((x) => !/^(?:okay|ok|right|so|well|yes|just|then|,)$/.test(x.w));
  const verb = bare.find((x) => x.action && /^(tie|quilt|tied|quilted)$/.test(x.w))?.w;
  const onlyHow =
    k === 0 &&
    /^(?:tie|quilt)$/.test(verb ?? '') &&
    parts.slice(1).every((p) => !p.items.some((x) => x.action || x.place || x.clock || x.duration));
  if (verb && (stoodOpen || !verb.endsWith('ed')) && bare.length <= 2 && (parts.length === 1 || onlyHow))
    return { topic, status: 'settled', rule: 'decision.way-bare' };
  return undefined;
}

const BARE_WAYS =
  /^ (?:(?:do|shall|should) (?:i|we) |whether (?:to |i |we )?|to )?(?:hand |machine )?(?:ties?|tying|tied|quilt|quilting|quilted)(?: it| this| again| the (?:quilt|lot|whole thing))* (?:or|vs|versus|\/) (?:to |do i |do we )?(?:hand |machine )?(?:ties?|tying|tied|quilt|quilting|quilted)(?: it| this| again| instead)* $/;
const BARE_WAY =
  /^ (?:ok |okay |right |so |just |then )*(?:(?:hand|machine) )?(?:tying|ties|tie|quilting|quilt)(?: (?:it|the quilt|this))? $/;
const BARE_WAY_DONE = /^ (?:(?:hand|machine) )?(?:tied|quilted) $/;
/** Nothing else in the sentence is of work, a place or a time. */
const isChoiceOfOpen = (parts: Part[]): boolean =>
  parts.slice(1).every((p) => !p.items.some((x) => x.action || x.place || x.clock || x.duration));

const PARTS: Record<string, Topic> = {
  backing: 'backing',
  batting: 'batting',
  binding: 'binding',
  border: 'border',
  thread: 'thread',
  'tie-thread': 'tie-thread',
};

/** The matter that a part of a sentence turns on. */
function topicOf(items: Item[]): { topic: Topic; item: Item } | undefined {
  const words = wordsBetween(items);
  const target =
    /\bfor (?:the |my |its |her |a |new )*(ties|tying|backing|back|lining|binding|border|borders|batting|wadding)\b/.exec(
      words,
    )?.[1];
  // "the colour of the thread for the border": what is for it is told
  if (target && !/\bthread (?:\S+ )?for\b/.test(words)) {
    const item = items.findLast((x) => x.w.split(' ').includes(target));
    const topic: Topic = /^(ties|tying)$/.test(target)
      ? 'tie-thread'
      : /^(backing|back|lining)$/.test(target)
        ? 'backing'
        : /^border/.test(target)
          ? 'border'
          : /^(batting|wadding)$/.test(target)
            ? 'batting'
            : 'binding';
    if (item) return { topic, item };
  }
  const yarn = items.find((x) => x.topic === 'tie-thread' || x.material === 'tie-thread');
  if (yarn) return { topic: 'tie-thread', item: yarn };
  const ties = /\bties? (?:colou?r|thread)\b|\b(?:colou?r|thread) (?:of|for) (?:the )?ties\b/.test(words)
    ? items.find((x) => /^ties?/.test(x.w))
    : undefined;
  if (ties) return { topic: 'tie-thread', item: ties };
  // "the ties will be red"
  if (
    /^ (?:the )?(?:ties|tying) (?:(?:i|we) (?:'m|'re|am|are|'ll be|will be) having|(?:i|we) ?(?:'ll|will) have|will be|'ll be|are|are going to be|to be|are to be|in) (?:in )?(?:\w+ )?(?:red|blue|white|cream|ecru|black|navy|green|gr[ae]y|brown|wool|cotton|silk|floss)\b/.test(
      words,
    )
  ) {
    const item = items.find((x) => /^(ties|tying)$/.test(x.w));
    if (item) return { topic: 'tie-thread', item };
  }
  // "ties navy or red?"
  const tied = items.findIndex((x) => x.w === 'ties');
  if (tied >= 0 && tied < 2 && COLOURS.has(items[items[tied + 1]?.w === 'in' ? tied + 2 : tied + 1]?.w ?? ''))
    return { topic: 'tie-thread', item: items[tied]! };
  let soft: { topic: Topic; item: Item } | undefined;
  const width = items.find((x) => x.measure === 'border' && !x.quantity);
  if (width) return { topic: 'border', item: width };
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const topic = senseOf(x, items, k);
    if (!topic) continue;
    if (topic === 'fabric' || topic === 'other' || topic === 'price' || topic === 'deadline') {
      if (topic !== 'deadline') soft ??= { topic, item: x };
      continue;
    }
    return { topic, item: x };
  }
  return soft;
}

/** After "back" these show that it is no backing: "back and forth", "back them with lawn". */
const NO_NOUN_BACK =
  /^(?:and|to|again|on|in|it|them|that|this|those|by|with|here|there|up|at|from|from|together|home|through)$/;

function senseOf(x: Item, items: Item[], k: number): Topic | undefined {
  const next = items[k + 1]?.w ?? '';
  if (x.action?.v === 'tie' || /^(ties|knots)$/.test(x.w)) return 'tying';
  if (x.action?.v === 'quilt' && !/^(quilt|qlt)$/.test(x.w)) return 'quilting';
  if (/^(quilt|qlt)$/.test(x.w)) {
    const before = items[k - 1]?.w ?? '';
    return /^(?:it|or|vs|versus|\/)$/.test(next) || /^(or|to|vs|versus|hand|machine|\/|not|i)$/.test(before)
      ? 'quilting'
      : undefined;
  }
  if (x.topic && x.topic !== 'tying' && x.topic !== 'quilting') {
    if (x.w === 'back' && NO_NOUN_BACK.test(next)) return undefined;
    return x.topic;
  }
  if (x.topic === 'quilting') return x.w === 'pattern' ? undefined : 'quilting';
  if (x.action?.v === 'wash') return 'washing';
  if (x.material && PARTS[x.material]) return PARTS[x.material];
  if (x.part && PARTS[x.part]) return x.w === 'back' && NO_NOUN_BACK.test(next) ? undefined : PARTS[x.part];
  if (x.action?.v === 'bind' && x.action.form === 'base') return 'binding';
  if (/^(fabric|cloth)$/.test(x.w)) return 'fabric';
  return undefined;
}
