import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';

const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];
const EXECUTABLE = PLACES.find((path) => path && existsSync(path));

/** Whether there is a Chromium to test with; says so once where there is none. */
export function hasChromium(): boolean {
  if (!EXECUTABLE) console.log('skipped: no Chromium here (apt-get install chromium, or set CHROMIUM)');
  return EXECUTABLE !== undefined;
}

/** A real Chromium; `args` are added to what keeps it quiet and off the net. */
export function launch(args: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: EXECUTABLE!,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...args,
    ],
  });
}

const isForeign = (address: string): boolean => {
  const { protocol, hostname } = new URL(address);
  return /^(https?|wss?):$/.test(protocol) && !/^(127\.\d+\.\d+\.\d+|localhost|\[::1\])$/.test(hostname);
};

/** Collects what the page complains of: errors thrown, errors logged, breaches of its own policy; and whatever it asks of another machine. */
export function complaints(page: Page): string[] {
  const list: string[] = [];
  page.on('pageerror', (error) => list.push(`thrown: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') list.push(`logged: ${message.text()}`);
  });
  page.on('request', (request) => {
    if (isForeign(request.url())) list.push(`asked of another machine: ${request.url()}`);
  });
  page.on('websocket', (socket) => {
    if (isForeign(socket.url())) list.push(`asked of another machine: ${socket.url()}`);
  });
  return list;
}

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds against WCAG 2.2 A and AA and its best practices, as lines that name the place. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: {
        run(
          context: Document,
          options: object,
        ): Promise<{
          violations: { id: string; help: string; nodes: { target: unknown[]; failureSummary: string }[] }[];
        }>;
      };
    };
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.map(
      ({ id, help, nodes }) =>
        `${id} (${help}), ${nodes.length} times, first ${nodes[0]!.target.join(' ')}: ${nodes[0]!.failureSummary.replace(/\s+/g, ' ')}`,
    );
  });
}
