/**
 * Taking back the whole last note: "scratch that", "take that last entry back", "delete that, wrong quilt".
 * Not: "scratch that, row four", which says what it should be; "took the binding back off".
 */
const UNDO =
  /^(?:(?:no|oh|ah|right|okay|ok|wait|sorry|so|and|please|actually|hang on|hold on|oops|damn|bother|no no|oh no|uh|well|nope|just|can you|could you|would you|you can|let 's|better|hm|but|now|blast|drat|yeah|um|hey|whoa|argh|oh dear|dear|hold it|right then)[ ,.!-]*)*(?:scratch|strike|delete|undo|cancel|erase|rub|cross|wipe|forget|ignore|remove|drop|lose|take|get rid of|throw|disregard|void|scrub|bin|chuck|kill|unlog|withdraw|rub out|cross out|strike out|take out|take back|pull|reverse|un-log|retract|discard|dump|roll back)\b(?: (?:out|off|away|back))?(?: (?:all of )?(?:that|this|it|the|those|my|what i just (?:said|put|logged)|what i said|them))?(?: (?:last|previous|whole|lot|entire|one|bit|just|other))*(?: (?:entry|note|one|thing|bit|lot|line|entries|item|record|message|log))?(?: (?:back|out|off|away|again|please|there|altogether|entirely|completely|then))*(?=$|[ ,.!;:-])/;
const UNDO_WHOLE =
  /^(?:[a-z' ,.!-]*)?(?:that (?:was|is|'s) (?:for )?(?:the )?(?:wrong|another|a different|the other) (?:quilt|job|one)|wrong quilt|that last (?:one|entry|note|bit) (?:was|is) (?:wrong|rubbish|a mistake|not right|nonsense)|i (?:did n't|never) (?:mean|do) (?:that|any of that|to say that)|pretend i (?:did n't|never) say that|did n't say that|undo|undo that|take (?:it|that) back|that never happened|ignore that|nothing there|unsay that|i take that back|i take it back)\b/;
const CONTENT_AFTER =
  /\b(row|block|column|\d+-\d+|it was|it 's|should be|should have been|make it|i meant|instead|meant|border|binding|seam|inches|minutes|yards|by hand|by machine)\b/;

/** Does the note only take back the one before? `text` is the note's words as tokens joined by blanks. */
export function isUndo(text: string): boolean {
  const t = text.trim();
  const hit = UNDO.exec(t) ?? UNDO_WHOLE.exec(t);
  if (!hit) return false;
  const rest = t.slice(hit[0].length).trim();
  if (
    /^(scratch|strike|delete|undo|cancel|erase|forget|ignore|remove|drop|lose|take|bin|pull|rub|cross|wipe|get|throw|kill)$/.test(
      hit[0].trim().split(' ').at(-1)!,
    )
  ) {
    if (rest && !/^[-,.!;]/.test(rest)) return false;
    if (
      /(^| )(remove|take|pull|drop|rub|get|throw|cross|wipe|kill|lose|cancel|forget|ignore)$/.test(
        hit[0].trim(),
      ) &&
      !/^undo/.test(hit[0])
    )
      return rest === '' && /(cancel|forget|ignore|scratch|strike|delete|erase)$/.test(hit[0].trim());
  }
  if (
    /^(take|took) (it|that|the|those|them|this)$/.test(hit[0].trim()) &&
    !/back|out of the (log|record)/.test(rest)
  )
    return false;
  if (
    /(^| )(take|remove|drop|lose|pull|throw|rub|wipe|cross|get rid of|bin|forget|cancel|ignore|kill|scrub) (the|those|my|them)$/.test(
      hit[0].trim(),
    )
  )
    return false;
  if (
    /(^| )(remove|drop|forget|cancel|lose|pull|wipe|scrub|rub) (it|that|this|that one)( (off|out|away))?$/.test(
      hit[0].trim(),
    ) &&
    rest &&
    !/^[,.!;-]/.test(rest) &&
    !/^(please|i |we |it 's|wrong|that|was|again|and start|entirely)/.test(rest)
  )
    return false;
  if (
    CONTENT_AFTER.test(rest) &&
    !/\b(wrong|again|later|another|miscount|counted|mixed|think|sleep|say it|start over|redo)\b/.test(rest)
  )
    return false;
  if (
    /^(the )?(crepe|crepeline|tulle|net|patch|wash|washing|idea|silk|border|interfacing|overlay)/.test(rest)
  )
    return false;
  return true;
}
