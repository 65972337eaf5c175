import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { SMALL } from '../places/place-tokens.ts';
import { isDeedAt } from './senses-at.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { isNumberWord } from './small-number-said.ts';

/** Words before which a verb opens a statement with nobody named who does it. */
const OPENS = /^(?:|\.|,|;|and|so|okay|ok|right|then|well|now)$/;
/** Somebody names it as what is to be done, or asks. */
const TO_COME =
  /\b(?:tomorrow|later|next|tonight|will|'ll|going|gonna|fixing|tmrw|must|need|needs|want|wants|should|have to|has to|let|let's|remind|remember|plan|please|would you|could you|can you|before|until|once|when|if|or|don't|n't|not|first|to do|todo)\b|\?/;

/**
 * "Brush the dust off the top border": in speech the ending of "brushed" is hardly heard, and nobody is told what to do. A verb
 * of treatment that opens a statement, with nothing in the note that speaks of what is to come, is read with its ending.
 */
export const droppedEnding: SlipRule = ({ tokens, i, before, spoken }) => {
  if (!spoken || tokens[i]!.kind !== 'word') return undefined;
  const next = tokens[i + 1];
  const left = before.at(-1)?.w ?? '';
  // "split, close by machine", "3-3 patch with corduroy"
  const how =
    (next?.w === 'by' &&
      /^(?:hand|machine|a)$/.test(tokens[i + 2]?.w ?? '') &&
      /^(?:|,|\.|split|open|it|torn)$/.test(left)) ||
    (/^(?:with|w)$/.test(next?.w ?? '') &&
      (/^(?:|,|\.)$/.test(left) ||
        before.at(-1)?.kind === 'number' ||
        // "cut out and replace with indigo print"
        (left === 'and' && isDone(before, before.length - 2)) ||
        (left === 'and' &&
          /^(?:out|off|away)$/.test(before.at(-2)?.w ?? '') &&
          isDone(before, before.length - 3))));
  // "on the cleaning at seven brush the dust off"
  const afterHour =
    before.at(-2)?.w === 'at' &&
    next?.w === 'the' &&
    (before.at(-1)?.kind === 'number' || isNumberWord(before.at(-1)));
  if ((how || afterHour) && tokens[i]!.w !== 'seam') {
    const past = pastOf(tokens, i);
    return past && !TO_COME.test(` ${tokens.map(({ w }) => w).join(' ')} `)
      ? readAs(tokens[i]!, past, 'slip.dropped-ending')
      : undefined;
  }
  if (!OPENS.test(left)) return undefined;
  // a thing or a place follows, or it is a noun: "patch is loose"
  if (
    !/^(?:the|that|this|it|them|a|in|all|both|every|my|those|these|row|block|blocks|rows|column|corner)$/.test(
      next?.w ?? '',
    ) &&
    next?.kind !== 'number' &&
    !Object.hasOwn(SMALL, next?.w ?? '')
  )
    return undefined;
  // a seam is far oftener told of than "seamed"; "wipe that" is said of the note, "back in five" of herself
  if (/^(?:seam|wipe|back)$/.test(tokens[i]!.w) || (next?.w === 'it' && tokens[i + 2]?.w === 'is'))
    return undefined;
  const past = pastOf(tokens, i);
  if (!past || TO_COME.test(` ${tokens.map(({ w }) => w).join(' ')} `)) return undefined;
  return readAs(tokens[i]!, past, 'slip.dropped-ending');
};

const isDone = (tokens: readonly Token[], i: number): boolean => i >= 0 && isDeedAt(tokens, i, 'past');

/** The regular past of a verb of treatment, where the trade's words have it. */
function pastOf(tokens: readonly Token[], i: number): string | undefined {
  const t = tokens[i]!;
  const isAction = (w: string, form: 'base' | 'past'): boolean =>
    LEXICON.longestAt([{ ...t, w }], 0)?.payloads.some((s) => s.k === 'action' && s.form === form) ?? false;
  if (!isAction(t.w, 'base') || isAction(t.w, 'past')) return undefined;
  return [`${t.w}ed`, `${t.w}d`, `${t.w}${t.w.at(-1)}ed`].find((w) => isAction(w, 'past'));
}
