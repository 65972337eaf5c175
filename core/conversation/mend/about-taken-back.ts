import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { saidOf } from '../remember.ts';
import { type LastNote, standingOf } from '../standing.ts';

const ABOUT =
  /^(?:(?:no|oh|ah|actually|sorry|wait|and|please|just|,|-) )*(?:scratch|strike|forget|scrub|delete|ignore|disregard|cross out|rub out|take back|take out|never mind|drop|lose) (?:that|all that|what i said|what i told you|(?:that|the) (?:bit|part|thing|note|line|one|remark)) (?:about|on|with) (.+?)(?: (?:please|then|actually|again|after all))*[ .!]*$/;
/** Words that tell nothing of what is meant. */
const LIGHT =
  /^(?:the|a|an|my|her|his|their|its|it|this|that|being|having|to|in|on|at|of|for|by|and|going|be|was|is|'s|up|out|wanting|how)$/;

/** Does the note name a part of several things told? Then it takes back no whole note. */
export const namesPart = (last: LastNote | null, words: string, items: Item[]): boolean =>
  (last?.entries.length ?? 0) > 1 &&
  ABOUT.test(words) &&
  items.some(
    (x) => x.finding || x.material || x.task || x.place?.kind === 'blocks' || (x.action && !x.place),
  );

/**
 * "scratch that about the hall": of what the last note told, the one part that speaks of it goes, and the rest stands. Nothing where no part or
 * more than one speaks of it.
 */
export function aboutTakenBack(last: LastNote | null, words: string): Draft[] | undefined {
  const about = ABOUT.exec(words)?.[1];
  if (!about || !last || last.entries.length < 2) return undefined;
  const named = about.split(' ').filter((w) => /^[a-z\d-]+$/.test(w) && !LIGHT.test(w));
  if (!named.length || named.length > 6) return undefined;
  const said = last.entries.map(({ entry, origins }) => {
    const own = saidOf(origins['entry'] ?? Object.values(origins)[0], last.said);
    return `${own} ${entry.kind === 'decision' ? entry.about : ''}`;
  });
  const hit = said.map((own) => named.every((w) => new RegExp(`\\b${w}\\b`).test(own)));
  if (hit.filter(Boolean).length !== 1) return undefined;
  return standingOf(last)
    .filter((_s, k) => !hit[k])
    .map((s) => s.draft);
}
