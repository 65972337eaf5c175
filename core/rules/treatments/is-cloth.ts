import type { Item } from '../item.ts';

/** Cloth that can be laid on, in or behind, by its name or by a word for a piece of it. */
export const isCloth = (item: Item | undefined): boolean =>
  item !== undefined &&
  (item.material === 'fabric' ||
    item.material === 'interfacing' ||
    item.material === 'backing' ||
    item.fabric !== undefined ||
    item.w === 'patch' ||
    item.w === 'piece' ||
    /^(bit|scrap|square|length|offcut|remnant|strip|support|pillowcase|shirt|shirting|sheet|sheeting|tablecloth|hanky|handkerchief|tea towel|dishcloth|curtain|dress|apron)$/.test(
      item.w,
    ));

/** Net, tulle or crepeline as a stuff, not a cloth of the quilt so named. */
export const isNet = (item: Item | undefined): boolean => item?.material === 'net' && !item.fabric;
