import { type Heard, likeliestSaid } from '../core/conversation/likeliest-said.ts';
import { RULES_VERSION, readNote, SILENCE } from '../core/conversation/read-note.ts';
import { hoursFromLog } from '../core/hours/hours.ts';
import { answerQuery } from '../core/log/answer-query.ts';
import { decide, type ForRecord } from '../core/log/decide.ts';
import { evolve } from '../core/log/evolve.ts';
import { localInstant } from '../core/log/local-instant.ts';
import type { Log } from '../core/log/log.ts';
import { rereadNotes } from '../core/log/reread-notes.ts';
import { type ChecklistItem, checklist } from '../core/record/checklist.ts';
import { beginRound, readForRecord } from '../core/record/record-question.ts';
import { findDays } from '../core/rules/times/find-day.ts';
import { wallOf, wallTime } from '../core/rules/times/local-time.ts';
import type { NoteAudio, Reading } from '../shared/note.ts';
import type { Command } from '../shared/wire.ts';
import { estimateForPapers } from './export/estimate-for-papers.ts';
import type { Outcome, Surroundings } from './run-command.ts';
import { newId } from './store/new-id.ts';
import type { QuiltStore } from './store/quilt-store.ts';

/** Carries out one command on one quilt. Throws `Refusal` and `DiskTrouble`. */
export async function carryOutCommand(
  store: QuiltStore,
  command: Command,
  { now, idleMin, heard }: Surroundings,
): Promise<Outcome> {
  if (command.type !== 'take-note') {
    const { events } = await store.commit((log) => {
      const at = localInstant(now, log.quilt.zone);
      return decide(log, command, {
        at,
        id: newId,
        ...(command.type === 'reread-notes' ? { readings: readingsOfToday(log, command.noteIds) } : {}),
        ...(command.type === 'ask-record'
          ? { record: questionsOf(log, command, idleMin, at.slice(0, 10)) }
          : {}),
      });
    });
    const last = events.at(-1)?.seq;
    return last === undefined ? { seq: store.log.seq, unchanged: true } : { seq: last };
  }
  const { events, log } = await store.commit((before) => {
    const at = localInstant(command.at ?? now, before.quilt.zone);
    const conversation = before.conversationOf(heard?.audio.recordingId ?? '');
    const read = (text: string, alone?: 'alone') =>
      readNote(text, {
        at,
        quilt: before.quilt,
        conversation: alone ? SILENCE : conversation,
        spoken: heard !== undefined,
      });
    const { text, heardAs } = wordsOf(command.text, heard, (words) => read(words).reading);
    const taking = { ...command, text, at };
    const from = heardAs ? { heard: heardAs } : {};
    // A recording tells of another time, so nothing in it answers what the record asks now.
    const forRecord =
      heard?.audio.recordingId === undefined
        ? readForRecord(before, text, {
            at,
            read,
            fields: (log) => fieldsOf(log, idleMin, at.slice(0, 10)),
            dateIn: (text) => {
              const day = findDays(text, wallOf(at))[0];
              return day && wallTime(day.start).slice(0, 10);
            },
            after: (reading) => {
              const decision = decide(before, taking, {
                at,
                id: newId,
                reading: { ...reading, rules: RULES_VERSION },
                ...from,
              });
              const events = 'events' in decision ? decision.events : [];
              return events.reduce((log, event) => evolve(log, { seq: log.seq + 1, at: now, event }), before);
            },
          })
        : undefined;
    const { record, ...reading } = forRecord ?? { ...read(text), record: undefined };
    return decide(before, taking, {
      at,
      id: newId,
      reading: { ...reading, rules: RULES_VERSION },
      ...(record ? { record } : {}),
      ...from,
    });
  });
  const logged = log.note(command.clientId);
  const reading = logged?.reading;
  return {
    seq: events.at(-1)?.seq ?? log.seq,
    noteId: command.clientId,
    ...(reading ? { reading } : {}),
    ...(reading?.act === 'query' && reading.query && !reading.ask && logged
      ? { answer: answerQuery(log, reading, logged.note.at, { idleMin }) }
      : {}),
  };
}

/** The words of a note, of those that may have been said the ones that make the most sense, and how they were heard. */
function wordsOf(
  text: string,
  heard: Surroundings['heard'],
  read: (text: string) => Reading,
): { text: string; heardAs?: Pick<NonNullable<Surroundings['heard']>, 'source' | 'audio'> } {
  if (!heard) return { text };
  const { source, audio, others = [] } = heard;
  type Way = Heard & Pick<NoteAudio, 'words' | 'confidence'>;
  const first: Way = { text, behind: 0, words: audio.words, confidence: audio.confidence };
  const said = likeliestSaid<Way>([first, ...others], read);
  return {
    text: said.text,
    heardAs: { source, audio: { ...audio, words: said.words, confidence: said.confidence } },
  };
}

/** The fields of the record as a log fills them. */
const fieldsOf = (log: Log, idleMin: number, today: string): ChecklistItem[] => {
  const hours = hoursFromLog(log, { idleMin });
  const estimate = estimateForPapers(log, hours, today);
  return checklist(log, { hours, ...(estimate ? { estimate } : {}) });
};

function questionsOf(
  log: Log,
  { field, document }: Extract<Command, { type: 'ask-record' }>,
  idleMin: number,
  today: string,
): ForRecord {
  if (field === null) return { asking: { field: null, passed: [] } };
  const asking = beginRound(fieldsOf(log, idleMin, today), { field, document });
  return asking ? { asking } : {};
}

function readingsOfToday(log: Log, noteIds: string[] | undefined): ReturnType<typeof rereadNotes> {
  return rereadNotes(
    log,
    (note, conversation) =>
      readNote(note.text, { at: note.at, quilt: log.quilt, conversation, spoken: note.source !== 'typed' }),
    { rules: RULES_VERSION, id: newId, ...(noteIds ? { noteIds } : {}) },
  );
}
