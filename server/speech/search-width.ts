/** How many readings are kept where the recogniser searches for the likeliest, and does not take each word at once. */
export const SEARCH_WIDTH = 4;
