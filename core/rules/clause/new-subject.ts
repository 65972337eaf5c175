import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { BE, isPredicate } from './is-predicate.ts';
import { HARD, joinsPlaces, SOFT } from './joints.ts';

export const FINITE = new Set([
  'gets',
  'get',
  'got',
  'needs',
  'need',
  'wants',
  'want',
  'awaits',
  'await',
  'has',
  'have',
  "'s",
  'is',
  'are',
  'was',
  'goes',
  'stays',
  'stay',
  'will',
  "'ll",
  'can',
  'looks',
  'came',
  'went',
  'could',
  'might',
  'may',
  'should',
  'had',
  'just',
  'only',
  'too',
  'same',
  'were',
  "'re",
  'did',
  'smells',
  'feels',
  'seems',
  'appears',
]);

/** "2-5 done, 3-5 to follow", "…, back to follow", "ties out, backing tomorrow": a place or a thing, and that it is for later. */
export function tellsLater(items: Item[], from: number, current: Item[] = []): boolean {
  let k = from;
  while (/^(the|and|with|then)$/.test(items[k]?.w ?? '') && k < from + 2) k++;
  const subject = items[k];
  if (!subject?.place && !subject?.object) return false;
  const own = items
    .slice(k + 1, k + 4)
    .map((x) => x.w)
    .join(' ');
  // "…, row two I'll do after supper", "…, 4-4 can wait"
  if (
    /^(?:(?:i|we) (?:(?:'ll|will|shall|'m|am) (?:do|doing|going|leave|leaving)|(?:sha|wo) n't|shall not|will not)|(?:can|has to|will have to|must) wait)\b/.test(
      own,
    )
  )
    return true;
  while (items[k + 1]?.place || (joinsPlaces(items, k + 1) && k < from + 8)) {
    // "done 2-2 and 2-3 | 4-4 next", "darned 2-2 and 2-3 | and 4-4 next": the last joint parts them
    if (/^(,|and|&|\+)$/.test(items[k + 1]!.w) && /^(and|&|\+)$/.test(items[from - 1]?.w ?? '')) return false;
    k += items[k + 1]?.place ? 1 : 2;
  }
  const rest = items.slice(k + 1, k + 5).map((x) => x.w);
  const end = rest.findIndex((x) => /^[.,;!]$/.test(x));
  // "I photographed 3-2 and 4-5 this afternoon", "… tonight": when both were done
  if (
    (rest[0] === 'this' || rest[0] === 'tonight') &&
    /^(and|&|\+)$/.test(items[from - 1]?.w ?? '') &&
    current.some((x) => x.action?.form === 'past')
  )
    return false;
  // "surface clean only, front done, back tomorrow"
  if (
    items[from - 1]?.w === ',' &&
    current.some((x) => x.action) &&
    /^(?:is |are |'s )?(?:all |now |both )?done$/.test(rest.slice(0, end < 0 ? undefined : end).join(' '))
  )
    return true;
  return /^(is |are |'s )?(still )?(to follow|to go|to come|to do|next|(?:(?:a |another )?job )?(?:for )?(?:tomorrow|tmrw|tonight|later|another day|this afternoon|this evening|monday|tuesday|wednesday|thursday|friday|saturday|sunday)(?: 's (?:job|work))?|half done|half way|in hand|under way|in progress|not yet|not done(?: yet)?)$/.test(
    rest.slice(0, end < 0 ? undefined : end).join(' '),
  );
}

/** "and four five gets …": a place or cloth and then a finite verb begin a statement of their own. */
export function newSubject(items: Item[], from: number): boolean {
  // "3-3 is torn and 5-5 is thin, both get net"
  if (
    items[from]?.place?.rule === 'place.both' &&
    /^(?:get|want|need|could|will|'ll|are|were|'re|have)$/.test(items[from + 1]?.w ?? '')
  )
    return true;
  let k = from;
  // "and every one of the calico blocks needs …", "each of the silk ones wants …"
  if (/^(every|each|all)$/.test(items[k]?.w ?? ''))
    while (/^(every|each|all|single|last|one|of)$/.test(items[k]?.w ?? '') && k < from + 5) k++;
  while (/^(the|and|all|both|that|those|every|also|for|old|its)$/.test(items[k]?.w ?? '') && k < from + 8)
    k++;
  const subject = items[k];
  // "…, net it is"
  if (subject?.material && /^(it is|it 's)$/.test(`${items[k + 1]?.w} ${items[k + 2]?.w}`)) return true;
  // "2-2's getting the new piece and the net is out": a way given up
  if (
    (subject?.material || subject?.action || subject?.w === 'patch') &&
    /^(is|'s|are)$/.test(items[k + 1]?.w ?? '') &&
    /^(off|out|scrapped|dropped|abandoned|forgotten)$/.test(
      items[items[k + 2]?.w === 'now' ? k + 3 : k + 2]?.w ?? '',
    )
  )
    return true;
  // "and a new one will go on"
  if (
    /^(a|another)$/.test(subject?.w ?? '') &&
    /^(new|fresh)$/.test(items[k + 1]?.w ?? '') &&
    FINITE.has(items[k + 3]?.w ?? '')
  )
    return true;
  // "and the one between the last two, which had popped as well, got exactly the same"
  if (subject?.w === 'one' && /^(between|in|at|under|below|above|on)$/.test(items[k + 1]?.w ?? '')) {
    let m = k + 2;
    while (m < k + 6 && (items[m]?.place || /^(the|and|in|that|of)$/.test(items[m]?.w ?? ''))) m++;
    const relative = items[m]?.w === ',' && /^(which|that)$/.test(items[m + 1]?.w ?? '');
    return FINITE.has(items[m]?.w ?? '') || relative;
  }
  // "…, worst in 3-3", "…, especially 4-1"
  if (tellsWorst(items, k)) return true;
  if (!subject || !(subject.place || subject.fabric || subject.seam || subject.part || subject.object))
    return false;
  while (joinsPlaces(items, k + 1)) k += 2;
  // "…, 5-6 worst: hole in it", "…, 3-3 the worst of them"
  const worst = k + (items[k + 1]?.w === 'the' ? 2 : 1);
  if (
    subject.place &&
    (/^(worst|worse|badly)$/.test(items[worst]?.w ?? '') ||
      (items[worst]?.w === 'most' && /^(of|by)$/.test(items[worst + 1]?.w ?? '')))
  )
    return true;
  const verb = items[k + 1]?.w ?? '';
  // "row 2: tied, row 3: half done"
  if (subject.place && verb === ':') return true;
  // "…, ties first"
  if (subject.object && /^(first|next)$/.test(verb) && (!items[k + 2] || items[k + 2]!.token.kind === 'mark'))
    return true;
  if (subject.place && isOnlyThose(items, k + 1)) return false;
  return (
    FINITE.has(verb) ||
    (FINITE.has(items[k + 2]?.w ?? '') &&
      /^(both|all|one|ones|blocks?|pieces|squares|still|also|seam|there)$/.test(verb))
  );
}

/** "(thin all over) worst in 3-3", "especially 4-1": where what was found is most so. */
export const tellsWorst = (items: Item[], k: number): boolean =>
  /^(worst|worse|especially|particularly|mainly|mostly)$/.test(items[k]?.w ?? '') &&
  /^(blocks|pointer)$/.test(
    items[/^(in|on|at|along)$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1]?.place?.kind ?? '',
  );

/** "torn 3-1 only", "mould in rows 1-3 only, + the backing": no more places than those, and nothing that is said of them. */
const isOnlyThose = (items: Item[], k: number): boolean =>
  items[k]?.w === 'only' &&
  (!items[k + 1] || items[k + 1]!.token.kind === 'mark' || /^(and|but|so|i)$/.test(items[k + 1]!.w));

/** Is the place at `k` followed at once by what is said of it: "3-2 torn", "3-2 is torn", "3-2's torn"? */
export function beginsSaying(items: Item[], k: number): boolean {
  let m = k + 1;
  // "both of those blue plaid blocks have bled"
  while (
    (/^(both|also|all|too|too,|still|blocks?|ones?|there|though|nearly|almost|half|now)$/.test(
      items[m]?.w ?? '',
    ) ||
      (items[m]?.fabric && items[k]?.place?.kind === 'pointer')) &&
    m < k + 4
  )
    m++;
  // "…, row four, the last block, stained"; in "…, hole in 2-2" it is found elsewhere
  if (items[m]?.w === ',' && (items[m + 1]?.finding || items[m + 1]?.fail) && !isFoundElsewhere(items, m + 1))
    m++;
  // "…, the corner block, bottom left, is stained"
  if (
    items[m]?.w === ',' &&
    /^place\.corner/.test(items[k]?.place?.rule ?? '') &&
    FINITE.has(items[m + 1]?.w ?? '')
  )
    m++;
  const next = items[m];
  if (!next) return false;
  if (isOnlyThose(items, m)) return false;
  return (
    FINITE.has(next.w) ||
    (next.w === 'done' && m > k + 1) ||
    next.w === "'re" ||
    next.w === 'were' ||
    next.w === ':' ||
    isPredicate(items, m)
  );
}

/** "hole in 2-2", "hole 2-2", "fraying along the top edge": has what is found at `k` a place of its own? */
function isFoundElsewhere(items: Item[], k: number): boolean {
  let m = k + 1;
  while (/^(in|on|at|along|near|to|across|over|all|the|of|both|right)$/.test(items[m]?.w ?? '') && m < k + 5)
    m++;
  return items[m]?.place?.how === 'said' || items[m]?.fabric !== undefined;
}

export const endsInPlace = (current: Item[]): boolean => Boolean(current.at(-1)?.place);

/** Has the clause said something of its subject yet? */
export const says = (current: Item[]): boolean =>
  hasPredicate(current) ||
  hasItOn(current) ||
  JOINED_ON.test(wordsBetween(current)) ||
  isGappedGift(current) ||
  // "ditto 2-5, 3-3 has a hole", "same again on the seam between 3-4 and 3-5 and the batting's lumpy"
  (CARRIES_ON.test(wordsBetween(current, 0, 6)) && current.some((x) => x.place)) ||
  isChosen(current) ||
  (current.some((x) => x.place || x.fabric) &&
    current.some((x, k) => FINITE.has(x.w) && k > 0) &&
    current.some((x) => /^(same|holding|way|stays|gets|likewise)$/.test(x.w)));

/** "(row six wants a press and) the calico ones a wash", "4-4 a new piece": what is given to it, with the verb left away. */
const isGappedGift = (current: Item[]): boolean => {
  const at = current.findIndex((x) => x.place ?? x.fabric);
  if (at < 0 || at > 2 || current.length > at + 7) return false;
  const rest = current
    .slice(at + 1)
    .filter((x) => !/^(ones|blocks|pieces)$/.test(x.w) && !x.place && !x.fabric);
  return (
    /^(a|an|some)$/.test(rest[0]?.w ?? '') &&
    rest.length < 5 &&
    (rest.at(-1)!.action?.form === 'base' || Object.hasOwn(WORK_THINGS, rest.at(-1)!.w))
  );
};

/** "(pieced the new strip) and added it": put on, by a verb that is not of the bench alone. */
const JOINED_ON = / (?:added|attached|joined|fitted)(?: (?:it|them|that|those|this|both|these)(?: on)?)? $/;

const CARRIES_ON =
  /^ (?:(?:and|then|um|uh|er|so|oh|,|the|i|'ve|did|done|exactly|just) )*(?:ditto|likewise|same) /;

/** "new bit it is", "the new piece wins": said of one of two ways. */
const isChosen = (current: Item[]): boolean => {
  const last = current.at(-1)?.w ?? '';
  return (
    current.length > 1 &&
    (/^(wins|won)$/.test(last) ||
      (/^(is|'s)$/.test(last) && current.at(-2)!.w === 'it' && current.length > 2)) &&
    current.some((x) => x.material || x.object || x.action || x.fabric)
  );
};

/** "2-2 and 5-3 have both got their crepeline on": what was to go on is there. */
const hasItOn = (current: Item[]): boolean =>
  current.at(-1)?.w === 'on' &&
  /^(net|fabric)$/.test(
    current.at(-2)?.material ?? (/^patch/.test(current.at(-2)?.w ?? '') ? 'fabric' : ''),
  ) &&
  current.some((x) => /^(got|has|have|had)$/.test(x.w));

export function hasPredicate(current: Item[]): boolean {
  return current.some((_, k) => isPredicate(current, k));
}

export const hasWork = (current: Item[]): boolean =>
  current.some((x) => x.duration || x.span || /^(start|started|stop|stopped|quit|began|finished)$/.test(x.w));

export function hasWorkAhead(items: Item[], from: number): boolean {
  for (let k = from; k < Math.min(items.length, from + 8); k++) {
    const item = items[k]!;
    if (HARD.has(item.w) || (SOFT.has(item.w) && k > from)) return false;
    if (
      item.w === 'i' ||
      item.w === 'there' ||
      (item.w === 'it' && BE.has(items[k + 1]?.w ?? '')) ||
      item.w === 'she' ||
      item.w === 'he' ||
      item.w === 'they'
    )
      return k === from || k === from + 1;
    if (
      item.span ||
      (item.measure && item.measure !== 'strip' && item.measure !== 'seam' && item.measure !== 'length') ||
      (item.topic && items[k - 1]?.w === 'the')
    )
      return Boolean(item.span);
  }
  return false;
}

export function startsWithSubject(items: Item[], k: number): boolean {
  const w = items[k]?.w ?? '';
  return (
    w === 'i' ||
    w === 'it' ||
    w === 'there' ||
    w === 'the' ||
    w === 'that' ||
    w === 'they' ||
    w === 'she' ||
    w === 'he' ||
    w === 'we' ||
    Boolean(items[k]?.place)
  );
}

/** "all of the ties", "most of them", "one of the blocks". */
export const isQuantifier = (item: Item | undefined): boolean =>
  item !== undefined &&
  (item.quantity !== undefined ||
    /^(all|one|most|half|some|each|every|any|none|both|rest|lot|couple|plenty|part|many|lots|few|bit|couple|remainder|whole)$/.test(
      item.w,
    ));
