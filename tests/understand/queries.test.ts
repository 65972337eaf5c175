import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

/** Many ways to put each question. All are inventions of our own. */
const QUESTIONS: Record<string, string[]> = {
  'hours-total': [
    'how long have i spent on this quilt all told',
    "what's the running total of hours",
    'Hours so far?',
    'all in all how many hours is that',
    'add up my hours for me would you',
    "how long is that I've been at it now",
  ],
  'hours-task': [
    'how many hours did the tying take',
    'time spent patching',
    'remind me how many hours on the binding',
    'hrs darning so far?',
    'how much have I done on the piecing',
    'how much of that was the quilting',
    "what's the mending come to",
    'and the piecing? how many hours',
    'how long did it take to tie',
  ],
  'hours-day': [
    'how long did i work last night',
    'and total for fri',
    "so what's my total for yesterday",
    'hours for wednesday please',
    'did i get four hours in yesterday',
  ],
  'open-matters': [
    "what haven't i decided",
    'show open points, i.e. anything not yet decided',
    'which points are still unsettled',
    'list the open matters',
    'anything still up in the air',
    "what's left to decide",
    'What am I still in two minds about?',
    'Which questions have I left hanging?',
    'what did we agree on price',
    'so what did I decide about the backing',
    "remind me what I haven't settled",
    'where did I leave things open',
    'what choices have I still to make',
  ],
  'to-do': [
    'what do i still gotta do on this thing',
    'anything else to be done on 3-3',
    "what's next",
    'what did I plan for tomorrow',
    'what needs doing on the border',
    'which tasks are pending?',
    'which blocks are still waiting',
    "remind me what's left",
    'what jobs are outstanding',
    'can you tell me which blocks still want patches',
    'which blocks have I not looked at',
    'Which works must I on this quilt still make?',
    'Before I put the lamp out, what is still to be done?',
  ],
  'place-history': [
    'what did i do to row three block one',
    'tell me about block 2-2',
    'history of 3-5',
    'what thread did i use on 2-4',
    'what did we settle for 2-5',
    'what do we know about the top left corner block',
    'have I patched the red spot ones',
    'is row five done',
    "what's been done to too for so far",
    'Treatment history for the centre, please.',
    '3-4: everything so far please',
    'has 3-2 been mended',
    'look up row 3 block 2 for me',
    'was 3-2 torn',
  ],
  'materials-needed': [
    'do i need anything from the shop',
    'shopping list please',
    'what am i short of',
    'do I have any interfacing',
    'how much thread have I got left',
    'buy list',
  ],
  yardage: [
    'how much shall I need for the binding?',
    'how much wadding will i need',
    'yards for the back?',
    'do i have enough calico for the back',
    "what'll the backing take",
    'will five yards be enough for the backing',
    'and for the binding how much would I want',
  ],
  cost: [
    "what's the damage so far",
    'what have i laid out on materials',
    "what's it cost me up to now",
    'total cost?',
    'money so far',
    'spent so far? $',
  ],
  'last-entry': [
    'repeat my last entry back to me',
    'what did i just say',
    'read back the last one',
    'what did you last write down',
    'where did I leave off',
    'What was it I told you last?',
    'what have you got down',
    'did you get that',
    'play that back',
    'what did I say just now',
  ],
  'day-review': [
    'summary of my work yesterday please',
    "what'd i get done yesterday i can't even remember",
    'how did I spend yesterday',
    "read me today's notes",
    'what got done on monday',
    'give me a summary of yesterday',
    "yesterday's notes please",
    'rundown of yesterday',
    'Read me back everything from the fifth.',
  ],
};

describe('questions to the log', () => {
  const table = Object.entries(QUESTIONS).flatMap(([query, notes]) => notes.map((note) => [note, query]));
  it.each(table)('%s -> %s', (note, query) => {
    const reading = say(note!);
    expect([reading.act, reading.query]).toEqual(['query', query]);
    expect(reading.entries).toEqual([]);
  });

  it.each([
    ['how much wadding will i need', { about: 'batting' }],
    ['how many yards for the borders', { about: 'border' }],
    ['how many hours did the tying take', { task: 'tying' }],
    ['what did i do to row three block one', { places: ['3-1'] }],
  ])('%s carries what it asks after', (note, args) => {
    expect(say(note).arguments).toMatchObject(args);
  });

  it.each([
    'still need three yards of calico for the back',
    'have half a yard of net left over',
    'which wadding i don’t know yet',
    '2-2: patch it or leave it?',
    'where was i, yes, two three, darned it',
    'do i tie it or quilt it',
    "what's wrong with 3-1 is it's torn",
    'how much she wants to pay is not settled',
    'did you hear that dog',
    "round the edge it's not what I'd feared, though 3-2 is frayed",
    'how are you today love',
    "couldn't tell you how long the piecing took",
  ])('%s tells something and is no question to the log', (note) => {
    expect(say(note).act).not.toBe('query');
  });
});

describe('questions asked on', () => {
  it.each([
    ['how many hours went into the binding?', 'and the whole quilt?', 'hours-total'],
    ['how many hours went into the binding?', 'and the tying?', 'hours-task'],
    ['how long did I spend yesterday?', 'and today?', 'hours-day'],
    ['what have I done on 3-2?', 'what about 3-3', 'place-history'],
  ])('%s %s', (first, next, query) => {
    const reading = say([first, next]);
    expect([reading.act, reading.query]).toEqual(['query', query]);
  });
  it('tells something new where a deed is told', () => {
    expect(say(['how many hours went into the binding?', 'and patched 3-3']).act).toBe('log');
  });
  it('asks where damage was found, and takes what is told of a place for no question', () => {
    expect(say('which blocks are stained').query).toBe('place-history');
    expect(say('where was that moth damage').query).toBe('place-history');
    expect(say('so where the binding was the top edge is ravelling').act).toBe('log');
  });
});
