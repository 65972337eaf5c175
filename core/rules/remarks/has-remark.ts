import type { Clause } from '../clause.ts';
import type { Draft } from '../draft.ts';

const STORY =
  /\b(was made|made (it|this|by|for|in (the )?(1[89]\d\d|winter|summer|war))|sewn by|sewed it|stitched it|pieced it|belonged|came (from|off|out of)|found (in|on|under) (the|an|a|her|his) (attic|loft|barn|chest|trunk|house|drawer|cupboard|bed|skip)|inherited|handed down|heirloom|slept under|in (the )?1[89]\d\d|1[89]\d\ds|the year|grandmother|grandma|great aunt|great grandmother|signature in|initials|inked|embroidered|inscription|inscribed|signed|dated|maker|presented|raffled|carried|lay wet|story goes|family (say|says|story)|wedding in|war|says it|told me|years (old|ago)|generations|got it from|brought (it|over|back)|a pipe|flood|chewed on it)\b/;
const WISH =
  /\b(she|he|they|owner|client|family|school|hotel|museum|club|church|parish|guild|committee|principal|head|aunt|mother|daughter|cousin|niece|nephew|landlord|captain|warden|secretary|the members|granddaughter|grandson|vicar|curator|bride|couple|theatre|company|society|they all)('d| 'd| would| wants?| asked| hopes?| likes?| prefers?| wishes| says| said| requests?| is keen| are keen| 's keen| insists| reckons| does n't| do n't)/;
const WISHED =
  /\b(wants?|would like|'d like|would rather|'d rather|asked|hopes?|likes?|prefers?|wishes|keen|requests?|insists)\b/;

/** Is there a sentence of the quilt's own story, or a wish of its owner, beside what was logged? */
export function hasRemark(clauses: Clause[], drafts: Draft[]): boolean {
  const sentences = new Map<number, string>();
  clauses.forEach((c) => {
    sentences.set(c.sentence, `${sentences.get(c.sentence) ?? ''} ${c.items.map((x) => x.w).join(' ')}`);
  });
  const running = sentences.size === 1;
  if (running) {
    return clauses.some((c, index) => {
      if (drafts.some((d) => d.clause === index && d.entry.kind !== 'work')) return false;
      const words = ` ${c.items.map((x) => x.w).join(' ')} `;
      return STORY.test(words) || (WISH.test(words) && WISHED.test(words));
    });
  }
  for (const [sentence, words] of sentences) {
    const logged = drafts.filter((d) => d.sentence === sentence);
    if (logged.length) {
      const own = clauses
        .map((c, index) => ({ c, index }))
        .filter(({ c, index }) => c.sentence === sentence && !drafts.some((d) => d.clause === index));
      if (
        own.some(
          ({ c }) =>
            WISH.test(` ${c.items.map((x) => x.w).join(' ')} `) &&
            WISHED.test(c.items.map((x) => x.w).join(' ')),
        )
      )
        return true;
      continue;
    }
    if (STORY.test(words) || (WISH.test(words) && WISHED.test(words))) return true;
  }
  return false;
}
