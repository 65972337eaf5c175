import type { QuiltGrid } from '../../../shared/quilt.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Token } from '../../text/tokenise.ts';

const PRICED_BEFORE = /^(?:for|at|paid|pay|spent|cost|costs|was|@|=|price|total|came to|to)$/;
const PRICED_AFTER = /^(?:each|ea|per|a|the|all|total|altogether|\/|for|p|pm|apiece)$/;
const BUYS = /^(?:bought|paid|spent|cost|costs|price|prices|shopping)$/;
/** So near before a price stands what it is for, with its amount. */
const NEAR = 7;

/**
 * "3.5 m calico R62/m, pack of pins R45": rands, written with an R that elsewhere stands for a row. Only a number that is no row of
 * this quilt, beside goods or words of paying, tells so; then the others of the note that stand like it are prices too.
 */
export function withRands(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => t.w === 'r')) return tokens;
  const buying = tokens.some((t) => BUYS.test(t.w));
  const beside = (k: number): boolean =>
    isSum(tokens, k) && (isPriced(tokens, k) || (buying && tokens[k + 1]!.value! > grid.rows));
  if (!tokens.some((_t, k) => beside(k) && tokens[k + 1]!.value! > grid.rows)) return tokens;
  return tokens.map((t, k) => (beside(k) ? { ...t, w: 'zar' } : t));
}

const isSum = (tokens: Token[], k: number): boolean => {
  const number = tokens[k + 1];
  return (
    tokens[k]!.w === 'r' &&
    number?.kind === 'number' &&
    number.glued &&
    // "R12 b3" is a row, whatever rows there are
    !/^(?:b|block|blk|c|col)$/.test(tokens[k + 2]?.w ?? '')
  );
};

function isPriced(tokens: Token[], k: number): boolean {
  if (PRICED_BEFORE.test(tokens[k - 1]?.w ?? '')) return true;
  if (tokens[k + 2]?.w === '/' && tokens[k + 3]?.kind === 'word') return true;
  const before = tokens.slice(Math.max(0, k - NEAR), k);
  const counted = before.some((t) => Object.hasOwn(UNIT_WORDS, t.w));
  return counted || (PRICED_AFTER.test(tokens[k + 2]?.w ?? '') && tokens[k + 2]!.w !== 'the');
}
