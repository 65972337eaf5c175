import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Hours } from '../../../../core/hours/hours.ts';
import type { Log } from '../../../../core/log/log.ts';
import { checklist } from '../../../../core/record/checklist.ts';
import type { DocumentKind } from '../../../../core/record/document-model.ts';
import type { RecordEstimate } from '../../../../core/record/record-figures.ts';
import { isAskable } from '../../../../core/record/record-question.ts';
import { changeLog, lastChange } from '../../entries/state/change-log.ts';
import { openQuilt } from '../../link/state/open-quilt.ts';
import { goTo, pageAddress } from '../../shell/state/route.ts';

/** Which fields the museums' guidance asks of this paper, which are filled, and what to say for the rest. */
export function Checklist(props: {
  log: Log;
  kind: DocumentKind;
  hours: Hours;
  estimate: RecordEstimate | undefined;
}): JSX.Element {
  const { log, kind, hours, estimate } = props;
  const items = useMemo(
    () =>
      checklist(log, { hours, ...(estimate ? { estimate } : {}) }).filter((item) => item.document === kind),
    [log, kind, hours, estimate],
  );
  const missing = items.filter((item) => !item.filled);
  const filled = items.filter((item) => item.filled);
  const page = {
    details: 'settings',
    note: 'frame',
    photograph: 'quilt',
    agreement: 'record',
    estimate: 'estimate',
  } as const;
  /** Begins the round of questions, which is held on the Frame. */
  const askFor = async (field?: string) => {
    const command = { type: 'ask-record', document: kind, ...(field ? { field } : {}) } as const;
    if (!(await changeLog(command, 'Asked'))) return;
    lastChange.value = null;
    const link = openQuilt.peek();
    if (link) link.latest.value = null;
    goTo(pageAddress(log.quilt.id, 'frame'));
  };
  return (
    <section class="checklist" aria-labelledby="check-head">
      <h3 id="check-head">
        {missing.length
          ? `Still missing: ${missing.length} of ${items.length}`
          : items.length
            ? 'Nothing is missing'
            : 'No list for this paper'}
      </h3>
      {missing.some(isAskable) ? (
        <p>
          <button type="button" class="chief" onClick={() => void askFor()}>
            Ask me these, one by one
          </button>
          <span class="small quiet block">
            On the Frame, to be answered by voice or in writing. Or say there “what does the record still
            lack?”
          </span>
        </p>
      ) : null}
      <ul class="plain">
        {missing.map((item) => (
          <li key={item.id}>
            <svg width="20" height="20" viewBox="0 0 24 24" aria-hidden="true">
              <rect
                x="3"
                y="3"
                width="18"
                height="18"
                fill="none"
                stroke="currentColor"
                stroke-width="2"
                stroke-dasharray="4 3"
              />
            </svg>
            <span>
              <strong>{item.field}</strong>
              <span class="block">
                {isAskable(item) ? (
                  <button type="button" class="slight ask" onClick={() => void askFor(item.id)}>
                    {item.question}
                  </button>
                ) : (
                  <a href={pageAddress(log.quilt.id, page[item.answer])}>{item.question}</a>
                )}
              </span>
              <span class="small quiet block">{item.clause}</span>
            </span>
          </li>
        ))}
      </ul>
      {filled.length ? (
        <details>
          <summary>Filled ({filled.length})</summary>
          <ul class="plain">
            {filled.map((item) => (
              <li key={item.id}>
                <svg width="20" height="20" viewBox="0 0 24 24" aria-hidden="true">
                  <path d="M3 3h18v18H3zM7 12l4 4 6-8" fill="none" stroke="currentColor" stroke-width="2" />
                </svg>
                <span>
                  <strong>{item.field}</strong>: {item.value}
                  <span class="small quiet block">
                    {item.clause}
                    {item.noteIds[0]
                      ? `; from “${log.note(item.noteIds[0])?.note.text.slice(0, 80) ?? ''}”`
                      : ''}
                  </span>
                </span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}
