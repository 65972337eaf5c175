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
export const DAY_PART = /^(this (morning|afternoon|evening)|last night|yesterday|today|tonight)/;
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
