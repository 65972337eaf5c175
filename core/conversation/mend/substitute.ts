import type { Entry } from '../../../shared/entry.ts';
import type { MaterialUnit } from '../../../shared/vocabulary.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { findGood } from '../../rules/materials/find-good.ts';
import { unique } from '../../rules/places/grid.ts';
import { PUT_OFF } from '../../rules/treatments/leave-as-found.ts';
import { placesOf, type Standing } from '../standing.ts';
import { describes, named, samePlaces, sameUse, sensed, sharesPlace } from './items.ts';
import { change, type Work } from './mending.ts';

/** "sorry, it was the calico", "scratch that, cotton lawn": another stuff of the same sort in the place of the one told. */
export function swapStuff(work: Work, items: Item[]): void {
  if (
    work.cue === 'none' ||
    (work.cue === 'weak' &&
      !(items.length <= 8 && (/ (?:was|were|is|'s) (?!now)/.test(work.words) || isBareCloth(items))))
  )
    return;
  const materials = work.standing.filter(({ was }) => was.kind === 'material');
  if (!materials.length) return;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if ((!x.material && !x.fabric) || work.used.has(x) || work.wrong.has(x) || x.stitch) continue;
    const good = findGood(items, k, true);
    // "blue thread": the word that tells it from other threads stands before
    let from = good?.from ?? k;
    while (from > 0 && k - from < 3 && describes(items[from - 1]!)) from--;
    const own = items.slice(from, good?.next ?? k + 1);
    if (good) k = Math.max(k, good.next - 1);
    if (own.some((y) => work.used.has(y) || work.wrong.has(y))) continue;
    const material = good?.material ?? x.material ?? 'fabric';
    const like = materials.filter(
      ({ draft: { entry: e } }) => e.kind === 'material' && sameUse(e.material, material),
    );
    const said = (s: Standing): boolean => own.some((y) => named(s.was, y) && (y.fabric || like.length > 1));
    const target = like.length === 1 ? like[0]! : undefined;
    if (target?.was.kind !== 'material' || said(target)) continue;
    const words = own.filter(
      (y) => y.token.kind === 'word' && !/^(the|a|an|some|of|my|that|it|was)$/.test(y.w),
    );
    const name = x.fabric?.full ? x.fabric.names[0]! : words.map((y) => y.w).join(' ');
    const old = target.was.name;
    if (!name || name === old || old?.split(' ').includes(name)) continue;
    change(work, target, 'name', name, 'material', own);
    if (target.was.material !== 'backing' && material !== 'fabric')
      change(work, target, 'material', material, 'material', own);
    for (const s of work.standing)
      if (
        s.draft.entry.kind === 'treatment' &&
        s.draft.entry.fabric !== undefined &&
        s.draft.entry.fabric === old
      )
        change(work, s, 'fabric', name, 'material', own);
  }
}

/** "no, brown calico", "oops, the calico": nothing but a cloth behind the word that mends. */
const isBareCloth = (items: Item[]): boolean =>
  items.some((x) => x.fabric) && items.every((x) => x.fabric || MENDS.test(x.w));
const MENDS =
  /^(?:no|nope|oh|ah|um|er|well|sorry|wait|oops|whoops|actually|hang on|hold on|hang|hold|on|in|the|with|,|-|\.|!)$/;

/** Places said to be wrong with none put in their stead: "not 4-3". */
export function leftOver(work: Work, items: Item[]): void {
  const wrongItemsLeft = [...work.wrong].filter((x) => x.place?.places.length && !work.used.has(x));
  if (!wrongItemsLeft.length || !items.length) return;
  const gone = unique(wrongItemsLeft.flatMap((x) => x.place!.places));
  for (const s of work.standing) {
    const now = placesOf(s.draft.entry);
    const kept = now.filter((p) => !gone.includes(p));
    if (kept.length && kept.length < now.length) change(work, s, 'places', kept, 'place', wrongItemsLeft);
  }
}

/** Another finding, treatment, stuff, cloth or task in the place of the one that was wrong. */
export function substitute(work: Work, items: Item[]): void {
  const right = items.filter((x) => !work.wrong.has(x) && !work.used.has(x));
  const denies = (test: (x: Item) => boolean): boolean => [...work.wrong].some(test);
  const { standing } = work;
  const findings = standing.filter(({ was }) => was.kind === 'condition');
  for (const d of work.state.drafts) {
    if (work.told.has(d)) continue;
    const e = d.entry;
    if (e.kind === 'condition') {
      const from = d.origins['finding'];
      const own = right.filter(
        (x) => x.finding === e.finding && from && x.token.from >= from.from && x.token.from < from.to,
      );
      if (!own.length || findings.some(({ was }) => was.kind === 'condition' && was.finding === e.finding))
        continue;
      const target =
        findings.find(({ was }) => was.kind === 'condition' && denies((x) => x.finding === was.finding)) ??
        (findings.length === 1 &&
        work.cue !== 'none' &&
        (d.placed !== 'said' || samePlaces(findings[0]!, e)) &&
        (work.cue === 'strong' || e.finding !== 'sound')
          ? findings[0]
          : findings
              .filter(
                (s) =>
                  d.placed === 'said' && (work.cue === 'strong' ? sharesPlace(s.was, e) : samePlaces(s, e)),
              )
              .at(-1));
      if (target && work.cue !== 'none') change(work, target, 'finding', e.finding, 'finding', own);
    } else if (e.kind === 'treatment' && e.action) swapTreatment(work, d, right, denies);
    else if (e.kind === 'material' && e.material) {
      const own = right.filter((x) => x.material || x.fabric || x.part);
      const materials = standing.filter(({ was }) => was.kind === 'material');
      if (!own.length || e.quantity !== undefined) continue;
      swapMaterial(work, e, own, materials, denies);
    }
  }
  const stuff = right.filter((x) => x.material && !x.fabric && !work.used.has(x));
  const materials = standing.filter(({ was }) => was.kind === 'material');
  if (stuff.length && denies((x) => x.material !== undefined))
    swapMaterial(
      work,
      { kind: 'material', use: 'used', material: stuff[0]!.material!, name: stuff.map((x) => x.w).join(' ') },
      stuff,
      materials,
      denies,
    );
  swapUnits(work, items);
  swapNames(work, items, materials);
  if (!swapObject(work, right)) swapDeed(work, right);
  swapCloth(work, right, denies);
  const task = right.find((x) => x.task && !work.used.has(x));
  const works = standing.filter(({ was }) => was.kind === 'work');
  if (
    task &&
    works.length &&
    denies((x) => x.task !== undefined && works.some(({ was }) => was.kind === 'work' && was.task === x.task))
  )
    for (const s of works) change(work, s, 'task', task.task, 'task', [task]);
}

function swapTreatment(
  work: Work,
  d: Draft,
  right: Item[],
  denies: (test: (x: Item) => boolean) => boolean,
): void {
  const e = d.entry;
  if (e.kind !== 'treatment') return;
  if (swapObject(work, right)) return;
  const from = d.origins['action'];
  const own = right.filter((x) => from && x.token.from >= from.from && x.token.from < from.to);
  const treatments = work.standing.filter(({ draft }) => draft.entry.kind === 'treatment');
  const same = treatments.filter(
    ({ was }) =>
      was.kind === 'treatment' && was.action === e.action && (!e.object || was.object === e.object),
  );
  if (same.length) {
    // the same deed, in another state: "that's only planned"
    const target = same.length === 1 ? same[0]! : same.find(({ was }) => sharesPlace(was, e));
    if (
      target?.was.kind === 'treatment' &&
      target.was.state !== e.state &&
      work.cue === 'strong' &&
      / (not yet|n't yet|still|only|planned|to do|going to|will|tomorrow|already|done|maybe|thinking|considering|yet) /.test(
        work.words,
      ) &&
      (d.placed !== 'said' || sharesPlace(target.was, e))
    )
      change(work, target, 'state', e.state, 'state', own);
    for (const x of own) work.used.add(x);
    return;
  }
  if (!own.length || work.cue === 'none') return;
  const about = treatments.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      ((was.object !== undefined && placesOf(e).includes(was.object)) ||
        (d.placed === 'said' && sharesPlace(was, e))),
  );
  const target =
    treatments.find(({ was }) => was.kind === 'treatment' && denies((x) => x.action?.v === was.action)) ??
    (about.length === 1 ? about[0] : undefined) ??
    (treatments.length === 1 &&
    (work.cue === 'strong' ||
      (d.placed !== 'said' && (work.standing.length <= 2 || deniesDeed(work, treatments[0]!))))
      ? treatments[0]
      : undefined);
  if (!target) return;
  change(work, target, 'action', e.action, 'action', own);
  // "a patch, not a darn", of a plan: the noun does not say that it is done
  const bare = e.state === 'done' && !own.some((x) => x.action?.form === 'past') && e.action !== 'leave';
  const stood = target.was.kind === 'treatment' && target.was.state === 'done';
  if (!bare && !(stood && SHOULD_BE.test(work.words))) change(work, target, 'state', e.state, 'state', own);
  if (e.object || (target.was.kind === 'treatment' && target.was.object))
    change(work, target, 'object', e.object, 'action', own);
  if (e.stitch) change(work, target, 'stitch', e.stitch, 'stitch', own);
  if (e.fabric) change(work, target, 'fabric', e.fabric, 'action', own);
  if (d.placed === 'said' && placesOf(e).length && !about.length)
    change(work, target, 'places', placesOf(e), 'place', own);
}

/** "that should be patched", where it was told as darned: the word was wrong, and the work is done all the same. */
const SHOULD_BE =
  /^ (?:(?:no|oh|sorry|wait|oops|well|actually|and|,) )*(?:(?:that|it|this) )?should (?:be|have been|read|say) (?:a |an )?\S+(?: [.!])* $/;

/** "quilting, I mean, not ties": another thing was taken off. */
function swapObject(work: Work, right: Item[]): boolean {
  const gone = [...work.wrong].find((x) => x.object);
  const thing = right.find((x) => x.object && x.object !== gone?.object);
  const s = work.standing.find(
    ({ was }) => was.kind === 'treatment' && was.action === 'remove' && was.object === gone?.object,
  );
  if (!gone || !thing || !s) return false;
  change(work, s, 'object', thing.object, 'object', [thing]);
  return true;
}

/** "I didn't patch it, I darned it": the deed that stands is denied in words of its own. */
function deniesDeed(work: Work, s: Standing): boolean {
  const items = work.state.clauses.flatMap((c) => c.items);
  return items.some(
    (x, k) =>
      x.action !== undefined &&
      s.was.kind === 'treatment' &&
      x.action.v === s.was.action &&
      items.slice(Math.max(0, k - 3), k).some((y) => /^(not|n't|never)$/.test(y.w)),
  );
}

function swapMaterial(
  work: Work,
  e: Extract<Entry, { kind: 'material' }>,
  own: Item[],
  materials: Standing[],
  denies: (test: (x: Item) => boolean) => boolean,
): void {
  const target =
    materials.find(
      ({ was }) =>
        was.kind === 'material' &&
        denies((x) => named(was, x) || (x.material !== undefined && x.material === was.material)),
    ) ??
    (materials.length === 1 && work.cue === 'strong' && !own.some((x) => named(materials[0]!.was, x))
      ? materials[0]
      : undefined);
  if (target?.was.kind !== 'material' || own.every((x) => work.used.has(x))) return;
  if (target.was.material === e.material && target.was.name === e.name) return;
  change(
    work,
    target,
    'material',
    staysAs(target.was.material, e.material, own) ? target.was.material : e.material,
    'material',
    own,
  );
  if (e.name) change(work, target, 'name', e.name, 'material', own);
}

/** "did I say hair silk? it was plain cotton": of another stuff, and a thread all the same. */
const staysAs = (was: string | undefined, now: string | undefined, own: Item[]): boolean =>
  was === 'backing'
    ? now === 'fabric'
    : /^(?:thread|tie-thread|binding|batting)$/.test(was ?? '') &&
      now === 'fabric' &&
      own.every((x) => !x.fabric && FIBRES.test(x.w));
const FIBRES =
  /^(?:(?:plain|ordinary|old|just|the|a|some|my|only|best|white|black|cream|ecru|red|blue|green|grey|gray|brown|unbleached|waxed|glazed|mercerised|mercerized|buttonhole|cotton|silk|linen|wool|woollen|polyester|nylon|rayon|viscose|hemp|perle|pearl|crewel) ?)+$/;

const LENGTHS = new Set<string>(['yd', 'in', 'ft', 'm', 'cm', 'mm']);

/** "metres, not yards". */
function swapUnits(work: Work, items: Item[]): void {
  const unitOf = (x: Item): MaterialUnit | undefined =>
    x.token.kind === 'word' && x.w.length > 1 && Object.hasOwn(UNIT_WORDS, x.w) ? UNIT_WORDS[x.w] : undefined;
  // "no, metres", "it should be metres": nothing but the unit, where one alone was told in another of the same sort
  const bare = items.filter((x) => unitOf(x) !== undefined);
  if (
    work.cue !== 'none' &&
    bare.length === 1 &&
    items.every((x) => x === bare[0] || (!sensed(x) && !/^(?:not|n't|more|some|of|any)$/.test(x.w)))
  ) {
    const unit = unitOf(bare[0]!)!;
    const told = work.standing.filter(
      ({ was }) =>
        ((was.kind === 'material' && was.quantity !== undefined) || was.kind === 'measurement') &&
        was.unit !== undefined &&
        LENGTHS.has(was.unit) === LENGTHS.has(unit),
    );
    const [s] = told;
    if (s && told.length === 1 && items.length <= 8) change(work, s, 'unit', unit, 'unit', bare);
    return;
  }
  // "I said yards but it was metres", "did I say yards? I meant metres": the one that was told, and the one that it is
  if (work.cue !== 'none' && bare.length === 2 && items.every((x) => bare.includes(x) || !sensed(x))) {
    const [told, other] = bare.map((x) => unitOf(x)!);
    const holds = (u: MaterialUnit): boolean =>
      work.standing.some(({ was }) => 'unit' in was && was.unit === u);
    const right = holds(told!) && !holds(other!) ? other : holds(other!) && !holds(told!) ? told : undefined;
    if (right && LENGTHS.has(told!) === LENGTHS.has(other!))
      for (const s of work.standing)
        if (
          (s.was.kind === 'material' || s.was.kind === 'measurement') &&
          s.was.unit === (right === other ? told : other)
        )
          change(work, s, 'unit', right, 'unit', bare);
    return;
  }
  for (let k = 0; k < items.length; k++) {
    if (!/^(not|n't|of|than)$/.test(items[k]!.w)) continue;
    const gone = items
      .slice(k + 1, k + 3)
      .map(unitOf)
      .find((u) => u !== undefined);
    const right = items.find((x, m) => (m < k || m > k + 2) && unitOf(x) !== undefined && unitOf(x) !== gone);
    if (!gone || !right) continue;
    for (const s of work.standing)
      if ((s.was.kind === 'material' || s.was.kind === 'measurement') && s.was.unit === gone)
        change(work, s, 'unit', unitOf(right), 'unit', [right]);
  }
}

/** "grey thread, not cream": the same stuff by another name. */
function swapNames(work: Work, items: Item[], materials: Standing[]): void {
  for (const s of materials) {
    const e = s.was;
    if (e.kind !== 'material' || e.name === undefined) continue;
    const gone = [...work.wrong].filter((x) => named(e, x) && !x.material);
    const stuff = items.findIndex((x) => !work.wrong.has(x) && x.material === e.material);
    if (!gone.length || stuff < 1) continue;
    const before = items[stuff - 1]!;
    if (before.token.kind !== 'word' || /^(the|a|an|some|of|was|is|that|my)$/.test(before.w)) continue;
    change(work, s, 'name', `${before.w} ${items[stuff]!.w}`, 'material', [before, items[stuff]!]);
  }
}

/** "no, that was a darn": a deed named by its noun. */
function swapDeed(work: Work, right: Item[]): void {
  const treatments = work.standing.filter(({ was }) => was.kind === 'treatment');
  const only = treatments[0];
  const stands = only?.was.kind === 'treatment' ? only.was.action : undefined;
  // "a darn, not a patch" may have told the patch again, as the one that it was not
  if (
    work.cue === 'none' ||
    work.state.drafts.some(
      ({ entry: e }) => e.kind === 'treatment' && e.action && (work.cue !== 'strong' || e.action !== stands),
    )
  )
    return;
  const deeds = right.filter((x) => x.action && x.w !== 'back' && !x.part && !x.stitch && !work.used.has(x));
  const deed = (work.cue === 'strong' && deeds.find((x) => x.action!.v !== stands)) || deeds[0];
  if (
    !deed ||
    treatments.length !== 1 ||
    only?.was.kind !== 'treatment' ||
    only.was.action === deed.action!.v
  )
    return;
  // "actually leave that one till the weekend": put off, and not left as it is
  if (deed.action!.v === 'leave' && PUT_OFF.test(work.words)) {
    change(work, only, 'state', 'planned', 'put-off', [deed]);
    work.changed = true;
  } else change(work, only, 'action', deed.action!.v, 'action', [deed]);
}

/** "the claret, not the gold": the cloth put in, or the cloth that has the damage, with its blocks. */
function swapCloth(work: Work, right: Item[], denies: (test: (x: Item) => boolean) => boolean): void {
  const cloth = right.find((x) => x.fabric?.names.length === 1);
  if (!cloth || work.cue === 'none') return;
  const name = cloth.fabric!.names[0]!;
  const { blocks } = work.state.fabrics;
  for (const s of work.standing) {
    const e = s.was;
    const old =
      e.kind === 'material'
        ? e.name
        : e.kind === 'condition' || e.kind === 'treatment'
          ? e.fabric
          : undefined;
    if (old === undefined || old === name || !Object.hasOwn(blocks, old)) continue;
    if (work.cue !== 'strong' && !denies((x) => Boolean(x.fabric?.names.includes(old)))) continue;
    change(work, s, e.kind === 'material' ? 'name' : 'fabric', name, 'fabric', [cloth]);
    const theirs = blocks[old]!;
    if (
      e.kind === 'condition' &&
      placesOf(e).length === theirs.length &&
      theirs.every((p) => placesOf(e).includes(p))
    )
      change(work, s, 'places', [...(blocks[name] ?? [])], 'fabric', [cloth]);
  }
}
