import type { Ask } from '../../../shared/note.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const YES = /^(?:yes|yeah|yep|yup|aye|erm|er|um|uh|hmm)$/;
/** "that'd be the last one": put before an answer as "it was" is. */
const WOULD_BE = /^ (?:that|it) (?:'d|would|'ll|will) (?:have been|be) /;
/** Where nothing else is said, "yes" is said to no question of where or what. */
const NO_ANSWER =
  /^(?:please|thanks|thank|ta|do|i|it|that|you|ok|okay|fine|sure|and|but|so|no|not|we|he|she|they)$/;
const AT_END =
  /^ (?:the )?(?:one )?(?:right |just )?(?:at|on|by) the (?:very |far |right )?end(?: one| there)? $/;
const NEXT_TO_LAST =
  /^ (?:the )?(?:(?:next|second) (?:to|from) (?:the )?(?:last|end)|second last|last but one|penultimate)(?: one| block| along| one along)? $/;

/**
 * "yeah the last one along", "that'd be the first", "right at the end", "last but one": what stands before an answer falls out while a
 * question is open, and an end that is told shortly is put in full.
 */
export function withBareAnswer(tokens: Token[], ask: Ask['slot'] | null | undefined): Token[] {
  if (!ask) return tokens;
  let from = 0;
  while (YES.test(w(tokens, from)) || w(tokens, from) === ',') from++;
  if (
    from > 0 &&
    (!tokens[from] || tokens[from]!.kind === 'mark' || NO_ANSWER.test(w(tokens, from))) &&
    !WOULD_BE.test(wordsBetween(tokens, from, from + 4))
  )
    from = 0;
  const would = WOULD_BE.exec(wordsBetween(tokens, from, from + 5))?.[0];
  if (would) from += would.trim().split(' ').length;
  const rest = from ? tokens.slice(from) : tokens;
  if (ask !== 'place') return rest;
  const mark = rest.findIndex((t) => /^[.,;!\n]$/.test(t.w));
  const end = mark < 0 ? rest.length : mark;
  const words = wordsBetween(rest, 0, end);
  const said = AT_END.test(words)
    ? ['the', 'last', 'one']
    : NEXT_TO_LAST.test(words)
      ? ['the', 'penultimate', 'one']
      : undefined;
  if (!said) return rest;
  const last = rest[end - 1]!;
  return [
    ...said.map((word, k): Token => ({ ...(k === 0 ? rest[0]! : last), w: word, kind: 'word' })),
    ...rest.slice(end),
  ];
}
