import { expect, it } from 'vitest';
import { joinEntries, splitEntry } from '../../client/features/days/state/split-and-join.ts';
import { Entry } from '../../shared/entry.ts';

const resewn: Entry = {
  kind: 'treatment',
  action: 'resew',
  state: 'done',
  places: ['1-1', '1-2', 'border-top'],
  stitch: 'ladder',
  minutes: 45,
};

it('splits an entry by its places, the minutes shared, and joins the parts to what it was', () => {
  const parts = splitEntry(resewn)!;
  expect(parts.map((part) => Entry.parse(part))).toEqual(
    ['1-1', '1-2', 'border-top'].map((place) => ({ ...resewn, places: [place], minutes: 15 })),
  );
  expect(parts.reduce((a, b) => joinEntries(a, b)!)).toEqual(resewn);
});

it('splits nothing of one place, and joins nothing that says something else', () => {
  expect(splitEntry({ ...resewn, places: ['1-1'] })).toBeNull();
  expect(splitEntry({ kind: 'decision', about: 'backing', status: 'open' })).toBeNull();
  expect(joinEntries(resewn, { ...resewn, stitch: 'running' })).toBeNull();
  expect(joinEntries(resewn, { ...resewn, places: [] })).toBeNull();
  expect(
    joinEntries(
      { kind: 'condition', finding: 'tear', places: ['1-1'] },
      { kind: 'condition', finding: 'tear', places: ['1-1', '2-2'] },
    ),
  ).toEqual({ kind: 'condition', finding: 'tear', places: ['1-1', '2-2'] });
});
