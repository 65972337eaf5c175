import { MINUTE_WORDS } from '../../lexicon/units.ts';
import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { HALF_WORDS } from './find-duration.ts';
import { BREAKS_OFF, KIND_OF_WORK } from './hours-of-work.ts';
import { SPAN_JOINT } from './span-joint.ts';

/** Of these no hundred is an hour. */
const NO_HUNDRED = /^(?:one|two|three|four|five|six|seven|eight|nine|a|[1-9])$/;

/** A clock reading before it is known whether it is morning or afternoon: minutes after midnight. */
export type ClockFound = {
  next: number;
  minute: number;
  fixed: boolean;
  firm: boolean;
  /** "at twenty past", "until ten to": only the minute was said, of whatever hour it was. */
  anyHour?: true;
  rule: string;
};

/**
 * A clock time. `firm` forms need no help ("quarter to six", "10:45", "6.20 pm", "noon", "half past two"); bare ones
 * ("nine", "nine fifteen", "10.15", "1045") are only read where `expected`, after "at", "since", "till" and the like.
 */
export function findClock(tokens: Token[], i: number, expected: boolean): ClockFound | undefined {
  // "a hundred and eighty four across by two hundred and ten"
  if (w(tokens, i + 1) === 'hundred' && w(tokens, i + 2) === 'and') return undefined;
  let j = i;
  while (
    expected &&
    [
      'about',
      'around',
      'just',
      'like',
      'roughly',
      'say',
      'after',
      'oh',
      'the',
      'gone',
      'nearly',
      'bang',
      'on',
      'maybe',
      'somewhere',
      'only',
      ',',
    ].includes(w(tokens, j)) &&
    j < i + 3
  ) {
    if (w(tokens, j) === 'the') break;
    j++;
  }
  const t = tokens[j];
  // "about two hundred pins", but "at fourteen hundred"
  if (!t || (/^(?:hundred|thousand|dozen)$/.test(w(tokens, j + 1)) && NO_HUNDRED.test(t.w))) return undefined;
  if (t.w === 'noon' || t.w === 'midday' || t.w === 'lunchtime')
    return t.w === 'lunchtime'
      ? undefined
      : { next: j + 1, minute: 720, fixed: true, firm: true, rule: 'time.noon' };
  if (t.w === 'midnight') return { next: j + 1, minute: 0, fixed: true, firm: true, rule: 'time.midnight' };
  // "half past six", "half six" (half past, as in Britain), "quarter to six", "a quarter after five", "ten to two", "twenty five past nine"
  let k = j;
  if (w(tokens, k) === 'a' && w(tokens, k + 1) === 'quarter') k++;
  const head = w(tokens, k);
  const joint = (m: number): 'past' | 'to' | undefined => {
    const word = w(tokens, m);
    return word === 'past' || word === 'after'
      ? 'past'
      : word === 'to' || word === 'til' || word === 'till' || word === 'of' || word === 'before'
        ? 'to'
        : undefined;
  };
  if (HALF_WORDS.has(head)) {
    const past = joint(k + 1) === 'past' ? k + 2 : undefined;
    const hour = past ? hourOrTwelve(tokens, past) : readHour(tokens, k + 1);
    const bare = past && expected && !hour ? pastTheHour(tokens, 30, 'past', past) : undefined;
    if (bare) return bare;
    if (
      hour &&
      (past || !['hour', 'yard', 'dozen'].includes(w(tokens, hour.next))) &&
      (past || expected || clockEnd(tokens, hour.next))
    )
      return half(
        {
          next: hour.next,
          minute: (hour.value % 24) * 60 + 30,
          fixed: hour.value > 12 || isTwelve(tokens, hour.next - 1),
          firm: past !== undefined,
          rule: 'time.half',
        },
        tokens,
      );
  }
  // "five and twenty past three"
  const old = head === 'five' && w(tokens, k + 1) === 'and' && w(tokens, k + 2) === 'twenty';
  const count =
    head === 'quarter' ? { value: 15, next: k + 1 } : old ? { value: 25, next: k + 3 } : readCount(tokens, k);
  if (count && count.value > 0 && count.value < 60) {
    let m = count.next;
    if (MINUTE_WORDS.has(w(tokens, m))) m++;
    const side = joint(m);
    if (side) {
      const hour = hourOrTwelve(tokens, m + 1);
      const twelve = isTwelve(tokens, m + 1);
      // "of" is no clock but after a quarter or round minutes; "four to five" is a range, "ten to two" a clock.
      const roundEnough = head === 'quarter' || count.value % 5 === 0 || m > count.next;
      const needsCare = side === 'to' && w(tokens, m) !== 'til' && head !== 'quarter';
      if (
        hour &&
        (hour.value <= 12 || twelve) &&
        // "the piecing was ten to noon" is a stretch, "stopped at ten to noon" is not
        !(
          twelve &&
          side === 'to' &&
          m === count.next &&
          count.value <= 12 &&
          !MOMENT_LEADS.has(w(tokens, k - 1))
        ) &&
        (side === 'past' || roundEnough) &&
        (w(tokens, m) !== 'of' || head === 'quarter' || (expected && clockEnd(tokens, hour.next))) &&
        !(needsCare && !expected && !clockEnd(tokens, hour.next))
      )
        if (!(w(tokens, m) === 'to' && count.value > 30))
          return half(
            {
              next: hour.next,
              minute:
                side === 'past'
                  ? (hour.value % 24) * 60 + count.value
                  : (((hour.value + 23) % 24) * 60 + 60 - count.value) % 1440,
              fixed: hour.value > 12 || twelve,
              firm: head === 'quarter' || side === 'past' || twelve,
              rule: 'time.past-to',
            },
            tokens,
          );
      const bare =
        (expected || isPutRight(tokens, i)) && !hour
          ? pastTheHour(tokens, count.value, side, m + 1)
          : undefined;
      if (bare) return bare;
    }
  }
  // digits: "10:45", "10.15", "1045", "10 45", "9"
  if (t.kind === 'number') {
    const dotted = /^(\d{1,2})[:.](\d\d)$/.exec(t.w);
    if (dotted && Number(dotted[1]) < 25 && Number(dotted[2]) < 60) {
      const clock: ClockFound = {
        next: j + 1,
        minute: Number(dotted[1]) * 60 + Number(dotted[2]),
        fixed:
          Number(dotted[1]) > 12 ||
          Number(dotted[1]) === 0 ||
          (t.w.includes(':') && dotted[1]!.length === 2 && Number(dotted[1]) < 10 && t.w.startsWith('0')),
        firm: t.w.includes(':'),
        rule: 'time.digits',
      };
      const h = half(clock, tokens);
      if (h.firm || expected) return h;
      return undefined;
    }
    // "14h30"
    const minutes = tokens[j + 2];
    if (
      /^\d{1,2}$/.test(t.w) &&
      w(tokens, j + 1) === 'h' &&
      tokens[j + 1]!.glued &&
      minutes?.glued &&
      /^[0-5]\d$/.test(minutes.w)
    ) {
      const joined = SPAN_JOINT.has(w(tokens, j + 3)) && w(tokens, j + 5) === 'h';
      if (Number(t.w) < 24 && (Number(t.w) > 6 || expected || joined))
        return {
          next: j + 3,
          minute: Number(t.w) * 60 + Number(minutes.w),
          fixed: Number(t.w) > 12,
          firm: true,
          rule: 'time.digits',
        };
    }
    const run = /^(\d{1,2})(\d\d)$/.exec(t.w);
    if (run && Number(run[1]) < 24 && Number(run[2]) < 60) {
      const h = half(
        {
          next: j + 1,
          minute: Number(run[1]) * 60 + Number(run[2]),
          // "0800" is written on a clock of 24 hours
          fixed: Number(run[1]) > 12 || (run[1]!.length === 2 && run[1]!.startsWith('0')),
          firm: false,
          rule: 'time.four-digits',
        },
        tokens,
      );
      if (w(tokens, h.next) === 'h' || w(tokens, h.next) === 'hrs')
        return { ...h, next: h.next + 1, firm: true, fixed: true };
      if (h.firm || (expected && clockEnd(tokens, h.next))) return h;
      return undefined;
    }
  }
  const late = expected || FRONT.has(w(tokens, j - 1)) ? clockOf24(tokens, j) : undefined;
  if (late && (expected || isFronted(tokens, j, late.next))) return late;
  const hour = readHour(tokens, j);
  if (!hour) return undefined;
  const oclock =
    w(tokens, hour.next) === "o'clock" ||
    w(tokens, hour.next) === 'oclock' ||
    (w(tokens, hour.next) === 'o' && w(tokens, hour.next + 1) === 'clock');
  if (oclock)
    return half(
      {
        next: hour.next + (w(tokens, hour.next) === 'o' ? 2 : 1),
        minute: (hour.value % 24) * 60,
        fixed: hour.value > 12,
        firm: true,
        rule: 'time.oclock',
      },
      tokens,
    );
  // "nine-fifteen", "eleven-oh-five"
  let mm = hour.next;
  if (w(tokens, mm) === '-' && tokens[mm]!.glued && hour.inWords && tokens[mm + 1]?.glued) mm++;
  const oh = w(tokens, mm) === 'oh' || w(tokens, mm) === 'o';
  if (oh && w(tokens, mm + 1) === '-') mm++;
  const minutes = readCount(tokens, oh ? mm + 1 : mm);
  // "from six to eight 10 min break": an hour, and the length of what is taken off it
  const breakNext =
    !oh &&
    minutes !== undefined &&
    MINUTE_WORDS.has(w(tokens, minutes.next)) &&
    /^(?:break|off|out|lunch|tea|coffee|dinner|supper|phone|for|brew|cuppa|smoko|rest|pause)$/.test(
      w(tokens, minutes.next + 1),
    );
  if (minutes && !breakNext && minutes.value < 60 && (oh ? minutes.value < 10 : minutes.value >= 10)) {
    const h = half(
      {
        next: minutes.next,
        minute: (hour.value % 24) * 60 + minutes.value,
        fixed: hour.value > 12,
        firm: false,
        rule: 'time.hour-minutes',
      },
      tokens,
    );
    if ((h.firm || expected) && !MINUTE_WORDS.has(w(tokens, minutes.next))) return h;
  }
  const h = half(
    {
      next: hour.next,
      minute: (hour.value % 24) * 60,
      fixed: hour.value > 12,
      firm: false,
      rule: 'time.hour',
    },
    tokens,
  );
  if (h.firm) return h;
  return expected && (breakNext || clockEnd(tokens, h.next)) ? h : undefined;
}

/** "nineteen hundred", "fourteen fifteen", "sixteen hundred hours": a clock of 24 hours in words; "since nineteen twenty" is a year. */
function clockOf24(tokens: Token[], i: number): ClockFound | undefined {
  const hour = readCount(tokens, i);
  if (!hour?.inWords || hour.value < 13 || hour.value > 23) return undefined;
  const hundred = w(tokens, hour.next) === 'hundred';
  const minutes = hundred ? undefined : readCount(tokens, hour.next);
  if (!hundred && !(minutes?.inWords && minutes.value >= 10 && minutes.value < 60)) return undefined;
  if (
    !hundred &&
    (hour.value === 18 || hour.value === 19) &&
    !/^(at|till|until|to|no|not)$/.test(w(tokens, i - 1)) &&
    !isOfWork(tokens, i, minutes!.next)
  )
    return undefined;
  let next = hundred ? hour.next + 1 : minutes!.next;
  if (hundred && w(tokens, next) === 'and') return undefined;
  if (/^(hours|hrs|h)$/.test(w(tokens, next))) next++;
  return {
    next,
    minute: hour.value * 60 + (minutes?.value ?? 0),
    fixed: true,
    firm: false,
    rule: 'time.of-24-hours',
  };
}

/** "mending since eighteen fifteen", "from nineteen fifteen to twenty forty five", "eighteen ten I started": no year. */
const isOfWork = (tokens: Token[], i: number, next: number): boolean =>
  (/^(since|from)$/.test(w(tokens, i - 1)) && KIND_OF_WORK.test(w(tokens, i - 2))) ||
  (/^(to|till|until|-)$/.test(w(tokens, next)) &&
    (readCount(tokens, next + 1)?.inWords ?? false) &&
    clockOf24(tokens, next + 1) !== undefined) ||
  isFronted(tokens, i, next);

/** "twenty two thirty I stopped at last night", "half ten it was when I finished": the hour is told first. */
const isFronted = (tokens: Token[], i: number, next: number): boolean =>
  FRONT.has(w(tokens, i - 1)) &&
  FRONTED.test(
    ` ${tokens
      .slice(next, next + 6)
      .map((t) => t.w)
      .join(' ')} `,
  );
const FRONT = new Set(['', ',', '.', ';', 'and', 'but', 'so', 'then']);
const FRONTED =
  /^ (?:(?:it|that) (?:was|is) )?(?:when |that )?(?:i|we) (?:'d )?(?:stopped|finished|started|began|quit|left off|knocked off|packed (?:it )?(?:in|up)|gave (?:it )?up) /;

/** "started at quarter past one, no, twenty past it was": of a time that was told just before. */
function isPutRight(tokens: Token[], i: number): boolean {
  let k = i - 1;
  while (
    k > i - 5 &&
    /^(?:,|no|sorry|well|wait|rather|actually|nearer|make|that|it|was|more|like)$/.test(w(tokens, k))
  )
    k--;
  const said = tokens
    .slice(k + 1, i)
    .some((t) => /^(?:no|sorry|wait|rather|actually|nearer|make)$/.test(t.w));
  return (
    said && tokens.slice(Math.max(0, k - 4), k + 1).some((t) => CLOCK_SAID.test(t.w) || t.kind === 'number')
  );
}
const CLOCK_SAID =
  /^(?:past|to|at|o'clock|till|until|since|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)$/;

/** "at twenty past", "stopped at quarter to": the hour was plain to her. */
function pastTheHour(
  tokens: Token[],
  minutes: number,
  side: 'past' | 'to',
  next: number,
): ClockFound | undefined {
  const itWas = w(tokens, next) === 'it' && /^(?:was|is|'s|must)$/.test(w(tokens, next + 1));
  if (minutes % 5 || minutes > 30 || !(AFTER_CLOCK.has(w(tokens, next)) || itWas)) return undefined;
  // "of" and "before" need their hour
  if (!/^(past|to|til|till)$/.test(w(tokens, next - 1))) return undefined;
  return {
    next,
    minute: side === 'past' ? minutes : 60 - minutes,
    fixed: false,
    firm: false,
    anyHour: true,
    rule: 'time.past-the-hour',
  };
}
const AFTER_CLOCK = new Set([
  '',
  ',',
  '.',
  ';',
  '!',
  '?',
  '\n',
  'and',
  'so',
  'because',
  'cos',
  'then',
  'but',
  'when',
]);

export function readHour(
  tokens: Token[],
  i: number,
): { value: number; next: number; inWords: boolean } | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  const count = readCount(tokens, i);
  return count && count.value >= 1 && count.value <= 24 && !(count.inWords && count.value > 12)
    ? count
    : undefined;
}

const MOMENT_LEADS = new Set(['at', 'till', 'til', 'until', 'by', 'to', 'around', 'about', 'since']);
/** "half past midnight", "ten to noon": the hour by its name. */
const hourOrTwelve = (tokens: Token[], i: number): ReturnType<typeof readHour> =>
  isTwelve(tokens, i)
    ? { value: w(tokens, i) === 'midnight' ? 24 : 12, next: i + 1, inWords: true }
    : readHour(tokens, i);
const isTwelve = (tokens: Token[], i: number): boolean => /^(?:midnight|noon|midday)$/.test(w(tokens, i));

/** "pm", "in the morning", "a.m.", "at night". */
function half(clock: ClockFound, tokens: Token[]): ClockFound {
  let j = clock.next;
  let side: 'am' | 'pm' | undefined;
  const word = w(tokens, j);
  if (word === 'am' || word === 'pm') {
    side = word;
    j++;
  } else if (
    (word === 'a' || word === 'p') &&
    w(tokens, j + 1) === '.' &&
    (w(tokens, j + 2) === 'm' || w(tokens, j + 2) === 'm.')
  ) {
    side = word === 'a' ? 'am' : 'pm';
    j += w(tokens, j + 3) === '.' && tokens[j + 3]!.glued ? 4 : 3;
  } else if ((word === 'a' || word === 'p') && tokens[j]!.glued) {
    // "7:50p", "started survey 6.45p. 1-1 hole"
    side = word === 'a' ? 'am' : 'pm';
    j++;
  } else if ((word === 'a' || word === 'p') && w(tokens, j + 1) === 'm') {
    side = word === 'a' ? 'am' : 'pm';
    j += 2;
  } else if (
    word === 'in' &&
    w(tokens, j + 1) === 'the' &&
    ['morning', 'afternoon', 'evening', 'arvo'].includes(w(tokens, j + 2))
  ) {
    side = w(tokens, j + 2) === 'morning' ? 'am' : 'pm';
    j += 3;
  } else if (word === 'at' && w(tokens, j + 1) === 'night') {
    side = 'pm';
    j += 2;
  }
  if (!side || clock.minute >= 780) return side ? { ...clock, next: j } : clock;
  const hour = Math.floor(clock.minute / 60);
  const minute = clock.minute % 60;
  const at = side === 'am' ? (hour % 12) * 60 + minute : (hour % 12) * 60 + 720 + minute;
  return { ...clock, next: j, minute: at, fixed: true, firm: true };
}

/** A bare number is only a clock where nothing that it could count follows. */
export function clockEnd(tokens: Token[], i: number): boolean {
  const t = tokens[i];
  if (!t) return true;
  return (
    // "from one to three in backstitch": no inches behind a number in words
    !(
      COUNTED.has(t.w) && !(t.w === 'in' && tokens[i - 1]?.kind === 'word' && tokens[i + 1]?.kind === 'word')
    ) &&
    !(t.kind === 'number') &&
    t.w !== '/' &&
    !isMixed(tokens, i) &&
    !(t.w === '-' && t.glued && tokens[i + 1]?.kind === 'word' && COUNTED.has(tokens[i + 1]!.w))
  );
}
/** "strips cut at two and a quarter": a number with its fraction, and no hour. */
const isMixed = (tokens: Token[], i: number): boolean =>
  w(tokens, i) === 'and' &&
  /^(a|one|three|five|seven)$/.test(w(tokens, i + 1)) &&
  /^(half|quarters?|eighths?|thirds?)$/.test(w(tokens, i + 2)) &&
  !/^(hours?|of|past|to|after)$/.test(w(tokens, i + 3));
const COUNTED = new Set(
  'inch inches in cm mm m metre metres meter meters yard yards yd yds minutes minute min mins hour hours hr hrs h spools spool reels reel skeins skein packs pack blocks block rows row columns col g grams oz ml ft foot feet pounds pound dollars quid euros percent dozen of pins ties stitches pieces pence more places long wide deep high apart across down'.split(
    ' ',
  ),
);

/**
 * "patched 3-2, nine to ten", "bound it by hand, 1.15 to 3, used 7 yards", "re-sewed it (two to quarter past)": hours behind a deed told with
 * its one place, and no more rows of a list.
 */
export function afterDeed(tokens: Token[], i: number, next: number): boolean {
  const bracket = w(tokens, i - 1) === '(' && w(tokens, next) === ')';
  if (!bracket && !(w(tokens, i - 1) === ',' && /^(|,|\.|;|!|\n|and)$/.test(w(tokens, next)))) return false;
  let from = i - 1;
  while (from > 0 && !/^[.;!?\n]$/.test(w(tokens, from - 1))) from--;
  const said = tokens.slice(from, i - 1).map((t) => t.w);
  if (!said.some((x) => DEED.test(x))) return false;
  // "quilted row two, eleven to one": as many blocks no row has, nor do they run backwards
  const first = readCount(tokens, i)?.value ?? 0;
  const hours = first >= 9 || (readCount(tokens, next - 1)?.value ?? 24) < first;
  const counts = /^(rows?|columns?|blocks|squares)$/.test(said.at(-2) ?? '');
  const listed = said.at(-2) === ',' && readCount(tokens, i - 2) !== undefined;
  if (!hours && (counts || listed)) return false;
  // "tied row two, one to three and row four": what goes on behind may be more of the list
  return bracket || !/^(?:,|and)$/.test(w(tokens, next)) || !said.some((x) => COUNTS_BLOCKS.test(x));
}
const COUNTS_BLOCKS =
  /^(?:rows?|r\d?|cols?|columns?|c\d?|blocks?|blks?|squares?|pieces?|seams?|first|second|third)$/;
/** "Mending at the table 2 to 4", "binding by hand tonight, 7 to 9": the kind of work begins the sentence, and the hours end it. */
export function headedByWork(tokens: Token[], i: number, next: number): boolean {
  if (!BREAKS_OFF.test(w(tokens, next))) return false;
  let from = i;
  while (from > 0 && i - from < 8 && !/^[.;!?\n]$/.test(w(tokens, from - 1))) from--;
  return (
    KIND_OF_WORK.test(w(tokens, from)) &&
    i - from >= 3 &&
    tokens
      .slice(from + 1, i)
      .every(
        (t, k, all) => (t.kind === 'word' && !PLACE_WORD.test(t.w)) || (t.w === ',' && k === all.length - 1),
      )
  );
}
const PLACE_WORD =
  /^(?:rows?|blocks?|columns?|squares?|corners?|borders?|seams?|and|from|between|strips?|with|for)$/;

const DEED =
  /^(?:(?:re)?(?:patched|darned|tied|quilted|pieced|mended|sewed|sewn|stitched|stitching|basted|unpicked|pressed|cut|vacuumed|cleaned|bound|trimmed|couched|replaced|backed|closed|sewed|netted|washed|dried|layered|pinned|stabili[sz]ed|lined|joined|measured|photographed|surveyed|removed|stripped|squared|whipped|whipstitched|herringboned|ironed|brushed|steamed)|took|pulled|put|laid|did|got|off|out|carried|went|worked|more|again)$/;
