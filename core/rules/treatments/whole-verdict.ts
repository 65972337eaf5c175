import { COLOURS } from '../../lexicon/colours.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';

const LEAD =
  '(?:(?:oh|ah|well|right|ok|okay|so|and|but|hmm|um|yes|yeah|yep|yup|no|nah|nope|actually|then|i think|on reflection|having (?:slept on it|thought about it)|thought about it|slept on it|,|[.]) )*';
const TAIL =
  "(?: (?:then|now|after all|though|i think|i reckon|in the end|tomorrow|tonight|later|today|really|,|[.!]|i 've decided))*";

/** "ok going ahead with that", "slept on it and I will", "decided yes", "let's do that": the way that stood open is taken. */
const YES = new RegExp(
  `^ ${LEAD}(?:(?:i 'm |i am |i 'll |i will |we 'll )?(?:going ahead|go ahead|going for it|go for it|gone for it)(?: with (?:it|that))?|(?:i 'll |i will |i 'm going to |let 's |will |going to |gonna )(?:do|try|go with)(?: (?:it|that|this))(?: one)?|(?:and |so )?i will|do (?:that|it)|decided (?:yes|to(?: do it| go ahead)?)|(?:it 's |that 's )a (?:definite )?yes|that 's (?:the plan|decided|settled)|it 's (?:decided|happening|a go))${TAIL} $`,
);
/** "nah, not worth it", "decided not to", "I'd better not": it is given up. */
const NO = new RegExp(
  `^ ${LEAD}(?:(?:it 's |that 's )?not worth (?:it|the (?:effort|bother|trouble|time|risk)|bothering)|not (?:bothering|doing (?:it|that)|going to(?: bother| do (?:it|that))?)|(?:i )?(?:wo n't|sha n't|will not) (?:bother|do (?:it|that))|(?:i 've )?decided (?:not(?: to)?|against(?: it| that)?)|(?:i 'd |i had )?(?:better|best) not|no (?:point|need)|(?:it 's |that 's )?(?:too much|more) (?:work|trouble|bother|faff)(?: than it 's worth)?|(?:i )?ca n't be (?:bothered|doing with (?:it|that))|(?:it 's |that 's )a (?:definite )?no|it does n't need (?:it|that)|(?:i )?do n't think (?:so|i (?:will|'ll)(?: (?:bother|do (?:it|that)))?))${TAIL} $`,
);

/** Words that, as a whole note, are said of the one way that stood open in the last: it is taken or given up. */
function saidOfTheWay(state: ReaderState, items: Item[]): Draft[] {
  const words = wordsBetween(items);
  const taken = YES.test(words);
  if (!taken && !NO.test(words)) return [];
  const ways = (state.memory.last?.entries ?? []).flatMap(({ entry: e }) =>
    e.kind === 'treatment' && e.action && (e.state === 'considering' || (!taken && e.state === 'planned'))
      ? [e]
      : [],
  );
  const way = ways[0];
  if (ways.length !== 1 || !way?.action) return [];
  return [ofWay({ items, index: 0, sentence: 0 }, way, taken ? 'planned' : 'dropped', items)];
}

/** A way of the last note, taken or given up. */
const ofWay = (
  view: ClauseView,
  way: Extract<Draft['entry'], { kind: 'treatment' }>,
  status: 'planned' | 'dropped',
  said: Item[],
): Draft =>
  makeDraft(
    'treatment',
    view,
    {
      action: [way.action, 'treatment.verdict', undefined, 'implied'],
      state: [status, 'treatment.verdict', said],
      ...(way.object ? { object: [way.object, 'treatment.verdict', undefined, 'implied'] } : {}),
      places: [[...(way.places ?? [])], 'place.of-open', undefined, 'implied'],
    },
    'carried',
  );

/** "both", "it'll be both", "doing both": all the ways that stood open in the last note. */
const BOTH = new RegExp(
  `^ ${LEAD}(?:it 'll be |it 's |it 's going to be |i 'll (?:do|have|go for|go with) |i 'm (?:doing|going for|going with) |let 's (?:do|have) |doing |going (?:for|with) |gets |it gets |do |have )?(?:both|all three)(?: of (?:them|those)| ways)?${TAIL} $`,
);
/** "neither in the end", "none of those" */
const NEITHER = new RegExp(
  `^ ${LEAD}(?:it 's |it 'll be |doing |i 'm doing )?(?:neither|none)(?: of (?:them|those|the two)| way)?${TAIL} $`,
);
/** "it's coming off", "off it comes": where taking it off stood open beside leaving it. */
const COMES_OFF = new RegExp(
  `^ ${LEAD}(?:(?:it|they|that|those)(?: 's| is| are| 're| 'll| will)?(?: to| have to| has to| going to)? (?:be )?(?:coming|comes?|taken) (?:off|out)|(?:off|out) (?:it|they) (?:comes?|goes?)|take (?:it|them) (?:off|out)|(?:i 'll |i 'm )?(?:take|taking) (?:it|them) (?:off|out))${TAIL} $`,
);

/** Said of all the ways that the last note left open, or of the taking off among them. */
function saidOfAll(state: ReaderState): Draft[] {
  const [first] = state.clauses;
  const words = first ? wordsBetween(first.items) : '';
  const alone = state.clauses.every((c) => c === first || c.items.every((x) => x.duration || x.w === ','));
  if (!first || !alone) return [];
  // "neither, I'm leaving it" tells only what is chosen
  const status = NEITHER.test(words)
    ? 'dropped'
    : BOTH.test(words) || COMES_OFF.test(words)
      ? 'planned'
      : undefined;
  if (!status) return [];
  const ways = (state.memory.last?.entries ?? []).flatMap(({ entry: e }) =>
    e.kind === 'treatment' && e.action && e.state === 'considering' ? [e] : [],
  );
  const taken = BOTH.test(words) || status === 'dropped' ? ways : ways.filter((e) => e.action === 'remove');
  if (ways.length < 2 || (status === 'planned' && ways.some((e) => e.action === 'leave') && taken === ways))
    return [];
  return taken.map((way) => ofWay({ items: first.items, index: 0, sentence: 0 }, way, status, first.items));
}

/** "binding colour? no idea yet", then "navy": what answers the one matter that stood open settles it. */
function answersMatter(state: ReaderState, items: Item[]): Draft[] {
  const open = (state.memory.last?.entries ?? []).map(({ entry }) => entry);
  const only = open[0];
  if (open.length !== 1 || only?.kind !== 'decision' || only.status !== 'open') return [];
  if (!/^(?:backing|binding|batting|thread|tie-thread|border|fabric)$/.test(only.about)) return [];
  if (items.length > 6 || !items.some((x) => COLOURS.has(x.w) || isStuff(x))) return [];
  if (!items.every((x) => COLOURS.has(x.w) || isStuff(x) || ANSWERING.test(x.w))) return [];
  return [
    makeDraft(
      'decision',
      { items, index: 0, sentence: 0 },
      {
        about: [only.about, 'decision.answered', undefined, 'implied'],
        status: ['settled', 'decision.answered', items],
      },
      'unneeded',
    ),
  ];
}
const isStuff = (x: Item): boolean =>
  Boolean((x.material || x.fabric) && !x.quantity && !x.action && !x.part);
const ANSWERING =
  /^(?:the|it|'s|is|it's|then|ok|okay|right|going|gone|with|for|go|a|plain|dark|light|pale|i|think|,|\.|after|all|in|end|old|one|going to|going to be|'ll|be|we|i'm|'m|i've|'ve|final|finally|settled|decided|on|definitely|for sure|settling|plumped|plumping|opted|chosen|so|well|yes)$/;

/** "or maybe a patch", "or leave it alone", after a way in question: one more way, at the same places. */
function oneMoreWay(state: ReaderState): void {
  const way = state.memory.last?.entries.findLast(({ entry: e }) => e.kind === 'treatment')?.entry;
  if (way?.kind !== 'treatment' || way.state !== 'considering' || !way.places?.length) return;
  const told = state.drafts.filter(isTreatment);
  if (!told.length || told.some((d) => d.placed === 'said' || d.entry.state === 'dropped')) return;
  for (const d of told) {
    d.entry.state = 'considering';
    d.entry.places = [...way.places];
    d.placed = 'carried';
  }
  state.drafts = state.drafts.filter(({ entry: e }) => e.kind !== 'material' || e.use !== 'used');
}

/** What a note as a whole says to the way that the last one left open. */
export function wholeVerdict(state: ReaderState): void {
  const items = state.clauses.flatMap((c) => c.items);
  if (items.length > 16 || !state.memory.last) return;
  const all = saidOfAll(state);
  if (all.length) state.drafts.unshift(...all);
  else if (!state.drafts.length)
    state.drafts.push(...saidOfTheWay(state, items), ...answersMatter(state, items));
  else if (
    /^(?:(?:um|uh|er|oh|hmm|well|,) )*or\b/.test(
      state.tokens
        .slice(0, 4)
        .map((t) => t.w)
        .join(' '),
    )
  )
    oneMoreWay(state);
}
