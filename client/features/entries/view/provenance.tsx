import type { JSX } from 'preact';
import type { LoggedEntry, LoggedNote } from '../../../../core/log/state.ts';
import { TableWrap } from '../../shell/view/table-wrap.tsx';

/**
 * Which words gave each part of an entry: the words as said with the used pieces underlined, and a
 * table of part, words, and rule. Pieces that the conversation gave and no word says are marked so.
 */
export function Provenance(props: { logged: LoggedEntry; note: LoggedNote }): JSX.Element {
  const { logged, note } = props;
  const { text } = note.note;
  const slots = Object.entries(logged.origins).filter(([name]) => name !== 'entry');
  const pieces = slots
    .filter(([, origin]) => origin.how === 'said' && origin.words === undefined && origin.to > origin.from)
    .map(([, origin]) => origin)
    .sort((a, b) => a.from - b.from);
  const shown: (string | JSX.Element)[] = [];
  let at = 0;
  for (const piece of pieces) {
    if (piece.from < at) continue;
    shown.push(text.slice(at, piece.from), <mark key={piece.from}>{text.slice(piece.from, piece.to)}</mark>);
    at = piece.to;
  }
  shown.push(text.slice(at));
  return (
    <div class="provenance">
      <p class="said">{shown}</p>
      {slots.length ? (
        <TableWrap name="Which words gave which part">
          <table>
            <thead>
              <tr>
                <th>Part</th>
                <th>From the words</th>
                <th>Rule</th>
              </tr>
            </thead>
            <tbody>
              {slots.map(([name, origin]) => (
                <tr key={name}>
                  <td>{name}</td>
                  <td>
                    {origin.how === 'said'
                      ? `“${origin.words ?? text.slice(origin.from, origin.to)}”${origin.words === undefined ? '' : ', in the note before'}`
                      : 'not said: follows from what went before'}
                  </td>
                  <td>{origin.rule}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableWrap>
      ) : (
        <p class="quiet">
          {logged.byHand ? 'Put in or put right by hand.' : 'Kept as said; no part of it was read further.'}
        </p>
      )}
      {note.reading?.slips?.length ? (
        <p class="small">
          Heard otherwise than read:{' '}
          {note.reading.slips.map((slip) => `“${slip.heard}” as “${slip.read}”`).join(', ')}
        </p>
      ) : null}
      {note.note.audio?.confidence !== undefined ? (
        <p class="small quiet">
          The recogniser was {Math.round(note.note.audio.confidence * 100)} % sure of its words.
        </p>
      ) : null}
    </div>
  );
}
