/** What a quilt's story, its marks and its owner's wishes are told with. Patterns over a note's words joined by blanks. */

export const KIN =
  '(?:great )?(?:great )?(?:grandmother|grandma|granny|gran|nan|nana|mama|mamma|momma|mammy|mummy|mommy|papa|daddy|pops|nanna|nanny|gramma|grammy|meemaw|mawmaw|memaw|papaw|gramps|granddad|granddaddy|ouma|oupa|grandfather|grandad|grandpa|aunt|auntie|aunty|uncle|mother|father|mum|mom|mam|dad|sister|sisters|brother|daughter|daughters|son|sons|cousin|cousins|wife|widow|husband|niece|nephew|in law|godmother|ancestors?|forebears?)';
export const GROUP =
  '(?:owner|fella|fellow|chap|bloke|guy|lads|lasses|mates|troop|scouts|brownies|maker|makers|members?|ladies|women|wives|girls|boys|kids|children|pupils|students|class|teachers?|street|village|town|parish|parishioners|congregation|church|chapel|guild|circle|club|school|crew|nuns|sisters|neighbours|neighbors|miners|sailors|soldiers|nurses|patients|prisoners|tenants|family|families|household|theatre|playhouse|company|regiment|bride|seamstress|dressmaker|housekeeper|midwife)';
const WHO = `(?:${KIN}|${GROUP}|she|he|they|who)`;
/** What such people did to or with it, in the past. "Said" and "rang" are not here: they only bring news. */
const DID =
  '(?:made|sewed|sewn|stitched|pieced|quilted|embroidered|started|began|begun|finished|worked|slept|died|was born|married|wore|won|raffled|auctioned|carried|brought|bought|kept|used|inherited|gave|left it|lived|emigrated|sailed|got it|had it|signed|led|ran|played|collected|saved|bound it|put it together|had (?:this|this one|the thing)|(?:kept|used|had) (?:it|this) (?:on|in|under|over|as|for))';

/** What a thing comes off or out of on the bench, which is no story. */
/** "came home with three fat quarters": goods, and no story. */
const GOODS_COUNT =
  '(?:(?:an?|another|some|half|enough|plenty|two|three|four|five|six|seven|eight|nine|ten|twelve|\\d+) (?:of )?(?:an? )?(?:\\w+ )?(?:yards?|yds?|met(?:re|er)s?|m|cm|inch(?:es)?|feet|fat|spools?|reels?|skeins?|balls?|packs?|packets?|rolls?|dozen|bag|tin|can|bottle))';
const BENCH_PLACE =
  'rows?|columns?|blocks?|squares?|borders?|corners?|edges?|sides?|seams?|batting|wadding|backing|binding|top|back|patch|patches|wash|tub|bath|dryer|line|iron|frame|machine|hoop|shop|store|bag|middle|bottom|left|right|lot|one|ones|other|others|piece|quilt|sink|basin|water|press';

/** Where a quilt is found that has a story. */
const FOUND_IN =
  '(?:attic|loft|barn|shed|outhouse|trunk|chest|wardrobe|cupboard|cellar|basement|skip|dumpster|garage|tip|vestry|caravan|stable|outbuilding|lock ?up|bin|boot sale|jumble sale|house clearance|estate sale|yard sale|garage sale|ute|van|lorry|truck|boat|barge|farm|kennel|tent|tractor|workshop|auction)';
/** What lets the water in. */
const WATER =
  '(?:radiators?|boilers?|pipes?|tanks?|roof|gutters?|cistern|water main|main|drains?|sprinklers?|ceiling|washing machine|dishwasher|water heater|river|stream|creek|beck|toilet|sink|hot water bottle)';

/** What a quilt is told by, when it is first laid on the table. */
const KIND_OF_QUILT =
  '(?:(?:[a-z]+ ){0,2}(?:wool|woollen|cotton|silk|velvet|flannel|denim|crazy|baby|cot|crib|camp|wedding|signature|friendship|patchwork|pieced|appliqu[eé]|feed sack|scrap|hexagon|whole ?cloth|utility|tied|quilted|sampler|strippy|doll|bunk|single|double|twin|full|queen|king|size|old|little|big|small) (?:quilt|comforter|coverlet|bedspread|throw|top)|whole ?cloth(?: quilt)?|nine patch|four patch|log cabin|flying geese|hexagons?|strippy|medallion|sampler|crazy patchwork)';
const MADE_SO =
  '(?:(?:all |both )?(?:hand|machine) ?(?:quilted|pieced|tied|sewn)|tied|quilted|pieced|backed|filled|lined|bound|(?:with )?an? (?:[a-z]+ ){1,3}(?:back|backing|border|filling|top|binding)|about (?:18|19|eighteen|nineteen)|unfinished|never (?:washed|used|finished)|(?:\\d+|two|three|four|five|six|seven|eight|nine|ten) (?:blocks |rows )?by (?:\\d+|two|three|four|five|six|seven|eight|nine|ten)|came (?:in|to|from|out)|no batting|all by hand|all hand)';

/** History told: who made it, when, from what, where it has been, what befell it. */
export const HISTORY: RegExp[] = [
  // "wool comforter, tied in red, came in a bin bag", "a nine patch, machine quilted, about 1940"
  new RegExp(
    `^ (?:(?:right|ok|okay|so|now|well|um|new one|next one|next up|this is|this one 's|here 's|here is|it 's|got|,|:|-|an?) )*(?!the )${KIND_OF_QUILT}(?: ,| -| --| :)? ${MADE_SO}\\b(?!.* (?:today|tonight|this (?:morning|afternoon|evening)|yesterday|rows?|blocks?|minutes|hours?|now) )`,
  ),
  // "it came over in a trunk with her grandmother", "was carried out rolled up in a sea chest"
  /^ (?:it |this |this one |they say it |(?:the |this )?(?:quilt|coverlet|comforter|bedspread|throw) )?(?:came|come|arrived|travelled|traveled|was brought|was carried|was shipped|was sent)(?: (?:over|across|out|home|up|down|here|back|all the way|to (?:us|me|her)))*(?: (?:folded|rolled up|rolled|wrapped|packed|stuffed|tucked))* (?:in|inside|at the bottom of|in the bottom of) (?:an?|the|her|his|their|my|somebody 's|someone 's) (?:\w+ ){0,2}(?:trunk|chest|tea chest|suitcase|case|crate|kist|bag|wagon|waggon|hold|ship|boat|cart|kitbag|sack|pillowcase|bin bag)\b/,
  // "they tell me this one rode around in the back of a truck for years"
  /\b(?:(?:they|she|he|folks|people|family) (?:tell|tells|told) me|i 'm told|i was told|apparently|supposedly|so they say) (?:that )?(?:this one|this quilt|this|it|the quilt) (?:was|came|had|spent|went|rode|hung|lay|sat|lived|belonged|used to|has been|travelled|traveled|survived|crossed)\b/,
  new RegExp(
    `\\b(?:made|sewn|sewed|stitched|pieced|quilted|worked|put together|run up|begun)(?: it| this| up| one| that| all| mostly)* by (?:her|his|my|their|our|the|a|an|some|someone|${WHO})\\b(?! (?:machine|hand|lamp|window|ditch|seam|edge|inch))`,
  ),
  new RegExp(
    `\\b(?:(?<!\\b(?:to|into|from) )(?:${KIN}|${GROUP})(?: (?!will |be |to |'ll |can |should |might |were |was |are |is |gets? )[^\\s,.;]+){0,3}|(?:she|he|they|who)(?: all| had| 'd| once| probably| always| both)?) ${DID}\\b(?! (?:me|that i|to me|(?:looking|taking|unpicking|surveying|ripping|going) |at it|on it|on the phone|up the phone|at (?:me|the door|seven|eight|nine)))`,
  ),
  /\b(?:was|were|is|are|been) (?:made|sewn|stitched|pieced|quilted|begun|started|presented|given|bought|woven|raffled|won|worked) (?:for|in|at|as|during|when|to|out of|from|with|around|about|before|after) (?:a|an|the|her|his|my|their|our|old|one|some|\d{4}|eighteen|nineteen|every|mark|celebrate)\b/,
  /\b(?:made|sewn|pieced) (?:for|as) (?:a|an|her|his|my|their|the) (?:\w+ )?(?:wedding|christening|birth|baby|baptism|anniversary|marriage|trousseau|hope chest|dowry|coronation|jubilee|raffle|bazaar|fair|troops|soldiers|farewell|retirement|homecoming|crib|cot)\b/,
  /\b(?:cut|made|pieced|sewn|sewed|put together|stitched) (?:it |them |this |up |all |mostly )*(?:from|out of|of) (?:his|her|their|old|worn|dead|flour|feed|sugar|salt|grain|sacks?|shirts?|dress(?:es)?|suits?|neckties|ties|uniforms?|curtains?|scraps (?:from|of) (?:her|his|their|old|the)|samples?|aprons?|blankets?|pyjamas|pajamas|my)\b/,
  new RegExp(
    `\\b(?<!way |as |how )(?:this|it|quilt|qlt|coverlet|comforter|throw|bedspread|one|that)(?: one)?(?: that| which| has| 's| what)? (?:came|come|comes|was brought|arrived|turned up|was sent|travelled|traveled|crossed)(?: down| out| over| in| here| to me| to us| home| back| all the way| this \\w+)* (?:on loan|by (?:ship|sea|train|rail|post|wagon)|(?:from|off|out of|with) (?:a|an|the|her|his|my|their|some|one|somebody)(?!(?: \\w+){0,2} (?:${BENCH_PLACE})\\b))\\b`,
  ),
  /\b(?:slept under|sleeps under|(?:camped|sheltered|huddled|dozed|courted|sat|lay) (?:under|on|beneath) it\b|belonged|(?<!\b(?:siren|van|car|dog|cat|bike|alarm|noise|racket|drill|lorry|truck|radio|music|parcel|phone|bell|hens?|goats?) )belongs to (?:a|an|the|her|his|my)|handed down|passed down|came down through|inherited|heirloom|bequeathed|left to (?:her|him|them|me) by|raffled|auctioned|donated|(?<!\b(?:pins|needles?|frame|hoop|machine|iron|board|table|clamps|wadding|batting|thread|scissors|cutter|mat|stand|lamp) )on loan|loaned|given to (?:her|him|them|the)|presented to|won it|hope chest|family (?:story|legend|say|says|lore|tells?|history)|story (?:goes|is|has it)|legend (?:has|says)|acc \. to|according to (?:the |her |his |my )?(?:owner|family|aunt|mother|label|daughter|son|vicar|curator|client)|supposedly|reputedly|said to (?:have|be)|generations?)\b/,
  /\b(?:found|discovered|turned up|rescued|salvaged|bought|picked up|dug out)(?: it| this| her| this one| folded| rolled up)*(?: up)? (?:in|at|from|under|on|out of) (?:the|a|an|her|his|my|their|some|grandmother 's|granny 's)(?: \w+){0,2} (?:attic|loft|barn|shed|trunk|chest|wardrobe|cupboard|drawer|cellar|basement|skip|dumpster|sale|market|auction|shop|store|house|farm|cottage|bed|mattress|garage|tip|hall|vestry|ship|boat)\b(?!(?: today| yesterday| this \w+)? :)/,
  /\b(?:spent|been|was|were|has had|have had|'s had|had it|kept|stored|folded|rolled|hung|hanging|lived|lain|lay|sat|stood|draped|packed|used|lying|sitting)\b(?: [^\s.;]+){0,14} (?:years|winters?|summers?|seasons|decades?|ages|lifetime|generations|its life|her life|his life|since (?:before )?(?:the|then|they|she|he|her|his|about|nineteen|19\d\d)|ever since)\b/,
  /\b(?:it|this|that|one|quilt|qlt|coverlet|which)(?: one)? (?:'s|has|had|have) (?:always |once |only |never )?been (?:a|an|used as|handed|passed (?:down|round|around)|through (?:a|the|two|three) (?:war|wars|flood|fire|lot)|kept|stored|on (?:a|every|stage|show|display|her|his|their)|in (?:a|storage|her|his|their|use)|to (?:sea|the)|under (?:a|her|his))\b/,
  /(?<!\b(?:i|we|she|he) )\b(?:was|were|been|lived|lay|kept|slept)\b(?: (?!i |we )[^\s.;]+){0,6} (?:attic|loft|barn|cellar|outhouse|hay ?loft|coal hole|trunk|hope chest|blanket chest|linen press|airing cupboard|caravan|bunk|kennel|dog basket|pram)\b/,
  /\b(?:crossed|over|across) the (?:atlantic|pacific|ocean|sea|channel|water|border in|mountains|plains)\b/,
  new RegExp(
    `^ (?:it |this |this one |(?:the |this )?(?:quilt|coverlet|comforter|bedspread|throw) )?(?:came|come) (?:over|down|up|across|home|back|out) (?:from|with|on) (?!(?:\\w+ ){0,2}(?:${BENCH_PLACE})\\b)(?!(?:the )?(?:market|shop|store|town|sale|fair|draper|haberdasher)\\b)(?!${GOODS_COUNT}\\b)`,
  ),
  /\b(?:went|travelled|traveled|sailed|been) (?:round|around|to|over|across|through|with) (?:the (?:baltic|world|cape|horn|sea|ocean|war|trenches|blitz|fire|flood)|sea|america|australia|canada|india|africa|england|scotland|ireland)\b/,
  /\b(?:in|of|from|circa|c|c \.|c\.|about|around|dated|dates (?:to|from)|late|early|mid|since) (?:the )?(?:(?:late|early|mid) )?(?:1[6-9]\d\d ?s?|' ?\d0 ?s|\d0 s|(?:nineteen|eighteen) (?:hundreds?|oh|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties)|twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties)\b(?! ?(?:minutes|mins?|hours|o'clock|am|pm|to|till|-))/,
  /\b(?:the (?:year|winter|summer|spring|autumn|fall) (?:the|that|of the|of (?:1|nineteen|eighteen)|it|she|he|they|after|before|his|her|their)|(?:during|before|after|since|in) the (?:first |second |great |civil |boer )?(?:war|blitz|depression|strike|famine|dust bowl|gold rush)|wartime|\w+ years ago|years (?:old|back)|century|as a (?:girl|boy|bride|child|wedding|christening|gift|present|young)|when (?:she|he|they) (?:was|were|got|married|left|came|moved)|for (?:her|his|their) (?:wedding|marriage|christening|first|trousseau|bottom drawer|eldest|firstborn))\b/,
  new RegExp(
    `\\b${KIN} 's (?:old |own |best |army |wedding |sunday |winter )*(?:bed|house|study|farm|room|wedding|dress(?:es)?|shirts?|blankets?|suits?|uniforms?|coats?|aprons?|curtains?|trousers|breeches|skirts?|frocks?|gowns?|nightgowns?|nightdress(?:es)?|nightshirts?|petticoats?|pyjamas|pajamas|overalls|jackets?|jumpers?|pinnies|pinafores?|ties|neckties|scarf|scarves|handkerchiefs|kilt|kilts|tablecloths?|sheets?|christening robe|mourning|clothes|things|boat|cottage|attic|trunk|hand|work|making)\\b`,
  ),
  // "the camp quilt that my cousin's bunch hauled up to the lake every july"
  /\b(?:quilt|coverlet|comforter|throw|bedspread|blanket) (?:that|which|what) (?:my|her|his|their|our|the|a|an|she|he|they)\b(?: [^\s,.;]+){0,5} (?:\w+ed|took|slept|brought|kept|bought|won|made|found|gave|had|sat|hung|lay|drove) (?!is\b|was\b|for me)/,
  // "the owner says it went round the logging camps", "she told me it used to hang in the chapel"
  new RegExp(
    `\\b(?:${WHO}|client|customer|lady|gentleman|woman|man|vicar|curator|neighbou?r)(?: [^\\s,.;]+){0,4} (?:says?|said|tells? (?:me|us)|told (?:me|us)|reckons?|thinks?|thought|believes?|remembers?|recalls?|swears?|swore|claims?|claimed|mentioned)(?: that)? (?:it|this|this one|they|the (?:quilt|coverlet|comforter|whole thing|thing))(?: once| always| only| all| never)? (?:went|came|belonged|used to|lived|slept|hung|lay|travelled|traveled|spent|survived|saw|crossed|sailed|(?:'s|has|had|'d) (?:been|hung|come|lain|gone|seen|travelled|crossed|belonged)|was (?:on|in|at) (?:her|his|their|the|a|every) (?!post|mail|way|phone|middle|top|bottom|left|right|wrong|same|row|corner|backing|border)|was (?:her|his|their|always|made|bought|given|won|sent|left|raffled))\\b`,
  ),
  // "this one here was somebody's grandma's out on a ranch"
  new RegExp(
    `\\b(?:this|it|that|quilt|qlt|coverlet)(?: one)?(?: here)? (?:was|were|'s|is|used to be|has been) (?:(?:somebody|someone) 's|a neighbou?r 's|(?:my|her|his|their|our|the \\w+ 's|(?:somebody|someone) 's) (?:old |late |dear )*${KIN} 's) (?!work|doing|hand)`,
  ),
  // "looks like it was tied first and quilted later"
  /\b(?:looks like|seems|must have been|must 've been)(?: that)?(?: it| this| they)?(?: was| were| 's been| has been)? (?:tied|quilted|pieced|made|sewn|bound|put together) (?:first|originally|before|once|earlier|by|a long)\b/,
  // "it used to hang in the church hall"
  /\b(?:it|this|this one|that|which|they|quilt|coverlet) used to (?:hang|lie|live|cover|sit|belong|stay|come out|go on|travel|be (?:on|in|kept|used|hung|brought|laid|spread))\b/,
  // "customer mentioned the dog slept on it"
  new RegExp(
    `\\b(?:${WHO}|client|customer|lady|gentleman|woman|man)(?: [^\\s,.;]+){0,2} (?:says?|said|told (?:me|us)|mentioned|reckons?|remembers?) (?:that )?(?:the|her|his|their|a) \\w+ (?:slept|sat|lay|used to|had it|was born|died|made|bought|brought|kept)\\b`,
  ),
  // "it was never used, only ever kept in a drawer", "it's hardly been slept under"
  /\b(?:it|this|this one|quilt|coverlet)(?: was|'s| has| had| 'd)?(?: only| just)? (?:never|hardly|scarcely|seldom|rarely|barely)(?: ever| once)?(?: been)? (?:used|slept under|washed|out of|off the bed|on a bed|finished|hung)\b(?! (?:here|today|by me|up|for))/,
  // "… so she says", "…, they tell me": told by somebody, of something that is no work
  /\b(?:made|used|kept|slept|belonged|came|won|bought|shirts?|dress(?:es)?|coats?|uniforms?|curtains|sheets|trousers|blankets?|wedding|war|bed|drawer|attic)\b.* ,? ?(?:so she says|so he says|so they say|they tell me|she tells me|he tells me|i 'm told|so i 'm told|so the story goes|by all accounts|as far as (?:anyone|anybody) knows)(?: anyway)? $/,
  /\bprovenance\b/,
  // "radiator burst at new year", "the roof let go over the weekend"
  new RegExp(
    `\\b${WATER}(?: (?:had|has|'d|'s))? (?:burst|leaked|flooded|overflowed|failed|let go|gave (?:way|out)|went|came (?:in|down|through)|backed up|sprung a leak|sprang a leak)\\b`,
  ),
  // "it lay sodden behind the piano three weeks", "sat in the wet for a month", "sat under a burst gutter"
  /\b(?:lay|sat|stood|was left|got left|had been) (?:\w+ ){0,2}(?:sodden|soaked|soaking|sopping|drenched|wet|under water|under (?:a |the |that )?(?:\w+ ){0,2}(?:gutters?|pipes?|roof|skylight|drip|leak|tap|downpipe|tarp)|waterlogged|in the (?:wet|water|flood|damp|rain|mud))\b/,
  // "came out of an allotment shed", "pulled this one out of a cellar", "from a skip behind the hall"
  new RegExp(
    `^ (?:(?:so|right|well|okay|ok|and|now|this|it|this one|i|we|they|she|he) )*(?:(?:came|come|pulled|dug|hauled|fished|rescued|saved|got|found|salvaged|retrieved)(?: this| it)?(?: one| up)? (?:out of|from|in|off) (?:a|an|the|her|his|my|their|some|our)|(?:out of|from) an?)(?: (?:\\w+|'s)){0,3} ${FOUND_IN}\\b`,
  ),
  // "wagga ex shearers' hut, five rows of three", "crib quilt, ex the orphanage"
  /^ (?:(?!(?:bought|got|used|need|have|had|the|\d+) )[a-z]+ ){1,3}(?:, )?ex (?:-|the |a |an )?(?!(?:husband|wife|display|hire|stock|army|factory)\b)(?:[a-z]+ (?:' |'s )?){1,3}(?:[,.(]|$)/,
  // "maker not known", "nobody knows who made it"
  /\b(?:maker|owner|history|origins?|age|date)(?: is| was|'s)? (?:not known|unknown|n't known|a mystery|lost|not recorded|anyone 's guess)\b/,
  /\b(?:nobody|no one|no ?body|none of them|they do n't) (?:knows?|remembers?|recalls?)(?: any more)? (?:who|where|when|how old|anything)\b/,
  /^ (?:- )?(?:history|background|story|origins?) : /,
  /\b(?:it|this|this one|that|which|quilt|coverlet) (?:has |had )?(?:spent|saw out|sat out|lived through|came through|outlasted) (?:the|both|two|a|its|most|many|years|all) /,
  /\b(?:lay wet|got wet|got soaked|was soaked|was flooded|the flood|a flood|burst pipe|pipe (?:burst|let go|went|leaked)|roof (?:leaked|let go|went|came)|house fire|a fire (?:in|at)|chimney fire|survived|chewed on it|dog (?:slept|lay|had)|cat had (?:kittens|her))\b/,
];

/** Marks and keepsakes: what someone wrote, signed or left in it. */
export const MARKS: RegExp[] = [
  /\b(?:initials?|monogram(?:med)?|inscription|inscribed|autographs?|signatures?|laundry mark|maker 's mark|cross stitched (?:name|date|initials))\b/,
  /\b(?:names?|date|dates|year|verse|number|numbers|motto|message|writing|stamp|lettering|letters|(?<!(?:brown|black|dark|yellow|grey|gray|white|red|green|blue|rust|rusty|water|damp|tide|greasy|oily|dirty|scorch|iron|burn|ink|pen|tea|nasty|cup|glass|big|funny|odd|grease|oil|coffee|wine|blood|wax|soot|mud|dirt|jam|sooty|muddy|little|small|faint|long|round|burnt|of|a|the|has) )mark|(?<=(?:maker 's|laundry|pencil|quilting) )mark|poem|prayer|address|handwriting)\b(?: [^\s,.;]+){0,4} (?:inked|written|embroidered|stitched|pencilled|penciled|stamped|printed|scratched|sewn in|worked in|in (?:ink|pencil|red thread|cross stitch|chain stitch)|(?:still )?shows?|showing|on it|on the (?:back|reverse|underside|wrong side)|in (?:the|one|every|each) (?:corner|block|back|border))\b/,
  /\b(?:inked|pencilled|penciled|embroidered|stamped)\b(?: [^\s,.;]+){0,4} (?:names?|dates?|initials|year|verse|number|message|words|letters|mark|1[6-9]\d\d)\b/,
  // "somebody's worked a name and eighteen ninety one in silk in the bottom left block", "she's quilted a heart and the year into 4-1"
  /\b(?:somebody|someone|whoever|she|he|they|maker|owner|it)(?: 's| has| 'd| had| 've| have)?(?: (?:even|once|also|made it|it))* (?:worked|stitched|cross stitched|sewn|sewed|quilted|written|wrote|signed|inked|pencilled|penciled|embroidered|scratched|appliqued|put|left)(?: [^\s,.;]+){0,4} (?:names?|initials|dates?|year|verse|prayer|motto|monogram|signature|1[6-9]\d\d|(?:eighteen|nineteen) (?:hundred|oh|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety))\b/,
  // "'M.T. 1891' stitched in 3-1"
  /\b(?:1[6-9]\d\d|[a-z] \.)(?: ['"])? (?:is |was |has been )?(?:stitched|embroidered|worked|inked|written|sewn|quilted|picked out) (?:in|on|into|at|along|across)\b/,
  /\b(?:signed|dated|inked)(?: it| this)? (?:and|by|in|on|at|1[6-9]|with (?:a|her|his))\b/,
  /\b(?:letters?|newspapers?|newsprint|papers?|templates?|receipts?|photographs?|coin|coins|pressed flowers?|lock of hair|ribbon|ticket|postcard|hymn sheet|banknote|love letter)\b(?: [^\s,.;]+){0,4} (?:between|betw|inside|tucked|hidden|sewn|behind|under|among|in among|in the (?:batting|wadding|lining|layers|seam))\b/,
];
/** With these a mark is one that is to be made, or asked for at the door. */
export const NO_MARK =
  /\b(?:wanting|wants|needs|sign for|label|labels|tag|i 'll|will|going to|must|remember|courier|parcel|photographed|took|take)\b/;

/** People who may wish something of it: never "I", never a part of the quilt. */
const OWNER = `(?:${WHO}|client|customer|lady|gentleman|woman|man|principal|head|headmaster|headmistress|landlord|landlady|captain|warden|secretary|vicar|rector|minister|curator|museum|hotel|couple|committee|society|library|council|hall|gallery|lodge|inn|church|chapel|courthouse|school|hostel|hospice|parish|trust|trustees|owners|clients|customers|guild|home|manager|director|doctor|mayor|folks|people|everyone|everybody|nobody|belongs to)`;
/** What may "want" or "need" something at the bench, and wishes nothing. */
const NO_PERSON =
  '(?:rows?|columns?|blocks?|squares?|borders?|binding|backing|batting|wadding|sashing|edges?|sides?|corners?|seams?|ones?|patch|patches|tears?|holes?|rips?|stains?|cloth|top|back|front|quilt|lot|rest|pair|two|three|fabric|cotton|silk|velvet|print|check|stripe|plaid|ties|label|dog|cat|baby|i|we|you|it|that|which|and|but|so)\\b';
export const WISHES: RegExp[] = [
  /\b(?!(?:i|we|you|it) )[^\s,.;]+ (?:'d|would)(?: really| dearly| much| very much| also| still| all| only)* (?:like|love|prefer|rather|sooner|appreciate|hate|mind|be glad|be happy if)\b/,
  new RegExp(
    `\\b${OWNER}(?: (?:rang|called|phoned|wrote|emailed|texted|came|popped in|was on the phone)(?: up| in| by| back| again| today| just now)? (?:and|to say|saying|,)(?: (?:she|he|they))?)?(?: [^\\s,.;]+| (?:at|from|of|over at|down at|up at|in) (?:the |her |his |my )?[^\\s,.;]+)? (?:(?:really|also|still|only|just|does n't|do n't|did n't|never|has|have|'ve) )*(?:wants?|wanted|wishes|wished|hopes?|hoped|prefers?|preferred|insists?|insisted|requests?|requested|begged|pleaded|likes|asked|asks|was asking|is asking|is hoping|are hoping|is keen|are keen|'s keen|is set on|'s set on|was hoping|was keen|is after)\\b`,
  ),
  // "she isn't bothered about the stains, only the holes"
  /\b(?:she|he|they|owner|client|customer|family|daughter|son) (?:is|'s|are|'re|was|were) (?:not|n't)(?: \w+)? (?:bothered|fussed|fussy|worried|concerned|precious|particular)\b/,
  /\b(?:she|he|they|owner|client|family|daughter|son) (?:was|is|were|are|'s|'re) (?:very |quite |most |absolutely )?(?:clear|adamant|particular|insistent|anxious|emphatic)\b/,
  // "she says do what's least visible", "the owner said to make it look loved"
  new RegExp(
    `\\b(?:${OWNER})(?: [^\\s,.;]+)? (?:says?|said|told (?:me|us)) (?:to|not to|do n't|just|please)? ?(?:do(?! (?:you|i|we|they))|use|go (?:with|for)|make|try|save|match|hang|be careful|never) (?!me\\b|the (?:phone|kettle|dog|cat|door))`,
  ),
  // "no rush on this one, she says whenever"
  new RegExp(
    `\\b(?:${OWNER}) (?:says?|said|told (?:me|us))(?: that)?(?: there(?:'s| 's| is))? (?:no (?:rush|hurry)|whenever|any time|(?:to )?take (?:my|your) time|not to (?:rush|hurry)|it does n't matter when)\\b`,
  ),
  /^ (?:(?:and|but|it|this|it 's|'s|is|quilt|oh) )*(?:not )?to be (?:hung|displayed|shown|framed|raffled|slept under|auctioned) (?!on the line|on a line|outside|to dry|up to dry|over the (?:rack|airer|line|bath|chair))(?:up )?(?:in|on|at|over|behind|as|for|by|above|from|out of)\b/,
  // "to be hung in a north room, she says"
  /(?:^| )(?:to be|must be|not to be|never to be|only to be|to stay|to go) (?:hung|kept|used|slept|displayed|shown|framed|stored|rolled|folded|given|raffled|left|seen|on|in|back)\b.* (?:she|he|they|the owner|owner|client|family) (?:says?|said|tells? me|told me)\b/,
  /\b(?:no (?:rush|hurry)) .*\b(?:she|he|they|the owner) (?:says?|said)\b/,
  /^ (?:and |but |also )?wants (?:it|this|them|her|his|their|no)\b/,
  /: wants (?:it|this|them|her|his|their|no)\b/,
  /\b(?:her|his|their|owner 's|client 's|family 's) (?:wish|wishes|request|one request|only wish|preference) (?:is|was|:)/,
  /\bat (?:her|his|their|the (?:owner|client|family) 's) request\b/,
  // "the shelter wants it hung up where the kids can't reach": whoever wants the quilt somewhere is nobody at the bench
  new RegExp(
    `\\b(?:the|our|my|her|his|their|mrs|mr|miss|old) (?:(?!${NO_PERSON})[a-z]+ ){1,3}(?:really |only |just |still |also |all |both |would |does n't |do n't |did n't )*(?:wants?|wanted|needs?|likes?|loves?|prefers?|hopes (?:for|to have)|hoping (?:for|to have)) (?:it|this one|this quilt|the quilt|the whole thing) (?:all )?(?:on|in|up|back|hung|hanging|kept|left|for|to|out|over|as|framed|stored|looking|flat|rolled|folded|displayed|shown|used|gone|usable|washable|the way|tied|quilted|mended|clean|the same)\\b`,
  ),
  // "the choir wants to hang it behind the altar"
  new RegExp(
    `\\b(?:the|our|my|her|his|their) (?:(?!${NO_PERSON})[a-z]+ ){1,3}(?:really |only |just |still |also |all |both |would |does n't |do n't )*(?:wants?|wanted|hopes?|hoping|hoped|plans?|planning|mean|means) to (?:hang|use|display|show|keep|give|raffle|sell|see|lend|sleep under|pass|frame|drape|exhibit) (?:it|this|the quilt|the old)\\b`,
  ),
  // "the brewery's set on having it framed", "the daughter's mad keen to have it on a bed again", "the family are anxious it shouldn't look new"
  new RegExp(
    `\\b(?:the|our|my|her|his|their|she|he|they)(?: (?!${NO_PERSON})[a-z]+){0,3} (?:is|'s|are|'re|was|were) (?:(?:very|quite|mad|dead|so|really|most|awfully|terribly|ever so) )?(?:set on|(?:keen|anxious|adamant|determined|desperate|hopeful|hoping|insistent|eager) (?:to|on|that|for|it|not to|nothing|about)) (?!get|start|see me|know|talk|pay|come|go|eat|help|play)`,
  ),
  // "her one condition is that nothing gets thrown away", "owner's only rule is no glue", "all she asks is that I keep the label"
  /\b(?:her|his|their|'s) (?:one|only|single|main|chief|first) (?:condition|rule|demand|stipulation|worry|concern|hope|request|instruction|thing) (?:is|was|:)/,
  /\ball (?:she|he|they) (?:asks?|asked|wants?|wanted|minds?|cares? about) (?:is|was|for)\b/,
  /\b(?:she|he|they|owner|client) made me (?:promise|swear)\b/,
  // "the nephew doesn't care about the fading, it's the holes he minds"
  new RegExp(
    `\\b(?:the|my|her|his|their|she|he|they|owner|client|customer)(?: (?!${NO_PERSON})[a-z]+){0,2} (?:(?:does n't|do n't|did n't|does not|do not) (?:care about|care for|care if|mind (?:about|how|if|whether|that)|mind(?= (?:the|a few|some|its) (?:\\w+ )?(?:stains?|fading|wear|marks?|holes?|damage|patches|repairs|smell|creases|puckers|puckering))|worry about)|(?:is|'s|are) (?:not|n't) (?:worried|bothered|fussed) about) (?:the|it|how|whether|if|a|any|old|its|what|which|being|that)\\b(?! (?:noise|radio|mess|dog|cat|phone|weather|rain|money|price|tea|kettle|wait))`,
  ),
  // "owner: … wants name + yr on the label"
  /^ (?:and |but |also )?wants (?:a |the |her |his |their )?(?:\w+ )?(?:names?|initials|date|dates|year|yr|dedication|verse|mark|stains?|colou?rs?|fold lines?|creases)\b/,
  // "it's going on a wall, not a bed, she says"
  /\b(?:it|this|quilt) (?:is|'s|will be|'ll be) (?:going|to go|for going|to hang|to be hung|for hanging|to live|to be used|meant) (?:on|in|over|behind|for|as|at) (?:a|an|the|her|his|their) (?:\w+ )?(?:wall|bed|cot|crib|sofa|altar|museum|exhibition|show|stage|cabin|hall|hallway|nursery|guest room|spare room|landing|stairs|window|gallery)\b/,
];
/** Wishes that are orders for a treatment, errands, or only about time and money. */
export const NO_WISH =
  // "Mama always said don't borrow trouble": a saying
  /\b(?:(?:always|used to) says? (?:do n't (?:borrow|count|cry|look|put off|judge)|a stitch|measure twice|waste not|many hands|more haste|less is|needs must)|always said (?:do n't (?:borrow|count|cry|look|put off|judge)|a stitch|measure twice|waste not|many hands|more haste|less is|needs must)|asked (?:how|when|what|whether|after|me how|me when|me what|who|where|the price)|(?:see|find out|ask|hear|know|tell what|wonder) (?:what|who|whatever) (?:she|he|they|it|that|herself|himself) wants?|wants? (?:to (?:(?:tell|moan at|ask|show|ring|phone|call|visit|see) (?:me|us)(?! (?:the |this |that |her |his |my |its )?(?:quilt|binding|backing|stain|label|hole|tear|where|how it|what to|not to|to))|see the (?:meter|boiler|gas|roof|gutters?|drains?|landlord|garden|baby|cat|dog)|natter|gossip|moan|hear all|have a (?:long |good |quick |wee )?(?:chat|natter|gossip|moan|word)|know|insulate|sell|read|mow|borrow|speak|talk|chat|come in|go out|go home|be let|be fed|be picked|help|play|watch|switch|sign|deliver|check the|use (?:the|our|my) (?:phone|loo|toilet|bathroom|garden|drive)|clean (?:the|our|my) (?:windows|gutters|drains)|see me\b|look at the (?:meter|boiler|gas|roof))|(?:her|his|their) (?!(?:\S+ ){0,2}(?:quilt|quilts|blanket|bedspread|coverlet|comforter|patchwork|heirloom|piece|one)\b)(?:\S+ ){1,2}back\b|(?:her|his|their|its|some|a|the) (?:tea|dinner|supper|lunch|breakfast|bath|bed|milk|drink|snack|bottle|nap)|feeding|picking up|collecting|driving|something|in|out|an? (?:long |good |quick |wee |proper |old )?(?:chat|natter|gossip|moan|argument|hour on the phone)|me(?! to (?:leave|keep|use|mend|patch|save|tie|quilt|make|put|try|wash|clean|replace|match|hide|send|bind|darn|hang)\b)|a word|paying)|would like (?:to know|a word|paying))\b/;
