import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A typed note on its way to the server, kept in the browser until the server has it on disk. */
export type WaitingNote = { order?: number; clientId: string; quiltId: string; text: string; at: string };

interface OutboxSchema extends DBSchema {
  notes: { key: number; value: WaitingNote; indexes: { quilt: string } };
}

/** Where notes wait: in IndexedDB, or in memory where the browser has none (a private window). */
export type NoteOutbox = {
  add(note: WaitingNote): Promise<void>;
  /** The oldest first. */
  list(quiltId: string): Promise<WaitingNote[]>;
  remove(clientId: string): Promise<void>;
  /** False where the notes would not outlive the window. */
  readonly lasting: boolean;
};

export async function openNoteOutbox(name = 'quiltside'): Promise<NoteOutbox> {
  try {
    const db = await openDB<OutboxSchema>(name, 1, {
      upgrade(fresh) {
        const store = fresh.createObjectStore('notes', { keyPath: 'order', autoIncrement: true });
        store.createIndex('quilt', 'quiltId');
      },
    });
    return lastingOutbox(db);
  } catch {
    return passingOutbox();
  }
}

function lastingOutbox(db: IDBPDatabase<OutboxSchema>): NoteOutbox {
  return {
    lasting: true,
    async add(note) {
      // strict: done means on the disk, not in a buffer of the browser's
      const tx = db.transaction('notes', 'readwrite', { durability: 'strict' });
      await tx.store.add(note);
      await tx.done;
    },
    // The index yields equal keys in the order of the primary key, which is the order of writing.
    list: (quiltId) => db.getAllFromIndex('notes', 'quilt', quiltId),
    async remove(clientId) {
      const tx = db.transaction('notes', 'readwrite');
      for await (const cursor of tx.store) if (cursor.value.clientId === clientId) await cursor.delete();
      await tx.done;
    },
  };
}

function passingOutbox(): NoteOutbox {
  let notes: WaitingNote[] = [];
  return {
    lasting: false,
    async add(note) {
      notes = [...notes, note];
    },
    list: async (quiltId) => notes.filter((note) => note.quiltId === quiltId),
    async remove(clientId) {
      notes = notes.filter((note) => note.clientId !== clientId);
    },
  };
}
