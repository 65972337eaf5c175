import { COLOURS } from '../../lexicon/colours.ts';
import type { Token } from '../../text/tokenise.ts';
import { sensesAt } from './senses-at.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { isSmallNumber } from './small-number-said.ts';

const BE =
  /^(?:is|are|'s|'re|has|had|was|were|'ve|have|will|'ll|'d|needs|need|wants|want|came|comes|come|goes|went|gets|got|looks|look|smells|took|takes|can|must|stays|stay|gave|gives|did|do|does|says|said|ran|sits)$/;
/** A clause that begins with one of these goes on behind its comma. */
const SUBORDINATE =
  /^(?:when|if|once|after|before|while|since|as|because|although|though|with|for|until|till|unless|where|whether|from|at|by|that|which|who|what|how|like|without|having|being|seeing|to)$/;

/** Where the statement that the comma at the end of `before` is in began. */
function statementOf(before: readonly Token[]): readonly Token[] {
  let from = before.length;
  while (from > 0 && !/^(?:\.|;|:|\?|!|\n)$/.test(before[from - 1]!.w)) from--;
  return before.slice(from);
}

/** "open, tie or quilt, price": what the list that follows is of. */
const HEADS = new Set([
  'open',
  'still open',
  'settled',
  'undecided',
  'still undecided',
  'not decided',
  'not decided yet',
  'not settled yet',
  'still to be settled',
  'to be settled',
  'decided',
  'to do',
  'still to do',
  'to buy',
  'remaining',
  'also open',
]);
const LONGEST_HEAD = 4;

/**
 * The recogniser writes a comma where she ended a sentence or named what a list is of. Behind it begins a new statement where
 * somebody or something is named and told of, or a block with what was found or done there.
 */
const stopHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (t.w !== ',' || !before.length) return undefined;
  const said = statementOf(before);
  if (said.length <= LONGEST_HEAD && HEADS.has(said.map(({ w }) => w).join(' '))) return readAs(t, ':');
  // "how to treat the row is not decided, either net over it or silk behind": told, and not asked
  if (
    /^(?:how|where|which|what|whether)$/.test(said[0]?.w ?? '') &&
    /^(?:decided|settled|open|undecided)$/.test(said.at(-1)?.w ?? '')
  )
    return readAs(t, ':');
  // "hang on, the alarm's going": nothing has been told that could end
  if (!said.some((_, k) => tells(said, k))) return undefined;
  const first = said[0]?.w ?? '';
  return !(SUBORDINATE.test(first) && !said.some(({ w }) => w === ',')) &&
    beginsStatement(tokens, i + 1, before)
    ? readAs(t, '.')
    : undefined;
};

function beginsStatement(tokens: readonly Token[], i: number, before: readonly Token[]): boolean {
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  if (/^(?:i|we|she|he|they)$/.test(w(0)))
    return /^(?:'ve|have|had|'ll|will)$/.test(w(1)) ? tells(tokens, i + 2) : tells(tokens, i + 1);
  // "3-1 small tear", "row four smells", but "3-1, 3-2 and 4-4 torn"
  const place = placeNext(tokens, i);
  if (place) {
    const last = before.at(-1);
    if (last?.kind === 'number' || isSmallNumber(last)) return false;
    return BE.test(tokens[place]?.w ?? '') || tells(tokens, place) || tells(tokens, place + 1);
  }
  if (/^(?:the|my|our|her|his|every|all|both)$/.test(w(0))) {
    for (let k = 1; k <= 7; k++) {
      if (!w(k) || tokens[i + k]!.kind === 'mark' || /^(?:and|or|which|that|who|where|to|for)$/.test(w(k)))
        return false;
      if (
        k > 1 &&
        /^(?:is|are|'s|has|had|was|were|have|will|needs|wants|goes|went|gets|got|came|looks|smells|stays)$/.test(
          w(k),
        )
      )
        return true;
    }
  }
  return false;
}

/** The index behind a block's name or a line's. */
function placeNext(tokens: readonly Token[], i: number): number | undefined {
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  if (tokens[i]?.kind === 'number' && w(1) === '-' && tokens[i + 2]?.kind === 'number') return i + 3;
  if (isSmallNumber(tokens[i]) && isSmallNumber(tokens[i + 1])) return i + 2;
  if (isSmallNumber(tokens[i]) && w(1) === ',' && isSmallNumber(tokens[i + 2])) return i + 3;
  if (
    /^(?:row|column|col|block|r)$/.test(w(0)) &&
    (isSmallNumber(tokens[i + 1]) || tokens[i + 1]?.kind === 'number')
  )
    return i + 2;
  return undefined;
}
const tells = (tokens: readonly Token[], i: number): boolean =>
  sensesAt(tokens, i).some((s) => s.k === 'finding' || s.k === 'fail' || s.k === 'action') ||
  /^(?:same|ditto|likewise)$/.test(tokens[i]?.w ?? '');

const mark = (like: Token, w: string): Token => ({
  ...like,
  kind: 'mark',
  w,
  to: like.from,
  glued: true,
  value: undefined,
});

/** "still open whether I tie it", "not decided yet tie it or quilt it": the colon that was not heard */
const colonLost: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (t.kind === 'mark' || before.length < 2 || before.length > LONGEST_HEAD) return undefined;
  if (!HEADS.has(before.map(({ w }) => w).join(' '))) return undefined;
  if (/^(?:on|about|yet|if|by|for|with|and|is|or|in|at)$/.test(t.w)) return undefined;
  return { tokens: [mark(t, ':'), t], took: 1 };
};

/** "open, wadding weight, thread, settled, cold wash only": a second list, of what is settled */
const secondHead: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (
    t.w !== ',' ||
    !/^(?:settled|open|decided|undecided)$/.test(tokens[i + 1]?.w ?? '') ||
    tokens[i + 2]?.w !== ','
  )
    return undefined;
  const first = before[0]?.w === 'still' ? before[1]?.w : before[0]?.w;
  if (!/^(?:open|settled|undecided|decided)$/.test(first ?? '') || first === tokens[i + 1]!.w)
    return undefined;
  return {
    tokens: [{ ...t, w: '.' }, tokens[i + 1]!, { ...tokens[i + 2]!, w: ':' }],
    took: 3,
  };
};

/** "right that's settled it gets tied": the comma that was not heard */
const settledThen: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const three = before
    .slice(-3)
    .map(({ w }) => w)
    .join(' ');
  return /^(?:it|we|i|she|he|the|they)$/.test(t.w) &&
    /^(?:that 's|it 's) (?:settled|decided|final)$/.test(three)
    ? { tokens: [mark(t, ','), t], took: 1 }
    : undefined;
};

/** "running stitch grey thread 25 min", "ladder stitch 7.30 to 9 pm": how it was sewn ends there */
const afterStitch: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (t.kind === 'mark' || !/^(?:stitch|backstitch|whipstitch|zigzag)$/.test(before.at(-1)?.w ?? ''))
    return undefined;
  const thread =
    [1, 2, 3].some((k) => /^(?:thread|silk|floss)$/.test(tokens[i + k]?.w ?? '')) &&
    (COLOURS.has(t.w) || /^(?:linen|cotton)$/.test(t.w));
  const hours = /^\d{1,2}[.:][0-5]\d$/.test(t.w) && /^(?:to|till|until|-)$/.test(tokens[i + 1]?.w ?? '');
  return thread || hours ? { tokens: [mark(t, ','), t], took: 1 } : undefined;
};

/** "backing sound no holes" */
const soundNo: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'no' &&
  before.length > 0 &&
  sensesAt(before, before.length - 1).some((s) => s.k === 'finding') &&
  sensesAt(tokens, i + 1).some((s) => s.k === 'finding')
    ? { tokens: [mark(tokens[i]!, ','), tokens[i]!], took: 1 }
    : undefined;

export const STOPS_HEARD: readonly SlipRule[] = [
  secondHead,
  stopHeard,
  colonLost,
  settledThen,
  afterStitch,
  soundNo,
];
