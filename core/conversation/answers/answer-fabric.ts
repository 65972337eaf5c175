import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { splitBlock } from '../../rules/places/grid.ts';
import { stitchOf } from '../../rules/treatments/stitch-of.ts';
import { POINTERS, wordsOfName } from '../mend/items.ts';
import { placesOf, put } from '../standing.ts';
import { type Answering, placesNamed, SMALL } from './answering.ts';

/** "spotted one", of an ochre spot and an ochre stripe: the one cloth with a word of its name in what is said. */
function clothLike(a: Answering, content: Item[]): string | undefined {
  const alike = Object.keys(a.state.fabrics.blocks).filter((n) =>
    wordsOfName(n).some(
      (word) =>
        word.length > 2 &&
        content.some(
          (x) => x.w.length > word.length && x.w.startsWith(word.slice(0, Math.max(3, word.length - 1))),
        ),
    ),
  );
  return alike.length === 1 ? alike[0] : undefined;
}

/** The words for the cloth that is asked for. */
const clothAsked = (a: Answering): string | undefined =>
  a.standing
    .map(({ was }) =>
      // "black thread", told before the cloth that is asked for
      was.kind === 'material' && (was.material === undefined || was.material === 'fabric')
        ? was.name
        : was.kind === 'condition'
          ? was.fabric
          : undefined,
    )
    .find((n) => n !== undefined);

/** "solid", asked which peach it was: words of one of those cloths' names and nothing else, whatever they may mean besides. */
function oneOfAsked(a: Answering, asked: string | undefined): string | undefined {
  const content = a.items.filter((x) => x.token.kind === 'word' && !SMALL.test(x.w));
  if (!asked || !content.length || content.length > 3) return undefined;
  const words = content.flatMap((x) => x.w.split(' '));
  const told = wordsOfName(asked);
  const fits = Object.keys(a.state.fabrics.blocks).filter((n) => {
    const own = wordsOfName(n);
    return told.some((t) => own.includes(t)) && words.every((x) => own.includes(x));
  });
  return fits.length === 1 ? fits[0] : undefined;
}

const TAKES_CLOTH = new Set<string>(['patch', 'replace', 'stabilize', 'overlay', 'piece', 'add-border']);

/** Which cloth it was, by its name, by a word of its name, or by where it is. */
export function answerFabric(a: Answering): boolean {
  if (placeOfCloth(a)) return true;
  if (everyCloth(a)) return true;
  const told = a.state.drafts.filter(
    (d) =>
      (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
      d.placed === 'said' &&
      placesOf(d.entry).some((p) => splitBlock(p)) &&
      !isEdging(a, d) &&
      !a.standing.some(({ was }) => placesOf(was).some((p) => placesOf(d.entry).includes(p))),
  );
  const cloths = a.items.filter(
    (x, k) =>
      x.fabric &&
      !/^(not|n't)$/.test(a.items[k - 1]?.w ?? '') &&
      !/^(not|n't)$/.test(a.items[k - 2]?.w ?? ''),
  );
  const surest =
    cloths.find((x) => x.fabric!.full) ?? cloths.find((x) => x.fabric!.names.length === 1) ?? cloths[0];
  const asked = clothAsked(a);
  const plain = oneOfAsked(a, asked);
  if (a.cue === 'none' && told.length && !surest?.fabric?.full && !plain) return false;
  if (
    a.cue === 'none' &&
    told.length &&
    a.head.some((x) => x.place?.places.length && !x.fabric && !POINTERS.has(x.place.rule))
  )
    return false;
  if (a.cue === 'none' && a.items.some((x) => x.action && !x.stitch) && a.items.length > 8) return false;
  let name = plain ?? (surest?.fabric?.names.length === 1 ? surest.fabric.names[0]! : undefined);
  // the words said before narrow a doubtful answer
  if (!name && surest?.fabric && asked)
    name = surest.fabric.names.find((n) =>
      asked.split(' ').some((word) => n.toLowerCase().split(' ').includes(word)),
    );
  let items = surest ? [surest] : [];
  if (!name) {
    const content = a.head.filter((x) => x.token.kind === 'word' && !SMALL.test(x.w));
    const alike = content.length <= 3 ? clothLike(a, content) : undefined;
    if (alike) {
      name = alike;
      items = content;
    } else if (
      !content.length ||
      content.length > 4 ||
      content.some((x) => x.action || x.finding || x.place || x.task)
    )
      return false;
    else {
      const candidates = Object.keys(a.state.fabrics.blocks).filter((n) =>
        content.every((x) => wordsOfName(n).includes(x.w)),
      );
      name = candidates.length === 1 ? candidates[0]! : content.map((x) => x.w).join(' ');
      items = content;
    }
  }
  const blocks = a.state.fabrics.blocks[name];
  let hit = false;
  const takers: Draft[] = [];
  // what is settled takes the cloth before what is not
  const decided = a.standing.some(
    ({ was }) => was.kind === 'treatment' && TAKES_CLOTH.has(was.action ?? '') && was.state !== 'considering',
  );
  for (const s of a.standing) {
    const e = s.draft.entry;
    if (decided && e.kind === 'treatment' && e.state === 'considering') continue;
    if (
      e.kind === 'material' &&
      (e.material === 'fabric' || e.material === undefined) &&
      (e.name === asked || !e.name)
    ) {
      put(s.draft, 'name', name, 'answer.fabric', items);
      hit = true;
    } else if (
      e.kind === 'treatment' &&
      TAKES_CLOTH.has(e.action ?? '') &&
      (e.fabric === undefined || e.fabric === asked)
    ) {
      put(s.draft, 'fabric', name, 'answer.fabric', items);
      takers.push(s.draft);
      hit = true;
    } else if (
      e.kind === 'condition' &&
      (e.fabric === asked || !placesOf(e).length) &&
      (e.fabric !== undefined || !placesOf(e).length)
    ) {
      put(s.draft, 'fabric', name, 'answer.fabric', items);
      if (!placesOf(e).length && blocks) put(s.draft, 'places', [...blocks], 'answer.fabric', items);
      hit = true;
    }
  }
  const said = placesNamed(a.items);
  if (said.kind === 'specific')
    for (const s of a.standing)
      if ('places' in s.draft.entry && s.draft.entry.places?.length === 0)
        put(s.draft, 'places', said.places, 'answer.place', said.items);
  // "the brown and I zigzagged it down": the cloth that was asked for, whatever else was sewn in that note
  const sewn = takers.length === 1 ? stitchOf(a.items) : undefined;
  if (sewn && a.state.drafts.every((d) => d.entry.kind !== 'treatment' || isEdging(a, d))) {
    put(takers[0]!, 'stitch', sewn.stitch, 'answer.stitch', [sewn.item]);
    for (const x of a.items) if (x.stitch) a.used.add(x);
  }
  for (const x of items) a.used.add(x);
  for (const d of a.state.drafts)
    if (isEdging(a, d) || (d.entry.kind === 'condition' && (d.clause <= 0 || d.placed !== 'said')))
      a.taken.add(d);
  return hit;
}

/** "the navy tartan and it's whipstitched on": how the cloth that was asked for is sewn on, and no seam in the blocks where that cloth is. */
const isEdging = (a: Answering, { entry: e }: Draft): boolean =>
  e.kind === 'treatment' &&
  e.action === 'resew' &&
  e.stitch !== undefined &&
  !a.items.some(
    (x) =>
      x.seam ||
      x.finding ||
      (x.place?.kind === 'blocks' && x.place.how === 'said' && !x.fabric && !POINTERS.has(x.place.rule)),
  ) &&
  a.standing.some(({ was }) => was.kind === 'treatment' && TAKES_CLOTH.has(was.action ?? ''));

/** "both of them", "all of it, both colours": every cloth of that name, where one finding was told of "the tartan". */
function everyCloth(a: Answering): boolean {
  if (a.items.length > 8 || !EVERY_CLOTH.test(a.words) || a.items.some((x) => x.finding || x.action))
    return false;
  const open = a.standing.filter(
    ({ was }) => was.kind === 'condition' && was.fabric !== undefined && !was.places?.length,
  );
  let hit = false;
  for (const s of open) {
    const said = wordsOfName((s.was as { fabric: string }).fabric);
    const names = Object.keys(a.state.fabrics.blocks).filter((n) =>
      said.every((word) => wordsOfName(n).includes(word)),
    );
    const places = names.flatMap((n) => a.state.fabrics.blocks[n] ?? []);
    if (names.length < 2 || !places.length) continue;
    put(s.draft, 'places', places, 'answer.fabric', a.items);
    hit = true;
  }
  if (hit) for (const x of a.items) a.used.add(x);
  return hit;
}
const EVERY_CLOTH =
  /^ (?:(?:oh|um|er|well|it's|it 's|they 're|actually|sorry|,) )*(?:both|all|every one|each|the lot|either)\b(?: (?:of|them|it|the|those|'em|em|ones|kinds|sorts|colou?rs|lots|actually|both|i think|too|sad to say|\S+s))*(?: [.,!])* /;

/** "it's the second and third along in the bottom row": where the cloth that the quilt did not know is. */
function placeOfCloth(a: Answering): boolean {
  const open = a.standing.filter(({ was }) => 'places' in was && was.places?.length === 0);
  if (!open.length || a.items.some((x) => x.fabric)) return false;
  if (a.state.drafts.some((d) => d.entry.kind !== 'remark')) return false;
  const said = placesNamed(a.items);
  if (said.kind !== 'specific') return false;
  for (const s of open) put(s.draft, 'places', said.places, 'answer.place', said.items);
  for (const x of said.items) a.used.add(x);
  return true;
}
