import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const SHARE =
  / (?:them|they|em|those|half|halves|some|most|all|mostly|(?:a|one|good|full|fair|two|three|nearly|about|over|least|the) (?:good |fair |full )?(?:thirds?|quarters?)|(?:good|fair|quite a|a|the odd) (?:few|bit|lot|number|couple|dozen|handful)|one or two|two or three|several|many|plenty) /;

/** "half of them were gone already", "in row six a good third had gone", of the ties or the quilting told of just before: not of the cloth. */
export const isOfThem = (items: Item[], k: number, thing: string | undefined): boolean =>
  /^(?:ties|quilting|stitching)$/.test(thing ?? '') &&
  SHARE.test(wordsBetween(items, Math.max(0, k - 8), k)) &&
  !items.slice(Math.max(0, k - 8), k).some((x) => x.fabric || x.part || x.w === 'piece' || x.w === 'block');
