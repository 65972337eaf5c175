import type { QuiltDetails } from '../../shared/quilt.ts';
import type { Hours } from '../hours/hours.ts';
import type { QuiltState } from '../log/state.ts';
import type { DocumentKind } from './document-model.ts';
import { beforeWork } from './documents/condition-record.ts';
import { wholeMeasure } from './documents/identification.ts';
import { proposedTreatments } from './documents/proposed-treatments.ts';
import { type RecordEstimate, withWholePrice } from './record-figures.ts';
import { INTERVENTIONS, type RecordView, recordView } from './record-view.ts';

/**
 * One field that the guidance asks for. `clause` is the paragraph that asks: AIC Commentaries to the
 * Guidelines for Practice 24 to 28, Icon Ethical Guidance (2020) and Icon's contract advice, and the
 * International Quilt Museum's survey fields, all as excerpted.
 */
export type ChecklistItem = {
  id: string;
  field: string;
  clause: string;
  document: DocumentKind;
  filled: boolean;
  /** What fills it, in short. */
  value?: string;
  entryIds: string[];
  noteIds: string[];
  /** What to ask by voice while it is missing. */
  question: string;
  /** Where the answer goes: a field of the quilt's details, or something noted at the piece. */
  answer: 'details' | 'note' | 'photograph' | 'agreement' | 'estimate';
  /** The detail of the quilt that an answer by word goes to. */
  detail?: Detail;
  /** The figure of the estimate that an answer by word goes to. */
  setting?: 'price.hours' | 'price.hourly';
};

/** The details of a quilt that are plain text, and so can be told. */
export type Detail = {
  [K in keyof QuiltDetails]-?: NonNullable<QuiltDetails[K]> extends string ? K : never;
}[keyof QuiltDetails];

type Told = { id: string; noteId?: string };
type Rule = Omit<ChecklistItem, 'filled' | 'value' | 'entryIds' | 'noteIds'> & {
  find: (facts: Facts) => { value: string; from?: readonly Told[] } | undefined;
};
type Facts = {
  view: RecordView;
  hours?: Pick<Hours, 'totalMin'>;
  estimate?: RecordEstimate;
  /** Hours to charge for, as she told them. */
  hoursTold?: number;
};

const text = (value: string | undefined): { value: string } | undefined => (value ? { value } : undefined);
/** A detail of its own, or words of the same in the free text on how the quilt is made. */
const made = (
  { quilt }: RecordView,
  detail: 'piecing' | 'fastening' | 'edgeFinish' | 'fibres',
  words: RegExp,
): { value: string } | undefined =>
  text(quilt[detail]) ??
  text(
    quilt.construction
      ?.split(/[.;\n]/)
      .find((part) => words.test(part))
      ?.trim(),
  );
const told = (
  from: readonly Told[],
  value = `${from.length} noted`,
): { value: string; from: readonly Told[] } | undefined => (from.length ? { value, from } : undefined);
const done = ({ view }: Facts) =>
  view.treatments.filter((fact) => fact.state === 'done' && INTERVENTIONS.has(fact.action));

const RULES: readonly Rule[] = [
  {
    id: 'title',
    field: 'Title of the piece',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'What is the quilt called?',
    answer: 'details',
    detail: 'name',
    find: ({ view }) => text(view.quilt.name),
  },
  {
    id: 'number',
    field: 'Identification number',
    clause: 'AIC 24-B; quilt survey',
    document: 'condition',
    question: 'What number do you give it, for the label and the papers?',
    answer: 'details',
    detail: 'number',
    find: ({ view }) => text(view.quilt.number),
  },
  {
    id: 'owner',
    field: 'Owner',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'Whose quilt is it?',
    answer: 'details',
    detail: 'owner',
    find: ({ view }) => text(view.quilt.owner),
  },
  {
    id: 'documentor',
    field: 'Who examines, works and writes',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'What name goes on the papers as the one who did the work?',
    answer: 'details',
    detail: 'mender',
    find: ({ view }) => text(view.quilt.mender),
  },
  {
    id: 'maker',
    field: 'Maker, as told',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'Who made it, as far as anyone has told you?',
    answer: 'details',
    detail: 'maker',
    find: ({ view }) => text(view.quilt.maker),
  },
  {
    id: 'origin',
    field: 'Origin, as told',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'Where was it made, and how did it come to its owner?',
    answer: 'details',
    detail: 'origin',
    find: ({ view }) => text(view.quilt.origin),
  },
  {
    id: 'date-made',
    field: 'Date made',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'When was it made, or when do you think?',
    answer: 'details',
    detail: 'madeWhen',
    find: ({ view }) => text(view.quilt.madeWhen),
  },
  {
    id: 'marks',
    field: 'Marks and inscriptions',
    clause: 'AIC 24-B; quilt survey',
    document: 'condition',
    question: 'Is there a signature, a date, a label or any other mark on it? Say none if there is none.',
    answer: 'details',
    detail: 'inscriptions',
    find: ({ view }) => text(view.quilt.inscriptions),
  },
  {
    id: 'size',
    field: 'Size: width and length',
    clause: 'AIC 24-B; quilt survey',
    document: 'condition',
    question: 'How wide and how long is it?',
    answer: 'note',
    find: ({ view }) => {
      const from = (['width', 'length'] as const).flatMap((of) => wholeMeasure(view, of) ?? []);
      const sides = (['side-top', 'side-left'] as const).flatMap((of) => wholeMeasure(view, of) ?? []);
      return from.length === 2
        ? told(from, 'measured')
        : sides.length === 2
          ? told(sides, 'measured')
          : undefined;
    },
  },
  {
    id: 'sides',
    field: 'All four sides',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'What do the top, right, bottom and left sides measure?',
    answer: 'note',
    find: ({ view }) => {
      const from = (['side-top', 'side-right', 'side-bottom', 'side-left'] as const).flatMap(
        (of) => wholeMeasure(view, of) ?? [],
      );
      return from.length === 4 ? told(from, 'measured') : undefined;
    },
  },
  {
    id: 'diagonals',
    field: 'Both diagonals',
    clause: 'AIC 24-B',
    document: 'condition',
    question: 'What are the two diagonals?',
    answer: 'note',
    find: ({ view }) => {
      const from = view.measurements.filter((one) => one.of === 'diagonal');
      return from.length >= 2 ? told(from.slice(-2), 'measured') : undefined;
    },
  },
  {
    id: 'piecing',
    field: 'Piecing: by hand or machine',
    clause: 'quilt survey',
    document: 'condition',
    question: 'Is it pieced by hand or by machine?',
    answer: 'details',
    detail: 'piecing',
    find: ({ view }) => made(view, 'piecing', /\b(?:pieced|hand|machine)\b/i),
  },
  {
    id: 'fastening',
    field: 'Ties or quilting, and how close',
    clause: 'quilt survey',
    document: 'condition',
    question: 'Is it tied or quilted, and how closely: inches between the ties, or stitches to the inch?',
    answer: 'details',
    detail: 'fastening',
    find: ({ view }) => made(view, 'fastening', /\b(?:tied|ties|quilted|quilting)\b/i),
  },
  {
    id: 'edge',
    field: 'Binding method',
    clause: 'quilt survey',
    document: 'condition',
    question: 'How is the edge bound?',
    answer: 'details',
    detail: 'edgeFinish',
    find: ({ view }) => made(view, 'edgeFinish', /\b(?:bound|binding)\b|brought (?:round|around|to the)/i),
  },
  {
    id: 'fibres',
    field: 'Fibres of the fabrics and the filling',
    clause: 'quilt survey',
    document: 'condition',
    question: 'What are the fabrics and the filling made of, as far as you can tell: cotton, wool, silk?',
    answer: 'details',
    detail: 'fibres',
    find: ({ view }) =>
      made(view, 'fibres', /\b(?:cottons?|linen|wool(?:len)?|silks?|rayon|polyester|fib(?:re|er)s?)\b/i),
  },
  {
    id: 'fabrics',
    field: 'Fabrics',
    clause: 'quilt survey',
    document: 'condition',
    question: 'Which fabrics can you tell apart, and which blocks are they in?',
    answer: 'note',
    find: ({ view }) => {
      const names = Object.keys(view.grid.fabrics ?? {});
      return names.length ? { value: names.slice(0, 6).join(', ') } : undefined;
    },
  },
  {
    id: 'condition',
    field: 'Present condition',
    clause: 'AIC 25-B',
    document: 'condition',
    question: 'What damage do you see, and in which blocks?',
    answer: 'note',
    find: ({ view }) => told(beforeWork(view)),
  },
  {
    id: 'earlier-repair',
    field: 'Evidence of past treatment',
    clause: 'AIC 25-B',
    document: 'condition',
    question: 'Has anyone mended it before? Say where, or say there are no old repairs.',
    answer: 'details',
    detail: 'earlierRepairs',
    find: ({ view }) =>
      told(view.findings.filter((fact) => fact.finding === 'old-repair')) ?? text(view.quilt.earlierRepairs),
  },
  {
    id: 'examined',
    field: 'How it was examined',
    clause: 'AIC 25-B',
    document: 'condition',
    question: 'How was it examined: in what light, lying or hanging, by eye or with a glass?',
    answer: 'details',
    detail: 'examination',
    find: ({ view }) => text(view.quilt.examination),
  },
  {
    id: 'before-images',
    field: 'Dated photographs before treatment',
    clause: 'AIC 25-B, 27-B',
    document: 'condition',
    question: 'Have you photographed it as it came, front and back?',
    answer: 'photograph',
    find: ({ view }) => {
      const photos = view.photos.filter((photo) => photo.stage === 'before');
      if (!photos.length) return undefined;
      const undated = photos.filter((photo) => !photo.date).length;
      return { value: `${photos.length}${undated ? `, ${undated} without a date` : ''}` };
    },
  },
  {
    id: 'aim',
    field: 'Aim of the work',
    clause: 'AIC 26-B',
    document: 'proposal',
    question: 'What does the owner want from the work: to use it, to show it, or to keep it?',
    answer: 'details',
    detail: 'aim',
    find: ({ view }) => text(view.quilt.aim),
  },
  {
    id: 'authority',
    field: 'Who may decide',
    clause: 'AIC 26-C',
    document: 'proposal',
    question: 'Does the quilt belong to the owner alone, or has anyone else a say?',
    answer: 'details',
    detail: 'authority',
    find: ({ view }) => text(view.quilt.authority),
  },
  {
    id: 'course',
    field: 'Course of treatment',
    clause: 'AIC 26-B',
    document: 'proposal',
    question: 'What do you mean to do, and where?',
    answer: 'note',
    find: ({ view }) =>
      told(proposedTreatments(view).filter((fact) => fact.state === 'planned' || fact.state === 'doing')),
  },
  {
    id: 'reasons',
    field: 'Reasons for what is done and what is left',
    clause: 'Icon Ethical Guidance 13',
    document: 'proposal',
    question: 'Why do you do it that way?',
    answer: 'note',
    find: ({ view }) => told(view.treatments.filter((fact) => fact.reason)),
  },
  {
    id: 'materials-planned',
    field: 'Materials to be used',
    clause: 'AIC 26-B',
    document: 'proposal',
    question: 'Which cloth, thread and wadding will you use?',
    answer: 'note',
    find: ({ view }) => told(view.materials),
  },
  {
    id: 'time-estimate',
    field: 'Estimate of time, with dates',
    clause: 'AIC 26-B; Icon contract advice',
    document: 'proposal',
    question: 'How long do you think it will take?',
    answer: 'estimate',
    setting: 'price.hours',
    find: ({ estimate, hoursTold }) =>
      hoursTold !== undefined
        ? { value: `${hoursTold} hours` }
        : estimate?.work && estimate.work.hours.high > 0
          ? {
              value: `${Math.round(estimate.work.hours.low)} to ${Math.round(estimate.work.hours.high)} hours`,
            }
          : undefined,
  },
  {
    id: 'cost-estimate',
    field: 'Estimate of cost, itemised',
    clause: 'AIC 26-B; Icon contract advice',
    document: 'proposal',
    question: 'What do you charge for an hour of the work?',
    answer: 'estimate',
    setting: 'price.hourly',
    find: ({ estimate }) => (estimate?.price ? { value: estimate.price.total.amount } : undefined),
  },
  {
    id: 'approval',
    field: 'Owner’s agreement, in writing',
    clause: 'AIC 26-C',
    document: 'proposal',
    question: 'Has the owner agreed? By word or by signature, and on what day?',
    answer: 'agreement',
    find: ({ view }) => {
      const signed = view.agreements.find((one) => one.how === 'signature');
      if (signed) return { value: `signed ${signed.date}` };
      const word = view.agreements[0];
      return word ? { value: `by word, ${word.date}; to be signed` } : undefined;
    },
  },
  {
    id: 'actions',
    field: 'Every action, dated, with who did it',
    clause: 'AIC 27-A',
    document: 'treatment',
    question: 'What have you done so far?',
    answer: 'note',
    find: (facts) => (facts.view.quilt.mender ? told(done(facts)) : undefined),
  },
  {
    id: 'materials-added',
    field: 'Materials added',
    clause: 'AIC 27-B',
    document: 'treatment',
    question: 'Which cloth and thread went in?',
    answer: 'note',
    find: ({ view }) => told(view.materials.filter((fact) => fact.use === 'used')),
  },
  {
    id: 'materials-removed',
    field: 'Materials taken out',
    clause: 'AIC 27-B',
    document: 'treatment',
    question: 'Did you take anything out: old patches, ties, backing? Say so, or say nothing was taken out.',
    answer: 'details',
    detail: 'takenOut',
    find: ({ view }) =>
      told(view.treatments.filter((fact) => fact.state === 'done' && fact.action === 'remove')) ??
      text(view.quilt.takenOut),
  },
  {
    id: 'during-images',
    field: 'Photographs of what will be hidden',
    clause: 'AIC 27-A',
    document: 'treatment',
    question: 'Have you photographed what will be covered before you close it?',
    answer: 'photograph',
    find: ({ view }) => {
      const count = view.photos.filter((photo) => photo.stage === 'during').length;
      return count ? { value: String(count) } : undefined;
    },
  },
  {
    id: 'after-images',
    field: 'Photographs after treatment',
    clause: 'AIC 27-A',
    document: 'treatment',
    question: 'Have you photographed it finished, front and back?',
    answer: 'photograph',
    find: ({ view }) => {
      const count = view.photos.filter((photo) => photo.stage === 'after').length;
      return count ? { value: String(count) } : undefined;
    },
  },
  {
    id: 'left',
    field: 'Decisions not to act',
    clause: 'Icon Ethical Guidance 13',
    document: 'treatment',
    question: 'What do you leave as it is, and why?',
    answer: 'note',
    find: ({ view }) =>
      told(view.treatments.filter((fact) => fact.action === 'leave' || fact.state === 'dropped')),
  },
  {
    id: 'hours',
    field: 'Hours by task',
    clause: 'Icon contract advice',
    document: 'treatment',
    question: 'When did you start and stop?',
    answer: 'note',
    find: ({ hours }) =>
      hours && hours.totalMin > 0 ? { value: `${Math.round(hours.totalMin / 6) / 10} h` } : undefined,
  },
];

/** The fields a full record has, each filled or with the question that would fill it. */
export function checklist(
  state: QuiltState,
  given: { hours?: Pick<Hours, 'totalMin'>; estimate?: RecordEstimate } = {},
): ChecklistItem[] {
  const facts: Facts = {
    view: recordView(state),
    ...(given.hours ? { hours: given.hours } : {}),
    ...(typeof state.estimateSettings['price.hours'] === 'number'
      ? { hoursTold: state.estimateSettings['price.hours'] }
      : {}),
    ...(given.estimate ? { estimate: withWholePrice(given.estimate) } : {}),
  };
  return RULES.map(({ find, ...item }) => {
    const found = find(facts);
    const from = found?.from ?? [];
    const toldBy =
      (item.detail && state.detailNotes?.[item.detail]?.noteId) ??
      (item.setting && state.settingNotes?.[item.setting]?.noteId);
    return {
      ...item,
      question: facts.view.terms.spell(item.question),
      filled: found !== undefined,
      ...(found ? { value: found.value.slice(0, 120) } : {}),
      entryIds: [...new Set(from.map((one) => one.id))],
      noteIds: [
        ...new Set([...from.flatMap((one) => one.noteId ?? []), ...(found && toldBy ? [toldBy] : [])]),
      ],
    };
  });
}
