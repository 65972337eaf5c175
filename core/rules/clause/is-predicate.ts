import { isFailing } from '../conditions/is-failing.ts';
import { isStuffWord } from '../is-stuff-word.ts';
import type { Item } from '../item.ts';
import { PICTURES, picturesOf } from '../treatments/shot-with-camera.ts';
import { wordsBetween } from '../words-between.ts';
import { isGiven, isTerseVerb } from './given-form.ts';
import { removalAt } from './removal-at.ts';

export const BE = new Set([
  'is',
  "'s",
  'are',
  "'re",
  'was',
  'were',
  'be',
  'been',
  'being',
  'has',
  'have',
  "'ve",
  'had',
  'gets',
  'get',
  'got',
  'looks',
  'look',
  'went',
  'gone',
  'going',
  'needs',
  'wants',
  'stays',
  'seems',
  'feels',
  'came',
  'smells',
  'will',
  "'ll",
  'comes',
  'stay',
  'all',
  'still',
  'both',
  'badly',
  'just',
  'really',
  'very',
  'quite',
  'a',
  'bit',
  'little',
  'partly',
  'pretty',
  'too',
  'now',
  'also',
  'right',
  'only',
  'not',
  "n't",
  'already',
  'nearly',
  'almost',
  'completely',
  'totally',
  'so',
  'starting',
  'to',
  'rather',
  'slightly',
  'mostly',
  'getting',
  'showing',
  'whole',
  'well',
]);

export const PREPOSITIONS = new Set([
  'in',
  'on',
  'at',
  'of',
  'from',
  'along',
  'to',
  'with',
  'behind',
  'over',
  'under',
  'down',
  'between',
  'around',
  'round',
  'across',
  'through',
  'for',
  'into',
  'onto',
  'by',
  'inside',
  'w',
  'near',
  'up',
  'off',
]);

const MOOD_BEFORE_BASE = new Set([
  'to',
  'will',
  "'ll",
  'gonna',
  'must',
  'should',
  'could',
  'might',
  'may',
  'can',
  'and',
  'or',
  'either',
  'then',
  'maybe',
  "let's",
  'not',
  "n't",
  ',',
  ':',
  '-',
  '--',
  'just',
  'perhaps',
  'either',
  'would',
  "'d",
  'it',
  'next',
  'also',
  '&',
  '/',
  '+',
  'shall',
  'first',
  'i',
  'whether',
  'better',
  'please',
  'do',
  'then',
  'tomorrow',
  '(',
  'still',
  'gets',
  'rather',
  'probably',
  'possibly',
  'only',
  'needs',
  'need',
  'wants',
  'want',
  'try',
  'trying',
]);

/** "sound cloth", "fine net", "a good six inches", "okay so": no word on the quilt's condition. */
export function isSound(items: Item[], k: number): boolean {
  const item = items[k]!;
  const before = items[k - 1]?.w ?? '';
  const next = items[k + 1];
  // "the stitching holding the quilt together"
  if (item.w === 'holding' && /^(the|it|this|them|layers|down|its)$/.test(next?.w ?? '')) return false;
  if (next?.part && item.w === 'holding') return false;
  // "finished by the tenth, and that's firm"
  if (
    item.w === 'firm' &&
    /^(that|it|date|deadline|price)$/.test(items[k - (BE.has(before) ? 2 : 1)]?.w ?? '')
  )
    return false;
  // "it came off in one piece"
  if (item.w === 'in one piece' && /^(off|out|away)$/.test(before)) return false;
  // "worn spot on 1-2"
  if (item.w === 'spot on' && (next?.place || items[k - 1]?.finding)) return false;
  // "the light's good for once", "weather is fine"
  if (
    BE.has(before) &&
    /^(light|daylight|weather|sun|sky|day|view|timing|company|reception|signal|news)$/.test(
      items[k - 2]?.w ?? '',
    )
  )
    return false;
  if (/^(holding|came|in |as good|no damage|not )/.test(item.w)) return true;
  if (/^(to|a|an|of|the|with|for|as|some|more)$/.test(before)) return false;
  if (next && (next.material || next.quantity || next.stitch || next.duration) && !next.part && !next.place)
    return false;
  if (/^(okay|ok|all right|alright|fine|good|grand)$/.test(item.w) && k === 0) return false;
  if (item.w === 'grand' && /^(piano|total|sum|one|job|so|then|altogether)$/.test(next?.w ?? ''))
    return false;
  return true;
}

/** Do words of taking off follow the thing at `k` with nothing between? */
function isTakenOff(items: Item[], k: number): boolean {
  for (let m = k + 1; m < Math.min(items.length, k + 7); m++) {
    const x = items[m]!;
    if (/^(off|out|removed|unpicked|taken|peeled|lifted|extracted|withdrawn)$/.test(x.w)) return true;
    // "the old patch and the label off"
    if (x.w === 'and' && items.slice(m + 1, m + 4).some((y) => y.object && !y.seam)) continue;
    if (x.token.kind === 'mark' || x.w === 'and') return false;
    // "old patch 3-2 off"
    if (x.place?.kind === 'blocks' && /^(off|out)$/.test(items[m + 1]?.w ?? '')) return true;
    if (x.place && !x.object && !/^(on|in|at|from|over|the)$/.test(items[m - 1]?.w ?? '')) return false;
  }
  return false;
}

/** "both holes mended", "all three tears are closed": the damage that something was done to, and nothing found. */
const isBothThings = (items: Item[], k: number): boolean =>
  / (?:both|all(?: three| four| \d)?)(?: of)?(?: the| those| these)? $/.test(wordsBetween(items, k - 4, k)) &&
  /^(?:(?:split|open|burst) seam|tear|rip|hole|split|gap|slit|stain|mark|spot)s$/.test(items[k]!.w) &&
  / (?:(?:is|are|were|have been|now|all|both|finally) )*(?:mended|repaired|closed|shut|fixed|sorted|seen to|dealt with|done|finished|sewn|resewn|darned|patched|cleaned|sponged) /.test(
    wordsBetween(items, k + 1, k + 6),
  ) &&
  !/ (?:was|were|had) /.test(wordsBetween(items, k + 1, k + 3));

/** "the worn one", "that torn block", "over the worn patch": a word that only tells which is meant. */
export function isAttribute(items: Item[], k: number): boolean {
  return (
    tellsWhichByDamage(items, k) ||
    headsNote(items, k) ||
    isOfLabel(items, k) ||
    (items[k]!.finding !== 'old-repair' &&
      (/^(the|that|this|those|these|its|other|two|three|both)$/.test(items[k - 1]?.w ?? '') ||
        /^place\.(those|both)$/.test(items[k - 1]?.place?.rule ?? '')) &&
      (items[k - 1]?.quantity === undefined || /^(the|those|both)$/.test(items[k - 2]?.w ?? '')) &&
      (/^(one|ones|block|blocks|piece|pieces|bit|bits|part|parts|area|areas|place|places|spot|patch|silk|cloth|fabric|corner|edge|edges|side|sides|row|column|section|stretch|seam|backing|batting|wadding|binding|border|borders|lining|sashing)\b/.test(
        items[k + 1]?.w ?? '',
      ) ||
        items[k + 1]?.fabric !== undefined))
  );
}

/** "took off a yellowed paper label", "a rust spotted safety pin": how a thing looks that is no part of the quilt. */
function isOfLabel(items: Item[], k: number): boolean {
  if (items[k]!.finding === 'old-repair') return false;
  let m = k + 1;
  while (
    /^(old|paper|cloth|linen|safety|little|small|laundry|printed|and|,)$/.test(items[m]?.w ?? '') &&
    m < k + 4
  )
    m++;
  return /^(?:label|pins)$/.test(items[m]?.object ?? '');
}

/** "threadbare one gets fusible behind", "so stained ones dabbed": the article left away at the head of a note or a sentence. */
function headsNote(items: Item[], k: number): boolean {
  if (!/^ones?$/.test(items[k + 1]?.w ?? '') || items[k]!.finding === 'sound') return false;
  let m = k - 1;
  while (/^(so|and|right|ok|okay|then|now|well|,|um|uh)$/.test(items[m]?.w ?? '') && m > k - 4) m--;
  return (
    m < 0 ||
    /^[.;!?\n]$/.test(items[m]!.w) ||
    (m < k - 1 && items[m + 1]!.w === ',' && items[m + 2]!.w === 'and')
  );
}

/** "those five with the moth", "the one with the tear", "the other one with a hole". */
function tellsWhichByDamage(items: Item[], k: number): boolean {
  if (items[k - 2]?.w !== 'with' || !/^(the|a)$/.test(items[k - 1]!.w)) return false;
  const head = items[k - 3];
  const counted = head?.quantity && !head.quantity.unit;
  if (
    !head ||
    !(
      counted ||
      head.place?.rule === 'place.those' ||
      /^(one|ones|block|blocks|square|squares)$/.test(head.w)
    )
  )
    return false;
  const lead = items.slice(Math.max(0, k - 6), k - 2).map((x) => x.w);
  return items[k - 1]!.w === 'the'
    ? lead.some((x) => /^(the|that|those|these|other|others)\b/.test(x))
    : lead.includes('other');
}

/** "the mended seam", "those two patched ones": work done that only tells which is meant. */
function tellsWhich(items: Item[], k: number): boolean {
  const next = items[k + 1];
  // "the ironed-on patch"
  if (
    next?.w === 'on' &&
    next.token.glued &&
    /^(the|that|this|those|a|an)$/.test(items[k - 1]?.w ?? '') &&
    /^(patch|patches|bit|piece|scrap|square)$/.test(items[k + 2]?.w ?? '')
  )
    return true;
  if (!next || !(next.seam || /^(one|ones|block|blocks|square|squares|area|areas|bit|bits)$/.test(next.w)))
    return false;
  const lead = items[k - 1]?.quantity && !items[k - 1]!.quantity!.unit ? items[k - 2] : items[k - 1];
  return (
    lead !== undefined &&
    (/^(the|that|those|these|this)$/.test(lead.w) || /^place\.(those|both)$/.test(lead.place?.rule ?? ''))
  );
}

const QUILT_NOUN = /^(quilt|coverlet|comforter|throw|bedspread|eiderdown|wholecloth|bedcover|cover|one)$/;
/** "appliqué cot quilt", "it's a tied quilt, wool inside", "pieced coverlet from the church sale": how it was made, long ago. */
function isKindOfQuilt(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (
    !/^(tie|quilt|piece|patch)$/.test(item.action?.v ?? '') ||
    (item.action?.form === 'base' && !/^appliqu/.test(item.w))
  )
    return false;
  const at = [k + 1, k + 2].find((m) => QUILT_NOUN.test(items[m]?.w ?? ''));
  if (
    at === undefined ||
    (at === k + 2 && /^(the|this|that|it|my|her|his|a|on|and|up|,|-)$/.test(items[k + 1]!.w))
  )
    return false;
  const lead = items[k - 1];
  // "it's a tied one, six rows of six"
  if (items[at]!.w === 'one' && !/^(a|an)$/.test(lead?.w ?? '')) return false;
  return (
    (!lead ||
      lead.token.kind === 'mark' ||
      /^(a|an|old|this|her|the|his|hand|machine|another)$/.test(lead.w)) &&
    !items.some((x) => x.duration || x.span)
  );
}

/** "the washing is done and …", "wash's over": told of the quilt. */
export const isWashOver = (items: Item[], k: number): boolean =>
  (items[k]!.task === 'cleaning' || items[k]!.action?.v === 'wash') &&
  /^(?:the )?wash(?:ing)?$/.test(items[k]!.w) &&
  /^ (?:is|'s|was|has been)(?: all| now)? (?:done|over|finished|complete|completed) /.test(
    wordsBetween(items, k + 1, k + 5),
  );

/** Does this item say that something is so or is done? */
export function isPredicate(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (item.finding === 'sound' && !isSound(items, k)) return false;
  // "the gingham I'm not touching"
  if (item.w === 'touching' && /^(not|n't|never)$/.test(items[k - 1]?.w ?? '')) return true;
  if (/^(live|living)$/.test(item.w) && items[k + 1]?.w === 'with') return true;
  // "washed the backing in the bath": where, and no second wash
  if (
    /^in the (tub|bath)$/.test(item.w) &&
    items.slice(0, k).some((x) => x.action?.v === 'wash' || x.action?.v === 'clean')
  )
    return false;
  if (/^(abandoned|scrapped|cancelled|canceled|forgotten)$/.test(item.w) || isWashOver(items, k)) return true;
  // "I've dropped the patch"
  if (
    /^(dropped|ditched|binned|shelved|scrapped|forgotten)$/.test(item.w) &&
    /^(the|that)$/.test(items[k + 1]?.w ?? '') &&
    /^(i|'ve|have|'m)$/.test(items[k - 1]?.w ?? '')
  )
    return true;
  // "forget the net", "scrap the darning"
  if (
    /^(forget|scrap|skip|ditch|nix|bin)$/.test(item.w) &&
    /^(the|that|about|doing|any|all|it)$/.test(items[k + 1]?.w ?? '') &&
    !/^(to|n't|not|i|and|'ll|will|do|never|you|she|he)$/.test(items[k - 1]?.w ?? '')
  )
    return true;
  // "the old patch off 6-2", "two old patches have come off": a thing that is taken off
  if (item.finding === 'old-repair' && isTakenOff(items, k)) return false;
  if (
    item.finding &&
    (isAttribute(items, k) || (item.w === 'torn' && /^('m|am|honestly)$/.test(items[k - 1]?.w ?? '')))
  )
    return false;
  if (item.finding && isBothThings(items, k)) return false;
  // "spotted a tear in 3-3": seen
  if (
    item.w === 'spotted' &&
    /^(a|an|some|another|two|three|more|that|the)$/.test(items[k + 1]?.w ?? '') &&
    items.slice(k + 1, k + 6).some((x) => x.finding || x.fail || x.seam)
  )
    return false;
  if (item.finding || item.measure === 'diagonal') return true;
  // "3-5 patched likewise": only how
  if (item.w === 'ditto' || item.w === 'likewise') return items[k - 1]?.action?.form !== 'past';
  if (item.action && !(item.place && item.action.v === 'leave')) {
    const { form } = item.action;
    const lead = items[k - 1]?.w ?? '';
    if (isKindOfQuilt(items, k)) return false;
    if (item.deed) return true;
    // "same fix", "the same repair": what was told before
    if (lead === 'same' && form === 'base') return false;
    // "the stitch the same and the thread too"
    if (item.w === 'stitch' && /^(the|this|that|each|every|which)$/.test(lead)) return false;
    // "the trimming", "that stuff somebody fused there": a thing, and work of others that only tells which
    if (form === 'ing' && /^(the|that|this)$/.test(lead))
      return (
        // "the tying of rows one and two was completed yesterday"
        (lead === 'the' &&
          items[k + 1]?.w === 'of' &&
          items
            .slice(k + 2, k + 12)
            .some((x) =>
              /^(complete|completed|finished|done|begun|commenced|started|progress)$/.test(x.w),
            )) ||
        (lead === 'the' &&
          /^(basting|layering|washing|binding|pressing)$/.test(item.w) &&
          /^(did|done|finished|completed)$/.test(items[k - 2]?.w ?? '') &&
          !items.some((x) => x.span || x.clock || x.duration || x.fail || x.finding))
      );
    if (form === 'past' && /^(somebody|someone|who)$/.test(lead)) return false;
    // "15 min lost to a power cut"
    if (item.w === 'cut' && lead === 'power') return false;
    // "out for a sandwich"
    if (
      item.w === 'sandwich' &&
      (!items[k + 1] || (/^(a|my)$/.test(lead) && /^(for|with|had|ate|on)$/.test(items[k - 2]?.w ?? '')))
    )
      return false;
    // "it measures 72 by 84" tells its size
    if (item.w === 'measures') return false;
    // "gave it a bath", "a going over": only as a thing given
    if (/^(bath|dunk|dunking|going over|once over)$/.test(item.w)) return isGiven(items, k);
    if (form === 'past' && tellsWhich(items, k)) return false;
    if (
      item.w === 'clean' &&
      (items[k + 1]?.finding ||
        /^(away|through|across|off|out|gone|broke|broken|forgot|apart|over)$/.test(items[k + 1]?.w ?? ''))
    )
      return false;
    // "fixing to whip it": a plan
    if (/^(fixing|fixin)$/.test(item.w) && items[k + 1]?.w === 'to') return false;
    // "spilled and dried in"
    if (item.w === 'dried' && /^(in|on|up)$/.test(items[k + 1]?.w ?? '')) return false;
    // "fuse gone", "iron broken": a thing of the house
    if (form === 'base' && !item.part && items[k + 1]?.fail && !items[k + 1]?.finding && k === 0)
      return false;
    // "with couching", "in whipstitch" only say how
    if (
      item.stitch &&
      form !== 'past' &&
      /^(with|in|by|w|of|using|and|,|some|the|a)$/.test(items[k - 1]?.w ?? '') &&
      // "darn the hole, whip the seam"
      !(
        form === 'base' &&
        /^(and|,)$/.test(items[k - 1]?.w ?? '') &&
        /^(the|that|those)$/.test(items[k + 1]?.w ?? '') &&
        items.slice(k + 2, k + 4).some((x) => x.seam || x.finding)
      )
    )
      return false;
    // "the seam joining row two to row three"
    if (item.w === 'joining' && items[k - 1]?.seam) return false;
    if (/ (stitching|sewing)$/.test(item.w) && form === 'ing') return isIngVerb(items, k);
    // "whipstitch, that was ten minutes": only how
    if (
      form === 'base' &&
      item.stitch &&
      !/^(to|will|'ll|gonna|must|should|could|might|i|let's|would|'d)$/.test(lead)
    )
      return (
        /^(it|them|the|those|these|over|across|along|round|around|down|up)$/.test(items[k + 1]?.w ?? '') &&
        (k === 0 ||
          /^(and|,|then|or|&)$/.test(lead) ||
          // ", machine zigzag over it"
          (/^(machine|hand)$/.test(lead) &&
            /^(over|across)$/.test(items[k + 1]!.w) &&
            (k === 1 || /^(,|then)$/.test(items[k - 2]!.w))))
      );
    // "there's a stain left in five two", "there were pins left in the border"
    if (
      item.w === 'left' &&
      (items[k - 1]?.finding || /^(pins|ties|label)$/.test(items[k - 1]?.object ?? '')) &&
      items.slice(Math.max(0, k - 6), k).some((x) => x.w === 'there')
    )
      return false;
    if (form !== 'base') return !((item.part || item.object) && form === 'ing' && !isIngVerb(items, k));
    if (item.w === 'left') return true;
    // "I'll just net the other two"
    const adverb = /^(just|probably|also|then|only|maybe|still|simply|quickly|now)$/.test(
      items[k - 1]?.w ?? '',
    );
    const before =
      (adverb &&
      /^(to|will|'ll|gonna|could|might|should|must|can|shall|i|may|would|'d)$/.test(items[k - 2]?.w ?? '')
        ? items[k - 2]?.w
        : items[k - 1]?.w) ?? '';
    if (isTerseVerb(items, k) || isGiven(items, k)) return true;
    if (item.w === 'dry' && items[k - 1]?.part && /^(and|&|,|now|)$/.test(items[k + 1]?.w ?? '')) return true;
    if (item.w === 'dry' && /^('s|is|are|now|fully|bone|nearly|quite|all|finally)$/.test(before)) return true;
    // "photos 5-2, 8-3", "pictures of the back"
    if (PICTURES.test(item.w))
      return (
        items[k + 1]?.w === 'of' ||
        picturesOf(items, k) ||
        items.slice(k + 1, k + 6).some((x) => x.w === 'taken')
      );
    if (
      item.object ||
      item.part ||
      item.seam ||
      item.material ||
      item.w === 'photo' ||
      item.w === 'picture' ||
      item.w === 'iron' ||
      item.w === 'air' ||
      item.w === 'square' ||
      item.w === 'back' ||
      item.w === 'line' ||
      item.w === 'net' ||
      item.w === 'dust' ||
      item.w === 'piece' ||
      item.w === 'knot' ||
      item.w === 'layer'
    ) {
      return (
        /^(to|will|'ll|gonna|could|might|should|must|n't|not|would|'d|can|shall|may|let's|gotta|i)$/.test(
          before,
        ) ||
        // "to do: square up, trim R side"
        (item.w === 'square' &&
          items[k + 1]?.w === 'up' &&
          /^(?:|[,:;.+&-]|--|and|then)$/.test(before) &&
          /^(?:|[,;.+&]|and|then|the|tomorrow|tmrw|today|tonight|next|first)$/.test(items[k + 2]?.w ?? '')) ||
        // "border: sponge w/ detergent, tmrw", "top: dust, then press"
        (/^(sponge|brush|iron|dust|air)$/.test(item.w) &&
          /^(|[:.-]|--)$/.test(before) &&
          /^(with|using|flat|gently|lightly|tomorrow|tmrw|tonight|later)$/.test(items[k + 1]?.w ?? '')) ||
        // "or only quilt along the sashing", "quilt just round the border"
        (item.part === 'quilt' &&
          /^(|or|and|,|then|just|only|either|maybe)$/.test(before) &&
          / (?:only |just )?(?:along|across|round|around) $| (?:only|just) the $/.test(
            ` ${items[k + 1]?.w ?? ''} ${/^(only|just)$/.test(items[k + 1]?.w ?? '') ? `${items[k + 2]?.w ?? ''} ` : ''}`,
          )) ||
        // "note to self: photo front + back", "photo back tomorrow"
        (/^(photo|pic|picture)$/.test(item.w) &&
          items[k + 1]?.place !== undefined &&
          /^(|[.,:;&+(-]|--|and|then|do|self)$/.test(before)) ||
        // "to do: piece new border"
        (/^pieces?$/.test(item.w) &&
          /^(|[.,:;&+(-]|--|and|then|next|todo|do)$/.test(before) &&
          (items[k + 1]?.object === 'border' || /^(new|fresh)$/.test(items[k + 1]?.w ?? ''))) ||
        ((/^(it|them|the|that|those|all|this|these|both)$/.test(items[k + 1]?.w ?? '') ||
          items[k + 1]?.place?.kind === 'blocks') &&
          !(
            /^(the|a|an|old|that|this|another|of)$/.test(before) ||
            // "here's the camp quilt that they took to the lake"
            (item.part === 'quilt' && /^(that|this)$/.test(items[k + 1]?.w ?? '') && k > 0) ||
            (before === 'one' && !/^(it|them)$/.test(items[k + 1]?.w ?? '')) ||
            // "closed seam 3-2/4-2, backstitch"
            (item.seam && items[k - 1]?.action?.form === 'past')
          ))
      );
    }
    return (
      k === 0 ||
      MOOD_BEFORE_BASE.has(before) ||
      ['it', 'them', 'the', 'that', 'those', 'this'].includes(items[k + 1]?.w ?? '')
    );
  }
  if (item.w === 'back' && items[k + 1]?.w === 'to' && items[k + 2]?.w === 'front') return false;
  if (removalAt(items, k)) return true;
  // "did the seam in ladder stitch"
  if (item.w === 'did' && items[k + 1]?.w === 'the' && items[k + 2]?.seam) return true;
  // "went over it with a zigzag"
  if (
    (/^(went|go|gone) over it$/.test(item.w) ||
      (/^(went|go|gone)$/.test(item.w) && /^(over|along|round|around)\b/.test(items[k + 1]?.w ?? ''))) &&
    items
      .slice(k + 1, k + 8)
      .some((x) => (x.stitch && !x.weakStitch) || /(?:^| )(?:brush|hoover|vacuum|vac|iron|sponge)$/.test(x.w))
  )
    return true;
  // "old patches there too | pulled both of those"
  if (item.w === 'pulled' && /^(it|them|those|that|both(?: of (?:them|those))?)$/.test(items[k + 1]?.w ?? ''))
    return true;
  // "the first one's getting net"
  if (
    item.w === 'getting' &&
    /^(is|'s|are|'re)$/.test(items[k - 1]?.w ?? '') &&
    items[k - 2]?.w !== 'it' &&
    items.slice(k + 1, k + 4).some((x) => x.material || x.action)
  )
    return true;
  if ((item.w === 'off' || item.w === 'out') && isOff(items, k)) return true;
  if (item.w === 'on' && isSideOn(items, k)) return true;
  if (item.fail) return isFailing(items, k);
  if (
    /^(bought|ordered|purchased|need|needs|wants|gets|started|stopped|starting|stopping|finished|finishing|quit|quitting|began|beginning|begun|stays|stay|remain|remains|decided|used)$/.test(
      item.w,
    )
  )
    return true;
  return false;
}

/** "the backing is off", "all the ties are out": a thing and a form of to be stand before. */
function isOff(items: Item[], k: number): boolean {
  // "off came the patch"
  if (isInverted(items, k)) return true;
  let m = k - 1;
  while (m >= 0 && /^(all|now|both|already|right|still|finally|mostly)$/.test(items[m]!.w)) m--;
  // "patch on 3-2 off", "old patch 3-2 off"
  if (items[m]?.place?.kind === 'blocks' && m > 0) m -= /^(on|in|at|of|from)$/.test(items[m - 1]!.w) ? 2 : 1;
  // "so all of it off"
  if (items[m]?.w === 'it' && items[m - 1]?.w === 'of' && items[m - 2]?.w === 'all') return true;
  const thing = (x: Item | undefined): boolean =>
    x !== undefined &&
    (x.object !== undefined ||
      x.finding === 'old-repair' ||
      x.material === 'net' ||
      x.w === 'idea' ||
      // "that bit of curtain's off"
      (x.material === 'fabric' && items[items.indexOf(x) - 1]?.w === 'of') ||
      x.action?.form === 'ing');
  // "wool batting out", "the old blue binding off": what it is made of stands before it
  let lead = m - 1;
  while (lead > m - 4 && isStuffWord(items[lead])) lead--;
  if (!/^(is|'s|are|'re|was|were|be|been)$/.test(items[m]?.w ?? ''))
    return (
      thing(items[m]) &&
      (lead < 0 ||
        /^(,|the|all|old|last|and|&|then)$/.test(items[lead]!.w) ||
        // "that's binding off", "that's row two's ties out"
        items[m - 1]!.w === "'s" ||
        // "and a cloth label off the bottom corner"
        (items[m]!.object === 'label' && /^(a|an|cloth|paper|name|little|small)$/.test(items[m - 1]!.w)) ||
        // "3-3 patch off", "r3 ties out"
        items[m - 1]!.place !== undefined)
    );
  // "the other two sides are off too and the bottom border's torn"
  if (items[k]!.w === 'off' && /^(edge|border)-/.test(items[m - 1]?.place?.places[0] ?? '')) return true;
  // "right that's off now and the right edge is frayed"
  if (
    /^(it|they|that|those|these)$/.test(items[m - 1]?.w ?? '') &&
    IS_ALL.test(wordsBetween(items, k + 1, k + 4))
  )
    return true;
  return items.slice(Math.max(0, m - 5), m + 1).some(thing);
}

/** "and the bottom one's on now", "the other two sides are on": a side and a form of to be stand before. */
function isSideOn(items: Item[], k: number): boolean {
  let m = k - 1;
  while (/^(all|now|both|already|finally|back)$/.test(items[m]?.w ?? '')) m--;
  return (
    /^(is|'s|are|'re)$/.test(items[m]?.w ?? '') &&
    /^(edge|border)-/.test(items[m - 1]?.place?.places[0] ?? '') &&
    !/^(the|my|a|its|it)$/.test(items[k + 1]?.w ?? '')
  );
}

/** What stands behind an "off" that is all that is told: "off now and …", "out, …". */
const IS_ALL = /^ (?:(?:now|too|already|finally|at last|as well) )*(?:and|,|so|but|then) /;

/** "off came the patch", "out it came". */
export const isInverted = (items: Item[], k: number): boolean =>
  (items[k]!.w === 'off' || items[k]!.w === 'out') &&
  (/^(came|come|comes|goes|went|with)$/.test(items[k + 1]?.w ?? '') ||
    (/^(it|they|that|them)$/.test(items[k + 1]?.w ?? '') &&
      /^(came|comes|goes|went|come|go)$/.test(items[k + 2]?.w ?? ''))) &&
  (k === 0 || /^(,|and|so|then|but|&)$/.test(items[k - 1]!.w));

/** Is a place or a side what needs it, and not the maker: "the other sides still need", "2-1 and 2-2 need"? */
function needsDoing(items: Item[], k: number): boolean {
  let m = k - 1;
  while (
    /^(still|all|both|also|now|really|might|may|could|will|'ll|probably|maybe|just)$/.test(items[m]?.w ?? '')
  )
    m--;
  return items[m]?.place !== undefined && !items.slice(0, m).some((x) => /^(i|we)$/.test(x.w));
}

/** "binding" and "backing" are mostly nouns. */
function isIngVerb(items: Item[], k: number): boolean {
  const before = items[k - 1]?.w ?? '';
  const after = items[k + 1];
  // "quilting in the ditch round the plum silk", "that's me quilting the lawn ones"
  if (
    items[k]!.action?.v === 'quilt' &&
    (k === 0 || items[k - 1]!.duration || /^(,|now|still|me|then|:|--|-)$/.test(before)) &&
    after &&
    (after.stitch ||
      after.fabric ||
      after.place ||
      /^(in|round|around|along|down|across|the|by|all|a|an|on|feathers?|cables?|fans?|lines|circles|waves)$/.test(
        after.w,
      )) &&
    !items.slice(k + 1).some((x) => x.fail || x.finding || x.w === 'off' || x.w === 'out')
  )
    return true;
  // "4-4 wants stitching back down", "the other three sides still need binding"
  if (
    /^(needs|wants)$/.test(before) ||
    (before === 'with' && / could do with $/.test(` ${wordsBetween(items, k - 3, k).trim()} `)) ||
    (/^(need|want)$/.test(before) && needsDoing(items, k - 1))
  )
    return true;
  return (
    [
      'is',
      "'m",
      'am',
      'are',
      'was',
      'been',
      'started',
      'began',
      'begun',
      'starting',
      'be',
      'start',
      "'re",
      'now',
      'i',
      'bother',
      'bothering',
      'avoid',
      'keep',
      'kept',
      'not',
      'through',
    ].includes(before) ||
    after?.w === 'it' ||
    after?.w === 'them' ||
    // "an hour binding the left side"
    ((k === 0 || items[k - 1]!.duration !== undefined) && (after?.place !== undefined || after?.w === 'the'))
  );
}
