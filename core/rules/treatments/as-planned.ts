import type { Plan } from '../../conversation/memory.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

const THOSE =
  '(?:that|it|them|those|both|these|the (?:lot|pair|two|three|four)|all (?:two|three|four|of (?:it|them|those))|both of (?:them|those|these))(?: (?:one|ones|two|three|all|lot|pair))?';
/** "so I've done that", "did both of those just now", "that's done now, by hand", "got the pair done", "done, both of them". */
const DONE = new RegExp(
  [
    ` (?:i 've|i have|'ve|have|i|all|just|now|and|so|,|) ?(?:now |just |already |finally )*(?:done|did|managed|finished) ${THOSE} (?!off)`,
    ` (?:${THOSE}) (?:'s|is|are|'re|all) (?:all |now |both |finally )*(?:done|finished|complete) `,
    ` that 's ${THOSE} (?:all )?done `,
    `^ (?:right |ok |okay |there |well |so |and |, )*${THOSE} (?:now |all )?(?:done|finished) `,
    ` (?:got|have|had) ${THOSE} (?:all )?done `,
    '^ (?:right |ok |okay |there |well |so |and |all |both |, )*(?:done|finished)(?: now| too| as planned)? (?:both (?:of them )?|all (?:of them )?|the lot )?$',
    ' as planned ',
  ].join('|'),
);

/** "that's out", "it's on now": where the plan was to take off, to lay on or to set in. */
const IN_PLACE =
  /^ (?:(?:right|ok|okay|there|well|so|and|all|now|,) )*(?:that|it|they|those|both|that one)(?: 's| is| are| 're)(?: all| now| both| finally)* (off|out|away|on|in)(?: now| too| as well| at last)*(?: [.!,])* $|^ (?:(?:right|ok|okay|all|and|now|finally) )*(off|out)(?: now| at last)* $/;
/** "the tweed's in now", "net's on": the stuff of the plan, in its place. */
const STUFF_IN_PLACE =
  /^ (?:(?:right|ok|okay|there|well|so|and|now|,|the|that|my) )*(?:\S+ ){1,2}(?:'s|is|are|has gone|have gone|went)(?: all| now| finally)* (on|in)(?: now| too| at last)*(?: $| by | with | ,)/;
const PUT = new Map<string, RegExp>([
  ['on', /^(?:patch|overlay|bind|add-border|label)$/],
  ['in', /^(?:replace|stabilize|darn)$/],
]);
/** The plans that words of a place carry out: what is off was to be taken off. */
function carriedOut(plans: ReturnType<typeof plansMeant>, words: string): typeof plans {
  const told = IN_PLACE.exec(words) ?? STUFF_IN_PLACE.exec(words);
  const put = told?.[1] ?? told?.[2];
  if (!put) return plans;
  return plans.filter((p) => (PUT.get(put) ?? /^remove$/).test(p.action));
}

/** "I'm at it now", "doing those now", "at it as we speak": what was just decided on is in hand. */
const TAKEN_UP =
  / (?:(?:i|we) (?:'m|am|'re|are)|now|,|and|so|^) (?:at|on to|onto|doing|working on|busy with) (?:it|that|them|those|this|both)(?: one| two)? (?:now|right now|as we speak|at the moment|this minute|already|since) |^ (?:(?:right|ok|okay|so|and|well|still) )*(?:at|on|on to|onto|doing|working on|busy with|in the middle of) (?:it|that|them|those|both)(?: one| two)? (?:now|right now|as we speak|at the moment) /;

/** What was planned just before, told as in hand by words that only point at it. */
export function takenUp(state: ReaderState, v: ClauseView, words: string, sentence: string): Draft[] {
  if (!TAKEN_UP.test(words) || / (?:not|n't|never) /.test(words)) return [];
  const told = state.drafts.findLast(isTreatment);
  if (told) {
    if (told.entry.state !== 'planned' || told.sentence < v.sentence - 1) return [];
    told.entry.state = 'doing';
    told.origins['state'] = { ...told.origins['state']!, rule: 'treatment.taken-up' };
    return [];
  }
  return plansMeant(state, sentence).map((plan) =>
    makeDraft(
      'treatment',
      v,
      {
        action: [plan.action, 'treatment.taken-up', undefined, 'implied'],
        state: ['doing', 'treatment.taken-up', v.items],
        ...(plan.object ? { object: [plan.object, 'treatment.taken-up', undefined, 'implied'] } : {}),
        places: [[...plan.places], 'place.carried', undefined, 'implied'],
      },
      'carried',
    ),
  );
}

/** What was planned in the last note, or else for the place spoken of, told as carried out by words that only point at it. */
export function doneAsPlanned(
  state: ReaderState,
  v: ClauseView,
  words: string,
  sentence: string,
  stitch: ReturnType<typeof stitchOf>,
): Draft[] {
  if (
    !(
      DONE.test(words) ||
      IN_PLACE.test(words) ||
      (STUFF_IN_PLACE.test(words) &&
        v.items.some((x) => /^(?:fabric|net|interfacing)$/.test(x.material ?? '') || x.fabric))
    ) ||
    / (?:not|n't|never|when|once|after(?! all)|if|before|until) /.test(words)
  )
    return [];
  return carriedOut(plansMeant(state, sentence), words).map((plan) => {
    const told = stitch && TAKES_STITCH.has(plan.action) ? stitch : undefined;
    const say = told?.stitch ?? plan.stitch;
    return makeDraft(
      'treatment',
      v,
      {
        action: [plan.action, 'treatment.as-planned', undefined, 'implied'],
        state: ['done', 'treatment.as-planned', v.items],
        ...(plan.object ? { object: [plan.object, 'treatment.as-planned', undefined, 'implied'] } : {}),
        places: [[...plan.places], 'place.carried', undefined, 'implied'],
        ...(say ? { stitch: [say, `stitch.${say}`, told?.item, told ? 'said' : 'implied'] } : {}),
      },
      'carried',
    );
  });
}

/** "that's on now, whipstitched", "it's in, couched round the edge": how what was planned is fastened. */
const ON_AND_SEWN =
  /^ (?:(?:right|ok|okay|there|well|so|and|all|now|,) )*(?:that|it|they|those|both|that one)(?: 's| is| are| 're)(?: all| now| both| finally)* (on|in)(?: now| too| at last)* (?:, |and )?$/;

/** The sewing told behind "that's on now" is that of the plan. */
export function sewnAsPlanned(state: ReaderState, v: ClauseView, made: Draft[], sentence: string): void {
  const [sewn] = made;
  if (made.length !== 1 || !sewn || !isTreatment(sewn) || sewn.entry.action !== 'resew') return;
  const at = v.items.findIndex((x) => x.action?.form === 'past');
  const words = wordsBetween(v.items, 0, at);
  if (at < 2 || !ON_AND_SEWN.test(words)) return;
  const [plan] = carriedOut(plansMeant(state, sentence), `${words.replace(/(?:,|and) $/, '')}`);
  if (!plan) return;
  sewn.entry.action = plan.action;
  sewn.entry.places = [...plan.places];
}

/** The plan told last, or what was in hand; all of that note's plans where "both" or "all of them" is said. */
function plansMeant(
  state: ReaderState,
  sentence: string,
): (Plan & { stitch?: NonNullable<ReturnType<typeof stitchOf>>['stitch'] })[] {
  const last =
    state.memory.last?.entries.flatMap(({ entry: e }) => (e.kind === 'treatment' ? [e] : [])) ?? [];
  const plans = last.flatMap((e) =>
    (e.state === 'planned' || e.state === 'doing') && e.action
      ? [
          {
            action: e.action,
            places: e.places ?? [],
            ...(e.object ? { object: e.object } : {}),
            ...(e.stitch ? { stitch: e.stitch } : {}),
          },
        ]
      : [],
  );
  if (plans.length && / (?:both|all|them|those|they|the lot|the pair) /.test(sentence)) return plans;
  if (plans.length && /^(planned|doing)$/.test(last.at(-1)!.state)) return plans.slice(-1);
  // "thinking of netting 3-3", then "did it": the one way that stood open
  const open = last.filter((e) => e.state === 'considering');
  if (open.length === 1 && last.length === 1 && open[0]!.action)
    return [
      {
        action: open[0]!.action,
        places: open[0]!.places ?? [],
        ...(open[0]!.object ? { object: open[0]!.object } : {}),
      },
    ];
  const plan = planFor(state, state.memory.focus);
  return plan ? [plan] : [];
}

/** The one thing that is planned for all of these places; nothing where two are, or none. */
export function planFor(state: ReaderState, places: string[]): Plan | undefined {
  if (!places.length) return undefined;
  // "5-2 and 5-4 need patches. Did 5-4": planned in this very note
  const here = state.drafts.flatMap(({ entry: e }): Plan[] =>
    e.kind === 'treatment' && e.state === 'planned' && e.action && e.places?.length
      ? [{ action: e.action, places: e.places, ...(e.object ? { object: e.object } : {}) }]
      : [],
  );
  const plans = [...(state.memory.plans ?? []), ...here].filter((p) =>
    places.every((q) => p.places.includes(q)),
  );
  const first = plans[0];
  return first && plans.every((p) => p.action === first.action && p.object === first.object)
    ? { ...first, places: [...places] }
    : undefined;
}
