import type { Action } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import { isAttribute } from '../clause/is-predicate.ts';
import type { Draft } from '../draft.ts';
import { splitBlock } from '../places/grid.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isManner } from './is-manner.ts';
import { isTreatment } from './is-treatment.ts';

/** Sewing that only says how the treatment before was fastened: "a patch …, edges turned under and sewn down by hand". */
const FASTENED = new Set<Action>(['patch', 'overlay', 'stabilize', 'replace', 'bind', 'add-border', 'label']);

/** Sewing that is done to the damage, and fastens no interfacing. */
const SEWS_DAMAGE =
  /(?:^| )(?:over|across|clos(?:ed?|ing)|shut|zigzag(?:g?ed)?|zig-zagged|together|(?:sewed|sewn|stitched) up)(?: |$)/;

/**
 * A verb that goes on with the treatment before it instead of telling a new one: the same action again, how it was
 * fastened, or the cutting out that a replacement begins with.
 */
export function absorbed(state: ReaderState, made: Draft[], draft: Draft, clause: Clause): boolean {
  if (!isTreatment(draft)) return false;
  const before = [...state.drafts, ...made]
    .filter(isTreatment)
    .filter((d) => d.sentence >= draft.sentence - (draft.placed === 'said' ? 0 : 1));
  const e = draft.entry;
  // "laid the net, tacked it first, then couched it down": the couching is of the net
  const last =
    e.action === 'resew' &&
    before.at(-1)?.entry.action === 'baste' &&
    FASTENED.has(before.at(-2)?.entry.action ?? 'tie')
      ? before.at(-2)
      : before.at(-1);
  if (!last) return false;
  // "backstitched 2-2, then 3-3 had come open so I whipped that": other damage was told between
  const between = state.drafts.slice(state.drafts.indexOf(last) + 1);
  if (
    state.drafts.includes(last) &&
    between.some(
      (d) =>
        d.entry.kind === 'condition' &&
        d.placed === 'said' &&
        d.clause > last.clause &&
        d.clause < draft.clause &&
        d.entry.places?.length &&
        !d.entry.places.some((x) => last.entry.places?.includes(x)),
    ) &&
    !(
      draft.placed === 'said' &&
      last.entry.places?.some((x) => draft.entry.kind === 'treatment' && draft.entry.places?.includes(x))
    )
  )
    return false;
  const p = last.entry;
  // "washed the whole thing in the tub": where, and no second wash
  if (
    e.action === 'wash' &&
    p.action === 'wash' &&
    last.sentence === draft.sentence &&
    clause.items.some((x) => /^in the (tub|bath)$/.test(x.w)) &&
    !clause.items.some((x) => x.action?.v === 'wash' && !/^in the /.test(x.w))
  ) {
    // "washed the backing in the bath"
    if (draft.placed === 'said' && e.places?.length) p.places = e.places;
    return true;
  }
  // "patched 1-2 with tweed and whipstitched it down"
  const pointed =
    e.places?.join() === p.places?.join() &&
    clause.items.every(
      (x) => !x.place || /^place\.(it|them|those|both|the-pair|all-of-them|that-one)$/.test(x.place.rule),
    );
  // "5-1 torn: iron-on interfacing behind, zigzagged over", "… and closed by hand": ironed on, and the tear sewn
  const fused =
    p.action === 'stabilize' &&
    e.action === 'resew' &&
    clause.items.some((x) => SEWS_DAMAGE.test(x.w)) &&
    state.clauses[last.clause]?.items.some((x) => x.material === 'interfacing');
  if (fused && !p.stitch) {
    // "… and I sewed that seam in 3-4 shut": another place has its own
    if (!(draft.placed === 'said' && e.places?.some((x) => splitBlock(x)))) e.places = p.places ?? [];
    return false;
  }
  const carried =
    pointed || draft.placed !== 'said' || (last.clause === draft.clause && draft.placed === last.placed);
  if (
    e.action === 'replace' &&
    (p.action === 'cut' || (p.action === 'remove' && p.object === 'piece')) &&
    p.state === e.state &&
    !p.places?.some((x) => x.startsWith('border') || x === 'binding' || x === 'backing')
  ) {
    if (carried && p.places?.length) e.places = p.places;
    const list = made.includes(last) ? made : state.drafts;
    list.splice(list.indexOf(last), 1);
    return false;
  }
  if (ownEdge(last, draft, clause)) {
    if (e.stitch) p.stitch = e.stitch;
    if (draft.origins['stitch']) last.origins['stitch'] = draft.origins['stitch'];
    return true;
  }
  if (!carried) return false;
  // "lined with lawn and herringboned it in": the lining sewn in, and no piece of the top
  if (
    e.action === 'replace' &&
    e.stitch &&
    p.action === 'stabilize' &&
    p.state === e.state &&
    !p.stitch &&
    last.sentence === draft.sentence &&
    clause.items.some((x) => /^(?:it|them|that|those)$/.test(x.w)) &&
    !clause.items.some((x) => /^(?:new|fresh|replacement|piece|pieces|one|ones)$/.test(x.w))
  ) {
    p.stitch = e.stitch;
    if (draft.origins['stitch']) last.origins['stitch'] = draft.origins['stitch'];
    return true;
  }
  // "2-1: patch. 2-2: patch.", "tear: zigzagged. seam: whipped.": each of the place before its own mark
  if (
    state.topic?.sentence === draft.sentence &&
    last.sentence < draft.sentence &&
    e.places?.length &&
    [...e.places].sort().join() !== [...(p.places ?? [])].sort().join()
  )
    return false;
  const loose = clause.items.some(
    (x, k) =>
      // "couched down along the seams": where the stitches run
      (x.seam &&
        !/ (?:along|round|around) (?:the |all the |its )?$/.test(wordsBetween(clause.items, 0, k))) ||
      // "net was laid over the shattered taffeta and secured": which cloth, and no damage told
      (x.finding && x.finding !== 'sound' && !isAttribute(clause.items, k)) ||
      (x.part === 'edge' && !isManner(x, clause.items)) ||
      // "silk sewn in behind it and then stitched it shut": backed, and closed besides
      (p.action === 'stabilize' && SHUT.test(x.w)),
  );
  // "crepeline it is, couched down along the seams": chosen, and put on in the same breath; "3-2 gets silk behind, whipped round":
  // how it is to be
  if (
    e.action === 'resew' &&
    e.stitch &&
    e.state === 'done' &&
    FASTENED.has(p.action!) &&
    p.state === 'planned' &&
    !p.stitch &&
    !loose &&
    last.sentence === draft.sentence &&
    !clause.items.some((x) => /^(i|we|'ve|have|has|'s|now|and)$/.test(x.w))
  ) {
    const said = state.clauses.filter((c) => c.sentence === draft.sentence).flatMap((c) => c.items);
    const chosen = / it (?:is|'s) (?!going|gonna|getting|to )/.test(wordsBetween(said));
    // "net on 2-3, whipped round, forty minutes" is done
    if (chosen || said.some((x) => x.duration)) p.state = 'done';
    else e.state = 'planned';
  }
  // "2-3: net or a patch?", then "net then. Stitched down by hand, 15 min": chosen, and put on at once
  if (p.state === 'planned' && e.state === 'done' && !loose && fastensChosen(state, last, draft, clause)) {
    p.state = 'done';
    if (e.stitch) {
      p.stitch = e.stitch;
      if (draft.origins['stitch']) last.origins['stitch'] = draft.origins['stitch'];
    }
    return true;
  }
  // "new binding on by machine, then turned it over and slip stitched it down"
  if (
    e.action === 'resew' &&
    p.action === 'bind' &&
    e.stitch &&
    p.stitch &&
    e.stitch !== p.stitch &&
    !loose
  ) {
    e.action = 'bind';
    if (p.places) e.places = p.places;
    return false;
  }
  // "either a patch or I sew it up": another way, and not how the first is fastened
  const otherWay =
    e.state === 'considering' &&
    / (?:or|either) /.test(wordsBetween(clause.items)) &&
    clause.items.findIndex((x) => x.w === 'or') > 0 &&
    clause.items.findIndex((x) => x.w === 'or') <
      clause.items.findIndex((x) => x.action?.v === 'resew' && !x.seam);
  const goesOn =
    (e.action === p.action && e.action !== 'remove') ||
    (e.action === 'resew' && FASTENED.has(p.action!) && !loose && !otherWay) ||
    (e.action === 'stabilize' &&
      p.action === 'patch' &&
      clause.items.some((x) => /^fus(ed|ing|e)$/.test(x.w))) ||
    (e.action === 'piece' && p.action === 'replace');
  // "stitched up, couching in a fine silk thread": the stitch that it was done in
  if (
    goesOn &&
    e.action === 'resew' &&
    e.state === 'doing' &&
    p.state === 'done' &&
    e.stitch &&
    (!p.stitch || p.stitch === e.stitch) &&
    last.sentence === draft.sentence &&
    !clause.items.some((x) => /^(now|still|currently|am|'m)$/.test(x.w))
  )
    e.state = 'done';
  if (!goesOn || e.state !== p.state) return false;
  // "zigzagged over the tear and whipstitched the seam": one thing closed in one stitch, another in another
  if (
    e.stitch &&
    p.stitch &&
    e.stitch !== p.stitch &&
    (e.action !== p.action || e.action === 'bind' || loose)
  )
    return false;
  if (e.stitch) {
    p.stitch = e.stitch;
    if (draft.origins['stitch']) last.origins['stitch'] = draft.origins['stitch'];
  }
  return true;
}

/** Does the sewing of this clause put on what the note has just chosen of two ways that stood open? */
function fastensChosen(state: ReaderState, last: Draft, draft: Draft, { items }: Clause): boolean {
  const [p, e] = [last.entry, draft.entry];
  if (p.kind !== 'treatment' || e.kind !== 'treatment' || !p.action || p.stitch) return false;
  if (!/^(?:patch|overlay|stabilize|replace)$/.test(p.action)) return false;
  const open = state.memory.open.some(
    (o) => !o.passed && o.action === p.action && o.places.some((x) => p.places?.includes(x)),
  );
  const verb = items.findIndex((x) => x.action?.form === 'past' || x.stitch);
  const it = items.some((x) => /^(?:it|them|that)$/.test(x.w));
  return (
    open &&
    draft.sentence - last.sentence < 2 &&
    (e.action === 'resew' || (e.action === 'replace' && it && e.stitch !== undefined)) &&
    verb >= 0 &&
    items.slice(0, verb).every((x) => /^(?:and|then|so|now|,|i|we|'ve|have|all|it|is|'s|[.;])$/.test(x.w)) &&
    !items.some(
      (x) => x.finding || x.object || (x.place && !/^place\.(?:it|them|that-one)$/.test(x.place.rule)),
    )
  );
}

const SHUT = /^(?:shut|closed|close|together|up|drew together|drawn together|sew(?:ed|n) up|stitched up)$/;

/** "patch over a hole in 4-2, edge blanket-stitched": the edge of what was just put on, and not that of the quilt. */
const ownEdge = (last: Draft, draft: Draft, { items }: Clause): boolean =>
  isTreatment(last) &&
  isTreatment(draft) &&
  last.sentence === draft.sentence &&
  draft.entry.action === 'resew' &&
  (draft.entry.stitch !== undefined || items.some((x) => /^(?:down|under)$/.test(x.w))) &&
  (!last.entry.stitch || last.entry.stitch === draft.entry.stitch) &&
  /^(?:patch|overlay|stabilize|replace)$/.test(last.entry.action ?? '') &&
  draft.entry.state === last.entry.state &&
  (draft.entry.places?.join() === 'edge' ||
    (items.some((x) => x.part === 'edge') && draft.entry.places?.join() === last.entry.places?.join())) &&
  last.entry.places?.length !== 0 &&
  !last.entry.places?.some((x) => /^(?:edge|quilt|border|binding)/.test(x)) &&
  !items.some(
    (x) => x.w !== 'edge' && /^(?:quilt|frayed|binding|outer|whole|all|top|bottom|left|right)$/.test(x.w),
  ) &&
  !items.some((x) => x.finding !== undefined || x.seam);
