import type { Token } from '../../text/tokenise.ts';
import { nought } from './blank-amounts.ts';
import { NOT_KNOWN } from './not-known.ts';

const NOT_SAID = String.raw`(?:(?:i |honestly |just |, )*${NOT_KNOWN}(?: (?:what|how (?:wide|long|deep|much|big|many)))?(?: (?:it is|it was|now))?|something(?: or (?:other|another))?|something else|whatever(?: it was)?|what 's it)`;
const MEASURED = String.raw`(?:is|are|was|were|'s|'re|measures?|measured|at|about|around|to|say|top|quilt|backing|batting|border|block|size|overall|=|:)`;
const LENGTH = String.raw`(?:\d[\d./]*|half|quarter|eighths?|\w+ty|\w+teen|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?: and (?:a |an |three )?(?:half|quarters?|eighths?))?(?: (?:inches|inch|in|cm|centimetres|centimeters|"))?`;
const JOIN = String.raw`(?: (?:wide|across|long))? (?:by|x|×)`;

/** "the top's 60 by something", "72 by, um, and 3-3 is stained": the second side is wanting; "darned by hand" has no figure before it. */
const SECOND = new RegExp(
  String.raw`(?<= ${MEASURED} (?:\S+ ){0,3}?${LENGTH}${JOIN} )(?:(?:, )*${NOT_SAID} |(?=(?:, )*(?:[.;!?] |inches |cm |centimetres |centimeters |and |but |$)))`,
);
/** "it measures um by seventy-two", "the top is something by 72": the first is. */
const FIRST = new RegExp(
  String.raw`(?<= ${MEASURED} )(?:(?:, )*${NOT_SAID} |(?:, )*)(?=(?:by|x|×) ${LENGTH} )`,
);
/** "the border's I don't know how wide": its one measure is. */
const ONLY = new RegExp(
  String.raw`(?<= (?:is|are|was|'s|'re) )(?:i )?${NOT_KNOWN} how (?=(?:wide|deep|long) )`,
);

/** One of two sides that she does not know, or has not kept: a nought stands in its place, as for other blanks (`nameBlanks`). */
export function withBlankSides(tokens: Token[]): Token[] {
  if (!tokens.some((t) => /^(?:by|x|×|how)$/.test(t.w))) return tokens;
  const words = ` ${tokens.map((t) => t.w).join(' ')} `;
  const found = [SECOND, FIRST, ONLY].map((r) => r.exec(words)).find(Boolean);
  if (!found) return tokens;
  const from = count(words.slice(0, found.index));
  const to = from + count(found[0]);
  const at = tokens[from] ?? tokens.at(-1)!;
  return [...tokens.slice(0, from), { ...nought(at), to: tokens[to - 1]?.to ?? at.to }, ...tokens.slice(to)];
}

const count = (words: string): number => words.split(' ').filter(Boolean).length;
