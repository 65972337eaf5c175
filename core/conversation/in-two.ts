import type { Entry, ReadEntry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { type Token, tokenise } from '../text/tokenise.ts';
import { wordsOf } from '../text/words-of.ts';
import { cueOf } from './cues.ts';
import { type Memory, recall } from './memory.ts';
import { movedBy } from './moved-by.ts';
import { replyTo } from './reply.ts';
import { placesOf } from './standing.ts';

/** A note as it was read, and what the talk stands on after it. */
export type Read = { reading: Reading; conversation: Conversation };

/** A note, the talk before it, how it reads in one piece, and how a part of it is read. */
type Note = {
  text: string;
  before: Conversation;
  whole: Read;
  grid: QuiltGrid;
  read: (part: string, conversation: Conversation) => Read;
};

/** An answer or a mend is short; what stands before the joint may be no longer. */
const HEAD_TOKENS = 12;
const JOINT_MARK = /^[,.;:!\n–—-]$|^--$/;
const JOINT_WORD = /^(?:and|&|also|plus|then|but|oh)$/;
/** Words without a sense of their own between the two parts. */
const LEADING = /^(?:and|&|plus|then|but|so|oh|also|[,.;:!?\n–—-]|--)$/;
/** "with 1-2 and 4-4, …", "back to the corner, …": what the talk turns to, and no answer. */
const HEADING =
  /^(?:(?:and|so|right|now|ok|okay|um|er|oh|,) )*(?:with|for|about|as|on|in|now|back|coming|going|next|regarding|moving)\b|\bnow$/;
/** "2-4, not 2-3" */
const NOT_THAT =
  /^(?:(?:no|sorry|it was|that was|i meant|,) )*\S+(?: \S+){0,4} , not (?:the )?\S+(?: \S+){0,4}$/;
/** A head that ends in words that take the last of it back, and one that began as a mend. */
const REPAIRS = /\b(?:sorry|i mean|i meant|rather)$/;
const WEAK_HEAD =
  /^(?:(?:oh|ah|and|so|well|,) )*(?:no|nope|nah|not|actually|wait|hang on|hold on|that|it|this|make)\b/;
/** "second from the left", "same block": the answer goes on. */
const GOES_ON =
  /^(?:same|the same|that was|sorry|i mean|for|not|no|just|only|first|second|third|fourth|fifth|sixth|last|next|near|nearer|on|in|at|by|from|of|across|along|down|up|to|(?:a|an|one|three) (?:half|quarters?|third|eighths?|bit)|half|more)\b|^\S+ (?:along|down|across|from the|in from)\b/;
/** "(2-2,) 15 minutes, and pressed 1-1": how long the deed took whose place was asked for. */
const TOOK = /^(?:(?:about|it took|took) )*(?:\S+ ){1,3}(?:mins?|minutes|hours?|hrs?)(?: (?:[,.;&]|and)|$)/;
/** "(R edge,) 2 in long": of the damage whose place was asked for, and no length of the quilt. */
const HOW_LONG =
  /^(?:(?:about|roughly|some|maybe|nearly|a good|it's|it is) )*\S+(?: \S+){0,4} (?:long|wide|across|deep|square|each way)(?: [.!])*$/;
/** "and it's faded too": said of what was just named. */
const OF_IT = /^(?:(?:and|also|plus|then|oh|but|&|[,.;]) )+(?:it|that|that one|they|those|i|there)\b/;

/**
 * "brown. also pressed 5-4", "four inches apart, and 2-2 has a hole": an answer or a mend of the last note, and news behind it. Both
 * parts are read as if they had been two notes; undefined where the note can't be parted so.
 */
export function readInTwo(note: Note): Read | undefined {
  const { text, before, whole, grid, read } = note;
  const { last, matters, open } = recall(before);
  if (!last?.ask && (matters?.length || open.length)) {
    const closed = closedInTwo(note);
    if (closed) return closed;
  }
  if (!last || !/^(?:log|amend|aside)$/.test(whole.reading.act)) return undefined;
  // a mend in several parts is read in one piece, and so is what was done ("took the old piece out and put a new bit in")
  const mends = whole.reading.act === 'amend' && (!last.ask || last.ask === 'action');
  // "no, 2-4. I'll net it": of damage that was told, where it is, and then what is done about it
  if (mends && (last.ask || last.entries.some(({ entry: e }) => e.kind !== 'condition'))) return undefined;
  const tokens = tokenise(text);
  for (let k = 1; k < Math.min(tokens.length - 1, HEAD_TOKENS); k++) {
    if (!joins(tokens, k) && !(last.ask === 'place' && k <= 5 && statementBegins(tokens, k))) continue;
    const head = wordsOf(tokens.slice(0, k));
    // "backing: patch or replace, dunno": what it is about, where it is whole by itself
    if (tokens[k]!.w === ':' && whole.reading.act === 'log' && !whole.reading.ask) continue;
    if (HEADING.test(head)) continue;
    const behind = behindJoint(tokens, k);
    const start = tokens[behind]?.from;
    const cue = last.ask ? 'strong' : cueOf(head);
    if (
      cue !== 'strong' &&
      !(cue === 'weak' && endsMend(tokens, k, behind)) &&
      !(/^[.;\n]$/.test(tokens[k]!.w) && NOT_THAT.test(head))
    )
      continue;
    // "the seam between 3-4, sorry, 4-4 and 5-4 …": what follows puts right what stands in this note
    if (
      REPAIRS.test(head) &&
      !WEAK_HEAD.test(head) &&
      (tokens[behind]?.kind === 'number' || /^(?:row|block|column|the)$/.test(tokens[behind]?.w ?? ''))
    )
      continue;
    const putRight = mendBehind(note, tokens, k, behind);
    if (putRight) return putRight;
    // "shd be b4. moth hole": what is put right beside the place
    const stop = /^[.;\n]$/.test(tokens[k]!.w) && last.ask !== 'place';
    const short = last.ask === 'quantity' || last.ask === 'material' || stop ? 2 : 3;
    if (start === undefined || tokens.length - behind < short) return undefined;
    const rest = wordsOf(tokens.slice(behind));
    if (
      GOES_ON.test(rest) ||
      / \?/.test(rest) ||
      (last.ask === 'place' && (HOW_LONG.test(rest) || TOOK.test(rest)))
    )
      continue;
    const words = text.slice(0, tokens[k]!.from);
    if (last.ask !== 'action' && !isScrap(read(words, {}).reading)) continue;
    const first = read(words, before);
    if (first.reading.act !== 'amend' || (last.ask && first.reading.ask?.slot === last.ask)) continue;
    const verb = tokens[behind]!.kind === 'number' || AMOUNT.test(rest) ? goodsVerb(first.reading) : '';
    const second = unshifted(read(`${verb}${text.slice(start)}`, first.conversation), verb.length);
    if (!tellsMore(second.reading) || repeats(second.reading, first.reading)) continue;
    // "the top left one, and I used 30 cm": of the stuff that was told before
    if (second.reading.ask?.slot === 'material' && whole.reading.act === 'amend' && !whole.reading.ask)
      continue;
    const said = text.slice(start);
    const alone = second.reading.entries.every(
      (e) =>
        standsAlone(e, said, second.reading) ||
        // "two and a half metres, and some pins": more of the list
        (verb !== '' && e.entry.kind === 'material' && /^some\b/.test(rest)),
    );
    const unanswered = whole.reading.act !== 'amend' || (last.ask && whole.reading.ask?.slot === last.ask);
    const lost = losesDeed(whole.reading, first.reading);
    const dropped = dropsDeed(tokens[k]!.w, whole.reading, first.reading, second.reading);
    if (mends && !dropped) continue;
    if (!alone && !dropped && !((unanswered || lost) && saysOfIt(wordsOf(tokens.slice(k)), second.reading)))
      continue;
    if (whole.reading.act === 'amend' && !tellsBetter(whole.reading, first.reading, second.reading)) continue;
    return joined(text, start, first, second, grid);
  }
  return undefined;
}

/** "three (and) a half" */
const FRACTION = /^(?:half|(?:a|an|one|two|three|five|seven) (?:half|quarters?|thirds?|eighths?|bit))\b/;
/** What begins so is said of something told before. */
const OF_TOLD = /^(?:it|that|they|those|the \w+(?: \w+)?) (?:was|were|'s|is|are|'re|should)\b/;

/**
 * "three and a half it was and the yarn was five fifty sorry", "check. and 5-2 not 5-1": the answer to what was asked, and behind it a
 * mend of the same note. The mend is read as if it had come after the answer.
 */
function mendBehind(
  { text, before, whole, read }: Note,
  tokens: Token[],
  k: number,
  behind: number,
): Read | undefined {
  const { last } = recall(before);
  const start = tokens[behind]?.from;
  if (!last?.ask || start === undefined || whole.reading.act !== 'amend') return undefined;
  const rest = wordsOf(tokens.slice(behind));
  if (FRACTION.test(rest)) return undefined;
  const cue = cueOf(rest);
  if (cue !== 'strong' && !(OF_TOLD.test(rest) || / (?:not|n't) /.test(` ${rest}`))) return undefined;
  const words = text.slice(0, tokens[k]!.from);
  if (last.ask !== 'action' && !isScrap(read(words, {}).reading)) return undefined;
  const first = read(words, before);
  if (first.reading.act !== 'amend' || first.reading.ask?.slot === last.ask) return undefined;
  const second = read(text.slice(start), first.conversation);
  const { entries, ask } = second.reading;
  if (
    second.reading.act !== 'amend' ||
    entries.length < Math.max(first.reading.entries.length, whole.reading.entries.length)
  )
    return undefined;
  if (ask && ask.slot === last.ask) return undefined;
  const own = entries.map((e) => shifted(e, start));
  const memory = recall(second.conversation);
  return {
    reading: { ...second.reading, entries: own },
    conversation: { memory: { ...memory, last: { ...memory.last!, entries: own, said: text } } },
  };
}

/** Words that close what stood open are few: "calico then", "going with the net". */
const CLOSING_TOKENS = 7;

/** "calico then, and 2-2 is torn": an open matter or choice closed by a few words, and news behind it. */
function closedInTwo({ text, before, whole, grid, read }: Note): Read | undefined {
  if (!/^(?:log|amend|aside)$/.test(whole.reading.act)) return undefined;
  const { matters = [], open } = recall(before);
  const tokens = tokenise(text);
  for (let k = 1; k < Math.min(tokens.length - 1, CLOSING_TOKENS); k++) {
    const head = wordsOf(tokens.slice(0, k));
    if (
      !joins(tokens, k) ||
      /^(?:then|:)$/.test(tokens[k]!.w) ||
      HEADING.test(head) ||
      NOT_CLOSING.test(head)
    )
      continue;
    const behind = behindJoint(tokens, k);
    const start = tokens[behind]?.from;
    if (start === undefined || tokens.length - behind < 2) return undefined;
    const rest = wordsOf(tokens.slice(behind));
    if (/ \?/.test(rest) || /^(?:or|not|no|for|on|in|over|behind|it|too)\b/.test(rest)) continue;
    const first = read(text.slice(0, tokens[k]!.from), before);
    const [closing, more] = first.reading.entries;
    if (first.reading.act !== 'log' || !closing || more || first.reading.ask) continue;
    const e = closing.entry;
    const closes =
      e.kind === 'decision'
        ? e.status === 'settled' && matters.some((m) => m.about === e.about)
        : e.kind === 'treatment' &&
          /^(?:planned|dropped)$/.test(e.state) &&
          open.some((o) => o.action === e.action && o.places.join() === (e.places ?? []).join());
    // read in one piece as a mend ("muslin, not the net. 4-4's frayed") it closes nothing
    const told =
      whole.reading.act !== 'amend' &&
      whole.reading.entries.some(({ entry: w }) => tellsSame(w, e) && sameAbout(w, e));
    if (!closes || told) continue;
    const second = read(text.slice(start), first.conversation);
    if (!tellsMore(second.reading)) continue;
    return joined(text, start, first, second, grid, 'log');
  }
  return undefined;
}

const sameAbout = (a: Entry, b: Entry): boolean =>
  a.kind !== 'decision' || b.kind !== 'decision' || a.about === b.about;

/** Sounds, and what says that something is settled without saying what. */
const NOT_CLOSING =
  /^(?:(?:i|we|right|so|oh|ok|okay|well|yes|no|and|um|er|now|then|right then|,) ?)+$|\bthat (?:'s|is) (?:settled|decided|that|it)\b/;

/** "and it's faded too", "closed it by machine": of what was just named, so that this was no heading. */
const saysOfIt = (rest: string, { entries }: Reading): boolean =>
  OF_IT.test(rest) ||
  (/^(?:[,.;] )?(?:(?:and|so|i|we) )*\S+(?:ed|n|t) (?:it|them|that|both)\b/.test(rest) &&
    entries.every(({ entry: e }) => e.kind !== 'treatment' || e.state === 'done'));

/** "the mustard tartan, and then I pressed it": the pressing would have taken the place of the deed that was told before. */
const losesDeed = (whole: Reading, first: Reading): boolean =>
  whole.act === 'amend' &&
  first.entries.some(
    ({ entry: e }) =>
      e.kind === 'treatment' &&
      e.action !== undefined &&
      !whole.entries.some(({ entry: w }) => w.kind === 'treatment' && w.action === e.action),
  );

/** "Row six. Patch it on Monday": a deed in a sentence of its own, of what the answer has just placed, that is lost in one piece. */
const dropsDeed = (joint: string, whole: Reading, first: Reading, second: Reading): boolean =>
  /^[.;!\n]$/.test(joint) &&
  whole.act === 'amend' &&
  second.entries.every(({ entry: e }) => /^(?:treatment|material)$/.test(e.kind)) &&
  second.entries.some(
    ({ entry: e }) =>
      e.kind === 'treatment' &&
      e.action !== undefined &&
      placesOf(e).length > 0 &&
      placesOf(e).every((p) => first.entries.some(({ entry: f }) => placesOf(f).includes(p))) &&
      !whole.entries.some(({ entry: w }) => w.kind === 'treatment' && w.action === e.action),
  );

const joins = (tokens: Token[], k: number): boolean =>
  JOINT_WORD.test(tokens[k]!.w) ||
  (JOINT_MARK.test(tokens[k]!.w) && !(tokens[k]!.glued && tokens[k + 1]?.glued));

/** "no, 2-3", "it was 2-3", "actually 40 minutes": what is said in place of what was told, and nothing more. */
const IN_ITS_PLACE =
  /^(?:(?:no|nope|oh|ah|wait|oops|whoops|hang on|hold on|actually|sorry|well|,|-) )*(?:nope|it was|that was|they were|those were|actually|oops|whoops|no(?= ,| it| that was| they| the | row| block| column| actually| \d| (?:one|two|three|four|five|six|seven|eight|nine|ten)\b))/;
/** One thing with its verb: "4-4 is torn", and no list that goes on ("3-4 and 2-2 are torn"). */
const ONE_TOLD = /^(?:\S+ - \S+|[a-z]+ [a-z]+|the \S+) (?:is|has|'s|needs|wants|looks|gets)\b/;

/** Is a mend that is only told by "no" or "it was" at its end at `k`: at a full stop, or before "and" where a statement of its own begins? */
const endsMend = (tokens: Token[], k: number, behind: number): boolean =>
  IN_ITS_PLACE.test(wordsOf(tokens.slice(0, k))) &&
  (/^[.;\n]$/.test(tokens[k]!.w) ||
    (tokens[k]!.w === ',' &&
      (tokens[behind]?.kind !== 'number' || ONE_TOLD.test(wordsOf(tokens.slice(behind, behind + 6)))) &&
      /^(?:and|but|also|oh|&)$/.test(tokens[k + 1]?.w ?? '')));

/** Where the second part begins, behind the joint at `k`. */
function behindJoint(tokens: Token[], k: number): number {
  let behind = k;
  while (tokens[behind] && LEADING.test(tokens[behind]!.w)) behind++;
  return behind;
}

/** In running words: "five two there's a hole in five three". */
const statementBegins = (tokens: Token[], k: number): boolean =>
  /^(?:there|i)$/.test(tokens[k]!.w) && STATES.test(tokens[k + 1]?.w ?? '');

const STATES = /^(?:'s|is|was|are|were|'ve|have|had|'d|\w+ed|did|put|cut|took|sewed|sewn)$/;

/** Where nothing was said before it tells of no damage and no deed. */
const isScrap = ({ act, entries }: Reading): boolean =>
  /^(?:log|aside)$/.test(act) &&
  entries.every(({ entry: e }) => e.kind !== 'condition' && (e.kind !== 'treatment' || !e.action));

/** News of its own: a whole log, and no remark kept because nothing was understood. */
const tellsMore = ({ act, entries }: Reading): boolean =>
  act === 'log' &&
  entries.some(({ entry: e }) => e.kind !== 'remark') &&
  entries.every(({ origins }) => origins['entry']?.rule !== 'remark.unread');

/** Nothing but what the answer has told already. */
const repeats = (second: Reading, first: Reading): boolean =>
  second.entries.every(({ entry: e }) =>
    first.entries.some(
      ({ entry: o }) =>
        /^(?:condition|treatment)$/.test(e.kind) &&
        tellsSame(o, e) &&
        JSON.stringify(placesOf(o)) === JSON.stringify(placesOf(e)),
    ),
  );

const POINTED = /^(?:it|that|that one|this|this one|them|those|these|they|both)$/i;

/** Has it a place, a number or an hour of its own, so that it can be no part of what the answer was about? */
const standsAlone = ({ entry: e, origins }: ReadEntry, said: string, { entries }: Reading): boolean => {
  const at = origins['places'];
  if (e.kind === 'treatment' && /^(?:cut|piece)$/.test(e.action ?? '')) return true;
  if (e.kind === 'condition' || e.kind === 'treatment')
    return at?.how === 'said' && !POINTED.test(said.slice(at.from, at.to).trim());
  // what a deed with a place of its own was done with
  return (
    e.kind !== 'material' ||
    e.quantity !== undefined ||
    e.cost !== undefined ||
    entries.some(({ entry: o }) => o.kind === 'treatment')
  );
};

/** "two yards. and a spool of thread": more of the goods, without the verb, which the answer's goods have. */
const AMOUNT = /^(?:a|an|one|two|three|four|five|six|half|some|another|\d)\b/;
const VERBS = { bought: 'bought ', needed: 'need ', used: 'used ', 'on-hand': 'have got ' } as const;
function goodsVerb({ entries }: Reading): string {
  const goods = entries.find(({ entry: e }) => e.kind === 'material')?.entry;
  return goods?.kind === 'material' ? VERBS[goods.use] : '';
}

/** A reading whose words began with a verb that was not said. */
function unshifted(read: Read, by: number): Read {
  return by
    ? { ...read, reading: { ...read.reading, entries: read.reading.entries.map((e) => shifted(e, -by)) } }
    : read;
}

/** Does the note in two say more than it did in one piece, or set apart places that ran together? */
function tellsBetter(whole: Reading, first: Reading, second: Reading): boolean {
  if (whole.entries.length < first.entries.length + second.entries.length) return true;
  const apart = [...first.entries, ...second.entries];
  // "two and a quarter it was and the seam on 3-3 is open": the strips that were cut are no seam
  if (whole.entries.some(({ entry: w }) => !apart.some(({ entry: e }) => tellsSame(w, e)))) return true;
  // "2-2 and it took twenty minutes, and 3-3 has a stain": in one piece the answer took the place of the news
  const news = second.entries.flatMap(({ entry: e }) => placesOf(e));
  const elsewhere = ({ entry: e }: ReadEntry): boolean =>
    placesOf(e).length > 0 &&
    !placesOf(e).some((p) => news.includes(p)) &&
    whole.entries.every(
      ({ entry: w }) =>
        !tellsSame(w, e) || (placesOf(w).length > 0 && placesOf(w).every((p) => news.includes(p))),
    );
  if (first.entries.some(elsewhere)) return true;
  return second.entries.some(({ entry: e }) =>
    whole.entries.some(
      ({ entry: w }) =>
        w.kind === 'treatment' &&
        e.kind === 'treatment' &&
        w.action === e.action &&
        // "6-2. backing: patch or replace": whose place was lost in one piece
        ((w.places?.length === 0 && (e.places?.length ?? 0) > 0) ||
          ((w.places?.length ?? 0) > (e.places?.length ?? 0) &&
            e.places?.every((p) => w.places!.includes(p)))),
    ),
  );
}

const tellsSame = (a: Entry, b: Entry): boolean =>
  a.kind === b.kind &&
  (a.kind !== 'treatment' || b.kind !== 'treatment' || a.action === b.action) &&
  (a.kind !== 'condition' || b.kind !== 'condition' || a.finding === b.finding);

/** The two readings as one: the mended set with the news behind it. */
function joined(
  text: string,
  start: number,
  first: Read,
  second: Read,
  grid: QuiltGrid,
  act: 'amend' | 'log' = 'amend',
): Read {
  const entries = [...first.reading.entries, ...second.reading.entries.map((e) => shifted(e, start))];
  const ask = first.reading.ask ?? second.reading.ask;
  const slips = [
    ...(first.reading.slips ?? []),
    ...(second.reading.slips ?? []).map((s) => ({ ...s, from: s.from + start, to: s.to + start })),
  ];
  const memory = recall(second.conversation);
  const earlier = recall(first.conversation).before;
  const after: Memory = {
    ...memory,
    last: { ...memory.last!, entries, said: text, ask: ask && ask.slot !== 'record' ? ask.slot : null },
    ...(earlier ? { before: earlier } : {}),
  };
  return {
    reading: {
      act,
      entries,
      ask,
      reply: [
        replyTo(
          entries.map((e) => e.entry),
          grid,
        ),
        ...(ask ? [ask.question] : []),
      ].join(' '),
      ...(slips.length ? { slips } : {}),
    },
    conversation: { memory: after },
  };
}

/** What was told behind stands on words further on in the note. */
const shifted = (e: ReadEntry, by: number): ReadEntry => ({ ...e, origins: movedBy(e.origins, by) });
