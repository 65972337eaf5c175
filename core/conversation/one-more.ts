import type { Entry } from '../../shared/entry.ts';
import { type Draft, makeDraft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { isTreatment, type TreatmentDraft } from '../rules/treatments/is-treatment.ts';
import { wordsBetween } from '../rules/words-between.ts';
import { put } from './standing.ts';

/** One more of them, of which nobody has said where: "another one", "one other", "a second darn". */
const ONE_MORE =
  / (?:another|(?:one|1) (?:more|other|further)|(?:a|the) (?:second|third|further|next) (?:one|darn|patch|mend|repair|seam|tear|hole|net|overlay)|(?:did|done|darned|patched|netted|mended) (?:a (?:second|third|further)|one (?:after|since|like)) ) /;

/** How that was done, or that it was done: without this it may be another of anything. */
const ALIKE =
  / (?:same|done|did|took|too|as well|min|mins|minutes|hour|likewise|as before|like before|ditto|as the last|as last time|identical) /;
/** "and one more", "that's another one": nothing besides. */
const NO_MORE_SAID =
  /^ (?:(?:and|then|now|so|ok|okay|right|that 's|that makes|here 's|,) )*(?:another (?:one|block)|one more(?: block)?|yet another|another)(?: (?:and then i 'm done|then|now|of them|finished|there|after (?:that|it|this)|[.!]))* $/;
const SAME = / (?:same|as before|like before|ditto|likewise|identical|as the last|as last time) /;
const SAME_STITCH =
  / (?:the same(?! (?:thread|yarn|wool|floss|silk|cotton))|stitch|stitches|stitching|sts?|again|way|treatment) /;
const SAME_THREAD = / (?:thread|yarn|wool|floss|silk|cotton) /;

/** Words that only speak of the stitch and the stuff of before. */
const OF_BEFORE =
  /^(stitch|stitches|stitching|sts?|thread|yarn|wool|floss|silk|cotton|needle|colou?r|way|treatment|darn|patch|mend|repair|net|overlay|seam|tear|hole)$/;

/**
 * "and another one, same stitch, ten minutes", "a second darn followed, in the same stitch and thread": the last treatment
 * again, at a place that is not told; with its stitch and its thread where they are said to be the same.
 */
export function oneMoreLike(state: ReaderState): void {
  const { treatment } = state.memory;
  if (!treatment?.action) return;
  const words = ` ${state.tokens.map((t) => t.w).join(' ')} `;
  if (
    !(ONE_MORE.test(words) && ALIKE.test(words)) &&
    !(NO_MORE_SAID.test(words) && treatment.state === 'done' && state.memory.lastKind === 'treatment')
  )
    return;
  const again = state.drafts.filter(
    (d): d is TreatmentDraft => isTreatment(d) && d.entry.action === treatment.action,
  );
  const others = state.drafts.filter(
    (d) => !again.includes(d as TreatmentDraft) && d.entry.kind !== 'material' && d.entry.kind !== 'work',
  );
  const items = state.clauses.flatMap((c) => c.items);
  const [draft, more] = again;
  if (others.length || more || items.some(tellsMore)) return;
  const made = draft ?? goneOn(state, items);
  if (!made) return;
  if (draft) {
    // "A second darn followed … and that one took a quarter of an hour": not where the first was
    draft.entry.places = [];
    draft.placed = 'none';
    delete draft.origins['places'];
  }
  if (!SAME.test(words)) return;
  if (made.entry.kind === 'treatment' && !made.entry.stitch && SAME_STITCH.test(words) && treatment.stitch)
    put(made, 'stitch', treatment.stitch, 'treatment.same-again', []);
  if (SAME_THREAD.test(words)) sameThread(state, made);
}

/** Something of its own that is told beside "another one": damage, a thing, a place. */
const tellsMore = (x: Item): boolean =>
  !OF_BEFORE.test(x.w) &&
  Boolean(
    x.finding ||
      x.object ||
      x.material ||
      x.fabric ||
      x.cost ||
      x.quantity?.unit ||
      (x.place && !/^place\.(?:it|them|that-one|both|those|one-of)$/.test(x.place.rule)),
  );

/** Drafts the treatment anew where the rules found no deed in the note. */
function goneOn(state: ReaderState, items: Item[]): Draft | undefined {
  const { treatment } = state.memory;
  const clause = state.clauses.find((c) => ONE_MORE.test(wordsBetween(c.items)));
  if (!treatment || !clause || state.tokens.length > 30) return undefined;
  const length = items.find((x) => x.duration);
  const draft = makeDraft(
    'treatment',
    { index: state.clauses.indexOf(clause), sentence: clause.sentence, items: clause.items },
    {
      action: [treatment.action, 'treatment.same-again', undefined, 'implied'],
      state: [treatment.state, 'treatment.same-again', undefined, 'implied'],
      places: [[], 'place.none', undefined, 'implied'],
      ...(length ? { minutes: [length.duration!.minutes, length.duration!.rule, length] as const } : {}),
    } as Parameters<typeof makeDraft>[2],
    'none',
  );
  state.drafts.unshift(draft);
  return draft;
}

/** The thread of the treatment before, used again. */
function sameThread(state: ReaderState, made: Draft): void {
  const { material } = state.memory;
  if (!material || !/thread/.test(material.material)) return;
  const told = state.drafts.find((d) => d.entry.kind === 'material');
  if (told) {
    // "the same thread", read as thread: its name is that of before
    const e = told.entry as Extract<Entry, { kind: 'material' }>;
    if (e.material === material.material && material.name)
      put(told, 'name', material.name, 'material.same', []);
    return;
  }
  const clause = {
    index: made.clause,
    sentence: made.sentence,
    items: state.clauses[made.clause]?.items ?? [],
  };
  state.drafts.push(
    makeDraft(
      'material',
      clause,
      {
        material: [material.material, 'material.same', undefined, 'implied'],
        use: ['used', 'material.same', undefined, 'implied'],
        name: [material.name, 'material.same', undefined, 'implied'],
      },
      'unneeded',
    ),
  );
}
