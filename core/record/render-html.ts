import type { Block, RecordDocument } from './document-model.ts';
import { escapeMarkup as e } from './figures/svg-text.ts';

/** Where a photograph is: an address or a data URI for its id; nothing shows its caption alone. */
export type PhotoSource = (photoId: string) => string | undefined;

/**
 * One self-contained HTML page of one or more papers: no script, nothing fetched, every text escaped,
 * each piece of text with its own direction, so that a name in another script reads right and can't
 * turn its surroundings round. `photo` gives the pictures, as data URIs where the page must stand alone.
 */
export function renderHtml(
  documents: readonly RecordDocument[],
  photo: PhotoSource = () => undefined,
): string {
  const first = documents[0];
  const title = first ? `${first.title}: ${first.subject}` : 'Record';
  const nav =
    documents.length > 1
      ? `<nav aria-label="Papers"><ul>${documents.map((one) => `<li><a href="#${one.kind}">${e(one.title)}</a></li>`).join('')}</ul></nav>`
      : '';
  return `<!doctype html>
<html lang="${first?.language ?? 'en-GB'}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data: file: 'self'; style-src 'unsafe-inline'">
<title>${e(title)}</title>
<style>${STYLE}</style>
</head>
<body>
${nav}
${documents.map((one) => article(one, photo)).join('\n')}
</body>
</html>
`;
}

function article(document: RecordDocument, photo: PhotoSource): string {
  const sections = document.sections
    .map((section) => {
      const id = `${document.kind}-${section.id}`;
      const body = section.passages
        .map((one) => one.body.map((block) => html(block, photo)).join('\n'))
        .join('\n');
      return section.title
        ? `<section aria-labelledby="${e(id)}"><h2 id="${e(id)}">${e(section.title)}</h2>\n${body}</section>`
        : `<section>${body}</section>`;
    })
    .join('\n');
  return `<article id="${document.kind}" class="paper paper-${document.kind}">
<header><p class="subject" dir="auto">${e(document.subject)}</p><h1>${e(document.title)}</h1></header>
${sections}
</article>`;
}

function html(block: Block, photo: PhotoSource): string {
  switch (block.type) {
    case 'paragraph':
      return `<p dir="auto">${e(block.text)}</p>`;
    case 'caution':
      return `<p class="caution" dir="auto"><strong>Caution.</strong> ${e(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li dir="auto">${e(item)}</li>`).join('')}</ul>`;
    case 'terms':
      return `<dl>${block.rows.map(([name, value]) => `<div><dt dir="auto">${e(name)}</dt><dd dir="auto">${e(value)}</dd></div>`).join('')}</dl>`;
    case 'table': {
      const align = (i: number): string => (block.columns[i]?.align === 'right' ? ' class="right"' : '');
      const head = block.columns
        .map((column, i) => `<th scope="col"${align(i)}>${e(column.title)}</th>`)
        .join('');
      const rows = block.rows.map((row, at) => {
        const sum = block.sum && at === block.rows.length - 1 ? ' class="sum"' : '';
        return `<tr${sum}>${row.map((cell, i) => `<td${align(i)} dir="auto">${e(cell)}</td>`).join('')}</tr>`;
      });
      return `<table><thead><tr>${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`;
    }
    case 'figure':
      // The drawing is our own SVG, in which every text is escaped already.
      return `<figure>${block.svg}<figcaption dir="auto">${e(block.caption)}</figcaption></figure>`;
    case 'photograph': {
      const source = photo(block.photoId);
      const image = source ? `<img src="${e(source)}" alt="${e(block.alt)}">` : '';
      return `<figure class="photograph">${image}<figcaption dir="auto">${e(block.caption)}</figcaption></figure>`;
    }
    case 'signatures':
      return `<div class="signatures">${block.lines.map((line) => `<p dir="auto">${e(line)}</p>`).join('')}</div>`;
  }
}

const STYLE = `
:root{color-scheme:light;--ink:#1b2136;--soft:#594838;--rule:#b9aa8d;--caution:#9b2f25}
*{box-sizing:border-box}
body{margin:0 auto;max-width:46rem;padding:2rem 1.25rem 4rem;color:var(--ink);background:#fff;font:1.0625rem/1.55 Georgia,"Source Serif 4","Times New Roman",serif}
h1,h2,th,dt,figcaption,.subject,nav{font-family:Verdana,"Source Sans 3","DejaVu Sans",sans-serif}
h1{font-size:1.7rem;line-height:1.2;margin:.1em 0 .8em}
h2{font-size:1.05rem;margin:2em 0 .5em;padding-bottom:.25em;border-bottom:1px solid var(--rule)}
.subject{margin:0;color:var(--soft);font-size:.9rem}
dl>div{display:flex;gap:1rem;padding:.3rem 0;border-bottom:1px dotted var(--rule)}
dt{flex:0 0 34%;font-size:.85rem;color:var(--soft);padding-top:.15em}
dd{margin:0;flex:1;overflow-wrap:anywhere}
table{width:100%;border-collapse:collapse;font-size:.95rem;margin:.6rem 0}
th{text-align:left;font-size:.8rem;color:var(--soft);border-bottom:1.5px solid var(--ink);padding:.25rem .5rem .25rem 0}
td{vertical-align:top;border-bottom:1px dotted var(--rule);padding:.3rem .5rem .3rem 0;overflow-wrap:anywhere}
.right{text-align:right}
.sum td{border-top:1.5px solid var(--ink);border-bottom:0;font-weight:bold}
.caution{border-left:4px double var(--caution);padding:.1rem 0 .1rem .9rem}
.caution strong{color:var(--caution)}
figure{margin:1rem 0;break-inside:avoid}
figure svg,figure img{max-width:100%;height:auto;display:block}
figure img{max-height:70vh}
figcaption{font-size:.82rem;color:var(--soft);margin-top:.35rem}
.signatures p{margin:3.2rem 0 0;border-top:1px solid var(--ink);max-width:24rem;padding-top:.3rem}
article+article{margin-top:4rem;border-top:3px double var(--ink);padding-top:2rem}
@media print{body{max-width:none;padding:0;font-size:10.5pt}article+article{break-before:page;border:0;margin:0;padding:0}nav{display:none}h2{break-after:avoid}tr,p,li,dl>div{break-inside:avoid}@page{margin:20mm}}
`;
