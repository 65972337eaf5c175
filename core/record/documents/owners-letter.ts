import type { Action } from '../../../shared/vocabulary.ts';
import { cautions } from '../cautions.ts';
import type { Passage, Section } from '../document-model.ts';
import { paragraph, passage } from '../passage.ts';
import { INTERVENTIONS, type RecordView } from '../record-view.ts';
import { countPhrase, datePhrase, dateRangePhrase, durationPhrase } from '../wording/figure-phrases.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import { inPlaces, isPlural, placesPhrase } from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';
import {
  becausePhrase,
  deed,
  findingsAt,
  groupTreatments,
  type TreatmentGroup,
} from '../wording/treatment-phrase.ts';
import { groupFindings } from './findings-passages.ts';
import { layoutPhrase, sizePhrase } from './identification.ts';
import type { Paper } from './paper.ts';
import { factsOf } from './proposal.ts';

/** Places in the letter are summed up beyond this many phrases; the record of treatment has them all. */
const MOST = 2;

/** Two pages in plain words for the person who takes the quilt home. */
export function ownersLetter({ view, date, hours }: Paper): Section[] {
  const { owner, mender, name } = view.quilt;
  return [
    {
      id: 'greeting',
      title: '',
      passages: [
        passage(
          'greeting',
          [owner, name],
          [],
          [
            paragraph(owner ? `Dear ${owner},` : 'To whoever keeps this quilt,'),
            paragraph(
              `This goes with ${quoted(name)}. It says what I found, what I did and what I left, and how to look after it.`,
            ),
          ],
        ),
      ],
    },
    { id: 'what-it-is', title: 'What it is', passages: [whatItIs(view)] },
    { id: 'found', title: 'What I found', passages: [whatIFound(view)] },
    { id: 'did', title: 'What I did', passages: whatIDid(view) },
    { id: 'left', title: 'What I left, and why', passages: whatILeft(view) },
    { id: 'took', title: 'What it took', passages: whatItTook(view, hours) },
    { id: 'care', title: 'How to care for it', passages: [care(view)] },
    {
      id: 'cautions',
      title: 'Please take care',
      passages: cautions(view, 'letter').map((caution) =>
        passage(`caution.${caution.id}`, caution.text, [], [{ type: 'caution', text: caution.text }]),
      ),
    },
    {
      id: 'close',
      title: '',
      passages: [
        passage(
          'close',
          [mender, date],
          [],
          [
            paragraph(
              'Keep this letter and the record of treatment on paper with the quilt, and a second copy elsewhere. When in doubt ask a textile conservator; where your local rules say otherwise, they come first.',
            ),
          ],
        ),
        passage(
          'signature',
          [mender, date],
          [],
          [{ type: 'signatures', lines: [`${mender || 'Mender'}, ${datePhrase(date, view.spelling)}`] }],
        ),
      ],
    },
  ].filter((section) => section.passages.length > 0);
}

const quoted = (name: string): string => (name ? `“${name}”` : 'your quilt');

function whatItIs(view: RecordView): Passage {
  const { quilt, grid } = view;
  const size = sizePhrase(view)?.replace(' (width × length)', '').replace(' × ', ' by ');
  const said: string[] = [
    sentence(`the quilt is made of ${layoutPhrase(grid)}${size ? `, and measures ${size}` : ''}`),
  ];
  if (quilt.maker)
    said.push(
      sentence(`as it was told to me, it was made by ${lowerArticle(quilt.maker.replaceAll('\n', ' '))}`),
    );
  if (quilt.madeWhen) said.push(sentence(madePhrase(quilt.madeWhen.replaceAll('\n', ' '))));
  if (quilt.origin) said.push(sentence(quilt.origin.replaceAll('\n', ' ')));
  if (quilt.inscriptions)
    said.push(sentence(`it carries these marks: ${quilt.inscriptions.replaceAll('\n', ' ')}`));
  const facts = [said];
  return passage('what-it-is', facts, [], [paragraph(said.join(' '))]);
}

const lowerArticle = (text: string): string =>
  text.replace(/^(?:The|A|An|Her|His|Their|My)\b/, (word) => word.toLowerCase());

/** "1931", "about 1890", "Winter of 1931" each in a sentence of its own kind. */
function madePhrase(when: string): string {
  if (/^\d{4}s?\b/.test(when)) return `it was made in ${/^\d{4}s/.test(when) ? 'the ' : ''}${when}`;
  if (/^(?:spring|summer|autumn|fall|winter)\b/i.test(when)) {
    return `it was made in the ${when.charAt(0).toLowerCase()}${when.slice(1)}`;
  }
  if (/^(?:in|about|around|before|after|between|circa|probably|during|sometime|some time)\b/i.test(when)) {
    return `it was made ${when.charAt(0).toLowerCase()}${when.slice(1)}`;
  }
  return `when it was made: ${when}`;
}

function whatIFound(view: RecordView): Passage {
  const groups = groupFindings(view.findings);
  const damage = groups.filter((group) => group.finding !== 'sound' && group.finding !== 'old-repair');
  const said: string[] = [];
  // The first few with their places; the rest by name, or the letter would be the condition record again.
  const told = damage.slice(0, 6).map((group) => {
    const name = view.terms.finding(group.finding, isPlural(group.places));
    return `${name} ${inPlaces(group.places, view.grid, MOST)}`.trim();
  });
  if (told.length === 0) said.push('I found no damage that I noted.');
  for (let i = 0; i < told.length; i += 3) {
    said.push(
      sentence(`I ${i === 0 ? '' : 'also '}found ${listPhrase(told.slice(i, i + 3), view.spelling)}`),
    );
  }
  const rest = damage.slice(6);
  if (rest.length) {
    const names = rest.map((group) =>
      view.terms.findingNoun(group.finding, isPlural(group.places)).replace(/, /g, ' and '),
    );
    said.push(
      sentence(`I noted besides ${listPhrase(names, view.spelling)}; the condition record says where`),
    );
  }
  const old = groups.find((group) => group.finding === 'old-repair');
  if (old) said.push(sentence(`someone had mended it before, ${inPlaces(old.places, view.grid, MOST)}`));
  const sound = groups.find((group) => group.finding === 'sound');
  const where = sound && placesPhrase(sound.places, view.grid);
  if (sound && where) {
    said.push(
      inPlaces(sound.places, view.grid, MOST) === inPlaces(sound.places, view.grid)
        ? sentence(
            `${where} ${/ and |blocks|rows|columns/.test(where) && !where.startsWith('every') ? 'were' : 'was'} sound`,
          )
        : sentence(`${countPhrase(sound.places.length)} places were sound`),
    );
  }
  const facts = groups.map((group) => [group.finding, [...group.places].sort()]);
  return passage(
    'what-i-found',
    facts,
    groups.flatMap((group) => group.from),
    [paragraph(said.join(' '))],
  );
}

const PHASES: { id: string; lead: string; actions: readonly Action[] }[] = [
  { id: 'apart', lead: 'To begin with', actions: ['remove'] },
  { id: 'clean', lead: 'After that', actions: ['clean', 'wash', 'dry'] },
  {
    id: 'mend',
    lead: 'In the mending',
    actions: ['resew', 'darn', 'patch', 'replace', 'stabilize', 'overlay'],
  },
  {
    id: 'rebuild',
    lead: 'To put it together again',
    actions: ['piece', 'add-border', 'square-up', 'trim', 'layer', 'tie', 'quilt', 'bind'],
  },
  { id: 'label', lead: 'Last,', actions: ['label'] },
];

function whatIDid(view: RecordView): Passage[] {
  const done = view.treatments.filter(
    (fact) => fact.state === 'done' && INTERVENTIONS.has(fact.action) && fact.object !== 'pins',
  );
  if (!done.length) {
    return [passage('did-nothing', 'nothing', [], [paragraph('I have not begun the treatment yet.')])];
  }
  const found = findingsAt(view.findings);
  return PHASES.flatMap((phase) => {
    const facts = done.filter((fact) => phase.actions.includes(fact.action));
    if (!facts.length) return [];
    const groups = merged(groupTreatments(facts, found, false));
    groups.sort((a, b) => phase.actions.indexOf(a.action) - phase.actions.indexOf(b.action));
    const said = joinDeeds(
      groups.map((group) => deed(plain(group), view, MOST)),
      `${phase.lead} I`,
      view,
    );
    return [
      passage(
        `did.${phase.id}`,
        groups.map((group) => factsOf(group)),
        facts,
        [paragraph(said)],
      ),
    ];
  });
}

/** For plain words the stitch and the cloth of each patch don't matter: same deed, same damage, one clause. */
function merged(groups: readonly TreatmentGroup[]): TreatmentGroup[] {
  const by = new Map<string, TreatmentGroup>();
  for (const group of groups) {
    const key = JSON.stringify([group.action, group.object, group.finding]);
    const old = by.get(key);
    if (!old) {
      by.set(key, { ...group, places: [...group.places], from: [...group.from] });
      continue;
    }
    for (const place of group.places) if (!old.places.includes(place)) old.places.push(place);
    old.from.push(...group.from);
    if (old.stitch !== group.stitch) delete old.stitch;
    if (old.fabric !== group.fabric) delete old.fabric;
  }
  return [...by.values()];
}

/** Without the names of stitches, which mean little to whom the letter is for; by hand or machine stays. */
function plain(group: TreatmentGroup): TreatmentGroup {
  if (group.stitch === 'hand' || group.stitch === 'machine' || group.stitch === undefined) return group;
  const { stitch: _stitch, ...rest } = group;
  return rest;
}

/** Deeds of one verb share it; then sentences of at most three, each begun a little differently. */
function joinDeeds(deeds: readonly { verb: string; what: string }[], lead: string, view: RecordView): string {
  const verbs: { verb: string; whats: string[] }[] = [];
  for (const { verb, what } of deeds) {
    const last = verbs.at(-1);
    if (last?.verb === verb && last.whats.length < 4) last.whats.push(what);
    else verbs.push({ verb, whats: [what] });
  }
  const clauses = verbs.map(({ verb, whats }) => `${verb} ${listPhrase(whats, view.spelling)}`);
  const said: string[] = [];
  for (let i = 0; i < clauses.length; ) {
    // A clause that is a list itself stands alone, so that the sentence can be followed.
    const long = verbs[i]!.whats.length > 2;
    let upTo = i + 1;
    while (!long && upTo < clauses.length && upTo < i + 3 && verbs[upTo]!.whats.length <= 2) upTo++;
    const some = listPhrase(clauses.slice(i, upTo), view.spelling);
    said.push(
      sentence(said.length === 0 ? `${lead} ${some}` : said.length % 2 ? `I also ${some}` : `Then I ${some}`),
    );
    i = upTo;
  }
  return said.join(' ');
}

function whatILeft(view: RecordView): Passage[] {
  const left = view.treatments.filter(
    (fact) => fact.action === 'leave' && fact.state !== 'dropped' && fact.state !== 'considering',
  );
  const groups = groupTreatments(left, findingsAt(view.findings), true);
  const out = groups.map((group) => {
    const where = placesPhrase(group.places, view.grid) || 'some of it';
    return passage(`left.${group.from[0]!.id}`, factsOf(group), group.from, [
      paragraph(
        sentence(
          `I left ${where} as I found ${/ and |blocks|rows|columns|edges|borders|corners/.test(where) ? 'them' : 'it'}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`,
        ),
      ),
    ]);
  });
  const dropped = groupTreatments(
    view.treatments.filter((fact) => fact.state === 'dropped' && fact.reason),
    findingsAt(view.findings),
    true,
  );
  for (const group of dropped.slice(0, 4)) {
    out.push(
      passage(`against.${group.from[0]!.id}`, factsOf(group), group.from, [
        paragraph(
          sentence(
            `I decided against ${view.terms.plan(group.action)}${group.places.length ? ` ${inPlaces(group.places, view.grid, MOST)}` : ''}, ${becausePhrase(group.reason!)}`,
          ),
        ),
      ]),
    );
  }
  return out;
}

function whatItTook(view: RecordView, hours: Paper['hours']): Passage[] {
  const said: string[] = [];
  if (hours && hours.totalMin > 0) {
    const days = hours.byDay
      .filter((day) => day.minutes > 0)
      .map((day) => day.date)
      .sort();
    const span = days.length
      ? ` on ${days.length === 1 ? datePhrase(days[0]!, view.spelling) : `${countPhrase(days.length)} days, from ${dateRangePhrase(days[0]!, days.at(-1)!, view.spelling)}`}`
      : '';
    said.push(
      sentence(
        `it took ${durationPhrase(Math.round(hours.totalMin / 15) * 15 || hours.totalMin)} of work${span}`,
      ),
    );
    const most = [...hours.byTask]
      .filter((one) => one.task && one.minutes > 0)
      .sort((a, b) => b.minutes - a.minutes)[0];
    if (most?.task && hours.byTask.length > 1) {
      said.push(
        sentence(
          `the longest part was ${view.terms.task(most.task)}, ${durationPhrase(Math.round(most.minutes / 15) * 15 || most.minutes)}`,
        ),
      );
    }
  }
  const used = [
    ...new Set(
      view.materials.flatMap((fact) =>
        fact.use === 'used' &&
        fact.material &&
        !['pins', 'needle', 'detergent', 'other'].includes(fact.material)
          ? [fact.name ?? view.terms.material(fact.material)]
          : [],
      ),
    ),
  ];
  if (used.length) said.push(sentence(`new in it are ${listPhrase(used.slice(0, 8), view.spelling)}`));
  return said.length ? [passage('what-it-took', said, [], [paragraph(said.join(' '))])] : [];
}

/**
 * Care in plain words. Light, humidity, insects, storage and washing: CCI Notes 13/14 and 13/15, the
 * International Quilt Museum, the Textile Museum and extension services, as excerpted; refolding: common
 * practice, no source.
 */
function care(view: RecordView): Passage {
  const washed = view.treatments.some((fact) => fact.action === 'wash' && fact.state === 'done');
  const fragile = view.findings.some((fact) => ['shattered', 'thin', 'dye-bleed'].includes(fact.finding));
  const items = [
    'Light: keep it out of sunlight and bright lamps. Fading cannot be mended. If you show it, show it for some weeks and rest it for months.',
    'Folding: roll it, or fold it loosely with acid-free tissue in the folds. Refold it along other lines a few times a year.',
    'Storage: somewhere dark, dry and cool that you live in, not an attic or a cellar; in a clean cotton cover or an acid-free box, not in plastic, and not on bare wood.',
    'Dust: low suction through a screen, or a soft brush. Do not shake or beat it.',
    'Insects: look it over in spring and autumn. No mothballs.',
    fragile
      ? 'Washing: do not wash it, not even by hand, and do not have it dry-cleaned. Ask a conservator.'
      : washed
        ? 'Washing: I washed it as part of the work. Do not wash it again without asking; advice on sturdy quilts differs, and a test for running dye is not foolproof.'
        : 'Washing: better not. Advice on sturdy quilts differs, a test for running dye is not foolproof, and what has run cannot be undone. Ask a conservator first.',
    'Display: hang it from a sleeve along the whole top edge, never from clips or pins, and give it rests.',
  ];
  return passage('care', items, [], [{ type: 'list', items: items.map((item) => view.terms.spell(item)) }]);
}
