import type { Entry } from '../../../shared/entry.ts';
import { unique } from '../../rules/places/grid.ts';
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
  if (!stuff.length && !part) return false;
  const named = told.find((d) => d !== own)?.entry;
  const first = stuff.find((x) => x.material && x.material !== 'fabric') ?? stuff[0];
  const material = / for the (back|backing|lining) /.test(a.words)
    ? 'backing'
    : named?.kind === 'material' && named.material
      ? named.material
      : (first?.material ?? (part?.part as 'backing' | undefined) ?? 'fabric');
  const items = stuff.length ? stuff : [part!];
  put(open.draft, 'material', material, 'answer.material', items);
  put(
    open.draft,
    'name',
    (named?.kind === 'material' ? named.name : undefined) ?? unique(items.map((x) => x.w)).join(' '),
    'answer.material',
    items,
  );
  // so that the slots stand in the order in which people read them
  const { kind, material: stuffing, ...rest } = open.draft.entry;
  open.draft.entry = { kind, material: stuffing, ...rest } as Entry;
  for (const x of items) a.used.add(x);
  for (const d of told) if (d !== own) a.taken.add(d);
  return true;
}
