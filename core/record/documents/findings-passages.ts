import type { Place } from '../../../shared/entry.ts';
import { FINDINGS, type Finding } from '../../../shared/vocabulary.ts';
import { shapeOf } from '../../shape/shape-of.ts';
import type { Passage } from '../document-model.ts';
import { paragraph, passage } from '../passage.ts';
import type { FindingFact, RecordView } from '../record-view.ts';
import { countPhrase, datePhrase } from '../wording/figure-phrases.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import {
  betweenBlocks,
  blockAt,
  inPlaces,
  isPlural,
  placeLabel,
  placesPhrase,
} from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';

export type FindingGroup = { finding: Finding; places: Place[]; fabrics: string[]; from: FindingFact[] };

/** Findings brought together by kind, in the order of the trade's list. */
export function groupFindings(findings: readonly FindingFact[]): FindingGroup[] {
  const by = new Map<Finding, FindingGroup>();
  for (const fact of findings) {
    const group = by.get(fact.finding) ?? { finding: fact.finding, places: [], fabrics: [], from: [] };
    for (const place of fact.places) if (!group.places.includes(place)) group.places.push(place);
    if (fact.fabric && !group.fabrics.includes(fact.fabric)) group.fabrics.push(fact.fabric);
    group.from.push(fact);
    by.set(fact.finding, group);
  }
  return FINDINGS.flatMap((finding) => by.get(finding) ?? []);
}

/** "Tears in the second and third blocks of row 3 (2 of 35 blocks), in the gingham." */
export function findingSentence(group: FindingGroup, view: RecordView): string {
  const { finding, places, fabrics } = group;
  const total = shapeOf(view.grid).blocks.length;
  const blocks = places.filter((place) => blockAt(place)).length;
  const between =
    finding === 'split-seam'
      ? betweenBlocks(
          group.from.map((fact) => fact.places),
          view.grid,
        )
      : undefined;
  const where = between ?? inPlaces(places, view.grid);
  // A fabric that names its own blocks is not said twice.
  const cloth = fabrics.filter((name) => !where.includes(name));
  const extent = !between && blocks > 1 && blocks < total ? ` (${blocks} of ${total} blocks)` : '';
  const name = view.terms.finding(finding, between ? group.from.length > 1 : isPlural(places));
  return sentence(
    `${name} ${where || 'at a place not noted'}${extent}${cloth.length ? `, in the ${listPhrase(cloth, view.spelling)}` : ''}`,
  );
}

/** One passage per kind of damage. Sound places and earlier repairs have their own. */
export function findingPassages(groups: readonly FindingGroup[], view: RecordView): Passage[] {
  return groups
    .filter((group) => group.finding !== 'sound' && group.finding !== 'old-repair')
    .map((group) => {
      const facts = [group.finding, [...group.places].sort(), group.fabrics];
      return passage(`finding.${group.finding}`, facts, group.from, [
        paragraph(findingSentence(group, view)),
      ]);
    });
}

/** The whole in two sentences: how much is damaged, and what is most common. */
export function conditionSummary(groups: readonly FindingGroup[], view: RecordView): Passage {
  const damage = groups.filter((group) => group.finding !== 'sound' && group.finding !== 'old-repair');
  const total = shapeOf(view.grid).blocks.length;
  const hit = new Set<Place>();
  for (const { places } of damage) for (const place of places) if (blockAt(place)) hit.add(place);
  const said: string[] = [];
  if (damage.length === 0) {
    said.push('No damage had been noted when this was written.');
  } else {
    if (hit.size) {
      said.push(
        hit.size === total
          ? 'Damage was found in every block.'
          : `Damage was found in ${countPhrase(hit.size)} of the ${countPhrase(total)} blocks.`,
      );
    }
    const common = [...damage].sort((a, b) => b.places.length - a.places.length).slice(0, 3);
    const names = common.map((group) => view.terms.finding(group.finding, isPlural(group.places)));
    said.push(
      common.length === 1
        ? sentence(`What was found is ${names[0]}`)
        : sentence(`Most common ${common.length > 1 ? 'are' : 'is'} ${listPhrase(names, view.spelling)}`),
    );
  }
  const sound = groups.find((group) => group.finding === 'sound');
  if (sound) {
    const where = placesPhrase(sound.places, view.grid);
    if (where) said.push(sentence(`Noted as sound: ${where}`));
  }
  const facts = groups.map((group) => [group.finding, [...group.places].sort()]);
  return passage(
    'condition-summary',
    facts,
    groups.flatMap((group) => group.from),
    [paragraph(said.join(' '))],
  );
}

/** Place by place, top left to bottom right, then the named parts. */
export function findingsTable(findings: readonly FindingFact[], view: RecordView): Passage | undefined {
  const by = new Map<Place, FindingFact[]>();
  for (const fact of findings) {
    for (const place of fact.places) {
      const here = by.get(place);
      if (here) here.push(fact);
      else by.set(place, [fact]);
    }
  }
  if (by.size === 0) return undefined;
  const rows = [...by].sort(byPlace).map(([place, facts]) => {
    const names = [...new Set(facts.map((fact) => view.terms.findingLabel(fact.finding)))];
    const cloth = [...new Set(facts.flatMap((fact) => fact.fabric ?? []))];
    const dates = [...new Set(facts.map((fact) => fact.date))];
    const label = placeLabel(place, view.spelling);
    return [
      label.charAt(0).toUpperCase() + label.slice(1),
      names.join(', '),
      cloth.join(', '),
      dates.map((date) => datePhrase(date, view.spelling)).join(', '),
    ];
  });
  const clothed = rows.some((row) => row[2]);
  return passage('findings-by-place', rows, findings, [
    {
      type: 'table',
      columns: [
        { title: 'Place', share: 0.24 },
        { title: 'Observed', share: clothed ? 0.3 : 0.46 },
        ...(clothed ? [{ title: 'Cloth', share: 0.2 }] : []),
        { title: 'Seen on', share: clothed ? 0.26 : 0.3 },
      ],
      rows: clothed ? rows : rows.map((row) => [row[0]!, row[1]!, row[3]!]),
    },
  ]);
}

/** Blocks row by row, then named parts. For `sort` of `[place, …]` pairs. */
export function byPlace(a: readonly [Place, unknown], b: readonly [Place, unknown]): number {
  const x = blockAt(a[0]);
  const y = blockAt(b[0]);
  if (x && y) return x[0] - y[0] || x[1] - y[1];
  if (x || y) return x ? -1 : 1;
  return a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0;
}
