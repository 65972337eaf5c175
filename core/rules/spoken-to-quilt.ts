import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Token } from '../text/tokenise.ts';
import { clothWords } from './fabrics/cloth-words.ts';
import { LEXICON } from './lexicon-index.ts';

/**
 * "your velvet's worn", "black sateen for your new binding": some talk to the quilt on the bench. What is its own is "the" velvet, "the"
 * binding; "mind your feet" and "your tea" stay what they are.
 */
export function withTheForYour(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => t.w === 'your')) return tokens;
  const cloths = clothWords(grid);
  const ofQuilt = (k: number): boolean => {
    for (let j = k + 1; j < k + 4 && tokens[j]?.kind === 'word'; j++) {
      if (cloths.has(tokens[j]!.w)) return true;
      if (LEXICON.longestAt(tokens, j)?.payloads.some((s) => /^(?:part|object|seam|stitches)$/.test(s.k)))
        return true;
      if (
        !/^(?:old|new|poor|own|other|two|three|four|top|bottom|left|right|first|last|middle|hand)$/.test(
          tokens[j]!.w,
        )
      )
        return false;
    }
    return false;
  };
  return tokens.map((t, k) =>
    t.w === 'your' &&
    !/^(?:mind|watch|ask|tell|hold|on|is|that|beg)$/.test(tokens[k - 1]?.w ?? '') &&
    ofQuilt(k)
      ? { ...t, w: 'the' }
      : t,
  );
}
