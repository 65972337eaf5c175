import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { isTreatment } from '../../rules/treatments/is-treatment.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import { areSamePlaces, placesOf, type Standing, takePlaces } from '../standing.ts';
import { POINTERS } from './items.ts';

/** What takes one place out of a deed: "scratch that for 4-5", "not 4-5", "leave 4-5 out of it". */
const SPARES =
  /^ (?:(?:no|oh|ah|well|actually|sorry|wait|but|and|um|uh|er|hang on|hold on|,|-|\.) )*(?:(?:(?:scratch|strike|forget|cancel|scrap|drop|undo|skip) (?:(?:that|it|this) )?|not |that 's off )(?:for |on |at |in )?)(?:the |block )?$/;

const ONLY_TAKES =
  / (?:scratch|strike|forget|cancel|scrap|drop|undo|skip) (?:that|it|this) (?:for|on|at|in) (?:the |block )?$/;

/**
 * "(3-1, 3-4 and 4-5 to be patched;) scratch that for 4-5, I'm leaving that one", "not 4-5, net over that one": the deed holds for the
 * other places, and what is told behind is of the one that was taken out. Gives the whole set.
 */
export function sparedPlace(drafts: Draft[], standing: Standing[], items: Item[]): Draft[] | undefined {
  if (items.length > 24) return undefined;
  const at = items.findIndex((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const out = items[at]?.place?.places;
  if (!out || !SPARES.test(wordsBetween(items, 0, at))) return undefined;
  const holding = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      placesOf(was).length > out.length &&
      out.every((p) => placesOf(was).includes(p)),
  );
  const deed = holding.length === 1 ? holding[0]! : undefined;
  if (!deed) return undefined;
  // "not 4-5, 4-4": another place in its stead
  const behind = items.slice(at + 1);
  if (
    behind.some(
      (x) => x.place?.places.length && !POINTERS.has(x.place.rule) && !areSamePlaces(x.place.places, out),
    )
  )
    return undefined;
  const others = drafts.filter(
    (d) => isTreatment(d) && d.entry.kind === 'treatment' && d.entry.action !== undefined,
  );
  const told = others.filter(
    (d) =>
      deed.was.kind === 'treatment' && d.entry.kind === 'treatment' && d.entry.action !== deed.was.action,
  );
  // "scratch that for 4-5"
  if (
    !others.length &&
    ONLY_TAKES.test(wordsBetween(items, 0, at)) &&
    behind.every((x) => /^(?:please|[.!])$/.test(x.w))
  ) {
    takePlaces(deed, out, 'amend.spared', [items[at]!]);
    return standing.map((s) => s.draft);
  }
  if (!told.length || !behind.some((x) => /^(?:that|it|this|one|them|those|both)$/.test(x.w) || x.place))
    return undefined;
  takePlaces(deed, out, 'amend.spared', [items[at]!]);
  const past = behind.some((x) => x.action?.form === 'past');
  for (const d of told) {
    const entry = d.entry as { places?: string[]; state?: string; action?: string };
    entry.places = [...out];
    // "net over that one instead", in the place of what was only planned
    if (
      !past &&
      deed.was.kind === 'treatment' &&
      deed.was.state === 'planned' &&
      entry.action !== 'leave' &&
      entry.state === 'done'
    )
      entry.state = 'planned';
  }
  return standing.flatMap((s) => (s === deed ? [s.draft, ...told] : [s.draft]));
}
