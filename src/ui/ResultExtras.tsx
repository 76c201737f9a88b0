import type { ComponentChildren } from 'preact';
import type { Outcome, ResultTable, VerdictLevel } from '../worksheets/machine/types.ts';
import { CopyButton } from './CopyButton.tsx';
import { TakenFile } from './TakenFile.tsx';
import { UnbrokenUnits } from './UnbrokenUnits.tsx';
import { LEVEL_SIGNS } from './verdict-signs.ts';

/** Cells with more letters hold a sentence and get room for it. */
const MOST_LETTERS = 40;
/** From so many columns on a table with sentences is stacked on a phone. */
const STACKED_COLUMNS = 4;

/** Result tables, commands to copy and files to take away. */
export function ResultExtras({ outcome }: { readonly outcome: Outcome }): ComponentChildren {
  return (
    <>
      {outcome.tables?.map((table) => (
        <ResultTableView key={table.caption} table={table} />
      ))}
      {outcome.commands?.map((command) => (
        <div class="sheet-command" key={command.label}>
          <p class="sheet-legend">{command.label}</p>
          {/* Focusable so that a keyboard can scroll a long command. */}
          <pre tabIndex={0}>
            <code>{command.text}</code>
          </pre>
          <CopyButton text={command.text} label="Copy command" />
        </div>
      ))}
      {outcome.files?.map((file) => (
        <TakenFile key={file.fileName} file={file} />
      ))}
    </>
  );
}

/** Colour of a row's sign; `answer-note` is taken by the small print under an answer. */
function levelClass(level: VerdictLevel | undefined): string {
  return level === undefined || level === 'note' ? 'answer-note-level' : `answer-${level}`;
}

export function ResultTableView({ table }: { readonly table: ResultTable }): ComponentChildren {
  const hasLevels = table.rows.some((row) => row.level !== undefined);
  // Beside a sentence the columns do not fit on a phone: there the cells stand under each other.
  const isStacked =
    table.columns.length >= STACKED_COLUMNS &&
    table.rows.some(({ cells }) => cells.some((cell) => cell.length > MOST_LETTERS));
  return (
    <div
      class={isStacked ? 'table-frame table-stacked' : 'table-frame'}
      tabIndex={0}
      role="region"
      aria-label={table.caption}
    >
      <table>
        <caption>{table.caption}</caption>
        <thead>
          <tr>
            {hasLevels && (
              <th scope="col">
                <span class="visually-hidden">Verdict</span>
              </th>
            )}
            {table.columns.map((column) => (
              <th scope="col" key={column}>
                <UnbrokenUnits text={column} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, index) => (
            // Rows are a ranking: their position is their identity.
            <tr key={index}>
              {hasLevels && (
                <td class={levelClass(row.level)}>
                  {row.level !== undefined && (
                    <>
                      <span aria-hidden="true">{LEVEL_SIGNS[row.level].mark}</span>
                      <span class="visually-hidden">{LEVEL_SIGNS[row.level].word}</span>
                    </>
                  )}
                </td>
              )}
              {row.cells.map((cell, column) => (
                <td
                  key={table.columns[column]}
                  data-column={isStacked ? table.columns[column] : undefined}
                  class={cell.length > MOST_LETTERS ? 'cell-words' : undefined}
                >
                  <UnbrokenUnits text={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
