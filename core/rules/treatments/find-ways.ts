import type { Action, RemovedObject } from '../../../shared/vocabulary.ts';
import { givenForm, isGiven, isPredicate, removalAt } from '../clause.ts';
import type { Item } from '../item.ts';

/** A treatment that the words name, as a verb or as a thing ("net over it", "silk behind"). */
export type Way = {
  action?: Action;
  object?: RemovedObject;
  form: 'past' | 'ing' | 'base' | 'noun';
  /** Index in the clause of the word that the state hangs on. */
  at: number;
  items: Item[];
  /** What is put on, in or behind. */
  stuff?: Item;
  rule: string;
};

const words = (items: Item[], from: number, to: number): string =>
  ` ${items
    .slice(from, to)
    .map((x) => x.w)
    .join(' ')} `;
const isCloth = (item: Item | undefined): boolean =>
  item !== undefined &&
  (item.material === 'fabric' ||
    item.material === 'interfacing' ||
    item.material === 'backing' ||
    item.fabric !== undefined ||
    item.w === 'patch' ||
    item.w === 'piece' ||
    item.w === 'bit' ||
    item.w === 'support');
const isNet = (item: Item | undefined): boolean => item?.material === 'net' && !item.fabric;

/** All treatments named in a clause, in the order said. */
export function findWays(items: Item[], thing?: string): Way[] {
  const ways: Way[] = [];
  const used = new Set<number>();
  const all = words(items, 0, items.length);
  const take = (way: Way, ...indices: number[]): void => {
    ways.push(way);
    for (const k of indices) used.add(k);
  };
  // Replacing: "cut out … and pieced in", "new piece cut in", "set in a new one", "new … pieced in"
  const cutOut =
    /\b(cut|cuts|cutting|take|took|taking|taken|unpick|unpicked)\b.* (out|away|altogether|entirely)\b/.test(
      all,
    ) || /\bcut out\b/.test(all);
  const newIn =
    /\b(pieced?|piecing|set|sew|sewed|sewn|let|put|inset|insert|inserted|setting|sewing|putting|letting|stitched|stitch) .*\b(in|into)\b/.test(
      all,
    ) && /\b(new|fresh|replacement|another|one|in)\b/.test(all);
  const newPiece =
    /\b(new|fresh|replacement) (pieces?|ones?|bits?|blocks?|patch of|[a-z]+)( of [a-z]+)?( [a-z]+)* (cut|set|let|pieced|sewn|put|sewed|stitched|inset|going|goes|to go|went) in\b/.test(
      all,
    ) || /\bnew pieces?\b/.test(all);
  const isReplace =
    (cutOut &&
      newIn &&
      /\b(piec|set in|let in|sew|sewn|sewed|in a new|new)\b/.test(all.replace(/pieced?|piecing/, 'piec'))) ||
    newPiece ||
    (/\b(pieced|piecing|piece|set|let) (in )?(a )?(new|fresh|replacement|another)\b/.test(all) &&
      !/\bborder/.test(all)) ||
    (/\b(pieced|set|let) .{0,30}\bin\b/.test(all) && /\bnew\b/.test(all) && !/\bborder\b/.test(all)) ||
    newCloth(items);
  if (isReplace) {
    const verbs = items
      .map((x, k) =>
        (x.action && ['cut', 'piece', 'replace', 'resew'].includes(x.action.v) && isPredicate(items, k)) ||
        (removalAt(items, k) && /^(cut|took|take|taking|taken|unpick|unpicked)$/.test(x.w)) ||
        /^(set|let|put|setting|putting|letting|inset)$/.test(x.w)
          ? k
          : -1,
      )
      .filter((k) => k >= 0);
    const at = verbs[0] ?? items.findIndex((x) => x.w === 'new' || x.w === 'fresh' || x.w === 'replacement');
    const head = items[Math.max(at, 0)]!;
    let form: Way['form'] = 'noun';
    if (verbs.length) {
      const forms = verbs.map(
        (k) =>
          items[k]!.action?.form ??
          removalAt(items, k)?.form ??
          (/^(set|let|put|inset)$/.test(items[k]!.w) ? 'past' : 'ing'),
      );
      form = forms.includes('ing') ? 'ing' : forms[0]!;
      const lead = items[at - 1]?.w ?? '';
      if (/^(to|will|'ll|gonna|or|either|could|might|should|must|maybe)$/.test(lead)) form = 'base';
      if (items[at]?.w === 'cut' && /\b(gets?|be|is to be) (it )?$/.test(words(items, 0, at))) form = 'past';
    }
    const stuff = items.findLast(
      (x) => isCloth(x) && (x.fabric || (x.material === 'fabric' && x.w !== 'piece' && x.w !== 'bit')),
    );
    take(
      {
        action: 'replace',
        form,
        at: Math.max(at, 0),
        items: [head],
        rule: 'treatment.replace',
        ...(stuff ? { stuff } : {}),
      },
      ...verbs,
    );
    items.forEach((x, k) => {
      if (
        x.w === 'patch' ||
        x.w === 'piece' ||
        (x.action && ['cut', 'piece', 'replace'].includes(x.action.v))
      )
        used.add(k);
    });
  }
  // first what is told by a thing: "sewed a patch on", "net over it"
  for (let k = 0; k < items.length; k++) {
    if (used.has(k)) continue;
    const item = items[k]!;
    const after = words(items, k + 1, Math.min(items.length, k + 7));
    const before = words(items, Math.max(0, k - 6), k);
    // Net over the face
    if (
      isNet(item) &&
      !items.slice(0, k).some((x) => x.action?.v === 'stabilize' && x.action.form !== 'base') &&
      (/ (over|across|on|on top|onto|overlay|it is|laid|face|for|goes|stitched|sewn|sewed|round|instead) /.test(
        after,
      ) ||
        / (over|cover|covered|covering|overlay|under|lay|laid|layer of|layers of|in|with|maybe|or|either|about|put|gets?|go with|going with|try|some|a|the|no|forget|with a|'s) $/.test(
          before,
        ) ||
        /\b(off|overlay)\b/.test(after))
    ) {
      if (
        !/\b(bought|buy|need|got|still|pick(ed)? up|yards?|metres?|ordered|spent)\b/.test(all) ||
        / (over|across|on top) /.test(after)
      ) {
        const plain = plainVerbNear(items, k);
        const verb =
          plain && plain.form !== 'noun'
            ? plain
            : verbNear(items, k, ['overlay', 'layer', 'resew', 'baste', 'stabilize'], used);
        take(
          {
            action: 'overlay',
            form: verb?.form ?? 'noun',
            at: verb?.k ?? k,
            items: verb ? [items[verb.k]!, item] : [item],
            stuff: item,
            rule: 'treatment.net-over',
          },
          k,
          ...(verb ? [verb.k] : []),
        );
        continue;
      }
    }
    // Cloth or fusible behind
    if (
      (isCloth(item) || item.material === 'interfacing' || item.w === 'cloth' || item.w === 'something') &&
      / (behind|underneath|to the back|on the back|on the reverse|at the back|in behind|support|as (a )?support|for support|under|beneath|backing it|to back) /.test(
        `${after} `,
      )
    ) {
      if (
        !(item.w === 'patch' && !/ (behind|underneath|under|beneath) /.test(after)) &&
        !/ (turned|folded|tucked|turning|edges) under /.test(after) &&
        !(items.some((x, m) => m > k && x.finding && isPredicate(items, m)) && !plainVerbNear(items, k)) &&
        !removalSoon(items, k)
      ) {
        const verb =
          verbNear(items, k, ['resew', 'stabilize', 'piece', 'baste', 'patch', 'overlay', 'cut'], used) ??
          plainVerbNear(items, k);
        if (/\b(behind|underneath|support|under|beneath)\b/.test(after) || verb) {
          if (item.object === 'label' || item.material === 'other') continue;
          take(
            {
              action: 'stabilize',
              form: verb?.form ?? 'noun',
              at: verb?.k ?? k,
              items: verb ? [items[verb.k]!, item] : [item],
              stuff: item,
              rule: 'treatment.cloth-behind',
            },
            k,
            ...(verb ? [verb.k] : []),
          );
          continue;
        }
      }
    }
    if (
      /^(fusible|interfacing)$/.test(item.w) &&
      item.material === 'interfacing' &&
      !removalSoon(items, k) &&
      !/\b(bought|buy|need|got|still|ordered)\b/.test(all)
    ) {
      const verb = verbNear(items, k, ['stabilize'], used);
      if (
        verb ||
        / (put|ironed|fused|with|iron|fuse|or|either|maybe) $/.test(
          before.replace(/ (some|a|the|bit of|piece of|light|lightweight) $/, ' '),
        )
      ) {
        take(
          {
            action: 'stabilize',
            form: verb?.form ?? (/ (put|ironed|fused) /.test(before) ? 'past' : 'noun'),
            at: verb?.k ?? k,
            items: [item],
            stuff: item,
            rule: 'treatment.fusible',
          },
          k,
          ...(verb ? [verb.k] : []),
        );
        const ironed = items.findIndex((x) => x.action?.v === 'press');
        if (ironed >= 0) used.add(ironed);
        continue;
      }
    }
    // "put a patch on", "needs a patch", "patch or leave"
    if ((item.w === 'patch' || item.w === 'patches') && !(item.action && isPredicate(items, k))) {
      if (
        / (a|an|new|another|denim|calico|small|little|no) $/.test(before) ||
        / (not|forget|drop|scrap|instead of|than|with|for|between|be|no) (the |a )?$/.test(before) ||
        /^ (it is|it 's|it 'll be) /.test(after) ||
        (items[k - 1]?.material === 'fabric' &&
          (k < 2 || /^(,|:|-|with|a|w|\.)$/.test(items[k - 2]?.w ?? ''))) ||
        / (put|sewed|sewn|sew|stitched|needs?|wants?|gets?|or|either|maybe|to|with|of|for) $/.test(
          before.replace(/ (a|an|new|another|little|small|bit of|the|fresh) $/, ' '),
        )
      ) {
        if (
          / (old|that|this|previous|earlier|existing|clumsy|under|has|has an|the old|somebody's) (a )?$/.test(
            before,
          ) ||
          removalSoon(items, k)
        )
          continue;
        if (
          / (is|has|there|there's|'s) (a|an)( [a-z]+)? $/.test(before) &&
          / (on|over|in) /.test(after) &&
          !/\b(new|put|sewn|sewed)\b/.test(all)
        )
          continue;
        const verb =
          verbNear(items, k, ['resew', 'patch', 'piece', 'baste', 'cut'], used) ?? plainVerbNear(items, k);
        take(
          {
            action: 'patch',
            form: verb?.form ?? 'noun',
            at: verb?.k ?? k,
            items: [item],
            rule: 'treatment.a-patch',
          },
          k,
          ...(verb ? [verb.k] : []),
        );
        continue;
      }
    }
    // "a darn, could be a patch", "going with the darn", "forget the darn"
    if (
      /^(darn|darns)$/.test(item.w) &&
      !isPredicate(items, k) &&
      (/^ (it is|it 's|it 'll be) /.test(after) ||
        / (needs?|wants?|gets?|between|or|and|be|'s|is|maybe|either|with|for|forget|drop|scrap|not|no|than|of|rather) (a |the |an |just a |little |small |quick )*$/.test(
          before,
        )) &&
      !/ (old|that|this|previous|earlier|existing|clumsy|has|somebody's) (a |little )*$/.test(before) &&
      !removalSoon(items, k)
    ) {
      take({ action: 'darn', form: 'noun', at: k, items: [item], rule: 'treatment.a-darn' }, k);
      continue;
    }
    // "gave the backing a good vacuum"
    if (item.action && isGiven(items, k) && item.action.form === 'base') {
      take(
        {
          action: item.action.v,
          form: givenForm(items, k),
          at: k,
          items: [item],
          rule: `treatment.given-${item.action.v}`,
        },
        k,
      );
      continue;
    }
    // "laid it all up, back and batting and top"
    if (
      /^(laid|lay|laying)$/.test(item.w) &&
      / (out|up|together) /.test(after) &&
      !/ to dry /.test(` ${all}`) &&
      items.filter((x) => x.part === 'backing' || x.part === 'batting' || x.part === 'top').length >= 2
    ) {
      take(
        {
          action: 'layer',
          form: item.w === 'laid' ? 'past' : item.w === 'laying' ? 'ing' : 'base',
          at: k,
          items: [item],
          rule: 'treatment.laid-out',
        },
        k,
      );
      continue;
    }
    // Leaving as found
    if (isLeave(items, k)) {
      const form = item.action?.form ?? 'past';
      take(
        {
          action: 'leave',
          form: /^(leave|leaving|let)$/.test(item.w) ? (item.w === 'leaving' ? 'ing' : 'base') : form,
          at: k,
          items: [item],
          rule: 'treatment.leave',
        },
        k,
      );
      continue;
    }
    // "hand-finished the binding", "finished the binding by hand", "hand finish those two later"
    if (
      /^(finish|finished|finishing)( by)?$/.test(item.w) &&
      (items.some((x) => x.part === 'binding' && !x.place?.places[0]?.startsWith('border')) ||
        items.some((x) => x.place?.rule === 'place.part-side' && x.w.startsWith('binding')) ||
        thing === 'binding') &&
      items.some((x) => x.stitch === 'hand' || x.stitch === 'ladder' || x.stitch === 'whipstitch') &&
      !items.some((x) => x.action && x !== item && x.part !== 'binding' && !x.stitch)
    ) {
      take(
        {
          action: 'bind',
          form: item.w.startsWith('finished') ? 'past' : item.w.startsWith('finishing') ? 'ing' : 'base',
          at: k,
          items: [item],
          rule: 'treatment.binding-finished',
        },
        k,
      );
      continue;
    }
    // "ran the seam up again on the machine"
    if (
      /^(ran|run|running)$/.test(item.w) &&
      / up /.test(` ${after}`) &&
      items.slice(k + 1, k + 8).some((x) => x.seam || (x.w === 'it' && thing === 'seam'))
    ) {
      take(
        {
          action: 'resew',
          form:
            item.w === 'ran'
              ? 'past'
              : item.w === 'running'
                ? 'ing'
                : / (i|have|'ve) $/.test(before)
                  ? 'past'
                  : 'base',
          at: k,
          items: [item],
          rule: 'treatment.ran-up',
        },
        k,
      );
      continue;
    }
    // Putting a border, a binding, a label on
    const verb = item.w.split(' ').at(-1)!;
    const on =
      /^(put|sewed|sewn|sew|stitched|attached|attach|add|added|adding|attaching|sewing|putting|goes|go|going|went|gets|on|fixed|joined|fix|set|whipped|stitch|reattached|mitred|mitered|machined|got|ran|run|stitching)$/.test(
        verb,
      );
    if (
      on &&
      !ways.some((x) => x.action === 'label' || x.action === 'add-border' || x.action === 'bind') &&
      (item.w !== 'on' || / (is|are|'s|'re|both|now|was|were|go|goes) $/.test(before) || isNowOn(items, k))
    ) {
      const target = items.slice(Math.max(0, k - 7), k + 9);
      const border = target.find(
        (x) => x.part === 'border' || x.place?.places.some((p) => p.startsWith('border')),
      );
      const binding = target.find((x) => x.part === 'binding' || x.w === 'binding');
      const label = target.find((x) => x.w === 'label' || /^(name tag|name tape|label|labels)$/.test(x.w));
      const anew =
        / (new|fresh) one /.test(words(items, Math.max(0, k - 7), k + 9)) ||
        / (it|one) /.test(words(items, k + 1, k + 4));
      if (
        anew &&
        !border &&
        !binding &&
        !label &&
        (thing === 'border' || thing === 'binding') &&
        / (on|back) /.test(words(items, k, k + 9)) &&
        !removalSoon(items, k)
      ) {
        take(
          {
            action: thing === 'border' ? 'add-border' : 'bind',
            form:
              item.action?.form ??
              (/^(put|sewed|sewn|went|on|attached|machined|got)$/.test(item.w) ? 'past' : 'base'),
            at: k,
            items: [item],
            rule: 'treatment.new-one-on',
          },
          k,
        );
        continue;
      }
      const particle =
        item.w === 'on' ||
        (target.some((x) => x.w === 'label') && / (in|at|to|into|onto) /.test(words(items, k + 1, k + 9))) ||
        /^(add|added|adding|attached|attach|attaching|mitred|mitered|reattached)$/.test(item.w) ||
        / (on|back|down) /.test(`${words(items, k + 1, k + 9)}`);
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
        / (to|will|'ll|gonna|i 'll|must|could|should|and) $/.test(before) &&
        !/ i $/.test(before) &&
        / (to|will|'ll|gonna|must|could|should) /.test(before)
          ? 'base'
          : form;
      if (
        label &&
        particle &&
        !removalSoon(items, k) &&
        (!border || items.indexOf(label) < items.indexOf(border))
      ) {
        take(
          { action: 'label', form: spoken, at: k, items: [item, label], rule: 'treatment.label-on' },
          k,
          items.indexOf(label),
        );
        continue;
      }
      if (border && particle && !removalSoon(items, k)) {
        take(
          { action: 'add-border', form: spoken, at: k, items: [item, border], rule: 'treatment.border-on' },
          k,
        );
        continue;
      }
      if (binding && particle && !removalSoon(items, k)) {
        take(
          { action: 'bind', form: spoken, at: k, items: [item, binding], rule: 'treatment.binding-on' },
          k,
        );
        continue;
      }
    }
    // Taking off
    const removal = removalAt(items, k);
    if (removal && !item.place) {
      const object = objectOf(items, k, removal.particle) ?? thingOf(items, k, removal.particle, thing);
      const plain = /^(remov|unpick|peel|strip|detach|unstitch|unpin|snip|unsew)/.test(item.w);
      if (object || (plain && removal)) {
        if (item.action?.v === 'cut' && !object) continue;
        if (
          /^(get|gets|got|getting|have|has|had|having|come|comes|came|coming|drop|dropped|take|takes)$/.test(
            item.w,
          ) &&
          !object
        )
          continue;
        take(
          {
            action: 'remove',
            object: object?.object ?? 'piece',
            form:
              removal.form === 'base' &&
              /^(come|comes)$/.test(item.w) &&
              / (has|have|'ve|'s|had)( all| now| just| already| finally)* $/.test(before)
                ? 'past'
                : removal.form,
            at: k,
            items: object ? [item, object.item] : [item],
            rule: 'treatment.remove',
          },
          k,
          ...(object ? [items.indexOf(object.item)] : []),
          ...(removal.particle ? [removal.particle] : []),
        );
        continue;
      }
    }
    if (
      (item.w === 'off' || item.w === 'out') &&
      !used.has(k) &&
      (/ (is|'s|are|'re|both|all|now|was|were|already|be|to|must|has to|to be|come) $/.test(before) ||
        isPredicate(items, k))
    ) {
      const object = [...items.slice(0, k)]
        .reverse()
        .find((x) => x.object || x.part === 'binding' || x.part === 'border');
      const isTreatmentOff = object === undefined && items.slice(0, k).some((x) => isNet(x));
      if (object && !isTreatmentOff && !(object.stitches && object.seam)) {
        const objectId = object.object ?? (object.part === 'border' ? 'border' : 'binding');
        if (objectId !== 'piece' && !/\b(of the wash|of square|of true)\b/.test(after)) {
          take(
            {
              action: 'remove',
              object: objectId,
              form:
                / (to|must|be|to be|has to|come) $/.test(before) && !/ (has been|been) $/.test(before)
                  ? 'base'
                  : 'past',
              at: k,
              items: [item, object],
              rule: 'treatment.is-off',
            },
            k,
            items.indexOf(object),
          );
          continue;
        }
      }
    }
    // "the ties come out first"
    if (item.fail && /^come (out|off|away)$/.test(item.w) && !/ (have|has|'ve|'s|had) $/.test(before)) {
      const object = [...items.slice(0, k)].reverse().find((x) => x.object);
      if (object?.object) {
        take(
          {
            action: 'remove',
            object: object.object,
            form:
              / (first|next|before|later|tomorrow|then|need|needs|will|'ll|to|must|should|has|have|can|could) /.test(
                all,
              ) || /s$/.test(object.w)
                ? 'base'
                : 'past',
            at: k,
            items: [item, object],
            rule: 'treatment.comes-out',
          },
          k,
          items.indexOf(object),
        );
      }
    }
  }
  // then the verbs that are left
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (item.action && !used.has(k) && isPredicate(items, k)) {
      const v = item.action.v;
      if (v === 'leave') continue;
      if (item.finding && !item.material && v !== 'darn') continue;
      if (item.seam && item.w !== 'seamed') continue;
      const refined = refineAction(items, k, v);
      if (refined)
        take(
          {
            action: refined,
            form: item.action.form,
            at: k,
            items: [item],
            rule: `treatment.verb-${refined}`,
          },
          k,
        );
    }
  }
  // "fused interfacing behind 6-5": the cloth and the verb tell one treatment
  const told = ways.filter(
    (x) => x.form !== 'noun' || !ways.some((y) => y !== x && y.action === x.action && y.form !== 'noun'),
  );
  return told.sort((a, b) => a.at - b.at);
}

/** "L border on, by machine", "new one on with petersham": the border, binding or label is on. */
function isNowOn(items: Item[], k: number): boolean {
  const thing = items[k - 1];
  const next = items[k + 1]?.w ?? '';
  const named =
    thing !== undefined &&
    (thing.part === 'border' ||
      thing.part === 'binding' ||
      thing.object === 'label' ||
      thing.object === 'border' ||
      thing.object === 'binding' ||
      (/^(one|ones)$/.test(thing.w) && /^(new|fresh)$/.test(items[k - 2]?.w ?? '')));
  return named && /^(|,|\.|by|w|with|at|too|as|and|&|now|all|in|;|both|\()$/.test(next);
}

/** "new teal lawn in", "a new backing altogether", "new block instead". */
function newCloth(items: Item[]): boolean {
  return items.some((x, k) => {
    if (!/^(new|fresh)$/.test(x.w)) return false;
    const thing = items[k + 1];
    const after = items[k + 2];
    if (!thing) return false;
    const cloth = Boolean(thing.fabric || thing.material === 'fabric' || thing.material === 'backing');
    if (!cloth && !/^(block|piece|square|one)$/.test(thing.w)) return false;
    if (/^(altogether|instead|entirely|completely)$/.test(after?.w ?? '')) return true;
    const end = items[k + 3];
    return (
      cloth &&
      thing.material !== 'backing' &&
      after?.w === 'in' &&
      (!end || end.token.kind === 'mark' || /^(by|w|with|now|or|and)$/.test(end.w))
    );
  });
}

function removalSoon(items: Item[], k: number): boolean {
  for (let m = Math.max(0, k - 6); m < Math.min(items.length, k + 3); m++)
    if (removalAt(items, m)) return true;
  return false;
}

function verbNear(
  items: Item[],
  k: number,
  actions: Action[],
  used: Set<number>,
): { k: number; form: Way['form'] } | undefined {
  let best: { k: number; form: Way['form'] } | undefined;
  for (let m = Math.max(0, k - 8); m < Math.min(items.length, k + 8); m++) {
    const a = items[m]!.action;
    if (
      !a ||
      m === k ||
      used.has(m) ||
      !actions.includes(a.v) ||
      ((items[m]!.material || items[m]!.part) && a.form === 'base')
    )
      continue;
    if (items[m]!.material === 'backing' && a.form === 'ing') continue;
    if (!best || Math.abs(m - k) < Math.abs(best.k - k)) best = { k: m, form: a.form };
  }
  return best;
}

const PLAIN: Record<string, Way['form']> = {
  put: 'past',
  laid: 'past',
  lay: 'base',
  laying: 'ing',
  putting: 'ing',
  slipped: 'past',
  tucked: 'past',
  slid: 'past',
  set: 'past',
  got: 'past',
  has: 'past',
  have: 'past',
  "'ve": 'past',
  glued: 'past',
  ironed: 'past',
  stuck: 'past',
  placed: 'past',
  slip: 'base',
  tuck: 'base',
  gets: 'noun',
  get: 'noun',
  needs: 'noun',
  wants: 'noun',
  need: 'noun',
  goes: 'noun',
  going: 'noun',
  sandwiched: 'past',
  basted: 'past',
  went: 'past',
  fixed: 'past',
  give: 'base',
  gave: 'past',
};
function plainVerbNear(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = k - 1; m >= Math.max(0, k - 7); m--) {
    const w = items[m]!.w;
    if (Object.hasOwn(PLAIN, w)) {
      let form = PLAIN[w]!;
      if (w === 'put' && /^(to|will|'ll|could|might|gonna|should|must)$/.test(items[m - 1]?.w ?? ''))
        form = 'base';
      if (
        (w === 'have' || w === 'get') &&
        /^(to|will|'ll|must|should|gonna|could)$/.test(items[m - 1]?.w ?? '')
      )
        form = 'noun';
      return { k: m, form };
    }
  }
  return undefined;
}

/** "took it out", "took out what was left of them": the thing spoken of before. */
function thingOf(
  items: Item[],
  k: number,
  particle: number | undefined,
  thing: string | undefined,
): { object: RemovedObject; item: Item } | undefined {
  if (!thing || thing === 'seam') return undefined;
  const next = items.slice(k + 1, (particle ?? k) + 6);
  const pronoun = next.find((x) => /^(it|them|that|those|what|em|this)$/.test(x.w));
  return pronoun ? { object: thing as RemovedObject, item: items[k]! } : undefined;
}

/** What a removing verb takes off: the nearest thing after it, or before it in "the ties came out". */
function objectOf(
  items: Item[],
  k: number,
  particle: number | undefined,
): { object: RemovedObject; item: Item } | undefined {
  const limit = Math.min(items.length, (particle ?? k) + 9);
  const ofThing = (x: Item): RemovedObject | undefined => {
    if (x.place?.places.some((p) => p.startsWith('border'))) return 'border';
    if (x.seam && x.w.startsWith('seam')) return 'stitching';
    // "somebody's clumsy darn", "the iron-on patch"
    if (x.finding === 'old-repair') return 'old-patch';
    const next = items[items.indexOf(x) + 1];
    if (
      x.object &&
      next?.object &&
      next.object !== 'piece' &&
      !next.action?.form.startsWith('p') &&
      !next.seam &&
      x.token.kind === 'word'
    )
      return next.object;
    return x.object;
  };
  // "peeled that patch off", "unpicked the old tacking", "pulled an old laundry label off the back"
  for (let m = k + 1; m < limit; m++) {
    const x = items[m]!;
    if (/^(but|because|there|i|so|then|from|behind|with|to)$/.test(x.w) && m > (particle ?? k)) break;
    if (
      particle !== undefined &&
      m > particle &&
      x.place &&
      /^(off|from|of)$/.test(items[m - 1]?.w === 'the' ? (items[m - 2]?.w ?? '') : (items[m - 1]?.w ?? '')) &&
      !x.stitches &&
      !['binding', 'border'].includes(x.part ?? '')
    ) {
      // "took the label off the back": the back is where, not what
      continue;
    }
    const object = ofThing(x);
    if (object) return { object, item: x };
    if ((x.fabric || x.material === 'fabric') && !x.object && particle !== undefined && m < particle) {
      const later = items.slice(m + 1, limit).find((y) => y.object);
      if (!later) return { object: 'piece', item: x };
    }
  }
  for (let m = k - 1; m >= Math.max(0, k - 7); m--) {
    const x = items[m]!;
    const object = ofThing(x);
    if (object) return { object, item: x };
  }
  return undefined;
}

function isLeave(items: Item[], k: number): boolean {
  const w = items[k]!.w;
  const after = words(items, k + 1, Math.min(items.length, k + 9));
  const before = words(items, Math.max(0, k - 5), k);
  if (w === 'stays' || w === 'stay' || w === 'staying') return !/ (up late|to |with me|late) /.test(after);
  if (w === 'leave' || w === 'leaves')
    return (
      !/ (for (the |my )?(shop|work|market|town|day)|at |by |early|notes?|room|a (gap|tail|note)) /.test(
        after,
      ) &&
      !/ (to|before i|on) $/.test(
        before.replace(/ (better|best|going|decided|agreed|want|wants|like|said|says) to $/, ' '),
      )
    );
  if (items.slice(k + 1, k + 6).some((x) => x.measure === 'tail' || x.measure === 'overhang')) return false;
  if (w === 'leaving') return !/ (a gap|for town|room|at |the house|by ) /.test(after);
  if (w === 'live' || w === 'living')
    return (
      /^ with (it|that|them|this|those|the) /.test(after) ||
      (/ live with $/.test(`${before}live with `) && items[k + 2]?.place !== undefined)
    );
  if (w === 'left') {
    if (items[k]!.place) return false;
    // "4-5 left", "4-5 can be left"
    const lead = items[k - 1];
    const next = items[k + 1];
    if (
      (!next || /^(,|and|for|\)|then|but|too)$/.test(next.w)) &&
      lead &&
      ((lead.place && lead.place.kind !== 'part') ||
        / (can|could|to|should|will|'ll|may|might|get|gets|best) (be )?$/.test(before))
    )
      return !items.some((x) => x.quantity?.unit || x.duration);
    return / (it|that|them|those|the|alone|as|be|well|just|this|both|these) /.test(after.slice(0, 8)) &&
      !/ (on|to|over|hand|edge|side|with|is|what 's|whats|anything|have|i 've|'ve) $/.test(
        before.replace(/ (i|just|have|'ve|and|is|was|'s|are|be|'re) $/, ' x '),
      )
      ? !/ (is|are|'s) $/.test(before) || / (as|alone|be|well) /.test(after)
      : / (as (is|it|found|they|was)|alone|be|well alone|exactly as|just as|that way) /.test(
          after.slice(0, 18),
        );
  }
  if (w === 'let') return / (it|that|them|those|well)? ?(alone|be|lie) /.test(after);
  if (w === 'alone')
    return (
      !/^ (was|took|is|came) /.test(after) &&
      / (well|it|that|them|being) $/.test(before) &&
      !/ (leave|left|leaving|let|for that) /.test(before)
    );
  if (w === 'touching' || w === 'touch')
    return / (not|n't|no) /.test(before) && !/ (missing|gone) /.test(after);
  return false;
}

/** The verb's treatment once its object is looked at. */
function refineAction(items: Item[], k: number, v: Action): Action | undefined {
  const all = words(items, 0, items.length);
  const after = words(items, k + 1, Math.min(items.length, k + 9));
  const w = items[k]!.w;
  const before = words(items, Math.max(0, k - 4), k);
  if (v === 'resew') {
    if (
      w.startsWith('clos') &&
      !/\b(seam|seams|it|them|tear|split|rip|gap|up|hole|those|that|by|with|both|opening|slit|join|\d-\d)\b/.test(
        all,
      ) &&
      !items.some((x) => x.place)
    )
      return undefined;
    if (w.startsWith('catch') || w.startsWith('caught'))
      return /\b(down|back|in)\b/.test(after) ? 'resew' : undefined;
    if (w.startsWith('fix') && /\b(machine|lamp|deadline|price|date)\b/.test(after)) return undefined;
    if (w === 'fixed' && !items.some((x) => x.place || x.seam)) return undefined;
    if (/^(stitch|seam)$/.test(w) && !/ (to|will|'ll|must|gonna|should) $/.test(before))
      return /^ (it|the|that|them|up|down|back|along|both)/.test(after) ? 'resew' : undefined;
    if (/\b(in|on) (behind|the back)\b/.test(after) || / behind /.test(after)) return 'stabilize';
    if (items.some((x) => x.w === 'label') && /\b(on|to|in|at)\b/.test(after)) return 'label';
    if (
      / together /.test(after) &&
      /\b(strips?|pieces?|new|squares?|panels?|end to end|borders?)\b/.test(all)
    )
      return 'piece';
    if (/\b(pieces?|strips?|panels?|lengths?) (of [a-z]+ )?(together|end to end)\b/.test(all)) return 'piece';
    return 'resew';
  }
  if (v === 'stabilize' && /^(back|backs)$/.test(w))
    return (/^ (it|them|that|those|these|row|block|with|the) /.test(after) || items[k + 1]?.place) &&
      !/^(the|it|that|sewed|sewn|stitched|put|to|at|on|off|from)$/.test(
        items[k - 1]?.w === 'to' && / (to|'ll|will|could|might|should|i) $/.test(before)
          ? ''
          : (items[k - 1]?.w ?? ''),
      )
      ? 'stabilize'
      : undefined;
  if (v === 'stabilize' && w === 'backing') return undefined;
  if (v === 'overlay' && (w === 'net' || w === 'nets')) return undefined;
  if (v === 'cut') {
    if (/^cut out$/.test(w)) return 'cut';
    if (/ (down on|off the (phone|power)|my (finger|thumb|hand)|short|it fine) /.test(after))
      return undefined;
    return 'cut';
  }
  if (
    v === 'baste' &&
    w.startsWith('pin') &&
    w !== 'pinned' &&
    w !== 'pinning' &&
    !/^ (it|the|them|that)/.test(after)
  )
    return undefined;
  if (
    v === 'baste' &&
    w.startsWith('tack') &&
    w === 'tacking' &&
    !/ (is|'m|am|was|started|now) $/.test(before)
  )
    return undefined;
  if (v === 'piece' && (w === 'piece' || w === 'pieces'))
    return / (to|will|'ll|gonna) $/.test(before) || /^ (it|the|them|that|new|a new)/.test(after)
      ? 'piece'
      : undefined;
  if (v === 'piece' && / (in|into) /.test(after) && !/\b(border|strips?|together|end to end)\b/.test(all))
    return 'replace';
  if (v === 'square-up')
    return / (up|it|off|the|them) /.test(after) ? 'square-up' : w === 'squared' ? 'square-up' : undefined;
  if (v === 'dry' && (w === 'air' || w === 'airing'))
    return / (dry|it|the quilt|out|outside) /.test(after) || w === 'airing' ? 'dry' : undefined;
  if (v === 'dry' && w === 'dry')
    return / (to|will|'ll|and|it 's|is|'s|flat) $/.test(before) ||
      /^ (it|the|now|$)/.test(after) ||
      items.length <= 2
      ? 'dry'
      : undefined;
  if (
    v === 'photograph' &&
    (w === 'snap' || w === 'snapped') &&
    !/\b(photo|picture|camera)\b/.test(all) &&
    /\b(thread|needle|ties?|stitch)\b/.test(all)
  )
    return undefined;
  if (
    v === 'photograph' &&
    (w === 'snaps' || w === 'photo' || w === 'photos' || w === 'picture' || w === 'pictures')
  )
    return /^ (of|it|the)/.test(after) || / (to|'ll|will) $/.test(before) ? 'photograph' : undefined;
  if (v === 'clean' && w === 'clean' && items[k + 1]?.finding) return undefined;
  if (v === 'clean' && w === 'dust' && !/ (to|will|'ll) $/.test(before)) return undefined;
  if (v === 'clean' && w === 'clean' && / (is|'s|was|came|come|are|looks?|up) $/.test(before))
    return undefined;
  if (v === 'clean' && w === 'cleaned' && / (machine) /.test(after)) return undefined;
  // "pressed for time", "bound to rain", "tied up with the phone"
  if (v === 'press' && /^ (for|ahead) /.test(after)) return undefined;
  if (v === 'bind' && w === 'bound' && /^ to (?!the|it|that)/.test(after)) return undefined;
  if (
    v === 'tie' &&
    /^ up (with|in|on|all|at|doing) /.test(after) &&
    !items.some((x) => x.place?.kind === 'blocks')
  )
    return undefined;
  if (v === 'press' && (/ (iron on|on) $/.test(before) || /^ (on|onto) /.test(after))) return undefined;
  if (v === 'label' && items[k]!.w === 'label')
    return / (to|will|'ll|must|gonna) $/.test(before) || /^ (it|the)/.test(after) ? 'label' : undefined;
  if (v === 'bind' && w === 'binding') return 'bind';
  if (v === 'measure' && /^ (cup|tape)/.test(after)) return undefined;
  if (v === 'trim' && /\bsquare\b/.test(after)) return 'square-up';
  return v;
}
