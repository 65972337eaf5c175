import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const LAID =
  /^ (?:laid|lay|spread|got|put|had|laying|spreading) (?:it|everything|the lot|the whole thing|the whole lot|the whole works|it all|them|the thing|the quilt)(?: all)?(?: laid| spread| stretched)? (?:out|up|down|together|flat)\b|^ (?:laid|lay|spread|put) (?:out|up|down) (?:it all|everything|the lot|the whole thing|all three)\b/;
const LAYERS =
  /^ (?:laying|spreading|putting|laying out|spreading out) (?:out |up |down |together )?(?:all |the |my )*(?:three |3 )?layers\b/;
/** What is done to layers once they lie on one another. */
const FASTENED =
  / (?:(?:thread |pin |spray )?(?:pinned|basted|tacked|sprayed)|pinning|basting|tacking|safety pins) /;

/**
 * "laid it out, pinned the lot", "spread it all out on the floor and basted it": what is laid out and then pinned are the layers, however
 * far the two are told apart in the sentence. "laid it out flat to dry" and "laid it out for a photo" stay as they are.
 */
export function withLayersLaid(items: Item[]): Item[] {
  const k = items.findIndex(
    (x, m) => /^(?:laid|lay|laying|laying out|spread|spreading|got|put|had)$/.test(x.w) && isLaid(items, m),
  );
  if (k < 0 || items[k]!.action?.v === 'layer') return items;
  const form = /^(?:laying|spreading)/.test(items[k]!.w) ? 'ing' : 'past';
  return items.map(
    (x, m): Item => (m === k ? { ...x, deed: true, action: { v: 'layer', form }, task: undefined } : x),
  );
}

/** "it's laid out and pinned", "everything has been spread out and basted" */
const IS_LAID =
  / (?:it|they|everything|that|all of it|all three|the (?:lot|layers|three|quilt|whole thing|whole lot)|(?:three|all|the) layers) (?:(?:is|'s|are|'re|was|were|has|have|been|all|now|both|finally) )+(?:laid|spread) out $/;

function isLaid(items: Item[], k: number): boolean {
  const ahead = wordsBetween(items, k, k + 8);
  if (LAYERS.test(ahead)) return true;
  if (!LAID.test(ahead) && !IS_LAID.test(wordsBetween(items, 0, k + 2))) return false;
  const rest = items.slice(k + 2, k + 22);
  const pinned = rest.findIndex((x) => FASTENED.test(` ${x.w} `));
  if (pinned < 0) return false;
  const between = rest.slice(0, pinned);
  return (
    !/ (?:to dry|dry|drying|photos?|patch|net|tulle|look|see) /.test(wordsBetween(between)) &&
    !between.some(
      (x) => (x.action && x.action.v !== 'layer' && !x.part) || x.place?.kind === 'blocks' || x.finding,
    )
  );
}
