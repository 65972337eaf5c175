import { found, type WayFound, type WordAt } from './way.ts';

/** "I'll do the binding by hand tonight", "must get the quilting done", "going to finish the ties": the work named, and still to be done. */
export function workToDo({ k, item, before, after }: WordAt): WayFound {
  const { action } = item;
  if (!action || action.form === 'past' || item.seam || !LEAD.test(before) || !WORKS.test(action.v))
    return undefined;
  // "get the patch off": a rule of its own
  if (/^ (?:\S+ ){0,4}(?:off|out) |^ (?:for|strips?|fabric|cloth) /.test(after)) return undefined;
  return found({ action: action.v, form: 'base', at: k, items: [item], rule: 'treatment.work-to-do' }, k);
}

const WORKS = /^(bind|quilt|tie|press|label|darn|patch|wash|clean|layer|baste|trim|piece|photograph)$/;
const LEAD =
  / (?:will|'ll|gonna|must|should|shall|(?:going|have|has|'ve|got|need|want|still|yet|plan|mean|ready) to) (?:just |still |then )?(?:do|get|finish|finish off|tackle|make a start on|have|see to) (?:all )?(?:the|that|its|my|her)(?: (?:last of the|rest of the|final|hand|machine|new))? $/;
