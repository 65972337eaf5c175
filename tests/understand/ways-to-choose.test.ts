import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Action } from '../../shared/vocabulary.ts';

/**
 * Every two ways in every plain frame in which people leave it open which it shall be: two treatments, both considered. Common ways of talking,
 * no source.
 */
const WAYS: [string, Action][] = [
  ['net', 'overlay'],
  ['net over', 'overlay'],
  ['tulle over the face', 'overlay'],
  ['crepeline', 'overlay'],
  ['a patch', 'patch'],
  ['patch', 'patch'],
  ['patching', 'patch'],
  ['darn', 'darn'],
  ['a darn', 'darn'],
  ['darning', 'darn'],
  ['silk behind', 'stabilize'],
  ['fusible behind', 'stabilize'],
  ['interfacing', 'stabilize'],
  ['a support', 'stabilize'],
  ['a new piece', 'replace'],
  ['replace', 'replace'],
  ['cut out and replace', 'replace'],
  ['resew', 'resew'],
  ['leave', 'leave'],
  ['leave it', 'leave'],
  ['leave as is', 'leave'],
];
const FRAMES: ((a: string, b: string) => string)[] = [
  (a, b) => `2-3: ${a} or ${b}`,
  (a, b) => `2-3 ${a} or ${b}`,
  (a, b) => `2-3: ${a} or ${b}?`,
  (a, b) => `2-3: either ${a} or ${b}`,
  (a, b) => `2-3: ${a}, or ${b}`,
  (a, b) => `2-3: ${a} / ${b}?`,
  (a, b) => `2-3 maybe ${a}, maybe ${b}`,
  (a, b) => `2-3: ${a} vs ${b}`,
  (a, b) => `${a} or ${b} for 2-3`,
  (a, b) => `2-3: not sure, ${a} or ${b}`,
  (a, b) => `2-3 is torn. ${a} or ${b}, can't decide`,
  (a, b) => `2-3: ${a} or ${b}. Undecided.`,
  (a, b) => `can't decide between ${a} and ${b} for 2-3`,
];
/** So many of a hundred may be misread: a few pairs can be taken for one thing ("a patch, maybe a new piece"). */
const MISREAD = 0.01;

describe('ways to choose from', () => {
  const told = FRAMES.flatMap((frame) =>
    WAYS.flatMap(([a, x]) =>
      WAYS.filter(([, y]) => x !== y).map(([b, y]) => ({ said: frame(a, b), ways: [x, y] })),
    ),
  );
  it('are both considered, however it is put', () => {
    const wrong = told.filter(({ said, ways }) => !areConsidered(said, ways));
    console.log(`${wrong.length} of ${told.length}\n${wrong.map(({ said }) => said).join('\n')}`);
    expect(wrong.length / told.length).toBeLessThan(MISREAD);
  }, 120_000);
});

function areConsidered(said: string, ways: Action[]): boolean {
  const { entries } = readNote(said, {
    at: '2026-03-14T10:30:00-05:00',
    quilt: { rows: 6, blocks: 5, fabrics: { 'blue gingham': ['1-1', '2-4'] } },
    conversation: SILENCE,
  }).reading;
  const open = entries.flatMap(({ entry: e }) =>
    e.kind === 'treatment' && e.state === 'considering' && e.places?.join() === '2-3' ? [e.action] : [],
  );
  const others = entries.filter(({ entry: e }) => e.kind !== 'treatment' && e.kind !== 'condition');
  return open.length === 2 && ways.every((way) => open.includes(way)) && !others.length;
}
