import type { JSX } from 'preact';
import { openLog } from '../../link/state/open-quilt.ts';
import { route } from '../../shell/state/route.ts';
import { useAfterPaint } from '../../shell/state/use-after-paint.ts';
import { DayPageView } from './day-page-view.tsx';
import { HoursOverview } from './hours-overview.tsx';

/** All days with their hours, or one day gone over. */
export function DaysPage(): JSX.Element {
  const at = route.value;
  const date = at.at === 'quilt' ? at.rest : '';
  const log = openLog.value!;
  const painted = useAfterPaint(log.entryCount);
  if (!painted) {
    return (
      <header class="page-head">
        <h1>{date ? 'A day' : 'Days and hours'}</h1>
        <p class="quiet">Counting the hours…</p>
      </header>
    );
  }
  if (!date) return <HoursOverview log={log} />;
  if (
    !/^\d{4}-\d\d-\d\d$/.test(date) ||
    Number.isNaN(Date.parse(`${date}T12:00Z`)) ||
    new Date(`${date}T12:00Z`).toISOString().slice(0, 10) !== date
  ) {
    return (
      <p class="notice bad">
        There is no such day as “{date}”. A day is written 2026-03-14.{' '}
        <a href={`#/q/${log.quilt.id}/days`}>All days</a>
      </p>
    );
  }
  return <DayPageView key={date} log={log} date={date} />;
}
