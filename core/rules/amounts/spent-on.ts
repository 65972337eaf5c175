import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import type { CostFound } from './find-amount.ts';

/** "spent 18 on batting", "spent twenty on some thread": a round sum, where goods are named that it went on. */
export function spentOn(tokens: Token[], i: number): CostFound | undefined {
  let k = i + 1;
  while (/^(about|around|nearly|another|over)$/.test(tokens[k]?.w ?? '')) k++;
  const sum = readCount(tokens, k);
  if (!sum || tokens[sum.next]?.w !== 'on') return undefined;
  let on = sum.next + 1;
  while (/^(the|some|more|a|new|my|enough|good)$/.test(tokens[on]?.w ?? '')) on++;
  const goods = LEXICON.longestAt(tokens, on)?.payloads;
  return goods?.some((s) => s.k === 'material') &&
    !goods.some((s) => s.k === 'task' || (s.k === 'part' && tokens[on - 1]?.w === 'the'))
    ? { amount: sum.value, next: sum.next, each: false, rule: 'cost.spent-on' }
    : undefined;
}
