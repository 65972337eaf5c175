import type { Material, MaterialUnit } from '../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';

const CLOTH = new Set<Material>(['fabric', 'net', 'interfacing', 'backing', 'batting', 'binding']);
const YARN = new Set<Material>(['thread', 'tie-thread']);

/** Can so much of it be told in this unit: cloth by length, thread by the spool? */
export function measuredIn(material: Material | undefined, unit: MaterialUnit | undefined): boolean {
  if (!material) return false;
  if (!unit) return material === 'pins' || material === 'needle';
  if (unit === 'spool' || unit === 'skein' || unit === 'ball') return YARN.has(material);
  if (LENGTH_UNIT_SET.has(unit) || unit === 'fat-quarter' || unit === 'piece' || unit === 'roll')
    return CLOTH.has(material);
  return material === 'detergent' || material === 'adhesive' || material === 'other';
}
