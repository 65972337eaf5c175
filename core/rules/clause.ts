import type { Token } from '../text/tokenise.ts';
import { isFailing } from './conditions/is-failing.ts';
import type { Item } from './item.ts';

/** A stretch of a note that says one thing. `joint` is what stood before it: a mark, a conjunction, or '' where none was said. */
export type Clause = {
  items: Item[];
  joint: string;
  sentence: number;
  /** The sentence that it belongs to ends in a question mark. */
  asked: boolean;
};

const HARD = new Set(['.', ';', '!', '?', '\n']);
const SOFT = new Set([
  ',',
  'and',
  '&',
  '+',
  'plus',
  'but',
  'so',
  'then',
  'because',
  'cos',
  'cause',
  'while',
  'which',
  'or',
  'though',
  'although',
  'when',
  ':',
  '--',
  'after',
  'before',
  '(',
  ')',
  'until',
  'as',
  'also',
  'since',
  'whereas',
  'except',
  '/',
  'still',
]);
const REMOVE_VERBS: Record<string, { form: 'past' | 'ing' | 'base'; particle: boolean }> = {};
const verb = (forms: [string, string, string], particle: boolean): void => {
  const [base, past, ing] = forms;
  for (const f of base.split('|')) REMOVE_VERBS[f] = { form: 'base', particle };
  for (const f of past.split('|')) REMOVE_VERBS[f] = { form: 'past', particle };
  for (const f of ing.split('|')) REMOVE_VERBS[f] = { form: 'ing', particle };
};
verb(['remove|removes', 'removed', 'removing'], false);
verb(['unpick|unpicks', 'unpicked', 'unpicking'], false);
verb(['unstitch', 'unstitched', 'unstitching'], false);
verb(['unsew', 'unsewed|unsewn', 'unsewing'], false);
verb(['detach', 'detached', 'detaching'], false);
verb(['peel|peels', 'peeled', 'peeling'], false);
verb(['strip', 'stripped', 'stripping'], false);
verb(['unpin', 'unpinned', 'unpinning'], false);
verb(['unquilt', 'unquilted', 'unquilting'], false);
verb(['untie', 'untied', 'untying'], false);
verb(['frog', 'frogged', 'frogging'], false);
verb(['separate|separates', 'separated', 'separating'], false);
verb(['slit|slits', 'slitted', 'slitting'], true);
verb(['scrape', 'scraped', 'scraping'], true);
verb(['work', 'worked', 'working'], true);
verb(['undo', 'undid', 'undoing'], false);
verb(['snip|snips', 'snipped', 'snipping'], false);
verb(['lift|lifts', 'lifted', 'lifting'], true);
verb(['take|takes', 'took|taken', 'taking'], true);
verb(['pull|pulls', 'pulled', 'pulling'], true);
verb(['rip|rips', 'ripped', 'ripping'], true);
verb(['pick|picks', 'picked', 'picking'], true);
verb(['come|comes', 'came', 'coming'], true);
verb(['get|gets', 'got|gotten', 'getting'], true);
verb(['draw', 'drew|drawn', 'drawing'], true);
verb(['cut', 'cut', 'cutting'], true);
verb(['ease', 'eased', 'easing'], true);
verb(['have|has', 'had', 'having'], true);
verb(['tweeze', 'tweezed', 'tweezing'], true);
verb(['tease', 'teased', 'teasing'], true);
verb(['clip', 'clipped', 'clipping'], true);
verb(['prise|pry', 'prised|pried', 'prising'], true);
verb(['soak', 'soaked', 'soaking'], true);
verb(['drop', 'dropped', 'dropping'], true);

const PARTICLES = new Set(['off', 'out', 'away']);
const PARTICLE_STOP = new Set([
  '.',
  ';',
  '!',
  '?',
  '\n',
  'but',
  'because',
  'i',
  'there',
  "'s",
  'is',
  'was',
  'are',
  'and',
  ',',
]);
const BE = new Set([
  'is',
  "'s",
  'are',
  "'re",
  'was',
  'were',
  'be',
  'been',
  'being',
  'has',
  'have',
  "'ve",
  'had',
  'gets',
  'get',
  'got',
  'looks',
  'look',
  'went',
  'gone',
  'going',
  'needs',
  'wants',
  'stays',
  'seems',
  'feels',
  'came',
  'smells',
  'will',
  "'ll",
  'comes',
  'stay',
  'all',
  'still',
  'both',
  'badly',
  'just',
  'really',
  'very',
  'quite',
  'a',
  'bit',
  'little',
  'partly',
  'pretty',
  'too',
  'now',
  'also',
  'right',
  'only',
  'not',
  "n't",
  'already',
  'nearly',
  'almost',
  'completely',
  'totally',
  'so',
  'starting',
  'to',
  'rather',
  'slightly',
  'mostly',
  'getting',
  'showing',
  'whole',
  'well',
]);
const PREPOSITIONS = new Set([
  'in',
  'on',
  'at',
  'of',
  'from',
  'along',
  'to',
  'with',
  'behind',
  'over',
  'under',
  'down',
  'between',
  'around',
  'round',
  'across',
  'through',
  'for',
  'into',
  'onto',
  'by',
  'inside',
  'w',
  'near',
  'up',
  'off',
]);

/** The removing verb at item `k` of `items`, with the particle that it needs. */
export function removalAt(
  items: Item[],
  k: number,
): { form: 'past' | 'ing' | 'base'; particle?: number } | undefined {
  const item = items[k]!;
  // "ripped out" is one item where it also names the task
  if (item.task === 'taking-apart' && item.w.endsWith(' out')) {
    const verb = item.w.slice(0, -4);
    if (Object.hasOwn(REMOVE_VERBS, verb) && REMOVE_VERBS[verb]!.form !== 'ing')
      return { form: REMOVE_VERBS[verb]!.form, particle: k };
  }
  if (!Object.hasOwn(REMOVE_VERBS, item.w)) return undefined;
  const { form, particle } = REMOVE_VERBS[item.w]!;
  // "a new strip", "the strip for the border", "took a lift": a thing
  if (/^(strip|strips|lift|draw)$/.test(item.w) && !isImperative(items, k)) return undefined;
  const actual = item.w === 'cut' ? 'past' : form;
  const auxiliary = /^(have|has|had|having|get|gets|got|getting|gotten)$/.test(item.w);
  for (let m = k + 1; m < Math.min(items.length, k + 13); m++) {
    const word = items[m]!.w;
    if (PARTICLES.has(word)) return { form: actual, particle: m };
    // "has been drawn out", "got them picked out": the verb is the later one
    if (
      auxiliary &&
      (Object.hasOwn(REMOVE_VERBS, word) ||
        /^(laid|spread|hung|stretched|set|sewn|put|pinned|basted|sorted|worked|cut)$/.test(word))
    )
      return undefined;
    if (
      PARTICLE_STOP.has(word) &&
      !(word === 'and' && items[m + 1] && (items[m + 1]!.object || items[m + 1]!.w === 'the'))
    )
      break;
  }
  // "pull the batting": what can only be taken out needs no "out"
  if (particle && /^(pull|pulled|pulling|pulls)$/.test(item.w)) {
    const thing = items.slice(k + 1, k + 5).find((x) => x.object);
    if (thing?.object && ['batting', 'ties', 'stitching', 'quilting', 'pins'].includes(thing.object))
      return { form: actual };
  }
  // "clipped the knots", "cut the ties", "lifted the patch": of these things no "out" or "off" is needed
  const bare = particle ? BARE_REMOVAL.find(([verbs]) => verbs.test(item.w)) : undefined;
  // "the earlier patch was lifted with a spatula"
  if (bare && actual === 'past' && /^(is|was|were|been|are|be|being|got|gets)$/.test(items[k - 1]?.w ?? '')) {
    const thing = items.slice(Math.max(0, k - 9), k).findLast((x) => x.object || x.finding === 'old-repair');
    const object = thing?.finding === 'old-repair' ? 'old-patch' : thing?.object;
    if (object && bare[1].includes(object)) return { form: actual };
  }
  if (bare) {
    const at = items.findIndex(
      (x, m) => m > k && m < k + 5 && (x.object || x.finding === 'old-repair' || x.place),
    );
    const thing = items[at];
    const object = thing?.finding === 'old-repair' ? 'old-patch' : thing?.object;
    if (object && bare[1].includes(object) && !thing?.seam && !thing?.material?.includes('thread'))
      return { form: item.w === 'cut' ? 'past' : actual };
  }
  return particle ? undefined : { form: actual };
}

/** What these verbs take off or out without saying so. */
const BARE_REMOVAL: [RegExp, string[]][] = [
  [/^clip/, ['ties', 'quilting', 'stitching']],
  [/^cut/, ['ties']],
  [/^lift(ed|ing)$/, ['old-patch', 'interfacing', 'label']],
];

/** Does a word that may be a noun stand as a verb: "strip it off", "to lift the patch"? */
function isImperative(items: Item[], k: number): boolean {
  const before = items[k - 1]?.w ?? '';
  if (/^(to|will|'ll|must|should|gonna|could|might|can|and|then|i)$/.test(before))
    return !/^(of|for|wide|,|is|was|along)$/.test(items[k + 1]?.w ?? '');
  return /^(it|the|that|them|those|off|out|this)$/.test(items[k + 1]?.w ?? '') && (k === 0 || before === ',');
}

const MOOD_BEFORE_BASE = new Set([
  'to',
  'will',
  "'ll",
  'gonna',
  'must',
  'should',
  'could',
  'might',
  'may',
  'can',
  'and',
  'or',
  'either',
  'then',
  'maybe',
  "let's",
  'not',
  "n't",
  ',',
  ':',
  '-',
  '--',
  'just',
  'perhaps',
  'either',
  'would',
  "'d",
  'it',
  'next',
  'also',
  '&',
  '/',
  '+',
  'shall',
  'first',
  'i',
  'whether',
  'better',
  'please',
  'do',
  'then',
  'tomorrow',
  '(',
  'still',
  'gets',
  'rather',
  'probably',
  'possibly',
  'only',
  'needs',
  'need',
  'wants',
  'want',
  'try',
  'trying',
]);

/** "sound cloth", "fine net", "a good six inches", "okay so": no word on the quilt's condition. */
export function isSound(items: Item[], k: number): boolean {
  const item = items[k]!;
  const before = items[k - 1]?.w ?? '';
  const next = items[k + 1];
  if (/^(holding|came|in |as good|no damage|not )/.test(item.w)) return true;
  if (/^(to|a|an|of|the|with|for|as|some|more)$/.test(before)) return false;
  if (next && (next.material || next.quantity || next.stitch || next.duration) && !next.part && !next.place)
    return false;
  if (/^(okay|ok|all right|alright|fine|good)$/.test(item.w) && k === 0) return false;
  return true;
}

/** Do words of taking off follow the thing at `k` with nothing between? */
function isTakenOff(items: Item[], k: number): boolean {
  for (let m = k + 1; m < Math.min(items.length, k + 7); m++) {
    const x = items[m]!;
    if (/^(off|out|removed|unpicked|taken|peeled|lifted)$/.test(x.w)) return true;
    if (x.token.kind === 'mark' || x.w === 'and') return false;
    if (x.place && !/^(on|in|at|from|over|the)$/.test(items[m - 1]?.w ?? '')) return false;
  }
  return false;
}

/** "the worn one", "that torn block", "over the worn patch": a word that only tells which is meant. */
export function isAttribute(items: Item[], k: number): boolean {
  return (
    tellsWhichByDamage(items, k) ||
    (items[k]!.finding !== 'old-repair' &&
      (/^(the|that|this|those|these|its|other|two|three|both)$/.test(items[k - 1]?.w ?? '') ||
        /^place\.(those|both)$/.test(items[k - 1]?.place?.rule ?? '')) &&
      (items[k - 1]?.quantity === undefined || /^(the|those|both)$/.test(items[k - 2]?.w ?? '')) &&
      (/^(one|ones|block|blocks|piece|pieces|bit|bits|part|parts|area|areas|place|places|spot|patch|silk|cloth|fabric|corner|edge|edges|section|stretch|seam)\b/.test(
        items[k + 1]?.w ?? '',
      ) ||
        items[k + 1]?.fabric !== undefined))
  );
}

/** "those five with the moth", "the one with the tear", "the other one with a hole". */
function tellsWhichByDamage(items: Item[], k: number): boolean {
  if (items[k - 2]?.w !== 'with' || !/^(the|a)$/.test(items[k - 1]!.w)) return false;
  const head = items[k - 3];
  const counted = head?.quantity && !head.quantity.unit;
  if (
    !head ||
    !(
      counted ||
      head.place?.rule === 'place.those' ||
      /^(one|ones|block|blocks|square|squares)$/.test(head.w)
    )
  )
    return false;
  const lead = items.slice(Math.max(0, k - 6), k - 2).map((x) => x.w);
  return items[k - 1]!.w === 'the'
    ? lead.some((x) => /^(the|that|those|these|other|others)\b/.test(x))
    : lead.includes('other');
}

/** "the mended seam", "those two patched ones": work done that only tells which is meant. */
function tellsWhich(items: Item[], k: number): boolean {
  const next = items[k + 1];
  if (!next || !(next.seam || /^(one|ones|block|blocks|square|squares|area|areas|bit|bits)$/.test(next.w)))
    return false;
  const lead = items[k - 1]?.quantity && !items[k - 1]!.quantity!.unit ? items[k - 2] : items[k - 1];
  return (
    lead !== undefined &&
    (/^(the|that|those|these|this)$/.test(lead.w) || /^place\.(those|both)$/.test(lead.place?.rule ?? ''))
  );
}

/** Does this item say that something is so or is done? */
export function isPredicate(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (item.finding === 'sound' && !isSound(items, k)) return false;
  if (/^(live|living)$/.test(item.w) && items[k + 1]?.w === 'with') return true;
  // "washed the backing in the bath": where, and no second wash
  if (
    /^in the (tub|bath)$/.test(item.w) &&
    items.slice(0, k).some((x) => x.action?.v === 'wash' || x.action?.v === 'clean')
  )
    return false;
  if (/^(abandoned|scrapped|cancelled|canceled|forgotten)$/.test(item.w)) return true;
  // "forget the net", "scrap the darning"
  if (
    /^(forget|scrap|skip|ditch|nix|bin)$/.test(item.w) &&
    /^(the|that|about|doing|any|all|it)$/.test(items[k + 1]?.w ?? '') &&
    !/^(to|n't|not|i|and|'ll|will|do|never|you|she|he)$/.test(items[k - 1]?.w ?? '')
  )
    return true;
  // "the old patch off 6-2", "two old patches have come off": a thing that is taken off
  if (item.finding === 'old-repair' && isTakenOff(items, k)) return false;
  if (
    item.finding &&
    (isAttribute(items, k) || (item.w === 'torn' && /^('m|am|honestly)$/.test(items[k - 1]?.w ?? '')))
  )
    return false;
  if (item.finding || item.measure === 'diagonal') return true;
  if (item.w === 'ditto' || item.w === 'likewise') return true;
  if (item.action && !(item.place && item.action.v === 'leave')) {
    const { form } = item.action;
    const lead = items[k - 1]?.w ?? '';
    // "the trimming", "that stuff somebody fused there": a thing, and work of others that only tells which
    if (form === 'ing' && /^(the|that|this)$/.test(lead))
      return (
        lead === 'the' &&
        /^(basting|layering|washing|binding|pressing)$/.test(item.w) &&
        /^(did|done|finished|completed)$/.test(items[k - 2]?.w ?? '') &&
        !items.some((x) => x.span || x.clock || x.duration || x.fail || x.finding)
      );
    if (form === 'past' && /^(somebody|someone|who)$/.test(lead)) return false;
    // "it measures 72 by 84" tells its size
    if (item.w === 'measures') return false;
    // "gave it a bath", "a going over": only as a thing given
    if (/^(bath|dunk|dunking|going over|once over)$/.test(item.w)) return isGiven(items, k);
    if (form === 'past' && tellsWhich(items, k)) return false;
    if (
      item.w === 'clean' &&
      (items[k + 1]?.finding ||
        /^(away|through|across|off|out|gone|broke|broken|forgot|apart|over)$/.test(items[k + 1]?.w ?? ''))
    )
      return false;
    // "fixing to whip it": a plan
    if (/^(fixing|fixin)$/.test(item.w) && items[k + 1]?.w === 'to') return false;
    // "spilled and dried in"
    if (item.w === 'dried' && /^(in|on|up)$/.test(items[k + 1]?.w ?? '')) return false;
    // "fuse gone", "iron broken": a thing of the house
    if (form === 'base' && !item.part && items[k + 1]?.fail && !items[k + 1]?.finding && k === 0)
      return false;
    // "with couching", "in whipstitch" only say how
    if (
      item.stitch &&
      form !== 'past' &&
      /^(with|in|by|w|of|using|and|,|some|the|a)$/.test(items[k - 1]?.w ?? '')
    )
      return false;
    // "the seam joining row two to row three"
    if (item.w === 'joining' && items[k - 1]?.seam) return false;
    if (/ (stitching|sewing)$/.test(item.w) && form === 'ing') return isIngVerb(items, k);
    // "whipstitch, that was ten minutes": only how
    if (
      form === 'base' &&
      item.stitch &&
      !/^(to|will|'ll|gonna|must|should|could|might|i|let's|would|'d)$/.test(lead)
    )
      return (
        /^(it|them|the|those|these|over|along|round|around|down|up)$/.test(items[k + 1]?.w ?? '') &&
        (k === 0 || /^(and|,|then|or|&)$/.test(lead))
      );
    if (form !== 'base') return !((item.part || item.object) && form === 'ing' && !isIngVerb(items, k));
    if (item.w === 'left') return true;
    const before = items[k - 1]?.w ?? '';
    if (isTerseVerb(items, k) || isGiven(items, k)) return true;
    if (item.w === 'dry' && /^('s|is|are|now|fully|bone|nearly|quite|all|finally)$/.test(before)) return true;
    // "photos 5-2, 8-3", "pictures of the back"
    if (/^(photos|photographs|pics|pictures)$/.test(item.w))
      return (
        items[k + 1]?.w === 'of' ||
        items[k + 1]?.place !== undefined ||
        items.slice(k + 1, k + 6).some((x) => x.w === 'taken')
      );
    if (
      item.object ||
      item.part ||
      item.seam ||
      item.material ||
      item.w === 'photo' ||
      item.w === 'picture' ||
      item.w === 'iron' ||
      item.w === 'air' ||
      item.w === 'square' ||
      item.w === 'back' ||
      item.w === 'net' ||
      item.w === 'dust' ||
      item.w === 'piece' ||
      item.w === 'knot' ||
      item.w === 'layer'
    ) {
      return (
        /^(to|will|'ll|gonna|could|might|should|must|n't|not|would|'d|can|shall|may|let's|gotta|i)$/.test(
          before,
        ) ||
        ((/^(it|them|the|that|those|all|this|these|both)$/.test(items[k + 1]?.w ?? '') ||
          items[k + 1]?.place?.kind === 'blocks') &&
          !(
            /^(the|a|an|old|that|this|another|of)$/.test(before) ||
            (before === 'one' && !/^(it|them)$/.test(items[k + 1]?.w ?? ''))
          ))
      );
    }
    return (
      k === 0 ||
      MOOD_BEFORE_BASE.has(before) ||
      ['it', 'them', 'the', 'that', 'those', 'this'].includes(items[k + 1]?.w ?? '')
    );
  }
  if (removalAt(items, k)) return true;
  if ((item.w === 'off' || item.w === 'out') && isOff(items, k)) return true;
  if (item.fail) return isFailing(items, k);
  if (
    /^(bought|ordered|purchased|need|needs|wants|gets|started|stopped|starting|stopping|finished|finishing|quit|quitting|began|beginning|begun|stays|stay|remain|remains|decided|used)$/.test(
      item.w,
    )
  )
    return true;
  return false;
}

/** "2-3: patch or darn?", "patch 1-1, replace 1-6", "4-1 darn or patch": a noun that stands alone tells what to do. */
export function isTerseVerb(items: Item[], k: number): boolean {
  const item = items[k]!;
  const before = items[k - 1];
  const next = items[k + 1];
  // "1-1 replace, 1-2 patch, 1-3 leave"
  if (
    before?.place &&
    before.place.kind !== 'part' &&
    item.action?.form === 'base' &&
    !item.object &&
    !item.seam &&
    !item.stitch &&
    (!next || next.token.kind === 'mark' || /^(or|and|&|tomorrow|tmrw|next|later|then|but)$/.test(next.w))
  )
    return true;
  if (!/^(patch|darn|mend)$/.test(item.w)) return false;
  // "patch on top, or cut out"
  if (
    /^(on top|on)$/.test(next?.w ?? '') &&
    /^(on top|top)$/.test((next!.w === 'on' ? items[k + 2] : next)?.w ?? '')
  )
    return !before || Boolean(before.place) || /^(:|,|-|--|or|either|maybe)$/.test(before.w);
  if (
    before &&
    !before.place &&
    !/^(:|,|-|--|\/|\(|or|maybe|then|either|perhaps|and|&|just|to)$/.test(before.w)
  )
    return false;
  if (
    next &&
    !next.place &&
    !next.fabric &&
    !next.duration &&
    !/^(:|,|-|--|\/|\)|\?|or|w|with|it|them|using|by|and|&|tomorrow|tmrw|next|later|over|there|then|instead|that|those|the)$/.test(
      next.w,
    )
  )
    return false;
  return !items
    .slice(k + 1, k + 5)
    .some((x) => x.fail || /^(off|is|was|are|has|'s|came|coming|looks)$/.test(x.w));
}

/** "gave the backing a good vacuum", "gets a little spot cleaning", "needs a press": the work as a thing given. */
export function isGiven(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (!/^(clean|wash|press|dry|measure|trim|stabilize|quilt)$/.test(item.action?.v ?? '')) return false;
  let m = k - 1;
  while (
    m >= 0 &&
    /^(good|quick|light|gentle|little|bit|of|proper|thorough|careful|quick|spot|final|hand|cool|warm|second|nice|damp|another|light)$/.test(
      items[m]!.w,
    )
  )
    m--;
  const article = items[m]?.w ?? '';
  // "it gets the vacuum"
  if (article === 'the' && /^(vacuum|brush|iron|hoover|sponge|bath|steamer)$/.test(item.w))
    return /^(give|gave|given|giving|gets|get|got|needs|need|wants|want)$/.test(
      (/^(it|them)$/.test(items[m - 1]?.w ?? '') ? items[m - 2] : items[m - 1])?.w ?? '',
    );
  if (!/^(a|an|another|its|one more)$/.test(article) && !(article === 'another' || items[m]?.quantity))
    return false;
  // "a quick vacuum of the backing"
  if (m <= 1 && m < k - 1 && /^(of|over|for|all|on)$/.test(items[k + 1]?.w ?? '')) return true;
  return items
    .slice(Math.max(0, m - 6), m + 1)
    .some((x) =>
      /^(give|gave|given|giving|gets|get|got|needs|need|wants|want|had|having|has|use|do|stand|due)$/.test(
        x.w,
      ),
    );
}

/** The form that the verb of giving lends to such a noun. */
export function givenForm(items: Item[], k: number): 'past' | 'ing' | 'base' | 'noun' {
  const verb = items
    .slice(Math.max(0, k - 10), k)
    .findLast((x) =>
      /^(give|gave|given|giving|gets|get|got|needs|need|wants|want|had|having|has|use|do|stand|due)$/.test(
        x.w,
      ),
    );
  if (!verb) return 'noun';
  if (/^(gave|given|had|got|has)$/.test(verb.w)) return 'past';
  return verb && /^(giving|having)$/.test(verb.w) ? 'ing' : 'base';
}

/** "the backing is off", "all the ties are out": a thing and a form of to be stand before. */
function isOff(items: Item[], k: number): boolean {
  // "off came the patch"
  if (isInverted(items, k)) return true;
  let m = k - 1;
  while (m >= 0 && /^(all|now|both|already|right|still|finally|mostly)$/.test(items[m]!.w)) m--;
  // "so all of it off"
  if (items[m]?.w === 'it' && items[m - 1]?.w === 'of' && items[m - 2]?.w === 'all') return true;
  const thing = (x: Item | undefined): boolean =>
    x !== undefined &&
    (x.object !== undefined ||
      x.finding === 'old-repair' ||
      x.material === 'net' ||
      x.w === 'idea' ||
      x.action?.form === 'ing');
  if (!/^(is|'s|are|'re|was|were|be|been)$/.test(items[m]?.w ?? ''))
    return thing(items[m]) && (m === 0 || /^(,|the|all|old|and|&|then)$/.test(items[m - 1]?.w ?? ''));
  return items.slice(Math.max(0, m - 5), m + 1).some(thing);
}

/** "off came the patch", "out it came". */
export const isInverted = (items: Item[], k: number): boolean =>
  (items[k]!.w === 'off' || items[k]!.w === 'out') &&
  (/^(came|come|comes|goes|went|with)$/.test(items[k + 1]?.w ?? '') ||
    (/^(it|they|that|them)$/.test(items[k + 1]?.w ?? '') &&
      /^(came|comes|goes|went|come|go)$/.test(items[k + 2]?.w ?? ''))) &&
  (k === 0 || /^(,|and|so|then|but|&)$/.test(items[k - 1]!.w));

/** "binding" and "backing" are mostly nouns. */
function isIngVerb(items: Item[], k: number): boolean {
  const before = items[k - 1]?.w ?? '';
  const after = items[k + 1];
  // "quilting in the ditch round the plum silk", "that's me quilting the lawn ones"
  if (
    items[k]!.action?.v === 'quilt' &&
    (k === 0 || /^(,|now|still|me|then|:|--|-)$/.test(before)) &&
    after &&
    (after.stitch ||
      after.fabric ||
      after.place ||
      /^(in|round|around|along|down|across|the|by|all)$/.test(after.w)) &&
    !items.slice(k + 1).some((x) => x.fail || x.finding || x.w === 'off' || x.w === 'out')
  )
    return true;
  return (
    [
      'is',
      "'m",
      'am',
      'are',
      'was',
      'been',
      'started',
      'be',
      'start',
      "'re",
      'now',
      'i',
      'bother',
      'bothering',
      'avoid',
      'keep',
      'kept',
      'not',
      'through',
    ].includes(before) ||
    after?.w === 'it' ||
    after?.w === 'them' ||
    (k === 0 && (after?.place !== undefined || after?.w === 'the'))
  );
}

/**
 * Cuts a note into clauses: at stops; at commas and conjunctions where what follows says something of its own; and, in
 * speech that runs on, before the subject of each new statement.
 */
export function cutClauses(items: Item[]): Clause[] {
  const clauses: Clause[] = [];
  let sentence = 0;
  const asked = new Set<number>();
  let joint = '';
  let current: Item[] = [];
  const close = (next: string): void => {
    if (current.length) clauses.push({ items: current, joint, sentence, asked: false });
    if (current.length || joint === '') joint = next;
    else if (next !== ',') joint = next;
    current = [];
  };
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const w = item.w;
    const mark = item.token.kind === 'mark';
    if (HARD.has(w) && (mark || w === '\n') && !isAbbreviation(items, k)) {
      close(w);
      if (w === '?') asked.add(sentence);
      sentence++;
      continue;
    }
    if (w === '?' && mark) asked.add(sentence);
    const dash = w === '-' && mark && !(item.token.glued && items[k + 1]?.token.glued);
    if ((SOFT.has(w) && !isWeakSo(items, k) && !item.place && !item.span && !item.clock) || dash) {
      if (dash || w === ':' || w === '(' || w === ')' || w === '--') {
        close(w === ')' || w === '(' ? ',' : dash ? '-' : w);
        continue;
      }
      if (isBoundary(items, k, current)) {
        close(w);
        // "and then", ", and", ", but"
        while (
          items[k + 1] &&
          SOFT.has(items[k + 1]!.w) &&
          items[k + 1]!.token.kind === 'word' &&
          !items[k + 1]!.place &&
          !isWeakSo(items, k + 1)
        ) {
          joint = joint === ',' || joint === '' || joint === 'and' ? items[k + 1]!.w : joint;
          k++;
        }
        continue;
      }
      current.push(item);
      continue;
    }
    if (current.length && startsStatement(items, k, current)) {
      const at = statementStart(current, items, k);
      if (at < current.length) {
        const tail = current.slice(at);
        current = current.slice(0, at);
        close('');
        current = tail;
      } else close('');
    }
    current.push(item);
  }
  close('');
  for (const number of asked) {
    const own = clauses.filter((c) => c.sentence === number);
    const last = own.at(-1);
    // "I'm leaving that one be, because why would you mend what isn't broken?": only the last part asks
    const tailAsks =
      own.length > 1 &&
      /^(why|what|who|how|when|where)$/.test(last!.items[0]?.w ?? '') &&
      last!.joint !== 'or';
    for (const c of tailAsks ? [last!] : own) c.asked = true;
  }
  return clauses;
}

/** "is so weak", "ever so thin", "so's the one above": no "so" that begins a statement. */
function isWeakSo(items: Item[], k: number): boolean {
  if (items[k]!.w !== 'so') return false;
  const before = items[k - 1]?.w ?? '';
  if (before === 'ever' || (BE.has(before) && before !== 'out')) return true;
  return (
    /^('s|is|are|has|have|was|were|did|does|do|had)$/.test(items[k + 1]?.w ?? '') &&
    (items[k + 2]?.place !== undefined || /^(the|that|those|its)$/.test(items[k + 2]?.w ?? ''))
  );
}

function restHasPredicate(items: Item[], from: number): boolean {
  for (let k = from; k < items.length; k++) {
    const item = items[k]!;
    if (HARD.has(item.w) && item.token.kind === 'mark') return false;
    if (SOFT.has(item.w) && !item.place && k > from + 1 && !isWeakSo(items, k)) {
      // "the seam between 1-2 and 1-3 has come undone": a list of places goes on
      if (/^(and|&|,|\+|or)$/.test(item.w) && joinsPlaces(items, k)) continue;
      return false;
    }
    if (isPredicate(items, k)) return true;
  }
  return false;
}

const ABBREVIATIONS = new Set(
  'in st sts approx betw min mins yd yds sq col cols tog acc yest c ca no whipst backst w incl ft cm r b blk blks btm bdg etc sm lg pc pcs pk pks hr hrs interf thr qlt qltg hbone zz vac'.split(
    ' ',
  ),
);

/** "whipst., 15 min", "3 in. tear": the stop belongs to the word. "press flat?? or leave" goes on. */
function isAbbreviation(items: Item[], k: number): boolean {
  const w = items[k]!.w;
  const next = items[k + 1];
  if (w === '?') return next?.w === '?' || next?.w === 'or';
  if (w !== '.' || !next) return false;
  if (/^[,;)]$/.test(next.w)) return true;
  const last = items[k - 1]?.w.split(' ').at(-1) ?? '';
  return (
    items[k]!.token.glued &&
    ABBREVIATIONS.has(last) &&
    next.token.kind === 'word' &&
    !/^(the|i|it|this|there|and|then)$/.test(next.w) &&
    items[k - 1]!.token.kind === 'word' &&
    last !== 'in' &&
    last !== 'no' &&
    last !== 'min' &&
    last !== 'mins' &&
    last !== 'yd' &&
    last !== 'cm'
  );
}

/** Does the "and" or comma at `k` stand between two places? */
function joinsPlaces(items: Item[], k: number): boolean {
  let after = k + 1;
  while (/^(the|and|&|also|in|at|on|between)$/.test(items[after]?.w ?? '') && after < k + 4) after++;
  const left = items[k - 1];
  return Boolean(left?.place) && Boolean(items[after]?.place);
}

/** Is the comma or conjunction at `k` the end of a statement? */
function isBoundary(items: Item[], k: number, current: Item[]): boolean {
  const w = items[k]!.w;
  const next = items[k + 1];
  if (!next) return true;
  if (w === '/') return false;
  // "between 2-1 and 3-1 and closed …", "out of 2-2 + 3-2, …": a list of places goes on
  if (/^(and|&|,|\+)$/.test(w) && joinsPlaces(items, k)) {
    let right = k + 1;
    while (!items[right]!.place) right++;
    if (!items[right]!.part && !beginsSaying(items, right)) return false;
  }
  if (
    w === 'after' ||
    w === 'before' ||
    w === 'until' ||
    w === 'as' ||
    w === 'still' ||
    w === 'also' ||
    w === 'since'
  ) {
    if (w === 'as') return next.w === 'i' && items[k - 1]?.w !== 'well' && items[k - 1]?.w !== 'just';
    return w === 'still' || w === 'also'
      ? next.w === 'i' || next.w === 'it' || next.w === 'well'
        ? next.w !== 'well'
        : restHasPredicate(items, k + 1) &&
          current.length > 0 &&
          hasPredicate(current) &&
          (w === 'also' || w === 'still')
      : next.w === 'i' || next.w === 'that';
  }
  if (
    [
      'but',
      'so',
      'then',
      'because',
      'cos',
      'cause',
      'while',
      'which',
      'though',
      'although',
      'when',
      'whereas',
    ].includes(w)
  )
    return current.length > 0;
  if (/^(,|and|&)$/.test(w) && tellsLater(items, k + 1)) return true;
  if (
    !says(current) &&
    !hasWork(current) &&
    !current.some((x) => x.duration || x.span || x.quantity || x.cost)
  ) {
    // "row three, block two, has a tear": nothing has been said yet
    if (w === ',' && current.every((x) => x.token.kind === 'word' && !x.place) && current.length < 4)
      return true;
    // "no patch on 2-4, I'm going to darn it"
    if (w === ',' && next.w === 'i' && /^(no|not)$/.test(current[0]?.w ?? ''))
      return restHasPredicate(items, k + 1);
    return current.some((x) => x.place) &&
      restHasPredicate(items, k + 1) &&
      startsWithSubject(items, k + 1) &&
      !/^(and|&|or|\+|,)$/.test(w)
      ? true
      : w === ',' &&
          startsWithSubject(items, k + 1) &&
          restHasPredicate(items, k + 1) &&
          !endsInPlace(current) &&
          !current.some((x) => x.place);
  }
  return restHasPredicate(items, k + 1) || hasWorkAhead(items, k + 1) || newSubject(items, k + 1);
}

const FINITE = new Set([
  'gets',
  'get',
  'got',
  'needs',
  'need',
  'wants',
  'want',
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
]);

/** "2-5 done, 3-5 to follow", "…, back to follow", "ties out, backing tomorrow": a place or a thing, and that it is for later. */
function tellsLater(items: Item[], from: number): boolean {
  let k = from;
  while (/^(the|and|with|then)$/.test(items[k]?.w ?? '') && k < from + 2) k++;
  const subject = items[k];
  if (!subject?.place && !subject?.object) return false;
  while (items[k + 1]?.place || (joinsPlaces(items, k + 1) && k < from + 8)) k += items[k + 1]?.place ? 1 : 2;
  const rest = items.slice(k + 1, k + 5).map((x) => x.w);
  const end = rest.findIndex((x) => /^[.,;!]$/.test(x));
  return /^(is |are |'s )?(still )?(to follow|to go|to come|to do|next|tomorrow|tmrw|later)$/.test(
    rest.slice(0, end < 0 ? undefined : end).join(' '),
  );
}

/** "and four five gets …": a place or cloth and then a finite verb begin a statement of their own. */
function newSubject(items: Item[], from: number): boolean {
  let k = from;
  while (/^(the|and|all|both|that|those|every|also|for)$/.test(items[k]?.w ?? '') && k < from + 3) k++;
  const subject = items[k];
  // "…, net it is"
  if (subject?.material && /^(it is|it 's)$/.test(`${items[k + 1]?.w} ${items[k + 2]?.w}`)) return true;
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
  if (!subject || !(subject.place || subject.fabric || subject.seam || subject.part || subject.object))
    return false;
  while (joinsPlaces(items, k + 1)) k += 2;
  const verb = items[k + 1]?.w ?? '';
  // "…, ties first"
  if (subject.object && /^(first|next)$/.test(verb) && (!items[k + 2] || items[k + 2]!.token.kind === 'mark'))
    return true;
  return (
    FINITE.has(verb) ||
    (FINITE.has(items[k + 2]?.w ?? '') && /^(both|all|one|ones|block|still|also|seam|there)$/.test(verb))
  );
}

/** Is the place at `k` followed at once by what is said of it: "3-2 torn", "3-2 is torn", "3-2's torn"? */
function beginsSaying(items: Item[], k: number): boolean {
  let m = k + 1;
  while (/^(both|also|all|too|too,|still|block|one)$/.test(items[m]?.w ?? '') && m < k + 3) m++;
  const next = items[m];
  if (!next) return false;
  return (
    FINITE.has(next.w) || next.w === "'re" || next.w === 'were' || next.w === ':' || isPredicate(items, m)
  );
}

const endsInPlace = (current: Item[]): boolean => Boolean(current.at(-1)?.place);

/** Has the clause said something of its subject yet? */
const says = (current: Item[]): boolean =>
  hasPredicate(current) ||
  (current.some((x) => x.place || x.fabric) &&
    current.some((x, k) => FINITE.has(x.w) && k > 0) &&
    current.some((x) => /^(same|holding|way|stays|gets|likewise)$/.test(x.w)));

function hasPredicate(current: Item[]): boolean {
  return current.some((_, k) => isPredicate(current, k));
}
const hasWork = (current: Item[]): boolean =>
  current.some((x) => x.duration || x.span || /^(start|started|stop|stopped|quit|began|finished)$/.test(x.w));

function hasWorkAhead(items: Item[], from: number): boolean {
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

function startsWithSubject(items: Item[], k: number): boolean {
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

/** In running speech: does the item at `k` begin, or complete, a second statement in the current clause? */
function startsStatement(items: Item[], k: number, current: Item[]): boolean {
  const item = items[k]!;
  const before = current.at(-1)!;
  // "… down as we speak forget the net"
  if (/^(forget|scrap|skip|ditch|nix|bin)$/.test(item.w))
    return isPredicate(items, k) && hasPredicate(current);
  // looked at where they stand in the note, so that "took the old patch off" knows its "off"
  const start = k - current.length;
  const predicates = current.map((_x, m) => (isPredicate(items, start + m) ? m : -1)).filter((m) => m >= 0);
  if (!predicates.length) {
    if (
      item.w === 'i' &&
      (hasWork(current) || current.some((x) => x.cost)) &&
      !['and', 'but', 'so'].includes(before.w)
    )
      return items[k + 1]?.w !== 'was';
    return false;
  }
  if (
    (item.w === 'i' || item.w === 'there' || item.w === 'she' || item.w === 'he') &&
    (BE.has(items[k + 1]?.w ?? '') ||
      items[k + 1]?.action ||
      Object.hasOwn(REMOVE_VERBS, items[k + 1]?.w ?? '') ||
      [
        "'ll",
        "'ve",
        "'m",
        "'d",
        'started',
        'stopped',
        'need',
        'think',
        'could',
        'might',
        'want',
        'wants',
        'would',
        'did',
        'do',
        'used',
        'put',
        'bought',
        'quit',
        'finished',
        'worked',
        'says',
        'said',
      ].includes(items[k + 1]?.w ?? ''))
  ) {
    return (
      ![
        'where',
        'which',
        'that',
        'what',
        'as',
        'when',
        'if',
        'until',
        'till',
        'before',
        'since',
        'how',
        'while',
      ].includes(before.w) && !(item.w === 'there' && !BE.has(items[k + 1]?.w ?? ''))
    );
  }
  if (item.w === 'it' && BE.has(items[k + 1]?.w ?? '') && items[k + 1]?.w !== 'all')
    return (
      !PREPOSITIONS.has(before.w) &&
      !/^(off|out|where|which|what|as|when|if|before|since|how|while|let|way|than|like|just|exactly|that|because|call|calling|make|leave|leaving)$/.test(
        before.w,
      ) &&
      !before.action &&
      !removalAt(items, k - 1)
    );
  if (
    item.place?.kind === 'blocks' &&
    !PREPOSITIONS.has(before.w.split(' ').at(-1)!) &&
    !/^(\/|-|the|and|,|&|all|every|that|of|or|seam|block|is|'s|where|which|what|when|how|if|because|than|as)$/.test(
      before.w,
    ) &&
    !before.place &&
    newSubject(items, k)
  ) {
    const verb = items[k + 1]?.w ?? '';
    // "leaving 2-4 just as it is": an adverb is no verb of its own
    return !(before.action && verb !== "'s") || (FINITE.has(verb) && !/^(just|only|too|same)$/.test(verb));
  }
  if (!isPredicate(items, k)) return false;
  const last = predicates.at(-1)!;
  const lastItem = current[last]!;
  // "took the tacking out", "have come off the bottom row": the particle belongs to the verb before
  if (PARTICLES.has(item.w) && Object.hasOwn(REMOVE_VERBS, lastItem.w)) return false;
  const between = current.slice(last + 1);
  // "washing is out"
  if (PARTICLES.has(item.w) && lastItem.action && between.every((x) => BE.has(x.w))) return false;
  // "darned the hole", "pressed the puckers out", "closed the split seam": the finding is what the work is done to.
  const doing =
    lastItem.action ||
    removalAt(current, last) ||
    /^(live|living|leave|leaving|keep|keeping)$/.test(lastItem.w);
  // "over the hole", "on the worn spot", "across a tear": what the work is done to stands after a preposition
  if (item.finding && !item.action && doing && ledByPreposition(between)) return false;
  // "the old patch on 6-2 could come off"
  if (
    lastItem.finding === 'old-repair' &&
    removalAt(items, k) &&
    between.some((x) => /^(can|could|will|'ll|may|might|should|must|to|needs|wants)$/.test(x.w))
  )
    return false;
  // "pressed the seams open"
  if (/^(open|flat)$/.test(item.w) && lastItem.action?.v === 'press') return false;
  // "the stain on 3-2 can stay"
  if (
    /^(stay|stays|left|remain|remains|leave)$/.test(item.w) &&
    lastItem.finding &&
    !lastItem.action &&
    between.some((x) => /^(can|could|will|'ll|may|might|should|must|to|be|gets|is|just)$/.test(x.w)) &&
    current.slice(Math.max(0, last - 3), last).some((x) => /^(the|that|this|its|those)$/.test(x.w))
  )
    return false;
  if (
    item.finding &&
    !item.action &&
    doing &&
    between.every(
      (x) => !BE.has(x.w) || ['a', 'little', 'right', 'bit', 'all', 'both', 'only'].includes(x.w),
    ) &&
    between.length <= 4 &&
    !between.some((x) => x.place && !x.part)
  )
    return false;
  // "blanket stitched all the way round", "by machine straight stitched" after a treatment says how.
  if (
    item.stitch &&
    item.action &&
    doing &&
    lastItem.action &&
    !between.some((x) => x.w === 'and' || x.w === ',')
  )
    return false;
  // "get a support stitched in behind them"
  if (item.action?.form === 'past' && lastItem.action && between.length <= 1 && isGiven(current, last))
    return false;
  // "whipped closed", "zigzagged shut": one act
  if (item.action && lastItem.action && lastItem.stitch && between.length === 0) return false;
  // findings side by side: "splitting into strips", "stained and torn" is cut elsewhere
  if (item.finding && lastItem.finding && between.length === 0) return false;
  // "the loss in 3-2 is patched": the damage is what the work was done to
  if (
    (item.action?.form === 'past' || removalAt(items, k)?.form === 'past') &&
    lastItem.finding &&
    !lastItem.action &&
    // "the hole is patched", "I have the rip closed now"
    (between.some((x) => /^(is|are|was|were|been|be|gets|got|'s|'re)$/.test(x.w)) ||
      between.every((x) => /^(all|now|finally)$/.test(x.w))) &&
    current.slice(Math.max(0, last - 3), last).some((x) => /^(the|that|this|its|those)$/.test(x.w))
  )
    return false;
  if (item.fail && (lastItem.fail || lastItem.finding) && between.length <= 1) return false;
  if (item.fail && !item.finding && !between.some((x) => x.seam || x.stitches || x.part)) return false;
  if (lastItem.fail && !lastItem.finding && item.finding && between.every((x) => DEGREE.has(x.w)))
    return false;
  // "black spots of mould"
  if (item.finding && lastItem.finding && between.length === 1 && between[0]!.w === 'of') return false;
  if (item.action && lastItem.w === 'left' && between.length <= 1) return false;
  // "cut out and pieced in", "needs taking out", "wants re-sewing", "started tying"
  if (
    /^(need|needs|want|wants|gets|started|starting|stopped|finished|began|decided|used|stays|stay|left|going|getting|quit)$/.test(
      lastItem.w,
    ) &&
    between.length <= 4
  )
    return false;
  if (item.action?.form === 'ing' && PREPOSITIONS.has(before.w)) return false;
  if (item.action?.form === 'base' && /^(to|of|or)$/.test(before.w) && lastItem.action)
    return before.w !== 'or';
  if (
    removalAt(items, k)?.form === 'base' &&
    item.w !== 'remove' &&
    ['have', 'has', 'get', 'gets'].includes(item.w)
  )
    return false;
  return true;
}

/** Do these words end in a preposition and what may stand between it and its noun ("over the", "across a nasty long")? */
function ledByPreposition(between: Item[]): boolean {
  for (let m = between.length - 1; m >= 0 && m >= between.length - 4; m--) {
    const x = between[m]!;
    if (/^(over|on|across|onto|around|round|behind|under|at|along|through|into|in|of)$/.test(x.w))
      return m > 0;
    if (x.token.kind === 'mark' || x.place || x.action || (BE.has(x.w) && x.w !== 'a' && x.w !== 'little'))
      return false;
  }
  return false;
}

const DEGREE = new Set(
  'ever so very quite rather really all a bit little right too pretty awfully terribly dreadfully clean clear completely'.split(
    ' ',
  ),
);

/** Where in the current clause the new statement's own words begin: at its subject, if that is not led by a preposition. */
function statementStart(current: Item[], items: Item[], k: number): number {
  const first = items[k]!;
  if (/^(forget|scrap|skip|ditch|nix|bin)$/.test(first.w)) return current.length;
  if (first.w === 'i' || first.w === 'there' || first.w === 'it' || first.w === 'she' || first.w === 'he')
    return current.length;
  let at = current.length;
  let sawPlace = false;
  for (let m = current.length - 1; m >= 0; m--) {
    const item = current[m]!;
    if (isPredicate(current, m) && !(BE.has(item.w) && item.w !== 'gone')) break;
    const light =
      BE.has(item.w) ||
      [
        'the',
        'that',
        'this',
        'those',
        'these',
        'one',
        'ones',
        'i',
        'it',
        'and',
        ',',
        '&',
        'of',
        'side',
        'every',
        'each',
        'all',
        'other',
        'old',
        'new',
        'little',
        'for',
        'to',
        'an',
        "'m",
        "'d",
      ].includes(item.w);
    // "patched it with a piece of the denim zigzagged round": what was put in is no subject
    if (
      item.w === 'of' &&
      !BE.has(current[m - 1]?.w ?? '') &&
      /^(piece|scrap|bit|strip|length|patch|square|remnant)s?$/.test(
        (current[m - 1]?.w ?? '').split(' ').at(-1)!,
      )
    )
      return current.length;
    const subject =
      item.place || item.fabric || item.seam || item.stitches || item.part || item.object || item.material;
    if (subject) {
      sawPlace = true;
      at = m;
      continue;
    }
    if (light) {
      if (item.w === 'and' || item.w === ',' || item.w === '&') {
        if (!sawPlace) at = m;
        continue;
      }
      if (item.w === 'of' && !isQuantifier(current[m - 1])) {
        // "out of that whole row | the batting's clumped": the place stays with what was said before
        return sawPlace ? afterPlaces(current, m + 1) : m;
      }
      if (!PREPOSITIONS.has(item.w) || item.w === 'to' || item.w === 'of' || item.w === 'for') {
        at = m;
        continue;
      }
    }
    if (PREPOSITIONS.has(item.w)) {
      // the place after a preposition belongs to what was said before
      if (sawPlace) return afterPlaces(current, m + 1);
      at = m;
      continue;
    }
    break;
  }
  // "patched 3-1 3-2 is torn" is not spoken; a place right after a verb stays with the verb.
  if (at < current.length && at > 0) {
    const prior = current[at - 1]!;
    const hasAux = current.slice(at).some((x) => BE.has(x.w));
    if (prior.action && !hasAux && current.slice(at).some((x) => x.place)) return afterPlaces(current, at);
  }
  return at;
}

/** The index after the places, joined by "and" or commas, that stand from `from` on. A new subject with a part or seam ends them. */
function afterPlaces(current: Item[], from: number): number {
  let after = from;
  while (after < current.length) {
    const item = current[after]!;
    if (item.place && item.place.kind !== 'part') after++;
    else if (item.place && after === from) after++;
    else if (item.w === 'the' && after === from) after++;
    else if (
      /^(and|,|&|the)$/.test(item.w) &&
      current
        .slice(after + 1, after + 3)
        .some((x, n) => x.place && x.place.kind !== 'part' && (n === 0 || current[after + 1]!.w === 'the'))
    )
      after++;
    else break;
  }
  return after;
}

/** "all of the ties", "most of them", "one of the blocks". */
const isQuantifier = (item: Item | undefined): boolean =>
  item !== undefined &&
  (item.quantity !== undefined ||
    /^(all|one|most|half|some|each|every|any|none|both|rest|lot|couple|plenty|part|many|lots|few|bit|couple|remainder|whole)$/.test(
      item.w,
    ));

/** Words of a clause as tokens' text, for patterns that look at plain words. */
export const wordsOf = (clause: Clause): string => clause.items.map((x) => x.w).join(' ');
export type { Token };
