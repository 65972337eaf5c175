import type { Action } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isCloth, isNet } from './is-cloth.ts';
import { picturesOf } from './shot-with-camera.ts';

/** Does anything in the clause say that the mending was with needle and thread, of a seam or a tear? */
const sewn = (items: Item[]): boolean =>
  items.some(
    (x) =>
      x.seam ||
      x.stitch ||
      x.stitches ||
      /^(tear|split-seam|broken-stitching|fraying)$/.test(x.finding ?? '') ||
      /^(thread|tie-thread|needle)$/.test(x.material ?? '') ||
      x.object === 'ties' ||
      (x.part !== undefined && x.part !== 'quilt'),
  );

/** The verb's treatment once its object is looked at. */
export function refineAction(items: Item[], k: number, v: Action, thing?: string): Action | undefined {
  const all = wordsBetween(items);
  const after = wordsBetween(items, k + 1, Math.min(items.length, k + 9));
  const w = items[k]!.w;
  const before = wordsBetween(items, k - 4, k);
  // "busy backing 3-4", "maybe pin row one": what may else be a thing is a deed by the words around it
  const done = items[k]!.deed;
  // "ran the hoover round the sewing room"
  if (v === 'clean' && / (?:room|floor|carpet|rug|stairs|hall|kitchen|house|bench|table) /.test(after))
    return undefined;
  // "did the washing up"
  if (w === 'washing' && /^ up /.test(after) && / (?:the|some|do|doing|did) $/.test(before)) return undefined;
  // "done and dusted"
  if (w === 'dusted' && / done and $/.test(before)) return undefined;
  // "wants me to swap saturday"
  if (
    /^swap/.test(w) &&
    / (?:(?:mon|tues|wednes|thurs|fri|satur|sun)days?|shifts?|days|numbers|seats) /.test(after)
  )
    return undefined;
  // "fused a square of cotton onto 4-2": over the damage, and not behind it
  if (
    v === 'stabilize' &&
    /^fus/.test(w) &&
    / (?:onto|on to|over the hole|on top) /.test(after) &&
    !items.some((x) => x.material === 'interfacing')
  )
    return 'patch';
  // "the iron-on has been steamed off"
  if (v === 'press' && /^steam/.test(w) && /^ (?:\S+ ){0,3}off /.test(after)) return undefined;
  if (v === 'resew') {
    if (
      w.startsWith('clos') &&
      !/\b(seam|seams|it|them|tear|split|rip|gap|up|hole|those|that|by|with|both|opening|slit|join|\d-\d)\b/.test(
        all,
      ) &&
      !items.some((x) => x.place)
    )
      return undefined;
    if (w.startsWith('catch') || w.startsWith('caught'))
      return /\b(down|back|in)\b/.test(after) ? 'resew' : undefined;
    if (w.startsWith('fix') && /\b(machine|lamp|deadline|price|date)\b/.test(after)) return undefined;
    if (w === 'fixed' && thing !== 'seam' && !items.some((x) => x.place || x.seam || x.finding))
      return undefined;
    // "mended 4-4", "fixed that one": sewn, darned or patched is not told
    if (/^(mended|repaired|fixed)$/.test(w) && !sewn(items) && thing !== 'seam') return undefined;
    if (!done && /^(stitch|seam)$/.test(w) && !/ (to|will|'ll|must|gonna|should) $/.test(before))
      return /^ (it|the|that|them|up|down|back|along|both)/.test(after) ? 'resew' : undefined;
    if (items.some((x) => x.stitch === 'in-the-ditch')) return 'quilt';
    if (/^hem/.test(w) && items.some((x) => x.part === 'binding')) return 'bind';
    if (/^(hem|hems|ladder|ladders)$/.test(w) && !/ (to|will|'ll|must|gonna|should) $/.test(before))
      return undefined;
    // "closed that seam on the back": where the seam is
    if (
      (/\b(in|on) (behind|the back)\b/.test(after) && !items.slice(k + 1, k + 4).some((x) => x.seam)) ||
      / behind /.test(
        after.replace(/ (?:and|then) (?:then )?(?:put|laid|slipped|tucked|fused|ironed|set) .*/, ' '),
      )
    )
      return 'stabilize';
    if (items.some((x) => x.object === 'label') && /\b(on|to|in|at|into|onto)\b/.test(after)) return 'label';
    // "one of the supports is sewn in", "both overlays stitched down": the thing tells what the sewing makes
    const made = items.slice(Math.max(0, k - 6), k).find((x) => /^(supports?|overlays?)$/.test(x.w));
    if (made) return made.w.startsWith('support') ? 'stabilize' : 'overlay';
    // "the patch on 5-5 is half sewn"
    if (
      /^(the|my|new) $/.test(`${items.find((_x, m) => items[m + 1]?.w === 'patch')?.w} `) &&
      / (is|'s|are) (now |all |half |nearly |nearly all |partly )?$/.test(before) &&
      !/^ (back|again) /.test(after)
    )
      return 'patch';
    // "made a new block and sewed it in"
    if (/^ (it|them|that one|those|the new one) in( (by|with|on|again|now|today|,|and)\b.*)? $/.test(after))
      return 'replace';
    if (
      / together /.test(after) &&
      /\b(strips?|pieces?|new|squares?|panels?|end to end|borders?|halves|lengths?|widths?|sections?|drops?|patches)\b/.test(
        all,
      )
    )
      return 'piece';
    if (/\b(pieces?|strips?|panels?|lengths?) (of [a-z]+ )?(together|end to end)\b/.test(all)) return 'piece';
    // "seamed the two widths of backing"
    // "the backing is seamed down the middle"
    if (w === 'seamed' && items.some((x) => x.part === 'backing') && / (?:middle|cent(?:re|er)) /.test(after))
      return 'piece';
    if (w === 'seamed' && /\b(widths?|lengths?|drops?|halves|strips?) /.test(after)) return 'piece';
    // "it's slip-stitched down along the bottom edge", while binding
    if (
      thing === 'binding' &&
      / down (?:along|on|round|around|all|the|at|$)/.test(after) &&
      !items.some((x) => x.seam || x.finding || x.fail || x.place?.kind === 'blocks')
    )
      return 'bind';
    // "sewed the binding on along the top", "stitched binding on, top and left": put on, and no seam of it closed again
    if (
      /^ (?:the |new |its |my )*binding on (?:at|along|to|all|round|around|by|with|top|bottom|left|right|,|and then) /.test(
        after,
      ) &&
      !/^re/.test(w) &&
      !items.some((x) => x.seam || x.finding || x.fail || x.place?.kind === 'blocks')
    )
      return 'bind';
    // "slip stitched the binding down on the left": finished, and no seam of it closed again
    if (
      / down /.test(after) &&
      items.slice(k + 1, k + 4).some((x) => x.part === 'binding' || x.w.startsWith('binding ')) &&
      !/ (back|again|loose|gap|where) /.test(all)
    )
      return 'bind';
    // "cut the binding strips and sewed them together"
    if (
      thing !== 'seam' &&
      /^ (?:(?:(?:them|those|these|'em|em) (?:all |both )?together)|(?:(?:them|those|these|'em|em) )?(?:all |both )?(?:end to end|into (?:one|a) (?:long )?(?:strip|length|piece|run))) /.test(
        after,
      )
    )
      return 'piece';
    return 'resew';
  }
  if (v === 'stabilize' && !done && /^(back|backs)$/.test(w))
    return (/^ (it|them|that|those|these|row|block|with|the) /.test(after) || items[k + 1]?.place) &&
      !/^(the|it|that|sewed|sewn|stitched|put|to|at|on|off|from)$/.test(
        items[k - 1]?.w === 'to' && / (to|'ll|will|could|might|should|i) $/.test(before)
          ? ''
          : (items[k - 1]?.w ?? ''),
      )
      ? 'stabilize'
      : undefined;
  // "mounted 2-4 on a piece of muslin"; a quilt is mounted for the wall too
  if (v === 'stabilize' && w.startsWith('mount'))
    return / (on|onto|to) /.test(after) && items.slice(k + 1, k + 9).some(isCloth) ? v : undefined;
  // "lined 2-3 with lawn", "going to line row one"; "lined up", and a line of stitching is a thing
  if (v === 'stabilize' && /^(lined|relined)$/.test(w)) return /^ (up|paper) /.test(after) ? undefined : v;
  if (v === 'stabilize' && !done && /^(line|lines|reline|relines)$/.test(w))
    return (items[k + 1]?.place || /^ (it|them|that|those|these|both|all|the) /.test(after)) &&
      / (to|will|'ll|i|gonna|could|might|should|must|and|or|then) $/.test(before)
      ? v
      : undefined;
  if (v === 'stabilize' && !done && /^(backing|lining|relining)$/.test(w))
    return (/ (bother|bothering|start|started|keep) $/.test(before) && items[k + 1]?.place) ||
      // "2-1 and 2-2 need backing with muslin"
      (/ (needs?|wants?|could do with) $/.test(before) &&
        items.slice(0, k).some((x) => x.place?.kind === 'blocks')) ||
      // "lining 2-3 with muslin now"
      (w !== 'backing' && items[k + 1]?.place?.kind === 'blocks')
      ? 'stabilize'
      : undefined;
  // "net" is mostly the thing; "net 3-1", "will net both", "I might net or leave it" the deed
  if (
    v === 'overlay' &&
    !done &&
    (w === 'net' || w === 'nets') &&
    !/^(might|could|may|will|'ll|to|should|would|'d|shall|must|n't)$/.test(items[k - 1]?.w ?? '') &&
    !items[k + 1]?.place
  )
    return undefined;
  if (
    v === 'replace' &&
    items
      .slice(k + 1, k + 5)
      .some(
        (x) => x.object === 'ties' || (x.finding === 'broken-stitching' && /\b(ties?|knots?)\b/.test(x.w)),
      )
  )
    return 'tie';
  if (v === 'replace' && items.slice(k + 1, k + 5).some((x) => x.object === 'quilting')) return 'quilt';
  if (v === 'replace' && items.slice(k + 1, k + 5).some((x) => x.object === 'stitching' && !x.seam))
    return 'resew';
  if (v === 'cut') {
    if (/^cut out$/.test(w)) return 'cut';
    if (/ (down on|off the (phone|power)|my (finger|thumb|hand)|short|it fine) /.test(after))
      return undefined;
    return 'cut';
  }
  if (v === 'baste' && !done && /^pins?$/.test(w) && !/^ (it|the|them|that)/.test(after)) return undefined;
  // "tacked down the loose corner with whip stitches": sewn for good
  if (
    v === 'baste' &&
    w.startsWith('tack') &&
    / down /.test(after) &&
    items.some(
      (x) =>
        x.finding ||
        x.fail ||
        /^(whipstitch|herringbone|couching|blanket|ladder|backstitch)$/.test(x.stitch ?? ''),
    ) &&
    !items.some((x) => isNet(x) || x.part === 'batting')
  )
    return 'resew';
  if (
    v === 'baste' &&
    !done &&
    w === 'tacking' &&
    !/ (is|'m|am|was|started|now) $/.test(before) &&
    // "tacking it from the middle out"
    !/^ (it|them|the|down|all) /.test(after)
  )
    return undefined;
  if (v === 'piece' && (w === 'piece' || w === 'pieces'))
    return / (to|will|'ll|gonna) $/.test(before) ||
      /^ (it|the|them|that|new|fresh|a new|borders?) /.test(after) ||
      // "the strips took an hour to piece", with its "to" dropped
      items[k]!.action!.form === 'past'
      ? 'piece'
      : undefined;
  if (v === 'piece' && / (in|into) /.test(after) && !/\b(border|strips?|together|end to end)\b/.test(all))
    return 'replace';
  if (v === 'square-up' && w.includes(' ')) return v;
  if (v === 'square-up')
    return / (up|it|off|the|them) /.test(after) ? 'square-up' : w === 'squared' ? 'square-up' : undefined;
  if (v === 'dry' && (w === 'air' || w === 'airing'))
    return / (dry|it|the quilt|out|outside) /.test(after) || w === 'airing' ? 'dry' : undefined;
  if (v === 'dry' && w === 'dry')
    return / (to|will|'ll|and|it 's|is|'s|flat|all|bone|finally) $/.test(before) ||
      // "backing dry & pressed"
      (items[k - 1]?.part !== undefined && /^ (?:and |& |, |now |$)/.test(after)) ||
      /^ (it|the|now|as a bone|$)/.test(after) ||
      items.length <= 2
      ? 'dry'
      : undefined;
  if (
    v === 'photograph' &&
    (w === 'snap' || w === 'snapped') &&
    !/\b(photo|picture|camera)\b/.test(all) &&
    /\b(thread|needle|ties?|stitch)\b/.test(all)
  )
    return undefined;
  if (
    v === 'photograph' &&
    (w === 'snaps' || w === 'photo' || w === 'photos' || w === 'picture' || w === 'pictures')
  )
    return /^ (of|it|the)/.test(after) ||
      picturesOf(items, k) ||
      // "photo 2-4 tomorrow"
      items[k + 1]?.place?.kind === 'blocks' ||
      // "photo front + back"
      (w === 'photo' && items[k + 1]?.place !== undefined) ||
      / (to|'ll|will) $/.test(before)
      ? 'photograph'
      : undefined;
  if (v === 'clean' && w === 'clean' && items[k + 1]?.finding) return undefined;
  if (v === 'clean' && w === 'dust' && !done && !/ (to|will|'ll) $/.test(before)) return undefined;
  if (v === 'clean' && w === 'clean' && / (is|'s|was|came|come|are|looks?|up) $/.test(before))
    return undefined;
  if (v === 'clean' && w === 'cleaned' && / (machine) /.test(after)) return undefined;
  // "pressed for time", "bound to rain", "tied up with the phone"
  if (v === 'wash' && /^in the /.test(w))
    return (/ (is|'s|are|'re|now|went|put it|got it) $/.test(before) ||
      / (or|maybe|whole|it|either) /.test(all)) &&
      !items.some(
        (x, m) => m !== k && (x.action?.v === 'wash' || x.action?.v === 'dry' || x.action?.v === 'clean'),
      )
      ? 'wash'
      : undefined;
  // "ask Joan about washing": to be talked of
  if (
    / about (the |its |any )?$/.test(before) &&
    / (ask|asked|asking|check|speak|talk|tell|email|ring|call|write|phone) /.test(all)
  )
    return undefined;
  if (v === 'press' && /^ (for|ahead) /.test(after)) return undefined;
  if (v === 'bind' && w === 'bound' && /^ to (?!the|it|that)/.test(after)) return undefined;
  if (
    v === 'tie' &&
    /^ up (with|in|on|all|at|doing) /.test(after) &&
    !items.some((x) => x.place?.kind === 'blocks')
  )
    return undefined;
  if (v === 'press' && !done && (/ (iron on|on) $/.test(before) || /^ (on|onto) /.test(after)))
    return undefined;
  if (v === 'label' && items[k]!.w === 'label')
    return / (to|will|'ll|must|gonna) $/.test(before) || /^ (it|the)/.test(after) ? 'label' : undefined;
  if (v === 'bind' && w === 'binding') return 'bind';
  if (v === 'measure' && /^ (cup|tape)/.test(after)) return undefined;
  // "the sides measure the same": what the piece comes to, and nobody's deed ("it measures 62" opens no clause at all)
  if (
    v === 'measure' &&
    w === 'measure' &&
    / (they|both|all|sides|edges|blocks|strips|borders|diagonals|corners) $/.test(before)
  )
    return undefined;
  if (v === 'trim' && /\bsquare\b/.test(after)) return 'square-up';
  // "trimmed the threads"
  if (
    v === 'trim' &&
    (/^ (off )?(the |all |my |loose |stray )*(threads?|ends|tails|thread ends|ties) /.test(after) ||
      // "tails trimmed to three quarters of an inch"
      / (?:ends|tails|ties) (?:are |were |all )*$/.test(before))
  )
    return undefined;
  return v;
}
