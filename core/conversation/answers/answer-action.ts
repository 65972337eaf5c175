import type { Action, Material } from '../../../shared/vocabulary.ts';
import type { Draft } from '../../rules/draft.ts';
import { joinAmounts } from '../../rules/materials/join-amounts.ts';
import { splitBlock } from '../../rules/places/grid.ts';
import { TAKES_STITCH } from '../../rules/treatments/stitch-of.ts';
import { POINTERS, sensed } from '../mend/items.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { type Answering, SMALL } from './answering.ts';

/** Deeds that lay something on, whose edge is sewn down. */
const LAID_ON = new Set<string>(['overlay', 'patch', 'stabilize', 'replace']);

/** What was done: the treatment whose deed was asked for, and what else it turns out to have been. */
export function answerAction(a: Answering): boolean {
  const k = a.standing.findIndex(({ draft: { entry: e } }) => e.kind === 'treatment' && !e.action);
  if (k < 0) return false;
  const open = a.standing[k]!.draft;
  if (open.entry.kind !== 'treatment') return false;
  const where = placesOf(open.entry);
  // "tied them, with red yarn. Used two skeins": one yarn, told of in two sentences
  joinAmounts(a.state);
  const told = deedsOf(a, open);
  if (!told.length) return false;
  const pointsOnly =
    // "whipstitched the seam shut", where the seam last spoken of was another
    a.items.some((x) => POINTERS.has(x.place?.rule ?? '') || x.seam) &&
    !a.items.some((x) => x.place?.kind === 'blocks' && x.place.how === 'said');
  const elsewhere = (d: Draft): boolean =>
    // "3-3 is torn so I darned it": the damage that the note itself tells
    (d.placed === 'carried' && ofDamageToldFirst(a, d, where)) ||
    (d.placed === 'said' &&
      // "took the old patch off it", where the old patch last spoken of was another
      !pointsOnly &&
      placesOf(d.entry).some(
        (p) =>
          splitBlock(p) !== undefined ||
          (d.entry.kind === 'treatment' &&
            p !== 'quilt' &&
            (d.entry.object !== undefined || ON_PARTS.has(d.entry.action ?? ''))),
      ) &&
      !placesOf(d.entry).some((p) => where.includes(p)));
  // "I fixed 5-3": another block, and again it is not said how
  const unsaid = a.state.drafts.some((d) => d.entry.kind === 'treatment' && !d.entry.action && elsewhere(d));
  if (told.every(elsewhere) || unsaid) return false;
  if (where.every((p) => splitBlock(p) !== undefined) && isOfTheWhole(a, told)) return false;
  const toDo = isStillToDo(a, open);
  const cloth = toDo ? withoutUsed(a) : undefined;
  const made: Standing[] = [];
  for (const d of told) {
    if (d.entry.kind !== 'treatment') continue;
    a.taken.add(d);
    if (elsewhere(d)) {
      made.push({ draft: d, was: d.entry });
      continue;
    }
    // an edging stitch of an overlay or a patch is no deed of its own
    const main = made.find((s) => s.draft.entry.kind === 'treatment');
    if (
      main?.draft.entry.kind === 'treatment' &&
      d.entry.action === 'resew' &&
      d.entry.stitch &&
      !main.draft.entry.stitch &&
      main.draft.entry.action !== 'resew'
    ) {
      put(main.draft, 'stitch', d.entry.stitch, 'answer.action', []);
      main.draft.origins['stitch'] = d.origins['stitch'] ?? main.draft.origins['stitch']!;
      continue;
    }
    const own = placesOf(d.entry).filter((p) => splitBlock(p) !== undefined && where.includes(p));
    // "sewed up the seam between it and two two", "darned it and the one next to it"
    const joined =
      own.length > 0 &&
      d.placed === 'said' &&
      ((d.entry.action === 'resew' && a.items.some((x) => x.seam)) ||
        (own.length === where.length && IT_AND_MORE.test(a.words)));
    put(
      d,
      'places',
      joined ? [...placesOf(d.entry)] : own.length && d.placed === 'said' ? own : [...where],
      'place.asked',
      [],
    );
    const e = d.entry as Record<string, unknown>;
    if (
      d.entry.state !== 'done' &&
      open.entry.state === 'done' &&
      !/ (will|going to|to be|next|tomorrow|yet) /.test(a.words)
    )
      e['state'] = 'done';
    if (toDo && /^(?:done|doing)$/.test(d.entry.state)) e['state'] = 'planned';
    if (cloth && LAID_ON.has(d.entry.action ?? '') && !d.entry.fabric)
      put(d, 'fabric', cloth, 'answer.action', []);
    if (open.entry.minutes && !d.entry.minutes) e['minutes'] = open.entry.minutes;
    // "did 2-3 by hand", and then "darned it"
    if (open.entry.stitch && !d.entry.stitch && d.entry.action && TAKES_STITCH.has(d.entry.action))
      e['stitch'] = open.entry.stitch;
    made.push({ draft: d, was: d.entry });
  }
  // an edging told as a deed of its own before the one it belongs to: "whipstitched net over them"
  const edge = made.findIndex(
    ({ draft: { entry: e } }) => e.kind === 'treatment' && e.action === 'resew' && e.stitch,
  );
  const main = made.find(({ draft: { entry: e } }) => e.kind === 'treatment' && LAID_ON.has(e.action ?? ''));
  if (edge >= 0 && main?.draft.entry.kind === 'treatment') {
    const { entry, origins } = made[edge]!.draft;
    const { stitch } = main.draft.entry;
    if (entry.kind === 'treatment' && (stitch === undefined || stitch === entry.stitch)) {
      main.draft.entry.stitch = entry.stitch;
      if (origins['stitch']) main.draft.origins['stitch'] = origins['stitch'];
      made.splice(edge, 1);
    }
  }
  a.standing.splice(k, 1, ...made);
  for (const d of a.state.drafts) {
    if (a.taken.has(d)) continue;
    if (d.entry.kind === 'condition' && !placesOf(d.entry).some((p) => splitBlock(p)))
      put(d, 'places', [...where], 'place.asked', []);
    if (d.entry.kind === 'material') {
      a.taken.add(d);
      const at = a.standing.findIndex((s) => made.includes(s));
      a.standing.splice(at + made.length, 0, { draft: d, was: d.entry });
    }
  }
  return true;
}

/** "(2-2 still wants doing.) Patching", "net over it": the deed by its name, which is to come; "patched it just now" is done. */
const isStillToDo = (a: Answering, { entry: e }: Draft): boolean =>
  e.kind === 'treatment' &&
  e.state === 'planned' &&
  !a.items.some((x) => x.action?.form === 'past') &&
  !/ (?:did|done|'ve|have|has|already|now|today|just|am|'m|busy) /.test(` ${a.words} `);

/** What is to be done has used up nothing yet. Gives the name of the cloth that it is to be done with. */
function withoutUsed(a: Answering): string | undefined {
  const used = a.state.drafts.filter(({ entry: e }) => e.kind === 'material' && e.use === 'used');
  for (const d of used) a.taken.add(d);
  const cloth = used.find(({ entry: e }) => e.kind === 'material' && e.material === 'fabric')?.entry;
  return cloth?.kind === 'material' ? cloth.name : undefined;
}

/** What was asked about, in one list with more: each of them has the deed. */
const IT_AND_MORE = / (?:it|that|that one|them|those|both) (?:and|&|\+|plus|along with) /;

/** "pressed the border", where blocks were asked about: what a part is named for as the thing worked on. */
const ON_PARTS = new Set<string>([
  'press',
  'clean',
  'wash',
  'dry',
  'bind',
  'trim',
  'cut',
  'photograph',
  'label',
]);

/** Is the deed done to what the same note found before it, at other blocks? */
const ofDamageToldFirst = (a: Answering, d: Draft, where: string[]): boolean =>
  placesOf(d.entry).length > 0 &&
  a.state.drafts.some(
    (c) =>
      c.entry.kind === 'condition' &&
      c.placed === 'said' &&
      c.clause < d.clause &&
      placesOf(d.entry).every((p) => !where.includes(p) && placesOf(c.entry).includes(p)),
  );

/** Work on the quilt as a whole, which no block is asked about: "layered it and basted it", "washed it, now drying flat". */
const WHOLE = new Set<string>(['layer', 'bind', 'add-border', 'square-up']);
const WATER = new Set<string>(['wash', 'dry']);
const isOfTheWhole = (a: Answering, [first]: Draft[]): boolean =>
  first?.entry.kind === 'treatment' &&
  a.cue !== 'strong' &&
  (WHOLE.has(first.entry.action ?? '') ||
    (WATER.has(first.entry.action ?? '') && !/ (?:them|those|both|'em|they) /.test(a.words)));

/** Stuff that tells by itself what was done with it. */
const DEED_OF_STUFF: Partial<Record<Material, Action>> = { net: 'overlay', interfacing: 'stabilize' };

/**
 * The treatments that answer what was done. Where the clauses gave none, the words are read more freely than in a note of its
 * own, since a deed is what was asked for: "netting over them", "they were darned", "a running stitch".
 */
function deedsOf(a: Answering, open: Draft): Draft[] {
  const drafts = a.state.drafts.filter((d) => d.entry.kind === 'treatment' && d.entry.action);
  const edging = drafts.every((d) => d.entry.kind === 'treatment' && d.entry.action === 'resew');
  const stuff = a.items.find((x) => x.material && DEED_OF_STUFF[x.material]);
  if (drafts.length && !(edging && stuff)) return drafts;
  const verb =
    a.items.find((x) => x.action && x.action.v !== 'resew' && !x.part) ??
    (stuff ? undefined : a.items.find((x) => x.action && !x.part));
  const stitch = a.items.find((x) => x.stitch && !x.weakStitch) ?? a.items.find((x) => x.stitch);
  // a long note that tells of damage or goods answers by the way at most
  if (
    !drafts.length &&
    a.cue !== 'strong' &&
    a.items.length > 14 &&
    a.state.drafts.some((d) => d.entry.kind === 'condition' || d.entry.kind === 'work')
  )
    return drafts;
  const action =
    verb?.action?.v ?? (stuff ? DEED_OF_STUFF[stuff.material!] : undefined) ?? (stitch ? 'resew' : undefined);
  if (!action) return drafts;
  const state = open.entry.kind === 'treatment' ? open.entry.state : 'done';
  const draft: Draft = {
    entry: { kind: 'treatment', action, state, places: [] },
    origins: {},
    placed: 'none',
    clause: 0,
    sentence: 0,
  };
  put(draft, 'action', action, 'answer.action', [verb ?? stuff ?? stitch!]);
  draft.origins['entry'] = draft.origins['action']!;
  if (stitch) put(draft, 'stitch', stitch.stitch, 'answer.action', [stitch]);
  const length = a.items.find((x) => x.duration);
  if (length) put(draft, 'minutes', length.duration!.minutes, 'answer.action', [length]);
  for (const d of drafts) a.taken.add(d);
  for (const x of a.items) {
    if (!x.material || x.object || x.part || x.action === verb?.action) continue;
    // "white silk thread": the cloth's name is part of the thread's
    if (
      x.fabric &&
      a.items.slice(a.items.indexOf(x) + 1, a.items.indexOf(x) + 3).some((y) => y.material && !y.fabric)
    )
      continue;
    if (a.state.drafts.some((d) => d.entry.kind === 'material' && d.entry.material === x.material)) continue;
    const k = a.items.indexOf(x);
    const name = [x.w];
    for (
      let m = k - 1;
      m >= 0 &&
      a.items[m]!.token.kind === 'word' &&
      !SMALL.test(a.items[m]!.w) &&
      (!sensed(a.items[m]!) || a.items[m]!.fabric);
      m--
    )
      name.unshift(a.items[m]!.w);
    const used: Draft = {
      entry: { kind: 'material', material: x.material, use: 'used', name: name.join(' ') },
      origins: {},
      placed: 'unneeded',
      clause: 0,
      sentence: 0,
    };
    put(used, 'material', x.material, 'answer.action', [x]);
    used.origins['entry'] = used.origins['material']!;
    if (name.length > 1 || !a.items.some((y) => y !== x && y.material === x.material))
      a.state.drafts.push(used);
  }
  return [draft];
}
