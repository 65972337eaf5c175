import type { Item } from '../item.ts';

const TOOL =
  '(?:needles?|machine|sewing machine|bobbins?|thread|cotton|scissors|shears|snips|iron|thimble|lamp|torch|light|lights|specs|glasses|spectacles|pins?|pin ?cushion|rotary cutter|cutter|blade|vacuum|hoover|foot pedal|pedal|treadle|belt|tension|battery|batteries|fuse|bulb|plug|kettle|tape measure|ruler|seam ripper|unpicker|chair|table)';
const OWN =
  '(?:the|my|this|that|these|those|a|another|blooming|blasted|bloody|flipping|stupid|wretched|darn|damn|new|old|good)';
const TROUBLE =
  '(?:snapped|broke|broken|bent|jammed|jamming|stuck|packed up|packing up|conked out|died|dead|dying|run out|ran out|running out|knotted|knotting(?! (?:the|off|at|every|it|them))|knotting up|in (?:a |one )?(?:knots?|tangles?|twist)|tangled|tangling|twisting|snagging|snapping|splitting|unthreading|slipping|skipping|blunt|dull|rusty|overheated|tripped|switched itself off|seized|seized up|blown|gone|going(?! to)|missing|walked|wandered|fell|fallen|rolled|vanished|disappeared|playing up|acting up|on strike|up the spout|kaput|busted|flat|rubbish|useless|hopeless|smoking|leaking|spitting)';

/** "thread keeps knotting", "the needle's snapped, second one today", "scissors need sharpening", "machine's jammed again". */
const TROUBLED = new RegExp(
  `^(?:(?:oh|ah|ow|ouch|damn|drat|blast|bother|right|well|and|now|great|typical|um|er|no|there|,|-|!|\\.) )*(?:${OWN} )*${TOOL} ?(?:'s|is|are|has|have|just|keeps?|'ve|needs?|wants?|went|got|wo n't|does n't)? ?(?:just |all |gone and |been |itself |themselves |clean |nearly |completely |got |to |itself |on me |n't )*(?:${TROUBLE}|sharpening|oiling|changing|replacing|a clean|fixing|work|start|itself)\\b`,
);
/** "dropped a whole tin of pins", "stabbed my thumb", "where have I put the scissors". */
const MISHAP = new RegExp(
  `^(?:(?:oh|ah|ow|ouch|damn|drat|blast|bother|right|well|and|now|great|i|i 've|just|um|er|,|-|!|\\.) )*(?:(?:dropped|knocked|spilt|spilled|upset|lost|mislaid|broke|snapped|bent|ca n't find|cannot find|where (?:have|did|are|is|has|'s|the \\S+ are) (?:i |i put |we |you )?(?:put|left|got)?|who 's (?:had|got|taken)) ?(?:a |the |my |another |those |all |over )*(?:whole )?(?:tin|box|jar|packet|pot|tray)? ?(?:of )?(?:the |my |good )*${TOOL}\\b|(?:stabbed|pricked|stuck|jabbed|nicked|cut) (?:my|myself|me)\\b)`,
);

/** "school run, back at four": out of the house, and no time at work. */
const AWAY =
  /^(?:(?:right|ok|okay|off|got|for|to|the|a|,) )*(?:school run|nursery run|dentist|doctor 's|doctors|bus|appointment|dog walk|walk|errand|errands|shops) ?,? (?:then )?back (?:at|by|in|around|about|for)\b/;

/**
 * A tool that breaks, runs out or goes missing is talk by the way: nothing of the quilt. Not where goods are wanted, or a block, a length
 * or a time is told with it.
 */
export function isToolTrouble(words: string, items: Item[]): boolean {
  if (items.length <= 10 && AWAY.test(words)) return true;
  if (items.length > 16 || !(TROUBLED.test(words) || MISHAP.test(words))) return false;
  if (
    /\b(?:need (?:more|another|some|a new)|buy|bought|order|to get|shop|stop|stopped|stopping|quilt|block|row|seam|patch(?:ed)?|darn(?:ed)?|undo|took|used)\b/.test(
      words,
    )
  )
    return false;
  return !items.some(
    (x) =>
      x.place?.kind === 'blocks' ||
      x.fabric ||
      x.quantity?.unit ||
      x.cost ||
      (x.duration && !/\b(?:give|gimme|wait|hang on|back in)\b/.test(words)) ||
      x.clock ||
      x.span ||
      x.stitches ||
      (x.object === 'ties' && /\bties?\b/.test(x.w)) ||
      (x.object === 'stitching' && !/^(?:thread|cotton)$/.test(x.w)) ||
      x.object === 'quilting',
  );
}
