import type { ThreadAnswer, ThreadLine } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothLength } from './cloth-length.ts';
import { decimal, exact } from './exact.ts';
import { SpecError } from './spec-error.ts';
import { STITCH_RATIOS, stitchRatioOf } from './stitch-ratios.ts';
import type { Working } from './working.ts';

type Thread = NonNullable<EstimateSpec['thread']>;

/** Thread by seam length x the stitch's ratio x (1 + waste), parted into top and bobbin. */
export const estimateThread = (thread: Thread, working: Working): ThreadAnswer => {
  const waste = working.choice(
    'waste',
    thread.waste,
    0.15,
    'thread maker, 10 to 20 % by edition, as excerpted',
  );
  const per = working.unit === 'in' ? 36 : 100;
  const unit = working.unit === 'in' ? 'yd' : 'm';
  if (thread.seams === undefined) {
    working.ask('Which seams are to be sewn: with which stitch, and how long?');
    return { exact: 0, exactFraction: '0', top: 0, bobbin: 0, seams: [], ...working.carried() };
  }
  let total = exact(0);
  let top = exact(0);
  let bobbin = exact(0);
  const seams: ThreadLine[] = thread.seams.flatMap((seam, i) => {
    if (seam.length === undefined) {
      working.ask(
        `How long is seam ${i + 1}${seam.stitch === undefined ? '' : ` (${seam.stitch})`}? It is left out until then.`,
      );
      return [];
    }
    const stitch =
      seam.ratio === undefined
        ? working.choice(`seams[${i}].stitch`, seam.stitch, 'lockstitch', 'no stitch was named')
        : (seam.stitch ?? 'given ratio');
    const known = stitchRatioOf(stitch);
    if (!known && seam.ratio === undefined) {
      throw new SpecError(
        `thread.seams[${i}].stitch`,
        `one of ${STITCH_RATIOS.map(({ names }) => names[0]).join(', ')}, or a ratio beside it`,
        `"${stitch}"`,
      );
    }
    const ratio = seam.ratio ?? known!.ratio;
    const share = exact(known?.top ?? 0.5);
    const source = seam.ratio === undefined ? known!.source : 'given';
    const length = exact(seam.length).mul(exact(ratio)).mul(exact(1).add(waste));
    const onTop = length.mul(share);
    const below = length.sub(onTop);
    total = total.add(length);
    top = top.add(onTop);
    bobbin = bobbin.add(below);
    if (seam.ratio === undefined)
      working.assume(
        `seams[${i}].ratio`,
        String(ratio),
        `${known!.iso4915 ? `ISO 4915 type ${known!.iso4915}; ` : ''}${source}`,
      );
    working.line(
      `${stitch}: ${seam.length} x ${ratio} x (1 + ${waste}) = ${decimal(length)} ${working.unit} = ${decimal(length.div(per))} ${unit}; top ${decimal(onTop.div(per))}, ${share.equals(1) ? 'no bobbin' : `below ${decimal(below.div(per))}`}`,
    );
    return [
      {
        stitch,
        ...(known?.iso4915 ? { iso4915: known.iso4915 } : {}),
        ratio,
        source,
        exact: decimal(length.div(per)),
        top: decimal(onTop.div(per)),
        bobbin: decimal(below.div(per)),
      },
    ];
  });
  working.line(
    `Together ${decimal(total.div(per))} ${unit}: top ${decimal(top.div(per))}, bobbin ${decimal(bobbin.div(per))}`,
  );
  let spools = {};
  if (thread.spool !== undefined) {
    const count = Number(total.div(per).div(thread.spool).ceil().valueOf());
    working.line(`Spools of ${thread.spool} ${unit}: ${count}`);
    spools = { spools: count };
  }
  return {
    ...clothLength(total, working.unit),
    top: decimal(top.div(per)),
    bobbin: decimal(bobbin.div(per)),
    seams,
    ...spools,
    ...working.carried(),
  };
};
