import type { QuiltGrid } from '../../shared/quilt.ts';
import { correctAt } from './corrections/correct-at.ts';
import { STOP } from './corrections/earlier-of.ts';
import { type Sort, sortsOf } from './corrections/sorts-of.ts';
import { type Item, makeItem } from './item.ts';
import { afterthoughtAt, mayThinkAgain, secondThoughtAt } from './second-thought.ts';
import { wordsBetween } from './words-between.ts';

const MARKERS: string[][] = [
  ['no', 'wait'],
  ['no', 'no'],
  ['no', 'sorry'],
  ['no', 'make', 'that'],
  ['no', 'hang', 'on'],
  ['no', 'hold', 'on'],
  ['no', 'scratch', 'that'],
  ['scratch', 'that'],
  ['strike', 'that'],
  ['scrap', 'that'],
  ['cancel', 'that'],
  ['what', 'am', 'i', 'on', 'about'],
  ['no', 'i', 'mean'],
  ['i', 'mean'],
  ['i', 'meant'],
  ['no', 'it', 'was'],
  ['no', 'that', "'s"],
  ['no', 'i', 'tell', 'a', 'lie'],
  ['i', 'tell', 'a', 'lie'],
  ['make', 'that'],
  ['sorry'],
  ['or', 'rather'],
  ['or', 'more', 'exactly'],
  ['or', 'more', 'precisely'],
  ['more', 'exactly'],
  ['more', 'precisely'],
  ['or', 'to', 'be', 'exact'],
  ['rather'],
  ['correction'],
  ['no'],
  ['wait'],
  ['not'],
  ['nope'],
  ['no', 'nearer'],
  ['no', 'closer', 'to'],
  ['no', 'call', 'it'],
  ['no', 'say'],
  ['no', 'nearer', 'to'],
  ['well', 'nearer'],
  ['or', 'more', 'like'],
  ['no', 'only'],
  ['no', 'not'],
  ['hang', 'on'],
  ['oops'],
  ['make', 'it'],
  ['actually'],
  ['i', 'should', 'say'],
  ['i', 'should', 'have', 'said'],
  ['should', 'have', 'said'],
  ['meant', 'to', 'say'],
  ['i', 'meant', 'to', 'say'],
  ['sorry', ',', 'meant', 'to', 'say'],
  ['sorry', 'i', 'meant'],
  ['sorry', ',', 'i', 'meant'],
  ['beg', 'pardon'],
  ['beg', 'your', 'pardon'],
  ['i', 'beg', 'your', 'pardon'],
  ['well'],
  ['pardon'],
  ['no', 'actually'],
  ['that', "'s", 'wrong'],
  ['no', 'tell', 'a', 'lie'],
  ['tell', 'a', 'lie'],
  ['wait', 'no'],
  ['hang', 'on', 'no'],
  ['sorry', 'no'],
  ['no', 'wait', 'no'],
  ['no', ',', 'what', 'am', 'i', 'saying'],
  ['no', 'what', 'am', 'i', 'saying'],
  ['what', 'am', 'i', 'saying'],
  ['er', 'no'],
  ['no', 'er'],
  ['no', ',', 'listen', 'to', 'me'],
  ['no', ',', 'silly', 'me'],
  ['silly', 'me'],
];

MARKERS.sort((a, b) => b.length - a.length);

const BY_FIRST = new Map<string, string[][]>();

for (const marker of MARKERS) BY_FIRST.set(marker[0]!, [...(BY_FIRST.get(marker[0]!) ?? []), marker]);

/**
 * What is said last wins: "row two, no, row three block four", "at two no wait it was ten to two", "ninety no make that
 * sixty mil", "3-2 has a hole, no, 3-3". The later word of the same sort takes the place of the earlier, and the marker between
 * goes. No word's offsets change.
 */
export function mendCorrections(items: Item[], grid: QuiltGrid): Item[] {
  const out = withoutTheOther(items);
  if (mayThinkAgain(items)) mendSecondThoughts(out, grid);
  takeDenied(out);
  for (let k = 1; k < out.length; k++) {
    const marker = BY_FIRST.get(out[k]!.w)?.find((m) => m.every((word, q) => out[k + q]?.w === word));
    // "row two done as well": no "well" that puts right
    if (!marker || (marker[0] === 'well' && out[k - 1]!.w === 'as')) continue;
    // "did i say 2-3 i meant 3-3": of the last note, which is mended
    if (marker[0] === 'i' && / did i (?:say|put|write) /.test(wordsBetween(out, Math.max(0, k - 6), k)))
      continue;
    const at =
      takeAway(out, k, k + marker.length) ??
      saidBehind(out, k, marker, grid) ??
      correctAt(out, k, marker, grid);
    if (at === undefined) continue;
    apologyBehind(out, at);
    k = Math.max(0, at - 1);
  }
  return out;
}

/** What may lead from a word that is denied to the one that is right. */
const LEADS = new Set(
  "it 's is was are were just only rather but more they 're i mean a bit , - --".split(' '),
);
const SIGHS = /^(?:,|-|--|no|nope|well|wait|sorry|oh|er|um|or|actually|rather)$/;

/** "2-4 is worn no not worn it's just thin", "in backstitch, no, not backstitch, ladder": said, and then denied with the same word. */
function takeDenied(out: Item[]): void {
  for (let k = 2; k < out.length - 2; k++) {
    if (out[k]!.w !== 'not') continue;
    let from = k - 1;
    while (from > 0 && from > k - 5 && SIGHS.test(out[from]!.w)) from--;
    const [wrong, again] = [out[from]!, out[k + 1]!];
    if (from === k - 1 || (wrong.w !== again.w && (!wrong.finding || wrong.finding !== again.finding)))
      continue;
    let m = k + 2;
    while (m < out.length && m < k + 8 && LEADS.has(out[m]!.w)) m++;
    const right = out[m];
    const sorts = right ? sortsOf(right) : [];
    const found = (wrong.finding ?? wrong.fail) && (right?.finding ?? right?.fail);
    if (!found && !sortsOf(wrong).some((sort) => sorts.includes(sort))) continue;
    out.splice(from, m - from);
    k = from + 1;
  }
}

/** What is told of the one place that is meant, behind the one that is not. */
const TOLD_OF_IT = /^(?:is|'s|are|'re|was|were|has|had|have|got|needs?|wants?|that|gets?|looks?)$/;

/** "3-4 not 3-5 is torn", "row two block four not block five has a hole": the block that is not meant falls out. */
function withoutTheOther(items: Item[]): Item[] {
  const isBlock = (x: Item | undefined): boolean => x?.place?.kind === 'blocks' && x.place.places.length > 0;
  const out: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const before =
      out.at(-1)?.w === ',' || out.at(-1)?.w === 'and' || out.at(-1)?.w === 'but' ? out.at(-2) : out.at(-1);
    const [other, after] = [items[k + 1], items[k + 2]];
    if (
      items[k]!.w === 'not' &&
      isBlock(before) &&
      isBlock(other) &&
      after &&
      (TOLD_OF_IT.test(after.w) || after.finding || after.action?.form === 'past')
    ) {
      // "rows 1 to 3 not 2-2 are torn": all of them but that one
      const left = before!.place!.places.filter((p) => !other!.place!.places.includes(p));
      if (left.length) {
        if (out.at(-1) !== before) out.pop();
        out[out.length - 1] = { ...before!, place: { ...before!.place!, places: left } };
        k++;
        continue;
      }
    }
    out.push(items[k]!);
  }
  return out;
}

/** "thirty millilitres, no, let me be exact, forty-five": what comes between is as good as a plain "no". */
function mendSecondThoughts(out: Item[], grid: QuiltGrid): void {
  for (let k = 1; k < out.length; k++) {
    const length = secondThoughtAt(out, k);
    const after = length ? 0 : afterthoughtAt(out, k);
    // "Twenty minutes. Twenty-five, to be honest."
    const from = after ? k - 1 : k;
    if ((!length && !after) || from < 1) continue;
    const plain = [...out];
    const no = makeItem(out[from]!.i, out[from]!.i, 'no', {
      ...out[from]!.token,
      w: 'no',
      to: out[from]!.token.from,
    });
    if (after) plain.splice(k, after);
    const comma = { ...no, w: ',' };
    const pause = /^[,.;:-]$/.test(plain[from - 1]!.w) ? [] : [comma];
    plain.splice(from, length, ...pause, no, comma);
    const at = correctAt(plain, from + pause.length, ['no'], grid);
    if (at === undefined) continue;
    out.splice(0, out.length, ...plain);
    k = Math.max(0, at - 1);
  }
}

/** "the right hand edge, no, left hand edge, sorry": what was put right already needs no second marker. */
function apologyBehind(out: Item[], at: number): void {
  const last = out.findIndex((x, n) => n >= at && STOP.test(x.w));
  const end = last < 0 ? out.length : last;
  const words = out.slice(at, end).map((x) => x.w);
  const marker = words.at(-1) === 'sorry' ? 1 : words.slice(-2).join(' ') === 'i mean' ? 2 : 0;
  if (!marker || words.length - marker > 3) return;
  const pause = words.at(-marker - 1) === ',' ? 1 : 0;
  out.splice(end - marker - pause, marker + pause);
}

/** "block 3 is torn, block 2, sorry", "20 minutes, 30 I mean": the marker behind the right one, which ends the sentence. */
function saidBehind(out: Item[], k: number, marker: string[], grid: QuiltGrid): number | undefined {
  if (
    !/^(sorry|i mean|i meant|correction|pardon|(?:i )?beg (?:your )?pardon|i should (?:say|have said))$/.test(
      marker.join(' '),
    )
  )
    return undefined;
  const after = out[k + marker.length]?.w;
  if (after !== undefined && !STOP.test(after)) return undefined;
  const b = out[k - 1]?.w === ',' ? k - 2 : k - 1;
  const right = out[b];
  const first = out.findLastIndex((x, n) => n < b && STOP.test(x.w)) + 1;
  // "tear's in block two of row six. Row five, beg pardon": the place that is right, in a sentence of its own
  if (
    right?.place?.how === 'said' &&
    first > 0 &&
    (b === first || (b === first + 1 && out[first]!.w === 'the'))
  ) {
    const anew = [...out.slice(0, first), ...out.slice(k, k + marker.length), right];
    const mended = correctAt(anew, first, marker, grid);
    if (mended !== undefined) out.splice(0, k + marker.length, ...anew);
    return mended;
  }
  if (
    !right ||
    b - first < 2 ||
    !sortsOf(right).some((sort) => FIGURES.has(sort)) ||
    !(/^[,-]$/.test(out[b - 1]!.w) || (right.place && out[b - 1]!.place)) ||
    out.slice(first, b).some((x) => /^(not|no|and|or|&)$/.test(x.w))
  )
    return undefined;
  // as if the marker had been said first
  const plain = [...out.slice(0, b), ...out.slice(k, k + marker.length), right];
  const at = correctAt(plain, b, marker, grid);
  if (at !== undefined) out.splice(0, k + marker.length, ...plain);
  return at;
}

/** "3-2, 3-3 and 3-4, sorry, not 3-3": of the places said, one goes. Gives the index to go on from. */
function takeAway(out: Item[], k: number, after: number): number | undefined {
  let m = k;
  while (m < after + 3 && out[m] && out[m]!.w !== 'not') m++;
  const gone = out[m]?.w === 'not' ? out[m + 1]?.place?.places : undefined;
  if (!gone?.length || (m === k && !/^[,-]$/.test(out[k - 1]?.w ?? ''))) return undefined;
  // "not 3-3, 3-2" puts another in its stead
  if (out[m + 2]?.w === ',' && out[m + 3]?.place) return undefined;
  const holders: number[] = [];
  for (let b = k - 1; b >= Math.max(0, k - 12) && !STOP.test(out[b]!.w); b--) {
    const places = out[b]!.place?.places;
    if (places?.length && gone.every((p) => places.includes(p))) holders.push(b);
  }
  const b = holders[0];
  const others = out.slice(0, k).some((x, n) => n !== b && x.place?.places.some((p) => !gone.includes(p)));
  if (b === undefined || (!others && out[b]!.place!.places.length === gone.length)) return undefined;
  out.splice(k, m + 2 - k);
  const holder = out[b]!;
  const left = holder.place!.places.filter((p) => !gone.includes(p));
  if (left.length) out[b] = { ...holder, place: { ...holder.place!, places: left } };
  else {
    // the joint that led to it goes with it
    const joined = /^(,|and|&)$/.test(out[b - 1]?.w ?? '') ? 1 : 0;
    out.splice(b - joined, 1 + joined);
  }
  return b;
}

const FIGURES: ReadonlySet<Sort> = new Set([
  'place',
  'clock',
  'span',
  'quantity',
  'cost',
  'duration',
  'stitch',
]);
