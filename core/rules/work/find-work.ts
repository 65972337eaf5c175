import type { Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';

/** The task named in a clause. */
export function taskIn(items: Item[]): { task: Task; item: Item } | undefined {
  const candidates = items.filter((x) => x.task);
  if (!candidates.length) return undefined;
  const led = candidates.find((x) => {
    const k = items.indexOf(x);
    const before = items.slice(Math.max(0, k - 3), k).map((y) => y.w);
    return before.some((b) =>
      /^(on|the|of|started|starting|began|beginning|start|stopped|quit|finished|with|at|in|done|for|to|into|doing|did|spent|back)$/.test(
        b,
      ),
    );
  });
  const chosen = led ?? candidates[0]!;
  return { task: chosen.task!, item: chosen };
}

/** Is the length at `k` a break? */
export function isBreak(sentence: Item[], k: number): boolean {
  const item = sentence[k];
  if (!item || !(item.duration || (item.quantity?.value !== undefined && !item.quantity.unit))) return false;
  const before = ` ${sentence
    .slice(Math.max(0, k - 5), k)
    .map((x) => x.w)
    .join(' ')} `;
  const after = ` ${sentence
    .slice(k + 1, k + 8)
    .map((x) => x.w)
    .join(' ')} `;
  if (
    / (less|minus|without|excluding|barring|(?:take|taking|took|knock|knocking|leave|leaving|left) (?:off|out|away)|subtract(?:ing)?|deduct(?:ing)?|off for|lost|except|except for|not counting|bar|apart from|allowing|deduct|-|--) (about |a |an |the |some |for |my )?$/.test(
      before,
    )
  )
    return true;
  // "coffee 10", "lunch 30", but "lunch 12 to 1"
  if (
    !item.duration &&
    !/^ (?:to|till|until|til|-) \S*\d/.test(after) &&
    / (coffee|tea|lunch|phone|break|dinner|supper|smoko|brew|cuppa) (of |for |was |about )?$/.test(before)
  )
    return true;
  // "with 15 off for the phone"
  if (
    !item.duration &&
    item.quantity!.value! >= 5 &&
    / (with|less|minus|took|and) (about |maybe )?$/.test(before) &&
    /^ (off|out|break|pause|interval|rest|for (my |the |a |some )?(lunch|tea|supper|dinner|break|coffee|phone|telephone|dog|door))\b/.test(
      after,
    )
  )
    return true;
  // "14:00-16:20, 10 off"
  if (
    !item.duration &&
    item.quantity!.value! >= 5 &&
    / [,(] (?:about |maybe )?$/.test(before) &&
    // "18:40 to now, 10 out for tea", "2 to 4, fifteen of that on the phone"
    /^ (?:(?:off|out|away|break|pause|interval|rest|gap|tea|lunch|supper|dinner|coffee|cuppa|brew|smoko|phone|dog)(?: break)? (?:$|[).,;]|for |at |to )|for (?:my |the |a |some )?(?:lunch|tea|supper|dinner|break|coffee|phone|telephone|dog|door|post|brew|cuppa) |of (?:that|it|them|those) (?:on|at|for|off|was|were|went|lost) )/.test(
      after,
    ) &&
    sentence.slice(0, k).some((x) => x.span || x.clock)
  )
    return true;
  // "lunch 12 to 1": from when till when, and no length
  if (tookAway(sentence, k, before, after)) return true;
  if (!item.duration) return false;
  // "stopping twice for ten minutes"
  if (
    / (?:stopped|stopping|stops?|paused|pausing|broke|breaking) (?:once|twice) (?:for )?(?:about |a )?$/.test(
      before,
    )
  )
    return true;
  if (restedWithin(sentence, k, after) || /^ breaks /.test(after)) return true;
  // "that was twenty minutes gone": the work's own
  if (
    /^ gone /.test(after) &&
    / (?:that|it|there) (?:was|is|'s|went) (?:about |a good |another )?$/.test(before)
  )
    return false;
  if (
    /^ (off|out|away|break|lunch|tea|smoko|brew|cuppa|dinner|supper|pause|rest|stop|breather|lost|wasted|interrupted|for (my |the |a |some )?(lunch|tea|supper|dinner|break|coffee|cuppa|phone|telephone|walk|dog|cat|post|mail|smoke|brew|children|kids|baby|school run)|on the (phone|telephone)|at the door|gone|of (that|it|which) (was|went|for|on|off|lost|spent)|phone|interruption|nap|coffee|feeding)\b/.test(
      after,
    )
  )
    return true;
  if (
    / (with|and|took) (about |a |an )?$/.test(before) &&
    /^ .{0,12}\b(off|out|break|lunch|tea|supper|dinner|phone|coffee|door|dog|rest|smoko|cuppa)\b/.test(after)
  )
    return true;
  // "stopped half an hour to eat"
  if (
    / (?:stopped|paused|broke off) (?:about |a good )?$/.test(before) &&
    /^ (?:to|for|in the middle|halfway) /.test(after)
  )
    return true;
  return / (breaks?|lunch|tea|supper|dinner|smoko|stopped for|out for|paused|pause|rest|stop|walk|nap|interruption|nod off|nodded off|dozed off|asleep) (of|for)? ?(about |a |an )?$/.test(
    before,
  );
}

const MEALS =
  '(?:lunch|tea|supper|dinner|breakfast|break|coffee|phone|telephone|dog|cat|door|post|postman|brew|cuppa|neighbou?r|parcel)';
const TAKEN =
  / (?:having |has |had )?(?:taken|eaten|swallowed|cost|lost|stolen|pinched|took|ate|eating|taking|robbed|robbing|relieved|relieving) (?:up |me of |us of |me |us )?(?:about |a good |another )?$/;
const OFF_FOR = new RegExp(
  `^ (?:off|out|away) (?:$|[,.;)]|(?:for|on|at|with) (?:the |my |a |some )?${MEALS}\\b)`,
);
const OF_IT = new RegExp(`^ (?:for|of|on) (?:the |my |a |some )?${MEALS}\\b`);

/** "the cat having taken 15 of it", "of which twenty was the neighbour", "knock off 20 for tea", "incl. 20 for tea": a break told some other way, behind a stretch. */
function tookAway(sentence: Item[], k: number, before: string, after: string): boolean {
  const { duration, quantity } = sentence[k]!;
  if (!duration && (quantity!.value! < 5 || quantity!.value! > 90)) return false;
  if (!sentence.slice(0, k).some((x) => x.span || x.clock)) return false;
  // "of which twenty was the neighbour"
  if (
    / of (?:which|that|it) (?:about |a good |some )?$/.test(before) &&
    /^ (?:was|were|went|goes|is) (?:the |on |for |to |lost |spent |a |my |with )/.test(after)
  )
    return true;
  if (
    / (?:knock|knocking|take|taking|call) (?:off )?(?:about |a )?$/.test(before) &&
    (OFF_FOR.test(after) || OF_IT.test(after))
  )
    return true;
  if (
    / (?:incl|including|includes|inc|counting) (?:about |a )?$/.test(before) &&
    (OF_IT.test(after) || / (?:break|off|out) /.test(after))
  )
    return true;
  return (
    TAKEN.test(before) && (/^ (?:of|out of|from) (?:it|that|them|this) /.test(after) || RESTING.test(before))
  );
}

const RESTING =
  / (sandwich|ate|eat|eating|bite|meal|lunch|dinner|tea|supper|breakfast|snack|nap|napped|napping|dozed|dozing|rested|rest|resting|phone|telephone|call|calling|chat|chatted|chatting|gossip|gossiping|neighbou?r|postman|parcel|delivery|doorbell|visitors?|caller|door|dog|cat|walk|walking|stopped|paused|break|coffee|cuppa|cup|brew|smoke|post|news|kettle|baby|children|kids|looking out|ewes?|lambs?|hens?|chickens?|cows?|calf|goats?|sheep|horses?|pony|pigs?|milking|feeding|school run|gate|priest|vicar|doctor|vet|plumber|meter man|bin men|hoover|washing machine|oven|pot|stove|fire|boiler) /;

/** "I sat down to a sandwich for twenty minutes of that", "…, of which forty minutes was the neighbour calling": part of the stretch, and not spent at it. */
function restedWithin(sentence: Item[], k: number, after: string): boolean {
  // "and there was a half hour in there for the baby"
  const partOfIt =
    /^ (?:of|out of|from) (?:that|it|this|which|those)\b/.test(after) ||
    /^ in (?:there|it|that|the middle|between|the midst|among)(?: of it)?(?: somewhere)? (?:for|with|on|at|to) /.test(
      after,
    );
  const ofWhich = / of (?:which|that|it) (?:about |a good |some )?$/.test(
    ` ${sentence
      .slice(Math.max(0, k - 4), k)
      .map((x) => x.w)
      .join(' ')} `,
  );
  if (!partOfIt && !ofWhich) return false;
  const around = sentence.slice(Math.max(0, k - (ofWhich ? 0 : 9)), k + 9);
  return (
    RESTING.test(` ${around.map((x) => x.w).join(' ')} `) &&
    !sentence.slice(k + 1, k + 7).some((x) => x.task || x.action)
  );
}
