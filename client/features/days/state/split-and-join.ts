import { sameEntry } from '../../../../core/log/same-entry.ts';
import type { Entry } from '../../../../shared/entry.ts';

const placesOf = (entry: Entry): string[] => ('places' in entry ? (entry.places ?? []) : []);

/** One entry for each of its places, the minutes shared between them; null where it has but one place. */
export function splitEntry(entry: Entry): Entry[] | null {
  const places = placesOf(entry);
  if (places.length < 2) return null;
  return places.map((place) => ({
    ...entry,
    places: [place],
    ...('minutes' in entry && entry.minutes ? { minutes: entry.minutes / places.length } : {}),
  })) as Entry[];
}

/** Two entries that say the same of different places as one, their minutes together; null where they say different things. */
export function joinEntries(a: Entry, b: Entry): Entry | null {
  const bare = (entry: Entry): Entry => {
    const {
      places: _places,
      minutes: _minutes,
      ...rest
    } = entry as Entry & { places?: string[]; minutes?: number };
    return rest as Entry;
  };
  if (!placesOf(a).length || !placesOf(b).length || !sameEntry(bare(a), bare(b))) return null;
  const minutes = [a, b].reduce((sum, entry) => sum + (('minutes' in entry && entry.minutes) || 0), 0);
  return {
    ...a,
    places: [...new Set([...placesOf(a), ...placesOf(b)])],
    ...(minutes ? { minutes } : {}),
  } as Entry;
}
