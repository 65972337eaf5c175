import type { Item } from '../item.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';

/** With these a time to come begins where the verb behind them stands in the present: "once it's dry". */
const WHEN =
  /^ (?:once|when|whenever|until|till|'til|before|after|unless|if|as soon as|the moment|by the time) $/;
/** The first words of these: most words begin none. */
const WHEN_BEGINS = /^(?:once|when|whenever|until|till|'til|before|after|unless|if|as|the|by)(?: |$)/;
const PRONOUN = /^(it|they|that|this|these|those|everything|anything|all|both)$/;
/** "is", "'s been", "gets", "has all been" */
const HAPPENS = /^(?:is|are|'s|'re|gets?|has|have|goes|go|comes|come)$/;
const BETWEEN =
  /^(?:been|being|all|both|properly|fully|completely|quite|really|nicely|safely|good|and|bone|well)$/;
const AWAY = /^(?:off|out|on|in|up|down|through|back|away|flat)$/;
const STATE = /^(?:dry|clean|done|finished|ready|off|out|on|in|down|up)$/;
const MOST_OF_SUBJECT = 4;

/**
 * Takes out a deed that is told only as the time for another: "press it once it's dry", "a wash before it's cut", "not until
 * it's been photographed". Nobody has done it. In the past it is told: "when it was dry I pressed it".
 */
export function withoutOnlyWhen(items: Item[]): Item[] {
  const weather = items.findIndex((x, k) => x.w === 'if' && FAIR.test(wordsBetween(items, k, k + 6)));
  if (weather > 0) {
    const said = FAIR.exec(wordsBetween(items, weather, weather + 6))![1]!;
    return withoutOnlyWhen([
      ...items.slice(0, weather),
      { ...items[weather]!, w: 'later' },
      ...items.slice(weather + itemsIn(items, weather, said)),
    ]);
  }
  for (let k = 0; k < items.length - 2; k++) {
    const from = beginsAt(items, k);
    const end = from === undefined ? undefined : (endOfWhen(items, from) ?? endOfBefore(items, from));
    if (end === undefined) continue;
    const rest = withoutOnlyWhen(items.slice(end));
    // "once the top's dry, I'll press it": press the top; "I'll tie it when it's basted": it comes later
    if (k > 0) return [...items.slice(0, k), { ...items[k]!, w: 'later' }, ...rest];
    const subject = items.slice(from!, end).filter((x) => x.place || x.part || x.fabric);
    return subject.length ? [...subject, ...rest] : rest[0]?.w === ',' ? rest.slice(1) : rest;
  }
  return items;
}

/** "I'll wash her tomorrow if it's fine", "… if it stays dry": the weather, and nothing found of the quilt. */
const FAIR =
  /^ (if (?:it|the weather|the day|the sun) (?:is|'s|be|stays?|keeps?|holds?|turns?|remains?|looks|'ll be|will be)(?: still| nice and| good and)? (?:fine|dry|nice|sunny|warm|bright|hot|windy|breezy|clear|fair)(?: again| out| enough)?) (?:$|[.,;!?]|and|but|so|or|then|tomorrow|i|we) ?/;

/** "a few pins before I baste it", "before layering": what she will do, told only as the time before which. */
function endOfBefore(items: Item[], k: number): number | undefined {
  const told = /^(?:i|we)$/.test(items[k]?.w ?? '');
  // "if I'm to bind it I'll need nine yards"
  const condition =
    items[k - 1]?.w === 'if' && told && / (?:'m|am|'re|are) to /.test(wordsBetween(items, k, k + 3));
  if (items[k - 1]?.w !== 'before' && !condition) return undefined;
  const at = condition ? k + 3 : told ? k + 1 : k;
  const deed = items[at]?.action;
  if (!deed || deed.form !== (told ? 'base' : 'ing')) return undefined;
  let end = at + 1;
  while (
    /^(?:the|my|its|it|them|this|that|all|whole|quilt|thing|of)$/.test(items[end]?.w ?? '') ||
    items[end]?.part ||
    items[end]?.place
  )
    end++;
  return items[end] && items[end]!.token.kind !== 'mark' && !/^(?:and|but|so|i|we)$/.test(items[end]!.w)
    ? undefined
    : end;
}

/** Where the subject stands behind the word of time at `k`. */
function beginsAt(items: Item[], k: number): number | undefined {
  if (!WHEN_BEGINS.test(items[k]!.w)) return undefined;
  for (let n = 1; n <= 3; n++) if (WHEN.test(wordsBetween(items, k, k + n))) return k + n;
  return undefined;
}

/** The end of "it's been photographed", "the binding's off", from its subject at `k` on. */
function endOfWhen(items: Item[], k: number): number | undefined {
  let at = k;
  if (PRONOUN.test(items[at]?.w ?? '')) at++;
  else {
    if (!/^(?:the|my|its|their)$/.test(items[at]?.w ?? '') && !items[at]?.part) return undefined;
    while (at < k + MOST_OF_SUBJECT && items[at] && !HAPPENS.test(items[at]!.w)) {
      if (items[at]!.token.kind === 'mark' || items[at]!.action?.form === 'past') return undefined;
      at++;
    }
  }
  if (!HAPPENS.test(items[at]?.w ?? '')) return undefined;
  at++;
  while (BETWEEN.test(items[at]?.w ?? '')) at++;
  const deed = items[at];
  if (!deed || !(deed.action?.form === 'past' || STATE.test(deed.w))) return undefined;
  at++;
  return AWAY.test(items[at]?.w ?? '') ? at + 1 : at;
}
