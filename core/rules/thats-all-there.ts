import type { Token } from '../text/tokenise.ts';

const JOINT = /^(?:and|but|so|,|--|-|\.|;)$/;
/** Words that say that nothing more was found, up to the preposition before the place. */
const ALL =
  /^(?:(?:um|uh|er|well|oh|then) )*(?:(?:that|this) (?:'s|is) (?:about |just about |pretty much |more or less |really )?(?:it|all|everything|the lot|all there is|all (?:that )?i (?:can|could) (?:find|see)|all i (?:'ve|have)? ?(?:found|seen)|me done|the worst over)|(?:there 's |there is |i (?:see|found|find) )?nothing (?:else|more|further)(?: wrong| amiss| bad| to report| to find| to see| to note)?) (?:for|in|on|with|along|at|to|of) /;
/** And of what: never of the day or of the work. */
const WHERE =
  /^(?:(?:the|that|this|whole|of|top|bottom|left|right|hand|first|second|third|last|other|next|middle) )*(?:rows?|columns?|blocks?|squares?|border|borders|backing|back|front|top|binding|sashing|corner|edge|side|seams?|it|one|lot)(?: (?:row|column|block|one|two|three|four|five|six|seven|eight|nine|\d+|and|then|side|edge|border|corner|anyway|now))* $/;
const MOST = 22;

/**
 * "got a seam open between 4-1 and 4-2 and that's about it for row four", "5-1 torn, nothing else in row five": that no more was found
 * there names no place for what was. A note that says nothing else is left as it is.
 */
export function withoutThatsAll(tokens: Token[]): Token[] {
  for (let k = 2; k < tokens.length - 3; k++) {
    if (
      !JOINT.test(tokens[k - 1]!.w) ||
      !/^(?:that|this|there|i|nothing|um|uh|er|well|oh|then)$/.test(tokens[k]!.w)
    )
      continue;
    let end = k;
    let words = '';
    while (end < tokens.length && end < k + MOST && !(end > k + 4 && /^[.,;!?\n]$/.test(tokens[end]!.w))) {
      words += `${tokens[end]!.w} `;
      end++;
    }
    const all = ALL.exec(words);
    if (!all || !WHERE.test(words.slice(all[0].length))) continue;
    const from = /^(?:and|but|so|,|--|-)$/.test(tokens[k - 1]!.w) ? k - 1 : k;
    return withoutThatsAll([...tokens.slice(0, from), ...tokens.slice(end)]);
  }
  return tokens;
}
