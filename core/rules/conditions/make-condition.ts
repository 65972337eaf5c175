import type { Entry } from '../../../shared/entry.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { sinceOutside } from '../places/carried-places.ts';
import { oneOfCloth } from '../places/cloth-worked-on.ts';
import { splitBlock, unique } from '../places/grid.ts';
import { type ClausePlaces, holdsMoreThan } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { edgeUnder } from './edge-under.ts';
import type { ConditionFound } from './find-conditions.ts';
import { placeListed } from './listed-findings.ts';

const placesOfDraft = (d: Draft | undefined): string[] =>
  (d?.entry.kind === 'condition' || d?.entry.kind === 'treatment' ? d.entry.places : undefined) ?? [];
const tellsPatch = (d: Draft | undefined): boolean =>
  d?.entry.kind === 'condition' && d.entry.finding === 'old-repair' && placesOfDraft(d).some(splitBlock);
/** "thought 2-2 was torn but it's just a loose seam", "looked like mildew, it's only dirt": what it turned out not to be. */
function isThoughtOnly(state: ReaderState, v: ClauseView, c: ConditionFound): boolean {
  const seems = v.items.findIndex((x) => SEEMED.test(x.w));
  if (seems < 0 || seems > c.at) return false;
  const later = state.clauses.slice(v.index + 1).filter((x) => x.sentence === v.sentence);
  const behind = later.length ? later.flatMap((x) => x.items) : v.items.slice(c.at + 1);
  return TURNED_OUT.test(wordsBetween(behind, 0, 10));
}
const SEEMED = /^(?:thought|looked|seemed|assumed|feared|took|figured)\b/;
const TURNED_OUT =
  /^ (?:(?:,|to me|at first|but|turns out|and|no|--|-) )*(?:(?:no|actually|,|on a closer look|now|i see|turns out) )*(?:(?:it|that|they|those) (?:'s|is|was|'re|are|were|turned out to be|turns out to be) (?:only|just|actually|really|merely|nothing but|nothing more than|in fact)|just (?:a|some|the)|only (?:a|some|the)) /;

export function makeCondition(
  state: ReaderState,
  v: ClauseView,
  c: ConditionFound,
  placed: ClausePlaces,
  treating: boolean,
): void {
  const { items } = v;
  if (isThoughtOnly(state, v, c)) return;
  let places: string[] | undefined;
  let how: Draft['placed'] = 'said';
  const fabric = items.find((x) => x.fabric);
  // "2-2 has an old patch, with the edges all ravelling": the patch's edges
  const ownEdges =
    placed.kind === 'general' &&
    placed.places[0] === 'edge' &&
    (items[0]?.w === 'with' ||
      items.some((x, k) => x === placed.items[0] && items[k - 1]?.w === 'its') ||
      // "an old patch, and the edge of it is ravelling"
      items.some(
        (x, k) =>
          x === placed.items[0] &&
          items[k + 1]?.w === 'of' &&
          (/^(it|that|them)$/.test(items[k + 2]?.w ?? '') ||
            /^(patch|darn|repair|hole)$/.test(items[k + 3]?.w ?? '')),
      ) ||
      // "there's a patch on 2-2 and it's frayed at the edges"
      items.some(
        (x, k) =>
          x === placed.items[0] &&
          x.w === 'edges' &&
          /^(it|they|both|that|those)$/.test(items[0]?.w ?? '') &&
          /^ (?:at|round|around|along) (?:the|its|their) $/.test(wordsBetween(items, k - 2, k)) &&
          placesOfDraft(state.drafts.at(-1)).some(splitBlock),
      ) ||
      // "an old patch there and the turned-under edge has come adrift"
      items.some(
        (x, k) =>
          x === placed.items[0] &&
          /^(turned|under|folded|raw|cut|frayed)$/.test(items[k - 1]?.w ?? '') &&
          tellsPatch(state.drafts.at(-1)),
      ) ||
      // "5-2 torn, edges ravelled"
      (items[0]?.w === 'edges' &&
        !/ (?:all|round|around|sides?) /.test(`${items.map((x) => x.w).join(' ')} `))) &&
    state.drafts.at(-1)?.sentence === v.sentence;
  if (placed.kind === 'specific' || (placed.kind === 'general' && !ownEdges))
    places = edgeUnder(state, items, placed) ?? placed.places;
  let usedFabric: Item | undefined;
  // "there was a hole where a spark fell on it", when whole rows were spoken of: in which block, nobody knows
  const oneOfMany =
    placed.kind === 'pronoun' &&
    placed.items.every((x) => /^place\.(?:it|one-of)$/.test(x.place!.rule)) &&
    items.slice(Math.max(0, c.at - 5), c.at).some(
      (x) =>
        (placed.places.length > 4 && /^(a|an)$/.test(x.w)) ||
        // "there was another block with a hole in it": not the one spoken of
        (x.w === 'another' && /^(one|block|square|piece)$/.test(items[items.indexOf(x) + 1]?.w ?? '')) ||
        // "another stain here", after three places were told of
        (placed.places.length > 1 && x.w === 'another'),
    );
  // "a stain somewhere", "there's another rusty mark somewhere": not where the last thing was
  let unknown =
    placed.unknown ||
    oneOfMany ||
    // "there was another one with a hole in it"
    (placed.kind === 'none' && items.slice(0, c.at).some((x) => x.w === 'another one')) ||
    ((placed.kind === 'none' || (placed.kind === 'pronoun' && placed.items.every((x) => x.w === 'there'))) &&
      items.some(
        (x, k) =>
          /^(somewhere|someplace)$/.test(x.w) &&
          !/^(in|on|near|along|around|by|at)$/.test(items[k + 1]?.w ?? ''),
      )) ||
    (placed.kind === 'pronoun' && (isHowItCame(items, c.at, placed) || isAnotherHere(items, placed)));
  if (fabric?.fabric) {
    const { names, bar } = fabric.fabric;
    const blocks = unique(names.flatMap((n) => state.fabrics.blocks[n] ?? [])).filter(
      (p) => !bar?.includes(p),
    );
    const k = items.indexOf(fabric);
    const before = items.slice(Math.max(0, k - 3), k).map((x) => x.w);
    const putIn = before.some((b) => /^(with|w|from|using)$/.test(b));
    if (!putIn) {
      usedFabric = fabric;
      const before = { ...state, drafts: state.drafts.filter((d) => d.clause !== v.index) };
      const one = placed.kind === 'specific' ? undefined : oneOfCloth(items, k, before);
      const near = items
        .slice(k + 1, k + 4)
        .find(
          (x) =>
            x.place &&
            /^(under|underneath|beneath|behind|below|in|at)$/.test(items[items.indexOf(x) - 1]?.w ?? ''),
        );
      // "the muslin's gone soft round it"
      const around = items
        .slice(k + 1)
        .some((x, m, rest) => x.place && /^(round|around|about|near|beside|by)$/.test(rest[m - 1]?.w ?? ''));
      const told =
        placed.kind === 'pronoun' && (around || (near && items.indexOf(near) < c.at))
          ? placed.places.filter((p) => blocks.includes(p))
          : [];
      if (
        placed.places.length === blocks.length &&
        placed.items.every((x) => x.place!.rule === 'place.all-of-them')
      ) {
        // "white linen stained, all three": of the cloth, and not the three told before
        places = blocks;
      } else if (placed.kind === 'specific' && placed.places.some((p) => splitBlock(p))) {
        // "the gray stripe in row four": the cloth's blocks of those named, where there are any
        const inside = placed.places.filter((p) => blocks.includes(p));
        const lines = placed.items.some(
          (x) =>
            /row|column|counted|area|every|all-/.test(x.place!.rule) && x.place!.rule !== 'place.row-block',
        );
        // "the red has run in rows one and two, every block": the dye, over all of them
        const all = / (?:every|each) (?:single )?(?:block|one|square) | all (?:of them|along|over) /.test(
          wordsBetween(items, c.at),
        );
        // "all the green twill and blocks 2 to 4 of row one": the cloth is one of a list
        const listed =
          placed.withCloths ||
          (placed.items.length > 1 && placed.items.some((x) => x.place!.rule.startsWith('place.cloth')));
        if (inside.length && lines && !listed && !(all && c.finding === 'dye-bleed')) places = inside;
      } else if (one) {
        places = one;
        if (!one.length) unknown = true;
      } else if (
        placed.places.join() === 'batting' &&
        / (?:in|under|behind|beneath|inside) (?:the |all the |each |every )?$/.test(
          wordsBetween(items, k - 3, k),
        )
      ) {
        // "the batting's all bunched up in the mackinaw plaid": where that cloth is
        places = blocks;
      } else if (
        told.length &&
        told.length < blocks.length &&
        !items.some((x) => /^(every|all|each)$/.test(x.w))
      ) {
        // "the bunny underneath it"
        places = told;
      } else if (
        state.topic?.sentence === v.sentence &&
        (placed.kind === 'none' || placed.items.every((x) => x.place!.rule === 'place.it'))
      ) {
        places = state.topic.places;
      } else if (
        placed.kind === 'none' ||
        placed.kind === 'pronoun' ||
        (placed.kind === 'general' && placed.places[0] === 'quilt')
      ) {
        // "beginning with the corner block, …, the gingham is threadbare"
        const inside = state.drafts.length ? [] : state.carried.filter((p) => blocks.includes(p));
        places =
          inside.length && !items.slice(0, k).some((x) => /^(every|all|each|both)$/.test(x.w))
            ? inside
            : blocks;
      }
    }
  }
  const told = partOfFinding(items, c);
  // "that one has a split seam at the outside edge": the block's edge
  const part = ownEdges || (told === 'edge' && placed.kind === 'pronoun') ? undefined : told;
  if (!places?.length && part) places = [part];
  if (!places?.length) places = otherSide(state, v, c.at);
  const pair = c.finding === 'split-seam' ? betweenThem(state, v) : undefined;
  if (pair) places = pair;
  const under = c.finding === 'lumpy-batting' ? placeOver(state, v, items) : undefined;
  if (under) places = under;
  else if (c.finding === 'lumpy-batting' && (!places || placed.kind === 'general'))
    places = placed.kind === 'general' && placed.places[0] !== 'quilt' ? placed.places : ['batting'];
  // "left 214, right 216, top 178, so it's out of square": what was measured
  const measured = state.drafts.find((d) => d.entry.kind === 'measurement');
  if (
    c.finding === 'out-of-square' &&
    (!places?.length ||
      // "the left side hangs longer than the right"
      (/^(?:longer|wider|shorter|narrower|lower) than /.test(items[c.at]!.w) &&
        places.every((p) => p.startsWith('edge-'))) ||
      (measured && placed.items.every((x) => x.place!.rule === 'place.it' || isBareTop(items, x))))
  )
    // "top is 74 x 88 in, out of square"
    places = topWasMeasured(measured?.entry) ? ['top'] : ['quilt'];
  // "it smells musty": a smell is the whole quilt's
  if (
    c.finding === 'mildew' &&
    (placed.kind === 'none' ||
      (placed.kind === 'pronoun' && placed.items.every((x) => x.place!.rule === 'place.it'))) &&
    !places?.length &&
    !usedFabric &&
    state.topic?.sentence !== v.sentence &&
    items.some((x) =>
      /\b(smell|smells|smelling|smelled|smelt|whiff|pong|reek|reeks|stink|stinks|niff)\b/.test(x.w),
    ) &&
    state.drafts.at(-1)?.sentence !== v.sentence
  )
    places = ['quilt'];
  if (!places?.length && unknown) {
    places = [];
    how = 'none';
  } else if (!places?.length) {
    const carried = treating
      ? (state.drafts.at(-1)?.entry as { places?: string[] } | undefined)?.places
      : carriedForCondition(state, v, c, placed);
    if (carried?.length && isAnotherPlace(state, v, c, placed, carried)) {
      places = [];
      how = 'none';
    } else if (carried?.length) {
      places = carried;
      how = 'carried';
    } else if (!placed.outside && OVERALL.test(` ${items.map((x) => x.w).join(' ')} `)) {
      places = ['quilt'];
    } else {
      places = [];
      how = 'none';
    }
  }
  if (placed.outside && !placed.places.length) {
    places = [];
    how = 'none';
  }
  if (c.finding === 'dye-bleed') places = bledInto(items, placed) ?? places;
  if (c.pointed) return;
  // "the taffeta is shattered, long fine slits running all over it": how it is
  const before = state.drafts.at(-1);
  if (
    c.finding === 'tear' &&
    /s$/.test(items[c.at]!.w) &&
    before?.entry.kind === 'condition' &&
    before.entry.finding === 'shattered' &&
    before.sentence === v.sentence &&
    placed.kind !== 'specific'
  )
    return;
  // "where the loss is, two courses are open"
  if (
    items[0]?.w === 'where' &&
    /^(the|that|it)$/.test(items[1]?.w ?? '') &&
    isKnown(state, c.finding, places)
  ) {
    state.carried = places;
    return;
  }
  // "The tear in the striped one, yes.", "So: the hole.": named as what is spoken of next
  if (!treating && namesOnly(state, v, c)) {
    const before = state.memory.found[c.finding];
    // "the hole I might darn, and those stains": where they were told of, and not where the hole is
    const known = places.length && !(how === 'carried' && before?.length) ? places : before;
    if (known?.length) {
      state.carried = known;
      state.topic = { places: known, sentence: v.sentence, finding: c.finding };
    }
    return;
  }
  // Already told and only pointed at again
  const next = state.clauses[v.index + 1];
  const worked =
    treating ||
    (next?.sentence === v.sentence &&
      (next.items.some((x, k) => x.action && isPredicate(next.items, k)) ||
        // "that coffee ring stays"
        (next.joint === '' && /^(stays|stay|remains)$/.test(next.items[0]!.w))));
  if (
    worked &&
    isKnown(state, c.finding, places) &&
    (items.slice(Math.max(0, c.at - 3), c.at).some((x) => /^(the|that|this)$/.test(x.w)) ||
      // "moth spots in 2-2 and 4-1 I darned"
      (c.at === 0 &&
        next?.joint === '' &&
        /^(?:i|we)$/.test(next.items[0]!.w) &&
        items.every((x) => x.place || x.finding || /^(?:and|&|,|in|on|at|the)$/.test(x.w))) ||
      // "4-5 stain dabbed w/ vinegar"
      (items[c.at + 1]?.action?.form === 'past' && items[c.at - 1]?.place !== undefined))
  )
    return;
  const draft = makeDraft(
    'condition',
    v,
    {
      finding: [c.finding, c.rule, c.items],
      places: [
        places,
        how === 'carried' ? 'place.carried' : 'place.said',
        how === 'said' ? (placed.items.length ? placed.items : usedFabric) : undefined,
        how === 'carried' ? 'implied' : 'said',
      ],
      ...(usedFabric?.fabric
        ? {
            fabric: [
              usedFabric.fabric.names.length === 1 ? usedFabric.fabric.names[0] : usedFabric.fabric.words,
              'fabric.named',
              usedFabric,
            ],
          }
        : {}),
    },
    how,
  );
  if (placed.outside && !placed.places.length) draft.outside = true;
  const twin = state.drafts.at(-1);
  if (
    twin?.entry.kind === 'condition' &&
    twin.entry.finding === c.finding &&
    twin.entry.places?.length === 1 &&
    twin.entry.places[0] === 'batting' &&
    places[0] !== 'batting' &&
    places.length
  ) {
    twin.entry.places = places;
    return;
  }
  if (treating) {
    // the damage comes before what was done about it
    const at = state.drafts.findIndex((d) => d.clause === v.index && d.entry.kind === 'treatment');
    state.drafts.splice(at < 0 ? state.drafts.length : at, 0, draft);
  } else {
    state.drafts.push(draft);
    placeListed(state, v, draft);
  }
}

/** "…, top 178, bottom 177": a side that was measured, where "the top" is the patchwork. */
const topWasMeasured = (e: Entry | undefined): boolean =>
  e?.kind === 'measurement' && /^(?:width|length)$/.test(e.of) && e.places?.[0] === 'top';

const isBareTop = (items: Item[], x: Item): boolean =>
  x.w === 'top' && items[items.indexOf(x) - 1]?.w !== 'the';

/** "there was a hole where somebody's pipe burned it": how it came about, and not where. */
const isHowItCame = (items: Item[], at: number, placed: ClausePlaces): boolean => {
  const where = items.findIndex((x, k) => k > at && x.w === 'where');
  return (
    where > 0 &&
    items.slice(0, at).some((x) => /^(there|a|an|found|another)$/.test(x.w)) &&
    placed.items.every((x) => items.indexOf(x) > where)
  );
};

/** "here's another worn bit", "another stain here", when several blocks were spoken of: she has it before her, and nobody else knows where. */
const isAnotherHere = (items: Item[], placed: ClausePlaces): boolean =>
  placed.items.every((x) => x.w === 'here') &&
  items.some((x, k) => x.w === 'another' || (x.w === 'more' && items[k - 1]?.w === 'one')) &&
  (placed.places.length > 1 || items.some((x, k) => x.w === 'here' && items[k + 1]?.w === "'s"));

/**
 * "closed the 2-2/2-3 seam and then darned a hole", "backing sound. & a tear": a single damage that is told for the first time is not in all of
 * the blocks spoken of, nor in what was found sound.
 */
function isAnotherPlace(
  state: ReaderState,
  v: ClauseView,
  c: ConditionFound,
  placed: ClausePlaces,
  carried: string[],
): boolean {
  if (placed.kind !== 'none' || !/^(?:hole|tear|stain|old-repair|thin)$/.test(c.finding)) return false;
  if (!ONE_NEW.test(wordsBetween(v.items, Math.max(0, c.at - 4), c.at))) return false;
  // "took the patches off. There's a hole under each"
  if (/^ (?:under|beneath|behind|in|on|through|over|at) /.test(wordsBetween(v.items, c.at + 1, c.at + 3)))
    return false;
  if (/^(?:with|because|cos|but|as|since|which|where|except)$/.test(state.clauses[v.index]?.joint ?? ''))
    return false;
  const last = state.drafts.findLast((d) => d.clause < v.index && placesOfDraft(d).length);
  if (last?.entry.kind === 'condition' && last.entry.finding === 'sound') return true;
  return carried.length > 1 && (last === undefined || last.entry.kind === 'treatment');
}
const ONE_NEW =
  / (?:a|an|another)(?: (?:little|small|wee|tiny|big|bad|nasty|new|long|short|rusty|second|third|fresh))* $/;

/** "musty throughout", "faded all over": the whole quilt, where no place is said or carried. */
const OVERALL =
  / (all over|throughout|everywhere|right through|all through|from end to end|top to bottom|from top to toe|overall|generally|the lot of it|from one end to the other|from one side to the other|end to end|side to side) /;

/** A finding with "the" and no verb, known already or worked on in what follows: it only says what is meant. */
function namesOnly(state: ReaderState, v: { index: number; items: Item[] }, c: ConditionFound): boolean {
  const { items } = v;
  const lead = items.findIndex(
    (x) => !/^(so|now|as|for|right|ok|okay|and|then|well|oh|that|'s|regarding|about|to|back|on)$/.test(x.w),
  );
  // "(I might net it and) that stain (I'm leaving alone)"
  const bare = lead === c.at && /^(that|this)$/.test(items[lead - 1]?.w ?? '');
  if (
    !bare &&
    (lead < 0 ||
      lead >= c.at ||
      (!/^(the|that|this|those)$/.test(items[lead]!.w) && !/^(that|this)$/.test(items[lead - 1]?.w ?? '')))
  )
    return false;
  if (c.at - lead > 3) return false;
  // "the ties broke in the night on 2-2" says what became of them
  if (
    /^(?:broke|snapped|popped|burst|came|went|gave|let|failed)\b/.test(items[c.at]!.w) &&
    items.slice(lead, c.at).some((x) => x.stitches || x.seam || x.object || x.part)
  )
    return false;
  // "the middle two columns faded" says so
  if (
    /(ed|torn|worn|thin|sound|bare|weak)$/.test(items[c.at]!.w) &&
    items.slice(lead, c.at).some((x) => x.place || x.fabric)
  )
    return false;
  if (
    /\b(has|have|is|are|was|were) /.test(items[c.at]!.w) ||
    // "the border ripples along the top" says so
    (/s$/.test(items[c.at]!.w) &&
      items[c.at - 1]!.part !== undefined &&
      items.slice(c.at + 1).some((x) => x.place)) ||
    items.some(
      (x, k) =>
        k !== c.at &&
        (x.finding ||
          x.fail ||
          (x.action && isPredicate(items, k)) ||
          /^(is|'s|are|was|were|has|have|had|goes|runs|looks|there)$/.test(x.w)),
    )
  )
    return false;
  const next = state.clauses.slice(v.index + 1, v.index + 4);
  return (
    Boolean(state.memory.found[c.finding]?.length) ||
    next.some((n) => n.items.some((x, k) => x.action && isPredicate(n.items, k)))
  );
}

/** "a stain on 4-3 and the batting is lumpy under it": where the batting lies. */
function placeOver(state: ReaderState, v: ClauseView, items: Item[]): string[] | undefined {
  const k = items.findIndex(
    (x, m) =>
      /^place\.(it|that-one|them|those)$/.test(x.place?.rule ?? '') &&
      /^(under|underneath|beneath|behind|below|inside|in)$/.test(items[m - 1]?.w ?? ''),
  );
  const last = state.drafts.findLast((d) => d.sentence === v.sentence);
  const here = (last?.entry as { places?: string[] } | undefined)?.places;
  // "got the batting out of 2-3 where it had clumped up"
  const where = state.clauses[v.index - 1]?.items.at(-1)?.w === 'where' || items[0]?.w === 'where';
  if (where && here?.some((p) => splitBlock(p))) return here;
  // "in both places the wadding had clumped", "under the block itself", "gone lumpy there", "all lumps underneath"
  // "… and the batting's clumped | there too"
  const behind = state.clauses[v.index + 1]?.items ?? [];
  const there =
    (UNDER_THERE.test(wordsBetween(items)) || THERE_TOO.test(wordsBetween(behind))) &&
    !items.some((x) => x.place?.kind === 'blocks');
  // "under the twill": where that cloth lies
  const cloth = items.find(
    (x, m) =>
      x.fabric &&
      !x.place &&
      /^ (?:under|underneath|beneath|behind|in|inside|along)(?: the| that| both| all the| all| all of the)? $/.test(
        wordsBetween(items, items[m - 1]?.w === 'the' ? m - 2 : m - 1, m),
      ),
  );
  const lies = cloth?.fabric?.names.length === 1 ? state.fabrics.blocks[cloth.fabric.names[0]!] : undefined;
  if (lies?.length) return lies;
  if (k < 0 && !there) return undefined;
  // spoken of a whole layer just taken off, it is the batting
  const before = state.drafts.at(-1)?.entry as { places?: string[] } | undefined;
  const spoken = there ? (here ?? before?.places ?? state.memory.focus) : undefined;
  if (spoken)
    return spoken.length && spoken.every((p) => splitBlock(p) || /^(edge|corner)-/.test(p))
      ? spoken
      : undefined;
  const places = here?.length ? here : items[k]!.place!.places;
  return places.some((p) => splitBlock(p)) ? places : undefined;
}

const THERE_TOO = /^ (?:down |in )?there (?:too|as well|also) $/;
const UNDER_THERE =
  / (?:(?:in|at) (?:both|all|those|these|the two) (?:places|spots)|(?:under|beneath|behind) the (?:block|square|piece|patch|spot|place)s? itself|(?:under|in) there|there|underneath) /;

const isKnown = (state: ReaderState, finding: string, places: string[]): boolean => {
  const known = state.memory.found[finding as keyof typeof state.memory.found];
  return known !== undefined && places.some((p) => known.includes(p));
};

function partOfFinding(items: Item[], c: ConditionFound): string | undefined {
  const part = items.find((x) => x.part && items.indexOf(x) < c.at) ?? items.find((x) => x.part);
  return part?.part && part.part !== 'quilt' ? part.part : undefined;
}

/** "the border's puckered on the left and stained at the bottom": another side of what the sentence told of before. */
function otherSide(state: ReaderState, v: ClauseView, found: number): string[] | undefined {
  const last = state.drafts.at(-1);
  if (last?.entry.kind !== 'condition' || last.sentence !== v.sentence) return undefined;
  // "the top border is torn on the left": one side was named, and where along it
  if (state.clauses[last.clause]?.items.some((x) => /^(?:top|bottom|left|right|upper|lower)\b.* /.test(x.w)))
    return undefined;
  const part = /^(border|edge)-/.exec(last.entry.places?.at(-1) ?? '')?.[1];
  const side = part
    ? / (?:on|at|along|down|across) the (left|right|top|bottom)(?: side| edge)? (?:[.,!] )*$/.exec(
        wordsBetween(v.items, found + 1),
      )?.[1]
    : undefined;
  return part && side ? [`${part}-${side}`] : undefined;
}

/** "the blue from 3-1 has run into 3-2": where it went, and not where it came from. */
function bledInto(items: Item[], placed: ClausePlaces): string[] | undefined {
  if (placed.kind !== 'specific' || placed.items.length < 2) return undefined;
  const led = (x: Item): string => {
    const k = items.indexOf(x);
    return items[k - 1]?.w === 'the' ? (items[k - 2]?.w ?? '') : (items[k - 1]?.w ?? '');
  };
  const into = placed.items.findIndex((x) => /^(?:into|onto|across|over)$/.test(led(x)));
  if (into < 1 || !placed.items.slice(0, into).every((x) => led(x) === 'from')) return undefined;
  const places = unique(placed.items.slice(into).flatMap((x) => x.place!.places));
  return places.length ? places : undefined;
}

/** "2-3 torn, 2-4 torn, and the seam between them's gone": the two blocks told of in the sentence. */
function betweenThem(state: ReaderState, v: ClauseView): string[] | undefined {
  const at = v.items.findIndex((x) => x.w === 'between');
  if (at < 0 || !/^(them|those|these|the two)$/.test(v.items[at + 1]?.w ?? '')) return undefined;
  const told = state.drafts.flatMap(({ entry: e, sentence }) =>
    sentence === v.sentence && e.kind === 'condition' && e.places?.length === 1 && splitBlock(e.places[0]!)
      ? e.places
      : [],
  );
  const two = unique(told);
  return two.length === 2 ? two : undefined;
}

const foundToo = (v: ClauseView): boolean => {
  const words = wordsBetween(v.items);
  return (
    v.index === 0 &&
    v.items.length < 7 &&
    (/^ (?:and|plus|also|oh and)\b/.test(words) || / (?:too|as well|also)(?: [.!])* $/.test(words))
  );
};

function carriedForCondition(
  state: ReaderState,
  v: ClauseView,
  c: ConditionFound,
  placed: ClausePlaces,
): string[] | undefined {
  if (sinceOutside(state) && !placed.places.length && !v.items.some((x) => x.fabric)) return undefined;
  const last = [...state.drafts]
    .reverse()
    .find(
      (d) =>
        (d.entry.kind === 'condition' || d.entry.kind === 'treatment') &&
        d.sentence >= v.sentence - 1 &&
        (d.entry as { places?: string[] }).places?.length,
    );
  const lastPlaces = (last?.entry as { places?: string[] } | undefined)?.places;
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : undefined;
  if (
    topical &&
    (placed.kind === 'none' ||
      (placed.kind === 'pronoun' && placed.items.every((x) => x.place!.rule === 'place.it')))
  )
    return topical;
  if (
    c.finding === 'broken-stitching' &&
    !placed.places.length &&
    c.items.some((x) => /ties?/.test(x.w)) &&
    !lastPlaces
  )
    return ['quilt'];
  if (placed.kind === 'pronoun') {
    if (lastPlaces && holdsMoreThan(placed, lastPlaces)) return placed.places;
    // "the daisies are all faded and five three the cherry one there's a tear in it": the block named since
    const named =
      last?.entry.kind === 'condition' &&
      last.entry.fabric !== undefined &&
      placed.items.every((x) => x.place!.rule === 'place.it') &&
      placed.places.every((p) => splitBlock(p) && !lastPlaces!.includes(p));
    if (last && last.sentence === v.sentence && !named) return lastPlaces;
    // "lifted the batting away. It's stained throughout."
    if (
      last?.entry.kind === 'treatment' &&
      placed.items.every((x) => x.place!.rule === 'place.it') &&
      lastPlaces!.every((p) => !splitBlock(p) && p !== 'quilt')
    )
      return lastPlaces;
    return placed.places;
  }
  // "2-2 has a stain", then "and a tear", "torn as well"
  if (!last && placed.kind === 'none' && state.memory.lastKind === 'condition' && foundToo(v))
    return state.memory.condition?.places;
  if (last && last.sentence === v.sentence) return lastPlaces;
  if (last && v.items.length < 8) return lastPlaces;
  // "there's another of those marks somewhere"
  if (v.items.some((x) => /^(somewhere|someplace)$/.test(x.w))) return undefined;
  if (
    v.items.some(
      (x, k) =>
        /^(under|underneath|it|there|that|beneath|behind)$/.test(x.w) &&
        // "I see a seam that's split", "a tear that I missed": no pointing
        !(
          x.w === 'that' &&
          k > 0 &&
          !/^(of|on|in|at|under|by|near|beside|behind|above|below|with)$/.test(v.items[k - 1]!.w)
        ) &&
        !(x.w === 'there' && /^('s|is|are|was|were)$/.test(v.items[k + 1]?.w ?? '')),
    ) &&
    state.memory.focus.length
  )
    return state.memory.focus;
  if (state.carried.length) return state.carried;
  return undefined;
}
