import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { specAsWorked } from '../../../../core/estimate/spec-as-worked.ts';
import { specForPapers } from '../../../../core/estimate/spec-for-papers.ts';
import { localInstant } from '../../../../core/log/local-instant.ts';
import type { Log } from '../../../../core/log/log.ts';
import {
  DOCUMENT_KINDS,
  type DocumentKind,
  type Passage,
  type RecordDocument,
} from '../../../../core/record/document-model.ts';
import { passageText } from '../../../../core/record/passage-text.ts';
import type { RecordEstimate } from '../../../../core/record/record-figures.ts';
import { dateWords } from '../../../words/figure-words.ts';
import { instantInZone } from '../../../words/local-time.ts';
import { hoursOf } from '../../days/state/hours-of-log.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { specOf, useReckoned } from '../../estimate/state/estimate-of-log.ts';
import { openLog } from '../../link/state/open-quilt.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { pageAddress, route } from '../../shell/state/route.ts';
import { useAfterPaint } from '../../shell/state/use-after-paint.ts';
import { Field } from '../../shell/view/field.tsx';
import { paperOf } from '../state/record-of-log.ts';
import { Checklist } from './checklist.tsx';
import { ExportList } from './export-list.tsx';
import { PaperBlocks } from './paper-blocks.tsx';
import './record.css';

const NOTHING = {};
const KIND_WORDS: Record<DocumentKind, string> = {
  condition: 'Condition before work',
  proposal: 'Proposal',
  treatment: 'Treatment',
  letter: 'Letter to the owner',
  bill: 'Bill',
};

/** The papers that come out of the log, as they will be printed; every passage can be put in her own words. */
export function RecordPage(): JSX.Element {
  const log = openLog.value!;
  const painted = useAfterPaint(log.entryCount);
  return painted ? (
    <Papers log={log} />
  ) : (
    <header class="page-head">
      <h1>The record</h1>
      <p class="quiet">Writing it from the log…</p>
    </header>
  );
}

function Papers(props: { log: Log }): JSX.Element {
  const { log } = props;
  const at = route.value;
  const asked = at.at === 'quilt' ? at.rest : '';
  const kind = DOCUMENT_KINDS.find((name) => name === asked) ?? 'condition';
  const idleMin = (machineSettings.value ?? UNTIL_KNOWN).idleMin;
  const { spec } = specOf(log, idleMin);
  const { reckoned } = useReckoned(specForPapers(spec));
  const { reckoned: worked } = useReckoned(specAsWorked(spec) ?? NOTHING);
  const figures = useMemo((): RecordEstimate | undefined => {
    if (!reckoned || !('answer' in reckoned)) return undefined;
    const cameOut = worked && 'answer' in worked ? worked.answer.price : undefined;
    return { ...reckoned.answer, ...(cameOut ? { cameOut } : {}) };
  }, [reckoned, worked]);
  const { paper, hours } = useMemo(() => {
    const hours = hoursOf(log, idleMin);
    const at = new Date().toISOString();
    return { hours, paper: paperOf(log, kind, { at, hours, ...(figures ? { estimate: figures } : {}) }) };
  }, [log, kind, idleMin, figures]);

  return (
    <div class="record-page">
      <header class="page-head no-print">
        <h1>The record</h1>
        <button type="button" class="chief" onClick={() => window.print()}>
          Print this paper
        </button>
      </header>
      <nav class="row no-print papers" aria-label="Papers">
        {DOCUMENT_KINDS.map((name) => (
          <a
            key={name}
            class="tab"
            href={pageAddress(log.quilt.id, 'record', name)}
            aria-current={name === kind ? 'page' : undefined}
          >
            {KIND_WORDS[name]}
          </a>
        ))}
      </nav>
      <div class="paper-and-side">
        <Paper key={kind} log={log} paper={paper} />
        <aside class="record-side no-print">
          <Checklist log={log} kind={kind} hours={hours} estimate={figures} />
          {paper.heldBack.length ? (
            <details class="patch">
              <summary>Kept out of this paper ({paper.heldBack.length})</summary>
              <ul class="small">
                {paper.heldBack.map((held) => (
                  <li key={held.entryId}>
                    “{held.noteId ? (log.note(held.noteId)?.note.text.slice(0, 120) ?? '') : held.entryId}”:{' '}
                    {held.why}
                  </li>
                ))}
              </ul>
            </details>
          ) : null}
          {kind === 'proposal' ? <Agreement log={log} /> : null}
          <ExportList quiltId={log.quilt.id} kind={kind} />
          <RecordMade log={log} />
        </aside>
      </div>
      <ChangeBar />
    </div>
  );
}

/** Where the record is said to be made: sound may go from then on, and two copies are to be kept. */
function RecordMade(props: { log: Log }): JSX.Element {
  const { recordMade, quilt } = props.log;
  const made = recordMade && props.log.eventAt(recordMade.seq);
  return (
    <section class="patch" aria-labelledby="made-head">
      <h2 id="made-head">When the work is finished</h2>
      <p class="small">
        Keep two copies, one with the owner and one with you, and one of them on paper: what is only in a
        computer or on a tape is not kept.
      </p>
      {made ? (
        <p class="small">
          Made {dateWords(localInstant(made.at, quilt.zone).slice(0, 10))}. What is noted from now on is not
          in it.
        </p>
      ) : null}
      <p class="row">
        <button type="button" onClick={() => changeLog({ type: 'make-record' }, 'The record is made.')}>
          {made ? 'It is made anew' : 'The record is made'}
        </button>
      </p>
    </section>
  );
}

function Paper(props: { log: Log; paper: RecordDocument }): JSX.Element {
  const { log, paper } = props;
  return (
    <article class="paper-sheet" lang={paper.language} aria-label={paper.title}>
      <header>
        <p class="paper-subject">{paper.subject}</p>
        <h2>{paper.title}</h2>
        <p class="paper-date">
          {dateWords(paper.date)}
          {paper.author ? `, ${paper.author}` : ''}
        </p>
      </header>
      {paper.sections.map((section) => (
        <section key={section.id}>
          {section.title ? <h3>{section.title}</h3> : null}
          {section.passages.map((passage) => (
            <OnePassage
              key={passage.id}
              log={log}
              kind={paper.kind}
              passage={passage}
              title={section.title}
            />
          ))}
        </section>
      ))}
    </article>
  );
}

function OnePassage(props: { log: Log; kind: DocumentKind; passage: Passage; title: string }): JSX.Element {
  const { log, kind, passage, title } = props;
  const [text, setText] = useState<string | null>(null);
  const box = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (text !== null) box.current?.focus();
  }, [text === null]);
  const edit = (words: string | null, facts: string, said: string) =>
    changeLog({ type: 'edit-record', document: kind, passage: passage.id, text: words, facts }, said);

  if (text !== null) {
    return (
      <form
        class="passage editing no-print"
        onSubmit={(event) => {
          event.preventDefault();
          void edit(text, passage.facts, 'Put in your own words').then((done) => done && setText(null));
        }}
      >
        <label>
          <span class="sr-only">Your words for this passage of {title}</span>
          <textarea
            ref={box}
            value={text}
            rows={4}
            maxLength={20_000}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <p class="small quiet">
          An empty line parts paragraphs; “- ” begins an item of a list; “! ” a caution.
        </p>
        <p class="row">
          <button type="submit" class="chief">
            Keep these words
          </button>
          <button type="button" onClick={() => setText(null)}>
            Leave it
          </button>
        </p>
      </form>
    );
  }
  return (
    <div class={`passage${passage.edit ? ' own-words' : ''}`}>
      <PaperBlocks quiltId={log.quilt.id} body={passage.body} />
      {passage.edit?.stale ? (
        <div class="notice no-print stale">
          <p>The log has changed under these words of yours. It would now say:</p>
          <PaperBlocks quiltId={log.quilt.id} body={passage.edit.written} />
          <p class="row">
            <button type="button" onClick={() => void edit(null, passage.facts, 'The log’s words taken')}>
              Take the log’s words
            </button>
            <button
              type="button"
              onClick={() => void edit(passageText(passage.body), passage.facts, 'Your words kept')}
            >
              Mine still stand
            </button>
          </p>
        </div>
      ) : null}
      {passage.editable ? (
        <div class="passage-acts no-print">
          <button type="button" class="slight" onClick={() => setText(passageText(passage.body))}>
            Reword<span class="sr-only"> this passage of {title}</span>
          </button>
          {passage.edit ? (
            <button
              type="button"
              class="slight"
              onClick={() => void edit(null, passage.facts, 'Your words taken back')}
            >
              Take my words back
            </button>
          ) : null}
        </div>
      ) : null}
    </div>
  );
}

/** The owner's agreement: signed on paper, or given by word with its date. */
function Agreement(props: { log: Log }): JSX.Element {
  const { log } = props;
  const [by, setBy] = useState(log.quilt.owner);
  const [how, setHow] = useState<'signature' | 'word'>('signature');
  const [note, setNote] = useState('');
  const [fault, setFault] = useState('');
  return (
    <details class="patch" open={log.agreements.length > 0}>
      <summary>The owner’s agreement</summary>
      {log.agreements.length ? (
        <ul>
          {log.agreements.map((agreement) => (
            <li key={agreement.seq}>
              {agreement.by} {agreement.how === 'signature' ? 'signed' : 'agreed by word'} on{' '}
              {dateWords(agreement.at.slice(0, 10))}
              {agreement.note ? `: ${agreement.note}` : ''}
            </li>
          ))}
        </ul>
      ) : (
        <p class="quiet">
          Not agreed yet. The papers ask for a written agreement; one by word can be noted until it comes.
        </p>
      )}
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          if (!by.trim()) {
            setFault('Say who agreed.');
            return;
          }
          setFault('');
          void changeLog(
            {
              type: 'note-agreement',
              how,
              by: by.trim(),
              at: instantInZone(new Date(), log.quilt.zone),
              note: note.trim(),
            },
            'Agreement noted',
          ).then((done) => done && setNote(''));
        }}
      >
        <Field id="agreed-by" label="Who agreed" fault={fault || undefined}>
          {(a) => (
            <input {...a} value={by} maxLength={200} onInput={(event) => setBy(event.currentTarget.value)} />
          )}
        </Field>
        <Field id="agreed-how" label="How">
          {(a) => (
            <select
              {...a}
              value={how}
              onChange={(event) => setHow(event.currentTarget.value as 'signature' | 'word')}
            >
              <option value="signature">signed the paper</option>
              <option value="word">by word</option>
            </select>
          )}
        </Field>
        <Field id="agreed-note" label="Anything said with it">
          {(a) => (
            <input
              {...a}
              value={note}
              maxLength={2000}
              onInput={(event) => setNote(event.currentTarget.value)}
            />
          )}
        </Field>
        <p class="row">
          <button type="submit">Note it</button>
        </p>
      </form>
    </details>
  );
}
