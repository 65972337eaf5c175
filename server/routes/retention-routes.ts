import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { parseInput } from '../plugins/answer-errors.ts';
import type { RecordingQueue } from '../recordings/recording-queue.ts';
import { audioToDelete, deleteAudio } from '../store/audio-to-delete.ts';
import type { Library } from '../store/library.ts';
import { Refusal } from '../store/quilt-store.ts';

export const SoundToDelete = z.strictObject({ files: z.array(z.string().max(100)).min(1).max(100_000) });
type WithId = { Params: { id: string } };

/** Sound that goes by the retention setting: first what would go is said, then exactly that goes. */
export function retentionRoutes(
  app: FastifyInstance,
  library: Library,
  ears: RecordingQueue | undefined,
): void {
  const listOf = async (id: string) => {
    const store = await library.quilt(id);
    const { keepAudio } = library.settings.data;
    // Until the record is made none goes; after it, what was said before.
    const made = store.log.recordMade?.seq;
    const until = keepAudio === 'until-record' ? made : Number.POSITIVE_INFINITY;
    const files =
      keepAudio === 'all' || until === undefined
        ? []
        : await audioToDelete(store, ears ? await ears.list(store) : [], until);
    const recordMade = made !== undefined;
    return { store, keepAudio, recordMade, files, bytes: files.reduce((sum, file) => sum + file.bytes, 0) };
  };

  app.get<WithId>('/api/quilts/:id/audio-to-delete', async ({ params }) => {
    const { store: _, ...list } = await listOf(params.id);
    return list;
  });
  app.post<WithId>('/api/quilts/:id/audio-to-delete', async ({ params, body }) => {
    const wanted = [...new Set(parseInput(SoundToDelete, body).files)];
    const { store, keepAudio, files } = await listOf(params.id);
    if (keepAudio === 'all') {
      throw new Refusal(
        'The settings say that all sound is kept. Change that first; nothing was deleted.',
        409,
      );
    }
    const other = wanted.find((name) => !files.some(({ file }) => file === name));
    if (other !== undefined) {
      throw new Refusal(
        `${other.slice(0, 100)} is not among the sound that may go: its words are not all in the log, or it is gone already. Look at the list again; nothing was deleted.`,
        409,
        'files',
      );
    }
    await deleteAudio(store, wanted);
    return { deleted: wanted.length, seq: store.log.seq };
  });
}
