import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';

/** "off", "on too", "bound": what is told of sides whose border or binding is being worked on. */
export const isToldOfSides = (tokens: Token[], j: number): boolean =>
  TOLD_OF_SIDE.test(w(tokens, j)) ||
  // "T+B tmrw"
  /^(tomorrow|tmrw|tmw|next|later|tonight|done|same|ditto)$/.test(w(tokens, j)) ||
  (/^(off|on|out)$/.test(w(tokens, j)) &&
    /^(|[,.;!\n]|too|now|as|by|and|&|in|took|w|with|already|at|\d+)$/.test(w(tokens, j + 1)));

/** What is said at once of a side told by its name alone. */
export const TOLD_OF_SIDE =
  /^(is|'s|are|has|came|comes|went|goes|got|gets|looks|feels|ok|okay|fine|sound|good|solid|intact|frayed|fraying|worn|wearing|torn|tearing|ripped|stained|faded|fading|missing|thin|weak|tender|split|splitting|loose|needs|wants|badly|worse|shattered|threadbare|open|mildewed|mouldy|moldy|puckered|patched|trimmed|bound|unpicked|holed|perished)$/;
