import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { placesOf, put, type Standing } from '../standing.ts';

/** Sounds and words of mending, before it. */
const LEAD =
  /^(?:oh|no|ah|sorry|wait|a|one|small|correction|actually|hang|hold|on|i|tell|lie|well|and|but|my|mistake|um|uh|er|so|[,.:;-]|--)$/;
/** How what was told of the block is named again: "that had the hole", "got the new piece". */
const TELLS_AGAIN = /^(?:that|which|who|had|has|got|is|was|'s|i|we|with|where|needed|wanted)$/;
/** "4-1 is right as I said it", "the rest stands": what was told otherwise holds. */
const HOLDS =
  /^ (?:(?:is|was|'s|are|were) (?:all )?(?:right|correct|as i (?:said|told|put|had)|ok as)|stands|holds|stays)(?: (?:as|what|where|how|i|said|told|put|had|it|that|you|then|too|though|is|was|before))* (?:[.!] )*$/;
const MOST_WORDS = 16;

type Named = { block: string; next: number };

/** "2-3", "two three", "row two block three" at `k`. */
function blockAt(tokens: Token[], k: number, { grid }: ReaderState): Named | undefined {
  const at = /^(?:row|block)$/.test(w(tokens, k)) ? k + 1 : k;
  const row = readCount(tokens, at);
  if (!row) return undefined;
  let next = row.next;
  while (/^(?:-|,|block|\/)$/.test(w(tokens, next)) && next < row.next + 2) next++;
  const block = readCount(tokens, next);
  return block && row.value >= 1 && row.value <= grid.rows && block.value >= 1 && block.value <= grid.blocks
    ? { block: `${row.value}-${block.value}`, next: block.next }
    : undefined;
}

/** The block that it was and the one that it was not, where the note says nothing else. */
function contrast(state: ReaderState): { right: string; wrong: string } | undefined {
  const { tokens } = state;
  let at = 0;
  while (LEAD.test(w(tokens, at)) && at < 10) at++;
  const cleft = /^(?:it|that)$/.test(w(tokens, at)) && /^(?:was|is|'s)$/.test(w(tokens, at + 1));
  if (cleft) at += 2;
  while (/^(?:really|actually|in|on|only)$/.test(w(tokens, at))) at++;
  // "not 2-2, 1-2. 4-1 is right"
  if (w(tokens, at) === 'not') {
    const first = blockAt(tokens, at + 1, state);
    let then = first?.next ?? 0;
    while (first && /^(?:[,.]|but|it|was|'s)$/.test(w(tokens, then))) then++;
    const last = first && then > first.next ? blockAt(tokens, then, state) : undefined;
    return first && last && endsThere(state, last.next)
      ? { right: last.block, wrong: first.block }
      : undefined;
  }
  const right = blockAt(tokens, at, state);
  if (!right) return undefined;
  const not = tokens.findIndex((t, k) => k >= right.next && t.w === 'not');
  if (not < 0 || not - right.next > MOST_WORDS) return undefined;
  const told = tokens.slice(right.next, not).filter((t) => t.w !== ',');
  // "3-2 had the hole, not 2-3"; without a word of it there is the bare "it was 3-2, not 2-3"
  if (told.length ? !TELLS_AGAIN.test(told[0]!.w) : !cleft) return undefined;
  if (
    tokens
      .slice(right.next, not)
      .some((t, k) => t.kind === 'number' || blockAt(tokens, right.next + k, state))
  )
    return undefined;
  const wrong = blockAt(tokens, /^(?:in|on)$/.test(w(tokens, not + 1)) ? not + 2 : not + 1, state);
  return wrong && endsThere(state, wrong.next) ? { right: right.block, wrong: wrong.block } : undefined;
}

/** Nothing more, the thing told again, or that what was told of another block holds. */
function endsThere(state: ReaderState, from: number): boolean {
  const { tokens } = state;
  let at = from;
  if (TELLS_AGAIN.test(w(tokens, at)))
    while (tokens[at] && !/^[,.;!]$/.test(w(tokens, at)) && at - from < MOST_WORDS) at++;
  while (/^(?:[,.;!]|and|but|--|sorry)$/.test(w(tokens, at))) at++;
  if (!tokens[at]) return true;
  const other = blockAt(tokens, at, state);
  const rest = tokens.slice(other?.next ?? at).map((t) => t.w);
  if (!other) while (/^(?:the|rest|other|others|one|everything|else)$/.test(rest[0] ?? '')) rest.shift();
  return HOLDS.test(` ${rest.join(' ')} `);
}

/**
 * "it was 1-2 that was shattered and got the new piece, not 2-2. 4-1 is right": the one block stands wherever the other one was told.
 * Where several things were found at that block, what is named again is all that moves.
 */
export function itWasThis(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  const found = contrast(state);
  if (!found) return false;
  const { right, wrong } = found;
  const held = standing.filter(({ was }) => placesOf(was).includes(wrong));
  if (!held.length || standing.some(({ was }) => placesOf(was).includes(right))) return false;
  const findings = new Set(items.flatMap((x) => (x.finding ? [x.finding] : [])));
  const conditions = held.filter(({ was }) => was.kind === 'condition');
  const isNamed = ({ was }: Standing): boolean => was.kind === 'condition' && findings.has(was.finding);
  // "it was 1-2 that was torn", where a stain stood: news of 1-2, and no mend
  if (findings.size && !conditions.some(isNamed)) return false;
  const moved = findings.size && !conditions.every(isNamed) ? conditions.filter(isNamed) : held;
  for (const s of moved)
    put(
      s.draft,
      'places',
      placesOf(s.was).map((p) => (p === wrong ? right : p)),
      'amend.it-was-this',
      [],
    );
  return true;
}

/** "it's the other turkey red one that's bled", "it was the one below that had the hole". */
const CLEFT =
  / (?:it|that) (?:was|is|'s) (?:actually |really )?(?:the|that|in the|on the) (?:\S+ ){1,12}?(?:that|which) (?:was|is|'s|has|had|have|got|needed) /;

/** What was found is told again as found elsewhere, pointed at and not named by row and block: it is there, and not where it was told. */
export function itIsThatOne(state: ReaderState, standing: Standing[], words: string): boolean {
  if (!CLEFT.test(words) || / (?:too|also|as well|another|now|and) /.test(words)) return false;
  const found = state.drafts;
  const stood = found.map(({ entry: e }) =>
    e.kind === 'condition' && placesOf(e).length
      ? standing.filter(
          ({ was }) => was.kind === 'condition' && was.finding === e.finding && placesOf(was).length > 0,
        )
      : [],
  );
  if (!found.length || stood.some((s) => s.length !== 1)) return false;
  if (found.some(({ entry: e }, k) => placesOf(e).some((p) => placesOf(stood[k]![0]!.was).includes(p))))
    return false;
  found.forEach((d, k) => {
    const { draft } = stood[k]![0]!;
    put(draft, 'places', [...placesOf(d.entry)], 'amend.it-was-this', []);
    if (d.entry.kind === 'condition' && draft.entry.kind === 'condition')
      put(draft, 'fabric', d.entry.fabric, 'amend.it-was-this', []);
  });
  return true;
}
