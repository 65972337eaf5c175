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
          ['All entries as a table (CSV)', address('csv')],
          ['Work sessions for a calendar', address('ics')],
          ['Everything as JSON', address('json')],
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
