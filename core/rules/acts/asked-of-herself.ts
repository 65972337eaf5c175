/** "what on earth do I put on the back", "what colour shall I bind it in", "what am I to use for the wadding": of what is to come, and not of what is logged. */
const OF_HERSELF =
  /^(?:(?:so|and|now|right|well|um|oh|but|then|,) )*(?:what|which)(?: on earth| in the world| in heaven 's name| the heck| the hell| the devil| ever| colou?r| weight| sort of \w+| kind of \w+| \w+)?(?: ,)? (?:do|shall|should|will|'ll|am|are|would) (?:i|we) (?:going to |gonna |to |ever )?(?:put|use|pick|choose|go for|go with|bind|back|tie|line|charge|do about)\b(?! (?:down|in the log|off|away))/;

export const isAskedOfHerself = (words: string): boolean =>
  OF_HERSELF.test(words) && !/\b(?:need|buy|get|last|so far|already|next)\b/.test(words);
