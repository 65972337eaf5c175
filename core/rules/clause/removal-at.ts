import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

/** Base, past and -ing forms; `true` where it takes a particle to be a removal: "took off", "cut out". */
const REMOVALS: [base: string, past: string, ing: string, particle: boolean][] = [
  ['remove|removes', 'removed', 'removing', false],
  ['unpick|unpicks', 'unpicked', 'unpicking', false],
  ['unstitch', 'unstitched', 'unstitching', false],
  ['unsew', 'unsewed|unsewn', 'unsewing', false],
  ['extract|extracts', 'extracted', 'extracting', false],
  ['withdraw|withdraws', 'withdrew|withdrawn', 'withdrawing', false],
  ['detach', 'detached', 'detaching', false],
  ['peel|peels', 'peeled', 'peeling', false],
  ['strip', 'stripped', 'stripping', false],
  ['unpin', 'unpinned', 'unpinning', false],
  ['unquilt', 'unquilted', 'unquilting', false],
  ['untie', 'untied', 'untying', false],
  ['frog', 'frogged', 'frogging', false],
  ['separate|separates', 'separated', 'separating', false],
  ['slit|slits', 'slitted', 'slitting', true],
  ['scrape', 'scraped', 'scraping', true],
  ['work', 'worked', 'working', true],
  ['undo', 'undid', 'undoing', false],
  ['snip|snips', 'snipped', 'snipping', false],
  ['lift|lifts', 'lifted', 'lifting', true],
  ['take|takes', 'took|taken', 'taking', true],
  ['pull|pulls', 'pulled', 'pulling', true],
  ['rip|rips', 'ripped', 'ripping', true],
  ['pick|picks', 'picked', 'picking', true],
  ['come|comes', 'came', 'coming', true],
  ['get|gets', 'got|gotten', 'getting', true],
  ['draw', 'drew|drawn', 'drawing', true],
  ['cut', 'cut', 'cutting', true],
  ['ease', 'eased', 'easing', true],
  ['have|has', 'had', 'having', true],
  ['tweeze', 'tweezed', 'tweezing', true],
  ['tease', 'teased', 'teasing', true],
  ['clip', 'clipped', 'clipping', true],
  ['prise|pry', 'prised|pried', 'prising', true],
  ['soak', 'soaked', 'soaking', true],
  ['steam', 'steamed', 'steaming', true],
  ['drop', 'dropped', 'dropping', true],
  ['throw', 'threw|thrown', 'throwing', true],
  ['chuck', 'chucked', 'chucking', true],
  ['shake', 'shook|shaken', 'shaking', true],
];

type RemoveVerb = { form: 'past' | 'ing' | 'base'; particle: boolean };

export const REMOVE_VERBS: Record<string, RemoveVerb> = Object.fromEntries(
  REMOVALS.flatMap(([base, past, ing, particle]) =>
    (
      [
        [base, 'base'],
        [past, 'past'],
        [ing, 'ing'],
      ] as const
    ).flatMap(([forms, form]) => forms.split('|').map((f): [string, RemoveVerb] => [f, { form, particle }])),
  ),
);

export const PARTICLES = new Set(['off', 'out', 'away']);

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

/** The removing verb at item `k` of `items`, with the particle that it needs. */
export function removalAt(
  items: Item[],
  k: number,
): { form: 'past' | 'ing' | 'base'; particle?: number } | undefined {
  const item = items[k]!;
  // "ripped out" is one item where it also names the task
  if (item.task === 'taking-apart' && / (out|off)$/.test(item.w)) {
    const verb = item.w.slice(0, -4);
    // "taking off the old binding", where "taking off" alone is only the work
    if (
      Object.hasOwn(REMOVE_VERBS, verb) &&
      (REMOVE_VERBS[verb]!.form !== 'ing' ||
        // "the label wants taking off"
        /^(needs?|wants?|needing|wanting|worth|with)$/.test(items[k - 1]?.w ?? '') ||
        items.slice(k + 1, k + 5).some((x) => x.object && !x.action?.form.startsWith('p')))
    )
      return { form: REMOVE_VERBS[verb]!.form, particle: k };
  }
  // "got rid of the old patch"
  if (item.w === 'rid')
    return items[k + 1]?.w === 'of' && /^(get|got|getting|gotten)$/.test(items[k - 1]?.w ?? '')
      ? { form: items[k - 1]!.w === 'get' ? 'base' : items[k - 1]!.w === 'getting' ? 'ing' : 'past' }
      : undefined;
  if (!Object.hasOwn(REMOVE_VERBS, item.w)) return undefined;
  const { form, particle } = REMOVE_VERBS[item.w]!;
  // "a new strip", "the strip for the border", "took a lift": a thing
  if (/^(strip|strips|lift|draw)$/.test(item.w) && !isImperative(items, k)) return undefined;
  // "I have the backing off", "have the border off now": it is off already
  const holds = /^(have|has)$/.test(item.w) && /^(|i|we|,|\.|and|now|so|she|he)$/.test(items[k - 1]?.w ?? '');
  const actual = item.w === 'cut' || holds ? 'past' : form;
  const auxiliary = /^(have|has|had|having|get|gets|got|getting|gotten)$/.test(item.w);
  // "has faded way out"
  if (/^(have|has|had)$/.test(item.w) && items[k + 1]?.finding && items[k + 1]!.finding !== 'old-repair')
    return undefined;
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
  // "pins drawn as I went", "old basting pulled from row four"
  if (
    actual === 'past' &&
    /^(drawn|taken|pulled|picked|teased|worked)$/.test(item.w) &&
    (item.w === 'drawn' || items[k + 1]?.w === 'from')
  ) {
    let m = k - 1;
    while (/^(is|are|was|were|all|now|been|have|has)$/.test(items[m]?.w ?? '')) m--;
    if (/^(pins|stitching|ties|quilting)$/.test(items[m]?.object ?? '') && !items[m]!.seam)
      return { form: 'past' };
  }
  // "pull the batting": what can only be taken out needs no "out"
  // "pulled the stitches too tight" takes none out
  if (
    particle &&
    /^(pull|pulled|pulling|pulls)$/.test(item.w) &&
    // "there's a pulled thread in 2-2": how it is
    !/^(a|an|some|few|several|any|no|one|two|three|of|with)$/.test(items[k - 1]?.w ?? '') &&
    !items.slice(k + 1, k + 6).some((x) => /^(tight|tightly|taut|snug)$/.test(x.w))
  ) {
    const thing = items.slice(k + 1, k + 5).find((x) => x.object);
    if (thing?.object && ['batting', 'ties', 'stitching', 'quilting', 'pins'].includes(thing.object))
      return { form: actual };
    // "pull the backing square", "pulled the binding over to the front": put where it belongs
    if (
      thing?.object &&
      ['backing', 'binding', 'label'].includes(thing.object) &&
      !items.slice(k + 1, k + 7).some((x) => PUT_RIGHT.test(x.w))
    )
      return { form: actual };
  }
  // "the ties have snapped so I've pulled what's left of them": what is left of a thing can only be taken out
  if (
    /^(pull|pulled|pulling|snip|snipped|clip|clipped|cut)$/.test(item.w) &&
    /^ what (?:$|(?:'s|is|was|were) (?:still )?left of (?:it|them) |remained of (?:it|them) )/.test(
      wordsBetween(items, k + 1, k + 7),
    )
  )
    return { form: actual };
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

const PUT_RIGHT = /^(smooth|straight|square|flat|even|over|round|around|through|across|together|back|up)$/;

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
