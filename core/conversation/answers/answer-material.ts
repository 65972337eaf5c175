import type { Entry } from '../../../shared/entry.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import { unique } from '../../rules/places/grid.ts';
import { LENGTHS } from '../mend/items.ts';
import { put } from '../standing.ts';
import type { Answering } from './answering.ts';

/** Of what goods the amount or the sum was. */
export function answerMaterial(a: Answering): boolean {
  const open = a.standing.find(({ draft: { entry: e } }) => e.kind === 'material' && !e.material);
  if (open?.draft.entry.kind !== 'material') return false;
  const told = a.state.drafts.filter((d) => d.entry.kind === 'material' && d.entry.material);
  const own = told.find(
    (d) =>
      d.entry.kind === 'material' &&
      d.entry.quantity !== undefined &&
      d.entry.quantity !== (open.was as { quantity?: number }).quantity,
  );
  if (own && a.cue !== 'strong' && told[0] === own) return false;
  if (
    a.cue === 'none' &&
    a.items.some(
      (x) => x.finding || (x.action && !x.material && !x.part && !x.stitch && x.action.form === 'past'),
    )
  )
    return false;
  // "put a patch on 1-2 out of an old pillowcase": a deed with a place of its own
  if (
    a.cue === 'none' &&
    a.state.drafts.some(
      (d) => d.entry.kind === 'treatment' && d.placed === 'said' && d.entry.state === 'done',
    )
  )
    return false;
  const stuff = a.items.filter((x) => x.material || x.fabric);
  const part = a.items.find((x) => x.part && ['backing', 'batting', 'binding'].includes(x.part));
  // "fat quarters, the blue"
  const quarters = / fat quarters? /.test(a.words.slice(0, 40))
    ? a.items.find((x) => /quarter/.test(x.w))
    : undefined;
  if (!stuff.length && !part && !quarters) return false;
  const named = told.find((d) => d !== own)?.entry;
  const first = stuff.find((x) => x.material && x.material !== 'fabric') ?? stuff[0];
  const material = / for the (back|backing|lining) /.test(a.words)
    ? 'backing'
    : named?.kind === 'material' && named.material
      ? named.material
      : (first?.material ?? (part?.part as 'backing' | undefined) ?? 'fabric');
  const items = stuff.length ? stuff : [part ?? quarters!];
  put(open.draft, 'material', material, 'answer.material', items);
  put(
    open.draft,
    'name',
    (named?.kind === 'material' ? named.name : undefined) ?? unique(items.map((x) => x.w)).join(' '),
    'answer.material',
    items,
  );
  // "spools of cotton", "fat quarters, the blue": counted in what the question left out
  const counted = a.items
    .slice(0, 4)
    .find((x) => Object.hasOwn(UNIT_WORDS, x.w) && !LENGTHS.has(UNIT_WORDS[x.w]!));
  if (quarters && open.was.kind === 'material' && open.was.unit === undefined)
    put(open.draft, 'unit', 'fat-quarter', 'answer.material', [quarters]);
  else if (counted && open.was.kind === 'material' && open.was.unit === undefined) {
    const unit = UNIT_WORDS[counted.w]!;
    put(open.draft, 'unit', unit, 'answer.material', [counted]);
    if (open.draft.entry.material === 'fabric' && /^(?:spool|skein|ball)$/.test(unit))
      put(open.draft, 'material', unit === 'spool' ? 'thread' : 'tie-thread', 'answer.material', [counted]);
    a.used.add(counted);
  }
  // so that the slots stand in the order in which people read them
  const { kind, material: stuffing, ...rest } = open.draft.entry;
  open.draft.entry = { kind, material: stuffing, ...rest } as Entry;
  for (const x of items) a.used.add(x);
  for (const d of told) if (d !== own) a.taken.add(d);
  return true;
}
