/** Words of doubt that stand around ways to choose from, and tell nothing else. */

/** Before them: "torn between", "going back and forth between", "can't decide whether to", "two ways I could go on". */
export const BEFORE_WAYS =
  /^(?:i|we|'m|am|'re|are|'ve|have|still|now|torn|honestly|going|gone|back|and|forth|between|ca|n't|can|not|really|choose|decide|decided|pick|choosing|deciding|wavering|dithering|swithering|toss|up|it|'s|is|a|the|of|in|two|three|several|minds|sure|unsure|certain|whether|if|undecided|wonder|wondering|do|does|should|shall|will|would|could|might|may|either|options?|choices?|ways|possibilities|are|go|with|on|for|at|to|about|over|regarding|as|so|well|right|okay|ok|hmm?|um|uh|then|but|what|make|made|making|my|mind|our|needs?|wants?|something|jury|out|still|yet|open|question|here|there|think|thinking|me|puzzle|problem|know|n't|don't|settled|:|,|-|--|just|be|been|this|that|weighing|weigh|one|ones|block|row|all|both|got|comes|down|lies|choice|decision|'d|'ll|best|better|rather)$/;

/** Behind them: "I can't make up my mind", "tbd", "has me stumped", "that's the question". */
export const BEHIND_WAYS =
  /^(?:i|we|'m|am|'ve|have|has|had|ca|n't|can|not|no|really|choose|decide|decided|make|made|up|my|our|mind|minds|idea|sure|unsure|certain|undecided|tbd|tbc|dunno|know|do|does|don't|yet|still|open|question|that|'s|is|the|a|it|in|two|of|about|with|on|for|which|what|me|stumped|puzzled|beaten|foxed|beats|puzzle|settled|to|be|clue|'ll|will|see|sleep|hmm?|hm|mean|think|thinking|need|wait|time|tell|say|over|either|way|jury|out|up|air|at|all|one|now|here|there|moment|weighing|then|going|back|and|forth|wonder|any|leaning|neither|for|so|far|haven't|um|uh|yonder|block|row|,|-|--|\?|\.)$/;

/** Words of one way that only lead to it: "either", "just", "do I", "I'd". */
export const LEADS_TO_WAY =
  /^(?:i|we|'d|'ll|could|might|may|should|shall|would|will|do|to|just|only|simply|either|else|maybe|perhaps|possibly|whether|if|go|with|for|try|also|even|then|rather|better|properly|have|a|an|'m|going)$/;

/** Words of one way beside its deed, things and places. */
export const WITHIN_WAY =
  /^(?:the|that|this|its|my|an?|new|fresh|old|small|little|big|bit|piece|pieces|scrap|layer|square|fine|silk|cotton|linen|wool|proper|whole|full|entire|thing|lot|light|quick|some|something|cloth|fabric|stuff|over|on|top|of|behind|under|underneath|up|shut|closed|together|down|in|into|at|for|across|off|out|alone|well|be|as|is|it|them|found|put|lay|slip|sew|let|set|leave|left|where|by|hand|machine|instead|again|back|right|one|ones|row|block|both|all|with|w|again|properly)$/;
