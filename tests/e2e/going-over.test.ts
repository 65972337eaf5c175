import { describe, expect, it } from 'vitest';
import { axeFaults, hasChromium } from './browser.ts';
import { workroom } from './workroom.ts';

describe.skipIf(!hasChromium())('a day gone over, and its hours', () => {
  const room = workroom();
  const { open, events } = room;

  const post = async (path: string, json: unknown): Promise<{ id: string }> =>
    (await (
      await fetch(`${room.server.address}/api/quilts${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(json),
      })
    ).json()) as { id: string };

  it('splits an entry by key and takes the split back as one, splits it again and joins it', async () => {
    const { context, page, wrong } = await open('days/2026-03-07');
    const both = page.locator('.line', { hasText: 'Row 1, blocks 1 and 2' });
    await both.first().waitFor();
    await both.first().focus();
    await page.keyboard.press('s');
    const first = page.locator('.line', { hasText: /Row 1, block 1(?!\d)/ }).first();
    const second = page.locator('.line', { hasText: /Row 1, block 2(?!\d)/ }).first();
    await first.waitFor();
    await second.waitFor();
    expect(await both.count()).toBe(0);
    await page.keyboard.press('u');
    await both.first().waitFor();
    await both.first().focus();
    await page.keyboard.press('s');
    await first.waitFor();
    // a split comes as two changes, and without the second there is nothing to join
    await second.waitFor();
    await first.focus();
    await page.keyboard.press('n');
    await both.first().waitFor();
    await both.first().focus();
    await page.keyboard.press('n');
    await page.getByText('Entries are joined where they say the same of different places').waitFor();
    expect(wrong).toEqual([]);
    await context.close();
  });

  it('cuts a stretch in two from the keyboard, joins it, and takes each back as one change', async () => {
    const { context, page, wrong } = await open('days');
    const bars = page.locator('.bar[aria-label^="survey"]');
    await bars.first().waitFor();
    const count = await bars.count();
    const whole = await bars.first().getAttribute('aria-label');
    const cut = async () => {
      await bars.first().focus();
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Cut in two' }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => bars.count()).toBe(count + 1);
    };
    await cut();
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => bars.count()).toBe(count);
    await expect.poll(() => bars.first().getAttribute('aria-label')).toBe(whole);
    await cut();
    await bars.first().focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Join with the next' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => bars.count()).toBe(count);
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => bars.count()).toBe(count + 1);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it('drags a stretch by finger', async () => {
    const { context, page } = await open('days', { touch: true });
    const bar = page.locator('.bar[aria-label^="survey"]').last();
    await bar.waitFor();
    await bar.scrollIntoViewIfNeeded();
    const before = await bar.getAttribute('aria-label');
    const box = (await bar.locator('rect').first().boundingBox())!;
    const finger = await context.newCDPSession(page);
    const at = (by: number) => [{ x: box.x + box.width / 2 + by, y: box.y + box.height / 2 }];
    await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
    for (const by of [10, 30, 60])
      await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(by) });
    await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(() => bar.getAttribute('aria-label')).not.toBe(before);
    expect((await events()).at(-1)?.event.type).toBe('span-set');
    await context.close();
  });

  it('opens each figure of the hours to the notes behind it', async () => {
    const { context, page } = await open('days');
    await page.locator('.by-task .figure-opens').first().click();
    await page.locator('.by-task .behind-figure').getByRole('link').first().waitFor();
    await page.getByText('By week and by place').click();
    await page.locator('.two-tables .figure-opens').first().click();
    await page.locator('.two-tables .behind-figure a').first().waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it('asks next morning about work that nobody stopped, and takes one key for an answer', async () => {
    const { id } = await post('', { name: 'Night work', rows: 3, blocks: 3, zone: 'UTC' });
    for (const [clientId, at, text] of [
      ['a', '2026-03-10T19:00:00Z', 'Starting on the binding.'],
      ['b', '2026-03-10T20:30:00Z', 'Row one block two has a stain.'],
      ['c', '2026-03-11T09:00:00Z', 'Row two block two has a stain.'],
    ])
      await post(`/${id}/commands`, { type: 'take-note', clientId, at, text });
    const { context, page, wrong } = await open('frame', { quilt: id });
    await page.getByText(/binding begun on Tue,? 10 Mar at 19:00 was not stopped/).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page
      .locator('h1')
      .first()
      .click({ force: true, noWaitAfter: true })
      .catch(() => undefined);
    await page.keyboard.press('Escape');
    await page.keyboard.press('s');
    await page.getByText(/was not stopped/).waitFor({ state: 'detached' });
    expect((await events(id)).at(-1)?.event).toMatchObject({
      type: 'span-set',
      start: '2026-03-10T19:00',
      end: '2026-03-10T20:30',
      task: 'binding',
    });
    expect(wrong).toEqual([]);
    await context.close();
  });

  it('a change that changes nothing leaves nothing to take back', async () => {
    const { context, page } = await open('days/2026-03-07');
    const line = page.locator('.line').first();
    await line.waitFor();
    await line.focus();
    await page.keyboard.press('Enter');
    await page.locator('.line.confirmed').first().waitFor();
    await page.getByRole('button', { name: 'Fine' }).click();
    await page.locator('.line.confirmed').first().focus();
    await page.keyboard.press('Enter');
    await page.waitForTimeout(400);
    expect(await page.getByRole('button', { name: 'Take back' }).count()).toBe(0);
    await context.close();
  });
});
