import type { DecisionStatus, Topic } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import type { ReaderState } from '../../reader-state.ts';

/** A stretch of a sentence between two joints, and what was made out of it so far. */
export type Part = {
  items: Item[];
  words: string;
  joint: string;
  topic?: { topic: Topic; item: Item };
  cue?: DecisionStatus;
  status?: DecisionStatus;
  taken?: boolean;
};

/** What stands around a part: all parts of its sentence, and what was settled before. */
export type Surroundings = {
  state: ReaderState;
  parts: Part[];
  /** The words of the whole sentence, joined by blanks. */
  sentence: string;
  /** It ends in a question mark. */
  asked: boolean;
  /** Something was settled earlier in the note. */
  settledBefore: boolean;
};

/** What ties are made of. */
export const YARN = /\b(?:wool|cotton|floss|yarn|twine|string|silk|linen)\b/;

/** Blocks, said or pointed at; "it" and its like may be the whole quilt. */
export const BLOCKS = (x: Item): boolean =>
  x.place !== undefined &&
  (x.place.kind === 'blocks' ||
    (x.place.kind === 'pointer' && !/^place\.(it|that-one|both|them|those|the-other)$/.test(x.place.rule)));

/** "Alright", "fine": a breath or a word of consent; "leaning towards the flannel": no finding. */
export const WELL = /^(?:alright|all right|fine|good|ok|okay|right|leaning(?: towards?| to)?)$/;

/** "whether the backing comes off", "to take the binding off", "the backing will come off": a treatment, open or planned, and no matter. */
export const isTakingOff = (words: string): boolean =>
  / (?:backing|back|lining|binding|border|borders|batting|wadding) (?:\S+ ){0,3}?(?:come|comes|coming|go|goes|be taken|is taken|gets taken) (?:off|out)\b| (?:backing|back|lining|binding|border|borders|batting|wadding) (?:\S+ ){0,3}?(?:stay|stays) on\b| (?:take|taking|pull|pulling|strip|stripping|get|getting|have) (?:the |that |this |her |my )?(?:old |new |whole |original )?(?:backing|back|lining|binding|border|borders|batting|wadding) (?:off|out)\b| (?:leave|leaving|keep|keeping) (?:the |that |this |her |my )?(?:old |whole |original )?(?:backing|back|lining|binding|border|borders|batting|wadding) on\b| (?:unpick|remove|removing|unpicking) (?:the |that |this )?(?:old |whole |original )?(?:backing|lining|binding|border|borders|batting|wadding) /.test(
    words,
  );
