import type { Item } from '../item.ts';

const SAID =
  '(?:that|it|this|them|those|last|the last|my last|that last|the previous|my previous|what i|everything i|all that|all of that|all of it|the lot|line|that one)';
/** Commands to strike out, wherever in a short note they stand. */
const STRIKES: RegExp[] = [
  new RegExp(
    `\\b(?:scratch|strike|delete|del|undo|cancel|erase|wipe|bin|disregard|void|scrap|unsay|scrub|retract|withdraw)(?: out| off)? ${SAID}\\b`,
  ),
  new RegExp(`\\b(?:rub|cross|strike|x|wipe|blot|score) ${SAID}(?: \\w+){0,3} out\\b`),
  /\b(?:do n't|do not|please do n't|never) (?:put|log|keep|write|count|record|note|enter|store|save) (?:that|it|this|any of that|them|the last)\b/,
  /\b(?:forget|ignore|disregard|never mind|pay no attention to|take no notice of) (?:that|it|this|all that|what i|everything i|i said|my last|the last|i spoke|i ever said)\b/,
  /\b(?:that|this|the|my) (?:very )?(?:last|previous|latest) (?:note|entry|one|bit|lot|remark|line|thing|item|message)\b.{0,40}\b(?:can go|goes|is wrong|was wrong|nonsense|rubbish|a mistake|never happened|should n't|out|off|away)\b/,
  /\b(?:remove|drop|lose|kill|get rid of|get shot of|pull|clear|take out|take off|chuck out|leave out) (?:the |my |that |what )?(?:very )?(?:last|previous|latest|i just|i said)\b/,
  /^(?:no |oh |ah |please )*(?:remove|del|delete|undo|cancel|scratch|drop|strike|erase) last(?: \w+)?$/,
  /\b(?:get shot of|get rid of|chuck out|lose) (?:it|that|that one|the lot)\b/,
];
/** "take it off", "take that out": of the log only with a word of why. */
const TAKES =
  /\b(?:take|taking|get|strike|pull) (?:that|it|this|them|that one|all of that|the lot|the last one)(?: \w+)? (?:out|off|back|away)\b/;
const WHY =
  /\b(?:never did|did n't|have n't|wrong|mistake|mistaken|nonsense|rubbish|again|not right|muddled|mixed|misread|miscounted|other quilt|another quilt|not this|by accident|please|the log|the book|the record|the notes)\b/;

/**
 * A short note that only says that the last one should not stand, in whatever words. Not one that names a block, damage, a
 * material or an amount: that says what should stand instead, or is work ("take the binding off").
 */
export function strikesOut(text: string, items: Item[]): boolean {
  if (text.split(' ').length > 24) return false;
  const says = items.some(
    (x) =>
      (x.place?.kind === 'blocks' && x.place.places.length > 0) ||
      x.finding ||
      x.quantity?.unit ||
      x.cost ||
      x.duration ||
      x.clock ||
      x.span ||
      x.material ||
      x.stitch ||
      x.seam ||
      (x.part && x.part !== 'quilt'),
  );
  if (says) return false;
  const words = text
    .trim()
    .replace(/[,.!;:-]/g, ' ')
    .replace(/ +/g, ' ');
  return STRIKES.some((pattern) => pattern.test(words)) || (TAKES.test(words) && WHY.test(words));
}
