import { mkdirSync, writeFileSync } from 'node:fs';
import { renderToString } from 'preact-render-to-string';
import { beforeAll, describe, expect, it } from 'vitest';
import { BackingDrawing, CuttingPlanDrawing } from '../../client/charts/cutting-plan.tsx';
import { DamageMark } from '../../client/charts/damage-mark.tsx';
import { dayBars, HoursTimeline } from '../../client/charts/hours-timeline.tsx';
import { PRINT_PALETTE } from '../../client/charts/palette.ts';
import { QuiltMap } from '../../client/charts/quilt-map.tsx';
import { MOMENTS, quiltPicture } from '../../client/charts/quilt-picture.ts';
import { StitchMark } from '../../client/charts/stitch-mark.tsx';
import { TaskPatterns } from '../../client/charts/task-pattern.tsx';
import { estimate } from '../../core/estimate/estimate.ts';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { fold } from '../../core/log/evolve.ts';
import { ACTIONS, FINDINGS, TASKS } from '../../shared/vocabulary.ts';
import { scenarioEvents } from './scenario.ts';

const log = fold(scenarioEvents());
const OUT = 'tests/.out/drawings';

beforeAll(() => mkdirSync(OUT, { recursive: true }));
const keep = (name: string, svg: string) => writeFileSync(`${OUT}/${name}.svg`, svg);

describe('drawings rendered in Node', () => {
  it.each(MOMENTS)('draws the quilt %s, every block of it', (moment) => {
    const svg = renderToString(
      <QuiltMap picture={quiltPicture(log, moment)} moment={moment} title={`The quilt ${moment}`} />,
    );
    keep(`quilt-${moment}`, svg);
    expect(svg.match(/data-place="\d+-\d+"/g)).toHaveLength(30);
    expect(svg).toContain('<title>');
    expect(svg).not.toMatch(/NaN|undefined|var\(/);
  });

  it('gives each place a name and a story that can be heard', () => {
    const svg = renderToString(
      <QuiltMap
        picture={quiltPicture(log, 'now')}
        moment="now"
        title="The quilt"
        current="1-1"
        onPick={() => undefined}
      />,
    );
    expect(svg).toContain(
      'aria-label="row 2, block 4, undecided. found: shattered; undecided: overlay with net or replace"',
    );
    expect(svg.match(/tabindex="0"/g)).toHaveLength(1);
    expect(svg).toContain('role="grid"');
  });

  it('has a drawing of its own for each finding, treatment and task', () => {
    const damage = FINDINGS.map((finding) =>
      renderToString(<DamageMark finding={finding} size={24} ink="#000" />),
    );
    const stitches = ACTIONS.map((action) =>
      renderToString(<StitchMark action={action} size={24} ink="#000" />),
    );
    const shapes = [...damage, ...stitches].map((svg) =>
      [...svg.matchAll(/ d="([^"]+)"/g)].map((m) => m[1]).join(),
    );
    expect(new Set(shapes).size).toBe(FINDINGS.length + ACTIONS.length);
    const patterns = renderToString(<TaskPatterns id="t" palette={PRINT_PALETTE} />);
    const forms = [...patterns.matchAll(/<path d="([^"]*)"/g)].map((m) => m[1]);
    expect(new Set(forms).size).toBe(TASKS.length);
  });

  it('draws the hours with a bar for every counted part of every stretch', () => {
    const hours = hoursFromLog(log, { idleMin: 30, now: '2026-03-10T20:00:00Z' });
    const svg = renderToString(
      <HoursTimeline
        hours={hours}
        zone="Europe/London"
        width={900}
        title="Hours worked"
        onPick={() => undefined}
      />,
    );
    keep('hours', svg);
    const bars = dayBars(hours, 'Europe/London');
    expect(svg.match(/class="bar"/g)).toHaveLength(bars.length);
    expect(bars.reduce((sum, bar) => sum + bar.to - bar.from, 0)).toBe(hours.totalMin);
    expect(svg).toMatch(/aria-label="survey, 18:32 to 19:31, 59 min, said"/);
  });

  it('cuts a stretch at midnight into two days', () => {
    const from = Date.parse('2026-03-07T23:10:00Z') / 60_000;
    const hours = {
      spans: [
        {
          id: 's',
          how: 'said' as const,
          start: '2026-03-07T23:10',
          end: '2026-03-08T00:40',
          startMin: from,
          endMin: from + 90,
          minutes: 90,
          breakMin: 0,
          parts: [[from, from + 90] as [number, number]],
          noteIds: [],
          entryIds: [],
        },
      ],
    };
    expect(dayBars(hours, 'Europe/London').map(({ date, from: a, to }) => [date, a, to])).toEqual([
      ['2026-03-07', 1390, 1440],
      ['2026-03-08', 0, 40],
    ]);
  });

  it('draws a cutting plan to scale, with every piece and cut', () => {
    const answer = estimate({
      unit: 'in',
      quilt: { width: 60, length: 72 },
      backing: { usable: 42, overage: 4, seam: 0.5 },
      patches: {
        usable: 40,
        seam: 0.25,
        turn: true,
        pieces: [
          { width: 9, length: 9, count: 12 },
          { width: 4.5, length: 9, count: 5 },
        ],
      },
    });
    const plan = answer.patches!.plans[0]!;
    const svg = renderToString(<CuttingPlanDrawing plan={plan} unit="in" id="p" />);
    keep('cutting', svg);
    expect(svg).toContain(`${plan.layout.length} pieces`);
    expect(svg).not.toMatch(/NaN|undefined/);
    const back = answer.backing!;
    const backSvg = renderToString(
      <BackingDrawing
        width={back.width!}
        length={back.length!}
        seams={back.seams!}
        joinsAt={back.joinsAt!}
        unit="in"
      />,
    );
    keep('backing', backSvg);
    expect(backSvg).toContain('68 × 80 in');
  });
});
