import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';

const MARK_WORDS = new Set(
  'start started starting begin began begun beginning stop stopped stopping quit quitting finish finished finishing end ended done since till until til off out at over up closed opened close open kicked kicking knocked knocking packed packing called calling wrapped wrapping left broke resumed resuming gave carried kept going sat me that doing been'.split(
    ' ',
  ),
);

/** After one of these something else is told: a reason, another matter, another piece of work. */
const HEAVY = new Set(
  "because cos since that which who if when while where whether until till but although though except after before so not no never n't needs need will 'll going gonna wants want must should".split(
    ' ',
  ),
);

/** Words of these senses may stand between a time and the kind of work that it is of: "was", "and then", "an hour or so". */
const LIGHT_MARKS = new Set([',', ':', '-', '--', '(', ')', '=', '/']);

/** May the word stand between a time and the kind of work that it is of? Whatever says something else of the quilt may not. */
export function isLight(x: Item): boolean {
  if (LIGHT.has(x.w) || MARK_WORDS.has(x.w) || /^by (hand|machine)$/.test(x.w)) return true;
  if (x.token.kind === 'mark') return LIGHT_MARKS.has(x.w);
  if (HEAVY.has(x.w)) return false;
  return !(
    (x.place && x.place.rule !== 'place.it') ||
    x.finding ||
    x.action ||
    x.material ||
    x.object ||
    x.part ||
    x.fabric ||
    x.cost ||
    x.quantity ||
    x.stitch ||
    x.seam ||
    x.measure
  );
}

const LIGHT = new Set(
  "from between at the my this that was were i 've 's 'm is it been on went , : - -- of did doing for in with some to spent just a bit little more good last night today tonight yesterday morning afternoon evening arvo day only about over all another and so then there here and had have then again back sitting sat worked working session stint solid straight today's of's stretch put got around roughly near nearly ( ) am pm came got put away still now took her him them me takes ran lasted went were all told altogether total".split(
    ' ',
  ),
);

/** After one of these a word for a kind of work is only a part of a treatment's name: "the sewing on", "darning it". */
const OBJECT_AHEAD = new Set([
  'it',
  'them',
  'that',
  'those',
  'these',
  'down',
  'up',
  'in',
  'on',
  'round',
  'together',
]);

/** Is the word for a kind of work at `k` followed by what was worked on? Then it is a treatment. */
export function hasObject(items: Item[], k: number): boolean {
  const item = items[k]!;
  const next = items[k + 1];
  if (!next) return false;
  // "spent some time surveying it": the whole of it, and no piece
  if (
    /^(it|this|that)$/.test(next.w) &&
    /^(survey|examine|inspect|assess|surveying|looking|mending|surveyed|examined|examining|inspected|inspecting|mended|assessing|mapping)$/.test(
      item.w,
    )
  ) {
    const far = items[k + 2];
    return (
      !far ||
      (!(far.span || far.clock) &&
        !/^(time|minute|instant|moment|second|hour|day|month|morning|afternoon|evening|week|on|last|this|yesterday|today|too|as|but|,|\.|in|over|at|since|from|for|till|until|and|now)$/.test(
          far.w,
        ))
    );
  }
  // "starting the binding it's five past nine": the hour, and nothing that is bound
  if (next.w === 'it' && /^(?:'s|is|was)$/.test(w(items, k + 2))) return false;
  if (next.place && next.place.kind !== 'part') return true;
  if (isToldBefore(items, k) || isDustOut(items, k)) return true;
  // "3-3: darning, quarter of an hour"
  if (
    item.action &&
    item.action.form !== 'base' &&
    k === 2 &&
    items[1]!.w === ':' &&
    items[0]!.place?.kind === 'blocks'
  )
    return true;
  if (item.w.startsWith('the ') || /^(survey|paperwork|shopping|piecework|errands|admin)$/.test(item.w))
    return false;
  if (!item.action && !/ing( off| out| apart)?$/.test(item.w)) return false;
  if (next.w === 'on' || next.w === 'in') {
    // "the sewing on", but "the mending on the quilt", "cutting in the afternoon"
    const far = items[k + 2];
    return !far || /^(of|,|by|and)$/.test(far.w) || far.place?.kind === 'blocks';
  }
  // "mending this time"
  if (next.w === 'this' && /^(time|morning|afternoon|evening|arvo|week)$/.test(w(items, k + 2))) return false;
  if (OBJECT_AHEAD.has(next.w) && next.w !== 'that') return true;
  if (/^(the|a|those|these|my|her|all|both|some|out|off)$/.test(next.w)) {
    const far = items.slice(k + 2, k + 5);
    return far.some(
      (x) =>
        x.part ||
        // "at the mending a good bit"
        (x.object && x.w !== 'bit') ||
        x.seam ||
        // "laying out all three layers", "pinning the layers together"
        x.w === 'layers' ||
        // "at the mending a good while"
        (x.finding && x.w !== 'good') ||
        x.fabric ||
        x.place?.kind === 'blocks' ||
        // "binding the left side"
        /^(edge|border)-/.test(x.place?.places[0] ?? ''),
    );
  }
  return Boolean(
    (next.part && next.part !== 'quilt') ||
      next.seam ||
      next.fabric ||
      next.place ||
      // "an hour unpicking ties in rows 1 and 2"
      (next.object && !next.task && item.task === 'taking-apart') ||
      // "cutting border strips since one"
      (/^(?:border|binding) strips?$/.test(next.w) && item.task === 'cutting'),
  );
}

/** "row 4 I've been quilting since ten", "the upper row I am just now quilting": what is worked on stands before. */
function isToldBefore(items: Item[], k: number): boolean {
  if (items[k]!.action?.form !== 'ing') return false;
  let at = k - 1;
  while (/^(?:just|now|still|currently|been|busy|'ve|have|'m|am|was|'re|are)$/.test(w(items, at))) at--;
  return (
    at < k - 1 &&
    /^(?:i|we)$/.test(w(items, at)) &&
    items[at - 1]?.place?.kind === 'blocks' &&
    items.slice(0, at - 1).every((x) => x.place || /^(?:the|and|&|,|both|all|so|well|now|oh)$/.test(x.w))
  );
}

/** "brushing the dust out of all the pink ones": what is got out, and from where. */
const isDustOut = (items: Item[], k: number): boolean =>
  /^ (?:the |all the |some of the |more of the )?(?:dust|grit|dirt|fluff|lint|crumbs|soot|worst|hair|hairs|cat hair|dog hair) (?:out |off )(?:of )?/.test(
    wordsBetween(items, k + 1, k + 9),
  ) && items.slice(k + 2, k + 10).some((x) => x.place || x.fabric);

/** "8 yd of binding" is goods, not the work of binding. */
export const isGoods = (items: Item[], k: number): boolean =>
  items[k]!.material !== undefined &&
  ((w(items, k - 1) === 'of' && !items.slice(Math.max(0, k - 3), k - 1).some((x) => x.duration)) ||
    Boolean(items[k - 1]?.quantity) ||
    Boolean(items[k - 2]?.quantity?.unit));

/** Is a verb of something done at `at`: "patched", "unpicked", "unpicking"? */
const isDeed = (items: Item[], at: number): boolean =>
  at >= 0 &&
  ((items[at]!.action ?? removalAt(items, at))?.form === 'past' ||
    (!items[at]!.action && removalAt(items, at)?.form === 'ing'));

/**
 * "started mending at nine and the binding's frayed", "… and the old binding is coming off now", "… and the quilting's broken": the thing
 * that something is told of, and no name of the work.
 */
function isTold(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (!(item.part || item.object || item.stitches) || !/^(the|its|old|that|all|this)$/.test(w(items, k - 1)))
    return false;
  let at = k + 1;
  while (IS_SAID.test(w(items, at))) at++;
  const next = items[at];
  // "is coming off now"
  if (
    /^(?:coming|come|came|comes|going|taken) (?:off|out|away|apart) /.test(
      `${wordsBetween(items, at, at + 2).trim()} `,
    )
  )
    return true;
  return Boolean(
    next && ((next.finding && next.finding !== 'sound') || next.fail || /^(?:needs|wants)$/.test(next.w)),
  );
}
const IS_SAID =
  /^(?:'s|is|are|has|have|looks|looking|all|now|both|well|also|quite|very|badly|so|too|really|pretty|already|been|got|gone|a bit|rather|really)$/;

/** "unpicked the binding from nine to ten": the thing that a deed is done to, and no name of the work. */
export const isWorkedOn = (items: Item[], k: number): boolean => {
  if (isTold(items, k)) return true;
  if (!items[k]!.part && !items[k]!.object) return false;
  // "and the binding's off already"
  if (
    /^ (?:'s|is|has|have|are|come|came|comes|goes|coming)(?: all| now| finally| both| been)* (?:off|out|away|first) /.test(
      `${wordsBetween(items, k + 1, k + 6)} `,
    ) &&
    /^(the|its|old|that|all)$/.test(w(items, k - 1))
  )
    return true;
  // "binding off all round, 35 min", "the binding's off now"
  if (
    /^ (?:(?:'s|is|has|have|come|came|all|now|finally) ){0,3}(?:off|out) /.test(
      wordsBetween(items, k + 1, k + 5),
    ) &&
    /^ (?:(?:the|old|and|so|right|that|whole|last|rest|of|,) )*$/.test(
      // "started at ten and the binding's off already"
      wordsBetween(
        items,
        items.slice(0, k).findLastIndex((x) => /^(and|,|so|but|then)$/.test(x.w)) + 1,
        k,
      ).replace(/^ {2}$/, ' '),
    )
  )
    return true;
  // "at two thirty, and I'm fixing to take the binding off"
  if (
    /^(off|out)$/.test(w(items, k + 1)) &&
    items.slice(Math.max(0, k - 4), k).some((_x, m, few) => removalAt(items, k - few.length + m))
  )
    return true;
  const at = items.slice(0, k).findLastIndex((x) => !/^(the|its|my|her|that|this|old|of|all|off)$/.test(x.w));
  // "unpicking of the binding began at ten"
  return isDeed(items, at) || (at >= 0 && removalAt(items, at)?.form === 'ing' && w(items, at + 1) === 'of');
};

/** "Darning won. I'm at it now, and have been since half past one": one of two ways, and no bare name of the work. */
export const isChosen = (items: Item[], task: Item): boolean =>
  /^(won|wins|it)$/.test(items[items.indexOf(task) + 1]?.w ?? '') && items.includes(task);

export const isDeedDone = (items: Item[], at: number): boolean =>
  (isDeed(items, at) &&
    (items.slice(at + 1, at + 6).some(isThing) ||
      // "laid it out and pinned it from one till two"
      (items[at]!.action?.v === 'baste' && /^(?:it|everything|the lot|the|that)$/.test(w(items, at + 1))))) ||
  isNowOn(items, at) ||
  isProcess(items, at);

/** "the binding went on between two and four", "binding's on, 40 minutes": the thing that the work has put there. */
const isNowOn = (items: Item[], at: number): boolean =>
  items[at]?.part === 'binding' &&
  /^ (?:went|is|'s|has gone|was put|got put)(?: back| all| finally| now)* on (?!to )| on (?:from|between) /.test(
    `${wordsBetween(items, at + 1, at + 6)} `,
  );

/** "vacuuming of the front was finished at 14:10": work on a thing, told as the name of what went on. */
export const isProcess = (items: Item[], at: number): boolean =>
  items[at]?.action?.form === 'ing' &&
  // "the front has been in course of vacuuming since one"
  (/ in (?:the )?(?:course|process) of $/.test(wordsBetween(items, at - 4, at)) ||
    (w(items, at + 1) === 'of' && items.slice(at + 2, at + 5).some((x) => isThing(x) || x.place)));

export const isSpentAt = (items: Item[], k: number): boolean =>
  k <= 3 &&
  /^(on|at|for)$/.test(w(items, k + 1)) &&
  items.slice(k + 2).some((x) => x.place?.kind === 'blocks') &&
  items.every(
    (x) => !(x.action || x.finding || x.fail || x.object || x.material || x.cost || x.quantity || x.stitch),
  ) &&
  items.length <= k + 8;

/** Is something told between `from` and `to` that is done to a named thing: "taking the old binding off", "tying row three"? */
export function deedIn(items: Item[], from: number, to: number): boolean {
  for (let k = from; k < to; k++) {
    const x = items[k]!;
    const removal = x.action ? undefined : removalAt(items, k);
    const form = x.action?.form ?? removal?.form;
    if (form !== 'ing' && form !== 'past') continue;
    // "started washing it at nine": all of it is in the water
    if (form === 'ing' && WHOLE.has(x.action?.v ?? '') && items[k + 1]?.place?.rule === 'place.it')
      return true;
    const things = items.slice(k + 1, Math.min(to, k + 8));
    if (removal ? things.some((y) => y.object || y.place) : things.some((y) => isThing(y) && !y.task))
      return true;
  }
  return false;
}

/** What is done to the quilt as a whole. */
const WHOLE: ReadonlySet<string> = new Set(['wash', 'dry', 'layer', 'baste', 'tie', 'quilt', 'bind']);

const isThing = (x: Item): boolean =>
  Boolean(
    x.object ||
      x.part ||
      x.seam ||
      x.finding ||
      x.fabric ||
      (x.place && x.place.kind !== 'part' && x.place.rule !== 'place.it') ||
      // "began binding the right edge at seven"
      /^(edge|border)-/.test(x.place?.places[0] ?? ''),
  );

/** Do only light words stand between the time at `k` and the day named at `index`? */
export function onlyLight(items: Item[], k: number, index: number): boolean {
  for (let m = k + 1; m < items.length && items[m]!.token.from < index; m++)
    if (!/^(,|on|the|of|in|at|-|[a-z]+ing|survey|paperwork|work|mine)$/.test(items[m]!.w)) return false;
  return true;
}

/** "from", "between", "i was", "at it" before a stretch are said with it. */
export function lead(items: Item[], k: number, used: Set<number>): void {
  let m = k - 1;
  while (
    m >= 0 &&
    /^(from|between|was|were|i|'ve|been|at|it|and|went|ran|lasted|to|on|the|worked|today|yesterday|,)$/.test(
      w(items, m),
    ) &&
    k - m <= 4 &&
    // "the binding went on between two and four"
    !(
      w(items, m) === 'on' && items.slice(Math.max(0, m - 3), m).some((x) => isNowOn(items, items.indexOf(x)))
    )
  ) {
    used.add(m);
    m--;
  }
}
