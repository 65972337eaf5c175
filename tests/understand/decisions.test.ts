import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

const matters = (notes: string | string[]): string[] =>
  say(notes)
    .entries.flatMap((e) => (e.entry.kind === 'decision' ? [`${e.entry.about} ${e.entry.status}`] : []))
    .sort();

describe('matters open and settled', () => {
  it.each([
    ['open matters: the border, what thread to use, and the price', 'border open, price open, thread open'],
    ['things still to decide - which wadding, colour of the binding', 'batting open, binding open'],
    ['undecided: tie or quilt; wool or cotton batting', 'batting open, tying open'],
    [
      'still open is the binding colour the thread and whether to tie or quilt',
      'binding open, thread open, tying open',
    ],
    ['agreed is the backing, and what is still open is the border', 'backing settled, border open'],
    ['still open is the binding but the backing is settled', 'backing settled, binding open'],
    ['still open is the seam in 3-2', ''],
    ['went for the wool batting, price still under discussion', 'batting settled, price open'],
    ["don't know yet when she needs it back", 'deadline open'],
    ['the binding, should I take it off or leave it on, I keep going back and forth', ''],
    ["the front's been pressed, the back hasn't yet", ''],
    ['settled: navy for the back, tied not quilted', 'backing settled, tying settled'],
    ["i can't make up my mind about the batting, wool or bamboo", 'batting open'],
    ["haven't picked a backing yet", 'backing open'],
    ['no idea what to charge her for this', 'price open'],
    ['the price is settled, two hundred and eighty', 'price settled'],
    ['240 agreed', 'price settled'],
    ['agreed on three hundred with the owner', 'price settled'],
    ['settled at ten', ''],
    ['some of the tying before breakfast, no idea how long', ''],
    ['told him £220 and he said yes', 'price settled'],
    ['she needs it back for the christening on the 12th of May', 'deadline settled'],
    ['it has to be finished before easter', 'deadline settled'],
    ['decided on grey flannel for the backing', 'backing settled'],
    ["i've decided to tie it", 'tying settled'],
    ["it'll be tied, that's final", 'tying settled'],
    ['tie it, every four inches, navy perle cotton', 'tie-thread settled, tying settled'],
    ['tie it tomorrow, four inches apart', ''],
    ['tie row two, four inches apart', ''],
    ["we'll hand quilt it, that's agreed", 'quilting settled'],
    ['backing: unbleached calico, settled', 'backing settled'],
    ['tying it, no quilting. settled. 4 in apart', 'tying settled'],
    ['Red wool for the ties. 4 in apart, 3/4 in tails.', 'tie-thread settled'],
    ['I decided on the thin cotton batting before I went to sleep.', 'batting settled'],
    ['Finished size 60 by 72 in.', ''],
    ["told her ninety, she's fine with that", 'price settled'],
    ['dec: flannel back, wool batting', 'backing settled, batting settled'],
    ['decisions: tie it, red wool, price 180', 'price settled, tie-thread settled, tying settled'],
    ["it's getting tied again and in red wool so that's that", 'tie-thread settled, tying settled'],
    ['going with a wool batting and a muslin back', 'backing settled, batting settled'],
    ['still torn between tying and quilting', 'tying open'],
    ["the wadding, thicker or thinner, I haven't settled. No, I have: the thinner.", 'batting settled'],
    ['asked 240, she said 225, shook on it', 'price settled'],
    ["leave the border off, that's decided", 'border settled'],
    ['The price is still open, and so is the backing, calico or drill.', 'backing open, price open'],
    ["the border I haven't settled, neither have I the thread", 'border open, thread open'],
    ["Binding I do know, that'll be plum.", 'binding settled'],
    ['tying it, not quilting. ties in red. 12 cm apart', 'tie-thread settled, tying settled'],
    ['client says ties. red floss. every 8 cm', 'tie-thread settled, tying settled'],
    ['old batting is out. going w/ wool for the new one', 'batting settled'],
    ['leaving the binding colour open for now', 'binding open'],
    ['left the backing open at one end', ''],
    ['not settled what thread nor if it gets a border', 'border open, thread open'],
    ['has to be ready dec 18', 'deadline settled'],
    ['due fri', 'deadline settled'],
    ['Ties: red perle cotton, 5" apart.', 'tie-thread settled'],
    ['tie or quilt -> quilt', 'quilting settled'],
    ['backing -> blue flannel', 'backing settled'],
    ['the ties will be in white every three inches', 'tie-thread settled'],
    ['backing: blue flannel, stained', ''],
    ['picked up pins four fifty', ''],
    // two ways to mend a block are treatments, what is done is no decision
    ['3-4: crepeline over face or cloth behind? tbd', ''],
    ["washed it in the bath, that's done and settled", ''],
    ['the binding will be red', 'binding settled'],
    ["no border, that's settled", 'border settled'],
    ["red pearl cotton for the ties, that's decided", 'tie-thread settled'],
    ["the back's decided, it's the ticking", 'backing settled'],
    [
      'linen batting it is, and the width of the border is still open, as is the thread',
      'batting settled, border open, thread open',
    ],
    ['tie it or quilt it?', 'tying open'],
    ['whether to add a border is still up in the air', 'border open'],
    ['thread colour: ecru or grey?', 'thread open'],
    ["it'll be tied", 'tying settled'],
    ["my mind's made up, it's to be quilted", 'quilting settled'],
    ["I'm going to use the oatmeal linen for the backing", 'backing settled'],
    ['backing = navy sateen', 'backing settled'],
    ["changed my mind about the backing: it's going to be the blue", 'backing settled'],
    ["I'm leaning towards the flannel for the back", 'backing open'],
    ['maybe wool batting', 'batting open'],
    ['we could go with a wider border', 'border open'],
    ["it's settled then, cotton batting", 'batting settled'],
    ["the backing's settled but the binding isn't", 'backing settled, binding open'],
    ['thread is decided, border not yet', 'border open, thread settled'],
    ['quoted him 300, waiting to hear', 'price open'],
    ['open: border width, thread, washing', 'border open, thread open, washing open'],
    ['which print for the patch on 3-2, red dot or the stripe?', 'fabric open'],
    ['what colour for the binding?', 'binding open'],
    ['who pays for the batting is still to settle', 'batting open'],
    ["do we wash it or don't we", 'washing open'],
    ["can't decide between the check and the plain for the binding", 'binding open'],
    ['settled on the grey backing and a cotton batting', 'backing settled, batting settled'],
    ["that's the backing sorted then, the cream sateen", 'backing settled'],
    ["told her 280, she's thinking about it", 'price open'],
    ['charging her by the hour, twenty five dollars', 'price settled'],
    ['no deadline yet', 'deadline open'],
    ['batting: bamboo vs cotton ?', 'batting open'],
    ["i'm thinking red for the ties", 'tie-thread open'],
    ["she's not sure yet if she wants it washed", 'washing open'],
    ['must be finished 12/18, firm', 'deadline settled'],
    ['the fabric for the patches is settled: brown gingham', 'fabric settled'],
  ])('%s -> %s', (note, wanted) => {
    expect(matters(note).join(', ')).toBe(wanted);
  });

  it('settles an open matter by one of the ways that it was told with', () => {
    expect(matters(['back: twill or the old curtain, open', "so it's the curtain, settled"])).toEqual([
      'backing settled',
    ]);
  });

  it.each([
    'the binding is open along the bottom edge',
    'the batting has settled into the corners',
    '2-2: patch or darn, not decided',
    'need 3 1/2 yd flannel for the back, 1 roll batting',
    "some quilting on Sunday, couldn't tell you from when to when",
    'the binding might be torn at the corner',
    'nothing done on Thursday',
    'what thread did I use on 2-2?',
    'the border will go back on tomorrow',
    'bought wool batting for £40',
    'tying row two tonight',
    '3 spools of thread, $9 for the lot',
    'told her about the tear in 3-2',
    'we could do with more thread',
  ])('%s settles nothing', (note) => {
    expect(matters(note)).toEqual([]);
  });
});

describe('a matter that stood open', () => {
  it.each([
    [
      ['tie or quilt, batting wool or cotton: no idea yet', 'Wool batting. Hand quilting, no ties.'],
      'batting settled, quilting settled',
    ],
    [['whether to tie or hand quilt it is open', 'Tied, not quilted.'], 'tying settled'],
    [['back: ink stripe or plain, tbd', 'plain'], 'backing settled'],
    [['backing: hers to pick', 'she picked the ticking'], 'backing settled'],
    [['price? 220 or 250, ask D', 'D says 250'], 'price settled'],
    [
      ['how to wash it I do not know', "she said cold water and nothing else, so that's settled"],
      'washing settled',
    ],
    // nothing stood open: it has been done
    [['patched 3-2', 'Tied, not quilted.'], ''],
  ])('%j: %s', (notes, expected) => {
    expect(matters(notes).join(', ')).toBe(expected);
  });
});

describe('a matter told outright', () => {
  it.each([
    ["it's not having a border", 'border settled'],
    ['cold hand wash it is', 'washing settled'],
    ["what to put on the label is anybody's guess", 'other open'],
    ['no date set yet for when she needs it', 'deadline open'],
    ['ninety dollars is what we shook on', 'price settled'],
    ["no machine quilting, it's going to be by hand", 'quilting settled'],
    ["settled: quilt it, don't tie it", 'quilting settled'],
  ])('%s', (note, expected) => {
    expect(matters(note).join(', ')).toBe(expected);
  });

  it.each(['no border on the left side yet', 'washed it cold by hand', 'sewed the label on'])(
    'not in %s',
    (note) => {
      expect(matters(note)).toEqual([]);
    },
  );
});
