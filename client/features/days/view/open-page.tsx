import type { JSX } from 'preact';
import type { Log } from '../../../../core/log/log.ts';
import type { LoggedEntry } from '../../../../core/log/state.ts';
import type { Place } from '../../../../shared/entry.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { dateWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { placesWords } from '../../../words/place-words.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { EntryMark } from '../../entries/view/entry-mark.tsx';
import { openLog } from '../../link/state/open-quilt.ts';
import { pageAddress } from '../../shell/state/route.ts';
import { openMatters } from '../state/open-matters.ts';
import './open.css';

/** What is undecided, what is decided and not done, what is to be bought. */
export function OpenPage(): JSX.Element {
  const log = openLog.value!;
  const matters = openMatters(log);
  const say = tradeLabels(log.quilt.spelling);
  const nothing = !matters.count && !matters.toDo.length && !matters.toBuy.length;
  return (
    <div class="open-page">
      <header class="page-head">
        <h1>Open matters</h1>
        <button type="button" class="no-print" onClick={() => window.print()}>
          Print
        </button>
      </header>
      {nothing ? (
        <p>
          Nothing stands open. Say “either net or a new piece, I am not sure” and it waits here with a pin in
          it.
        </p>
      ) : null}

      {matters.count ? (
        <section aria-labelledby="undecided">
          <h2 id="undecided">Undecided: pins left in</h2>
          <ul class="plain pins">
            {matters.undecided.map(({ places, ways }) => (
              <li key={ways[0]!.logged.id} class="pin">
                <p class="pin-head">
                  <Where log={log} places={places} />
                </p>
                <ul class="plain ways">
                  {ways.map(({ logged, entry, places: at }) => (
                    <li key={logged.id}>
                      <EntryMark entry={logged.entry} size={44} />
                      <span class="way-words">
                        {capital(entry.action ? say.toDo(entry.action) : 'something')}
                        {logged.reason ? <span class="entry-reason">because: {logged.reason}</span> : null}
                        <SaidOn log={log} entry={logged} />
                      </span>
                      <span class="row no-print">
                        <button
                          type="button"
                          onClick={() =>
                            void changeLog(
                              {
                                type: 'add-entry',
                                entry: {
                                  ...entry,
                                  places: at,
                                  state: entry.action === 'leave' ? 'done' : 'planned',
                                },
                              },
                              `Chosen: ${entry.action ? say.toDo(entry.action) : 'this'}`,
                            )
                          }
                        >
                          Choose this
                        </button>
                        <button
                          type="button"
                          class="slight"
                          onClick={() =>
                            void changeLog(
                              { type: 'add-entry', entry: { ...entry, places: at, state: 'dropped' } },
                              'Decided against',
                            )
                          }
                        >
                          Not this
                        </button>
                      </span>
                    </li>
                  ))}
                </ul>
              </li>
            ))}
            {matters.decisions.map(({ logged, about }) => (
              <li key={logged.id} class="pin">
                <p class="pin-head">{capital(say.topic(about))}</p>
                <p class="quiet">“{logged.noteId ? log.note(logged.noteId)?.note.text : ''}”</p>
                <SaidOn log={log} entry={logged} />
                <p class="row no-print">
                  <button
                    type="button"
                    onClick={() =>
                      void changeLog(
                        { type: 'add-entry', entry: { kind: 'decision', about, status: 'settled' } },
                        `Settled: ${say.topic(about)}`,
                      )
                    }
                  >
                    It is settled
                  </button>
                </p>
              </li>
            ))}
          </ul>
        </section>
      ) : null}

      {matters.toDo.length ? (
        <section aria-labelledby="to-do">
          <h2 id="to-do">Decided, not yet done</h2>
          <ul class="plain todo">
            {matters.toDo.map(({ logged, entry, places }) => (
              <li key={logged.id}>
                <EntryMark entry={logged.entry} size={44} />
                <span class="way-words">
                  {entryWords({ ...entry, places: [] }, log.quilt)
                    .what.replace(/^To do: /, '')
                    .replace(/^./, (c) => c.toUpperCase())}
                  <span class="entry-where">
                    {places.length ? <Where log={log} places={places} /> : 'place not said'}
                  </span>
                  {logged.reason ? <span class="entry-reason">because: {logged.reason}</span> : null}
                  <SaidOn log={log} entry={logged} />
                </span>
                <button
                  type="button"
                  class="no-print"
                  onClick={() =>
                    void changeLog({ type: 'add-entry', entry: { ...entry, places, state: 'done' } }, 'Done')
                  }
                >
                  Done
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}

      {matters.toBuy.length ? (
        <section aria-labelledby="to-buy">
          <h2 id="to-buy">To buy</h2>
          <ul class="plain todo">
            {matters.toBuy.map(({ logged, entry }) => (
              <li key={logged.id}>
                <EntryMark entry={logged.entry} size={44} />
                <span class="way-words">
                  {entryWords(entry, log.quilt)
                    .what.replace(/^To buy: /, '')
                    .replace(/^./, (c) => c.toUpperCase())}
                  <SaidOn log={log} entry={logged} />
                </span>
                <button
                  type="button"
                  class="no-print"
                  onClick={() =>
                    void changeLog({ type: 'add-entry', entry: { ...entry, use: 'bought' } }, 'Bought')
                  }
                >
                  Bought
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <ChangeBar />
    </div>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function Where(props: { log: Log; places: Place[] }): JSX.Element {
  const { log, places } = props;
  if (!places.length) return <>Place not said</>;
  const words = capital(placesWords(places, log.quilt, log.quilt.spelling));
  return places.length === 1 ? (
    <a href={pageAddress(log.quilt.id, 'quilt', places[0])}>{words}</a>
  ) : (
    <span>{words}</span>
  );
}

function SaidOn(props: { log: Log; entry: LoggedEntry }): JSX.Element {
  const { date } = localTime(props.entry.at, props.log.quilt.zone);
  return (
    <a class="small said-on" href={pageAddress(props.log.quilt.id, 'days', date)}>
      since {dateWords(date, 'short')}
    </a>
  );
}
