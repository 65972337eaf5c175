/** How many readings are kept where what was read once is doubtful, and read anew by a search. */
export const SEARCH_WIDTH = 4;
/** The same where a file is heard and nobody waits: the more ways to hear it, the likelier that the right one is among them. */
export const FILE_SEARCH_WIDTH = 8;
