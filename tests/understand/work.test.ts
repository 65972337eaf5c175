import { describe, expect, it } from 'vitest';
import { outcome } from './conversation.ts';
import { entriesOf, say } from './say.ts';

const work = (notes: string | string[], at?: string) => entriesOf('work', notes, at);
const D = '2026-03-14T';

describe('hours and lengths that follow what was done', () => {
  it.each([
    [
      ['darned 2-1, ten minutes, and 2-3, twenty'],
      ['treatment: 10 @2-1 darn done', 'treatment: 20 @2-3 darn done'],
    ],
    [['2-1 darned 10 min, 2-2 15 min'], ['treatment: 10 @2-1 darn done', 'treatment: 15 @2-2 darn done']],
    // a second place with no length of its own, and one that is torn
    [['darned 2-1 and 2-3, ten minutes'], ['treatment: 10 @2-1,2-3 darn done']],
    [['darned 2-1, ten minutes, and 2-3 is torn'], ['condition: @2-3 tear', 'treatment: 10 @2-1 darn done']],
    // blocks, and no hours
    [['tied row two, one to four'], ['treatment: @2-1,2-2,2-3,2-4 done tie']],
    [['patched 3-2, nine to ten'], ['treatment: @3-2 done patch', 'work: 09:00 10:00 mending']],
    [
      ['patched 3-2 and darned 3-4', 'that took an hour'],
      ['treatment: @3-2 done patch', 'treatment: @3-4 darn done', 'work: 60 mending'],
    ],
    [
      ['patched 3-2 and darned 3-4', 'the darn took twenty minutes'],
      ['treatment: 20 @3-4 darn done', 'treatment: @3-2 done patch'],
    ],
    [['patched 3-2, 20m'], ['treatment: 20 @3-2 done patch']],
    [
      ['tied rows four, five to six'],
      ['treatment: @4-1,4-2,4-3,4-4,4-5,5-1,5-2,5-3,5-4,5-5,6-1,6-2,6-3,6-4,6-5 done tie'],
    ],
    [['patched 3-2 and darned 3-4', 'that took the phone off me for an hour'], []],
  ])('%j', (notes, entries) => {
    expect(outcome(notes).entries).toEqual(entries);
  });
});

describe('stretches of work', () => {
  it.each([
    [
      'mended from half seven to ten past nine this evening, bar twenty minutes for the school run',
      [{ task: 'mending', start: `${D}19:30`, end: `${D}21:10`, minutes: 80 }],
    ],
    ['mended seven to nine', [{ task: 'mending', start: `${D}19:00`, end: `${D}21:00` }]],
    ['cutting 7 to 9 then tea', [{ task: 'cutting', start: `${D}19:00`, end: `${D}21:00` }]],
    ['cutting 2 to 4 inch strips', []],
    ['mended 14:00-16:20, 10 off', [{ task: 'mending', start: `${D}14:00`, end: `${D}16:20`, minutes: 130 }]],
    ['took it off again', []],
    // several breaks of one length
    [
      'mending 8 to 11:20, two breaks of ten minutes each',
      [{ task: 'mending', start: `${D}08:00`, end: `${D}11:20`, minutes: 180 }],
    ],
    [
      'tying nine till twelve with two ten minute breaks',
      [{ task: 'tying', start: `${D}09:00`, end: `${D}12:00`, minutes: 160 }],
    ],
    // a rest told by its moments
    [
      'started tying at 9, lunch at 12, back at it at 12:45',
      [
        { task: 'tying', start: `${D}09:00`, end: `${D}12:00` },
        { task: 'tying', mark: 'start', time: `${D}12:45` },
      ],
    ],
    [
      'quilting from 2, tea at half three, back at quarter to four, done at five',
      [{ task: 'quilting', start: `${D}14:00`, end: `${D}17:00`, minutes: 165 }],
    ],
    ['the children have their tea at five', []],
    // a meal from one hour to another is a rest
    [
      'started mending at 2, tea from 3 to quarter past, stopped at 5',
      [{ task: 'mending', start: `${D}14:00`, end: `${D}17:00`, minutes: 165 }],
    ],
    ['dinner 6 to 7', []],
    ['finished mending 415', [{ task: 'mending', mark: 'stop', time: `${D}16:15` }]],
    ['binding off all round, 35 min', []],
    [
      "stopped mending at eleven for the nurse and didn't get back to it till two",
      [
        { task: 'mending', mark: 'stop', time: `${D}11:00` },
        { task: 'mending', mark: 'start', time: `${D}14:00` },
      ],
    ],
    ['survey 2pm', [{ task: 'survey', mark: 'start', time: `${D}14:00` }]],
    ['ceased 1030', [{ mark: 'stop', time: `${D}10:30` }]],
    // on to the next
    [
      "that's the survey finished on to the mending now",
      [
        { task: 'survey', mark: 'stop' },
        { task: 'mending', mark: 'start' },
      ],
    ],
    ['picked up the three spools of navy at 2.49', []],
    ['2 hours on 9 February', [{ minutes: 120 }]],
    // part of the stretch, and not spent at it
    [
      'so the survey quarter past six to ten past eight and I sat down to a sandwich for twenty minutes of that',
      [{ task: 'survey', start: `${D}18:15`, end: `${D}20:10`, minutes: 95 }],
    ],
    [
      'from six to nine on the binding, of which forty minutes was the neighbour calling',
      [{ task: 'binding', start: `${D}18:00`, end: `${D}21:00`, minutes: 140 }],
    ],
    [
      'Piecing 19:00-20:45 minus 15',
      [{ task: 'piecing', start: `${D}19:00`, end: `${D}20:45`, minutes: 90 }],
    ],
    [
      'Worked nine till noon and one till four on the cutting',
      [
        { task: 'cutting', start: `${D}09:00`, end: `${D}12:00` },
        { task: 'cutting', start: `${D}13:00`, end: `${D}16:00` },
      ],
    ],
    [
      'I began the survey at nine-fifteen and finished it at eleven-oh-five',
      [{ task: 'survey', start: `${D}09:15`, end: `${D}11:05` }],
    ],
    [
      'unpicking since quarter past eight, packing it in now',
      [{ task: 'taking-apart', start: `${D}20:15`, end: `${D}21:30` }],
    ],
    [
      'Yesterday, nine to noon, on the paperwork',
      [{ task: 'paperwork', start: '2026-03-13T09:00', end: '2026-03-13T12:00' }],
    ],
    [
      'mending 9-11.30, 12-1',
      [
        { task: 'mending', start: `${D}09:00`, end: `${D}11:30` },
        { task: 'mending', start: `${D}12:00`, end: `${D}13:00` },
      ],
    ],
    ['did the binding from 2 till 4', [{ task: 'binding', start: `${D}14:00`, end: `${D}16:00` }]],
    ['Binding. Half six to eight.', [{ task: 'binding', start: `${D}18:30`, end: `${D}20:00` }]],
    ['Nine to half eleven. Quilting, mostly.', [{ task: 'quilting', start: `${D}09:00`, end: `${D}11:30` }]],
    [
      'I was at it from 1 to 4:30 with half an hour for lunch, all piecing',
      [{ task: 'piecing', start: `${D}13:00`, end: `${D}16:30`, minutes: 180 }],
    ],
    [
      'started 6, dinner 7 to 7.30, finished 9, mending',
      [{ task: 'mending', start: `${D}18:00`, end: `${D}21:00`, minutes: 150 }],
    ],
    [
      'sat down at the frame at 3 and got up at 5:20, quilting',
      [{ task: 'quilting', start: `${D}15:00`, end: `${D}17:20` }],
    ],
    [
      'survey from 9 till 10, cleaning from 10 till 12',
      [
        { task: 'survey', start: `${D}09:00`, end: `${D}10:00` },
        { task: 'cleaning', start: `${D}10:00`, end: `${D}12:00` },
      ],
    ],
    [
      'five to eleven this morning till ten past twelve, tying',
      [{ task: 'tying', start: `${D}10:55`, end: `${D}12:10` }],
    ],
    ['from ten this morning till two, piecing', [{ task: 'piecing', start: `${D}10:00`, end: `${D}14:00` }]],
    [
      'yesterday 10 to 12 and 2 to 4 quilting',
      [
        { task: 'quilting', start: '2026-03-13T10:00', end: '2026-03-13T12:00' },
        { task: 'quilting', start: '2026-03-13T14:00', end: '2026-03-13T16:00' },
      ],
    ],
    [
      '10-12 mending, 1-3 piecing',
      [
        { task: 'mending', start: `${D}10:00`, end: `${D}12:00` },
        { task: 'piecing', start: `${D}13:00`, end: `${D}15:00` },
      ],
    ],
    [
      'mending ran one fifteen to two fifty minus a twenty minute nap',
      [{ task: 'mending', start: `${D}13:15`, end: `${D}14:50`, minutes: 75 }],
    ],
    [
      "seven o'clock it was when I sat down to the tying and half past eight when I got up",
      [{ task: 'tying', start: `${D}19:00`, end: `${D}20:30` }],
    ],
    [
      'resewed 2-3 from quarter to two until twenty-five past',
      [{ task: 'mending', start: `${D}13:45`, end: `${D}14:25` }],
    ],
    [
      'squared it up on Monday, and this afternoon I bound it, two till quarter past four',
      [{ task: 'binding', start: `${D}14:00`, end: `${D}16:15` }],
    ],
    ['9.30 start 11.15 stop mending', [{ task: 'mending', start: `${D}09:30`, end: `${D}11:15` }]],
    ['2-4.15 tying (15 min tea)', [{ task: 'tying', start: `${D}14:00`, end: `${D}16:15`, minutes: 120 }]],
    ['14h00-15h30 tying', [{ task: 'tying', start: `${D}14:00`, end: `${D}15:30` }]],
    [
      'mending 7.30-9.15pm with 15 off for the phone',
      [{ task: 'mending', start: `${D}19:30`, end: `${D}21:15`, minutes: 90 }],
    ],
    [
      'survey nine twenty five to ten to twelve with twenty minutes off for the telephone',
      [{ task: 'survey', start: `${D}09:25`, end: `${D}11:50`, minutes: 125 }],
    ],
    // a clock of 24 hours in words
    [
      'that was mending from nineteen hundred to twenty thirty with ten minutes off for a brew',
      [{ task: 'mending', start: `${D}19:00`, end: `${D}20:30`, minutes: 80 }],
    ],
    [
      'quilted the sashing fourteen fifteen to sixteen hundred',
      [{ task: 'quilting', start: `${D}14:15`, end: `${D}16:00` }],
    ],
    ['made between nineteen twenty and nineteen thirty', []],
    // the kind of work begins the sentence, and the hours end it
    ['Mending at the table 2 to 4', [{ task: 'mending', start: `${D}14:00`, end: `${D}16:00` }]],
    ['quilting in the kitchen rows 2 to 4', []],
    ['In at 8, out at 12. Mending.', [{ task: 'mending', start: `${D}08:00`, end: `${D}12:00` }]],
    [
      'Quilted from two until a quarter to five, stopping twice for ten minutes each.',
      [{ task: 'quilting', start: `${D}14:00`, end: `${D}16:45`, minutes: 145 }],
    ],
    ['I was at the quilting from 11 last night until half past midnight', []],
  ])('%s', (said, expected) => {
    if (expected.length) expect(work(said)).toEqual(expected);
    else for (const w of work(said)) expect(String(w['end'] ?? w['time']) <= `${D}21:30`).toBe(true);
  });
});

describe('starts and stops', () => {
  it.each([
    [
      'unpicking the binding started at quarter past ten',
      [{ task: 'taking-apart', mark: 'start', time: `2026-03-14T10:15` }],
    ],
    ["stopping, the baby's up", [{ mark: 'stop' }]],
    ['back to bed, you', []],
    ['knocked off at eleven last night', [{ mark: 'stop', time: '2026-03-13T23:00' }]],
    ['been at the quilting since quarter to two', [{ task: 'quilting', mark: 'start', time: `${D}13:45` }]],
    ['Stopped piecing at 4.35', [{ task: 'piecing', mark: 'stop', time: `${D}16:35` }]],
    ['survey done 7.40', [{ task: 'survey', mark: 'stop', time: `${D}19:40` }]],
    ['1045 started survey', [{ task: 'survey', mark: 'start', time: `${D}10:45` }]],
    ['finished the mending twenty minutes ago', [{ task: 'mending', mark: 'stop', time: `${D}21:10` }]],
    [
      "it's quarter past nine and I'm sitting down to the mending",
      [{ task: 'mending', mark: 'start', time: `${D}21:15` }],
    ],
    ['resuming mending 2:30', [{ task: 'mending', mark: 'start', time: `${D}14:30` }]],
    ['turned to paperwork around 8', [{ task: 'paperwork', mark: 'start', time: `${D}20:00` }]],
    ['switched to piecing at quarter past two', [{ task: 'piecing', mark: 'start', time: `${D}14:15` }]],
    ['began tying 1400hrs', [{ task: 'tying', mark: 'start', time: `${D}14:00` }]],
    [
      "half past six, off to make tea, that's the cutting done for today",
      [{ task: 'cutting', mark: 'stop', time: `${D}18:30` }],
    ],
    ['paused at 11.10', [{ mark: 'stop', time: `${D}11:10` }]],
    ['knocking it on the head for tonight', [{ mark: 'stop' }]],
    ['Put down the needle at 9.50.', [{ mark: 'stop', time: `${D}09:50` }]],
    ['stopped because the thread ran out', [{ mark: 'stop' }]],
    ['tools down', [{ mark: 'stop' }]],
    ["stop the clock now I'm off to my bed", [{ mark: 'stop' }]],
    ['end of session', [{ mark: 'stop' }]],
    ['0905 on, mending', [{ task: 'mending', mark: 'start', time: `${D}09:05` }]],
    ['2110h off', [{ mark: 'stop', time: `${D}21:10` }]],
    ['back at it quarter to six mending this time', [{ task: 'mending', mark: 'start', time: `${D}17:45` }]],
    [
      'started at ten past nine taking the binding off',
      [{ task: 'taking-apart', mark: 'start', time: `${D}21:10` }],
    ],
    [
      'quit at nine fifteen gonna have to buy another eight feet of binding',
      [{ mark: 'stop', time: `${D}21:15` }],
    ],
    ['the patch is back on again', []],
    ['stopped mending at sixteen forty', [{ task: 'mending', mark: 'stop', time: `${D}16:40` }]],
    [
      'started the taking apart at eight thirty got all the ties out',
      [{ task: 'taking-apart', mark: 'start', time: `${D}20:30` }],
    ],
    ['put the backing back again', []],
    ['cracking on with the survey', [{ task: 'survey', mark: 'start' }]],
    ["I'm starting the cutting now", [{ task: 'cutting', mark: 'start' }]],
    [
      "that's the survey finished and now I'm starting the mending",
      [
        { task: 'survey', mark: 'stop' },
        { task: 'mending', mark: 'start' },
      ],
    ],
  ])('%s', (said, expected) => expect(work(said)).toEqual(expected));
  it('goes on with what ran after a break', () => {
    expect(work(['starting the cleaning', 'stopping there for my tea'])).toEqual([
      { task: 'cleaning', mark: 'stop' },
    ]);
    expect(work(['starting the cleaning', 'stopping there for my tea', 'back at it'])).toEqual([
      { task: 'cleaning', mark: 'start' },
    ]);
    expect(work(['starting the cleaning', 'tea break 3:30', 'back 3:50'])).toEqual([
      { task: 'cleaning', mark: 'start', time: `${D}15:50` },
    ]);
  });
  it('takes a stop told after a start for no mend of it', () => {
    expect(work(['started mending at 2', 'packed in at ten to five, wrists are gone'])).toEqual([
      { task: 'mending', mark: 'stop', time: `${D}16:50` },
    ]);
  });
  it('asks for a time that nobody knows', () => {
    const reading = say("I did some unpicking last week, couldn't say how long");
    expect(reading.entries.map((e) => e.entry)).toEqual([{ kind: 'work', task: 'taking-apart' }]);
    expect(reading.ask?.slot).toBe('time');
  });
});

describe('lengths', () => {
  it.each([
    [
      'cutting 25 min, piecing 1:20',
      [
        { task: 'cutting', minutes: 25 },
        { task: 'piecing', minutes: 80 },
      ],
    ],
    [
      'two hours of mending, one of cutting and forty minutes writing it up',
      [
        { task: 'mending', minutes: 120 },
        { task: 'cutting', minutes: 60 },
        { task: 'paperwork', minutes: 40 },
      ],
    ],
    ['piecing, hundred and ten minutes all in', [{ task: 'piecing', minutes: 110 }]],
    ['mending 1:20 to 3', [{ task: 'mending', start: `${D}13:20`, end: `${D}15:00` }]],
    ['piecing, all told 3 hours', [{ task: 'piecing', minutes: 180 }]],
    [
      'three quarters of an hour of unpicking and twenty minutes on the paperwork',
      [
        { task: 'taking-apart', minutes: 45 },
        { task: 'paperwork', minutes: 20 },
      ],
    ],
    ['spent an hour and a half in the shop', [{ task: 'shopping', minutes: 90 }]],
    [
      '25 min cutting, 10 min paperwork',
      [
        { task: 'cutting', minutes: 25 },
        { task: 'paperwork', minutes: 10 },
      ],
    ],
    [
      'did 40 min of tidying up then an hour ten on cutting',
      [
        { task: 'other', minutes: 40 },
        { task: 'cutting', minutes: 70 },
      ],
    ],
    ['quilted 2 hours tonight', [{ task: 'quilting', minutes: 120 }]],
    ['I unpicked for about fifty minutes after breakfast', [{ task: 'taking-apart', minutes: 50 }]],
    ['1:45 hrs quilting', [{ task: 'quilting', minutes: 105 }]],
    ['that was four hours of my life on unpicking', [{ task: 'taking-apart', minutes: 240 }]],
    ['did 45 mins of binding last night', [{ task: 'binding', minutes: 45 }]],
    ['went into town for thread, an hour and ten all told', [{ task: 'shopping', minutes: 70 }]],
    ['Total today 3 h 15, all mending.', [{ task: 'mending', minutes: 195 }]],
    ['Finished the tying. Four hours ten, all told.', [{ task: 'tying', minutes: 250 }]],
    ['3 hrs today', [{ minutes: 180 }]],
    ["I've been at this for three hours straight", [{ minutes: 180 }]],
  ])('%s', (said, expected) => expect(work(said)).toEqual(expected));
  it("gives one treatment's own length to it, with no work beside", () => {
    const said = [
      'darned 2-4 with grey wool, took a quarter of an hour',
      'Vacuumed 2-4. Half an hour, that took.',
      'patched 2-4, 25 mins',
      'it took me half an hour to darn 3-2',
      'patching 3-2 took twenty five minutes',
      'quilted rows one to three in two and a half hours',
    ];
    expect(said.map((s) => entriesOf('treatment', s)[0]?.['minutes'])).toEqual([15, 30, 25, 30, 25, 150]);
    for (const s of said) expect(work(s)).toEqual([]);
  });
  it('makes work of one length for several treatments', () => {
    expect(work('darned 2-4 and patched 3-1, fifty minutes altogether')).toEqual([
      { task: 'mending', minutes: 50 },
    ]);
  });
});

describe('what is no time at work', () => {
  it.each([
    'the seam between five and six in row two is open',
    'between 5-1 and 5-2 the seam has gone',
    'the stain had stopped spreading',
    'closed the seams at 3-2 and 3-3',
    'it dries in two hours',
    'three to four stitches are gone in 2-2',
    '25:70',
    'the label says 1910-1912',
    "I'll stop at ten",
    'I want to get started on the tying tomorrow',
    "I'll carry on with the mending tomorrow",
    'the quilt stops at the border',
    'started fraying along the bottom',
    'call it four inches',
  ])('%s', (said) => expect(work(said)).toEqual([]));
  it('never gives a time after the note nor an end before its start', () => {
    const notes = [
      'from ten to half past nine on the mending',
      'stopped tying at 11',
      'started cutting at ten pm',
      'binding 22:00-23:30',
      'midnight till two quilting',
      'sewing from nine',
    ];
    for (const at of ['2026-03-14T00:10:00+00:00', '2026-03-14T09:05:00-05:00', '2026-03-14T21:30:00+10:00'])
      for (const note of notes)
        for (const w of work(note, at)) {
          for (const key of ['time', 'start', 'end'])
            if (w[key]) expect(String(w[key]) <= at.slice(0, 16), `${note} ${JSON.stringify(w)}`).toBe(true);
          if (w['start'] && w['end']) expect(String(w['start']) < String(w['end']), note).toBe(true);
        }
  });
});

describe('a deed begun or ended at a time is told as well as the time', () => {
  it.each([
    [
      'started taking the old binding off at quarter past two',
      'taking-apart',
      'start',
      '14:15',
      'remove',
      'doing',
    ],
    [
      'started unpicking the old patch on 3-2 at ten past four',
      'taking-apart',
      'start',
      '16:10',
      'remove',
      'doing',
    ],
    ['started tying row three at 3:40', 'tying', 'start', '15:40', 'tie', 'doing'],
  ])('%s', (said, task, mark, time, action, state) => {
    const [w, ...others] = work(said);
    expect(w).toMatchObject({ task, mark, time: `${D}${time}` });
    expect(others).toEqual([]);
    expect(entriesOf('treatment', said)).toMatchObject([{ action, state }]);
  });
  it('but a kind of work alone is no treatment', () => {
    expect(entriesOf('treatment', 'started the tying at 3:40')).toEqual([]);
  });
});

describe('what was done in a stretch of time is told beside it', () => {
  it.each([
    ['unpicked the binding from nine to ten', 'taking-apart', 'binding'],
    ['unpicked the ties from nine to ten', 'taking-apart', 'ties'],
  ])('%s', (said, task, object) => {
    expect(entriesOf('work', said)).toMatchObject([{ task }]);
    expect(entriesOf('treatment', said)).toEqual([{ action: 'remove', state: 'done', object }]);
  });
  it('a binding put on', () => {
    const said = 'The binding went on between 7:40 and 9:15 this evening, finished by hand';
    expect(entriesOf('work', said)).toMatchObject([{ task: 'binding' }]);
    expect(entriesOf('treatment', said)).toEqual([{ action: 'bind', state: 'done', stitch: 'hand' }]);
  });
  it('and nothing where only the work is named', () => {
    expect(entriesOf('treatment', 'unpicking from nine to ten')).toEqual([]);
  });
  it('a length spent at a place', () => {
    expect(entriesOf('work', '25 min on 2-2')).toMatchObject([{ minutes: 25 }]);
  });
});

describe('a stretch of work that answers no question', () => {
  it('of another part of the day than was asked for', () => {
    const reading = say([
      'did a bit of mending before breakfast, no idea how long',
      'mended from seven till quarter past nine tonight',
    ]);
    expect(reading.act).toBe('log');
  });
  it('but a time alone does', () => {
    const reading = say(['did some tying this morning', 'from five thirty to six fifteen']);
    expect(reading.act).toBe('amend');
  });
});

describe('a stretch that begins where another ended', () => {
  it.each([
    "cutting occupied me from 1:10 to 2 o'clock, and piecing from then until 2:45",
    'one ten to two for the cutting and from then until quarter to three for the piecing',
  ])('%s', (said) => {
    expect(entriesOf('work', said).map(({ task }) => task)).toEqual(['cutting', 'piecing']);
    const [first, second] = entriesOf('work', said);
    expect(second!['start']).toBe(first!['end']);
  });
  it('and none where nothing ended before', () => {
    expect(entriesOf('work', 'then until eleven cleaning')).toMatchObject([{ mark: 'stop' }]);
  });
});
