import { type Item, makeItem } from '../item.ts';
import { startOfSentence } from './joints.ts';

const SMALL = /^(?:and|or|so|then|also|oh|hm|hmm|um|maybe|the|,)$/;

/**
 * "(2-5 darned.) 1-3 too? or leave it", "and 2-4 as well?": asked of herself whether the same is to be done there. It becomes
 * "maybe 1-3 too", told in a sentence of its own, and is no question to the log.
 */
export function withTooAsked(items: Item[]): Item[] {
  const at = items.findIndex((x, k) => x.w === '?' && isTooAsked(items, k));
  if (at < 0) return items;
  const from = startOfSentence(items, at);
  const mark = items[at]!;
  const word = (w: string, like: Item): Item =>
    makeItem(like.i, like.i, w, { ...like.token, w, kind: /^\w/.test(w) ? 'word' : 'mark' });
  return [
    ...items.slice(0, from),
    word('maybe', items[from]!),
    ...items.slice(from, at).filter((x) => x.w !== 'maybe'),
    ...(items[from]!.w === 'also' ? [word('too', mark)] : []),
    { ...mark, w: '.', token: { ...mark.token, w: '.' } },
    ...withTooAsked(items.slice(at + 1)),
  ];
}

function isTooAsked(items: Item[], mark: number): boolean {
  const asked = items.slice(startOfSentence(items, mark), mark);
  const tail = asked
    .slice(-2)
    .map((x) => x.w)
    .join(' ');
  return (
    asked.length < 7 &&
    !/^(?:no|nope|nah|not|yes|yep|yeah)$/.test(items[mark + 1]?.w ?? '') &&
    (/(?:^| )(?:too|as well|likewise|the same|same)$/.test(tail) || asked[0]?.w === 'also') &&
    asked.some((x) => x.place?.places.length) &&
    asked.every((x) => x.place || SMALL.test(x.w) || /^(?:too|as|well|as well|likewise|same|&)$/.test(x.w))
  );
}
