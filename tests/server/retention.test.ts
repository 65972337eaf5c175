import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runCommand } from '../../server/run-command.ts';
import { type Server, startServer } from './start-server.ts';

/** A note with its sound on the disk, as the microphone leaves it. */
async function saySo(server: Server, quiltId: string, id: string, text: string): Promise<void> {
  const store = await server.app.library.quilt(quiltId);
  await mkdir(join(store.folder, 'audio'), { recursive: true });
  await writeFile(join(store.folder, 'audio', `${id}.wav`), Buffer.alloc(1000));
  await runCommand(
    store,
    { type: 'take-note', clientId: id, text, at: '2026-05-01T10:00:00Z' },
    {
      now: '2026-05-01T10:00:00Z',
      idleMin: 30,
      heard: { source: 'spoken', audio: { file: `${id}.wav`, startS: 0, endS: 1 } },
    },
  );
}

test('says what it would delete, deletes exactly that, and never what has no words in the log', async () => {
  const server = await startServer();
  const id = await server.makeQuilt();
  const { folder } = await server.app.library.quilt(id);
  const files = () => readdir(join(folder, 'audio'));
  const list = async () => (await server.get(`/api/quilts/${id}/audio-to-delete`)).json();
  const remove = (names: string[]) => server.post(`/api/quilts/${id}/audio-to-delete`, { files: names });
  await saySo(server, id, 'a', 'Row one is sound.');
  await saySo(server, id, 'b', 'Row two has a tear.');
  // Speech on the disk that is not heard yet, and a recording that nobody has heard to its end.
  await saySo(server, id, 'c', 'Half heard.');
  await mkdir(join(folder, 'unheard'), { recursive: true });
  await writeFile(join(folder, 'unheard', 'c.json'), '{"id":"c","at":"2026-05-01T10:00:00Z","seconds":1}');
  await writeFile(join(folder, 'audio', 'recording.wav'), Buffer.alloc(2000));
  const store = await server.app.library.quilt(id);
  await store.commit(() => ({
    events: [
      {
        type: 'recording-added',
        recording: {
          id: 'r',
          file: 'recording.wav',
          name: 'evening.wav',
          sha256: 'x',
          startAt: '2026-05-01T10:00:00Z',
          durationS: 9,
        },
      },
    ],
  }));

  // As it comes, all is kept, and there is nothing to ask for.
  expect(await list()).toMatchObject({ keepAudio: 'all', files: [], bytes: 0 });
  expect((await remove(['a.wav'])).status).toBe(409);

  await server.app.library.saveSettings({ keepAudio: 'until-record' });
  expect(await list()).toMatchObject({ recordMade: false, files: [], bytes: 0 });
  expect((await remove(['a.wav'])).status).toBe(409);
  expect((await files()).length).toBe(4);
  await runCommand(
    store,
    { type: 'take-note', clientId: 'made', text: 'The record is made.' },
    { now: '2026-05-02T10:00:00Z', idleMin: 30 },
  );
  // What is said after that waits for the record to be made anew.
  await saySo(server, id, 'd', 'Row three is sound.');
  expect(await list()).toMatchObject({
    recordMade: true,
    files: [{ file: 'a.wav', bytes: 1000 }, { file: 'b.wav' }],
    bytes: 2000,
  });
  for (const wrong of ['c.wav', 'recording.wav', '../journal.jsonl']) {
    expect((await remove(['a.wav', wrong])).status, wrong).toBe(409);
  }
  expect(await files()).toEqual(['a.wav', 'b.wav', 'c.wav', 'd.wav', 'recording.wav']);

  expect(await (await remove(['a.wav'])).json()).toMatchObject({ deleted: 1 });
  expect(await files()).toEqual(['b.wav', 'c.wav', 'd.wav', 'recording.wav']);
  expect(store.log.removedAudio).toEqual(['a.wav']);
  expect(store.log.note('a')?.note.text).toBe('Row one is sound.');
  // A crash between the log and the disk: what the log knows as gone is offered again.
  await writeFile(join(folder, 'audio', 'a.wav'), Buffer.alloc(1000));
  expect(await list()).toMatchObject({ files: [{ file: 'a.wav' }, { file: 'b.wav' }] });
});
