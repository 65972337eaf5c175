/** A piece of this kind of work, and what may stand before it so that it is another than the one on the table. */
const PIECE =
  '(?:quilt|qlt|coverlet|comforter|blanket|throw|bedspread|eiderdown|cushion|sampler|hanging|runner|job|project|one i)';
const WHOSE = "(?:the|my|her|his|our|their|a|an|another|some|that|somebody 's|someone 's|mrs?|old)";
/** "the baby quilt", "my daughter 's quilt", "another one": and no "the whole quilt", "the old quilt". */
const OTHER = `${WHOSE} (?!(?:old|whole|entire|same|poor|top|back|finished|actual) )(?:[a-z]+ |'s ){1,4}?${PIECE}\\b`;

/** "that was for the church quilt", "it belongs to the lodge quilt", "that goes with the other quilt". */
const MEANT_FOR = `(?:that|it|this|those|they)(?: (?:one|last one|lot|note|entry|bit))?(?: (?:was|is|'s|were|are|belongs?|belonged|goes|went))(?: (?:all|really|actually|only|just|meant|said|intended|supposed to (?:be|go)|down))* (?:for|to|with|about|on|of|from|under) ${OTHER}`;
/** "that was the crib quilt", "that 's my sister 's quilt": without a word that joins it, only beside a command or an apology. */
const WAS = `(?:that|it|this)(?: one)? (?:was|is|'s) ${OTHER}`;

const SORRY =
  '(?:(?:oh|ah|oops|whoops|sorry|no|wait|hang on|hold on|damn|bother|dear|drat|bugger|shoot|my mistake|hmm|well|actually|,|!|\\.|-) )+';
const END =
  "(?: (?:sorry|not this(?: one| quilt)?|and not this(?: one)?|i (?:was|am|'m) (?:thinking of|on about)|i mean|instead|,|\\.|!|please))* *$";

const BEHIND_COMMAND = new RegExp(`(?:^|[ ,.!-])(?:${MEANT_FOR}|${WAS})`);
const ALONE = new RegExp(`^(?:${SORRY})?that(?= )(?:${MEANT_FOR.replace(/^\(\?:[^)]*\)/, '')})${END}`);
const ALONE_SORRY = new RegExp(`^${SORRY}${WAS}${END}`);

/** Behind "take that back", "scratch that": why, since it was told of another piece than this. */
export const wasAnotherQuilt = (rest: string): boolean => BEHIND_COMMAND.test(rest);

/** "sorry, that was meant for my daughter's quilt", "oops that was the crib quilt": a whole note that says no more. */
export const saysAnotherQuilt = (text: string): boolean =>
  text.split(' ').length <= 16 && (ALONE.test(text) || ALONE_SORRY.test(text));
