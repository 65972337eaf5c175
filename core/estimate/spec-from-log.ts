import type { MaterialEntry, MeasurementEntry, TreatmentEntry } from '../../shared/entry.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { type Planned, plannedWork } from '../log/open-matters.ts';
import type { LoggedEntry, QuiltState } from '../log/state.ts';
import { decimal } from './exact.ts';
import { measuredOf } from './measured-of.ts';
import { isByPlace, unitsOfWork } from './units-of-work.ts';

/** Where one figure of a spec came from. */
export interface SpecSource {
  /** JSON path in the spec, such as "backing.overage". */
  path: string;
  from: 'log' | 'assumed' | 'user';
  noteIds?: string[];
  why: string;
}
export interface SpecFromLog {
  spec: EstimateSpec;
  sources: SpecSource[];
}
/** What the log alone does not tell: her working hours of past weeks, the day it is, and what she tries out. */
export interface SpecSetting {
  weeklyHours?: readonly number[];
  today?: string;
  /** Minutes worked so far that are charged for. */
  billedMin?: number;
  /** A figure as if it were set by hand, to see what comes of it. */
  trying?: { path: string; value: unknown };
}

const CM: Record<string, number> = { in: 2.54, ft: 30.48, yd: 91.44, cm: 1, m: 100, mm: 0.1 };
const BLOCK = /^\d+-\d+$/;
/** Seam re-sewn in one place, and a label, where nothing was measured; inches. */
const SEAM_IN = 12;
const LABEL_IN = { width: 5, length: 4 };

type Logged<T> = LoggedEntry & { entry: T };
const isTreatment = (one: LoggedEntry): one is Logged<TreatmentEntry> => one.entry.kind === 'treatment';
const isMaterial = (one: LoggedEntry): one is Logged<MaterialEntry> => one.entry.kind === 'material';
const notesOf = (entries: readonly LoggedEntry[]): string[] => [
  ...new Set(entries.flatMap(({ noteId }) => noteId ?? [])),
];

/**
 * The spec that the log gives by itself: sizes as measured, cuttings and work from what is planned, paces from
 * what was done, materials from what was bought. Each figure says where it came from; her own settings
 * stand above everything. What the log does not tell is left out, for the estimate to assume or ask.
 */
export const specFromLog = (state: QuiltState, setting: SpecSetting = {}): SpecFromLog => {
  const { quilt } = state;
  const spec: Record<string, unknown> = {};
  const sources: SpecSource[] = [];
  const put = (
    path: string,
    value: unknown,
    from: SpecSource['from'],
    why: string,
    noteIds: string[] = [],
  ): void => {
    setAt(spec, path, value);
    sources.push({ path, from, why, ...(noteIds.length > 0 ? { noteIds } : {}) });
  };
  const fromInches = (inches: number): number => (quilt.unit === 'in' ? inches : decimal(inches * 2.54, 4));
  put('unit', quilt.unit, 'log', "the quilt's unit");

  const measured = (of: MeasurementEntry['of']): ReturnType<typeof measuredOf>[number] | undefined =>
    measuredOf(state.entries, of, quilt.unit).at(-1);
  const block = measured('block');
  for (const [field, count, words] of [
    ['width', quilt.blocks, 'blocks across'],
    ['length', quilt.rows, 'rows down'],
  ] as const) {
    const found = measured(field);
    if (found) put(`quilt.${field}`, found.value, 'log', 'measured', found.noteIds);
    else if (block) {
      put(
        `quilt.${field}`,
        decimal(block.value * count, 4),
        'assumed',
        `${count} ${words} of ${block.value} ${quilt.unit}, no border or sashing counted`,
        block.noteIds,
      );
    }
  }
  if (hasBoth(spec.quilt)) {
    put('quilt.rows', quilt.rows, 'log', "the quilt's grid");
    put('quilt.blocks', quilt.blocks, 'log', "the quilt's grid");
  } else delete spec.quilt;
  const sides = (['top', 'right', 'bottom', 'left'] as const).map((side) => measured(`side-${side}`));
  if (sides.every((side) => side !== undefined)) {
    (['top', 'right', 'bottom', 'left'] as const).forEach((side, i) => {
      put(`sides.${side}`, sides[i]!.value, 'log', 'measured', sides[i]!.noteIds);
    });
    const diagonals = measuredOf(state.entries, 'diagonal', quilt.unit).slice(-2);
    if (diagonals.length > 0) {
      put(
        'sides.diagonals',
        diagonals.map(({ value }) => value),
        'log',
        'measured',
        diagonals.flatMap(({ noteIds }) => noteIds),
      );
    }
  }

  const plans = plannedWork(state);
  const planned = (...actions: string[]): Planned[] =>
    plans.filter(({ action }) => action !== undefined && actions.includes(action));
  const materials = state.entries.filter(isMaterial);
  const mentions = (material: string, about: string): LoggedEntry[] => [
    ...materials.filter(({ entry }) => entry.material === material && entry.use !== 'used'),
    ...state.entries.filter(({ entry }) => entry.kind === 'decision' && entry.about === about),
  ];
  const part = (name: string, found: readonly LoggedEntry[], why: string): boolean => {
    if (found.length === 0) return false;
    put(name, {}, 'log', why, notesOf(found));
    return true;
  };
  const entriesOf = (list: readonly Planned[]): LoggedEntry[] => list.map(({ entry }) => entry);
  const layering = entriesOf(planned('layer'));
  const fromMeasure = (path: string, of: MeasurementEntry['of']): void => {
    const found = measured(of);
    if (found) put(path, found.value, 'log', 'measured', found.noteIds);
  };
  if (part('backing', [...mentions('backing', 'backing'), ...layering], 'a backing is spoken of'))
    fromMeasure('backing.overage', 'overhang');
  part('batting', [...mentions('batting', 'batting'), ...layering], 'batting is spoken of');
  if (
    part(
      'binding',
      [...mentions('binding', 'binding'), ...entriesOf(planned('bind'))],
      'a binding is spoken of',
    )
  )
    fromMeasure('binding.strip', 'strip');
  if (
    measured('border') &&
    part(
      'border',
      [...mentions('border', 'border'), ...entriesOf(planned('add-border'))],
      'a border is planned',
    )
  )
    fromMeasure('border.width', 'border');
  if (
    part('ties', [...mentions('tie-thread', 'tying'), ...entriesOf(planned('tie'))], 'tying is spoken of')
  ) {
    put('ties.rows', quilt.rows, 'log', "the quilt's grid");
    put('ties.blocks', quilt.blocks, 'log', "the quilt's grid");
    fromMeasure('ties.every', 'tie-spacing');
    fromMeasure('ties.tail', 'tail');
  }
  if (planned('label').length > 0) {
    put(
      'label',
      { width: fromInches(LABEL_IN.width), length: fromInches(LABEL_IN.length) },
      'assumed',
      'a label is planned; its size is a guess',
      notesOf(entriesOf(planned('label'))),
    );
  }
  const cuttings = [
    { name: 'patches', list: planned('replace', 'patch'), why: 'whole blocks to replace or patch' },
    { name: 'interfacing', list: planned('stabilize'), why: 'whole blocks to stabilise' },
    { name: 'overlay', list: planned('overlay'), why: 'whole blocks to lay net over' },
  ];
  for (const { name, list, why } of cuttings) {
    const count = list.reduce(
      (sum, { places }) => sum + places.filter((place) => BLOCK.test(place)).length,
      0,
    );
    if (count === 0 || !block) continue;
    put(
      `${name}.pieces`,
      [{ width: block.value, length: block.value, count }],
      'assumed',
      `${why}, ${count} of ${block.value} ${quilt.unit} square`,
      [...notesOf(entriesOf(list)), ...block.noteIds],
    );
  }
  const seams = planned('resew');
  if (seams.length > 0) {
    const list = seams.map(({ entry, places }) => ({
      stitch: entry.entry.kind === 'treatment' ? (entry.entry.stitch ?? 'hand') : 'hand',
      length: fromInches(SEAM_IN) * Math.max(1, places.length),
    }));
    put(
      'thread.seams',
      list,
      'assumed',
      `seams to re-sew, ${fromInches(SEAM_IN)} ${quilt.unit} in each place: a guess`,
      notesOf(entriesOf(seams)),
    );
  }
  putWork(state, plans, put);
  if (spec.work && setting.weeklyHours && setting.weeklyHours.length > 0 && setting.today) {
    put('work.weeklyHours', [...setting.weeklyHours], 'log', 'hours worked in past weeks');
    put('work.today', setting.today, 'log', 'the day it is');
  }
  putMoney(state, materials, put);
  if (setting.billedMin !== undefined && setting.billedMin > 0) {
    put('price.actual.minutes', Math.round(setting.billedMin), 'log', 'worked so far and charged for');
  }
  for (const [path, value] of Object.entries(state.estimateSettings)) {
    put(path, value, 'user', 'set by hand');
  }
  if (setting.trying) put(setting.trying.path, setting.trying.value, 'user', 'tried');
  return { spec: spec as EstimateSpec, sources: lastOfEachPath(sources) };
};

type Put = (path: string, value: unknown, from: SpecSource['from'], why: string, noteIds?: string[]) => void;

/** Planned is what is done and what is still to do, so that what is left is the difference. */
const putWork = (state: QuiltState, plans: readonly Planned[], put: Put): void => {
  const found = findingsAt(state);
  const done = state.entries
    .filter(isTreatment)
    .filter(({ entry }) => entry.state === 'done' && entry.action !== undefined && entry.action !== 'leave');
  const counts = new Map<string, { action: string; damage?: string; count: number }>();
  const count = (action: string, damage: string | undefined, many: number): void => {
    const key = `${action}\n${damage ?? ''}`;
    const item = counts.get(key) ?? { action, ...(damage === undefined ? {} : { damage }), count: 0 };
    item.count += many;
    counts.set(key, item);
  };
  const damageOf = (places: readonly string[] | undefined): string | undefined => {
    const damages = new Set((places ?? []).map((place) => found.get(place)));
    return damages.size === 1 ? [...damages][0] : undefined;
  };
  type Item = { action: string; damage?: string; count: number; minutes?: number };
  const itemOf = ({ entry }: Logged<TreatmentEntry>): Item => {
    const damage = isByPlace(entry.action!) ? damageOf(entry.places) : undefined;
    return {
      action: entry.action!,
      ...(damage === undefined ? {} : { damage }),
      count: decimal(unitsOfWork(entry.action!, entry.places ?? [], state.quilt), 4),
      ...(entry.minutes === undefined ? {} : { minutes: entry.minutes }),
    };
  };
  const sharedTimes = timesOfNotes(state);
  const log: unknown[] = [];
  const shared = new Set<string>();
  for (const one of done) {
    const item = itemOf(one);
    count(item.action, item.damage, item.count);
    const minutes = one.noteId === undefined ? undefined : sharedTimes.get(one.noteId);
    if (item.minutes !== undefined || minutes === undefined) log.push(item);
    else if (!shared.has(one.noteId!)) {
      shared.add(one.noteId!);
      const together = done
        .filter(({ noteId, entry }) => noteId === one.noteId && entry.minutes === undefined)
        .map(itemOf);
      const own = done
        .filter(({ noteId }) => noteId === one.noteId)
        .reduce((sum, { entry }) => sum + (entry.minutes ?? 0), 0);
      if (minutes > own) log.push({ minutes: minutes - own, items: together });
      else log.push(...together);
    }
  }
  for (const { action, places } of plans) {
    if (action === undefined || action === 'leave') continue;
    if (places.length === 0 || !isByPlace(action))
      count(action, undefined, decimal(unitsOfWork(action, places, state.quilt), 4));
    else
      for (const place of places) count(action, found.get(place), unitsOfWork(action, [place], state.quilt));
  }
  if (counts.size === 0) return;
  const noteIds = notesOf([...done, ...plans.map(({ entry }) => entry)]);
  put(
    'work.planned',
    [...counts.values()],
    'log',
    'treatments done and planned, by place, tie, side or whole quilt',
    noteIds,
  );
  if (log.length > 0)
    put('work.log', log, 'log', 'treatments done, with their times where said', notesOf(done));
};

/** Place -> the damage last found there. */
const findingsAt = (state: QuiltState): Map<string, string> => {
  const found = new Map<string, string>();
  for (const { entry } of state.entries) {
    if (entry.kind !== 'condition' || entry.finding === 'sound') continue;
    for (const place of entry.places ?? []) found.set(place, entry.finding);
  }
  return found;
};

/** Note -> minutes that its work entry gives to all that the note did. */
const timesOfNotes = (state: QuiltState): Map<string, number> => {
  const times = new Map<string, number>();
  for (const { noteId, entry } of state.entries) {
    if (entry.kind !== 'work' || noteId === undefined) continue;
    const span =
      entry.start && entry.end
        ? (Date.parse(`${entry.end}:00Z`) - Date.parse(`${entry.start}:00Z`)) / 60_000
        : undefined;
    const minutes = entry.minutes ?? span;
    if (minutes !== undefined && minutes > 0) times.set(noteId, (times.get(noteId) ?? 0) + minutes);
  }
  return times;
};

const putMoney = (state: QuiltState, materials: readonly Logged<MaterialEntry>[], put: Put): void => {
  const { quilt } = state;
  put('price.currency', quilt.currency, 'log', "the quilt's currency");
  const costs = materials.flatMap(({ entry, noteId }) => {
    if (!entry.cost || entry.cost.amount < 0) return [];
    const amount = decimal(entry.cost.amount * (entry.cost.each ? (entry.quantity ?? 1) : 1), 4);
    return [
      {
        name: entry.name ?? entry.material ?? 'material',
        amount: amount.toFixed(4).replace(/\.?0+$/, ''),
        noteId,
      },
    ];
  });
  if (costs.length > 0) {
    const bought = costs.map(({ name, amount }) => ({ name, amount }));
    const noteIds = [...new Set(costs.flatMap(({ noteId }) => noteId ?? []))];
    for (const path of ['price.materials', 'price.actual.materials'])
      put(path, bought, 'log', 'bought, with what it cost', noteIds);
  }
  const shopUnit = quilt.unit === 'in' ? 'yd' : 'm';
  const stock = materials.flatMap((one) => {
    const { use, quantity, unit, material } = one.entry;
    if ((use !== 'bought' && use !== 'on-hand') || quantity === undefined || !material) return [];
    const length = unit === undefined ? undefined : CM[unit];
    const amount = length === undefined ? quantity : decimal((quantity * length) / CM[shopUnit]!, 4);
    return [{ name: STOCK_NAMES[material] ?? one.entry.name ?? material, amount, one }];
  });
  put('shopping', {}, 'log', 'what all parts need together');
  if (stock.length > 0) {
    put(
      'shopping.onHand',
      stock.map(({ name, amount }) => ({ name, amount })),
      'log',
      'bought or on hand',
      notesOf(stock.map(({ one }) => one)),
    );
  }
};

/** A material's name on the shopping list. */
const STOCK_NAMES: Readonly<Record<string, string>> = {
  backing: 'backing',
  binding: 'binding',
  interfacing: 'interfacing',
  net: 'net',
  fabric: 'patches',
  thread: 'thread',
  'tie-thread': 'tie thread',
};

const hasBoth = (size: unknown): boolean =>
  typeof size === 'object' && size !== null && 'width' in size && 'length' in size;

/** Names that would reach into the language's own objects are no path. */
const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

const setAt = (spec: Record<string, unknown>, path: string, value: unknown): void => {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== '');
  if (keys.length === 0 || keys.some((key) => FORBIDDEN.has(key))) return;
  let at: Record<string, unknown> = spec;
  for (const key of keys.slice(0, -1)) {
    const next = at[key];
    // What was read from the log is not changed in place.
    at[key] = Array.isArray(next) ? [...next] : typeof next === 'object' && next !== null ? { ...next } : {};
    at = at[key] as Record<string, unknown>;
  }
  at[keys.at(-1)!] = value;
};

const lastOfEachPath = (sources: readonly SpecSource[]): SpecSource[] => [
  ...new Map(sources.map((source) => [source.path, source])).values(),
];
