import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import { openQuestion } from '../../../../core/log/open-question.ts';
import type { ChecklistItem } from '../../../../core/record/checklist.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import type { QuiltLink } from '../../link/state/quilt-link.ts';
import { singleKeys } from '../../settings/state/single-keys.ts';
import { pageAddress } from '../../shell/state/route.ts';

/** What can be said to the record's question with one key, in the words that could be spoken. */
const WAYS = [
  { key: 'U', name: 'Not known', words: 'not known' },
  { key: 'O', name: 'None', words: 'none' },
  { key: 'L', name: 'Later', words: 'later' },
  { key: 'Q', name: 'No more questions', words: 'stop asking' },
] as const;

/** The field that the record asks for, answered like any note, or with one key. */
export function RecordAsks(props: { link: QuiltLink; log: Log }): JSX.Element | null {
  const { link, log } = props;
  const asking = log.recordAsking;
  const [fields, setFields] = useState<ChecklistItem[] | null>(null);
  const [, look] = useState(0);
  useEffect(() => {
    if (!asking) return;
    let current = true;
    // What the record has is reckoned after the page is there.
    void import('../../record/state/fields-of-log.ts').then(({ fieldsOfLog }) => {
      if (current) setFields(fieldsOfLog(log));
    });
    const timer = setInterval(() => look((n) => n + 1), 30_000);
    return () => {
      current = false;
      clearInterval(timer);
    };
  }, [log, asking]);
  const isFresh = asking !== undefined && openQuestion(log, new Date().toISOString()) !== undefined;
  useEffect(() => {
    if (!isFresh) return;
    const press = (event: KeyboardEvent) => {
      if (!singleKeys.peek() || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      if ((event.target as HTMLElement).closest('input, textarea, select, [contenteditable]')) return;
      const way = WAYS.find(({ key }) => key.toLowerCase() === event.key.toLowerCase());
      if (!way) return;
      event.preventDefault();
      void link.takeNote(way.words);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [isFresh, link]);

  const field = asking && fields?.find((one) => one.id === asking.field);
  if (!asking || !fields || !field) return null;
  const left = fields.filter(
    (one) => !one.filled && (!asking.document || one.document === asking.document),
  ).length;
  return (
    <section class="record-asks no-print" aria-label="The record asks">
      <p class="asked" aria-live="polite">
        <span class="asked-sign" aria-hidden="true">
          ?
        </span>
        <span>
          {isFresh ? field.question : `The record still lacks: ${field.field}`}
          <span class="asked-for quiet">
            For the record, {field.clause}; {left} {left === 1 ? 'field is' : 'fields are'} missing
          </span>
        </span>
      </p>
      {isFresh ? (
        <p class="row">
          {WAYS.map(({ key, name, words }) => (
            <button key={key} type="button" onClick={() => void link.takeNote(words)}>
              {name} {singleKeys.value ? <kbd>{key}</kbd> : null}
            </button>
          ))}
        </p>
      ) : (
        <p class="row">
          <button
            type="button"
            onClick={() =>
              void changeLog(
                {
                  type: 'ask-record',
                  field: field.id,
                  ...(asking.document ? { document: asking.document } : {}),
                },
                'Asked again',
              )
            }
          >
            Ask me now
          </button>
          <a class="tab" href={pageAddress(log.quilt.id, 'record', field.document)}>
            See its list
          </a>
        </p>
      )}
    </section>
  );
}
