import type { Memory } from '../../conversation/memory.ts';
import type { Clause } from '../clause/clause.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';
import { namesWay } from './verdict.ts';

const WHO =
  '(?:(?:the |my |our |his |her )?(?:owners?|clients?|customer|museum|school|church|chapel|library|hotel|family|lady|curator|conservator|committee|bride|mother|mum|mom|mama|mummy|mommy|dad|daddy|papa|father|daughter|son|sister|brother|aunt|auntie|uncle|gran|granny|grandmother|grandma|grandad|grandpa|granddad|nan|nana|niece|cousin|neighbour|vicar|teacher|warden|guild|she|he|they)|mrs? \\S+|miss \\S+|ms \\S+)';
/** "she'd rather have", "owner rang and wants", "school says": who the quilt belongs to, and the verb of wishing or saying. */
const SAYS = new RegExp(
  `^ (?:(?:and|so|right|ok|okay|well|but|oh|just heard|,) )*${WHO}(?: (?:rang|called|phoned|emailed|wrote|texted|replied|has|have|'s|'d|would|'re|is|are|'ll|just|now|definitely|back|and|up|then|in the end|${WHO}|,))* (?:wants?|wanted|prefers?|preferred|likes?|liked|said|says?|asked|asks|rather|sooner|happy|fine|ok|okay|chose|chosen|picked|decided|opted|agreed|agrees|voted|went|gone|plumped|plumps|going)(?: (?:for|to|with|on|have|have the|me to|us to|i|that(?= \\S)|me|go|go with|go for|see|in favou?r of))* `,
);
const END = '(?: (?:then|now|please|after all|instead|in the end|,|[.!]))* $';
const YES = new RegExp(
  `^ (?:yes|go ahead|ahead|go for it|do it|do that|it|that|please do|should|can|could|yes to (?:it|that)|that 's fine|it 's fine|fine|ok|okay)(?: (?:please|with it|with that))*${END}`,
);
const NO = new RegExp(
  `^ (?:no|not|not to|no thanks|no thank you|nope|not (?:to )?bother(?: with (?:it|that))?|against (?:it|that)|did n't|do n't|no to (?:it|that))${END}`,
);
/** "it left", "leave them", "kept as they are": left as found, in the owner's words. */
const LEFT =
  /^ (?:(?:it|them|that|those|both|these) )?(?:left|kept|leave|keep|be left|stay)(?: (?:it|them|that|those|both|alone|as|is|are|they|be|on|how|where|,|[.!]|then|please|well alone))* $/;
const LIGHT =
  /^(the|a|an|just|new|fresh|it|them|that|those|both|one|on|over|in|done|behind|piece|of|then|please|not|and|,|[.!]|after|all|instead|be|get|to|have|with|idea|option|cloth|bit)$/;

type OpenWay = Memory['open'][number];

/** Which of the ways that stand open the words behind the verb speak of, and how they leave it. */
function meant(rest: Item[], open: OpenWay[]): { way: OpenWay; state: 'planned' | 'dropped' } | undefined {
  const words = wordsBetween(rest);
  const last = open.at(-1)!;
  const here = open.filter((o) => o.places.join() === last.places.join());
  if (LEFT.test(words))
    return {
      way: here.find((o) => o.action === 'leave') ?? {
        ...last,
        action: 'leave',
      },
      state: 'planned',
    };
  if (here.length === 1 && YES.test(words)) return { way: last, state: 'planned' };
  if (here.length === 1 && NO.test(words)) return { way: last, state: 'dropped' };
  const against = rest.findIndex((x) => /^(not|no|than|instead)$/.test(x.w));
  const told = against > 0 ? rest.slice(0, against) : rest;
  const named = here.filter((o) => told.some((x) => namesWay(x, o)));
  const [way] = named;
  return way && named.length === 1 && told.every((x) => LIGHT.test(x.w) || namesWay(x, way))
    ? { way, state: 'planned' }
    : undefined;
}

/** The words of the clause behind "she would rather have", where that is how it begins. */
function behindVerb({ items }: Clause): Item[] | undefined {
  const lead = SAYS.exec(wordsBetween(items))?.[0].trim().split(' ').length;
  if (!lead) return undefined;
  let n = 0;
  const from = items.findIndex((x) => {
    n += x.w.split(' ').length;
    return n > lead;
  });
  return from < 0 ? undefined : items.slice(from);
}

/**
 * "owner wants the net", "she'd like it left", "client says no": of ways that stand open, what the owner says is what shall be.
 * Where nothing stands open it is a wish, and a remark.
 */
export function ownersWord(state: ReaderState): void {
  const open = state.memory.open.filter((o) => !o.passed);
  if (!open.length) return;
  state.clauses.forEach((clause, index) => {
    const rest = behindVerb(clause);
    const told = rest && meant(rest, open);
    if (!told) return;
    const { way } = told;
    const status = way.action === 'leave' && told.state === 'planned' ? 'done' : told.state;
    state.drafts = state.drafts.filter((d) => d.clause !== index || !isTreatment(d));
    state.drafts.push(
      makeDraft(
        'treatment',
        { items: clause.items, index, sentence: clause.sentence },
        {
          action: [way.action, OWNERS_WORD, clause.items],
          state: [status, OWNERS_WORD, clause.items],
          ...(way.object && way.action === 'remove'
            ? { object: [way.object, OWNERS_WORD, undefined, 'implied'] }
            : {}),
          places: [[...way.places], 'place.of-open', undefined, 'implied'],
        },
        'carried',
      ),
    );
  });
}
/** The rule of such a treatment: the wish it was told by is no remark besides. */
export const OWNERS_WORD = 'treatment.owners-word';
