import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { SPAN_JOINT } from './span-joint.ts';

export const WORK_NAMED =
  /ing$|^(survey|paperwork|work|mend|piece|cut|quilt|bind|tie|clean|wash|baste|layer|unpick|sew)$/;
export const KIND_OF_WORK =
  /^(mending|darning|patching|cutting|piecing|tying|quilting|binding|cleaning|washing|pressing|layering|basting|pinning|unpicking|survey|surveying|paperwork|shopping)$/;
/** Is a part of the day told before `i` in its sentence, and nothing that counts blocks? */
export function inPartOfDay(tokens: Token[], i: number): boolean {
  let told = false;
  for (let k = i - 1; k >= Math.max(0, i - 10) && !/^[.;!?\n]$/.test(w(tokens, k)); k--) {
    if (
      /^(?:rows?|columns?|blocks?|squares?|patch|patches)$/.test(w(tokens, k)) ||
      tokens[k]!.kind === 'number'
    )
      return false;
    told ||= /^(?:morning|afternoon|evening|tonight|day)$/.test(w(tokens, k));
  }
  return told;
}
export const WORKED_ON_IT =
  /^(?:examined|inspected|surveyed|mended|layered|washed|basted|bound|quilted|tied|unpicked|cleaned|vacuumed|pressed|pinned)$/;
export const WORK_DONE =
  /^(mending|darning|patching|cutting|piecing|tying|quilting|cleaning|layering|basting|pinning|unpicking|survey|surveying|paperwork|shopping|washing|pressing|ironing|vacuuming|apart|sewing|stitching|working|mended|quilted|pieced|tied|sewed|stitched|worked|basted|unpicked)$/;
export const DID_WORK = /^(mended|quilted|pieced|sewed|stitched|worked|basted|unpicked|darned)$/;
export const BREAKS_OFF =
  /^(|,|\.|;|!|\n|and|less|minus|with|then|but|bar|except|without|straight|solid|off|on|today|tonight|yesterday|this|last|before|after|while|until|\(|--|-)$/;
export const DAY_PART =
  /^(this (morning|afternoon|evening)|last (?:night|evening)|yesterday(?: (?:morning|afternoon|evening|night))?|today|tonight)/;
/** "yesterday 2-4 and 7-9 mending", "today 2-4 tying": hours behind the name of a day, and no block. */
export const hoursOfWork = (tokens: Token[], i: number, next: number): boolean =>
  /^(yesterday|today|tonight)$/.test(w(tokens, i - 1)) &&
  (KIND_OF_WORK.test(w(tokens, next)) || listsHours(tokens, next));
/** "… and 7-9 mending": more hours, and the kind of work at their end. */
const listsHours = (tokens: Token[], i: number): boolean =>
  /^(and|,|&|\+)$/.test(w(tokens, i)) &&
  /^\d/.test(w(tokens, i + 1)) &&
  SPAN_JOINT.has(w(tokens, i + 2)) &&
  /^\d/.test(w(tokens, i + 3)) &&
  KIND_OF_WORK.test(w(tokens, i + 4));
/** "ten till three on the mending", "five to nine at the tying". */
export const onWork = (tokens: Token[], i: number): boolean =>
  /^(on|at|doing)$/.test(w(tokens, i)) &&
  KIND_OF_WORK.test(w(tokens, /^(the|my|some)$/.test(w(tokens, i + 1)) ? i + 2 : i + 1));
/** "9 to 12 with half an hour for lunch": what begins the note and has a break taken off it is time at work. */
export function breakBehind(tokens: Token[], i: number, next: number): boolean {
  const summed = w(tokens, i - 1) === "'s" && w(tokens, i - 2) === 'that';
  if (!/^(|[.;\n])$/.test(w(tokens, i - 1)) && !summed) return false;
  if (!/^(with|less|minus|,|and)$/.test(w(tokens, next))) return false;
  for (let k = next + 1; k < next + 9; k++)
    if (/^(lunch|tea|dinner|supper|breakfast|break|coffee|phone|eat)$/.test(w(tokens, k))) return true;
  return false;
}

/** Kinds of work as a time sheet has them: no "fraying" and no "nothing". */
const SHEET_WORK = new RegExp(
  `${KIND_OF_WORK.source}|^(?:work|mend|piece|cut|quilt|bind|tie|clean|wash|baste|layer|unpick|sew|sewing|stitching|photos|admin)$`,
);

const EDGE_BEFORE =
  /^(|[,.;:(\n]|and|&|then|again|i|we|yesterday|today|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)$/;
const EDGE_BEHIND = /^(|[,.;()\n]|and|&|then|less|minus|with|bar)$/;
const MEAL = /^(lunch|tea|dinner|supper|break|smoko|coffee)$/;

/**
 * "survey 10-11", "9-12 mend (20 tea)", "9.30-11, 12-1 mending": two figures and a dash beside a kind of work, as on a time sheet, where they
 * can hardly be a block. A verb ("piece 1-2") tells so only with hours that no row or block has.
 */
export function onTimeSheet(tokens: Token[], i: number, joint: number, next: number): boolean {
  const [from, to] = [Number(w(tokens, i)), Number(w(tokens, joint + 1))];
  const before = w(tokens, i - 1);
  const dotted = /^\d\d?\.[0-5]\d$/.test(w(tokens, i)) || /^\d\d?\.[0-5]\d$/.test(w(tokens, joint + 1));
  if (Number.isNaN(from) || Number.isNaN(to) || from >= 24 || to >= 24) return false;
  const named =
    (KIND_OF_WORK.test(before) || /^(?:worked|sewed|stitched)$/.test(before)) &&
    EDGE_BEFORE.test(w(tokens, i - 2));
  if ((named || before === 'apart') && EDGE_BEHIND.test(w(tokens, next)))
    return dotted || to >= 8 || from >= 9 || from > to;
  const late = to >= 9 || from >= 11;
  const led = EDGE_BEFORE.test(before);
  if (led && (late || dotted) && SHEET_WORK.test(w(tokens, next)) && EDGE_BEHIND.test(w(tokens, next + 1)))
    return true;
  if (
    SHEET_WORK.test(before) &&
    EDGE_BEFORE.test(w(tokens, i - 2)) &&
    late &&
    EDGE_BEHIND.test(w(tokens, next))
  )
    return true;
  return led && dotted && listsHours(tokens, next);
}

/** "lunch 12 to 1", "off 12 to 1 for lunch": hours, for a meal stands beside them. */
export const mealHours = (tokens: Token[], i: number, next: number): boolean =>
  (MEAL.test(w(tokens, i - 1)) && /^(|[,.;)\n]|and|otherwise|but|then)$/.test(w(tokens, next))) ||
  (/^(off|out|away|gap|break|stopped)$/.test(w(tokens, i - 1)) &&
    w(tokens, next) === 'for' &&
    [1, 2].some((n) => MEAL.test(w(tokens, next + n))));

/** "half nine to eleven then again twelve to one": hours, behind others that are told in full. */
export function hoursGoOn(tokens: Token[], i: number): boolean {
  if (!/^(and|then|again|,|from)$/.test(w(tokens, i - 1))) return false;
  for (let k = i - 2; k > Math.max(1, i - 8); k--)
    if (SPAN_JOINT.has(w(tokens, k)) && w(tokens, k) !== 'and') {
      const around = [k - 3, k - 2, k - 1, k + 1, k + 2].map((m) => w(tokens, m)).join(' ');
      return /\b(?:half|quarter|thirty|fifteen|forty|past|\d\d?[:.]\d\d)\b/.test(around);
    }
  return false;
}

/**
 * "retied rows 3-4. 11 to 1.30": two figures that are a sentence of their own, behind another, are hours where one of them has minutes or the
 * first is the greater; "ten to eleven" alone may be ten minutes to eleven.
 */
export function hoursAlone(tokens: Token[], i: number, joint: number, next: number): boolean {
  if (i < 2 || !/^[.;\n]$/.test(w(tokens, i - 1)) || !/^(|[.;\n])$/.test(w(tokens, next))) return false;
  const ends = [w(tokens, i), w(tokens, joint + 1)];
  if (!ends.every((x) => /^\d\d?(?:\.[0-5]\d)?$/.test(x) && Number(x) < 24)) return false;
  return (
    ends.some((x) => x.includes('.')) || (Number(ends[0]) > Number(ends[1]) && w(tokens, joint) === 'to')
  );
}
