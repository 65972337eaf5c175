import type { Token } from '../../text/tokenise.ts';
import { type HeardAt, readAs, type SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

/** Short forms of lengths, and their words where the ear leaves them whole. Times are none: "it went on for hours". */
const LENGTH =
  /^(?:yards?|yds?|metres?|meters?|m|cms?|mm|centimetres?|centimeters?|millimetres?|millimeters?|inch|inches|ft|feet)$/;
const GOODS =
  /^(?:packs?|packets?|pks?|reels?|spools?|skeins?|balls?|yards?|yds?|metres?|meters?|fat|pieces?|bottles?|boxes|oz|ounces?)$/;
const BEHIND_INCHES = /^(?:apart|overhang|wide|long|deep|strips?|square|squares|tails?|borders?|seams?|all)$/;
const NUMBER_OF: Record<string, string> = { for: 'four', fore: 'four', to: 'two', too: 'two' };

const figure = (token: Token, w: string): Token => ({
  ...token,
  kind: 'number',
  w,
  value: Number(w),
  heard: token.w,
});
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
  if (!inches && !(LENGTH.test(unit) && unit !== 'feet')) return undefined;
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

/** "800 mill of net", "60 miller of detergent" */
const millilitres: SlipRule = ({ tokens, i, before }) =>
  /^(?:mill|mills|miller|mils|meal)$/.test(tokens[i]!.w) &&
  isFigure(before.at(-1)) &&
  /^(?:of|is|,|\.|)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'mil', 'slip.unit')
    : undefined;

/** "border four and a half in.", "a half-in, and": nothing follows that it could be in. */
const inchesAtEnd: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const at = t.w === '-' && t.glued ? i + 1 : i;
  const left = before.at(-1)?.w ?? '';
  if (tokens[at]?.w !== 'in' || !/^(?:,|\.|;|)$/.test(tokens[at + 1]?.w ?? '')) return undefined;
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

/** Numbers, prices, hours and their units as the recogniser writes them; only in what was heard, and always marked. */
export const FIGURES_HEARD: readonly SlipRule[] = [
  countHeard,
  apart,
  hundreds,
  twoInside,
  priceAndCount,
  dashAfterPrice,
  priceByUnit,
  clockApart,
  minutesHeard,
  millilitres,
  inchesAtEnd,
  widthHeard,
  hourAndMinutes,
].map((rule) => (at: HeardAt) => (at.spoken ? rule(at) : undefined));
