/**
 * Words of the life around the work. None of them is said of a quilt being mended, or only rarely: a note that has one and
 * logs nothing is talk aside. Contractions are two words, as the tokens are ("wo n't").
 */

const phrases = (list: string): string[] =>
  list
    .split(',')
    .map((p) => p.trim())
    .filter(Boolean);

/** Creatures, callers, things that ring, whistle, drive past or go out, meals, weather, the body. */
export const ASIDE_THINGS: string[] = phrases(`
  cat, cats, kitten, kitty, puss, dog, dogs, doggy, puppy, pup, hen, hens, chickens, rooster, cockerel,
  goat, sheep,
  cow, cows, calves, horse, pony, parrot, budgie, canary, rabbit, hamster, wasp, bee, spider, mouse,
  magpie, kookaburra,
  crow, crows, seagull, seagulls, gulls, pigeon, pigeons, owl, fox, squirrel, paws, walkies, barking,
  meowing, miaowing,
  purring, bluebottle, mosquito,
  phone, telephone, doorbell, door bell, buzzer, the door, at door, front door, back door, knock,
  knocking, postman, post woman,
  postwoman, postie, mail carrier, mailman, mailwoman, the post, the mail, parcel, package for, courier,
  delivery man, delivery driver,
  delivery van, neighbour, neighbours, neighbor, neighbors, next door, upstairs, downstairs,
  meter reader, window cleaner, plumber,
  electrician, gas man, the gas, bin men, bin lorry, garbage truck, dustmen, salesman, sales call,
  wrong number, visitor, visitors,
  company coming, letterbox, mailbox, the gate, the landlady, milkman, chimney sweep, piano tuner,
  somebody at, someone at,
  baby, wee one, little one, toddler, kids, the children, grandson, granddaughter, grandkid, grandkids, grandchild, grandchildren, nephew,
  niece, husband, hubby, wife, mum, mom, mam, dad, daddy, mummy, mommy, sister, brother, young lad,
  windowsill, window sill, mantelpiece, sideboard, homework, school run, school bus, bedtime, her nap, his nap, her bath, his bath,
  kettle, oven, stove, hob, the pan, saucepan, the toast, toaster, microwave, dishwasher,
  washing machine, tumble dryer, fridge,
  boiler, heating, radiator, furnace, the fuse, power cut, power's gone, light bulb, bulb's gone,
  lights went, light's gone,
  smoke alarm, alarm, siren, the tap, the sink, the dishes, the bins, the rubbish, lamp's gone, battery,
  charger, wifi,
  fire drill, loudspeaker, tannoy, intercom, announcement, lodger, flatmate, roommate, boyfriend, girlfriend, guests,
  gardener, decorator, salesperson, canvasser, bicycle, bike, scooter, skateboard, bus, tram, taxi, the lift, elevator,
  blender, mixer, kitchen timer, the timer, egg timer, washing up, dishes, candle,  generator, power's out, power's off,
  heat wave, wind's, gale, draught, draft in here, freezing in here, boiling in here, hot in here, cold in here,
   ants, frog, raccoon, deer, possum,   ducks, donkey, pig, tortoise, goldfish, ferret, guinea pig,
  bread, dough, roast, casserole, stew, pie, scones, sausages, chips, potatoes, jam's, crumpet, toast, sandwiches, snack,
  headache, backache, stomach, yawn, yawning, my thumb, my wrist, my elbow, my ears, my nose, my hair, my chair,
  podcast, audiobook, forecast, cricket, tennis, the race, concert, practice, appointment, dentist, doctor's, hairdresser,
  texting,
  ringing, rang, video call, computer, laptop, printer, internet, password, exam, lesson,  car's, car keys, keys, petrol, tyre,
  my loft,
  radio, telly, tv, television, the news, the match, football, the game, quiz, film, episode, music,
  song, drums, drumming,
  piano, trumpet, guitar, ice cream, lorry, truck, van, tractor, motorbike, car alarm, train, ferry,
  foghorn, helicopter,
  plane, ambulance, fire engine, police, fireworks, bonfire, drilling, hammering, builders,
  roadworks, lawnmower, mower, leaf blower,
  chainsaw, church bells, the bells, choir, carol singers, brass band, parade, thunder, lightning,
  the storm, hailstones, hail,
  raining, rain, snow, snowing, pouring, what a racket, racket, shouting, ca n't hear, hear myself,
  hear meself,
  dinner, supper, lunch, breakfast, tea, cuppa, coffee, cake, biscuit, biscuits, cookie, cookies,
  lemonade, pizza, takeaway, soup, eggs, milk, sandwich,
  the tin, the cupboard, icebox, hiccups, sneeze, sneezing, cough, coughing, my glasses, my knee,
  my knees, my neck, my hip, my foot, my leg, my shoulder,
  my eyes, my back's, my back is, my fingers, pins and needles, bathroom, the loo, birthday, bingo,
  easter, email, text message, that window, the window open, window's open, these glasses, my specs,
  where's my, where has my, where have my, where did my, lost my, ca n't find my, mislaid my, testing testing,
  blouse, tights, jumper, trousers, curtains, carpet, fence, the roof, socks, stockings, cardigan, slippers, my coat,
  the lamp on, the light on, light's going, ca n't see a thing, thunder, lightning, hailstones, school run, nursery run,
  the kids, grandkids, power's gone, power cut, candle, candles,
`);

/** What is said to a creature or a person, or to the tool about the two. */
export const ASIDE_CALLS: string[] = phrases(`
  hang on, hold on, hold your horses, give me a second, give me a sec, give me a minute,
  give me a moment, give us a minute, give us a sec,
  gimme a sec, one second, one sec, one moment, one minute, just a second, just a sec, just a moment,
  just a minute, half a minute, half a mo,
  two ticks, two minutes, wait there, be right back, brb, back in a, back in five, back in 5,
  back in ten, back in 10,
  back in two, back in 2, be back, back shortly, wo n't be long, wo n't be a, be with you,
  be right there, i 'm coming, coming coming, be there in, come in,
  who is it, who 's that, who 's there, who was that, what do you want, what is it love, you what,
  say again love, not you, was n't talking, talking to you, not talking to,
  to do with me, to do with this, to do with the quilt, pay no attention, pay me no mind, pay no mind,
  take no notice, do n't mind me, do n't mind the,
  never mind me, ignore me, ignore the, ignore him, ignore her, ignore them, excuse me, forgive me,
  pardon me, bless you, hush, shush, be quiet, quiet you, oi, shoo,
  scram, come here, get off you, get off it, get off that quilt, get off the quilt, off my quilt, get off with, off you get, off you go, off with you, get down, get off there,
  get off of there, get out of it, get away from, get out from,
  down you get, down you go, off the table, off the bed, off the sofa, off my chair, sit down, good boy,
  good girl, good dog, good morning to, hello, hi there, hiya, bye, goodbye, good night,
  darling, sweetheart, honey, love yes, yes love, no love, my love, sweetie, pet yes, yes pet, no pet,
  yes dear, no dear, madam, daft animal, silly animal, you daft, you silly, you rascal, you monster,
  help yourself,
  ask your, tell your, go and ask, go ask, turn that down, turn it down, turn it off will you,
  will you stop, stop that, leave her alone, leave him alone, put that down, put those down, put them down, put it down now,
  would you listen to, listen to that, listen to him, listen to them, what was that noise,
  what 's that noise, what on earth, there goes, here comes, gave me the fright, gave me a fright,
  made me jump, see to her, see to him,
  good lad, good cat, do n't touch, do n't you dare, you wretched, you rotten, you naughty, you bad, you little, you mangy, you greedy,
  you big, you great, you cheeky, you horrid, you blasted, you rascals, wretched animal, you lot,
  somebody else 's, not for me, thank heavens, for the people,
  bad dog, bad cat, bad boy, bad girl, naughty dog, naughty cat, naughty boy, naughty girl, drop it mister, give it here, give it to me, give me that,
  leave it with the, leave them with the, leave it outside, leave it next door, leave it at the door, back to the kitchen, back to your room,
  you wee, you brute, you devil, get off my, get out of my, who left, who 's left, who 's been at, who turned, who 's had my, who took my, who 's got my,
  testing one two, testing 1 2, testing one, mic check, test test, test one two, is this thing on, tell him, tell her, tell them, ask her to, ask him to, ask them to,
  talking to the machine, talking to the sewing machine, talking to the cat, talking to the dog, talking to myself,
  on the step, on the doorstep, by the stairs, on the stairs, outside the door, on the hall table, leave it by the, leave it on the porch, leave it in the, leave them on the porch, leave them by the,
`);

/** Things of the house that are mended and washed like a quilt: what is said of them is none of its damage. */
export const HOUSEHOLD_GOODS =
  /(?<!\b(?:from|off|with|of|in|like|as|out|for|an?|some|using)(?: an?)?(?: \w+)?) (?:my|his|her|our|their|the|that|this|these|those|your|\w+ 's)(?: (?:good|best|old|new|own|wee|little|blue|grey|school|work|sunday|bedroom|kitchen))? (?:blouse|tights|jumper|jersey|trousers|curtains?|carpet|rug|fence|gate|roof|socks?|stockings|cardigan|slippers|gloves|sofa|car|dishes|windows)(?! (?:is|was|were|are) (?:in|the) )\b/;

/** With one of these a note is about the piece, its story or its owner, and no talk aside. */
export const QUILT_WORDS: string[] = phrases(`
  quilt, quilts, qlt, comforter, coverlet, bedspread, bed cover, patchwork, stitch, stitches, stitched,
  stitching, sew, sewn, sewed, clothes horse, baby soap, baby shampoo,
  sewing, seam, seams, thread, threads, fabric, cloth, block, blocks, batting, wadding, backing, binding,
  border, borders, pieced, piecing, appliqué, applique, sampler,
  maker, owner, client, museum, heirloom, initials, embroidered, inscription, signature, label, attic,
  inherited, the family, mend, mending, mended, patch, patched, darn, darned, darning, needle, tying,
  quilting, quilted, log cabin, hand sewn, gingham, calico, muslin, velvet, silk,
`);
