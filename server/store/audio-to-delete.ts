import { join } from 'node:path';
import type { Job } from '../../shared/wire.ts';
import type { QuiltStore } from './quilt-store.ts';
import { UnheardSound } from './unheard-sound.ts';

/** A file of sound whose words are all in the log. `what`: a note's own sound, or a whole recording by its name. */
export type WrittenSound = { file: string; bytes: number; what: string };

/**
 * The sound of a quilt that can go because all that was said in it stands in the log. Never among it: speech not yet heard,
 * and recordings that are in the queue, were broken off, failed, or gave no word.
 *
 * @param until only what was said before this place in the journal
 * @param jobs what the queue knows of the quilt's recordings; one it does not know is kept
 */
export async function audioToDelete(
  store: QuiltStore,
  jobs: readonly Job[],
  until = Number.POSITIVE_INFINITY,
): Promise<WrittenSound[]> {
  const { log, fs, folder } = store;
  const unheard = new Set((await new UnheardSound(fs, folder).list()).map(({ id }) => UnheardSound.file(id)));
  const written = new Map<string, string>();
  const withWords = new Set<string>();
  const saidLater = new Set<string>();
  for (const { note, seq } of log.notes) {
    if (!note.audio || note.text.trim() === '') continue;
    if ((seq ?? 0) > until) {
      if (note.audio.recordingId !== undefined) saidLater.add(note.audio.recordingId);
      continue;
    }
    if (note.audio.recordingId === undefined)
      written.set(note.audio.file, `said ${note.at.slice(0, 16).replace('T', ' ')}`);
    else withWords.add(note.audio.recordingId);
  }
  for (const { id, file, name } of log.recordings) {
    if (withWords.has(id) && !saidLater.has(id) && jobs.some((job) => job.id === id && job.state === 'done'))
      written.set(file, name);
  }
  const removed = new Set(log.removedAudio);
  const found: WrittenSound[] = [];
  // Only names that lie in the folder itself: what a log says of files is never taken as a path.
  for (const file of await fs.list(join(folder, 'audio'))) {
    // One that the log knows as removed was left lying by a crash.
    const what = written.get(file) ?? (removed.has(file) ? 'left over' : undefined);
    if (what === undefined || unheard.has(file)) continue;
    const bytes = (await fs.stat(join(folder, 'audio', file)))?.size ?? 0;
    found.push({ file, bytes, what });
  }
  return found;
}

/** Deletes such files: first the log says so, then they go. */
export async function deleteAudio(store: QuiltStore, files: readonly string[]): Promise<void> {
  await store.commit((log) => {
    const fresh = files.filter((file) => !log.removedAudio.includes(file));
    return { events: fresh.length > 0 ? [{ type: 'audio-removed', files: fresh }] : [] };
  });
  for (const file of files) await store.fs.remove(join(store.folder, 'audio', file));
  await store.fs.syncFolder(join(store.folder, 'audio'));
}
