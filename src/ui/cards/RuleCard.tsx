import type { ComponentChildren } from 'preact';
import type { RuleCard as Rule } from '../../worksheets/bench/rule-cards.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';

interface Props {
  readonly worksheet: Worksheet;
  readonly rule: Rule;
  /** Address of the worksheet, for typing. */
  readonly address: string;
}

/** The rule of a worksheet as a card for the wall: how to look, the limits, what to do; no case. */
export function RuleCard({ worksheet, rule, address }: Props): ComponentChildren {
  return (
    <>
      <header class="card-head">
        <h3>{worksheet.title}</h3>
        <p>{worksheet.question}</p>
      </header>
      <p class="card-lead">{rule.lead}</p>
      {rule.tables.map(({ caption, columns, rows }) => (
        <table key={caption} class="card-rule">
          <caption>{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ cells: [head = '', ...cells] }) => (
              <tr key={head + cells.join()}>
                <th scope="row">{head}</th>
                {cells.map((cell, place) => (
                  <td key={columns[place + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <p class="card-caution">
        <strong>▲ Caution.</strong> {rule.caution}
      </p>
      <footer class="card-foot">
        <span>The rule, the same for every reel</span>
        <span class="card-address">{address}</span>
      </footer>
    </>
  );
}
