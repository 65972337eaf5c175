import { findClock } from '../rules/times/find-clock.ts';
import { findDuration } from '../rules/times/find-duration.ts';
import { dayStart, wallMinutes, wallTime } from '../rules/times/local-time.ts';
import { tokenise } from '../text/tokenise.ts';

export type ListeningWay = 'always' | 'held' | 'on-call';

/** What is said to the tool about its own ears. */
export type ListeningOrder =
  /** Not to listen for so many minutes, until a moment (local, `2026-03-14T10:30`), or until it is called. */
  | { order: 'pause'; minutes?: number; until?: string }
  | { order: 'resume' }
  | { order: 'way'; way: ListeningWay };

const LEAD =
  "(?:(?:please|now|right|okay|ok|well|so|and|then|thimble|you can|you may|you could|can you|could you|would you|i want you to|i 'd like you to|let 's) )*";
const TAIL = '(?: (?:please|now|thanks|thank you|again|then))*';

/** "stop listening", "don't listen to this", "microphone off", "pause the microphone": enough by themselves. */
const CLOSE =
  "(?:(?:stop|quit|no more|leave off) listening(?: in)?|(?:do n't|do not|never) listen|(?:pause|mute|stop) (?:the )?(?:microphone|mic|listening)|(?:turn|switch) (?:the )?(?:microphone|mic) off|(?:turn|switch) off (?:the )?(?:microphone|mic)|(?:the )?(?:microphone|mic|ears) off|(?:close|shut|cover) your ears)(?: to (?:me|us|this|that|what follows))?";
/** "not listening", "pause", "mute": only with how long, because they are also said of others. */
const CLOSE_FOR = "(?:(?:i 'm |you 're )?not listening|no listening|pause|mute|ears shut)";
const TILL_CALLED =
  "(?:(?:till|until|til) (?:i (?:say(?: so| otherwise)?|call(?: you)?|tell you(?: to| otherwise)?|ask(?: you)?(?: to)?|come back|get back|need you|want you)|i 'm back|further notice|called)|for (?:now|a while|a bit|the moment|the time being|a moment|a sec))";

const OPEN =
  "(?:(?:start|resume|begin|go back to|carry on) listening(?: in)?(?: to me)?|listen (?:again|now|to me|in again)|(?:you 're )?back on(?: again)?|un ?mute|un ?pause|wake up|(?:turn|switch) (?:the )?(?:microphone|mic) (?:back )?on|(?:turn|switch) (?:back )?on (?:the )?(?:microphone|mic)|(?:the )?(?:microphone|mic|ears) (?:back )?on|open your ears)";

const WAYS: readonly [ListeningWay, string][] = [
  [
    'always',
    '(?:always listen|listen (?:always|all the time|the whole time)|keep listening(?: all the time)?)',
  ],
  [
    'held',
    "(?:hold to talk|(?:only )?listen (?:only )?(?:while|when) (?:i|i 'm|i am) (?:hold|holding|press|pressing)(?: (?:the|a))?(?: (?:key|pedal|button|thimble|space ?bar))?(?: down)?)",
  ],
  ['on-call', '(?:(?:only )?listen (?:only )?when i call(?: you)?|wait (?:to be called|for my call))'],
];

const whole = (words: string): RegExp => new RegExp(`^${LEAD}${words}${TAIL}$`);
const CLOSED = whole(`(?:${CLOSE}(?: ${TILL_CALLED})?|${CLOSE_FOR} ${TILL_CALLED})`);
const CLOSING = new RegExp(
  `^${LEAD}(?:${CLOSE}|${CLOSE_FOR}) (for|till|until|til) (?:the next |about |another )?`,
);
const OPENED = whole(OPEN);
const WAY = WAYS.map(([way, words]) => [way, whole(words)] as const);
const POLITE = new RegExp(`^${TAIL}$`);
const LEADING = new RegExp(`^${LEAD}$`);

/** One of these stands in every order: hardly a note has one, and none of the others need be cut into words once more. */
const OF_EARS = /listen|mic|mute|pause|ears|back|wake|hold|wait/i;

/** Longer than this is until she calls. */
const LONGEST_MIN = 12 * 60;

/**
 * Finds an order to listen, not to listen, or to listen in another way: a sentence of its own, or the end of one after a comma
 * ("…, now stop listening till I say so"). The last one said counts.
 *
 * @param local when it was said, as `2026-03-14T10:30`
 * @returns the order, and the other words of the note; undefined where there is none
 */
export function findListeningOrder(
  text: string,
  local: string,
): { order: ListeningOrder; rest: string } | undefined {
  if (!OF_EARS.test(text)) return undefined;
  const pieces = text.match(/[^.!?;,]+(?:[.!?;,]+(?=\s|$)|[.,](?=\S)|$)\s*/g) ?? [];
  let found: ListeningOrder | undefined;
  const rest: string[] = [];
  for (let i = 0; i < pieces.length; i++) {
    // "Please, stop listening for ten minutes, thank you" is one order in three pieces.
    const order = orderOf(pieces[i]!, local);
    if (order) {
      found = order;
      while (i + 1 < pieces.length && isCourtesy(pieces[i + 1]!)) i++;
      while (rest.length > 0 && isCourtesy(rest.at(-1)!)) rest.pop();
    } else rest.push(pieces[i]!);
  }
  return (
    found && {
      order: found,
      rest: rest
        .join('')
        .replace(/[\s,;]+$/, '')
        .trim(),
    }
  );
}

const wordsOf = (piece: string): string[] =>
  tokenise(piece)
    .filter((token) => token.kind !== 'mark')
    .map((token) => token.w);

const isPolite = (words: string): boolean => words === '' || POLITE.test(` ${words}`);
const isCourtesy = (piece: string): boolean => {
  const words = wordsOf(piece).join(' ');
  return isPolite(words) || LEADING.test(`${words} `);
};

function orderOf(piece: string, local: string): ListeningOrder | undefined {
  const tokens = tokenise(piece).filter((token) => token.kind !== 'mark');
  const said = tokens.map((token) => token.w).join(' ');
  if (CLOSED.test(said)) return { order: 'pause' };
  if (OPENED.test(said)) return { order: 'resume' };
  for (const [way, pattern] of WAY) if (pattern.test(said)) return { order: 'way', way };
  const closing = CLOSING.exec(said);
  if (!closing) return undefined;
  const from = closing[0].trim().split(' ').length;
  if (closing[1] === 'for') {
    const long =
      findDuration(tokens, from) ??
      coupleOf(
        tokens.map((t) => t.w),
        from,
      );
    if (!long || !isPolite(said.split(' ').slice(long.next).join(' '))) return undefined;
    return long.minutes > 0 && long.minutes <= LONGEST_MIN
      ? { order: 'pause', minutes: long.minutes }
      : { order: 'pause' };
  }
  const clock = findClock(tokens, from, true);
  if (!clock || !isPolite(said.split(' ').slice(clock.next).join(' '))) return undefined;
  return { order: 'pause', until: nextClock(clock.minute, clock.fixed, local) };
}

/** "a couple of minutes", "a few minutes", "the next hour". */
function coupleOf(words: string[], from: number): { minutes: number; next: number } | undefined {
  const found = /^(?:(?:a )?(couple|few)(?: of)? (minutes|hours)|hour) ?/.exec(
    `${words.slice(from).join(' ')} `,
  );
  if (!found) return undefined;
  const count = found[1] === 'few' ? 5 : found[1] === 'couple' ? 2 : 1;
  return {
    minutes: found[2] === 'minutes' ? count : count * 60,
    next: from + found[0].trim().split(' ').length,
  };
}

/** The next time that the clock shows this; an hour that is not fixed may be of the morning or the afternoon. */
function nextClock(minute: number, fixed: boolean, local: string): string {
  const now = wallMinutes(local);
  const step = fixed ? 24 * 60 : 12 * 60;
  let at = dayStart(now) + minute;
  while (at <= now) at += step;
  while (at - step > now) at -= step;
  return wallTime(at);
}
