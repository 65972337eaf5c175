import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordsBetween } from '../words-between.ts';

/** After these a bare number is a clock time, when the note is about work at all. */
const CLOCK_LEADS = new Set(
  'at since till until til from by around about between before after stopped started quit finished began begun was off packed ended ceased starting stopping start stop begin finish say'.split(
    ' ',
  ),
);

/** With "one" before it, a thing that there are two or more of. */
const ONE_OF_TWO =
  /^(?:side|end|edge|corner|face|block|square|fold|crease|seam|selvedge|selvage|hem|border|row|column|stitch|tie|line|part|spot|thing|thread|colour|color|cloth|fabric|of|or|single)$/;

/** Is what stands at `i` a clock time, in a note that tells of work? */
export const isClockExpected = (tokens: Token[], i: number): boolean =>
  // "pieced from 5 strips"
  !/^(strips?|pieces?|scraps?|lengths?|widths?|squares|blocks|patches|sides|edges|corners)$/.test(
    tokens[i + 1]?.w ?? '',
  ) &&
  // "runs from one side to the other", "from one end to the next"
  !(tokens[i]!.w === 'one' && ONE_OF_TWO.test(tokens[i + 1]?.w ?? '')) &&
  ((CLOCK_LEADS.has(tokens[i - 1]?.w ?? '') && !isSecondSide(tokens, i)) ||
    clockAwaited(tokens, i) ||
    isBehindMark(tokens, i) ||
    // "that was three till now"
    (/^(till|until|til)$/.test(tokens[i + 1]?.w ?? '') &&
      tokens[/^(just|right)$/.test(tokens[i + 2]?.w ?? '') ? i + 3 : i + 2]?.w === 'now'));

/** "75 centimetres by 110": the other side of what is measured, and no time. */
const isSecondSide = (tokens: Token[], i: number): boolean =>
  tokens[i - 1]?.w === 'by' &&
  (/^(in|inch|inches|cm|mm|m|ft|foot|feet|centimetres?|centimeters?|metres?|meters?|")$/.test(
    tokens[i - 2]?.w ?? '',
  ) ||
    tokens[i - 2]?.kind === 'number');

/** "downed tools 1245", "packed up 1730", "called it a day 4.15": figures of a clock right behind words for coming or going. */
const isBehindMark = (tokens: Token[], i: number): boolean =>
  /^(?:[01]?\d|2[0-3])[.:]?[0-5]\d$/.test(tokens[i]!.w) &&
  /^(?:tools|down|up|off|out|in|day|night|quits|work|going|away|over|halt|again|shop|head|it)$/.test(
    tokens[i - 1]?.w ?? '',
  ) &&
  MARK_WORDS.test(wordsBetween(tokens, Math.max(0, i - 5), i)) &&
  !/^(?:cm|mm|in|inches|m|yds?|yards?|metres?|g|oz|ml|x|by|each|apiece|ea|-)$/.test(tokens[i + 1]?.w ?? '');
const MARK_WORDS =
  / (?:down(?:ed|ing)? (?:my )?tools|(?:tools|pens|needles?|scissors) down|(?:pack|wrap|knock|clock|sign|log|shut)(?:ped|p?ed|ked|ged)?(?: it)?(?: all)? (?:up|off|out|in|away|over|shop|on the head)|call(?:ed)?(?: it)? (?:a (?:day|night|halt)|quits)|shut up shop|(?:set|got|get|back) (?:to|at) (?:it|work)|(?:got|get) going|(?:back at|at) it again) $/;

/** "six, started mending", "six thirty i stopped the tying": an hour at the head, and the beginning or end of a named work behind it. */
function headsWork(tokens: Token[], i: number): boolean {
  if (!/^(?:|[.;\n])$/.test(tokens[i - 1]?.w ?? '')) return false;
  const said = wordsBetween(tokens, i, i + 9);
  const found = HOUR_THEN_MARK.exec(said);
  // "1: started mending" may be the first of a list
  return found !== null && !(found[1] && /^ \d+ :/.test(said));
}
const WORK_NAME =
  '(?:on |with )?(?:the |my )?(?:mending|darning|patching|cutting|piecing|tying|quilting|binding|cleaning|washing|pressing|layering|basting|pinning|unpicking|survey|surveying|paperwork|shopping|taking apart) ';
const HOUR_WORD = '(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|1[0-2]|[1-9])';
const HOUR_THEN_MARK = new RegExp(
  `^ ${HOUR_WORD} (?:(?:ten|fifteen|twenty|thirty|forty|fifty|\\d\\d)(?: five)? )?([,:] )?(?:i |we )?(?:started|began|stopped|finished|start|stop|finish|begin) ${WORK_NAME}`,
);

/** "started mending six stopped half seven": the hour of the beginning, and no number of blocks, for the end is told right behind it. */
const betweenMarks = (tokens: Token[], i: number): boolean =>
  STARTED_WORK.test(wordsBetween(tokens, i - 5, i)) && HOUR_THEN_STOP.test(wordsBetween(tokens, i, i + 6));
const STARTED_WORK = new RegExp(` (?:started|began|start|begin) ${WORK_NAME}$`);
const HOUR_THEN_STOP = new RegExp(
  `^ ${HOUR_WORD} (?:(?:ten|fifteen|twenty|thirty|forty|fifty|\\d\\d)(?: five)? )?(?:, |and )?(?:stopped|finished|stop|finish|quit) `,
);

const OH_MINUTES = /^(?:one|two|three|four|five|six|seven|eight|nine|[1-9])$/;
const WHEN_I =
  /^(?:(?:five|ten|fifteen|twenty|thirty|forty|fifty|\d\d)(?: five)? )?(?:it )?(?:is|was|'s) (?:when|before|by the time) (?:i|we) /;

/** "survey done 7.40", "it's ten to nine": a time although no "at" stands before it. */
function clockAwaited(tokens: Token[], i: number): boolean {
  const before = tokens[i - 1]?.w ?? '';
  if (before === "'s" && /^(it|now)$/.test(tokens[i - 2]?.w ?? '')) return true;
  // "two fifteen is when I picked up the piecing again"
  if (
    (tokens[i]!.kind === 'number' || startsNumber(tokens[i]!.w)) &&
    tokens.some((t) => t.w === 'when' || t.w === 'before' || t.w === 'time') &&
    WHEN_I.test(wordsBetween(tokens, i + 1, i + 9).trimStart())
  )
    return true;
  // "clocked in for the mending, ten oh five"
  if (/^(?:oh|o|zero)$/.test(tokens[i + 1]?.w ?? '') && OH_MINUTES.test(tokens[i + 2]?.w ?? ''))
    return /^(?:|[.,;:)\n]|and|then|--|-)$/.test(tokens[i + 3]?.w ?? '');
  if (headsWork(tokens, i) || betweenMarks(tokens, i)) return true;
  // "1045 started survey"
  if (
    /^([01]?\d|2[0-3])[.:]?[0-5]\d$/.test(tokens[i]!.w) &&
    (i === 0 || /^[.;,\n]$/.test(before)) &&
    /^(started|start|starting|began|begin|beginning|stopped|stop|stopping|finished|finish|quit|survey|back|done)$/.test(
      tokens[i + 1]?.w ?? '',
    )
  )
    return true;
  // "0905 on, mending", "11.40 off"
  if (
    /^(?:[01]\d|2[0-3])[0-5]\d$|^(?:[01]?\d|2[0-3])[.:][0-5]\d$/.test(tokens[i]!.w) &&
    (i === 0 || /^[.;,\n]$/.test(before)) &&
    /^(?:on|off|in|out)$/.test(tokens[i + 1]?.w ?? '') &&
    /^(?:|,|;|\.|-|\n)$/.test(tokens[i + 2]?.w ?? '')
  )
    return true;
  // "start survey 0915"
  const figures =
    /^0\d[0-5]\d$/.test(tokens[i]!.w) ||
    // "ceased 1030", "resumed 1100 with the survey"
    (/^(?:1\d|2[0-3])[0-5][05]$/.test(tokens[i]!.w) &&
      /^(ceased|ended|end|done|fin|finish|stop|start|begin|begun|stopped|finished|started|resumed|commenced|began|restarted|paused|completed|complete|quit|until|till|from|off|back)$/.test(
        before,
      ));
  // "finished mending 415", "done for today 245"
  const bare =
    /^(?:1[0-2]|[1-9])[0-5][05]$/.test(tokens[i]!.w) &&
    /^(?:mending|cutting|piecing|tying|quilting|binding|cleaning|basting|layering|today|tonight|survey)$/.test(
      before,
    ) &&
    !/^(?:cm|mm|in|m|yd|yds|yards?|ml|g|x|by|stitches|ties|blocks|pieces|minutes|mins?)$/.test(
      tokens[i + 1]?.w ?? '',
    );
  if (!figures && !bare && !/^([01]?\d|2[0-3])[.:][0-5]\d$/.test(tokens[i]!.w)) return false;
  for (let k = i - 1; k >= Math.max(0, i - 3); k--)
    if (
      /^(done|finished|finish|stopped|stop|started|start|begin|began|off|on|over|closed|ended|quit|back|paused|resum(?:ed?|ing)|commenced|survey|mending|cutting|piecing|tying|quilting|binding|cleaning|basting|layering|unpicking|paperwork)$/.test(
        tokens[k]!.w,
      )
    )
      return !/^(cm|mm|in|m|yd|yds|yards?|metres?|inches|g|oz|ml|each|apiece|ea)$/.test(
        tokens[i + 1]?.w ?? '',
      );
  return false;
}
