import type { LoggedEntry, LoggedNote, QuiltState } from '../../../../core/log/state.ts';
import type { Place } from '../../../../shared/entry.ts';

export type StoryLine = { entry: LoggedEntry; note?: LoggedNote };

/** Everything the log says about a place, in the order in which it was said. */
export function placeStory(state: QuiltState, place: Place): StoryLine[] {
  const family = relatives(place);
  const notes = new Map(state.notes.map((note) => [note.note.id, note]));
  return state.entries
    .filter(({ entry }) => 'places' in entry && entry.places?.some((said) => family.has(said)))
    .map((entry) => {
      const note = entry.noteId === undefined ? undefined : notes.get(entry.noteId);
      return note ? { entry, note } : { entry };
    });
}

/** The names under which words about a place may stand: a side of the border is the border too. */
function relatives(place: Place): Set<Place> {
  const family = new Set<Place>([place]);
  if (place.startsWith('border-')) family.add('border');
  if (place.startsWith('edge-')) family.add('edge').add('binding');
  if (place.startsWith('corner-')) family.add('border').add('edge');
  if (place === 'border') for (const side of ['top', 'right', 'bottom', 'left']) family.add(`border-${side}`);
  if (place === 'edge') for (const side of ['top', 'right', 'bottom', 'left']) family.add(`edge-${side}`);
  return family;
}
