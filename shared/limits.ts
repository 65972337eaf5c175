/**
 * Plain figures and lists that the page needs without the schemas: in a file of their own, so that the
 * page's bundle carries no validator.
 */
export const LIMITS = { rows: 60, blocks: 60, noteChars: 100_000 } as const;
export const STAGES = ['before', 'during', 'after'] as const;
