import type { JSX } from 'preact';
import type { DocumentKind } from '../../../../core/record/document-model.ts';

/** What can be taken away: this paper, the log in open formats, and everything in one archive. */
export function ExportList(props: { quiltId: string; kind: DocumentKind }): JSX.Element {
  const { quiltId, kind } = props;
  const address = (format: string, query = '') =>
    `/api/quilts/${encodeURIComponent(quiltId)}/export/${format}${query}`;
  const of = `?document=${kind}`;
  return (
    <section aria-labelledby="export-head">
      <h3 id="export-head">Take away</h3>
      <ul class="plain exports">
        {[
          ['This paper as PDF', address('pdf', of)],
          ['This paper as plain text', address('txt', of)],
          ['This paper as one HTML file', address('html', of)],
          ['The whole record for the owner, one HTML file', address('html')],
          ['All entries as a table (CSV)', address('csv')],
          ['Hours as a table (CSV)', address('hours-csv')],
          ['Materials as a table (CSV)', address('materials-csv')],
          ['Work sessions for a calendar', address('ics')],
          ['The quilt as it is now, a drawing (SVG)', address('map-svg')],
          ['The quilt as it is now, a picture (PNG)', address('map-png')],
          ['The hours, a drawing (SVG)', address('timeline-svg')],
          ['The hours, a picture (PNG)', address('timeline-png')],
          ['Everything as JSON', address('json')],
          ['The notes as JSON Lines', address('jsonl')],
          ['One archive of the whole quilt', address('zip')],
        ].map(([name, href]) => (
          <li key={name}>
            <a href={href} download>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
