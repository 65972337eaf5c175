import { readAs, type SlipRule } from './slip-rule.ts';

const SIDED = /^(?:side|sides|border|edge|corner|hand)$/;
/** A letter that she says for a side, left as a letter elsewhere in the note. */
const isLetterNear = (words: readonly { w: string }[]): boolean =>
  words.some(
    ({ w }, k) => /^(?:l|r)$/.test(w) || (/^(?:else|ell)$/.test(w) && SIDED.test(words[k + 1]?.w ?? '')),
  );

/** "else side 80, are side 79", "bottom or corner", "our border on, L to follow": L and R, read aloud. */
export const sideHeard: SlipRule = ({ tokens, i, before }) => {
  const { w } = tokens[i]!;
  const right = tokens[i + 1]?.w ?? '';
  if (!SIDED.test(right)) return undefined;
  const left = before.at(-1)?.w ?? '';
  const edge = /^(?:top|bottom|upper|lower)$/.test(left);
  const opens =
    /^(?:|,|\.|;|and|in|inches|cm)$/.test(left) ||
    /^[\d./]+$/.test(left) ||
    /^(?:half|quarters?|eighths?)$/.test(left);
  if (/^(?:else|ell|elle|el)$/.test(w) && (edge || opens)) return readAs(tokens[i]!, 'left', 'slip.side');
  if (/^(?:are|ar)$/.test(w) && (edge || opens)) return readAs(tokens[i]!, 'right', 'slip.side');
  if (/^(?:or|our|are)$/.test(w) && edge && right === 'corner')
    return readAs(tokens[i]!, 'right', 'slip.side');
  return w === 'our' && opens && right !== 'corner' && isLetterNear(tokens)
    ? readAs(tokens[i]!, 'right', 'slip.side')
    : undefined;
};
