import type { Token } from './tokenise.ts';

/** A mark that was not written, at the place before `at`. */
export const markBefore = (at: Token, w: string): Token => ({
  w,
  from: at.from,
  to: at.from,
  kind: 'mark',
  glued: false,
});

/** The tokens with a mark before those whose index is told. */
export const withMarks = (tokens: Token[], marks: ReadonlyMap<number, string>): Token[] =>
  marks.size ? tokens.flatMap((t, i) => (marks.has(i) ? [markBefore(t, marks.get(i)!), t] : [t])) : tokens;
