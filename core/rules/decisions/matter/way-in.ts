import type { DecisionStatus, Topic } from '../../../../shared/vocabulary.ts';
import { OPEN_CUE } from '../../../lexicon/matters.ts';
import type { Part, Surroundings } from './part.ts';
import { senseOf, topicOf } from './topic-of.ts';
import { TIE_NOW } from './way-over.ts';

/** Tie or quilt, by hand or machine, wash or not: the way for the whole quilt. */
export function wayIn(
  around: Surroundings,
  k: number,
): { topic: Topic; status: DecisionStatus; rule: string } | undefined {
  const { state, parts, sentence, asked } = around;
  const part = parts[k]!;
  const { items, words } = part;
  let topic = part.topic!.topic;
  if (part.status === 'open') {
    if (
      topic === 'washing' &&
      !/\b(?:whether|if (?:she|he|they|i|we)|how|or|y ?\/ ?n|warm|lukewarm|cold|hot|dry clean\w*|washing|ever)\b/.test(
        words,
      )
    )
      return undefined;
    return { topic, status: 'open', rule: 'decision.way-open' };
  }
  // "washed it in the bath, that's settled": done
  if (topic === 'washing' && /^ (?:and |i |i 've |have )*washed /.test(words)) return undefined;
  const senses = items.map((x, at) => senseOf(x, items, at));
  const both =
    senses.includes('tying') && senses.includes('quilting') && /\b(?:or|vs|versus|\/)\b|\//.test(words);
  // "tie it again or quilt it": both, and no more
  if (both && BARE_WAYS.test(words)) return { topic, status: 'open', rule: 'decision.tie-or-quilt' };
  if (
    both &&
    (asked || OPEN_CUE.test(sentence) || /\b(?:could|might|may|maybe|perhaps|either|should)\b/.test(words))
  )
    return { topic, status: 'open', rule: 'decision.tie-or-quilt' };
  if (
    /\b(?:decided|made up my mind|settled) (?:to|on) (?:hand |machine )?(?:tie|quilt|tying|quilting)\b/.test(
      words,
    ) &&
    !TIE_NOW.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way' };
  const negated = /\b(?:not|n't|no|rather than|instead of)\b/.test(words);
  const deniedFirst =
    /^ (?:and |but )*(?:not|no|never) /.test(words) || /\bwas (?:thinking|going)\b/.test(words);
  if (deniedFirst) return undefined;
  if (negated) {
    // "tied, not quilted" within one breath
    const at = words.search(/\b(?:not|n't|rather than|instead of)\b/);
    const head = topicOf(items.filter((x) => x.token.from < items[0]!.token.from + at));
    if (head && (head.topic === 'tying' || head.topic === 'quilting')) topic = head.topic;
  }
  if (part.status === 'settled' && !TIE_NOW.test(words))
    return { topic, status: 'settled', rule: 'decision.way' };
  if (topic === 'washing') return undefined;
  const against = parts
    .slice(k + 1, k + 5)
    .some(
      (p) =>
        /^ (?:and |but )*(?:(?:i|we) )?(?:not|no|do n't|wo n't|'m not|'re not|are not) /.test(p.words) &&
        p.topic &&
        (p.topic.topic === 'tying' || p.topic.topic === 'quilting'),
    );
  if (
    TIE_NOW.test(words) ||
    items.some(
      (x) =>
        x.place &&
        x.place.rule !== 'place.it' &&
        x.place.places[0] !== 'quilt' &&
        // "this one gets tied, not quilted": of the two ways, which no block has, so that the quilt is meant
        !(against && /^this(?: one)?$/.test(x.w) && x.place.kind === 'pointer'),
    )
  )
    return undefined;
  const gets =
    /(?<![a-z])(?:gets|getting|(?:have|having) (?:it|this|this one|the quilt) (?:tied|quilted)|being (?:tied|quilted)|it is|shall be|will be|'ll be|(?:is|'s) to be|going to be|(?:we|i) ?(?:'re|'m|am|are) (?:going to |gonna )?(?:tie|quilt|tying|quilting)(?: it)?|(?:i|we) ?(?:'ll|will) (?:tie|quilt) it|(?:it 's|it is|it 'll be) (?:to be |going to be )?(?:hand |machine )?(?:tied|quilted|ties|tying|quilting)|then ?$|by hand|by machine (?:after all|then|in the end|instead)|going to (?:tie|quilt) it)\b/.test(
      words,
    );
  // "so we tie it and we don't quilt it"
  const plainly = against && / (?:i|we) (?:tie|quilt) it $/.test(words);
  if (
    (gets || plainly) &&
    (against || /\b(?:it|quilting|tying|we)\b/.test(words)) &&
    !/\b(?:'m|am) (?:tying|quilting) (?!it)/.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way-chosen' };
  // "Client says ties", "she went for tying it"
  if (
    parts.length === 1 &&
    items.length <= 6 &&
    / (?:client|owner|she|he|they) (?:says|said|chose|picked|went for|goes for) /.test(words)
  )
    return { topic, status: 'settled', rule: 'decision.way-told' };
  // "Hand quilting, no ties", "tying it, not quilting"; "Tied, not quilted" where it stood open
  const stoodOpen = state.memory.matters?.some((m) => m.about === 'tying' || m.about === 'quilting');
  if (
    k === 0 &&
    (against || (stoodOpen && isChoiceOfOpen(parts))) &&
    (BARE_WAY.test(words) || (stoodOpen && BARE_WAY_DONE.test(words)))
  )
    return { topic, status: 'settled', rule: 'decision.way-bare' };
  // "Tie." as an answer to the open question; "tie it, every four inches, navy perle cotton"
  const bare = items.filter((x) => !/^(?:okay|ok|right|so|well|yes|just|then|,)$/.test(x.w));
  const verb = bare.find((x) => x.action && /^(tie|quilt|tied|quilted)$/.test(x.w))?.w;
  const onlyHow =
    k === 0 &&
    /^(?:tie|quilt)$/.test(verb ?? '') &&
    parts.slice(1).every((p) => !p.items.some((x) => x.action || x.place || x.clock || x.duration));
  if (verb && (stoodOpen || !verb.endsWith('ed')) && bare.length <= 2 && (parts.length === 1 || onlyHow))
    return { topic, status: 'settled', rule: 'decision.way-bare' };
  return undefined;
}

const BARE_WAYS =
  /^ (?:(?:do|shall|should) (?:i|we) |whether (?:to |i |we )?|to )?(?:hand |machine )?(?:ties?|tying|tied|quilt|quilting|quilted)(?: it| this| again| the (?:quilt|lot|whole thing))* (?:or|vs|versus|\/) (?:to |do i |do we )?(?:hand |machine )?(?:ties?|tying|tied|quilt|quilting|quilted)(?: it| this| again| instead)* $/;

const BARE_WAY =
  /^ (?:ok |okay |right |so |just |then )*(?:(?:hand|machine) )?(?:tying|ties|tie|quilting|quilt)(?: (?:it|the quilt|this))? $/;

const BARE_WAY_DONE = /^ (?:(?:hand|machine) )?(?:tied|quilted) $/;

/** Nothing else in the sentence is of work, a place or a time. */
const isChoiceOfOpen = (parts: Part[]): boolean =>
  parts.slice(1).every((p) => !p.items.some((x) => x.action || x.place || x.clock || x.duration));
