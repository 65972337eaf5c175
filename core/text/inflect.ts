export type VerbForms = { base: string[]; past: string[]; ing: string[] };

const DOUBLE = /[^aeiou][aeiou][bdgmnprt]$/;
/** Verbs of two or more beats keep a single consonant ("label" does not in Britain). */
const SINGLE = new Set(['couch', 'soften', 'launder', 'sandwich', 'secure', 'open', 'layer', 'iron']);

/** The forms of an English verb; irregular ones are written "base/past/participle/ing". */
export function inflect(row: string): VerbForms {
  if (row.includes('/')) {
    const [base, past, participle, ing] = row.split('/') as [string, string, string, string];
    return { base: [base, third(base)], past: [...new Set([past, participle])], ing: [ing] };
  }
  const [head, ...rest] = row.split(' ') as [string, ...string[]];
  const tail = rest.length ? ` ${rest.join(' ')}` : '';
  const add = (forms: string[]): string[] => forms.map((f) => f + tail);
  if (head.endsWith('e'))
    return { base: add([head, `${head}s`]), past: add([`${head}d`]), ing: add([`${head.slice(0, -1)}ing`]) };
  if (/[^aeiou]y$/.test(head))
    return {
      base: add([head, `${head.slice(0, -1)}ies`]),
      past: add([`${head.slice(0, -1)}ied`]),
      ing: add([`${head}ing`]),
    };
  const doubles =
    !SINGLE.has(head) &&
    (head === 'label' ||
      (DOUBLE.test(head) && syllables(head) === 1) ||
      head === 'zigzag' ||
      head === 'unpin');
  if (doubles) {
    const last = head.at(-1)!;
    const forms = {
      base: add([head, third(head)]),
      past: add([`${head + last}ed`]),
      ing: add([`${head + last}ing`]),
    };
    if (head === 'label') {
      forms.past.push(...add(['labeled']));
      forms.ing.push(...add(['labeling']));
    }
    return forms;
  }
  return { base: add([head, third(head)]), past: add([`${head}ed`]), ing: add([`${head}ing`]) };
}

const third = (verb: string): string => (/(s|x|z|ch|sh)$/.test(verb) ? `${verb}es` : `${verb}s`);
const syllables = (word: string): number => (word.match(/[aeiouy]+/g) ?? []).length;
