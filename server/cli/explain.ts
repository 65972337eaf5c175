import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

/**
 * `npm run explain -- "row three block two, re-sewed the seam"`: prints how notes were read, one
 * argument a note, in one conversation. `--at 2026-03-14T10:30:00-05:00` sets the moment of the first,
 * `--grid 7x5` the quilt.
 */
const words = process.argv.slice(2);
const at = take('--at') ?? new Date().toISOString().replace(/\.\d+Z$/, '+00:00');
const grid = /^(\d+)x(\d+)$/.exec(take('--grid') ?? '7x5');
if (words.length === 0 || !grid) {
  console.error(
    'Expected one or more notes: npm run explain -- "row three block two, re-sewed the seam" [--grid 7x5]',
  );
  process.exit(2);
}
const quilt: QuiltGrid = { rows: Number(grid[1]), blocks: Number(grid[2]) };

let conversation = SILENCE;
for (const text of words) {
  const answer = readNote(text, { at, quilt, conversation });
  conversation = answer.conversation;
  const { reading } = answer;
  print(`“${text}”`);
  for (const slip of reading.slips ?? []) {
    print(`  slip     “${slip.heard}” read as “${slip.read}” (${slip.rule})`);
  }
  print(
    `  act      ${reading.act}${reading.query ? ` ${reading.query} ${JSON.stringify(reading.arguments ?? {})}` : ''}`,
  );
  for (const { entry, origins, reason } of reading.entries) {
    print(`  ${entry.kind}`);
    const slots = Object.entries(entry).filter(([slot]) => slot !== 'kind');
    for (const [slot, value] of slots)
      print(`    ${slot.padEnd(10)} ${JSON.stringify(value)}  ${origin(slot, origins, text)}`);
    if (origins.entry) print(`    ${'(clause)'.padEnd(10)} ${origin('entry', origins, text)}`);
    if (reason) print(`    ${'because'.padEnd(10)} “${reason}”`);
  }
  if (reading.ask) print(`  asks     ${reading.ask.slot}: ${reading.ask.question}`);
  print(`  says     ${reading.reply}\n`);
}

function take(name: string): string | undefined {
  const at = words.indexOf(name);
  return at === -1 ? undefined : words.splice(at, 2)[1];
}

function origin(
  slot: string,
  origins: Record<
    string,
    { rule: string; how: string; from: number; to: number; words?: string | undefined }
  >,
  text: string,
): string {
  const found = origins[slot];
  if (!found) return '';
  return `${found.how} by ${found.rule}${found.to > found.from ? ` from “${found.words ?? text.slice(found.from, found.to)}”` : ''}`;
}

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}
