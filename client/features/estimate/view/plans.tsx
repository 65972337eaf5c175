import type { ComponentChildren, JSX } from 'preact';
import { type Plan, specOfPlan } from '../../../../core/estimate/spec-of-plan.ts';
import type { Log } from '../../../../core/log/log.ts';
import type { EstimateAnswer } from '../../../../shared/estimate-answer.ts';
import type { EstimatePlan } from '../../../../shared/estimate-plan.ts';
import type { EstimateSpec } from '../../../../shared/estimate-spec.ts';
import { lengthWords, moneyWords, spanWords } from '../../../words/figure-words.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { TableWrap } from '../../shell/view/table-wrap.tsx';
import { useReckoned } from '../state/estimate-of-log.ts';

const MOST_PLANS = 4;
const BEGINNING: readonly EstimatePlan[] = [{ name: 'As planned' }, { name: 'Quilted', hold: 'quilt' }];

const CHOICES = {
  hold: { name: 'Layers held by', as: { tie: 'ties', quilt: 'quilting' } },
  replace: { name: 'Blocks to replace', as: { patch: 'patched', leave: 'left as they are' } },
  binding: { name: 'Binding cut', as: { straight: 'on the straight', bias: 'on the bias' } },
} as const;
const FIGURES = {
  lineSpacing: 'Quilting lines apart',
  backingUsable: 'Usable width of the backing',
  battingRoll: 'Batting from a roll this wide',
} as const;
const CLOTH_PRICE = { in: 'Cloth, price of a yard', cm: 'Cloth, price of a metre' } as const;

const lengthOf = (cloth: { yards?: number; metres?: number } | undefined): string =>
  cloth?.yards !== undefined
    ? `${lengthWords(cloth.yards)} yd`
    : cloth?.metres !== undefined
      ? `${cloth.metres} m`
      : '–';

type Result = { name: string; of: (answer: EstimateAnswer, plan: EstimatePlan) => string };
const RESULTS: readonly Result[] = [
  { name: 'Hours, likely', of: ({ work }) => (work ? spanWords(work.hours.likely * 60) : '–') },
  {
    name: 'Hours, eight cases of ten',
    of: ({ work }) =>
      work ? `${spanWords(work.hours.low * 60)} to ${spanWords(work.hours.high * 60)}` : '–',
  },
  { name: 'Still to do', of: ({ work }) => (work ? spanWords(work.hoursLeft.likely * 60) : '–') },
  {
    name: 'Price',
    of: ({ price }) => {
      if (!price) return '–';
      const money = moneyWords(price.total.minor / 10 ** price.digits, price.currency);
      return price.lacksLabour ? `${money} without the work` : money;
    },
  },
  {
    name: 'Price, from and to',
    of: ({ price }) =>
      price?.range && !price.lacksLabour
        ? [price.range.low, price.range.high]
            .map(({ minor }) => moneyWords(minor / 10 ** price.digits, price.currency))
            .join(' to ')
        : '–',
  },
  {
    name: 'Backing',
    of: ({ backing }) =>
      backing?.panels === undefined
        ? '–'
        : `${lengthOf(backing)}, ${backing.panels === 1 ? 'one piece' : `${backing.panels} panels`}`,
  },
  {
    name: 'Batting',
    of: ({ batting }) =>
      batting?.roll
        ? `${lengthOf(batting.roll)} from the roll`
        : (batting?.package?.name ?? (batting?.width === undefined ? '–' : 'no package holds it')),
  },
  { name: 'Binding', of: ({ binding }) => lengthOf(binding) },
  {
    name: 'Cloth of backing and binding, at that price',
    of: ({ backing, binding, price }, { clothPrice }) => {
      const lengths = [backing, binding].map((cloth) => cloth?.yards ?? cloth?.metres);
      if (clothPrice === undefined || !price || lengths.every((length) => length === undefined)) return '–';
      const length = lengths.reduce<number>((sum, one) => sum + (one ?? 0), 0);
      return `${lengthWords(length)} × ${clothPrice} = ${moneyWords(length * clothPrice, price.currency)}`;
    },
  },
  {
    name: 'Ties or quilting',
    of: ({ ties, quilting }) =>
      [
        ties?.count === undefined ? '' : `${ties.count} ties`,
        quilting?.thread ? `${lengthOf(quilting.thread)} of thread` : '',
      ]
        .filter(Boolean)
        .join(', ') || '–',
  },
];

/** Two or more ways of doing the work next to each other, for the owner to choose between. */
export function Plans(props: { log: Log; spec: EstimateSpec }): JSX.Element {
  const { log, spec } = props;
  const plans = log.plans ?? BEGINNING;
  const put = (next: readonly EstimatePlan[]) => {
    void changeLog({ type: 'set-plans', plans: [...next] }, 'The plans are changed.');
  };
  const change = <K extends keyof EstimatePlan>(at: number, key: K, value: EstimatePlan[K] | undefined) =>
    put(
      plans.map((plan, i) => {
        if (i !== at) return plan;
        const next = { ...plan };
        if (value === undefined) delete next[key];
        else next[key] = value;
        return next;
      }),
    );
  const answers = [
    usePlan(spec, plans[0]),
    usePlan(spec, plans[1]),
    usePlan(spec, plans[2]),
    usePlan(spec, plans[3]),
  ];
  const unit = spec.unit ?? 'in';
  const row = (name: string, cell: (plan: EstimatePlan, i: number) => ComponentChildren, class_ = '') => (
    <tr class={class_} key={name}>
      <th scope="row">{name}</th>
      {plans.map((plan, i) => (
        <td key={i}>{cell(plan, i)}</td>
      ))}
    </tr>
  );
  const figureRow = (name: string, key: keyof typeof FIGURES | 'clothPrice') =>
    row(name, (plan, i) => (
      <input
        aria-label={`${name}, ${plan.name}`}
        inputMode="decimal"
        value={plan[key] ?? ''}
        placeholder={key === 'clothPrice' ? '' : 'as planned'}
        onChange={(event) => {
          const number = Number(event.currentTarget.value.replace(',', '.'));
          change(i, key, number > 0 ? number : undefined);
        }}
      />
    ));
  return (
    <section class="patch part wide" aria-labelledby="part-plans">
      <h2 id="part-plans">Plans side by side</h2>
      <p class="quiet">
        What the same quilt comes to done otherwise. Only what is still to do is changed; what is done stays
        as it is. The plans are kept with the quilt. Give the price of the cloth, and what it comes to stands
        beside its length; in the whole price it is once it was bought.
      </p>
      <TableWrap name="Plans side by side">
        <table class="plans">
          <thead>
            <tr>
              <td />
              {plans.map((plan, i) => (
                <th scope="col" key={i}>
                  <input
                    aria-label={`Name of plan ${i + 1}`}
                    value={plan.name}
                    maxLength={40}
                    onChange={(event) =>
                      change(i, 'name', event.currentTarget.value.trim() || `Plan ${i + 1}`)
                    }
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {(Object.keys(CHOICES) as (keyof typeof CHOICES)[]).map((key) =>
              row(CHOICES[key].name, (plan, i) => (
                <select
                  aria-label={`${CHOICES[key].name}, ${plan.name}`}
                  value={plan[key] ?? ''}
                  onChange={(event) =>
                    change(i, key, (event.currentTarget.value || undefined) as EstimatePlan[typeof key])
                  }
                >
                  <option value="">as planned</option>
                  {Object.entries(CHOICES[key].as).map(([value, words]) => (
                    <option key={value} value={value}>
                      {words}
                    </option>
                  ))}
                </select>
              )),
            )}
            {(Object.keys(FIGURES) as (keyof typeof FIGURES)[]).map((key) =>
              figureRow(`${FIGURES[key]} (${unit})`, key),
            )}
            {figureRow(CLOTH_PRICE[unit], 'clothPrice')}
          </tbody>
          <tbody class="results">
            {RESULTS.map(({ name, of }) =>
              row(
                name,
                (plan, i) => {
                  const reckoned = answers[i]!;
                  if (!reckoned) return '…';
                  return 'fault' in reckoned ? '–' : of(reckoned.answer, plan);
                },
                'result',
              ),
            )}
          </tbody>
        </table>
      </TableWrap>
      {answers.slice(0, plans.length).map((reckoned, i) =>
        reckoned && 'fault' in reckoned ? (
          <p class="notice bad" role="alert" key={plans[i]!.name}>
            {plans[i]!.name}: {reckoned.fault.message}
          </p>
        ) : null,
      )}
      <p class="row no-print">
        {plans.length < MOST_PLANS ? (
          <button type="button" onClick={() => put([...plans, { name: `Plan ${plans.length + 1}` }])}>
            Add a plan
          </button>
        ) : null}
        {plans.length > 2 ? (
          <button type="button" class="slight" onClick={() => put(plans.slice(0, -1))}>
            Take {plans.at(-1)!.name} away
          </button>
        ) : null}
      </p>
    </section>
  );
}

/** What a plan comes to; a place without a plan costs nothing. */
function usePlan(
  spec: EstimateSpec,
  plan: EstimatePlan | undefined,
): ReturnType<typeof useReckoned>['reckoned'] {
  const { reckoned, busy } = useReckoned(plan ? specOfPlan(spec, bare(plan)) : {});
  return busy ? null : reckoned;
}

/** A plan's name and the price of its cloth are not part of what it changes, nor of the key that its answer is kept under. */
const bare = ({ name: _name, clothPrice: _price, ...rest }: EstimatePlan): Plan => rest;
