const DAY =
  '(?:monday|tuesday|wednesday|thursday|friday|saturday|sunday|mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sun(?! (?:porch|room|rooms|lounge|deck|terrace|house|spots?|damaged?|bleach\\w*|faded|light|shine)))';
const MEAL = '(?:lunch|dinner|supper|tea|breakfast|work|church|school|the news|this|that one|my [a-z]+)';

/** A time that lies ahead, in words that are padded with blanks: "washing it Friday", "off after supper", "at the weekend". */
const AHEAD = new RegExp(
  `(?<! (?:last|since|from|was|were|all|until|till|yesterday|of|every|the|in|full)) (?:tomorrow|tmrw|tmw|tonight|this evening|later(?: on| today)?|first thing|in the morning|next (?:week|month|time|${DAY})|(?:this|the|at the|over the|at|on) weekend|after ${MEAL}|(?:on |this |come |for )?${DAY}) (?!before |last |gone |just )`,
);
const COMES =
  " (?:soon as )?(?:i|we|she|he|they|it|there|that|those|the|my|this|her|all) (?:\\S+ ){0,3}?(?:comes?|arrives?|is|are|'s|'re|gets?|'ve|have|has|can|dries|lets?|turns? up) ";
const AWAITED = new RegExp(`^${COMES}`);
/** "the tulle comes", "soon as I've had my tea", behind a "when" or a "once": what is waited for, and not yet so. */
export const isAwaited = (words: string): boolean => AWAITED.test(words);
const NOT_BEFORE = new RegExp(` (?:when|once|as soon as|if)${COMES}`);
const UNTIL_THEN = / (?:when|once|as soon as|soon as|the minute|if|after) /;
/** It is going on, or is over. */
const HERE_AND_NOW =
  / (?:now|currently|still|busy|at the moment|at present|as we speak|was|were|been|did|had|yesterday|already) /;

/** Is it told of a time that lies ahead? */
export const isToCome = (words: string): boolean =>
  (AHEAD.test(words) || NOT_BEFORE.test(words)) && !HERE_AND_NOW.test(`${words.split(UNTIL_THEN)[0]!} `);

/** Does a time that lies ahead stand at the head of these words? */
export const beginsToCome = (words: string): boolean => {
  const hit = AHEAD.exec(words);
  return hit !== null && hit.index === 0;
};
