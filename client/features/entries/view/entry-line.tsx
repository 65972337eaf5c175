import type { JSX } from 'preact';
import type { Entry } from '../../../../shared/entry.ts';
import type { Quilt } from '../../../../shared/quilt.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { EntryMark } from './entry-mark.tsx';
import './entries.css';

/** An entry as one line of the workbook: its mark, what it says, and where. */
export function EntryLine(props: {
  entry: Entry;
  quilt: Quilt;
  reason?: string;
  size?: number;
}): JSX.Element {
  const { what, where } = entryWords(props.entry, props.quilt);
  return (
    <span class="entry-line">
      <EntryMark entry={props.entry} size={props.size ?? 40} />
      <span>
        <span class="entry-what">{what}</span>
        {where ? <span class="entry-where">{where.charAt(0).toUpperCase() + where.slice(1)}</span> : null}
        {props.reason ? <span class="entry-reason">because: {props.reason}</span> : null}
      </span>
    </span>
  );
}
