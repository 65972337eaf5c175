import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { QuiltExport } from '../../shared/quilt-export.ts';
import { complaints, launch } from '../e2e/browser.ts';
import { dataFolder, removeFolder, serve } from '../e2e/serve.ts';

/**
 * `npm run trial:evening`: what a new user does with the README alone, in a real browser whose microphone is a synthetic voice.
 * She makes a quilt, begins to listen, talks for five minutes and more, mends two things by voice, asks two questions, reads the
 * day, and takes the record. Prints what was heard and what became of it beside what was said; pictures and the PDF go
 * to `tests/.out/evening`. A fault (exit 1) is a sentence that gave no note, a complaint of the page, or no record; the reading
 * itself is for a person to judge. Needs Chromium, flite and sox.
 */
const SAID = [
  'Starting on the survey.',
  'Row one is sound, all of it.',
  'Row two, block one has a split seam.',
  'Row two, block three, the brown check is worn through.',
  'There is a rust stain on row three, block four, about an inch across.',
  'The binding is frayed along the top edge.',
  'Row four, block two has a hole in it.',
  'No, row four, block three.',
  'It measures sixty two by seventy four inches.',
  'For row four, block three, either a patch or net over it, I am not sure.',
  'Leave the stain as it is.',
  'That is the survey done.',
  'Starting on the mending.',
  'Sewed up the seam in row two, block one by hand. Twenty minutes.',
  'Make that twenty five minutes.',
  'Patched row two, block three with brown check, whip stitch.',
  'Used half a yard of brown check.',
  'Bought three yards of calico for the backing, eighteen pounds fifty.',
  'Come here, Biscuit, leave that alone.',
  'Took the old binding off the top edge.',
  'I need two spools of grey thread.',
  'I will put net over row four, block three.',
  'Stopping there.',
  'What have I still not decided?',
  'How many hours is that?',
];
/** Silence after each sentence, s: with the words themselves a little over five minutes. */
const GAP_S = 9.5;
const OUT = 'tests/.out/evening';

const sounds = mkdtempSync(join(tmpdir(), 'evening-'));
mkdirSync(OUT, { recursive: true });
const parts = SAID.map((words, i) => {
  const raw = join(sounds, `${i}-raw.wav`);
  const out = join(sounds, `${i}.wav`);
  execFileSync('flite', ['-voice', 'slt', '-t', words, raw]);
  execFileSync('sox', ['-v', '0.9', raw, '-r', '48000', '-c', '1', out, 'pad', '0', String(GAP_S)]);
  return out;
});
const wav = join(sounds, 'evening.wav');
execFileSync('sox', [...parts, wav, 'pad', '6', '20']);
const lengthS = Number(execFileSync('soxi', ['-D', wav], { encoding: 'utf8' }));

const server = await serve(dataFolder());
const browser = await launch([
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-audio-capture=${wav}%noloop`,
]);
const wrong: string[] = [];
try {
  const context = await browser.newContext({
    timezoneId: 'Europe/London',
    locale: 'en-GB',
    permissions: ['microphone'],
  });
  const page = await context.newPage();
  const complaint = complaints(page);
  await fetch(`${server.address}/api/settings`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ listening: 'always', spokenReplies: false }),
  });
  await page.goto(server.address);
  await page.getByRole('link', { name: 'Make a quilt' }).click();
  await page.getByLabel('Name of the quilt').fill('The ferry house quilt');
  await page.getByLabel('Owner').first().fill('Hesper Lunt');
  await page.locator('#rows').fill('5');
  await page.locator('#blocks').fill('4');
  await page.getByRole('button', { name: 'Make it' }).click();
  await page.getByText('Not listening').waitFor();
  await page.locator('.ear p.notice').waitFor({ state: 'detached', timeout: 60_000 });
  await page.getByRole('button', { name: 'Begin to listen' }).click();
  process.stdout.write(`listening for ${Math.round(lengthS)} s to ${SAID.length} sentences\n`);
  await pause(90_000);
  await page.screenshot({ path: `${OUT}/frame.png` });
  await pause((lengthS - 90) * 1000);
  await page.screenshot({ path: `${OUT}/frame-end.png` });
  await page.getByRole('button', { name: 'Stop listening' }).click();

  const id = /#\/q\/([^/]+)/.exec(page.url())![1]!;
  const all = (await (await fetch(`${server.address}/api/quilts/${id}/export/json`)).json()) as QuiltExport;
  for (const { note, reading } of all.notes)
    process.stdout.write(
      `\n${note.at.slice(11, 19)}  ${note.text}\n   ${reading?.act}: ${reading?.reply ?? ''}\n`,
    );
  process.stdout.write(
    `\n${all.notes.length} notes of ${SAID.length} sentences, ${all.entries.length} entries\n`,
  );
  if (all.notes.length < SAID.length) wrong.push(`${SAID.length - all.notes.length} sentences gave no note`);
  for (const name of ['Days', 'Quilt', 'Estimate', 'Record'] as const) {
    await page.getByRole('link', { name, exact: true }).click();
    await pause(2000);
    await page.screenshot({ path: `${OUT}/${name.toLowerCase()}.png`, fullPage: true });
  }
  const pdf = await fetch(`${server.address}/api/quilts/${id}/export/pdf?document=treatment`);
  writeFileSync(`${OUT}/record-of-treatment.pdf`, Buffer.from(await pdf.arrayBuffer()));
  if (!pdf.ok) wrong.push(`the record could not be taken: ${pdf.status}`);
  wrong.push(...complaint);
} finally {
  await browser.close();
  await server.stop();
  removeFolder(server.folder);
  rmSync(sounds, { recursive: true, force: true });
}
for (const line of wrong) process.stdout.write(`fault: ${line}\n`);
process.exit(wrong.length > 0 ? 1 : 0);
