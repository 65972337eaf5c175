/** Who mended a quilt before it came to the bench, what they did to it, and when: told of an old repair, and no work of today. */

const KIN =
  '(?:great |step )?(?:grandmother|grandma|granny|gran|nan|nana|nanna|mama|mamma|momma|mammy|mummy|mommy|papa|daddy|pops|nanny|grammy|meemaw|mawmaw|memaw|papaw|gramps|granddad|granddaddy|ouma|oupa|gramma|grandad|grandpa|grandfather|mother|mum|mom|mam|aunt|auntie|aunty|uncle|sister|wife|daughter|niece|cousin|neighbour|neighbor|landlady|housekeeper|seamstress|dressmaker|in law)';
/** "whoever had it before", "somebody's aunt", "an earlier restorer", "some kind soul", "the maker". */
export const EARLIER_HAND = `(?:somebody|someone|somebody else|someone else|whoever|some (?:kind |poor |clever |good )?(?:soul|fool|clot|idiot|genius|bright spark|joker|bodger|amateur|bloke|chap|fella|fellow|guy|lad|person|old dear|galah|muppet)(?: before me| before| once)?|(?:a|the) (?:bloke|chap|fella|fellow|guy|person) before me|(?:somebody 's|someone 's|somebody's|someone's|the owner 's|the owner's|her|his|their|my|an old|the|some) (?:\\S+ ){0,2}?${KIN}|${KIN}|(?:(?:an?|the|some|one|her|his|their) )?(?:earlier|previous|former|last|past|other|unknown|old|later|first|second) (?:owner|owners|hand|hands|restorer|mender|repairer|keeper|person|sewer|quilter|conservator|dealer|woman|lady|worker|family|maker)|(?:a|the|some) (?:restorer|mender|repairer|dealer|sewing circle|maker)|(?:they|she|he)(?= (?:had|'d|must have|obviously|clearly)))`;

/** Deeds that are a repair by themselves. */
export const MENDED =
  '(?:mended|repaired|patched|repatched|darned|fixed|resewn|resewed|restitched|(?:sewn|sewed|stitched|machined) (?:up|down|shut|together|over|on|closed|it|that|this)|glued|cobbled|botched|bodged|whipped|whipstitched|oversewn|oversewed|overcast|netted|backed|lined|appliquéd|appliqued|couched|zigzagged|rebound|reinforced|strengthened|supported|taped|stapled|fused|tacked|replaced|had (?:a|another) (?:go|stab|bash|crack)|been at|been over|got at|gone over|been got at|been gone over|ladder stitched|slip stitched|blanket stitched)';
/** Deeds that are a repair where it is told what with. */
export const PUT =
  '(?:put|stuck|clapped|used|laid|slapped|cobbled|bodged|botched|whipped|tacked|zigzagged|glued|ironed|pinned|tied|worked|let|set|pieced|run|ran|added|whacked|bunged|held|covered|applied|inserted|attached|sewn|sewed|stitched|machined|hand sewn)';
export const REPAIR_STUFF =
  '(?:patch|patches|piece|pieces|bit|bits|scrap|scraps|square|tape|plaster|net|netting|tulle|crepeline|felt|cloth|lining|iron on|fusible|interfacing|glue|paste|safety pins?|pins?|staples?|darn|stitch|stitches|thread|string|twine|wool|fishing line|muslin|calico|flannel|lawn|silk|cotton|denim|gauze|curtain|stuff|heart|star|leather|vilene|bandage|web)';

/** "in the past", "at some point", "years ago", "before my time", "in the seventies". */
export const LONG_AGO =
  '(?:in the past|at (?:some|one) (?:point|time|stage)|some ?time ago|some time(?: or other)?|once before|once upon a time|long ago|long since|(?:many |some |\\S+ )?(?:years|decades|ages|generations) (?:ago|back)|a long time ago|a while back|before (?:now|me|my time|i (?:got|had)(?: to)? it|it came(?: to me| here)?|this)|in (?:the |about |around )?(?:19|18)?\\d\\ds?|in the (?:twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties|war)|back when|in a previous (?:life|restoration|campaign)|from (?:before|the last restoration|an earlier (?:restoration|campaign|repair)|last time))';
