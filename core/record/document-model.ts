/** The papers that come out of a quilt's log. */
export const DOCUMENT_KINDS = ['condition', 'proposal', 'treatment', 'letter', 'bill'] as const;
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

export type Column = { title: string; align?: 'right' /** Share of the width. */; share?: number };

/** A piece of a passage. Text is plain: whoever renders it escapes it. */
export type Block =
  | { type: 'paragraph'; text: string }
  | { type: 'caution'; text: string }
  | { type: 'list'; items: string[] }
  /** Name and value, as on the front of a file. */
  | { type: 'terms'; rows: [name: string, value: string][] }
  | { type: 'table'; columns: Column[]; rows: string[][] /** The last row is a sum. */; sum?: true }
  /** A drawing: SVG that stands alone, with the same in words. */
  | { type: 'figure'; svg: string; width: number; height: number; alt: string; caption: string }
  | { type: 'photograph'; photoId: string; file: string; alt: string; caption: string }
  | { type: 'signatures'; lines: string[] };

/**
 * The smallest part of a document that can be rewritten by hand. `id` stays the same when the log
 * grows; `facts` is the fingerprint of what the passage was written from.
 */
export type Passage = {
  id: string;
  facts: string;
  entryIds: string[];
  noteIds: string[];
  body: Block[];
  /** False for drawings, photographs and signatures, which hold nothing to rewrite. */
  editable: boolean;
  /** Set where the words are hers: `written` is what the log alone would say now. */
  edit?: { stale: boolean; written: Block[] };
};

export type Section = { id: string; title: string; passages: Passage[] };

export type RecordDocument = {
  kind: DocumentKind;
  title: string;
  /** Name of the quilt, and its number where it has one. */
  subject: string;
  language: 'en-GB' | 'en-US';
  /** Local date that the document is written for, `2026-03-14`. */
  date: string;
  /** Who signs it. */
  author: string;
  sections: Section[];
  /** What stayed out of the document, and why; for the writer's eyes, never rendered into it. */
  heldBack: HeldBack[];
};

export type HeldBack = { entryId: string; noteId?: string; why: string };
