import type { Material, MaterialUse } from '../../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET } from '../../../lexicon/units.ts';
import { makeDraft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';
import type { GoodFound } from '../find-good.ts';
import { measuredIn } from '../measured-in.ts';
import type { GoodsTold, Told } from './goods-told.ts';
import { sentencePurpose } from './heading.ts';

const isUnknownNoun = (x: Item): boolean =>
  x.token.kind === 'word' &&
  !x.quantity &&
  !x.place &&
  !/^(?:pieces?|of|it|them|that|more|too|also|left|each|the|a|bits?|scraps?|for|in|on)$/.test(x.w);

/** Makes the draft of a good found: what it is where its own words do not tell, and what it is for. */
export function pushGood({ state, sentence, made }: GoodsTold, good: GoodFound, use: MaterialUse): void {
  let material: Material | undefined = good.material;
  let unit = good.unit;
  let how: 'said' | 'implied' = 'said';
  const purpose = sentencePurpose(sentence.items);
  if (purpose && (!material || material === 'fabric') && (use !== 'used' || !material)) {
    material = purpose;
    how = 'implied';
  }
  if (material === 'fabric' && (good.forIt || FOR_IT.test(wordsBetween(sentence.items, 0, 6)))) {
    const matter = matterSpokenOf(state);
    if (matter === 'backing' || matter === 'binding') material = matter;
  }
  if (!material && !good.points) {
    material = subjectOf(sentence.items, good) ?? lastTold(sentence.before ?? [], good);
    // "backing will be calico. bought 3 yd"
    if (material === 'fabric') material = decidedOn(state, sentence.number) ?? material;
    if (material) how = 'implied';
  }
  // "the lining's to be linen, I need 5 m of that": what was just decided on
  if (!material && good.points === 'it') {
    material =
      decidedOn(state, sentence.number) ??
      justTold(state, sentence, good) ??
      subjectOf(sentence.items, good) ??
      lastTold(sentence.before ?? [], good);
    if (material) how = 'implied';
  }
  // "three metres for the backing and six for the binding"
  const last = made.at(-1)?.entry;
  if (
    !unit &&
    good.quantity !== undefined &&
    good.head === undefined &&
    good.material !== 'other' &&
    last?.kind === 'material'
  )
    unit = last.unit;
  // "300 ml soap, 2 pieces foam": a thing of its own, by a word that is known for nothing
  const noun = good.items.at(-1);
  if (!material && !good.points && good.head === undefined && unit === 'piece' && noun && isUnknownNoun(noun))
    material = 'other';
  if (!material && (good.points || unit || good.quantity !== undefined)) {
    const before = [...state.drafts].reverse().find((d) => d.entry.kind === 'material')?.entry as
      | { material?: Material; unit?: typeof unit }
      | undefined;
    // "bought four balls, three ten each": of nothing that was told, while "five more" and a skein are of yarn
    const isOfNothing = (by: typeof unit): boolean =>
      by === 'ball' && use === 'bought' && !speaksOfTying(state, sentence.items);
    if (!good.points && unit === 'spool') material = 'thread';
    else if (!good.points && (unit === 'skein' || unit === 'ball') && before?.unit !== unit)
      material = isOfNothing(unit) ? undefined : 'tie-thread';
    else if (before && !isNameless(sentence.items, good) && fits(before.material, unit)) {
      material = before.material;
      unit ??= before.unit;
    } else if ((unit === 'skein' || unit === 'ball') && !isOfNothing(unit)) material = 'tie-thread';
    else if (unit === 'spool') material = 'thread';
    // "a metre and a half of it" is none of the vinegar told last
    else if ((good.points === 'it' || good.points === 'more') && fits(state.memory.material?.material, unit))
      material = state.memory.material?.material;
    how = 'implied';
  }
  material = named(state, material, good.name);
  if (material === 'fabric' && use !== 'used') material = chosenFor(state, sentence.items, good) ?? material;
  if (material === 'thread' && use === 'used' && isForTying(state, sentence, good)) material = 'tie-thread';
  // "darned 5-1 and used up the last of the wool": what it was sewn with
  if (
    material === 'fabric' &&
    use === 'used' &&
    // "… pieced a new one in, which took a quarter yard of oat linen"
    !/^(?:yd|m|cm|fat-quarter)$/.test(good.unit ?? '') &&
    /^(?:silk|cotton|wool|linen)$/.test(good.name.split(' ').at(-1)!) &&
    sentence.items.some((x) => /^(?:darn|resew)$/.test(x.action?.v ?? ''))
  )
    material = 'thread';
  if (givePrice(state, sentence, good, material, use)) return;
  const draft = makeDraft(
    'material',
    { index: -1, sentence: sentence.number, items: good.items },
    {
      material: [material, `material.${material}`, good.items, how],
      use: [use, `use.${use}`, good.items],
      quantity: [good.uncounted ? undefined : good.quantity, 'amount', good.items],
      unit: [unit, 'amount', good.items],
      cost: [good.cost, 'cost', good.items],
      ...(good.head !== undefined || (good.material && good.name !== 'it')
        ? { name: [good.name, 'material.name', good.items] as [unknown, string, Item[]] }
        : {}),
    },
    'unneeded',
  );
  state.drafts.push(draft);
  made.push(draft);
}

/** Was tying, or yarn for it, spoken of in the note or before it? "Bought four balls" are of nothing in particular by themselves. */
const speaksOfTying = ({ drafts, memory }: ReaderState, items: Item[]): boolean =>
  items.some((x) => x.action?.v === 'tie' || /^(?:ties|tying|tie-thread)$/.test(x.object ?? x.topic ?? '')) ||
  memory.running === 'tying' ||
  memory.ran === 'tying' ||
  memory.treatment?.action === 'tie' ||
  /^(?:thread|tie-thread)$/.test(memory.material?.material ?? '') ||
  Object.values(memory.chosen ?? {}).includes('tie-thread') ||
  [...(memory.open ?? []), ...(memory.plans ?? [])].some((o) => o.action === 'tie') ||
  (memory.matters ?? []).some((m) => /^(?:tying|tie-thread)$/.test(m.about)) ||
  [...drafts, ...(memory.last?.entries ?? [])].some(
    ({ entry: e }) =>
      (e.kind === 'treatment' && e.action === 'tie') ||
      (e.kind === 'work' && e.task === 'tying') ||
      (e.kind === 'material' && e.material === 'tie-thread') ||
      (e.kind === 'measurement' && /^(?:tie-spacing|tail)$/.test(e.of)) ||
      (e.kind === 'decision' && /^(?:tying|tie-thread)$/.test(e.about)),
  );

/** "tied: row two. 4 skeins crewel wool used", and that which was chosen for the ties before: yarn by the skein, where it is tied. */
function isForTying(state: ReaderState, sentence: Told, { name, unit }: GoodFound): boolean {
  const noun = name.split(' ').at(-1)!;
  if (!/^(?:wool|yarn|cotton|floss|silk|crewel)$/.test(noun)) return false;
  if (state.memory.chosen?.[noun] === 'tie-thread') return true;
  const told = [...sentence.items, ...(sentence.before ?? [])];
  return (
    (unit === 'skein' || unit === 'ball') &&
    told.some((x) => x.action?.v === 'tie') &&
    !told.some((x) => /^(?:darn|resew|quilt|bind|baste)$/.test(x.action?.v ?? ''))
  );
}

/** "three yards of something", "3 yards of that other stuff", "a yard of, what do you call it, nine dollars": of what is not known, and not of what was told before. */
function isNameless(items: Item[], { items: own, head, points }: GoodFound): boolean {
  if (head !== undefined || points) return false;
  const from = items.indexOf(own[0]!);
  const words = wordsBetween(items, from, from + own.length + 3);
  return (
    / of (?:something|,|-|--|er|um|oh) /.test(words) || / other (?:stuff|cloth|material|kind) /.test(words)
  );
}

/** What is told by the yard is none of the pins or the thread told before, and what comes in packs none of the cloth. */
const fits = (material: Material | undefined, unit: GoodFound['unit']): boolean =>
  !unit ||
  !material ||
  (unit === 'pack'
    ? !CLOTH_BY_LENGTH.test(material)
    : !LENGTH_UNIT_SET.has(unit) || measuredIn(material, unit));
const CLOTH_BY_LENGTH = /^(?:fabric|backing|binding|net)$/;

/** "half a yard of tulle and a spool of silk, the tulle was four dollars": the price of what was told just before, where nothing but that is told. */
function givePrice(
  state: ReaderState,
  sentence: Told,
  good: GoodFound,
  material: Material | undefined,
  use: MaterialUse,
): boolean {
  if (!good.cost || good.quantity !== undefined || good.unit || !material || use === 'on-hand') return false;
  const noun = good.name.split(' ').at(-1)!;
  const told = state.drafts.filter(
    ({ entry: e, sentence: n }) =>
      e.kind === 'material' &&
      e.material === material &&
      (e.use === 'bought' || e.use === 'needed') &&
      e.quantity !== undefined &&
      !e.cost &&
      n >= sentence.number - 1 &&
      n <= sentence.number,
  );
  const named = told.filter((d) => d.entry.kind === 'material' && d.entry.name?.split(' ').includes(noun));
  const [of] = named.length ? named : told;
  if (!of || (named.length || told.length) > 1) return false;
  const priced = makeDraft(
    'material',
    { index: -1, sentence: sentence.number, items: good.items },
    { cost: [good.cost, 'cost', good.items] },
    'unneeded',
  );
  of.entry = { ...of.entry, ...priced.entry } as typeof of.entry;
  of.origins = { ...priced.origins, ...of.origins };
  return true;
}

/** "for it I bought 4 m of calico" */
const FOR_IT =
  /^ (?:(?:and|so|well|,) )*for (?:it|that|this|the job)(?: ,)? (?:i|we|bought|got|picked|ordered)\b/;

/** The matter last spoken of, in this note or before it: what goods "for it" are for. */
const matterSpokenOf = (state: ReaderState): string | undefined => {
  const told = state.drafts.findLast((d) => d.entry.kind === 'decision')?.entry;
  return told?.kind === 'decision' ? told.about : state.memory.topic;
};

const DECIDED: Partial<Record<string, Material>> = {
  backing: 'backing',
  batting: 'batting',
  binding: 'binding',
  thread: 'thread',
  'tie-thread': 'tie-thread',
  border: 'fabric',
};

/** What the last matter of this note is made of, where no goods have been told since. */
function decidedOn(state: ReaderState, sentence: number): Material | undefined {
  const told = state.drafts.findLast(
    ({ entry: e, sentence: n }) => n <= sentence && (e.kind === 'decision' || e.kind === 'material'),
  );
  // matters are read off the note before its goods are
  const since = state.drafts.some(
    ({ entry: e, sentence: n }) => e.kind === 'material' && told && n >= told.sentence,
  );
  return told?.entry.kind === 'decision' && !since ? DECIDED[told.entry.about] : undefined;
}

/** "Buy 2 m of flannel for the back. A metre of it in the cupboard": of the goods told last in this sentence or the one before. */
function justTold(state: ReaderState, sentence: Told, good: GoodFound): Material | undefined {
  const told = state.drafts.findLast((d) => d.entry.kind === 'material');
  return told?.entry.kind === 'material' &&
    told.sentence >= sentence.number - 1 &&
    told.sentence <= sentence.number &&
    measuredIn(told.entry.material, good.unit)
    ? told.entry.material
    : undefined;
}

/** "Crepeline it is. Bought 40 cm": the stuff last named in the sentence before. */
function lastTold(before: Item[], good: GoodFound): Material | undefined {
  const told = before.findLast(
    (x) => x.material && (!x.action || x.material === 'net') && measuredIn(x.material, good.unit),
  );
  if (good.quantity === undefined || !good.unit) return undefined;
  return told?.material ?? takenOff(before, good);
}

/** "old binding off. 9 m new needed", "took the backing off. Need 4 yards of new": what came off is what the new is for. */
function takenOff(before: Item[], good: GoodFound): Material | undefined {
  const at = before.findLastIndex((x) => /^(?:binding|backing|batting)$/.test(x.part ?? x.object ?? ''));
  const part = before[at]?.part ?? before[at]?.object;
  if (!part || !measuredIn(part as Material, good.unit)) return undefined;
  const off =
    before.some((x) => x.action?.v === 'remove') ||
    before.slice(at + 1, at + 5).some((x) => /^(?:off|out|gone|away|removed)$/.test(x.w));
  return off ? (part as Material) : undefined;
}

/** "the batting's still to buy, a single roll", "the backing takes 5 m": what the amount is of was named before it. */
function subjectOf(items: Item[], good: GoodFound): Material | undefined {
  const at = items.indexOf(good.items[0]!);
  for (let k = at - 1; k >= Math.max(0, at - 14); k--) {
    const x = items[k]!;
    if (x.material)
      return x.object !== 'stitching' && measuredIn(x.material, good.unit) ? x.material : undefined;
    // "crepeline it is, and for that I shall need eighteen inches"
    const forThat = / (?:for|of) (?:that|it|this|which) (?:i|we) /.test(wordsBetween(items, at - 7, at));
    if (x.fabric || x.quantity || (x.w === 'and' && !forThat && good.points !== 'it')) return undefined;
    // "tulle over 1-1, I'll need half a metre": a place between holds for what lies over it
    if (x.place?.kind === 'blocks' && !/^(over|on|behind|for|across|onto|in)$/.test(w(items, k - 1)))
      return undefined;
  }
  return undefined;
}

/** "backing = calico, fixed", and then "bought calico 3.5 m": the cloth that was decided on for a part, where it is for nothing else. */
function chosenFor(
  { memory }: ReaderState,
  items: Item[],
  { name, items: own }: GoodFound,
): Material | undefined {
  const material = memory.chosen?.[name.split(' ').at(-1)!];
  if (!material) return undefined;
  const from = items.indexOf(own[0]!);
  return / for (?!it |that )/.test(wordsBetween(items, from, from + own.length + 2)) ? undefined : material;
}

/** A cloth or yarn that was spoken of before for a purpose keeps it: "felt (backing)" then "felt cost 19.80". */
export function named(
  state: ReaderState,
  material: Material | undefined,
  name: string,
): Material | undefined {
  if (material !== 'fabric' && material !== undefined) return material;
  const last = name.split(' ').at(-1)!;
  return state.memory.goods?.[last] ?? material;
}
