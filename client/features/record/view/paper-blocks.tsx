import type { JSX } from 'preact';
import type { Block } from '../../../../core/record/document-model.ts';
import { photoAddress } from '../../entries/view/photographs.tsx';
import { TableWrap } from '../../shell/view/table-wrap.tsx';

/** A passage's blocks as they stand on the paper. */
export function PaperBlocks(props: { quiltId: string; body: readonly Block[] }): JSX.Element {
  return (
    <>
      {props.body.map((block, i) => (
        <One key={`${block.type}${i}`} quiltId={props.quiltId} block={block} />
      ))}
    </>
  );
}

function One(props: { quiltId: string; block: Block }): JSX.Element {
  const { block } = props;
  switch (block.type) {
    case 'paragraph':
      return <p>{block.text}</p>;
    case 'caution':
      return (
        <p class="caution">
          <strong>Caution.</strong> {block.text}
        </p>
      );
    case 'list':
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case 'terms':
      return (
        <dl>
          {block.rows.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return (
        <TableWrap name={`Table: ${block.columns.map((column) => column.title).join(', ')}`}>
          <table>
            <thead>
              <tr>
                {block.columns.map((column) => (
                  <th key={column.title} class={column.align === 'right' ? 'figure' : undefined} scope="col">
                    {column.title}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {block.rows.map((row, r) => (
                <tr key={r} class={block.sum && r === block.rows.length - 1 ? 'sum' : undefined}>
                  {row.map((cell, c) => (
                    <td key={c} class={block.columns[c]?.align === 'right' ? 'figure' : undefined}>
                      {cell}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </TableWrap>
      );
    case 'figure':
      return (
        <figure>
          <img
            src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(block.svg)}`}
            width={block.width}
            height={block.height}
            alt={block.alt}
          />
          <figcaption>{block.caption}</figcaption>
        </figure>
      );
    case 'photograph':
      return (
        <figure>
          <img src={photoAddress(props.quiltId, block.file)} alt={block.alt} loading="lazy" />
          <figcaption>{block.caption}</figcaption>
        </figure>
      );
    case 'signatures':
      return (
        <div class="signatures">
          {block.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      );
  }
}
