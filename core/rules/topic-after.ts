import type { Clause } from './clause/clause.ts';
import type { Item } from './item.ts';
import { looksUndecided } from './mood.ts';
import { mendedCloth } from './places/cloth-worked-on.ts';
import type { ClausePlaces } from './places/places-of-clause.ts';
import type { ReaderState } from './reader-state.ts';
import { wordsBetween } from './words-between.ts';

/**
 * "3-2: …", "other three: …", "the bottom border, either …": places named before anything is said of them stand for the
 * rest of their sentence.
 */
export function topicAfter(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ClausePlaces,
): ReaderState['topic'] {
  const said = state.drafts.some((d) => d.clause === index);
  const told = state.topic?.sentence === clause.sentence;
  const cloth = placed.kind === 'none' && !told ? mendedCloth(clause.items, state) : undefined;
  const named =
    placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt') || cloth;
  // "(the calico has kept its colour,) the chintz hasn't, (it's faded)": what it is instead follows
  const denied =
    / (?:is|are|was|were|has|have|had|did|does|do) (?:n't|not) $| not (?:at all |so |quite )?$/.test(
      wordsBetween(clause.items),
    );
  // "the two shattered ones: it's crepeline": told by what was found there
  const described = placed.kind === 'specific' && !placed.items.length;
  const light = (x: Item): boolean =>
    Boolean(x.place || x.fabric || x.seam || x.quantity) ||
    /^(the|old|and|,|&|\+|\/|also|too|each|all|full|whole|in|of|on|for|at|as|now|then|ok|so|right|back|to|seam|blocks?|squares?|pieces?|again|both|that|this|those|these|only|just|one|ones|question|matter|about|with|regarding|yes|decided|is|'s|worst|worse|"|')$/.test(
      x.w,
    );
  // "3-4 I can't decide: net or leave", "3-4 could go either way, patch or leave": in doubt, before the ways are told
  if (
    !said &&
    named &&
    clause.items.every(
      (x) => light(x) || (described && x.finding) || IN_DOUBT.test(x.w) || (denied && DENIES.test(x.w)),
    ) &&
    (denied ||
      clause.items.every((x) => light(x) || (described && x.finding)) ||
      looksUndecided(wordsBetween(clause.items)))
  )
    return {
      places: cloth?.places ?? placed.places,
      sentence: clause.sentence,
      ...(told && state.topic?.finding ? { finding: state.topic.finding } : {}),
    };
  const standing = told ? state.topic : undefined;
  // "now the thumb hole | I'm torn between …"
  if (standing && !said && placed.places.every((p) => standing.places.includes(p))) return standing;
  if (standing && (placed.kind === 'none' || placed.kind === 'pronoun')) return standing;
  return undefined;
}

const DENIES = /^(?:at|all|quite|so|is|are|was|were|has|have|had|did|does|do|n't|not|but|though|however)$/;

const IN_DOUBT =
  /^(undecided|unsure|unresolved|could|might|may|go|goes|either|way|i|we|ca|can|n't|not|never|decide|decided|make|made|up|my|our|mind|minds|do|know|sure|yet|still|have|'ve|has|tbd|tbc|toss|torn|'m|am|two|about|dunno|no|idea|clue|well|hmm|really|what|ask|open|be|choose|settle|settled|fence|one|will|'ll|another|thing|matter|case|story|it|other|to be decided|up in the air|in the air|air|wondering|wonder|think|thinking)$/;
