/** Length of thread per length of seam. */
export interface StitchRatio {
  /** Class of ISO 4915; none for a stitch that it has no number for. */
  iso4915?: string;
  ratio: number;
  /** Share of the thread that goes on top (the needle); the rest is bobbin or looper. */
  top: number;
  source: string;
  names: readonly string[];
}

export const STITCH_RATIOS: readonly StitchRatio[] = [
  {
    iso4915: '301',
    ratio: 2.5,
    top: 0.5,
    source: 'thread maker, as excerpted',
    names: ['lockstitch', '301', 'machine', 'straight', 'in-the-ditch', 'plain'],
  },
  {
    iso4915: '304',
    ratio: 5.5,
    top: 0.5,
    source: 'thread maker, as excerpted; another of its tables has 7.0',
    names: ['zigzag', '304'],
  },
  { iso4915: '504', ratio: 14, top: 0.2, source: 'from memory', names: ['overlock', '504', 'overlock-3'] },
  { iso4915: '514', ratio: 20, top: 0.25, source: 'from memory, 18 to 20', names: ['514', 'overlock-4'] },
  { iso4915: '101', ratio: 4, top: 1, source: 'from memory', names: ['chainstitch', '101'] },
  { iso4915: '401', ratio: 5.5, top: 0.25, source: 'from memory', names: ['401', 'two-thread-chainstitch'] },
  {
    iso4915: '209',
    ratio: 1.3,
    top: 1,
    source: 'our own arithmetic: along the cloth and through it',
    names: ['running', '209', 'hand', 'quilting', 'basting'],
  },
  {
    iso4915: '205',
    ratio: 2.5,
    top: 1,
    source: 'our own arithmetic: each stitch goes twice under',
    names: ['backstitch', '205'],
  },
  { ratio: 2, top: 1, source: 'our own arithmetic', names: ['ladder', 'slip-stitch'] },
  { ratio: 3, top: 1, source: 'our own arithmetic', names: ['whipstitch'] },
  { ratio: 4, top: 1, source: 'our own arithmetic', names: ['blanket'] },
  { ratio: 4, top: 1, source: 'our own arithmetic', names: ['herringbone'] },
  { ratio: 2.5, top: 1, source: 'our own arithmetic: the laid thread and its ties', names: ['couching'] },
];

/** Other names of the same stitches, as people write them. */
const ALSO: Readonly<Record<string, string>> = {
  lock: 'lockstitch',
  topstitch: 'lockstitch',
  top: 'lockstitch',
  whip: 'whipstitch',
  overcast: 'whipstitch',
  slip: 'slip-stitch',
  blind: 'ladder',
  invisible: 'ladder',
  back: 'backstitch',
  chain: 'chainstitch',
  catch: 'herringbone',
  buttonhole: 'blanket',
  tacking: 'basting',
  couched: 'couching',
  serger: 'overlock',
};

/** The ratio of a stitch by its name or its ISO 4915 number: "zig-zag stitch", "ISO 4915 301" and "301" are all known. */
export const stitchRatioOf = (stitch: string): StitchRatio | undefined => {
  const wanted = stitch.trim().toLowerCase();
  const bare = wanted
    .replace(/iso\s*(4915)?[\s:-]*|\b(type|class)\b/g, '')
    .replace(/zig[\s-]+zag/, 'zigzag')
    .replace(/[\s-]*stitch(es|ed)?$/, '')
    .trim();
  const names = [wanted, bare, `${bare}stitch`, bare.replace(/\s+/g, '-'), ALSO[bare]];
  return STITCH_RATIOS.find((ratio) => names.some((one) => one !== undefined && ratio.names.includes(one)));
};
