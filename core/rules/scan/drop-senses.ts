import type { Token } from '../../text/tokenise.ts';
import type { Item } from '../item.ts';
import { LEXICON } from '../lexicon-index.ts';

/** Takes from an item the senses that its words have by themselves and not beside their neighbours. */
export function dropSenses(item: Item, tokens: Token[], i: number): void {
  if ((item.w === 'back' && !isBacking(tokens, i)) || (item.w === 'top' && !isPatchwork(tokens, i))) {
    item.part = undefined;
    item.material = undefined;
    item.object = undefined;
  }
  // "the one joining 2-3 to 2-4", "the seam joining the two": which seam
  if (
    /^(?:joining|joins|connecting|uniting)$/.test(item.w) &&
    /^(?:one|ones|seams?|join)$/.test(tokens[i - 1]?.w ?? '')
  )
    item.action = undefined;
  // "turned back the binding to look", "sewed back the loose bit"
  if (item.w === 'back' && MOVED.test(tokens[i - 1]?.w ?? '')) item.action = undefined;
  // "a splash of vinegar": a little of what was used, and nothing spilt
  if (/^(splash|blob|dribble|drip|smear)$/.test(item.w) && tokens[item.j]?.w === 'of')
    if (LEXICON.longestAt(tokens, item.j + 1)?.payloads.some((s) => s.k === 'material'))
      item.finding = undefined;
  // "a lump of a patch in the wrong blue": how an old mend looks, and no cloth of the quilt
  if (
    item.fabric &&
    tokens[i - 3]?.w === 'in' &&
    /^(?:the|a|an|some)$/.test(tokens[i - 2]!.w) &&
    /^(?:wrong|clashing|garish|different|mismatched|nasty|horrid|horrible|ugly|hideous|loud)$/.test(
      tokens[i - 1]!.w,
    )
  )
    item.fabric = undefined;
  // "lost half an hour to the phone", "twenty minutes of that lost to the fuse box": time, and no piece of cloth
  if (
    item.w === 'lost' &&
    item.finding &&
    tokens.slice(Math.max(0, i - 4), i + 6).some((t) => TIME.test(t.w))
  )
    item.finding = undefined;
  // "that's an hour and a quarter gone", but "rows 2-3 half gone"
  const part = /^(?:quarter|half)$/.test(tokens[i - 1]?.w ?? '') && tokens[i - 2]?.w === 'a';
  if (item.w === 'gone' && (TIME.test(tokens[i - 1]?.w ?? '') || part)) {
    item.finding = undefined;
    item.fail = undefined;
  }
  // "ran out before the bottom": of binding, and no dye
  if (item.finding === 'dye-bleed' && /^(ran|run|running)$/.test(item.w) && tokens[item.j]?.w === 'out')
    item.finding = undefined;
  // "I'm fixing to take the binding off": a plan, and no mending
  if (/^fixing?$/.test(item.w) && tokens[i + 1]?.w === 'to') {
    item.task = undefined;
    item.action = undefined;
  }
  // "out on the line", "a line of stitching": only "to line it" is a deed
  if (
    /^lines?$/.test(item.w) &&
    !/^(|[.,;:\n-]|--|to|will|'ll|n't|not|i|we|gonna|could|might|may|should|must|and|or|then|maybe|perhaps|possibly|better|tomorrow|next)$/.test(
      tokens[i - 1]?.w ?? '',
    ) &&
    !(tokens[i - 1]!.w === "'s" && tokens[i - 2]?.w === 'let')
  )
    item.action = undefined;
}

const TIME = /^(?:minutes?|mins?|hours?|hrs?|afternoon|evening|morning)$/;

const MOVED =
  /^(?:(?:turn|fold|roll|peel|pull|flip|flap|lift|lay|laid|draw|drew|drawn|prise|pris|bend|bent|push|throw|threw|thrown|hold|held|go|went|gone|come|came|look|bring|brought|take|took|taken|put|sit|sat|step|clip|pin|strip|scrap|sew|sewn|resew|stitch|restitch|tack|whip|catch|caught|glue|fasten|slipstitch)(?:ped|led|ned|ed|d|ping|ning|ing)?)$/;

const DONE_TO_BACK =
  /^(?:photo|photos|photographs?|photographed|photograph(?:ing)|vac|vacs|vacuum(?:ed|ing)?|hoover(?:ed|ing)?|press(?:ed|ing)?|iron(?:ed|ing)?|wash(?:ed|ing)?|clean(?:ed|ing)?|measur(?:e|ed|ing)|check(?:ed|ing)?)$/;

/** "at the top", "the top one", "top left": a direction, and no word for the patchwork. */
function isPatchwork(tokens: Token[], i: number): boolean {
  const after = tokens[i + 1]?.w ?? '';
  if (
    /^(left|right|one|ones|two|three|four|middle|row|rows|half|third|end|edge|side|border|corner|corners|block|blocks|square|hand|strip|of|to|down|most|seam)$/.test(
      after,
    )
  )
    return false;
  const before = tokens[i - 1]?.w ?? '';
  const lead = before === 'the' ? (tokens[i - 2]?.w ?? '') : before;
  // "squared up the top"
  if (lead === 'up' && /^(squared?|square|trued?|true|evened|even)$/.test(tokens[i - 3]?.w ?? ''))
    return true;
  return !/^(at|up|near|nearest|toward|towards|along|across|from)$/.test(lead);
}

/** "sewed it back", "back together", "back on it": no backing. */
function isBacking(tokens: Token[], i: number): boolean {
  const before = tokens[i - 1]?.w ?? '';
  const after = tokens[i + 1]?.w ?? '';
  // "they're thin, back them with lawn"
  if (/^(it|them|those|these|both|that)$/.test(after) && /^(and|&|\+|,|or|\.|;|)$/.test(before)) return false;
  if (
    /^(the|its|new|old|whole|this|that|quilt|a|for|and|&|\+|,|or|of|front|her)$/.test(before) &&
    !/^(on|to|together|at|home|again|in|down|into|onto)$/.test(after)
  )
    return true;
  // "mildew on back, not front"
  if (
    /^(on|of)$/.test(before) &&
    /^(|[.,;]|not|but|and|&|\+|only)$/.test(after) &&
    !/^(put|went|going|go|sewed|stitched|sew)$/.test(tokens[i - 2]?.w ?? '')
  )
    return true;
  // "3 tears in back", "stain on back"
  if (
    /^(on|in)$/.test(before) &&
    /^(|[.,;\n]|too|as|also|and|&)$/.test(after) &&
    LEXICON.longestAt(tokens, i - 2)?.payloads.some((s) => s.k === 'finding')
  )
    return true;
  // "to do: photo back", "vac'd back": what is done to the quilt's back, and nothing is brought back
  if (
    DONE_TO_BACK.test(before) &&
    /^(|[.,;\n]|too|as|also|and|&|\+|by|tomorrow|tmrw|today|tonight|next|first|then|flat|now)$/.test(after)
  )
    return true;
  // "label to go on back"
  if (
    before === 'on' &&
    /^(|[.,;\n]|by|tomorrow|tmrw|in)$/.test(after) &&
    tokens.slice(Math.max(0, i - 6), i).some((t) => /^labels?$/.test(t.w))
  )
    return true;
  return (
    /^(the|its|new|old)$/.test(before) ||
    (/^(|\.|;|,|\n|-)$/.test(before) &&
      !/^(on|to|at|in|together|home|it|again|where|with|from|up|tomorrow|later|after|for|i)$/.test(after))
  );
}
