import type { Action, Finding } from '../../shared/vocabulary.ts';
import type { RecordView } from './record-view.ts';

export type Caution = { id: string; text: string };

type Rule = {
  id: string;
  /** For the letter to the owner, for the proposal, or both. */
  in: readonly ('letter' | 'proposal')[];
  when: (facts: Facts) => boolean;
  text: string;
};
type Facts = {
  found: (finding: Finding) => boolean;
  action: (action: Action, states: readonly string[]) => boolean;
  adhesive: boolean;
  silk: boolean;
  green: boolean;
};

const PLANNED = ['planned', 'considering', 'doing', 'done'];
const always = (): boolean => true;

/**
 * When each caution is due, and its words (British spelling; wording rules turn it into American).
 * They give the usual practice and defer to conservators and local rules. Sources, as excerpted:
 * crib: Moon, Pediatrics 150(1) e2022057990, 2022; pets: University of Florida, 2013; washing: CCI Notes
 * 13/14, with the University of Nebraska extension disagreeing for sturdy quilts; mould: CCI Notes 13/15
 * and its mould guidance; irons: practitioner page; weighted silk: Smithsonian; insects: Textile
 * Museum; mothballs: International Quilt Museum; vacuuming: the same; adhesives: Evenson and Crews, JAIC
 * 44(1), 2005, and AIC textile group VI-I; needles: common practice, no source; green dyes: from memory.
 */
const RULES: readonly Rule[] = [
  {
    id: 'crib',
    in: ['letter'],
    when: always,
    text: 'Please do not lay it over or under a sleeping baby: safe-sleep advice is that no soft bedding goes into a cot or crib.',
  },
  {
    id: 'pets',
    in: ['letter'],
    when: ({ action }) => action('tie', ['done', 'planned']),
    text: 'Keep it from cats and dogs: a loose tie or thread that is swallowed can need surgery.',
  },
  {
    id: 'needles',
    in: ['letter'],
    when: always,
    text: 'Needles and pins are counted out and in again, but old quilts can hide old ones. Run your hand over it slowly, or a magnet, before anyone lies on it.',
  },
  {
    id: 'irons',
    in: ['letter'],
    when: always,
    text: 'Do not iron it. Heat and pressure break old fibres and set stains.',
  },
  {
    id: 'adhesive-owner',
    in: ['letter'],
    when: ({ adhesive }) => adhesive,
    text: 'There is an adhesive support in it (see the record of treatment). It must not be ironed, dry-cleaned or steamed; show the record to anyone who works on it later.',
  },
  {
    id: 'mould-owner',
    in: ['letter'],
    when: ({ found }) => found('mildew'),
    text: 'Mould was found. Keep the quilt below 60% relative humidity, look at it twice a year, and let nobody with asthma or a mould allergy handle it. If it smells musty again, bag it, keep it from other textiles and ask a conservator.',
  },
  {
    id: 'insects-owner',
    in: ['letter'],
    when: ({ found }) => found('insect-damage'),
    text: 'Insects have been at it. Look it over every spring and autumn. If you see grubs, cases or fresh holes, seal it in a bag and ask a conservator; mothballs are not recommended.',
  },
  {
    id: 'green-dye',
    in: ['letter', 'proposal'],
    when: ({ green }) => green,
    text: 'Some old greens were made with arsenic. It cannot be told by eye: wear gloves, wash your hands, and have it tested if it is to be handled much.',
  },
  {
    id: 'wash-risk',
    in: ['proposal'],
    when: ({ action }) => action('wash', PLANNED),
    text: 'Washing cannot be undone. Old dyes can run even after a test. A quilt that is very fragile, has many different fabrics, was never washed or has already bled should not be washed; a conservator’s advice is to be sought first.',
  },
  {
    id: 'bleed-risk',
    in: ['proposal'],
    when: ({ found, action }) => found('dye-bleed') && !action('wash', PLANNED),
    text: 'Dyes have already run. No water is to be used on the piece without a conservator’s advice.',
  },
  {
    id: 'mould-risk',
    in: ['proposal'],
    when: ({ found }) => found('mildew'),
    text: 'Mould can harm people. The piece is kept apart, handled with a mask and gloves, and cleaned only when dry and dormant; an area above 3 square metres is work for specialists.',
  },
  {
    id: 'adhesive-risk',
    in: ['proposal'],
    when: ({ adhesive }) => adhesive,
    text: 'Adhesive and fusible supports are rarely fully reversible and may stiffen or discolour with age. They are for pieces in use, not for heirlooms meant to last generations; stitched support is the alternative.',
  },
  {
    id: 'silk-risk',
    in: ['proposal', 'letter'],
    when: ({ silk }) => silk,
    text: 'Splitting silk cannot be stopped, only slowed: keep it from light, and neither wash nor dry-clean it.',
  },
  {
    id: 'replace-risk',
    in: ['proposal'],
    when: ({ action }) => action('replace', PLANNED),
    text: 'Replacing means that old cloth is cut out. It cannot be put back; what is taken out is kept and returned with the quilt.',
  },
  {
    id: 'press-risk',
    in: ['proposal'],
    when: ({ action }) => action('press', PLANNED),
    text: 'Pressing is kept to new cloth; old cloth is not pressed with a hot iron.',
  },
  {
    id: 'clean-risk',
    in: ['proposal'],
    when: ({ action }) => action('clean', PLANNED),
    text: 'Surface cleaning is by low suction through a screen, and stops where cloth or stitching moves.',
  },
];

/** The cautions that these facts call for, in the quilt's spelling. */
export function cautions(view: RecordView, paper: 'letter' | 'proposal'): Caution[] {
  const cloth = [...view.findings, ...view.treatments].map((fact) => fact.fabric ?? '');
  const names = Object.keys(view.grid.fabrics ?? {});
  const facts: Facts = {
    found: (finding) => view.findings.some((fact) => fact.finding === finding),
    action: (action, states) =>
      view.treatments.some((fact) => fact.action === action && states.includes(fact.state)),
    adhesive: view.materials.some(
      (fact) =>
        (fact.material === 'adhesive' || fact.material === 'interfacing') &&
        (fact.use === 'used' || (paper === 'proposal' && fact.use !== 'on-hand')),
    ),
    silk:
      [...cloth, ...names].some((name) => /\bsilks?\b/i.test(name)) &&
      view.findings.some((fact) => fact.finding === 'shattered'),
    green: [...cloth, ...names].some((name) => /\b(?:poison|emerald|arsenic|overdyed) green\b/i.test(name)),
  };
  return RULES.filter((rule) => rule.in.includes(paper) && rule.when(facts)).map(({ id, text }) => ({
    id,
    text: view.terms.spell(text),
  }));
}

/**
 * How far a treatment can be undone. Stitched work can be unpicked; adhesives rarely fully (AIC textile group
 * VI-I, as excerpted); cutting out, washing and cleaning not at all (common practice, no source).
 */
export const REVERSIBILITY: Partial<Record<Action, string>> = {
  replace: 'Not reversible: the old cloth is cut out. The pieces taken out are kept.',
  patch: 'Reversible: the patch is sewn on over the old cloth and can be unpicked.',
  stabilize: 'Sewn supports can be unpicked; fusible ones are rarely fully reversible.',
  overlay: 'Reversible: the net is sewn down and can be unpicked.',
  resew: 'Reversible: the new stitches can be unpicked.',
  darn: 'Mostly reversible: the new yarns can be drawn out with care.',
  remove: 'Not reversible as it was, though what is taken off is kept and noted.',
  clean: 'Not reversible.',
  wash: 'Not reversible.',
  press: 'Not reversible.',
  'add-border': 'Reversible: sewn on, and can be unpicked.',
  baste: 'Reversible: it comes out again when the work is done.',
  tie: 'Reversible: ties can be cut and drawn out.',
  quilt: 'Reversible with patience: the stitches can be unpicked, the needle holes remain.',
  bind: 'Reversible: binding can be unpicked; the edge is not cut unless trimming is named.',
  trim: 'Not reversible.',
  'square-up': 'Not reversible where cloth is cut away.',
  label: 'Reversible: sewn on.',
};
