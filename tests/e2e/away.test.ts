import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { SCENARIO_ID } from '../client/scenario.ts';
import { hasChromium } from './browser.ts';
import { workroom, writeNote } from './workroom.ts';

describe.skipIf(!hasChromium())('while the server is away, and with two windows', () => {
  const room = workroom();

  const frame = async (): Promise<Page> => {
    const page = await (await room.browser.newContext({ locale: 'en-GB' })).newPage();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.getByText('Where we were').waitFor();
    return page;
  };
  const said = async (): Promise<string[]> => {
    return (await room.events()).flatMap(({ event }) =>
      event.type === 'note-taken' ? [event.note!.text] : [],
    );
  };

  it('shows in one window what is written in the other', async () => {
    const [one, two] = [await frame(), await frame()];
    await writeNote(one, 'Row five, block five has a stain.');
    await two.locator('.recent', { hasText: 'Row 5, block 5' }).waitFor();
    await one.context().close();
    await two.context().close();
  });

  it('keeps notes in the browser, through a reload of nothing, and sends them up in order, once', async () => {
    const page = await frame();
    const before = (await said()).length;
    await room.server.stop();
    await page.getByText('Server away').waitFor();
    const notes = [
      'Row five, block one has a hole.',
      'Row five, block two is thin.',
      'Row five, block three is torn.',
    ];
    for (const note of notes) await writeNote(page, note);
    await page.getByText(/3 notes wait in this browser/).waitFor();
    await room.serveAgain();
    await page.getByText('Written to this machine').waitFor({ timeout: 20_000 });
    await expect.poll(async () => (await said()).length, { timeout: 10_000 }).toBe(before + 3);
    expect((await said()).slice(-3)).toEqual(notes);
    await page.locator('.became', { hasText: 'Row 5, block 3' }).waitFor();
    await page.reload();
    await page.getByText('Where we were').waitFor();
    await page.waitForTimeout(500);
    expect((await said()).length).toBe(before + 3);
    await page.context().close();
  });

  it('keeps waiting notes when the window is closed before the server is back', async () => {
    const context = await room.browser.newContext({ locale: 'en-GB' });
    let page = await context.newPage();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.getByText('Where we were').waitFor();
    const before = (await said()).length;
    await room.server.stop();
    await page.getByText('Server away').waitFor();
    await writeNote(page, 'Row six, block one is puckered.');
    await page.getByText(/This note waits/).waitFor();
    await page.close();
    await room.serveAgain();
    page = await context.newPage();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/frame`);
    await expect
      .poll(async () => (await said()).slice(before), { timeout: 10_000 })
      .toEqual(['Row six, block one is puckered.']);
    await context.close();
  });

  it('says clearly what can not be changed while the server is away', async () => {
    const page = await frame();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/open`);
    await page.getByRole('heading', { name: 'Open matters' }).waitFor();
    await room.server.stop();
    await page.getByText('Server away').waitFor();
    await page.getByRole('button', { name: 'It is settled' }).first().click();
    await page.getByText(/so this was not changed/).waitFor();
    await room.serveAgain();
    await page.context().close();
  });
});
