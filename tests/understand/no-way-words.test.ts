import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexFabrics } from '../../core/rules/fabrics/find-fabric.ts';
import type { Item } from '../../core/rules/item.ts';
import { scan } from '../../core/rules/scan/scan.ts';
import { isNoWayWord, WAYS_BY_THING } from '../../core/rules/treatments/find-ways.ts';
import { wordsBetween } from '../../core/rules/words-between.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { CORPUS_TEXTS } from './corpus-notes.ts';

const grid = { rows: 7, blocks: 6, fabrics: { 'blue gingham': ['1-1', '2-4'], 'grey velvet': ['3-3'] } };
const itemsOf = (text: string): Item[] =>
  scan(tokenise(text), indexFabrics(grid), { grid, focus: [], earlier: [] }).items;
const notes = CORPUS_TEXTS.map((text) => itemsOf(text));

/** Words at which a rule finds a way although none is asked there. */
const missed = (items: Item[]): string[] =>
  items.flatMap((item, k) =>
    isNoWayWord(item)
      ? [undefined, 'seam', 'old-patch', 'binding'].flatMap((thing) =>
          WAYS_BY_THING.flatMap((rule) => {
            const told = rule({
              items,
              k,
              item,
              before: wordsBetween(items, k - 6, k),
              after: wordsBetween(items, k + 1, Math.min(items.length, k + 7)),
              all: wordsBetween(items),
              choosing: true,
              thing,
              ways: [],
              used: new Set(),
            });
            return told ? [`"${item.w}": ${told === 'none' ? 'none' : told.way.rule}`] : [];
          }),
        )
      : [],
  );

describe('words at which no way is looked for', () => {
  it('are none at which a rule finds one in the corpora', () => {
    expect([...new Set(notes.flatMap(missed))]).toEqual([]);
    // every rule at every word of every note: minutes on a busy machine
  }, 240_000);

  it('are none in any order of words', () => {
    const met = [...new Set(notes.flatMap((items) => items.map((x) => x.w)))];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...met), { maxLength: 14 }), (said) => {
        expect(missed(itemsOf(said.join(' ')))).toEqual([]);
      }),
      { numRuns: 800 },
    );
  });
});
