import type { Item } from '../item.ts';
import { tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';
import { isStop, joinsPlaces } from './joints.ts';
import { beginsSaying } from './new-subject.ts';
import { REMOVE_VERBS } from './removal-at.ts';
import { isDeed, isSubject } from './run-on.ts';

const DETERMINER = /^(the|a|an|all|both|every|each|that|this|those|its|my|another|some|whole|of)$/;
/** "I'm pressing", "we'll wash", "I've darned", "I might net": somebody is about to say what she does. */
const WHO_DOES =
  /^ (?:i|we) (?:(?:'m|'re|am|are|'ve|have|had|'d|'ll|will|shall|might|may|could|should|must|need to|also|just|then|still) )*/;
/** Goods and hours told by their verb. */
const GOODS_OR_HOURS =
  /^(bought|used|ordered|picked|started|stopped|finished|worked|spent|need|needs|needing|got)$/;

const I_HAVE =
  /^ (?:i|we) (?:(?:'ve|have|also|just|then|still|already|only|do|will|'ll) )*(?:got|have|need|bought|ordered|'ve|had) /;

/** Do the words from `k` on begin a statement of work, damage, goods or hours of their own? */
export function beginsStatement(items: Item[], k: number): boolean {
  const first = items[k];
  if (!first || isStop(first)) return false;
  let to = k + 1;
  while (to < items.length && !isStop(items[to]!) && (items[to]!.w !== ',' || joinsPlaces(items, to))) to++;
  const rest = items.slice(k, to);
  const words = wordsBetween(rest);
  if (/ (?:too|as well|likewise|neither|either) $/.test(words)) return false;
  if (isDeed(items, k) || isSubject(items, k)) return true;
  const who = WHO_DOES.exec(words);
  // "i've got six yards of it in the trunk"
  if (who && I_HAVE.test(words) && rest.slice(0, 8).some((x) => x.quantity?.unit)) return true;
  if (who) {
    const own = rest.slice(who[0].trim().split(' ').length);
    return own.slice(0, 3).some((x) => x.action || REMOVE_VERBS[x.w]) && own.some(tellsPlace);
  }
  // "leaving 3-3 as it is", "darning row two", "maybe net 3-3"
  const led =
    /^(leaving|maybe|perhaps|possibly|also|going|might|will|'ll)$/.test(first.w) ||
    first.action?.form === 'ing';
  if (led)
    return (
      rest.slice(0, 4).some((x) => x.action) && rest.some((x) => tellsPlace(x) || x.fabric !== undefined)
    );
  // "there's a tear in 3-3", "a stain on the backing"
  if (first.w === 'there' || first.finding)
    return rest.some((x) => x.finding || x.fail) && rest.some((x) => tellsPlace(x) || x.fabric !== undefined);
  if (GOODS_OR_HOURS.test(first.w))
    return rest.some(
      (x) => x.material || x.duration || x.span || x.clock || x.task || x.action?.form === 'ing',
    );
  // "half an hour of cutting"
  if (first.duration) return rest.some((x) => x.task);
  // "3-3 torn", "the backing mouldy", "both brown ginghams darned"
  let at = 0;
  while (DETERMINER.test(rest[at]?.w ?? '') && at < 3) at++;
  while ((rest[at]?.place || rest[at]?.fabric) && joinsPlaces(rest, at + 1)) at += 2;
  const head = rest[at];
  return Boolean(head && (tellsPlace(head) || head.fabric) && beginsSaying(rest, at));
}
