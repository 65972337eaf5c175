import type { Item } from '../item.ts';
import { isNet } from './is-cloth.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** How it comes to be in: the word between the cloth and "in", and what that says of the deed. */
const VERBS: [RegExp, Way['form']][] = [
  // "goes in", "to go in", "has to go in"
  [/^(?:goes|go)$/, 'base'],
  [/^(?:going|piecing|setting|letting|putting)$/, 'ing'],
  [/^(?:went|gone|put|set|let|sewn|sewed|stitched|pieced|machined)$/, 'past'],
];
/** A verb before the cloth: "put brown gingham in", "setting a bit of gingham in". */
const LEAD =
  / (put|puts|set|sew|sewed|stitched|putting|setting|sewing) (?:(?:a|the|some|new|old|bit|piece|square|scrap|of) )*$/;
/** Nothing but the place it takes may stand behind: "in behind", "in 2-4", "in the bag" are something else. */
const IS_IN =
  /^ (?:(?:is|'s|has|'ll|will|to|be|all|now|then|both|has to|had to) )*(?:(goes|go|going|went|gone|put|set|let|sewn|stitched|pieced|machined) )?in (?:$|[,.;:+&]|and |by |instead |its |their |for (?:it|them|that|those) |now |place of |where (?:it|they) |(?:hand|machine) )/;
/** "put brown gingham into 3-3", "brown gingham went in at 3-3": the block that it is put into. */
const IS_INTO =
  /^ (?:(?:is|'s|has|'ll|will|to|be|all|now|has to|had to) )*(?:(goes|go|going|went|gone|put|set|let|sewn|stitched|pieced|machined) )?(?:in at|in on|into|in) /;

/**
 * "brown gingham in", "put plum rep in", "red turkey goes in", "the silk in its place": cloth that takes the place of what was
 * there. With what was cut or taken out told before it is one act (`absorbed.ts`).
 */
export function clothIn({ items, k, item, before, after, used, ways }: WordAt): WayFound {
  if (!isClothOfPatch(item) || !after.includes(' in')) return undefined;
  const lead = LEAD.exec(before)?.[1];
  const is = IS_IN.exec(after) ?? intoBlock(items, k, after, lead);
  if (
    !is ||
    items.some((x) => x.quantity?.unit || (x.fail && !/^(?:go|goes|going|went|gone)$/.test(x.w))) ||
    ways.some((x) => x.action === 'replace')
  )
    return undefined;
  const into = items.findIndex((x, m) => m > k && /^in(?:to)?$/.test(x.w));
  const own = VERBS.find(([verb]) => is[1] && verb.test(is[1]))?.[1];
  const at = lead ? items.findLastIndex((x, m) => m < k && x.w === lead) : k;
  if (used.has(at)) return undefined;
  const form = own ?? (lead ? (lead.endsWith('ing') ? 'ing' : isBase(items, at) ? 'base' : 'past') : 'noun');
  return found(
    { action: 'replace', form, at, items: [item], stuff: item, rule: 'treatment.cloth-in' },
    k,
    at,
    into,
  );
}

function intoBlock(
  items: Item[],
  k: number,
  after: string,
  lead: string | undefined,
): RegExpExecArray | undefined {
  const is = IS_INTO.exec(after);
  if (!is || !(lead || is[1] || / (?:into|in at) $/.test(is[0]))) return undefined;
  // "the apple green's gone in 3-2": where it is missing, and not where it went
  if (!lead && is[1] === 'gone' && / in $/.test(is[0])) return undefined;
  const at = items.findIndex((x, m) => m > k && /^in(?:to)?$/.test(x.w));
  return items.slice(at + 1, at + 4).some((x) => x.place?.kind === 'blocks') ? is : undefined;
}

const isClothOfPatch = (x: Item): boolean =>
  (x.fabric !== undefined || x.material === 'fabric') &&
  !isNet(x) &&
  !x.part &&
  !x.finding &&
  !/^(?:fabric|cloth|stuff|material)$/.test(x.w);

/** "to put", "will set", "might put" */
const isBase = (items: Item[], at: number): boolean =>
  /^(?:to|will|'ll|gonna|could|might|should|must|can|may|or|maybe|perhaps|just)$/.test(
    items[at - 1]?.w ?? '',
  );
