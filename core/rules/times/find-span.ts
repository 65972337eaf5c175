import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { afterDeed, type ClockFound, clockEnd, findClock, headedByWork, readHour } from './find-clock.ts';
import {
  BREAKS_OFF,
  breakBehind,
  DAY_PART,
  DID_WORK,
  hoursAlone,
  hoursGoOn,
  inPartOfDay,
  KIND_OF_WORK,
  mealHours,
  onTimeSheet,
  onWork,
  WORK_DONE,
  WORK_NAMED,
  WORKED_ON_IT,
} from './hours-of-work.ts';
import { SPAN_JOINT } from './span-joint.ts';

/** `sure`: the words around it leave no doubt that it is a time and no pair of numbers. */
export type SpanFound = { next: number; start: ClockFound; end: ClockFound; sure: boolean; rule: string };

/** Is a kind of work at `k`, and nothing behind it that could be worked on? */
function endsWithWork(tokens: Token[], k: number): boolean {
  const next = w(tokens, k) === 'taking' && w(tokens, k + 1) === 'apart' ? k + 2 : k + 1;
  return (next > k + 1 || KIND_OF_WORK.test(w(tokens, k))) && BREAKS_OFF.test(w(tokens, next));
}

/**
 * A stretch: "10.15–12.10", "from nine to quarter to one", "seven to quarter to five", "half past twelve to two",
 * "7.30 to 9 pm", "between two and four". `led` when "from", "between", "since" or the like stands before.
 */
export function findSpan(
  tokens: Token[],
  i: number,
  led: 'from' | 'between' | 'since' | 'none',
): SpanFound | undefined {
  let start = findClock(tokens, i, true);
  if (!start) return undefined;
  let j = start.next;
  // "five to eleven this morning till ten past twelve"
  const part = DAY_PART.exec(`${w(tokens, j)} ${w(tokens, j + 1)}`)?.[0];
  if (part && SPAN_JOINT.has(w(tokens, j + part.split(' ').length))) j += part.split(' ').length;
  // "from 10 till 12", "from two to four": no minutes before the hour
  const kind =
    (KIND_OF_WORK.test(w(tokens, start.next)) || onWork(tokens, start.next)) &&
    /^(|,|\.|;|:|and|then|\n)$/.test(w(tokens, i - 1));
  const dated =
    kind ||
    // "cleaned the top. that was ten till eleven"
    (w(tokens, i - 1) === 'was' && w(tokens, i - 2) === 'that') ||
    // "patched 2-2. ten till eleven"
    (/^(\.|;|\n)$/.test(w(tokens, i - 1)) &&
      /^(till|until|til)$/.test(w(tokens, i + 1)) &&
      /^(|\.|,|;|\n|with|less|and)$/.test(w(tokens, start.next))) ||
    // "tied rows four and five, ten to twelve"
    afterDeed(tokens, i, start.next) ||
    // "worked 10 to 1"
    ((DID_WORK.test(w(tokens, i - 1)) ||
      // "mending ten till one", but "stopped mending ten to two"
      (KIND_OF_WORK.test(w(tokens, i - 1)) && /^(|,|\.|;|and|then|\n)$/.test(w(tokens, i - 2)))) &&
      /^(|,|\.|;|and|then|with|less|last|yesterday|this|today|tonight|\n)$/.test(w(tokens, start.next))) ||
    /^(today|yesterday|tonight|morning|afternoon|evening|night)$/.test(w(tokens, i - 1));
  if (
    start.rule === 'time.past-to' &&
    // "since ten to two" is a clock time
    led !== 'since' &&
    (led !== 'none' || dated) &&
    (!SPAN_JOINT.has(w(tokens, j)) || w(tokens, j) === 'and')
  ) {
    const hour = readHour(tokens, i);
    if (hour && hour.value <= 12 && SPAN_JOINT.has(w(tokens, hour.next))) {
      start = {
        next: hour.next,
        minute: (hour.value % 24) * 60,
        fixed: hour.value > 12,
        firm: false,
        rule: 'time.hour',
      };
      j = hour.next;
    }
  }
  // "from ten right through to ten past two", "nine straight on till noon"
  let on = j;
  while (on < j + 4 && /^(?:right|straight|clear|clean|all|the|way|through|thru|on|up)$/.test(w(tokens, on)))
    on++;
  if (on > j && /^(?:to|till|until|til)$/.test(w(tokens, on))) j = on;
  // "quarter past nine, no, quarter past ten till half eleven": the correction is read by the caller.
  const joint = w(tokens, j);
  if (!SPAN_JOINT.has(joint) || (joint === 'and' && led !== 'between')) return undefined;
  const end = findClock(tokens, j + 1, true);
  if (!end) return undefined;
  const day = `${w(tokens, end.next)} ${w(tokens, end.next + 1)}`;
  const told =
    /^(morning|afternoon|evening|night|tonight|today|yesterday|arvo)$/.test(w(tokens, i - 1)) ||
    /^(on|doing|of|at) (the|my|some|[a-z]+ing)\b/.test(day) ||
    /^(tonight|today|yesterday|last (night|evening)|this (morning|afternoon|evening|arvo))\b/.test(day) ||
    // "ten to twelve mending", but not "blocks ten to twelve"
    (KIND_OF_WORK.test(w(tokens, end.next)) && /^(|,|\.|;|:|and|then|\n)$/.test(w(tokens, i - 1))) ||
    // "six to eight: mending", "six - eight, mending", "six to eight taking apart", but "2-4: mending" and "row two, 3 to 5"
    (/^(|\.|;|\n)$/.test(w(tokens, i - 1)) &&
      (joint !== '-' || tokens[i]!.kind === 'word') &&
      ((/^[,:]$/.test(w(tokens, end.next)) && endsWithWork(tokens, end.next + 1)) ||
        (w(tokens, end.next) === 'taking' && endsWithWork(tokens, end.next)))) ||
    // "binding six to eight", "yesterday binding two to four"
    (w(tokens, i - 1) === 'binding' &&
      joint !== '-' &&
      /^(|\.|;|\n|,|yesterday|today|tonight|morning|afternoon|evening)$/.test(w(tokens, i - 2)) &&
      (BREAKS_OFF.test(w(tokens, end.next)) || w(tokens, end.next) === 'took')) ||
    // "taking apart: six to eight"
    (/^[,:]$/.test(w(tokens, i - 1)) &&
      w(tokens, i - 2) === 'apart' &&
      BREAKS_OFF.test(w(tokens, end.next))) ||
    // "mended seven to nine", "cutting 9 to 12, then tea": hours, for nothing stands behind them that could be counted
    afterDeed(tokens, i, end.next) ||
    headedByWork(tokens, i, end.next) ||
    breakBehind(tokens, i, end.next) ||
    onTimeSheet(tokens, i, j, end.next) ||
    mealHours(tokens, i, end.next) ||
    hoursGoOn(tokens, i) ||
    hoursAlone(tokens, i, j, end.next) ||
    // "Tues 2-4 mend, 20m tea"
    (/^(mon|tues?|wed|thur?s?|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday)$/.test(
      w(tokens, i - 1),
    ) &&
      WORK_NAMED.test(w(tokens, end.next))) ||
    (WORK_DONE.test(w(tokens, i - 1)) &&
      (BREAKS_OFF.test(w(tokens, end.next)) || KIND_OF_WORK.test(w(tokens, end.next))) &&
      joint !== '-') ||
    // "examined it 8 to 9"
    (w(tokens, i - 1) === 'it' &&
      WORKED_ON_IT.test(w(tokens, i - 2)) &&
      BREAKS_OFF.test(w(tokens, end.next)) &&
      joint !== '-') ||
    // "spent the morning on it, nine to twelve, mending", "all afternoon on the ties, one to three"
    (/^[,:]$/.test(w(tokens, i - 1)) && BREAKS_OFF.test(w(tokens, end.next)) && inPartOfDay(tokens, i - 1)) ||
    // "bound it, that was seven to half eight"
    (w(tokens, i - 1) === 'was' &&
      w(tokens, i - 2) === 'that' &&
      /^(|,|\.|;|\n|and|tonight|last|yesterday|today|this|with|less|minus|bar|but|so|then|all|including|in|not)$/.test(
        w(tokens, end.next),
      )) ||
    (/^([,:]|ran|lasted|went|was)$/.test(w(tokens, i - 1)) &&
      /ing$|^(survey|paperwork|today|yesterday|night|work)$/.test(w(tokens, i - 2)));
  const digital = start.rule === 'time.four-digits' && end.rule === 'time.four-digits';
  // "the label says 1910-1912": years
  if (digital && /^(says|said|reads?|dated|dates?|years?|c|ca|circa|made|born)$/.test(w(tokens, i - 1)))
    return undefined;
  const clear =
    digital ||
    end.anyHour !== undefined ||
    start.firm ||
    end.firm ||
    start.fixed ||
    end.fixed ||
    led === 'from' ||
    led === 'since' ||
    told;
  if (led === 'none' && !told && !digital) {
    const dotted = tokens[i]!.w.includes('.') || tokens[j + 1]?.w.includes('.');
    // "Half six to eight.": a sentence of its own
    const alone =
      /^(|\.|;|:|,|\n)$/.test(w(tokens, i - 1)) && /^(|\.|;|,|\n|then|and|again)$/.test(w(tokens, end.next));
    const parted = /^time\.(half|past-to|hour-minutes)$/;
    const sure =
      end.anyHour ||
      // "nine twenty five to ten to twelve": minutes at both ends are no blocks
      (parted.test(start.rule) && parted.test(end.rule)) ||
      // "pinned it all over half two to four": half an hour is no block's number
      ((start.rule === 'time.half' || end.rule === 'time.half') && clockEnd(tokens, end.next)) ||
      (alone && (parted.test(start.rule) || parted.test(end.rule))) ||
      (dotted && /^(lunch|tea|dinner|supper|break|smoko)$/.test(w(tokens, i - 1))) ||
      (dotted &&
        (WORK_NAMED.test(w(tokens, i - 1)) || WORK_NAMED.test(w(tokens, end.next))) &&
        clockEnd(tokens, end.next)) ||
      start.firm ||
      end.firm ||
      start.fixed ||
      end.fixed ||
      (tokens[i]!.w.includes('.') && tokens[j + 1]?.w.includes('.')) ||
      (joint !== 'to' && joint !== '-' && joint !== 'and' && joint !== 'through');
    if (!sure) return undefined;
    if (
      tokens[i]!.kind === 'number' &&
      !tokens[i]!.w.includes(':') &&
      !tokens[i]!.w.includes('.') &&
      joint === '-' &&
      !end.firm &&
      !dotted &&
      !/\d\d\d/.test(tokens[i]!.w)
    )
      return undefined;
  }
  // "7.30 to 9 pm": the afternoon holds for both where it can
  if (end.fixed && !start.fixed && end.minute >= 720) {
    const later = start.minute < 720 ? start.minute + 720 : start.minute;
    if (later < end.minute)
      return {
        next: end.next,
        start: { ...start, minute: later, fixed: true },
        end,
        sure: clear,
        rule: 'time.span',
      };
    return { next: end.next, start: { ...start, fixed: true }, end, sure: clear, rule: 'time.span' };
  }
  return { next: end.next, start, end, sure: clear, rule: 'time.span' };
}
