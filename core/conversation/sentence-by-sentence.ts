import type { Entry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { Draft } from '../rules/draft.ts';
import { splitBlock } from '../rules/places/grid.ts';
import { movedBy } from './moved-by.ts';
import { placesOf } from './standing.ts';

type Read = (text: string, conversation: Conversation) => { reading: Reading; conversation: Conversation };
type Sentence = { from: number; to: number; reading: Reading };

/** Nobody says more in one breath; a longer text is read once. */
const MOST_SENTENCES = 30;

/** Where one sentence ends and the next begins; not behind a number or a clipped word within a line of shorthand. */
const SENTENCE_END = /(?<=[\p{L}\d)"'’][.?!])\s+(?=[\p{L}\d"'“(])|\n+/gu;

/** Words of a sentence that only goes on with the one before: "And the two below", "same again on that", "did them". */
const GOES_ON =
  /^\W*and\b|\b(?:same|again|ditto|likewise|too|as well|also|so (?:is|are|has|have|does|do|did)|did|done|next|rest|others?)\b/i;

/**
 * "A hole in 2-3, moth in 4-1. The holed one gets a patch": what a later sentence points at may have been told
 * in an earlier one of the same note. The rules that find it look at what stood before the note; read one
 * after the other, each sentence stands on those before it. Where both ways find the same entry and only differ
 * in the blocks that it points at, those of the second are meant.
 */
export function pointSentenceBySentence(
  drafts: Draft[],
  text: string,
  conversation: Conversation,
  fabrics: Record<string, string[]>,
  read: Read,
): void {
  const ends = [...text.matchAll(SENTENCE_END)];
  if (!ends.length || ends.length > MOST_SENTENCES) return;
  const starts = ends.map((end) => end.index);
  const bare = starts.some((from, n) => {
    const to = starts[n + 1] ?? text.length;
    return GOES_ON.test(text.slice(from, to)) && !drafts.some((d) => within(d, from, to));
  });
  if (!bare && !drafts.some((d) => pointsAt(d) && d.origins['entry']!.from > starts[0]!)) return;
  const sentences = sentencesOf(text, ends, conversation, read);
  for (const [n, told] of sentences.entries()) {
    const { from, to, reading } = told;
    // what comes first stands on the notes before, whichever way it is read; so does what follows a mere heading
    if (!sentences.slice(0, n).some((s) => s.reading.entries.some((e) => placesOf(e.entry).length))) continue;
    const whole = drafts.filter((d) => within(d, from, to));
    for (const draft of whole.filter(pointsAt)) {
      const same = whole.filter((d) => tells(d.entry) === tells(draft.entry));
      const alone = reading.entries.filter(({ entry }) => tells(entry) === tells(draft.entry));
      if (same.length !== alone.length) continue;
      const { entry, origins } = alone[same.indexOf(draft)]!;
      const places = placesOf(entry);
      const before = placesOf(draft.entry);
      // "lawn at the back of it?": the cloth put in is not where it is put
      if (entry.kind === 'treatment' && !apart(places, clothIn(text.slice(from, to), fabrics))) continue;
      if (!allBlocks(places) || !apart(places, before) || (before.length && !apart(before, places))) continue;
      draft.entry = { ...draft.entry, places } as Entry;
      if (origins['places']) draft.origins['places'] = movedBy(origins, from)['places']!;
    }
    if (!doneAfterPlan(drafts, told, text)) addLost(drafts, told, n);
  }
}

/**
 * "Darned 2-2. Same again on 3-1", "netted 2-2. And the two below": a sentence that goes on with the one before
 * it, of which the note read as a whole made nothing.
 */
function addLost(drafts: Draft[], { from, to, reading }: Sentence, sentence: number): void {
  if (reading.ask || drafts.some((d) => touches(d, from, to))) return;
  for (const { entry, origins } of reading.entries) {
    if (entry.kind !== 'condition' && entry.kind !== 'treatment') continue;
    const told = drafts.filter((d) => deedOf(d.entry) === deedOf(entry)).flatMap((d) => placesOf(d.entry));
    if (!apart(placesOf(entry), told)) continue;
    drafts.push({ entry, origins: movedBy(origins, from), placed: 'said', clause: 0, sentence });
  }
}

/** "did them, zigzag, 25 min", "done, 20 min", "all done now": said of what the sentences before planned. */
const DID_THEM =
  /^(?:(?:and|so|right|ok|okay|now|there|that's|,|then|i|i've|i have|have|all|both|got) )*(?:did|done|finished|managed)\b(?: (?:it|them|that|those|these|both|all|now|already|today)\b)*(?= *(?:$|[.,;!–—-]|in |by ))/i;

/**
 * "3-2 needs patching. Done, 20 min": what was to be done has been done by the end of the same note, and what is said last holds.
 */
function doneAfterPlan(drafts: Draft[], { from, to, reading }: Sentence, text: string): boolean {
  if (!DID_THEM.test(text.slice(from, to).trim()) || reading.act !== 'log' || reading.ask) return false;
  const deeds = reading.entries.filter(({ entry: e }) => e.kind === 'treatment');
  if (!deeds.length || deeds.length !== reading.entries.length) return false;
  const pairs = deeds.map((deed) => ({
    deed,
    plan: drafts.find(
      ({ entry: e, origins }) =>
        e.kind === 'treatment' &&
        deed.entry.kind === 'treatment' &&
        e.state === 'planned' &&
        deed.entry.state === 'done' &&
        e.action === deed.entry.action &&
        // "net. done, 9 min", of a place that was told in the note before
        drafts.some((d) => d.placed === 'said' && !apart(placesOf(e), placesOf(d.entry))) &&
        origins['entry']!.from < from &&
        !apart(placesOf(e), placesOf(deed.entry)) &&
        !apart(placesOf(deed.entry), placesOf(e)),
    ),
  }));
  if (pairs.some(({ plan }) => !plan)) return false;
  for (const { deed, plan } of pairs) {
    plan!.entry = { ...plan!.entry, ...deed.entry } as Entry;
    const { entry: _clause, action: _deed, places: _where, ...how } = movedBy(deed.origins, from);
    plan!.origins = { ...plan!.origins, ...how };
  }
  return true;
}

/** Every sentence read on its own, up to one that takes back or mends what stands before it. */
function sentencesOf(
  text: string,
  ends: RegExpMatchArray[],
  conversation: Conversation,
  read: Read,
): Sentence[] {
  const sentences: Sentence[] = [];
  let from = 0;
  let before = conversation;
  for (const to of [...ends.map((end) => end.index!), text.length]) {
    const { reading, conversation: after } = read(text.slice(from, to), before);
    if (reading.act === 'amend' || reading.act === 'undo') break;
    sentences.push({ from, to, reading });
    before = after;
    from = to;
  }
  return sentences;
}

/** The blocks of the cloths that a sentence names as what is worked with, and not as the blocks ("the gingham ones"). */
const clothIn = (sentence: string, fabrics: Record<string, string[]>): string[] =>
  Object.entries(fabrics).flatMap(([name, blocks]) => {
    const [, behind] = sentence.toLowerCase().split(name.split(' ').at(-1)!);
    return behind === undefined || /^ (?:ones?|blocks?|squares?|pieces?|pair)\b/.test(behind) ? [] : blocks;
  });

const allBlocks = (places: string[]): boolean => places.length > 0 && places.every((p) => splitBlock(p));

/** Its blocks come from what was told before, or it has none. */
const pointsAt = ({ entry, placed }: Draft): boolean =>
  (entry.kind === 'condition' || entry.kind === 'treatment') &&
  (placed === 'none' || (placed === 'carried' && allBlocks(placesOf(entry))));

const within = (draft: Draft, from: number, to: number): boolean => {
  const at = draft.origins['entry']!.from;
  return at >= from && at < to;
};

/** Was any of its slots told there? */
const touches = ({ origins }: Draft, from: number, to: number): boolean =>
  Object.values(origins).some((at) => at.to > from && at.from < to);

const deedOf = (e: Entry): string | undefined =>
  e.kind === 'treatment' ? e.action : e.kind === 'condition' ? e.finding : undefined;

/** Is there one that the others have not got? */
const apart = (places: string[], others: string[]): boolean => places.some((p) => !others.includes(p));

/** All that an entry says but where. */
function tells({ ...slots }: Entry): string {
  delete (slots as { places?: unknown }).places;
  delete (slots as { fabric?: unknown }).fabric;
  return JSON.stringify(slots, Object.keys(slots).sort());
}
