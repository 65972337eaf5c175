import type { Action, RemovedObject } from '../../../shared/vocabulary.ts';
import { givenForm, isGiven, isInverted, isPredicate, removalAt } from '../clause.ts';
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
    /^(bit|scrap|square|length|offcut|remnant|strip|support|pillowcase|shirt|shirting|sheet|sheeting|tablecloth|hanky|handkerchief|tea towel|dishcloth|curtain|dress|apron)$/.test(
      item.w,
    ));
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
    ) ||
    /\bnew pieces?\b/.test(all) ||
    setsIn(items, all);
  const isReplace =
    (cutOut &&
      newIn &&
      /\b(piec|set in|let in|sew|sewn|sewed|in a new|new)\b/.test(all.replace(/pieced?|piecing/, 'piec'))) ||
    newPiece ||
    (/\b(pieced|piecing|piece|set|let) (in )?(a )?(new|fresh|replacement|another)\b/.test(all) &&
      !/\bborder/.test(all)) ||
    (/\b(pieced|set|let) .{0,30}\bin\b/.test(all) && /\bnew\b/.test(all) && !/\bborder\b/.test(all)) ||
    newCloth(items);
  // "has the new muslin sewn in behind it": nothing is cut out
  const inBehind =
    !cutOut &&
    /\b(?:sewn|sewed|stitched|put|let|set|slipped) (?:in )?(?:behind|underneath|beneath)\b/.test(all);
  if (isReplace && !inBehind) {
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
      // "tacked the net in place": a fastening of what is there
      !(
        items.slice(Math.max(0, k - 3), k).some((x) => x.action?.v === 'baste' && x.action.form !== 'base') &&
        /^(the|that|this)$/.test(items[k - 1]?.w ?? '') &&
        !/ (over|across|on top) /.test(after)
      ) &&
      !items.slice(0, k).some((x) => x.action?.v === 'stabilize' && x.action.form !== 'base') &&
      (/ (over|across|on|on top|onto|overlay|it is|laid|face|for|goes|stitched|sewn|sewed|round|instead) /.test(
        after,
      ) ||
        / (over|cover|covered|covering|overlay|under|lay|laid|layer of|layers of|in|with|maybe|or|either|about|put|gets?|go with|going with|try|some|a|the|no|forget|with a|'s) $/.test(
          before.replace(
            / (?:little|bit of|piece of|scrap of|fine|light|soft|dark|black|white|cream|new) $/,
            ' ',
          ),
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
      (/^(fusible|interfacing)$/.test(item.w) || /\b(fusible|interfacing)$/.test(item.w)) &&
      item.material === 'interfacing' &&
      !removalSoon(items, k) &&
      !/\b(bought|buy|need|got|still|ordered)\b/.test(all)
    ) {
      const verb = verbNear(items, k, ['stabilize'], used);
      if (
        verb ||
        / (put|ironed|fused|with|iron|fuse|or|either|maybe) $/.test(
          words(items, Math.max(0, k - 10), k).replace(
            /(?: (?:some|a|the|of|that|this|more|bit|piece|layer|strip|square|scrap|length|real|really|very|nice|good|light|lightweight|fine|thin|soft|sheer|woven|white|black|new|fresh))+ $/,
            ' ',
          ),
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
      // "substituted a new patch for the rotten one"
      if (items.slice(Math.max(0, k - 5), k).some((x) => x.action?.v === 'replace')) continue;
      if (
        / (a|an|new|another|denim|calico|small|little|no) $/.test(before) ||
        / (not|forget|drop|scrap|instead of|than|with|for|between|be|no) (the |a )?$/.test(before) ||
        /^ (it is|it 's|it 'll be) /.test(after) ||
        (items[k - 1]?.material === 'fabric' &&
          (k < 2 || /^(,|:|-|with|a|w|\.)$/.test(items[k - 2]?.w ?? ''))) ||
        / (put|sewed|sewn|sew|stitched|needs?|wants?|gets?|or|either|maybe|to|with|of|for) $/.test(
          before.replace(/ (a|an|new|another|little|small|bit of|the|fresh) $/, ' '),
        ) ||
        (/ (has|have|got|'s) (a|an)( [a-z]+){0,2} $/.test(before) && /\bnow\b/.test(all))
      ) {
        if (
          (/ (old|that|this|previous|earlier|existing|clumsy|under|has|has an|the old|somebody's) (a )?$/.test(
            before,
          ) &&
            // "the thumb hole has a patch on it now"
            !(/ has a $/.test(before) && /\bnow\b/.test(after))) ||
          removalSoon(items, k)
        )
          continue;
        if (
          / (is|has|there|there's|'s) (a|an)( [a-z]+)? $/.test(before) &&
          / (on|over|in) /.test(after) &&
          !/\b(new|put|sewn|sewed|now)\b/.test(all)
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
    // "the hasty patch is off and there's a proper one on"
    if (
      item.w === 'one' &&
      (thing === 'old-patch' || ways.some((x) => x.object === 'old-patch')) &&
      / (a|an) (new|proper|fresh|decent|better|neater|good|tidy|tidier) $/.test(before) &&
      /^ (on|there|over|in its)\b/.test(after)
    ) {
      take({ action: 'patch', form: 'past', at: k, items: [item], rule: 'treatment.a-patch' }, k);
      continue;
    }
    // "a darn, could be a patch", "going with the darn", "forget the darn"
    if (
      /^(darn|darns)$/.test(item.w) &&
      !isPredicate(items, k) &&
      (/^ (it is|it 's|it 'll be) /.test(after) ||
        LIGHT_LEAD.test(before) ||
        (k <= 1 && items.some((x) => x.duration)) ||
        / (needs?|wants?|gets?|between|or|and|be|'s|is|maybe|either|with|for|forget|drop|scrap|not|no|than|of|rather) (a |the |an |just a |little |small |quick )*$/.test(
          before,
        )) &&
      !/ (old|that|this|previous|earlier|existing|clumsy|has|somebody's) (a |little )*$/.test(before) &&
      !removalSoon(items, k)
    ) {
      const light = lightVerb(items, k);
      take(
        {
          action: 'darn',
          form: light?.form ?? 'noun',
          at: light?.k ?? k,
          items: [item],
          rule: 'treatment.a-darn',
        },
        k,
        ...(light ? [light.k] : []),
      );
      continue;
    }
    // "put a few stitches in it", "gave the seam a few whip stitches", "put new ties in", "put the quilting back in"
    const worked = workedIn(items, k);
    if (worked) {
      take(
        {
          action: worked.action,
          form: worked.form,
          at: worked.at,
          items: [item],
          rule: `treatment.worked-in-${worked.action}`,
        },
        k,
        worked.at,
      );
      continue;
    }
    // "redid the seam", "the quilting in 3-2 redone"
    const redone = redoing(items, k);
    if (redone) {
      take({ ...redone, at: k, items: [item], rule: 'treatment.redone' }, k);
      continue;
    }
    // "drew the tear together", "brought the edges back together"
    if (
      /^(drew|drawn|pulled|brought|knit|knitted|eased|coaxed|draw|pull|bring|knitting|drawing|pulling|bringing|easing|ran|run)$/.test(
        item.w,
      ) &&
      / together /.test(after) &&
      items
        .slice(k + 1, k + 9)
        .some(
          (x) =>
            x.seam ||
            x.finding === 'tear' ||
            x.finding === 'hole' ||
            x.finding === 'split-seam' ||
            /^edges?$/.test(x.w) ||
            x.part === 'edge',
        ) &&
      !items.some((x) => x.action && x.action.v === 'resew' && !x.stitch)
    ) {
      take(
        {
          action: 'resew',
          form: /ing$/.test(item.w) ? 'ing' : /^(draw|pull|bring)$/.test(item.w) ? 'base' : 'past',
          at: k,
          items: [item],
          rule: 'treatment.drawn-together',
        },
        k,
      );
      continue;
    }
    // "went over the seam again with a backstitch", "I'll go over that by hand"
    if (
      /^(went|gone|go|going|run|ran)$/.test(item.w) &&
      /^(over|along|round|around)$/.test(items[k + 1]?.w ?? '') &&
      items.slice(k + 2).some((x) => x.stitch) &&
      !items.some((x) => x.action && !x.stitch && isPredicate(items, items.indexOf(x)))
    ) {
      take(
        {
          action: 'resew',
          form: item.w === 'go' ? 'base' : item.w === 'going' ? 'ing' : 'past',
          at: k,
          items: [item],
          rule: 'treatment.gone-over',
        },
        k,
      );
      continue;
    }
    // "the seam's back together"
    if (
      item.w === 'together' &&
      items[k - 1]?.w === 'back' &&
      items.some((x) => x.seam) &&
      !ways.length &&
      !items.some((x, m) => (x.action?.v === 'resew' || x.action?.v === 'piece') && isPredicate(items, m))
    ) {
      take(
        {
          action: 'resew',
          form: /ing\b/.test(all) ? 'ing' : 'past',
          at: k,
          items: [item],
          rule: 'treatment.back-together',
        },
        k,
      );
      continue;
    }
    // "all three overlays were executed", "replacement was rejected", "as is replacement of the piece"
    const named = NOUN_ACTIONS[item.w];
    if (
      named &&
      Object.hasOwn(NOUN_ACTIONS, item.w) &&
      !ways.some((x) => x.action === named) &&
      !(item.action && isPredicate(items, k) && item.action.form !== 'base')
    ) {
      const performed =
        /\b(executed|completed|finished|applied|fitted|carried out|installed|attached|given|received|performed|undertaken)\b/.test(
          all,
        );
      const weighed =
        /\b(rejected|dismissed|discounted|ruled out|under consideration|considered|weighing|contemplated|an option|is out|is off|called for|required|proposed|planned)\b/.test(
          all,
        ) || / (as is|as are) $/.test(before);
      if (performed || weighed) {
        take(
          {
            action: named,
            form: performed && !/ (will|to|must|should|shall) be /.test(all) ? 'past' : 'noun',
            at: k,
            items: [item],
            rule: 'treatment.named',
          },
          k,
        );
        continue;
      }
    }
    // "shut that seam with a ladder stitch"
    if (
      item.w === 'shut' &&
      (k === 0 || /^(i|and|then|,|'ve|have|to)$/.test(items[k - 1]!.w)) &&
      items.slice(k + 1, k + 6).some((x) => x.seam || x.finding === 'tear' || x.finding === 'split-seam')
    ) {
      take(
        {
          action: 'resew',
          form: items[k - 1]?.w === 'to' ? 'base' : 'past',
          at: k,
          items: [item],
          rule: 'treatment.shut',
        },
        k,
      );
      continue;
    }
    // "ran a line of backstitch along it"
    if (item.stitch && !item.weakStitch && / (line|row|run|seam|round) of( [a-z]+)? $/.test(before)) {
      const verb = items.findIndex(
        (x, m) => m < k && m > k - 8 && /^(ran|run|put|did|worked|sewed|running|putting)$/.test(x.w),
      );
      if (verb >= 0) {
        take(
          {
            action: 'resew',
            form: /ing$/.test(items[verb]!.w) ? 'ing' : 'past',
            at: verb,
            items: [item],
            rule: 'treatment.line-of-stitch',
          },
          k,
          verb,
        );
        continue;
      }
    }
    // "worked on the stain with a cotton bud", "going to try some vinegar on the mark"
    const cleaned = workOnStain(items, k, all);
    if (cleaned) {
      take({ action: 'clean', form: cleaned, at: k, items: [item], rule: 'treatment.worked-on-stain' }, k);
      continue;
    }
    // "took a quarter inch off the left side", "shaved a bit off the edge"
    const shaved = shaving(items, k);
    if (shaved) {
      take({ action: 'trim', form: shaved, at: k, items: [item], rule: 'treatment.shaved-off' }, k);
      continue;
    }
    // "that patch has to go", "the batting must go"
    if (
      item.w === 'go' &&
      / (to|must|should|can|could|'ll|will|gotta) $/.test(before) &&
      !/^ (on|in|to|over|under|behind|back|round|with|into|for|up|down|out|off|through|there) /.test(after)
    ) {
      const thing = items
        .slice(Math.max(0, k - 9), k)
        .findLast((x) => x.object || x.finding === 'old-repair');
      if (
        thing &&
        (thing.finding === 'old-repair' || (thing.object && thing.object !== 'piece' && !thing.seam))
      ) {
        take(
          {
            action: 'remove',
            object: thing.finding === 'old-repair' ? 'old-patch' : thing.object!,
            form: 'base',
            at: k,
            items: [item, thing],
            rule: 'treatment.has-to-go',
          },
          k,
          items.indexOf(thing),
        );
        continue;
      }
    }
    // "calico over the hole", "covered the hole with a bit of calico", "a square of lawn stitched over the worn spot"
    const over = clothOver(items, k, ways, used);
    if (over) {
      take(
        {
          action: 'patch',
          form: over.form,
          at: over.at,
          items: [item],
          stuff: item,
          rule: 'treatment.cloth-over',
        },
        k,
        ...(over.at === k ? [] : [over.at]),
      );
      continue;
    }
    // "gave the backing a good vacuum"
    if (
      item.action &&
      isGiven(items, k) &&
      (item.action.form === 'base' ||
        (item.action.form === 'ing' && /^(its|a|another|good)$/.test(items[k - 1]?.w ?? '')))
    ) {
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
      /^(laid|lay|laying|spread|spreading|stacked|put|sandwiched)$/.test(item.w) &&
      / (out|up|together|on top|over) /.test(words(items, k + 1, k + 12)) &&
      !/ to dry /.test(` ${all}`) &&
      !items.some((x) => isNet(x) || x.object === 'old-patch') &&
      (new Set(items.map((x) => x.part).filter((p) => p === 'backing' || p === 'batting' || p === 'top'))
        .size >= 2 ||
        / (three|all|the) layers /.test(all))
    ) {
      take(
        {
          action: 'layer',
          form: /ing$/.test(item.w) ? 'ing' : item.w === 'lay' ? 'base' : 'past',
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
        items.some((x) => x.place && /\bbinding\b/.test(x.w)) ||
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
      const plain =
        /^(remov|unpick|peel|strip|detach|unstitch|unpin|snip|unsew|unquilt|frog|untie|untying)/.test(item.w);
      if (object || (plain && removal)) {
        if (item.action?.v === 'cut' && !object) continue;
        // "cut out the backing": new cloth cut to size
        if (
          /^cut/.test(item.w) &&
          removal.particle === k + 1 &&
          items[k + 1]!.w === 'out' &&
          object &&
          /^(backing|binding|border|batting|label)$/.test(object.object) &&
          !/ (old|the rest|of) /.test(all)
        )
          continue;
        if (/^(work|works|worked|working)$/.test(item.w) && !object) continue;
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
            object: object?.object ?? ownObject(item.w),
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
    if (isInverted(items, k)) {
      const after = items.slice(k + 1, k + 7).find((x) => x.object || x.finding === 'old-repair');
      const of = after ?? (items[k + 1]!.w !== 'with' && thing && thing !== 'seam' ? undefined : null);
      if (after || of === undefined) {
        const object = after
          ? after.finding === 'old-repair'
            ? 'old-patch'
            : after.object!
          : (thing as RemovedObject);
        take(
          {
            action: 'remove',
            object,
            form: items[k + 1]!.w === 'with' ? 'base' : 'past',
            at: k,
            items: after ? [item, after] : [item],
            rule: 'treatment.off-came',
          },
          k,
          ...(after ? [items.indexOf(after)] : []),
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
        .find((x) => x.object || x.finding === 'old-repair' || x.part === 'binding' || x.part === 'border');
      const isTreatmentOff = object === undefined && items.slice(0, k).some((x) => isNet(x));
      if (object && !isTreatmentOff && !(object.stitches && object.seam)) {
        const objectId =
          object.finding === 'old-repair'
            ? 'old-patch'
            : (object.object ?? (object.part === 'border' ? 'border' : 'binding'));
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
    if (
      item.fail &&
      /^(come|came) (out|off|away)$/.test(item.w) &&
      !/ (have|has|'ve|'s|had) $/.test(before)
    ) {
      const object = [...items.slice(0, k)].reverse().find((x) => x.object);
      const came = item.w.startsWith('came');
      if (object?.object && (!came || (!object.stitches && !object.seam && !item.w.endsWith('away')))) {
        take(
          {
            action: 'remove',
            object: object.object,
            form: came
              ? 'past'
              : / (first|next|before|later|tomorrow|then|need|needs|will|'ll|to|must|should|has|have|can|could) /.test(
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
  // "whipst tear shut", "ladder stitch, seam closed": a stitch and what it has closed
  if (!ways.length && (/ (shut|closed|together) /.test(all) || / (tear|rip|seam|split) /.test(all))) {
    const at = items.findIndex(
      (x) => x.stitch && !x.weakStitch && !x.place && x.stitch !== 'hand' && x.stitch !== 'machine',
    );
    if (
      at >= 0 &&
      items.some(
        (x, m) => m > at && m < at + 4 && (x.seam || x.finding === 'tear' || x.finding === 'split-seam'),
      ) &&
      !items.some((x) => x.fail)
    )
      take({ action: 'resew', form: 'past', at, items: [items[at]!], rule: 'treatment.stitched-shut' }, at);
  }
  // "fused interfacing behind 6-5": the cloth and the verb tell one treatment
  const told = ways.filter(
    (x) => x.form !== 'noun' || !ways.some((y) => y !== x && y.action === x.action && y.form !== 'noun'),
  );
  return told.sort((a, b) => a.at - b.at);
}

/** What these verbs take out without naming it. */
const ownObject = (w: string): RemovedObject =>
  w.startsWith('unpin')
    ? 'pins'
    : w.startsWith('unquilt')
      ? 'quilting'
      : w.startsWith('unt')
        ? 'ties'
        : /^(frog|unstitch|unsew)/.test(w)
          ? 'stitching'
          : 'piece';

/** Verbs that say nothing of their own: the noun after them tells the work ("put a darn in", "gave it a few stitches"). */
const LIGHT: Record<string, Way['form']> = {
  put: 'past',
  putting: 'ing',
  did: 'past',
  do: 'base',
  doing: 'ing',
  done: 'past',
  worked: 'past',
  work: 'base',
  working: 'ing',
  wove: 'past',
  made: 'past',
  make: 'base',
  making: 'ing',
  gave: 'past',
  give: 'base',
  giving: 'ing',
  ran: 'past',
  added: 'past',
  add: 'base',
  adding: 'ing',
  sewed: 'past',
  sewn: 'past',
  sew: 'base',
  sewing: 'ing',
  took: 'past',
  take: 'base',
  popped: 'past',
  got: 'past',
  tied: 'past',
  set: 'past',
};
const LIGHT_LEAD =
  / (put|putting|did|do|doing|done|worked|work|working|wove|made|make|making|ran|added|add|adding|popped|tried) (in )?(a |an |one |another )?(quick |little |small |tiny |wee |neat |proper |bit of a )*$/;

/** The light verb before the noun at `k`. */
function lightVerb(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = k - 1; m >= Math.max(0, k - 9); m--) {
    const w = items[m]!.w;
    if (Object.hasOwn(LIGHT, w)) {
      const modal = / (to|will|'ll|gonna|could|might|should|must|can) $/.test(
        words(items, Math.max(0, m - 2), m),
      );
      return { k: m, form: w === 'put' && modal ? 'base' : LIGHT[w]! };
    }
    if (items[m]!.token.kind === 'mark') return undefined;
  }
  return undefined;
}

/** Stitches, ties or quilting as a thing that is put in or on. */
function workedIn(items: Item[], k: number): { action: Action; form: Way['form']; at: number } | undefined {
  const item = items[k]!;
  if (
    item.seam ||
    !(
      item.stitches ||
      item.object === 'ties' ||
      item.object === 'quilting' ||
      /stitches$|^(stitch|sts)$/.test(item.w)
    )
  )
    return undefined;
  if (item.action && isPredicate(items, k)) return undefined;
  const before = words(items, Math.max(0, k - 5), k);
  const after = words(items, k + 1, Math.min(items.length, k + 4));
  if (removalSoon(items, k)) return undefined;
  if (
    items.some((x, m) => m !== k && (x.fail || x.finding === 'missing') && isPredicate(items, m) && !x.seam)
  )
    return undefined;
  const isTies = item.object === 'ties' || /^knots?$/.test(item.w);
  const isQuilting = item.object === 'quilting' || item.w.startsWith('quilting');
  const light = lightVerb(items, k);
  const fresh = / (new|fresh|more|extra|missing|replacement|another) ([a-z]+ )?$/.test(before);
  if (isTies) {
    const put = light && / (in|into|on|back|along|across|every|at|round|through) /.test(after);
    if (light && (put || fresh)) return { action: 'tie', form: light.form, at: light.k };
    if (fresh && / (in|on|along|across|at) /.test(after)) return { action: 'tie', form: 'noun', at: k };
    return undefined;
  }
  if (isQuilting)
    return light &&
      / (back in|in|back|in again|along|round|around|across) /.test(after) &&
      !/^ (quilting )?in the ditch/.test(after)
      ? { action: 'quilt', form: light.form, at: light.k }
      : undefined;
  if (
    light &&
    (/ (a|few|couple of|couple|some|two|three|four|five|six|several|\d+|of|more|tiny|little|extra|whip|ladder|back|blanket|running|catch|holding|securing)( [a-z]+)? $/.test(
      before,
    ) ||
      item.stitch) &&
    (/ (in|into|on|through|along|across|over|to|round|around|at|there|by) /.test(after) ||
      k === items.length - 1 ||
      /^(gave|give|giving)$/.test(items[light.k]!.w))
  )
    return { action: 'resew', form: light.form, at: light.k };
  return undefined;
}

/** Treatments by the noun for them. */
const NOUN_ACTIONS: Record<string, Action> = {
  overlay: 'overlay',
  overlays: 'overlay',
  replacement: 'replace',
  replacements: 'replace',
  patches: 'patch',
  darns: 'darn',
  support: 'stabilize',
  supports: 'stabilize',
  stabilization: 'stabilize',
  stabilisation: 'stabilize',
};

/** A stain or dirt is worked on with something that cleans. */
function workOnStain(items: Item[], k: number, all: string): Way['form'] | undefined {
  const w = items[k]!.w;
  if (
    !/^(worked|working|work|tackled|tackle|tackling|treated|treat|treating|tried|try|trying|used|attacked|went)$/.test(
      w,
    )
  )
    return undefined;
  if (!items.some((x) => x.finding === 'stain' || x.finding === 'mildew')) return undefined;
  if (
    !/\b(swab|swabs|cotton bud|cotton buds|q tip|q tips|vinegar|brush|sponge|solvent|detergent|soap|peroxide|lemon|damp|water|blotting|spit|saliva|eraser|rubber|cloth|soda|borax|spirit|spirits)\b/.test(
      all,
    )
  )
    return undefined;
  if (items.some((x) => x.action?.v === 'clean' && x.action.form === 'past')) return undefined;
  return /ing$/.test(w) ? 'ing' : /^(work|tackle|treat|try)$/.test(w) ? 'base' : 'past';
}

/** "redid the seam", "redone the binding": done over again. */
function redoing(items: Item[], k: number): Pick<Way, 'action' | 'form'> | undefined {
  const w = items[k]!.w;
  const form: Way['form'] | undefined = /^(redid|redone)$/.test(w)
    ? 'past'
    : w === 'redoing'
      ? 'ing'
      : w === 'redo'
        ? 'base'
        : undefined;
  if (!form) return undefined;
  const near = [...items.slice(k + 1, k + 7), ...items.slice(Math.max(0, k - 7), k).reverse()];
  for (const x of near) {
    if (x.seam) return { action: 'resew', form };
    if (x.object === 'quilting') return { action: 'quilt', form };
    if (x.object === 'ties') return { action: 'tie', form };
    if (x.part === 'binding') return { action: 'bind', form };
    if (x.w === 'darn' || x.w === 'darning') return { action: 'darn', form };
    if (x.w === 'patch') return { action: 'patch', form };
    if (x.stitches || x.object === 'stitching') return { action: 'resew', form };
  }
  return undefined;
}

/** "took a quarter inch off the left side", "cut 5 mm off the edge": a little taken off an edge is trimming. */
function shaving(items: Item[], k: number): Way['form'] | undefined {
  const w = items[k]!.w;
  if (
    !/^(took|take|takes|taken|taking|cut|cuts|cutting|shave|shaved|shaving|sliced|slice|slicing|lopped|lop|clipped|skimmed|nipped|snipped|pared|sheared|chopped)$/.test(
      w,
    )
  )
    return undefined;
  for (let m = k + 1; m < Math.min(items.length, k + 7); m++) {
    if (items[m]!.w !== 'off') continue;
    const amount = items.slice(k + 1, m);
    const little =
      amount.some((x) => x.quantity?.unit && /^(in|cm|mm)$/.test(x.quantity.unit)) ||
      (amount.length <= 5 &&
        /^(a|an|the|just|about|another)$/.test(amount[0]?.w ?? '') &&
        amount.some((x) =>
          /^(bit|sliver|smidge|smidgen|hair|whisker|fraction|touch|shade|tad|strip|little|inch|eighth|quarter)$/.test(
            x.w,
          ),
        ) &&
        !amount.some((x) => x.fabric || x.finding || x.material));
    const edge = items
      .slice(m + 1, m + 6)
      .some(
        (x) =>
          x.part === 'edge' ||
          x.place?.places.some((p) => /^(edge|border|corner|binding|backing|batting)/.test(p)) ||
          /^(side|sides|edge|edges|end|ends|all)$/.test(x.w) ||
          x.part === 'backing' ||
          x.part === 'batting',
      );
    return little && edge
      ? /ing$/.test(w)
        ? 'ing'
        : /^(take|takes|cuts|shave|slice|lop)$/.test(w)
          ? 'base'
          : 'past'
      : undefined;
  }
  return undefined;
}

/** A piece of cloth that goes over damage. */
function clothOver(
  items: Item[],
  k: number,
  ways: Way[],
  used: Set<number>,
): { form: Way['form']; at: number } | undefined {
  const item = items[k]!;
  const cloth =
    item.fabric !== undefined ||
    item.material === 'fabric' ||
    (/^(piece|bit|scrap|square)$/.test(item.w) &&
      (items[k + 1]?.w === 'of' || /^(a|another)$/.test(items[k - 1]?.w ?? '')));
  if (!cloth || isNet(item) || item.seam || ways.length) return undefined;
  if (
    item.material === 'backing' ||
    items.some((x) => isNet(x) || x.object === 'label' || x.part === 'batting' || x.part === 'binding')
  )
    return undefined;
  const after = items.slice(k + 1, k + 6);
  const n = after.findIndex((x) => /^(over|across|onto|on top|on)$/.test(x.w));
  const cover = items.findIndex((x) => /^(cover|covered|covering|hid|hide|faced)$/.test(x.w));
  if (cover >= 0 && cover < k && items.slice(cover, k).some((x) => /^(with|by|using|in|w)$/.test(x.w)))
    return {
      form: /^(cover|hide)$/.test(items[cover]!.w) ? 'base' : items[cover]!.w === 'covering' ? 'ing' : 'past',
      at: cover,
    };
  if (n < 0) return undefined;
  // "the brown print over in the left column"
  if (/^(in|by|at|near|there|here)$/.test(after[n + 1]?.w ?? '')) return undefined;
  const target = after.slice(n + 1).concat(items.slice(k + 6, k + 9));
  const verb =
    verbNear(items, k, ['resew', 'baste', 'patch', 'piece'], used) ??
    plainVerbNear(items, k) ??
    appliedNear(items, k);
  const damage = target.slice(0, 5).some((x) => x.finding || /^(gap|spot|place|bit|area)$/.test(x.w));
  const block = target
    .slice(0, 3)
    .some(
      (x) =>
        x.place?.kind === 'blocks' ||
        /^place\.(it|that-one|them|both)$/.test(x.place?.rule ?? '') ||
        x.w === 'it',
    );
  if (!damage && !block) return undefined;
  if (!verb)
    return /^(over|across)$/.test(after[n]!.w) &&
      !items.some((x, m) => x.finding && isPredicate(items, m) && m < k) &&
      (damage || n === 0) &&
      !items.some((x) => x.fail)
      ? { form: 'noun', at: k }
      : undefined;
  // "on" alone says little: only where the cloth is sewn on a place or damage
  if (after[n]!.w === 'on' && verb.form === 'noun') return undefined;
  return { form: verb.form, at: verb.k };
}

function appliedNear(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = Math.max(0, k - 6); m < Math.min(items.length, k + 5); m++)
    if (/^(applied|apply|applying|hemmed|slapped)$/.test(items[m]!.w))
      return { k: m, form: items[m]!.w === 'apply' ? 'base' : items[m]!.w === 'applying' ? 'ing' : 'past' };
  return undefined;
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
  // "new binding on the bottom", "borders on left and right"
  const side = items[k + (next === 'the' ? 2 : 1)]?.place;
  if (
    named &&
    side?.kind === 'part' &&
    side.places.every((p) => /^(edge|border)-/.test(p)) &&
    !items.some((x) => x.finding || x.fail || x.action || x.material === 'net')
  )
    return true;
  return named && /^(|,|\.|by|w|with|at|too|as|and|&|now|all|in|;|both|\()$/.test(next);
}

const PIECE_NOUN =
  /^(piece|pieces|pc|pcs|bit|bits|block|blocks|square|squares|patch|patches|scrap|strip|diamond|triangle|hexagon|petal|leaf|section|panel|one|ones|replacement|segment|wedge|shape|star|point|rectangle|half)$/;
const NO_PIECE = new Set(['binding', 'backing', 'batting', 'ties', 'label', 'border', 'quilting', 'pins']);

/**
 * "put a whole new block in", "set in a piece of flannel", "made a new block and sewed it in", "put a replacement in":
 * what is put in is a piece of cloth.
 */
function setsIn(items: Item[], all: string): boolean {
  if (items.some((x) => x.object && NO_PIECE.has(x.object))) return false;
  const fresh = items.findIndex(
    (x, k) =>
      (/^(new|fresh|another)$/.test(x.w) &&
        items
          .slice(k + 1, k + 4)
          .some((y) => PIECE_NOUN.test(y.w) || y.fabric !== undefined || y.material === 'fabric')) ||
      (x.w === 'replacement' && /^(a|an|the|one|my)$/.test(items[k - 1]?.w ?? '')),
  );
  if (fresh >= 0)
    return /\b(put|puts|putting|sew|sewed|sewn|sewing|stitch|stitched|stitching|insert|inserted|inserting|slot|slotted|fit|fitted|fitting|work|worked|made|make|making|machined|hand sewn|went|go|goes|going|set|let) .*\b(in|into|in its place)\b/.test(
      all,
    );
  const verb = items.findIndex((x) => /^(set|let|inset|pieced|setting|letting|piecing|insetting)$/.test(x.w));
  if (verb < 0) return false;
  const rest = items.slice(verb + 1, verb + 10);
  return (
    rest.some((x) => /^(in|into)$/.test(x.w) || items[verb]!.w === 'inset') &&
    rest.some((x) => PIECE_NOUN.test(x.w) || x.fabric !== undefined || x.material === 'fabric') &&
    !rest.some((x) => x.w === 'together' || x.w === 'aside')
  );
}

/** "new teal lawn in", "a new backing altogether", "new block instead". */
function newCloth(items: Item[]): boolean {
  return items.some((x, k) => {
    if (!/^(new|fresh)$/.test(x.w)) return false;
    const thing = items[k + 1];
    const after = items[k + 2];
    if (!thing) return false;
    const cloth = Boolean(thing.fabric || thing.material === 'fabric' || thing.material === 'backing');
    if (!cloth && !PIECE_NOUN.test(thing.w)) return false;
    if (/^(altogether|instead|entirely|completely)$/.test(after?.w ?? '')) return true;
    const end = items[k + 3];
    return (
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
    // "secured by couching" only says how
    if (
      items[m]!.stitch &&
      items[m]!.action?.form === 'ing' &&
      /^(by|with|in|using)$/.test(items[m - 1]?.w ?? '')
    )
      continue;
    const a = items[m]!.action;
    if (
      !a ||
      m === k ||
      used.has(m) ||
      !actions.includes(a.v) ||
      ((items[m]!.material || items[m]!.part) && a.form === 'base') ||
      // "a net overlay", "a support patch", "a layer of net": a thing
      (a.form === 'base' && !isPredicate(items, m))
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
  eased: 'past',
  worked: 'past',
  popped: 'past',
  fitted: 'past',
  inserted: 'past',
  threaded: 'past',
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
  // "net was laid over it", "muslin has gone in behind"
  for (let m = k + 1; m < Math.min(items.length, k + 6); m++) {
    if (
      !/^(laid|put|placed|set|slipped|tucked|slid|eased|gone|fitted|applied|introduced|inserted)$/.test(
        items[m]!.w,
      )
    )
      continue;
    if (!/^(was|were|been|being|has|have|'s|is|are|got|be|now|then)$/.test(items[m - 1]!.w)) continue;
    const future = / (will|'ll|to|must|should|shall|can|could|might) (now |then )?be $/.test(
      words(items, Math.max(0, m - 4), m),
    );
    return { k: m, form: future ? 'noun' : 'past' };
  }
  return undefined;
}

/** Does anything in the clause say that the mending was with needle and thread, of a seam or a tear? */
const sewn = (items: Item[]): boolean =>
  items.some(
    (x) =>
      x.seam ||
      x.stitch ||
      x.stitches ||
      /^(tear|split-seam|broken-stitching|fraying)$/.test(x.finding ?? '') ||
      /^(thread|tie-thread|needle)$/.test(x.material ?? '') ||
      x.object === 'ties' ||
      (x.part !== undefined && x.part !== 'quilt'),
  );

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
    if (x.place && x.w.startsWith('binding')) return 'binding';
    // "ripped out the zigzag"
    if (
      x.stitch &&
      !x.weakStitch &&
      !x.object &&
      /^(the|that|old|this|all)$/.test(items[items.indexOf(x) - 1]?.w ?? '')
    )
      return 'stitching';
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
    // "snipped out what there was of the old ties"
    if (x.w === 'there' && items[m - 1]?.w === 'what') continue;
    if (/^(but|because|there|i|so|then|from|behind|with|to)$/.test(x.w) && m > (particle ?? k)) break;
    if (
      particle !== undefined &&
      m > particle &&
      // "took off the left border": what stands right after the verb and its "off" is the thing
      particle > k + 1 &&
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
  // "left the tails an inch long": the tails were read as a length and are gone from here
  const told = items[k + 1]?.w === 'the' || items[k + 1]?.w === 'my' ? items[k + 2] : items[k + 1];
  if (/^(left|leaving|leave)$/.test(w) && told?.w === '--') return false;
  if (/^(remain|remains|remaining|retained|retain)$/.test(w))
    return (
      / (in situ|in place|as|where|untouched|undisturbed|put|alone|there|unaltered) /.test(
        words(items, k + 1, k + 7),
      ) || w.startsWith('retain')
    );
  const after = words(items, k + 1, Math.min(items.length, k + 9));
  const before = words(items, Math.max(0, k - 5), k);
  if (items[k]!.action?.v === 'leave' && w.includes(' ')) return true;
  if (/^(keep|keeping|kept|keeps)$/.test(w))
    return / (as (is|it is|it 's|they are|found)|the way (it|they)|(the|that|its|this) old|well alone) /.test(
      after,
    );
  if (w === 'stays' || w === 'stay' || w === 'staying') return !/ (up late|to |with me|late) /.test(after);
  if (w === 'leave' || w === 'leaves')
    return (
      !/ (for (the |my )?(shop|work|market|town|day)|at |by |early|notes?|room|a (gap|tail|note)) /.test(
        after,
      ) &&
      !/ (to|before i|on) $/.test(
        before.replace(
          / (better|best|going|decided|agreed|want|wants|like|said|says|happy|content|inclined|glad|tempted|minded) to $/,
          ' ',
        ),
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
    // "with what was left of the gingham"
    if (/^ of /.test(after)) return false;
    // "I left the tails an inch": the length was read before, and "the" is all that stands behind
    if (/^ (the|them|it|a) $/.test(after) && !/ (them|it) $/.test(after)) return false;
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
    if (w === 'fixed' && !items.some((x) => x.place || x.seam || x.finding)) return undefined;
    // "mended 4-4", "fixed that one": sewn, darned or patched is not told
    if (/^(mended|repaired|fixed)$/.test(w) && !sewn(items)) return undefined;
    if (/^(stitch|seam)$/.test(w) && !/ (to|will|'ll|must|gonna|should) $/.test(before))
      return /^ (it|the|that|them|up|down|back|along|both)/.test(after) ? 'resew' : undefined;
    if (items.some((x) => x.stitch === 'in-the-ditch')) return 'quilt';
    if (/^hem/.test(w) && items.some((x) => x.part === 'binding')) return 'bind';
    if (/^(hem|hems|ladder|ladders)$/.test(w) && !/ (to|will|'ll|must|gonna|should) $/.test(before))
      return undefined;
    if (/\b(in|on) (behind|the back)\b/.test(after) || / behind /.test(after)) return 'stabilize';
    if (items.some((x) => x.object === 'label') && /\b(on|to|in|at|into|onto)\b/.test(after)) return 'label';
    // "one of the supports is sewn in", "both overlays stitched down": the thing tells what the sewing makes
    const made = items.slice(Math.max(0, k - 6), k).find((x) => /^(supports?|overlays?)$/.test(x.w));
    if (made) return made.w.startsWith('support') ? 'stabilize' : 'overlay';
    // "made a new block and sewed it in"
    if (/^ (it|them|that one|those|the new one) in( (by|with|on|again|now|today|,|and)\b.*)? $/.test(after))
      return 'replace';
    if (
      / together /.test(after) &&
      /\b(strips?|pieces?|new|squares?|panels?|end to end|borders?|halves|lengths?|widths?|sections?|drops?|patches)\b/.test(
        all,
      )
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
  if (v === 'stabilize' && w === 'backing')
    return / (bother|bothering|start|started|keep) $/.test(before) && items[k + 1]?.place
      ? 'stabilize'
      : undefined;
  if (v === 'overlay' && (w === 'net' || w === 'nets')) return undefined;
  if (
    v === 'replace' &&
    items
      .slice(k + 1, k + 5)
      .some(
        (x) => x.object === 'ties' || (x.finding === 'broken-stitching' && /\b(ties?|knots?)\b/.test(x.w)),
      )
  )
    return 'tie';
  if (v === 'replace' && items.slice(k + 1, k + 5).some((x) => x.object === 'quilting')) return 'quilt';
  if (v === 'replace' && items.slice(k + 1, k + 5).some((x) => x.object === 'stitching' && !x.seam))
    return 'resew';
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
  // "tacked down the loose corner with whip stitches": sewn for good
  if (
    v === 'baste' &&
    w.startsWith('tack') &&
    / down /.test(after) &&
    items.some(
      (x) =>
        x.finding ||
        x.fail ||
        /^(whipstitch|herringbone|couching|blanket|ladder|backstitch)$/.test(x.stitch ?? ''),
    ) &&
    !items.some((x) => isNet(x) || x.part === 'batting')
  )
    return 'resew';
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
  if (v === 'square-up' && w.includes(' ')) return v;
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
  if (v === 'wash' && /^in the /.test(w))
    return (/ (is|'s|are|'re|now|went|put it|got it) $/.test(before) ||
      / (or|maybe|whole|it|either) /.test(all)) &&
      !items.some(
        (x, m) => m !== k && (x.action?.v === 'wash' || x.action?.v === 'dry' || x.action?.v === 'clean'),
      )
      ? 'wash'
      : undefined;
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
