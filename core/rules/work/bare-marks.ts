import type { Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { ReaderState } from '../reader-state.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';
import { closingWords } from './closing-words.ts';
import { hereFrom, type Mark, stopsHere } from './marks-of.ts';
import type { Slots } from './slots.ts';
import { type Named, nearTask, nearTaskBefore } from './task-near.ts';
import { hasObject, isLight, isProcess } from './work-items.ts';

/** Adds a draft of work: its task, its times, the rule and the words that it comes from. */
export type Push = (
  task: Named | { task: Task } | undefined,
  slots: Slots,
  rule: string,
  on: Item[],
  from: number,
  to: number,
) => void;

const BACK =
  / (back (at|to|on) (it|work)|back at it|on the clock( again)?|(right|ok|okay) (, )?down to it|carrying on|resuming|right back to it|starting again|(?<! (?:it|them|that|those|these|this|one|ones|came|come|goes|went|taken|took|patch|backing|binding|batting|label|border) )off again|on we go|picking (it|things) (back )?up again|back in the chair|(?<=^ (?:(?:ok|okay|right|well|so|there) )+(?:, )?)back(?: now| here| again)?|(?:i|we) (?:'m|am|'re|are) back(?: now| again| here)?|back (from|after) (my |the |a )?(tea |lunch |coffee )?(lunch|tea|dinner|supper|break|breakfast|coffee|walk|school run|shop|shops|door|phone)|back to work( after .*)?) $/;

const SHORT_WHILE =
  '(?:five|ten|fifteen|twenty|thirty|a (?:bit|minute|moment|sec|second|tick|jiffy|while)|(?:\\w+ ){0,3}(?:minutes?|mins?|hour|hr))';
/** "taking ten", "five minute breather", "tea break", "short break, back in ten". */
const BREAK = new RegExp(
  `^ (?:(?:ok|okay|right|so|just|well|and|time for|i 'm|a|,) )*(?:(?:taking|having|take|need|grabbing) (?:a |my )?${SHORT_WHILE}(?: (?:off|out|break|now|here|(?:with|for) (?:a|some) \\w+))*|(?:having |taking |need |grabbing )?(?:a )?(?:quick |short |wee |little |bit of a |my )*(?:${SHORT_WHILE} )?(?:tea |lunch |coffee |supper |dinner |dog )?(?:break|breather)(?: now| time| for (?:a )?(?:lunch|tea|supper|dinner|coffee|cuppa|bit))*|back in ${SHORT_WHILE})(?: , back in ${SHORT_WHILE})? $`,
);

/** Not now: "when I start", "going to stop", "want to get cracking". */
const LATER =
  / (if|when|before|after|once|must|will|'ll|gonna|should|could|might|ca n't|never|next|((want|wants|need|needs|going|about|have|hope|hoping|plan|planning|mean|meant|ready|like|used|able|ought) to( be)?)|to|((when|before|until|till|after|once|if) i)) (just |really |then |be )?$/;

/** Words for going on with what was in hand. */
const GOES_ON =
  /^(back|resum|pick|took|take|taking|carr|crack|off we go|(get|got|getting) (going|started|back|cracking|to work)|(went|going|go|gone) back)/;

/** Words of a stop that are as often said of a thing: only "for tonight" and the like makes them hers. */
const NOT_SELF =
  /^(stops|quit|finishes|concludes|completes|wraps( up)?|winds up|finish|finished|finishing|end|ended|ending|ends|cease|ceased|closed|off|done|over|complete|completed|till|until|til|finish(ed|ing)? (off|for)|(gave|give|giving) (it )?up|knock(ed|ing)? over|(take|took|taking) on a break)$/;

const LEAVE = new Set([
  'because',
  'cos',
  'early',
  'when',
  'there',
  'here',
  'now',
  'for',
  'it',
  'tonight',
  'today',
  'me',
  'up',
  'in',
  'off',
  'a',
  '',
]);

/** Where "on to the mending now", "now the piecing", "on with the tying" begins behind a stop. */
function nextBegins(items: Item[], from: number): number {
  for (let k = from; k <= from + 3 && k < items.length; k++) {
    const led =
      /^ (?:moving on to|on to|onto|on with|over to|straight to|now for|now|then)(?: the| some)? /.exec(
        wordsBetween(items, k, k + 5),
      );
    const task = led ? k + led[0].trim().split(' ').length : -1;
    if (items[task]?.task && !hasObject(items, task)) return k;
    if (led && items[task - 1]?.task) return k;
  }
  return items.length;
}

/** "unpicking now", "ok, tying", "mending again": the name of the work, and that it begins, and nothing else. */
function bareTaskBegun(items: Item[]): number {
  if (items.length > 7) return -1;
  const k = items.findIndex((x) => x.task !== undefined && /^(the )?(\w+ing|survey|paperwork)$/.test(x.w));
  if (k < 0 || items.some((x, m) => m !== k && !BEGINS.test(x.w))) return -1;
  return items.some((x, m) => m !== k && BEGINS_NOW.test(x.w)) ? k : -1;
}
const BEGINS_NOW = /^(now|go|again|ok|okay|right|here|time)$/;
const BEGINS =
  /^(now|again|ok|okay|right|here|off|time|so|then|and|,|--|-|:|!|we|go|for|the|a bit of|some|it 's|well|on|with|it|just)$/;

/** "starting on the survey now", "that's the survey finished", "back at it", "stopping there". */
export function readBareMarks(
  state: ReaderState,
  items: Item[],
  marks: Mark[],
  push: Push,
  used: Set<number>,
): void {
  const running = state.memory.running;
  if (
    items.length <= 9 &&
    !items.some((x) => x.clock || x.span || x.place?.places.length) &&
    BREAK.test(wordsBetween(items)) &&
    // "kettle is screaming. Back in a minute.": where nothing goes on, nothing stops
    (running || !/ back in a (?:minute|moment|sec|second|tick|jiffy) $/.test(wordsBetween(items)))
  ) {
    push(running ? { task: running } : undefined, { mark: 'stop' }, 'work.stopping', items, 0, items.length);
    return;
  }
  if (items.some((x) => x.duration || x.clock || x.span)) return;
  const ran = running ?? state.memory.ran;
  const all = wordsBetween(items);
  const closing = closingWords(items);
  if (closing && !used.has(closing.task.at)) {
    const { task, mark, from, to } = closing;
    push(task, { mark }, mark === 'start' ? 'work.starting' : 'work.stopping', items, from, to);
    return;
  }
  let said = false;
  for (const m of marks) {
    // "the tying of rows one and two was completed": a treatment that is done
    if (used.has(m.at) || items.some((_x, q) => q < m.at && isProcess(items, q))) continue;
    // "when I start", "going to stop": not now
    const led = wordsBetween(items, m.at - 5, m.at);
    if (
      (LATER.test(led) &&
        !(m.mark === 'stop' && / (?:gonna|going to|will|'ll) $/.test(led) && stopsHere(items, m.end))) ||
      // "the label will want going back on"
      / (?:wants?|needs?) $/.test(led) ||
      // "I'll get the quilting done tonight"
      / (?:'ll|will|to|must|should|gonna) (?:get|have) (?:\S+ ){1,4}$/.test(led) ||
      (m.mark === 'start' && / (tomorrow|next week|later on) /.test(all) && !/ now /.test(all))
    )
      continue;
    // "the survey's finished, on to the mending": what comes next has its own mark
    const next = m.mark === 'stop' ? nextBegins(items, m.end) : items.length;
    const after = nearTask(items, m.end, Math.min(4, next - m.end));
    const before = nearTaskBefore(items, m.at, 4);
    const task = m.task ?? after ?? before;
    if (/^(till|until|til|since|done for|over|end|start|stop)$/.test(m.word) && !task) {
      if (!/^(stop|done for)$/.test(m.word)) continue;
    }
    if (task) {
      if (used.has(task.at)) continue;
      // "the washing is done and it's spread flat to dry": how far the quilt is
      if (
        m.mark === 'stop' &&
        /\bwash(?:ing)?$/.test(w(items, task.at)) &&
        state.tokens.some((t) => t.w === 'dry' || t.w === 'drying')
      )
        continue;
      // "finished the binding by hand": a treatment
      if (
        m.mark === 'stop' &&
        /^(binding|tying|quilting)$/.test(task.task) &&
        (items.some((x) => x.stitch || x.weakStitch) ||
          // "finished the binding tonight", of what was not going on by the log
          (task.task === 'binding' &&
            running !== 'binding' &&
            /^finished/.test(m.word) &&
            /^(the|its|all)$/.test(w(items, m.end))))
      )
        continue;
      push(
        task,
        { mark: m.mark },
        m.mark === 'start' ? 'work.starting' : 'work.stopping',
        [items[m.at]!],
        Math.min(m.at, task.at),
        Math.max(m.end, task.at + 1),
      );
      said = true;
      continue;
    }
    if (m.mark === 'start') {
      const free = !items
        .slice(m.end, m.end + 4)
        .some((x) => x.place || x.action || x.object || x.material || x.quantity?.unit);
      if (
        GOES_ON.test(m.word) &&
        free &&
        (/ (it|again)$/.test(m.word) || !w(items, m.end) || isLight(items[m.end]!)) &&
        // "back to bed", "back to your basket": somebody is sent there
        !/^(bed|sleep|your|school)$/.test(w(items, m.end))
      ) {
        push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', [items[m.at]!], m.at, m.end);
        said = true;
      } else if (
        items.length <= 5 &&
        /^(start|begin|commenc|beginn|kick|clock|log|sign)/.test(m.word) &&
        !items.some((x) => x.place || x.action || x.object || x.material || x.quantity)
      ) {
        push(undefined, { mark: 'start' }, 'work.starting', [items[m.at]!], m.at, m.end);
        said = true;
      }
      continue;
    }
    // "picking up where I left off"
    if (/^left off$/.test(m.word) && items.slice(0, m.at).some((x) => x.w === 'where')) {
      push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', items, 0, m.end);
      said = true;
      continue;
    }
    // a stop without a task must be about herself
    // "I'm stopping right there, my thumb's gone"
    const from = hereFrom(items, m.end);
    const follows = w(items, from);
    const rest = wordsBetween(items, from, from + 3);
    if (NOT_SELF.test(m.word)) {
      if (!/ (for (tonight|today|now|the (day|night|evening))|up for) /.test(` ${m.word}${rest}`)) continue;
    } else if (
      /^(stopped|stop|done for|stopping|all done|call(ed|ing)? it|pause|pausing|paused)$/.test(m.word) &&
      // "stopping, the baby's up", but not "stop, not that one"
      (m.word === 'stop' || follows !== ',') &&
      !LEAVE.has(follows) &&
      // "stopped to make the tea"
      !/^ to (?:make|get|eat|feed|walk|answer|have|cook|see|let|fetch|put|do the|collect) /.test(rest)
    )
      continue;
    else if (
      /^(break|take|took|taking|have|had|having|pause|paused|stop|stopped|call)/.test(m.word) &&
      / for$/.test(m.word)
    ) {
      if (/^(a|an|some|the) (row|block|seam)/.test(rest.trim())) continue;
    }
    if (
      /^(stopped|stop)$/.test(m.word) &&
      !/^(because|cos|when|early)$/.test(follows) &&
      follows !== 'to' &&
      / (it|the|bleeding|running) /.test(rest) &&
      !/ (there|here|now|for) /.test(rest)
    )
      continue;
    if (isOfBlocks(items, m)) continue;
    push(
      running ? { task: running } : undefined,
      { mark: 'stop' },
      'work.stopping',
      [items[m.at]!],
      m.at,
      m.end,
    );
    said = true;
  }
  if (said) {
    const stopped = marks.findLast((m) => m.mark === 'stop');
    const from = stopped ? nextBegins(items, stopped.end) : items.length;
    const k = items.findIndex((x, m) => m >= from && x.task !== undefined && !hasObject(items, m));
    if (
      k >= 0 &&
      k - from <= 6 &&
      !used.has(k) &&
      !/ (?:later|tomorrow|tonight|after|next) /.test(wordsBetween(items, k + 1, items.length)) &&
      !marks.some((m) => m.mark === 'start' && m.at >= from)
    )
      push(
        { task: items[k]!.task!, at: k, item: items[k]! },
        { mark: 'start' },
        'work.starting',
        [items[k]!],
        from,
        k + 1,
      );
    return;
  }
  if (items.length <= 8 && BACK.test(wordsBetween(items))) {
    push(ran ? { task: ran } : undefined, { mark: 'start' }, 'work.back', items, 0, items.length);
    return;
  }
  const begun = bareTaskBegun(items);
  if (begun >= 0) {
    push(
      { task: items[begun]!.task!, at: begun, item: items[begun]! },
      { mark: 'start' },
      'work.starting',
      items,
      0,
      items.length,
    );
    return;
  }
  // "on to the cutting now", "i'm on the mending now", "now for the paperwork", "leaving it there", "that's me for tonight"
  const k = items.findIndex((x, m) => x.task !== undefined && !hasObject(items, m));
  if (
    k >= 0 &&
    !/ (tomorrow|next week|later on|i 'll|will|going to|want to|need to|have to) /.test(all) &&
    / (i 'm on|i am on|on to|onto|moving on to|now for|now to|on with|getting on with|straight into|(?:i 'm|and|right|ok|okay|then|now|^) into|(?:me|i 'm) away (?:at|to)|back to|back on|back at|straight on to|over to) (the |some )?$/.test(
      wordsBetween(items, k - 5, k),
    )
  ) {
    push(
      { task: items[k]!.task!, at: k, item: items[k]! },
      { mark: 'start' },
      'work.starting',
      [items[k]!],
      Math.max(0, k - 3),
      k + 1,
    );
    return;
  }
  const ends = STOPS_THERE.exec(all);
  if (ends) {
    // only the words of the stop: "there's a tear in 2-4 and I'm leaving it there for today" tells the tear as well
    const from = itemsIn(items, 0, ends.index);
    push(
      running ? { task: running } : undefined,
      { mark: 'stop' },
      'work.stopping',
      items,
      from,
      Math.max(from + 1, itemsIn(items, 0, ends.index + ends[0].trimEnd().length)),
    );
  }
}

const STOPS_THERE =
  / (leave|leaving|left) it (there|at that|here) | that 's me (for|(?:done|finished)(?! with (?:\d|one |two |three |four |five |six |seven |eight |nine |ten |rows? |blocks? )))| that 's (?:me|us) (?:off|away|out)(?: home| now| to (?:my )?bed| for (?:the (?:night|day|evening)|tonight|today|now|my (?:tea|dinner|supper|lunch)))*(?= (?:[.!] )*$)| that 's (me|it|enough|all) (for|done) (tonight|today|now|the (day|night|evening))| enough for (tonight|today|one|now|the day|one (day|night))|that 'll do (for (me|now|tonight|today|one day|the (day|night|evening))|me)|gave (it|up) up|that 's your lot|shutting up shop|lights out| call it a (day|night)| done for (tonight|today|the (day|night|evening)) | putting it (away|down) for /;

/** "3-3 and 3-4 all done", "that's me finished with 1-4": blocks are done, and not the day. */
function isOfBlocks(items: Item[], m: { word: string; at: number; end: number }): boolean {
  if (!/(?:done|finished|through)$/.test(m.word)) return false;
  const before = items[m.at - 1];
  const subject = /^(is|are|'s|'re|now|both|all)$/.test(before?.w ?? '') ? items[m.at - 2] : before;
  const object = items[/^the$/.test(items[m.end + 1]?.w ?? '') ? m.end + 2 : m.end + 1];
  return (
    subject?.place?.kind === 'blocks' || (w(items, m.end) === 'with' && object?.place?.kind === 'blocks')
  );
}
