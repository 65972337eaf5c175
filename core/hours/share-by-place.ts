import type { PlaceTally, Span } from './hours.ts';
import type { Sign } from './signs-of-work.ts';

type Share = { minutes: number; weight: number; places: string[]; noteId?: string };

/**
 * Shares the minutes of stretches among the places worked at. A treatment's own minutes go to its
 * places; what is left goes to the other notes within, each for the time since the note before it.
 * Time that no note ties to a place stands under no place. The shares add up to the stretches.
 */
export function shareByPlace(spans: readonly Span[], signs: readonly Sign[]): PlaceTally[] {
  const tallies = new Map<string | undefined, { minutes: number; noteIds: Set<string> }>();
  const add = (place: string | undefined, minutes: number, noteId: string | undefined): void => {
    const tally = tallies.get(place) ?? { minutes: 0, noteIds: new Set() };
    tallies.set(place, tally);
    tally.minutes += minutes;
    if (noteId !== undefined) tally.noteIds.add(noteId);
  };
  const byNote = new Map(signs.map((sign) => [sign.id, sign]));
  // A note counts in the first stretch that has it.
  const used = new Set<string>();
  for (const span of spans) {
    if (span.minutes === 0) continue;
    const within = span.noteIds.flatMap((id) => (used.has(id) ? [] : (byNote.get(id) ?? [])));
    const ownEntries = span.entryIds;
    const shares: Share[] = [];
    let before = span.startMin;
    for (const sign of [...within].sort((one, other) => one.at - other.at)) {
      const own = sharesOf(sign, span, ownEntries);
      if (own.length > 0) used.add(sign.id);
      const since = Math.max(1, sign.at - before) / Math.max(1, own.length);
      shares.push(...own.map((share) => ({ ...share, weight: since })));
      before = Math.max(before, sign.at);
    }
    const said = shares.reduce((sum, share) => sum + share.minutes, 0);
    const scale = said > span.minutes ? span.minutes / said : 1;
    let left = span.minutes - said * scale;
    const open = shares.filter((share) => share.minutes === 0);
    const weight = open.reduce((sum, share) => sum + share.weight, 0);
    const rest = weight > 0 ? left : 0;
    for (const share of shares) {
      const minutes = share.minutes > 0 ? share.minutes * scale : (rest * share.weight) / (weight || 1);
      for (const place of share.places) add(place, minutes / share.places.length, share.noteId);
    }
    left -= rest;
    if (left > 0) add(undefined, left, span.noteIds[0]);
  }
  return [...tallies]
    .map(([place, { minutes, noteIds }]) => ({
      ...(place === undefined ? {} : { place }),
      minutes,
      noteIds: [...noteIds],
    }))
    .filter((tally) => tally.minutes > 0)
    .sort((a, b) => b.minutes - a.minutes);
}

/** What a note has to do with places within a stretch. */
function sharesOf(sign: Sign, span: Span, ownEntries: readonly string[]): Share[] {
  const shares: Share[] = [];
  for (const { id, entry } of sign.entries) {
    if (!('places' in entry) || !entry.places || entry.places.length === 0) continue;
    if (entry.kind === 'treatment' && entry.state !== 'done' && entry.state !== 'doing') continue;
    const minutes = entry.kind === 'treatment' ? (entry.minutes ?? 0) : 0;
    // A stretch made of one treatment's minutes belongs to that treatment alone.
    if (span.how === 'length' && !ownEntries.includes(id)) continue;
    const noteId = sign.noteId;
    shares.push({ minutes, weight: 1, places: entry.places, ...(noteId === undefined ? {} : { noteId }) });
  }
  return shares;
}
