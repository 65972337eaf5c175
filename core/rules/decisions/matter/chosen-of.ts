import type { Topic } from '../../../../shared/vocabulary.ts';
import { COLOURS } from '../../../lexicon/colours.ts';
import type { Item } from '../../item.ts';
import type { ReaderState } from '../../reader-state.ts';
import { BLOCKS, type Part, YARN } from './part.ts';

/** "resewn, ladder stitch": a seam or a mend was told as done; thread named behind it is what it was sewn with. */
export const sewnBefore = (items: Item[]): boolean =>
  items.some(
    (x) =>
      x.action?.form === 'past' && /^(?:darn|resew|patch|stabilize|overlay|quilt|bind)$/.test(x.action.v),
  );

/** "Ties: red perle cotton, 5 in apart", "backing -> blue flannel", "tie or quilt: tie": what was chosen stands by itself behind what it is for. */
export function choiceUnder(parts: Part[]): Topic | undefined {
  const [head, choice] = parts as [Part, Part];
  const about = head.topic?.topic;
  if (!about || head.status === 'open' || parts.some((p) => p.cue === 'open')) return undefined;
  // the rest may tell lengths, and nothing of work, goods or damage
  if (
    parts
      .slice(2)
      .some((p) => p.topic || p.items.some((x) => x.action || x.finding || x.fabric || x.cost || x.material))
  )
    return undefined;
  if (about === 'tying' || about === 'quilting') {
    const way = choice.items.length <= 2 ? choice.topic?.topic : undefined;
    if (way === 'tying' || way === 'quilting')
      return / (?:or|vs|versus|\/) /.test(head.words) ? way : undefined;
  }
  if (
    !head.items.every(
      (x) => x.topic || x.part || x.material || /^(?:the|new|colou?r|ties|for|of)$/.test(x.w),
    ) ||
    head.items.length > 4
  )
    return undefined;
  if (!choice.items.every(isPlainStuff) || choice.items.length > 4) return undefined;
  if (!choice.items.some((x) => x.fabric || x.material || COLOURS.has(x.w) || YARN.test(x.w)))
    return undefined;
  if (about === 'tying') return /^ (?:the )?ties $/.test(head.words) ? 'tie-thread' : undefined;
  return about === 'price' || about === 'deadline' || about === 'other' || about === 'washing'
    ? undefined
    : about;
}

/** "So it's the brown sheet, settled": one of the ways that an open matter was told with. */
export function chosenOf(state: ReaderState, part: Part, parts: Part[], asked: boolean): Topic | undefined {
  const matters = state.memory.matters;
  if (!matters?.length || (part.topic && part.topic.topic !== 'fabric') || part.items.length > 8)
    return undefined;
  // "plain", as all that is said, where "back: ink stripe or plain" stood open
  const alone =
    // "wool, then, and it gets quilted"
    (parts.length === 1 ||
      parts.slice(1).every((p) => p.topic || p.cue || /^ (?:then|final|definitely) $/.test(p.words))) &&
    part.items.length <= 3 &&
    !asked
      ? optionOf(matters, part.items)
      : undefined;
  if (alone) return alone;
  // "lukewarm then", "cold, with a splash of vinegar", where the heat of the water was the question
  const heat = WATER_HEAT.exec(part.words)?.[1];
  if (heat && !asked && !parts.slice(1).some((p) => p.topic || p.items.some(BLOCKS)))
    if (
      matters.at(-1)!.about === 'washing' ||
      matters.some((m) => m.about === 'washing' && m.words.includes(heat))
    )
      return 'washing';
  // "by hand then", where machine or hand was the question
  const manner = mannerOf(matters, parts);
  if (manner && !asked) return manner;
  // "she said cold water, so that's settled": the matter that was told last
  if (parts.length <= 4 && !parts.some((p) => p.topic) && parts.some((p) => THAT_SETTLED.test(p.words)))
    return matters.at(-1)!.about;
  // "she picked the ticking": said of the matter that was told last
  const last = matters.at(-1)!.about;
  if (
    PICKED.test(part.words) &&
    part.items.length <= 8 &&
    part.items.some((x) => x.fabric || x.material || COLOURS.has(x.w) || YARN.test(x.w)) &&
    !part.items.some((x) => BLOCKS(x) || x.quantity || x.cost || x.finding) &&
    /^(?:backing|batting|binding|border|thread|tie-thread)$/.test(last)
  )
    return last;
  const won = asked ? undefined : wonOf(state, part);
  if (won) return won;
  const settled = part.status === 'settled' || (parts[1]?.cue === 'settled' && !parts[1].topic);
  if (!settled && !/ (?:it 's|it is|going with|we 'll have|i 'll have|make it) /.test(part.words))
    return undefined;
  if (part.items.some((x) => BLOCKS(x) || x.action || x.finding || x.quantity?.unit || x.cost))
    return undefined;
  const said = part.items.map((x) => x.w).filter((w) => w.length > 2 && !COMMON.test(w));
  return matters.findLast((m) => said.some((w) => m.words.includes(w)))?.about;
}

const PICKED =
  /^ (?:and |so |well |right |then |ok )*(?:she|he|they|i|we|client|owner|the owner)? ?(?:'s |'ve |'m |'re |has |have |am |are )?(?:picked|chose|chosen|gone for|went for|plumped for|opted for|going with|going for|going to use|gonna use|'ll use|will use) /;

/** "muslin wins", "it's the grey that won": the way that carried the day, and what may follow. */
const WON =
  /^ (?:and |so |well |right |then |ok |in the end |it 's |the )*(\S+(?: \S+){0,3}?) (?:that |has |have |'s |is the )*(?:wins?|won|winner|winning|gets it|got it|gets the (?:job|vote|nod)|got the (?:job|vote|nod)|carried it|carried the day|is the one|was chosen|was picked|got picked|it is)(?: (?:in the end|then|after all|out|hands down|it|for me))* $/;
/** "owner says plain", "she'd rather have the blue", "her sister votes for the red": the voice of another. */
const THIRD =
  /^ (?:and |so |well |right |then |ok |in the end )*(?:(?:the|my|her|his|our|their) )?(?:owner|client|customer|family|museum|school|church|guild|committee|lady|husband|wife|sister|brother|mother|mum|mom|daughter|son|aunt|bride|curator|she|he|they)(?: (?:'s|'d|'ll|has|have|had|would|just|rang|and|definitely|now))* (?:says?|said|wants?|wanted|rather|sooner|prefers?|preferred|picks?|picked|chose|chosen|likes?|liked|fancies|fancied|votes?|voted|insists|insisted|decided|settled|goes|went|gone|plumps|plumped)(?: (?:for|on|with|have|go|go for|go with|it|to be|to|be|that|i|we|use|is|'s))* (\S+(?: \S+){0,3}?)(?: (?:then|please|best|better|after all|in the end|instead))* $/;

/** An open matter closed by a verb of winning, or by somebody else's word, where what is named is one of its ways or a colour of it. */
export function wonOf({ memory: { matters } }: ReaderState, part: Part): Topic | undefined {
  if (!matters?.length) return undefined;
  const said = (WON.exec(part.words) ?? THIRD.exec(part.words))?.[1];
  if (!said || part.items.some((x) => BLOCKS(x) || x.finding || x.quantity || x.cost)) return undefined;
  const words = said.split(' ').filter((w) => !/^(?:the|a|an|one|ones|it|new|old)$/.test(w));
  if (!words.length) return undefined;
  const way = matters.findLast((m) => {
    const told = m.words.split(/[^a-z]+/);
    return words.every((w) => told.includes(w) && !COMMON.test(w));
  });
  if (way) return way.about;
  const last = matters.at(-1)!;
  return /\bcolou?r\b/.test(last.words) && words.some((w) => COLOURS.has(w)) ? last.about : undefined;
}

const THAT_SETTLED =
  /^ (?:and |so |now )*that (?:'s|is) (?:it )?(?:settled|decided|agreed|sorted)(?: then| now)? $/;

/** The matter of which these words are one of the ways, word for word. */
function optionOf(matters: NonNullable<ReaderState['memory']['matters']>, items: Item[]): Topic | undefined {
  const said = items.map((x) => x.w).filter((w) => !/^(?:the|a|then|ok|okay|right|so)$/.test(w));
  if (!said.length || items.some((x) => x.action || x.finding || x.place || x.quantity)) return undefined;
  return matters.findLast(
    (m) => / or | vs | versus |\//.test(m.words) && said.every((w) => m.words.split(/[^a-z]+/).includes(w)),
  )?.about;
}

/** "by hand, cold", "machine, it'll have to be": how it is to be done, of a matter that was told with both ways. */
function mannerOf(matters: NonNullable<ReaderState['memory']['matters']>, parts: Part[]): Topic | undefined {
  const said = MANNER.exec(parts[0]!.words)?.[1];
  if (!said || parts.slice(1).some((p) => p.topic || !MANNER_TAIL.test(p.words))) return undefined;
  return matters.findLast(
    (m) =>
      /^(?:quilting|washing|binding|tying)$/.test(m.about) &&
      / or | vs | versus |\//.test(m.words) &&
      m.words.includes(said),
  )?.about;
}

const WATER_HEAT =
  /^ (?:(?:so|right|well|ok|okay|oh|um|er|then|i think|probably|it 's|it 'll be|make it|going|going with|decided|decided on|the|a|in|with) )*(cold|cool|warm|hot|lukewarm|tepid)(?: (?:water|wash|one|then|it is|it 'll be|it 'll have to be|in the end|after all|i think|i reckon|wins|for me|by hand|with(?: \S+){1,5}))* $/;

const MANNER =
  /^ (?:(?:so|right|well|ok|okay|oh|um|er|i think|probably|it 's|it 'll be|i 'll do it|do it|doing it|going|decided|decided on) )*(?:by |the )?(hand|machine)(?: (?:then|it is|it 'll be|it 'll have to be|in the end|after all|i think|i reckon|wins|for me|quilted|quilting|washed|wash))* $/;
const MANNER_TAIL =
  /^ (?:it 'll have to be|it is|then|i think|cold|cool|warm|no time otherwise|decided|settled|that 's settled|that 's decided|definitely|final|it 's the only way|less work|safer|quicker)(?: .{0,30})?$/;

const COMMON =
  /^(?:the|that|then|its|for|settled|decided|going|with|have|make|final|right|and|but|still|open)$/;

/** A colour, a cloth, or what describes it: no verb, no place, no amount. */
export const isPlainStuff = (x: Item): boolean =>
  !(x.action || x.place?.kind === 'blocks' || x.finding || x.quantity || x.cost || x.clock || x.duration) &&
  (Boolean(x.material || x.fabric || x.part || x.topic) ||
    COLOURS.has(x.w) ||
    YARN.test(x.w) ||
    DESCRIBES.test(x.w));

const DESCRIBES =
  /^(?:a|the|some|new|plain|dark|light|pale|bright|thin|thick|heavy|soft|washed|unbleached|bleached|brushed|striped?|checked?|spotted|white|pearl|perle|crochet|embroidery|low|high|loft|weight)$/;
