/**
 * What is said behind a deed and settles it ("net dropped", "the wash is a definite no", "pressing row two can wait"). `a|b` are
 * alternatives of one word, `x?` may be missing.
 */
const IS = "is|are|'s|was|were|got";
const NOW = 'now|all|just|simply|both|also?';

/** Words that need no verb before them: "net dropped on 3-4". */
const DROPPED_BARE = [
  'dropped|scrapped|cancelled|canceled|abandoned|ditched|binned|rejected|vetoed|nixed|axed|aborted|canned|discarded',
  'called|ruled off|out',
  'decided|advised|voted against',
  'thrown|chucked|tossed out',
  'knocked on the head',
  'given up? on',
  'off the table|cards|list|menu',
  'out of the question',
  'no longer needed|wanted|necessary|required|happening|planned|called',
  'no longer called for',
  'not needed|wanted|necessary|required|happening after all',
  'not happening|going',
  'not going ahead',
  'not to be after? all?',
  'surplus to requirements',
  'gone|went by the board|wayside',
  'fell|fallen through',
  'came|come to nothing',
];

/** Words that are a verdict only behind a verb: "washing is a no". */
const DROPPED_BEHIND_IS = [
  'a definite|firm|hard|big|flat? no',
  'a no go|no',
  'a non starter',
  'a nonstarter|nogo',
  'a dead duck|loss',
  'a lost cause',
  'no go',
  'no longer on',
  'no longer the|an plan|idea|option',
  'no longer part of the plan',
  'dead|history|toast',
  'off altogether|then|instead',
  'out altogether|then',
  "n't happening|needed|wanted|necessary|required|on|worth",
  "n't going ahead|to",
  "n't going to happen|work|be",
  "n't gonna happen|work",
  "n't worth it|the",
  'never going to happen|work',
];

const DROPPED = [
  ...DROPPED_BARE,
  ...DROPPED_BARE.map((words) => `${IS} ${NOW} ${words}`),
  ...DROPPED_BARE.map((words) => `has|have|'s|'ve|had been ${NOW} ${words}`),
  ...DROPPED_BEHIND_IS.map((words) => `${IS} ${NOW} ${words}`),
  "wo n't happen|work",
  "wo n't be happening|needed|going",
  "wo n't be going ahead",
  "wo n't go|be ahead",
  'will not happen',
  'will not be happening|needed',
  "'s|has|have gone|went by the board",
  "'s|has|have fallen through",
  "'s|has|have come to nothing",
];

/** Put off, and still to be done. */
const LATER_BARE = [
  'on hold|ice',
  'on the back burner|shelf',
  'postponed|deferred|delayed|adjourned',
  'put|pushed|moved|held back|off',
  'held|left over till|until|to|for',
  'put on hold|ice',
  'put on the back burner',
  'shelved|parked for now|today|tonight|later',
  'shelved|parked for the moment|present|minute',
  'shelved|parked till|until',
  'pencilled|penciled|booked|scheduled in|for',
  'bumped|moved|shifted to',
  'for another day|time',
  'still to be? do|done|come|follow',
];
const DAY = 'tomorrow|tmrw|tonight|next|later|monday|tuesday|wednesday|thursday|friday|saturday|sunday';
const LATER = [
  ...LATER_BARE,
  `is|'s|are set|down|due|fixed|planned|earmarked? for|on|till|until? ${DAY}`,
  `will|'ll|shall be for|on|till|until? ${DAY}`,
  `wo n't be|happen till|until|before ${DAY}`,
  `comes|happens|waits for|on|till|until? ${DAY}`,
  "will|'ll|shall have to wait|keep till|until?",
  ...LATER_BARE.map((words) => `${IS} ${NOW} ${words}`),
  ...LATER_BARE.map((words) => `has|have|'s|'ve been ${NOW} ${words}`),
  "can|will|must|has|have|could|may|might|'ll to? just? wait|keep",
  "is|are|'s a|another? job for",
];

export const VERDICTS: ['dropped' | 'planned', string[]][] = [
  ['dropped', DROPPED],
  ['planned', LATER],
];

/** What gives up a deed that was only named before it: "crepeline over 2-3, cancel that idea". */
export const GIVE_IT_UP = [
  'cancel|scrap|forget|drop|bin|ditch|nix|kill|shelve|abandon|skip|lose all? that|this|it',
  'cancel|scrap|forget|drop|bin|ditch|nix|kill|shelve|abandon|skip|lose that|this|the|my whole? idea|plan|one|notion|thought',
  'never mind that|it|now?',
  'never mind',
  'forget about? that|it',
  'no thanks|way|chance|longer',
  'not any more|longer',
  'not any longer',
  'not happening|going',
  'not now',
  'not going to happen',
  'not after all',
  "do n't think so",
  'i think not',
  'i do not think so',
  "i do n't think so",
  'better not',
  'not going to bother',
  'not bothering|doing that|it?',
  "wo n't bother|be with? that|it?",
  "i|we wo n't bother with? that|it?",
  "i|we 've|have dropped|scrapped|ditched|abandoned|binned|cancelled|shelved that|it|them",
  "i|we 've|have given up on? that|it?",
  "i|we 've|have decided against that|it",
  "i|we 've|have gone off that|it",
  "i|we 've|have thought better of that|it",
  "i|we 'm|'re|am|are not going to bother? with? that|it?",
  "i|we 'm|'re|am|are not doing|bothering with? that|it|them?",
  "that|it 's|has|is gone by the board|wayside|by",
  "that|it 's|is off|out now|altogether|then",
];

/** Heads of a list of what is given up: "dropped: net on 3-4, patch on 2-3". */
export const GIVEN_UP_HEADS =
  /^(?:now |all |also |so )*(?:dropped|scrapped|cancelled|canceled|abandoned|called off|ruled out|rejected|vetoed|binned|ditched|not happening|no longer happening|off the list|not doing|given up(?: on)?|decided against)$/;
