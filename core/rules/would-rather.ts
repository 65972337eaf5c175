import type { Token } from '../text/tokenise.ts';

/**
 * "the other one I'd rather patch", "3-4 I'd sooner darn": what she would do, where nothing is set against it ("rather … than …", which
 * is a choice of two). The tokens without the word.
 */
export function withoutRather(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, k) =>
      /^(?:rather|sooner)$/.test(t.w) &&
      /^(?:'d|would)$/.test(tokens[k - 1]?.w ?? '') &&
      /^(?:i|we)$/.test(tokens[k - 2]?.w ?? '') &&
      !/^(?:not|have|than)$/.test(tokens[k + 1]?.w ?? ''),
  );
  if (at < 0 || tokens.slice(at).some((t) => t.w === 'than')) return tokens;
  return [...tokens.slice(0, at), ...tokens.slice(at + 1)];
}
