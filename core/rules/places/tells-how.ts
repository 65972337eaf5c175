import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

/** "(darned the first) by hand", "(and the second) on the machine", "with a ladder stitch", "tomorrow": how and when, and no line that it is of. */
export const tellsHow = (tokens: Token[], at: number): boolean =>
  /^(tomorrow|tmrw|tonight|today|later|myself|yesterday)$/.test(w(tokens, at)) ||
  (/^(by|on|with|in|using)$/.test(w(tokens, at)) &&
    /^(a |an |the |some |plain )*(hand|machine|net|tulle|crepeline|calico|muslin|lawn|fusible|interfacing|cotton|silk|thread|\w+stitch|(?:ladder|running|blanket|slip|back|whip|straight|herringbone|zigzag|couching)(?: stitch)?)\b/.test(
      [1, 2, 3].map((n) => w(tokens, at + n)).join(' '),
    ));
