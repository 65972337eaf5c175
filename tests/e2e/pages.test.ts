import { mkdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { SCENARIO_ID, scenarioEvents } from '../client/scenario.ts';
import { axeFaults, complaints, hasChromium } from './browser.ts';
import { workroom } from './workroom.ts';

const OUT = 'tests/.out/pages';
const PAGES = [
  '',
  'new',
  ...[
    'frame',
    'quilt',
    'quilt/2-4',
    'days',
    'days/2026-03-07',
    'days/2026-03-02',
    'open',
    'estimate',
    'record/condition',
    'record/proposal',
    'record/treatment',
    'record/letter',
    'record/bill',
    'find',
    'recordings',
    'help',
    'settings',
  ].map((page) => `q/${SCENARIO_ID}/${page}`),
];

/** The tear that the scenario's survey found. */
function tear() {
  for (const { event } of scenarioEvents()) {
    if (event.type !== 'note-read') continue;
    const at = event.reading.entries.findIndex(
      ({ entry }) => entry.kind === 'condition' && entry.finding === 'tear',
    );
    if (at >= 0) return { entryId: event.reading.entryIds[at]!, entry: event.reading.entries[at]!.entry };
  }
  throw new Error('the scenario has no tear');
}

describe.skipIf(!hasChromium())('every page', () => {
  const room = workroom();
  beforeAll(() => mkdirSync(OUT, { recursive: true }));

  const open = async (width: number, scheme: 'light' | 'dark') => {
    const context = await room.browser.newContext({
      viewport: { width, height: width < 600 ? 844 : 900 },
      colorScheme: scheme,
      reducedMotion: 'reduce',
      locale: 'en-GB',
    });
    const page = await context.newPage();
    return { context, page, wrong: complaints(page) };
  };

  for (const [width, scheme] of [
    [1280, 'light'],
    [1280, 'dark'],
    [390, 'light'],
    [390, 'dark'],
  ] as const) {
    it(`is clean by axe-core, and complains of nothing, at ${width} px, ${scheme}`, async () => {
      const { context, page, wrong } = await open(width, scheme);
      const faults: Record<string, string[]> = {};
      for (const address of PAGES) {
        await page.goto(`${room.server.address}/#/${address}`);
        await page.locator('h1').first().waitFor();
        await page.evaluate(() => document.fonts.ready.then(() => undefined));
        await page.waitForTimeout(120);
        // As tall as the page, so that nothing lies under the bar at the foot of a phone's screen.
        const tall = await page.evaluate(() => document.documentElement.scrollHeight);
        await page.setViewportSize({ width, height: Math.max(844, tall) });
        const name = address.replace(`q/${SCENARIO_ID}/`, '').replaceAll('/', '-') || 'quilts';
        await page.screenshot({ path: `${OUT}/${name}-${width}-${scheme}.png`, fullPage: true });
        const found = await axeFaults(page);
        if (found.length) faults[name] = found;
        await page.setViewportSize({ width, height: 844 });
      }
      await context.close();
      expect(faults).toEqual({});
      expect(wrong).toEqual([]);
    });
  }

  it('can ask nothing of another machine, and runs no script but its own, whatever gets into it', async () => {
    const { context, page, wrong } = await open(1280, 'light');
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.locator('h1').first().waitFor();
    expect(wrong).toEqual([]);
    const got = await page.evaluate(async () => {
      const settled: string[] = [];
      const tries: Record<string, () => Promise<unknown>> = {
        fetch: () => fetch('http://192.0.2.1/'),
        beacon: async () => {
          if (!navigator.sendBeacon('http://192.0.2.1/', 'x')) throw new Error('refused');
        },
        socket: () =>
          new Promise((done, failed) => {
            const socket = new WebSocket('ws://192.0.2.1/');
            socket.onopen = done;
            socket.onerror = failed;
          }),
        picture: () =>
          new Promise((done, failed) => {
            const picture = new Image();
            picture.onload = done;
            picture.onerror = failed;
            picture.src = 'http://192.0.2.1/a.png';
          }),
        script: () =>
          new Promise((done, failed) => {
            const script = document.createElement('script');
            script.textContent = 'window.wasRun = true';
            document.head.append(script);
            if ((window as unknown as { wasRun?: boolean }).wasRun) done(undefined);
            else failed();
          }),
        words: async () => new Function('return 1')(),
      };
      for (const [name, one] of Object.entries(tries)) {
        await one().then(
          () => settled.push(name),
          () => undefined,
        );
      }
      return settled;
    });
    await context.close();
    // A beacon says only that it was put in the line; that it is stopped there is told by the policy.
    expect(got.filter((name) => name !== 'beacon')).toEqual([]);
    for (const way of ['connect-src', 'img-src', 'script-src'])
      expect(wrong.join('\n')).toMatch(
        new RegExp(`logged: .*Content Security Policy.*${way}|logged: .*${way}.*Content Security Policy`),
      );
    expect(wrong.filter((line) => line.startsWith('asked') && !line.includes('192.0.2.1'))).toEqual([]);
  });

  // 640 px is a page of 1280 px at 200 % zoom; 320 px is the reflow width of WCAG 2.2, 1.4.10.
  it.each([320, 640])('fits %i px without scrolling sideways', async (width) => {
    const { context, page } = await open(width, 'light');
    const wide: string[] = [];
    for (const address of PAGES) {
      await page.goto(`${room.server.address}/#/${address}`);
      await page.locator('h1').first().waitFor();
      await page.waitForTimeout(80);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (over > 0) wide.push(`${address}: ${over} px`);
    }
    await context.close();
    expect(wide).toEqual([]);
  });

  it('can be used in forced colours, where the state of a block still shows', async () => {
    const context = await room.browser.newContext({
      viewport: { width: 1280, height: 900 },
      forcedColors: 'active',
    });
    const page = await context.newPage();
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/quilt`);
    await page.locator('.quilt-map').waitFor();
    await page.screenshot({ path: `${OUT}/quilt-forced-colours.png` });
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/frame`);
    await page.getByText('Not listening').waitFor();
    await page.screenshot({ path: `${OUT}/frame-forced-colours.png` });
    expect(await axeFaults(page)).toEqual([]);
    await context.close();
  });

  it('gives every control room for a finger', async () => {
    const { context, page } = await open(390, 'light');
    const small: string[] = [];
    for (const address of PAGES) {
      await page.goto(`${room.server.address}/#/${address}`);
      await page.locator('h1').first().waitFor();
      const found = await page.evaluate(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            'button, summary, select, input:not([type=checkbox]):not([type=radio]), a.tab, a.way',
          ),
        ]
          .filter((element) => element.checkVisibility() && !element.closest('.sr-only'))
          .map((element) => ({
            name: element.textContent?.trim().slice(0, 30) || element.id,
            box: element.getBoundingClientRect(),
          }))
          .filter(({ box }) => box.width > 0 && (box.height < 43.5 || box.width < 43.5))
          .map(({ name, box }) => `${name}: ${Math.round(box.width)} × ${Math.round(box.height)}`),
      );
      small.push(...found.map((line) => `${address}: ${line}`));
    }
    await context.close();
    expect(small).toEqual([]);
  });

  it('goes round the quilt and the day by keys alone', async () => {
    const { context, page } = await open(1280, 'light');
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/quilt`);
    await page.locator('[data-place="1-1"]').focus();
    await page.keyboard.press('ArrowDown');
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-place'))).toBe('2-4');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Row 2, block 4' }).waitFor();

    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/days/2026-03-07`);
    await page.locator('.line').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.locator('.line.confirmed').first().waitFor();
    await page.keyboard.press('w');
    expect(await page.locator('.line').nth(1).locator('.provenance').isVisible()).toBe(true);
    expect(await page.locator('.line').nth(1).locator('mark').allTextContents()).toContain('by hand');
    await page.keyboard.press('m');
    await page.getByRole('dialog').waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('edit-places');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('1-3');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('.line', { hasText: 'Row 1, block 3' }).waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('u');
    await page.locator('.line', { hasText: 'Row 1, blocks 1 and 2' }).waitFor();
    await page.getByRole('button', { name: 'All good' }).click();
    await page.getByText('This day is gone over and closed').waitFor();
    expect(await page.locator('.line:not(.confirmed)').count()).toBe(0);
    await context.close();
  });

  it('moves a stretch of work by keys, and takes the move back', async () => {
    const { context, page } = await open(1280, 'light');
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/days`);
    const bar = page.locator('.bar[aria-label^="survey"]').first();
    await bar.waitFor();
    const before = await bar.getAttribute('aria-label');
    await bar.focus();
    await page.keyboard.press('ArrowRight');
    await expect
      .poll(() => page.locator('.bar[aria-label^="survey"]').first().getAttribute('aria-label'))
      .not.toBe(before);
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect
      .poll(() => page.locator('.bar[aria-label^="survey"]').first().getAttribute('aria-label'))
      .toBe(before);
    await context.close();
  });

  it('keeps her words in the record, and marks them when the log has changed under them', async () => {
    const { context, page } = await open(1280, 'light');
    await page.goto(`${room.server.address}/#/q/${SCENARIO_ID}/record/condition`);
    const passage = page.locator('.passage', { hasText: 'A tear in the third block of row 3' }).first();
    await passage.hover();
    await passage.getByRole('button', { name: /^Reword/ }).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('A long tear right across the third block.');
    await page.getByRole('button', { name: 'Keep these words' }).click();
    await page.locator('.own-words', { hasText: 'A long tear right across' }).waitFor();
    const { entryId, entry } = tear();
    const answer = await fetch(`${room.server.address}/api/quilts/${SCENARIO_ID}/commands`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ type: 'correct-entry', entryId, entry: { ...entry, places: ['3-3', '3-1'] } }),
    });
    expect(answer.status).toBe(200);
    await page.locator('.stale').first().waitFor();
    expect(await page.locator('.paper-sheet').textContent()).toContain('A long tear right across');
    await context.close();
  });
});
