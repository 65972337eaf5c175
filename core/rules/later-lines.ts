import type { Token } from '../text/tokenise.ts';
import { wordAt as w } from '../text/word-at.ts';
import { LATER } from './later-places.ts';

const LINE = /^(?:rows?|columns?|cols?|rose|road|roads)$/;
const AMONG = /^(?:and|&|\+|to|through|,|-)$/;
const NUMBER =
  /^(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|first|second|third|fourth|fifth|sixth|last)$/;

/**
 * "tied rows one to four and rows five and six are for tonight": a stop before the lines of which something else is told, so that they are
 * not read as one list with those before them.
 */
export function withLaterLines(tokens: Token[]): Token[] {
  if (tokens.length < 6 || !tokens.some((t) => LINE.test(t.w)) || !tokens.some((t) => AMONG.test(t.w)))
    return tokens;
  for (let k = 3; k < tokens.length - 2; k++) {
    if (!/^(?:and|,|but|&)$/.test(tokens[k]!.w)) continue;
    const named = LINE.test(w(tokens, k + 1));
    // "it was rows one to three and four's for tonight too"
    if (!named && !NUMBER.test(w(tokens, k + 1))) continue;
    const first = named ? k + 2 : k + 1;
    let m = first;
    while (NUMBER.test(w(tokens, m)) || (AMONG.test(w(tokens, m)) && NUMBER.test(w(tokens, m + 1)))) m++;
    const verb = w(tokens, m);
    if (m === first || !/^(?:is|'s|are|'re|can|will|'ll)$/.test(verb)) continue;
    // "rows five and six are": of both; "rows one to three and four 's": of the last
    const several = m > first + 1;
    if (/^(?:is|'s)$/.test(verb) ? several : !named && !several) continue;
    const before = tokens.slice(Math.max(0, k - 8), k);
    const line = before.findLast((t) => LINE.test(t.w));
    if (!line || !NUMBER.test(before.at(-1)!.w)) continue;
    const stop = tokens.findIndex((t, n) => n > m && /^(?:[,.;!?\n]|and|but|so)$/.test(t.w));
    const rest = tokens.slice(m, stop < 0 ? tokens.length : stop);
    if (!LATER.test(` ${rest.map((t) => t.w).join(' ')} `)) continue;
    const mark: Token = { ...tokens[k]!, w: ';', kind: 'mark', to: tokens[k]!.from, glued: false };
    const lead = named ? [] : [{ ...tokens[k + 1]!, w: line.w, to: tokens[k + 1]!.from }];
    return [...tokens.slice(0, k), mark, ...lead, ...withLaterLines(tokens.slice(k + 1))];
  }
  return tokens;
}
