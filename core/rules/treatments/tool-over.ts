import { found, type WayFound, type WordAt } from './way.ts';

const TOOL =
  /(?:^| )(?:vacuum|hoover|vac|brush|sponge|cloth|roller|nozzle|duster|toothbrush|paintbrush|eraser|iron|steamer)$/;
const FORM: Record<string, 'past' | 'ing' | 'base'> = {
  went: 'past',
  gone: 'past',
  been: 'past',
  whizzed: 'past',
  ran: 'past',
  run: 'base',
  running: 'ing',
  go: 'base',
  goes: 'base',
  going: 'ing',
  'going over': 'ing',
};

/** "went over the backing with the vacuum", "I'll go over it with the soft brush": what it was gone over with tells the work. */
export function toolOver({ items, k, item, before, after }: WordAt): WayFound {
  // "forty minutes with the hoover over the back"
  if (
    TOOL.test(item.w) &&
    / with (?:the|a|my) (?:soft |dry |damp |little )?$/.test(before) &&
    /^ (?:over|on|across|round|around|all over) /.test(after) &&
    items.slice(Math.max(0, k - 7), k).some((x) => x.duration)
  )
    return found(
      {
        action: /(?:iron|steamer)$/.test(item.w) ? 'press' : 'clean',
        form: 'past',
        at: k,
        items: [item],
        rule: 'treatment.tool-over',
      },
      k,
    );
  // "ran the little vacuum over the entire quilt", "took a soft brush over both faces"
  const ran =
    / (?:over|across|along|round|around) /.test(after) && TOOL.test(item.w) && RAN.exec(before)?.[1];
  if (
    ran &&
    /^ (?:all )?(?:over|across|along|round|around) /.test(after) &&
    !/(?:iron|steamer|roller|cloth)$/.test(item.w)
  )
    return found(
      {
        action: 'clean',
        form: ran === 'run' ? 'base' : ran.endsWith('ing') ? 'ing' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.tool-over',
      },
      k,
    );
  if (
    !Object.hasOwn(FORM, item.w) ||
    (item.w !== 'going over' && !/^(over|across|round|around)$/.test(items[k + 1]?.w ?? ''))
  )
    return undefined;
  if (items[k + 2]?.w === 'to') return undefined;
  const at = items.findIndex((x, m) => m > k + 1 && m < k + 10 && x.w === 'with');
  const tool = at < 0 ? undefined : items.slice(at + 1, at + 5).find((x) => TOOL.test(x.w));
  if (!tool || items.slice(k + 1, at).some((x) => x.token.kind === 'mark')) return undefined;
  return found(
    {
      action: /(?:iron|steamer)$/.test(tool.w) ? 'press' : 'clean',
      form: FORM[item.w]!,
      at: k,
      items: [item, tool],
      rule: 'treatment.tool-over',
    },
    k,
    items.indexOf(tool),
  );
}

const RAN = / (ran|run|running|took|taking|passed|passing|put|drew|worked|got) (?:the|a|my) (?:\S+ ){0,2}$/;
