import { wordsBetween } from '../words-between.ts';
import { removalSoon } from './removal-soon.ts';
import { verbNear } from './verb-near.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "put fusible on", "ironed a bit of interfacing". */
export function fusibleBehind({ items, k, item, before, all, used }: WordAt): WayFound {
  if (
    (/^(fusible|interfacing)$/.test(item.w) || /\b(fusible|interfacing)$/.test(item.w)) &&
    item.material === 'interfacing' &&
    !removalSoon(items, k) &&
    !/\b(bought|buy|need|got|still|ordered)\b/.test(all)
  ) {
    const verb = verbNear(items, k, ['stabilize'], used);
    if (
      verb ||
      / (put|ironed|fused|with|iron|fuse|or|either|maybe) $/.test(
        wordsBetween(items, k - 10, k).replace(
          /(?: (?:some|a|the|of|that|this|more|bit|piece|layer|strip|square|scrap|length|real|really|very|nice|good|light|lightweight|fine|thin|soft|sheer|woven|white|black|new|fresh))+ $/,
          ' ',
        ),
      )
    ) {
      const ironed = items.findIndex((x) => x.action?.v === 'press');
      return found(
        {
          action: 'stabilize',
          form: verb?.form ?? (/ (put|ironed|fused) /.test(before) ? 'past' : 'noun'),
          at: verb?.k ?? k,
          items: [item],
          stuff: item,
          rule: 'treatment.fusible',
        },
        k,
        ...(verb ? [verb.k] : []),
        ...(ironed >= 0 ? [ironed] : []),
      );
    }
  }
  return undefined;
}
