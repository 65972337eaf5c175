import type { Action } from '../../../shared/vocabulary.ts';
import type { ClauseView } from '../clause-view.ts';
import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import { mentionsOf } from '../mentions-of.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from '../treatments/is-treatment.ts';
import { isVerdictIt } from '../treatments/verdict-it.ts';
import type { Way } from '../treatments/way.ts';
import { WHOLE_QUILT } from '../treatments/whole-quilt.ts';
import { wordsBetween } from '../words-between.ts';
import { splitBlock } from './grid.ts';
import { type ClausePlaces, holdsMoreThan, placesOfClause } from './places-of-clause.ts';
import { namesAnother } from './spoken-of.ts';

/** Places that the clause does not say: those of this sentence, of the damage pointed at, or of "it". */
export function carriedPlaces(
  state: ReaderState,
  v: ClauseView,
  way: Way | undefined,
  placed: ClausePlaces,
): string[] | undefined {
  const { items } = v;
  const action = way?.action;
  if (placed.outside || placed.unknown) return undefined;
  // "there was a hole where a spark fell, and that's patched now": where the hole is, nobody has said
  const told = state.drafts.at(-1);
  if (
    told?.entry.kind === 'condition' &&
    told.placed === 'none' &&
    !told.outside &&
    told.sentence === v.sentence &&
    !told.entry.places?.length &&
    placed.items.every((x) => /^place\.(it|that-one)$/.test(x.place!.rule))
  )
    return undefined;
  // "a stain in 2-9, cleaned it", where there is no 2-9: it is done where the stain is, wherever that be
  if (sinceOutside(state) && (placed.kind === 'none' || placed.kind === 'pronoun')) return undefined;
  const lastInNote = [...state.drafts]
    .reverse()
    .find(
      (d) =>
        (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
        (d.entry as { places?: string[] }).places?.length,
    );
  const lastPlaces = (lastInNote?.entry as { places?: string[] } | undefined)?.places;
  // "binding worn down the right side. Loose bit on the left side, to be sewn back": of what the sentence has just named
  const named = lastInNote && lastInNote.sentence !== v.sentence ? justNamed(state, v) : undefined;
  if (named && way && (placed.kind === 'none' || placed.items.every((x) => x.place!.rule === 'place.it')))
    return named;
  const pronoun = placed.kind === 'pronoun';
  const whole = action !== undefined && WHOLE_QUILT.has(action);
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : undefined;
  // "the hole I might darn and those rust spots I'm leaving": of the other thing that is named
  const another = namesAnother(state, state.clauses[v.index]!);
  const asked = openAtThose(state, action, placed);
  if (asked) return asked;
  if (topical && holdsMoreThan(placed, topical)) return placed.places;
  if (topical && !another && (!pronoun || placed.items.every((x) => x.place!.rule !== 'place.that-one')))
    return topical;
  // "the tear", "that hole": where it was found
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const finding = item.finding ?? (item.seam ? 'split-seam' : undefined);
    if (!finding || (item.seam && /^(lines?|allowances?)$/.test(items[k + 1]?.w ?? ''))) continue;
    const definite = items.slice(Math.max(0, k - 4), k).some((x) => /^(the|that|this|those|its)$/.test(x.w));
    if (!definite) continue;
    const inNote = [...state.drafts]
      .reverse()
      .find((d) => d.entry.kind === 'condition' && d.entry.finding === finding);
    const known = (inNote?.entry as { places?: string[] } | undefined)?.places ?? state.memory.found[finding];
    if (known?.length) return known;
  }
  const side = action === undefined ? undefined : sideTakenOff(state, action, placed);
  if (side) return side;
  const open = openPlaces(state, items, way, placed) ?? plannedPlaces(state, action, placed);
  if (open && !(lastInNote && lastPlaces?.length)) return open;
  const washed = action === 'dry' || action === 'press' ? partWashed(state, lastInNote?.entry) : undefined;
  if (washed && placed.kind !== 'specific' && items.some((x) => x.place?.rule === 'place.it')) return washed;
  // "the backing's thin and it's got mildew, I'm going to wash it Wednesday"
  if (
    action === 'wash' &&
    items.some((x) => x.place?.rule === 'place.it') &&
    placed.kind !== 'specific' &&
    lastInNote?.entry.kind === 'condition' &&
    lastPlaces!.length === 1 &&
    /^(backing|top)$/.test(lastPlaces![0]!)
  )
    return lastPlaces;
  if (pronoun) {
    // "cut the border strips and pieced them": the strips
    const cut = state.drafts.findLast(isTreatment);
    if (
      cut &&
      cut === lastInNote &&
      /^(cut|piece)$/.test(cut.entry.action ?? '') &&
      lastPlaces!.every((p) => !splitBlock(p))
    )
      return lastPlaces;
    const it = placed.items.some((x) => x.place!.rule === 'place.it');
    if (action === 'baste') {
      const held = fastenedOver(state);
      if (held) return held;
    }
    // "binding on top and right edge. hand finish those two later"
    if (
      !it &&
      action === 'bind' &&
      cut?.entry.action === 'bind' &&
      cut.entry.places?.[0]?.startsWith('edge-')
    )
      return cut.entry.places;
    if (!it && action !== undefined && ['wash', 'bind', 'layer', 'baste', 'square-up'].includes(action))
      return ['quilt'];
    // "the left edge is frayed, bound it along there", "sewed it back on there"
    if (
      it &&
      action === 'bind' &&
      items.some((x) => x.w === 'there') &&
      lastPlaces?.every((p) => /^(edge|corner)-/.test(p))
    )
      return lastPlaces;
    if (
      it &&
      whole &&
      [
        'wash',
        'bind',
        'layer',
        'baste',
        'square-up',
        'photograph',
        'measure',
        'dry',
        'quilt',
        'tie',
      ].includes(action)
    ) {
      if (
        ['tie', 'quilt', 'dry', 'photograph'].includes(action) &&
        lastInNote &&
        lastInNote.sentence === v.sentence &&
        lastPlaces?.some(
          (p) => splitBlock(p) || p === 'sashing' || (action === 'photograph' && p !== 'quilt'),
        )
      )
        return lastPlaces;
      // "3-2 has a tear. Photographed it": the block that was just told, and not the whole
      if (
        action === 'photograph' &&
        lastInNote &&
        lastPlaces?.length &&
        lastPlaces.length <= 4 &&
        lastPlaces.every((p) => splitBlock(p))
      )
        return lastPlaces;
      // "requilted round it", "tied it again along there", of the blocks or the side last spoken of
      const focus = state.memory.focus;
      if (
        /^(tie|quilt|photograph)$/.test(action) &&
        focus.length > 0 &&
        focus.length <= 4 &&
        focus.every((p) => splitBlock(p) || (action !== 'photograph' && /^(border|edge)-/.test(p))) &&
        (action === 'photograph' ||
          items.some(
            (x) => /^(round|around|again|afresh|anew|there)$/.test(x.w) || (x.action && x.w.startsWith('re')),
          ))
      )
        return focus;
      return ['quilt'];
    }
    if (it && lastInNote && lastPlaces?.length) return lastPlaces;
    // "the seam between 5-5 and the one above it was open, so I closed that": the seam, and no block of it
    if (
      lastPlaces?.length &&
      (lastInNote!.sentence === v.sentence ||
        (lastInNote!.entry.kind === 'condition' && lastInNote!.entry.finding === 'split-seam')) &&
      placed.items.every((x) => x.w === 'that') &&
      placed.places.every((p) => lastPlaces.includes(p))
    )
      return lastPlaces;
    // "sewed it up", "closed that with a ladder stitch"
    const that = it || placed.items.some((x) => x.w === 'that');
    if (that && action && !lastInNote) return damageFor(state, action, placed.places) ?? placed.places;
    return placed.places;
  }
  // "took a label off the corner and I got that interfacing peeled off": where interfacing was told of before
  if (lastInNote?.entry.kind === 'treatment') {
    const fused = interfacingTold(state, way);
    if (fused) return fused;
  }
  if (lastInNote && lastPlaces) {
    const sameSentence = lastInNote.sentence === v.sentence;
    if (action === 'baste') {
      const held = fastenedOver(state);
      if (held) return held;
    }
    // "pressed the whole top and measured it": the part that the sentence has just told of
    if (
      action &&
      /^(wash|dry|photograph|measure|trim|square-up|clean|press)$/.test(action) &&
      sameSentence &&
      items.some((x, k) => x.place?.rule === 'place.it' && items[k + 1]?.w !== 'all') &&
      lastInNote.entry.kind === 'treatment' &&
      /^(press|clean|wash|dry|measure|photograph|trim|square-up)$/.test(lastInNote.entry.action ?? '') &&
      lastPlaces.every((p) => /^(top|backing|sashing|border|edge)/.test(p))
    )
      return lastPlaces;
    if (
      action &&
      [
        'wash',
        'bind',
        'layer',
        'baste',
        'square-up',
        'photograph',
        'measure',
        'add-border',
        'label',
      ].includes(action)
    )
      return undefined;
    // "row nine spot cleaned. drying now, flat": the whole of it
    if (whole && !sameSentence && (action === 'dry' || !lastPlaces.some((p) => splitBlock(p))))
      return undefined;
    if (action === 'cut' || action === 'piece')
      return lastPlaces.some((p) => /^(border|binding)/.test(p) || (p === 'backing' && sameSentence))
        ? lastPlaces
        : undefined;
    if (sameSentence || items.some((x) => x.action || x.object || x.stitch)) {
      if (isAnother(items)) return undefined;
      return lastPlaces;
    }
  }
  // "initials on the backing. Squared it up": the quilt, wherever the initials are
  const ofQuilt =
    action !== undefined &&
    /^(bind|layer|baste|square-up)$/.test(action) &&
    !state.carried.some((p) => splitBlock(p));
  if (state.carried.length && way && !ofQuilt && !isAnother(items)) return state.carried;
  const fused = interfacingTold(state, way);
  if (fused) return fused;
  // "the patch", "that patch", "the old one": something pointed at carries the place from the conversation
  if (
    way &&
    action === 'remove' &&
    items.some((x) => /^(that|the|those|this)$/.test(x.w)) &&
    way.object !== 'ties' &&
    state.memory.focus.length
  )
    return state.memory.focus;
  // "put a bit of fusible behind": behind what was last spoken of
  if (
    (action === 'stabilize' || action === 'overlay') &&
    placed.kind === 'none' &&
    items.some((x, k) => BESIDE_IT.test(x.w) && endsThere(items[k + 1])) &&
    state.memory.focus.every((p) => splitBlock(p))
  )
    return state.memory.focus;
  // "2-3 torn", then "needs a patch", "could do with darning", with the block left away
  if (
    state.memory.lastKind === 'condition' &&
    !state.drafts.length &&
    placed.kind === 'none' &&
    state.clauses[0] !== undefined &&
    items[0] === state.clauses[0].items[0] &&
    LEFT_AWAY.test(items.find((x) => !/^(so|and|well|really|just|probably|,)$/.test(x.w))?.w ?? '') &&
    state.memory.focus.length > 0 &&
    state.memory.focus.length < 4
  )
    return state.memory.focus;
  // "there's a hole under it", then "put a new patch on", "set a new piece in"
  const stranded = action === 'patch' ? 'on' : action === 'replace' ? 'in' : undefined;
  if (
    stranded &&
    !state.drafts.length &&
    placed.kind === 'none' &&
    items.some((x, k) => x.w === stranded && endsThere(items[k + 1])) &&
    state.memory.focus.length < 4 &&
    state.memory.focus.every((p) => splitBlock(p))
  )
    return state.memory.focus;
  return undefined;
}

/** The blocks or sides that the clause before named, in the same sentence, where nothing was made of it. */
function justNamed(state: ReaderState, v: ClauseView): string[] | undefined {
  const before = state.clauses[v.index - 1];
  if (before?.sentence !== v.sentence || state.drafts.some((d) => d.clause === v.index - 1)) return undefined;
  if (before.items.some((x) => x.w === 'not' || x.w === "n't")) return undefined;
  const told = placesOfClause(before.items);
  return told.kind === 'specific' && !told.outside ? told.places : undefined;
}

/** Was a block named that the quilt has not got, and no other place told since? */
export function sinceOutside({ drafts }: ReaderState, clause = Number.POSITIVE_INFINITY): boolean {
  const before = drafts.filter((d) => d.clause < clause);
  const outside = before.findLastIndex((d) => d.outside);
  return (
    outside >= 0 && !before.slice(outside).some((d) => (d.entry as { places?: string[] }).places?.length)
  );
}

/** "peeled that interfacing off": where interfacing was told of. */
function interfacingTold(state: ReaderState, way: Way | undefined): string[] | undefined {
  if (way?.action !== 'remove' || way.object !== 'interfacing') return undefined;
  return [...(state.memory.mentions ?? []), ...mentionsOf(state.drafts)].findLast(
    (m) => (m.object === 'interfacing' && m.action === undefined) || m.action === 'stabilize',
  )?.places;
}

/** "another", "darned a second", "a second darn followed", "one more": not the one that was told of. */
const isAnother = (items: Item[]): boolean =>
  / another | one more (?!time)| a second (?:one|darn|patch|hole|tear|stain|mend)? ?(?:$|[,.;]|followed |in |with |and |one )/.test(
    wordsBetween(items),
  );

/** What can be closed, and what can be darned. */
const CURES: Partial<Record<Action, RegExp>> = {
  resew: /^(?:split-seam|tear)$/,
  darn: /^(?:tear|hole|thin|fraying|split-seam)$/,
};
/** "the seam in 2-2 is split and the border's puckered", then "closed it": of what the last note found, the one that it is done to. */
function damageFor({ memory }: ReaderState, action: Action, here: string[]): string[] | undefined {
  const cures = CURES[action];
  const found = (memory.last?.entries ?? []).flatMap(({ entry: e }) => (e.kind === 'condition' ? [e] : []));
  if (!cures || found.length < 2) return undefined;
  const fits = found.filter((e) => cures.test(e.finding));
  const is = (places: string[] | undefined): boolean => places?.join() === here.join();
  return fits.length === 1 && !is(fits[0]!.places) && found.some((e) => is(e.places))
    ? fits[0]!.places
    : undefined;
}

const LEFT_AWAY = /^(?:needs?|wants?|could|should|requires|will|'ll|gets)$/;
const BESIDE_IT = /^(?:behind|underneath|beneath|over)$/;
const endsThere = (next: Item | undefined): boolean =>
  next === undefined || /^(?:[.,;&]|and|then|too|as|now|instead|first|with)$/.test(next.w);

/**
 * "took the binding off along the top and it's going right back on", "unpicked the right border, squared it up and put the
 * border back": the side that was just taken off.
 */
export function sideTakenOff(state: ReaderState, action: Action, placed: ClausePlaces): string[] | undefined {
  if (!/^(bind|add-border|square-up|press|trim|measure|wash|clean|dry)$/.test(action)) return undefined;
  if (placed.kind === 'specific') return undefined;
  const told = state.drafts.filter(isTreatment);
  const e = told.at(-1)?.entry;
  const off = told.findLast((d) => d.entry.action === 'remove')?.entry;
  if (!e?.places?.length || !e.places.every((p) => /^(edge|border)-/.test(p))) return undefined;
  if (!off || (off.object !== 'border' && off.object !== 'binding')) return undefined;
  if (action === 'bind') return off.object === 'binding' ? e.places : undefined;
  if (action === 'add-border') return off.object === 'border' ? e.places : undefined;
  return placed.kind === 'pronoun' ? e.places : undefined;
}

/** "washed the backing; it's drying": the part that was last in the water. */
function partWashed(state: ReaderState, last: Draft['entry'] | undefined): string[] | undefined {
  const wet = last?.kind === 'treatment' ? last : state.memory.treatment;
  return wet && /^(wash|clean)$/.test(wet.action ?? '') && wet.places?.length && !wet.places.includes('quilt')
    ? wet.places
    : undefined;
}

/** Blocks that a net or a cloth behind has just been laid on: what "tacked it first" fastens. */
function fastenedOver(state: ReaderState): string[] | undefined {
  const laid = state.drafts.findLast(
    (d) =>
      d.entry.kind === 'treatment' &&
      (d.entry.action === 'overlay' || d.entry.action === 'stabilize' || d.entry.action === 'patch') &&
      d.entry.state !== 'dropped' &&
      d.entry.places?.some((p) => splitBlock(p)),
  );
  return (laid?.entry as { places?: string[] } | undefined)?.places;
}

/** Where the same treatment stands as undecided: "going with the patch", "it shall be the net", "darned it in the end". */
function openPlaces(
  state: ReaderState,
  items: Item[],
  way: Way | undefined,
  placed: ClausePlaces,
): string[] | undefined {
  const action = way?.action;
  const open = state.memory.open.findLast((o) => !o.passed && o.action === action && o.places.length);
  if (!open) return undefined;
  if (placed.kind === 'none') return open.places;
  if (placed.kind !== 'pronoun') return undefined;
  if (placed.items.every((x) => isVerdictIt(items, items.indexOf(x), way!.at))) return open.places;
  // "will net both": it stands open at each of them
  const all = state.memory.open.filter((o) => !o.passed && o.action === action).flatMap((o) => o.places);
  if (placed.places.length > 1 && placed.places.every((p) => all.includes(p))) return placed.places;
  const told = placed.places.filter((p) => open.places.includes(p));
  return told.length || !placed.places.some((p) => splitBlock(p)) ? open.places : undefined;
}

/** "it's going to be the net on those three": where the net stood open at three blocks; of three of another cloth, told since, nobody asked. */
function openAtThose(
  state: ReaderState,
  action: Action | undefined,
  placed: ClausePlaces,
): string[] | undefined {
  if (placed.kind !== 'pronoun' || placed.places.length < 2) return undefined;
  // the "it" of "it's going to be" is none of them
  const those = placed.items.filter((x) => x.place!.rule !== 'place.it');
  if (!those.length || !those.every((x) => /^place\.(?:those|both|all-of-them)$/.test(x.place!.rule)))
    return undefined;
  const open = state.memory.open.findLast((o) => !o.passed && o.action === action && o.places.length);
  return open?.places.length === placed.places.length && !open.places.some((p) => placed.places.includes(p))
    ? open.places
    : undefined;
}

/** "net's on", after "the net's what I'm going to do": where the last treatment told was planned and now is told as done. */
function plannedPlaces(
  state: ReaderState,
  action: Action | undefined,
  placed: ClausePlaces,
): string[] | undefined {
  const planned = state.memory.treatment;
  if (
    !action ||
    placed.kind !== 'none' ||
    planned?.action !== action ||
    !/^(planned|doing)$/.test(planned.state)
  )
    return undefined;
  return planned.places.length ? planned.places : undefined;
}
