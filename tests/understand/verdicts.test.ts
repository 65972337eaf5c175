import { describe, expect, it } from 'vitest';
import { treatmentsSaid } from './bench-quilt.ts';

describe('ways in question', () => {
  it.each<[note: string, said: string[]]>([
    ['the hole in 2-2 could be patched or darned', ['patch considering 2-2', 'darn considering 2-2']],
    ['for 3-3 a darn or a new piece cut in', ['darn considering 3-3', 'replace considering 3-3']],
    ["for 2-4 I'm thinking net or leave it", ['overlay considering 2-4', 'leave considering 2-4']],
    [
      '2-1, 3-4: net over? darn? nothing?',
      ['overlay considering 2-1 3-4', 'darn considering 2-1 3-4', 'leave considering 2-1 3-4'],
    ],
    [
      'the old patch on 6-2 could come off or stay',
      ['remove considering old-patch 6-2', 'leave considering 6-2'],
    ],
    [
      'I can see three ways for 3-3: cut it out and piece a new one in, cover it with crepeline, or live with it',
      ['replace considering 3-3', 'overlay considering 3-3', 'leave considering 3-3'],
    ],
    // an "or" between other things than two ways
    ["I'll patch 3-2 tomorrow or thursday", ['patch planned 3-2']],
    ['patched 3-2, twenty minutes or so', ['patch done 20min 3-2']],
  ])('%s', (note, said) => {
    expect(treatmentsSaid(note)).toEqual(said);
  });
});

describe('what stood open is taken or given up', () => {
  it.each<[notes: string[], said: string[]]>([
    [
      ['the hole in 2-2 could be patched or darned', 'darning it. no patch there'],
      ['darn doing 2-2', 'patch dropped 2-2'],
    ],
    [
      ['4-4: net over? or a support behind', 'net for 4-4. no support'],
      ['overlay planned 4-4', 'stabilize dropped 4-4'],
    ],
    [
      ['for 3-3 a darn or a new piece cut in', 'I darned it, so no new piece'],
      ['darn done 3-3', 'replace dropped 3-3'],
    ],
    [['darned 3-3 or patch it, undecided', 'forget the patch'], ['patch dropped 3-3']],
    [
      ['3-2 has gone thin', 'net over it? lawn at the back of it? hmm'],
      ['overlay considering 3-2', 'stabilize considering 3-2'],
    ],
    [
      [
        '3-2 has gone thin',
        'net over it? lawn at the back of it?',
        "it's having both, lawn at the back and the net on top",
      ],
      ['stabilize planned 3-2', 'overlay planned 3-2'],
    ],
    [['4-1 is worn', 'bought a piece of lawn for the back'], []],
    [['the lawn at the back of the shop was 4 pounds a metre'], []],
    [
      ['do I leave the batting or do I pull it'],
      ['leave considering batting', 'remove considering batting batting'],
    ],
    [
      ['do I leave the batting or pull it out?', "leave it, I'm not pulling anything"],
      ['leave done batting', 'remove dropped batting batting'],
    ],
    [
      ["don't know whether to leave the backing or replace it"],
      ['leave considering backing', 'replace considering backing'],
    ],
    [
      ['2-5 has a tear', 'patch it I think, or maybe a darn', 'darn it is for that tear'],
      ['darn planned 2-5'],
    ],
    [['thinking of washing it', 'washing is out'], ['wash dropped quilt']],
    [['I was for washing it but she will not have it so that is off'], ['wash dropped quilt']],
    [["I'm darning 4-4 tomorrow", "no darning after all, it'll do"], ['darn dropped 4-4']],
    [['3-3 was going to get a patch, I have changed my mind about that'], ['patch dropped 3-3']],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});

describe('a note that only says what becomes of the way that stood open', () => {
  it.each<[notes: string[], said: string[]]>([
    [['2-2 I might darn', 'nah, not worth it'], ['darn dropped 2-2']],
    [['2-2 I might darn', 'slept on it and I will'], ['darn planned 2-2']],
    [['might net 2-2', 'or maybe a patch'], ['patch considering 2-2']],
    [
      ['not sure about 2-2, net over it or replace it', "replacing's too much, net then"],
      ['replace dropped 2-2', 'overlay planned 2-2'],
    ],
    // of what is done, and where two ways stand open, it says nothing
    [['darned 2-2', 'not worth it'], []],
    [['2-2: net or patch?', "let's do it"], []],
  ])('%s', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});

describe('what is said next of what was found or planned', () => {
  it.each<[notes: string[], said: string[]]>([
    [['2-3 torn', 'could do with a patch'], ['patch planned 2-3']],
    [['2-3 torn', 'needs darning'], ['darn planned 2-3']],
    [["there's a hole in 2-3", 'put a new patch on'], ['patch done 2-3']],
    [
      ['2-3 darned, 2-4 patched', 'other way round'],
      ['darn done 2-4', 'patch done 2-3'],
    ],
    [['will net 3-3 tomorrow', 'did it tonight after all'], ['overlay done 3-3']],
    // nothing was found there before
    [['bought three yards of muslin', 'needs a patch'], ['patch planned']],
  ])('%s', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});
