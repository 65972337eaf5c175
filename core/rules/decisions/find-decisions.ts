import type { DecisionStatus, Topic } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { looksUndecided } from '../mood.ts';
import type { ReaderState } from '../reader-state.ts';

export type DecisionFound = {
  about: Topic;
  status: DecisionStatus;
  item: Item | undefined;
  rule: string;
  claims: Item[];
  whole: boolean;
};

const OPEN =
  /\b(still open|open|undecided|tbd|not decided|n't decided|not settled|n't settled|to decide|not sure|up in the air|n't know|whether|or|which|what colou?r|to be decided|no decision|pending|unsettled|question|undetermined|wide open|can 't (decide|choose)|ca n't (decide|choose)|in two minds|y n|wondering|torn between|deciding|maybe)\b/;
const SETTLED =
  /\b(settled|decided|agreed|agreed on|final|fixed|it is|it 's going to be|will be|gets|going with|go with|goes with|chose|chosen|definitely|that 's that|for certain|fixed|confirmed|it 'll be|is to be|plumped|opted|made up my mind|happy with|said yes|ok with|okay with|done deal|deal|signed off|to have|has to be|must be|sticking with|stick with|only|i said|quoted|we said|wants it|then|going to be|is going to)\b/;

/**
 * Matters about how to finish, which cloth, the price and the date. Doing or not doing a named treatment at a place is a
 * treatment and is not taken here.
 */
export function findDecisions(
  items: Item[],
  words: string,
  sentence: string,
  asked: boolean,
  state: ReaderState,
): DecisionFound[] {
  const out: DecisionFound[] = [];
  const first = (pick: (x: Item) => boolean): Item | undefined => items.find(pick);
  const add = (
    about: Topic,
    status: DecisionStatus,
    item: Item | undefined,
    rule: string,
    whole: boolean,
  ): void => {
    if (out.some((d) => d.about === about)) return;
    out.push({ about, status, item, rule, claims: whole ? [...items] : item ? [item] : [], whole });
  };
  const hasBlock = items.some(
    (x) => x.place?.kind === 'blocks' || (x.place?.kind === 'pointer' && x.place.rule !== 'place.it'),
  );
  // A heading before a list: "open: …", "settled: …"
  const heading = headingOf(state, items, sentence);
  const undecided = looksUndecided(sentence) || asked || OPEN.test(words);
  // The price: an amount for the job
  const money = first((x) => x.cost !== undefined);
  if (
    /\b(whole job|for the job|the job|price|quote|quoted|fee|charge|charging|estimate|deposit|rate|hourly|an hour|per hour|all in|she 'll pay|he 'll pay|they 'll pay|to charge)\b/.test(
      words,
    ) &&
    !/\b(bought|paid for|cost me|spent|reels?|spools?|yards?|metres?)\b/.test(words) &&
    (money || /\b(price|fee|charge|quote|rate|deposit)\b/.test(words))
  ) {
    const open =
      /\b(not sure|n't know|undecided|open|what to charge|tbd|wondering|whether|how much to|not agreed|n't agreed|n't settled|not settled|to agree|still to)\b/.test(
        words,
      ) ||
      (asked && !/\bagreed\b/.test(words)) ||
      heading === 'open';
    add('price', open ? 'open' : 'settled', money, 'decision.price', !items.some((x) => x.duration));
    if (deadlineIn(words, items)) add('deadline', 'settled', undefined, 'decision.deadline', true);
    return out;
  }
  if (deadlineIn(words, items)) {
    const open = /\b(not sure|n't know|undecided|open|no date|n't said|tbd)\b/.test(words);
    add(
      'deadline',
      open ? 'open' : 'settled',
      items.find((x) => x.topic === 'deadline'),
      'decision.deadline',
      true,
    );
    return out;
  }
  if (heading && items.length <= 12) {
    const topic = topicOf(items, words);
    add(topic?.topic ?? 'other', heading, topic?.item, 'decision.heading', true);
    return out;
  }
  if (hasBlock) return out;
  // Colour or kind of a part
  const kindOf =
    /\b(colou?r|weight|loft|width|which|what|kind of|sort of|cotton or|wool or|or wool|or cotton|or poly\w*|pattern|design|thickness)\b/.test(
      words,
    );
  const topic = topicOf(items, words);
  const verbs = items.some(
    (x) =>
      x.action &&
      x.action.form === 'past' &&
      !/\b(gets?|be|it 's|to be|'ll be|being|getting)\b/.test(words) &&
      x.w !== 'left',
  );
  if (
    topic &&
    !verbs &&
    kindOf &&
    undecided &&
    !/\b(bought|need|buy|got)\b/.test(words) &&
    !items.some((x) => x.quantity?.unit)
  ) {
    add(
      topic.topic,
      SETTLED.test(words) &&
        !OPEN.test(words.replace(/\b(which|what colou?r|or)\b/g, '')) &&
        !asked &&
        !looksUndecided(words)
        ? 'settled'
        : 'open',
      topic.item,
      'decision.kind',
      true,
    );
    return out;
  }
  // Tie or quilt
  const tie = first(
    (x) => /^(tie|tied|tying|ties|knot|retie|tie it)$/.test(x.w) && !(x.material === 'thread'),
  );
  const quilt = first(
    (x) =>
      /^(quilt|quilted|quilting|requilt|hand quilt|hand quilting|hand quilted|machine quilting)$/.test(x.w) &&
      x.action !== undefined &&
      (x.w !== 'quilt' || /\b(or quilt|quilt it|to quilt|to hand quilt|not quilt)\b/.test(words)),
  );
  if (tie && quilt && undecided && !items.some((x) => x.place?.kind === 'blocks')) {
    const tieFirst = items.indexOf(tie) < items.indexOf(quilt);
    const settled =
      /\b(not quilted|not tied|settled|decided|final|it is|rather than|instead of)\b/.test(sentence) &&
      !/\b(n't|not) (decided|settled)\b/.test(sentence);
    add(
      tieFirst ? 'tying' : 'quilting',
      settled ? 'settled' : 'open',
      tieFirst ? tie : quilt,
      'decision.tie-or-quilt',
      true,
    );
    return out;
  }
  if (
    (tie ?? quilt) &&
    /\b(that 's final|settled|decided|it is|it gets|it 's getting|going to (tie|quilt|hand quilt)|gets|will be|'ll (tie|quilt)|definitely|final|made up my mind|not quilted|not tied|getting|going with|i 'm tying it|plumped)\b/.test(
      sentence,
    ) &&
    !items.some((x) => x.place?.kind === 'blocks' || x.span || x.clock || x.duration) &&
    !/\b(rows?|blocks?|tonight|tomorrow|now|started|next)\b/.test(words)
  ) {
    const chosen = /\bnot (quilt|quilted|quilting)\b/.test(sentence)
      ? 'tying'
      : /\bnot (tie|tied|tying)\b/.test(sentence)
        ? 'quilting'
        : tie && (!quilt || items.indexOf(tie) < items.indexOf(quilt))
          ? 'tying'
          : 'quilting';
    add(chosen, 'settled', tie ?? quilt, 'decision.way-to-finish', true);
    return out;
  }
  // "Cream wool for the ties", "cotton batting it is", "blue for the backing, settled"
  if (
    topic &&
    !verbs &&
    SETTLED.test(words) &&
    !items.some((x) => x.quantity?.unit || x.cost || x.clock || x.duration || x.finding) &&
    !/\b(bought|buy|need|needs|used|have|got|sewn|on now|off|out|stays?|cut|leave)\b/.test(words)
  ) {
    add(topic.topic, looksUndecided(words) ? 'open' : 'settled', topic.item, 'decision.settled', true);
    return out;
  }
  if (
    topic &&
    undecided &&
    !verbs &&
    !items.some((x) => x.action || x.quantity?.unit || x.cost || x.finding || x.duration) &&
    /\b(open|undecided|tbd|decide|decided|know|sure|mind|air|choose|whether|which|what|settled)\b/.test(words)
  ) {
    add(topic.topic, 'open', topic.item, 'decision.open', true);
    return out;
  }
  // "Cream wool for the ties" in a note that settles things
  const before = state.drafts.at(-1);
  if (
    before?.entry.kind === 'decision' &&
    before.entry.status === 'settled' &&
    !items.some((x) => x.cost || x.action || x.finding) &&
    /\bfor (the |my |its )?(ties|backing|back|binding|border|batting)\b/.test(words) &&
    !/\b(need|buy|bought)\b/.test(words)
  ) {
    const target = /\bfor (?:the |my |its )?(ties|backing|back|binding|border|batting)\b/.exec(words)![1]!;
    const about: Topic = target === 'ties' ? 'tie-thread' : target === 'back' ? 'backing' : (target as Topic);
    add(about, 'settled', topic?.item, 'decision.cloth-for', false);
  }
  return out;
}

function headingOf(state: ReaderState, items: Item[], _sentence: string): DecisionStatus | undefined {
  const first = state.clauses.find((c) => c.items === items);
  if (!first) return undefined;
  const index = state.clauses.indexOf(first);
  for (let k = index; k >= 0; k--) {
    const c = state.clauses[k]!;
    if (c.sentence !== first.sentence) return undefined;
    const head = c.items.map((x) => x.w).join(' ');
    const after = state.clauses[k + 1]?.joint;
    if (
      k < index &&
      after === ':' &&
      /^(still |and |also )*(open|undecided|tbd|to decide|not settled|unsettled|questions?)( (still|matters|questions))?$/.test(
        head,
      )
    )
      return 'open';
    if (
      k < index &&
      after === ':' &&
      /^(now |and |also )*(settled|decided|agreed|fixed)( (now|today))?$/.test(head)
    )
      return 'settled';
  }
  return undefined;
}

/** Is this a date for the work to be finished or handed back? */
export function deadlineIn(words: string, items: Item[]): boolean {
  if (/\b(deadline|due date|due back)\b/.test(words)) return true;
  if (items.some((x) => x.duration)) return false;
  const when =
    /\b(by|before|for|on) (the )?(\d|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|twent|thirt|end of|middle of|christmas|easter|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|monday|tuesday|wednesday|thursday|friday|saturday|sunday|her birthday|his birthday|the wedding|the fair|the show|the raffle|next|michaelmas|whitsun|thanksgiving|mother)/.test(
      words,
    ) ||
    /\b(\d{1,2} |\d{1,2}(st|nd|rd|th) |the .{2,14} of )?(january|february|march|april|may|june|july|august|september|october|november|december)( \w+)?\b/.test(
      words,
    );
  if (!when) return false;
  return (
    /\b(finish(ed)?|ready|done|back|due|needs? it|needed|wants? it|have it|collect(ed|ing)?|delivered|deliver|hand(ed)? over|hand it over|must be|has to be|got to be|returned|return|promised|complete|completed|hung|posted|in their hands|fetch(ing)?|pick(ing)? it up|wanted)\b/.test(
      words,
    ) && !/\b(washed|bought|cut|started|made (in|for|by)|will buy|shop)\b/.test(words)
  );
}

/** The matter named: the one that the words turn on. */
function topicOf(items: Item[], words: string): { topic: Topic; item: Item } | undefined {
  const candidates = items.filter((x) => x.topic);
  if (/\b(yarn|floss|pearl cotton|perle)\b/.test(words)) {
    const item = items.find((x) => x.material === 'tie-thread');
    if (item) return { topic: 'tie-thread', item };
  }
  if (/\bfor the ties\b|\bties? (colou?r|thread)\b/.test(words)) {
    const item = items.find((x) => x.w === 'ties' || x.w === 'tie') ?? items[0];
    if (item) return { topic: 'tie-thread', item };
  }
  if (!candidates.length) {
    const stuff = items.find(
      (x) => x.material && ['backing', 'batting', 'binding', 'thread', 'tie-thread'].includes(x.material),
    );
    return stuff ? { topic: stuff.material as Topic, item: stuff } : undefined;
  }
  const strong = candidates.find((x) => !['other', 'fabric'].includes(x.topic!)) ?? candidates[0]!;
  return { topic: strong.topic!, item: strong };
}
