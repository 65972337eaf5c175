import { expect, it } from 'vitest';
import { treatmentsSaid } from './bench-quilt.ts';

it.each<[note: string, said: string[]]>([
  ['1-1 is down for a patch', ['patch planned 1-1']],
  ['put 4-1 down for a patch', ['patch planned 4-1']],
  ['4-4 is on the list for a darn', ['darn planned 4-4']],
  ['3-3 still wants its patch', ['patch planned 3-3']],
  ["what I'm going to do for 2-2 is cut a piece of lawn and slide it in behind", ['stabilize planned 2-2']],
  ['half way through quilting row one', ['quilt doing 1-1 1-2 1-3 1-4 1-5 1-6']],
  ['the patch on 5-5 is half sewn', ['patch doing 5-5']],
  ['finished the darn in 2-2', ['darn done 2-2']],
  ['got the patch on 5-5 at last', ['patch done 5-5']],
  ["2-2's past darning, it'll have to be replaced", ['replace planned 2-2']],
  ["5-5 is too far gone for a darn so I'll replace it", ['replace planned 5-5']],
  ["5-5 I'm not bothering with", ['leave done 5-5']],
  ["the weak spot in 2-2 I've decided to live with", ['leave done 2-2']],
  // work named that is still to be done
  ["I'll do the binding by hand tonight", ['bind planned hand quilt']],
  ["I'll get the quilting done on row one tonight", ['quilt planned 1-1 1-2 1-3 1-4 1-5 1-6']],
  [
    "tomorrow I've got to bind it and get the label on at the bottom right corner",
    ['bind planned quilt', 'label planned corner-bottom-right'],
  ],
  ["don't forget the patch on 2-2", ['patch planned 2-2']],
  ["I've got to get the binding on", ['bind planned quilt']],
  ['finished the binding tonight', ['bind done quilt']],
  // a place told first that is for later
  ["quilted 2-2 and 2-3, 4-4 I'll do after supper", ['quilt done 2-2 2-3', 'quilt planned 4-4']],
  ["darned 2-2. 3-3 I'll leave till tomorrow", ['darn done 2-2', 'darn planned 3-3']],
  ['darned 2-2. 3-3 can wait', ['darn done 2-2']],
  // meant and given up
  ['meant to patch 4-1, but the patch is off', ['patch dropped 4-1']],
  ["I'd planned on washing it, not now though", ['wash dropped quilt']],
  ['4-1 will have a support of dyed silk sewn in behind', ['stabilize planned 4-1']],
  // one of two, not chosen yet
  [
    'for 1-4 the choice is between crepeline over the face and a silk support behind',
    ['overlay considering 1-4', 'stabilize considering 1-4'],
  ],
  // a thing of the house is not left as found
  ["they're on the windowsill where you left them", []],
  ['I left the kettle on', []],
  // a way with a question mark, and a question whether it is done
  ['net over 2-2?', ['overlay considering 2-2']],
  ['3-3 darn?', ['darn considering 3-3']],
  ['3-3 darned yet?', []],
  // regrets and failures tell no work
  ["should've photographed it before I started", []],
])('%s', (note, said) => {
  expect(treatmentsSaid(note)).toEqual(said);
});

it.each<[notes: string[], said: string[]]>([
  [
    ['2-2 was to be darned', "no darning there now, I'll replace it"],
    ['darn dropped 2-2', 'replace planned 2-2'],
  ],
  [['patched 2-2', 'same again, 5-1'], ['patch done 5-1']],
  [['1-1 planned for a support, muslin', 'forget the support'], ['stabilize dropped 1-1']],
  [
    ['3-4 has an old patch on it', 'might take that patch off, might leave it'],
    ['remove considering old-patch 3-4', 'leave considering 3-4'],
  ],
])('%j', (notes, said) => {
  expect(treatmentsSaid(notes)).toEqual(said);
});

it.each<[notes: string[], said: string[]]>([
  [['3-4 is frayed, and that one I have left.'], ['leave done 3-4']],
  [['4-5 not patched after all, net instead, tomorrow'], ['patch dropped 4-5', 'overlay planned 4-5']],
  [
    ["I'm putting crepeline over 2-2", 'whole lot couched down in an hour'],
    ['overlay done couching 60min 2-2'],
  ],
  [["There's mending of some kind in 3-3, machine zigzag", 'I took it out.'], ['remove done stitching 3-3']],
  [['a tear in 3-3, brought the edges together with herringbone'], ['resew done herringbone 3-3']],
  [['I was all set to patch 2-4, but a patch would only drag at it'], ['patch dropped 2-4']],
])('%j', (notes, said) => {
  expect(treatmentsSaid(notes)).toEqual(said);
});
