import type { Item } from '../item.ts';

const ASIDE =
  /\b(cat|kitten|dog|puppy|phone|telephone|doorbell|door ?bell|door|kettle|radio|telly|tv|television|postman|post ?woman|mail carrier|mailman|parcel|delivery|courier|neighbou?rs?|neighbou?r's|next door|alarm|siren|baby|kids|children|grandson|granddaughter|son|daughter|husband|wife|darling|sweetheart|love|dinner|supper|tea|coffee|cake|oven|biscuits?|toast|hang on|hold on|hold it|give me a (second|sec|minute|moment)|one (second|sec|moment|minute)|just a (second|sec|moment|minute)|be right (back|there|with you)|back in a|wait a|bless you|hush|shush|quiet|oi|get (off|down)|shoo|weather|raining|rain|snow|snowing|thunder|bus|train|lorry|truck|tractor|car|engine|music|song|news|match|football|meter reader|window cleaner|plumber|electrician|bin men|ice cream|washing machine|dishwasher|microwave|smoke|fire|hello|hi|come in|coming|who is it|who 's that|what do you want|not you|talking to|wasn't talking|nothing to do with (me|this|the quilt)|pay no attention|don't mind|do n't mind|ignore (me|the)|excuse me|cough|sneeze|wasp|bee|spider|fly|mouse|hen|hens|chickens|goat|sheep|cow|horse|parrot|budgie|rooster|cockerel|lamp|bulb|light 's gone|power cut|heating|boiler|cold in here|hot in here|glasses|my (back|neck|knee|eyes|hip|foot|leg|shoulder)|mum|mom|mother|dad|father|sister|brother|aunt|auntie|uncle|granny|friend|lunch|breakfast|bath|bed|bedtime|homework|school run|bell|church|choir|ferry|boat|foghorn|kettle 's|garage|drill|drilling|hammering|lawn|lawnmower|mower|leaf blower|hoover next|gate|letterbox|knock|knocking|somebody at|someone at|visitor|visitors|vicar|milk|milkman|egg|eggs|soup|stove|pan|burning|birthday|bingo|quiz|film|episode|ring(ing)?|wrong number|sales call|scam|mobile|text|message from|email|wifi|battery|charger|pizza|takeaway|gas man|coalman|coal|logs|removal van|ambulance|helicopter|plane|jet|fireworks|bonfire|hiccups|sit down|sit|stay|off the (table|bed|sofa)|good boy|good girl|paws|walkies|biscuit)\b/;
const WORK_WORDS =
  /\b(quilt|quilts|comforter|coverlet|patchwork|stitch(es|ed|ing)?|sew(n|ed|ing)?|seam|thread|fabric|cloth|block|batting|backing|binding|maker|sewn|pieced|blanket|grandmother|great aunt|museum|owner|client|made (in|by|for|it)|heirloom|initials|embroidered|inscription|signature|label|attic|wedding gift|inherited|the family)\b/;
const REMARK =
  /\b(made (it|this|in|by|for|from|out)|was made|sewn by|sewed|stitched by|pieced by|grandmother|grandma|granny|great aunt|great-aunt|her mother|his mother|belonged|came from|came off|came out of|found in|found it|from (an|a|the) (attic|house|farm|chest|trunk|barn|ship|boat|church|sale|museum|school|hall)|inherited|handed down|heirloom|19\d\d|18\d\d|years old|century|initials|inked|embroidered|inscription|signed|signature|name(s|d)?|date|dated|maker|owner|client|she 'd like|she would like|wants it|would like|they 'd like|hopes|asked (for|if|me|that)|says it|said it|told me|story|history|slept under|wedding|lay wet|flood|fire|smells? of (smoke|lavender)|museum|wants (the|her|his|it)|prefers|rather it|likes|used (as|on)|lived|hung (in|on|over)|dog slept|children|raffle|presented|won|carried|brought (it|back)|kept in|stored in|folded in|pattern is|the pattern|label (says|reads)|number|accession|catalogue|paper pieced|newspaper|templates?|hand quilted by|signed by|written|in pencil|chalk|village|school|parish|guild|sampler)\b/;

/**
 * Talk that is no part of the work. Asked only of notes in which the rules of work found nothing: a cat, the telephone, a
 * neighbour make an aside; the quilt's own story does not.
 */
export function isAside(words: string, items: Item[]): boolean {
  const aside = ASIDE.test(words);
  const work = WORK_WORDS.test(words) || items.some((x) => x.place?.kind === 'blocks');
  if (aside && !(work && REMARK.test(words))) return true;
  if (work || REMARK.test(words)) return false;
  return !items.some((x) => x.material || x.action || x.place || x.finding || x.part) || items.length < 4;
}
