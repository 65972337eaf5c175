import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { blockAt } from '../places/grid.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

/** Short forms of lengths, and their words where the ear leaves them whole. Times are none: "it went on for hours". */
const LENGTH =
  /^(?:yards?|yds?|metres?|meters?|m|cms?|mm|centimetres?|centimeters?|millimetres?|millimeters?|inch|inches|ft|feet)$/;
const GOODS =
  /^(?:packs?|packets?|pks?|cards?|reels?|spools?|skeins?|balls?|yards?|yds?|metres?|meters?|fat|pieces?|bottles?|boxes|oz|ounces?)$/;
const BEHIND_INCHES = /^(?:apart|overhang|wide|long|deep|strips?|square|squares|tails?|borders?|seams?|all)$/;
const NUMBER_OF: Record<string, string> = { for: 'four', fore: 'four', to: 'two', too: 'two' };

const figure = (token: Token, w: string): Token => ({
  ...token,
  kind: 'number',
  w,
  value: Number(w),
  heard: token.w,
});
/** An hour of the day, in the place of a token, and the word between two of them. */
const hourOf = (token: Token, w: string): Token => ({
  ...figure(token, w),
  value: Number(w.replace(':', '.')),
  glued: false,
});
const toOf = (token: Token): Token => ({ ...token, kind: 'word', w: 'to', value: undefined, glued: false });
const comma = (token: Token): Token => ({ ...token, kind: 'mark', w: ',', glued: true, value: undefined });
const isFigure = (token: Token | undefined): boolean => token?.kind === 'number';

/** "for yards of wool", "need to m calico", "for in apart": a number, before what is measured in it. */
const countHeard: SlipRule = ({ tokens, i, before }) => {
  const number = NUMBER_OF[tokens[i]!.w];
  const unit = tokens[i + 1]?.w ?? '';
  if (!number) return undefined;
  const left = before.at(-1);
  const inches =
    unit === 'in' &&
    (BEHIND_INCHES.test(tokens[i + 2]?.w ?? '') ||
      (/^(?:a|the)$/.test(tokens[i + 2]?.w ?? '') && tokens[i + 3]?.w === 'part'));
  // "4 in overhang", said short
  if (unit === 'an' && tokens[i + 2]?.w === 'overhang' && /^(?:it|,|with|)$/.test(left?.w ?? ''))
    return {
      tokens: [
        { ...tokens[i]!, w: number, heard: tokens[i]!.w },
        { ...tokens[i + 1]!, w: 'in', heard: 'an' },
      ],
      took: 2,
      rule: 'slip.count',
    };
  const goods =
    /^(?:balls|spools|reels|skeins|packs|packets)$/.test(unit) &&
    /^(?:|\.|,|bought|got|need|used|and)$/.test(left?.w ?? '');
  if (!inches && !goods && !(LENGTH.test(unit) && unit !== 'feet')) return undefined;
  // "1.6 to m" is another rule's; "enough for metres and metres"
  if (isFigure(left) || tokens[i + 2]?.w === 'and') return undefined;
  return readAs(tokens[i]!, number, 'slip.count');
};

/** "four in a part", "10 cm a part" */
const apart: SlipRule = ({ tokens, i, before }) =>
  /^(?:a|the)$/.test(tokens[i]!.w) &&
  tokens[i + 1]?.w === 'part' &&
  (LENGTH.test(before.at(-1)?.w ?? '') || before.at(-1)?.w === 'in')
    ? {
        tokens: [{ ...tokens[i]!, w: 'apart', to: tokens[i + 1]!.to, heard: 'a part' }],
        took: 2,
        rule: 'slip.ear',
      }
    : undefined;

/** "100 and 4 cm", "the hundred and four centimetres": one number. */
const hundreds: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const rest = tokens[i + 2];
  if (
    t.w === 'the' &&
    tokens[i + 1]?.w === 'hundred' &&
    tokens[i + 2]?.w === 'and' &&
    !isFigure(before.at(-1))
  )
    return readAs(t, 'a', 'slip.count');
  if (!/^[1-9]00$/.test(t.w) || tokens[i + 1]?.w !== 'and' || !/^[1-9]\d?$/.test(rest?.w ?? ''))
    return undefined;
  const after = tokens[i + 3]?.w ?? '';
  if (!LENGTH.test(after) && !/^(?:by|across|down|long|wide|in|"|grams?|g|ml|mil)$/.test(after))
    return undefined;
  return {
    tokens: [{ ...figure(t, String(Number(t.w) + Number(rest!.w))), to: rest!.to }],
    took: 3,
    rule: 'slip.count',
  };
};

/** "180 to 0.5 cm" (182.5), "1.6 to m" (1.62): a "to" inside a number is a two. */
const twoInside: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  if (!isFigure(t) || !/^(?:to|too|two)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
  const rest = tokens[i + 2];
  if (/^[1-9]\d*0$/.test(t.w) && /^0\.\d+$/.test(rest?.w ?? '') && LENGTH.test(tokens[i + 3]?.w ?? ''))
    return {
      tokens: [{ ...figure(t, `${Number(t.w) + 2}${rest!.w.slice(1)}`), to: rest!.to }],
      took: 3,
      rule: 'slip.count',
    };
  if (/^\d+\.\d$/.test(t.w) && LENGTH.test(rest?.w ?? ''))
    return { tokens: [{ ...figure(t, `${t.w}2`), to: tokens[i + 1]!.to }], took: 2, rule: 'slip.count' };
  return undefined;
};

/** Eighths of a yard; any other number with three places is two that ran together. */
const EIGHTH = /\.(?:125|375|625|875)$/;
/** "3.502 packs needles", "at 1.801 reel": a price, and behind it how many of the next thing. */
const priceAndCount: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const cut = /^(\d+\.\d\d)([1-9]\d?)$/.exec(t.w);
  if (!cut) return undefined;
  const right = tokens[i + 1]?.w ?? '';
  const priced =
    before.some(({ w }) => /^(?:bought|got|paid|picked|shopping|at|@|cost)$/.test(w)) &&
    (GOODS.test(right) || tokens[i + 1]?.kind === 'word');
  if (!priced || (EIGHTH.test(t.w) && GOODS.test(right)) || (LENGTH.test(right) && cut[2]!.length > 1))
    return undefined;
  return {
    tokens: [figure(t, cut[1]!), comma(t), { ...figure(t, cut[2]!), glued: false }],
    took: 1,
    rule: 'slip.price',
  };
};

/** "sharps 4.10-500 ml soap": a dash behind a price joins nothing. */
const dashAfterPrice: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === '-' &&
  tokens[i]!.glued &&
  /^\d+\.\d\d$/.test(before.at(-1)?.w ?? '') &&
  isFigure(tokens[i + 1]) &&
  !/^\d+\.\d\d$/.test(tokens[i + 1]!.w)
    ? { tokens: [comma(tokens[i]!), { ...tokens[i + 1]!, glued: false }], took: 2 }
    : undefined;

/** "at 799 slash yard", "at 925 a yard": so many to the yard. */
const priceByUnit: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^[1-9]\d\d$/.test(t.w) || !/^(?:at|@)$/.test(before.at(-1)?.w ?? '')) return undefined;
  const by = tokens[i + 1]?.w ?? '';
  if (
    !/^(?:slash|a|per|the|\/)$/.test(by) ||
    !/^(?:yards?|yd|metres?|meters?|m)$/.test(tokens[i + 2]?.w ?? '')
  )
    return undefined;
  return {
    tokens: [
      figure(t, `${t.w[0]}.${t.w.slice(1)}`),
      { ...tokens[i + 1]!, kind: 'word', w: by === 'slash' || by === '/' ? 'a' : by },
    ],
    took: 2,
    rule: 'slip.price',
  };
};

/** "0 8 0 0 to 0 9 4 0", "since 6.2 0 pm", "since 1 30": hours that were written figure by figure. */
const clockApart: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!isFigure(t)) return undefined;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  if (w(0) === '0' && [1, 2, 3].every((k) => /^\d$/.test(w(k))) && !/^\d$/.test(w(4)))
    return {
      tokens: [{ ...figure(t, [0, 1, 2, 3].map(w).join('')), to: tokens[i + 3]!.to }],
      took: 4,
      rule: 'slip.clock',
    };
  if (/^\d{1,2}\.[0-5]$/.test(w(0)) && /^\d$/.test(w(1)) && /^(?:am|pm|p|a|cm)$/.test(w(2)))
    return { tokens: [{ ...figure(t, w(0) + w(1)), to: tokens[i + 1]!.to }], took: 2, rule: 'slip.clock' };
  const leads = /^(?:since|till|until|til)$/.test(before.at(-1)?.w ?? '');
  if (leads && /^(?:[1-9]|1[0-2])$/.test(w(0)) && /^(?:[1-5][05]|05)$/.test(w(1)) && !LENGTH.test(w(2)))
    return {
      tokens: [{ ...figure(t, `${w(0)}:${w(1)}`), to: tokens[i + 1]!.to }],
      took: 2,
      rule: 'slip.clock',
    };
  if (leads && /^(?:[1-9]|1[0-2])[0-5][05]$/.test(w(0)) && !LENGTH.test(w(1)))
    return { tokens: [figure(t, `${w(0).slice(0, -2)}:${w(0).slice(-2)}`)], took: 1, rule: 'slip.clock' };
  return undefined;
};

/** "38-man", "22 men", "15 m in": minutes. */
const minutesHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const dashed = t.w === '-' && t.glued && isFigure(before.at(-1));
  const at = dashed ? i + 1 : i;
  const word = tokens[at];
  if (!word || !isFigure(before.at(-1)) || before.at(-2)?.w === '-') return undefined;
  const split =
    word.w === 'm' && tokens[at + 1]?.w === 'in' && !tokens[at + 1]!.glued && tokens[at + 2]?.w !== 'the';
  if (!split && !/^(?:man|men|mins?)$/.test(word.w)) return undefined;
  if (/^mins?$/.test(word.w) && !dashed) return undefined;
  if (/^m[ae]n$/.test(word.w) && before.some(({ w }) => /^(?:allowances?|wide)$/.test(w))) return undefined;
  const last = split ? tokens[at + 1]! : word;
  return {
    tokens: [{ ...word, kind: 'word', w: 'min', glued: false, to: last.to, heard: word.w }],
    took: (dashed ? 1 : 0) + (split ? 2 : 1),
    rule: 'slip.unit',
  };
};

/** "seam 8 and m", "12 and m": millimetres */
const millimetres: SlipRule = ({ tokens, i, before }) =>
  /^(?:and|em)$/.test(tokens[i]!.w) &&
  isFigure(before.at(-1)) &&
  tokens[i + 1]?.w === 'm' &&
  !isFigure(tokens[i + 2])
    ? {
        tokens: [{ ...tokens[i + 1]!, w: 'mm', from: tokens[i]!.from, heard: `${tokens[i]!.w} m` }],
        took: 2,
        rule: 'slip.unit',
      }
    : undefined;

/** "800 mill of net", "60 miller of detergent" */
const millilitres: SlipRule = ({ tokens, i, before }) =>
  /^(?:mill|mills|miller|mils|meal)$/.test(tokens[i]!.w) &&
  isFigure(before.at(-1)) &&
  /^(?:of|is|,|\.|)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'mil', 'slip.unit')
    : undefined;

/** "1-hr-20 for both": the dashes join nothing */
const hourDashed: SlipRule = ({ tokens, i, before }) => {
  if (tokens[i]!.w !== '-' || !isFigure(before.at(-1)) || !/^(?:hrs?|hours?|h)$/.test(tokens[i + 1]?.w ?? ''))
    return undefined;
  if (tokens[i + 1]!.w === 'h' && tokens[i + 2]?.w === 'r') return undefined;
  const dash = tokens[i + 2]?.w === '-' && isFigure(tokens[i + 3]);
  return {
    tokens: [{ ...tokens[i + 1]!, glued: false }, ...(dash ? [{ ...tokens[i + 3]!, glued: false }] : [])],
    took: dash ? 4 : 2,
  };
};

/** "since 6.20 cm": pm */
const pmHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'cm' &&
  /^\d{1,2}[.:][0-5]\d$/.test(before.at(-1)?.w ?? '') &&
  /^(?:since|till|until|at|from)$/.test(before.at(-2)?.w ?? '')
    ? readAs(tokens[i]!, 'pm', 'slip.ear')
    : undefined;

/** "15 minoiling the machine": two words in one */
const minutesJoined: SlipRule = ({ tokens, i, before }) => {
  const rest = /^min([a-z]{3,}ing)$/.exec(tokens[i]!.w)?.[1];
  if (
    !rest ||
    !(
      isFigure(before.at(-1)) ||
      /^(?:five|ten|fifteen|twenty|thirty|forty|fifty)$/.test(before.at(-1)?.w ?? '')
    )
  )
    return undefined;
  const t = tokens[i]!;
  return {
    tokens: [
      { ...t, w: 'min', to: t.from + 3, heard: t.w },
      { ...t, w: rest, from: t.from + 3, glued: false, heard: t.w },
    ],
    took: 1,
    rule: 'slip.unit',
  };
};

/** "new strips at a m inches": a sound of thinking where the number will come */
const blankHeard: SlipRule = ({ tokens, i, before }) => {
  if (!/^(?:at|wide|apart)$/.test(before.at(-1)?.w ?? '')) return undefined;
  const two = tokens[i]!.w === 'a' && tokens[i + 1]?.w === 'm';
  const at = two ? i + 2 : /^(?:or|on|the|am)$/.test(tokens[i]!.w) ? i + 1 : -1;
  if (
    at < 0 ||
    !/^(?:inches|millimetres|millimeters|centimetres|centimeters|metres|meters|yards)$/.test(
      tokens[at]?.w ?? '',
    )
  )
    return undefined;
  return { tokens: [tokens[at]!], took: at + 1 - i };
};

/** "border four and a half in.", "a half-in, and": nothing follows that it could be in. */
const inchesAtEnd: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const at = t.w === '-' && t.glued ? i + 1 : i;
  const left = before.at(-1)?.w ?? '';
  const right = tokens[at + 1]?.w ?? '';
  // "top 62 and a half in bottom 63"
  const nextSide =
    /^(?:bottom|top|left|right|length|width|border|l|r)$/.test(right) && isFigure(tokens[at + 2]);
  if (tokens[at]?.w !== 'in' || !(/^(?:,|\.|;|)$/.test(right) || nextSide)) return undefined;
  if (!/^(?:half|quarters?|eighths?)$/.test(left) && !(isFigure(before.at(-1)) && at > i)) return undefined;
  return {
    tokens: [{ ...tokens[at]!, w: 'inches', glued: false, heard: 'in' }],
    took: at + 1 - i,
    rule: 'slip.unit',
  };
};

/** "with five ft two, length two yards", "would 5 ft": width, where the length follows. */
const widthHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:with|would|wit|wid)$/.test(tokens[i]!.w) &&
  /^(?:|\.)$/.test(before.at(-1)?.w ?? '') &&
  (isFigure(tokens[i + 1]) || smallValue(tokens[i + 1]) !== undefined) &&
  tokens.slice(i, i + 9).some(({ w }) => /^(?:length|lengths)$/.test(w))
    ? readAs(tokens[i]!, 'width', 'slip.ear')
    : undefined;

/** "cutting 25 min, piecing 120": an hour and twenty, beside another task that has its minutes. */
const hourAndMinutes: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^[1-3][0-5][05]$/.test(t.w) || !/^(?:|,|\.|and)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
  if (
    !/^(?:cutting|piecing|mending|quilting|tying|binding|layering|basting|cleaning|pressing)$/.test(
      before.at(-1)?.w ?? '',
    )
  )
    return undefined;
  if (!before.some(({ w }) => /^(?:min|mins|minutes|hr|hour|hours)$/.test(w))) return undefined;
  return { tokens: [figure(t, `${t.w[0]}:${t.w.slice(1)}`)], took: 1, rule: 'slip.clock' };
};

/** "another and half", "in hour and 10", "to another and ten minutes": an hour and */
const anHour: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  const amount = (k: number): boolean =>
    /^(?:half|quarter|five|ten|twenty|thirty|forty|fifty|fifteen)$/.test(w(k)) || /^[1-5]?[05]$/.test(w(k));
  const andSome = (k: number): boolean =>
    w(k) === 'and' && (amount(k + 1) || (w(k + 1) === 'a' && amount(k + 2)));
  if ((t.w === 'in' && w(1) === 'hour' && andSome(2)) || (t.w === 'and' && w(1) === 'hour'))
    return readAs(t, 'an', 'slip.ear');
  // "another and a half yards" is of something else
  if (t.w !== 'another' || !andSome(1)) return undefined;
  const after = w(2) === 'a' ? w(4) : w(3);
  if (!/^(?:|,|\.|minutes?|mins?|on|of|for|and|i|taking|cutting|mending)$/.test(after)) return undefined;
  return {
    tokens: [
      { ...t, w: 'an', heard: t.w },
      { ...t, w: 'hour', from: t.to, glued: false, heard: t.w },
    ],
    took: 1,
    rule: 'slip.ear',
  };
};

/** "strips to and a half inches wide": two and a half */
const twoAndPart: SlipRule = ({ tokens, i }) =>
  /^(?:to|too)$/.test(tokens[i]!.w) &&
  tokens[i + 1]?.w === 'and' &&
  /^an?$/.test(tokens[i + 2]?.w ?? '') &&
  /^(?:half|quarter|eighth|bit)$/.test(tokens[i + 3]?.w ?? '')
    ? readAs(tokens[i]!, 'two', 'slip.count')
    : undefined;

/** "a yard and 5 8 of muslin", "the seams are three eight": eighths */
const eighths: SlipRule = ({ tokens, i, before }) => {
  const n = smallValue(tokens[i]);
  if (n === undefined || n % 2 === 0 || n > 7 || !/^(?:8|eight|eights|8ths)$/.test(tokens[i + 1]?.w ?? ''))
    return undefined;
  const left = before.at(-1)?.w ?? '';
  const right = tokens[i + 2]?.w ?? '';
  const whole =
    left === 'and' && /^(?:yard|yards|inch|inches|metre|metres|[0-9]+)$/.test(before.at(-2)?.w ?? '');
  const seams = before.slice(-4).some(({ w }) => /^(?:seams?|allowances?)$/.test(w));
  if (
    !(whole && /^(?:of|,|\.||wide|inch|inches|yards?)$/.test(right)) &&
    !(seams && /^(?:|,|\.|and|of)$/.test(right))
  )
    return undefined;
  const t = tokens[i]!;
  return {
    tokens: [
      {
        ...t,
        kind: 'number',
        w: `${n}/8`,
        value: n / 8,
        to: tokens[i + 1]!.to,
        heard: `${t.w} ${tokens[i + 1]!.w}`,
      },
    ],
    took: 2,
    rule: 'slip.count',
  };
};

/** "thread for 475": four seventy-five, the price of one small thing */
const priceInCents: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^[1-9]\d[05]$/.test(t.w) || /^\d(?:00|50)$/.test(t.w) || before.at(-1)?.w !== 'for') return undefined;
  if (!/^(?:|,|\.|and|each|a)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
  const small = before
    .slice(-9)
    .some(({ w }) => /^(?:spool|reel|skein|packet|pack|card|thread|needles?|pins)$/.test(w));
  return small
    ? { tokens: [figure(t, `${t.w[0]}.${t.w.slice(1)}`)], took: 1, rule: 'slip.price' }
    : undefined;
};

/** "2 pound 10 each": two pounds ten */
const poundsAndPence: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  const pence = tokens[i + 2];
  if (!/^\d{1,2}$/.test(t.w) || !/^(?:pounds?|dollars?|euros?)$/.test(tokens[i + 1]?.w ?? ''))
    return undefined;
  if (
    !/^[1-9]\d$/.test(pence?.w ?? '') ||
    !/^(?:|,|\.|each|a|the|apiece|per|all|and)$/.test(tokens[i + 3]?.w ?? '')
  )
    return undefined;
  return {
    tokens: [
      { ...figure(t, `${t.w}.${pence!.w}`), to: pence!.to },
      { ...tokens[i + 1]!, from: pence!.to },
    ],
    took: 3,
    rule: 'slip.price',
  };
};

/** "mending 13, 10 to 16, 40", "14 0 0 16 45 taking apart": a stretch of hours, whose minutes stand apart */
const stretchApart: SlipRule = ({ tokens, i, before }) => {
  const hours = (k: number): { w: string; next: number } | undefined => {
    const h = tokens[k]?.w ?? '';
    if (!/^(?:\d|1\d|2[0-3])$/.test(h)) return undefined;
    const at = tokens[k + 1]?.w === ',' ? k + 2 : k + 1;
    const m = tokens[at]?.w ?? '';
    if (/^[0-5]\d$/.test(m)) return { w: `${h}:${m}`, next: at + 1 };
    return m === '0' && tokens[at + 1]?.w === '0' ? { w: `${h}:00`, next: at + 2 } : undefined;
  };
  const task = (k: number): boolean => {
    const senses = tokens[k] ? (LEXICON.longestAt(tokens, k)?.payloads ?? []) : [];
    return senses.some((s) => s.k === 'task' || (s.k === 'action' && s.form === 'ing'));
  };
  const first = hours(i);
  if (!first || tokens[i]?.kind !== 'number') return undefined;
  const dash = /^(?:to|till|until|-)$/.test(tokens[first.next]?.w ?? '');
  const second = hours(dash ? first.next + 1 : first.next);
  if (!second) return undefined;
  const left = before.at(-1);
  const tasked =
    left &&
    (LEXICON.longestAt([left], 0)?.payloads ?? []).some(
      (s) => s.k === 'task' || (s.k === 'action' && s.form === 'ing'),
    );
  if (!tasked && left?.w !== 'from' && !task(second.next)) return undefined;
  return {
    tokens: [
      hourOf(tokens[i]!, first.w),
      toOf(tokens[first.next]!),
      hourOf(tokens[second.next - 1]!, second.w),
    ],
    took: second.next - i,
    rule: 'slip.clock',
  };
};

/** "2 point for 0", "3 point 5 0": 2.40, 3.50 */
const pointSaid: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  if (!/^\d{1,3}$/.test(t.w) || tokens[i + 1]?.w !== 'point') return undefined;
  let digits = '';
  let k = i + 2;
  for (; digits.length < 2; k++) {
    const word = tokens[k]?.w ?? '';
    const digit = smallValue(tokens[k]) ?? { for: 4, to: 2, too: 2, oh: 0, '0': 0, zero: 0, o: 0 }[word];
    if (
      digit === undefined ||
      (digits === '' && /^(?:to|too|for)$/.test(word) && !/^(?:0|oh|zero)$/.test(tokens[k + 1]?.w ?? ''))
    )
      break;
    if (digits !== '' && /^(?:to|too|for)$/.test(word)) break;
    digits += String(digit);
  }
  return digits
    ? {
        tokens: [{ ...figure(t, `${t.w}.${digits}`), to: tokens[k - 1]!.to }],
        took: k - i,
        rule: 'slip.count',
      }
    : undefined;
};

/** "finished at 14-10", "stopped 14, 10, ties out": the minutes of an hour that is no block's name */
const clockDashed: SlipRule = ({ tokens, i, before, grid }) => {
  const t = tokens[i]!;
  const minutes = tokens[i + 2];
  if (
    !/^(?:\d|1\d|2[0-3])$/.test(t.w) ||
    !/^[,-]$/.test(tokens[i + 1]?.w ?? '') ||
    !/^[0-5]\d$/.test(minutes?.w ?? '')
  )
    return undefined;
  const left = before.at(-1)?.w ?? '';
  const lead = /^(?:at|since|till|until|stopped|finished|started|began|stop|start|from)$/.test(left);
  if (!lead || (grid && blockAt(grid, Number(t.w), Number(minutes!.w)))) return undefined;
  if (
    tokens[i + 3]?.w === '-' ||
    LENGTH.test(tokens[i + 3]?.w ?? '') ||
    /^(?:min|mins|minutes)$/.test(tokens[i + 3]?.w ?? '')
  )
    return undefined;
  return { tokens: [{ ...figure(t, `${t.w}:${minutes!.w}`), to: minutes!.to }], took: 3, rule: 'slip.clock' };
};

/** "cleaning 10-05-11-15", "9-11-30 this morning": from one hour to another */
const stretchDashed: SlipRule = ({ tokens, i, before }) => {
  const parts: Token[] = [];
  for (let k = i; tokens[k]?.kind === 'number' && parts.length < 5; k += 2) {
    parts.push(tokens[k]!);
    if (tokens[k + 1]?.w !== '-') break;
  }
  const hour = (p: Token | undefined): boolean => /^(?:0?\d|1\d|2[0-3])$/.test(p?.w ?? '');
  const minute = (p: Token | undefined): boolean => /^[0-5]\d$/.test(p?.w ?? '');
  const [a, b, c, d] = parts;
  const took = parts.length * 2 - 1;
  const after = tokens[i + took]?.w ?? '';
  const clock = (h: Token, m?: Token): Token => ({
    ...hourOf(h, m ? `${Number(h.w)}:${m.w}` : h.w),
    to: (m ?? h).to,
  });
  const left = before.at(-1);
  const tasked =
    left &&
    (LEXICON.longestAt([left], 0)?.payloads ?? []).some(
      (s) => s.k === 'task' || (s.k === 'action' && s.form === 'ing'),
    );
  if (
    parts.length === 4 &&
    hour(a) &&
    minute(b) &&
    hour(c) &&
    minute(d) &&
    (tasked || /^(?:break|apart|lunch|tea|,|from)$/.test(left?.w ?? ''))
  )
    return { tokens: [clock(a!, b), toOf(b!), clock(c!, d)], took, rule: 'slip.clock' };
  if (
    parts.length === 3 &&
    hour(a) &&
    hour(b) &&
    minute(c) &&
    Number(b!.w) > Number(a!.w) &&
    /^(?:this|last|am|pm|today|yesterday|with|in)$/.test(after) &&
    Number(c!.w) >= 10
  )
    return { tokens: [clock(a!), toOf(a!), clock(b!, c)], took, rule: 'slip.clock' };
  return undefined;
};

/** What goods are counted in, and what they sound like: "four scents of red worsted", "four mepres of flannelette" */
const centimetres: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const counted =
    before.at(-1) &&
    (isFigure(before.at(-1)) ||
      smallValue(before.at(-1)) !== undefined ||
      /^(?:ten|twelve|fifteen|twenty|half|thirty)$/.test(before.at(-1)!.w));
  if (!counted) return undefined;
  if (/^(?:cent|sent|sun)$/.test(t.w) && /^(?:im|dim|a?m)[a-z]{3,}/.test(tokens[i + 1]?.w ?? ''))
    return {
      tokens: [{ ...t, w: 'cm', to: tokens[i + 1]!.to, heard: `${t.w} ${tokens[i + 1]!.w}` }],
      took: 2,
      rule: 'slip.unit',
    };
  return /^[cs]ent[aeio]?m[a-z]{2,}$/.test(t.w) && !/^centimet(?:re|er)s?$/.test(t.w)
    ? readAs(t, 'cm', 'slip.unit')
    : undefined;
};

/** "5 and 20 past 3": five and twenty past, as it is said in the north */
const andTwenty: SlipRule = ({ tokens, i }) =>
  tokens[i]!.w === '5' &&
  tokens[i + 1]?.w === 'and' &&
  tokens[i + 2]?.w === '20' &&
  /^(?:past|to)$/.test(tokens[i + 3]?.w ?? '')
    ? { tokens: [{ ...figure(tokens[i]!, '25'), to: tokens[i + 2]!.to }], took: 3, rule: 'slip.clock' }
    : undefined;

/** "98 and 3-4 the other", "4 and 1-2 inches": three quarters, a half */
const fractionDashed: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const part = `${t.w}/${tokens[i + 2]?.w ?? ''}`;
  if (!/^(?:1\/2|[13]\/4|[1357]\/8)$/.test(part) || tokens[i + 1]?.w !== '-') return undefined;
  if (before.at(-1)?.w !== 'and' || !isFigure(before.at(-2)) || before.at(-3)?.w === '-') return undefined;
  return {
    tokens: [{ ...figure(t, part), value: Number(t.w) / Number(tokens[i + 2]!.w), to: tokens[i + 2]!.to }],
    took: 3,
    rule: 'slip.count',
  };
};

/** "washed 905950", "mending 13101640", "9.05.950": from one hour to another, run together */
const stretchJoined: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const digits = t.w.replace(/\./g, '');
  const cut = /^(\d{1,2})([0-5]\d)(\d{1,2})([0-5]\d)$/.exec(digits);
  if (!cut || !/^(?:\d{6,8}|\d{1,2}\.\d\d\.\d{3,4})$/.test(t.w) || isFigure(before.at(-1))) return undefined;
  const [h1, m1, h2, m2] = cut.slice(1) as [string, string, string, string];
  if (Number(h1) > 23 || Number(h2) > 23) return undefined;
  return {
    tokens: [hourOf(t, `${h1}:${m1}`), toOf(t), hourOf(t, `${h2}:${m2}`)],
    took: 1,
    rule: 'slip.clock',
  };
};

/** "15 30 start mending", "15-30 start": the hour at the head of a note */
const clockAhead: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (before.length > 0 || !/^(?:\d|1\d|2[0-3])$/.test(t.w)) return undefined;
  const at = /^[-,]$/.test(tokens[i + 1]?.w ?? '') ? i + 2 : i + 1;
  if (!/^[0-5]\d$/.test(tokens[at]?.w ?? '') || tokens[at]?.kind !== 'number') return undefined;
  if (
    !/^(?:start|started|starting|begin|began|stop|stopped|done|finished|off)$/.test(tokens[at + 1]?.w ?? '')
  )
    return undefined;
  return {
    tokens: [{ ...figure(t, `${t.w}:${tokens[at]!.w}`), to: tokens[at]!.to }],
    took: at + 1 - i,
    rule: 'slip.clock',
  };
};

/** Numbers, prices, hours and their units as the recogniser writes them; only in what was heard, and always marked. */
export const FIGURES_HEARD: readonly SlipRule[] = [
  countHeard,
  apart,
  hundreds,
  twoInside,
  priceAndCount,
  dashAfterPrice,
  priceByUnit,
  stretchApart,
  stretchDashed,
  clockDashed,
  pointSaid,
  centimetres,
  clockApart,
  minutesHeard,
  millimetres,
  millilitres,
  hourDashed,
  pmHeard,
  minutesJoined,
  blankHeard,
  inchesAtEnd,
  widthHeard,
  hourAndMinutes,
  anHour,
  twoAndPart,
  eighths,
  priceInCents,
  poundsAndPence,
  andTwenty,
  fractionDashed,
  stretchJoined,
  clockAhead,
];
