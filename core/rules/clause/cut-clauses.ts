import type { Item } from '../item.ts';
import { picturesOf } from '../treatments/shot-with-camera.ts';
import { wordsBetween } from '../words-between.ts';
import type { Clause } from './clause.ts';
import { isAbbreviation, isBoundary, isWeakSo, isWeakThen } from './is-boundary.ts';
import { isPredicate } from './is-predicate.ts';
import { HARD, SOFT } from './joints.ts';
import { startsStatement, statementStart } from './statement-start.ts';

/**
 * Cuts a note into clauses: at stops; at commas and conjunctions where what follows says something of its own; and, in
 * speech that runs on, before the subject of each new statement.
 */
export function cutClauses(items: Item[]): Clause[] {
  const clauses: Clause[] = [];
  // looked at once, where they stand in the note: every later word asks what was said before it
  const says = items.map((_, k) => isPredicate(items, k));
  let sentence = 0;
  const asked = new Set<number>();
  let joint = '';
  let current: Item[] = [];
  const close = (next: string): void => {
    if (current.length) clauses.push({ items: current, joint, sentence, asked: false });
    if (current.length || joint === '') joint = next;
    else if (next !== ',') joint = next;
    current = [];
  };
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const w = item.w;
    const mark = item.token.kind === 'mark';
    if (HARD.has(w) && (mark || w === '\n') && !isAbbreviation(items, k)) {
      close(w);
      if (w === '?') asked.add(sentence);
      // "patched!! took 20 min": one end, however often it is marked
      if (w !== '!' || items[k - 1]?.w !== '!') sentence++;
      continue;
    }
    if (w === '?' && mark) asked.add(sentence);
    // "seam = ladder st."
    if (
      w === '=' &&
      mark &&
      current.length &&
      current.length < 4 &&
      current.some((x) => x.seam || x.finding)
    ) {
      close(':');
      continue;
    }
    const dash = w === '-' && mark && !(item.token.glued && items[k + 1]?.token.glued);
    if (
      (SOFT.has(w) &&
        !isWeakSo(items, k) &&
        !isWeakThen(items, k) &&
        !item.place &&
        !item.span &&
        !item.clock) ||
      dash
    ) {
      if (dash || w === ':' || w === '(' || w === ')' || w === '--') {
        if (isTakenOffBehindMark(items, k, current) || listsWhatIsOff(items, k, current)) continue;
        // "photos after that: front, back"
        if (current.length < 5 && current.some((_x, m) => picturesOf(items, k - current.length + m)))
          continue;
        close(w === ')' || w === '(' ? ',' : dash ? '-' : w);
        continue;
      }
      if (isBoundary(items, k, current) || endsReason(items, k, current, joint)) {
        close(w);
        // "and then", ", and", ", but"
        while (
          items[k + 1] &&
          SOFT.has(items[k + 1]!.w) &&
          items[k + 1]!.token.kind === 'word' &&
          !items[k + 1]!.place &&
          !isWeakSo(items, k + 1)
        ) {
          joint = joint === ',' || joint === '' || joint === 'and' ? items[k + 1]!.w : joint;
          k++;
        }
        continue;
      }
      current.push(item);
      continue;
    }
    if (current.length && startsStatement(items, k, current, says)) {
      const at = statementStart(current, items, k);
      if (at < current.length) {
        const tail = current.slice(at);
        current = current.slice(0, at);
        close('');
        current = tail;
      } else close('');
    }
    current.push(item);
  }
  close('');
  for (const number of asked) {
    const own = clauses.filter((c) => c.sentence === number);
    const last = own.at(-1);
    // "I'm leaving that one be, because why would you mend what isn't broken?": only the last part asks
    const tailAsks =
      own.length > 1 &&
      /^(why|what|who|how|when|where)$/.test(last!.items[0]?.w ?? '') &&
      last!.joint !== 'or';
    for (const c of tailAsks ? [last!] : own) c.asked = true;
  }
  return clauses;
}

/** "binding → off", "ties: all out of rows 1-3", "backing - off": no mark parts a thing from what became of it. */
function isTakenOffBehindMark(items: Item[], k: number, current: Item[]): boolean {
  const off = /^(all|now|both|half)$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1;
  if (!/^(off|out)$/.test(items[off]?.w ?? '')) return false;
  const thing = current.at(-1);
  return (
    current.length < 5 &&
    thing !== undefined &&
    (thing.object !== undefined ||
      thing.finding === 'old-repair' ||
      /^(binding|border)/.test(thing.part ?? thing.place?.places[0] ?? '')) &&
    !current.some((x) => x.action && x !== thing)
  );
}

/** "removed: binding, backing, batting", "taken off: the right border": what was taken off is listed behind the mark. */
function listsWhatIsOff(items: Item[], k: number, current: Item[]): boolean {
  if (items[k]!.w !== ':' || current.length > 3) return false;
  if (
    !/^ (?:(?:and|so|now|all|also) )*(?:removed|unpicked|stripped|peeled|(?:taken|took|pulled|picked|ripped) (?:off|out)) $/.test(
      wordsBetween(current),
    )
  )
    return false;
  const next = /^(the|old|an?)$/.test(items[k + 1]?.w ?? '') ? items[k + 2] : items[k + 1];
  return next?.object !== undefined || next?.finding === 'old-repair';
}

/** "netted because of a tear, 20 cm of net, running stitch": the goods are those of the deed, and no part of its reason. */
function endsReason(items: Item[], k: number, current: Item[], joint: string): boolean {
  if (items[k]!.w !== ',' || !/^(because|cos|since|as)$/.test(joint) || !current.some((x) => x.finding))
    return false;
  const next = items[k + 1];
  return (
    next?.quantity?.unit !== undefined &&
    !next.finding &&
    items.slice(k + 1, k + 5).some((x) => x.material || x.fabric)
  );
}
