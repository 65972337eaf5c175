import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { STORES } from '../stores.ts';
import { firstWord, isOfBlock } from './cue-at.ts';

/** Units of what is used up whole; of cloth by the yard a piece may be gone from the quilt itself. */
const WOUND = /^(?:spool|skein|ball|pack|roll)$/;
const TO_BE = new Set(['is', "'s", 'are', 'was', 'were']);
/** What use a word after the goods gives them. */
export function postUse(items: Item[]): { use: MaterialUse; at: number; end: number } | undefined {
  for (let k = 1; k < items.length; k++) {
    const two = `${w(items, k)} ${w(items, k + 1)}`;
    // "every gingham block to get net over it" says what the blocks shall have
    // "both tartan ones to get iron-on interfacing", "2-3 to get net"
    const blocks =
      items[k - 1]?.place?.kind === 'blocks' || /(?:^| )(?:ones?|blocks?|squares?)$/.test(w(items, k - 1));
    const has = two === 'to get' && (blocks || /^(?:an?|the|some|new|its|their|net)$/.test(w(items, k + 2)));
    if (/^to (buy|get|order|fetch)$/.test(two) && !items[k + 2]?.place && !has)
      return { use: 'needed', at: k, end: k + 2 };
    // "one spool must be bought", "a yard of net will have to be got"
    if (w(items, k) === 'be' && /^(bought|ordered|purchased|got|fetched)$/.test(w(items, k + 1))) {
      let at = k;
      while (
        /^(to|must|should|will|'ll|needs?|wants?|has|have|ought|still|also|only)$/.test(w(items, at - 1))
      )
        at--;
      if (at < k) return { use: 'needed', at, end: k + 2 };
    }
    // "thread and interfacing, that's what I'm short of"
    const short =
      w(items, k) === 'that' &&
      / (?:that (?:'s|is) (?:all |just )?(?:what )?(?:i|we) (?:'m short of|'m out of|need|still need|have to get|'ve to get|want)|that (?:'s|is) (?:still )?(?:to (?:buy|get)|wanted|needed)) $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (short && !items.slice(0, k).some((x) => x.action && !x.material))
      return { use: 'needed', at: w(items, k - 1) === ',' ? k - 1 : k, end: items.length };
    // "three quarters of a yard of star print, that's what's left of it"
    const rest =
      w(items, k) === 'that' &&
      / (?:that|which) (?:'s|is) (?:all |just )?(?:(?:what|that) (?:'s|is) left|(?:what )?(?:i|we) (?:have|'ve got|have got)(?: left)?)(?: over)?(?: of (?:it|that|them))? $/.test(
        wordsBetween(items, k, items.length),
      );
    if (rest && items.slice(0, k).some((x) => x.quantity?.unit))
      return { use: 'on-hand', at: w(items, k - 1) === ',' ? k - 1 : k, end: items.length };
    // "the batting arrived, queen size", "the net came in the post"
    if (
      (/^(arrived|delivered)$/.test(w(items, k)) ||
        / (?:turned up|came in the (?:post|mail)|came (?:today|this morning|yesterday)) /.test(
          wordsBetween(items, k, k + 4),
        )) &&
      items.slice(0, k).some((x) => x.material || x.fabric) &&
      !items.some((x) => x.finding || x.place?.kind === 'blocks')
    )
      return { use: 'bought', at: k, end: k + 1 };
    // "the net's come, half a metre", "the thread is here"
    if (
      / (?:has|have|'s|is|are|'ve)(?: now| finally| all)* (?:come|here|arrived|been delivered)(?: now| today| at last| in the post)* (?:$|[,.;:]) ?/.test(
        wordsBetween(items, k, k + 6),
      ) &&
      /^(?:has|have|'s|is|are|'ve)$/.test(w(items, k)) &&
      items[k - 1]?.material &&
      !items.some((x) => x.finding || x.place?.kind === 'blocks' || x.action?.form === 'past')
    ) {
      const end = items.findIndex((x, m) => m > k && /^(?:come|here|arrived|delivered)$/.test(x.w)) + 1;
      return { use: 'bought', at: k, end };
    }
    if (two === 'on order') return { use: 'bought', at: k, end: k + 2 };
    if (/^(bought|ordered|purchased|bt|bght)$/.test(w(items, k))) return { use: 'bought', at: k, end: k + 1 };
    if (/^(wanted|required|needed)$/.test(w(items, k))) return { use: 'needed', at: k, end: k + 1 };
    // "muslin in the drawer", "1 roll wadding in cupboard", "1.1 m of it in the trunk"
    const store = /^(in|on)$/.test(w(items, k))
      ? /^(the|my|a|our)$/.test(w(items, k + 1))
        ? k + 2
        : k + 1
      : 0;
    if (
      store &&
      STORES.test(w(items, store)) &&
      // "came off in my hand"
      w(items, store) !== 'hand' &&
      items.slice(0, k).some((x) => x.material || x.fabric || x.quantity?.unit)
    )
      return { use: 'on-hand', at: k, end: store + 1 };
    if (
      w(items, k) === 'left' &&
      !items[k]!.place &&
      !isOfBlock(items, k) &&
      (k === items.length - 1 ||
        (/^(?:from|over|yet|still|now|after)$/.test(w(items, k + 1)) &&
          items.slice(0, k).some((x) => x.quantity?.unit))) &&
      items.slice(0, k).some((x) => x.quantity?.unit || x.material)
    )
      return { use: 'on-hand', at: k, end: k + 1 };
    // the two that read on are asked only at their first words: else a long list is joined anew at each of its words
    const head = firstWord(w(items, k));
    // "pins I already have"
    const own =
      (head === 'i' || head === 'we') &&
      /^ (?:i|we) (?:already |still )?(?:have|own|'ve got|have got)(?: already| at home| here| plenty of| enough of)* $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (own && items[k - 1]?.material) return { use: 'on-hand', at: k, end: items.length };
    // "so that's eleven feet of new I need", "another two skeins I'll need"
    const wants =
      (head === 'i' || head === 'we') &&
      /^ (?:i|we) (?:(?:'ll|will|'m going to|shall|still) )*(?:need|want|be needing)(?: (?:still|now|then|yet|for it|for that|in all|altogether|all told))* $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (wants && (items[k - 1]?.quantity?.unit || /^(new|more|it|that)$/.test(w(items, k - 1))))
      return { use: 'needed', at: k, end: items.length };
    // "the thread 's running low"
    if (
      TO_BE.has(head) &&
      /^ (?:is|'s|are|was|were) (?:running|getting|nearly|almost|about) (?:low|short|out|done|finished|gone) /.test(
        wordsBetween(items, k, k + 3),
      )
    )
      return items.slice(0, k).some((x) => x.material) ? { use: 'needed', at: k, end: k + 3 } : undefined;
    // "the grey thread's all gone", "pins and net are on the list"
    const spent =
      /^ (?:(?:is|'s|are) )?(?:(?:all|both) )?(?:gone|finished|used up|run out|on (?:the|my) (?:shopping )?list|for the (?:shopping )?list)(?: now| too| as well| again)? $/.test(
        wordsBetween(items, k, items.length),
      );
    if (
      spent &&
      (/ list /.test(wordsBetween(items, k, items.length)) ||
        /^(?:is|'s|are) (?:all|both|finished|used|run)/.test(wordsBetween(items, k, k + 2).trim())) &&
      items[k - 1]?.material &&
      !items.some((x) => x.place?.kind === 'blocks' || x.seam || x.stitch)
    )
      return { use: 'needed', at: k, end: items.length };
    // "the last half metre of leaf green went into it"
    if (
      /^went (in|into)$/.test(two) &&
      !/^(behind|under|over|beneath|at|the|a)$/.test(w(items, k + 2)) &&
      items[k + 2]?.place?.kind !== 'blocks' &&
      items.slice(Math.max(0, k - 5), k).some((x) => x.quantity?.unit && x.quantity.unit !== 'piece')
    )
      return { use: 'used', at: k, end: k + 2 };
    // "a whole reel of thread gone on that border"
    if (
      w(items, k) === 'gone' &&
      /^(on|into|in)$/.test(w(items, k + 1)) &&
      items[k - 1]?.material &&
      items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit && x.quantity.unit !== 'piece')
    )
      return { use: 'used', at: k, end: k + 1 };
    // "that's two spools of the grey thread gone", "one more spool of thread finished"
    if (
      /^(?:gone|finished|done)$/.test(w(items, k)) &&
      /^(?:|[.,;!]|and|so|but|now|already|today|tonight|too)$/.test(w(items, k + 1)) &&
      items[k - 1]?.material &&
      !items.some((x) => x.place?.kind === 'blocks' || x.seam) &&
      items
        .slice(Math.max(0, k - 5), k)
        .some((x) => x.quantity?.unit && WOUND.test(x.quantity.unit) && !x.place)
    )
      return { use: 'used', at: k, end: k + 1 };
    // "1 roll of batting here already"
    if (
      /^ (?:(?:is|'s|are) )?(?:already (?:here|there|at home|upstairs|in the house|bought)|(?:here|there|at home|upstairs|in the house) already) (?:$|[.,;])/.test(
        wordsBetween(items, k, k + 6),
      ) &&
      (items[k - 1]?.material || items[k - 1]?.fabric) &&
      items.slice(0, k).some((x) => x.quantity?.unit)
    ) {
      const end = items.findIndex((x, m) => m > k && /^[.,;]$/.test(x.w));
      return { use: 'on-hand', at: k, end: end < 0 ? items.length : end };
    }
    // "1 roll wadding in already"
    if (
      /^ (?:is |'s |are )?in already $/.test(wordsBetween(items, k, items.length)) &&
      items.slice(0, k).some((x) => x.material)
    )
      return { use: 'on-hand', at: k, end: items.length };
    // "two skeins that took"
    if (
      /^ (?:that|it|this|the lot) took(?: me)? $/.test(wordsBetween(items, k, items.length)) &&
      items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit)
    )
      return { use: 'used', at: k, end: items.length };
    if (/^(in stock|on hand|left over|to hand|in store|put by|laid by|put away|put aside)$/.test(two))
      return { use: 'on-hand', at: k, end: k + 2 };
    if (
      /^(used|gone)$/.test(w(items, k)) &&
      (w(items, k) === 'used' || items[k - 1]?.quantity?.unit) &&
      (k === items.length - 1 ||
        (/^(on|for|in|up|so|now|already|today|tonight|,|and)$/.test(w(items, k + 1)) &&
          items.slice(0, k).some((x) => x.quantity?.unit)))
    )
      return { use: 'used', at: k, end: k + 1 };
  }
  return undefined;
}
