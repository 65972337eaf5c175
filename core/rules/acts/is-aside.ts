import { ASIDE_CALLS, ASIDE_THINGS, HOUSEHOLD_GOODS, QUILT_WORDS } from '../../lexicon/asides.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import type { Token } from '../../text/tokenise.ts';
import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import { tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';

type Sense = 'thing' | 'call' | 'quilt';

const SIGNS = new PhraseTrie<Sense>();
for (const p of ASIDE_THINGS) SIGNS.add(p, 'thing');
for (const p of ASIDE_CALLS) SIGNS.add(p, 'call');
for (const p of QUILT_WORDS) SIGNS.add(p, 'quilt');

type Signs = { things: number; calls: number; quilt: number };

/** How many words of the house and of the quilt stand in these tokens. */
export function signsOf(tokens: Token[], from = 0, to = tokens.length): Signs {
  const signs: Signs = { things: 0, calls: 0, quilt: 0 };
  for (let i = from; i < to; ) {
    const hit = SIGNS.longestAt(tokens, i);
    if (!hit || hit.next > to) {
      i++;
      continue;
    }
    for (const sense of hit.payloads) {
      if (sense === 'thing') signs.things++;
      else if (sense === 'call') signs.calls++;
      else signs.quilt++;
    }
    i = hit.next;
  }
  return signs;
}

/** Plain intent makes even a thing half said a matter of the work: "must press it when the kettle's boiled". */
const INTENT =
  /\b(i 'll|i will|i 'm going to|i 'm gonna|need|needs|must|have to|has to|got to|want|wants|should|tomorrow|next|later|remember|i 've|i have|done|finished)\b/;

const AT_WORK =
  /\b(stopping|stopped|starting|started|knocking off|knock(ing|ed) it on the head|tools|(pack|wrap|sign|jack|clock|shut|leav|break|paus|resum|carry|pick)(ing|ping|ting|king|ying)? (it |up |off |on |in |out )?(in|up|off|on|out|for|again|shop)|called it|call it a|i 'm|i 'll|back (at|to) it|(off|back|break|breaking|stopping) (for|to|from) (my |the |a |some )?(lunch|tea|dinner|supper|breakfast|break|cuppa|coffee)|calling it|done for|that 's (me|it for|enough for|all for)|paus(ing|ed) (here|there)|(taking|having|need) (five|ten|a|\w+ min)|(break|breather)|(back in) (five|ten|a|\w+ min)|(i 'm|we 're|ok|right) back)\b/;

/** Nothing but that she will be back, behind what calls her away: nobody says that the work rests. */
const isJustAway = (tokens: Token[]): boolean => {
  const words = ` ${tokens.map((t) => t.w).join(' ')} `;
  return (
    / [.,!] (?:i 'll be |be )?back in (?:\S+ ){1,2}(?:[.!] )?$/.test(words) &&
    !/ (?:stop|stopping|stopped|break|breather|taking|pausing|paused|off for|knocking|quick|short) /.test(
      words,
    )
  );
};

/** Where dirt is that has not reached the quilt. */
const ON_SOMEBODY =
  /\b(?:all over|over|on|down|up|in) (?:(?:his|her|their|my|your|its|our) (?:\w+ )?(?:paws?|feet|hands?|face|fingers?|hair|fur|whiskers|nose|chin|mouth|shoes?|boots?|legs?|arms?|knees?|clothes|shirt|uniform|trousers|coat|frock)|(?:the|my|our) (?:\w+ )?(?:floor|carpet|rug|sofa|couch|stairs|walls?|lino|worktop|counter|doormat|mat|step|hall|kitchen|hallway))\b/;

/** Who is told to get off is no piece of the quilt. */
const CREATURE =
  /\b(?:you|ye) (?:little |old |big |great )?(?:wretched|rotten|naughty|bad|mangy|greedy|cheeky|horrid|blasted|daft|silly|dirty|wee|beast|animal|monster|rascal|cat|dog|puss|devil)|\b(?:good|bad|naughty) (?:lad|boy|girl|dog|cat)\b|\bleave it ,? leave it\b/;

/**
 * Drafts that talk aside brings forth by chance: "get off" to the cat takes nothing off, the ironing board is not being
 * pressed. Only where words of the house stand in the same clause, and no place or intent is said.
 */
export function chanceDrafts(tokens: Token[], clauses: Clause[], drafts: Draft[]): Set<Draft> {
  const out = new Set<Draft>();
  const seen = new Map<number, { signs: Signs; words: string }>();
  const sentenceOf = (clause: Clause): { signs: Signs; words: string } => {
    let found = seen.get(clause.sentence);
    if (!found) {
      const own = clauses.filter((c) => c.sentence === clause.sentence).flatMap((c) => c.items);
      found = { signs: signsOf(tokens, own[0]!.i, own.at(-1)!.j), words: own.map((x) => x.w).join(' ') };
      seen.set(clause.sentence, found);
    }
    return found;
  };
  const whole = signsOf(tokens);
  if (!whole.things && !whole.calls) return out;
  for (const draft of drafts) {
    const { entry } = draft;
    // "the kettle's boiling its head off. Back in a tick"
    if (entry.kind === 'work' && entry.mark && !entry.time && whole.things > 0 && isJustAway(tokens)) {
      out.add(draft);
      continue;
    }
    // "I do wish they'd stop": nobody who is at work
    if (entry.kind === 'work' && entry.mark && !entry.time && !entry.task) {
      if (!AT_WORK.test(tokens.map((t) => t.w).join(' '))) out.add(draft);
      continue;
    }
    // "down, cat, you'll have the lamp over", "can't talk, mum, I've a mouthful of pins": nothing that lies in store
    if (
      entry.kind === 'material' &&
      entry.use === 'on-hand' &&
      entry.cost === undefined &&
      entry.quantity === undefined &&
      NOT_IN_STORE.test(aroundIt(tokens, draft))
    ) {
      out.add(draft);
      continue;
    }
    const clause = clauses[draft.clause];
    // "the fresh piece is off the table", where it stood open
    if (!clause || draft.origins['action']?.rule === 'treatment.idea-dropped') continue;
    const { signs, words } = sentenceOf(clause);
    if (!signs.things && !signs.calls) continue;
    // "my jumper wants darning", "there's a stain on my good blouse"
    if (
      (entry.kind === 'treatment' || entry.kind === 'condition') &&
      HOUSEHOLD_GOODS.test(` ${words}`) &&
      !clause.items.some(names)
    ) {
      out.add(draft);
      continue;
    }
    // "he's let the dog in with mud all over his paws, so hold on a minute": all over somebody, and not all over the quilt
    if (
      entry.kind === 'condition' &&
      ON_SOMEBODY.test(words) &&
      !/\b(?:on|over) (?:the |my |this )?(?:quilt|top|it)\b/.test(words) &&
      (draft.placed !== 'said' || (entry.places ?? []).every((p) => p === 'quilt' || p === 'top'))
    ) {
      out.add(draft);
      continue;
    }
    // "get off the batting you wretched animal"
    if (
      (entry.kind === 'treatment'
        ? entry.state !== 'done'
        : entry.kind === 'condition' && !clause.items.some(names)) &&
      CREATURE.test(words)
    ) {
      out.add(draft);
      continue;
    }
    if (entry.kind === 'treatment') {
      // "just leave it on the step, thanks", "leave it, bad dog"
      if (
        entry.action === 'leave' &&
        signs.calls &&
        draft.placed !== 'said' &&
        /\bleave (?:it|that|them|those)\b/.test(words) &&
        !/\b(?:hang|hold) on\b/.test(words)
      ) {
        out.add(draft);
        continue;
      }
      const said = draft.placed === 'said' && clause.items.some(names);
      const same = draft.origins['action']?.rule === 'treatment.same-again';
      if (said && (!same || INTENT.test(words))) continue;
      // "neighbours' dog at it again": the stitch was carried over, and nobody said it
      if (entry.minutes !== undefined || (entry.stitch && (said || !same || tellsDamage(drafts, draft))))
        continue;
      if (same || (entry.state !== 'done' && !INTENT.test(words) && signs.quilt === 0)) out.add(draft);
    } else if (entry.kind === 'condition') {
      // "a tea stain" is found, and no tea is drunk
      if (
        /\b(?:colou?r|shade|look|smell|size) of (?:weak |strong |milky |old |cold )?(?:tea|coffee|soup|milk|lemonade|cocoa|cake|biscuit)\b|\b(?:tea|coffee|soup|milk|lemonade|cocoa|cake|lamp|paw|pan) (?:stains?|marks?|spots?|rings?|splash(?:es)?|prints?)\b/.test(
          words,
        )
      )
        continue;
      if (draft.origins['finding']?.rule === 'condition.same') out.add(draft);
      else if (!entry.places?.length && signs.quilt === 0 && !clause.items.some(names)) out.add(draft);
    } else if (entry.kind === 'material') {
      // what a treatment that stands was done with stands as well
      const own = drafts.some(
        (d) => d.clause === draft.clause && d.entry.kind === 'treatment' && !out.has(d),
      );
      if (own) continue;
      // "upstairs have got the drill out": nobody at this bench
      const theirs = entry.use === 'on-hand' && !/\b(?:i|we|'ve|my|our)\b/.test(words);
      if (
        entry.quantity === undefined &&
        entry.cost === undefined &&
        (entry.use === 'used' || theirs) &&
        !signs.quilt
      )
        out.add(draft);
    }
  }
  return out;
}

/** What a thing was told in, and a few words on either side: goods in figures are in no clause. */
function aroundIt(tokens: Token[], { origins }: Draft): string {
  const { from, to } = origins['material'] ?? origins['entry']!;
  const at = tokens.findIndex((t) => t.to > from);
  const end = tokens.findLastIndex((t) => t.from < to);
  return wordsBetween(tokens, at - 5, end + 4);
}

/** Who is told off will have it, or it is in her mouth or hands. */
const NOT_IN_STORE =
  /\b(?:you|he|she|it|they) ?(?:'ll|will|would|'d|'ve|'s|have|has|going to)?(?: just| nearly| almost)? (?:have|had|got|get)\b|\b(?:mouthful|mouth full|handful|hand ?s? full|lapful|lap full|armful|arms full) of\b|\bin my (?:mouth|teeth|hands?|lap)\b/;

/** "its neighbour has a tear as well, so same again on that": the same sentence tells of damage. */
const tellsDamage = (drafts: Draft[], { sentence }: Draft): boolean =>
  drafts.some((d) => d.entry.kind === 'condition' && d.sentence === sentence);

const names = (x: Item): boolean =>
  Boolean(
    x.fabric ||
      (x.place?.places.length &&
        !/^place\.(it|them|both|those|that-one|corner)$/.test(x.place.rule) &&
        // "neighbors' dog at it again"
        !(x.place.rule.startsWith('place.neighbour') && /^neighbou?rs$/.test(x.w))),
  );

/**
 * Talk that is no part of the work. Asked only of notes from which the rules of work, of decisions and of the quilt's own
 * story have drawn nothing: words of the house make them asides; so does the want of any word of the work.
 */
export function isAside(tokens: Token[], items: Item[]): boolean {
  const signs = signsOf(tokens);
  if (signs.calls || signs.things) return true;
  if (signs.quilt) return false;
  return !items.some(
    (x) =>
      x.material ||
      x.finding ||
      x.part ||
      x.fabric ||
      x.object ||
      x.stitches ||
      x.seam ||
      x.cost ||
      /^(bought|delivered|posted|collected|finished)$/.test(x.w) ||
      (x.action && x.action.form !== 'base') ||
      tellsPlace(x),
  );
}

/** "hang on, forty", "hold on, it was metres": said to herself, with what a figure of the last note should be. */
const isSecondThought = (items: Item[]): boolean => {
  const words = wordsBetween(items);
  const rest = items.filter((x) => !LIGHT.test(x.w));
  return (
    /^ (?:oh |no |, )*(?:hang|hold) on /.test(words) &&
    rest.length > 0 &&
    rest.length <= 3 &&
    rest.every((x) => x.token.kind === 'number' || x.quantity?.value !== undefined || UNIT_NAMES.test(x.w))
  );
};
const LIGHT =
  /^(?:hang on|hold on|hang|hold|on|oh|no|it|was|that|'s|is|make|sorry|the|to|till|until|from|at|,|\.|-|and|a|half)$/;
const UNIT_NAMES =
  /^(?:met(?:re|er)s?|yards?|feet|foot|inch(?:es)?|spools?|reels?|skeins?|balls?|packs?|packets?|rolls?)$/;

/** Words of the house and not one that an answer to the tool or a mend of a note could be made of. */
export function isPlainAside(tokens: Token[], items: Item[]): boolean {
  const signs = signsOf(tokens);
  return (
    !isSecondThought(items) &&
    signs.things + signs.calls > 0 &&
    signs.quilt === 0 &&
    !items.some(
      (x) =>
        names(x) ||
        x.material ||
        x.finding ||
        x.cost ||
        x.duration ||
        x.clock ||
        x.span ||
        x.quantity?.unit ||
        // "not you, I'm talking to the machine"
        (x.stitch && !(x.w === 'machine' && signs.calls > 0)),
    )
  );
}
