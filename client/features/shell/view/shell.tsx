import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { openMatters } from '../../days/state/open-matters.ts';
import { openLog, openQuilt } from '../../link/state/open-quilt.ts';
import { type Page, pageAddress, route } from '../state/route.ts';
import { wide } from '../state/viewport.ts';
import './shell.css';

const CHIEF: { page: Page; name: string }[] = [
  { page: 'frame', name: 'Frame' },
  { page: 'quilt', name: 'Quilt' },
  { page: 'days', name: 'Days' },
  { page: 'open', name: 'Open' },
];
const FURTHER: { page: Page; name: string }[] = [
  { page: 'estimate', name: 'Estimate' },
  { page: 'record', name: 'Record' },
  { page: 'find', name: 'Find' },
  { page: 'recordings', name: 'Recordings' },
  { page: 'help', name: 'What to say' },
  { page: 'settings', name: 'Settings' },
];

/** The page's frame: the selvedge with the way about, and the page itself. */
export function Shell(props: { children: ComponentChildren }): JSX.Element {
  const main = useRef<HTMLElement>(null);
  const at = route.value;
  const link = openQuilt.value;
  const log = openLog.value;
  const page = at.at === 'quilt' ? at.page : at.at;

  // A new page starts at its top, and a screen reader hears its heading.
  const first = useRef(true);
  useEffect(() => {
    if (first.current) {
      first.current = false;
      return;
    }
    scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [page]);

  if (at.at !== 'quilt') {
    return (
      <div class="plain-shell">
        <main ref={main} id="main" tabIndex={-1}>
          {props.children}
        </main>
      </div>
    );
  }
  const quiltId = at.quiltId;
  const openCount = log ? openMatters(log).count : 0;
  const way = ({ page: to, name }: { page: Page; name: string }) => (
    <li key={to}>
      <a class="way" href={pageAddress(quiltId, to)} aria-current={page === to ? 'page' : undefined}>
        {name}
        {to === 'open' && openCount ? (
          <span class="count">
            {openCount}
            <span class="sr-only"> open matters</span>
          </span>
        ) : null}
      </a>
    </li>
  );
  const further = <ul>{FURTHER.map(way)}</ul>;
  return (
    <div class="shell">
      <button type="button" class="chief skip" onClick={() => main.current?.focus()}>
        Skip to the page
      </button>
      <nav class="selvedge" aria-label="This quilt">
        <div class="selvedge-in">
          <div class="head">
            <a class="back" href="#/">
              All quilts
            </a>
            <p class="quilt-name">{log?.quilt.name ?? '…'}</p>
            <p class="owner small quiet">{log?.quilt.owner ? `for ${log.quilt.owner}` : ''}</p>
          </div>
          <ul>{CHIEF.map(way)}</ul>
          {wide.value ? (
            further
          ) : (
            <details class="more-ways">
              <summary>More</summary>
              <ul>
                {FURTHER.map(way)}
                <li>
                  <a class="way" href="#/">
                    All quilts
                  </a>
                </li>
              </ul>
            </details>
          )}
          {link ? <Tie /> : null}
          <div class="dyes" aria-hidden="true">
            {['--indigo', '--madder', '--weld', '--walnut', '--moss'].map((dye) => (
              <i key={dye} style={{ background: `var(${dye})` }} />
            ))}
          </div>
        </div>
      </nav>
      <main ref={main} id="main" tabIndex={-1}>
        {props.children}
      </main>
    </div>
  );
}

/** Whether the page and the server are tied, and what waits. */
function Tie(): JSX.Element {
  const link = openQuilt.value;
  const waiting = link?.waiting.value.length ?? 0;
  const state = link?.connection.value ?? 'joining';
  return (
    <p class={`tie ${state}`} role="status">
      {state === 'live'
        ? 'Written to this machine as you go'
        : state === 'joining'
          ? 'Opening the log…'
          : 'Server away, trying again'}
      {waiting ? `. ${waiting} ${waiting === 1 ? 'note waits' : 'notes wait'} here` : ''}
    </p>
  );
}
