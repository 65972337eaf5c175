import type { MaterialUnit } from '../../../../shared/vocabulary.ts';
import { UNIT_WORDS } from '../../../lexicon/units.ts';

/** Units that stand without a number: "pkt pins", "spool of thread". */
export const UNIT_ALONE: Record<string, MaterialUnit> = Object.fromEntries(
  Object.entries(UNIT_WORDS).filter(
    ([word]) =>
      ![
        'in',
        '"',
        'y',
        'm',
        'g',
        'p',
        'length',
        'lengths',
        'square',
        'squares',
        'scrap',
        'scraps',
        'card',
        'cards',
        'box',
        'boxes',
        'mil',
      ].includes(word),
  ),
);

/** What goods come in that is no unit of the log. */
export const CONTAINERS = new Set(
  'can cans tin tins bottle bottles jar jars tub tubs bag bags tube tubes bunch set sets bundle bundles box boxes stick sticks bar bars hanks cards pairs pair bit bits scrap scraps strip strips'.split(
    ' ',
  ),
);
