import type { ComponentChildren } from 'preact';
import { FORM_EDITION, type Paper, type PaperBlock, type PaperSheet } from './paper.ts';

/** A paper as it is printed; on the screen it stands below the page it was made on. */
export function PaperView(props: {
  readonly paper: Paper;
  readonly day: string;
  /** Name and address of the workshop, on every sheet. */
  readonly workshop: string;
}): ComponentChildren {
  const { paper, day, workshop } = props;
  return paper.sheets.map((sheet, index) => (
    <Sheet
      key={index}
      sheet={sheet}
      workshop={workshop}
      foot={`${sheet.title}, ${index + 1} of ${paper.sheets.length} · printed ${day} · form ${FORM_EDITION}`}
    />
  ));
}

function Sheet(props: {
  readonly sheet: PaperSheet;
  readonly workshop: string;
  readonly foot: string;
}): ComponentChildren {
  const { sheet, workshop, foot } = props;
  return (
    <article class="paper-sheet">
      {workshop !== '' && <p class="paper-workshop">{workshop}</p>}
      <h2>{sheet.title}</h2>
      {sheet.blocks.map((block, index) => (
        <Block key={index} block={block} />
      ))}
      <p class="paper-foot">{foot}</p>
    </article>
  );
}

function Block({ block }: { readonly block: PaperBlock }): ComponentChildren {
  switch (block.kind) {
    case 'heading':
      return <h3>{block.text}</h3>;
    case 'words':
      return <p class="paper-words">{block.text}</p>;
    case 'fields':
      return (
        <dl class={block.isWide === true ? 'paper-fields paper-wide' : 'paper-fields'}>
          {block.fields.map(([label, text]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return (
        <table class="paper-table">
          <caption>{block.caption}</caption>
          <thead>
            <tr>
              {block.columns.map((column, index) => (
                <th key={index} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {block.rows.map((cells, row) => (
              <tr key={row}>
                {cells.map((cell, column) => (
                  <td key={column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      );
    case 'ticks':
      return (
        <ul class="paper-ticks">
          {block.rows.map(({ text, options, ticked }) => (
            <li key={text}>
              <span>{text}</span>
              <span class="paper-options">
                {options.map((option) => (
                  <span key={option}>
                    {option === ticked ? '☒' : '☐'} {option}
                  </span>
                ))}
              </span>
            </li>
          ))}
        </ul>
      );
    case 'lines':
      return (
        <div class="paper-lines" aria-hidden="true">
          {Array.from({ length: block.count }, (_, line) => (
            <div key={line} />
          ))}
        </div>
      );
    case 'photos':
    case 'signatures':
      return (
        <ul class={`paper-${block.kind}`}>
          {block.captions.map((caption) => (
            <li key={caption}>{caption}</li>
          ))}
        </ul>
      );
    case 'labels':
      return (
        <ul class="paper-labels">
          {block.labels.map(({ title, lines }, index) => (
            <li key={index}>
              <strong>{title}</strong>
              {lines.map((line, place) => (
                <span key={place}>{line}</span>
              ))}
            </li>
          ))}
        </ul>
      );
  }
}
