import { PatternSet } from '../text/pattern-set.ts';

/**
 * Words by which a note tells that it mends the one before. `strong`: it can hardly be anything else; `weak`: it may be, where
 * what follows fits the last note; `none`: nothing but its content tells.
 */
export type Cue = 'strong' | 'weak' | 'none';

const SOUNDS =
  /^(?:(?:oh|ah|aw|ach|ugh|argh|bugger|sod it|blow|heck|hell|crumbs|crikey|blimey|fiddlesticks|rats|oh dear|dang|dang it|shucks|crikey|gosh|upon my word|ok|right|okay|ok|so|and|but|well|hmm|damn|bother|drat|shoot|blast|argh|dear|please|no|nope|nah|yes|and|,|-|\.|!|:) )+/;
/** At the beginning, after sounds like "oh" or "right". */
const STRONG_START =
  /^(?:sorry|apologies|or rather|check that(?= [,:])|(?:up)?on reflection|(?:i )?spoke too soon|silly (?:old )?me|daft of me|i stand corrected|not quite right|i was wrong|i lied|i (?:lie|fib)|one correction|small correction|what was i (?:saying|thinking)|what am i (?:saying|on about|like)|(?:that|it|this|the last one|that one) (?:'s|is|was) (?:all )?(?:wrong|not right|n't right|a mistake|incorrect|mistaken)(?! (?:with|side|way|colou?r|size|shade|fabric|cloth|for))|correction|corrected|correct that|i (?:meant(?! to (?!say|put|write|tell))|mean ,|mean the|mean(?= (?!it\b|that\b|this\b|he\b|she\b|they\b|you\b|we\b|i\b|to\b|there\b|really\b|look\b|honestly\b|well\b|what\b|how\b|who\b|why\b|if\b|business\b)\S+(?: \S+){0,2}[ .!]*$)|mean (?=(?:rows?|columns?|cols?|blocks?|top|bottom|left|right|upper|lower|only|\d|one|two|three|four|five|six|seven|eight|nine|ten)\b)|misspoke|miscounted|misread|misheard|(?:mixed|muddled)(?= (?:up|that|those|them|it|these|this|the (?:two|rows?|blocks?|numbers?|columns?)\b)|$)|said|tell a lie|made a mistake|got (?:that|it|those|them) (?:wrong|mixed|muddled|backwards|back to front|the wrong way))|i 'm telling (?:a lie|lies|fibs)|telling lies|tell a lie|make (?:that|it|this|those)|(?:that|it|this|they|those|(?:that|the) last(?: one| bit| part| row)?) (?:should|ought to) (?:have |of |'ve )?(?:be|been|read|say|said)\b|should (?:have |of |'ve )?(?:be|been|read|say|said)|(?:said|put|wrote) \S+(?: \S+)? , (?:it|that|should|but)\b|i should (?:have|of|'ve)|beg (?:your )?pardon|i beg|pardon|wrong|typo|misspoke|my (?:mistake|fault|error|bad)|wait (?:a minute )?,? ?no|no ,? ?wait|backwards|back to front|other way (?:a?round|about)|the other way|change|alter|amend|swap (?:those|them|that|the|these)|put that down as|call (?:it|that)|let me correct|let me put that right|fix that|rather|i (?:just )?(?:told|gave|tell) (?:you )?(?:it |that |that one )?wrong|i (?:had|'ve|'d|have|'ve got|got) (?:it|that|those|them|the (?:numbers|two)) (?:backwards|back to front|wrong|upside down|the wrong way (?:a?round|about)|muddled|mixed|crossed)|(?:a |one |small |slight |the )*(?:correction|mend|amendment) (?:is|to|for|of|on|here|needed|required)|got (?:that|it|those|them) (?:wrong|mixed|muddled|backwards|back to front|upside down|the wrong way)|not so|i (?:should|forgot to|never) (?:say|add|mention|put|tell you|told you)|forgot to (?:say|mention|add|put|tell)|scratch|strike|delete|cross out|rub out|leave out|read (?:that|it) as|for .{1,24} read)\b/;
/** Anywhere, in words that speak of the telling and not of the work. */
const STRONG_ANYWHERE =
  /\b(?:when i (?:say|said|put|wrote|write) .{1,30} i (?:mean|meant)|(?:receipt|docket|bill) (?:here|in front of me|in my hand)\b.{1,30}\bi see|i (?:should have|should of|should 've) said|(?:it|that|they) (?:'s|is|are|'re|was|were) [^.]{1,30}? i said (?!that|it|so\b|i\b)|(?:got|had|i 'd) (?:the )?[\w-]+(?: [\w-]+)? wrong|was (?:it|that) .{1,30} \? (?:no|yes|yeah)|s \/ b|add .{1,24} to (?:that|it)|put (?!my (?:finger|hand|hands) |(?:a|an|some|new|another|more) ).{1,24} (?:on|against|down for|(?<!\b(?:next|close|nearest|nearer|adjacent|beside) )to) (?:that|it)|used .{1,20} actually|i meant(?! to (?!say|put|write|tell))|is what i mean(?:t)?|i misspoke|i miscounted|ca n't count|can not count|my mistake|typo|i mixed (?:those|them|that|it) up|mixed up|(?:got|had) (?:that|it|those|them) (?:wrong|upside down|backwards|back to front)|said (?:that|it) wrong|should (?:have |of |'ve )(?:been|read|said)|wrong way round|i tell a lie|beg (?:your )?pardon|slip of the tongue|(?:so|please|and) (?:fix|mend|correct|change|amend|alter) (?:that|it)|correction is (?:required|needed)|in question|did i (?:say|put|write|tell you) .{1,40} (?:[.?!,] .{1,40}|(?:i |it )?(?:meant|should|was) .{1,40})|which i (?:had|did|was|have) n't|it should read|told you wrong|had it backwards|misread|(?:counted|measured|read|wrote|weighed|added) (?:it |that |them |those )?(?:up |down )?wrong|wrong number|misremembered)\b/;
const STRONG_END =
  /(?:^|[ ,.])(?:what am i (?:saying|on about|like|thinking)|silly (?:old )?me|daft of me|my bad|i tell a lie|sorry|i mean|i meant|correction|my mistake|rather|typo|(?:that|it|this) (?:should|ought to) (?:be|read|say|have (?:been|said|read))|(?<!\b(?:will|wo|do|does|did|am|would|shall|should|can|could|have|has|had|is|was|are|were|'m|'s|'re|'ve|'ll|'d|or|if|why|better|rather|hope|think) )not)[ .!]*$/;
/** "no" before the thing itself denies it ("no holes in row four") and mends nothing. */
const WEAK_START =
  /^(?:no|nope|nah|not(?! (?:sure|certain|decided|convinced|keen|yet|happy|looking|bad))|actually|oops|whoops|hang on|hold on|hold it|wait|hold up|that was|it was|they were|those were|these were|this was|only|just)\b/;

/**
 * Words that tell why a figure or a place is another one: what she looks at, counts again or owns to. They make a scrap, from
 * which nothing else is read, a mend; beside other news they may be said of anything.
 */
export const SECOND_LOOK =
  /\b(?:(?:now )?(?:i |i 've |i 'm |i have |'m )(?:just |only )?(?:look(?:ed|ing)?(?: again| at| properly| closer| it up)?|counted|counting|checked|checking|measured)(?: (?:again|properly|it|them|up|twice|the))*|now (?:that )?i (?:look|see|count|check|think)|(?:the )?(?:receipt|docket|slip|ticket|bill|label|tape|ruler|clock|list|packet|watch) (?:says|said|reads|has|shows|tells|here|in front)|i see (?:now )?(?:that )?the|by the (?:clock|tape|ruler|receipt|watch)|if i 'm honest|to be (?:honest|exact|precise|fair|accurate)|truth be told|if truth|in truth|in fact|come to think of it|(?:up)?on (?:second|closer|further)? ?(?:thoughts?|look|inspection|reflection)|counting again|it was (?:only |more )|it was$|excuse me|actually|(?:i|we) only (?:got|did|went|managed)|only as far as|rather than|not \w+ (?:but|,)|(?:and|,) not)\b/;

const SPEAKS_OF_TELLING = new PatternSet([STRONG_ANYWHERE]);

export function cueOf(words: string): Cue {
  const plain = words.trim();
  const lead = SOUNDS.exec(`${plain} `)?.[0] ?? '';
  const rest = plain.slice(lead.length);
  const waited = rest.replace(
    /^(?:hang on|hold on|hold it|hold up|wait|wait a minute|actually|oops|whoops|just|that was|it was)(?: a (?:minute|second|sec|moment|bit))?(?: [,.!:-])*(?: (?:no|and|but|so))*(?: [,.!:-])* ?/,
    '',
  );
  if (
    STRONG_START.test(rest) ||
    STRONG_START.test(waited) ||
    SPEAKS_OF_TELLING.test(plain) ||
    (STRONG_END.test(plain) && !(/ i mean[ .!]*$/.test(plain) && plain.split(' ').length > 12))
  )
    return 'strong';
  // "2-4, sorry, for the batting", "it's ink rather than rust"
  if (
    // and not "the seam between 3-4, sorry, 4-4 and 5-4", which puts itself right
    /^(?!.{0,30}\b(?:seams?|between|there|has|have|is|in|on|at|i)\b.*?, sorry)(?:\S+ ){1,5}, (?:sorry|i mean|beg pardon|excuse me) (?:,|-)/.test(
      plain,
    ) ||
    /^(?:the |it 's |it was |that 's |that was )?(?:[a-z-]+ ){1,3}, not (?:the |a )?[a-z-]+(?: [a-z-]+)?(?: [.!;]|$)/.test(
      rest,
    ) ||
    (/^(?:it|that|this|they|those) (?:'s|is|was|are|were|'re) (?:\S+ ){1,4}(?:rather than|instead of|not) \S/.test(
      rest,
    ) &&
      !/ (?:not|n't) (?:yet|sure|so|too|only|just|very|that|done)\b/.test(rest))
  )
    return 'strong';
  if (/^(?:no|nope|nah) ?$/.test(plain)) return 'none';
  // "shoot, thirty minutes and it was the running stitch"
  if (/\b(?:shoot|dang|damn|bother|drat|blast|argh)\b/.test(lead) && / it was /.test(rest)) return 'strong';
  // "no, that's enough of that"
  if (/^that (?:'s (?:enough|quite enough)|'ll do|will do)\b/.test(rest)) return 'none';
  if (/(?:^| )(?:no|nope|nah) /.test(lead) || WEAK_START.test(rest)) return 'weak';
  // "it's row four", said of the last note, is short; "it's patched now, with …" tells something new
  if (
    /^(?:it|that|they|those|this) (?:'s|is|are|'re) /.test(rest) &&
    // "and it's worn as well" tells more
    !/(?:^| )and $/.test(lead) &&
    rest.split(' ').length <= 7 &&
    !/ now\b/.test(rest) &&
    !GOES_ON.test(rest) &&
    !FOUND_TOO.test(rest) &&
    !FURTHER.test(rest)
  )
    return 'weak';
  if (/^(?:less|minus|take off|knock off|take away|not counting|excluding) /.test(rest)) return 'strong';
  // "looking closer it's only a stain"
  if (LOOKED_AGAIN.test(rest) && rest.split(' ').length <= 14) return 'weak';
  if (
    /^(?:it|that|this|they|those)(?: one| all| both)? (?:only |just )?took /.test(rest) &&
    rest.split(' ').length <= 9
  )
    return 'weak';
  // "patch instead", "more of a hole"
  if (
    plain.split(' ').length <= 6 &&
    (/^(?:(?:the|a|an) )?\S+(?: \S+)? instead[ .!]*$/.test(rest) ||
      /^more (?:of|like) (?:a|an|the) \S+/.test(rest))
  )
    return 'weak';
  // "metres instead of yards", "a patch rather than a darn"
  if (
    plain.split(' ').length <= 9 &&
    /^(?:(?:the|a|an) )?\S+(?: \S+)? (?:instead of|rather than) (?:(?:the|a|an) )?\S+(?: \S+)?[ .!]*$/.test(
      rest,
    )
  )
    return 'weak';
  // "3-1 to 3-3 only"
  if (/ (?:only|not all of it)[ .!]*$/.test(plain) && plain.split(' ').length <= 8) return 'weak';
  if (/ , that(?: one| was)?[ .!]*$/.test(plain) && plain.split(' ').length <= 10) return 'weak';
  if (/[ ,](?:actually|in fact)[ .!]*$/.test(plain)) return 'weak';
  return 'none';
}

/** "it's drying flat on towels", "it's dry": what came of it next. */
const GOES_ON =
  /^(?:it|that|they|those) (?:'s|is|are|'re) (?:still |all |nearly |almost |finally |about )*(?:dry|drying|dried|soaking|hanging|airing|ready)\b/;

/** "2-3 has a hole", then "it's mouldy": found there too, for a thing can be both. "It's only thin" and "it's a split seam" say what it is. */
const FOUND_TOO =
  /^(?:it|they|these|those) (?:'s|is|are|'re) (?:(?:a|bit|little|badly|quite|very|all|really|rather|slightly|pretty|well|so|awful|awfully|terribly|horribly) )*(?:stained|torn|ripped|faded|frayed|fraying|ravelled|thin|weak|worn|threadbare|mouldy|moldy|musty|mildewed|puckered|lumpy|shattered|rotten|rotted|tender|fragile|perished|discolou?red|yellowed|marked|spotted|scorched|moth eaten|chewed|damp|filthy|grubby|dirty|sound)\b/;

/** "that's the left side off", "that's row two out as well": as far as the work has got. */
const FURTHER =
  /^that 's (?:\S+ ){1,5}(?:off|out|on|done|finished|down)(?: (?:too|now|as well|already))*[ .!]*$/;

const LOOKED_AGAIN =
  /^(?:(?:now )?(?:that )?(?:i (?:'ve |have )?(?:just )?)?look(?:ing|ed)?(?: at it| again| closer| properly| closely| harder)*|on (?:second|closer|a closer|another) (?:look|inspection|thoughts?)|having (?:another|a closer|a proper|a better) look|in (?:better|daylight|this|a better) light|up close|close to|come to look)(?: ,)?(?: (?:i see|i think|i 'd say|and))? (?:it|that|they|those) (?:'s|is|was|are|were|'re) /;
