import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { NumberedEvent } from '../../shared/event.ts';
import { SCENARIO_ID, scenarioEvents } from '../client/scenario.ts';
import { complaints, launch } from './browser.ts';
import { dataFolder, removeFolder, type Served, serve } from './serve.ts';

type Opened = { context: BrowserContext; page: Page; wrong: string[] };

/** What the tests of one `describe` share. `server` and `browser` stand from its first test on. */
export type Workroom = {
  readonly server: Served;
  readonly browser: Browser;
  /** A window of its own on a quilt's page, 1280 px wide, with what that page complains of. */
  open(address: string, options?: { quilt?: string; touch?: boolean }): Promise<Opened>;
  /** Starts the server again, once it was stopped, on the same folder and port. */
  serveAgain(): Promise<void>;
  /** All that a quilt's journal holds. */
  events(quilt?: string): Promise<NumberedEvent[]>;
};

type Journals = Record<string, NumberedEvent[]>;

/**
 * The real server on a data folder of its own and a real Chromium, started before the tests of the `describe` it is
 * called in and gone after them. Journals: the scenario's, where none are given.
 */
export function workroom(
  journals: () => Journals = () => ({ [SCENARIO_ID]: scenarioEvents() }),
  flags: readonly string[] = [],
): Workroom {
  let server: Served;
  let browser: Browser;

  beforeAll(async () => {
    server = await serve(dataFolder(journals()), 0, flags);
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    if (server) removeFolder(server.folder);
  });

  return {
    get server() {
      return server;
    },
    get browser() {
      return browser;
    },
    async open(address, { quilt = SCENARIO_ID, touch = false } = {}) {
      const context = await browser.newContext({
        viewport: { width: 1280, height: 900 },
        locale: 'en-GB',
        reducedMotion: 'reduce',
        hasTouch: touch,
      });
      const page = await context.newPage();
      const wrong = complaints(page);
      await page.goto(`${server.address}/#/q/${quilt}/${address}`);
      return { context, page, wrong };
    },
    async serveAgain() {
      server = await serve(server.folder, server.port, flags);
    },
    async events(quilt = SCENARIO_ID) {
      const answer = await fetch(`${server.address}/api/quilts/${quilt}/events`);
      return ((await answer.json()) as { events: NumberedEvent[] }).events;
    },
  };
}

/** Writes a note into the page's field and sends it by key. */
export async function writeNote(page: Page, text: string): Promise<void> {
  await page.getByLabel(/^(A note|Your answer)/).fill(text);
  await page.keyboard.press('Enter');
}

/** The same, and waits until the page says it is on disk. */
export async function writeNoteToDisk(page: Page, text: string): Promise<void> {
  await writeNote(page, text);
  await page.locator('.heard-words', { hasText: text.slice(0, 40) }).waitFor();
  await page.locator('.heard .notice', { hasText: 'Being written down' }).waitFor({ state: 'detached' });
}
