/** How it is said that a matter is open or settled. Patterns over the words of a part of a sentence, joined by blanks. */

export const OPEN_CUE =
  /\b(?:(?:still|left|wide|stays|stands|remains|remain|kept|all) open|open (?:still|question|matter|questions)|^ ?(?:and |is |are |was )*open|open ?$|undecided|tbd|tbc|to be decided|unsettled|not (?:yet )?(?:decided|settled|agreed|fixed|sure|certain)|n't (?:yet )?(?:decided|settled|agreed|figured|worked out|picked|chosen|made up|studied|thought|fixed|know|say|made my mind)|(?:nothing|none of it|no decision|not a thing) (?:is |has been |yet )*(?:decided|settled|agreed|fixed)?(?: (?:on|about))?|(?:ca|can|could) ?(?:n't|not) (?:decide|choose|make up|say|settle|pick)|to (?:decide|settle|be (?:decided|agreed|settled|chosen|fixed))|make up my mind|make my mind|mind (?:is|'s) not made up|no idea|up in the air|in two minds|of two minds|torn|(?:go|going|went|gone) back and forth|humming|hawing|hemming|dithering|swithering|wavering|on the fence|no nearer|none the wiser|wondering|i wonder|thinking (?:about|over|on)|to sleep on|sleep on it|not studied|undetermined|pending|before i (?:pick|choose|decide|settle|say)|have to see|to see in daylight|y ?\/ ?n|yes or no|question mark|whether|what to (?:do about|charge|ask)|(?:what|how much) (?:do|should|shall|can|will|would|to) i? ?(?:charge|ask)|(?:do|should|shall) i (?:tie|quilt|wash|charge|go)|(?:is it|which|what) [^,]{1,40}\?)/;
export const SETTLED_CUE =
  /\b(?:settled|decided|agreed|fixed|final|finalised|finalized|confirmed|for certain|for definite|for sure|no two ways|that 's that|done deal|it 's a deal|signed off|ok 'd|okayed|ok'd|ok ?$|okay ?$|said (?:yes|ok|okay|fine|that 's fine)|happy with (?:that|it)|fine by (?:her|him|them)|fine with (?:her|him|them)|made up my mind|mind 's made up|plumped for|opted for|settling on|settled on|going with|go with|went with|sticking with|turned out to be|chosen|chose|picked|definitely)\b/;
/** Words that settle a choice of cloth or way, but say other things of a treatment. */
export const CHOICE_CUE =
  /\b(?:it is|it 's|it shall be|shall be|will be|'ll be|is to be|are to be|to be|is going to be|'s going to be|'s gonna be|is gonna be|gonna be|going to be|is being|gets|it gets|'s getting|it is then|then ?$|in the end|after all|: yes|yes ?$|is (?:\w+ )?(?:wool|cotton|linen|calico|lawn|muslin|flannel|poly\w*)|goes in|going in)\b/;
export const OPEN_HEAD =
  /^(?:still |and |also |all |now |not yet |left |things |matters |bits |jobs )*(?:open|undecided|tbd|to decide|unsettled|not settled|not decided|open (?:still|matters|questions|points)|questions?|undecided still|to be decided|pending|still to decide|to settle)(?: still| yet| matters| questions)?$/;
export const SETTLED_HEAD =
  /^(?:now |and |also |that 's |that is |all |right |ok |okay |well |, )*(?:settled|decided|agreed|fixed|final|decisions|decision)(?: now| today| then| so far)?$/;

/** Words that make a price one of the whole job, not of something bought. */
export const JOB =
  /\b(?:whole job|for the (?:job|work|whole|restoration|mending|repair)|the job|price|quote|quoted|fee|charge|charging|estimate|deposit|hourly|labou?r|(?:she|he|they|owner|client) (?:will |'ll |has |have |'s |is |are )*(?:pay|paying|agreed|said yes|happy|ok|fine))\b/;
/** Words of buying: a sum beside them is no price of the job. */
export const BOUGHT =
  /\b(?:bought|paid for|cost me|spent|reels?|spools?|yards?|yd|metres?|packs?|balls?|skeins?|fat quarters?|each|apiece|a (?:yard|metre|pack|ball|reel|spool|skein)|shop|store|receipt)\b/;
/** Treatments, errands and times: a part with one of these settles no matter unless it says so outright. */
export const DOING =
  /\b(?:bought|buy|need|needs|got|get|have (?:a|\d|one|two|three|some|got)|used|have on|tomorrow|tonight|started|starting|finished|finish|sew|sewn|cut|cutting|came|come|coming|off|out|on by|back on|put on|goes? (?:back )?on|going on|took|take|bit|frayed|worn|torn|stained|left to|trimmed|pinned|basted|layered|pressed|laid|wants|stays?|leave|mended|patched|done|minutes|hours|rows?|blocks?)\b/;
