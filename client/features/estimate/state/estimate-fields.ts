/** One figure of the estimate that a person may set: its path in the spec, and how it is asked for. */
export type EstimateField = {
  path: string;
  name: string;
  as: 'length' | 'number' | 'share' | 'money' | 'tick' | 'text' | { [value: string]: string };
  hint?: string;
};
export type EstimatePart = {
  part: string;
  name: string;
  /** What it is put in with where the spec does not have it yet. */
  begin: Record<string, unknown>;
  fields: EstimateField[];
};

const CLOTH: EstimateField = {
  path: 'usable',
  name: 'Usable width of the cloth',
  as: 'length',
  hint: 'Selvedges off',
};

/** The parts of the estimate in the order of the work, each with the figures most often set. */
export const ESTIMATE_PARTS: EstimatePart[] = [
  {
    part: 'quilt',
    name: 'The quilt',
    begin: {},
    fields: [
      { path: 'width', name: 'Width', as: 'length' },
      { path: 'length', name: 'Length', as: 'length' },
    ],
  },
  {
    part: 'backing',
    name: 'Backing',
    begin: {},
    fields: [
      CLOTH,
      { path: 'overage', name: 'Over on each side', as: 'length' },
      { path: 'seam', name: 'Seam of a join', as: 'length' },
      { path: 'offCentre', name: 'Keep joins off the centre', as: 'tick' },
      { path: 'oneWay', name: 'A print with one way up', as: 'tick' },
      { path: 'repeat', name: 'Repeat of the print, matched at the joins', as: 'length' },
    ],
  },
  {
    part: 'batting',
    name: 'Batting',
    begin: {},
    fields: [
      { path: 'overage', name: 'Over on each side', as: 'length' },
      {
        path: 'maxSpacing',
        name: 'Farthest apart it may be tied or quilted',
        as: 'length',
        hint: 'The wrapper says',
      },
      { path: 'roll', name: 'Width, where it comes from a roll', as: 'length' },
    ],
  },
  {
    part: 'binding',
    name: 'Binding',
    begin: {},
    fields: [
      { path: 'strip', name: 'Width of a cut strip', as: 'length' },
      CLOTH,
      { path: 'allowance', name: 'Allowance on the way round', as: 'length' },
      { path: 'cut', name: 'Cut', as: { straight: 'on the straight', bias: 'on the bias' } },
      { path: 'join', name: 'Joined', as: { diagonal: 'on the diagonal', straight: 'straight' } },
      { path: 'seam', name: 'Seam', as: 'length' },
    ],
  },
  {
    part: 'border',
    name: 'Border',
    begin: { width: 4 },
    fields: [
      { path: 'width', name: 'Finished width', as: 'length' },
      {
        path: 'corner',
        name: 'Corners',
        as: { butted: 'butted', mitred: 'mitred', cornerstones: 'with cornerstones' },
      },
      CLOTH,
      { path: 'seam', name: 'Seam', as: 'length' },
      { path: 'repeat', name: 'Repeat of the print, matched at the joins', as: 'length' },
    ],
  },
  {
    part: 'ties',
    name: 'Ties',
    begin: { every: 'block' },
    fields: [
      { path: 'every', name: 'One every', as: 'text', hint: '“block”, or a distance such as 4' },
      { path: 'tail', name: 'Tail left at each end', as: 'length' },
      {
        path: 'skein',
        name: 'Length of a skein',
        as: 'number',
        hint: 'Yards for inches, metres for centimetres',
      },
    ],
  },
  {
    part: 'price',
    name: 'Price',
    begin: {},
    fields: [
      { path: 'hourly', name: 'For an hour', as: 'money' },
      { path: 'markup', name: 'On top of materials', as: 'share', hint: 'Percent' },
      { path: 'contingency', name: 'For the unforeseen', as: 'share', hint: 'Percent' },
      { path: 'tax', name: 'Tax', as: 'share', hint: 'Percent; this is no tax advice' },
      { path: 'deposit', name: 'Deposit', as: 'share', hint: 'Percent of the whole' },
      { path: 'agreed', name: 'Agreed with the owner', as: 'money' },
    ],
  },
];

/** What a field shows for a value of the spec. */
export function fieldText(field: EstimateField, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (field.as === 'share') return String(Math.round(Number(value) * 10_000) / 100);
  if (field.as === 'tick') return value ? 'yes' : '';
  return String(value);
}

/** The value that a field's text says, null where it is emptied; or what is wrong with it. */
export function fieldValue(field: EstimateField, text: string): { value: unknown } | { fault: string } {
  const words = text.trim();
  if (field.as === 'tick') return { value: words === 'yes' ? true : null };
  if (!words) return { value: null };
  if (typeof field.as === 'object') return { value: words };
  if (field.as === 'text') {
    const number = Number(words.replace(',', '.'));
    return { value: Number.isFinite(number) ? number : words.toLowerCase() };
  }
  if (field.as === 'money') {
    return /^\d{1,12}([.,]\d{1,6})?$/.test(words)
      ? { value: words.replace(',', '.') }
      : { fault: 'An amount, such as 24.00.' };
  }
  const number = Number(words.replace(',', '.'));
  if (!Number.isFinite(number) || number < 0) return { fault: 'A number, such as 4 or 2.5.' };
  if (field.as === 'share') {
    return number > 100 && !field.path.endsWith('markup')
      ? { fault: 'From 0 to 100 percent.' }
      : { value: number / 100 };
  }
  return { value: number };
}
