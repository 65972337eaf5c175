import type { Topic } from '../../../shared/vocabulary.ts';
import { cautions, REVERSIBILITY } from '../cautions.ts';
import type { Block, Passage, Section } from '../document-model.ts';
import { paragraph, passage } from '../passage.ts';
import type { AgreementFact, RecordView } from '../record-view.ts';
import { datePhrase, moneyPhrase } from '../wording/figure-phrases.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import { placesPhrase } from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';
import {
  becausePhrase,
  findingsAt,
  groupTreatments,
  type TreatmentGroup,
  toDoPhrase,
} from '../wording/treatment-phrase.ts';
import { mapPassage, some } from './condition-record.ts';
import { identification } from './identification.ts';
import { materialRows } from './material-rows.ts';
import type { Paper } from './paper.ts';
import { findAddenda, proposedTreatments } from './proposed-treatments.ts';

/** What is proposed, for the owner to agree to; later significant changes follow as addenda. */
export function proposal({ view, estimate }: Paper): Section[] {
  const plan = proposedTreatments(view);
  const found = findingsAt(view.findings);
  const wanted = groupTreatments(
    plan.filter(
      (fact) => fact.state !== 'considering' && fact.state !== 'dropped' && fact.action !== 'leave',
    ),
    found,
    true,
  );
  const open = groupTreatments(
    plan.filter((fact) => fact.state === 'considering'),
    found,
    true,
  );
  const left = groupTreatments(
    plan.filter((fact) => fact.action === 'leave' && (fact.state === 'done' || fact.state === 'planned')),
    found,
    true,
  );
  const first = view.agreements[0];
  const proposed: RecordView = { ...view, treatments: plan };
  return [
    { id: 'identification', title: 'The quilt', passages: [identification(view)] },
    { id: 'aim', title: 'Aim', passages: [aim(view)] },
    {
      id: 'treatment',
      title: 'Proposed treatment',
      passages: [
        ...treatmentPassages(wanted, open, view),
        mapPassage(proposed, 'proposed', 'Where it is proposed'),
      ],
    },
    { id: 'left-alone', title: 'What will be left alone', passages: leftPassages(left, view) },
    { id: 'reversibility', title: 'What can be undone', passages: reversibility(wanted, view) },
    { id: 'risks', title: 'Risks and cautions', passages: risks(view) },
    { id: 'materials', title: 'Materials', passages: some(materials(view)) },
    { id: 'time-and-price', title: 'Time and price', passages: timeAndPrice(view, estimate) },
    { id: 'to-decide', title: 'For the owner to decide', passages: toDecide(open, view, first) },
    { id: 'agreement', title: 'Agreement', passages: agreementPassages(view, first, 'agreement') },
    ...addenda(view),
  ].filter((section) => section.passages.length > 0);
}

function aim(view: RecordView): Passage {
  const text = view.quilt.aim || 'To keep the quilt sound and in use, changing as little as will serve.';
  return passage('aim', text, [], [paragraph(sentence(text))]);
}

/** One passage for each proposed treatment: what, why, and what else was weighed. */
function treatmentPassages(
  wanted: readonly TreatmentGroup[],
  open: readonly TreatmentGroup[],
  view: RecordView,
): Passage[] {
  if (!wanted.length) {
    return [
      passage(
        'no-treatment',
        open.length,
        [],
        [
          paragraph(
            open.length
              ? 'Nothing is settled yet; the ways under consideration are listed below for the owner to decide.'
              : 'No treatment has been planned yet.',
          ),
        ],
      ),
    ];
  }
  return wanted.map((group) => {
    const others = alternatives(group, view);
    const said = [
      sentence(toDoPhrase(group, view)),
      group.reason ? sentence(`Reason: ${group.reason.replace(/^(?:because|since)\s+/i, '')}`) : '',
      others ? sentence(`Also considered: ${others}`) : '',
    ].filter(Boolean);
    return passage(groupId('propose', group), factsOf(group, others), group.from, [
      paragraph(said.join(' ')),
    ]);
  });
}

/** Other ways that were considered or dropped for the same places. */
function alternatives(group: TreatmentGroup, view: RecordView): string {
  const places = new Set(group.places);
  const others = view.treatments.filter(
    (fact) =>
      (fact.state === 'considering' || fact.state === 'dropped') &&
      fact.action !== group.action &&
      fact.places.some((place) => places.has(place)),
  );
  const said = others.map(
    (fact) =>
      `${view.terms.plan(fact.action)}${fact.state === 'dropped' ? ` (decided against${fact.reason ? ` ${becausePhrase(fact.reason)}` : ''})` : ''}`,
  );
  return listPhrase([...new Set(said)], view.spelling);
}

function leftPassages(left: readonly TreatmentGroup[], view: RecordView): Passage[] {
  return left.map((group) =>
    passage(groupId('leave', group), factsOf(group), group.from, [
      paragraph(
        sentence(
          `${placesPhrase(group.places, view.grid) || 'the rest'}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`,
        ),
      ),
    ]),
  );
}

function reversibility(wanted: readonly TreatmentGroup[], view: RecordView): Passage[] {
  const actions = [...new Set(wanted.map((group) => group.action))];
  const rows = actions.flatMap((action): [string, string][] => {
    const text = REVERSIBILITY[action];
    const name = view.terms.plan(action);
    return text ? [[name.charAt(0).toUpperCase() + name.slice(1), view.terms.spell(text)]] : [];
  });
  return rows.length ? [passage('reversibility', rows, [], [{ type: 'terms', rows }])] : [];
}

function risks(view: RecordView): Passage[] {
  const general =
    'Old cloth can give way while it is worked on. If anything is found that changes this proposal, work stops there and you are asked.';
  return [
    passage('risk-general', general, [], [paragraph(general)]),
    ...cautions(view, 'proposal').map((caution) =>
      passage(`risk.${caution.id}`, caution.text, [], [{ type: 'caution', text: caution.text }]),
    ),
  ];
}

function materials(view: RecordView): Passage | undefined {
  const tools = new Set(['pins', 'needle', 'other']);
  const named = view.materials.filter(
    (fact) => fact.use !== 'used' && !(fact.material && tools.has(fact.material)),
  );
  // What was on the list and then bought is one thing: the list gives way to what was bought.
  const had = new Set(
    named.flatMap((fact) => (fact.use === 'needed' ? [] : [`${fact.material} ${fact.name ?? ''}`])),
  );
  const facts = named.filter(
    (fact) => fact.use !== 'needed' || !had.has(`${fact.material} ${fact.name ?? ''}`),
  );
  const rows = materialRows(facts, view);
  if (!rows.length) return undefined;
  return passage('proposal-materials', rows, facts, [
    {
      type: 'list',
      items: rows.map(([name, amount]) => sentence(amount ? `${name}, ${amount}` : name!)),
    },
  ]);
}

function timeAndPrice(view: RecordView, estimate: Paper['estimate']): Passage[] {
  const out: Passage[] = [];
  const hours = estimate?.work?.hours;
  if (hours && hours.high > 0) {
    const low = round(hours.low);
    const high = round(hours.high);
    const likely = round(hours.likely);
    const text =
      low === high
        ? `The work will take about ${high} hours.`
        : `The work will take between ${low} and ${high} hours, most likely about ${likely}.`;
    out.push(passage('time', [low, likely, high], [], [paragraph(text)]));
    const finish = estimate?.work?.finish;
    if (finish) {
      const day = (date: string): string => datePhrase(date, view.spelling);
      out.push(
        passage(
          'finish',
          finish,
          [],
          [
            paragraph(
              `At the present pace it will be finished between ${day(finish.early)} and ${day(finish.late)}, most likely about ${day(finish.likely)}.`,
            ),
          ],
        ),
      );
    }
  }
  const price = estimate?.price;
  if (price) {
    const money = (minor: number): string => moneyPhrase(minor, price.digits, price.currency, view.spelling);
    const range = price.range;
    const text =
      range && range.low.minor !== range.high.minor
        ? `The price is ${money(price.total.minor)}; it may come to between ${money(range.low.minor)} and ${money(range.high.minor)} as the hours turn out.`
        : `The price is ${money(price.total.minor)}.`;
    const more = [
      price.tax.minor > 0 ? `Tax of ${money(price.tax.minor)} is included.` : '',
      price.deposit ? `A deposit of ${money(price.deposit.minor)} is asked for before the work begins.` : '',
    ].filter(Boolean);
    out.push(
      passage(
        'price',
        [price.total, price.range, price.tax, price.deposit],
        [],
        [paragraph([text, ...more].join(' '))],
      ),
    );
  }
  return out;
}

function toDecide(
  open: readonly TreatmentGroup[],
  view: RecordView,
  first: AgreementFact | undefined,
): Passage[] {
  const items: string[] = [];
  // Ways weighed for the same places are one question.
  const questions = new Map<string, TreatmentGroup[]>();
  for (const group of open) {
    const key = [...group.places].sort().join();
    questions.set(key, [...(questions.get(key) ?? []), group]);
  }
  for (const groups of questions.values()) {
    const where = placesPhrase(groups[0]!.places, view.grid) || 'the quilt';
    const ways = [...new Set(groups.map((group) => view.terms.plan(group.action)))];
    items.push(
      ways.length > 1
        ? sentence(`For ${where}: ${listPhrase(ways, view.spelling, 'or')}`)
        : sentence(`For ${where}: whether ${ways[0]} is wanted`),
    );
  }
  const until = first?.at;
  const topics = new Map<Topic, { open: boolean; from: RecordView['decisions'][number] }>();
  for (const fact of view.decisions) {
    if (until && fact.date > first.date) continue;
    topics.set(fact.about, { open: fact.status === 'open', from: fact });
  }
  const asked = [...topics].filter(([, topic]) => topic.open);
  for (const [about] of asked) items.push(sentence(view.terms.question(about)));
  if (!items.length) return [];
  return [
    passage(
      'to-decide',
      items,
      [...open.flatMap((group) => group.from), ...asked.map(([, topic]) => topic.from)],
      [{ type: 'list', items }],
    ),
  ];
}

/** Agreed, with how and when; or a place to sign. */
function agreementPassages(view: RecordView, agreement: AgreementFact | undefined, id: string): Passage[] {
  const { owner, mender } = view.quilt;
  const body: Block[] = [];
  if (agreement) {
    const by = agreement.by || owner || 'the owner';
    const on = datePhrase(agreement.date, view.spelling);
    body.push(
      paragraph(
        sentence(
          agreement.how === 'word'
            ? `Agreed by word of mouth by ${by} on ${on}`
            : `Agreed and signed by ${by} on ${on}`,
        ) + (agreement.note ? ` ${sentence(agreement.note)}` : ''),
      ),
    );
    if (agreement.how === 'word') {
      body.push(paragraph('An agreement by word is noted here until it is signed.'));
      body.push({
        type: 'signatures',
        lines: [`Owner${owner ? `: ${owner}` : ''}`, `Mender${mender ? `: ${mender}` : ''}`],
      });
    }
  } else {
    body.push(
      paragraph(
        'I am the owner of this quilt, or may decide for the owner, and agree to the treatment described above.',
      ),
      {
        type: 'signatures',
        lines: [`Owner${owner ? `: ${owner}` : ''}`, `Mender${mender ? `: ${mender}` : ''}`],
      },
    );
  }
  return [passage(id, agreement ?? 'open', [], body)];
}

function addenda(view: RecordView): Section[] {
  const found = findingsAt(view.findings);
  return findAddenda(view).map((addendum, i) => {
    const id = `addendum-${i + 1}`;
    const added = groupTreatments(addendum.added, found, true);
    const dropped = groupTreatments(addendum.dropped, found, true);
    const items = [
      ...added.map((group) =>
        sentence(`New: ${toDoPhrase(group, view)}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`),
      ),
      ...dropped.map((group) =>
        sentence(
          `No longer proposed: to ${toDoPhrase(group, view)}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`,
        ),
      ),
    ];
    const from = [...addendum.added, ...addendum.dropped];
    return {
      id,
      title: `Addendum ${i + 1}: changes since ${datePhrase(addendum.since.date, view.spelling)}`,
      passages: [
        passage(`${id}.changes`, items, from, [{ type: 'list', items }]),
        ...agreementPassages(view, addendum.agreed, `${id}.agreement`),
      ],
    };
  });
}

const round = (hours: number): number => (hours < 10 ? Math.round(hours * 2) / 2 : Math.round(hours));

/** Names a group by what it is, not by where: new places under the same treatment keep its edits. */
export function groupId(prefix: string, group: TreatmentGroup): string {
  const reason = group.reason ? `.${group.from[0]?.id ?? ''}` : '';
  return [prefix, group.action, group.object, group.stitch, group.fabric, group.finding]
    .filter(Boolean)
    .join('.')
    .concat(reason)
    .slice(0, 180);
}

export function factsOf(group: TreatmentGroup, more?: unknown): unknown {
  const { action, object, stitch, fabric, reason, finding, places } = group;
  return [action, object, stitch, fabric, reason, finding, [...places].sort(), more];
}
