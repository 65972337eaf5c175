import type { Token } from '../../text/tokenise.ts';
import { KIND_OF_WORK } from '../times/hours-of-work.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

const MEANT: Record<string, string> = {
  ate: 'eight',
  won: 'one',
  for: 'four',
  fore: 'four',
  to: 'two',
  too: 'two',
};
const MINUTES = /^(?:oh|ten|fifteen|twenty|thirty|forty|fifty|forty-five|10|15|20|30|40|45|50)$/;
const HOUR =
  /^(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|noon|half|quarter|1[0-2]|[1-9])$/;
const TILL = /^(?:to|till|until|til)$/;
const ENDS =
  /^(?:|,|\.|;|!|and|then|on|at|with|less|minus|this|last|yesterday|today|tonight|so|but|i|mending)$/;
const LENGTHS =
  /^(?:yards|yds|metres|meters|centimetres|centimeters|cms|cm|mm|inches|feet|spools|reels|skeins|balls|packs|packets|rolls|pieces)$/;
const ONE_OF = /^(?:yard|metre|meter|inch|foot|spool|reel|skein|ball|pack|packet|roll|hour|fat)$/;
/** What stands before a count: the verb of buying or cutting, a list, how far apart. */
const COUNT_LEAD =
  /^(?:|,|\.|;|and|&|bought|got|used|need|needs|cut|every|about|another|of|is|are|at|picked|up|have|had|with|plus|ordered|took|left|by)$/;

const w = (t: Token | undefined): string => t?.w ?? '';

/** Is the word at `k` an hour, as it is said or as it is misheard? */
const hourAt = (tokens: readonly Token[], k: number): boolean =>
  HOUR.test(w(tokens[k])) || Object.hasOwn(MEANT, w(tokens[k]));

/** "ate thirty", "won o'clock", "from to to for", "stopped at for", "half past ten to too piecing": hours as they sound. */
const hourHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const meant = MEANT[t.w];
  if (!meant) return undefined;
  const next = w(tokens[i + 1]);
  const left = w(before.at(-1));
  const read = readAs(t, meant, 'slip.ear');
  if (/^(?:o'clock|oclock)$/.test(next)) return read;
  const sure = /^(?:ate|won)$/.test(t.w);
  // "ate thirty to nine", "from for fifteen", and no "ate thirty minutes"
  if (MINUTES.test(next) && !/^(?:minutes?|mins?|past|percent)$/.test(w(tokens[i + 2]))) {
    if (
      sure &&
      (left === '' ||
        /^(?:from|at|till|until|til|since|to|about|started|,|\.|and|then)$/.test(left) ||
        KIND_OF_WORK.test(left) ||
        smallValue(before.at(-1)) !== undefined)
    )
      return read;
    if (/^(?:from|till|until|til|since)$/.test(left)) return read;
  }
  // "started at too thirty", where nothing is counted in minutes
  if (
    left === 'at' &&
    MINUTES.test(next) &&
    /^(?:too|to|for|fore|won|ate)$/.test(t.w) &&
    ENDS.test(w(tokens[i + 2]))
  )
    return read;
  // "knocked off at ten to for"
  if (
    TILL.test(left) &&
    t.w !== left &&
    w(before.at(-3)) === 'at' &&
    /^(?:five|ten|twenty|quarter)$/.test(w(before.at(-2)))
  )
    return read;
  // "from to to for", "from ate till eleven"
  if (left === 'from' && TILL.test(next) && hourAt(tokens, i + 2)) return read;
  // "… to too piecing", "… till for": the end of a stretch
  if (TILL.test(left) && t.w !== left && (ENDS.test(next) || KIND_OF_WORK.test(next)) && endsStretch(before))
    return read;
  // "stopped at for", "started at to"
  if (
    left === 'at' &&
    /^(?:for|to|too|fore)$/.test(t.w) &&
    (next === '' || /^[,.;!]$/.test(next)) &&
    before.length < 12
  )
    return read;
  return undefined;
};

/** Did an hour stand before the "to" or "till" that the words end in? */
function endsStretch(before: readonly Token[]): boolean {
  const from = before.at(-2);
  return HOUR.test(w(from)) || MINUTES.test(w(from)) || /^\d\d?[:.]\d\d$/.test(w(from));
}

/** "too yards", "bought for yards of muslin", "every for inches", "won spool", "too hours": a count before its unit. */
const countHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const meant = MEANT[t.w];
  if (!meant || t.w === 'ate') return undefined;
  const next = w(tokens[i + 1]);
  const left = w(before.at(-1));
  if (t.w === 'won') return ONE_OF.test(next) ? readAs(t, meant, 'slip.ear') : undefined;
  if (t.w === 'too') return LENGTHS.test(next) || next === 'hours' ? readAs(t, meant, 'slip.ear') : undefined;
  if (!LENGTHS.test(next) || !COUNT_LEAD.test(left)) return undefined;
  // "at four to inches": no count; "enough for yards and yards"
  if (w(tokens[i + 2]) === 'and' && w(tokens[i + 3]) === next) return undefined;
  return readAs(t, meant, 'slip.ear');
};

/** "to hours quilting yesterday", at the head of a note. */
const hoursAhead: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'to' &&
  w(tokens[i + 1]) === 'hours' &&
  (before.length === 0 || /^(?:[,.;]|did|about|another|spent|put|in)$/.test(w(before.at(-1))))
    ? readAs(tokens[i]!, 'two', 'slip.ear')
    : undefined;

/** What stands behind "ours" where hours are asked for or told: "ours altogether", "ours did I do", "ours on the binding". */
const HOURS_BEHIND =
  /^(?:did|do|have|has|is|was|'s|'ve|went|altogether|all|in|on|of|so|total|today|yesterday|tonight|this|last|at|for|mending|piecing|quilting|tying|cutting|cleaning|binding|\?|\.|,|)$/;

/** "how many ours did I do today", "total ours", "three ours mending", and no "these are ours". */
const oursHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^(?:ours|our's|owers)$/.test(t.w)) return undefined;
  const left = before.at(-1);
  const counted =
    /^(?:many|total|much|few|couple|extra|more)$/.test(w(left)) || smallValue(left) !== undefined;
  return counted && HOURS_BEHIND.test(w(tokens[i + 1])) ? readAs(t, 'hours', 'slip.ear') : undefined;
};

/** Numbers of hours and of units that the ear writes as the words that sound like them, in what is typed as in what is said. */
export const HOURS_HEARD: readonly SlipRule[] = [hourHeard, countHeard, hoursAhead, oursHeard];
