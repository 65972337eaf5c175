import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SCENARIO_ID, scenarioEvents } from '../client/scenario.ts';
import { axeFaults, complaints, hasChromium, launch } from './browser.ts';
import { dataFolder, removeFolder, type Served, serve } from './serve.ts';

const hasFlite =
  spawnSync('flite', ['--version']).error === undefined &&
  spawnSync('sox', ['--version']).error === undefined;
if (!hasFlite) console.log('skipped: no flite and sox here to make speech with (apt-get install flite sox)');

/** Says the words by a synthetic voice into a WAV, with silence before and after. */
function speech(
  folder: string,
  name: string,
  words: string,
  options: { before: number; after: number; rate?: number; times?: number },
): string {
  const raw = join(folder, `${name}-raw.wav`);
  const out = join(folder, `${name}.wav`);
  execFileSync('flite', ['-voice', 'slt', '-t', words, raw]);
  execFileSync('sox', [
    '-v',
    '0.9',
    raw,
    '-r',
    String(options.rate ?? 48_000),
    '-b',
    '16',
    '-c',
    '1',
    out,
    'pad',
    String(options.before),
    String(options.after),
    'repeat',
    String((options.times ?? 1) - 1),
  ]);
  return out;
}

describe.skipIf(!hasChromium() || !hasFlite)('by voice', () => {
  let server: Served;
  let sounds: string;
  const browsers: Browser[] = [];

  beforeAll(async () => {
    sounds = mkdtempSync(join(tmpdir(), 'quiltside-sounds-'));
    server = await serve(dataFolder({ [SCENARIO_ID]: scenarioEvents() }));
  });
  afterAll(async () => {
    for (const browser of browsers) await browser.close();
    await server?.stop();
    if (server) removeFolder(server.folder);
    if (sounds) rmSync(sounds, { recursive: true, force: true });
  });

  const openWith = async (wav: string | null): Promise<Page> => {
    const browser = await launch([
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      ...(wav ? [`--use-file-for-fake-audio-capture=${wav}%noloop`] : []),
    ]);
    browsers.push(browser);
    const context = await browser.newContext({ locale: 'en-GB', permissions: ['microphone'] });
    const page = await context.newPage();
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.getByText('Not listening').waitFor();
    return page;
  };
  const listenAs = (way: 'always' | 'held') =>
    fetch(`${server.address}/api/settings`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ listening: way, spokenReplies: false }),
    });
  const ready = (page: Page) => page.locator('.ear p.notice').waitFor({ state: 'detached', timeout: 60_000 });

  it('writes down what is said into the microphone, as the page shows it', async () => {
    await listenAs('always');
    const page = await openWith(
      speech(sounds, 'note', 'Row two, block one has a split seam.', { before: 2, after: 12 }),
    );
    const wrong = complaints(page);
    await ready(page);
    await page.getByRole('button', { name: 'Begin to listen' }).click();
    await page.locator('.frame.open').waitFor();
    expect(await page.locator('.ear-state').textContent()).toBe('Listening');
    await page.screenshot({ path: 'tests/.out/frame-listening.png' });
    expect(await axeFaults(page)).toEqual([]);
    await page.locator('.became', { hasText: 'Split seam' }).waitFor({ timeout: 60_000 });
    expect(await page.locator('.became').textContent()).toContain('Row 2, block 1');
    await page.getByRole('button', { name: 'Stop listening' }).click();
    await page.getByText('Not listening').waitFor();
    // The sound is kept, and played from the block's story.
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/quilt/2-1`);
    const play = page.locator('.story .play').last();
    await play.waitFor();
    const sound = page.waitForResponse((response) => response.url().includes('/audio/'));
    await play.click();
    expect((await sound).status()).toBeLessThan(300);
    // Its words stand along the foot of the page while they are said.
    await page.locator('.caption .now').waitFor();
    expect(await page.locator('.caption').textContent()).toMatch(/split seam/i);
    await page.screenshot({ path: 'tests/.out/caption.png' });
    expect(wrong).toEqual([]);
  });

  it('stops listening by her word, says so across the room, and hears her call', async () => {
    await listenAs('always');
    const said = [
      ['stop', 'Stop listening till I say so.', 2, 9],
      ['talk', 'Row one, block one is torn.', 0, 6],
      ['call', 'Thimble on. Row three, block two has a split seam.', 0, 20],
    ].map(([name, words, before, after]) =>
      speech(sounds, String(name), String(words), { before: Number(before), after: Number(after) }),
    );
    const wav = join(sounds, 'pause.wav');
    execFileSync('sox', [...said, wav]);
    const page = await openWith(wav);
    const wrong = complaints(page);
    await ready(page);
    const latest = page.locator('.heard-words');
    await page.getByRole('button', { name: 'Begin to listen' }).click();
    await page.locator('.frame.open').waitFor();
    await page.locator('.frame.asleep').waitFor({ timeout: 60_000 });
    expect(await page.locator('.ear-state').textContent()).toBe('Not listening');
    expect(await page.locator('.ear-how').textContent()).toContain('thimble on');
    expect(await axeFaults(page)).toEqual([]);
    await page.screenshot({ path: 'tests/.out/frame-paused.png' });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.screenshot({ path: 'tests/.out/frame-paused-phone.png' });
    await page.locator('.became', { hasText: 'Split seam' }).waitFor({ timeout: 90_000 });
    expect(await page.locator('.became').textContent()).toContain('Row 3, block 2');
    expect(await page.locator('.ear-state').textContent()).toBe('Listening');
    expect(await latest.first().textContent()).not.toMatch(/thimble/i);
    const log = await (await fetch(`${server.address}/api/quilts/${SCENARIO_ID}/events`)).text();
    // her words are kept, with capitals or without, as the recogniser writes them
    expect(log).toMatch(/till i say so/i);
    expect(log).not.toMatch(/block one is torn/i);
    expect(wrong).toEqual([]);
  });

  it('listens while the key is held, and no longer', async () => {
    await listenAs('held');
    const page = await openWith(null);
    await ready(page);
    await page.locator('body').click({ position: { x: 400, y: 5 } });
    await page.keyboard.down('Space');
    await page.locator('.frame.open').waitFor();
    await page.keyboard.up('Space');
    await page.locator('.frame.ready').waitFor();
    expect(await page.locator('.ear-state').textContent()).toBe('Not listening');
    // In the note line the space bar writes a space.
    await page.getByLabel(/^(A note|Your answer)/).focus();
    await page.keyboard.type('two words');
    expect(await page.getByLabel(/^(A note|Your answer)/).inputValue()).toBe('two words');
    expect(await page.locator('.frame.open').count()).toBe(0);
  });

  it('held to talk, her word for a pause is shown for as long, and her hand ends it', async () => {
    await listenAs('held');
    const page = await openWith(
      speech(sounds, 'held-pause', 'Not listening for ten minutes.', { before: 1, after: 30 }),
    );
    const wrong = complaints(page);
    await ready(page);
    await page.locator('body').click({ position: { x: 400, y: 5 } });
    await page.keyboard.down('Space');
    await page.locator('.frame.open').waitFor();
    await page.waitForTimeout(5_000);
    await page.keyboard.up('Space');
    await page.locator('.frame.asleep').waitFor({ timeout: 60_000 });
    expect(await page.locator('.ear-state').textContent()).toBe('Not listening');
    expect(await page.locator('.ear-how').textContent()).toMatch(
      /ends by itself at \d+:\d\d.*Hold .* and talk/,
    );
    expect(await axeFaults(page)).toEqual([]);
    await page.screenshot({ path: 'tests/.out/frame-paused-held.png' });
    await page.keyboard.down('Space');
    await page.locator('.frame.open').waitFor();
    expect(await page.locator('.ear-state').textContent()).toBe('Listening');
    await page.keyboard.up('Space');
    await page.locator('.frame.ready').waitFor();
    expect(wrong).toEqual([]);
  });

  it('says in words that the browser keeps the microphone shut', async () => {
    const browser = await launch();
    browsers.push(browser);
    const page = await (await browser.newContext({ permissions: [] })).newPage();
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.getByText('Not listening').waitFor();
    await page.getByRole('button', { name: /Hold to talk/ }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toMatch(/microphone/i);
    expect(await page.locator('.ear-state').textContent()).toBe('Not listening');
  });

  it('hears a dropped recording at its true time, and breaks another off half way', async () => {
    const page = await openWith(null);
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/recordings`);
    const short = speech(sounds, 'short', 'Row four, block two, there is a hole.', {
      before: 0.5,
      after: 1,
      rate: 16_000,
    });
    const long = speech(sounds, 'long', 'Row three, block two is faded. The backing is sound.', {
      before: 1,
      after: 2,
      rate: 16_000,
      times: 60,
    });
    await page.locator('#recording-file').setInputFiles(short);
    const asks = page.getByLabel('It begins at');
    await asks.waitFor({ timeout: 5000 }).catch(() => undefined);
    if (await asks.count()) {
      await asks.fill('2026-03-08T09:30');
      await page.getByRole('button', { name: 'Send it so' }).click();
    }
    await page.locator('.job.done', { hasText: 'short.wav' }).waitFor({ timeout: 90_000 });
    await page.locator('#recording-file').setInputFiles(long);
    await asks.waitFor({ timeout: 5000 }).catch(() => undefined);
    if (await asks.count()) {
      await asks.fill('2026-03-08T11:00');
      await page.getByRole('button', { name: 'Send it so' }).click();
    }
    const job = page.locator('.job', { hasText: 'long.wav' });
    await job.getByText(/\d+ notes?/).waitFor({ timeout: 120_000 });
    expect(await axeFaults(page)).toEqual([]);
    await page.screenshot({ path: 'tests/.out/recordings-working.png', fullPage: true });
    await job.getByRole('button', { name: /^Pause/ }).click();
    await page.locator('.job.paused', { hasText: 'long.wav' }).waitFor();
    await job.getByRole('button', { name: /^Break off/ }).click();
    await page.locator('.job.cancelled', { hasText: 'long.wav' }).waitFor();
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/days/2026-03-08`);
    await page.locator('.line', { hasText: 'Hole' }).first().waitFor();
    expect(await page.locator('.line', { hasText: 'Hole' }).first().textContent()).toContain('09:30');
    expect(await page.locator('.line', { hasText: /fading/i }).count()).toBeGreaterThan(0);
    expect(await page.locator('.line', { hasText: /fading/i }).count()).toBeLessThan(60);
  });

  it('refuses in clear words what is no recording', async () => {
    const page = await openWith(null);
    await page.goto(`${server.address}/#/q/${SCENARIO_ID}/recordings`);
    await page.locator('#recording-file').setInputFiles({
      name: 'letter.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from('Dear Mrs Amberley, this is a letter.'),
    });
    await page.locator('.job .fault').waitFor();
    expect(await page.locator('.job .fault').textContent()).toContain('WAV, FLAC, MP3');
  });
});
