import { phrases } from './phrases.ts';

/**
 * What people say around what they have to say. None of it tells anything of the work. Contractions are two words, as the
 * tokens are ("let 's"). Words that mend ("no", "sorry", "wait", "actually", "I mean") or doubt ("I think") are not among them.
 */
/** At the head of a note or a sentence, with or without a comma behind them. */
export const OPENINGS = phrases(`
  just to say, just to say that, i should say, i should say that, i 'd better say, i 'd better say that,
  i better say, i must say, i have to say, i ought to say, let me say,
  just so you know, so you know, just noting, just noting that, just to note, just to note that,
  to note, just a quick one, a quick one, quick one, just a quick note, quick note, a quick note, just a note, a note, one for the log, one for the book,
  for the log, for the book, for the record, for the notes, for the notebook, for my notes, tell the log, tell the log that, tell the book,
  log this, put this down, write this down, note this down, take this down, take a note, make a note, make a note that, put down that,
  put it down that, write down that, can you put down that, can you note that, please note, please note that, note that, note also, let the record show,
  happy to report, i 'm happy to report, i can report, i can report that, i 'm glad to say, glad to say, glad to report, i 'm pleased to say,
  pleased to say, i 'm sorry to say, i 'm afraid to say, sad to say, sorry to say, i 'm sad to say,
  you 'll be glad|pleased|happy|relieved to hear|know that?, you will be glad to hear, delighted to say|report, good to say,
  let me count, let me count them, let 's count, let me see, let me see now, let 's see, let 's see now, let 's have a look, let me think, let me think now, let me have a look,
  now let me see, now let 's see, right let 's see, where was i, where were we, now where was i, here we go, here goes, here we are,
  the thing is, here 's the thing, as i say, as i said, like i said, like i say, like i was saying, as i was saying,
  as it happens, as it turns out, it turns out, turns out, it turns out that, turns out that, as far as i can see, as far as i can tell, so far as i can see,
  from what i can see, from what i can tell, by the look of it, by the looks of it, from the look of it, from the looks of it, if you ask me,
  believe it or not, would you believe, would you believe it, mind you, funny enough, funnily enough, oddly enough, strange to say, curiously enough, sure enough,
  one more thing, another thing, one other thing, oh and one more thing, and one more thing, and another thing, just one more thing, one last thing,
  while i think of it, while i remember, while i 'm at it, while i 'm here, before i forget, what else,
  good evening, good morning, good afternoon, good day, me again, it 's me again, here i am again, i 'm back, hello again,
  right so, right then, right then so, right now then, okay so, okay then, ok so, ok then, alright so, alright then, all right so, all right then, well now, well then, now then, so then,
  okay and, ok and, right and, yeah so, yeah and
`);

/** At the head too, but only where a comma, a colon or a dash follows: without one they may belong to what is told. */
export const OPENINGS_APART = phrases(`
  alright, all right, okay, ok, right, right you are, well, anyway, anyways, anyhow, also, evening, morning, hello, hi, hey, howdy, listen, so, so now, now, last thing, couple of things, a couple of things, couple things, two things, three things, a few things, few things, next, next up, next thing,
  first thing, first off, first of all, to begin with, to start with, for starters, plus, fyi, btw, ps, note, update, log, progress, report, news,
  by the way, oh by the way, honestly, to be honest, frankly, basically, essentially, you know, you know what, good news, bad news, sad news,
  happily, sadly, luckily, thankfully, alas, i 'm afraid, of course, naturally, obviously, goodness, goodness me, my goodness, gosh, gracious, heavens, lord, oh lord,
  dear me, oh dear, oh my, my my, phew, whew, sigh, huh, ooh, aha, yay, hooray, hurrah, at last, finally, in the end, after all that
`);

/** Between two commas, or behind the last one: said in passing. */
export const PASSING = phrases(`
  though, mind you, mind, all the same, incidentally, strangely enough, to be fair, however, old girl, old thing, my dear, my love,
  let me count, let me count them, let 's count, let me think, let me look, let me check, let me have a look, let 's have a look, wait for it, hold your breath, i counted, i counted them, what, shoot, damn, damn it, blast, blast it, oh blast, oh shoot, bother, oh bother, heck, gosh, drat, oops, whoops, you know, y'know, ya know, you see, needless to say, to tell the truth, btw, let me see, let 's see, mind you, as i say, as i said, like i said, honestly, if i 'm honest, to be fair, frankly, of course,
  naturally, obviously, by the way, and by the way, i 'm afraid, i 'm afraid to say, i 'm sorry to say, sorry to say, i 'm glad to say, i 'm pleased to say, i 'm happy to say, glad to say, thank goodness,
  thank heavens, thank god, bless it, bless her, bless him, poor thing, believe it or not, would you believe, would you believe it, it turns out, as it turns out,
  as it happens, as far as i can see, as far as i can tell, so far as i can see, by the look of it, by the looks of it, from the look of it, if you ask me, if you please,
  i 'd say, i 'd guess, i would say, i would guess, i should think, well, okay, ok,
  oddly enough, funnily enough, funny enough, for what it 's worth, in fact, in any case, at any rate, as it were, so to speak, i must say, i have to say, i may say, let me tell you,
  i can tell you, if i remember right, if i remember rightly, what 's it called, what do you call it, what d' you call it, whatever it 's called, what are they called, whatever they 're called, what 's the word, what 's the name of it, what 's its name, what do they call it, of all things, bother it, drat it, and yes, anyway, anyhow
`);

/** Behind the last comma or stop of a note, with nothing behind them. */
export const CLOSINGS = phrases(`
  for that matter, come to that, if it comes to that, now i look, now that i look, as it goes, i see, i notice,
  full stop, end of story, end of discussion, end of, no arguments, no ifs or buts, that 's that, and that 's that, there we are, so there we are, there we go, so there we go, there you go, there you are, so there, there, phew, whew, right, right then,
  okay, ok, okay then, alright, all right, hooray, hurrah, yay, at last, finally, for sure, definitely, honestly, really, mind, go figure, goodness me, dear me, oh dear, good grief, what a day, what a job, what a mess, what a week,
  i have to say, put that down, write that down, note that, make a note, make a note of that, make a note of it, for the record, for the log, for the book, got that, did you get that, have you got that, you got that, end of note, end of report, over,
  not bad, not too bad, lol, ha, haha, ta, thanks, thank you, please, moving on, onwards, on we go, and so on, and all that
`);

/** Wherever they stand, with no mark about them: "darned another one while I was at it in the ecru". */
export const ANYWHERE = phrases(`
  while i was at it, while i 'm at it, whilst i was at it, whilst i 'm at it, while i was about it, while i 'm about it, while we 're at it, while we were at it,
  while i had the needle threaded, while i had the needle out, while i had it out, while i had the iron on, while i had the iron out
`);
