import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

/** What was read, in one line an entry. */
const read = (notes: string | string[]): string[] =>
  say(notes).entries.map(({ entry }) => {
    const { kind, name: _name, fabric: _fabric, ...slots } = entry as Record<string, unknown>;
    const words = Object.values(slots).map((v) => (Array.isArray(v) ? v.join(' ') : String(v)));
    return [kind, ...words].join(' ');
  });

describe('words without their vowels', () => {
  it.each([
    ['3-2 trn, drnd 15 min', ['condition tear 3-2', 'treatment darn done 3-2 15']],
    ['r3b2 hle, ptchd hnd', ['condition hole 3-2', 'treatment patch done 3-2 hand']],
    ['bndg frd, rt sde', ['condition fraying edge-right']],
    ['prssd 3-1', ['treatment press done 3-1']],
    ["darn'd 3-2", ['treatment darn done 3-2']],
    ["qlt'd 2-1", ['treatment quilt done 2-1']],
  ])('%s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });

  it.each(['first thing 3-2 is torn', "he'd say 3-2 is torn"])('leaves words as they are: %s', (note) => {
    expect(read(note)).toEqual(['condition tear 3-2']);
    expect(say(note).slips).toBeUndefined();
  });
});

describe('blocks in short hand', () => {
  it.each([
    ['3/4: hole', '3-4'],
    ['2/2+2/3: hole', '2-2 2-3'],
    ['R5-C2, R5-C3 - hole', '5-2 5-3'],
    ['R3C2-R3C4: hole', '3-2 3-3 3-4'],
    ['3-2 → 3-4: hole', '3-2 3-3 3-4'],
    ['1) R2-C4 - hole', '2-4'],
    ['red spot, col 4: hole', '4-4'],
    ['bot bdr - hole', 'border-bottom'],
    ['lt edge - hole', 'edge-left'],
  ])('%s', (note, places) => {
    expect(read(note)).toEqual([`condition hole ${places}`]);
  });

  it.each([
    ['trimmed 3/8 off the left edge', ['treatment trim done edge-left']],
    ['bought 3/4 yd of calico', ['material fabric bought 0.75 yd']],
  ])('no block: %s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });
});

describe('times in short hand', () => {
  it.each([
    ['3-2 darned 15m', ['treatment darn done 3-2 15']],
    ['3-2 + 3-3 darned, 40m both', ['treatment darn done 3-2 3-3 40']],
    ['bought 15m muslin', ['material fabric bought 15 m']],
    ['0915h on', ['work start 2026-03-14T09:15']],
    ['2110h off', ['work stop 2026-03-14T21:10']],
    ['13:00: taking apart', ['work taking-apart start 2026-03-14T13:00']],
    ['mend 18.15-20, 15m tea', ['work mending 2026-03-14T18:15 2026-03-14T20:00 90']],
  ])('%s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });
});

describe('thoughts and likenesses in short hand', () => {
  it.each([
    [['2-3: net?'], ['treatment overlay considering 2-3']],
    [['2-3 thin - net next wk'], ['condition thin 2-3', 'treatment overlay planned 2-3']],
    [['2-3: patch?', "won't risk it"], ['treatment patch dropped 2-3']],
    [['3-4: patched, hand', '3-5: patched likewise, 10m'], ['treatment patch done 3-5 hand 10']],
    [['3-4: darned, running st', '3-5 do.'], ['treatment darn done 3-5 running']],
    [['bought 1,5 m muslin'], ['material fabric bought 1.5 m']],
  ])('%s', (notes, entries) => {
    expect(read(notes)).toEqual(entries);
  });
});

describe('things and what became of them', () => {
  it.each([
    ['binding: off', ['treatment remove done binding binding']],
    ['ties → out of row 3', ['treatment remove done ties 3-1 3-2 3-3 3-4 3-5']],
    ['3-2 patch off, hole beneath', ['treatment remove done old-patch 3-2', 'condition hole 3-2']],
    ['3-2: old patch. to come off', ['condition old-repair 3-2', 'treatment remove planned old-patch 3-2']],
    ['3-2/3-3 seam - open', ['condition split-seam 3-2 3-3']],
    ['ties: 3-2 gone, 3-3 ok', ['condition broken-stitching 3-2', 'condition sound 3-3']],
    ['binding worn: left side, bottom', ['condition fraying edge-left edge-bottom']],
  ])('%s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });
});

describe('matters and goods in short hand', () => {
  it.each([
    ['tie vs quilt → tie', ['decision tying settled']],
    ['hand or machine quilting: hand', ['decision quilting settled']],
    ['batting: wool/cotton?', ['decision batting open']],
    ['to buy - net 2 yd; needles 1 pk', ['material net needed 2 yd', 'material needle needed 1 pack']],
    ['got 2 yd net in drawer', ['material net on-hand 2 yd']],
    ['binding strips cut, white sateen', ['treatment cut done binding', 'material binding used']],
  ])('%s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });
});

describe('along a row in short hand', () => {
  it.each([
    ['r6 - ties gone b2-4', ['condition broken-stitching 6-2 6-3 6-4']],
    ['R4: ties gone C2-C4', ['condition broken-stitching 4-2 4-3 4-4']],
    ['r2 c3 torn, c4 ok', ['condition tear 2-3', 'condition sound 2-4']],
    ['r1 ok bar b4 - torn', ['condition sound 1-1 1-2 1-3 1-5', 'condition tear 1-4']],
    [['tied r3 b1-3', 'rest of r3 done'], ['treatment tie done 3-4 3-5']],
    [['bdg off L+R, 40m', 'T+B tmrw'], ['treatment remove planned binding edge-top edge-bottom']],
    [
      'r4 faded. c2 torn',
      ['condition fading 4-1 4-2 4-3 4-4 4-5', 'condition tear 1-2 2-2 3-2 4-2 5-2 6-2 7-2'],
    ],
  ])('%s', (notes, entries) => {
    expect(read(notes)).toEqual(entries);
  });
});

describe('hours in short hand', () => {
  it.each([
    ['0910 survey', ['work survey start 2026-03-14T09:10']],
    ['Tue 2-4 mending', ['work mending 2026-03-10T14:00 2026-03-10T16:00']],
    ['Fri 2-3 torn', ['condition tear 2-3']],
  ])('%s', (note, entries) => {
    expect(read(note)).toEqual(entries);
  });
});

describe('articles left out', () => {
  it.each([
    ['closed seam 3-2/4-2', ['treatment resew done 3-2 4-2']],
    [['tied r1-5', 'other 2 rows tied'], ['treatment tie done 6-1 6-2 6-3 6-4 6-5 7-1 7-2 7-3 7-4 7-5']],
    ['2-3 thin, needs net', ['condition thin 2-3', 'treatment overlay planned 2-3']],
    ['whole-quilt wash called off', ['treatment wash dropped quilt']],
    ['tied: r3 full, r4 - c1, c2', ['treatment tie done 3-1 3-2 3-3 3-4 3-5 4-1 4-2']],
    ['need net, 1 yd', ['material net needed 1 yd']],
  ])('%s', (notes, entries) => {
    expect(read(notes)).toEqual(entries);
  });
});
