import { z } from 'zod';

/**
 * What an estimate is asked for. Every part is optional and is answered under its own name; a figure that
 * is left out is assumed, or asked for. Lengths are in `unit`; money is written as a decimal string
 * ("24.00") so that no cent is lost in a float.
 */
const LONGEST = 5000;
const size = z.number().positive().max(LONGEST);
/** Seams, overages, allowances: nothing is a fair answer, less than nothing is not. */
const allowance = z.number().nonnegative().max(500);
const running = z.number().positive().max(10_000_000);
const count = z.number().int().positive().max(20_000);
const share = z.number().nonnegative().max(1);
const shrink = z.number().nonnegative().max(0.5);
const name = z.string().trim().min(1).max(120);
const money = z
  .union([z.string(), z.number()])
  .transform((value) => String(value).trim())
  .pipe(z.string().regex(/^\d{1,12}(\.\d{1,20})?$/, 'an amount such as "24.00", not negative'));

/** How a cloth comes: shared by every part that is cut from cloth. */
const cloth = {
  /** Width that can be used, selvedges off. */
  usable: size.optional(),
  /** Width from edge to edge as sold, in place of `usable`. */
  fabricWidth: size.optional(),
  /** What each selvedge takes off `fabricWidth`. */
  selvedge: allowance.optional(),
  /** Share lost in the wash before cutting, along the width and along the length. */
  shrinkage: z.strictObject({ width: shrink.optional(), length: shrink.optional() }).optional(),
  /** Length lost in squaring the cut end. */
  straighten: allowance.optional(),
  /** The name it is bought under; parts of one name are bought as one length. */
  fabric: name.optional(),
};

const piece = z.strictObject({
  width: size.optional(),
  length: size.optional(),
  count: count.optional(),
  name: name.optional(),
  /** Whether this piece may be turned a quarter; the part's own `turn` holds where it is left out. */
  turn: z.boolean().optional(),
});
const pieces = z.array(piece).min(1).max(500);
const scraps = z
  .array(z.strictObject({ width: size, length: size, count: count.optional(), name: name.optional() }))
  .max(60);

const Quilt = z.strictObject({
  width: size.optional(),
  length: size.optional(),
  rows: count.optional(),
  blocks: count.optional(),
});

const Sides = z.strictObject({
  top: size.optional(),
  right: size.optional(),
  bottom: size.optional(),
  left: size.optional(),
  /** From the top left corner, then from the top right. */
  diagonals: z.array(size).max(2).optional(),
  /** Share of a diagonal by which tape and cloth may disagree. */
  tolerance: z.number().nonnegative().max(0.1).optional(),
});

const Backing = z.strictObject({
  ...cloth,
  overage: allowance.optional(),
  seam: allowance.optional(),
  /** A print with one way up: panels run along the length only. */
  oneWay: z.boolean().optional(),
  /** Keeps a join off the centre line, where the fold wears. */
  offCentre: z.boolean().optional(),
  /** Length of the print's repeat, to match it across the joins. */
  repeat: size.optional(),
});

const Package = z.strictObject({ name, width: size, length: size });
const Batting = z.strictObject({
  overage: allowance.optional(),
  packages: z.array(Package).max(100).optional(),
  maxSpacing: size.optional(),
  shrinkage: cloth.shrinkage,
  /** Width of batting sold from a roll. */
  roll: size.optional(),
});

const Binding = z.strictObject({
  ...cloth,
  strip: size.optional(),
  allowance: allowance.optional(),
  join: z.enum(['diagonal', 'straight']).optional(),
  cut: z.enum(['straight', 'bias']).optional(),
  seam: allowance.optional(),
});

const Border = z.strictObject({
  ...cloth,
  width: size.optional(),
  corner: z.enum(['butted', 'mitred', 'cornerstones']).optional(),
  seam: allowance.optional(),
  /** Added to each side of a mitred border beyond length + 2 x border. */
  extra: allowance.optional(),
  /** Length of the print's repeat along the strip, to match it at each join. */
  repeat: size.optional(),
  /** Finished length of one unit of a pieced border. */
  unit: size.optional(),
});

const Ties = z.strictObject({
  rows: count.optional(),
  blocks: count.optional(),
  every: z.union([z.literal('block'), size]).optional(),
  tail: allowance.optional(),
  stitch: allowance.optional(),
  knot: allowance.optional(),
  /** Length of one skein: yards where the unit is inches, metres where it is centimetres. */
  skein: z.number().positive().max(10_000).optional(),
  thread: name.optional(),
});

const Patches = z.strictObject({
  ...cloth,
  /** The print's repeat: every patch shows the same of it. `width` across the cloth, as `length` where left out. */
  repeat: z.strictObject({ length: size, width: size.optional() }).optional(),
  seam: allowance.optional(),
  turn: z.boolean().optional(),
  pieces: pieces.optional(),
  /** Odd pieces on hand, cut from first. */
  scraps: scraps.optional(),
});
const Interfacing = z.strictObject({
  ...cloth,
  turn: z.boolean().optional(),
  pieces: pieces.optional(),
  scraps: scraps.optional(),
});
/** Net or other support laid over, cut larger than the damage by `allowance` on each side. */
const Overlay = z.strictObject({
  ...cloth,
  allowance: allowance.optional(),
  turn: z.boolean().optional(),
  pieces: pieces.optional(),
  scraps: scraps.optional(),
});
const Sashing = z.strictObject({
  ...cloth,
  rows: count.optional(),
  blocks: count.optional(),
  /** Finished size of one block. */
  block: z.strictObject({ width: size, length: size }).optional(),
  width: size.optional(),
  seam: allowance.optional(),
  cornerstones: z.boolean().optional(),
  /** Whether sashing also runs round the outside. */
  outer: z.boolean().optional(),
});
const Label = z.strictObject({
  ...cloth,
  width: size.optional(),
  length: size.optional(),
  seam: allowance.optional(),
  count: count.optional(),
});
const Quilting = z.strictObject({
  /** Area to quilt; the quilt's own where left out. */
  width: size.optional(),
  length: size.optional(),
  spacing: size.optional(),
  pattern: z.enum(['lines', 'grid', 'diagonal-grid']).optional(),
  maxSpacing: size.optional(),
  /** Length of thread per length of seam. */
  ratio: z.number().positive().max(50).optional(),
  waste: share.optional(),
});

const Seam = z.strictObject({
  stitch: z.union([name, z.number().int().positive()]).transform(String).optional(),
  length: running.optional(),
  ratio: z.number().positive().max(100).optional(),
});
const Thread = z.strictObject({
  seams: z.array(Seam).min(1).max(500).optional(),
  waste: share.optional(),
  /** Length on one spool: yards where the unit is inches, metres where it is centimetres. */
  spool: z.number().positive().max(100_000).optional(),
});

const minutes = z.number().positive().max(100_000);
const workCount = z.number().positive().max(100_000);
/** Dimensions that a pace depends on: what is done, to what damage, counted or measured. */
const Planned = z.strictObject({
  action: name,
  count: workCount.optional(),
  /** Length sewn, in place of a count, for what is reckoned by length. */
  length: running.optional(),
  damage: name.optional(),
});
const Logged = z.strictObject({
  action: name,
  minutes: minutes.optional(),
  count: workCount.optional(),
  length: running.optional(),
  damage: name.optional(),
});
/** One stretch of time that covered several actions; shared out by their expected times. */
const Shared = z.strictObject({
  minutes,
  items: z
    .array(Logged.omit({ minutes: true }))
    .min(1)
    .max(50),
});
const Work = z.strictObject({
  planned: z.array(Planned).max(500).optional(),
  log: z
    .array(z.union([Logged, Shared]))
    .max(5000)
    .optional(),
  /** Working hours in a week, to forecast the day of finishing. */
  weeklyHours: z.array(z.number().nonnegative().max(168)).min(1).max(520).optional(),
  today: z.iso.date().optional(),
});

const Charge = z.strictObject({
  name,
  /** Price of one. */
  rate: money,
  /** How many pieces, or how much length. */
  amount: z.number().positive().max(1_000_000),
  per: z.enum(['piece', 'length', 'fixed']).optional(),
  tax: share.optional(),
});
const Price = z.strictObject({
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'three letters of ISO 4217, such as GBP')
    .optional(),
  hourly: money.optional(),
  /** Hours to charge where the work is not estimated here. */
  hours: z
    .union([
      z.number().nonnegative().max(100_000),
      z.strictObject({
        low: z.number().nonnegative().max(100_000),
        likely: z.number().nonnegative().max(100_000),
        high: z.number().nonnegative().max(100_000),
      }),
    ])
    .optional(),
  charges: z.array(Charge).max(200).optional(),
  materials: z
    .array(z.strictObject({ name, amount: money.optional(), tax: share.optional() }))
    .max(500)
    .optional(),
  /** Share added to the materials' cost. */
  markup: z.number().nonnegative().max(5).optional(),
  contingency: share.optional(),
  tax: share.optional(),
  /** Deposit as a share of the total. */
  deposit: share.optional(),
  paid: z
    .array(z.strictObject({ name: name.optional(), amount: money }))
    .max(200)
    .optional(),
  /** Total agreed with the owner, to warn before it is passed. */
  agreed: money.optional(),
  /** What has been spent so far, line by line. */
  actual: z
    .strictObject({
      minutes: z.number().nonnegative().max(10_000_000).optional(),
      materials: z
        .array(z.strictObject({ name, amount: money }))
        .max(500)
        .optional(),
    })
    .optional(),
});

const Shopping = z.strictObject({
  /** Cloth and other things on hand or bought, in yards (inches) or metres (centimetres) or pieces. */
  onHand: z
    .array(z.strictObject({ name, amount: z.number().nonnegative().max(100_000) }))
    .max(500)
    .optional(),
});

export const UNITS = ['in', 'cm'] as const;

export const EstimateSpec = z.strictObject({
  unit: z.enum(UNITS).optional(),
  quilt: Quilt.optional(),
  sides: Sides.optional(),
  backing: Backing.optional(),
  batting: Batting.optional(),
  binding: Binding.optional(),
  border: Border.optional(),
  sashing: Sashing.optional(),
  ties: Ties.optional(),
  quilting: Quilting.optional(),
  patches: Patches.optional(),
  interfacing: Interfacing.optional(),
  overlay: Overlay.optional(),
  label: Label.optional(),
  thread: Thread.optional(),
  work: Work.optional(),
  price: Price.optional(),
  shopping: Shopping.optional(),
});
/** As read: amounts of money are strings. */
export type EstimateSpec = z.output<typeof EstimateSpec>;
export type LengthUnit = (typeof UNITS)[number];

const namesIn = (schema: unknown): string[] => {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) =>
    key === 'properties' ? [...Object.keys(value), ...Object.values(value).flatMap(namesIn)] : namesIn(value),
  );
};
/** Every field's own name, of all parts together. */
export const fieldNames = (): string[] => [
  ...new Set(namesIn(z.toJSONSchema(EstimateSpec, { io: 'input', unrepresentable: 'any' }))),
];

const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );

const pathText = (path: readonly PropertyKey[]): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i ? '.' : ''}${String(key)}`)).join('') ||
  'the spec';

interface Complaint {
  field: string;
  expected: string;
  got: string;
}

const expectedOf = (issue: z.core.$ZodIssue): string => {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int'
        ? 'a whole number'
        : `a ${issue.expected === 'record' ? 'JSON object' : issue.expected}`;
    case 'too_small':
      if (issue.origin === 'array') return `at least ${issue.minimum} in the list`;
      if (issue.origin === 'string') return 'a name that is not empty';
      return issue.inclusive ? `a number of at least ${issue.minimum}` : `a number above ${issue.minimum}`;
    case 'too_big':
      if (issue.origin === 'array') return `at most ${issue.maximum} in the list`;
      if (issue.origin === 'string') return `at most ${issue.maximum} letters`;
      return `a number of at most ${issue.maximum}`;
    case 'invalid_value':
      return issue.values.length > 1
        ? `one of ${issue.values.map(String).join(', ')}`
        : String(issue.values[0]);
    case 'invalid_format':
      return issue.message;
    default:
      return issue.message;
  }
};

/** The first thing wrong with a spec: the field, what was expected of it and what it held. */
export const complaintOf = (error: z.ZodError, input: unknown): Complaint => {
  let issue: z.core.$ZodIssue = error.issues[0]!;
  let path: PropertyKey[] = [...issue.path];
  // A union complains as a whole; the branch that came furthest knows what is wrong.
  while (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const branches = issue.errors.filter((branch) => branch.length > 0);
    const deepest = branches.reduce(
      (best, branch) => ((branch[0]?.path.length ?? 0) > (best[0]?.path.length ?? 0) ? branch : best),
      branches[0] ?? [],
    );
    const inner = deepest[0];
    if (!inner) break;
    if (inner.path.length === 0 && inner.code !== 'unrecognized_keys') {
      const wanted = [...new Set(branches.map((branch) => expectedOf(branch[0]!)))].join(' or ');
      return { field: pathText(path), expected: wanted, got: shown(valueAt(input, path)) };
    }
    issue = inner;
    path = [...path, ...inner.path];
  }
  if (issue.code === 'unrecognized_keys') {
    return {
      field: pathText([...path, issue.keys[0]!]),
      expected: 'a field of the estimate',
      got: `${issue.keys.map((key) => `"${key}"`).join(', ')}, which is not known here`,
    };
  }
  return { field: pathText(path), expected: expectedOf(issue), got: shown(valueAt(input, path)) };
};
