import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { indexFabrics } from '../../core/rules/fabrics/find-fabric.ts';
import { scan } from '../../core/rules/scan/scan.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { type Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

const AT = '2026-03-14T10:30:00-05:00';

/** Words of the trade and of the house, numbers and marks: strung together they come near to every rule. */
const WORDS =
  'row rows block blocks column three two four one seven twelve 3-2 2-4 9-9 r2 b3 2.4 the that this it them both all every last first next bottom top left right corner border binding backing batting edge quilt seam patch patched darn darned net over behind muslin took off out unpicked sewed by hand whipstitch machine zigzag torn tear hole stained worn gone split open missing is are was has have to will maybe or and but no not , . ; : ? - ( ) / & started stopped at since half past nine ten twenty minutes an hour from until yard yards of bought £3 inches by wide I she somebody undecided leave same again ditto scratch kettle phone um uh gingham stripe except bar between'.split(
    ' ',
  );
const trade = fc.array(fc.constantFrom(...WORDS), { maxLength: 40 }).map((words) => words.join(' '));
const anything = fc.oneof(
  trade,
  fc.string({ maxLength: 200 }),
  fc.string({ unit: 'grapheme', maxLength: 80 }),
);

const grid: fc.Arbitrary<QuiltGrid> = fc
  .record({ rows: fc.integer({ min: 1, max: 12 }), blocks: fc.integer({ min: 1, max: 12 }) })
  .map(({ rows, blocks }) => ({
    rows,
    blocks,
    fabrics: { 'blue gingham': ['1-1', `${rows}-${blocks}`], 'brown stripe': [`1-${blocks}`] },
  }));

const inGrid = (place: string, { rows, blocks }: QuiltGrid): boolean => {
  const at = /^(\d+)-(\d+)$/.exec(place);
  return (
    !at || (Number(at[1]) >= 1 && Number(at[1]) <= rows && Number(at[2]) >= 1 && Number(at[2]) <= blocks)
  );
};

/** Reads the notes in turn; what the conversation holds may be put through JSON on the way, as the log does. */
function readAll(notes: string[], quilt: QuiltGrid, between: (c: Conversation) => Conversation): Reading[] {
  let conversation: Conversation = SILENCE;
  return notes.map((text) => {
    const read = readNote(text, { at: AT, quilt, conversation });
    conversation = between(read.conversation);
    return read.reading;
  });
}

describe('whatever is said', () => {
  it('is read into an answer of the schema, its places inside the quilt, its origins inside the words', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 1, maxLength: 3 }), grid, (notes, quilt) => {
        const readings = readAll(notes, quilt, (c) => c);
        readings.forEach((reading, k) => {
          Reading.parse(reading);
          for (const { entry, origins } of reading.entries) {
            for (const place of ('places' in entry && entry.places) || [])
              expect(inGrid(place, quilt), `${place} of ${quilt.rows} × ${quilt.blocks}`).toBe(true);
            for (const origin of Object.values(origins)) {
              expect(origin.from).toBeLessThanOrEqual(origin.to);
              // a mended slot stands on the words of the note before, which it then quotes
              const said = Math.max(...notes.slice(0, k + 1).map((text) => text.length));
              expect(origin.to).toBeLessThanOrEqual(said);
            }
          }
        });
      }),
      { numRuns: 400 },
    );
  });

  // Found by such runs: amounts of nothing, which no entry may hold, and phrases that break off at the note's end.
  it.each([
    ['SA0'],
    ['five l 0 past are 0'],
    ['00 yard r2'],
    ['past 0 minutes binding'],
    ['binding both of'],
    ['patched first £3 /'],
  ])('reads "%s" into an answer of the schema', (text) => {
    const { reading } = readNote(text, { at: AT, quilt: { rows: 4, blocks: 4 }, conversation: SILENCE });
    expect(Reading.safeParse(reading).success).toBe(true);
  });

  it('is read the same when the conversation has been through JSON', () => {
    fc.assert(
      fc.property(fc.array(trade, { minLength: 2, maxLength: 5 }), grid, (notes, quilt) => {
        const kept = readAll(notes, quilt, (c) => c);
        const written = readAll(notes, quilt, (c) => JSON.parse(JSON.stringify(c)) as Conversation);
        expect(written).toEqual(kept);
      }),
      { numRuns: 150 },
    );
  });

  it('is read the same twice: the reader keeps nothing to itself', () => {
    fc.assert(
      fc.property(trade, grid, (text, quilt) => {
        const once = readAll([text], quilt, (c) => c);
        expect(readAll([text], quilt, (c) => c)).toEqual(once);
      }),
      { numRuns: 100 },
    );
  });
});

describe('a note without end', () => {
  it('of 100,000 characters is read, and every token is looked at once', () => {
    const text = 'row three block two torn, patched 2-4 with calico, the one below it the same. '
      .repeat(1300)
      .slice(0, 100_000);
    const { reading } = readNote(text, { at: AT, quilt: { rows: 7, blocks: 6 }, conversation: SILENCE });
    expect(reading.entries.length).toBeGreaterThan(0);
    const quilt = { rows: 7, blocks: 6 };
    const covered = (tokens: ReturnType<typeof tokenise>): number =>
      scan(tokens, indexFabrics(quilt), { grid: quilt, focus: [], earlier: [] }).items.reduce(
        (sum, item) => sum + (item.j - item.i),
        0,
      );
    const whole = tokenise(text);
    const half = whole.slice(0, Math.floor(whole.length / 2));
    expect(covered(half)).toBe(half.length);
    expect(covered(whole)).toBe(whole.length);
  });
});
