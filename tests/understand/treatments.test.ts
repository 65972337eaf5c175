import { describe, expect, it } from 'vitest';
import { treatmentsSaid } from './bench-quilt.ts';
import { entriesOf, say } from './say.ts';

/** value <- many phrasings. */
const TABLE: [value: string[], phrasings: string[]][] = [
  [
    ['patch done 2-4'],
    [
      'patched 2-4 with calico',
      "2-4's got a calico patch on it now",
      'sewed a patch over the hole in 2-4',
      '2-4 has been patched',
    ],
  ],
  [
    ['patch planned 2-4'],
    ['2-4 needs a patch', 'a patch will have to go on 2-4', '2-4 to be patched', 'must patch 2-4'],
  ],
  [
    ['patch done 2-4'],
    ['covered the hole in 2-4 with a bit of calico', 'stitched a square of calico over the worn spot on 2-4'],
  ],
  [
    ['remove done old-patch 2-4', 'remove done interfacing 3-1'],
    ['unpicked the old patch on 2-4 and a piece of interfacing from behind 3-1'],
  ],
  [['stabilize done herringbone 2-4'], ['voile behind the tear in 2-4, herringboned']],
  [['stabilize done 2-4', 'resew done zigzag 2-4'], ['2-4 torn: iron-on interfacing behind, zigzagged over']],
  [['resew done ladder backing'], ['closed that seam on the back ladder stitch']],
  [['patch done whipstitch 2-4'], ['patched 2-4 with tweed and whipstitched it down']],
  [['layer done quilt', 'baste done quilt'], ['laid it out in layers on the floor and pinned it']],
  [
    ['clean done backing'],
    [
      'went over the backing with the soft brush',
      'ran the vacuum on the back',
      'took the brush to the backing',
    ],
  ],
  [['patch done 25min 2-4'], ['2-4 patch, blue wool, 25m']],
  [['remove done ties 20min 2-4'], ['ties out 2-4, 20m']],
  [[], ['5m calico for the back', 'backing calico, 12m']],
  [['clean done 2-4'], ['got most of the stain out of 2-4', 'got nearly all of the mark out of 2-4']],
  [['clean planned 2-4'], ["the mark in 2-4 I'd like to get out", 'going to try to lift the stain in 2-4']],
  [[], ["couldn't get the stain out of 2-4", "the stain on 2-4 won't shift", 'drew round the stain on 2-4']],
  [['overlay planned 2-4'], ["I'll net 2-4"]],
  // cloth behind, by its name as a verb and as a thing
  [['stabilize done running 2-4'], ['lined 2-4 with the lawn, in running stitch']],
  [
    ['stabilize planned 2-4'],
    ["I'll line 2-4 with silk", '2-4 wants lining', '2-4 wants a lining of fine lawn sewn in behind'],
  ],
  [['stabilize planned 2-4'], ['2-4 will get a piece of muslin sewn in behind']],
  [[], ['2-4 has had a lining at some point', 'I lined up the blocks to see the order']],
  [['remove done quilting 2-4'], ['unpicked the broken quilting in 2-4']],
  [['resew done backstitch 12min 3-2 4-2'], ['closed seam 3-2/4-2, backstitch, 12 min']],
  [['bind doing edge-right'], ['began binding the right edge at seven']],
  [['remove done pins'], ['last pins out']],
  // verbs that say nothing of their own
  [
    ['resew done 2-4'],
    [
      'ran the seam at 2-4 again',
      'put the seam at 2-4 right',
      'the seam at 2-4 is shut again',
      "closed 2-4's seam",
    ],
  ],
  [['clean done 2-4'], ['both stains in 2-4 spotted', 'spot treated 2-4', 'worked on the stain in 2-4']],
  [[], ['spotted a tear in 2-4', 'did the washing up']],
  [['darn planned 2-4'], ['a darn will do for 2-4']],
  [['patch considering 2-4'], ['patch for 2-4?']],
  [['remove done old-patch 2-4'], ['got rid of the old patch on 2-4']],
  [['trim done batting'], ['cut off the excess batting']],
  [['cut done border-right', 'add-border done border-right'], ['new right border cut and sewn on']],
  [['cut planned binding'], ['binding strips to cut']],
  [['label planned corner-bottom-right'], ['label lower right corner tomorrow']],
  [['bind done ladder edge-left'], ['slip stitched the binding down on the left']],
  [['wash dropped quilt'], ['whole-quilt wash called off', 'the wash is called off']],
  [['dry done backing', 'press done backing'], ['backing dry & pressed']],
  [['stabilize done 1-1', 'stabilize considering 2-4'], ['ironed interfacing on behind 1-1. 2-4 maybe too']],
  [['remove done stitching 2-4'], ['unpicked the old mending stitches on 2-4']],
  [['remove done interfacing 2-4'], ['peeled a bit of iron-on interfacing off the back of 2-4']],
  [['remove done quilting 60min border-top'], ['unpicked the quilting on the top border that took an hour']],
  [['bind doing edge-left'], ['binding the left side now', "I'm binding the left edge"]],
  [['bind done 35min edge-bottom'], ['bottom bound, 35 min']],
  [['baste doing quilt'], ['tacking it now from the middle out']],
  // what the deed is done to stands before "I"
  [
    ['press done 2-1 2-2', 'leave done 2-3 2-4 2-5 2-6'],
    [
      "two one and two two pressed the rest of the row I'm leaving",
      "2-1, 2-2 pressed, the rest of the row I'm leaving",
    ],
  ],
  [
    ['patch done 2-4 5-6', 'leave done 1-1'],
    ["patched all the blue gingham ones but the one in row one, and that one I'm leaving"],
  ],
  [
    ['patch done whipstitch 2-4 2-5'],
    ['patched 2-4, whipstitch, and um the same on the block to the right of it'],
  ],
  [
    ['add-border done border-top border-bottom', 'add-border planned border-right border-left'],
    [
      'border on, top and bottom only. other two sides tomorrow',
      'top and bottom borders are on, the other two borders are for tonight',
    ],
  ],
  [['stabilize planned 2-4 2-5'], ['2-4 and 2-5 need backing with muslin', '2-4 and 2-5 want backing']],
  [[], ['still need backing, 3 yards', 'the net on 2-4 is fine']],
  [['overlay considering 2-4', 'stabilize considering 2-4'], ["I'll net 2-4. Or maybe back it"]],
  [['clean done top', 'clean planned backing'], ['brushed the front and the back wants doing tomorrow']],
  [['clean done 20min top backing'], ['vacuumed the front and then the back, twenty minutes in all']],
  [['darn done 40min 2-4 3-3'], ['darned 2-4 then 3-3, 40 minutes in all']],
  [['patch done 2-4', 'patch planned 2-5'], ['patched 2-4 and 2-5 wants it too']],
  [[], ['I ran the hoover round the sewing room', 'went over to the shop with the brush']],
  [['remove done ties 2-1 2-2 2-3 2-4 2-5 2-6'], ['got what was left of the ties picked out of row two']],
  [['patch done 2-4 2-5'], ['2-4 and 2-5 have got their patches on']],
  [
    ['overlay done 2-4 2-5', 'baste done 2-4 2-5'],
    ['2-4 and 2-5 have both got their net on and it is tacked round in silk'],
  ],
  [['resew done backstitch 2-4'], ['sewed the seam in 2-4 backstitching with linen thread']],
  [
    ['darn done 10min 2-4'],
    ['darned 2-4 took me ten', 'darned 2-4, cost me ten minutes', 'darned 2-4, that was ten minutes gone'],
  ],
  [['press done quilt'], ['pressed it took two goes']],
  [
    ['photograph done top backing'],
    ['i shot the front and back with the good camera', 'shot both sides for the file'],
  ],
  [['bind done ladder quilt'], ['Bound!! slip-stitched it down all round']],
  [[], ['Appliqué cot quilt, cream', 'pieced coverlet from the church sale', 'I shot out to the shop']],
  [['darn done 2-4'], ['put a darn in 2-4', 'worked a darn into 2-4', 'ended up darning 2-4']],
  [['darn dropped 2-4'], ['dropped the idea of darning 2-4']],
  [['patch dropped 2-4'], ['no patch on 2-4 after all', 'no longer going to patch 2-4']],
  [['leave done 2-4'], ['doing nothing to 2-4', 'no treatment on 2-4', 'keeping 2-4 as is']],
  [['resew done 2-4'], ['put a few stitches in 2-4', 'redid the seam in 2-4']],
  [['replace done 2-4'], ['cut out 2-4 and pieced a new one in', 'new piece let into 2-4', 'replaced 2-4']],
  [
    ['replace planned 2-4'],
    ['2-4 will have to be replaced', "I'm going to have to replace 2-4", '2-4 wants replacing'],
  ],
  [
    ['stabilize done 2-4'],
    [
      'backed 2-4 with muslin',
      'put a piece of silk behind 2-4',
      'ironed some fusible onto the back of 2-4',
      'backed 2-4 with crepeline',
    ],
  ],
  [['stabilize done couching 2-4'], ['muslin behind 2-4, couched']],
  [
    ['resew done backstitch 2-1', 'resew done whipstitch 2-2'],
    ['2-1 sewn with backstitch and 2-2 with whipstitch', '2-1 is backstitched and 2-2 whipped'],
  ],
  [['darn done hand 2-1 2-2'], ['darned 2-1 and 2-2 by hand']],
  [
    ['resew done backstitch 2-4', 'resew done whipstitch 3-3'],
    ['backstitched 2-4 then 3-3 had come open so I whipped that'],
  ],
  [['darn done 2-4 3-3'], ['darned 2-4. 3-3 has a hole so I darned it as well']],
  [['patch done whipstitch 2-4'], ['patched 2-4, it had a hole, and whipped it down']],
  [['piece done border-top'], ['top border pieced from 5 strips']],
  [
    ['quilt doing in-the-ditch 1-1 1-2 1-3 1-4 1-5 1-6'],
    ['at half past six I began quilting in the ditch, along the top row'],
  ],
  [
    ['resew done running 9min 2-4'],
    ['re-stitched around the name on 2-4 little running stitch that was nine minutes'],
  ],
  [[], ["that's me done mending ten to eleven with a quarter of an hour out for a sandwich"]],
  [['photograph done 2-4 2-5'], ['photos 2-4, 2-5']],
  [
    ['overlay done 2-4', 'stabilize done 3-3'],
    ['net at 2-4, muslin behind 3-3', 'put net on 2-4 and a piece of muslin behind 3-3'],
  ],
  [
    ['overlay planned 2-4', 'patch planned 3-3'],
    ['going to put net on 2-4 and a patch on 3-3', 'Decided: tulle at 2-4, a patch on 3-3'],
  ],
  [['stabilize doing 2-4'], ['2-4 tender, muslin going in behind now']],
  [['overlay doing 2-4'], ['net going on 2-4 as we speak']],
  [['overlay planned 2-4'], ['net going on 2-4 next week']],
  [['resew done herringbone 2-4'], ['herringbone over the tear in 2-4']],
  [
    ['bind done machine edge-top', 'bind planned hand edge-top'],
    ['bdg on top edge, machine. hand finish those later'],
  ],
  [['cut done border'], ['border: yes. strips cut 7 cm wide']],
  [
    ['resew done backstitch 1-1 2-1 1-2 2-2'],
    ['seam 1-1/2-1 open, closed by hand, backst. 1-2/2-2 was open too, same st.'],
  ],
  [
    ['remove done backing backing', 'remove done batting batting'],
    [
      'took the backing and the batting off',
      'unpicked the backing and the batting',
      'the backing and batting are off',
    ],
  ],
  [
    ['remove done backing backing', 'remove done batting batting'],
    ["took the old backing off, batting's all in clumps so that came out too"],
  ],
  [['remove planned binding binding'], ["the binding's frayed so that has to go"]],
  [['label planned corner-bottom-right'], ['label to go btm R cnr', 'label to go bottom right corner']],
  [['cut done border', 'piece done border'], ['cut the border strips and sewed them end to end']],
  [['remove done old-patch 2-4', 'remove done label 2-4'], ['took the old patch and the label off 2-4']],
  [['remove doing batting batting'], ["the batting's coming out now"]],
  [
    ['overlay done couching 2-4', 'baste done 2-4'],
    ["laid the net over 2-4, tacked it first so it wouldn't creep, then couched it down"],
  ],
  [['photograph done 2-4 2-5'], ['photos of 2-4 and 2-5']],
  [['photograph planned 2-4'], ['photos of 2-4 tomorrow', 'need photos of 2-4']],
  [['darn planned 2-4'], ['2-4 -> darn', '2-4: darn']],
  [
    ['cut done border', 'piece done border', 'add-border done border'],
    ['cut the border strips 4 in wide, pieced them and sewed them on'],
  ],
  [['cut done border', 'add-border planned border'], ['cut the border strips and will put them on tomorrow']],
  [['patch done 3-3', 'leave done 4-3 4-4'], ['patched 3-3 with denim and left the plum silk alone']],
  [
    ['overlay planned 1-1 2-4 5-6', 'leave done 4-3 4-4'],
    ["the gingham ones are getting tulle and I'm leaving the plum silk alone"],
  ],
  [['overlay doing 2-4'], ["2-4 is too thin to darn so I'm netting it"]],
  [[], ['2-4 is too far gone to mend']],
  [
    ['replace planned 2-4'],
    ["there's a hole in 2-4 I could put my thumb through, so it wants a new piece put in"],
  ],
  [['darn planned 2-4'], ['the hole in 2-4 needs darning', '2-4 needs darning']],
  [
    ['resew planned 2-4'],
    [
      'the tear in 2-4 needs sewing up',
      'the split in 2-4 needs stitching up',
      'the tear in 2-4 needs closing',
    ],
  ],
  [
    ['bind done edge-bottom', 'bind planned edge-top edge-right edge-left'],
    ['the bottom edge is bound, the other three sides still need binding'],
  ],
  [['stabilize planned 2-1 2-2'], ['2-1 and 2-2 need backing with muslin']],
  [['darn done 40min 2-4'], ['took me 40 min to darn 2-4']],
  [['darn planned 2-4'], ["it'll take forty minutes to darn 2-4"]],
  [
    ['remove done binding binding', 'bind done ladder quilt'],
    ["old binding's off and the new one's on, slip stitched", 'old binding off, new one on, ladder stitch'],
  ],
  [['remove done binding edge-left'], ['left binding off', "the left binding's off"]],
  [['bind done hand edge-left'], ['sewed the left binding down by hand']],
  [
    ['stabilize considering 3-1 3-2 3-3 3-4 3-5 3-6', 'overlay considering 3-1 3-2 3-3 3-4 3-5 3-6'],
    ['row three: a support behind each block, or net over the face?'],
  ],
  [
    ['remove done binding edge-top', 'bind planned edge-top'],
    ["took the binding off along the top and it's going right back on there later"],
  ],
  [
    [
      'remove done border border-right',
      'square-up done border-right',
      'add-border done machine border-right',
    ],
    ['unpicked the right-hand border, squared it up and put it back on by machine'],
  ],
  [['trim done edge-left'], ['took three-eighths off the left side']],
  [
    ['remove done old-patch 2-4', 'replace done 2-4'],
    ['took the ironed-on patch off 2-4, then set a fresh piece of print into its place'],
  ],
  [['remove done old-patch 2-4'], ['the fused bit is off 2-4']],
  [['overlay done 2-4', 'baste done 2-4'], ['net laid on & tacked down at 2-4']],
  [['stabilize done 2-4', 'baste done 2-4'], ['muslin eased in behind 2-4 and basted']],
  [
    ['tie done 2-1 2-2 2-3 2-4 2-5 2-6', 'remove done pins 2-1 2-2 2-3 2-4 2-5 2-6'],
    ['row two is tied now and the pins are out of em'],
  ],
  [['overlay done whipstitch 2-4'], ['net over 2-4, whipstitched down']],
  [['overlay done 4-3'], ['laid crepeline across 4-3', 'covered 4-3 with net']],
  [['resew done hand 2-4 2-5'], ['closed the seam between 2-4 and 2-5 by hand']],
  [['resew done ladder 2-4'], ['ladder stitched the open seam at 2-4', '2-4 seam closed, ladder stitch']],
  [['resew done whipstitch 2-4'], ['whipped the tear in 2-4 shut']],
  [['resew done machine 2-4'], ['ran the seam at 2-4 up again on the machine']],
  [['darn done 12min 2-4'], ['darned 2-4, twelve minutes', '2-4 darned, 12 min']],
  [['darn doing 2-4'], ["I'm darning 2-4 now", 'halfway through darning 2-4']],
  [
    ['remove done old-patch 2-4'],
    ['took the old patch off 2-4', 'unpicked a clumsy patch from 2-4', '2-4: old patch off'],
  ],
  [
    ['remove done ties 2-1 2-2 2-3 2-4 2-5 2-6'],
    ['the ties are out of row two', 'took all the ties out of row two', 'snipped the ties in row two'],
  ],
  [
    ['remove done binding binding'],
    [
      'the old binding has come off',
      'took the binding off',
      "the binding's off",
      'stripped off the old binding',
    ],
  ],
  [['remove done backing backing'], ['had the backing off by tea time', 'got the back off tonight']],
  [['remove done batting batting'], ['lifted the batting out', 'the batting is out']],
  [['press done 2-4'], ['steamed 2-4 flat', 'pressed 2-4']],
  [['press done top'], ['pressed the whole top']],
  [
    ['wash done quilt', 'dry done quilt'],
    ['washed it by hand and dried it flat', "it's washed, it's dry"],
  ],
  [['clean done top backing'], ['vacuumed front and back', 'vacuumed both faces']],
  [['clean done backing'], ['gave the backing a good vacuum', 'vacuumed the back']],
  [
    ['leave done 2-4'],
    [
      '2-4 can stay as it is',
      'leaving 2-4 well alone',
      'leave 2-4',
      "I'll live with 2-4",
      '2-4 left',
      "I'll let 2-4 be",
      'no need to touch 2-4',
    ],
  ],
  [
    ['add-border done machine border-top'],
    ['top border on, by machine', 'sewed on the top border by machine'],
  ],
  [['add-border done border-bottom'], ['the bottom border went on this morning', 'the bottom border is on']],
  [
    ['bind done ladder quilt'],
    ['bound the quilt, finished by hand in ladder stitch', 'binding finished by hand, ladder stitch'],
  ],
  [
    ['label done backing'],
    ['put the label on the back', 'sewed a label to the back', 'name tag sewn on the back'],
  ],
  [['trim done edge-right'], ['trimmed the right edge', 'trimmed half an inch off the right']],
  [
    ['patch considering 2-4', 'darn considering 2-4'],
    [
      'maybe patch 2-4, maybe darn it',
      "patch 2-4 or darn it, can't decide",
      '2-4: patch or darn?',
      'either patch 2-4 or darn it',
    ],
  ],
  [['patch considering 2-4', 'replace considering 2-4'], ['should 2-4 be patched or replaced?']],
  [['overlay considering 4-3'], ['wondering about net for 4-3', 'thinking of putting net over 4-3']],
  [
    ['patch dropped 2-4'],
    ["won't be patching 2-4 after all", 'decided against patching 2-4', "2-4 won't be patched now"],
  ],
  [['patch dropped 2-4', 'darn planned 2-4'], ["I was going to patch 2-4 but I'll darn it instead"]],
  [
    ['darn planned 2-4'],
    ["no patch on 2-4, I'm going to darn it", '2-4 to be darned', 'remember to darn 2-4'],
  ],
  [
    ['replace planned 1-1', 'patch planned 1-2', 'leave done 1-3'],
    [
      'replace 1-1, patch 1-2, leave 1-3',
      '1-1 replace, 1-2 patch, 1-3 leave',
      '1-1 to be replaced, 1-2 patched, 1-3 left alone',
    ],
  ],
];

describe('what is done, in many words', () => {
  for (const [value, phrasings] of TABLE)
    it.each(phrasings)('%s', (said) => {
      expect(treatmentsSaid(said)).toEqual(value);
    });
});

describe('treatments that rest on what was said before', () => {
  it.each([
    [['patch 2-4 or darn it?', 'the darn it is'], ['darn planned 2-4']],
    [['patch 2-4 or darn it?', 'no darning, then'], ['darn dropped 2-4']],
    [['patch 2-4 or darn it?', 'patched it'], ['patch done 2-4']],
    [['darned 2-4 in running stitch, ten minutes', 'same again on 2-5'], ['darn done running 2-5']],
    [['darned 2-4 in running stitch', 'and the one below it'], ['darn done running 3-4']],
    [['darned 2-4, 3-1', 'next two the same'], ['darn done 3-2 3-3']],
    [['tied row four', 'same for row five'], ['tie done 5-1 5-2 5-3 5-4 5-5 5-6']],
  ])('%j', (notes, value) => {
    expect(treatmentsSaid(notes)).toEqual(value);
  });
});

describe('what is no treatment', () => {
  it.each([
    'somebody patched 2-4 years ago',
    'my sister sewed 2-4 up when we were girls',
    "there's an old repair in 2-4, interfacing glued on behind",
    'the patch on 2-4 has come loose',
    'I cut my finger',
    'pressed for time',
    'bound to rain',
    'tied up with the phone all morning',
    'fuse gone, whole street dark',
    'the cat is sitting on it',
    'no zigzag on 2-4',
  ])('%s', (said) => {
    expect(treatmentsSaid(said)).toEqual([]);
  });
});

describe('ordinary notes that were misread', () => {
  it('the cloth that is torn is not the cloth that was used', () => {
    expect(entriesOf('material', '3-3 lawn torn, crepeline over')).toMatchObject([{ material: 'net' }]);
  });
  it('the bath is where it was washed', () => {
    expect(say('washed the backing in the bath').entries.map(({ entry }) => entry)).toMatchObject([
      { action: 'wash', places: ['backing'] },
    ]);
  });
  it('drying goes on after washing and mends nothing', () => {
    expect(say(['washed the backing', "it's drying flat on towels"]).act).toBe('log');
  });
  it('"poss" and "possibly" leave it open', () => {
    expect(entriesOf('treatment', '2-3 poss patch, poss leave')).toEqual([
      { action: 'patch', state: 'considering' },
      { action: 'leave', state: 'considering' },
    ]);
    expect(entriesOf('treatment', '2-3 possibly patch')).toEqual([{ action: 'patch', state: 'considering' }]);
  });
  it.each([
    ['ask Joan about washing', [{ kind: 'decision', about: 'washing', status: 'open' }]],
    ["the needle's gone missing somewhere in row 5", [{ kind: 'remark' }]],
    ['all finished, took it to Joan on Saturday', [{ kind: 'remark' }]],
    ['bought it yesterday for 6 pounds', [{ kind: 'remark' }]],
  ])('%s', (said, entries) => {
    expect(say(said)).toMatchObject({ act: 'log', entries: entries.map((entry) => ({ entry })), ask: null });
  });
});
