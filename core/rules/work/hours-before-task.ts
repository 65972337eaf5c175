import type { Token } from '../../text/tokenise.ts';
import { markBefore } from '../../text/with-marks.ts';
import { LEXICON } from '../lexicon-index.ts';

const HOUR_WORD =
  /^(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|fifteen|thirty|forty|fifty|oh|o'clock|clock|quarter|half|past|a|am|pm|noon|midday|and|to|till|til|until|-|–|:|\.|\d{1,4}|\d{1,2}[.:]\d\d)$/;
const FROM_TO = /^(?:to|till|til|until|-|–)$/;
const OPENS = /^(?:[.,;:!?\n]|--|-|and|&|then|so|right|okay|ok|well|also|from|um|uh|er)$/;
const ENDS = /^(?:[.,;!\n]|--|and|&|then|with|less|minus|so|today|tonight|yesterday|this|\)|but)$/;
const LEADS = /^(?:,|-|:|=|that|it|was|were|is|'s|for|went|spent|on|into|to|of|the|my|some|all|doing|just)$/;
const LONGEST_HOURS = 14;
const LONGEST_LEAD = 5;

/**
 * "nine to ten was the cutting and ten to twenty past eleven the piecing": the hours before what they went into. The kind of work is put
 * before its hours, as a list of hours is told mostly, so that each goes with its own.
 */
export function hoursBeforeTask(tokens: Token[]): Token[] {
  // "… for the cutting and from then until three for the piecing": told in turn, and read so
  const inTurn = tokens.some((t, k) => /^(?:then|there)$/.test(t.w) && FROM_TO.test(tokens[k + 1]?.w ?? ''));
  if (inTurn || !tokens.some((t) => FROM_TO.test(t.w))) return tokens;
  const out: Token[] = [];
  let turned = false;
  for (let i = 0; i < tokens.length; i++) {
    const opens = i === 0 || (OPENS.test(tokens[i - 1]!.w) && !tokens[i - 1]!.glued);
    const found = opens ? taskBehind(tokens, i, turned) : undefined;
    if (!found) {
      out.push(tokens[i]!);
      continue;
    }
    // "… and ten to eleven the piecing": a statement of its own
    if (turned && /^(?:and|&|then|,)$/.test(out.at(-1)?.w ?? '')) out.push(markBefore(out.pop()!, ';'));
    out.push(...tokens.slice(found.task, found.next), from(tokens[i]!), ...tokens.slice(i, found.hoursEnd));
    i = found.next - 1;
    turned = true;
  }
  return turned ? out : tokens;
}

/** Hours from `i`, and behind them what they were for: where the hours end, where the kind of work begins, and the index after it. */
function taskBehind(
  tokens: Token[],
  i: number,
  turned: boolean,
): { hoursEnd: number; task: number; next: number } | undefined {
  let end = i;
  while (end < i + LONGEST_HOURS && HOUR_WORD.test(tokens[end]?.w ?? '')) end++;
  while (end > i && /^(?:and|-|–|:|\.|a)$/.test(tokens[end - 1]!.w)) end--;
  const joint = tokens.slice(i + 1, end - 1).some((t) => FROM_TO.test(t.w));
  // "3-3's for darning": the name of a block
  const block =
    tokens[i + 1]?.w === '-' &&
    tokens[i + 1]!.glued &&
    /^\d$/.test(tokens[i]!.w) &&
    /^\d$/.test(tokens[i + 2]?.w ?? '');
  if (!joint || block) return undefined;
  let task = end;
  while (task < end + LONGEST_LEAD && LEADS.test(tokens[task]?.w ?? '')) task++;
  const lead = tokens.slice(end, task).map((t) => t.w);
  if (!lead.some((w) => /^(?:was|were|is|'s|for)$/.test(w)) && !(turned && lead.at(-1) === 'the'))
    return undefined;
  const found = LEXICON.longestAt(tokens, task);
  if (!found?.payloads.some((s) => s.k === 'task')) return undefined;
  const after = tokens[found.next];
  return !after || ENDS.test(after.w) ? { hoursEnd: end, task, next: found.next } : undefined;
}

const from = (at: Token): Token => ({
  ...at,
  w: 'from',
  kind: 'word',
  value: undefined,
  to: at.from,
  glued: false,
});
