import type { Passage, Section } from '../document-model.ts';
import { paragraph, passage } from '../passage.ts';
import type { RecordView } from '../record-view.ts';
import { datePhrase, durationFigure, moneyPhrase } from '../wording/figure-phrases.ts';
import { sentence } from '../wording/sentence.ts';
import { some } from './condition-record.ts';
import { materialRows, staysIn } from './material-rows.ts';
import type { Paper } from './paper.ts';

type Price = NonNullable<NonNullable<Paper['estimate']>['price']>;
type Total = Price['total'];

const AMOUNTS = [
  { title: 'For', share: 0.68 },
  { title: 'Amount', share: 0.32, align: 'right' as const },
];

/**
 * What is due: the agreed price where there is one; else by the hours as they came out; else, where the work is not
 * charged by the hour, by the estimate. What was foreseen stands beside what came of it.
 */
export function bill({ view, date, hours, estimate }: Paper): Section[] {
  const quoted = estimate?.price;
  const price = quoted?.agreed ? quoted : (estimate?.cameOut ?? quoted);
  return [
    { id: 'parties', title: '', passages: [parties(view, date)] },
    {
      id: 'lines',
      title: 'For the work on the quilt',
      passages: price
        ? [price.agreed ? agreedLine(view, price, price.agreed) : lines(view, price)]
        : [
            passage(
              'no-price',
              'none',
              [],
              [
                {
                  type: 'caution' as const,
                  text: 'No price has been worked out yet. Give an hourly rate or charges in the estimate, and this page fills itself.',
                },
              ],
            ),
          ],
    },
    {
      id: 'against',
      title: 'Foreseen and come out',
      passages:
        quoted && estimate?.cameOut
          ? [against(view, quoted, estimate.cameOut, estimate.work?.left.likely ?? 0)]
          : [],
    },
    { id: 'due', title: 'What is due', passages: price ? [due(view, price, quoted)] : [] },
    { id: 'hours', title: 'Hours', passages: some(hoursLine(view, hours, estimate)) },
    { id: 'materials', title: 'Materials used', passages: some(materials(view)) },
  ].filter((section) => section.passages.length > 0);
}

function parties(view: RecordView, date: string): Passage {
  const rows: [string, string][] = [['Quilt', view.quilt.name]];
  if (view.quilt.number) rows.push(['Number', view.quilt.number]);
  if (view.quilt.owner) rows.push(['For', view.quilt.owner]);
  if (view.quilt.mender) rows.push(['From', view.quilt.mender]);
  rows.push(['Date', datePhrase(date, view.spelling)]);
  return passage('parties', rows, [], [{ type: 'terms', rows }]);
}

/**
 * The printed lines add up to the total. Where there is a mark-up, materials stand as one sum with it, so
 * that what she paid stays hers.
 */
function lines(view: RecordView, price: Price): Passage {
  const money = (minor: number): string => moneyPhrase(minor, price.digits, price.currency, view.spelling);
  const markup = price.lines.some((line) => line.kind === 'markup' && line.minor !== 0);
  const rows: string[][] = [];
  for (const line of price.lines) {
    if (line.kind === 'tax' || line.minor === 0) continue;
    if (markup && (line.kind === 'material' || line.kind === 'markup')) continue;
    rows.push([capital(line.name), money(line.minor)]);
  }
  if (markup) {
    const sum = price.lines.reduce(
      (all, line) => all + (line.kind === 'material' || line.kind === 'markup' ? line.minor : 0),
      0,
    );
    rows.push(['Materials', money(sum)]);
  }
  if (price.tax.minor) {
    rows.push(['Before tax', money(price.subtotal.minor)]);
    for (const line of price.lines)
      if (line.kind === 'tax' && line.minor !== 0) rows.push([capital(line.name), money(line.minor)]);
  }
  rows.push(['Total', money(price.total.minor)]);
  return passage(
    'bill-lines',
    rows,
    [],
    [
      {
        type: 'table',
        columns: AMOUNTS,
        rows,
        sum: true,
      },
    ],
  );
}

function agreedLine(view: RecordView, price: Price, agreed: Total): Passage {
  const rows = [
    ['The work as agreed', moneyPhrase(agreed.minor, price.digits, price.currency, view.spelling)],
  ];
  return passage('bill-lines', rows, [], [{ type: 'table', columns: AMOUNTS, rows, sum: true }]);
}

/** The estimate's sums against what came of them: work, materials with what is added to them, the rest, and all. */
function against(view: RecordView, quoted: Price, cameOut: Price, leftMin: number): Passage {
  const money = (minor: number): string => moneyPhrase(minor, quoted.digits, quoted.currency, view.spelling);
  const sumOf = (price: Price, kinds: readonly Price['lines'][number]['kind'][]): number =>
    price.lines.reduce((sum, line) => sum + (kinds.includes(line.kind) ? line.minor : 0), 0);
  const rows = [
    ...(
      [
        ['Work', ['labour', 'charge']],
        ['Materials', ['material', 'markup']],
        ['For what might come', ['contingency']],
        ['Tax', ['tax']],
      ] as const
    ).map(([name, kinds]) => [name, sumOf(quoted, kinds), sumOf(cameOut, kinds)] as const),
    ['Total', quoted.total.minor, cameOut.total.minor] as const,
  ]
    .filter(([, before, after]) => before !== 0 || after !== 0)
    .map(([name, before, after]) => [name, money(before), money(after)]);
  return passage(
    'bill-against',
    [rows, Math.round(leftMin)],
    [],
    [
      ...(leftMin >= 1
        ? [
            paragraph(
              `So far: about ${durationFigure(leftMin)} of the planned work is still to do, and not in what came out.`,
            ),
          ]
        : []),
      {
        type: 'table',
        columns: [
          { title: 'For', share: 0.4 },
          { title: 'Estimate', share: 0.3, align: 'right' },
          { title: 'Came out', share: 0.3, align: 'right' },
        ],
        rows,
        sum: true,
      },
    ],
  );
}

function hoursLine(
  view: RecordView,
  hours: Paper['hours'],
  estimate: Paper['estimate'],
): Passage | undefined {
  if (!hours || hours.totalMin <= 0) return undefined;
  const quoted = estimate?.work?.hours;
  const said = [
    `Worked: ${durationFigure(hours.totalMin)}.`,
    quoted && quoted.high > 0
      ? `Estimated: ${Math.round(quoted.low)} to ${Math.round(quoted.high)} hours.`
      : '',
  ].filter(Boolean);
  const rows = hours.byTask
    .filter((one) => one.minutes > 0)
    .map((one) => [
      `${capital(one.task ? view.terms.task(one.task) : 'not named')}${one.task && view.quilt.notBilled?.includes(one.task) ? ' (not charged)' : ''}`,
      durationFigure(one.minutes),
    ]);
  return passage(
    'bill-hours',
    [hours.totalMin, quoted, rows],
    [],
    [
      paragraph(said.join(' ')),
      {
        type: 'table',
        columns: [
          { title: 'Work', share: 0.68 },
          { title: 'Time', share: 0.32, align: 'right' },
        ],
        rows,
      },
    ],
  );
}

function materials(view: RecordView): Passage | undefined {
  const used = view.materials.filter((fact) => fact.use === 'used' && staysIn(fact));
  const rows = materialRows(used, view);
  if (!rows.length) return undefined;
  return passage('bill-materials', rows, used, [
    { type: 'list', items: rows.map(([name, amount]) => sentence(amount ? `${name}, ${amount}` : name!)) },
  ]);
}

/** @param quoted what a deposit was a share of */
function due(view: RecordView, price: Price, quoted: Price | undefined): Passage {
  const money = (minor: number): string => moneyPhrase(minor, price.digits, price.currency, view.spelling);
  const paid = price.paid?.minor ?? 0;
  const total = price.agreed?.minor ?? price.total.minor;
  const owing = total - paid;
  const rows: [string, string][] = [['Total', money(total)]];
  if (quoted?.deposit) rows.push(['Deposit agreed', money(quoted.deposit.minor)]);
  if (paid) rows.push(['Received so far', money(paid)]);
  rows.push([owing < 0 ? 'To be returned' : 'Due', money(Math.abs(owing))]);
  return passage('due', rows, [], [{ type: 'terms', rows }]);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
