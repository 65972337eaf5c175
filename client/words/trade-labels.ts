import type {
  Action,
  Finding,
  LengthUnit,
  Material,
  MaterialUnit,
  MaterialUse,
  Measure,
  RemovedObject,
  Stitch,
  Task,
  Topic,
  TreatmentState,
} from '../../shared/vocabulary.ts';

/**
 * What the page calls the closed lists of the log. Where British and American makers use different
 * words the value is a pair; `tradeLabels` picks one side.
 */
type Spelling = 'british' | 'american';
type Word = string | { british: string; american: string };

const FINDING_WORDS: Record<Finding, Word> = {
  tear: 'tear',
  hole: 'hole',
  'split-seam': 'split seam',
  fraying: 'fraying',
  shattered: 'shattered',
  thin: 'thin, tender',
  stain: 'stain',
  fading: 'fading',
  'dye-bleed': 'dye bleed',
  missing: 'cloth missing',
  'old-repair': 'old repair',
  'lumpy-batting': { british: 'lumpy wadding', american: 'lumpy batting' },
  puckering: 'puckering',
  mildew: { british: 'mould', american: 'mold' },
  'insect-damage': 'insect damage',
  'broken-stitching': 'broken stitching',
  'out-of-square': 'out of square',
  sound: 'sound',
};

/** infinitive, past, and the noun that stands on a list of work. */
const ACTION_WORDS: Record<Action, { todo: Word; did: Word }> = {
  replace: { todo: 'replace', did: 'replaced' },
  patch: { todo: 'patch', did: 'patched' },
  stabilize: {
    todo: { british: 'stabilise', american: 'stabilize' },
    did: { british: 'stabilised', american: 'stabilized' },
  },
  overlay: { todo: 'overlay with net', did: 'overlaid with net' },
  resew: { todo: 're-sew', did: 're-sewn' },
  darn: { todo: 'darn', did: 'darned' },
  remove: { todo: 'take off', did: 'taken off' },
  clean: { todo: 'clean', did: 'cleaned' },
  wash: { todo: 'wash', did: 'washed' },
  dry: { todo: 'dry', did: 'dried' },
  press: { todo: 'press', did: 'pressed' },
  leave: { todo: 'leave as found', did: 'left as found' },
  cut: { todo: 'cut', did: 'cut' },
  piece: { todo: 'piece', did: 'pieced' },
  'add-border': { todo: 'add a border', did: 'border added' },
  layer: { todo: 'layer', did: 'layered' },
  baste: { todo: { british: 'tack', american: 'baste' }, did: { british: 'tacked', american: 'basted' } },
  tie: { todo: 'tie', did: 'tied' },
  quilt: { todo: 'quilt', did: 'quilted' },
  bind: { todo: 'bind', did: 'bound' },
  trim: { todo: 'trim', did: 'trimmed' },
  'square-up': { todo: 'square up', did: 'squared up' },
  label: { todo: 'label', did: 'labelled' },
  measure: { todo: 'measure', did: 'measured' },
  photograph: { todo: 'photograph', did: 'photographed' },
};

const STATE_WORDS: Record<TreatmentState, Word> = {
  done: 'done',
  doing: 'in hand',
  planned: 'planned',
  considering: 'undecided',
  dropped: 'decided against',
};

const OBJECT_WORDS: Record<RemovedObject, Word> = {
  'old-patch': 'the old patch',
  ties: 'the ties',
  quilting: 'the quilting',
  binding: 'the binding',
  backing: 'the backing',
  batting: { british: 'the wadding', american: 'the batting' },
  stitching: 'old stitching',
  pins: 'the pins',
  border: 'the border',
  interfacing: 'the interfacing',
  piece: 'a piece of cloth',
  label: 'the label',
};

const STITCH_WORDS: Record<Stitch, Word> = {
  hand: 'by hand',
  machine: 'by machine',
  zigzag: 'in zigzag',
  straight: 'in straight stitch',
  whipstitch: 'in whipstitch',
  ladder: 'in ladder stitch',
  running: 'in running stitch',
  blanket: 'in blanket stitch',
  backstitch: 'in backstitch',
  herringbone: 'in herringbone',
  couching: 'couched',
  'in-the-ditch': 'in the ditch',
};

const MATERIAL_WORDS: Record<Material, Word> = {
  fabric: 'fabric',
  backing: 'backing cloth',
  batting: { british: 'wadding', american: 'batting' },
  binding: 'binding',
  interfacing: 'interfacing',
  net: 'net',
  thread: 'thread',
  'tie-thread': 'thread for ties',
  needle: 'needles',
  pins: 'pins',
  adhesive: 'adhesive',
  detergent: 'detergent',
  other: 'other material',
};

const USE_WORDS: Record<MaterialUse, Word> = {
  used: 'used',
  bought: 'bought',
  needed: 'to buy',
  'on-hand': 'on hand',
};

const MEASURE_WORDS: Record<Measure, Word> = {
  width: 'width',
  length: 'length',
  diagonal: 'diagonal',
  block: 'block',
  strip: 'strip',
  seam: 'seam',
  'tie-spacing': 'between ties',
  tail: 'tail of a tie',
  border: 'border',
  overhang: 'overhang',
  'side-top': 'top side',
  'side-right': 'right side',
  'side-bottom': 'bottom side',
  'side-left': 'left side',
};

const TASK_WORDS: Record<Task, Word> = {
  survey: 'survey',
  'taking-apart': 'taking apart',
  mending: 'mending',
  cleaning: 'cleaning',
  cutting: 'cutting',
  piecing: 'piecing',
  layering: 'layering',
  tying: 'tying',
  quilting: 'quilting',
  binding: 'binding',
  shopping: 'shopping',
  paperwork: 'paperwork',
  other: 'other work',
};

const TOPIC_WORDS: Record<Topic, Word> = {
  backing: 'the backing',
  batting: { british: 'the wadding', american: 'the batting' },
  binding: 'the binding',
  border: 'the border',
  thread: 'the thread',
  'tie-thread': 'the thread for the ties',
  fabric: 'the fabric',
  tying: 'tying',
  quilting: 'quilting',
  washing: 'washing',
  price: 'the price',
  deadline: 'the date',
  other: 'another matter',
};

const UNIT_WORDS: Record<LengthUnit | MaterialUnit, [one: string, many: string]> = {
  yd: ['yd', 'yd'],
  in: ['in', 'in'],
  ft: ['ft', 'ft'],
  m: ['m', 'm'],
  cm: ['cm', 'cm'],
  mm: ['mm', 'mm'],
  'fat-quarter': ['fat quarter', 'fat quarters'],
  spool: ['reel', 'reels'],
  skein: ['skein', 'skeins'],
  ball: ['ball', 'balls'],
  pack: ['pack', 'packs'],
  roll: ['roll', 'rolls'],
  g: ['g', 'g'],
  oz: ['oz', 'oz'],
  ml: ['ml', 'ml'],
  piece: ['piece', 'pieces'],
};

/** The labels in one of the two spellings; the default of a new quilt is British. */
export function tradeLabels(spelling: Spelling) {
  const say = (word: Word): string => (typeof word === 'string' ? word : word[spelling]);
  return {
    finding: (value: Finding) => say(FINDING_WORDS[value]),
    toDo: (value: Action) => say(ACTION_WORDS[value].todo),
    did: (value: Action) =>
      value === 'label' && spelling === 'american' ? 'labeled' : say(ACTION_WORDS[value].did),
    state: (value: TreatmentState) => say(STATE_WORDS[value]),
    object: (value: RemovedObject) => say(OBJECT_WORDS[value]),
    stitch: (value: Stitch) => say(STITCH_WORDS[value]),
    material: (value: Material) => say(MATERIAL_WORDS[value]),
    use: (value: MaterialUse) => say(USE_WORDS[value]),
    measure: (value: Measure) => say(MEASURE_WORDS[value]),
    task: (value: Task) => say(TASK_WORDS[value]),
    topic: (value: Topic) => say(TOPIC_WORDS[value]),
    unit: (value: LengthUnit | MaterialUnit, count: number) => {
      const [one, many] = UNIT_WORDS[value];
      if (value === 'spool' && spelling === 'american') return count > 1 ? 'spools' : 'spool';
      return count > 1 ? many : one;
    },
  };
}
export type TradeLabels = ReturnType<typeof tradeLabels>;
