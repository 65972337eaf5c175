import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { SCENARIO_ID } from '../client/scenario.ts';
import { hasChromium } from './browser.ts';
import { workroom } from './workroom.ts';

const DAY = 'days/2026-03-07';
const MEGABYTE = 1024 * 1024;

describe.skipIf(!hasChromium())('what can go wrong is said in a clear word, and nothing is lost', () => {
  const room = workroom();
  const { open, events } = room;
  const folder = mkdtempSync(join(tmpdir(), 'quiltside-bad-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const command = (body: unknown) =>
    fetch(`${room.server.address}/api/quilts/${SCENARIO_ID}/commands`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  /** Opens the first entry of the day that is about places, and gives its id. */
  const edit = async (page: Page): Promise<string> => {
    const line = page.locator('.line', { has: page.getByRole('button', { name: 'Move' }) }).first();
    await line.waitFor();
    await line.getByRole('button', { name: 'Move' }).click();
    await page.getByRole('dialog').waitFor();
    return (await line.getAttribute('data-entry'))!;
  };

  it('two windows put one entry right: the second is told, sees what the first made of it, and chooses', async () => {
    const one = await open(DAY);
    const two = await open(DAY);
    const id = await edit(one.page);
    expect(await edit(two.page)).toBe(id);
    await two.page.locator('#edit-places').fill('5-1');
    await one.page.locator('#edit-places').fill('4-2');
    await one.page.getByRole('button', { name: 'Keep it so' }).click();
    await one.page.getByRole('dialog').waitFor({ state: 'detached' });
    await two.page
      .getByText(/Put right in another window meanwhile\. It now says: .*row 4, block 2/i)
      .waitFor();
    expect(await two.page.locator('#edit-places').inputValue()).toBe('5-1');
    await two.page.keyboard.press('Enter');
    await two.page.getByRole('button', { name: 'Put mine over it' }).click();
    await two.page.getByRole('dialog').waitFor({ state: 'detached' });
    await one.page.locator(`[data-entry="${id}"]`, { hasText: 'Row 5, block 1' }).waitFor();
    const corrected = (await events()).filter(({ event }) => event.type === 'entry-corrected');
    expect(
      corrected.slice(-2).map(({ event }) => (event as { entry: { places?: string[] } }).entry.places),
    ).toEqual([['4-2'], ['5-1']]);
    for (const { context } of [one, two]) await context.close();
  });

  it('an entry taken out in another window while it is put right here can be kept as one of its own', async () => {
    const { context, page } = await open(DAY);
    const id = await edit(page);
    await page.locator('#edit-places').fill('5-3');
    expect((await command({ type: 'remove-entry', entryId: id })).status).toBe(200);
    await page.getByText('This entry was taken out in another window').waitFor();
    await page.getByRole('button', { name: 'Keep it as a new entry' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    const added = (await events()).findLast(({ event }) => event.type === 'entry-added')?.event;
    expect(added).toMatchObject({ entry: { places: ['5-3'] } });
    await context.close();
  });

  it('a photograph of a hundred megabytes is taken and made smaller; a larger one is told its size', async () => {
    const { context, page } = await open('quilt/3-3');
    const picture = await sharp({ create: { width: 5000, height: 4000, channels: 3, background: '#264' } })
      .jpeg()
      .toBuffer();
    const sized = (name: string, bytes: number): string => {
      const path = join(folder, name);
      // What stands after the end of a JPEG is passed over by whoever shows it.
      writeFileSync(path, Buffer.concat([picture, Buffer.alloc(bytes - picture.length)]));
      return path;
    };
    const choose = page.getByLabel('Choose photographs');
    await choose.waitFor();
    await choose.setInputFiles(sized('large.jpg', 100 * MEGABYTE));
    await page.locator('.photo-list li').first().waitFor({ timeout: 60_000 });
    const photo = (await events()).flatMap(({ event }) =>
      event.type === 'photo-added' ? [event.photo] : [],
    )[0]!;
    const kept = await (
      await fetch(`${room.server.address}/api/quilts/${SCENARIO_ID}/photos/${photo.file}`)
    ).arrayBuffer();
    expect(kept.byteLength).toBeLessThan(10 * MEGABYTE);
    expect(await sharp(Buffer.from(kept)).metadata()).toMatchObject({ width: 4096 });
    await choose.setInputFiles(sized('larger.jpg', 104 * MEGABYTE));
    await page.getByText('larger.jpg: It has 104 MB; up to 100 MB can be taken').waitFor();
    expect(await page.locator('.photo-list li').count()).toBe(1);
    await context.close();
  });

  it('a HEIC that is called .jpg is known for what it is', async () => {
    const { context, page } = await open('quilt/3-4');
    const choose = page.getByLabel('Choose photographs');
    await choose.waitFor();
    await choose.setInputFiles({
      name: 'holiday.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('\u0000\u0000\u0000\u0018ftypheic\u0000\u0000\u0000\u0000mif1heic', 'latin1'),
    });
    await page.getByText(/holiday\.jpg: This browser can’t show HEIC photographs/).waitFor();
    await context.close();
  });

  it('three tasks told for the same hours are counted once, and it is said which has them', async () => {
    const told = await command({
      type: 'take-note',
      clientId: 'three-tasks',
      at: '2026-03-12T13:00:00Z',
      text: 'Mending from nine to eleven, tying from ten to twelve and binding from half ten to half eleven.',
    });
    expect(told.status).toBe(200);
    const { context, page } = await open('days/2026-03-12');
    await page
      .getByText('10:30 to 11:30 was told for tying and for binding: 1 h, counted once, as binding.')
      .waitFor();
    expect(await page.locator('.day-sum').textContent()).toContain('3 h');
    await page.getByRole('link', { name: 'All days' }).click();
    await page.getByText(/Told twice, counted once \(\d+\)/).click();
    await page.getByText('10:00 to 11:00 was told for mending and for tying').waitFor();
    await context.close();
  });

  it('a drag beyond midnight is held there, and says so; so is a stretch that lies over it', async () => {
    const { context, page } = await open('days');
    const bar = page.locator('.bar[aria-label^="survey"]').first();
    await bar.waitFor();
    const before = await bar.getAttribute('aria-label');
    const drag = async (which: typeof bar, by: number) => {
      await which.scrollIntoViewIfNeeded();
      const box = (await which.locator('rect').first().boundingBox())!;
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2 + by, box.y + box.height / 2, { steps: 4 });
      await page.mouse.up();
    };
    await drag(bar, 4000);
    await page.getByText('Held at midnight').waitFor();
    expect(await bar.getAttribute('aria-label')).toBe(before);
    expect(
      (await command({ type: 'set-span', start: '2026-03-13T23:00', end: '2026-03-14T01:00', task: 'tying' }))
        .status,
    ).toBe(200);
    const night = page.locator('.bar[aria-label^="tying, 23:00"]').first();
    await night.waitFor();
    await drag(night, 40);
    await page.getByText('A stretch over midnight is not dragged').waitFor();
    await context.close();
  });

  it('a day that there is not, and a stretch that ends before it starts, are asked about on the bench screen', async () => {
    const { context, page } = await open('frame');
    const write = async (text: string) => {
      await page.getByLabel(/^(A note|Your answer)/).fill(text);
      await page.keyboard.press('Enter');
      await page.locator('.heard-words', { hasText: text.slice(0, 40) }).waitFor();
    };
    await page.getByText('Where we were').waitFor();
    await write('On the thirtieth of February I mended from nine to ten.');
    await page.getByText('There is no 30 February. Which day do you mean?').first().waitFor();
    await write('Tying from 14:00 to 13:00.');
    await page
      .getByText(/From 14:00 to 13:00 ends before it starts/)
      .first()
      .waitFor();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/days/2026-02-30`);
    await page.getByText('There is no such day as “2026-02-30”').waitFor();
    await context.close();
  });
});
