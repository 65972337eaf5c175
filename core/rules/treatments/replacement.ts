import { COLOURS } from '../../lexicon/colours.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isCloth } from './is-cloth.ts';
import { isThingAgain } from './redone.ts';
import { found, type Way, type WayFound } from './way.ts';

/** A piece cut out and a new one pieced in: one act, however many verbs tell it. Looked for in the whole clause. */
export function replacement(items: Item[], thing?: string): WayFound {
  const all = wordsBetween(items);
  // "going to piece new ones and put them on", of borders that were taken off
  if (
    thing === 'border' &&
    / piec(?:e|ed|ing) (?:the )?new (?:ones?|strips?) /.test(all) &&
    !/ in(?:to)? /.test(all)
  )
    return undefined;
  // "the ties have gone, so I'm putting new ones in": new ties
  if (/^(?:ties|quilting)$/.test(thing ?? '') && / (?:new|fresh) ones /.test(all)) return undefined;
  if (!isReplacement(items, all)) return undefined;
  // "ties gone from 2-2", then "replaced them"
  if (items.some((x, k) => x.action?.v === 'replace' && isThingAgain(items, k, thing))) return undefined;
  const verbs = items.flatMap((_x, k) => (isReplacingVerb(items, k) ? [k] : []));
  const phrase = items.findIndex((x) => x.action?.v === 'replace');
  const at = Math.max(
    verbs[0] ?? (phrase >= 0 ? phrase : items.findIndex((x) => /^(new|fresh|replacement)$/.test(x.w))),
    0,
  );
  const stuff = items.findLast(
    (x) => isCloth(x) && (x.fabric || (x.material === 'fabric' && x.w !== 'piece' && x.w !== 'bit')),
  );
  const taken = items.flatMap((x, k) =>
    (x.w === 'patch' &&
      !isPredicate(items, k) &&
      !/ (?:or|either|versus|vs) (?:a |the )?$/.test(wordsBetween(items, k - 2, k)) &&
      // "between a patch and letting a new piece in", "a patch perhaps, or a whole new block"
      !/ (?:or|versus|vs) | between (?:a |the )?patch and /.test(
        wordsBetween(items, k - 2, Math.max(at, k)),
      )) ||
    x.w === 'piece' ||
    (x.action && ['cut', 'piece', 'replace'].includes(x.action.v))
      ? [k]
      : [],
  );
  return found(
    {
      action: 'replace',
      form: formOf(items, verbs, at),
      at,
      items: [items[at]!],
      rule: 'treatment.replace',
      ...(stuff ? { stuff } : {}),
    },
    ...verbs,
    ...taken,
  );
}

function isReplacement(items: Item[], all: string): boolean {
  // "cut out … and pieced in"
  const cutOut =
    /\b(cut|cuts|cutting|take|took|taking|taken|unpick|unpicked)\b.* (out|away|altogether|entirely)\b/.test(
      all,
    ) || /\bcut out\b/.test(all);
  // "patched it with a new piece": what it was patched with, and nothing pieced in
  if (!cutOut && PATCHED_WITH.test(all)) return false;
  // "has the new muslin sewn in behind it": nothing is cut out
  if (
    !cutOut &&
    /\b(?:sewn|sewed|stitched|put|let|set|slipped) (?:in )?(?:behind|underneath|beneath)\b/.test(all)
  )
    return false;
  // "patched 2-3 with a new piece", "a new piece laid over 2-3": put on, and nothing is cut out
  if (!cutOut && PUT_ON_TOP.test(all)) return false;
  // "cut away the rotten piece in 5-1": a thing, and nobody's piecing
  const told = all.replace(
    / (?:the|that|this|a|old|worn|rotten|torn|bad|damaged|stained|\w+ed) (?:piece|pieces) /g,
    ' bit ',
  );
  const newIn =
    /\b(pieced?|piecing|set|sew|sewed|sewn|let|put|inset|insert|inserted|setting|sewing|putting|letting|stitched|stitch) .*\b(in|into)\b/.test(
      told,
    ) && /\b(new|fresh|replacement|another|one|in)\b/.test(all);
  if (
    cutOut &&
    newIn &&
    /\b(piec|set in|let in|sew|sewn|sewed|in a new|new)\b/.test(all.replace(/pieced?|piecing/, 'piec'))
  )
    return true;
  // "new piece cut in", "new … pieced in"
  if (
    /\b(new|fresh|replacement) (pieces?|ones?|bits?|blocks?|patch of|[a-z]+)( of [a-z]+)?( [a-z]+)* (cut|set|let|pieced|sewn|put|sewed|stitched|inset|going|goes|to go|went|cutting|setting|letting|piecing|sewing|putting) in\b/.test(
      all,
    ) ||
    /\b(?:new|fresh|replacement) (?:pieces?|bits?)\b/.test(all) ||
    // "new square into 4-1", "the replacement square is in at 3-4"
    // "new calico piece in 2-3"
    / (?:new|fresh|replacement) (?:\S+ )?(?:squares?|blocks?|pieces?|bits?|patch|diamond|hexagon|triangle|section) (?:(?:is|'s|are|now|all|both|went|goes) )*(?:in|into)(?: (?!row|column|the middle|at the)| {1,2}$)/.test(
      all,
    ) ||
    // "either a new block or a patch on it"
    (/\b(?:new|fresh|replacement) (?:blocks?|squares?)\b/.test(all) &&
      / (?:or|either|versus|vs) /.test(all)) ||
    // "so it'll be a new block"
    / (?:be|gets?|needs?|wants?|have|getting|it 's|calls for|deserves) (?:a )?(?:whole |complete |completely |brand )?(?:new|fresh) (?:block|square)\b/.test(
      all,
    ) ||
    (cutOut && /\bpieced? (?:in )?(?:anew|afresh|again|new)\b/.test(all))
  )
    return true;
  // "cut new ones in", "cutting in a fresh one"
  if (
    !/\b(?:borders?|binding|strips?|backing)\b/.test(all) &&
    / cut(?:ting)? (?:(?:a|some) )?(?:new|fresh) (?:ones?|pieces?|bits?|squares?)(?: of \S+)? in(?: (?:[.,;]|at|for|or|and|there|here|i|instead|to|,) | $)| cut(?:ting)? in (?:(?:a|some) )?(?:new|fresh) /.test(
      all,
    )
  )
    return true;
  // "set in a new one"
  if (
    !/\bborder/.test(all) &&
    (/\b(pieced|piecing|piece|set|let) (in )?(a )?(new|fresh|replacement|another)\b/.test(all) ||
      (/\b(pieced|set|let) .{0,30}\bin\b/.test(all) && /\bnew\b/.test(all)))
  )
    return true;
  return setsIn(items, all) || newCloth(items);
}

const PUT_ON_TOP =
  / patch(?:ed|ing|es)? (?!.* (?:set|let|pieced|sewn|put) in ).*\bwith (?:a |an |some |the |one )?(?:\S+ )?(?:new|fresh) (?:pieces?|bits?) | (?:new|fresh) (?:pieces?|bits?) (?:of (?:\S+ ){1,3})?(?:(?:laid|sewn|put|stitched|whipped|tacked) )?(?:over|onto|on top of|across) /;

function isReplacingVerb(items: Item[], k: number): boolean {
  const x = items[k]!;
  return (
    (x.action !== undefined &&
      ['cut', 'piece', 'replace', 'resew'].includes(x.action.v) &&
      isPredicate(items, k)) ||
    (/^(cut|took|take|taking|taken|unpick|unpicked)$/.test(x.w) && removalAt(items, k) !== undefined) ||
    (/^(set|let|put|setting|putting|letting|inset)$/.test(x.w) &&
      // "or I could let it alone"
      !/^(alone|be|lie)$/.test(items[k + 2]?.w ?? ''))
  );
}

function formOf(items: Item[], verbs: number[], at: number): Way['form'] {
  if (!verbs.length) return 'noun';
  const lead = items[at - 1]?.w ?? '';
  // "gets cut out", "to be cut out"
  if (items[at]!.w === 'cut' && /\b(gets?|be|is to be) (it )?$/.test(wordsBetween(items, 0, at)))
    return 'past';
  if (/^(to|will|'ll|gonna|or|either|could|might|should|must|maybe|possibly|perhaps|poss)$/.test(lead))
    return 'base';
  const forms = verbs.map(
    (k) =>
      items[k]!.action?.form ??
      removalAt(items, k)?.form ??
      (/^(set|let|put|inset)$/.test(items[k]!.w) ? ('past' as const) : ('ing' as const)),
  );
  return forms.includes('ing') ? 'ing' : forms[0]!;
}

const PIECE_NOUN =
  /^(piece|pieces|pc|pcs|bit|bits|block|blocks|square|squares|patch|patches|scrap|strip|diamond|triangle|hexagon|petal|leaf|section|panel|one|ones|replacement|segment|wedge|shape|star|point|rectangle|half)$/;
const NO_PIECE = new Set(['binding', 'backing', 'batting', 'ties', 'label', 'border', 'quilting', 'pins']);

/**
 * "put a whole new block in", "set in a piece of flannel", "made a new block and sewed it in", "put a replacement in":
 * what is put in is a piece of cloth.
 */
function setsIn(items: Item[], all: string): boolean {
  if (items.some((x) => x.object && NO_PIECE.has(x.object))) return false;
  // "put a new patch over it in the grey poplin": laid on, and the "in" is of the cloth
  // "a new red patch sewn on over the hole in 4-4"
  if (
    / (?:new|fresh) (?:\S+ ){0,2}patch (?:of \S+ )?(?:(?:[a-z]+ed|sewn|put|stuck|laid) )?(?:over|on|onto|across) /.test(
      all,
    )
  )
    return false;
  const fresh = items.findIndex(
    (x, k) =>
      (/^(new|fresh|another)$/.test(x.w) &&
        items
          .slice(k + 1, k + 4)
          .some((y) => PIECE_NOUN.test(y.w) || y.fabric !== undefined || y.material === 'fabric')) ||
      (x.w === 'replacement' && /^(a|an|the|one|my)$/.test(items[k - 1]?.w ?? '')),
  );
  if (fresh >= 0)
    return /\b(put|puts|putting|sew|sewed|sewn|sewing|stitch|stitched|stitching|insert|inserted|inserting|slot|slotted|fit|fitted|fitting|work|worked|made|make|making|machined|hand sewn|went|go|goes|going|set|let|setting|letting|slotting|working) .*\b(in|into|in its place)\b/.test(
      all,
    );
  // "I was all set to patch the two in row two" sets nothing in
  const verb = items.findIndex(
    (x, k) =>
      /^(set|let|inset|pieced|setting|letting|piecing|insetting)$/.test(x.w) && items[k + 1]?.w !== 'to',
  );
  if (verb < 0) return putsClothIn(items);
  const rest = items.slice(verb + 1, verb + 10);
  return (
    rest.some((x) => /^(in|into)$/.test(x.w) || items[verb]!.w === 'inset') &&
    rest.some((x) => PIECE_NOUN.test(x.w) || x.fabric !== undefined || x.material === 'fabric') &&
    !rest.some((x) => x.w === 'together' || x.w === 'aside')
  );
}

/** "put a piece of the gingham in", "sewed a bit of lawn into 3-2", but neither "put a bit of lawn in behind" nor "put a scrap of it in the box". */
function putsClothIn(items: Item[]): boolean {
  const verb = items.findIndex((x) => /^(?:put|puts|putting|fit|fitted|fitting|slot|slotted)$/.test(x.w));
  // "needs a piece of gingham put in"
  const passive = PUT_IN.exec(wordsBetween(items))?.[1];
  if (passive !== undefined) return items.some((x) => isCloth(x) && x.w.endsWith(passive));
  if (verb < 0) return false;
  // "put in a bit of the check", "putting in blue check"
  if (items[verb + 1]?.w === 'in') return isClothAlone(items.slice(verb + 2));
  const into = items.findIndex((x, k) => k > verb + 1 && k < verb + 10 && /^(?:in|into)$/.test(x.w));
  const next = items[into + 1];
  return (
    into > 0 &&
    A_PIECE_OF.test(wordsBetween(items, verb + 1, into)) &&
    items.slice(verb + 1, into).some((x) => isCloth(x) && !PIECE_NOUN.test(x.w)) &&
    (!next ||
      next.token.kind === 'mark' ||
      next.place?.kind === 'blocks' ||
      /^(?:at|by|on|for|or|and|there|instead|today|tonight|now|too)$/.test(next.w))
  );
}
/** Nothing but a piece of cloth, its kind and when: no amount, and not where it lies. */
const isClothAlone = (items: Item[]): boolean =>
  items.some((x) => x.fabric || (x.material === 'fabric' && !PIECE_NOUN.test(x.w))) &&
  items.every(
    (x) =>
      x.fabric ||
      x.material === 'fabric' ||
      PIECE_NOUN.test(x.w) ||
      x.place?.rule === 'place.it' ||
      COLOURS.has(x.w) ||
      /^(?:a|an|some|the|of|new|old|instead|tomorrow|tonight|today|now|there|plain|little|small)$/.test(x.w),
  );
const PUT_IN =
  / (?:a|another) (?:piece|bit|square|scrap) of (?:\S+ ){0,3}(\S+) (?:put|set|let|sewn|fitted) in (?!behind|under|over|beneath)/;
const A_PIECE_OF =
  /^ (?:a|an|another|some) (?:\S+ )?(?:piece|bit|square|scrap|patch) of (?!.* (?:over|on|onto|behind|under|across|round) )/;

/** "new teal lawn in", "a new backing altogether", "new block instead". */
function newCloth(items: Item[]): boolean {
  return items.some((x, k) => {
    if (!/^(new|fresh)$/.test(x.w)) return false;
    const thing = items[k + 1];
    const after = items[k + 2];
    if (!thing) return false;
    const cloth = Boolean(thing.fabric || thing.material === 'fabric' || thing.material === 'backing');
    if (!cloth && !PIECE_NOUN.test(thing.w)) return false;
    if (/^(altogether|instead|entirely|completely)$/.test(after?.w ?? '')) return true;
    const end = items[k + 3];
    return (
      thing.material !== 'backing' &&
      after?.w === 'in' &&
      (!end || end.token.kind === 'mark' || /^(by|w|with|now|or|and)$/.test(end.w))
    );
  });
}

const PATCHED_WITH =
  /^(?!.* (?:or|either|vs|versus|instead|but) ).* patch(?:ed|ing)? (?:\S+ ){0,6}(?:with|w \/|using|in) (?:(?:a|an|the|some|my|small|little|nice) )*(?:new|fresh) (?:pieces?|bits?|scraps?|squares?)(?: (?!(?:set|let|pieced|sewn|cut) in )| $)/;
