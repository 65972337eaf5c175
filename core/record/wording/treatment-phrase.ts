import type { Place } from '../../../shared/entry.ts';
import type { Action, Finding, RemovedObject, Stitch } from '../../../shared/vocabulary.ts';
import type { FindingFact, RecordView, TreatmentFact } from '../record-view.ts';
import { betweenBlocks, inPlaces, isPlural, placesPhrase } from './places-phrase.ts';

/** Treatments that are told in one breath: the same thing done the same way to the same damage. */
export type TreatmentGroup = {
  action: Action;
  object?: RemovedObject;
  stitch?: Stitch;
  fabric?: string;
  reason?: string;
  /** The damage it answers, where all its places have it. */
  finding?: Finding;
  places: Place[];
  from: TreatmentFact[];
};

/** Which damage each mending answers, the most particular first. */
const ANSWERS: Partial<Record<Action, readonly Finding[]>> = {
  resew: ['split-seam', 'tear', 'broken-stitching'],
  patch: ['hole', 'missing', 'tear', 'insect-damage', 'fraying', 'shattered', 'thin', 'stain'],
  darn: ['hole', 'tear', 'insect-damage', 'thin', 'fraying'],
  replace: [
    'shattered',
    'missing',
    'hole',
    'thin',
    'fraying',
    'tear',
    'stain',
    'insect-damage',
    'dye-bleed',
    'fading',
  ],
  stabilize: ['shattered', 'thin', 'fraying', 'tear', 'hole', 'split-seam'],
  overlay: ['shattered', 'fraying', 'thin', 'tear', 'hole'],
  clean: ['mildew', 'stain', 'dye-bleed'],
};

/** What the cloth is called that has such damage: "the torn cloth in…". */
const DAMAGED: Partial<Record<Finding, string>> = {
  tear: 'torn cloth',
  hole: 'cloth round the hole',
  fraying: 'frayed cloth',
  shattered: 'shattered cloth',
  thin: 'thin, tender cloth',
  stain: 'stained cloth',
  fading: 'faded cloth',
  'dye-bleed': 'bled cloth',
  missing: 'missing cloth',
  'insect-damage': 'eaten cloth',
  'split-seam': 'split seams',
};

type Verb = { base: string; past: string; participle: string };
const VERBS: Record<Action, Verb> = {
  replace: { base: 'replace', past: 'replaced', participle: 'replaced' },
  patch: { base: 'patch', past: 'patched', participle: 'patched' },
  stabilize: { base: 'support', past: 'supported', participle: 'supported' },
  overlay: { base: 'cover', past: 'covered', participle: 'covered' },
  resew: { base: 're-sew', past: 're-sewed', participle: 're-sewn' },
  darn: { base: 'darn', past: 'darned', participle: 'darned' },
  remove: { base: 'remove', past: 'removed', participle: 'removed' },
  clean: { base: 'clean', past: 'cleaned', participle: 'cleaned' },
  wash: { base: 'wash', past: 'washed', participle: 'washed' },
  dry: { base: 'dry', past: 'dried', participle: 'dried' },
  press: { base: 'press', past: 'pressed', participle: 'pressed' },
  leave: { base: 'leave', past: 'left', participle: 'left' },
  cut: { base: 'cut', past: 'cut', participle: 'cut' },
  piece: { base: 'join', past: 'joined', participle: 'joined' },
  'add-border': { base: 'add', past: 'added', participle: 'added' },
  layer: { base: 'put together', past: 'put together', participle: 'put together' },
  baste: { base: 'baste', past: 'basted', participle: 'basted' },
  tie: { base: 'tie', past: 'tied', participle: 'tied' },
  quilt: { base: 'quilt', past: 'quilted', participle: 'quilted' },
  bind: { base: 'bind', past: 'bound', participle: 'bound' },
  trim: { base: 'trim', past: 'trimmed', participle: 'trimmed' },
  'square-up': { base: 'square up', past: 'squared up', participle: 'squared up' },
  label: { base: 'sew', past: 'sewed', participle: 'sewn' },
  measure: { base: 'measure', past: 'measured', participle: 'measured' },
  photograph: { base: 'photograph', past: 'photographed', participle: 'photographed' },
};

function verbOf(action: Action, british: boolean): Verb {
  return action === 'baste' && british
    ? { base: 'tack', past: 'tacked', participle: 'tacked' }
    : VERBS[action];
}

/** Place -> what was found there. */
export function findingsAt(findings: readonly FindingFact[]): Map<Place, Set<Finding>> {
  const by = new Map<Place, Set<Finding>>();
  for (const { finding, places } of findings) {
    for (const place of places) {
      const set = by.get(place) ?? new Set();
      set.add(finding);
      by.set(place, set);
    }
  }
  return by;
}

/** Brings together what can be told together; order of first mention is kept. `keepReason` tells reasons apart. */
export function groupTreatments(
  treatments: readonly TreatmentFact[],
  findings: ReadonlyMap<Place, ReadonlySet<Finding>>,
  keepReason: boolean,
): TreatmentGroup[] {
  const groups = new Map<string, TreatmentGroup>();
  for (const fact of treatments) {
    const { action, object, stitch, fabric } = fact;
    const reason = keepReason ? fact.reason : undefined;
    const places: (Place | undefined)[] = fact.places.length ? fact.places : [undefined];
    for (const place of places) {
      const answers = ANSWERS[action];
      const here = place === undefined ? undefined : findings.get(place);
      const finding = here && answers?.find((one) => here.has(one));
      const key = JSON.stringify([action, object, stitch, fabric, finding, reason]);
      let group = groups.get(key);
      if (!group) {
        group = {
          action,
          places: [],
          from: [],
          ...(object ? { object } : {}),
          ...(stitch ? { stitch } : {}),
          ...(fabric ? { fabric } : {}),
          ...(finding ? { finding } : {}),
          ...(reason ? { reason } : {}),
        };
        groups.set(key, group);
      }
      if (place !== undefined && !group.places.includes(place)) group.places.push(place);
      if (group.from.at(-1) !== fact) group.from.push(fact);
    }
  }
  return [...groups.values()];
}

/** `where` stands after the verb in the passive: "were removed from every block". */
type Parts = { object: string; plural: boolean; where?: string; tail: string[] };

const pluralPlaces = (phrase: string): boolean =>
  / and |\bblocks\b|\brows\b|\bcolumns\b|\bedges\b|\bborders\b|\bcorners\b/.test(phrase) &&
  !/^every /.test(phrase);

function partsOf(group: TreatmentGroup, view: RecordView, most: number): Parts {
  const { action, object, fabric, stitch, finding, places } = group;
  const { terms, grid } = view;
  const where = inPlaces(places, grid, most);
  const inWhere = where ? ` ${where}` : '';
  const plural = isPlural(places) && places.length > 0;
  const tail: string[] = [];
  const with_ = (text: string | undefined): void => {
    if (text) tail.push(text);
  };
  const bare = (): Parts => {
    const phrase =
      places.length === 0 || (places.length === 1 && places[0] === 'quilt')
        ? 'the quilt'
        : where.startsWith('in ') && /^in \S+ blocks?\b/.test(where)
          ? where.replace(/^in /, '')
          : placesPhrase(places, grid);
    return { object: phrase, plural: pluralPlaces(phrase), tail };
  };
  const cloth = (): Parts => {
    const name = finding && DAMAGED[finding];
    if (!name) return bare();
    const many = finding === 'hole' && plural ? `${name}s` : name;
    return { object: `the ${many}${inWhere}`, plural: name === 'split seams', tail };
  };
  const damage = (): Parts => {
    if (!finding) return bare();
    return {
      object: `the ${terms.findingNoun(finding, plural)}${inWhere}`,
      plural: plural && terms.finding(finding, true) !== terms.finding(finding, false),
      tail,
    };
  };
  let parts: Parts;
  switch (action) {
    case 'replace':
      parts = finding ? cloth() : { object: `cloth${inWhere}`, plural: false, tail };
      with_(fabric ? `with ${fabric}` : 'with new cloth');
      break;
    case 'patch':
    case 'darn':
      parts = damage();
      with_(fabric && `with ${fabric}`);
      break;
    case 'stabilize':
      parts = cloth();
      with_('from behind');
      with_(fabric && `with ${fabric}`);
      break;
    case 'overlay':
      parts = cloth();
      with_(`with ${fabric ?? 'net'}`);
      break;
    case 'resew': {
      const partsOnly = places.length > 0 && places.every((place) => !/^\d/.test(place));
      // Where each entry names the two blocks that a seam joins, the seam is between them.
      const between = betweenBlocks(seamsOf(group), grid);
      const seams = seamsOf(group).length;
      const many = between ? seams > 1 : plural;
      const spot = between ? ` ${between}` : inWhere;
      if (finding && finding !== 'split-seam') parts = damage();
      else if (finding) parts = { object: `the split seam${many ? 's' : ''}${spot}`, plural: many, tail };
      else if (partsOnly) parts = bare();
      else parts = { object: `${many ? 'seams' : 'a seam'}${spot}`, plural: many, tail };
      with_(fabric && `with ${fabric}`);
      break;
    }
    case 'remove': {
      const what = object ? terms.object(object, plural) : 'old work';
      const family =
        places.length > 0 && places.every((place) => place === object || place.startsWith(`${object}-`));
      const same = family || places.length === 0 || places.every((place) => place === 'quilt');
      const edges = object === 'binding' || object === 'border';
      const named =
        family && places[0] !== object ? placesPhrase(places, grid).replace(/^the /, 'the old ') : what;
      parts = {
        object: named,
        plural: / and /.test(named) || (/s$/.test(what) && what !== 'a piece of cloth'),
        ...(same ? {} : { where: edges ? where : `from ${placesPhrase(places, grid)}` }),
        tail,
      };
      break;
    }
    case 'clean':
      parts = finding === 'stain' || finding === 'mildew' ? damage() : bare();
      break;
    case 'cut':
    case 'piece':
      parts = {
        object: 'new pieces',
        plural: true,
        ...(places.length && places[0] !== 'quilt' ? { where: `for ${placesPhrase(places, grid)}` } : {}),
        tail,
      };
      with_(fabric && `from ${fabric}`);
      break;
    case 'add-border': {
      const sides = places.filter((place) => place.startsWith('border-'));
      const phrase = placesPhrase(sides, grid);
      const many = pluralPlaces(phrase);
      parts = sides.length
        ? { object: phrase.replace(/^the /, many ? 'new ' : 'a new '), plural: many, tail }
        : { object: 'a border', plural: false, tail };
      with_(fabric && `of ${fabric}`);
      break;
    }
    case 'layer':
      parts = { object: 'the layers', plural: true, tail };
      break;
    case 'baste':
      parts =
        places.length === 0 || places.includes('quilt')
          ? { object: 'the layers together', plural: true, tail }
          : bare();
      break;
    case 'label':
      parts = {
        object: 'a label',
        plural: false,
        where:
          places.length && places[0] !== 'quilt'
            ? `${places.some((p) => p.startsWith('corner')) ? 'in' : 'to'} ${placesPhrase(places, grid)}`
            : 'to it',
        tail,
      };
      break;
    default:
      parts = bare();
      with_(fabric && `with ${fabric}`);
  }
  if (stitch) tail.push(terms.stitch(stitch));
  return parts;
}

/** The two blocks of each seam, as each entry told them. */
const seamsOf = (group: TreatmentGroup): readonly Place[][] => group.from.map((fact) => fact.places);

const ofGroup = (parts: Parts): string =>
  [parts.object, parts.where, ...parts.tail].filter(Boolean).join(' ');

/** A deed in two parts, so that deeds of one verb can share it: "removed" + "the old binding". */
export function deed(
  group: TreatmentGroup,
  view: RecordView,
  most = Number.POSITIVE_INFINITY,
): { verb: string; what: string } {
  return {
    verb: verbOf(group.action, view.spelling === 'british').past,
    what: ofGroup(partsOf(group, view, most)),
  };
}

/** "patch the holes in…": after "to", or as a heading of a plan. */
export function toDoPhrase(group: TreatmentGroup, view: RecordView, most = Number.POSITIVE_INFINITY): string {
  return `${verbOf(group.action, view.spelling === 'british').base} ${ofGroup(partsOf(group, view, most))}`;
}

/** "the holes in the second block of row 3 were patched with red print". */
export function wasDonePhrase(
  group: TreatmentGroup,
  view: RecordView,
  most = Number.POSITIVE_INFINITY,
): string {
  const { object, plural, where, tail } = partsOf(group, view, most);
  const together = object.endsWith(' together');
  const subject = together ? object.replace(/ together$/, '') : object;
  const verb = verbOf(group.action, view.spelling === 'british').participle;
  return [subject, plural ? 'were' : 'was', together ? `${verb} together` : verb, where, ...tail]
    .filter(Boolean)
    .join(' ');
}

/** A reason as she said it, ready to follow: "because the silk is splitting". */
export function becausePhrase(reason: string): string {
  const text = reason.trim().replace(/[.;,]+$/, '');
  if (/^(?:because|since|as|so|to|for|due|in order|owing)\b/i.test(text)) {
    return text.charAt(0).toLowerCase() + text.slice(1);
  }
  return `because ${/^(?:I|I'm|I’m)\b/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1)}`;
}
