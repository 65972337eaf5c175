import { startsNumber } from '../text/starts-number.ts';
import type { Token } from '../text/tokenise.ts';

const TAKES = /^(?:knock|knocking|take|taking|knocked)$/;
const HOUR = /^(?:min|mins|minutes|minute|hour|hours|m|h|hr|half|an|a|quarter|three)$/;
const CLOCK = /^\d{1,4}$/;

/**
 * "9-12 mending, knock off 20 for tea", "… knocking off half an hour": a length behind a stretch of time is taken from it, and
 * nobody stops work; said as "minus". "knocked off at 8" and "take off 20 ties" stay as they are.
 */
export function nameKnockedOff(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, i) => i > 2 && TAKES.test(t.w) && tokens[i + 1]?.w === 'off' && isLengthAt(tokens, i + 2),
  );
  if (at < 0 || tokens[at - 1]?.w === 'to' || !hasStretch(tokens.slice(0, at))) return tokens;
  const first = tokens[at]!;
  return [
    ...tokens.slice(0, at),
    { ...first, w: 'minus', kind: 'word', to: tokens[at + 1]!.to },
    ...tokens.slice(at + 2),
  ];
}

/** A length of time, with its unit, with the reason behind it, or by itself at the end. */
function isLengthAt(tokens: Token[], i: number): boolean {
  let k = i;
  while (CLOCK.test(tokens[k]?.w ?? '') || startsNumber(tokens[k]?.w ?? '') || HOUR.test(tokens[k]?.w ?? ''))
    k++;
  return k > i && /^(?:|for|[.,;])$/.test(tokens[k]?.w ?? '');
}

/** "9-12", "9 to 12", "nine till twelve". */
const hasStretch = (tokens: Token[]): boolean =>
  tokens.some(
    (t, i) => /^(?:-|–|to|till|until|til)$/.test(t.w) && isHour(tokens[i - 1]) && isHour(tokens[i + 1]),
  );

const isHour = (t: Token | undefined): boolean =>
  t !== undefined &&
  (/^\d{1,4}(?:[:.]\d\d)?(?:am|pm)?$/.test(t.w) || /^(?:am|pm)$/.test(t.w) || startsNumber(t.w));
