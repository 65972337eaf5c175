import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { axeFaults, complaints, hasChromium } from './browser.ts';
import { workroom, writeNoteToDisk } from './workroom.ts';

describe.skipIf(!hasChromium())('a quilt that is no plain grid', () => {
  const room = workroom(() => ({}));
  let page: Page;
  let wrong: string[];

  beforeAll(async () => {
    page = await room.browser.newPage({ viewport: { width: 1100, height: 900 } });
    wrong = complaints(page);
  });

  const write = async (text: string) => {
    await page.getByRole('link', { name: 'Frame', exact: true }).click();
    await writeNoteToDisk(page, text);
  };

  it('is described where it is made, and drawn while it is', async () => {
    await page.goto(`${room.server.address}/#/new`);
    await page.getByLabel('Name of the quilt').fill('Star medallion');
    await page.getByLabel('Rows of blocks').fill('5');
    await page.getByLabel('Blocks in a row').fill('5');
    await page.getByText('The blocks are no plain grid').click();
    await page.getByLabel('Blocks that take more than one place').fill('2-2 to 4-9');
    await page.getByRole('button', { name: 'Make it' }).click();
    expect(await page.locator('#wide-fault').textContent()).toContain('larger than the quilt');
    await page.getByLabel('Blocks that take more than one place').fill('2-2 to 4-4');
    await page.getByRole('button', { name: 'Add a name' }).click();
    await page.getByLabel('Called').fill('the medallion');
    await page.getByLabel('Block or blocks').fill('2-2');
    await expect.poll(() => page.locator('.make-preview [data-place]').count()).toBe(17 + 12);
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Make it' }).click();
    await page.getByText('Not listening').waitFor();
  });

  it('is spoken of by its names, on the bench screen and on the map', async () => {
    await write('The medallion has a tear.');
    await expect.poll(() => page.locator('.became').textContent()).toContain('The medallion');
    await page.getByRole('link', { name: 'Quilt', exact: true }).click();
    const centre = page.locator('[data-place="2-2"]');
    expect(await centre.getAttribute('aria-label')).toContain('the medallion, row 2, block 2, found damaged');
    await page.locator('[data-place="1-1"]').focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown', 'Enter']) await page.keyboard.press(key);
    await page.getByRole('heading', { name: 'The medallion (2-2)' }).waitFor();
    expect(await axeFaults(page)).toEqual([]);
  });

  it('is changed in the settings; what was said of a block that is gone is kept, shown and asked about', async () => {
    await write('5-5 is stained.');
    await page.getByRole('link', { name: 'Settings', exact: true }).click();
    await page.getByLabel('Blocks in each row, from the top').fill('5, 5, 5, 5, 4');
    await page.getByRole('button', { name: 'Keep the shape and the names' }).click();
    await page.getByText('Shape changed').waitFor();
    await page.getByRole('link', { name: 'Quilt', exact: true }).click();
    await page.getByText('a block that this quilt has not got now').waitFor();
    await page.getByRole('button', { name: 'row 5, block 5' }).click();
    await page.getByLabel('It is block').fill('5-9');
    await page.getByRole('button', { name: 'Move it there' }).click();
    await page.getByText('There is no 5-9').waitFor();
    await page.getByLabel('It is block').fill('5-4');
    await page.getByRole('button', { name: 'Move it there' }).click();
    await page.getByRole('heading', { name: 'Row 5, block 4' }).waitFor();
    expect(await page.locator('.story-lines').textContent()).toContain('Stain');
    expect(await page.getByText('a block that this quilt has not got now').count()).toBe(0);
  });

  it('complained of nothing on the way', () => {
    expect(wrong).toEqual([]);
  });
});
