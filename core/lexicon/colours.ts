/** Plain names of colours, as cloth is called by them. */
export const COLOURS = new Set(
  'red pink rose crimson scarlet maroon burgundy claret wine rust brick orange peach coral apricot yellow gold golden mustard butter lemon ochre green olive sage mint lime bottle emerald teal turquoise blue navy indigo sky royal denim purple plum lilac lavender mauve violet brown tan beige buff chocolate coffee fawn khaki grey gray silver charcoal black white cream ivory ecru bluish reddish greenish dark light pale'.split(
    ' ',
  ),
);

/** Words for what is on a cloth, by which people tell one from another. */
export const PATTERN_WORDS: ReadonlySet<string> = new Set(
  'stripey stripy striped stripes spotty spotted spots dotty dotted flowery flowered floral floraly checked checky chequered plaid tartan gingham paisley paisleys sprigged sprig checkered'.split(
    ' ',
  ),
);
