import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { LEXICON } from '../lexicon-index.ts';

const BEFORE = wordSet('any and more other now so well ok okay right also the');
const YES = wordSet(
  'yes yep yeah yup aye plenty lots several some loads one two three four five six 1 2 3 4 5 6',
);
const MARKS = wordSet(', . : - -- !');
const STOPS = wordSet('. ! ; \n');

/**
 * "any mould? yes, all along the bottom edge", "tears? two. 1-3 and 5-5": what she asks herself about and then finds heads the places
 * that she answers with, as before a colon.
 */
export function askedAndFound(tokens: Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const mark = tokens[i]!;
    const end = mark.w === '?' ? endOfYes(tokens, i + 1) : undefined;
    const from = end === undefined ? undefined : thingAsked(out);
    if (end === undefined || from === undefined) {
      out.push(mark);
      continue;
    }
    while (out.length > from && BEFORE.has(out[from]!.w)) out.splice(from, 1);
    out.push({ ...mark, w: ':' });
    i = end - 1;
  }
  return out;
}

/** Where it goes on behind the answer. */
function endOfYes(tokens: Token[], i: number): number | undefined {
  const few = tokens[i]?.w === 'a' && /^(?:few|couple|lot|good few)$/.test(tokens[i + 1]?.w ?? '');
  if (!few && !YES.has(tokens[i]?.w ?? '')) return undefined;
  let k = few ? i + 2 : i + 1;
  if (/^(?:a|of|there|is|are|'s)$/.test(tokens[k]?.w ?? '')) return undefined;
  // "hole? 1-3", "patch it? one for the list"
  if (!MARKS.has(tokens[k]?.w ?? '') || (tokens[k]!.glued && tokens[k]!.w === '-')) return undefined;
  while (MARKS.has(tokens[k]?.w ?? '')) k++;
  return k < tokens.length ? k : undefined;
}

/** Where the words begin that were asked, if nothing but a finding is among them. */
function thingAsked(out: Token[]): number | undefined {
  let from = out.length;
  while (from > 0 && !STOPS.has(out[from - 1]!.w)) from--;
  let k = from;
  while (k < out.length && BEFORE.has(out[k]!.w)) k++;
  const hit = LEXICON.longestAt(out, k);
  return hit && hit.next === out.length && hit.payloads.some((s) => s.k === 'finding') ? from : undefined;
}
