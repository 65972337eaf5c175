import { GROUP, KIN } from '../../lexicon/story.ts';
import { beginsStatement } from '../clause/begins-statement.ts';
import { BETWEEN_STATEMENTS, endOfSentence, isStop, pushStop } from '../clause/joints.ts';
import { hasPredicate } from '../clause/new-subject.ts';
import { leans } from '../clause/run-on.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { namesMark, passesOnWish, tellsStory } from './find-remarks.ts';

const PEOPLE = `(?:(?:the |her |his |my |their |our )?(?:late |old |dear )*(?:${KIN}|${GROUP}|client|customer|lady|gentleman|couple|curator|museum)|she|he|they)`;

/** How a remark opens: by those who made, owned or want it, by the quilt itself, or by the mark. */
const OPENS = new RegExp(
  `^ (?:${PEOPLE} (?!is |are |'s |'re )[a-z']+ (?:[a-z']+ )?(?:it|this|them|one|the|to|all|that)|(?:it|this|this one|the quilt) (?:was|came|belonged|spent|used to|hung|lay|went|travelled|traveled|has been|'s been) |there (?:'s|is|are|was) (?:a |an |some |two )?(?:name|names|initials?|date|dates|monogram|signature|inscription|verse|laundry mark))`,
);
const MAY_OPEN = /^(the|her|his|my|their|our|she|he|they|it|this|there|this one|the quilt)$/;
/** A person or quilt told of in a clause that leans on the word before it: "the cloth her aunt wove". */
const LED_BY =
  /^(one|ones|that|which|who|says?|said|thinks?|thought|reckons?|me|way|as|when|where|year|quilt|dress|ask|asked|tell|told|hope|for|with|at|of|from|by|near|into)$/;

const isTold = (items: Item[]): boolean => items.length > 2 && (tellsStory(items) || passesOnWish(items));

/** "her grandmother made it in 1931", said behind an "and" or in running words behind something whole. */
function opensRemark(items: Item[], k: number, told: Item[]): boolean {
  if (!MAY_OPEN.test(items[k]!.w)) return false;
  const behind = items[k - 1]!;
  const joined = BETWEEN_STATEMENTS.test(behind.w);
  if (!joined && (leans(items, k - 1) || LED_BY.test(behind.w))) return false;
  // "she has agreed to it, and she would like the date left": one thing told of her
  if (/^(she|he|they)$/.test(items[k]!.w) && told.some((x) => /^(she|he|they)$/.test(x.w))) return false;
  const to = endOfSentence(items, k);
  if (!OPENS.test(wordsBetween(items, k, Math.min(to, k + 12)))) return false;
  // "the cloth her aunt wove": no statement ends in the bare thing before it
  if (!joined && (behind.material || behind.fabric) && !behind.finding) return false;
  return hasPredicate(told) ||
    told.some((x) => x.duration || x.cost || x.span || x.clock || x.topic || x.action)
    ? isTold(items.slice(k, to)) || namesMark(items.slice(k, to))
    : false;
}

const MARK_LEFT = /^(leaving|i|we|used|bought|need|worked|spent|maybe)$/;

/** "the owner wants it kept soft | the backing is to be netted": a remark, and then work, damage or goods. */
function leavesRemark(items: Item[], k: number, told: Item[]): boolean {
  if (told.length < 4) return false;
  const behind = items[k - 1]!;
  if (BETWEEN_STATEMENTS.test(behind.w) && !/^(so|then|also)$/.test(behind.w)) {
    if (!beginsStatement(items, k)) return false;
  }
  // "row one block three the indigo print's frayed"
  else if (leans(items, k - 1) || behind.place || !beginsStatement(items, k)) return false;
  const to = endOfSentence(items, k);
  const rest = items.slice(k, to);
  if (!rest.some((x) => x.finding || x.fail || x.action || x.cost || x.duration || x.span || x.material))
    return false;
  // "there's a name inked in the corner | leaving the bottom row as it is"
  if (MARK_LEFT.test(items[k]!.w) || items[k]!.action?.form === 'past')
    if (namesMark(told) && !namesMark(rest)) return true;
  return isTold(told) && !told.some((x) => x.finding || x.fail) && !isTold(rest);
}

/** Puts a stop where the talk turns to the quilt's story, its marks or its owner's wish, and where it comes back from there. */
export function withStoriesApart(items: Item[]): Item[] {
  const out: Item[] = [];
  let from = 0;
  items.forEach((item, k) => {
    if (isStop(item)) from = k + 1;
    else if (k > from + 2 && !BETWEEN_STATEMENTS.test(item.w)) {
      let told = items.slice(from, k);
      while (told.length && BETWEEN_STATEMENTS.test(told.at(-1)!.w)) told = told.slice(0, -1);
      if (opensRemark(items, k, told) || leavesRemark(items, k, told)) {
        pushStop(out, item);
        from = k;
      }
    }
    out.push(item);
  });
  return out;
}
