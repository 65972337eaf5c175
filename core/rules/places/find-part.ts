import { SIDES } from '../../lexicon/place-words.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

/** A table asked by words that anyone may say: a Map has no "constructor". */
const SIDE_OF = new Map(Object.entries(SIDES));
const isSide = (word: string): boolean => SIDE_OF.has(word);
const sideNouns = new Map<string, 'border' | 'edge' | 'binding'>(
  Object.entries({
    border: 'border',
    borders: 'border',
    edge: 'edge',
    edges: 'edge',
    hem: 'edge',
    binding: 'binding',
  }),
);

/**
 * "left border", "top and bottom borders", "right-hand edge", "binding along the top", "bottom edge of the binding",
 * "left side". The sides of a binding are edges.
 */
export function sidedPart(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const found = sidesAt(tokens, i, ctx);
  return found && withMoreSides(tokens, i, found);
}

function sidesAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const faces = bothFaces(tokens, i);
  if (faces) return faces;
  const alone =
    sidesPutOn(tokens, i) ??
    boundSide(tokens, i) ??
    sidesCounted(tokens, i) ??
    severalSides(tokens, i) ??
    sideOfFocus(tokens, i, ctx) ??
    listedSides(tokens, i) ??
    oneMoreSide(tokens, i) ??
    trailingSide(tokens, i);
  if (alone) return alone;
  const read = readSides(tokens, i);
  if (read) {
    let j = read.next;
    const noun = w(tokens, j);
    if (sideNouns.has(noun)) {
      // "top and bottom borders" carries both; "top, bottom border" too.
      const part = sideNouns.get(noun) === 'border' ? 'border' : 'edge';
      j++;
      if (part === 'border' && w(tokens, j) === 'strip') j++;
      return {
        next: j,
        places: read.sides.map((s) => `${part}-${s}`),
        how: 'said',
        rule: 'place.sided-part',
        kind: 'part',
      };
    }
    if ((noun === 'side' || noun === 'sides') && read.next > i) {
      const after = w(tokens, j + 1);
      const part = after === 'border' || after === 'borders' ? 'border' : 'edge';
      if (after === 'of' && w(tokens, j + 2) === 'the' && sideNouns.has(w(tokens, j + 3)))
        return {
          next: j + 4,
          places: read.sides.map(
            (s) => `${sideNouns.get(w(tokens, j + 3)) === 'border' ? 'border' : 'edge'}-${s}`,
          ),
          how: 'said',
          rule: 'place.sided-part',
          kind: 'part',
        };
      if (
        read.sides[0] === 'top' ||
        read.sides[0] === 'bottom' ||
        read.sides[0] === 'left' ||
        read.sides[0] === 'right'
      ) {
        if (w(tokens, i) === 'right' && !read.hand && part === 'edge' && w(tokens, i - 1) !== 'the')
          return undefined;
        return {
          next: part === 'border' ? j + 2 : j + 1,
          places: read.sides.map((s) => `${part}-${s}`),
          how: 'said',
          rule: 'place.side',
          kind: 'part',
        };
      }
    }
    // "the bottom of the binding", "the top of the border"
    if (noun === 'of' && /^(the|its)$/.test(w(tokens, j + 1)) && sideNouns.has(w(tokens, j + 2)))
      return {
        next: j + 3,
        places: read.sides.map(
          (s) => `${sideNouns.get(w(tokens, j + 2)) === 'border' ? 'border' : 'edge'}-${s}`,
        ),
        how: 'said',
        rule: 'place.side-of-part',
        kind: 'part',
      };
    return sideAlone(tokens, i);
  }
  const noun = w(tokens, i);
  if (!sideNouns.has(noun)) return undefined;
  // "border on the left", "binding along the top edge", "edge at the bottom", "border L + R", "border, left side"
  let j = i + 1;
  let joined = false;
  while (
    ['on', 'along', 'at', 'the', 'to', ',', 'down', 'across', 'of', ':', '('].includes(w(tokens, j)) &&
    j < i + 4
  ) {
    joined = true;
    j++;
  }
  // "binding the left side now": the verb
  if (noun === 'binding' && (!joined || w(tokens, i + 1) === 'the')) return undefined;
  const sides = readSides(tokens, j);
  if (!sides) return undefined;
  if (!joined && noun !== 'border' && noun !== 'borders') return undefined;
  const after = w(tokens, sides.next);
  if (['block', 'corner', 'corners', 'row', 'column', 'border', 'borders', 'two', 'three'].includes(after)) {
    if (after === 'border' || after === 'borders') return undefined;
    return undefined;
  }
  const part = sideNouns.get(noun) === 'border' ? 'border' : 'edge';
  let next = sides.next;
  if (['edge', 'side', 'edges', 'sides'].includes(after)) next++;
  else if (w(tokens, j - 1) === ',' || (w(tokens, j - 1) === 'the' && w(tokens, j - 2) === 'of'))
    return undefined;
  return {
    next,
    places: sides.sides.map((s) => `${part}-${s}`),
    how: 'said',
    rule: 'place.part-side',
    kind: 'part',
  };
}

/** What makes another place of a side: "the bottom row", "the top right", "the left half". */
const NO_SIDE_BEFORE =
  /^(rows?|blocks?|blks?|squares?|corners?|columns?|cols?|left|right|half|halves|of|seams?|layers?|two|three|four|most|third|quarter|middle|end|stitch|stitching|thread|quilt|patch|patches|piece|fabric)$/;
const FACE_WORK = /^(photo|photograph|pictures?|pics|snaps|vacuum|hoover|brush|dust|clean|wash)/;

/**
 * "the left edge and the top", "along the top and the right", "off the left side and the bottom", "L side + bottom", "top n l side": the
 * sides that follow the first one in a list, whose part they share.
 */
function withMoreSides(tokens: Token[], i: number, found: PlaceFound): PlaceFound {
  const part = /^(edge|border)-/.exec(found.places[0] ?? '')?.[1];
  if (!part || found.places.length > 3 || (found.how === 'implied' && found.rule !== 'place.side-of-it'))
    return found;
  const places = [...found.places];
  let next = found.next;
  for (;;) {
    let k = next;
    if (/^(,|and|&|\+|n|\/)$/.test(w(tokens, k))) k++;
    if (k > next && /^(and|&|then)$/.test(w(tokens, k))) k++;
    if (k === next) break;
    if (/^(along|down|across|on|up)$/.test(w(tokens, k)) && w(tokens, k + 1) === 'the') k++;
    const the = w(tokens, k) === 'the';
    if (the) k++;
    const short = !the && tokens[k + 1]?.kind !== 'number' ? LETTERS.get(w(tokens, k)) : undefined;
    const side =
      SIDE_OF.get(w(tokens, k)) ??
      (/^[lrtb]$/.test(w(tokens, i)) || short === 'left' || w(tokens, next) === '+' ? short : undefined);
    if (!side || places.includes(`${part}-${side}`)) break;
    let j = k + 1;
    while (/^(hand|most)$/.test(w(tokens, j))) j++;
    const noun = /^(edge|edges|side|sides|one|ones|border|borders)$/.test(w(tokens, j));
    const word = w(tokens, noun ? j + 1 : j);
    if (sideNouns.has(w(tokens, j)) && (sideNouns.get(w(tokens, j)) === 'border') !== (part === 'border'))
      break;
    if (NO_SIDE_BEFORE.test(word) || (noun && word === 'in')) break;
    // "… and left the rest", "… and right across"
    if (
      !the &&
      !noun &&
      /^(left|right)$/.test(w(tokens, k)) &&
      /^(the|a|an|in|along|across|through|round|down|up|into|over|away|my|off|on|it|them|that|this|as|alone|all)$/.test(
        word,
      )
    )
      break;
    // "along the bottom border, and the left border is puckered": the second side has a verb of its own
    if (/^(is|'s|has|was|needs|wants)$/.test(word)) break;
    if (
      w(tokens, next) === ',' &&
      (TOLD_OF_SIDE.test(word) || /^(tomorrow|tmrw|tonight|next|later)$/.test(word))
    )
      break;
    // "vacuumed the left border and the top": the patchwork
    if (!noun && side === 'top' && places.length < 2 && tokens.some((t) => FACE_WORK.test(t.w))) break;
    places.push(`${part}-${side}`);
    next = noun ? j + 1 : j;
  }
  return places.length > found.places.length ? { ...found, places, next } : found;
}

/** "three sides by hand: the top, the left and the right", "bound two sides, top and left": told after how many they are. */
function sidesCounted(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  const lead = w(tokens, i - 1) === 'the' ? i - 2 : i - 1;
  if (
    !side ||
    NO_SIDE_BEFORE.test(w(tokens, i + 1)) ||
    /^(edge|side|hand|border|binding)/.test(w(tokens, i + 1))
  )
    return undefined;
  // "bound the bottom and the left", "bound top + R", "bound it top and right"
  const bound = w(tokens, lead) === 'it' ? lead - 1 : lead;
  if (
    /^(bound|hemmed)$/.test(w(tokens, bound)) &&
    // "bound the top and both sides" is read with its sides
    !/^(both|two|sides)$/.test(w(tokens, i + 2)) &&
    (w(tokens, lead + 1) === 'the' || /^(and|&|\+|,|\.|)$/.test(w(tokens, i + 1)))
  )
    return { next: i + 1, places: [`edge-${side}`], how: 'said', rule: 'place.sides-counted', kind: 'part' };
  if (!/^[:,]$/.test(w(tokens, lead))) return undefined;
  for (let k = lead - 1; k >= Math.max(1, lead - 7); k--) {
    if (STOP.test(w(tokens, k))) return undefined;
    if (!/^(sides|edges|borders)$/.test(w(tokens, k)) || !/^(two|three|four|2|3|4)$/.test(w(tokens, k - 1)))
      continue;
    const part = w(tokens, k) === 'borders' ? 'border' : 'edge';
    return {
      next: i + 1,
      places: [`${part}-${side}`],
      how: 'said',
      rule: 'place.sides-counted',
      kind: 'part',
    };
  }
  return undefined;
}

const BORDERS = /^borders?$/;
const STOP = /^[.;!?\n]$/;

/**
 * "left and right went on by machine", "top and bottom to go on tomorrow", "they go on left and right tonight, and after that top
 * and bottom": sides of the border that was spoken of before.
 */
function sidesPutOn(tokens: Token[], i: number): PlaceFound | undefined {
  // "new borders are on by machine, the top one and the bottom one"
  if (
    isSide(w(tokens, i)) &&
    w(tokens, i + 1) === 'one' &&
    !/^(in|of)$/.test(w(tokens, i + 2)) &&
    / borders are /.test(
      ` ${tokens
        .slice(Math.max(0, i - 9), i)
        .map((t) => t.w)
        .join(' ')} `,
    )
  )
    return {
      next: i + 2,
      places: [`border-${SIDE_OF.get(w(tokens, i))}`],
      how: 'implied',
      rule: 'place.sides-put-on',
      kind: 'part',
    };
  if (!isSide(w(tokens, i)) || !/^(and|&|\+|hand|side|both)$/.test(w(tokens, i + 1))) return undefined;
  const read = readSides(tokens, i);
  if (!read || read.sides.length < 2 || !tokens.slice(0, i).some((t) => BORDERS.test(t.w))) return undefined;
  let j = read.next;
  if (/^(hand|sides?|ones?)$/.test(w(tokens, j))) j++;
  // the words of the sentence on both sides, as far as the next stop
  let a = i;
  while (a > 0 && a > i - 10 && !STOP.test(w(tokens, a - 1))) a--;
  let b = j;
  while (b < tokens.length && b < j + 7 && !STOP.test(w(tokens, b))) b++;
  const before = ` ${tokens
    .slice(a, i)
    .map((t) => t.w)
    .join(' ')} `;
  const after = ` ${tokens
    .slice(j, b)
    .map((t) => t.w)
    .join(' ')} `;
  const on =
    / (?:go|goes|went|going|put|sewn|sewed|are|is|was|were) on (?:(?:the|left|right|top|bottom|and|both|sides|tonight|first|then|after|that|now|,) )*$/.test(
      before,
    ) ||
    /^ (?:(?:will|'ll|to|be|being|are|is|were|all|both|now|have|been|going) )*(?:go|goes|went|gone|going|put|sewn|sewed|stitched|joined|are|is|were|got|get)? ?on /.test(
      after,
    );
  if (!on) return undefined;
  return {
    next: j,
    places: read.sides.map((s) => `border-${s}`),
    how: 'implied',
    rule: 'place.sides-put-on',
    kind: 'part',
  };
}

/** "both faces", "back and front", "front and back": the top and the backing. */
function bothFaces(tokens: Token[], i: number): PlaceFound | undefined {
  const a = w(tokens, i);
  const b = w(tokens, i + 1);
  // "photographed both sides", "stained on both sides": of the quilt, where no border or edge is spoken of
  if (
    a === 'both' &&
    b === 'sides' &&
    !/^(of|edges|borders)$/.test(w(tokens, i + 2)) &&
    !/^(down|along|up)$/.test(w(tokens, i - 1)) &&
    !tokens.some((t) => PARTS_WITH_SIDES.has(t.w) || /^(seams?|stitch|it|blocks?|quilt)$/.test(t.w)) &&
    tokens.some((t) => WHOLE_FACE.test(t.w))
  )
    return { next: i + 2, places: ['top', 'backing'], how: 'said', rule: 'place.both-faces', kind: 'part' };
  const pairEnd =
    /^(both|either)$/.test(a) && /^(faces|face)$/.test(b)
      ? i + 2
      : /^(front|face)$/.test(a) && /^(and|&|\+)$/.test(b) && w(tokens, i + 2) === 'back'
        ? i + 3
        : a === 'back' && /^(and|&|\+)$/.test(b) && /^(front|face)$/.test(w(tokens, i + 2))
          ? i + 3
          : undefined;
  return pairEnd
    ? { next: pairEnd, places: ['top', 'backing'], how: 'said', rule: 'place.both-faces', kind: 'part' }
    : undefined;
}

const WHOLE_FACE =
  /^(photo|photograph|picture|shot|snap|clean|vacuum|vac$|vacc|hoover|brush|dust|press|iron|stain|fade|fading|wash|spong|discolou?r)/;

/** The border or the edge named shortly before token `i` in the same sentence, or right after it; a binding's sides are edges. */
function partNear(tokens: Token[], i: number, after: number): 'border' | 'edge' | undefined {
  for (let k = i - 1; k >= Math.max(0, i - 8); k--) {
    const word = w(tokens, k);
    if (/^[.;!?]$/.test(word)) break;
    if (/^(row|rows|block|blocks|column|corner|backing|batting)$/.test(word)) break;
    const part = PARTS_WITH_SIDES.get(word);
    if (part) return part;
  }
  for (let k = after; k < Math.min(after + 3, tokens.length); k++) {
    const part = PARTS_WITH_SIDES.get(w(tokens, k));
    if (part) return part;
    if (!/^(the|of|,)$/.test(w(tokens, k))) break;
  }
  return undefined;
}

/** "all four borders", "the side borders", "down both sides", "all four edges", "the sides are frayed". */
function severalSides(tokens: Token[], i: number): PlaceFound | undefined {
  let j = i;
  if (w(tokens, j) === 'all') j++;
  if (w(tokens, j) === 'the') j++;
  const make = (part: 'border' | 'edge', sides: string[], next: number): PlaceFound => ({
    next,
    places: sides.map((s) => `${part}-${s}`),
    how: 'said',
    rule: 'place.several-sides',
    kind: 'part',
  });
  const noun = w(tokens, j + 1);
  if (/^(four|4)$/.test(w(tokens, j)) && /^(borders|edges)$/.test(noun)) {
    return make(noun === 'borders' ? 'border' : 'edge', ['top', 'right', 'bottom', 'left'], j + 2);
  }
  // "bound the top and both sides"; asked only where sides are told, since it looks at every word of the note
  const bound = (): 'edge' | undefined => (tokens.some((t) => BINDING.has(t.w)) ? 'edge' : undefined);
  const first = SIDE_OF.get(w(tokens, i));
  if ((first === 'top' || first === 'bottom') && /^(and|&|\+|,)$/.test(w(tokens, i + 1))) {
    const at = /^(both|the|two)$/.test(w(tokens, i + 2)) ? i + 3 : i + 2;
    const of = w(tokens, at) === 'sides' ? (partNear(tokens, i, at + 1) ?? bound()) : undefined;
    if (of) return make(of, [first, 'left', 'right'], at + 1);
  }
  // "other two sides" are those that were not told before
  if (/^(other|remaining)$/.test(w(tokens, i - 1))) return undefined;
  const both = /^(both|two)$/.test(w(tokens, i)) ? i + 1 : i;
  // "two sides, top and right" are told apart after it
  if (w(tokens, both) === 'sides' && SIDE_OF.has(w(tokens, both + (w(tokens, both + 1) === ',' ? 2 : 1))))
    return undefined;
  if (w(tokens, both) === 'side' && /^(borders|edges|bindings)$/.test(w(tokens, both + 1)))
    return make(w(tokens, both + 1) === 'borders' ? 'border' : 'edge', ['left', 'right'], both + 2);
  if (w(tokens, both) !== 'sides' || /^(of)$/.test(w(tokens, both + 1))) return undefined;
  const led = w(tokens, i - 1);
  const part = partNear(tokens, i, both + 1) ?? bound();
  if (both > i && (part || /^(down|up|along)$/.test(led)))
    return make(part ?? 'edge', ['left', 'right'], both + 1);
  // "the sides are frayed"
  if (
    both === i &&
    led === 'the' &&
    !/^(on|in|at|from)$/.test(w(tokens, i - 2)) &&
    (part || /^(are|have|is|of|got|need|want)$/.test(w(tokens, both + 1)))
  )
    return make(part ?? 'edge', ['left', 'right'], both + 1);
  return undefined;
}

const BINDING = new Set(['bound', 'bind', 'binding', 'hemmed', 'bdg']);

/**
 * "border's stained at the top", "binding frayed, left", "edge frayed at foot", "the binding's gone on the left": one side told
 * after its part; "the bottom of the quilt".
 */
function trailingSide(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  if (!side) return undefined;
  let j = i + 1;
  if (w(tokens, j) === 'hand') j++;
  if (/^(side|edge)$/.test(w(tokens, j)) && !PARTS_WITH_SIDES.has(w(tokens, j + 1))) j++;
  const before = w(tokens, i - 1);
  if (
    w(tokens, j) === 'of' &&
    /^(the|this)$/.test(w(tokens, j + 1)) &&
    /^(quilt|coverlet|thing)$/.test(w(tokens, j + 2))
  ) {
    if (side === 'top' && !/^(along|across|at)$/.test(w(tokens, i - 2))) return undefined;
    return { next: j + 3, places: [`edge-${side}`], how: 'said', rule: 'place.side-of-quilt', kind: 'part' };
  }
  const led = /^(on|at|along|down|across|up)$/.test(
    before === 'the' || before === 'its' ? w(tokens, i - 2) : before,
  );
  if (!led && before !== ',') return undefined;
  if (
    !/^(|,|\.|;|and|&|but|so|though|too|only|is|\)|where|because|with|by|for|i|it|that)$/.test(w(tokens, j))
  )
    return undefined;
  // "and the top right", "on the left and the bottom row" are other places
  if (
    /^(and|&|,)$/.test(w(tokens, j)) &&
    /^(rows?|columns?|blocks?)$/.test(w(tokens, j + 2) + w(tokens, j + 3))
  )
    return undefined;
  let part: 'border' | 'edge' | undefined;
  for (let k = i - 1; k >= Math.max(0, i - 9) && !part; k--) {
    const word = w(tokens, k);
    if (/^[.;!?]$/.test(word) || /^(rows?|blocks?|columns?|corners?|batting|wadding|backing)$/.test(word))
      return undefined;
    part = word === 'bdg' || word === 'bndg' ? 'edge' : PARTS_WITH_SIDES.get(word);
    if (part && SIDE_OF.has(w(tokens, k - 1)) && before !== ',' && !led) return undefined;
    // "the top border is stained on the left": a side told already
    if (part && (SIDE_OF.has(w(tokens, k - 1)) || w(tokens, k - 1) === 'hand')) return undefined;
  }
  return (
    part && { next: j, places: [`${part}-${side}`], how: 'said', rule: 'place.part-then-side', kind: 'part' }
  );
}

/** What kind of side was last spoken of: border, edge, or none. */
function sideKind(ctx: PlaceContext): 'border' | 'edge' | undefined {
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const side = group.find((p) => /^(border|edge)(-|$)/.test(p) || p === 'binding');
    if (side) return side.startsWith('border') ? 'border' : 'edge';
    if (group.some((p) => /^\d/.test(p)) && group !== ctx.focus) return undefined;
  }
  return undefined;
}

/**
 * After a border or an edge: "the right one", "the bottom one", "the side ones", "R tomorrow", "left to follow". A column
 * spoken of just before makes "the bottom one" a block, which the grid's rules read.
 */
function sideOfFocus(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const kind = sideKind(ctx);
  if (!kind) return undefined;
  const make = (sides: string[], next: number): PlaceFound => ({
    next,
    places: sides.map((s) => `${kind}-${s}`),
    how: 'implied',
    rule: 'place.side-of-it',
    kind: 'part',
  });
  const before = w(tokens, i - 1);
  const noun = w(tokens, i + 1);
  if (w(tokens, i) === 'side' && (noun === 'ones' || noun === 'pieces'))
    return make(['left', 'right'], i + 2);
  // "borders are on top and bottom. The two sides go on tomorrow"
  if (
    /^(both|two|2)$/.test(w(tokens, i)) &&
    noun === 'sides' &&
    ctx.focus.length === 2 &&
    ctx.focus.every((p) => /-(top|bottom)$/.test(p)) &&
    !/^of$/.test(w(tokens, i + 2))
  )
    return make(['left', 'right'], i + 2);
  const beginsClause = /^(|\.|,|;|:|the|then|and|&|\+|but|while|now)$/.test(before);
  if (w(tokens, i) === 'sides' && beginsClause && TOLD_OF_SIDE.test(noun))
    return make(['left', 'right'], i + 1);
  const side = SIDE_OF.get(w(tokens, i)) ?? LETTERS.get(w(tokens, i));
  if (!side) return undefined;
  // "tomorrow the top and the bottom ones"
  const several = isSide(w(tokens, i)) ? readSides(tokens, i) : undefined;
  if (several && several.sides.length > 1 && w(tokens, several.next) === 'ones')
    return make(several.sides, several.next + 1);
  let j = i + 1;
  if (w(tokens, j) === 'hand') j++;
  if (/^(one|ones)$/.test(w(tokens, j)) && isSide(w(tokens, i)) && !/^(in|of)$/.test(w(tokens, j + 1)))
    return make([side], j + 1);
  if (
    /^(tomorrow|tmrw|tmw|next|later|done|ditto|too|tonight|also)$/.test(w(tokens, j)) &&
    /^(|\.|,|;|the|then|and|&|\+)$/.test(before)
  )
    return make([side], j);
  if (
    w(tokens, j) === 'to' &&
    /^(follow|do|come|go)$/.test(w(tokens, j + 1)) &&
    /^(|\.|,|;|the|then|and|&|\+)$/.test(before)
  )
    return make([side], j);
  // "left frayed, right ok", "R fine"
  if (ctx.focus.some((p) => p.startsWith(`${kind}-`))) {
    // "left and bottom off, 30 min", "top and bottom on too"
    const listed = beginsClause ? readSides(tokens, i) : undefined;
    if (listed && isToldOfSides(tokens, listed.next)) return make(listed.sides, listed.next);
    // "edges: top worn, right: sound"
    if (beginsClause && TOLD_OF_SIDE.test(w(tokens, w(tokens, j) === ':' ? j + 1 : j)))
      return make([side], j);
    // "same on the bottom", "ditto the left", "the same again along the right hand side"
    const led = before === 'the' ? i - 2 : i - 1;
    const to = /^(on|for|along|down|up|across|at|to|with|round)$/.test(w(tokens, led)) ? led - 1 : led;
    if (
      /^(same|ditto|likewise|again|thing|treatment)$/.test(w(tokens, to)) &&
      /^(|,|\.|;|and|&|\+|too|as|side|edge|now|then|also)$/.test(w(tokens, j))
    )
      return make([side], /^(side|edge)$/.test(w(tokens, j)) ? j + 1 : j);
    // "and the top", "now the bottom, and that's it all off"
    if (
      before === 'the' &&
      ((/^(and|then|now|also|next|,)$/.test(w(tokens, i - 2)) && i <= 4) ||
        // "so's the top", "the left border's frayed and so is the right"
        (/^('s|is|has|does)$/.test(w(tokens, i - 2)) && w(tokens, i - 3) === 'so')) &&
      /^(|,|\.|too|as|and|but)$/.test(w(tokens, j))
    )
      return make([side], j);
  }
  return undefined;
}

/** "off", "on too", "bound": what is told of sides whose border or binding is being worked on. */
const isToldOfSides = (tokens: Token[], j: number): boolean =>
  TOLD_OF_SIDE.test(w(tokens, j)) ||
  // "T+B tmrw"
  /^(tomorrow|tmrw|tmw|next|later|tonight|done|same|ditto)$/.test(w(tokens, j)) ||
  (/^(off|on|out)$/.test(w(tokens, j)) &&
    /^(|[,.;!\n]|too|now|as|by|and|&|in|took|w|with|already|at|\d+)$/.test(w(tokens, j + 1)));

/** "bottom bound, 35 min", "top and left hemmed": only an edge is. */
function boundSide(tokens: Token[], i: number): PlaceFound | undefined {
  if (!/^(|[.,;:\n]|the|then|and|&|\+|now)$/.test(w(tokens, i - 1))) return undefined;
  const read = readSides(tokens, i);
  return read && /^(bound|rebound|hemmed|rehemmed)$/.test(w(tokens, read.next))
    ? {
        next: read.next,
        places: read.sides.map((s) => `edge-${s}`),
        how: 'said',
        rule: 'place.bound-side',
        kind: 'part',
      }
    : undefined;
}

/** What is said at once of a side told by its name alone. */
const TOLD_OF_SIDE =
  /^(is|'s|are|has|came|comes|went|goes|got|gets|looks|feels|ok|okay|fine|sound|good|solid|intact|frayed|fraying|worn|wearing|torn|tearing|ripped|stained|faded|fading|missing|thin|weak|tender|split|splitting|loose|needs|wants|badly|worse|shattered|threadbare|open|mildewed|mouldy|moldy|puckered|patched|trimmed|bound|unpicked|holed|perished)$/;

/** "binding worn L & R", "border faded top and bottom", "edge frayed on the left and right": two sides told after their part. */
function listedSides(tokens: Token[], i: number): PlaceFound | undefined {
  const first = SIDE_OF.get(w(tokens, i)) ?? LETTERS.get(w(tokens, i));
  const second = SIDE_OF.get(w(tokens, i + 2)) ?? LETTERS.get(w(tokens, i + 2));
  // "edge frayed left, right and bottom"
  const three =
    w(tokens, i + 1) === ',' && /^(&|\+|and)$/.test(w(tokens, i + 3)) && SIDE_OF.has(w(tokens, i + 4));
  if (!first || !second || first === second || !(three || /^(&|\+|and|\/)$/.test(w(tokens, i + 1))))
    return undefined;
  if (
    /^(border|borders|edge|edges|side|sides|hand|block|blocks|row|rows|corner|corners|column|columns|one|ones|binding|\d+)$/.test(
      w(tokens, i + 3),
    )
  )
    return undefined;
  for (let k = i - 1; k >= Math.max(0, i - 7); k--) {
    const word = w(tokens, k);
    if (/^[.;!?]$/.test(word)) return undefined;
    const part = word === 'bdg' || word === 'bndg' ? 'edge' : PARTS_WITH_SIDES.get(word);
    if (part)
      return {
        next: i + 3,
        places: [`${part}-${first}`, `${part}-${second}`],
        how: 'said',
        rule: 'place.listed-sides',
        kind: 'part',
      };
  }
  return undefined;
}
/** "trimmed the left edge and the right", "pressed the top border and the bottom": the other side of the part just named. */
function oneMoreSide(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  if (!side) return undefined;
  const the = w(tokens, i - 1) === 'the';
  const k = the ? i - 2 : i - 1;
  if (!/^(and|&|\+|,)$/.test(w(tokens, k))) return undefined;
  const part = PARTS_WITH_SIDES.get(w(tokens, k - 1));
  const first = SIDE_OF.get(w(tokens, w(tokens, k - 2) === 'hand' ? k - 3 : k - 2));
  if (!part || !first || first === side) return undefined;
  // "… and left the rest", "… and the top" of patchwork
  if (!the && /^(left|right)$/.test(side)) return undefined;
  if (side === 'top' && first !== 'bottom') return undefined;
  const j = w(tokens, i + 1) === 'hand' ? i + 2 : i + 1;
  if (
    !/^(|[.;,!?\n]|and|&|by|with|in|an?|half|both|too|as|is|'s|are|have|has|tomorrow|today|now|then|took|take|on|at|for|\d+)$/.test(
      w(tokens, j),
    )
  )
    return undefined;
  return { next: j, places: [`${part}-${side}`], how: 'said', rule: 'place.one-more-side', kind: 'part' };
}

const PARTS_WITH_SIDES = new Map<string, 'border' | 'edge'>(
  Object.entries({
    border: 'border',
    borders: 'border',
    binding: 'edge',
    edge: 'edge',
    edges: 'edge',
  }),
);

/** Sides by their letter, as terse notes write them beside "border" or "edge". */
const LETTERS = new Map<string, 'top' | 'right' | 'bottom' | 'left'>(
  Object.entries({
    t: 'top',
    r: 'right',
    b: 'bottom',
    l: 'left',
  }),
);

/** "top", "left hand", "top and bottom", "L + R", "top, right and bottom". */
function readSides(
  tokens: Token[],
  i: number,
): { sides: ('top' | 'right' | 'bottom' | 'left')[]; next: number; hand: boolean } | undefined {
  const letter = LETTERS.get(w(tokens, i));
  const lettered =
    letter !== undefined &&
    (/^(border|edge|side|borders|edges|and|&|\+|,|\/)$/.test(w(tokens, i + 1)) ||
      // "border R frayed"
      sideNouns.has(w(tokens, i - 1)));
  if (!isSide(w(tokens, i)) && !lettered) return undefined;
  const sides = [SIDE_OF.get(w(tokens, i)) ?? letter!];
  let j = i + 1;
  let hand = false;
  const skipHand = (): void => {
    while (w(tokens, j) === 'hand' || w(tokens, j) === 'most') {
      hand = true;
      j++;
    }
  };
  skipHand();
  for (;;) {
    let k = j;
    while ([',', 'and', '&', '+', 'the', '/'].includes(w(tokens, k)) && k < j + 3) k++;
    if (k === j || !(isSide(w(tokens, k)) || LETTERS.get(w(tokens, k)) !== undefined)) break;
    // "right border and the bottom row": the second side must lead to the same noun or to none
    sides.push(SIDE_OF.get(w(tokens, k)) ?? LETTERS.get(w(tokens, k))!);
    j = k + 1;
    skipHand();
  }
  return { sides: [...new Set(sides)], next: j, hand };
}

/** "along the top", "down the left", "across the bottom": a side of the border, or else of the edge. */
function sideAlone(tokens: Token[], i: number): PlaceFound | undefined {
  const way = w(tokens, i - 2);
  if (w(tokens, i - 1) !== 'the' || !/^(along|across|down|up|off|from)$/.test(way)) return undefined;
  // "trimmed half an inch off the bottom", "the binding off the bottom", but "took the patch off the top"
  if (
    /^(off|from)$/.test(way) &&
    !tokens
      .slice(Math.max(0, i - 8), i - 2)
      .some((t) =>
        /^(inch|inches|in|cm|mm|eighths?|quarters?|centimetres?|centimeters?|millimetres?|millimeters?|half|sliver|strip|whisker|binding|bdg)$/.test(
          t.w,
        ),
      )
  )
    return undefined;
  const sides = readSides(tokens, i);
  if (!sides) return undefined;
  // "squared up the top" names no side; "up the left" does
  const upright = sides.sides.every((s) => s === 'left' || s === 'right');
  if (way === 'up' && !upright) return undefined;
  let next = sides.next;
  if (/^(side|sides)$/.test(w(tokens, next))) next++;
  if (/^(block|blocks|row|rows|corner|column|two|three|border|edge|half|of|seam)$/.test(w(tokens, next)))
    return undefined;
  return {
    next,
    places: sides.sides.map((s) => `edge-${s}`),
    how: 'said',
    rule: 'place.side-alone',
    kind: 'part',
  };
}
