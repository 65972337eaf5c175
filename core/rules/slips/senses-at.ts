import type { Token } from '../../text/tokenise.ts';
import { LEXICON, type Sense } from '../lexicon-index.ts';

/** What the words that begin at `i` can mean in the trade; nothing where no word of it stands there. */
export const sensesAt = (tokens: readonly Token[], i: number): readonly Sense[] =>
  LEXICON.longestAt(tokens, i)?.payloads ?? [];

/** Is a treatment told there in this form? */
export const isDeedAt = (tokens: readonly Token[], i: number, form: 'past' | 'base'): boolean =>
  sensesAt(tokens, i).some((s) => s.k === 'action' && s.form === form);
