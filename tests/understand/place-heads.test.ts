import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlaceContext } from '../../core/rules/places/place-found.ts';
import { PLACE_HEADS } from '../../core/rules/places/place-heads.ts';
import { PLACE_FINDERS } from '../../core/rules/places/place-pipeline.ts';
import { type Token, tokenise } from '../../core/text/tokenise.ts';
import { CORPUS_TEXTS } from './corpus-notes.ts';

const notes = CORPUS_TEXTS.map((text) => tokenise(text));
const words = [...new Set(notes.flatMap((tokens) => tokens.map((t) => t.w)))];

/** Standing on nothing, on a block, on a row with another before it, on a border, on two blocks. */
const contexts: PlaceContext[] = [
  { focus: [], earlier: [] },
  { focus: ['3-2'], earlier: [['1-1']] },
  { focus: ['2-1', '2-2', '2-3', '2-4', '2-5', '2-6'], earlier: [['4-4'], ['corner-top-left']] },
  { focus: ['border-left'], earlier: [['5-5']] },
  { focus: ['3-2', '3-3'], earlier: [['edge-top']], cloth: ['1-1', '2-2'] },
].map((spoken) => ({ grid: { rows: 7, blocks: 6 }, ...spoken }));

/** Places that a finder finds at a word which PLACE_HEADS does not have. */
const missed = (tokens: Token[]): string[] =>
  (Object.keys(PLACE_HEADS) as (keyof typeof PLACE_HEADS)[]).flatMap((kind) =>
    tokens.flatMap((t, i) =>
      t.kind === 'number' || PLACE_HEADS[kind].has(t.w)
        ? []
        : contexts.flatMap((ctx) =>
            PLACE_FINDERS[kind].flatMap((find) => {
              const found = find(tokens, i, ctx);
              return found ? [`${kind}: "${t.w}" begins ${found.rule}`] : [];
            }),
          ),
    ),
  );

describe('words that a place begins with', () => {
  it('has every word of the corpora at which a finder finds one', () => {
    expect([...new Set(notes.flatMap(missed))]).toEqual([]);
  });

  it('has them in any order of words', () => {
    const heads = [...new Set(Object.values(PLACE_HEADS).flatMap((set) => [...set]))];
    const any = fc.array(fc.oneof(fc.constantFrom(...heads), fc.constantFrom(...words)), { maxLength: 12 });
    fc.assert(
      fc.property(any, (said) => {
        expect(missed(tokenise(said.join(' ')))).toEqual([]);
      }),
      { numRuns: 3000 },
    );
  });
});
