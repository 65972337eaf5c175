import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Finding } from '../../shared/vocabulary.ts';
import type { Memory } from '../conversation/memory.ts';
import type { Token } from '../text/tokenise.ts';
import type { Clause } from './clause/clause.ts';
import type { Draft } from './draft.ts';
import type { FabricIndex } from './fabrics/find-fabric.ts';

/** All that the rules of a clause may look at while a note is being read. */
export type ReaderState = {
  grid: QuiltGrid;
  fabrics: FabricIndex;
  tokens: Token[];
  clauses: Clause[];
  memory: Memory;
  /** Local wall time of the note, `2026-03-14T10:30`. */
  local: string;
  drafts: Draft[];
  /** Places that the clauses of this sentence have spoken of so far. */
  carried: string[];
  /** A clause that only named places, or damage told before: what the next clauses of its sentence are about. */
  topic?: { places: string[]; sentence: number; finding?: Finding } | undefined;
};
