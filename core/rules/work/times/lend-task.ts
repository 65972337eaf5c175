import type { Draft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import type { Claims, Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';
import { hasObject, isChosen, isDeedDone, isGoods, isLight, isWorkedOn } from '../work-items.ts';

/** A time whose kind of work is said further off: in the sentence, or alone before or after it ("Surveying, the whole of it"). */
export function lendTask(
  state: ReaderState,
  { items, number }: Sentence,
  preceding: Sentence | undefined,
  following: Sentence | undefined,
  claims: Claims,
): void {
  const bare = state.drafts.filter(
    (d) => d.entry.kind === 'work' && d.sentence === number && !d.entry.task && d.entry.mark !== 'stop',
  );
  if (!bare.length) return;
  const named = (list: Item[], reach = list.length): Item[] =>
    list.slice(0, reach).filter(
      (x, k) =>
        x.task &&
        x.task !== 'other' &&
        !hasObject(list, k) &&
        !isGoods(list, k) &&
        !isWorkedOn(list, k) &&
        // "the binding" may be the thing
        (!x.part ||
          list.length <= 3 ||
          / (on|at|of|doing|was|all|just) (the |my )?$/.test(wordsBetween(list, k - 2, k))),
    );
  const timeless = (list: Item[]): boolean => !list.some((x) => x.clock || x.span || x.duration);
  let found: Item | undefined;
  const here = named(items);
  // "Put it down as survey."
  const booked =
    following &&
    / (?:put|log|call|book|count|enter|mark|class|say) (?:it|that|them|this|those)(?: down| in)?(?: as| under| to| for)? /.test(
      wordsBetween(following.items, 0, 9),
    );
  if (
    new Set(here.map((x) => x.task)).size === 1 &&
    !items.some((x) => x.action?.form === 'past' || x.finding)
  )
    found = here[0];
  else if (
    !here.length &&
    following &&
    timeless(following.items) &&
    !booked &&
    !/ (next|tomorrow|then|will|'ll|later|to) /.test(wordsBetween(following.items, 0, 5))
  )
    found = named(
      following.items,
      Math.max(1, following.items.findIndex((x) => !isLight(x) && !/^(all|most|both|half)\b/.test(x.w)) + 1),
    )[0];
  if (!found && booked) found = named(following.items)[0];
  if (!found && !here.length && preceding && preceding.items.length <= 3 && timeless(preceding.items))
    found = named(preceding.items)[0];
  if (!found) return;
  for (const d of bare) {
    d.entry = { ...d.entry, task: found.task } as Draft['entry'];
    d.origins['task'] = {
      rule: 'work.task',
      how: 'said',
      from: found.token.from,
      to: found.end ?? found.token.to,
    };
  }
  // "unpicked the ties from nine to ten" names the work by what was done: that is told too
  if (!isDeedDone(items, items.indexOf(found)) && !isChosen(preceding?.items ?? [], found))
    claims.cut.add(found);
}
