import { expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Entry } from '../../shared/entry.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

/**
 * Any two places told in one list, and any two told one after the other, each with what is so of it: blocks, rows, cloths, parts, sides
 * and corners of every name. Common ways of talking, no source.
 */
const row = (r: number): string[] => [1, 2, 3, 4, 5].map((b) => `${r}-${b}`);
const PLACES: [string, string[]][] = [
  ['4-3', ['4-3']],
  ['block two in row six', ['6-2']],
  ['the bottom row', row(6)],
  ['the right-hand column', [1, 2, 3, 4, 5, 6].map((r) => `${r}-5`)],
  ['the middle block in row two', ['2-3']],
  ['the top left corner block', ['1-1']],
  ['the block to the right of 3-3', ['3-4']],
  ['the left border', ['border-left']],
  ['the backing', ['backing']],
  ['the sashing', ['sashing']],
  ['the top right corner', ['corner-top-right']],
];

/** A list, and what is made of it; X is the list. */
const LISTS = ["there's a stain on X", 'netted X'];
const JOINTS = [' and ', ', ', ' and also ', ' plus ', ' as well as ', ' & '];

/** Two statements of A and of B, with what each becomes. */
const STATEMENTS: [string, string, string][] = [
  ['A is stained and B is torn', 'stain', 'tear'],
  ['A stained, B torn', 'stain', 'tear'],
  ["there's a stain on A and a tear in B", 'stain', 'tear'],
  ['stain on A tear in B', 'stain', 'tear'],
  ['netted A and darned B', 'overlay done', 'darn done'],
  ['pressed A, B still to press', 'press done', 'press planned'],
];

const PAIRS = PLACES.flatMap(([a, ofA]) =>
  PLACES.filter(([b, ofB]) => a !== b && !ofA.some((p) => ofB.includes(p))).map(
    ([b, ofB]) => [a, ofA, b, ofB] as const,
  ),
);

const told = (entry: Entry): string =>
  entry.kind === 'condition'
    ? entry.finding
    : entry.kind === 'treatment'
      ? `${entry.action} ${entry.state}`
      : '';
const placesTold = (text: string): Record<string, string[]> => {
  const { reading } = readNote(text, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE });
  const out: Record<string, string[]> = {};
  for (const { entry } of reading.entries)
    if (entry.kind === 'condition' || entry.kind === 'treatment')
      out[told(entry)] = [...(out[told(entry)] ?? []), ...(entry.places ?? [])].sort();
  return out;
};

it('two places in one list are both meant', () => {
  const misread = PAIRS.flatMap(([a, ofA, b, ofB]) =>
    JOINTS.flatMap((joint, k) => {
      const text = LISTS[k % LISTS.length]!.replace('X', `${a}${joint}${b}`);
      const found = placesTold(text);
      return JSON.stringify(Object.values(found)) === JSON.stringify([[...ofA, ...ofB].sort()]) ? [] : [text];
    }),
  );
  expect(misread).toEqual([]);
});

it.each(STATEMENTS)('%s', (frame, first, second) => {
  const misread = PAIRS.flatMap(([a, ofA, b, ofB]) => {
    const text = frame.replace('A', a).replace('B', b);
    const found = placesTold(text);
    const right =
      JSON.stringify(found[first]) === JSON.stringify([...ofA].sort()) &&
      JSON.stringify(found[second]) === JSON.stringify([...ofB].sort());
    return right ? [] : [text];
  });
  expect(misread).toEqual([]);
});
