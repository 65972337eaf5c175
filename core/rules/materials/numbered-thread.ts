import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';

export const THREAD_NUMBER = /^(?:number|size|no|nr)$/;

/** "number fifty cotton", "no. 40 thread", "size 12 perle", "50 weight cotton", "50wt thread": the number tells which thread. Where it ends. */
export function numberedThread(tokens: Token[], i: number): number | undefined {
  const led = THREAD_NUMBER.test(tokens[i]!.w);
  let k = led ? i + 1 : i;
  if (led && tokens[k]?.w === '.') k++;
  const count = readCount(tokens, k);
  if (!count) return undefined;
  k = count.next;
  const weight = /^(?:weight|wt)$/.test(tokens[k]?.w ?? '');
  if (weight) k++;
  if (!led && !weight) return undefined;
  if (
    /^(?:pearl|perle|silk|linen|quilting|sewing)$/.test(tokens[k]?.w ?? '') &&
    /^(?:cotton|thread)$/.test(tokens[k + 1]?.w ?? '')
  )
    k++;
  return /^(?:cotton|thread|linen|silk|perle|pearl)$/.test(tokens[k]?.w ?? '') ? k + 1 : undefined;
}
