import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { dateWords } from '../../../words/figure-words.ts';
import { EntryLine } from '../../entries/view/entry-line.tsx';
import { PlayButton } from '../../entries/view/play-button.tsx';
import { openLog } from '../../link/state/open-quilt.ts';
import { pageAddress } from '../../shell/state/route.ts';
import { type Findings, findSaid, prepareFind } from '../state/find-said.ts';
import './find.css';

const NONE: Findings = { found: [], total: 0, isAll: true };

/** Search over everything said. */
export function FindPage(): JSX.Element {
  const log = openLog.value!;
  const [asked, setAsked] = useState('');
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => box.current?.focus(), []);
  // Once: notes that come later are read when they are searched.
  useEffect(() => prepareFind(openLog.peek()!), []);
  const [{ found, total, isAll }, setFindings] = useState<Findings>(NONE);
  // Before the letters just typed are painted, so that they and what they find come together.
  useLayoutEffect(() => findSaid(log, asked, setFindings), [log, asked]);
  return (
    <div class="find-page">
      <header class="page-head">
        <h1>Find</h1>
      </header>
      <label for="find-box">Words, a place such as 3-2, a fabric, a day such as 2026-03</label>
      <input
        id="find-box"
        ref={box}
        type="search"
        autocomplete="off"
        value={asked}
        onInput={(event) => setAsked(event.currentTarget.value)}
      />
      <p role="status" class="quiet">
        {asked.trim()
          ? !isAll
            ? `${total} so far; looking further back…`
            : total
              ? `${total} ${total === 1 ? 'note' : 'notes'}${total > found.length ? `, the last ${found.length} shown` : ''}`
              : 'Nothing that was said holds all of these words.'
          : `${log.notes.length} notes so far.`}
      </p>
      <ol class="plain found">
        {found.map((line) => (
          <li key={line.note?.note.id ?? line.entryIds[0]}>
            <p class="found-when">
              <a href={pageAddress(log.quilt.id, 'days', line.date)}>{dateWords(line.date, 'short')}</a>{' '}
              {line.time}
              {line.note?.note.audio ? (
                <PlayButton quiltId={log.quilt.id} audio={line.note.note.audio} removed={log.removedAudio} />
              ) : null}
            </p>
            <div>
              <p class="found-words">{line.note ? `“${line.words.slice(0, 400)}”` : line.words}</p>
              <ul class="plain found-entries">
                {line.entryIds.map((id) => {
                  const entry = log.entry(id);
                  return entry && entry.entry.kind !== 'remark' ? (
                    <li key={id}>
                      <EntryLine entry={entry.entry} quilt={log.quilt} size={30} />
                    </li>
                  ) : null;
                })}
              </ul>
            </div>
          </li>
        ))}
      </ol>
    </div>
  );
}
