import type { TreatmentState } from '../../shared/vocabulary.ts';
import { MANNER, WORK_THINGS } from '../lexicon/deed-frames.ts';
import type { Clause } from './clause/clause.ts';
import { governorOf, governorOfThing } from './clause/governor.ts';
import { toldBehind } from './clause/told-behind.ts';
import type { Item } from './item.ts';
import { beginsToCome, isToCome } from './to-come.ts';
import { wordsBetween } from './words-between.ts';

const CONSIDERING =
  /(?<!\w)(jury (?:'s|is) (?:still )?out|either(?! (?:sides?|ends?|way|of (?:them|those|these))\b)|(?:choice|toss up|decision|pick) (?:(?:is|lies|was|'s) )?between|(?:half|part) of me|(?:one|another|an|the other|other|best|easiest) (?:option|possibility|alternative|idea)|alternatively|versus|vs|failing that|or not to|the other half|my (?:head|heart|gut) says|one (?:minute|day|moment) i (?:want|think|would|'d|'ll|am|'m)|probably|poss|possibly|options (for|are|here|on)|(?:neither|nothing|none of it|not|n't) (?:is |yet |been )?(?:resolved|settled)|unresolved|maybe|might|have n't a clue|no clue|no idea|wavering|undec|swithering|not certain|dunno|perhaps|possibly|not sure|n't sure|unsure|undecided|tbd|tbc|n't decided|not decided|n't made (my|up)|not made my mind|ca n't (decide|choose|make)|can not (decide|choose)|n't know (yet|whether|if|which|what)|do n't know|thinking of|thinking about|(?:i|we)(?: 'm| am| was| 're| are| were| 've been)(?: still| now)? thinking|thinking(?<=^ ?(?:(?:so|just|now|am|hmm|right|ok|okay|also|and|still|was|,) )*thinking)|thinking(?<= [,:] thinking)(?= (?:a|an|the|net|tulle|crepeline|patch|darn|maybe|perhaps|new|some|it))|think about|wonder|wondering|wondered|two minds|torn between|honestly torn|it 's between|it is between|back and forth|debating|toying|considering|consider|whether|could go either way|(?:i|we) may|may (?:well |yet |just |still )?(?:need|want|have|get|be|leave|replace)|i could|could|weighing|mulling|on the fence|up in the air|still open|open question|or should i|should i|do i|(?:will|shall) i(?= (?:just |really )?(?:leave|put|patch|net|darn|cut|replace|mend|line|back|sew|take|cover|let|lay|unpick|wash|tie|quilt|bind|press|try|keep|go|do(?! n't| not)|stitch|swap|piece))|n't a notion|not a notion|n't settled|to be decided|haven ?'?t settled|undecided|dithering|no idea (yet|whether|if)|or else|to decide|under consideration|being (?:considered|weighed)|for and against|choosing between|in the balance|(?:two|three|four|2|3|several|few|couple of|(?<!corner |diagonally |diagonals |it )both) (?:ways|options|choices|possibilities))\b/;
const PLANNED =
  /(?<!\w)((?:fixing|fixin|aiming|set|minded) to|proceed(?:ing)? with|opt(?:ed|ing)? for|plump(?:ed|ing)? for|adopt(?:ed|ing)?|could (?:do with|use|stand)|will|'ll|going to|gonna|wants?|needs?|need(s|ed)? to|has to|have to|'ve to|had better|got to|must|should|ought to|shall|to be|plan(s|ned|ning)? to|planning|remember to|n't forget(?: to| the| a| about)?|to do|next|tomorrow|later|tonight i|ready to|yet to|still to|wants to|todo|next week|next time|on monday|gets?|to go on|goes? on|about to|then i|once|before i|when i|due to|for tomorrow|for later|will want|to come|meaning to|intend(ing)? to|come(s)? (out|off) (first|next|later)|first thing|planned|decided on|going with|going for|it is|settled on|to get|wanting)\b/;

/** Ways told one after the other for choosing. */
const OPTIONS =
  / (ways|options|choices|possibilities|either(?! sides?| ends?)|torn between|choosing between|two minds|or else) /;
/** Somebody did it: the words right before the verb. */
const TOLD =
  / (?<! (?:will|shall|should|do|could|can|might) )(i|we|she|he|'ve|have|has|had|was|were|been|got|is|'s)( \S+)? $/;
/** "could do with a patch" wishes for one, and leaves nothing open. */
const COULD_DO_WITH = /\bcould (really |just )?(do with|use|stand)\b/g;
/** "couldn't get the label off" tells what was not to be done; "couldn't decide" is left. */
const COULD_NOT = /\bcould n't (?!decide|choose|make|say|tell)/g;
/** A length of time told in the sentence of a bare "patch" or "darn" says that it is done. */
const TOOK = /\b(\d+ ?(min|mins|minutes|hr|hrs|hours?)|half an hour|quarter of an hour|an hour)\b/;
/** "a hole I could put my thumb through" tells how big it is. */
const COULD_FIT =
  /\bcould (?:nearly |almost |easily |just )?(?:put|poke|stick|get|push|see|read|pass|drive|run|shove)(?: \S+){0,5} (?:through|in|into|inside)\b/g;
export const looksUndecided = (words: string): boolean =>
  CONSIDERING.test(
    words.includes('could')
      ? words.replace(COULD_DO_WITH, 'needs').replace(COULD_NOT, 'failed').replace(COULD_FIT, 'fits')
      : words,
  );
/** A plan called off: "no patch on 3-2 after all", "not washing it any more". */
const CALLED_OFF = /\b(after all|any ?more|in the end|changed my mind|on second thoughts?|thought better)\b/;
const GIVEN_UP =
  /\b(dropped|scrapped|abandoned|ditched|shelved|binned|gave up|given up|giving up|gone off|went off|cooled on) (on )?((the|that|my) )?(whole )?((idea|plan|thought|notion)( of)?|doing)?\b/;

const DROPPED_IT =
  / (?:dropped|ditched|scrapped|shelved|abandoned) (?:the|that) (?:net|netting|tulle|crepeline|patch|darn|support|lining|overlay)(?: idea)? (?!on the floor|again)| (?:the|that) (?:net|netting|tulle|crepeline|patch|darn|support|lining|overlay) (?:i|we) (?:'ve |have )?(?:dropped|ditched|scrapped|shelved|abandoned) /;

/** A plan told in the past, and that nothing came of it. */
const GONE_AGAINST =
  / (?:no|nope|nah)(?: way| sir| chance| thanks)*(?: [.,!;]| $)| (?:no|nope|nah) (?:it|that|they|this|i|we|not|leave|leaving|too|best|better) | (?:no longer|not (?:with|now|when|if|after|in|on|while|that|this|a|any ?more|going|happening|for|the way|worth)|wo n't|ca n't|will not|can not|no good|changed my mind|decided against|out of the question)\b/;

/** What is being done while she speaks. */
const IN_HAND =
  /^(?: (?:now|so|right|well|and|currently|um|uh))* (?:i 'm|i am|am|we 're|we are) (?:now |just |currently )?\S+ing .*\b(?:at the moment|right now|now|at present|as we speak|just now)\b/;

const NEGATION = new Set([
  'no',
  'not',
  "n't",
  'never',
  'without',
  'nor',
  'neither',
  'none',
  'nope',
  'cannot',
]);

/** Is the item at `k` said not to be so? Looks back to the last joint. */
export function isNegated(items: Item[], k: number, reach = 5): boolean {
  for (let m = k - 1; m >= Math.max(0, k - reach); m--) {
    const w = items[m]!.w;
    if (['but', ',', 'and', 'just', 'only', 'whether'].includes(w)) return false;
    // "but not 4-4, that one I'm leaving": a subject between them ends it
    if (/^(i|we|she|they|it)$/.test(w) && !/^(n't|not)$/.test(items[m + 1]?.w ?? '')) return false;
    // "2-2 is clear of stains"
    if (w === 'of' && /^(clear|free|rid)$/.test(items[m - 1]?.w ?? '')) return true;
    if (NEGATION.has(w))
      return (
        !(
          w === 'no' &&
          // "no more than tender", "no worse than faded"
          /^(more|worse|longer|i|they|it|we|she|he|that|this|there|,|wait|idea|clue)$/.test(
            items[m + 1]?.w ?? '',
          )
        ) &&
        // "no more than tender"
        !(w === 'no' && items[m + 2]?.w === 'than') &&
        !(w === 'not' && items[m + 1]?.w === 'only') &&
        // "can't decide whether to patch it"
        !(
          w === "n't" &&
          /^(decide|choose|know|sure|made|tell|settled|settle|say|decided|hardly|forget)$/.test(
            items[m + 1]?.w ?? '',
          )
        ) &&
        !(w === 'not' && ['sure', 'yet', 'decided'].includes(items[m + 1]?.w ?? ''))
      );
  }
  return false;
}

const MARKED_FOR =
  / (?:(?:marked|earmarked|put|set|chosen|picked|listed|keeping|saving|reserved|tagged|flagged) (?:\S+ ){1,6}(?:down |aside |out )?|(?:is|are|'s) (?:now |all |both |next )?)for $/;
/** How long something would take, and not how long it took. */
const ESTIMATED =
  / (?:will|'ll|would|'d|should|might|may|could|can|must|need|needs|if|when|whenever|every|each|usually|always|tomorrow|tonight|later|next|allow|reckon|about to|takes|take|for) /;
const NOT_YET =
  / (?:n't|not) (?:\S+ ){1,8}yet | still (?:have |has |had |is |are |'s |'ve )?(?:n't|not) | (?:n't|not) yet /;

const STANDS =
  /^ (?:is |'s |was |now |all )*(?:(done|finished|complete|completed)(?! (?:for|by) )|under way|underway|in progress|in hand|on the go) /;
const MEANT_FOR =
  /^ (?:(?:and|so|then|right|ok|it 's|it 'll be|,) )*(?:(?:a|an|some|bit|piece|of|new|the|small|fine|fresh) )*(?:net|tulle|patch|piece|darn|support|lining|underlay|interfacing|crepeline|overlay|replacement) for (?:the |that |this |both |all |row |block |\d|first|other|one\b|two\b|three\b|four\b|five\b|six\b|seven\b)/;
const TOLD_THERE =
  / (?:put|got|went|gone|on|done|made|sewn|sewed|cut|was|were|is|finished|today|yesterday|already|over|behind|bought|used|took|minutes?|mins?|hours?|half an hour) /;

/** The state of a treatment whose verb stands at item `k`, by its form and by the words around it. */
export function stateOf(
  clause: Clause,
  k: number,
  form: 'past' | 'ing' | 'base' | 'noun',
  sentence: string,
): TreatmentState | 'denied' {
  const { items } = clause;
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  const before = ` ${items
    .slice(0, k)
    .map((x) => x.w)
    .join(' ')} `;
  const near = items.slice(Math.max(0, k - 3), k).map((x) => x.w);
  // "changed my mind about lining 2-1", "managed to net 6-2"
  const governor =
    form === 'ing' || form === 'base'
      ? governorOf(items, k)
      : form === 'noun'
        ? governorOfThing(items, k)
        : undefined;
  if (governor?.state === 'dropped') return 'dropped';
  // "washing would only fade it", "darning always pulls on cloth like this": what would come of it, and nothing done
  if (
    form === 'ing' &&
    !/ (?:i|we) (?:'m|am|'d|would|was)? ?$/.test(before) &&
    /^ (?:(?:it|them|that|this|those) )?(?:(?:would|'d) (?!do |be the |need|have to|take)|always |tends to |never |only ever )/.test(
      wordsBetween(items, k + 1),
    ) &&
    !items.some((x) => /^(or|either|whether|maybe)$/.test(x.w))
  )
    return 'denied';
  // "net is kinder than a patch on silk this old", "I prefer net to patching": how she sees it, of no place
  if (
    !items.some((x) => x.place) &&
    (/ (?:is|are|'s) (?:\S+ )?(?:kinder|gentler|neater|quicker|easier|stronger|softer|lighter|better|safer) (?:\S+ )?than /.test(
      words,
    ) ||
      / (?:i|we) (?:always |much |rather |generally |usually )?(?:prefer|favour|favor) /.test(words))
  )
    return 'denied';
  // "not convinced about netting 2-1", "don't let me forget to press row two"
  if (governor?.state && / (?:not|n't|never) /.test(` ${governor.words} `)) return governor.state;
  // "4-1 is getting its patch right now"
  if (form === 'noun' && / (?:getting|having) .* (?:now|as we speak|at the moment) /.test(words))
    return 'doing';
  // "replacing 3-4 is off the table", "netting row two can wait"
  const behind = form === 'past' ? undefined : toldBehind(items, k);
  // "I'll get the quilting done on row one tonight"
  if (
    behind &&
    !(
      behind.state === 'done' &&
      / (?:will|'ll|to|must|should|shall|need|want|let 's|gonna|can|could|might) /.test(before)
    )
  )
    return behind.state;
  const negated = isNegated(items, k);
  // "wash done, drying on the rack", "wash under way": the work by its noun, and how it stands
  const stands =
    form === 'base' &&
    !/ (?:to|will|'ll|must|should|not|n't|gets?|needs?|wants?|once|when|before|until) /.test(before)
      ? STANDS.exec(wordsBetween(items, k + 1, k + 5))
      : null;
  if (stands) return stands[1] ? 'done' : 'doing';
  // "I was thinking of quilting it by hand but it gets tied"
  if (
    / (?:was|were|been) (?:half )?(?:thinking (?:of|about)|toying with|considering) (?:\S+ )?$/.test(
      before,
    ) &&
    / but /.test(sentence) &&
    !looksUndecided(sentence.slice(sentence.indexOf(' but ')))
  )
    return 'denied';
  if (
    /\b(was|were) (all )?(going to|gonna|about to|planning|set to|meaning to|ready to|minded to|fixing to|fixin to|aiming to|of a mind to)\b/.test(
      before,
    ) ||
    // "the plan was to wash it", "plan was a wash"
    / (?:plan|idea|intention) (?:was|had been) (?:to|for|a|the)(?: a)?(?: gentle| hand| full| quick)? $/.test(
      before,
    ) ||
    // "I had it in mind to put this in the wash"
    / had (?:it |this |half )?(?:in|a) mind to $/.test(before) ||
    // "it was going in the bath", "washing was the plan"
    (/^in the (bath|tub)$/.test(items[k]?.w ?? '') &&
      / was (?:going|due|meant|supposed)(?: to go)? $/.test(before)) ||
    ((form === 'ing' || form === 'noun') &&
      /^ (?:it )?(?:was|had been) (?:the|my|our) (?:plan|idea|intention) /.test(
        wordsBetween(items, k + 1, k + 6),
      )) ||
    / 'd (meant|planned|intended|hoped) (to|of|on)\b/.test(before) ||
    // "figured on washing it but not with that red in it"
    (/ (?:figured|reckoned|planned|counted|banked|set) on $/.test(before) &&
      / but (?:not|no|i|that|it|we) /.test(sentence)) ||
    / (?:had|'d) (?:it in mind|a mind|thought|half a mind) to (?:\S+ ){0,4}$/.test(before) ||
    /\b(had) (meant|planned|intended|hoped|been going|been meaning|been planning|thought) (to|of|on)\b/.test(
      before,
    ) ||
    // "figured on washing it but not with that red in it", "thought about quilting it by machine but no"
    (form !== 'past' &&
      / (?:(?:figured|planned|thought|counted|reckoned|banked|set|wondered|toyed) (?:on|about|of|for|with)|considered) (?:\S+ )?$/.test(
        before,
      ) &&
      GONE_AGAINST.test(sentence)) ||
    // "I'd planned to put a label on but won't now"
    / (?:meant|intended|planned|hoped|wanted|aimed|did (?:aim|mean|intend|plan|hope|want)) (?:to|on) .* (?:i )?(?:wo n't|will not|sha n't|shall not|am not|'m not|ca n't|did n't(?! (?:get|have|manage|reach|find|make))|no longer|(?:no|nope)(?: sir| ma'am)? [.,!;])/.test(
      sentence,
    ) ||
    // "wanted to wash it but the owner says no"
    / (?:meant|intended|planned|hoped|wanted|was going) to .* but (?:\S+ ){1,3}(?:says?|said|thinks) (?:no|not|otherwise) /.test(
      sentence,
    ) ||
    // "meant to patch 4-1, but the patch is off"
    / (?:meant|intended|planned|hoped|wanted|going) to (\S+) .*(?:the|that) \1(?:ing)? (?:is|'s) (?:now )?(?:off|out) /.test(
      sentence,
    )
  )
    return 'dropped';
  const called =
    /(?<!n't )\b(forget|drop|skip|never mind|cancel|scrap|nix|ditch|lose|bin|shelve|skipping|scrapping|dropping|cancelling|scrapped|cancelled|skipped|shelved|dropped) (the|that|it|about|doing|all|any|this)\b/.test(
      before,
    ) || /^ (so |and |but |right |ok |okay |no |then )*(forget|drop|skip|never mind|scrap|nix) /.test(words);
  // "don't think I'll wash it"; "I don't think it needs washing" only says so
  const doubted =
    / n't (?:think|reckon|suppose|believe|fancy)(?: that)? .*?(needs?|wants?|'ll|will|'d|would|shall|going)\b/.exec(
      before,
    )?.[1];
  if (doubted && form !== 'past') return /^(need|want)/.test(doubted) ? 'denied' : 'dropped';
  // "right now I'm taking the border off and whether the others stay I don't know"
  if (
    form === 'ing' &&
    / (?:'m|am|'re|are)(?: now| just| currently)? $/.test(before) &&
    / (?:now|at the moment|currently|as we speak) /.test(words) &&
    !looksUndecided(words)
  )
    return 'doing';
  // "gave up patching 2-5"
  if (form === 'ing' && / (?:gave|given|giving) up (?:on )?(?:the )?$/.test(before)) return 'dropped';
  // "I've dropped the net, 2-3 gets the new piece"
  if (form !== 'base' && DROPPED_IT.test(words)) return 'dropped';
  if (
    called ||
    (form !== 'past' && GIVEN_UP.test(before) && / (idea|plan|thought|notion|of|on|doing) /.test(before))
  )
    return 'dropped';
  // "muslin behind it is what I'll do"
  if (
    / (is|'s) (what|how|the way) i ('ll|will|shall|'m going|am going|mean|intend|plan|'ll be) /.test(sentence)
  )
    return 'planned';
  // "the plan for row three is a piece of muslin sewn in behind"
  if (/(?:^| (?:the|my|our)) (?:plan|intention|aim) (?:\S+ ){0,8}?(?:is|'s|now) /.test(before))
    return 'planned';
  if (form !== 'past' && /\bno longer (going|planning|wanting|wants|needs|doing|to)?\b/.test(before))
    return 'dropped';
  const refused =
    / no $/.test(before) ||
    /^ no (?!(i|they|it|we|she|he|that|this|there|longer|wait|idea|clue|,) )/.test(words);
  if (
    form === 'past' &&
    /\b(wo n't|will not|are n't|is n't|not going to|n't going to|not gonna|no longer|not to|not|ai n't) (now |going to |gonna )?(be|get|being|getting)\b/.test(
      before,
    )
  )
    return 'dropped';
  // "too far gone for a darn", "too far gone to mend", "past patching"
  if (form !== 'past' && / (?:too (?:\S+ ){1,2}(?:for|to)|past|beyond) (?:a |the |any |be )?$/.test(before))
    return 'denied';
  // "dabbed at the mildew; did not soak it": only what was not done
  if (negated && / (?:did|do|does) not (?:\S+ )?$/.test(before) && !CALLED_OFF.test(words)) return 'denied';
  // "haven't netted 5-2 yet", "row two still isn't pressed": it is to come
  if (negated && form === 'past' && NOT_YET.test(words)) return 'planned';
  if (negated || refused) {
    if (
      /(?<!\w)(not going to|not gonna|wo n't|will not|decided (not|against)|n't going to|n't gonna|not to|shall not|no longer|never|am not|'m not|would n't|not)\b/.test(
        before,
      ) &&
      form !== 'past'
    )
      return 'dropped';
    if ((form !== 'past' || / (?:after all|any ?more|in the end) /.test(words)) && CALLED_OFF.test(words))
      return 'dropped';
    if (/\bn't (need|want|think)\b/.test(before)) return 'denied';
    return 'denied';
  }
  if (
    /\b(decided against|(?:not|n't) happening|rejected|dismissed|discounted|discarded|vetoed|ruled out|off the table|off the cards|called off|out of the question|given up|gone off|thought better)\b/.test(
      words,
    )
  )
    return 'dropped';
  if (/ (instead of|rather than) $/.test(before)) return 'denied';
  // "2-2 will be patched and 3-3 perhaps netted"
  if (
    form === 'past' &&
    /(?<! (?:i|we|'ve|have|was|were|had|been)) (?:maybe|perhaps|possibly) $/.test(before)
  )
    return 'considering';
  if (governor?.state === 'considering') return 'considering';
  // "I am removing the right-hand border at the moment, whether the others are to go is not yet decided"
  if (form === 'ing' && IN_HAND.test(words) && !looksUndecided(words)) return 'doing';
  if (looksUndecided(sentence) && !/\b(done|did|finished)\b/.test(before)) {
    // "I can see three ways: cut it out and piece a new one in": no past where nobody did it
    if (
      /^(cut|put|set|let)$/.test(items[k]?.w ?? '') &&
      (clause.asked ||
        clause.joint === 'or' ||
        near.includes('or') ||
        near.includes('either') ||
        !TOLD.test(before))
    )
      return 'considering';
    // "net laid over, or cut out and a new piece set in? Undecided."
    if (form === 'past' && clause.asked && !TOLD.test(before)) return 'considering';
    // "two options: a patch on top, or cut out and a new piece set in"
    if (form === 'past' && OPTIONS.test(sentence) && !TOLD.test(before)) return 'considering';
    // "weighing net against a support of silk sewn in behind": the participle only describes what is weighed
    if (
      form === 'past' &&
      (/\b(weighing|considering|debating|choosing between|torn between|thinking (of|about)|toying with|wavering)\b/.test(
        before,
      ) ||
        / (is|are) (still )?(under consideration|in the balance|undecided)\b/.test(words))
    )
      return 'considering';
    if (
      form === 'past' &&
      !/\b(to be|get|gets|be|getting|either|maybe|or|might|could|whether|wants?|needs?)\b/.test(before) &&
      // "could be patched or darned"
      !(clause.joint === 'or' && k === 0) &&
      !near.includes('or')
    )
      return 'done';
    return 'considering';
  }
  if (
    clause.asked &&
    form === 'past' &&
    (clause.joint === 'or' || /\b(should|shall|could|do i|be)\b/.test(before))
  )
    return 'considering';
  if (clause.asked && (form !== 'past' || /^(cut|put|set|let)$/.test(items[k]?.w ?? '')))
    return 'considering';
  if (
    form === 'noun' &&
    /(?<! jury) (is|'s|are|'re|gets) (now )?(off|out|abandoned|given up|dropped|scrapped|forgotten)( |$)/.test(
      words,
    ) &&
    // "4-4 is getting a fresh piece, the net's off": the other
    !/ , (?:and )?(?:(?:the|that|my) )?\S+ (?:is|'s) (?:now )?(?:off|out|dropped|scrapped) /.test(
      wordsBetween(items, k + 1),
    )
  )
    return 'dropped';
  // "net for 2-3", "a new piece for that one": meant for it, where no word says that it is there
  if (form === 'noun' && MEANT_FOR.test(words) && !TOLD_THERE.test(words) && !clause.asked)
    return looksUndecided(words) || looksUndecided(sentence) ? 'considering' : 'planned';
  // "a support behind would be kinder"
  if (
    form === 'noun' &&
    / (?:would|'d|might|could) be (?:\S+ )?(?:kinder|better|best|nicer|safer|wiser|enough|neater|gentler|simpler|easier|an idea) /.test(
      words,
    )
  )
    return 'considering';
  // "what I'm going to do is cut a piece and slide it in behind"
  if (
    form === 'past' &&
    /^(cut|put|set|let)\b/.test(items[k]?.w ?? '') &&
    / (?:going to|gonna|want to|will|'ll|plan to|need to|have to) (?:do (?:\S+ ){0,8}?is )?(?:to |just |then )*$/.test(
      before,
    )
  )
    return 'planned';
  const modal = PLANNED.test(before) || / (to|will|'ll|gonna|must|should|shall|let's) $/.test(before);
  // "put 4-1 down for a patch"
  if (items[k]?.w === 'put' && / put (?:\S+ ){1,6}down for /.test(words)) return 'planned';
  // "should've photographed it before"
  if (form === 'past' && / (?:should|ought to|could|would|might)(?: 've| have)(?: \S+)? $/.test(before))
    return 'denied';
  if (form === 'past') {
    // "row four's under the iron right now"
    if (
      /^(?:'s|is|are) /.test(items[k]?.w ?? '') &&
      / (?:now|right now|as we speak|at the moment|this minute) /.test(words)
    )
      return 'doing';
    // "row two tied tomorrow, with luck"
    if (
      /^ (?:(?!and|but|will|then|i|we|to|for)\S+ ){0,5}(?:tomorrow|tmrw|tmw|next week|next time) /.test(
        wordsBetween(items, k + 1),
      ) &&
      !TOLD.test(before)
    )
      return 'planned';
    // "tomorrow cut the border strips"
    if (
      /^(cut|put|set|let)\b/.test(items[k]?.w ?? '') &&
      /^ (?:(?:so|and|then|right) )*(?:tomorrow|next|later|tonight) $/.test(before)
    )
      return 'planned';
    // "binding strips to cut", "a new piece to put in"
    if (
      /^(cut|put|set|let|inset)$/.test(items[k]?.w ?? '') &&
      / (?<!(?:had|have got|got) )to $/.test(before) &&
      !/ (had|got|managed|able|how|what|going) to $/.test(before)
    )
      return 'planned';
    if (
      /(?<!\w)(to be|get|gets|'ll be|will be|be|needs?|wants?|could (?:really )?(?:use|do with|stand)|has to be|have to be|must be|should be|getting|wanting)\b/.test(
        before,
      ) &&
      !/\b(has been|have been|been|had to be)\b/.test(before)
    )
      return 'planned';
    if (/\b(needs?|wants?) $/.test(before)) return 'planned';
    // "it will have a support of dyed silk sewn in behind"
    if (
      / (?:will|'ll|shall|is to|are to|going to|gonna) (?:each |all |both )?(?:have|get) (?:\S+ ){1,6}$/.test(
        before,
      )
    )
      return 'planned';
    if (/ (being|(?<!\band a |\bhalf a )half|partly|half way|halfway) $/.test(before)) return 'doing';
    return 'done';
  }
  if (governor?.state && governor.words !== 'to') return governor.state;
  if (form === 'ing') {
    // "washing is out", "darning won"
    const told = ` ${items
      .slice(k + 1, k + 5)
      .map((x) => x.w)
      .join(' ')} `;
    if (/^ (it |that one )?(is|'s|are) (now |all )?(off|out)( of the question)? (?!of )/.test(told))
      return 'dropped';
    if (/^ (won|wins|has won|has it) /.test(told)) return 'planned';
    if (/ (ended|wound|finished) up $/.test(before)) return 'done';
    // "darning it is"
    if (items[k + 1]?.w === 'it' && items[k + 2]?.w === 'is') return 'planned';
    // "marked 2-3 for netting", "2-3 is for lining"
    if (MARKED_FOR.test(before)) return 'planned';
    // "4-1 for darning"
    if (
      items[k - 1]?.w === 'for' &&
      k > 1 &&
      items.slice(0, k - 1).every((x) => x.place || /^(and|&|,|the|then|all|both)$/.test(x.w))
    )
      return 'planned';
    // "the tying of row two is half done"
    // "started darning 4-4, got about half of it done"
    if (
      / (?:half|nearly|almost|partly) (?:done|finished|complete) | (?:half|most|part|some|a bit) of (?:it|that|them) (?:is |'s )?(?:done|finished) /.test(
        words,
      )
    )
      return 'doing';
    if (/ after $/.test(before) || (clause.joint === 'after' && k === 0)) return 'done';
    // "it gets a little spot cleaning"
    if (/ gets? (?:a |some |its )(?:\S+ ){0,2}$/.test(before)) return 'planned';
    if (
      /(?<!\w)(needs?|wants?|could do with|will need|'ll need|going to need|will want|to|before|until|ready for|after that)\b/.test(
        before,
      ) ||
      /\b(need|needs|want|wants) $/.test(before)
    )
      return 'planned';
    if (
      /\b(finished|done|stopped|completed|did|that 's the|done with|spent)\b/.test(before) ||
      /\b(done|finished|complete|completed)\b/.test(
        items
          .slice(k + 1)
          .map((x) => x.w)
          .join(' '),
      )
    )
      return 'done';
    if (items.some((x) => x.duration) && !/\b(since|so far|now|been)\b/.test(words)) return 'done';
    if (/(?<!\w)(will be|'ll be|tomorrow|next|later)\b/.test(words) && !/\bnow\b/.test(words))
      return 'planned';
    // "washing it Friday", "darning 3-3 after supper"
    if (!items.some((x) => x.span || x.clock) && isToCome(words)) return 'planned';
    return 'doing';
  }
  // "ladder stitch tonight", "net on Friday"
  if (
    beginsToCome(` ${wordsBetween(items).trim().split(' ').slice(-2).join(' ')} `) &&
    !TOLD_THERE.test(words) &&
    !items.some((x) => x.span || x.duration || x.clock)
  )
    return 'planned';
  // "took me twenty minutes to cover 2-3 with tulle": it was done
  if (tookLengthTo(items, k)) return 'done';
  if (form === 'base') {
    if (items[k + 1]?.w === "'d" && !items[k + 2]?.action) return 'done';
    // "herringbone over the tear", "tried to close it"
    if (
      (items[k]?.stitch &&
        !modal &&
        /^[, ]*(machine |hand )?$/.test(before) &&
        /^(over|along|around|round|across|down)$/.test(items[k + 1]?.w ?? '')) ||
      / tried to $/.test(before)
    )
      return 'done';
    // "i sew the seam in 2-3 back stitch it took me twelve minutes", "I mend it yesterday": told as it went
    if (
      /(?:^| and| then|,) (?:i|we) (?:(?:just|also|then|only|now|first) )*$/.test(before) &&
      !governor?.state &&
      ((items.slice(k).some((x) => x.duration) && !ESTIMATED.test(words)) ||
        / (?:yesterday|last night|this morning|earlier today|earlier on|just now) /.test(
          wordsBetween(items, k),
        ))
    )
      return 'done';
    // "three hours to sew that on", "took me forty minutes to darn it"
    if (
      items[k - 1]?.w === 'to' &&
      (items[k - 2]?.duration || / (?:took|taken)(?: me)? to $/.test(before)) &&
      !/ (will|'ll|need|needs|allow|allowing|reckon|say|should|would|'d|another|left|want|estimate|guess|i 'm|maybe|about) /.test(
        before,
      )
    )
      return 'done';
    if (/ went (with|w|for) (\/ )?(a |the )?$/.test(before)) return 'done';
    // "photos of 5-2 and 5-3", "survey from nine to ten, including photographs of both faces"
    if (
      /^(photos|pictures|photographs|pics|snaps|shots|photographing)$/.test(items[k]?.w ?? '') &&
      !PLANNED.test(words) &&
      !clause.asked &&
      / (including|incl|plus) (the |some |my )?$|^ (and |, |then |some |also )*$/.test(
        before.replace(/^ +/, ' '),
      )
    )
      return 'done';
    // "photos of the front and back done"
    if (
      /^(photos|pictures|photographs|pics|snaps)$/.test(items[k]?.w ?? '') &&
      !modal &&
      / (done|taken) /.test(words) &&
      !/ (be|get|need|needs|being) (done|taken) /.test(words)
    )
      return 'done';
    if (
      !modal &&
      (items.some((x) => x.duration) || TOOK.test(sentence)) &&
      !/\b(need|allow|reckon|say|about|another|will|should|would|left)\b/.test(words) &&
      // "2-2 replace with plaid, 40 min", "vac, row 2, 20 min"
      (/^(patch|darn|mend)$/.test(items[k]?.w ?? '') ||
        items[k - 1]?.place?.kind === 'blocks' ||
        (!PLANNED.test(words) &&
          Object.hasOwn(WORK_THINGS, items[k]?.w ?? '') &&
          items.slice(0, k).every((x) => MANNER.test(x.w)) &&
          /^(,|:|of|-|--|)$/.test(items[k + 1]?.w ?? '')))
    )
      return 'done';
    if (
      /(?<!\w)(had to|did|managed to|(?<!(?:have|has|'ve|'s) )got to)\b/.test(before) &&
      !/\bto $/.test(before.replace(/had to|managed to/, ''))
    )
      return 'done';
    if (modal) return 'planned';
    return 'planned';
  }
  // "muslin going in behind now", "net going on as we speak"
  if (
    / going (?:in|on|over|behind|down|under|across) /.test(words) &&
    / (?:now|as we speak|right now|at the moment) /.test(words)
  )
    return 'doing';
  // "is down for a patch", "on the list for a darn", "due a press"
  if (
    / (?:planned|list|down|due|earmarked|marked|booked|scheduled|listed|slated|in line|up next|next up|due) for (?:a |an |some |the |its )?$| (?:n't forget|remember) (?:a |an |the |that )?$| due (?:a |an |its )$/.test(
      before,
    )
  )
    return 'planned';
  if (/ (?:half|nearly|almost|partly|part) (?:done|finished|on|way|through)|half way/.test(words))
    return 'doing';
  // "a patch would only drag at the silk"
  if (/ (?:would|'d) (?:only|just|never|not|n't) /.test(words)) return 'denied';
  // "it's having both, lawn at the back and the net on top"
  if (
    / (?:having|getting|go with|going with|going for|doing|do|to have|to get|have|get) both (?:\S+ ){1,14}/.test(
      sentence,
    )
  )
    return 'planned';
  // "the last one, make that net over the face instead": what it shall be
  if (
    / make (?:that|it|them|those|this|(?:\S+ ){1,4})(?: one)? (?:a |some |the )?$/.test(before) &&
    / (?:instead|rather|then) /.test(words)
  )
    return 'planned';
  // "slept on it, a patch"
  if (/^ (?:(?:so|right|ok|well|and|,|i|i 've|having|we) )*(?:slept|thought) (?:on|about) it /.test(sentence))
    return 'planned';
  // "changed my mind, a patch instead"
  if (/ instead $/.test(words) && !TOLD_THERE.test(words) && !TOOK.test(sentence)) return 'planned';
  // "net instead, tomorrow"
  if (/ (?:tomorrow|tmrw|next week|next time|tonight|later) $/.test(sentence)) return 'planned';
  // a noun: "a patch", "net over it"; "so it's crepeline over the pair of them"
  if (
    / it (?:shall be|will be|'ll be|has to be|is going to be) (?:the |a |an |some |just )?$/.test(before) ||
    (/ it (?:is|'s) (?:to be )?(?:the |a |an |some |just )?$/.test(before) && !/ (on|now) /.test(words))
  )
    return 'planned';
  if (
    / (tomorrow|tmrw|tonight|(?<!the )next(?! (?:one|two|three|block|row)\b)|later|getting|due) /.test(
      words,
    ) &&
    !/ (next to|got|put|done|went) /.test(words)
  )
    return 'planned';
  // "2-3 could do with a patch"
  if (/ (?:could|would|'d) (?:really |just |probably |maybe )?(?:do with|use|stand|take) /.test(before))
    return 'planned';
  // "has holes and will get patches": the plan stands next to its noun
  if (
    / (will|'ll|going to|gonna|must|should|shall|(?:is|are|'s|has|have|got) to) (?:all |both |each |also )?(?:get|have|be having|be getting|be given) (?:\S+ ){0,2}$/.test(
      /^(get|have|be)$/.test(items[k]?.w ?? '') ? `${before}${items[k]!.w} ` : before,
    )
  )
    return 'planned';
  if (
    /(?<!\w)(needs?|wants?|will|'ll|going to|gets?|get|to|goes|going|should|must|(?<!the )next(?! (?:one|two|three|block|row)\b)|decided|it is|settled|shall proceed|proceeding|requires?)\b/.test(
      // "silk's in behind 2-1 to 2-3": the "to" of a stretch of blocks
      wordsBetween(items.filter((x) => x.place?.kind !== 'blocks')),
    ) &&
    !/(?<!\w)(got|put|has|have|'ve|went|had|on now|sewed|stitched)\b/.test(before)
  )
    return 'planned';
  return 'done';
}

/** Does the clause begin with how long it took, and lead from that to the deed at `k`? */
function tookLengthTo(items: Item[], k: number): boolean {
  const length = items.findIndex((x) => x.duration);
  return (
    length > 0 &&
    length < k &&
    items[length + 1]?.w === 'to' &&
    / (?:took|taken) (?:(?:me|us|about|over|nearly|just|a good|all of|only|another) )*$/.test(
      wordsBetween(items, 0, length),
    ) &&
    !/ (?:will|'ll|would|'d|not|n't|never) /.test(wordsBetween(items, 0, length))
  );
}
