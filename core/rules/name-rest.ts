import type { Token } from '../text/tokenise.ts';

/** After these it is what was worked on or taken, and no question. */
const TAKES_IT =
  /^(?:got|get|getting|took|take|taking|picked|pick|picking|pulled|pull|pulling|snipped|cut|unpicked|unpick|clipped|trimmed|removed|remove|used|out|off|up|darned|patched|washed|brushed|pressed)$/;
/** What became of it: "what was left of the patch is off". */
const BECAME =
  /^(?:is|was|'s|are|were|came|comes|come|went|has|have|had|picked|pulled|got|taken|off|out|fell)$/;

/**
 * "got what was left of the ties out", "what's left of the binding came off": the rest of a thing as what is told of. It is read
 * as "the rest of the ties", for "what" would ask and "was left" would tell of leaving. "What's left of the wool" stays a question.
 */
export function nameRest(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, i) =>
      t.w === 'what' &&
      /^(?:was|is|'s|were|are|remained|remains)$/.test(tokens[i + 1]?.w ?? '') &&
      (tokens[i + 2]?.w === 'left' ? tokens[i + 3] : tokens[i + 2])?.w === 'of',
  );
  // "took out what was left of them" is known as it is
  if (at < 0 || /^(?:them|it|those)$/.test(tokens[at + 4]?.w ?? '')) return tokens;
  const of = tokens[at + 2]!.w === 'left' ? at + 3 : at + 2;
  const told =
    TAKES_IT.test(tokens[at - 1]?.w ?? '') ||
    (tokens.at(-1)!.w !== '?' && tokens.slice(of + 2, of + 11).some((t) => BECAME.test(t.w)));
  if (!told) return tokens;
  const what = tokens[at]!;
  return [
    ...tokens.slice(0, at),
    { ...what, w: 'the' },
    { ...what, w: 'rest', from: tokens[at + 1]!.from, to: tokens[of - 1]!.to, glued: false },
    ...tokens.slice(of),
  ];
}
