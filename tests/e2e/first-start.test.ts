import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { axeFaults, complaints, hasChromium } from './browser.ts';
import { workroom, writeNoteToDisk } from './workroom.ts';

describe.skipIf(!hasChromium())('from nothing to a record', () => {
  const room = workroom(() => ({}));
  let page: Page;
  let wrong: string[];

  beforeAll(async () => {
    const context = await room.browser.newContext({ timezoneId: 'Europe/London', locale: 'en-GB' });
    page = await context.newPage();
    wrong = complaints(page);
  });

  const write = (text: string) => writeNoteToDisk(page, text);

  it('says what is missing beside its field, and goes there', async () => {
    await page.goto(room.server.address);
    await page.getByText('Nothing in hand yet').waitFor();
    await page.getByRole('link', { name: 'Make a quilt' }).click();
    await page.getByRole('button', { name: 'Make it' }).click();
    expect(await page.getByLabel('Name of the quilt').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('#rows-fault').textContent()).toContain('whole number from 1 to 60');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('name');
    expect(await axeFaults(page)).toEqual([]);
  });

  it('makes a quilt by keyboard alone', async () => {
    await page.getByLabel('Name of the quilt').focus();
    await page.keyboard.type('Orchard Farm baskets');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Mrs Pellow');
    await page.keyboard.press('Tab');
    await page.keyboard.type('5');
    await page.keyboard.press('Tab');
    await page.keyboard.type('4');
    expect(await page.getByLabel('Time zone of the work').inputValue()).toBe('Europe/London');
    await page.keyboard.press('Enter');
    await page.getByText('Not listening').waitFor();
    expect(page.url()).toContain('/frame');
  });

  it('takes notes, says what they became, and keeps them through a reload', async () => {
    await write('Row two, block three has a split seam.');
    await expect
      .poll(() => page.locator('.became').textContent(), { timeout: 10_000 })
      .toContain('Split seam');
    expect(await page.locator('.became').textContent()).toContain('Row 2, block 3');
    await write('Re-sewed it by hand, twenty minutes.');
    await expect.poll(() => page.locator('.became').textContent()).toContain('20 min');
    await write('For row four, block one either net over it or a new piece, I am not sure.');
    await write('It is sixty by seventy-two inches.');
    // a length and no clock times: after midnight those would be of the day before
    await write('Three quarters of an hour mending.');
    await page.reload();
    await page.getByText('Where we were').waitFor();
    expect(await page.locator('.recent').textContent()).toContain('Re-sewn, by hand, 20 min');
  });

  it('shows them on the quilt, in the days, as open matters, in the record', async () => {
    await page.getByRole('link', { name: 'Quilt', exact: true }).click();
    const block = page.locator('[data-place="2-3"]');
    await block.waitFor();
    expect(await block.getAttribute('aria-label')).toContain('found: split seam; done: re-sewn');
    await page.getByRole('link', { name: 'Days', exact: true }).click();
    // within an hour of midnight these lengths reach back into the day before
    await page.getByText(/worked on (?:1 day|2 days)/).waitFor();
    expect(await page.locator('.by-task').textContent()).toMatch(/mending/i);
    await page.getByRole('link', { name: /^Open/ }).click();
    await page.getByText('Undecided: pins left in').waitFor();
    expect(await page.locator('.pin').first().textContent()).toContain('Row 4, block 1');
    await page.getByRole('link', { name: 'Record', exact: true }).click();
    await page.getByRole('heading', { name: 'Condition record before work' }).waitFor();
    expect(await page.locator('.paper-sheet').textContent()).toContain('Orchard Farm baskets');
  });

  it('shows the estimate, and takes a figure of hers', async () => {
    await page.getByRole('link', { name: 'Estimate', exact: true }).click();
    await page.getByRole('heading', { name: 'The estimate' }).waitFor();
    const reckon = page
      .locator('.part.idle', { hasText: 'Backing' })
      .getByRole('button', { name: 'Reckon it' });
    if (await reckon.count()) await reckon.click();
    const backing = page.getByRole('region', { name: 'Backing' });
    await backing.waitFor();
    // 60 × 72 with 4 inches over: 4½ yd with the joins running down, 5¾ the other way at 40 inches usable
    // (the rule of the trade, n panels less their seams, worked by hand; no handbook table, as excerpted).
    await expect.poll(() => backing.textContent()).toContain('4½ yd');
    expect(await backing.textContent()).toContain('5¾ yd');
    await backing.getByText('Figures to set').click();
    await backing.getByLabel('Over on each side (in)').fill('2');
    await backing.getByLabel('Over on each side (in)').press('Tab');
    await expect.poll(() => backing.textContent()).toContain('set by you');
    await expect.poll(() => backing.textContent()).toContain('64 × 76 in');
  });

  it('complained of nothing on the way', () => {
    expect(wrong).toEqual([]);
  });
});
