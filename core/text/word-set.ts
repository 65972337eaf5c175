/** The words of a list written with blanks between: whether a word is one of them is asked more quickly of a set than of a pattern. */
export const wordSet = (list: string): ReadonlySet<string> => new Set(list.split(' '));
