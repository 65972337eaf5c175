/** What befell a quilt before it came to the bench: what lived on it, where it was kept, what it was used as. Beside the history of `story.ts`. */

const THIS =
  '(?:it|this|this one|that one|this quilt|the (?:quilt|coverlet|comforter|blanket|throw)|her|him)';
/** Long enough to be no time of today: "for years", "all one winter", "every summer", "most of its life". */
const LONG =
  '(?:years|decades?|ages|generations|centur(?:y|ies)|half a century|(?:a|his|her|its|their|my|our) (?:whole |entire )?(?:life|lifetime|childhood)|(?:all|every|each|one|that|the whole|a whole|all that|all one|one whole) (?:spring|summer|autumn|fall|winter|season|year|christmas|easter|holidays?|harvest|july|august|time it rained)|(?:spring|summer|autumn|winter)s|summer after summer|year after year|night after night|once upon a time|in (?:its|her|his|their) (?:day|time|youth)|as (?:a )?(?:pups?|puppy|puppies|kittens?|lambs?|bab(?:y|ies)|kids|children|girls?|boys?)|back (?:then|in the day)|last (?:christmas|easter|summer|winter|spring|autumn|fall|year)|the year [^.;]*)';
const CREATURES =
  '(?:dogs?|cats?|sheepdogs?|collies?|terriers?|spaniels?|labradors?|hounds?|pups?|pupp(?:y|ies)|kittens?|mice|mouse|rats?|squirrels?|hens?|chickens?|ducks?|geese|goats?|goat|calf|calves|lambs?|sheep|pigs?|pony|ponies|horses?|donkeys?|rabbits?|ferrets?|parrots?|raccoons?|possums?|bab(?:y|ies)|bairns?|children|kids|toddlers?|boys|girls|grandchildren|grandkids|cousins|campers|scouts|soldiers?|sailors?|passengers|guests|lodgers|visitors|patients)';

export const BEFELL: RegExp[] = [
  // "the farm dogs slept on it for years", "the kids built forts out of it every summer", "three dogs lay on this one all winter"
  new RegExp(
    `\\b${CREATURES}(?: (?:have|has|had|all|both|always|'d|'ve|used to|would|must have|were|was))* (?:\\w+ed|slept|sleep|sat|sit|lay|lie|lived|live|built|build|made|had|kept|took|wore|ate|rode|stood|been|born|sleeping|lying|nesting|sitting|living)\\b(?: [^\\s.;]+){0,5}? (?:on|in|under|beneath|with|out of|over|round|around|through|at|from) ${THIS}\\b(?: [^\\s.;]+){0,4} ${LONG}\\b`,
  ),
  // "farm cats had their kittens on it", "mice nested in it", "mice had been nesting in it"
  new RegExp(
    `\\b(?:(?:had|has|have) (?:their|her|its|a) (?:\\w+ )?(?:kittens|pups|puppies|young|litters?|nests?|bab(?:y|ies))|(?:nested|nesting|bedded down|whelped|kittened|gave birth|(?:was|were) (?:born|wrapped|christened|baptised|baptized|carried|brought|swaddled|bathed|laid out)(?: [^\\s.;]+){0,2}?)) (?:on|in|under|inside) ${THIS}\\b`,
  ),
  // "the goat ate part of it", "one of the dogs got hold of it last Christmas"
  /\b(?:dogs?|puppy|puppies|pups?|goats?|calf|calves|pony|horse|donkey|rabbits?|hens?|parrot|pigs?)(?: (?:has|have|had|once|'s|'d))* (?:chewed|ate|eaten|clawed|savaged|mauled|dragged|got hold of|got at|got into|buried)(?: up)? (?:(?:part|half|most|bits?|a corner|one corner|the corner|one end|a piece) of )?(?:it|this one|this quilt)\b/,
  // "this one rode in the bed of a pickup", "it lived on the back of the sofa", "it did duty as a dust sheet"
  new RegExp(
    `\\b(?<!\\bof )${THIS}(?: (?:once|first|always|has|had|'s|'d|only|mostly|just|apparently|seems to have))* (?:rode|lived|toured|knocked about|kicked about|kicked around|bounced around|travelled|traveled|did (?:duty|service|time)|served|doubled(?: up)?|(?:began|started)(?: out)?(?: its)?(?: (?:life|days|career))?) (?:around |about |out |down |up |along )?(?:in|on|as|at|with|under|over|across|behind|between|by) (?!(?:the |my )?(?:frame|line|bench|ironing|machine|tub|bath|wash|water|${'\\d'}|one|two|three|four|five|six|seven|eight|nine|ten|half|quarter|noon|midday|row|rows|block|blocks|column|columns|corner|left|right|top|bottom))`,
  ),
  // "sat in a flooded smokehouse all spring", "hung in a sunny porch every summer", "lay in a drawer for eight months"
  /\b(?:sat|lay|hung|stood|kept|stored|folded|rolled|left|draped|packed|shut|stuffed|spread|used|was|lived|been)\b(?! ?(?:on|at|over) (?:it|the frame|the line|the machine))(?: (?!frame\b|line\b|tub\b|bath\b|wash\b|i\b)[^\s.;]+){0,10} (?:(?:all|every|each|all one|one whole|the whole|all last) (?:spring|summer|autumn|fall|winter|season|hunting season|christmas|holiday|july|august)|for (?:[a-z]+ )?(?:months|half a century))\b/,
  // "eighty years it lay in a blanket box"
  /\b(?:years|decades|winters|summers|generations) (?:long )?(?:it|this) (?:lay|sat|hung|lived|stood|was|spent|had)\b/,
  // "used as a horse blanket", "used for a dust sheet by decorators"
  /\b(?:used|served|kept|taken) (?:it |this |this one )?(?:as|for) (?:an? |the )?(?:[a-z]+ )?(?:blanket|rug|curtain|dust ?sheet|drop cloth|dog bed|bed for|tent|den|hammock|sail|cape|cloak|bedspread|tablecloth|table cover|sofa cover|car cover|door curtain|doorstop|draught excluder|shroud|altar cloth|ironing blanket|packing|wrapping|lagging|picnics?|camping|backdrop|prop|costume|stage)\b/,
  // "the water heater busted over Christmas and soaked the closet they keep it in"
  /\b(?:soaked|flooded|drenched|swamped|ruined|came through|dripped (?:on|into)|got into|dripping (?:on|into)|leaked (?:on|into)) (?:the|her|his|their|a) (?:\w+ )?(?:closet|cupboard|room|house|cottage|cellar|basement|attic|loft|trunk|chest|drawers?|box|bedroom|ceiling|floor|hall|vestry|storeroom|store|shed|garage|bed|lot)\b/,
  /\b(?:pipes?|tanks?|boiler|water heater|radiator|main|drains?) (?:busted|froze|had frozen|dripped|was leaking|kept leaking)\b/,
  // "these used to be her husband's ties"
  /\b(?:these|those|they|all of it|the (?:pieces|patches|blocks|scraps|squares)) (?:all )?(?:used to be|were once|started as|began as|came (?:from|off|out of)) (?:all )?(?:her|his|their|my|our|the \w+ 's|old|worn ?out|cast off|somebody 's|someone 's)\b/,
  // "it won second prize at the county fair", "it was a wedding present"
  /\b(?:won|took|got) (?:a |the |an )?(?:first|second|third|1st|2nd|3rd|best|blue|red|gold|silver|top)(?: in| of)? (?:prize|place|ribbon|medal|rosette|show)\b/,
  /\b(?:was|is|'s|were|been) (?:a|an|the|her|his|their|my|somebody 's|someone 's) (?:\w+ )?(?:wedding|christening|baby|birthday|anniversary|engagement|leaving|farewell|retirement|golden wedding) (?:present|gift|quilt)\b/,
  // "it came to her from an aunt", "a soldier took it to Korea and back"
  new RegExp(
    `\\b${THIS} (?:came|went|passed|descended|fell) (?:down )?to (?:me|her|him|them|us|the family) (?:from|through|by|when|after|as|in)\\b`,
  ),
  new RegExp(
    `\\b(?:took|carried|brought|hauled|dragged|lugged|shipped|sent|posted) ${THIS} (?!apart\\b|out\\b|off\\b)(?:\\w+ )?(?:to|from|across|through|round|around|home from|back from|over from|all over|with (?:her|him|them)) (?!(?:the |my |a )?(?:frame|line|bench|machine|tub|bath|sink|table|window|light|iron|shop|me|us|garden|yard|kitchen|shed|post|door|car|van|class|guild|cleaners?)\\b)`,
  ),
  // "her grandmother dyed half of these cottons herself"
  /\b(?:gran\w*|nan|nana|aunt\w*|mother|mum|mom|mama|father|dad|daddy|sister|uncle|cousins?|she|he|they|somebody|someone|maker|weavers?|women|ladies|nuns|neighbou?r)(?: \w+)? (?:dyed|wove|spun|hemmed|crocheted|knitted|tatted|block printed|hand painted|cut (?:every|each|all|most|half|it all|them all)) (?!(?:the )?(?:row|rows|block|blocks|tear|rip|hole)\b)/,
];
