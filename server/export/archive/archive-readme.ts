import type { QuiltState } from '../../../core/log/state.ts';
import { cleanText } from '../../../core/record/wording/clean-text.ts';

/** What a person reads who has the archive and not this program. */
export function archiveReadme(state: QuiltState): string {
  return `${cleanText(state.quilt.name)}
An archive of one quilt's work: what was said, found, decided and done.

To read it you need no special program.

papers/      The papers: condition before work, proposal, record of treatment,
             letter to the owner, bill. Each as PDF and as plain text, and
             record.html with all of them, for any browser.
drawings/    The map of the quilt as found, as proposed and as it is now, and
             the hours, as SVG drawings for any browser.
entries.csv  Every entry, one a row, for a spreadsheet. hours.csv and
             materials.csv likewise.
sessions.ics The times of work, for a calendar.
notes.jsonl  Every note in the words it was said in, with how it was read.
             One JSON object a line.
quilt.json   Everything that stands in the log in one file;
             quilt.schema.json says what each field means (JSON Schema).
audio/       What was recorded. captions/ holds the words to each recording
             (WebVTT).
photos/      The photographs.
journal.jsonl  All that happened, in order, one JSON object a line. "sum" at
             the end of a line is the CRC-32 of what stands before it. From
             this file alone the program can make everything else again.
manifest.json  Every file with its size and its SHA-256. If a file's SHA-256
             (sha256sum on Linux, shasum -a 256 on a Mac, Get-FileHash on
             Windows) is the one in the manifest, it is as it was written.

To go on working with it, start Quiltside and choose to bring in an archive.

Keep two copies in two places, on media that can still be read in ten years,
and print the papers: a file alone is not enough.

This archive holds everything, also prices paid and talk aside. It is for
whoever did the work. Give the owner the papers, not the archive.
`;
}
