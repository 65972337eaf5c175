import { makeItem } from '../item.ts';
import { findMention } from '../places/find-mention.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import type { Clause } from './clause.ts';

/** "black velvet: faded in every block": of those told before the mark, and not of the quilt. */
export function everyOneOf(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces {
  if (!isHeaded(state, clause) || !told.items.length) return told;
  return told.items.every((x) => x.place!.rule === 'place.all-blocks')
    ? { ...told, places: state.topic!.places }
    : told;
}

/** What stands between a heading and what is told under it. */
export const MARKS_OFF = /^(:|-|--)$/;

/** "Rip: fusible behind it. Seam: ladder stitch": damage told before heads what was done there, and is not found anew. */
export function headsWithDamage(state: ReaderState, clause: Clause, index: number): boolean {
  const next = state.clauses[index + 1];
  if (!next || next.sentence !== clause.sentence) return false;
  const thing = clause.items.filter((x) => !LEADS_IN.test(x.w));
  const [only] = thing;
  if (!only || thing.length > 2 || !(only.finding || only.seam) || thing.some((x) => x.place || x.fabric))
    return false;
  // "then the seam, ladder stitch"
  const sewn = next.joint === ',' && only.seam && next.items[0]!.stitch;
  if (!sewn && !MARKS_OFF.test(next.joint)) return false;
  if (!next.items.some((x) => x.action || x.material || x.stitch)) return false;
  const { i, token } = only;
  const places = findMention([makeItem(i, i, 'the', token), ...thing], state.memory.mentions ?? []);
  if (!places) return false;
  state.topic = { places, sentence: clause.sentence };
  state.carried = places;
  return true;
}

const LEADS_IN = /^(ok|okay|right|so|now|then|and|well|first|next|the|that|for|as|to|,|also)$/;

/** "right edge: sound", "black velvet - sound": a place stands before the mark. */
export const isHeaded = (state: ReaderState, clause: Clause): boolean =>
  MARKS_OFF.test(clause.joint) && state.topic?.sentence === clause.sentence;

/** "ties: half of them gone": what stands before a colon is what is spoken of behind it. */
export function headingThing(state: ReaderState, clause: Clause, index: number): string | undefined {
  // "ties: rows 1-3 gone, row 4 loose": the heading holds for the sentence
  let first = index;
  while (!MARKS_OFF.test(state.clauses[first]!.joint)) {
    first--;
    if (state.clauses[first]?.sentence !== clause.sentence) return undefined;
  }
  const heading = state.clauses[first - 1];
  if (heading?.sentence !== clause.sentence) return undefined;
  // "seam at 2-4: open", "3-3/3-4 seam - split"
  if (first === index && heading.items.length <= 6 && heading.items.some((x) => x.seam)) return 'seam';
  if (heading.items.length > 3) return undefined;
  const object = heading.items.at(-1)?.object;
  return object && (STITCHED.test(object) || (first === index && clause.joint === ':')) ? object : undefined;
}

const STITCHED = /^(ties|quilting|stitching)$/;
