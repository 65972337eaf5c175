/**
 * Every closed list of words that an entry may use. The lists are the contract between the
 * reader of notes, the log, the estimate and the record: a value that is not here does not exist.
 */
export const ACTS = ['log', 'amend', 'undo', 'query', 'aside'] as const;
export const ASK_SLOTS = ['place', 'action', 'quantity', 'time', 'fabric', 'material'] as const;
export const KINDS = [
  'condition',
  'treatment',
  'material',
  'measurement',
  'work',
  'decision',
  'remark',
] as const;
export const FINDINGS = [
  'tear',
  'hole',
  'split-seam',
  'fraying',
  'shattered',
  'thin',
  'stain',
  'fading',
  'dye-bleed',
  'missing',
  'old-repair',
  'lumpy-batting',
  'puckering',
  'mildew',
  'insect-damage',
  'broken-stitching',
  'out-of-square',
  'sound',
] as const;
export const ACTIONS = [
  'replace',
  'patch',
  'stabilize',
  'overlay',
  'resew',
  'darn',
  'remove',
  'clean',
  'wash',
  'dry',
  'press',
  'leave',
  'cut',
  'piece',
  'add-border',
  'layer',
  'baste',
  'tie',
  'quilt',
  'bind',
  'trim',
  'square-up',
  'label',
  'measure',
  'photograph',
] as const;
export const STATES = ['done', 'doing', 'planned', 'considering', 'dropped'] as const;
export const OBJECTS = [
  'old-patch',
  'ties',
  'quilting',
  'binding',
  'backing',
  'batting',
  'stitching',
  'pins',
  'border',
  'interfacing',
  'piece',
  'label',
] as const;
export const STITCHES = [
  'hand',
  'machine',
  'zigzag',
  'straight',
  'whipstitch',
  'ladder',
  'running',
  'blanket',
  'backstitch',
  'herringbone',
  'couching',
  'in-the-ditch',
] as const;
export const MATERIALS = [
  'fabric',
  'backing',
  'batting',
  'binding',
  'interfacing',
  'net',
  'thread',
  'tie-thread',
  'needle',
  'pins',
  'adhesive',
  'detergent',
  'other',
] as const;
export const USES = ['used', 'bought', 'needed', 'on-hand'] as const;
export const LENGTH_UNITS = ['yd', 'in', 'ft', 'm', 'cm', 'mm'] as const;
export const MATERIAL_UNITS = [
  ...LENGTH_UNITS,
  'fat-quarter',
  'spool',
  'skein',
  'ball',
  'pack',
  'roll',
  'g',
  'oz',
  'ml',
  'piece',
] as const;
export const MEASURES = [
  'width',
  'length',
  'diagonal',
  'block',
  'strip',
  'seam',
  'tie-spacing',
  'tail',
  'border',
  'overhang',
  'side-top',
  'side-right',
  'side-bottom',
  'side-left',
] as const;
export const TASKS = [
  'survey',
  'taking-apart',
  'mending',
  'cleaning',
  'cutting',
  'piecing',
  'layering',
  'tying',
  'quilting',
  'binding',
  'shopping',
  'paperwork',
  'other',
] as const;
export const MARKS = ['start', 'stop'] as const;
export const TOPICS = [
  'backing',
  'batting',
  'binding',
  'border',
  'thread',
  'tie-thread',
  'fabric',
  'tying',
  'quilting',
  'washing',
  'price',
  'deadline',
  'other',
] as const;
export const DECISION_STATUSES = ['open', 'settled'] as const;
export const QUERIES = [
  'hours-total',
  'hours-task',
  'hours-day',
  'open-matters',
  'to-do',
  'place-history',
  'materials-needed',
  'yardage',
  'cost',
  'last-entry',
  'day-review',
] as const;
/** Parts of the quilt that are no block. */
export const PARTS = [
  'top',
  'batting',
  'backing',
  'binding',
  'border',
  'border-top',
  'border-right',
  'border-bottom',
  'border-left',
  'edge',
  'edge-top',
  'edge-right',
  'edge-bottom',
  'edge-left',
  'corner-top-left',
  'corner-top-right',
  'corner-bottom-right',
  'corner-bottom-left',
  'sashing',
  'quilt',
] as const;

export type Act = (typeof ACTS)[number];
export type AskSlot = (typeof ASK_SLOTS)[number];
export type Kind = (typeof KINDS)[number];
export type Finding = (typeof FINDINGS)[number];
export type Action = (typeof ACTIONS)[number];
export type TreatmentState = (typeof STATES)[number];
export type RemovedObject = (typeof OBJECTS)[number];
export type Stitch = (typeof STITCHES)[number];
export type Material = (typeof MATERIALS)[number];
export type MaterialUse = (typeof USES)[number];
export type LengthUnit = (typeof LENGTH_UNITS)[number];
export type MaterialUnit = (typeof MATERIAL_UNITS)[number];
export type Measure = (typeof MEASURES)[number];
export type Task = (typeof TASKS)[number];
export type Mark = (typeof MARKS)[number];
export type Topic = (typeof TOPICS)[number];
export type DecisionStatus = (typeof DECISION_STATUSES)[number];
export type QueryName = (typeof QUERIES)[number];
export type Part = (typeof PARTS)[number];
