import { type Item, makeItem } from '../item.ts';
import { KEEP } from '../treatments/leave-as-found.ts';
import { wordsBetween } from '../words-between.ts';
import { startOfSentence } from './joints.ts';

const YES =
  /^(?:yes|yep|yeah|yup|aye|definitely|certainly|absolutely|of course|go on then|why not|i think so|i should think so)$/;
const NO = /^(?:no|nope|nah|not)$/;
const LEADS =
  /^(?:so|and|well|now|right|ok|okay|but|then|um|do|does|shall|should|could|can|must|would|am|are|is|it|i|we|to|worth|need|going|really|,)$/;
/** "what about the border?", "and the backing?", "what do I do with 3-3?" */
const ABOUT =
  /^(?:(?:so|and|well|now|right|ok|okay|but|then|um|,) )*(?:(?:what|how) about |what (?:do|shall|should) i do (?:with|about) |what (?:becomes|happens) (?:of|with|to) )?(?:the |my |its )?$/;
const OPEN =
  /^(?:not|do|don't|no|undecided|tbd|dunno|idk|open|i|maybe|perhaps|probably|leaning|inclined|tempted|thinking|might|could|hmm?|leave that|whichever)$/;

/**
 * What she asks herself and answers in the same breath is settled: "should 2-2 be patched? yes", "wash it? no", "net or patch on
 * 2-2? net", "and the backing? calico". The question becomes the statement that it is answered with.
 */
export function answeredHerself(items: Item[]): Item[] {
  const k = items.findIndex((x) => x.w === '?');
  if (k < 1 || k === items.length - 1) return items;
  const from = startOfSentence(items, k);
  const rest = answeredHerself(items.slice(k + 1));
  // "…?!?": nothing stands before the mark
  const told =
    from < k && rest.length
      ? statementOf(items.slice(from, k), rest, items[k]!, items.slice(0, from))
      : undefined;
  return told ? [...items.slice(0, from), ...told] : [...items.slice(0, k + 1), ...rest];
}

function statementOf(asked: Item[], rest: Item[], mark: Item, before: Item[]): Item[] | undefined {
  const word = (w: string): Item =>
    makeItem(mark.i, mark.j, w, { ...mark.token, w, kind: /^\w/.test(w) ? 'word' : 'mark' });
  const deeds = asked.filter((x) => (x.action && !x.place) || KEEP.test(x.w));
  const first = rest[0]!;
  if (deeds.length === 1 && deeds[0]!.action?.form !== 'ing' && (YES.test(first.w) || NO.test(first.w))) {
    // "not sure", "no idea"
    const behind = rest[1]?.w ?? '.';
    if (NO.test(first.w) && (first.w === 'not' || !/^(?:[,.;!-]|--|i|it|leave|just|not|only)$/.test(behind)))
      return undefined;
    let lead = 0;
    while (LEADS.test(asked[lead]?.w ?? '')) lead++;
    const deed = asked.indexOf(deeds[0]!);
    if (deed < lead || asked.slice(lead, deed).some((x) => x.action)) return undefined;
    const will = YES.test(first.w) ? ['will'] : ['not', 'going to'];
    const told = asked.slice(lead);
    const at = told[deed - lead - 1]?.w === 'be' ? deed - lead - 1 : deed - lead;
    return [
      ...told.slice(0, at),
      ...will.map(word),
      ...told.slice(at),
      word('.'),
      ...withoutMark(rest.slice(1)),
    ];
  }
  const refused = refusedAndChosen(asked, deeds, rest, before, word);
  if (refused) return refused;
  // "net or patch on 2-2? net": the way that is named again
  const chosen = rest.find((x, m) => m < 3 && x.action);
  if (
    chosen &&
    deeds.length > 1 &&
    deeds.some((x) => x.action?.v === chosen.action!.v) &&
    asked.some((x) => x.w === 'or' || x.w === '/') &&
    !rest.slice(0, 4).some((x) => OPEN.test(x.w))
  ) {
    const where = asked.filter((x) => x.place || x.fabric);
    const at = rest.indexOf(chosen);
    const lead = /^(?:'ll|will|to)$/.test(rest[at - 1]?.w ?? '') ? [] : [word('will')];
    return where.length
      ? [
          ...foundBefore(asked, deeds, word),
          ...where,
          word(':'),
          ...rest.slice(0, at),
          ...lead,
          ...rest.slice(at),
        ]
      : undefined;
  }
  // "and the backing? calico"
  const head = asked.at(-1)!;
  const lead = wordsBetween(asked, 0, asked.length - 1).trimStart();
  if (
    (head.place || head.topic) &&
    ABOUT.test(lead) &&
    !OPEN.test(first.w) &&
    !YES.test(first.w) &&
    !rest.some((x) => x.w === '?') &&
    !turnsAway(rest, head)
  )
    return [head, word(':'), ...rest];
  return undefined;
}

/** "backing colour? binding black, settled", "batting? 2-3 patched": what follows the question is said of something else. */
function turnsAway(rest: Item[], head: Item): boolean {
  const end = rest.findIndex((x) => /^[.;!?,]$/.test(x.w));
  const said = end < 0 ? rest : rest.slice(0, end);
  return (
    said.some((x) => x.topic && x.topic !== head.topic && x.topic !== 'fabric') ||
    (!head.place && said.some((x) => x.duration)) ||
    (head.place?.kind !== 'blocks' &&
      said.some((x) => x.place?.kind === 'blocks') &&
      said.some((x) => x.finding || x.action))
  );
}

/** What stands between the way refused and the one chosen: "no patch, net", "not a darn but net". */
const BETWEEN = /^(?:,|[.;-]|--|but|so|just|a|an|the|it|it's|i'll|i|'ll|will|going to|with|on)$/;

/**
 * "patch it or net it? no patch, net", "darn or net? net, no darning", "patch or net? no, net": of the two ways asked about one is
 * refused by its name and the other taken. Where nothing is named behind the "no", nothing is given up by it.
 */
function refusedAndChosen(
  asked: Item[],
  deeds: Item[],
  rest: Item[],
  before: Item[],
  word: (w: string) => Item,
): Item[] | undefined {
  const here = asked.filter((x) => x.place || x.fabric);
  // "hole in 3-2. patch or net?"
  const where = here.length ? here : before.filter((x) => x.place).slice(-1);
  if (deeds.length !== 2 || !where.length || !asked.some((x) => x.w === 'or' || x.w === '/'))
    return undefined;
  const end = rest.findIndex((x, m) => m > 0 && /^[.;!?]$/.test(x.w));
  const said = end < 0 ? rest : rest.slice(0, end);
  const named = said.filter((x) => x.action);
  const isAsked = (x: Item): boolean => deeds.some((d) => d.action!.v === x.action!.v);
  const no = said.findIndex((x) => NO.test(x.w));
  if (no < 0 || said.length > 8 || !named.length || named.length > 2 || !named.every(isAsked))
    return undefined;
  if (!said.every((x) => x.action || NO.test(x.w) || BETWEEN.test(x.w))) return undefined;
  const bare = /^[,-]$|^--$/.test(said[no + 1]?.w ?? '');
  const refused = bare ? undefined : said.slice(no).find((x) => x.action);
  const chosen = named.find((x) => x !== refused);
  if (!chosen || (refused && refused.action!.v === chosen.action!.v)) return undefined;
  const against = refused ? [...where, word(':'), word('not'), word('going to'), refused, word('.')] : [];
  return [
    ...foundBefore(asked, deeds, word),
    ...against,
    ...where,
    word(':'),
    word('will'),
    chosen,
    ...rest.slice(said.length),
  ];
}

/** "3-2 hole, patch it or net it?": what was found is told before the question. */
function foundBefore(asked: Item[], deeds: Item[], word: (w: string) => Item): Item[] {
  const lead = asked.slice(0, asked.indexOf(deeds[0]!));
  const end = lead.findLastIndex((x) => /^(?:[,;:-]|--)$/.test(x.w));
  const found = end < 0 ? [] : lead.slice(0, end);
  return found.some((x) => x.finding) ? [...found, word('.')] : [];
}

const withoutMark = (items: Item[]): Item[] => (/^[,.]$/.test(items[0]?.w ?? '') ? items.slice(1) : items);
