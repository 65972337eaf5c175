import type { Finding } from '../../../shared/vocabulary.ts';
import { COLOURS } from '../../lexicon/colours.ts';
import { GONE_WORDS } from '../../lexicon/failures.ts';
import { isAttribute, isSound } from '../clause/is-predicate.ts';
import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { isNegated } from '../mood.ts';
import { isBareThing } from './bare-thing.ts';
import { isFailing } from './is-failing.ts';
import { isOfThem } from './of-them.ts';

/** A finding in a clause: `at` its item; `pointed` when the words only point at damage known already ("the tear"). */
export type ConditionFound = { finding: Finding; at: number; items: Item[]; pointed: boolean; rule: string };

/**
 * What is found, by the words of one clause. `treating`: the clause also tells of work done. `headed`: a thing and a colon
 * stand before it ("right edge: sound"). `heading`: the thing that heads the sentence ("ties: …").
 */
export function findConditions(
  items: Item[],
  treating: boolean,
  used: ReadonlySet<Item>,
  thing?: string,
  headed = false,
  heading?: string,
): ConditionFound[] {
  const found: ConditionFound[] = [];
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (used.has(item)) continue;
    if (item.finding) {
      if (isAttribute(items, k)) continue;
      const refined = refine(items, k, item.finding, treating, headed, thing);
      if (!refined) continue;
      // "nothing ran"
      // "nothing is missing under it"
      const said = /^(is|'s|was|has|had|are)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
      if (/^(nothing|none|nowt)$/.test(items[said]?.w ?? '')) continue;
      if (isNegated(items, k, 4) || isOver(items, k) || wouldBe(items, k)) continue;
      // "neither of the star prints is faded"
      if (ofNone(items, k)) continue;
      // "well away from anything fragile"
      // "washed it, everything came through fine"
      if (
        /^(?:anything|everything|whatever)$/.test(items[k - 1]?.w ?? '') &&
        !(refined === 'sound' && /^(?:came|come|survived|held)/.test(item.w))
      )
        continue;
      // "don't know what the stain is"
      if (items[k - 1]?.w === 'the' && /^(what|whose)$/.test(items[k - 2]?.w ?? '') && !items[k - 2]?.place)
        continue;
      found.push({
        finding: refined,
        at: k,
        items: [item],
        pointed: treating && (isPointed(items, k) || isBareThing(items, k)),
        rule: `condition.${refined}`,
      });
      continue;
    }
    if (item.fail) {
      const failing = failure(items, k, headed && k < 3 ? thing : heading, thing);
      if (failing && !isNegated(items, k, 3))
        found.push({ ...failing, at: k, pointed: treating && isPointed(items, k) });
    }
  }
  return dedupe(found);
}

/** "neither of the star prints is faded", "none of row two has gone thin": said of none of them. */
const ofNone = (items: Item[], k: number): boolean => {
  const none = items.findLastIndex((x, m) => m < k && /^(?:neither|none)$/.test(x.w));
  return (
    none >= 0 &&
    k - none < 9 &&
    /^(?:of|the|print|block|one)$/.test(items[none + 1]?.w ?? '') &&
    !items.slice(none, k).some((x) => /^(?:,|and|but|so|except|bar)$/.test(x.w))
  );
};

/** "no longer puckers", "doesn't pucker any more", "the stain came out": it was so once. */
const isOver = (items: Item[], k: number): boolean =>
  (/^(stain|mildew|dye-bleed)$/.test(items[k]!.finding ?? '') &&
    /^(came out|come out|is out|lifted|shifted|has lifted|has gone|vanished|disappeared)$/.test(
      items[k + 1]?.w ?? '',
    )) ||
  items.slice(Math.max(0, k - 4), k).some((x, m, lead) => x.w === 'longer' && lead[m - 1]?.w === 'no');

/** "ties would pull those fans out of shape", "washing it would only fade it": nothing that is so. */
function wouldBe(items: Item[], k: number): boolean {
  const at = items.findLastIndex((x, m) => m < k && m >= k - 6 && /^(would|'d|wouldn't)$/.test(x.w));
  if (at < 0 || /^(i|we|you)$/.test(items[at - 1]?.w ?? '')) return false;
  const verb = /^(only|just|never|n't|not|soon|surely|probably)$/.test(items[at + 1]?.w ?? '')
    ? items[at + 2]
    : items[at + 1];
  return /^(pull|drag|tear|fade|run|bleed|fray|pucker|split|rip|shatter|stain|make|leave|drop|stretch|wear)$/.test(
    verb?.w ?? '',
  );
}

/** Findings said twice over in one clause are one ("shattered … splitting into strips"). */
function dedupe(found: ConditionFound[]): ConditionFound[] {
  const out: ConditionFound[] = [];
  for (const f of found) {
    if (out.some((o) => o.finding === f.finding)) continue;
    // moth holes are insect damage alone
    // spots of mould are no stain
    if (f.finding === 'stain' && found.some((o) => o.finding === 'mildew' && Math.abs(o.at - f.at) < 3))
      continue;
    if (f.finding === 'hole' && found.some((o) => o.finding === 'insect-damage' && Math.abs(o.at - f.at) < 4))
      continue;
    // "coming apart in strips": the strips tell what kind
    if (
      f.finding === 'split-seam' &&
      !f.items.some((x) => x.seam) &&
      found.some((o) => o.finding === 'shattered')
    )
      continue;
    // "wearing thin", "none the worse for wear"
    if (
      f.finding === 'fraying' &&
      /^(wear|wearing)$/.test(f.items[0]!.w) &&
      found.some((o) => o !== f && Math.abs(o.at - f.at) < 3)
    )
      continue;
    out.push(f);
  }
  if (out.some((o) => o.finding === 'split-seam'))
    return out.filter(
      (o) => o.finding !== 'tear' || o.items[0]!.w.startsWith('tear') || o.items[0]!.w === 'torn',
    );
  return out;
}

/** Something that may be good or bad: a place, a cloth, a part, goods, a seam, stitches. */
const isNamed = (x: Item | undefined): boolean =>
  Boolean(x && (x.place || x.fabric || x.part || x.material || x.seam || x.stitches));

function refine(
  items: Item[],
  k: number,
  finding: Finding,
  treating: boolean,
  headed: boolean,
  thing?: string,
): Finding | undefined {
  const word = w(items, k);
  const before = w(items, k - 1);
  const after = w(items, k + 1);
  const hasSeam = items.some((x) => x.seam);
  const hasStitches = items.some((x) => x.stitches && !x.seam);
  switch (finding) {
    case 'sound': {
      // "back by the tenth of July and that's firm"
      if (word === 'firm' && !items.some((x) => isNamed(x) || x.object)) return undefined;
      // "the stain came out nicely", "the ties came out fine"
      if (
        /^com(?:e|es|ing)? out|^came out/.test(word) &&
        items.slice(0, k).some((x) => x.finding || x.object)
      )
        return undefined;
      if (!isSound(items, k) && !(headed && k === 0)) return undefined;
      // "four inches of overhang, fine, and it's layered": said of the telling
      if (
        /^(fine|okay|ok|good|right|all right)$/.test(word) &&
        before === ',' &&
        after === ',' &&
        !items[k - 2]?.place
      )
        return undefined;
      if (
        /^(good|fine|grand|strong|firm|okay|ok|all right|alright|stable|perfect|crisp|sound|healthy)$/.test(
          word,
        )
      ) {
        if (
          before === 'a' ||
          before === 'for' ||
          before === 'with' ||
          before === 'as' ||
          // "good enough", and not "it's sound enough"
          (after === 'enough' && word !== 'sound') ||
          (/^(idea|thread|cotton|while|deal|bit|long|job|day|lamp|light|one|hour|inch|time|now|news|pins|needles|linen|silk|soap|to|stuff|few|size|steam|sponge|night|grief|lord|god|heavens|gracious|morning|evening)$/.test(
            after,
          ) &&
            !(after === 'to' && /^(me|us|my)$/.test(w(items, k + 2))))
        )
          return undefined;
        const copula =
          (headed && k === 0) ||
          // "tartan torn in 2-3, sound in 4-1": and nothing more is said of it
          (k === 0 &&
            /^(?:in|on|at)$/.test(after) &&
            items.slice(2).some((x) => x.place) &&
            items
              .slice(2)
              .every((x) => x.place || /^(?:the|both|and|&|,|row|rows|one|ones|other)$/.test(x.w))) ||
          // "2-4, darned by a previous owner, sound enough"
          (k === 0 && word === 'sound' && /^(|enough|though|still|so|tho)$/.test(after)) ||
          items
            .slice(Math.max(0, k - 4), k)
            .some((x) =>
              /^(is|'s|are|'re|was|were|looks|look|seems|still|all|came|came out|come out|came through|feels|both|holding|up|be|otherwise|backing|fine|otherwise|perfectly|quite)$/.test(
                x.w,
              ),
            ) ||
          isNamed(items[k - 1]) ||
          // "the damask ones sound tho"
          (/^(ones?|blocks?|squares?|bits?)$/.test(before) && isNamed(items[k - 2])) ||
          // "block one, sound", "black velvet - sound": and nothing more is said of it
          (/^(,|-|--|=)$/.test(before) && isNamed(items[k - 2]) && (word === 'sound' || after === ''));
        if (!copula) return undefined;
        if (/^ok(ay)?$/.test(word) && k === 0 && !headed && !/^(?:in|on)$/.test(after)) return undefined;
        if (
          items.some((x) => /^(i|she|he|owner|i'm|they)$/.test(x.w)) &&
          /^(fine|okay|ok|good|all right|alright)$/.test(word) &&
          items.some((x) => x.w === "'m" || x.w === 'with')
        )
          return undefined;
      }
      if (word === 'holding' && /^(the|a|it|on|onto)$/.test(after)) return undefined;
      return 'sound';
    }
    case 'missing':
      // "the needle's gone missing", "lost a pin in 2-2": no cloth is gone
      if (items.some((x) => /^(needles?|pins?|thimble|scissors|snips|tape|bobbin)$/.test(x.w)))
        return undefined;
      if (word === 'lost' && items.some((x) => x.w === 'i' || x.w === 'count' || x.w === 'track'))
        return undefined;
      // "trimmed it, lost a quarter inch"
      if (word === 'lost' && items[k + 1]?.quantity) return undefined;
      // "I had it a minute ago and lost it"
      if (word === 'lost' && /^(it|them|my|sight|heart|interest|patience)$/.test(after)) return undefined;
      return hasStitches || isOfThem(items, k, thing) ? 'broken-stitching' : 'missing';
    case 'fraying':
      if (items.slice(Math.max(0, k - 3), k).some((x) => /^('m|am|patience|nerves)$/.test(x.w)))
        return undefined;
      if (word === 'wear' || word === 'wearing')
        if (/^(it|to|my|glasses|gloves)$/.test(after) || before === 'to') return undefined;
      if (word === 'rubbed' && after === 'out') return undefined;
      // stitching that ravels has come undone
      if (/ravell?(s|ed|ing)?$/.test(word)) {
        if (hasSeam) return 'split-seam';
        if (hasStitches) return 'broken-stitching';
      }
      return 'fraying';
    case 'fading':
      // "pale green thread", "a pale lawn"
      if (word === 'pale' && (COLOURS.has(after) || items[k + 1]?.material || items[k + 1]?.fabric))
        return undefined;
      // the stain that was dabbed at: "it faded some"
      return before === 'it' && /^(some|somewhat|slightly|a|but|though|well|nicely)$/.test(after)
        ? undefined
        : 'fading';
    case 'stain':
      // "spotted a tear in 3-3": seen
      if (word === 'spotted' && /^(a|an|another|some|that|two|three|more)$/.test(after) && k <= 3)
        return undefined;
      // "tea on 5-5", and not "put the tea on"
      if (
        /^(?:tea|coffee|wine|cocoa|gravy|juice|milk|cordial|ketchup|paint) (?:on|all|down|over)$/.test(word)
      ) {
        const at = /^(?:the|over|down|of)$/.test(after) ? k + 2 : k + 1;
        if (/^(?:the|my|some|no|more|his|her)$/.test(before) && !items[at]?.place) return undefined;
        if (!items[at]?.place && !items[at]?.fabric && !items[at]?.part) return undefined;
      }
      if ((word === 'spots' || word === 'spotted' || word === 'dirty') && after === 'of') return undefined;
      return 'stain';
    case 'shattered':
      // a seam, ties or an edge that goes to pieces
      if (/apart$/.test(word) || /^(in|to|into|going|gone|coming|hanging)\b/.test(word)) {
        if (hasSeam) return 'split-seam';
        if (hasStitches) return 'broken-stitching';
        if (items.some((x) => x.part === 'binding' || x.part === 'edge')) return 'fraying';
      }
      return 'shattered';
    case 'dye-bleed':
      // "what I've done is run a line of backstitch along it"
      if (
        / run$/.test(word) &&
        /^(a|an|the|it|them|two|three|over|up|along)$/.test(after) &&
        !/^(little|bit|touch|lot|fair)$/.test(w(items, k + 2))
      )
        return undefined;
      if (
        word === 'ran' ||
        word === "'s run" ||
        word === 'has run' ||
        word === 'have run' ||
        word === "'ve run"
      ) {
        // "ran machine zigzag across it"
        if (items[k + 1]?.stitch || /^(?:hand|machine)$/.test(after)) return undefined;
        if (
          /^(a|out|over|the|two|three|one|into|along|my|it|up|off|some|in|to|from|till|until|between|for|late|on)$/.test(
            after,
          ) &&
          after !== 'into' &&
          after !== 'in' &&
          // "it ran a little"
          !(after === 'a' && /^(little|bit|touch|lot)$/.test(w(items, k + 2)))
        )
          return undefined;
        if (items.some((x) => x.w === 'i') && !items.some((x) => x.fabric || x.w === 'dye' || x.w === 'red'))
          return undefined;
      }
      return 'dye-bleed';
    case 'thin':
      if (items.some((x) => x.w === 'patience')) return undefined;
      if (
        /^(thread|needle|needles|strip|layer|film|pins|batting|wool|line|sliver|silk|cotton|end)$/.test(
          after,
        ) &&
        before !== 'gone' &&
        before !== 'is'
      )
        return undefined;
      if (word === 'delicate' && /^(wash|cycle|stitch)$/.test(after)) return undefined;
      return 'thin';
    case 'tear':
      if (
        (word === 'torn' || word === 'tearing') &&
        (before === 'honestly' ||
          /^(between|over|about)$/.test(after) ||
          (items.some((x) => x.w === 'i' || x.w === "'m") && items.some((x) => x.w === "'m" || x.w === 'am')))
      )
        return undefined;
      if (word === 'rip' && /^(it|the|out|them)$/.test(after) && (before === 'to' || before === "'ll"))
        return undefined;
      if (
        hasSeam &&
        /^(ripped|ripped open|torn|rip)$/.test(word) &&
        !items.some((x) => x.w === 'beside' || x.w === 'near' || x.w === 'next')
      )
        return 'split-seam';
      if (word === 'ripped' && (after === 'out' || after === 'off')) return undefined;
      return 'tear';
    case 'hole':
      if (word === 'hole' || word === 'holes') {
        if (/^(pin|needle|stitch|screw|button)$/.test(before)) return undefined;
        if (/^(moth|moths)$/.test(before) || items[k - 1]?.finding === 'insect-damage')
          return 'insect-damage';
      }
      return 'hole';
    case 'split-seam':
      return 'split-seam';
    case 'lumpy-batting':
      // "the blue has crept into 3-2"
      if (
        /^(?:crept|migrated|drifted|slipped)$/.test(word) &&
        /^(?:into|onto|across|over|through)$/.test(after) &&
        items.slice(0, k).some((x) => COLOURS.has(x.w) || /^(?:dyes?|colou?rs?)$/.test(x.w))
      )
        return 'dye-bleed';
      // "took the lump off": the old patch it was told of
      if (word === 'lump' && after === 'off') return undefined;
      // "a lumpy old patch"
      if (/^(?:old |ugly |clumsy |big )*(?:patch|darn|mend|repair)$/.test(after)) return undefined;
      if (
        /^(shifted|slid|slipped|shifting|migrated|slid down|lumps|lump|matted|bunched|balled|knotted|drifted|slumped|crept|sagging|sagged|all (in|at|down) .*)$/.test(
          word,
        ) &&
        !items.some((x) => x.part === 'batting' || x.material === 'batting') &&
        !/^(all|into|in)$/.test(before)
      ) {
        if (
          /^(slipped|slid|shifted|shifting|migrated|slid down|knotted|drifted|slumped|crept|sagging|sagged|all (in|at|down) .*)$/.test(
            word,
          )
        )
          return undefined;
      }
      if (/^(slid|slipped)$/.test(word) && items.some((x) => x.w === 'needle' || x.w === 'i'))
        return undefined;
      return 'lumpy-batting';
    case 'old-repair':
      return treating ? undefined : 'old-repair';
    case 'insect-damage':
      if ((word === 'moth' || word === 'moths') && /^(balls|spray|trap|traps|bag)$/.test(after))
        return undefined;
      return 'insect-damage';
    case 'broken-stitching':
      return 'broken-stitching';
    case 'mildew':
      if (/^(mould|mold)$/.test(word) && before === 'any') return undefined;
      return 'mildew';
    case 'puckering':
      if (treating && /^(puckers|pucker|wrinkles|ripples|cockles|bubbles|ruffles|buckles)$/.test(word))
        return undefined;
      // "the puckers went with it"
      if (/^(went|came out|gone|disappeared|dropped out)$/.test(after)) return undefined;
      return 'puckering';
    default:
      return finding;
  }
}

const OF_HOUSE =
  /^(?:tanks?|radiators?|pipes?|boiler|geyser|gutters?|guttering|downpipe|drain|drains|main|mains|tap|cistern|roof|ceiling|window|bulb|fuse|kettle|lamp|tyre|tire|hose|heater|washer|bag|bottle|bank|banks|wall)$/;

const isCloth = (x: Item): boolean => x.material === 'fabric' && !/^(piece|bit)s?$/.test(x.w);

/** "1-2/2-2" right before the word at `k`, with only a form of to be between. */
function isPairBefore(items: Item[], k: number): boolean {
  let m = k - 1;
  while (/^(is|was|'s|are|were|also|too|still)$/.test(items[m]?.w ?? '')) m--;
  return items[m]?.place?.kind === 'blocks' && items[m - 1]?.w === '/' && items[m - 2]?.place !== undefined;
}

/** What has given way, by what stands near: a seam, ties or stitches, or cloth. */
function failure(
  items: Item[],
  k: number,
  heading?: string,
  thing?: string,
): { finding: Finding; items: Item[]; rule: string } | undefined {
  const item = items[k]!;
  const word = item.w;
  if (!isFailing(items, k)) return undefined;
  // "a tank burst in the attic", "sat under a burst gutter", "a burst water pipe": a thing of the house
  if (
    /^(burst|bust|gone|went|broke|broken|split|popped|failed|blown|blew|cracked)$/.test(word) &&
    (OF_HOUSE.test(w(items, k - 1)) ||
      OF_HOUSE.test(w(items, k + 1)) ||
      (/^(water|radiator|drain|lead|heating|hot|old)$/.test(w(items, k + 1)) &&
        OF_HOUSE.test(w(items, k + 2))))
  )
    return undefined;
  if (removalAt(items, k)) return undefined;
  // "opened up the seam and slid muslin in": she did it
  if (
    /^(opened|opened up|split open|broke|broke open)$/.test(word) &&
    /^(|i|we|,|then|and|'ve|have)$/.test(w(items, k - 1)) &&
    items.slice(k + 1, k + 4).some((x) => x.seam) &&
    /^(up|the|that|it|its|a)$/.test(w(items, k + 1))
  )
    return undefined;
  // "the ties come out first" is work to do
  if (/^come (out|off|away)$/.test(word) && !/^(have|has|'ve|'s|had)$/.test(w(items, k - 1)))
    return undefined;
  // "have gone thin": what it has become is told next
  if (word === 'gone' && items.slice(k + 1, k + 7).some((x) => x.finding)) return undefined;
  const near = (pick: (x: Item) => boolean | undefined): Item | undefined => {
    for (let m = k - 1; m >= Math.max(0, k - 12); m--) if (pick(items[m]!)) return items[m];
    for (let m = k + 1; m < Math.min(items.length, k + 6); m++) if (pick(items[m]!)) return items[m];
    return undefined;
  };
  const seam = near((x) => x.seam);
  // "1-2/2-2 was open too": the seam between the two
  if (!seam && /^(open|popped|split|burst|blown)$/.test(word) && isPairBefore(items, k))
    return { finding: 'split-seam', items: [item], rule: 'condition.pair-open' };
  const stitches = near(
    (x) =>
      x.stitches &&
      !x.seam &&
      (x.w !== 'tie' ||
        /^(every|each|one|another|other|a|old|that|the|last|single)$/.test(w(items, items.indexOf(x) - 1))),
  );
  if (seam && !(stitches && items.indexOf(stitches) > items.indexOf(seam) && items.indexOf(stitches) < k)) {
    return { finding: 'split-seam', items: [seam, item], rule: 'condition.seam-failed' };
  }
  // "the stitching's gone between 5-1 and 6-1": what holds the two together
  if (
    stitches &&
    /^(?:stitching|stitches)$/.test(stitches.w) &&
    items.some((x, m) => m > items.indexOf(item) && x.w === 'between')
  )
    return { finding: 'split-seam', items: [stitches, item], rule: 'condition.seam-failed' };
  // "seam at 2-4: open"
  if (heading === 'seam') return { finding: 'split-seam', items: [item], rule: 'condition.seam-failed' };
  // "ties: rows 1-3 gone"
  if (!stitches && /^(ties|quilting|stitching)$/.test(heading ?? ''))
    return { finding: 'broken-stitching', items: [item], rule: 'condition.stitching-failed' };
  // "half of them were gone already", "row four: all gone", of the ties just taken out
  if (!stitches && isOfThem(items, k, thing))
    return { finding: 'broken-stitching', items: [item], rule: 'condition.of-them' };
  // "half the fishing line has snapped in row six"
  const line = items
    .slice(Math.max(0, k - 6), k)
    .findLast((x) => /^(line|fishing line|thread|threads|string|twine|yarn|cotton|elastic)$/.test(x.w));
  if (
    !stitches &&
    line &&
    !line.fabric &&
    // "the cotton in 2-3 has perished": the cloth there
    !(line.w === 'cotton' && /^(in|of|on|at)$/.test(w(items, items.indexOf(line) + 1))) &&
    /^(gone|went|snapped|broken|broke|perished|rotted|rotten|failed|given way|gave way|let go)$/.test(word) &&
    items.some((x) => x.place?.places.length)
  )
    return { finding: 'broken-stitching', items: [line, item], rule: 'condition.thread-gone' };
  if (stitches)
    return { finding: 'broken-stitching', items: [stitches, item], rule: 'condition.stitching-failed' };
  const binding = near((x) => x.part === 'binding' || x.w === 'edge' || x.w.startsWith('binding'));
  if (
    binding &&
    /^(come|came|coming) (loose|away|adrift|undone|unstitched|unsewn|unpicked)$|^(loose|undone|adrift|unstitched|unsewn|let go|coming away|popped|pulled away|hanging off|hangs off|hanging loose)$/.test(
      word,
    )
  )
    return { finding: 'broken-stitching', items: [binding, item], rule: 'condition.binding-loose' };
  // "sewed up the seam …, that one had popped wide open"
  if (
    /^(popped|open|burst|bust|busted|given way|gave way|let go|split|broken open|broke open|parted|sprung|undone|worked loose|(?:popped|split|busted|burst) open|(?:come|came|pulled|turned|torn|tore) (?:clean |right )?(?:open|apart|undone|loose|adrift|away))$/.test(
      word,
    ) &&
    thing === 'seam' &&
    items.slice(0, k).some((x) => x.place && /^place\.(that-one|it|them|both|those)$/.test(x.place.rule))
  )
    return { finding: 'split-seam', items: [item], rule: 'condition.it-popped' };
  const apart =
    /^(come|came|coming|pulled|pulling|hanging|hangs) (apart|away|undone|open|loose|adrift|off|unstitched|unsewn|unpicked)$|^(gaping|opened up|opening up|popped open)$/.test(
      word,
    );
  if (
    apart &&
    near(
      (x) => x.part === 'border' || x.part === 'sashing' || (x.place?.places[0] ?? '').startsWith('border'),
    )
  )
    return { finding: 'split-seam', items: [item], rule: 'condition.border-away' };
  const cloth = near(
    (x) =>
      x.w === 'piece' ||
      x.w === 'bit' ||
      x.fabric !== undefined ||
      x.place?.kind === 'blocks' ||
      x.material === 'fabric' ||
      x.w === 'corner' ||
      // "BR corner gone"
      /^(corner|edge|border)/.test(x.place?.places[0] ?? '') ||
      x.part !== undefined,
  );
  if (GONE_WORDS.has(word) && cloth && !/^(going|went)$/.test(word))
    return { finding: 'missing', items: [cloth, item], rule: 'condition.cloth-gone' };
  if (/^(split|splitting|splits|cracked|split open|burst)$/.test(word))
    return cloth && (cloth.fabric || cloth.part === 'backing' || isCloth(cloth))
      ? { finding: 'tear', items: [cloth, item], rule: 'condition.cloth-split' }
      : { finding: 'split-seam', items: [item], rule: 'condition.split-alone' };
  if (
    /^(given way|given out|gave way|giving way|gave out)$/.test(word) &&
    cloth &&
    (cloth.fabric || isCloth(cloth))
  )
    return { finding: 'tear', items: [cloth, item], rule: 'condition.cloth-gave' };
  if (apart && near((x) => x.place?.kind === 'blocks' || x.place?.kind === 'pointer'))
    return { finding: 'split-seam', items: [item], rule: 'condition.come-apart' };
  if (word === 'shot' && near((x) => x.part === 'binding' || x.part === 'edge' || x.part === 'border'))
    return { finding: 'fraying', items: [item], rule: 'condition.edge-shot' };
  if (/^(perished|rotted|rotten)$/.test(word))
    return { finding: 'thin', items: [item], rule: 'condition.perished' };
  return undefined;
}

/**
 * "the tear", "that split seam", "its hole": damage known already, as the thing worked on. "a hole", "because of a hole",
 * "the hole: patched" are told.
 */
function isPointed(items: Item[], k: number): boolean {
  for (let m = k - 1; m >= Math.max(0, k - 5); m--) {
    const x = items[m]!;
    if (
      /^(a|an|another|some|because|cos|for|there|with|is|'s|are|was|were|has|had|two|three|four|but|and)$/.test(
        x.w,
      )
    ) {
      if (/^(for|with)$/.test(x.w)) continue;
      return false;
    }
    if (/^(the|that|this|those|these|its|their|both|each|all)$/.test(x.w)) return true;
    if (x.action || removalAt(items, m)) return true;
  }
  return false;
}
