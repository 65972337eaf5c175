import type { ReadEntry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltDetails } from '../../shared/quilt.ts';
import type { Measure } from '../../shared/vocabulary.ts';
import type { ForRecord } from '../log/decide.ts';
import type { Log } from '../log/log.ts';
import { openQuestion } from '../log/open-question.ts';
import type { LoggedNote } from '../log/state.ts';
import type { ChecklistItem, Detail } from './checklist.ts';
import { isPrivateTalk } from './record-view.ts';
import { cleanText } from './wording/clean-text.ts';
import { moneyPhrase } from './wording/figure-phrases.ts';
import { listPhrase } from './wording/list-phrase.ts';
import { sentence } from './wording/sentence.ts';

type Read = { reading: Reading; conversation: Conversation };
type Field = Pick<
  ChecklistItem,
  'id' | 'field' | 'document' | 'filled' | 'question' | 'answer' | 'detail' | 'setting'
>;

/** What the record's questions need from outside. */
export type RoundGiven = {
  /** ISO 8601 with the offset of the quilt's place. */
  at: string;
  /** How the words read as a note on the work; `alone`: as if nothing had been said before. */
  read: (text: string, alone?: 'alone') => Read;
  /** The fields of the record as they stand in a log. */
  fields: (log: Log) => readonly Field[];
  /** The local date that the words name, `2026-03-14`. */
  dateIn: (text: string) => string | undefined;
  /** The log as it would stand after these words, taken as a note on the work. */
  after: (read: Read) => Log;
};

/** Fields that a yes or no begins the answer to: there "no, …" mends nothing. */
const YES_OR_NO: ReadonlySet<string> = new Set([
  'marks',
  'earlier-repair',
  'authority',
  'materials-removed',
  'approval',
]);

/** Said of the make of the quilt, words for treatments are no work of today. */
const OF_THE_MAKE: ReadonlySet<string> = new Set([
  'piecing',
  'fastening',
  'edge',
  'fibres',
  'earlier-repair',
  'examined',
  'materials-removed',
]);

// "skip it", "ask me later"
const LATER =
  /^(?:please )?(?:skip(?: (?:it|that|this)(?: one)?)?|(?:ask (?:me )?)?(?:it |that )?later(?: on)?|next(?: (?:one|question))?|pass|not now|not yet|leave (?:it|that)(?: for now)?|come back to (?:it|that)(?: later)?)$/;
// "stop asking", "that's enough questions"
const STOP =
  /^(?:please )?(?:stop(?: asking(?: me)?)?|stop (?:the|your) questions|(?:that ?s |that is )?enough(?: questions)?(?: for (?:now|today))?|no more(?: questions)?(?: for (?:now|today))?|(?:i ?m |we ?re )?done with (?:the |your |these )?questions)$/;
// "nobody knows", "I don't know who made it"
const UNKNOWN =
  /^(?:(?:i|we|she|he|they|the owner) (?:do not|don ?t|does not|doesn ?t) (?:really )?know|(?:nobody|no one) (?:knows|remembers)|(?:that ?s |it ?s )?(?:not known|unknown|unclear)|(?:i have |i ?ve )?no idea|don ?t know|can ?t (?:say|tell)|not told)(?: .{0,40})?$/;
// "none", "there isn't any", "no, nothing"
const NONE =
  /^(?:no|none|nothing|nope)(?: (?:none|nothing|not any|not at all|at all|whatever|(?:that )?i (?:can )?(?:see|know of)|there (?:is|are|was|were) (?:none|nothing)|there (?:is|are)n ?t(?: any)?))*$|^there (?:(?:is|are|was|were) (?:none|nothing)|(?:is|are)n ?t(?: any| one)?)$|^not (?:any|one)$/;
// "what does the record still lack?", "ask me what's missing", "go through the record"
const ASKED_FOR = [
  /^(?:so |now |and |ok(?:ay)? )?(?:what|which fields?|which details?|is there anything|anything)\b.*\b(?:lack|lacks|lacking|missing|left out|incomplete|to fill in|still (?:need|needs|want|wants|asks?))\b.*\b(?:record|papers?|file|paperwork)\b/,
  /^(?:so |now |and |ok(?:ay)? )?(?:what|what else) (?:does|do|is)\b.*\b(?:record|papers?|file|paperwork)\b.*\b(?:lack|need|want|miss|missing|lacking|ask(?:ing)?(?: for)?)$/,
  /^(?:please |now |and |ok(?:ay)? )*ask me (?:what(?: ?s| is| else is)? (?:still )?(?:missing|lacking)|(?:about|for) the (?:record|papers?)|(?:the )?(?:record ?s|missing) (?:questions|fields))\b/,
  /^(?:please |now |ok(?:ay)? |let ?s )*(?:fill in|go through|go over|finish|complete) the (?:record|papers?|paperwork)$/,
];
// "the record is made", "the record's finished now"
const MADE =
  /^(?:so |now |and |ok(?:ay)? |right )*(?:the |my |her )?record(?: is| s|s| has been) (?:now )?(?:made|finished|complete|done)(?: now)?$/;
const TWO_COPIES = 'Keep two copies, one with the owner and one with you, and one of them on paper.';
// "yes", "they're taken", "took them this morning"
const TAKEN = /^(?:yes|yep|yeah|taken|done|all done)\b|\b(?:taken|took|photographed)\b/;
// "thirty-five pounds an hour", "about forty hours"
const PER_HOUR = /\s*(?:\b(?:an|per|by the|every|each|for an|for each|for every) hour\b|\/ ?h(?:ou)?r?\b)/i;
const HOURS = /\s*\bhours?\b(?: (?:of work|in all|all told|altogether|or so))?/i;
// "no, 1931", "sorry, in Leeds", "I mean Elsie"
const MENDS =
  /^(no|sorry|i mean|i meant|rather|correction|make that)\b[\s,.:;–-]+(?:(?:i mean|i meant|make that)\b[\s,.:;–-]+)?(.+)$/is;
const PERSON = /\b(?:she|he|they|her|his|their|my|by)\b/i;

/** Words that only lead up to the answer, a field each; what is held back in doubt ("I think") stays. */
const LEADS: Partial<Record<string, RegExp>> = {
  title: /^(?:it ?'?s called|it is called|we call it|call it|they call it)\s+/i,
  number: /^(?:it ?'?s|it is|call it|make it|number)\s+(?:number\s+)?/i,
  owner: /^(?:it ?'?s|it is|it belongs to|it belongs|the owner is|the owner ?'?s)\s+/i,
  documentor: /^(?:it ?'?s|it is|that ?'?s|my name is|i ?'?m|i am|put|write)\s+/i,
  maker: /^(?:it was |it ?'?s )?(?:made|pieced|sewn|stitched|quilted) by\s+|^by\s+/i,
  origin: /^(?:it ?'?s|it is|it was|it came|it comes|made)\s+(?=from\b|in\b|made\b)/i,
  'date-made':
    /^(?:it was |it ?'?s )?(?:made|pieced|sewn|finished)\s+(?=in\b|about\b|around\b|before\b|after\b|between\b|\d)|^(?:it ?'?s|it is|it was)\s+(?=from\b|in\b|about\b|around\b)/i,
};
const TRAILS: Partial<Record<string, RegExp>> = { maker: /\s+(?:made|pieced|sewed|stitched) it$/i };

/** How much of a detail the record keeps, in characters (shared/quilt.ts). */
const LONGEST: Partial<Record<Detail, number>> = {
  name: 200,
  number: 60,
  owner: 200,
  mender: 200,
  maker: 400,
  madeWhen: 200,
};

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replaceAll(/[’']/g, ' ')
    .replaceAll(/[^\p{L}\p{N} ]+/gu, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();

/** Whether the words ask what the record still lacks: the beginning of a round of questions. */
export function isAskedForRecord(words: string): boolean {
  const said = plain(words);
  return said.length <= 120 && ASKED_FOR.some((pattern) => pattern.test(said));
}

/** Whether the record can ask for a field by word: all but the price of a whole that has no figure of its own. */
export const isAskable = (field: Field): boolean =>
  field.answer !== 'estimate' || field.setting !== undefined;

/**
 * What a round of questions asks first: `field` where it is named, else the first that is missing.
 * Undefined where nothing is missing that can be told.
 */
export function beginRound(
  fields: readonly Field[],
  asked: { field?: string | undefined; document?: string | undefined; passed?: readonly string[] } = {},
): (ForRecord['asking'] & object) | undefined {
  const { field, document, passed = [] } = asked;
  const next =
    field === undefined
      ? nextField(fields, { passed, document })
      : fields.find((one) => one.id === field && isAskable(one));
  if (!next) return undefined;
  return { field: next.id, passed: [...passed], ...(document ? { document } : {}) };
}

/** The next field to ask for: after the one that was asked, in the order of the list, then from its beginning. */
function nextField(
  fields: readonly Field[],
  { field, passed, document }: { field?: string; passed: readonly string[]; document?: string | undefined },
): Field | undefined {
  const at = fields.findIndex((one) => one.id === field);
  return [...fields.slice(at + 1), ...fields.slice(0, at)].find(
    (one) =>
      !one.filled &&
      isAskable(one) &&
      !passed.includes(one.id) &&
      (document === undefined || one.document === document),
  );
}

/**
 * Reads a note as part of the record's questions: the asking for them, an answer, a putting-off, a
 * correction of the answer before. Undefined where the note is none of these and is read as a note on
 * the work. Nothing here looks at more than the words, the log and what is given.
 */
export function readForRecord(
  log: Log,
  text: string,
  given: RoundGiven,
): (Read & { record: ForRecord }) | undefined {
  const conversation = log.conversationOf('');
  const answer = (
    reading: Partial<Reading> & Pick<Reading, 'reply'>,
    record: ForRecord,
  ): Read & { record: ForRecord } => ({
    conversation,
    reading: { act: 'log', entries: [], ask: null, answers: 'round', ...reading },
    record,
  });
  const ask = (field: Field): NonNullable<Reading['ask']> => ({ slot: 'record', question: field.question });

  if (isAskedForRecord(text)) {
    const fields = given.fields(log);
    const asking = beginRound(fields);
    const first = asking && fields.find((one) => one.id === asking.field);
    return answer(
      { act: 'query', reply: lacks(fields), ask: first ? ask(first) : null },
      asking ? { asking } : {},
    );
  }

  const said = plain(text);
  if (MADE.test(said)) {
    const lacking = given.fields(log).filter((one) => !one.filled).length;
    return answer(
      {
        reply: `The record is made. ${TWO_COPIES}${lacking ? ` It still lacks ${lacking} ${lacking === 1 ? 'thing' : 'things'}.` : ''}`,
      },
      { made: true, asking: { field: null, passed: [] } },
    );
  }

  const asking = openQuestion(log, given.at);
  const last = lastAnswer(log);
  if (!asking && !last) return undefined;
  const fields = given.fields(log);
  const field = asking && fields.find((one) => one.id === asking.field);

  /** Goes on to the next question, of a log in which this one is answered, put off or left. */
  const goOn = (
    reply: string,
    record: ForRecord,
    about: {
      passed?: readonly string[];
      without?: string;
      reading?: Partial<Reading>;
    } = {},
  ): Read & { record: ForRecord } => {
    const passed = about.passed ?? asking?.passed ?? [];
    const open = fields.map((one) => (one.id === about.without ? { ...one, filled: true } : one));
    const next = asking && nextField(open, { ...asking, passed });
    const document = asking?.document ? { document: asking.document } : {};
    const end = asking && !next ? ` ${finished(open, passed, asking.document)}` : '';
    return answer(
      { reply: `${reply}${end}`.trim(), ask: next ? ask(next) : null, ...about.reading },
      {
        ...record,
        ...(asking ? { asking: { field: next?.id ?? null, passed: [...passed], ...document } } : {}),
      },
    );
  };

  if (field && asking) {
    if (STOP.test(said))
      return answer({ reply: 'No more questions for now.' }, { asking: { field: null, passed: [] } });
    if (LATER.test(said)) return goOn('Later, then.', {}, { passed: [...asking.passed, field.id] });
  }

  const mends = MENDS.exec(text.trim());
  if (
    last &&
    mends &&
    !(field && YES_OR_NO.has(field.id) && /^no$/i.test(mends[1]!)) &&
    !NONE.test(said) &&
    !UNKNOWN.test(said)
  ) {
    const mended = fields.find((one) => one.id === last.answers);
    if (mended?.detail && last.seq !== undefined) {
      const value = asDetail(mended, mends[2]!, said);
      return answer(
        {
          act: 'amend',
          answers: mended.id,
          reply: `${mended.field}: ${sentence(value)}`,
          ask: field ? ask(field) : null,
        },
        { details: { [mended.detail]: value }, targetNoteId: last.note.note.id },
      );
    }
  }

  const normal = given.read(text);
  if (normal.reading.act === 'undo' && last && last.seq !== undefined) {
    const back = fields.find((one) => one.id === last.answers);
    return {
      ...answer(
        { act: 'undo', reply: 'Taken back.', ask: back ? ask(back) : null },
        {
          undone: last.seq,
          targetNoteId: last.note.note.id,
          ...(back ? { asking: { field: back.id, passed: [...(asking?.passed ?? [])] } } : {}),
        },
      ),
    };
  }
  if (!field || !asking || normal.reading.act === 'undo' || normal.reading.act === 'query') return undefined;

  const none = NONE.test(said);
  const unknown = UNKNOWN.test(said);
  if (field.answer === 'note') {
    if (field.id === 'fabrics') {
      const fabrics = fabricsIn(log.quilt.fabrics ?? {}, text, given.read);
      if (fabrics) {
        return goOn(
          `Fabrics: ${sentence(listPhrase(Object.keys(fabrics), log.quilt.spelling))}`,
          { details: { fabrics } },
          { without: field.id, reading: { answers: field.id } },
        );
      }
    }
    if (none || unknown) return goOn('Left open.', {}, { passed: [...asking.passed, field.id] });
    const read = inUnits(measuredAs(field.id, text, normal, given.read, conversation), log.quilt.unit);
    const after = given.fields(given.after(read));
    const filled = after.find((one) => one.id === field.id)?.filled ?? false;
    if (!filled && read === normal) return undefined;
    const next = filled && !read.reading.ask ? nextField(after, asking) : undefined;
    const document = asking.document ? { document: asking.document } : {};
    return {
      ...read,
      reading: { ...read.reading, ...(next ? { ask: ask(next) } : {}) },
      record: filled ? { asking: { field: next?.id ?? null, passed: [...asking.passed], ...document } } : {},
    };
  }

  if (field.answer === 'agreement') {
    if (none) return goOn('Not agreed yet, then.', {}, { passed: [...asking.passed, field.id] });
    const how = /\bsign/i.test(text)
      ? 'signature'
      : /\b(?:word|phone|said|agrees?|agreed|yes|told)\b/i.test(text)
        ? 'word'
        : undefined;
    if (!how) return undefined;
    const date = given.dateIn(text);
    const at = date === undefined ? given.at : `${date}T12:00:00${given.at.slice(19)}`;
    const by = log.quilt.owner || 'The owner';
    return goOn(
      `Agreement by ${how} noted${date ? `, ${date}` : ', today'}.`,
      { agreement: { how, by, at, note: text.slice(0, 2000) } },
      { without: field.id, reading: { answers: field.id } },
    );
  }

  if (field.answer === 'photograph') {
    if (!TAKEN.test(said) && !none) return undefined;
    return goOn(
      none
        ? 'Take them before it is covered or changed, and add them on the page.'
        : 'Add them on the page, under Photographs, and the record has them.',
      {},
      { passed: [...asking.passed, field.id] },
    );
  }

  if (field.setting) {
    if (none || unknown) return goOn('Left open.', {}, { passed: [...asking.passed, field.id] });
    const figure = figureIn(text, field.setting, given.read);
    if (figure === undefined) return undefined;
    return goOn(
      field.setting === 'price.hours'
        ? `${field.field}: ${figure} hours.`
        : `${moneyPhrase(figure, 0, log.quilt.currency, log.quilt.spelling)} an hour.`,
      { settings: { [field.setting]: figure } },
      { without: field.id, reading: { answers: field.id } },
    );
  }

  if (!field.detail) return undefined;
  if (!none && !unknown && isOnTheWork(field.id, text, normal.reading)) {
    // She has gone back to work: the question is withdrawn, or the next sentence would answer it.
    return { ...normal, record: { asking: { field: null, passed: [] } } };
  }
  if (isPrivateTalk(text)) {
    return answer(
      {
        act: 'aside',
        reply: 'That speaks of money or in confidence, so it was not written to the record.',
        ask: ask(field),
      },
      {},
    );
  }
  const value = unknown ? 'Not known' : none ? noneOf(field.id) : asDetail(field, text, said);
  return goOn(
    `${field.field}: ${sentence(value)}`,
    { details: { [field.detail]: value } satisfies Partial<QuiltDetails> },
    { without: field.id, reading: { answers: field.id } },
  );
}

/** "The record still lacks nine things: the owner, …" */
function lacks(fields: readonly Field[]): string {
  const missing = fields.filter((one) => !one.filled);
  if (!missing.length) return 'The record lacks nothing.';
  const told = missing.filter(isAskable).length;
  const names = missing.slice(0, 4).map((one) => one.field.charAt(0).toLowerCase() + one.field.slice(1));
  const more = missing.length > 4 ? ' and more' : '';
  return `The record still lacks ${missing.length} ${missing.length === 1 ? 'thing' : 'things'}: ${names.join('; ')}${more}.${told ? '' : ' None of it can be told: look at its list.'}`;
}

function finished(fields: readonly Field[], passed: readonly string[], document: string | undefined): string {
  const rest = fields.filter((one) => !one.filled && (document === undefined || one.document === document));
  const pages = rest.filter((one) => !isAskable(one)).length;
  if (!rest.length) return 'Nothing more is missing.';
  const later = passed.length ? `${passed.length} put off` : '';
  const elsewhere = pages ? `${pages} to be given on the page: photographs or prices` : '';
  return `That is all that I can ask: ${[later, elsewhere].filter(Boolean).join(', ') || 'the rest comes with the work'}.`;
}

/** The note just before, where it answered the record, with the change that it made. */
function lastAnswer(log: Log): { note: LoggedNote; answers: string; seq: number | undefined } | undefined {
  const note = log.parts.notes.last()?.logged;
  const answers = note?.reading?.answers;
  if (!note || answers === undefined || answers === 'round' || note.replacedBy !== undefined)
    return undefined;
  const details = Object.values(log.detailNotes).find((told) => told.noteId === note.note.id);
  const setting = Object.values(log.settingNotes).find((told) => told.noteId === note.note.id);
  const agreement = answers === 'approval' ? log.agreements.at(-1) : undefined;
  return { note, answers, seq: details?.seq ?? setting?.seq ?? agreement?.seq };
}

/**
 * The one figure of an answer: what an hour costs, in the quilt's currency, or how many hours. Undefined
 * where the words hold none, or a word on the work beside it.
 */
function figureIn(
  text: string,
  setting: NonNullable<Field['setting']>,
  read: RoundGiven['read'],
): number | undefined {
  const bare = text
    .trim()
    .replace(/[\s.]+$/, '')
    .replace(setting === 'price.hours' ? HOURS : PER_HOUR, '')
    .replace(/^(?:(?:it ?'?s|it is|i charge|i ask|i take|i think|say|about|around|maybe|make it) )+/i, '');
  if (bare.split(/\s+/).length > 7) return undefined;
  // Read as money, for which the reader has every form of figure.
  const { entries } = read(`bought cloth for ${bare}`, 'alone').reading;
  const cost = entries.length === 1 && entries[0]!.entry.kind === 'material' && entries[0]!.entry.cost;
  return cost ? cost.amount : undefined;
}

const isBlock = (place: string): boolean => /^\d/.test(place);

/** Whether words said while the record asks are about the work in hand after all. */
function isOnTheWork(field: string, text: string, reading: Reading): boolean {
  if (reading.act === 'amend') return true;
  return reading.entries.some(({ entry }) => {
    if (entry.kind === 'remark') return false;
    if (entry.kind === 'work') return true;
    if ('places' in entry && entry.places?.some(isBlock)) return true;
    if (entry.kind === 'treatment' && entry.minutes) return true;
    if (OF_THE_MAKE.has(field)) return false;
    return !PERSON.test(text);
  });
}

function asDetail(field: Field, text: string, said: string): string {
  let value = cleanText(text);
  const lead = LEADS[field.id];
  if (lead) value = value.replace(lead, '');
  const trail = TRAILS[field.id];
  value = value.replace(/[\s.]+$/, '');
  if (trail) value = value.replace(trail, '');
  if (UNKNOWN.test(said)) value = 'Not known';
  value = value.charAt(0).toUpperCase() + value.slice(1);
  const most = (field.detail && LONGEST[field.detail]) ?? 1000;
  return value.length <= most ? value : `${value.slice(0, most - 1).replace(/\s+\S*$/, '')}…`;
}

function noneOf(field: string): string {
  switch (field) {
    case 'marks':
      return 'None found';
    case 'earlier-repair':
      return 'No earlier repairs seen';
    case 'materials-removed':
      return 'Nothing was taken out';
    case 'authority':
      return 'The owner alone';
    default:
      return 'None';
  }
}

const MEASURES: Record<string, { lead: string; trail: string; of: readonly Measure[] }> = {
  sides: { lead: '', trail: '', of: ['side-top', 'side-right', 'side-bottom', 'side-left'] },
  size: { lead: 'the quilt measures ', trail: ' inches', of: ['width', 'length'] },
  diagonals: { lead: 'the diagonals are ', trail: ' inches', of: ['diagonal'] },
};

/** Bare figures in answer to "how wide and how long" are the width and the length. */
function measuredAs(
  field: string,
  text: string,
  normal: Read,
  read: RoundGiven['read'],
  conversation: Conversation,
): Read {
  const wanted = MEASURES[field];
  if (!wanted) return normal;
  const { lead, trail, of } = wanted;
  const fits = ({ reading }: Read): boolean =>
    reading.act === 'log' &&
    reading.entries.length > 1 &&
    reading.entries.every(({ entry }) => entry.kind === 'measurement' && of.includes(entry.of));
  if (fits(normal)) return normal;
  // Figures are the answer, and mend none that were told before.
  const alone = { ...read(text, 'alone'), conversation };
  if (fits(alone)) return alone;
  const bare = text
    .trim()
    .replace(/[\s.]+$/, '')
    .replace(/\b(?:wide|across|long)\b/gi, '')
    .replace(/\s+and\s+(?=\S+(?: \S+)?$)/i, field === 'size' ? ' by ' : ' and ');
  const tried = read(`${lead}${bare}${/inch|cm\b|centimet/i.test(bare) ? '' : trail}`, 'alone');
  if (!fits(tried)) return normal;
  // The words were completed for the reader, so the places in them are not those of what was said.
  const whole = { from: 0, to: text.length };
  return {
    conversation,
    reading: {
      ...tried.reading,
      entries: tried.reading.entries.map(
        ({ entry }): ReadEntry => ({
          entry: { ...entry },
          origins: { entry: { rule: 'answer-to-record', how: 'implied', ...whole } },
        }),
      ),
    },
  };
}

/** Measures told without a unit in answer to the record are in the quilt's own. */
function inUnits(read: Read, unit: 'in' | 'cm'): Read {
  const lacksUnit = ({ entry }: ReadEntry): boolean =>
    entry.kind === 'measurement' && entry.unit === undefined;
  if (!read.reading.entries.some(lacksUnit)) return read;
  const entries = read.reading.entries.map(
    (one): ReadEntry =>
      one.entry.kind === 'measurement' && one.entry.unit === undefined
        ? { ...one, entry: { ...one.entry, unit } }
        : one,
  );
  return { ...read, reading: { ...read.reading, entries } };
}

/**
 * Fabrics with their blocks: "red spot in row one block two; the blue check in row three". Or only
 * their names, in a list. Undefined where the words are neither.
 */
function fabricsIn(
  known: NonNullable<QuiltDetails['fabrics']>,
  text: string,
  read: (text: string) => Read,
): NonNullable<QuiltDetails['fabrics']> | undefined {
  const found: NonNullable<QuiltDetails['fabrics']> = {};
  const start =
    /(?:^|[;.,]\s*(?:and\s+)?|\s+and\s+)(?=(?:the |a |an |some )?(?!rows?\b|blocks?\b|all\b|every\b|in\b)[a-z][a-z'-]*(?: [a-z'-]+){0,3} (?:is |are )?in (?:rows?|blocks?|all|every|the)\b)/i;
  for (const part of text.split(start)) {
    const told = /^(?:the |a |an |some )?(.+?)\s+(?:is |are )?in\s+(.+)$/i.exec(part.trim());
    if (!told) continue;
    const [entry] = read(`${told[2]!.replace(/[\s.]+$/, '')} is torn`).reading.entries;
    const places = entry?.entry.kind === 'condition' ? (entry.entry.places ?? []).filter(isBlock) : [];
    if (places.length) found[cleanText(told[1]!).toLowerCase().slice(0, 100)] = places;
  }
  if (!Object.keys(found).length) {
    const names = text
      .replace(/[.\s]+$/, '')
      .split(/\s*[,;]\s*(?:and\s+)?|\s+and\s+/)
      .map((name) =>
        cleanText(name)
          .toLowerCase()
          .replace(/^(?:the|a|an|some)\s+/, ''),
      );
    const isName = (name: string): boolean => /^[\p{L}'-]+(?: [\p{L}'-]+){1,3}$/u.test(name);
    if (
      !names.every(isName) ||
      read(text).reading.entries.some(({ entry }) => entry.kind !== 'remark' && entry.kind !== 'material')
    )
      return undefined;
    for (const name of names) found[name] = [];
  }
  return { ...known, ...found };
}
