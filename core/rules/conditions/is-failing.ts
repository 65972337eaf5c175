import type { Item } from '../item.ts';

/** What may follow "gone" where it means that something is there no more. */
const GONE_ENDS =
  /^(|[.,;!?\n]|and|but|or|&|\+|\/|at|in|on|along|all|too|now|already|here|there|altogether|completely|entirely|as|so|where|over|under|underneath|beneath|across|down|out|off|round|around|both|again|between|by|near|for|which|then|with|i|it|the|right|inside|apart|clean|half|mostly|--|-|\)|\(|")$/;

/** Does the word at `k` say that something has given way? "going to put", "went over it", "open question", "gone soft" do not. */
export function isFailing(items: Item[], k: number): boolean {
  const word = items[k]!.w;
  const after = items[k + 1]?.w ?? '';
  switch (word) {
    case 'going':
      return !/^(to|with|over|for|on|at|in|round|back|by|through|along|inside|right|behind|under)$/.test(
        after,
      );
    case 'went':
      return !/^(to|over|for|on|at|round|back|through|with|out|along|straight|in|by|into|up|home|shopping)$/.test(
        after,
      );
    case 'gone':
      if (/^(to|for|over|into|round|back|through|four|three|two|five|six|nine|ten)$/.test(after))
        return false;
      // "gone soft", "gone from red to pink": what it has become
      // "too far gone to save"
      if (items[k - 1]?.w === 'far') return false;
      // "2-4's gone the same way"
      if (after === 'the' && items[k + 2]?.w === 'same') return false;
      // "the ties have gone from row two"
      if (after === 'from') return items.slice(k + 2, k + 4).some((x) => x.place);
      return GONE_ENDS.test(after) || items[k + 1]?.place !== undefined || items[k + 1]?.fail === true;
    case 'open':
      // "still open on the backing" is a matter; "a seam open on the back" is none
      if (after === 'on' && items.slice(Math.max(0, k - 3), k).some((x) => x.seam)) return true;
      // "open about 2in", but "open about the backing"
      if (after === 'about') return items[k + 2]?.quantity !== undefined;
      return !/^(question|matter|the|still|on)$/.test(after);
    case 'away':
      return /^('s|is|are|was|were|just|clean|right|half|all|gone)$/.test(items[k - 1]?.w ?? '');
    default:
      return true;
  }
}
