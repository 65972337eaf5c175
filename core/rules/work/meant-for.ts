import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const MEANT =
  / (?:(?:'m|am|'re|are) (?:planning|hoping|meaning) to|going to|gonna|planning to|hoping to|plan to|plan on|hope to|i 'll|we 'll|will|intend to|want to) (?:also |just |then |probably |try to |try and )*(?:work|do|put in|put|spend|get in|get|have|give|sit down|go|squeeze in|be working|working) (?:(?!,|and|but|then|;|\.)\S+ ){0,7}$/;
/** "going to work on it tonight for an hour", "planning to do an hour on it", "will put in two hours tomorrow": time that is only meant. */
export const isMeantFor = (items: Item[], k: number): boolean => MEANT.test(wordsBetween(items, 0, k));
