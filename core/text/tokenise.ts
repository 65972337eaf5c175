import { lettersAt } from './letters-with-stops.ts';
import { COUNT_WORDS, TEN_WORDS } from './number-words.ts';

/** One word, number or mark of a note. `from` and `to` are UTF-16 offsets into the words as said. */
/** "lamé", "crêpe", "moiré" as they are written without their accents. */
export const withoutAccents = (word: string): string =>
  // a look at the letters costs less than taking each word apart
  /[À-ɏ]/.test(word) ? word.normalize('NFD').replace(/\p{M}/gu, '') : word;

export type Token = {
  /** Lower-case form that the rules look at: apostrophes straightened, marks reduced to ASCII. */
  w: string;
  from: number;
  to: number;
  kind: 'word' | 'number' | 'mark';
  /** Value of a token written in digits; decimals and clock times keep their writing in `w`. */
  value?: number;
  /** No blank stands between this token and the one before it. */
  glued: boolean;
  /** The word as heard, where a slip of the ear was put right. */
  heard?: string;
};

/** Sounds that mean nothing; a note is read as if they had not been made. */
const THEM_AFTER = new Set(
  'of all both cut put set sewn got gave give leave let keep over on at with for behind under underneath from to around round in through by took take put got leave left patched darned replaced sewed tied pressed washed replace patch darn sew tie press wash pulled pull'.split(
    ' ',
  ),
);
const FILLERS = new Set('um uh er erm uhm umm hmm hm mm ah eh ehm em uhh err hmmm'.split(' '));

const VULGAR = new Map(
  Object.entries({
    '½': '1/2',
    '¼': '1/4',
    '¾': '3/4',
    '⅓': '1/3',
    '⅔': '2/3',
    '⅛': '1/8',
    '⅜': '3/8',
    '⅝': '5/8',
    '⅞': '7/8',
    '⅕': '1/5',
  }),
);

/** Contractions are taken apart so that "binding's" still shows its binding. */
const TAIL = /^(.+?)('s|'ve|'ll|'re|'d|'m|n't)$/;

/** Contractions written without their apostrophe, as recognisers and hurried thumbs write them. */
const BARE_CONTRACTIONS = new Map<string, [string, string]>(
  Object.entries({
    ive: ['i', "'ve"],
    im: ['i', "'m"],
    dont: ['do', "n't"],
    didnt: ['did', "n't"],
    cant: ['ca', "n't"],
    wont: ['wo', "n't"],
    isnt: ['is', "n't"],
    arent: ['are', "n't"],
    havent: ['have', "n't"],
    hasnt: ['has', "n't"],
    wasnt: ['was', "n't"],
    werent: ['were', "n't"],
    doesnt: ['does', "n't"],
    shouldnt: ['should', "n't"],
    couldnt: ['could', "n't"],
    theres: ['there', "'s"],
    thats: ['that', "'s"],
    whats: ['what', "'s"],
    hows: ['how', "'s"],
    heres: ['here', "'s"],
    theyre: ['they', "'re"],
    youre: ['you', "'re"],
    theyve: ['they', "'ve"],
    weve: ['we', "'ve"],
    youve: ['you', "'ve"],
    theyll: ['they', "'ll"],
    youll: ['you', "'ll"],
    itll: ['it', "'ll"],
    thatll: ['that', "'ll"],
    thatd: ['that', "'d"],
    itd: ['it', "'d"],
    id: ['i', "'d"],
    wouldnt: ['would', "n't"],
    mustnt: ['must', "n't"],
    neednt: ['need', "n't"],
    hadnt: ['had', "n't"],
    shes: ['she', "'s"],
    hes: ['he', "'s"],
    ill: ['i', "'ll"],
    cannot: ['ca', "n't"],
    "t'other": ['the', 'other'],
    tother: ['the', 'other'],
  }),
);

/** Short forms that may end in a full stop without ending the sentence. */
const ABBREVIATIONS = new Set(
  'thr thrd allow approx betw incl exc excl pkt pkts pk pks tog tot btm w f sq max avg ea doz qty rs v vy'.split(
    ' ',
  ),
);
/** Short forms of units, which are written with a full stop behind a number. */
const UNITS_IN_SHORT = new Set('in oz yd yds ft cm mm lb lbs g min mins hr hrs doz pkg pkgs sk'.split(' '));
const isFigure = (token: Token | undefined): boolean =>
  token !== undefined &&
  (token.kind === 'number' || isNumberWord(token.w) || /^(hundred|half|quarters?|eighths?)$/.test(token.w));

const CURRENCY = new Set(['€', '£', '$', 'rs', 'kr', 'chf']);
/** What a number with decimals may count; "in" would be no inches. */
const DECIMAL_UNIT = /^ ?(?:(?:mm?|cm|kg|g|ml|yds?|metres?|meters?|yards?|hrs?|h|hours?)\b(?!\.\d)|€)/i;

const PIECE =
  /(?<![\w.])\.\d+|\d+(?:[.:]\d+)*|[a-zA-ZÀ-ɏͰ-ϿЀ-ӿ]+(?:['’][a-zA-ZÀ-ɏ]+)*['’]?|[½¼¾⅓⅔⅛⅜⅝⅞⅕]|(?<=\d)['’](?:s|ve|ll|re|d)\b|\n+|[^\s]/gu;

/**
 * Cuts a note into tokens in one pass, linear in its length. Letters and digits that are written
 * together ("r2b3", "20min") come apart, each with its own offsets; fillers are left out.
 */
export function tokenise(text: string): Token[] {
  const tokens: Token[] = [];
  let end = -1;
  const push = (
    w: string,
    from: number,
    to: number,
    kind: Token['kind'],
    glued: boolean,
    value?: number,
  ): void => {
    // every field from the beginning, so that all tokens are of one shape
    tokens.push({ w, from, to, kind, value, glued, heard: undefined });
  };
  const withCapitals = /^\W*[A-Z][a-z]|[.;:!?] [A-Z][a-z]/.test(text);
  for (const match of text.matchAll(PIECE)) {
    const raw = match[0];
    const from = match.index;
    const to = from + raw.length;
    const glued = from === end;
    end = to;
    const first = raw.charCodeAt(0);
    // "3-2's torn"
    if (raw.length > 1 && /^['’]/.test(raw)) {
      push(raw.toLowerCase().replace('’', "'"), from, to, 'word', glued);
      continue;
    }
    if (first === 46 && raw.length > 1) {
      // ".5 m", "@ .45"
      push(`0${raw}`, from, to, 'number', glued, Number(raw));
      continue;
    }
    if (first >= 48 && first <= 57) {
      // 1,200 is one number; "1,2,3" is a list.
      const before = tokens.at(-1);
      const wide = tokens.at(-2);
      if (
        glued &&
        raw.length === 3 &&
        before?.w === ',' &&
        before.glued &&
        wide?.kind === 'number' &&
        /^\d{1,3}$/.test(wide.w)
      ) {
        tokens.pop();
        wide.w += raw;
        wide.to = to;
        wide.value = Number(wide.w);
        continue;
      }
      // "1,5 m", "€ 4,40": a comma for the point of a decimal
      if (
        glued &&
        /^\d{1,2}$/.test(raw) &&
        before?.w === ',' &&
        before.glued &&
        wide?.kind === 'number' &&
        /^\d{1,3}$/.test(wide.w) &&
        !(tokens.at(-3)?.w === ',' && wide.glued) &&
        ((raw.length === 2 && CURRENCY.has(tokens.at(-3)?.w ?? '')) ||
          DECIMAL_UNIT.test(text.slice(to, to + 9)))
      ) {
        tokens.pop();
        wide.w += `.${raw}`;
        wide.to = to;
        wide.value = Number(wide.w);
        continue;
      }
      push(raw, from, to, 'number', glued, Number(raw.replace(':', '.')));
      continue;
    }
    const fraction = raw.length === 1 ? VULGAR.get(raw) : undefined;
    if (fraction) {
      const [n, d] = fraction.split('/');
      push(fraction, from, to, 'number', glued, Number(n) / Number(d));
      continue;
    }
    if (raw.length === 1 && !/[a-zA-ZÀ-ɏͰ-ϿЀ-ӿ]/.test(raw)) {
      const mark =
        raw === '–' || raw === '—' || raw === '−'
          ? raw === '—'
            ? '--'
            : '-'
          : raw === '’' || raw === '‘'
            ? "'"
            : raw === '“' || raw === '”'
              ? '"'
              : raw;
      // "ladder st., 3 hrs"
      if (mark === '.' && glued && text[to] === ',') continue;
      // "3 in. overhang", "8 oz. wool; 2 yd. cord", "98 1/2 in. and 100"
      if (
        mark === '.' &&
        glued &&
        UNITS_IN_SHORT.has(tokens.at(-1)?.w ?? '') &&
        isFigure(tokens.at(-2)) &&
        // who writes without capitals ends sentences so
        (/^(?:[;:)]| +(?:overhang|wide|long|apart|of|deep|tall|across|square)\b)/.test(
          text.slice(to, to + 12),
        ) ||
          (withCapitals && /^ +(?:[a-z£$€@(]|-)(?!or the )/.test(text.slice(to, to + 10))))
      )
        continue;
      // "silk thr. 3 reels", "4 in. wide": the stop only ends the short form
      if (
        mark === '.' &&
        glued &&
        ABBREVIATIONS.has(tokens.at(-1)?.w ?? '') &&
        /^(?: +[a-z0-9£$€@(]|,| ?-)/.test(text.slice(to, to + 4))
      )
        continue;
      // "pearl cotton no. 8, five balls": its number, and nothing denied
      if (
        mark === '.' &&
        glued &&
        /^(?:no|nr)$/.test(tokens.at(-1)?.w ?? '') &&
        tokens.at(-2)?.kind === 'word' &&
        /^ ?\d+(?![-\d./])/.test(text.slice(to, to + 6))
      )
        continue;
      // "2-2 -> darn", "label → lower left corner": what follows is of what stands before, as behind a colon
      const before = tokens.at(-1);
      // "13:00→16:15", "3-1 → 3-4": from the one to the other
      if (mark === '→' && before?.kind === 'number' && /^ ?\d/.test(text.slice(to, to + 2))) {
        push('-', from, to, 'mark', glued);
        continue;
      }
      // "1) layered 2) pinned": the number of the point, and not of anything
      if (
        mark === ')' &&
        glued &&
        before?.kind === 'number' &&
        !before.glued &&
        /^\d$/.test(before.w) &&
        !isOpen(tokens)
      ) {
        const point = tokens.pop()!;
        if (tokens.length && tokens.at(-1)!.kind !== 'mark') push(',', point.from, to, 'mark', false);
        continue;
      }
      if (mark === '→' || (mark === '>' && glued && /^(-|=|--)$/.test(before?.w ?? ''))) {
        if (mark === '>') tokens.pop();
        push(':', mark === '>' ? before!.from : from, to, 'mark', mark === '>' ? before!.glued : glued);
        continue;
      }
      push(mark, from, to, 'mark', glued);
      continue;
    }
    if (first === 10) {
      push('\n', from, to, 'mark', glued);
      continue;
    }
    const straight = withoutAccents(raw.toLowerCase().replaceAll('’', "'"));
    const w = straight.endsWith("'") ? straight.slice(0, -1) : straight;
    // "8 mm" is a length, "mm, let me see" is nothing
    // "half of em", "net over em": "them" as it is spoken
    if (
      w === 'em' &&
      // "strips at em centimetres": a breath
      !/^ +(?:centim|millim|inch|cm|mm|metres?|yards?)/i.test(text.slice(to, to + 9)) &&
      (raw.startsWith("'") ||
        THEM_AFTER.has(tokens.at(-1)?.w ?? '') ||
        /[a-z]ed$/.test(tokens.at(-1)?.w ?? ''))
    ) {
      push('them', from, to, 'word', glued);
      continue;
    }
    // "pins n thread", "three bucks each, n a roll of batting"
    if (
      w === 'n' &&
      !glued &&
      (tokens.at(-1)?.kind === 'word' || tokens.at(-1)?.kind === 'number' || tokens.at(-1)?.w === ',')
    ) {
      push('and', from, to, 'word', glued);
      continue;
    }
    if (
      FILLERS.has(w) &&
      !(w === 'mm' && (isFigure(tokens.at(-1)) || /^(?:[?_…]|at|every)$/.test(tokens.at(-1)?.w ?? '')))
    ) {
      end = -1;
      continue;
    }
    const bare = w.length < 10 ? BARE_CONTRACTIONS.get(w) : undefined;
    if (bare) {
      const cut = from + w.length - bare[1].replace("'", '').length;
      push(bare[0], from, cut, 'word', glued);
      push(bare[1], cut, to, 'word', true);
      continue;
    }
    const tail = w.includes("'") ? TAIL.exec(w) : null;
    if (tail) {
      push(tail[1]!, from, from + tail[1]!.length, 'word', glued);
      push(tail[2]!, from + tail[1]!.length, to, 'word', true);
      continue;
    }
    push(w, from, to, 'word', glued);
  }
  return withStops(joinPrefixes(tokens));
}

/**
 * "dye run, every gingham block / yellow tide mark, right border / musty smell, row 5": strokes with blanks about them that part
 * statements, since there are commas within these, are stops.
 */
function withStops(tokens: Token[]): Token[] {
  const free = (t: Token, k: number): boolean => t.w === '/' && !t.glued && tokens[k + 1]?.glued === false;
  if (!tokens.some(free)) return tokens;
  let listed = 0;
  let comma = 0;
  tokens.forEach((t, k) => {
    if (free(t, k)) comma = 0;
    else if (t.w === ',' && ++comma === 1) listed++;
  });
  return listed > 1 ? tokens.map((t, k) => (free(t, k) ? { ...t, w: ';' } : t)) : tokens;
}

/** Does a bracket stand open? */
const isOpen = (tokens: Token[]): boolean =>
  tokens.findLastIndex((t) => t.w === '(') > tokens.findLastIndex((t) => t.w === ')');

/** "re-sewed" and "un-picked" are one word; "two-inch" and "left-hand" are two. */
function joinPrefixes(tokens: Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    const dash = tokens[i + 1];
    const next = tokens[i + 2];
    if (
      (t.w === 're' || t.w === 'un' || t.w === 'de') &&
      dash?.w === '-' &&
      dash.glued &&
      next?.glued &&
      next.kind === 'word'
    ) {
      out.push({ ...t, w: t.w + next.w, to: next.to });
      i += 2;
      continue;
    }
    // "s.a. 6 mm", "l.h. border", "2 f.q. print": letters with their stops as the same without
    const short = t.w.length === 1 && dash?.glued ? lettersAt(tokens, i) : undefined;
    if (short) {
      out.push({ ...t, w: short.w, to: tokens[short.end - 1]!.to });
      i = short.end - 1;
      continue;
    }
    // "hrs on it y'day"
    if (t.w === "y'day") {
      out.push({ ...t, w: 'yesterday' });
      continue;
    }
    // "going w/ wool", "w/o pins"; "60w/72l" is a width
    if (t.w === 'w' && dash?.w === '/' && dash.glued && next?.kind !== 'number') {
      const without = next?.glued && (next.w === 'o' || next.w === 'out');
      out.push({ ...t, w: without ? 'without' : 'with', to: without ? next.to : dash.to });
      i += without ? 2 : 1;
      continue;
    }
    // "the nine-patch", "a four patch quilt": a pattern, and no patch put on
    const spaced = dash?.w === '-' ? next : dash;
    if (isNumberWord(t.w) && spaced?.w === 'patch' && (dash?.w === '-' || patternAfter(tokens[i + 2]))) {
      out.push({ ...t, w: `${t.w}-patch`, to: spaced.to });
      i = tokens.indexOf(spaced, i);
      continue;
    }
    // "a three-cornered tear": no number of tears
    if (
      isNumberWord(t.w) &&
      dash?.w === '-' &&
      dash.glued &&
      /^(cornered|sided|pointed|pronged|legged|stranded)$/.test(next?.w ?? '')
    ) {
      out.push({ ...t, w: `${t.w}-${next!.w}`, to: next!.to });
      i += 2;
      continue;
    }
    // "a rusty sort of mark", "some kind of stain": a word of doubt only
    if (
      (t.w === 'sort' || t.w === 'kind') &&
      dash?.w === 'of' &&
      out.length &&
      !KIND_MEANT.test(out.at(-1)!.w)
    ) {
      i += 1;
      continue;
    }
    // A hyphen inside a compound is no boundary: drop it, keep the words glued.
    if (
      t.w === '-' &&
      t.glued &&
      dash?.glued &&
      dash.kind === 'word' &&
      out.at(-1)?.kind === 'word' &&
      !isNumberWord(out.at(-1)!.w)
    )
      continue;
    out.push(t);
  }
  return out;
}

const patternAfter = (token: Token | undefined): boolean =>
  /^(quilt|block|blocks|pattern|top|design)$/.test(token?.w ?? '');
/** Before "sort of" these ask for or tell a kind. */
const KIND_MEANT =
  /^(what|which|the|this|that|these|those|same|other|new|different|every|any|each|no|right|wrong|best|one|two|i|is|was|feel|feels|looks|it|'s|[^a-z].*)$/;

const NUMBER_WORDS = new Set([...COUNT_WORDS.slice(1), ...TEN_WORDS]);
const isNumberWord = (w: string): boolean => NUMBER_WORDS.has(w);
