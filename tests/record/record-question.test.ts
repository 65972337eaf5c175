import { expect, test } from 'vitest';
import type { Log } from '../../core/log/log.ts';
import { checklist } from '../../core/record/checklist.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { isAskedForRecord } from '../../core/record/record-question.ts';
import { renderText } from '../../core/record/render-text.ts';
import { runCommand } from '../../server/run-command.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import type { Command } from '../../shared/wire.ts';
import { picture } from '../log/picture.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';

/** A talk with a real store, the clock going on half a minute a sentence from the moment now. */
async function talk(details: Partial<QuiltDetails> = {}) {
  const folder = await temporaryFolder();
  const store = await QuiltStore.open(nodeFileSystem, 'q', folder);
  const quilt = {
    ...QuiltDetails.parse({ name: 'The harbour quilt', rows: 5, blocks: 4, ...details }),
    id: 'q',
    madeAt: new Date().toISOString(),
  };
  await store.commit(() => ({ events: [{ type: 'quilt-made', quilt }] }));
  let ms = Date.now();
  let notes = 0;
  const run = (command: Command) =>
    runCommand(store, command, { now: new Date(ms).toISOString(), idleMin: 30 });
  return {
    store,
    get log(): Log {
      return store.log;
    },
    later: (minutes: number) => {
      ms += minutes * 60_000;
    },
    ask: (field?: string | null, document?: string) =>
      run({ type: 'ask-record', field, ...(document ? { document } : {}) }),
    say: async (text: string) => {
      ms += 1000;
      const done = await run({ type: 'take-note', clientId: `n${++notes}`, text });
      return done.reading!;
    },
    reopen: async () => {
      await store.close();
      return QuiltStore.open(nodeFileSystem, 'q', folder);
    },
  };
}

test('asks what is missing, one by one, and the answers stand in the record', async () => {
  const t = await talk();
  const first = await t.say('What does the record still lack?');
  expect(first.act).toBe('query');
  expect(first.reply).toMatch(/^The record still lacks \d+ things: identification number; owner; /);
  expect(first.ask).toEqual({
    slot: 'record',
    question: 'What number do you give it, for the label and the papers?',
  });
  expect((await t.say('skip it')).ask?.question).toBe('Whose quilt is it?');
  expect((await t.say('it belongs to Orla Pennick')).reply).toBe('Owner: Orla Pennick.');
  await t.say('Ishbel Corrow');
  const maker = await t.say('It was made by her grandmother, Annis Pennick.');
  expect(maker).toMatchObject({ act: 'log', entries: [], answers: 'maker' });
  expect(maker.ask?.question).toBe('Where was it made, and how did it come to its owner?');
  await t.say('nobody knows');
  await t.say('about 1931');
  await t.say('No, there is nothing');
  expect(t.log.quilt).toMatchObject({
    owner: 'Orla Pennick',
    mender: 'Ishbel Corrow',
    maker: 'Her grandmother, Annis Pennick',
    origin: 'Not known',
    madeWhen: 'About 1931',
    inscriptions: 'None found',
  });
  const made = checklist(t.log).find((item) => item.id === 'maker')!;
  expect(made).toMatchObject({ filled: true, noteIds: ['n5'] });
  const paper = renderText(recordDocument(t.log, 'condition', { at: new Date().toISOString() }));
  expect(paper).toContain('Her grandmother, Annis Pennick');
  expect(paper).toContain('None found');
  const again = await t.reopen();
  expect(picture(again.log)).toEqual(picture(t.log));
  await again.close();
});

test('size, sides and diagonals answered by bare figures become measurements in the quilt’s unit', async () => {
  const t = await talk();
  await t.ask('size');
  const size = await t.say('sixty two and a half by eighty four');
  expect(size.entries.map(({ entry }) => entry)).toEqual([
    { kind: 'measurement', of: 'width', value: 62.5, unit: 'in', places: ['quilt'] },
    { kind: 'measurement', of: 'length', value: 84, unit: 'in', places: ['quilt'] },
  ]);
  expect(size.ask?.question).toContain('top, right, bottom and left');
  await t.ask('sides');
  const sides = await t.say(
    'top sixty two, right eighty four, bottom sixty two and a half, left eighty four',
  );
  expect(sides.entries).toHaveLength(4);
  await t.ask('diagonals');
  const diagonals = await t.say('one hundred and four and one hundred and five');
  expect(diagonals.entries.map(({ entry }) => 'value' in entry && entry.value)).toEqual([104, 105]);
  const filled = checklist(t.log)
    .filter((item) => item.filled)
    .map((item) => item.id);
  expect(filled).toEqual(expect.arrayContaining(['size', 'sides', 'diagonals']));
});

test('how it is made is told without becoming work of today', async () => {
  const t = await talk();
  await t.ask('piecing');
  await t.say('pieced by hand, with running stitch');
  await t.say('tied every four inches with red wool');
  await t.say('the backing is brought round to the front and hemmed down');
  const fibres = await t.say('cotton, with a wool filling');
  expect(t.log.entries).toEqual([]);
  expect(t.log.quilt).toMatchObject({
    piecing: 'Pieced by hand, with running stitch',
    fastening: 'Tied every four inches with red wool',
    edgeFinish: 'The backing is brought round to the front and hemmed down',
    fibres: 'Cotton, with a wool filling',
  });
  expect(fibres.ask?.question).toContain('Which fabrics can you tell apart');
  await t.say('red spot in row one block two and row four block three, and the blue check in row two');
  expect(t.log.quilt.fabrics).toEqual({
    'red spot': ['1-2', '4-3'],
    'blue check': ['2-1', '2-2', '2-3', '2-4'],
  });
});

test('what is said of the work is logged as work, and withdraws the question', async () => {
  const t = await talk({ owner: 'Orla Pennick', mender: 'Ishbel Corrow', number: 'Q7' });
  await t.ask();
  const work = await t.say('row three block two, re-sewed the split seam by hand, twenty minutes');
  expect(work.answers).toBeUndefined();
  expect(work.entries[0]?.entry).toMatchObject({ kind: 'treatment', action: 'resew', places: ['3-2'] });
  expect(t.log.recordAsking).toBeUndefined();
  await t.say('by her aunt');
  expect(t.log.quilt.maker).toBeUndefined();
});

test('a question that was asked long ago takes no answer', async () => {
  const t = await talk({ owner: 'Orla Pennick', mender: 'Ishbel Corrow', number: 'Q7' });
  await t.ask();
  expect(t.log.recordAsking?.field).toBe('maker');
  t.later(11);
  await t.say('Annis Pennick');
  expect(t.log.quilt.maker).toBeUndefined();
});

test('an answer is mended and taken back by word', async () => {
  const t = await talk({ owner: 'Orla Pennick', mender: 'Ishbel Corrow', number: 'Q7' });
  await t.ask();
  await t.say('Annis Pennock');
  const mended = await t.say('No, Annis Pennick');
  expect(mended).toMatchObject({ act: 'amend', answers: 'maker', reply: 'Maker, as told: Annis Pennick.' });
  expect(mended.ask?.question).toContain('Where was it made');
  expect(t.log.quilt.maker).toBe('Annis Pennick');
  const back = await t.say('scratch that');
  expect(back.act).toBe('undo');
  expect(t.log.quilt.maker).toBe('Annis Pennock');
  expect(t.log.recordAsking?.field).toBe('maker');
});

test('stops asking, and says so; a question to the log between leaves the record’s question open', async () => {
  const t = await talk();
  await t.ask('owner');
  expect((await t.say('how many hours so far')).query).toBe('hours-total');
  expect((await t.say('Orla Pennick')).answers).toBe('owner');
  expect((await t.say('that’s enough questions')).reply).toBe('No more questions for now.');
  expect(t.log.recordAsking).toBeUndefined();
});

test('a round for one paper asks that paper’s fields, the agreement too', async () => {
  const t = await talk({ owner: 'Orla Pennick', aim: 'To be slept under' });
  await t.ask('approval', 'proposal');
  const agreed = await t.say('she signed on the third of March');
  expect(t.log.agreements).toMatchObject([{ how: 'signature', by: 'Orla Pennick' }]);
  expect(t.log.agreements[0]?.at).toMatch(/-03-03T12:00:00/);
  expect(agreed.ask?.question).toContain('Does the quilt belong to the owner alone');
  await t.say('no');
  expect(t.log.quilt.authority).toBe('The owner alone');
});

test('what is private is not written to the record', async () => {
  const t = await talk();
  await t.ask('owner');
  const said = await t.say('Orla Pennick, but between you and me she still owes me forty pounds');
  expect(said.act).toBe('aside');
  expect(t.log.quilt.owner).toBe('');
});

test.each([
  'what does the record still lack',
  'So what is still missing from the record?',
  'ask me what’s missing',
  'What do the papers still need?',
  'go through the record',
])('“%s” begins the questions', (words) => expect(isAskedForRecord(words)).toBe(true));

test.each([
  'what is missing in row two',
  'a piece is missing in block three',
  'what have I still not decided',
  'I need to record the border',
])('“%s” does not', (words) => expect(isAskedForRecord(words)).toBe(false));

test('asks for photographs and for the price by word too, and takes the price back', async () => {
  const t = await talk();
  await t.ask('during-images');
  const taken = await t.say('Yes, I took them this morning');
  expect(taken.reply).toMatch(/^Add them on the page, under Photographs/);
  await t.ask('cost-estimate');
  expect((await t.say('thirty-five pounds an hour')).reply).toMatch(/^£35\.00 an hour\./);
  expect(t.log.estimateSettings).toEqual({ 'price.hourly': 35 });
  expect(t.log.settingNotes['price.hourly']?.noteId).toBe('n2');
  await t.say('scratch that');
  expect(t.log.estimateSettings).toEqual({});
  await t.ask('time-estimate');
  expect((await t.say('about forty hours')).reply).toMatch(/^Estimate of time, with dates: 40 hours\./);
  expect(checklist(t.log).find((item) => item.id === 'time-estimate')).toMatchObject({
    filled: true,
    value: '40 hours',
    noteIds: ['n4'],
  });
});

test('a word on the work is no price', async () => {
  const t = await talk();
  await t.ask('cost-estimate');
  const reading = await t.say('Row two block three has a tear in the brown cloth');
  expect(reading.entries).toHaveLength(1);
  expect(t.log.estimateSettings).toEqual({});
});

test('says that the record is made, keeps where, and what is lacking', async () => {
  const t = await talk();
  const made = await t.say('The record is made.');
  expect(made.reply).toMatch(/^The record is made\. Keep two copies.* It still lacks \d+ things\.$/);
  expect(t.log.recordMade).toBeDefined();
});
