import { COUNT_WORDS } from '../text/number-words.ts';

const WORDS = COUNT_WORDS.slice(1, 10);
const FIGURES = WORDS.map((_, k) => String(k + 1));

/** Numbers of rows and blocks as they are said and as they are written: what stands behind a misheard "row". */
export const UP_TO_EIGHT = [...WORDS.slice(0, 8), ...FIGURES.slice(0, 8)];
export const UP_TO_NINE = [...WORDS, ...FIGURES];
