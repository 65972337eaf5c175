import type { Token } from '../text/tokenise.ts';

/** After these it is what was worked on or taken, and no question. */
const TAKES_IT =
  /^(?:got|get|getting|took|take|taking|picked|pick|picking|pulled|pull|pulling|snipped|cut|unpicked|unpick|clipped|trimmed|removed|remove|used|out|off|up|darned|patched|washed|brushed|pressed)$/;
/** What became of it: "what was left of the patch is off". */
const BECAME =
  /^(?:is|was|'s|are|were|came|comes|come|went|has|have|had|picked|pulled|got|taken|off|out|fell)$/;

/**
 * "got what was left of the ties out", "what's left of the binding came off": the rest of a thing as what is told of. It is read
 * as "the rest of the ties", for "what" would ask and "was left" would tell of leaving. "What's left of the wool" stays a question.
 */
export function nameRest(given: Token[]): Token[] {
  const tokens = nameRemnants(restOf(nameSame(given)));
  const at = tokens.findIndex(
    (t, i) =>
      t.w === 'what' &&
      /^(?:was|is|'s|were|are|remained|remains)$/.test(tokens[i + 1]?.w ?? '') &&
      (tokens[i + 2]?.w === 'left' ? tokens[i + 3] : tokens[i + 2])?.w === 'of',
  );
  // "took out what was left of them" is known as it is
  if (at < 0 || /^(?:them|it|those)$/.test(tokens[at + 4]?.w ?? '')) return tokens;
  const of = tokens[at + 2]!.w === 'left' ? at + 3 : at + 2;
  const told =
    TAKES_IT.test(tokens[at - 1]?.w ?? '') ||
    (tokens.at(-1)!.w !== '?' && tokens.slice(of + 2, of + 11).some((t) => BECAME.test(t.w)));
  if (!told) return tokens;
  const what = tokens[at]!;
  return [
    ...tokens.slice(0, at),
    { ...what, w: 'the' },
    { ...what, w: 'rest', from: tokens[at + 1]!.from, to: tokens[of - 1]!.to, glued: false },
    ...tokens.slice(of),
  ];
}

/** "took out the remains of the ties", "removed remnants of quilting": as "the rest of the ties". */
function restOf(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, i) =>
      i > 0 &&
      REMNANTS.test(t.w) &&
      tokens[i + 1]?.w === 'of' &&
      tokens.slice(Math.max(0, i - 4), i).some((x) => TAKES_IT.test(x.w) || ALONE.test(x.w) || OUT.test(x.w)),
  );
  if (at < 0) return tokens;
  const noun = tokens[at]!;
  const article = /^(?:the|all|its|any|some|last)$/.test(tokens[at - 1]!.w)
    ? []
    : [{ ...noun, w: 'the', to: noun.from }];
  return [...tokens.slice(0, at), ...article, { ...noun, w: 'rest', glued: false }, ...tokens.slice(at + 1)];
}

const THREADS = /^(?:quilting|stitches|stitching|stitch|sts|ties?|tufts)$/;
const ALONE = /^(?:unpicked|unpick|unpicking|removed|remove|snipped|clipped|teased)$/;
const WITH_OUT = /^(?:took|take|pulled|pull|picked|pick|cut|got|drew|tweaked|plucked|ripped|taken)$/;
const OUT = /^(?:out|off|away)$/;
const REMNANTS = /^(?:remnants?|remains|leftovers|leavings|remainder|ends|scraps)$/;

/**
 * "the quilting has snapped, unpicked the remnants", "took out what remained", "remnants unpicked": the threads that were just told to
 * be broken, named again.
 */
function nameRemnants(tokens: Token[]): Token[] {
  for (let from = 2; from < tokens.length; from++) {
    const noun = REMNANTS.test(tokens[from]!.w);
    const what =
      tokens[from]!.w === 'what' && /^(?:remained|remains|was|is|'s|were)$/.test(tokens[from + 1]?.w ?? '');
    if (!noun && !what) continue;
    let next = from + 1;
    if (what)
      next = tokens[from + 1]!.w.startsWith('remain')
        ? from + 2
        : tokens[from + 2]?.w === 'left'
          ? from + 3
          : 0;
    if (!next) continue;
    // "the rest of it", "what was left of them" are known as they are
    if (tokens[next]?.w === 'of') continue;
    let lead = from - 1;
    while (lead > 1 && /^(?:the|all|their|its)$/.test(tokens[lead]!.w)) lead--;
    const told = tokens.slice(0, lead + 1);
    const threads = told.findLast((t) => THREADS.test(t.w));
    if (!threads) continue;
    const at = { ...tokens[from]!, to: tokens[next - 1]!.to };
    const name = /^t/.test(threads.w) ? ['the', 'ties'] : ['the', 'quilting', 'stitches'];
    const them = name.map((w, n) => ({ ...at, w, glued: at.glued && n === 0 }));
    const out = OUT.test(tokens[lead]!.w) ? lead - 1 : lead;
    const verb = tokens[out]!.w;
    // "picked out the leftovers": "picked the quilting stitches out"
    if (ALONE.test(verb) || (WITH_OUT.test(verb) && (out < lead || OUT.test(tokens[next]?.w ?? ''))))
      return [...told.slice(0, out + 1), ...them, ...told.slice(out + 1), ...tokens.slice(next)];
    // "remnants unpicked"
    if (noun && /^[,.;:]$/.test(verb) && ALONE.test(tokens[next]?.w ?? ''))
      return [...told, tokens[next]!, ...them, ...tokens.slice(next + 1)];
  }
  return tokens;
}

/** "stitch the same, thread the same": as "the same stitch, the same thread", for a stitch may be a verb. */
function nameSame(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, i) =>
      /^(?:stitch|thread|colou?r|yarn|cloth|needle)$/.test(t.w) &&
      tokens[i + 1]?.w === 'the' &&
      tokens[i + 2]?.w === 'same' &&
      !/^(?:the|a|that)$/.test(tokens[i - 1]?.w ?? '') &&
      !/^(?:as|again|way|on|seam)$/.test(tokens[i + 3]?.w ?? ''),
  );
  if (at < 0) return tokens;
  const [thing, , same] = tokens.slice(at, at + 3) as [Token, Token, Token];
  return nameSame([
    ...tokens.slice(0, at),
    { ...same, from: thing.from, to: thing.from, glued: false },
    { ...thing, to: same.to },
    ...tokens.slice(at + 3),
  ]);
}
