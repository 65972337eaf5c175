import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { removalSoon } from './removal-soon.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** A binding finished by hand. */
export function bindingFinished({ items, k, item, thing }: WordAt): WayFound {
  // "new binding on the left side": one place by its words
  if (
    /^binding (?:on|along|down) /.test(item.w) &&
    item.place?.kind === 'part' &&
    /^(new|fresh)$/.test(items[k - 1]?.w ?? '') &&
    !items.some(
      (x, m) =>
        m !== k &&
        ((x.action && !x.stitch) ||
          x.finding ||
          x.fail ||
          x.quantity?.unit ||
          /^(needs?|wants?|will|to)$/.test(x.w)),
    )
  )
    return found({ action: 'bind', form: 'past', at: k, items: [item], rule: 'treatment.binding-on' }, k);
  // "finished the binding tonight": where it was no time at work that ended
  const work = items[k + 2];
  const action =
    work?.action?.form === 'ing' && work.action.v === 'bind'
      ? 'bind'
      : // "the binding on the left side" is one place
        /^binding /.test(work?.w ?? '')
        ? 'bind'
        : undefined;
  if (
    item.w === 'finished' &&
    /^(the|its|all)$/.test(items[k + 1]?.w ?? '') &&
    work &&
    action &&
    !items.some((x) => x.material === 'fabric' || x.stitch)
  )
    return found(
      { action, form: 'past', at: k, items: [item, work], rule: 'treatment.work-finished' },
      k,
      k + 2,
    );
  // "hand-finished the binding", "finished the binding by hand", "hand finish those two later"
  if (
    /^(finish|finished|finishing)( by)?$/.test(item.w) &&
    (items.some((x) => x.part === 'binding' && !x.place?.places[0]?.startsWith('border')) ||
      items.some((x) => x.place && /\bbinding\b/.test(x.w)) ||
      thing === 'binding') &&
    items.some((x) => x.stitch === 'hand' || x.stitch === 'ladder' || x.stitch === 'whipstitch') &&
    !items.some((x) => x.action && x !== item && x.part !== 'binding' && !x.stitch)
  ) {
    return found(
      {
        action: 'bind',
        form: item.w.startsWith('finished') ? 'past' : item.w.startsWith('finishing') ? 'ing' : 'base',
        at: k,
        items: [item],
        rule: 'treatment.binding-finished',
      },
      k,
    );
  }
  return undefined;
}

/** A border, a binding or a label put on. */
export function putOn({ items, k, item, before, thing, ways }: WordAt): WayFound {
  const verb = item.w.split(' ').at(-1)!;
  const on =
    /^(put|sewed|sewn|sew|stitched|attached|attach|add|added|adding|attaching|sewing|putting|goes|go|going|went|gets|on|fixed|joined|join|fix|set|whipped|stitch|reattached|mitred|mitered|machined|got|get|ran|run|stitching)$/.test(
      verb,
    );
  // "I put a patch on the left border": the patch is put on
  const patched = items.slice(k + 1, k + 5).find((x) => /^(patch|patches|net|tulle)$/.test(x.w));
  if (
    on &&
    !patched &&
    // "leave the binding on"
    !ways.some((x) => x.action === 'leave') &&
    !(/^(got|going)$/.test(verb) && items[k + 1]?.w === 'to') &&
    // "the left border's got a big rusty ring on it"
    !(/^got$/.test(verb) && items.slice(k + 1, k + 7).some((x) => x.finding)) &&
    !ways.some((x) => x.action === 'label' || x.action === 'add-border' || x.action === 'bind') &&
    (item.w !== 'on' || / (is|are|'s|'re|both|now|was|were|go|goes) $/.test(before) || isNowOn(items, k))
  ) {
    const target = items.slice(Math.max(0, k - 7), k + 9);
    const border = target.find(
      (x) =>
        x.part === 'border' ||
        x.place?.places.some((p) => p.startsWith('border')) ||
        // "pieced the border strips and put them on"
        (x.object === 'border' && x.w.startsWith('border strip')),
    );
    const binding =
      target.find((x) => x.part === 'binding' || x.w === 'binding') ??
      // "(started on the binding) the top and the left side are on"
      (thing === 'binding' && item.w === 'on' ? sideBefore(items, k) : undefined);
    const label = target.find((x) => x.w === 'label' || /^(name tag|name tape|label|labels)$/.test(x.w));
    const anew =
      / (new|fresh) one /.test(wordsBetween(items, k - 7, k + 9)) ||
      / (it|one|them) /.test(wordsBetween(items, k + 1, k + 4)) ||
      // "it's going right back on"
      (/ it ('s|is|'ll be|will be) $/.test(before) && / back on /.test(wordsBetween(items, k + 1, k + 5))) ||
      // "I'll piece a new border and then it'll go on all the way round"
      (/^(go|goes)$/.test(item.w) &&
        / (?:it|that|they)(?: 'll| will| can| should| 's going to| is going to)? $/.test(before) &&
        items[k + 1]?.w === 'on');
    // "old binding off, new one on": the thing taken off in the same breath
    const taken = ways.findLast((x) => x.object)?.object ?? thing;
    if (
      anew &&
      // "the cat's on it again", after strips were cut
      (item.w !== 'on' || taken !== thing || ways.some((x) => x.object) || / (?:one|ones) $/.test(before)) &&
      (!border || taken === 'border') &&
      (!binding || (taken === 'binding' && / (new|fresh) one /.test(wordsBetween(items, k - 4, k + 4)))) &&
      !label &&
      (taken === 'border' || taken === 'binding') &&
      // "piece a new border and attach it to all four sides"
      (/ (on|back) /.test(
        wordsBetween(items, k, k + 9).replace(/ on (?:the|my) (?:machine|bias|cross) /, ' '),
      ) ||
        /^attach/.test(verb) ||
        // "joined it to the top edge", and not "joined them on the machine", "joined end to end"
        (/^join/.test(verb) && /(?<! end) to (?!end |length )/.test(wordsBetween(items, k, k + 9)))) &&
      (!border || !/ down /.test(wordsBetween(items, k, k + 9))) &&
      !removalSoon(items, k)
    ) {
      return found(
        {
          action: taken === 'border' ? 'add-border' : 'bind',
          form:
            item.action?.form ??
            (/^(put|sewed|sewn|went|on|attached|machined|got)$/.test(item.w) ? 'past' : 'base'),
          at: k,
          items: [item],
          rule: 'treatment.new-one-on',
        },
        k,
      );
    }
    // "new right border cut and sewn on", "strips cut, pieced and put on by machine"
    if (
      !border &&
      !binding &&
      !label &&
      (thing === 'border' || thing === 'binding') &&
      /^(put|sewn|sewed|stitched|attached|added|machined|joined)$/.test(item.w) &&
      /^(on|back on|)$/.test(items[k + 1]?.w ?? '') &&
      (items[k + 1]?.w === 'on' || item.w === 'attached' || item.w === 'added') &&
      // "joined on the bias", "stitched on the machine"
      !/^ on (?:the|my) (?:machine|bias|cross) /.test(wordsBetween(items, k + 1, k + 4)) &&
      items
        .slice(0, k)
        .every((x) => x.action?.form === 'past' || /^(and|,|then|all|now|too|both|were|was)$/.test(x.w)) &&
      !items.slice(k + 2).some((x) => x.place?.kind === 'blocks')
    )
      return found(
        {
          action: thing === 'border' ? 'add-border' : 'bind',
          form: 'past',
          at: k,
          items: [item],
          rule: 'treatment.new-one-on',
        },
        k,
        k + 1,
      );
    const behind = wordsBetween(items, k + 1, k + 9);
    const words = behind
      .replace(/ on (?:the|my) machine /, ' ')
      // "will get a spot clean on Wednesday"
      .replace(/ on (?:mon|tue|wed|thu|fri|sat|sun)[a-z]* /, ' ');
    const particle =
      item.w === 'on' ||
      (target.some((x) => x.w === 'label') &&
        // "label to go bottom right corner"
        (/ (in|at|to|into|onto) /.test(behind) ||
          (/^(go|goes|going)$/.test(item.w) && items[k + 1]?.place !== undefined))) ||
      /^(add|added|adding|attached|attach|attaching|mitred|mitered|reattached)$/.test(item.w) ||
      / (on|back|down) /.test(words);
    const form: Way['form'] =
      item.action?.form ??
      (/^(put|sewed|sewn|stitched|attached|added|went|on|fixed|joined|set|whipped|mitred|mitered|reattached|machined|got|ran)$/.test(
        verb,
      )
        ? 'past'
        : /ing$/.test(verb)
          ? 'ing'
          : 'base');
    const spoken: Way['form'] =
      item.w === 'put' &&
      (/ (to|will|'ll|gonna|must|could|should) $/.test(before) ||
        // "going to piece it and put it on", but "pieced it out to length and put it on"
        (/ and $/.test(before) &&
          / (to|will|'ll|gonna|must|could|should) /.test(before) &&
          !items.slice(0, k).some((x) => x.action?.form === 'past')))
        ? 'base'
        : form;
    // "label going on the bottom right corner": to be sewn on
    const toGo = item.w === 'going' && label && !/ (?:now|at the moment) /.test(words);
    if (
      label &&
      particle &&
      !removalSoon(items, k) &&
      (!border || items.indexOf(label) < items.indexOf(border))
    ) {
      return found(
        {
          action: 'label',
          form: toGo ? 'base' : spoken,
          at: k,
          items: [item, label],
          rule: 'treatment.label-on',
        },
        k,
        items.indexOf(label),
      );
    }
    // "sewed the bottom one back down": closed again, and no new border
    const down = (/ down /.test(behind) && !/ on /.test(behind)) || /^ (?:its|their) way /.test(behind);
    // "two patches are on the bottom border, both machined": what was put on it was told
    const patched = ways.some((x) => x.rule === 'treatment.in-place');
    if (border && particle && !down && !patched && !removalSoon(items, k) && !isWhere(items, k, border)) {
      return found(
        { action: 'add-border', form: spoken, at: k, items: [item, border], rule: 'treatment.border-on' },
        k,
      );
    }
    // "the stitching on the binding is loose": a thing
    const asNoun = form === 'ing' && /^(the|its|some|of|all|old|loose)$/.test(items[k - 1]?.w ?? '');
    if (binding && particle && !asNoun && !removalSoon(items, k) && !isWhere(items, k, binding)) {
      return found(
        { action: 'bind', form: spoken, at: k, items: [item, binding], rule: 'treatment.binding-on' },
        k,
      );
    }
  }
  return undefined;
}

/** The side of which "on" is said: "the left side is on now", "top edge on by machine". */
function sideBefore(items: Item[], k: number): Item | undefined {
  let m = k - 1;
  while (/^(is|'s|are|'re|was|were|both|all|now|back)$/.test(items[m]?.w ?? '')) m--;
  const side = items[m];
  return side?.place?.places.length && side.place.places.every((p) => p.startsWith('edge-'))
    ? side
    : undefined;
}

/** "the stain's on the top border", "it's on the binding": where something is, and nothing that was put on. */
const isWhere = (items: Item[], k: number, thing: Item): boolean => {
  const at = items.indexOf(thing);
  return (
    items[k]!.w === 'on' &&
    at > k &&
    at <= k + 3 &&
    /^(?:is|are|'s|'re|was|were|now)$/.test(items[k - 1]?.w ?? '') &&
    !items.slice(0, k).some((x) => /^(?:border|binding)/.test(x.part ?? x.object ?? ''))
  );
};

/** "L border on, by machine", "new one on with petersham": the border, binding or label is on. */
function isNowOn(items: Item[], k: number): boolean {
  const thing = items[k - 1];
  const next = items[k + 1]?.w ?? '';
  const named =
    thing !== undefined &&
    (thing.part === 'border' ||
      (thing.place?.kind === 'part' && thing.place.places.every((p) => p.startsWith('edge-'))) ||
      thing.part === 'binding' ||
      thing.object === 'label' ||
      thing.object === 'border' ||
      thing.object === 'binding' ||
      (/^(one|ones)$/.test(thing.w) && /^(new|fresh)$/.test(items[k - 2]?.w ?? '')));
  // "new binding on the bottom", "borders on left and right"
  const side = items[k + (next === 'the' ? 2 : 1)]?.place;
  if (
    named &&
    side?.kind === 'part' &&
    side.places.every((p) => /^(edge|border)-/.test(p)) &&
    !items.some((x) => x.finding || x.fail || (x.action && !x.part) || x.material === 'net')
  )
    return true;
  // "binding on by machine, top & left"
  return (
    named &&
    (/^(|,|\.|by|w|with|at|too|as|and|&|now|all|in|;|both|\()$/.test(next) ||
      items[k + 1]?.stitch !== undefined)
  );
}

const GOES_ON = { border: 'add-border', binding: 'bind', label: 'label' } as const;

/** "the top border's pieced and on", "right border off, pressed, back on again": sewn on, after what was done to it. */
export function onAgain({ items, k, item, before, after, thing, ways }: WordAt): WayFound {
  if (
    !/^(on|back on)$/.test(item.w) ||
    // "the left border's back on, by machine"
    (!/ (?:and|&|,|then)(?: now| all)?(?: back)? $|^ (?:back )?$| (?:is|'s|are|'re)(?: all| now| both)* back $/.test(
      before,
    ) &&
      !(item.w === 'back on' && / (?:is|'s|are|'re)(?: all| now| both)* $/.test(before)))
  )
    return undefined;
  if (
    !/^ *(?:(?:again|now|too|already|at last) )*(?: *$|[,.;] |and |so |but |by (?:hand|machine) )/.test(after)
  )
    return undefined;
  const named = items.slice(0, k).findLast((x) => /^(border|binding|label)$/.test(x.part ?? x.object ?? ''));
  const on = named ? (named.part ?? named.object) : thing;
  if (!on || !Object.hasOwn(GOES_ON, on)) return undefined;
  if (
    named &&
    !/ back $/.test(before) &&
    item.w !== 'back on' &&
    !items.slice(0, k).some((x) => x.action?.form === 'past')
  )
    return undefined;
  const action = GOES_ON[on as keyof typeof GOES_ON];
  if (ways.some((x) => x.action === action)) return undefined;
  return found({ action, form: 'past', at: k, items: [item], rule: 'treatment.on-again' }, k);
}
