import type { DecisionStatus, Topic } from '../../../../shared/vocabulary.ts';
import { COLOURS } from '../../../lexicon/colours.ts';
import { BOUGHT, CHOICE_CUE, DOING } from '../../../lexicon/matters.ts';
import type { Item } from '../../item.ts';
import type { ReaderState } from '../../reader-state.ts';
import { isAskedMatter } from './asked-matter.ts';
import { isPlainStuff } from './chosen-of.ts';
import { BLOCKS, isTakingOff, type Part, type Surroundings, WELL, YARN } from './part.ts';
import { wayIn } from './way-in.ts';
import { whatWith } from './what-with.ts';

const TO_BE_SO =
  /^ (?:(?:and|so|now|well|right) )*(?:it|this|this one|the quilt|that one)(?: (?:'ll|will|is going to|'s going to|is to|'s to|gonna|'s gonna))+ be (?:all )?(bound|backed) (?:in|with) /;

const COMES_OFF =
  / (?:backing|binding|borders?|batting|lining|wadding) (?:(?:will|'ll|should|is to|has to|must|is going to|does|just|really) )*(?:comes?|coming) (?:off|out) |^ (?:and |or )*whether (?:i |we |to )*(?:take|strip|pull|get) (?:the |my )(?:backing|binding|border|batting|lining|wadding) (?:off|out) /;

/** The matter that the part at `k` tells, and whether it stands open or is settled. */
export function matterIn(
  around: Surroundings,
  k: number,
): { topic: Topic; status: DecisionStatus; rule: string } | undefined {
  const { state, parts, sentence, asked, settledBefore } = around;
  const part = parts[k]!;
  const { items, words } = part;
  // "it'll be bound in navy, that's decided", "it's to be backed with flannel, agreed"
  const toBe = TO_BE_SO.exec(words)?.[1];
  if (
    toBe &&
    (part.cue ?? (parts[k + 1]?.topic ? undefined : parts[k + 1]?.cue)) === 'settled' &&
    !items.some(BLOCKS)
  )
    return { topic: toBe === 'bound' ? 'binding' : 'backing', status: 'settled', rule: 'decision.to-be' };
  // "Tie. Red wool, four inches apart": the yarn, as it stands beside the ties
  const ties = state.drafts.some(
    (d) => d.entry.kind === 'decision' && d.entry.about === 'tying' && d.entry.status === 'settled',
  );
  const spaced =
    ties && parts.slice(0, 6).some((p) => p !== part && / (?:apart|every|spaced) /.test(p.words) && !p.topic);
  if (
    ties &&
    spaced &&
    k === 0 &&
    items.length <= 4 &&
    items.some((x) => x.material || YARN.test(x.w)) &&
    !items.some((x) => x.action)
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  // "…, but I don't know yet if it's wool or cotton for the ties" is open
  // "Client says ties. Red floss." , "… ties then and dark red cotton for them every three inches", "Tying it. Ties in red."
  if (
    ties &&
    part.cue !== 'open' &&
    (!part.topic || /^(?:tie-thread|thread|fabric|tying)$/.test(part.topic.topic)) &&
    (part.topic?.topic === 'tie-thread' || items.some((x) => x.material || YARN.test(x.w))) &&
    ((parts.length === 1 && items.length <= 4 && items.every(isPlainStuff)) ||
      / for (?:them|the ties|tying|these) /.test(words) ||
      /^ (?:the )?ties in /.test(words)) &&
    !DOING.test(words)
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  // "it's getting tied, and in red wool"
  if (
    ties &&
    parts[k - 1]?.taken &&
    /^ (?:in|with) /.test(words) &&
    items.length <= 5 &&
    items.some((x) => x.material === 'tie-thread' || YARN.test(x.w))
  )
    return { topic: 'tie-thread', status: 'settled', rule: 'decision.yarn' };
  // "it gets quilted, and in the dark green thread"
  if (
    !part.status &&
    parts[k - 1]?.taken &&
    items.length <= 7 &&
    / (?:in|with) (?:(?:the|a|some|that|my) )?(?:\S+ ){0,2}thread $/.test(words) &&
    !items.some((x) => x.action || x.place || x.finding) &&
    state.drafts.some(
      (d) => d.entry.kind === 'decision' && d.entry.about === 'quilting' && d.entry.status === 'settled',
    )
  )
    return { topic: 'thread', status: 'settled', rule: 'decision.thread-of-way' };
  // "what to back it with is still open"
  const unnamed = whatWith(words, items);
  if (unnamed && part.status && !items.some(BLOCKS))
    return { topic: unnamed.topic, status: part.status, rule: 'decision.what-with' };
  const topic = part.topic?.topic;
  if (!topic) {
    // "hang or fold: open", "delivery: settled"
    const under = parts[k + 1];
    if (under?.joint === ':' && under.cue && BARE_STATUS.test(under.words) && isPlainHead(part))
      return { topic: 'other', status: under.cue, rule: 'decision.headed' };
    if (isAskedMatter(part)) return { topic: 'other', status: part.status!, rule: 'decision.asked' };
    // "which fabric I'd use, or whether it ships rolled or folded"
    const before = parts[k - 1];
    return before?.taken &&
      before.status === 'open' &&
      /^ (?:whether|who|how|when|where|if) /.test(words) &&
      !items.some((x) => BLOCKS(x) || x.finding)
      ? { topic: 'other', status: 'open', rule: 'decision.other' }
      : undefined;
  }
  // "I've come round to it, the backing will come off": a thing to be taken off
  if (COMES_OFF.test(words)) return undefined;
  // "muslin on the back of it, or a patch over the top?": a support, and not what the backing is made of
  if (
    topic === 'backing' &&
    /\b(?:at|on) the (?:back|reverse)\b/.test(words) &&
    liesBehind(state, words, sentence)
  )
    return undefined;
  // "each of the gingham ones gets a lining put in behind it"
  if (
    topic === 'backing' &&
    (/ (?:put|sewn|set|slipped|tacked|basted) (?:in )?(?:behind|underneath) /.test(words) ||
      // "wondering about a backing cloth behind or net on top"
      / (?:backing|lining)(?: cloth| fabric)?(?: behind| underneath| or net| or tulle) /.test(words))
  )
    return undefined;
  const cloth = topic === 'fabric';
  // "… patch it? Or new backing altogether?": the other of two treatments
  if (asked && k === 0 && /^ or /.test(words)) return undefined;
  if (items.some(BLOCKS) && !cloth) return undefined;
  // "3-4: crepeline over the face or cloth behind?": two ways to mend it
  if (cloth && / (?:behind|underneath|over) /.test(`${words}${parts[k + 1]?.words ?? ''}`)) return undefined;
  if (
    items.some(
      (x, m) =>
        // "torn between tying and quilting"
        (x.finding &&
          !WELL.test(x.w) &&
          !(x.w === 'torn' && items[m + 1]?.w === 'between') &&
          // "the thin cotton batting"
          !(x.w === 'thin' && items[m + 1]?.material)) ||
        x.duration ||
        x.span ||
        x.clock,
    )
  )
    return undefined;
  if (isTakingOff(words)) return undefined;
  const way = topic === 'tying' || topic === 'quilting' || topic === 'washing';
  const works = items.filter(
    (x) => x.action && !(x.part && x.action.form === 'ing') && !['tie', 'quilt', 'wash'].includes(x.action.v),
  );
  const binding = topic === 'binding' && /\b(?:how|what(?: \w+)?|which(?: \w+)?) to\b/.test(words);
  const otherWork = works.filter(
    (x) =>
      !(binding && x.action?.v === 'bind') &&
      !(x.w === 'air' && part.status === 'open') &&
      // "width of the border still not fixed"
      !(x.w === 'fixed' && / (?:not|n't|be|been|is|yet|to) (?:yet )?fixed | fixed on /.test(words)) &&
      // "the wadding question's closed"
      !(/^closed?$/.test(x.w) && / (?:question|matter|subject|discussion) /.test(words)) &&
      // "nor if it gets a border"
      !(x.action?.v === 'add-border' && part.status === 'open' && / (?:if|whether|does) it /.test(words)) &&
      // "is it going to be a plain back or a pieced one, I wonder"
      !(
        part.status === 'open' &&
        /^(?:pieced|scalloped|mitred|mitered|bound|printed|dyed)$/.test(x.w) &&
        /^(?:a|an|or|plain|the|be)$/.test(items[items.indexOf(x) - 1]?.w ?? '')
      ) &&
      // "whether to have a border at all I'll leave for now"
      !(x.action?.v === 'leave' && FOR_LATER.test(words)) &&
      // "leave the border off, that's decided"
      !(x.action?.v === 'leave' && / leave (?:the |that |any )?\S+ (?:off|out) $/.test(words)) &&
      !(
        x.action?.v === 'leave' &&
        /\b(?:open|question|decision|matter|choice|to (?:my|her|his|the owner|a higher))\b/.test(words)
      ) &&
      // "the fabric for the patches"
      !(x.action?.v === 'patch' && /^(?:the|a|for|that|this)$/.test(items[items.indexOf(x) - 1]?.w ?? '')) &&
      !(x.topic && !/ed$/.test(x.w)) &&
      !x.material &&
      !x.stitch,
  );
  if (otherWork.length) return undefined;
  if (way) return wayIn(around, k);
  if (part.status === 'open') {
    if (/\b(?:bought|got(?! to\b))\b/.test(words)) return undefined;
    return { topic, status: 'open', rule: 'decision.open' };
  }
  if (part.status === 'settled') {
    if (items.some((x) => x.quantity?.unit || x.cost) && !/\b(?:colou?r|width|wide)\b/.test(words))
      return undefined;
    return cloth && !/\bfabric|cloth|print\b/.test(words)
      ? undefined
      : { topic, status: 'settled', rule: 'decision.settled' };
  }
  if (cloth || topic === 'deadline' || topic === 'other' || topic === 'price') return undefined;
  // "the ties will be in white every three inches"
  const spacing = topic === 'tie-thread' && / (?:every|apart) /.test(words);
  if (items.some((x) => (x.quantity?.unit && !spacing) || x.cost)) return undefined;
  if (DOING.test(words.replace(' got to be ', ' '))) return undefined;
  if (
    /\b(?:maybe|perhaps|possibly|might|could(?! do with)|may|probably|likely|thinking)\b/.test(words) &&
    (items.some((x) => namesCloth(x, topic)) || / (?:go with|use|do|try|have) /.test(words))
  )
    return { topic, status: 'open', rule: 'decision.perhaps' };
  if (TO_MATCH.test(words) || (state.memory.matters?.length && THE_SAME.test(words)))
    return { topic, status: 'settled', rule: 'decision.to-match' };
  // "cotton batting it is", "the binding is to be the blue", "black sateen for the back, then", "border: yes"
  const said = `${words.trim()}${parts[k + 1] && !parts[k + 1]!.topic && parts[k + 1]!.items.length <= 2 ? ` ${parts[k + 1]!.joint} ${parts[k + 1]!.words.trim()}` : ''}`;
  const chooses = CHOICE_CUE.test(`${said} `) || CHOICE_CUE.test(said);
  const named = items.some((x) => namesCloth(x, topic) || /^(none|yes|no)$/.test(x.w)) || items.length <= 4;
  if (chooses && named) return { topic, status: 'settled', rule: 'decision.choice' };
  // "wool batting it is then and cream thread"
  if (
    parts[k - 1]?.taken &&
    / it is(?: then)? $/.test(parts[k - 1]!.words) &&
    /^(?:and|&|\+|,)$/.test(part.joint) &&
    items.length <= 4 &&
    items.every(isPlainStuff)
  )
    return { topic, status: 'settled', rule: 'decision.choice' };
  // "wool batting it is. and binding by hand", "by hand then, & binding in sage": a matter and its way, behind another that is settled
  if (
    !asked &&
    WAY_OF_IT.test(words) &&
    (state.memory.matters?.some((m) => m.about === topic) ||
      state.drafts.some((d) => d.entry.kind === 'decision' && d.entry.status === 'settled')) &&
    (/ by (?:hand|machine) /.test(words) || items.some((x) => namesCloth(x, topic) || COLOURS.has(x.w)))
  )
    return { topic, status: 'settled', rule: 'decision.way-of-it' };
  const forIt =
    /\bfor (?:the |my |its |her )?(?:ties|tying|backing|back|lining|binding|border|borders|batting|wadding)\b/.test(
      words,
    ) || topic === 'tie-thread';
  // "Wool batting.", "binding navy" where that stood open
  if (
    k === 0 &&
    !asked &&
    items.length <= 4 &&
    items.length > 1 &&
    // "binding" and "backing" are work besides
    items.every((x) => isPlainStuff(x) || /^(?:binding|backing)$/.test(x.w)) &&
    items.some((x) => namesCloth(x, topic) || COLOURS.has(x.w)) &&
    parts.slice(1).every((p) => p.topic && p.items.length <= 5) &&
    state.memory.matters?.some((m) => m.about === topic)
  )
    return { topic, status: 'settled', rule: 'decision.bare-choice' };
  // "Red wool for the ties. 4 in apart": by itself, with nothing of buying or work
  if (
    // "wool for the batting, navy for the binding"
    (parts.length === 1 ||
      (parts.filter((p) => CLOTH_FOR.test(p.words)).length > 1 &&
        !BOUGHT.test(sentence) &&
        !DOING.test(sentence))) &&
    items.length <= 6 &&
    !asked &&
    CLOTH_FOR.test(words) &&
    (items[0]!.material || items[0]!.fabric || COLOURS.has(items[0]!.w) || items[0]!.w === 'the')
  )
    return { topic, status: 'settled', rule: 'decision.cloth-for' };
  if (
    (settledBefore ||
      parts.slice(Math.max(0, k - 6), k).some((p) => p.taken && p.status === 'settled') ||
      state.drafts.some((d) => d.entry.kind === 'decision' && d.entry.status === 'settled')) &&
    forIt &&
    items.length <= 9
  )
    return { topic, status: 'settled', rule: 'decision.cloth-for' };
  return undefined;
}

const BARE_STATUS =
  /^ (?:(?:still|all|now) )?(?:open|undecided|unsettled|tbd|tbc|settled|agreed|decided|fixed)(?: still| yet| now)? $/;
/** A matter by its name alone, and no work, damage, place or time. */
const isPlainHead = ({ items }: Part): boolean =>
  items.length < 8 &&
  !items.some(
    (x) =>
      x.place || x.part || x.finding || x.seam || x.action || x.material || x.fabric || x.task || x.duration,
  );

const FOR_LATER =
  / (?:whether|what|which|if) .* leave (?:it |that |till |until |for |be )*(?:now|later|the moment|the time being|another (?:day|time)|tomorrow|(?:mon|tues|wednes|thurs|fri|satur|sun)day|next week) /;

/** "the backing's to match it", "the thread will be the same as the binding" */
const TO_MATCH =
  /^ (?:(?:and|so|but|then) )*(?:(?:the|my|its) )?(?:new )?\w+(?: colou?r)?(?: (?:is|'s|are|will|'ll|should|must|has|to|be|going|gonna|would))+ (?:match|go with|tone in|tone in with|the same)(?: (?:it|that|this|them|the \w+|as (?:it|that|the \w+)|too|as well|in with it))* $/;

/** "and the thread the same", where a matter was told of before */
const THE_SAME =
  /^ (?:and |so )*(?:the |my |its )?(?:new )?\w+(?: colou?r)? (?:the same|to match|likewise|ditto)(?: too| as well| colou?r)? $/;

const WAY_OF_IT =
  /^ (?:(?:and|so|then|the|new|its|my|with) )*(?:binding|bias|backing|back|lining|borders?|batting|wadding|thread|edging)(?: (?:is|to be|done|sewn|finished))? (?:by (?:hand|machine) |in (?:the |a |some |plain |dark |pale |light |deep )*(?:\S+ ){1,2}?)(?:then |too |as well )*$/;

const CLOTH_FOR =
  /^ (?:the )?(?:\w+ ){1,3}for (?:the )?(?:ties|backing|back|binding|batting|wadding|border|borders) $/;

const liesBehind = (state: ReaderState, words: string, sentence: string): boolean =>
  / back of (?:it|that|them|that one|this|this one|both|those)\b/.test(words) ||
  /\b(?:net|netting|tulle|crepeline|patch(?:ed)?|on top|on the (?:face|front)|over the (?:top|face|front))\b/.test(
    sentence,
  ) ||
  state.memory.open.some((o) => o.action === 'stabilize' && !o.passed);

/** A cloth, a fibre or a colour beside the thing that it is for. */
const namesCloth = (x: Item, topic: Topic): boolean =>
  x.material === 'fabric' ||
  x.fabric !== undefined ||
  (x.material !== undefined && x.material !== topic) ||
  /^(?:wool|cotton|linen|silk|bamboo|polyester|poly|black|white|cream|blue|red|green|gr[ae]y|brown|ecru|navy|pink|yellow|purple|orange|scalloped|narrow|narrower|wide|wider|bias)\b/.test(
    x.w,
  );
