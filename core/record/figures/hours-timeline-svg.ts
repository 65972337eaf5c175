import type { Task } from '../../../shared/vocabulary.ts';
import type { RecordHours } from '../record-figures.ts';
import type { RecordView } from '../record-view.ts';
import { datePhrase, durationFigure, durationPhrase } from '../wording/figure-phrases.ts';
import type { Figure } from './quilt-map-svg.ts';
import { at, escapeMarkup, INK, SANS, svgText } from './svg-text.ts';

const WIDTH = 640;
const LEFT = 96;
const RIGHT = 52;
const ROW = 17;

/** How a task's bar is filled: shape of the filling first, tint second. */
type Fill = {
  tint: string;
  dense?: true;
  lines: 'none' | 'up' | 'down' | 'across' | 'level' | 'posts' | 'dots';
};
const DARKER: Record<string, string> = { '#c9d1e4': '#7f8cb4', '#f2e3b6': '#dcc27c', '#f0d6c9': '#d9a68f' };
const FILLS: Fill[] = [
  { tint: '#c9d1e4', lines: 'none' },
  { tint: '#f2e3b6', lines: 'up' },
  { tint: '#f0d6c9', lines: 'down' },
  { tint: '#d5e2d2', lines: 'posts' },
  { tint: '#e6dccb', lines: 'level' },
  { tint: '#e1e5ef', lines: 'across' },
  { tint: '#f8f0da', lines: 'dots' },
];

/** The fillings, then each once more closer set and darker: as many as there are kinds of work. */
const ALL_FILLS: Fill[] = [
  ...FILLS,
  ...FILLS.map((fill): Fill => ({ ...fill, dense: true, tint: DARKER[fill.tint] ?? fill.tint })),
];

/** Days down, hours across; each task by filling and name. Days that fit no line are summed up weekly. */
export function hoursTimelineSvg(view: RecordView, hours: RecordHours, title: string): Figure {
  const tasks = hours.byTask.filter((one) => one.minutes > 0);
  const order: (Task | undefined)[] = tasks.map((one) => one.task);
  const fillOf = (task: Task | undefined): Fill =>
    ALL_FILLS[Math.max(0, order.indexOf(task)) % ALL_FILLS.length]!;
  const days = [...new Set(hours.spans.map((span) => span.date))].sort();
  const rows = days.length > 45 ? weekly(days) : days.map((date) => ({ from: date, to: date }));
  const clocked = days.length <= 45 && hours.spans.some((span) => span.start && span.end);
  const scale = clocked ? clockScale(hours) : lengthScale(hours, rows);
  const x = (minutes: number): number =>
    LEFT + ((minutes - scale.from) / (scale.to - scale.from)) * (WIDTH - LEFT - RIGHT);
  const out: string[] = [];
  const top = 24;
  const bottom = top + rows.length * ROW;

  for (let minutes = scale.from; minutes <= scale.to; minutes += scale.step) {
    const label = clocked ? clockLabel(minutes) : `${minutes / 60} h`;
    out.push(
      `<path d="M${at(x(minutes))} ${top - 4}V${bottom}" stroke="${INK.rule}" stroke-width="0.4"/>`,
      svgText(label, x(minutes), top - 9, 9, { anchor: 'middle', ink: INK.soft }),
    );
  }
  rows.forEach((row, i) => {
    const y = top + i * ROW;
    out.push(
      svgText(rowLabel(row, view), LEFT - 8, y + 11.5, 9.5, { anchor: 'end' }),
      `<path d="M${LEFT} ${y + ROW}H${WIDTH - RIGHT}" stroke="${INK.rule}" stroke-width="0.3"/>`,
    );
    let total = 0;
    let cursor = 0;
    for (const span of hours.spans) {
      if (span.date < row.from || span.date > row.to) continue;
      total += span.minutes;
      const start = clocked && span.start ? minuteOf(span.start, span.date) : undefined;
      const from = start ?? (clocked ? scale.from + cursor : cursor);
      if (start === undefined) cursor += span.minutes;
      const until = start !== undefined && span.end ? minuteOf(span.end, span.date) : from + span.minutes;
      out.push(
        bar(
          x(from),
          y + 2.5,
          Math.max(1.5, x(Math.min(until, scale.to)) - x(from)),
          ROW - 5,
          fillOf(span.task),
          start === undefined && clocked,
        ),
      );
    }
    out.push(svgText(durationFigure(total), WIDTH, y + 11.5, 9.5, { anchor: 'end', bold: true }));
  });

  let legendY = bottom + 16;
  let legendX = LEFT;
  for (const one of tasks) {
    const label = `${one.task ? view.terms.task(one.task) : 'not named'}, ${durationFigure(one.minutes)}`;
    const wide = 24 + label.length * 5.1;
    if (legendX + wide > WIDTH && legendX > LEFT) {
      legendX = LEFT;
      legendY += 17;
    }
    out.push(
      bar(legendX, legendY, 18, 11, fillOf(one.task), false),
      svgText(label, legendX + 23, legendY + 9, 9.5),
    );
    legendX += wide + 12;
  }
  const height = Math.ceil(legendY + 20);
  const alt =
    `Hours worked, ${durationPhrase(hours.totalMin)} in all on ${days.length} ${days.length === 1 ? 'day' : 'days'}. ` +
    tasks
      .map((one) => `${one.task ? view.terms.task(one.task) : 'not named'}: ${durationPhrase(one.minutes)}`)
      .join('; ') +
    (tasks.length ? '.' : '');
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="${SANS}">` +
    `<title>${escapeMarkup(title)}</title><desc>${escapeMarkup(alt)}</desc><rect width="${WIDTH}" height="${height}" fill="${INK.ground}"/>${out.join('')}</svg>`;
  return { svg, width: WIDTH, height, alt };
}

/** A filled bar; `loose` (no clock time known) gets an open, dashed outline. */
function bar(x: number, y: number, w: number, h: number, fill: Fill, loose: boolean): string {
  const lines: string[] = [];
  const step = fill.dense ? 2.6 : 5;
  const inside = (x1: number, y1: number, x2: number, y2: number): void => {
    lines.push(`M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}`);
  };
  // Slanting lines are cut at the bar's ends here, so that no clip path is needed.
  const slant = (up: boolean): void => {
    for (let from = x - h; from < x + w; from += step) {
      const a = Math.max(x, from);
      const b = Math.min(x + w, from + h);
      if (b <= a) continue;
      const ya = a - from;
      const yb = b - from;
      inside(a, up ? y + h - ya : y + ya, b, up ? y + h - yb : y + yb);
    }
  };
  if (fill.lines === 'up' || fill.lines === 'across') slant(true);
  if (fill.lines === 'down' || fill.lines === 'across') slant(false);
  if (fill.lines === 'posts') for (let p = x + step; p < x + w; p += step) inside(p, y, p, y + h);
  if (fill.lines === 'level')
    for (let p = y + h / 3; p < y + h - 0.1; p += h / (fill.dense ? 6 : 3)) inside(x, p, x + w, p);
  const dots =
    fill.lines === 'dots'
      ? Array.from(
          { length: Math.floor(w / step) },
          (_, i) =>
            `<circle cx="${at(x + step * (i + 0.5))}" cy="${at(y + (fill.dense ? (i % 2 ? 0.3 : 0.7) : 0.5) * h)}" r="1.1" fill="${INK.soft}"/>`,
        ).join('')
      : '';
  return (
    `<rect x="${at(x)}" y="${at(y)}" width="${at(w)}" height="${at(h)}" fill="${fill.tint}" stroke="${INK.ink}" stroke-width="0.7"${loose ? ' stroke-dasharray="2.5 2"' : ''}/>` +
    (lines.length
      ? `<path d="${lines.join('')}" stroke="${INK.soft}" stroke-width="0.7" fill="none"/>`
      : '') +
    dots
  );
}

/** Minutes from the midnight that begins `date`; what runs past it goes on beyond 24:00. */
function minuteOf(local: string, date: string): number {
  const days = Math.round(
    (Date.parse(`${local.slice(0, 10)}T00:00Z`) - Date.parse(`${date}T00:00Z`)) / 86_400_000,
  );
  return days * 1440 + Number(local.slice(11, 13)) * 60 + Number(local.slice(14, 16));
}

function clockScale(hours: RecordHours): { from: number; to: number; step: number } {
  let from = Number.POSITIVE_INFINITY;
  let to = 0;
  for (const span of hours.spans) {
    if (!span.start || !span.end) continue;
    from = Math.min(from, minuteOf(span.start, span.date));
    to = Math.max(to, minuteOf(span.end, span.date));
  }
  from = Math.floor(from / 60) * 60;
  to = Math.min(Math.ceil(to / 60) * 60, from + 2880);
  for (const span of hours.spans) {
    if (!span.start) to = Math.max(to, from + Math.min(1440, Math.ceil(span.minutes / 60) * 60));
  }
  if (to - from < 120) to = from + 120;
  return { from, to, step: to - from > 720 ? 180 : to - from > 360 ? 120 : 60 };
}

function lengthScale(
  hours: RecordHours,
  rows: readonly { from: string; to: string }[],
): { from: number; to: number; step: number } {
  const most = Math.max(
    60,
    ...rows.map((row) =>
      hours.spans.reduce(
        (sum, span) => sum + (span.date >= row.from && span.date <= row.to ? span.minutes : 0),
        0,
      ),
    ),
  );
  const step = most > 1440 ? 480 : most > 720 ? 240 : most > 240 ? 120 : 60;
  return { from: 0, to: Math.ceil(most / step) * step, step };
}

function weekly(days: readonly string[]): { from: string; to: string }[] {
  const weeks = new Map<string, string>();
  for (const day of days) {
    const ms = Date.parse(`${day}T12:00Z`);
    const monday = new Date(ms - ((new Date(ms).getUTCDay() + 6) % 7) * 86_400_000);
    const from = monday.toISOString().slice(0, 10);
    weeks.set(from, new Date(monday.getTime() + 6 * 86_400_000).toISOString().slice(0, 10));
  }
  return [...weeks].map(([from, to]) => ({ from, to }));
}

const clockLabel = (minutes: number): string =>
  `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

function rowLabel(row: { from: string; to: string }, view: RecordView): string {
  const short = datePhrase(row.from, view.spelling).replace(/,? \d{4}$/, '');
  return row.from === row.to ? short : `from ${short}`;
}
