import { join } from 'node:path';
import type { NoteAudio } from '../../shared/note.ts';
import { DiskTrouble } from './disk-trouble.ts';
import { encodeWav } from './encode-wav.ts';
import type { FileSystem } from './file-system.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** A piece of speech that is on the disk and not yet a note. `id` becomes the note's; `stretch` is that of `NoteAudio`. */
export type Unheard = { id: string; at: string; seconds: number; stretch?: NoteAudio['stretch'] };

/**
 * Speech between the microphone and the log: its sound is written, and a mark beside it, before the
 * recogniser has it; the mark goes when the note is in the journal. What is left after a crash, or a
 * recogniser that failed, is heard later.
 */
export class UnheardSound {
  constructor(
    readonly fs: FileSystem,
    readonly folder: string,
  ) {}

  static file(id: string): string {
    return `${id}.wav`;
  }

  async keep(sound: Unheard, pcm: Float32Array): Promise<void> {
    try {
      await this.fs.makeFolder(join(this.folder, 'audio'));
      await this.fs.makeFolder(join(this.folder, 'unheard'));
      await writeWholeFile(this.fs, this.#sound(sound.id), encodeWav(pcm));
      await writeWholeFile(this.fs, this.#mark(sound.id), Buffer.from(JSON.stringify(sound)));
    } catch (error) {
      throw new DiskTrouble('What was said could not be kept.', error);
    }
  }

  /** It is in the journal now. */
  async settle(id: string): Promise<void> {
    await this.fs.remove(this.#mark(id));
  }

  /** It was no speech, or nothing that is to be kept. */
  async discard(id: string): Promise<void> {
    await this.fs.remove(this.#sound(id));
    await this.fs.remove(this.#mark(id));
  }

  async list(): Promise<Unheard[]> {
    const found: Unheard[] = [];
    for (const name of await this.fs.list(join(this.folder, 'unheard'))) {
      if (!name.endsWith('.json')) continue;
      try {
        const text = Buffer.from(await this.fs.readFile(join(this.folder, 'unheard', name))).toString('utf8');
        found.push(JSON.parse(text) as Unheard);
      } catch {
        // Its sound is still in the audio folder; only when it was said is lost.
      }
    }
    return found.sort((a, b) => a.at.localeCompare(b.at));
  }

  sound(id: string): Promise<Uint8Array> {
    return this.fs.readFile(this.#sound(id));
  }

  #sound(id: string): string {
    return join(this.folder, 'audio', UnheardSound.file(id));
  }
  #mark(id: string): string {
    return join(this.folder, 'unheard', `${id}.json`);
  }
}
