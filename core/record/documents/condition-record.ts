import type { Finding } from '../../../shared/vocabulary.ts';
import type { Passage, Section } from '../document-model.ts';
import { quiltMapSvg } from '../figures/quilt-map-svg.ts';
import { paragraph, passage } from '../passage.ts';
import type { FindingFact, RecordView } from '../record-view.ts';
import { dateRangePhrase } from '../wording/figure-phrases.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import { inPlaces, placesPhrase } from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';
import {
  conditionSummary,
  findingPassages,
  findingSentence,
  findingsTable,
  groupFindings,
} from './findings-passages.ts';
import { dimensions, identification } from './identification.ts';
import type { Paper } from './paper.ts';
import { photographPassages } from './photograph-passages.ts';

/** Condition before work: what was observed, apart from what it may mean. */
export function conditionRecord({ view, date }: Paper): Section[] {
  const findings = beforeWork(view);
  const groups = groupFindings(findings);
  const before: RecordView = { ...view, findings };
  return [
    { id: 'identification', title: 'Identification', passages: [identification(view)] },
    { id: 'examination', title: 'Examination', passages: [examination(view, findings, date)] },
    {
      id: 'construction',
      title: 'Materials and construction',
      passages: [...construction(view), ...some(dimensions(view))],
    },
    {
      id: 'condition',
      title: 'Condition: what was observed',
      passages: [
        conditionSummary(groups, view),
        ...findingPassages(groups, view),
        ...some(earlierRepairs(groups, view)),
        mapPassage(before, 'found', 'Where it was found'),
        ...some(findingsTable(findings, view)),
      ],
    },
    { id: 'interpretation', title: 'What it may mean', passages: interpretation(groups, view) },
    { id: 'history', title: 'As told', passages: asTold(view) },
    { id: 'before-images', title: 'Photographs before treatment', passages: beforeImages(view) },
    { id: 'terms', title: 'Terms used', passages: termsUsed(groups, view) },
  ].filter((section) => section.passages.length > 0);
}

/** Findings up to the day of the first mending; later ones are told as new findings of the treatment. */
export function beforeWork(view: RecordView): FindingFact[] {
  const { workBegan } = view;
  return workBegan ? view.findings.filter((fact) => fact.date <= workBegan) : view.findings;
}

function examination(view: RecordView, findings: readonly FindingFact[], date: string): Passage {
  const { mender, examination: means } = view.quilt;
  const dates = findings.map((fact) => fact.date).sort();
  const measured = view.measurements.length > 0;
  const photographed = view.photos.some((photo) => photo.stage === 'before');
  const how = [
    'by eye',
    ...(measured ? ['with a tape measure'] : []),
    ...(photographed ? ['with photographs'] : []),
  ];
  const when = dates.length
    ? dateRangePhrase(dates[0]!, dates.at(-1)!, view.spelling)
    : dateRangePhrase(date, date, view.spelling);
  const said = [
    sentence(
      `Examined ${mender ? `by ${mender} ` : ''}${dates.length > 1 && dates[0] !== dates.at(-1) ? 'from' : 'on'} ${when}, ${listPhrase(how, view.spelling)}`,
    ),
    ...(means ? [sentence(means.replaceAll('\n', ' '))] : []),
    'Purpose: to record the condition before any work, as a basis for the proposal.',
    'Notes were spoken or typed at the piece and are kept with their times.',
  ];
  return passage('examination', [mender, when, how, ...some(means)], findings, [paragraph(said.join(' '))]);
}

function construction(view: RecordView): Passage[] {
  const { quilt, grid } = view;
  const out: Passage[] = [];
  if (quilt.construction) {
    out.push(
      passage(
        'construction',
        quilt.construction,
        [],
        quilt.construction
          .split('\n')
          .filter(Boolean)
          .map((line) => paragraph(sentence(line))),
      ),
    );
  }
  const made: [string, string][] = (
    [
      ['Piecing', quilt.piecing],
      ['Ties or quilting', quilt.fastening],
      ['Edge', quilt.edgeFinish],
      [view.terms.spell('Fibres'), quilt.fibres],
    ] as const
  ).flatMap(([name, value]) => (value ? [[name, sentence(value.replaceAll('\n', ' '))]] : []));
  if (made.length) out.push(passage('make', made, [], [{ type: 'terms', rows: made }]));
  const fabrics = Object.entries(grid.fabrics ?? {}).filter(([, places]) => places.length > 0);
  if (fabrics.length) {
    const bare = { ...grid, fabrics: {} };
    out.push(
      passage(
        'fabrics',
        fabrics,
        [],
        [
          {
            type: 'list',
            items: fabrics.map(([name, places]) => sentence(`${name}: ${placesPhrase(places, bare)}`)),
          },
        ],
      ),
    );
  }
  return out;
}

function earlierRepairs(groups: ReturnType<typeof groupFindings>, view: RecordView): Passage | undefined {
  const group = groups.find((one) => one.finding === 'old-repair');
  const told = view.quilt.earlierRepairs;
  if (!group) {
    return told
      ? passage('earlier-repairs', told, [], [paragraph(sentence(told.replaceAll('\n', ' ')))])
      : undefined;
  }
  return passage('earlier-repairs', [[...group.places].sort(), group.fabrics, ...some(told)], group.from, [
    paragraph(
      [findingSentence(group, view), ...(told ? [sentence(told.replaceAll('\n', ' '))] : [])].join(' '),
    ),
  ]);
}

export function mapPassage(view: RecordView, moment: 'found' | 'proposed' | 'now', caption: string): Passage {
  const figure = quiltMapSvg(view, moment, `${view.quilt.name}: ${caption.toLowerCase()}`);
  const facts = moment === 'found' ? view.findings : view.treatments;
  return passage(`map-${moment}`, figure.svg, facts, [
    { type: 'figure', svg: figure.svg, width: figure.width, height: figure.height, alt: figure.alt, caption },
  ]);
}

/**
 * What a finding commonly points to, told as possibility. Shattering as inherent vice and iron-mordant brown
 * rot: International Quilt Museum, as excerpted; bunching from sparse quilting: batting maker's notes, as
 * excerpted; the rest common practice, no source.
 */
const MAY_MEAN: Partial<Record<Finding, string>> = {
  shattered:
    'Cloth that shatters is often weighted silk, or brown or black cotton dyed with iron: the weakness is in the cloth itself and goes on whatever is done.',
  'lumpy-batting':
    'Wadding that shifts and bunches usually had too little quilting or too few ties to hold it.',
  'dye-bleed': 'Colour that has run has met water before; it may run again.',
  fading: 'Fading points to display in light; what is lost does not come back.',
  mildew: 'Mould points to damp storage. Whether it is still active cannot be told by eye alone.',
  'insect-damage': 'Grazing and holes point to insects; whether they are still there has to be watched.',
  stain: 'What caused the stains was not tested.',
  'split-seam': 'Seams that split while the cloth holds point to old thread or to strain in use.',
  thin: 'Thin, tender cloth may not bear stitching; it is tried at an inconspicuous place first.',
};

function interpretation(groups: ReturnType<typeof groupFindings>, view: RecordView): Passage[] {
  return groups.flatMap((group) => {
    const meaning = MAY_MEAN[group.finding];
    if (!meaning) return [];
    return [
      passage(`interpretation.${group.finding}`, meaning, group.from, [paragraph(view.terms.spell(meaning))]),
    ];
  });
}

function asTold(view: RecordView): Passage[] {
  const { workBegan } = view;
  return view.remarks
    .filter((remark) => !workBegan || remark.date <= workBegan)
    .map((remark) => {
      const where = inPlaces(remark.places, view.grid);
      return passage(
        `remark.${remark.id}`,
        [remark.words, remark.places],
        [remark],
        [paragraph(`“${sentence(remark.words)}”${where ? ` (${where.replace(/^\w+ /, '')})` : ''}`)],
      );
    });
}

function beforeImages(view: RecordView): Passage[] {
  const images = photographPassages(view, ['before']);
  if (images.length) return images;
  return [
    passage(
      'no-before-images',
      'none',
      [],
      [
        {
          type: 'caution',
          text: 'No photographs before treatment are on file. Take them before any work begins.',
        },
      ],
    ),
  ];
}

function termsUsed(groups: ReturnType<typeof groupFindings>, view: RecordView): Passage[] {
  const used = groups.filter((group) => group.finding !== 'sound');
  if (!used.length) return [];
  const rows = used.map((group): [string, string] => {
    const name = view.terms.findingLabel(group.finding);
    return [name.charAt(0).toUpperCase() + name.slice(1), view.terms.meaning(group.finding)];
  });
  return [passage('terms-used', rows, [], [{ type: 'terms', rows }])];
}

export const some = <T>(value: T | undefined): T[] => (value === undefined ? [] : [value]);
