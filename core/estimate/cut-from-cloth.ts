import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import { type ClothSpec, clothOf } from './cloth.ts';
import { clothLength, clothLengthLine } from './cloth-length.ts';
import { type CutPiece, layOut } from './cutting/lay-out.ts';
import { decimal, exact } from './exact.ts';
import type { Working } from './working.ts';

export interface ScrapSpec {
  width: number;
  length: number;
  count?: number | undefined;
  name?: string | undefined;
}

/** Lays pieces of cut size out on the cloth, scraps first, and answers with cloth, layout and cuts. */
export const cutFromCloth = (
  spec: ClothSpec & { scraps?: readonly ScrapSpec[] | undefined },
  pieces: readonly CutPiece[],
  usual: { usableIn: number; why: string; fabric: string },
  working: Working,
): CuttingAnswer => {
  const cloth = clothOf(spec, working, usual);
  if (pieces.length === 0) {
    // Nothing to cut, or nothing that is known yet: no cloth is named.
    return {
      exact: 0,
      exactFraction: '0',
      used: 0,
      layout: [],
      cuts: [],
      plans: [],
      width: Number(cloth.usable.valueOf()),
      length: 0,
      fabric: cloth.fabric,
      ...working.carried(),
    };
  }
  for (const { width, length, count, turnable, name } of pieces) {
    working.line(
      `Cut ${count} of ${working.show(width)} x ${working.show(length)}${name ? ` (${name})` : ''}${turnable ? '' : ', grain kept'}`,
    );
  }
  const sheets = (spec.scraps ?? []).flatMap((scrap, i) =>
    Array.from({ length: scrap.count ?? 1 }, (_, n) => ({
      name: `${scrap.name ?? `scrap ${i + 1}`}${(scrap.count ?? 1) > 1 ? ` no. ${n + 1}` : ''}`,
      width: exact(scrap.width),
      length: exact(scrap.length),
    })),
  );
  const { length, plans, fromScraps, pieceArea, scrapArea } = layOut(
    pieces,
    cloth.usable,
    sheets,
    `${working.part}.pieces`,
  );
  if (sheets.length > 0)
    working.line(
      `From the odd pieces first: ${fromScraps} cut from ${plans.filter(({ sheet }) => sheet !== 'cloth').length} of them`,
    );
  const clothArea = cloth.usable.mul(length).add(scrapArea);
  const used = pieceArea.div(clothArea);
  working.line(
    `Laid out edge to edge on ${working.show(cloth.usable)} of width: ${working.show(length)} of length`,
  );
  working.line(`Used: pieces ${decimal(pieceArea)} / cloth ${decimal(clothArea)} = ${decimal(used)}`);
  const bought = length.equals(0) ? length : cloth.lengthToBuy(length);
  working.line(clothLengthLine(bought, working.unit));
  const onCloth = plans.find(({ sheet }) => sheet === 'cloth');
  return {
    ...clothLength(bought, working.unit),
    used: decimal(used, 4),
    layout: onCloth?.layout ?? [],
    cuts: onCloth?.cuts ?? [],
    plans,
    width: Number(cloth.usable.valueOf()),
    length: Number(length.valueOf()),
    fabric: cloth.fabric,
    ...working.carried(),
  };
};
