import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing } from '../standing.ts';

/** "only the top two actually", "first three only": which of the one list, and no more. */
const ONLY_PICKED =
  /^ (?:(?:no|oh|ah|wait|sorry|well|actually|i|we|,|did|it was|that was) )*(?:(?:only|just) )?(?:the )?(?:first|last|top|bottom|upper|lower|left|right) (?:one|two|three|four|five|six|ones|\d)(?: (?:blocks?|squares?))?(?:(?: only| actually| sorry| of them| of those)* [,.] .*| (?:only|actually|sorry|of them|of those|and|[.!])(?: (?:only|actually|sorry|[.!]))*(?: the .*)?)? ?$/;
const ONLY_DONE =
  / (?:only|just) (?:did|done|got|managed|finished|had time for|got through) | (?:only|just) .* (?:done|did|finished) /;
/** "only 2-2, 2-3's still to do" */
const ONLY_FIRST = /^ (?:(?:no|oh|ah|wait|sorry|well|actually|,) )*(?:only|just) /;
const REST_LATER =
  /^(tomorrow|tmrw|later|tonight|next|to do|still to do|still to go|to follow|another day|next time)$/;

/**
 * "no I only did 3-2, 3-3's for tomorrow", "wait no I only did the top one, the other's to do tomorrow": what was told as done is
 * done at the places named, and planned at the rest. Gives what stands afterwards.
 */
export function onlyPartDone(standing: Standing[], items: Item[], words: string): Standing[] | undefined {
  const picks = / (?:only|just) /.test(words) && ONLY_PICKED.test(words);
  const at = items.findIndex((x) => /^(only|just)$/.test(x.w));
  const named = ONLY_FIRST.test(words) && items[at + 1]?.place?.kind === 'blocks';
  const inTwo = donePart(standing, items);
  if (!inTwo && !picks && !named && !ONLY_DONE.test(words)) return undefined;
  const later = items.some((x, k) => REST_LATER.test(x.w) || REST_LATER.test(`${x.w} ${items[k + 1]?.w}`));
  if (inTwo && !later) return undefined;
  if (!inTwo && !later && (named || items.length > 9 || !(picks || pickedOf([], words)))) return undefined;
  const deeds = standing.filter(
    ({ was }) => was.kind === 'treatment' && was.state === 'done' && placesOf(was).length > 1,
  );
  const deed = deeds.length === 1 ? deeds[0]! : undefined;
  if (!deed) return undefined;
  const all = placesOf(deed.was);
  const first = picks
    ? undefined
    : items
        .slice(Math.max(0, at))
        .find((x) => x.place?.places.length && x.place.places.every((p) => all.includes(p)));
  const done = first?.place?.places ?? pickedOf(all, words);
  if (!done?.length || done.length >= all.length) return undefined;
  const rest = all.filter((p) => !done.includes(p));
  const { minutes: _minutes, ...left } = deed.was as Record<string, unknown>;
  const other: Standing = {
    was: { ...deed.was },
    draft: {
      ...deed.draft,
      entry: left as Standing['draft']['entry'],
      origins: { ...deed.draft.origins },
    },
  };
  put(deed.draft, 'places', done, 'amend.only-done', first ? [first] : []);
  if (!later) return standing;
  // what was planned of the same already has the rest as well
  const planned = standing.find(
    ({ was }) =>
      was.kind === 'treatment' &&
      deed.was.kind === 'treatment' &&
      was.state === 'planned' &&
      was.action === deed.was.action &&
      was.object === deed.was.object &&
      placesOf(was).length > 0,
  );
  if (planned) {
    put(
      planned.draft,
      'places',
      unique([...rest, ...placesOf(planned.was)]),
      'amend.rest-later',
      items.slice(-1),
    );
    return standing;
  }
  put(other.draft, 'state', 'planned', 'amend.rest-later', items.slice(-1));
  put(other.draft, 'places', rest, 'amend.rest-later', items.slice(-1));
  return standing.flatMap((s) => (s === deed ? [s, other] : [s]));
}

/** "well rows one to three. row four's tomorrow", after rows one to four: the two parts of what was told as done, named one after the other. */
function donePart(standing: Standing[], items: Item[]): boolean {
  if (items.length > 14 || items.some((x) => x.action || x.finding || x.quantity?.unit || x.clock))
    return false;
  const placed = items.filter((x) => x.place?.places.length && x.place.rule !== 'place.it');
  const [one, two] = placed.map((x) => x.place!.places);
  if (!one || !two || placed.length !== 2) return false;
  return standing.some(({ was }) => {
    const all = was.kind === 'treatment' && was.state === 'done' ? placesOf(was) : [];
    return (
      all.length === one.length + two.length &&
      [...one, ...two].every((p) => all.includes(p)) &&
      !one.some((p) => two.includes(p))
    );
  });
}

/** "the top one", "the first one", "the left one" of two or more blocks. */
function pickedOf(all: string[], words: string): string[] | undefined {
  const said =
    /(?: the|^|only|just|did|actually) (first|last|top|bottom|upper|lower|left|right)(?: hand)? (one|block|square|two|three|four|five|six|ones|\d)?(?: |$)/.exec(
      words,
    );
  const end = said?.[1];
  const count = said?.[2] === 'ones' ? undefined : (readCountWord(said?.[2]) ?? 1);
  const at = all.map((p) => splitBlock(p));
  if (!end) return undefined;
  if (!all.length) return [];
  if (at.some((b) => !b)) return undefined;
  if (end === 'first' || end === 'last')
    return count === undefined ? undefined : end === 'first' ? all.slice(0, count) : all.slice(-count);
  const by = /^(left|right)$/.test(end) ? at.map((b) => b!.block) : at.map((b) => b!.row);
  const best = /^(top|upper|left)$/.test(end) ? Math.min(...by) : Math.max(...by);
  const picked = all.filter((_p, k) => by[k] === best);
  return picked.length === count || count === undefined ? picked : undefined;
}

const COUNTS = ['one', 'two', 'three', 'four', 'five', 'six'];
const readCountWord = (word: string | undefined): number | undefined =>
  word === undefined
    ? undefined
    : COUNTS.includes(word)
      ? COUNTS.indexOf(word) + 1
      : Number(word) || undefined;
