import type {
  Action,
  Finding,
  Material,
  MaterialUnit,
  Measure,
  RemovedObject,
  Stitch,
  Task,
  Topic,
} from '../../../shared/vocabulary.ts';
import type { Spelling } from './figure-phrases.ts';

type Word = string | { british: string; american: string };

/**
 * `one` and `many` as nouns in a sentence ("a tear", "tears"); `many` alone for what has no plural.
 * `means` is the sense in which the term is used. Terms marked MTS follow the textile condition terms
 * of Museum Textile Services, FF the batting notes of Fairfield, both as excerpted; the others are
 * common practice, no source.
 */
type FindingTerm = { one: Word; many: Word; means: Word; source: 'MTS' | 'FF' | 'common practice' };

const FINDINGS: Record<Finding, FindingTerm> = {
  tear: { one: 'a tear', many: 'tears', means: 'cloth parted by force, nothing missing', source: 'MTS' },
  hole: { one: 'a hole', many: 'holes', means: 'an opening with some cloth gone', source: 'MTS' },
  'split-seam': {
    one: 'a split seam',
    many: 'split seams',
    means: 'sewing that has given way while the cloth beside it holds; a weak seam',
    source: 'MTS',
  },
  fraying: {
    one: 'fraying',
    many: 'fraying',
    means: 'yarns worn loose, at an edge or through abrasion',
    source: 'MTS',
  },
  shattered: {
    one: 'shattered cloth',
    many: 'shattered cloth',
    means: 'cloth splitting into strips all over',
    source: 'MTS',
  },
  thin: {
    one: 'thin, tender cloth',
    many: 'thin, tender cloth',
    means: 'cloth still whole but without strength',
    source: 'common practice',
  },
  stain: { one: 'a stain', many: 'stains', means: 'discolouration by something absorbed', source: 'MTS' },
  fading: { one: 'fading', many: 'fading', means: 'colour lost to light', source: 'MTS' },
  'dye-bleed': {
    one: 'dye bleed',
    many: 'dye bleed',
    means: 'colour that has run into its surroundings',
    source: 'common practice',
  },
  missing: { one: 'a loss', many: 'losses', means: 'cloth that is gone', source: 'MTS' },
  'old-repair': {
    one: 'an earlier repair',
    many: 'earlier repairs',
    means: 'mending done before this work',
    source: 'common practice',
  },
  'lumpy-batting': {
    one: { british: 'shifted, lumpy wadding', american: 'shifted, lumpy batting' },
    many: { british: 'shifted, lumpy wadding', american: 'shifted, lumpy batting' },
    means: {
      british: 'filling that has migrated and bunched',
      american: 'filling that has migrated and bunched',
    },
    source: 'FF',
  },
  puckering: {
    one: 'puckering',
    many: 'puckering',
    means: 'gathers drawn in by sewing or shrinkage',
    source: 'common practice',
  },
  mildew: {
    one: { british: 'mould', american: 'mold' },
    many: { british: 'mould', american: 'mold' },
    means: 'growth, or the smell of it',
    source: 'MTS',
  },
  'insect-damage': {
    one: 'insect damage',
    many: 'insect damage',
    means: 'grazed or eaten cloth',
    source: 'MTS',
  },
  'broken-stitching': {
    one: 'broken stitching',
    many: 'broken stitching',
    means: 'ties or quilting stitches broken or gone',
    source: 'common practice',
  },
  'out-of-square': {
    one: 'distortion out of square',
    many: 'distortion out of square',
    means: 'sides or corners that do not agree',
    source: 'common practice',
  },
  sound: {
    one: 'sound cloth',
    many: 'sound cloth',
    means: 'cloth and sewing that hold',
    source: 'common practice',
  },
};

/** Short names for tables and for the legend of a drawing. */
const FINDING_LABELS: Record<Finding, Word> = {
  tear: 'tear',
  hole: 'hole',
  'split-seam': 'split seam',
  fraying: 'fraying',
  shattered: 'shattered',
  thin: 'thin, tender',
  stain: 'stain',
  fading: 'fading',
  'dye-bleed': 'dye bleed',
  missing: 'loss',
  'old-repair': 'earlier repair',
  'lumpy-batting': { british: 'lumpy wadding', american: 'lumpy batting' },
  puckering: 'puckering',
  mildew: { british: 'mould', american: 'mold' },
  'insect-damage': 'insect damage',
  'broken-stitching': 'broken stitching',
  'out-of-square': 'out of square',
  sound: 'sound',
};

/** `did`: past participle for tables; `plan`: what is proposed, as a noun phrase. */
const ACTIONS: Record<Action, { did: Word; plan: Word; doing: Word }> = {
  replace: { did: 'replaced with new cloth', plan: 'replacing with new cloth', doing: 'replacing' },
  patch: { did: 'patched', plan: 'patching over the damage', doing: 'patching' },
  stabilize: {
    did: 'supported from behind',
    plan: 'supporting from behind',
    doing: 'supporting from behind',
  },
  overlay: { did: 'overlaid with net', plan: 'overlaying with net', doing: 'overlaying with net' },
  resew: { did: 're-sewn', plan: 're-sewing', doing: 're-sewing' },
  darn: { did: 'darned', plan: 'darning', doing: 'darning' },
  remove: { did: 'taken off', plan: 'taking off', doing: 'taking off' },
  clean: { did: 'surface cleaned', plan: 'surface cleaning', doing: 'surface cleaning' },
  wash: { did: 'washed', plan: 'washing', doing: 'washing' },
  dry: { did: 'dried', plan: 'drying', doing: 'drying' },
  press: { did: 'pressed', plan: 'pressing', doing: 'pressing' },
  leave: { did: 'left as found', plan: 'leaving as found', doing: 'leaving as found' },
  cut: { did: 'new pieces cut', plan: 'cutting new pieces', doing: 'cutting new pieces' },
  piece: { did: 'new pieces joined', plan: 'joining new pieces', doing: 'joining new pieces' },
  'add-border': { did: 'border added', plan: 'adding a border', doing: 'adding a border' },
  layer: {
    did: 'layers put together',
    plan: 'putting the layers together',
    doing: 'putting the layers together',
  },
  baste: {
    did: { british: 'tacked', american: 'basted' },
    plan: { british: 'tacking', american: 'basting' },
    doing: { british: 'tacking', american: 'basting' },
  },
  tie: { did: 'tied', plan: 'tying', doing: 'tying' },
  quilt: { did: 'quilted', plan: 'quilting', doing: 'quilting' },
  bind: { did: 'bound', plan: 'binding', doing: 'binding' },
  trim: { did: 'trimmed', plan: 'trimming', doing: 'trimming' },
  'square-up': { did: 'squared up', plan: 'squaring up', doing: 'squaring up' },
  label: {
    did: { british: 'labelled', american: 'labeled' },
    plan: 'sewing on a label',
    doing: 'sewing on a label',
  },
  measure: { did: 'measured', plan: 'measuring', doing: 'measuring' },
  photograph: { did: 'photographed', plan: 'photographing', doing: 'photographing' },
};

const ACTION_LABELS: Partial<Record<Action, Word>> = {
  replace: 'replaced',
  overlay: 'net overlay',
  stabilize: 'support behind',
  clean: 'surface cleaned',
  'add-border': 'border added',
  layer: 'layered',
  cut: 'cut',
  piece: 'pieced',
};

const OBJECTS: Record<RemovedObject, { one: Word; many: Word }> = {
  'old-patch': { one: 'the old patch', many: 'the old patches' },
  ties: { one: 'the old ties', many: 'the old ties' },
  quilting: { one: 'the old quilting stitches', many: 'the old quilting stitches' },
  binding: { one: 'the old binding', many: 'the old binding' },
  backing: { one: 'the old backing', many: 'the old backing' },
  batting: {
    one: { british: 'the old wadding', american: 'the old batting' },
    many: { british: 'the old wadding', american: 'the old batting' },
  },
  stitching: { one: 'old stitching', many: 'old stitching' },
  pins: { one: 'the pins', many: 'the pins' },
  border: { one: 'the old border', many: 'the old border' },
  interfacing: { one: 'the old interfacing', many: 'the old interfacing' },
  piece: { one: 'a piece of cloth', many: 'pieces of cloth' },
  label: { one: 'the label', many: 'the labels' },
};

const STITCHES: Record<Stitch, Word> = {
  hand: 'by hand',
  machine: 'by machine',
  zigzag: 'in zigzag',
  straight: 'in straight stitch',
  whipstitch: 'in whipstitch',
  ladder: 'in ladder stitch',
  running: 'in running stitch',
  blanket: 'in blanket stitch',
  backstitch: 'in backstitch',
  herringbone: 'in herringbone stitch',
  couching: 'by couching',
  'in-the-ditch': 'in the ditch',
};

const MATERIALS: Record<Material, Word> = {
  fabric: 'cloth',
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

const MEASURES: Record<Measure, string> = {
  width: 'Width',
  length: 'Length',
  diagonal: 'Diagonal',
  block: 'Side of a block',
  strip: 'Width of a strip',
  seam: 'Seam allowance',
  'tie-spacing': 'Between ties',
  tail: 'Ends of a tie',
  border: 'Width of the border',
  overhang: 'Overhang',
  'side-top': 'Top side',
  'side-right': 'Right side',
  'side-bottom': 'Bottom side',
  'side-left': 'Left side',
};

const TASKS: Record<Task, string> = {
  survey: 'looking over and recording',
  'taking-apart': 'taking apart',
  mending: 'mending',
  cleaning: 'cleaning',
  cutting: 'cutting',
  piecing: 'piecing',
  layering: 'layering',
  tying: 'tying',
  quilting: 'quilting',
  binding: 'binding',
  shopping: 'buying materials',
  paperwork: 'paperwork',
  other: 'other work',
};

const TOPICS: Record<Topic, Word> = {
  backing: 'the backing',
  batting: { british: 'the wadding', american: 'the batting' },
  binding: 'the binding',
  border: 'the border',
  thread: 'the thread',
  'tie-thread': 'the thread for the ties',
  fabric: 'the cloth',
  tying: 'whether to tie it',
  quilting: 'whether to quilt it',
  washing: 'whether to wash it',
  price: 'the price',
  deadline: 'the date to finish by',
  other: 'another matter',
};

/** A matter that is open, as the owner is asked about it. */
const QUESTIONS: Record<Topic, Word> = {
  backing: 'which backing',
  batting: { british: 'which wadding', american: 'which batting' },
  binding: 'which binding',
  border: 'whether there is to be a border, and which',
  thread: 'which thread',
  'tie-thread': 'which thread for the ties',
  fabric: 'which cloth',
  tying: 'whether it is to be tied or quilted',
  quilting: 'whether it is to be quilted or tied',
  washing: 'whether it may be washed',
  price: 'the price',
  deadline: 'the date to finish by',
  other: 'another matter that is still open',
};

const UNITS: Record<MaterialUnit, [one: string, many: string]> = {
  yd: ['yard', 'yards'],
  in: ['inch', 'inches'],
  ft: ['foot', 'feet'],
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

/** The trade's words in one of the two spellings. */
export function tradeTerms(spelling: Spelling) {
  const say = (word: Word): string => (typeof word === 'string' ? word : word[spelling]);
  const spell = (text: string): string =>
    spelling === 'american' ? text.replaceAll('discolour', 'discolor').replaceAll('colour', 'color') : text;
  return {
    finding: (finding: Finding, plural: boolean) =>
      say(plural ? FINDINGS[finding].many : FINDINGS[finding].one),
    /** For "the tears in": without an article of its own. */
    findingNoun: (finding: Finding, plural: boolean) =>
      say(plural ? FINDINGS[finding].many : FINDINGS[finding].one).replace(/^an? /, ''),
    findingLabel: (finding: Finding) => say(FINDING_LABELS[finding]),
    meaning: (finding: Finding) => spell(say(FINDINGS[finding].means)),
    did: (action: Action) => say(ACTIONS[action].did),
    plan: (action: Action) => say(ACTIONS[action].plan),
    doing: (action: Action) => say(ACTIONS[action].doing),
    actionLabel: (action: Action) => say(ACTION_LABELS[action] ?? ACTIONS[action].did),
    object: (object: RemovedObject, plural: boolean) =>
      say(plural ? OBJECTS[object].many : OBJECTS[object].one),
    stitch: (stitch: Stitch) => say(STITCHES[stitch]),
    material: (material: Material) => say(MATERIALS[material]),
    measure: (measure: Measure) => MEASURES[measure],
    task: (task: Task) => TASKS[task],
    topic: (topic: Topic) => say(TOPICS[topic]),
    question: (topic: Topic) => say(QUESTIONS[topic]),
    unit: (unit: MaterialUnit, count: number) => {
      if (unit === 'spool' && spelling === 'american') return count > 1 ? 'spools' : 'spool';
      return UNITS[unit][count > 1 ? 1 : 0];
    },
    /** Spelling of the few words that differ in running text. */
    spell: (text: string) =>
      spelling === 'american'
        ? text
            .replaceAll('colour', 'color')
            .replaceAll('mould', 'mold')
            .replaceAll('Mould', 'Mold')
            .replaceAll('wadding', 'batting')
            .replaceAll('Wadding', 'Batting')
            .replaceAll('stabilis', 'stabiliz')
            .replaceAll('grey', 'gray')
            .replaceAll('fibre', 'fiber')
            .replaceAll('Fibre', 'Fiber')
            .replaceAll('practise', 'practice')
            .replaceAll('tacked', 'basted')
        : text,
  };
}
export type TradeTerms = ReturnType<typeof tradeTerms>;
