import type { Entry, Place } from '../../shared/entry.ts';
import type { STAGES } from '../../shared/event.ts';
import type {
  Action,
  DecisionStatus,
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
import type { LoggedEntry, QuiltState } from '../log/state.ts';
import type { HeldBack } from './document-model.ts';
import { cleanLines, cleanText } from './wording/clean-text.ts';
import type { Spelling } from './wording/figure-phrases.ts';
import { localClock } from './wording/local-clock.ts';
import type { Grid } from './wording/places-phrase.ts';
import { type TradeTerms, tradeTerms } from './wording/trade-terms.ts';

type Told = { id: string; noteId?: string; at: string; date: string; time: string };
export type FindingFact = Told & { finding: Finding; places: Place[]; fabric?: string };
export type TreatmentFact = Told & {
  action: Action;
  state: TreatmentState;
  places: Place[];
  object?: RemovedObject;
  stitch?: Stitch;
  fabric?: string;
  minutes?: number;
  reason?: string;
};
/** No price: what she paid is hers. What the owner pays comes from the estimate. */
export type MaterialFact = Told & {
  material?: Material;
  use: MaterialUse;
  quantity?: number;
  unit?: MaterialUnit;
  name?: string;
};
export type MeasurementFact = Told & { of: Measure; value: number; unit: LengthUnit; places: Place[] };
export type DecisionFact = Told & { about: Topic; status: DecisionStatus; reason?: string };
export type RemarkFact = Told & { words: string; places: Place[] };
export type PhotoFact = {
  id: string;
  file: string;
  places: string[];
  stage: (typeof STAGES)[number];
  caption: string;
  date?: string;
};
export type AgreementFact = { how: 'signature' | 'word'; by: string; date: string; at: string; note: string };

/**
 * All that a document can know. It is filled field by field from the log, so that a field which is
 * not named here (a price paid, a recording, talk aside, another setting) has no way in.
 */
export type RecordView = {
  quilt: {
    name: string;
    number?: string;
    owner: string;
    mender: string;
    maker?: string;
    origin?: string;
    madeWhen?: string;
    inscriptions?: string;
    construction?: string;
    piecing?: string;
    fastening?: string;
    edgeFinish?: string;
    fibres?: string;
    earlierRepairs?: string;
    examination?: string;
    authority?: string;
    takenOut?: string;
    aim?: string;
    unit: 'in' | 'cm';
    currency: string;
    zone: string;
    notBilled?: readonly Task[];
  };
  grid: Grid;
  spelling: Spelling;
  terms: TradeTerms;
  findings: FindingFact[];
  treatments: TreatmentFact[];
  materials: MaterialFact[];
  measurements: MeasurementFact[];
  decisions: DecisionFact[];
  remarks: RemarkFact[];
  photos: PhotoFact[];
  agreements: AgreementFact[];
  /** Local date of the first mending done; findings after it were made during the work. */
  workBegan?: string;
  /** First and last local date of anything told. */
  firstDate?: string;
  lastDate?: string;
  heldBack: HeldBack[];
};

/** Actions that change the piece. The rest (measuring, a photograph, letting be) leaves it as it was. */
export const INTERVENTIONS: ReadonlySet<Action> = new Set([
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
  'add-border',
  'layer',
  'baste',
  'tie',
  'quilt',
  'bind',
  'trim',
  'square-up',
  'label',
  'piece',
]);

/** Words that mark a remark or a reason as her own business: money, and what is said in confidence. */
const PRIVATE =
  /[£$€¥]\s?\d|\d\s?(?:quid|pounds?|dollars?|bucks|euros?|cents|pence|p)\b|\b(?:price[ds]?|pricing|charge[ds]?|charging|fee|invoice[ds]?|paid|pays?|paying|owes?|owed|margin|profit|cheap|discount|another client|other client|between (?:us|ourselves|you and me)|off the record|don'?t tell|not tell|won'?t tell|to myself|note to self|private(?:ly)?|confidential|secret|keep (?:it|that|this) (?:quiet|to))\b/i;

export function isPrivateTalk(words: string): boolean {
  return PRIVATE.test(words);
}

/**
 * Fills the view from the log. `until` leaves out what was told after that local date. Remarks are her own
 * words and so go in only when she has confirmed them, alone or with their day; what stays out is
 * listed in `heldBack`.
 */
export function recordView(state: QuiltState, until?: string): RecordView {
  const { quilt } = state;
  const spelling = quilt.spelling;
  const heldBack: HeldBack[] = [];
  const view: RecordView = {
    quilt: {
      name: cleanText(quilt.name),
      owner: cleanText(quilt.owner),
      mender: cleanText(quilt.mender),
      unit: quilt.unit,
      currency: quilt.currency,
      zone: quilt.zone,
      ...(quilt.notBilled?.length ? { notBilled: quilt.notBilled } : {}),
      ...filled('number', quilt.number),
      ...filled('maker', quilt.maker),
      ...filled('origin', quilt.origin),
      ...filled('madeWhen', quilt.madeWhen),
      ...filled('inscriptions', quilt.inscriptions),
      ...filled('construction', quilt.construction),
      ...filled('piecing', quilt.piecing),
      ...filled('fastening', quilt.fastening),
      ...filled('edgeFinish', quilt.edgeFinish),
      ...filled('fibres', quilt.fibres),
      ...filled('earlierRepairs', quilt.earlierRepairs),
      ...filled('examination', quilt.examination),
      ...filled('authority', quilt.authority),
      ...filled('takenOut', quilt.takenOut),
      ...filled('aim', quilt.aim),
    },
    grid: {
      rows: quilt.rows,
      blocks: quilt.blocks,
      ...(quilt.shape ? { shape: quilt.shape } : {}),
      ...(quilt.placeNames ? { placeNames: cleanNames(quilt.placeNames) } : {}),
      fabrics: cleanNames(quilt.fabrics ?? {}),
      spelling,
    },
    spelling,
    terms: tradeTerms(spelling),
    findings: [],
    treatments: [],
    materials: [],
    measurements: [],
    decisions: [],
    remarks: [],
    photos: [],
    agreements: [],
    heldBack,
  };

  const noteText = new Map<string, string>();
  const remarked = state.entries.some((logged) => logged.entry.kind === 'remark');
  if (remarked) for (const { note } of state.notes) noteText.set(note.id, note.text);
  const confirmedDays = new Set(state.confirmedDays);

  for (const logged of state.entries) {
    const { date, time } = localClock(logged.at, quilt.zone);
    if (until !== undefined && date > until) continue;
    if (!view.firstDate || date < view.firstDate) view.firstDate = date;
    if (!view.lastDate || date > view.lastDate) view.lastDate = date;
    const told: Told = {
      id: logged.id,
      at: logged.at,
      date,
      time,
      ...(logged.noteId === undefined ? {} : { noteId: logged.noteId }),
    };
    addEntry(view, logged, told, noteText, confirmedDays);
  }

  for (const photo of state.photos) {
    view.photos.push({
      id: photo.id,
      file: photo.file,
      places: [...photo.places],
      stage: photo.stage,
      caption: cleanText(photo.caption),
      ...(photo.takenAt ? { date: localClock(photo.takenAt, quilt.zone).date } : {}),
    });
  }
  for (const { how, by, at, note } of state.agreements) {
    const { date } = localClock(at, quilt.zone);
    if (until !== undefined && date > until) continue;
    view.agreements.push({ how, by: cleanText(by), at, date, note: cleanText(note) });
  }
  return view;
}

function addEntry(
  view: RecordView,
  logged: LoggedEntry,
  told: Told,
  noteText: ReadonlyMap<string, string>,
  confirmedDays: ReadonlySet<string>,
): void {
  const entry: Entry = logged.entry;
  const places = 'places' in entry ? [...(entry.places ?? [])] : [];
  switch (entry.kind) {
    case 'condition':
      view.findings.push({ ...told, finding: entry.finding, places, ...filled('fabric', entry.fabric) });
      return;
    case 'treatment': {
      if (!entry.action) return;
      const { action, state, object, stitch, minutes } = entry;
      if (state === 'done' && INTERVENTIONS.has(action) && (!view.workBegan || told.date < view.workBegan)) {
        view.workBegan = told.date;
      }
      view.treatments.push({
        ...told,
        action,
        state,
        places,
        ...(object ? { object } : {}),
        ...(stitch ? { stitch } : {}),
        ...(minutes ? { minutes } : {}),
        ...filled('fabric', entry.fabric),
        ...reasonOf(logged, view.heldBack),
      });
      return;
    }
    case 'material': {
      const { material, use, quantity, unit } = entry;
      view.materials.push({
        ...told,
        use,
        ...(material ? { material } : {}),
        ...(quantity === undefined ? {} : { quantity }),
        ...(unit ? { unit } : {}),
        ...filled('name', entry.name),
      });
      return;
    }
    case 'measurement':
      if (entry.value === undefined || !entry.unit) return;
      view.measurements.push({ ...told, of: entry.of, value: entry.value, unit: entry.unit, places });
      return;
    case 'decision':
      view.decisions.push({
        ...told,
        about: entry.about,
        status: entry.status,
        ...reasonOf(logged, view.heldBack),
      });
      return;
    case 'remark': {
      const text = told.noteId === undefined ? undefined : noteText.get(told.noteId);
      if (text === undefined) return;
      // Only the clause that is the remark: the rest of the note may be talk aside.
      const clause = logged.origins.entry;
      const words = cleanText(clause ? (clause.words ?? text.slice(clause.from, clause.to)) : text);
      if (!words) return;
      const keep = (why: string): void => {
        view.heldBack.push({
          entryId: told.id,
          ...(told.noteId === undefined ? {} : { noteId: told.noteId }),
          why,
        });
      };
      if (isPrivateTalk(words)) keep('speaks of money or in confidence');
      else if (!logged.confirmed && !confirmedDays.has(told.date)) keep('not confirmed yet');
      else view.remarks.push({ ...told, words, places });
      return;
    }
    case 'work':
      return;
  }
}

function reasonOf(logged: LoggedEntry, heldBack: HeldBack[]): { reason?: string } {
  const reason = logged.reason === undefined ? '' : cleanText(logged.reason);
  if (!reason) return {};
  if (isPrivateTalk(reason)) {
    heldBack.push({
      entryId: logged.id,
      ...(logged.noteId === undefined ? {} : { noteId: logged.noteId }),
      why: 'the reason speaks of money or in confidence',
    });
    return {};
  }
  return { reason };
}

function filled<K extends string>(key: K, value: string | undefined): Partial<Record<K, string>> {
  const text = value === undefined ? '' : cleanLines(value);
  return text ? ({ [key]: text } as Partial<Record<K, string>>) : {};
}

const cleanNames = (named: Record<string, string[]>): Record<string, string[]> =>
  Object.fromEntries(Object.entries(named).map(([name, places]) => [cleanText(name), [...places]]));
