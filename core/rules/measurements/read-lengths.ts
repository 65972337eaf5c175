import type { LengthUnit, Measure } from '../../../shared/vocabulary.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { Claims, Sentence } from '../read-amounts.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { bareUnit, findMeasurements, type MeasureFound } from './find-measurements.ts';

/** Drafts of the lengths told in a note. A unit said once holds for the whole list, also over a full stop. */
export function readLengths(state: ReaderState, sentences: Sentence[], claims: Claims): void {
  const found: { m: MeasureFound; sentence: Sentence }[] = [];
  const measured = sentences.filter((s) => s.items.some((x) => x.measure || /^(by|x|×|measured)$/.test(x.w)));
  // "seams 1/4, blocks 11 1/2 sq, border 2 3/8. all inches": a sentence that tells the unit of all of them
  const ofAll = measured.length
    ? sentences
        .filter((s) => s.items.length <= 4)
        .map((s) => bareUnit(s.items))
        .find(Boolean)
    : undefined;
  const note =
    ofAll ??
    measured
      .flatMap((s) => s.items)
      .map((x) => x.quantity?.unit)
      .find((u): u is LengthUnit => u === 'in' || u === 'cm' || u === 'mm') ??
    measured.map((s) => bareUnit(s.items)).find(Boolean);
  for (const sentence of sentences) {
    const own = findMeasurements(sentence.items, note, ofAll);
    const before = found.at(-1)?.m;
    const first = sentence.items[0];
    // "... and the other way... ninety-three": the second diagonal stands by itself
    if (
      !own.length &&
      before?.of === 'diagonal' &&
      sentence.items.length <= 2 &&
      first?.quantity?.value !== undefined
    )
      own.push({ of: 'diagonal', value: first.quantity.value, items: [first], rule: 'measure.diagonal' });
    const ofBorder = own.length ? undefined : borderBefore(sentence, sentences);
    if (ofBorder) own.push(ofBorder);
    if (isSizeOfDamage(sentence.items, own) || isSizeOfFound(sentence, own, sentences)) continue;
    for (const m of own) if (!isInitial(state, m.items[0])) found.push({ m, sentence });
  }
  for (const sentence of sentences) {
    const open = unknownLength(
      sentence,
      state,
      found.map(({ m }) => m),
      note,
    );
    if (!open) continue;
    found.push({ m: open, sentence });
  }
  for (const { m, sentence } of found) if (!m.value) cutWhatBecameOfIt(m, sentence.items, claims);
  let unit: LengthUnit | undefined = found.find(({ m }) => m.unit)?.m.unit ?? note;
  for (const { m, sentence } of found) {
    unit = m.unit ?? unit;
    const whole = m.of === 'width' || m.of === 'length' || m.of === 'diagonal';
    const part = whole ? (partMeasured(sentence.items, m) ?? measuredBefore(sentence, sentences)) : undefined;
    const places = whole
      ? [part?.part ?? 'quilt']
      : m.of === 'border'
        ? (m.place ?? ['border'])
        : m.of === 'overhang' || m.of === 'block'
          ? m.place
          : undefined;
    const draft = makeDraft(
      'measurement',
      { index: -1, sentence: sentence.number, items: sentence.items },
      {
        of: [m.of, m.rule, m.items],
        value: [m.value, m.rule, m.items],
        unit: [m.unit ?? unit, m.rule, m.items, m.unit ? 'said' : 'implied'],
        places: [places, m.rule, undefined, 'implied'],
      },
      'unneeded',
    );
    state.drafts.push(draft);
    // "leave about an inch on the tails": how long they are left
    if (m.of === 'tail' || m.of === 'overhang') {
      const figure = sentence.items.findIndex((x) => m.items.includes(x) && x.quantity);
      // "tails trimmed to an inch"
      for (const x of sentence.items.slice(Math.max(0, figure - 3), figure))
        if (x.action?.v === 'leave' || (m.of === 'tail' && /^(?:trim|cut)$/.test(x.action?.v ?? '')))
          claims.drop.add(x);
    }
    // "border's three and a half inches | edge is frayed": another part begins behind it
    for (const x of m.items)
      if (isOnlyFigure(x) && beginsPart(sentence.items, sentence.items.indexOf(x) + 1)) claims.cut.add(x);
      else if (
        isOnlyFigure(x) ||
        // "measured it, top 151 cm, bottom 153": the side is what was measured, and no place of anything else
        m.rule === 'measure.side' ||
        (m.of === 'overhang' && /^(?:leave|leaving|left)$/.test(x.w))
      )
        claims.drop.add(x);
  }
}

const UNIT = /^(inch|inches|cm|mm|centimet(?:re|er)s?|millimet(?:re|er)s?)$/;

/** "the border's so many cm wide, only I wrote it on my hand and it's washed off": what became of a figure that is not known. */
function cutWhatBecameOfIt(m: MeasureFound, items: Item[], claims: Claims): void {
  const own = Math.max(...m.items.map((x) => items.indexOf(x)));
  // "the border strips I cut at … inches, I'll have to look": the unit without its figure stands behind
  const unit = items.findIndex((x, k) => k > own && UNIT.test(x.w));
  const rest = items.slice(Math.max(own, unit) + 1);
  const lost = rest.findIndex((x) => /^(only|but|'ve|i|except)$/.test(x.w));
  if (lost >= 0 && !rest.some((x) => x.place?.kind === 'blocks' || x.quantity?.unit || x.measure === 'strip'))
    for (const x of rest.slice(lost)) claims.cut.add(x);
}

/** "M.E.W. 1931": the last letter of somebody's name, and no width. */
const isInitial = (state: ReaderState, x: Item | undefined): boolean =>
  x !== undefined &&
  /^[wl]$/.test(x.w) &&
  state.tokens[x.i - 1]?.w === '.' &&
  /^[a-z]$/.test(state.tokens[x.i - 2]?.w ?? '');

/** "that hole is about an inch across", "a tear three inches long": how large the damage is, not the quilt. */
const isSizeOfDamage = (items: Item[], own: MeasureFound[]): boolean =>
  isHoleByBoth(items, own) ||
  (own.length === 1 &&
    (own[0]!.of === 'width' || own[0]!.of === 'length') &&
    !OF_THE_WHOLE.test(wordsBetween(items)) &&
    items.some((x) => /^(tear|hole|stain|split-seam|missing|insect-damage)$/.test(x.finding ?? '')) &&
    items.some((x) => /^(across|long|wide|big|round)$/.test(x.w) || /(across|long|wide)$/.test(x.w)));

/** "2-2 is torn and the quilt is 60 inches wide": what is so wide is told. */
const OF_THE_WHOLE =
  / (?:and|but|so|,|;|-|--) (?:now )?(?:the|this|its|my) (?:whole )?(?:quilt|backing|batting|wadding|top|thing|cover) (?:is|'s|measures|comes (?:out at|to)|works out at) /;

/** "hole in the backing, two inches by three" */
const isHoleByBoth = (items: Item[], own: MeasureFound[]): boolean =>
  own.length === 2 &&
  own.every((m) => m.rule === 'measure.by' && m.value !== undefined && m.value < 15) &&
  items.slice(0, items.indexOf(own[0]!.items[0]!)).some((x) => DAMAGE.test(x.finding ?? ''));

const UNKNOWN =
  /^(?:(?:side|edge|for|new|comes|come|came|hangs|works|worked|out|about|roughly|binding|border|is|was|'s|are|were|the|of|by|at|a|to|cut|width|so|:|=|,|-|and|but|only|oh|uh|um|hang|on|wait|it) )*(?:\? ?|_ |\. \. |(?:i )?(?:forget|forgot|ca n't|could n't|do n't|did n't|have n't|'ve lost|lost|never (?:noted|measured|wrote))\b|what was (?:it|that)\b|not (?:sure|noted|measured|written|taken)|whatever\b|unknown|illegible|blank|smudged|tbc|to be (?:measured|confirmed)|how (?:long|wide)|so many (?:inch|cm|mm|cent|mill)|many (?:in|cm|mm|cent|mill|ft|feet|foot|m|met|yd|yard)|(?:inches|cm|mm|centimetres|centimeters|millimetres)\b)/;
/** "I didn't get the length", "forgot to take the width". */
const UNTAKEN =
  / (?:did n't|have n't|forgot to|never|could n't) (?:get|got|take|taken|took|measure|measured|note|noted|write down|wrote down)(?: down)? (?:the|its|a) $/;
const SIDE_OF: Record<string, Measure> = {
  top: 'side-top',
  bottom: 'side-bottom',
  btm: 'side-bottom',
  left: 'side-left',
  right: 'side-right',
  l: 'side-left',
  r: 'side-right',
};

/** "sides L 190, R ? cm", "and the right side, oh, what was it", "length I forget": a length asked after and not told. */
function unknownLength(
  sentence: Sentence,
  state: ReaderState,
  found: MeasureFound[],
  note: LengthUnit | undefined,
): MeasureFound | undefined {
  const sided = found.some((m) => m.of.startsWith('side-'));
  const { tokens } = state;
  for (const x of sentence.items) {
    const side = sided
      ? (SIDE_OF[x.w.split(' ')[0] ?? ''] ??
        SIDE_OF[/^edge-(\w+)$/.exec(x.place?.places[0] ?? '')?.[1] ?? ''])
      : undefined;
    const [next, far] = [tokens[x.j]?.w ?? '', tokens[x.j + 1]?.w];
    // "border __ cm", "the border is so many inches"
    const gap =
      /^(many|_)$/.test(next) ||
      // "new border? maybe" asks of the border, "border ? cm" of its width
      (next === '?' && (Object.hasOwn(UNIT_WORDS, far ?? '') || found.length > 0)) ||
      (next === '.' && far === '.') ||
      (/^(is|was|'s)$/.test(next) && far === 'so' && tokens[x.j + 2]?.w === 'many');
    const of =
      side ??
      // "border __ cm"
      (x.part === 'border' && gap
        ? 'border'
        : x.seam && x.w !== 'seam allowance' && !gap
          ? undefined
          : x.measure);
    if (!of || found.some((m) => m.items.includes(x) || (m.of === of && of !== 'diagonal'))) continue;
    if (/^(wide|across|high|tall|apart|over|long|l|w|ends)$/.test(x.w) && !side) continue;
    const after = tokens
      .slice(x.j, x.j + 12)
      .map((t) => t.w)
      .join(' ');
    const before = tokens
      .slice(Math.max(0, x.i - 5), x.i)
      .map((t) => t.w)
      .join(' ');
    if (!UNKNOWN.test(`${after} `) && !UNTAKEN.test(` ${before} `)) continue;
    const said =
      /\b(inches|inch|cm|mm|in|m|ft|yd|centimetres|centimeters|millimetres|millimeters|metres|meters|feet|yards)\b/.exec(
        after,
      )?.[1];
    const unit = said ? (UNIT_WORDS[said] as LengthUnit) : (found.at(-1)?.unit ?? note);
    return { of, ...(unit ? { unit } : {}), items: [x], rule: 'measure.unknown' };
  }
  return undefined;
}

/** The layer that a width or length is of: named before it, or right behind ("62 by 70, the backing"). */
function partMeasured(items: Item[], m: MeasureFound): Item | undefined {
  const layer = (x: Item): boolean =>
    x.part === 'top' || x.part === 'backing' || x.part === 'batting' || x.part === 'sashing';
  const at = m.items.map((x) => items.indexOf(x)).filter((k) => k >= 0);
  const [first, last] = [Math.min(...at), Math.max(...at)];
  const behind = items.findIndex((x, k) => k > last && k < last + 9 && (layer(x) || x.measure === 'block'));
  const told =
    behind < 0 ||
    !layer(items[behind]!) ||
    beginsPart(items, behind) ||
    // "the whole thing is 61 by 70, and I photographed the front": what else was done, to a face of it
    items.slice(last + 1, behind).some((x) => x.action && x.action.v !== 'measure');
  // "the batting was all lumps, and the quilt is five foot four wide"
  // "old wadding out, bit gone from 6-2, width 1.58": other places have been told of since
  const named = items
    .slice(0, first)
    .findLast((x) => layer(x) || x.w === 'quilt' || x.place?.kind === 'blocks');
  return named && !layer(named) ? undefined : (named ?? (told ? undefined : items[behind]));
}

/** "measured the top. It's 71 by 90 inches", "the backing's on. It's 70 by 88": the one layer that the sentence before was about. */
function measuredBefore({ items, number }: Sentence, sentences: Sentence[]): Item | undefined {
  if (!/^(?:it|that|comes|came)$/.test(items[0]?.w ?? '') || items.some((x) => x.w === 'quilt'))
    return undefined;
  const before = sentences.find((s) => s.number === number - 1)?.items ?? [];
  const parts = before.filter((x) => LAYER.test(x.part ?? ''));
  const measured =
    before.some((x) => /^(?:measure|cut|piece)$/.test(x.action?.v ?? '')) ||
    / (?:is|'s) (?:on|ready|cut|pieced) /.test(`${wordsBetween(before)} `);
  if (!measured || before.some((x) => x.place?.kind === 'blocks')) return undefined;
  return parts.length === 1 ? parts[0] : undefined;
}
const LAYER = /^(?:top|backing|batting)$/;

/** "tear in 2-3. It's 3 inches long": how large what was found just before is. */
function isSizeOfFound({ items, number }: Sentence, own: MeasureFound[], sentences: Sentence[]): boolean {
  if (own.length !== 1 || !/^(?:length|width)$/.test(own[0]!.of) || items[0]?.w !== 'it' || items.length > 8)
    return false;
  const before = sentences.find((s) => s.number === number - 1)?.items ?? [];
  return (
    before.some((x) => DAMAGE.test(x.finding ?? '')) &&
    !before.some((x) => x.action?.v === 'measure' || x.w === 'quilt' || LAYER.test(x.part ?? ''))
  );
}
const DAMAGE = /^(?:tear|hole|stain|split-seam|missing|insect-damage)$/;

/** "the border's on. It's 5 inches": the width of what was told just before. */
function borderBefore({ items, number }: Sentence, sentences: Sentence[]): MeasureFound | undefined {
  const words = wordsBetween(items);
  const at = items.findIndex((x) => x.quantity);
  const unit = items[at]?.quantity?.unit;
  if (
    !/^ it (?:'s|is|measures|comes out at|comes to|finishes at)(?: (?:about|a good|just|all of))? /.test(
      words,
    )
  )
    return undefined;
  if (at < 0 || items.length - at > 2 || !/^(?:in|cm|mm)$/.test(unit ?? '')) return undefined;
  const before = sentences.find((s) => s.number === number - 1)?.items ?? [];
  const borders = before.filter((x) => x.part === 'border' || x.place?.places[0]?.startsWith('border'));
  if (borders.length !== 1 || before.some((x) => x.place?.kind === 'blocks')) return undefined;
  return {
    of: 'border',
    value: items[at]!.quantity!.value!,
    unit: unit as LengthUnit,
    items: [items[at]!],
    place: borders[0]!.place?.places,
    rule: 'measure.border',
  };
}

/** Does a part or a line with a verb of its own stand at `k`, or what she did next: "edge is frayed", "column five's faded", "next I'll piece the border"? */
const beginsPart = (items: Item[], k: number): boolean => {
  if (
    /^(?:next|now|then)$/.test(items[k]?.w ?? '') &&
    /^(?:i|we)$/.test(items[k + 1]?.w ?? '') &&
    items[k + 2] !== undefined
  )
    return true;
  const at = items[k]?.w === 'the' ? k + 1 : k;
  const x = items[at];
  return (
    (x?.place?.kind === 'part' || x?.place?.kind === 'blocks') &&
    !x.measure &&
    /^('s|is|are|has|have|was|were)$/.test(items[at + 1]?.w ?? '') &&
    !items[at + 2]?.quantity
  );
};

/** Words that say nothing but the length; "strips" and "border" are also what was cut or put on. */
const isOnlyFigure = (x: Item): boolean =>
  Boolean(x.quantity) ||
  (x.measure !== undefined &&
    !x.part &&
    !x.place &&
    !x.action &&
    !x.material &&
    !x.finding &&
    x.measure !== 'strip');
