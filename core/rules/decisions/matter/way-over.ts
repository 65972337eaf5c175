import type { Topic } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { wordsBetween } from '../../words-between.ts';
import { BLOCKS, type Part } from './part.ts';

/** "tying it not quilting", "it's going to be tied instead of quilted", "tying wins over quilting": of the two, the one it is to be. */
export function wayOver({ items, words }: Part): Topic | undefined {
  if (!WAY_OVER_HINT.test(words)) return undefined;
  const told = WAY_OVER.exec(words);
  if (!told || TIE_NOW.test(words) || items.some((x) => BLOCKS(x) || x.span || x.clock)) return undefined;
  const [, way, other] = told;
  const chosen = way!.startsWith('t') ? 'tying' : 'quilting';
  // "tied it, not quilted": done
  if (
    /^(tied|quilted)$/.test(way!) &&
    !/ (?:be|gets?|getting|is|'s|'re|are|being) (?:all |just )?(?:tied|quilted) /.test(words)
  )
    return undefined;
  return chosen === (other!.startsWith('t') ? 'tying' : 'quilting') ? undefined : chosen;
}

const WAY_OVER_HINT = /\b(?:ties?|tying|tied)\b.*\bquilt|\bquilt.*\b(?:ties?|tying|tied)\b/;

const WAY_OVER =
  /^ (?!.*\b(?:n't|whether|or|if|might|maybe|could|thinking)\b)(?:\S+ ){0,8}?(ties?|tying|tied|quilting|quilted|quilt)(?: it| this| the (?:quilt|lot|whole (?:thing|lot)))?(?: (?:by|together|hand|machine))* (?:(?:wins?|won)(?: out)? (?:over|against)|(?:and )?not|instead of|rather than|over|(?:and )?no) (?:be |being |going to be |to be |for )?(?:hand |machine )?(ties?|tying|tied|quilting|quilted|quilt)\b/;

const BOTH_WAYS =
  /^ (?:to )?(?:(?:ties?|tying|tied) (?:or|vs|versus|,|\/) (?:\w+ )?(?:quilt|quilting|quilted)|(?:\w+ )?(?:quilt|quilting|quilted) (?:or|vs|versus|,|\/) (?:ties?|tying|tied))(?: it)?(?: (?:[:,=-]|--|decided|settled|answer))* (?:(?:it 's|going for|go with) )?(?:\w+ )?(tie|ties|tying|tied|quilt|quilting|quilted)(?: it| then| ,| by hand| it is| wins| won)* $/;

const HAND_OR_MACHINE =
  /^ (?:(?:by )?(?:hand|machine) (?:or|vs|versus|,|\/) (?:by )?(?:hand|machine) quilt(?:ing|ed)?|quilt(?:ing|ed)? (?:it )?(?:by )?(?:hand|machine) (?:or|vs|versus|,|\/) (?:by )?(?:hand|machine))(?: (?:[:,=?-]|--|decided|settled))* (?:(?:by|it 's) )?(?:hand|machine)(?: it is| then| wins)* $/;

/** "tie vs quilt: tie": which of the two it is to be. */
export function wayAnswered(items: Item[]): Topic | undefined {
  if (
    items.length > 12 ||
    !/^(ties?|tying|tied|quilt|quilting|quilted|to|hand|machine)$/.test(items[0]?.w.split(' ')[0] ?? '')
  )
    return undefined;
  const words = wordsBetween(items);
  // "hand or machine quilting: hand"
  if (HAND_OR_MACHINE.test(words)) return 'quilting';
  const way = BOTH_WAYS.exec(words)?.[1];
  if (!way) return undefined;
  return way.startsWith('t') ? 'tying' : 'quilting';
}

/** Tying or quilting told with a time or a stretch: work, and no choice between the two. */
export const TIE_NOW =
  /\b(?:now|tonight|today|tomorrow|started|starting|next|since|rows?|blocks?|first|later|morning|evening|half (?:the|of)|tied off|so far|yet to|once|when|after(?! all)|then i)\b/;
