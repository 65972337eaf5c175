import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { isTreatment } from '../../rules/treatments/is-treatment.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { sameUse } from './items.ts';

const DENIES = /^ (?:(?:oh|ah|er|um|ugh|,) )*(?:no|nope|sorry|wait|actually|hang on|hold on) /;
const NEW = / (?:too|also|as well|another|again|next|tomorrow|now|instead|then) /;

/**
 * "no, I patched 3-1 by hand", "no it was the gingham I patched 1-1 with": a deed of the last note told again, at its own place, with
 * another stitch, length or cloth: these are what was wrong. The rest of the note stands.
 */
export function deedAgain(state: ReaderState, standing: Standing[], items: Item[], words: string): boolean {
  if (!DENIES.test(words) || NEW.test(words) || items.length > 18) return false;
  const deeds = state.drafts.filter(isTreatment);
  const [again] = deeds;
  if (!again || deeds.length > 1 || !/^(?:done|doing)$/.test(again.entry.state)) return false;
  if (state.drafts.some((d) => d !== again && d.entry.kind !== 'material')) return false;
  const places = [...(again.entry.places ?? [])].sort().join();
  const same = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      was.action === again.entry.action &&
      [...placesOf(was)].sort().join() === places,
  );
  const [s] = same;
  if (!s || same.length > 1 || s.was.kind !== 'treatment') return false;
  let changed = false;
  const { stitch, minutes } = again.entry;
  // "it wasn't half an hour, it was twenty minutes, and the patch is herringboned on": more than that is told
  if (items.some((x) => (x.duration && !minutes) || x.clock || x.quantity?.unit || /^(?:not|n't)$/.test(x.w)))
    return false;
  if (stitch && stitch !== s.was.stitch) {
    put(s.draft, 'stitch', stitch, 'amend.deed-again', items);
    changed = true;
  }
  if (minutes && minutes !== s.was.minutes) {
    put(s.draft, 'minutes', minutes, 'amend.deed-again', items);
    changed = true;
  }
  return otherCloth(standing, s, items) || changed;
}

/** The one stuff that the deed was told with, where another is named now. */
function otherCloth(standing: Standing[], s: Standing, items: Item[]): boolean {
  const said = items.filter((x) => (x.fabric || x.material) && !x.part && !x.stitch && x.w !== 'piece');
  const [x] = said;
  if (!x || said.length > 1) return false;
  const used = standing.filter(
    ({ was }) =>
      was.kind === 'material' && was.use === 'used' && sameUse(was.material, x.material ?? 'fabric'),
  );
  const [stuff] = used;
  if (stuff?.was.kind !== 'material' || used.length > 1) return false;
  const name = x.fabric?.names.length === 1 ? x.fabric.names[0]! : x.w;
  if (stuff.was.name?.includes(x.w.split(' ').at(-1)!)) return false;
  put(stuff.draft, 'name', name, 'amend.deed-again', [x]);
  if (s.was.kind === 'treatment' && s.was.fabric) put(s.draft, 'fabric', name, 'amend.deed-again', [x]);
  return true;
}
