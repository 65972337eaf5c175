import type { Entry } from '../../../shared/entry.ts';

const PART = String.raw`(?:and |so |um |er |the )*(top|border|backing|batting|it|quilt)(?: (?:'s|is|measures|came to|comes to|was|about|around|say|,))*`;
const NOT_KNOWN = String.raw`(?:(?:um |er |, )*(?:i |honestly )*(?:do n't know|ca n't remember|do n't remember|forget|forgot|have forgotten|'ve forgotten|could n't say|not sure|no idea|dunno)(?: (?:what|how (?:wide|long|deep|much|big)))?(?: (?:it is|it was|now))?|something(?: or (?:other|another))?|whatever|what 's it|i do n't know what)`;
/** "top's 60 by something", "it measures 72 by I forget what": one side is known. */
const ONE_SIDE = new RegExp(
  String.raw`^(?:measured )?${PART} (\d+(?:\.\d+)?)(?: (inch|inches|in|cm|"))?(?: (?:wide|across))? (?:by|x) ${NOT_KNOWN}(?: [.!])?$`,
);
/** "the border's I don't know how wide": its measure was not kept. */
const NO_SIDE = new RegExp(
  String.raw`^(?:and |so |um |er |the )*(border)(?: (?:'s|is|was))+ ${NOT_KNOWN}(?: [.!])?$`,
);

/** What a note that tells a length and owns to not knowing it has of measurements: the side that is wanting is asked for. */
export function halfKnown(words: string): Entry[] | undefined {
  if (NO_SIDE.test(words) && /\bwide\b/.test(words))
    return [{ kind: 'measurement', of: 'border', places: ['border'] }];
  const [, part, value, unit] = ONE_SIDE.exec(words) ?? [];
  if (!part || !value) return undefined;
  const places = [part === 'it' ? 'quilt' : part];
  return [
    {
      kind: 'measurement',
      of: 'width',
      value: Number(value),
      ...(unit ? { unit: unit === 'cm' ? ('cm' as const) : ('in' as const) } : {}),
      places,
    },
    { kind: 'measurement', of: 'length', places },
  ];
}
