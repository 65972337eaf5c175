import { EstimateSpec, fieldNames } from '../../shared/estimate-spec.ts';
import { readSpec } from './read-spec.ts';

/** How many letters apart two names are, two swapped neighbours counting once. */
const lettersApart = (a: string, b: string): number => {
  const rows: number[][] = Array.from({ length: a.length + 1 }, (_, i) => [
    i,
    ...Array<number>(b.length).fill(0),
  ]);
  for (let j = 0; j <= b.length; j++) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const other = a[i - 1] === b[j - 1] ? 0 : 1;
      rows[i]![j] = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, rows[i - 1]![j - 1]! + other);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        rows[i]![j] = Math.min(rows[i]![j]!, rows[i - 2]![j - 2]! + 1);
    }
  }
  return rows[a.length]![b.length]!;
};

const plain = (name: string): string => name.toLowerCase().replace(/[_\s-]/g, '');

/** Whether a name is a slip of the pen for a field of the estimate, such as "useable" or "max_spacing". */
const isSlip = (name: string): boolean =>
  fieldNames().some((field) => {
    if (field === name) return false;
    const apart = lettersApart(plain(name), plain(field));
    return apart === 0 || (apart === 1 && field.length >= 4) || (apart === 2 && field.length >= 8);
  });

/**
 * A spec written by another hand: fields that are not known here are passed over and named, so that one
 * more field does not cost the whole answer. What looks like a slip for a known field is refused, for
 * the figure was meant. Throws SpecError as readSpec does.
 */
export const readForeignSpec = (input: unknown): { spec: EstimateSpec; passedOver: string[] } => {
  const passedOver: string[] = [];
  let known = input;
  for (;;) {
    const read = EstimateSpec.safeParse(known);
    const strangers = read.success
      ? []
      : read.error.issues.flatMap((issue) =>
          issue.code === 'unrecognized_keys'
            ? issue.keys.filter((key) => !isSlip(key)).map((key) => [...issue.path, key])
            : [],
        );
    if (strangers.length === 0) return { spec: readSpec(known), passedOver };
    known = structuredClone(known);
    for (const path of strangers) {
      const holder = path.slice(0, -1).reduce((at, key) => at[key as never], known as object);
      delete holder[path.at(-1) as never];
      passedOver.push(
        path
          .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
          .join('')
          .slice(1),
      );
    }
  }
};
