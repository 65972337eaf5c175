/**
 * Words of quilt mending that the recogniser tends to break up or bend. Only their continuing tokens are favoured, and only
 * lightly, so that a word belongs here as soon as a near neighbour does: a list with "batting" but without "batten" bends the
 * one to the other (common practice, no source).
 */
export const TRADE_TERMS: readonly string[] = [
  'appliqué', 'backing', 'backstitch', 'bandanna', 'basted', 'basting', 'batten', 'batting', 'bedding', 'bias binding', 'binding',
  'blanket stitch', 'bobbin', 'borders', 'brushed', 'calico', 'cambric', 'chambray', 'chintz', 'corduroy', 'couched', 'couching',
  'crepeline', 'crocking', 'darned', 'darning', 'denim', 'dimity', 'dye bleed', 'fat quarter', 'feed dogs', 'feedsack', 'flannel',
  'floss', 'foundation', 'frayed', 'fraying', 'fusible interfacing', 'fusible web', 'gingham', 'hand quilting', 'herringbone',
  'homespun', 'indigo', 'in the ditch', 'interfacing', 'ladder stitch', 'lawn', 'loft', 'madder', 'mildew', 'muslin', 'needle',
  'netting', 'organza', 'overlay', 'padding', 'patched', 'patchwork', 'pearl cotton', 'percale', 'pieced', 'piecing', 'plaid',
  'poplin', 'puckering', 'quilting', 'ravelled', 'ravelling', 're-sewed', 're-sewn', 'running stitch', 'sashing', 'sateen',
  'seam allowance', 'seersucker', 'selvage', 'selvedge', 'shattered', 'shattered silk', 'silk crepeline', 'slip stitch', 'spray baste',
  'square knot', 'stabilise', 'stabilize', 'stippling', 'surgeon\'s knot', 'taffeta', 'ticking', 'tie-off', 'topstitch', 'tulle',
  'unpicked', 'unpicking', 'velveteen', 'voile', 'wadding', 'whipstitch', 'whipped', 'zigzag',
];
