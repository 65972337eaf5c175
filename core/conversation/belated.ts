import type { Entry } from '../../shared/entry.ts';
import type { Draft } from '../rules/draft.ts';
import { POINTERS } from './mend/items.ts';
import { placesOf, type Standing } from './standing.ts';

/** "forgot to mention", "I never told you", "meant to say earlier", "one thing I left out": what comes now was told by nobody before. */
const NOT_TOLD =
  /\b(?:(?:forgot|forgotten|neglected|omitted|failed) to (?:say|mention|add|put|tell|log|note|record|write)|(?:never|n't|not) (?:actually |even |yet )?(?:told|tell|mentioned?|said|put down|logged?|noted|recorded?|wrote)\b|slipped my mind|left (?:it |that |this |something |one thing )?out|(?:did|have|had) n't mention)/;
/** "I should have said": mostly of what was told wrong, and now and then of what was not told. */
const SHOULD_HAVE =
  /\b(?:(?:should|ought to) (?:have |of |'ve )(?:said|told|mentioned|put|added|noted)|meant to (?:say|mention|add|tell|put))\b/;
/** Before it went on, or another time: a deed beside the one that was told. */
const ANOTHER_TIME =
  / (?:first|before(?:hand)?|already|earlier|yesterday|last (?:night|week)|as well|too|also|this morning|after(?:wards)?|since|monday|tuesday|wednesday|thursday|friday|saturday|sunday) /;

/**
 * Is it news that comes late, and no mend: "forgot to mention the backing's stained", "should have said I pressed it first"? It has a
 * finding, a deed, goods or hours of its own, which the last note has not.
 */
export function tellsLate(drafts: Draft[], standing: Standing[], words: string): boolean {
  const said = ` ${words} `;
  const untold = NOT_TOLD.test(said);
  if (!untold && !SHOULD_HAVE.test(said)) return false;
  if (
    / (?:not|sorry|instead|rather than|meant(?! to)|wrong) /.test(
      said.replace(/ (?:not|n't) (?:yet )?(?:told|mentioned?|said|put)/, ''),
    )
  )
    return false;
  const news = drafts.filter((d) => d.entry.kind !== 'remark');
  return news.length > 0 && news.some((d) => isNews(d, standing, said, untold));
}

function isNews(d: Draft, standing: Standing[], words: string, untold: boolean): boolean {
  const e = d.entry;
  const like = standing.filter(({ was }) => sameThing(was, e));
  if (e.kind === 'material' || e.kind === 'work' || e.kind === 'measurement' || e.kind === 'decision')
    return !like.length && (e.kind !== 'material' || e.quantity !== undefined || e.use === 'needed');
  const at = d.origins['places'];
  const own = at?.how === 'said' && !POINTERS.has(at.rule) && placesOf(e).length > 0;
  const known = placesOf(e).some((p) => standing.some(({ was }) => placesOf(was).includes(p)));
  if (e.kind === 'condition') {
    // "the hole is in 4-3, I should have said", after a hole
    if (like.length) return untold && own && !known;
    return (
      own ||
      /^ (?:\S+ )*(?:that |there )?(?:it|they|that one|there) (?:'s|is|was|are|were|has|had) /.test(words)
    );
  }
  if (e.kind !== 'treatment' || !e.action) return false;
  // "3-3 as well, should have said" names no deed: more of what was told
  if (like.length)
    return (
      own &&
      !known &&
      d.origins['action']?.how === 'said' &&
      !/^treatment\.same/.test(d.origins['action'].rule) &&
      (untold || ANOTHER_TIME.test(words))
    );
  return own ? !known || / i (?:'ve |had |have |'d )?\w+ /.test(words) : ANOTHER_TIME.test(words);
}

const sameThing = (a: Entry, b: Entry): boolean =>
  a.kind === b.kind &&
  ((a.kind === 'condition' && b.kind === 'condition' && a.finding === b.finding) ||
    (a.kind === 'treatment' && b.kind === 'treatment' && a.action === b.action) ||
    (a.kind === 'material' && b.kind === 'material' && a.material === b.material) ||
    (a.kind === 'measurement' && b.kind === 'measurement' && a.of === b.of) ||
    (a.kind === 'decision' && b.kind === 'decision' && a.about === b.about) ||
    a.kind === 'work');
