/** What is told in one breath from its first word to its last: what stands before and behind it is another statement. */

const THING =
  '(?:binding|backing|batting|wadding|border|borders|thread|tie thread|yarn|interlining|lining|sashing)';
const KIND = '(?:colou?r|kind|sort|type|weight|width|make|style|shade|loft|fibre|fiber)';
/** "the binding color", "what colour binding", "the colour of the backing", "which batting". */
const MATTER = `(?:(?:the|a|what|which|any) )?(?:${KIND} (?:(?:of|for) )?(?:the )?)?${THING}(?: (?:${KIND}|fabric|cloth|width|material|thickness))?(?: (?:to use|to get|to buy|yet))?`;
const PRICE = '(?:the |a |my )?(?:price|fee|charge)';
/** "washing it", "tying or quilting", "whether to tie or quilt it". */
const WAY =
  "(?:(?:the )?washing(?: it| this)?|(?:tying|quilting) or (?:tying|quilting)(?: it)?|(?:whether )?(?:(?:to|i |we |i 'll |we 'll ) ?)?(?:tie|quilt) (?:it )?or (?:to )?(?:tie|quilt)(?: it)?|whether to wash(?: it)?|how to (?:wash|finish) it)";
const I = '(?:(?:i|we) )?(?:(?:still|also|really|just) )?';
const MATERIAL =
  '(?:the )?(?:wool|cotton|silk|linen|polyester|poly|bamboo|flannel|muslin|calico|lawn|[a-z]+ (?:cotton|wool))';
const SUM = '\\S+(?: \\S+)?(?: dollars| pounds| quid| bucks| euros)?';
const MONTHS = '(?:january|february|march|april|may|june|july|august|september|october|november|december)';
const DATE = `(?:(?:the )?[a-z0-9]+(?: (?:st|nd|rd|th))? (?:of )?${MONTHS}|${MONTHS} (?:the )?[a-z0-9]+(?: (?:st|nd|rd|th))?|(?:next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|christmas|easter|thanksgiving|the end of (?:the month|${MONTHS}))`;

/** Damage and mends lie on the back too, and choose nothing. */
export const NO_CHOICE =
  '(?:[a-z0-9-]+ ){0,3}(?:patch|patches|label|labels|stain|stains|tear|hole|holes|net|darn|mend|repair|seam|seams|mildew|mould|mark|marks|row|rows|one|ones|pressed|washed|sewed|cleaned|put) ';

/** Each from its beginning; the longest reading of it is meant. */
export const WHOLE_MATTERS: RegExp[] = [
  // "I haven't decided on the binding color", "haven't settled what colour binding yet"
  new RegExp(
    `^${I}(?:have|has) (?:n't|not) (?:yet |really |quite |actually )?(?:decided|settled|chosen|picked|made up (?:my|our) minds?|made (?:my|our) minds? up)(?: yet)?(?: (?:on|about|over))? (?:${MATTER}|${PRICE}|${WAY})(?= |$)`,
  ),
  // "not sure whether to tie or quilt", "still undecided about washing it", "can't decide on the border"
  new RegExp(
    `^(?:(?:i|we) (?:'m|am|'re|are) |(?:i|we) )?(?:still )?(?:not (?:sure|decided|certain)|undecided|unsure|in two minds|ca n't (?:decide|choose|settle)|ca not (?:decide|choose)|no decision)(?: yet)?(?: (?:on|about|over|of))? (?:${MATTER}|${PRICE}|${WAY})(?= |$)`,
  ),
  // "the binding is undecided", "the backing color is still open", "the price is settled at 300 dollars", "batting settled, wool"
  new RegExp(
    `^(?:(?:${MATTER}|${PRICE}) (?:(?:is|'s) )?(?:(?:still|now|not yet|yet to be|all|to be) )*(?:undecided|up in the air|decided|settled|agreed|fixed|tbd|an open question|open)|(?:${MATTER}|${PRICE}) (?:has|have) been (?:settled|agreed|decided|fixed))(?: at (?:at )?${SUM}|(?: [,:])? (?:on |as )?${MATERIAL})?(?= |$)`,
  ),
  // "going with navy for the binding", "we've gone for the wool for the batting"
  new RegExp(
    `^${I}(?:'m |am |'re |are |'ve |have )?(?:going|gone|went|sticking|settled|decided) (?:with|for|on) (?:the |a |plain )?[a-z]+(?: [a-z]+)? for the ${THING}(?= |$)`,
  ),
  // "flannel on the back that's settled", "red wool for the ties, that's decided"
  new RegExp(
    `^(?!${NO_CHOICE})(?:the |plain )?[a-z]+(?: [a-z]+)? (?:on|for) the (?:back|backing|binding|batting|ties|borders?)(?: ,)? that 's (?:settled|decided|agreed|fixed|final)(?: then| now)?(?= |$)`,
  ),
  // "the back's going to be flannel (i've got six yards of it)"
  /^(?:and )?(?:the |my )?(?:back|backing|binding|batting|border) (?:is|'s) going to be (?:the |a |plain |some )?[a-z]+(?: (?!i |we |and |then |need )[a-z]+)?(?= (?:i|we|need|got|bought|then) )/,
  // "we agreed on cotton batting", "settled on the navy binding"
  new RegExp(
    `^${I}(?:'ve |have )?(?:agreed|settled|decided|plumped) (?:on|for) (?:the |a )?(?:[a-z]+ ){1,2}${THING}(?= |$)`,
  ),
  // "it has to be done by the tenth of june", "due back by Friday"
  new RegExp(
    `^(?:(?:it|this|quilt|the quilt) )?(?:(?:has|'s got|needs) to be|must be|is to be|'s) ?(?:done|finished|ready|back)?(?: back)? by ${DATE}(?= |$)`,
  ),
  // "it'll be tied, not quilted", "it's going to be quilted and not tied"
  /^(?:it|this|the quilt)(?: (?:'ll|will|is going to|'s going to))? be (?:tied|quilted)(?: ,)?(?: and)? not (?:tied|quilted)(?= |$)/,
];

const NUMBER =
  '(?:an?|half an?|(?:a )?quarter(?: of an)?|three quarters(?: of an)?|[^ ]+(?: and (?:a half|a quarter|three (?:quarters|eighths))| (?:and )?\\d+ ?\\/ ?\\d+)?)';
const UNIT =
  '(?:inch(?:es)?|in|cm|centimetres?|centimeters?|mm|millimetres?|feet|ft|foot|metres?|meters?|yards?|m)';
const LENGTH = `(?:${NUMBER} )??[^ ]*(?: ?${UNIT})`;

/** Sizes told whole. */
export const WHOLE_SIZES: RegExp[] = [
  // "the quilt measures 60 by 72 inches", "the top is 60 x 72 in"
  new RegExp(
    `^(?:the )?(?:quilt|top|whole thing|it) (?:measures|measured|comes out at|came out at|is|'s) (?:[^ ]+ ){1,3}(?:by|x) (?:[^ ]+ ?){1,3}?${UNIT}(?= |$)`,
  ),
  // "the border is four inches wide", "strips are two and a half inches wide", "blocks are nine inches"
  new RegExp(
    `^(?:the |my |each |our )?(?:(?:top |bottom |left |right )?borders?|strips?|blocks?|squares?|tails?|tie tails|seams?|seam allowances?|diagonal|tie spacing|spacing) (?:is|'s|are|measures?|comes? out at|came out at) (?:about |all )?${LENGTH}(?: (?:wide|long|square|deep|across|apart|finished))?(?= |$)`,
  ),
  // "ties every four inches"
  new RegExp(`^(?:the )?ties (?:are )?(?:every|at every) ${LENGTH}(?= |$)`),
];

/** "leaving 3-3 as it is", "I'm leaving the backing and the binding alone". */
export const WHOLE_LEAVES: RegExp[] = [
  /^(?:(?:i|we) (?:'m |'re |am |are )?)?leaving (?:(?!as |and (?:i|then) )[^,;]+? ){1,12}?(?:as (?:it is|they are|it was|they were|is|found)|alone|be)(?= |$)/,
  // "(never mind the net on 3-1,) it can stay as it is"
  /^(?:it|that|they|those|that one|this one) (?:can|could|may|might|will|'ll|is|'s|are|shall) (?:just )?(?:stay|stays|staying|be left|remain|stop) (?:just )?(?:as (?:it is|they are|it was|is)|alone|be)(?= |$)/,
];
