import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { LEXICON } from '../../lexicon-index.ts';
import { blocksOfLine, countUp, unique } from '../grid.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { others } from './other-sides.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';

const DAY = /^(mon|tues?|weds?|wednes|thu|thurs?|fri|sat|satur|sun)(day)?$/;
const TELLS =
  /^(is|'s|are|'re|was|were|look|looks|seem|seems|all|has|have|'ve|had|need|needs|want|wants|got|get|gets|can|will|'ll|just|only|also|too|rather|very|still|a|bit|be|:|-|i|we|'m|am|'d|going|gonna|shall|should|must|might|hope|on|by|hand|machine|this|next)$/;

/**
 * "rows one and two are fine, the rest are faded", "col 1 torn, others ok", "left edge frayed, the other edges are sound": the lines or
 * the sides that were not told of, where whole ones were told of just now and something is told of these.
 */
export function restOfLines(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  const word = w(tokens, k);
  const noun = w(tokens, k + 1);
  const of =
    /^(rest|remainder)$/.test(word) && noun === 'of' ? (w(tokens, k + 2) === 'the' ? k + 3 : k + 2) : 0;
  const named =
    of || /^(other|remaining)$/.test(word)
      ? (/^(ones|rows|columns|cols|edges|borders|sides|corners)$/.exec(of ? w(tokens, of) : noun)?.[0] ?? '')
      : '';
  if (!named && !/^(others|rest|remainder)$/.test(word)) return undefined;
  let next = named ? (of || k + 1) + 1 : k + 1;
  if (w(tokens, next) === 'of' && /^(them|those|these)$/.test(w(tokens, next + 1))) next += 2;
  // "did the rest of them after lunch"
  const done =
    /^(did|do|finished?)$/.test(w(tokens, i - 1)) &&
    /^(after|before|at|this|by|in|now|too|today|yesterday|last|)$/.test(w(tokens, next));
  if (!done && !tellsOfThem(tokens, next)) return undefined;
  const lines = /^(|ones|rows|columns|cols)$/.test(named) ? linesLeft(ctx, named) : undefined;
  if (lines) return pointingTo(next, lines, 'place.other-rows');
  const told = /^(|ones|edges|borders|sides|corners)$/.test(named) ? sidesToldBack(ctx) : [];
  const stem = told[0]?.split('-')[0];
  if (!stem || told.length > 3 || (/^(edge|border|corner)s$/.test(named) && !named.startsWith(stem)))
    return undefined;
  return others({ ...ctx, focus: told }, next, `${stem}s`);
}

/** Is at once told what is so of them, or done to them? */
function tellsOfThem(tokens: Token[], at: number): boolean {
  for (let k = at; k < at + 5; k++) {
    if (/^(wait|tomorrow|tmrw|tonight|later|done|finished|to)$/.test(w(tokens, k)) || DAY.test(w(tokens, k)))
      return true;
    // "the rest of them I'll do tonight"
    if (/^(do|doing|did|tackle|leave|leaving)$/.test(w(tokens, k)) && k > at + 1) return true;
    // "the rest is for sunday"
    if (w(tokens, k) === 'for' && k > at && /^(is|are|'s|'re)$/.test(w(tokens, k - 1))) return true;
    const senses = LEXICON.longestAt(tokens, k)?.payloads ?? [];
    if (senses.some((s) => s.k === 'finding' || s.k === 'action')) return true;
    if (!TELLS.test(w(tokens, k))) return false;
  }
  return false;
}

/** The lines beside those that were told as whole ones, one after the other. */
function linesLeft(ctx: PlaceContext, noun: string): string[] | undefined {
  const { grid } = ctx;
  let axis: 'row' | 'column' | undefined;
  const told: number[] = [];
  for (const group of groupsBack(ctx)) {
    const whole = wholeLines(grid, group);
    if (!whole || (axis && whole.axis !== axis)) break;
    axis = whole.axis;
    told.push(...whole.lines);
  }
  if (!axis || (noun.startsWith('row') && axis !== 'row') || (noun.startsWith('col') && axis !== 'column'))
    return undefined;
  const all = countUp(1, axis === 'row' ? grid.rows : grid.blocks);
  const left = all.filter((n) => !told.includes(n));
  return left.length && left.length < all.length
    ? left.flatMap((n) => blocksOfLine(grid, axis, n))
    : undefined;
}

/** The sides of one border or edge, or the corners, told one after the other. */
function sidesToldBack(ctx: PlaceContext): string[] {
  const stem = /^(border|edge|corner)-/.exec(ctx.focus.at(-1) ?? '')?.[0];
  const told: string[] = [];
  for (const group of groupsBack(ctx)) {
    if (!stem || !group.every((p) => p.startsWith(stem))) break;
    told.push(...group);
  }
  return unique(told);
}
