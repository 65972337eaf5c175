/** Counts in words from zero to nineteen; the index is the value. */
export const COUNT_WORDS: readonly string[] =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );

/** Tens in words from twenty to ninety. */
export const TEN_WORDS: readonly string[] = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(
  ' ',
);

/** Counts in words from `first` to `last` with their values. */
export const countsOf = (first: number, last: number): Record<string, number> =>
  Object.fromEntries(COUNT_WORDS.slice(first, last + 1).map((word, k) => [word, first + k]));

/** "first" to "tenth", in order. */
export const ORDINAL_WORDS: readonly string[] =
  'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');
