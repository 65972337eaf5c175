import type { Item } from '../../item.ts';
import { wordsBetween } from '../../words-between.ts';

/** How many items the words for "except" take at `k`; 0 where none stand there. */
export function exceptAt(items: Item[], k: number): number {
  const word = items[k]?.w ?? '';
  const next = items[k + 1]?.w ?? '';
  if (
    /^(skipping|skipped|bar|barring|except|excepting|excluding|exc|excl|minus|save|sans|without|less|(but|also) not)$/.test(
      word,
    )
  )
    return 1;
  if (
    /^(other than|apart from|aside from|not counting|not including|leaving out|but not|except for|but for|save for|leaving aside|never mind|missing out|missed out|not touching)$/.test(
      `${word} ${next}`,
    )
  )
    return 2;
  // "row one stained throughout, saving 1-3"
  if (word === 'saving' && (items[k + 1]?.place || next === 'the') && /^(,|\()$/.test(items[k - 1]?.w ?? ''))
    return 1;
  // "column two's puckered, only 5-2 isn't"
  if (word === 'only' && deniesBehind(items, k)) return 1;
  // "with the exception of the bottom one"
  const exception = items
    .slice(k, k + 4)
    .map((x) => x.w)
    .join(' ');
  if (/^with (the|one) exception( of|$)/.test(exception)) return exception.endsWith(' of') ? 4 : 3;
  if (/^with exceptions? of /.test(exception)) return 3;
  if (
    word === 'but' &&
    /(^| )(all|every|everything|each|one|blocks?|squares?|any|anywhere|nothing|lot|sides?|edges?|corners?|borders?)$/.test(
      items[k - 1]?.w ?? '',
    )
  )
    return 1;
  if (word.startsWith('but ') && /(^| )all$/.test(items[k - 1]?.w ?? '')) return 1;
  // "everything in row two but 2-3"
  if (
    word === 'but' &&
    items[k - 1]?.place &&
    items.slice(Math.max(0, k - 6), k).some((x) => /^(all|every|everything|each)( |$)/.test(x.w)) &&
    (items[k + 1]?.place || /^(the|for)$/.test(next))
  )
    return 1;
  // "row one all faded but two and five"
  if (
    word === 'but' &&
    isBareNumber(items[k + 1]) &&
    items.slice(Math.max(0, k - 6), k).some((x) => /^(all|whole)$/.test(x.w)) &&
    (items[k - 1]?.finding || items[k - 1]?.action)
  )
    return 1;
  // "patched all the red dot ones but the one in row five"
  if (
    word === 'but' &&
    ((next === 'the' && /^(one|ones|block|blocks)$/.test(items[k + 2]?.w ?? '')) || /^the one /.test(next)) &&
    /^(ones|blocks|squares|pieces|them)$/.test(items[k - 1]?.w ?? '') &&
    items.slice(Math.max(0, k - 6), k).some((x) => /^(all|every|both)( |$)/.test(x.w))
  )
    return 1;
  // "every block in row four is thin but the wool"
  if (
    word === 'but' &&
    (items[k + 1]?.fabric || (next === 'the' && items[k + 2]?.fabric)) &&
    items.slice(Math.max(0, k - 9), k).some((x) => /^(all|every|everything|each|whole)( |$)/.test(x.w))
  )
    return 1;
  // "pressed row two not the end ones"
  if (word === 'not' && next === 'the' && ENDS_OF_IT.test(wordsBetween(items, k + 2, k + 5))) return 1;
  if (word === 'not' && /^[,(]$/.test(items[k - 1]?.w ?? '') && !/^(the|that) other/.test(next)) return 1;
  // "want lining oh not the corner one that's sound", "wants net over it not 1-3 that's fine"
  // "worn out everywhere, well not in row four"
  if (word === 'not' && (/^(oh|well)$/.test(items[k - 1]?.w ?? '') || isExcused(items, k + 1))) return 1;
  return 0;
}

/** "only 5-2 isn't", "only the last one hasn't": of the rest it was told. */
function deniesBehind(items: Item[], k: number): boolean {
  const at = items[k + 1]?.w === 'the' ? k + 2 : k + 1;
  if (!items[at]?.place || !/^[,;]$/.test(items[k - 1]?.w ?? '')) return false;
  return (
    /^(is|has|'s|was|are|have|does|did)$/.test(items[at + 1]?.w ?? '') &&
    /^(n't|not)$/.test(items[at + 2]?.w ?? '') &&
    /^(|[.,;!]|and|so)$/.test(items[at + 3]?.w ?? '')
  );
}

const ENDS_OF_IT =
  /^ (?:(?:end|corner|outer|first|last|middle|top|bottom) (?:ones?|two|blocks?|squares?)|(?:end|corner) (?:ones|blocks) ) /;

/** A number by itself, of a block in the row or column that was named. */
export const isBareNumber = (x: Item | undefined): boolean =>
  x !== undefined && !x.place && x.quantity?.value !== undefined && !x.quantity.unit && x.quantity.value < 30;

/** Is the place from `k` on told to be sound: "(not) 1-3 that's fine"? */
function isExcused(items: Item[], k: number): boolean {
  const at = items[k]?.w === 'the' ? k + 1 : k;
  if (!items[at]?.place) return false;
  const that = items.findIndex((x, m) => m > at && m < at + 3 && /^(that|it|which|that one)$/.test(x.w));
  return (
    that > 0 &&
    /^('s|is)$/.test(items[that + 1]?.w ?? '') &&
    items.slice(that + 2, that + 5).some((x) => x.finding === 'sound')
  );
}
