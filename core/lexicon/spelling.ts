/**
 * Plain words that are put right where a letter of them is left out, doubled or changed about with its neighbour: "teh",
 * "cuting", "frist", "boht". The longer words of the trade are added from the other lists. Data only.
 */
export const SPELT_WORDS =
  'the and with that this there their they then from have been when what which where were was has had but not just only also still again same both other another each every whole half quarter first second third fourth fifth sixth seventh eighth last next row rows block blocks column columns square squares corner corners side sides edge edges left right top bottom middle centre center upper lower above below under underneath between beside across along around through behind before after until since because today tonight tomorrow yesterday morning afternoon evening night week minutes minute hours hour started start starting stopped stop stopping finished finish finishing began begun working worked done needs needed need wants going gone taken took take used using bought ordered paid dollars pounds euros each piece pieces yard yards inch inches metre metres spool spools reel reels skein skeins packs packet apart together decided either maybe probably washing cutting piecing tying quilting binding layering cleaning mending survey paperwork shopping logged safety removed removing unpicked unpicking peeled lifted little small large long wide nearly already really terrible completely white black brown green blue yellow purple orange stripe striped'.split(
    ' ',
  );

/** Words of everyday (and slips of the ear, put right elsewhere) that are one letter from one of those and mean themselves. */
export const SPELT_LIKE = new Set(
  'three thee form bean fist forth though sine blow thrd thir stated stared stat star stating staring util sued mere mete meter meters ether ting skin skins rally back stripped finer filed filing frying tread whiskey sting shedding braking power tuned tuning barley slash vanish steak steaks signed stuck color traveled loses daring dared baked baking ripping sells selling specs sinks tails trials cooked sanding study mater petty swing taking stand cured neural castle beach making waking later underlying shoes popping overly waves waving hover hovering bushes rises rising dying seams stems bases based saves saved saving sowing wading biding bining slitting botch inset insets tacks stale slated fussing quits spitting satins creepline boned pared sewed sashes'.split(
    ' ',
  ),
);

/** Words of which a short form without vowels is meant before all others. */
export const SHORT_FORM_FIRST =
  'torn tear tears hole holes stain stained stains frayed faded thin worn split open closed close gone missing bled bleeding seam seams patch patched darned stitch stitched side sides edge edges left right start started stop stopped break lunch hand machine over under with needs wants white black brown green grey yellow purple finished bottom border binding basted remove removed removing unpick unpicked'.split(
    ' ',
  );
/** What looks like a word without its vowels, and is a word or another short form. */
export const NO_SHORT_FORM = new Set(
  'the she old fry wry ply pre int inc hrs yds msg sms wrt clr shp mrs pts cmg ths arg ard ams fff ttt oly seg'.split(
    ' ',
  ),
);
