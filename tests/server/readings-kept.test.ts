import { expect, it } from 'vitest';
import { runCommand } from '../../server/run-command.ts';
import { startServer } from './start-server.ts';

const AT = '2026-05-01T10:00:00Z';
const spoken = (text: string, confidence: number) => ({
  text,
  confidence,
  words: text.split(' ').map((word) => ({ text: word, confidence })),
});

it('makes the note of the hearing that makes the most sense, with the words as that one was heard', async () => {
  const server = await startServer();
  const store = await server.app.library.quilt(await server.makeQuilt());
  const first = spoken('Pledged row one block two.', 0.8);
  const other = spoken('Patched row one block two.', 0.7);
  const { reading } = await runCommand(
    store,
    { type: 'take-note', clientId: 'a', text: first.text, at: AT },
    {
      now: AT,
      idleMin: 30,
      heard: {
        source: 'spoken',
        audio: { file: 'a.wav', startS: 0, endS: 2, words: first.words, confidence: 0.8 },
        others: [{ ...other, behind: 0.4 }],
      },
    },
  );
  expect(reading?.entries.map(({ entry }) => entry)).toMatchObject([
    { kind: 'treatment', action: 'patch', state: 'done', places: ['1-2'] },
  ]);
  expect(store.log.note('a')?.note).toMatchObject({
    text: other.text,
    source: 'spoken',
    audio: { file: 'a.wav', words: other.words, confidence: 0.7 },
  });
});
