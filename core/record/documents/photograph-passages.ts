import type { Passage } from '../document-model.ts';
import { passage } from '../passage.ts';
import type { PhotoFact, RecordView } from '../record-view.ts';
import { datePhrase } from '../wording/figure-phrases.ts';
import { placesPhrase } from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';

/** Photographs of one stage, each with its date and place; the oldest first. */
export function photographPassages(view: RecordView, stages: readonly PhotoFact['stage'][]): Passage[] {
  return view.photos
    .filter((photo) => stages.includes(photo.stage))
    .sort((a, b) => (a.date ?? '').localeCompare(b.date ?? ''))
    .map((photo) => {
      const where = placesPhrase(photo.places, view.grid);
      const stage = { before: 'Before treatment', during: 'During treatment', after: 'After treatment' }[
        photo.stage
      ];
      const date = photo.date ? datePhrase(photo.date, view.spelling) : 'date not known';
      const caption = [sentence(photo.caption), sentence(where), `${stage}, ${date}.`]
        .filter(Boolean)
        .join(' ');
      const alt = `Photograph: ${photo.caption || where || view.quilt.name}`;
      return passage(
        `photograph.${photo.id}`,
        [photo.file, caption],
        [],
        [{ type: 'photograph', photoId: photo.id, file: photo.file, alt, caption }],
      );
    });
}
