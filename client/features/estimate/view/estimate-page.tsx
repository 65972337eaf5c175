import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { faultOfSetting, type SettingFault } from '../../../../core/estimate/fault-of-setting.ts';
import type { SpecSource } from '../../../../core/estimate/spec-from-log.ts';
import type { Log } from '../../../../core/log/log.ts';
import type {
  CuttingAnswer,
  EstimateAnswer,
  WorkAnswer,
  Worked,
} from '../../../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../../../shared/estimate-spec.ts';
import { ACTIONS, type Action, FINDINGS, type Finding } from '../../../../shared/vocabulary.ts';
import { BackingDrawing, CuttingPlanDrawing } from '../../../charts/cutting-plan.tsx';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { RangeBar } from '../../../charts/range-bar.tsx';
import { dateWords, lengthWords, moneyWords, spanWords } from '../../../words/figure-words.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { openLog } from '../../link/state/open-quilt.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { Field } from '../../shell/view/field.tsx';
import { TableWrap } from '../../shell/view/table-wrap.tsx';
import {
  ESTIMATE_PARTS,
  type EstimateField,
  type EstimatePart,
  fieldText,
  fieldValue,
} from '../state/estimate-fields.ts';
import { specOf, useReckoned } from '../state/estimate-of-log.ts';
import { Plans } from './plans.tsx';
import './estimate.css';

/** Cloth, thread, hours and price: filled from the log, every assumed figure marked and to be set. */
export function EstimatePage(): JSX.Element {
  const log = openLog.value!;
  const idleMin = (machineSettings.value ?? UNTIL_KNOWN).idleMin;
  const { spec, sources } = specOf(log, idleMin);
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set());
  const { reckoned, busy } = useReckoned(left.size ? without(spec, left) : spec);
  const shown = reckoned && 'answer' in reckoned ? reckoned.answer : null;
  const fault = reckoned && 'fault' in reckoned ? reckoned.fault : null;

  return (
    <div class="estimate-page">
      <header class="page-head">
        <h1>The estimate</h1>
        <button type="button" class="no-print" onClick={() => window.print()}>
          Print
        </button>
        <p>
          Filled from what you said and measured. <mark class="assumed-mark">Assumed</mark> figures are
          nobody’s but the table’s: set them where you know better. Nothing here is tax or legal advice.
        </p>
      </header>
      {fault ? (
        <p class="notice bad" role="alert">
          {fault.message}
        </p>
      ) : null}
      <p class="quiet" role="status">
        {busy ? 'Reckoning…' : ''}
      </p>
      {shown?.price ? <Sum log={log} answer={shown} asIf={left.size > 0} /> : null}
      <div class="parts">
        {ESTIMATE_PARTS.map((part) => (
          <Part
            key={part.part}
            log={log}
            part={part}
            spec={spec}
            sources={sources}
            answer={shown}
            fault={fault}
          >
            {shown ? <PartAnswer part={part.part} answer={shown} log={log} /> : null}
          </Part>
        ))}
        {shown?.work ? <Work log={log} work={shown.work} spec={spec} left={left} onLeft={setLeft} /> : null}
        {spec.work ? <Plans log={log} spec={spec} /> : null}
        {shown
          ? (['patches', 'interfacing', 'overlay', 'sashing', 'label'] as const).map((name) =>
              shown[name] ? <Cutting key={name} name={name} answer={shown[name]} unit={shown.unit} /> : null,
            )
          : null}
        {shown?.thread ? (
          <section class="patch part">
            <h2>Thread</h2>
            <p class="headline">
              {cloth(shown.thread)}
              {shown.thread.spools
                ? `, ${shown.thread.spools} ${shown.thread.spools === 1 ? 'reel' : 'reels'}`
                : ''}
            </p>
            <Workings worked={shown.thread} />
          </section>
        ) : null}
        {shown?.shopping?.lines.length ? (
          <section class="patch part wide">
            <h2>To buy</h2>
            <TableWrap name="What is to be bought">
              <table>
                <thead>
                  <tr>
                    <th>What</th>
                    <th>For</th>
                    <th class="figure">Needed</th>
                    <th class="figure">On hand</th>
                    <th class="figure">Buy</th>
                    <th class="figure">Left over</th>
                  </tr>
                </thead>
                <tbody>
                  {shown.shopping.lines.map((line) => (
                    <tr key={line.name}>
                      <td>{line.name}</td>
                      <td>{line.for.join(', ')}</td>
                      <td class="figure">
                        {lengthWords(line.needed)} {line.unit}
                      </td>
                      <td class="figure">{lengthWords(line.onHand)}</td>
                      <td class="figure">
                        <strong>
                          {lengthWords(line.buy)} {line.unit}
                        </strong>
                      </td>
                      <td class="figure">{lengthWords(line.leftOver)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </TableWrap>
            <Workings worked={shown.shopping} />
          </section>
        ) : null}
      </div>
      <ChangeBar />
    </div>
  );
}

/** The same spec with some of the planned treatments left out. */
function without(spec: EstimateSpec, left: ReadonlySet<number>): EstimateSpec {
  if (!spec.work?.planned) return spec;
  return { ...spec, work: { ...spec.work, planned: spec.work.planned.filter((_, i) => !left.has(i)) } };
}

const cloth = (answer: { yards?: number; metres?: number }): string =>
  answer.yards !== undefined
    ? `${lengthWords(answer.yards)} yd`
    : answer.metres !== undefined
      ? `${answer.metres} m`
      : '';

function Sum(props: { log: Log; answer: EstimateAnswer; asIf: boolean }): JSX.Element {
  const { answer, log } = props;
  const price = answer.price!;
  const rateIsAsked = answer.work !== undefined && price.lacksLabour;
  const money = (total: { minor: number }) => moneyWords(total.minor / 10 ** price.digits, price.currency);
  return (
    <section class="price-sum" aria-label="The price">
      {rateIsAsked ? <HourlyRate log={log} answer={answer} /> : null}
      <p class="price-grand">
        {money(price.total)}
        <span>
          {rateIsAsked
            ? 'without the work, until its rate is set'
            : price.range
              ? `between ${money(price.range.low)} and ${money(price.range.high)}, most likely ${money(price.range.likely)}`
              : 'in all'}
          {answer.work ? `; ${hoursWords(answer.work.hours.likely)} of work` : ''}
          {props.asIf ? '. As if the unticked treatments were left out' : ''}
        </span>
      </p>
      {answer.work?.finish ? (
        <p>
          At your pace it would be done about <strong>{dateWords(answer.work.finish.likely)}</strong> (between{' '}
          {dateWords(answer.work.finish.early, 'short')} and {dateWords(answer.work.finish.late, 'short')}).
        </p>
      ) : null}
      <TableWrap name="The price, line by line" class="price-lines">
        <table>
          <caption class="sr-only">Price of the work on {log.quilt.name}, line by line</caption>
          <tbody>
            {price.lines.map((line) => (
              <tr key={`${line.kind}${line.name}`}>
                <td>{line.name}</td>
                <td class="figure">{moneyWords(line.minor / 10 ** price.digits, price.currency)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th>In all</th>
              <td class="figure">{money(price.total)}</td>
            </tr>
            {price.deposit ? (
              <tr>
                <th>Deposit</th>
                <td class="figure">{money(price.deposit)}</td>
              </tr>
            ) : null}
            {price.due && price.paid ? (
              <tr>
                <th>Still due</th>
                <td class="figure">{money(price.due)}</td>
              </tr>
            ) : null}
          </tfoot>
        </table>
      </TableWrap>
      {price.comparison && !price.lacksLabour ? (
        <TableWrap name="The estimate against what was spent" class="price-lines">
          <table>
            <caption>Estimate and spent so far</caption>
            <thead>
              <tr>
                <td />
                <th scope="col" class="figure">
                  Estimate
                </th>
                <th scope="col" class="figure">
                  So far
                </th>
              </tr>
            </thead>
            <tbody>
              {price.comparison.map((row) => (
                <tr key={row.name}>
                  <th scope="row">{row.name}</th>
                  <td class="figure">{money(row.quoted)}</td>
                  <td class="figure">
                    {money(row.actual)}
                    {row.over.minor > 0 ? <strong> ({money(row.over)} over)</strong> : null}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableWrap>
      ) : null}
      <Workings worked={rateIsAsked ? withoutQuestion(price) : price} />
    </section>
  );
}

/** The question stands above already, with its field. */
const withoutQuestion = ({ question: _question, ...worked }: Worked): Worked => worked;

/** Without a rate the price would show no labour: it is asked for where the price stands. */
function HourlyRate(props: { log: Log; answer: EstimateAnswer }): JSX.Element {
  const { log, answer } = props;
  const field = ESTIMATE_PARTS.find(({ part }) => part === 'price')!.fields.find(
    ({ path }) => path === 'hourly',
  )!;
  return (
    <div class="notice rate-asked no-print">
      <p>
        {hoursWords(answer.work!.hours.likely)} of work are planned, and no rate is set: what do you charge
        for an hour, in {answer.price!.currency}?
      </p>
      <OneFigure
        log={log}
        id="estimate-rate-asked"
        field={field}
        path="price.hourly"
        value={undefined}
        set={false}
        source=""
        assumed={undefined}
        unit={answer.unit}
        fault={undefined}
      />
    </div>
  );
}

/** A part's warnings, its question, and its sums on paper. */
function Workings(props: { worked: Worked }): JSX.Element {
  const { worked } = props;
  return (
    <>
      {worked.warnings?.map((warning) => (
        <p class="notice bad" key={warning}>
          {warning}
        </p>
      ))}
      {worked.question ? <p class="notice">{worked.question}</p> : null}
      {worked.working.length ? (
        <details>
          <summary>The working</summary>
          <ol class="working">
            {worked.working.map((line, i) => (
              <li key={i}>{line}</li>
            ))}
          </ol>
        </details>
      ) : null}
    </>
  );
}

function Part(props: {
  log: Log;
  part: EstimatePart;
  spec: EstimateSpec;
  sources: SpecSource[];
  answer: EstimateAnswer | null;
  fault: { field: string; message: string } | null;
  children: ComponentChildren;
}): JSX.Element {
  const { log, part, spec, sources, answer, fault } = props;
  const given = (spec as Record<string, unknown>)[part.part] as Record<string, unknown> | undefined;
  const name = part.part === 'batting' && log.quilt.spelling === 'british' ? 'Wadding' : part.name;
  if (!given && part.part !== 'quilt') {
    return (
      <section class="patch part idle no-print">
        <h2>{name}</h2>
        <p class="quiet">Not reckoned: nothing of it was said.</p>
        <p class="row">
          <button
            type="button"
            onClick={() =>
              void changeLog(
                { type: 'set-estimate', path: part.part, value: part.begin },
                `${name} is reckoned`,
              )
            }
          >
            Reckon it
          </button>
        </p>
      </section>
    );
  }
  const worked = (answer as Record<string, unknown> | null)?.[part.part] as Worked | undefined;
  const assumptions = new Map(
    [...(worked?.assumptions ?? []), ...(answer?.assumptions ?? [])].map((one) => [one.field, one]),
  );
  return (
    <section class="patch part" aria-labelledby={`part-${part.part}`}>
      <h2 id={`part-${part.part}`}>{name}</h2>
      {props.children}
      <details class="no-print">
        <summary>Figures to set</summary>
        <div class="fields">
          {part.fields.map((field) => {
            const path = `${part.part}.${field.path}`;
            const assumed = assumptions.get(path);
            return (
              <OneFigure
                log={log}
                key={`${path}${JSON.stringify(given?.[field.path] ?? null)}`}
                field={field}
                path={path}
                value={given?.[field.path]}
                set={Object.hasOwn(log.estimateSettings, path)}
                source={sourceWords(
                  log,
                  sources.find((one) => one.path === path),
                )}
                assumed={assumed}
                unit={answer?.unit ?? log.quilt.unit}
                fault={fault?.field === path ? plainFault(fault, path) : undefined}
              />
            );
          })}
        </div>
      </details>
    </section>
  );
}

/** "measured: “sixty by seventy-two inches”". */
function sourceWords(log: Log, source: SpecSource | undefined): string {
  if (!source) return '';
  const words = source.noteIds?.[0] ? log.note(source.noteIds[0])?.note.text : undefined;
  const lead = source.from === 'assumed' ? 'assumed: ' : '';
  return `${lead}${source.why}${words ? `, “${words.length > 70 ? `${words.slice(0, 70)}…` : words}”` : ''}`;
}

/** "expected a number above 0, got -3", with the field's name only where it is another one that is at odds. */
const plainFault = ({ field, message }: SettingFault, path: string): string =>
  field === path && message.startsWith(`${field}: `) ? message.slice(field.length + 2) : message;

function OneFigure(props: {
  log: Log;
  /** Where the same figure stands on the page twice. */
  id?: string;
  field: EstimateField;
  path: string;
  value: unknown;
  set: boolean;
  /** Where the log has it from, in words. */
  source: string;
  assumed: { value: string; why: string } | undefined;
  unit: string;
  fault: string | undefined;
}): JSX.Element {
  const { log, field, path, value, set, assumed, unit } = props;
  const [wrong, setWrong] = useState<string | undefined>(undefined);
  const id = props.id ?? `estimate-${path}`;
  const keep = (text: string) => {
    const read = fieldValue(field, text);
    if ('fault' in read) {
      setWrong(read.fault);
      return;
    }
    // The server refuses it too; here it is said beside the field, before anything is sent.
    const made = faultOfSetting(log, path, read.value);
    if (made) {
      setWrong(plainFault(made, path));
      return;
    }
    setWrong(undefined);
    void changeLog(
      { type: 'set-estimate', path, value: read.value },
      read.value === null ? `${field.name}: back to what the log says` : `${field.name} set`,
    );
  };
  if (field.as === 'tick') {
    return (
      <label class="tick">
        <input
          type="checkbox"
          checked={Boolean(value)}
          onChange={(event) => keep(event.currentTarget.checked ? 'yes' : '')}
        />
        {field.name}
      </label>
    );
  }
  const suffix = field.as === 'length' ? ` (${unit})` : '';
  const source = set
    ? 'set by you'
    : assumed
      ? `assumed ${assumed.value}: ${assumed.why}`
      : value !== undefined
        ? props.source || 'from the log'
        : '';
  return (
    <div class={assumed && !set ? 'figure-field assumed' : 'figure-field'}>
      <Field
        id={id}
        label={field.name + suffix}
        hint={[field.hint, source].filter(Boolean).join('. ')}
        fault={wrong ?? props.fault}
      >
        {(a) =>
          typeof field.as === 'object' ? (
            <select
              {...a}
              value={fieldText(field, value)}
              onChange={(event) => keep(event.currentTarget.value)}
            >
              <option value="">{assumed ? `as assumed (${assumed.value})` : 'as usual'}</option>
              {Object.entries(field.as).map(([choice, words]) => (
                <option key={choice} value={choice}>
                  {words}
                </option>
              ))}
            </select>
          ) : (
            <input
              {...a}
              inputMode={field.as === 'text' ? 'text' : 'decimal'}
              defaultValue={fieldText(field, value)}
              placeholder={assumed?.value ?? ''}
              onChange={(event) => keep(event.currentTarget.value)}
            />
          )
        }
      </Field>
      {set ? (
        <button type="button" class="slight" onClick={() => keep('')}>
          Take mine back<span class="sr-only"> for {field.name}</span>
        </button>
      ) : null}
    </div>
  );
}

function PartAnswer(props: { part: string; answer: EstimateAnswer; log: Log }): JSX.Element | null {
  const { answer, part } = props;
  const { unit } = answer;
  const size = (w: number | undefined, l: number | undefined) =>
    w !== undefined && l !== undefined
      ? `${lengthWords(rounded(w))} × ${lengthWords(rounded(l))} ${unit}`
      : '';
  switch (part) {
    case 'quilt':
      return answer.sides ? (
        <>
          <p>
            {answer.sides.perimeter === undefined
              ? 'Not all four sides are measured'
              : `Perimeter ${lengthWords(rounded(answer.sides.perimeter))} ${unit}`}
            {answer.sides.worstCorner
              ? `; the ${answer.sides.worstCorner.corner} corner is ${answer.sides.worstCorner.offSquare.toFixed(1)}° off square`
              : ''}
            .
          </p>
          <Workings worked={answer.sides} />
        </>
      ) : null;
    case 'backing': {
      const back = answer.backing;
      if (!back) return null;
      return (
        <>
          {cloth(back) ? (
            <p class="headline">
              {cloth(back)}
              <span>
                {back.panels === 1
                  ? 'in one piece'
                  : `in ${back.panels} panels, joins ${back.seams === 'vertical' ? 'running down' : 'running across'}`}
                ; the back measures {size(back.width, back.length)}
              </span>
            </p>
          ) : null}
          {back.width && back.length && back.seams && back.joinsAt ? (
            <BackingDrawing
              width={back.width}
              length={back.length}
              seams={back.seams}
              joinsAt={back.joinsAt}
              unit={unit}
              palette={PAGE_PALETTE}
            />
          ) : null}
          {back.options && back.options.length > 1 ? (
            <p class="small">
              The other way, {back.options[1]!.panels} panels with joins{' '}
              {back.options[1]!.seams === 'vertical' ? 'running down' : 'running across'}:{' '}
              {cloth(back.options[1]!)}.
            </p>
          ) : null}
          <Workings worked={back} />
        </>
      );
    }
    case 'batting': {
      const batting = answer.batting;
      if (!batting) return null;
      return (
        <>
          <p class="headline">
            {size(batting.width, batting.length)}
            <span>
              {batting.package
                ? `the ${batting.package.name} package, ${size(batting.package.width, batting.package.length)}, holds it`
                : (batting.reason ?? '')}
              {batting.roll
                ? `; from the roll ${cloth(batting.roll as { yards?: number; metres?: number })}`
                : ''}
            </span>
          </p>
          <Workings worked={batting} />
        </>
      );
    }
    case 'binding': {
      const binding = answer.binding;
      if (!binding) return null;
      return (
        <>
          {cloth(binding) ? (
            <p class="headline">
              {cloth(binding)}
              <span>
                {binding.strips
                  ? `${binding.strips} strips, joined to ${lengthWords(rounded(binding.joined ?? 0))} ${unit}; `
                  : ''}
                {binding.side ? `a square of ${lengthWords(rounded(binding.side))} ${unit}; ` : ''}
                {lengthWords(rounded(binding.folded))} {unit} folded, {lengthWords(rounded(binding.front))}{' '}
                {unit} showing on the front
              </span>
            </p>
          ) : null}
          <Workings worked={binding} />
        </>
      );
    }
    case 'border': {
      const border = answer.border;
      if (!border) return null;
      return (
        <>
          {cloth(border) ? (
            <p class="headline">
              {cloth(border)}
              <span>
                {border.strips} strips cut {lengthWords(rounded(border.strip ?? 0))} {unit} wide
                {border.finished
                  ? `; the quilt then measures ${size(border.finished.width, border.finished.length)}`
                  : ''}
              </span>
            </p>
          ) : null}
          <Workings worked={border} />
        </>
      );
    }
    case 'ties': {
      const ties = answer.ties;
      if (!ties) return null;
      return (
        <>
          {ties.count !== undefined ? (
            <p class="headline">
              {ties.count} ties
              <span>
                {ties.yarnLength ? cloth(ties.yarnLength as { yards?: number; metres?: number }) : ''} of
                thread
                {ties.skeins ? `, ${ties.skeins} ${ties.skeins === 1 ? 'skein' : 'skeins'}` : ''}
                {ties.spacing
                  ? `; ${lengthWords(rounded(ties.spacing.across))} × ${lengthWords(rounded(ties.spacing.down))} ${unit} apart`
                  : ''}
              </span>
            </p>
          ) : null}
          <Workings worked={ties} />
        </>
      );
    }
    default:
      return null;
  }
}

const rounded = (n: number): number => Math.round(n * 8) / 8;
const hoursWords = (hours: number): string => spanWords(hours * 60);

/** Hours by treatment, as ranges; each may be left out to see what that changes. */
function Work(props: {
  log: Log;
  work: WorkAnswer;
  spec: EstimateSpec;
  left: ReadonlySet<number>;
  onLeft: (left: ReadonlySet<number>) => void;
}): JSX.Element {
  const { log, work, spec, left, onLeft } = props;
  const say = tradeLabels(log.quilt.spelling);
  const nameOf = (action: string) =>
    ACTIONS.includes(action as Action) ? say.toDo(action as Action) : action;
  const damageOf = (damage: string) =>
    FINDINGS.includes(damage as Finding) ? say.finding(damage as Finding) : damage;
  const most = Math.max(1, ...work.actions.map((one) => one.high));
  return (
    <section class="patch part wide" aria-labelledby="part-work">
      <h2 id="part-work">Hours</h2>
      <p class="headline">
        {hoursWords(work.hours.likely)}
        <span>
          between {hoursWords(work.hours.low)} and {hoursWords(work.hours.high)} in eight cases of ten;{' '}
          {hoursWords(work.hoursLeft.likely)} still to do
        </span>
      </p>
      <TableWrap name="Hours by treatment">
        <table class="work-table">
          <thead>
            <tr>
              <th>Treatment</th>
              <th class="figure">Planned</th>
              <th class="figure">Done</th>
              <th>Low, likely, high</th>
              <th class="figure">Likely</th>
            </tr>
          </thead>
          <tbody>
            {work.actions.map((one) => (
              <tr key={`${one.action}${one.damage ?? ''}`}>
                <td>
                  {nameOf(one.action)}
                  {one.damage ? ` (${damageOf(one.damage)})` : ''}
                </td>
                <td class="figure">{one.planned}</td>
                <td class="figure">{one.done}</td>
                <td>
                  <RangeBar
                    low={one.low}
                    likely={one.likely}
                    high={one.high}
                    most={most}
                    palette={PAGE_PALETTE}
                    label={`${spanWords(one.low)} to ${spanWords(one.high)}, likely ${spanWords(one.likely)}`}
                  />
                </td>
                <td class="figure">{spanWords(one.likely)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableWrap>
      {spec.work?.planned?.length ? (
        <fieldset class="no-print what-if">
          <legend>What if</legend>
          <p class="small quiet">
            Untick a treatment to see the hours and the price without it. The log stays as it is.
          </p>
          <div class="row">
            {spec.work.planned.map((item, i) => (
              <label class="tick" key={`${item.action}${item.damage ?? ''}`}>
                <input
                  type="checkbox"
                  checked={!left.has(i)}
                  onChange={() => {
                    const next = new Set(left);
                    if (!next.delete(i)) next.add(i);
                    onLeft(next);
                  }}
                />
                {nameOf(item.action)}
                {item.damage ? ` (${damageOf(item.damage)})` : ''}
                {item.count ? ` × ${item.count}` : ''}
              </label>
            ))}
          </div>
        </fieldset>
      ) : null}
      <p class="small quiet">{work.method}</p>
      <Workings worked={work} />
    </section>
  );
}

const CUTTING_NAMES = {
  patches: 'Patches',
  interfacing: 'Interfacing',
  overlay: 'Net',
  sashing: 'Sashing',
  label: 'Label',
} as const;

function Cutting(props: {
  name: keyof typeof CUTTING_NAMES;
  answer: CuttingAnswer;
  unit: 'in' | 'cm';
}): JSX.Element {
  const { name, answer, unit } = props;
  return (
    <section class="patch part wide" aria-labelledby={`part-${name}`}>
      <h2 id={`part-${name}`}>{CUTTING_NAMES[name]}</h2>
      <p class="headline">
        {cloth(answer)}
        <span>
          {answer.layout.length} pieces, {Math.round(answer.used * 100)} % of the cloth used
        </span>
      </p>
      {answer.plans.map((plan, i) => (
        <figure class="plan" key={`${plan.sheet}${plan.length}`}>
          <CuttingPlanDrawing plan={plan} unit={unit} palette={PAGE_PALETTE} id={`${name}-${i}`} />
          <figcaption class="small quiet">
            {plan.sheet}: cuts in the order of their numbers, from edge to edge of the cloth in hand. Keep the
            cutter closed when it is out of your hand.
          </figcaption>
          <details>
            <summary>Every cut with its measure</summary>
            <ol class="cuts">
              {plan.cuts.map((cut) => (
                <li key={cut.number}>
                  {cut.direction === 'across' ? 'across' : 'along'} at{' '}
                  {lengthWords(Math.round(cut.measure * 16) / 16)} {unit}
                </li>
              ))}
            </ol>
          </details>
        </figure>
      ))}
      <Workings worked={answer} />
    </section>
  );
}
