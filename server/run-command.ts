import { RULES_VERSION, readNote } from '../core/conversation/read-note.ts';
import { answerQuery } from '../core/log/answer-query.ts';
import { decide } from '../core/log/decide.ts';
import { localInstant } from '../core/log/local-instant.ts';
import type { Log } from '../core/log/log.ts';
import { rereadNotes } from '../core/log/reread-notes.ts';
import type { NoteAudio, Reading } from '../shared/note.ts';
import type { Command } from '../shared/wire.ts';
import { newId } from './store/new-id.ts';
import type { QuiltStore } from './store/quilt-store.ts';

/** What a command came to, once it is on the disk. */
export type Outcome = {
  seq: number;
  noteId?: string;
  reading?: Reading;
  answer?: { text: string; working: string[] };
};

export type Surroundings = {
  /** ISO 8601; the moment now. */
  now: string;
  idleMin: number;
  /** For a note that was heard: where its words came from. */
  heard?: { source: 'spoken' | 'recording'; audio: NoteAudio };
};

/** Carries out one command on one quilt. Throws `Refusal` and `DiskTrouble`. */
export async function runCommand(
  store: QuiltStore,
  command: Command,
  { now, idleMin, heard }: Surroundings,
): Promise<Outcome> {
  if (command.type !== 'take-note') {
    const { events } = await store.commit((log) =>
      decide(log, command, {
        at: localInstant(now, log.quilt.zone),
        id: newId,
        ...(command.type === 'reread-notes' ? { readings: readingsOfToday(log, command.noteIds) } : {}),
      }),
    );
    return { seq: events.at(-1)?.seq ?? store.log.seq };
  }
  const { events, log } = await store.commit((before) => {
    const at = localInstant(command.at ?? now, before.quilt.zone);
    const conversation = before.conversationOf(heard?.audio.recordingId ?? '');
    const read = readNote(command.text, { at, quilt: before.quilt, conversation });
    return decide(
      before,
      { ...command, at },
      {
        at,
        id: newId,
        reading: { ...read, rules: RULES_VERSION },
        ...(heard ? { heard } : {}),
      },
    );
  });
  const logged = log.note(command.clientId);
  const reading = logged?.reading;
  return {
    seq: events.at(-1)?.seq ?? log.seq,
    noteId: command.clientId,
    ...(reading ? { reading } : {}),
    ...(reading?.act === 'query' && logged
      ? { answer: answerQuery(log, reading, logged.note.at, { idleMin }) }
      : {}),
  };
}

function readingsOfToday(log: Log, noteIds: string[] | undefined): ReturnType<typeof rereadNotes> {
  return rereadNotes(
    log,
    (note, conversation) => readNote(note.text, { at: note.at, quilt: log.quilt, conversation }),
    { rules: RULES_VERSION, id: newId, ...(noteIds ? { noteIds } : {}) },
  );
}
