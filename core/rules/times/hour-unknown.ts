import type { Token } from '../../text/tokenise.ts';
import { wordsOf } from '../../text/words-of.ts';
import { NOT_KNOWN } from '../amounts/not-known.ts';

/** What a stretch of work begins or ends with; its hour stands behind it. */
const MARKS =
  / (?:started|start|starting|began|begun|beginning|got going|got started|stopped|stop|stopping|finished|quit|quitting|knocked off|packed up|packed it in|called it a day|resumed) (?:\S+ ){0,6}?at $/;
const SIGHS = '(?:(?:,|oh|um|uh|er|well|now|and|honestly|really|-|--) )*';
const WHEN =
  "(?: (?:when|what time|the clock|the time|the hour|at the clock|at the time|exactly|now|what o'clock|what hour))*";
/** "at, oh, I don't know when", "at whatever o'clock", "at half past something". */
const HOUR_NOT_KNOWN = new RegExp(
  `^${SIGHS}(?:(?:i )?(?:just |'ve |have )?(?:${NOT_KNOWN})${WHEN}|whatever o'clock(?: it was)?|whatever time(?: it was)?|something or other|(?:half past|quarter past|quarter to) something|i could n't say when) (?=[.;!,] |and |but |so |$)`,
);

/**
 * "started the tying at, um, I didn't look": that the work began is told, and its hour is to be asked for. Gives the words without those that own
 * to it; nothing where none do.
 */
export function withoutHour(tokens: Token[]): Token[] | undefined {
  for (const [k, t] of tokens.entries()) {
    if (t.w !== 'at') continue;
    if (!MARKS.test(` ${wordsOf(tokens.slice(Math.max(0, k - 9), k + 1))} `)) continue;
    const found = HOUR_NOT_KNOWN.exec(`${wordsOf(tokens.slice(k + 1))} `)?.[0];
    if (!found) continue;
    // "I began this morning at …": of today
    let end = k;
    while (end > 1 && TODAY.test(`${tokens[end - 2]!.w} ${tokens[end - 1]!.w}`)) end -= 2;
    return [...tokens.slice(0, end), ...tokens.slice(k + 1 + found.trim().split(' ').length)];
  }
  return undefined;
}

const TODAY = /^this (?:morning|afternoon|evening)$/;
