import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OPEN_CUE, SETTLED_CUE } from '../../core/lexicon/matters.ts';
import { HISTORY, MARKS, WISHES } from '../../core/lexicon/story.ts';
import { PatternSet } from '../../core/text/pattern-set.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { wordsNeeded } from '../../core/text/words-needed.ts';
import { CORPUS_TEXTS } from './corpus-notes.ts';

const notes = CORPUS_TEXTS.map((text) => tokenise(text));
const textOf = (words: string[]): string => ` ${words.join(' ')} `;

const patterns = [...HISTORY, ...MARKS, ...WISHES, OPEN_CUE, SETTLED_CUE];
const alone = patterns.map((p) => [p, new PatternSet([p])] as const);
/** Patterns that match where the set says that none does. */
const missed = (text: string): string[] =>
  alone.flatMap(([p, set]) => (p.test(text) && !set.test(text) ? [`${p.source}: ${text}`] : []));

describe('the words that a pattern needs', () => {
  it.each<[RegExp, string[] | undefined]>([
    [/\bprovenance\b/, ['provenance']],
    [/\b(?:made|sewn) from (?:her|his)\b/, ['made', 'sewn']],
    [/\bdue (?:date|back)\b/, ['due']],
    [/\bcolou?r\b/, ['colour', 'color']],
    [/ (?:could|can) ?n't say /, ['say']],
    [/\b(?:signed|dated) (?:and|by)\b/, ['signed', 'dated']],
    [/\b(?:signed|dated)\b(?: [^\s,.;]+){0,4} names?\b/, ['signed', 'dated']],
    [/^(?:still |and )*(?:open|undecided)\b/, ['open', 'still', 'undecided']],
    [/(?<!way )\bmoth(?:s|y)? (?!ball)/, ['moth', 'moths', 'mothy']],
    [/(?<![a-z])(?:'ll be|going to be)\b/, ['ll', 'going']],
    // parts of words, anything at all, or no word in one of the ways
    [/border/, undefined],
    [/\bborder/, undefined],
    [/\b\w+ed\b/, undefined],
    [/\bdue\b|\d{4}/, undefined],
    [/(?:due )?\d/, undefined],
    [/\bDUE\b/i, undefined],
    [/(\w)\1/, undefined],
  ])('%s', (pattern, words) => {
    const needed = wordsNeeded(pattern);
    expect(needed && [...needed].sort()).toEqual(words?.sort());
  });

  it('are known of every pattern of story, marks and wishes', () => {
    expect(patterns.filter((p) => !wordsNeeded(p))).toEqual([]);
  });
});

describe('a set of patterns', () => {
  it('finds in every note of the corpora what its patterns find', () => {
    const set = new PatternSet(patterns);
    for (const tokens of notes) {
      const text = textOf(tokens.map((t) => t.w));
      expect(set.test(text)).toBe(patterns.some((p) => p.test(text)));
      expect(missed(text)).toEqual([]);
    }
  });

  it('finds it in any order of words', () => {
    const needed = [...new Set(patterns.flatMap((p) => [...(wordsNeeded(p) ?? [])]))];
    const met = [...new Set(notes.flatMap((tokens) => tokens.map((t) => t.w)))];
    const any = fc.array(fc.oneof(fc.constantFrom(...needed), fc.constantFrom(...met)), { maxLength: 14 });
    fc.assert(
      fc.property(any, (words) => {
        expect(missed(textOf(words))).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});
