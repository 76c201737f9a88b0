import type { ComponentChildren } from 'preact';
import { isMastered, type PathRecord } from '../../practice/path.ts';
import { dayWords } from './path-store.ts';
import { titleOfKey, type PracticeStock } from './practice-stock.ts';

/** What was tried: kind, right at the first answer, last day, and how it stands. */
export function ShownTable(props: {
  readonly stock: PracticeStock;
  readonly path: PathRecord;
}): ComponentChildren {
  const { stock, path } = props;
  const rows = [...path.items].flatMap(([key, item]) => {
    const title = titleOfKey(stock, key);
    return title === undefined ? [] : [{ key, title, item }];
  });
  if (rows.length === 0) return <p>Nothing was tried yet.</p>;
  return (
    <div class="table-frame">
      <table>
        <caption>Cases and sums, first answers only</caption>
        <thead>
          <tr>
            <th scope="col">Kind</th>
            <th scope="col">Right of tried</th>
            <th scope="col">Last</th>
            <th scope="col">Stands</th>
          </tr>
        </thead>
        <tbody>
          {rows
            .toSorted((a, b) => a.title.localeCompare(b.title))
            .map(({ key, title, item }) => (
              <tr key={key}>
                <th scope="row">{title}</th>
                <td>
                  {item.right} of {item.tried}
                </td>
                <td>{dayWords(item.last)}</td>
                <td>
                  {isMastered(item) && 'mastered'}
                  {item.due !== undefined && `back on ${dayWords(item.due)}`}
                  {item.due === undefined && !isMastered(item) && `${item.row} in a row`}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  );
}
