import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { isMastered, readPath, type PathRecord } from '../../practice/path.ts';
import { dayWords, pagePath, today } from './path-store.ts';
import { titleOfKey, type PracticeStock } from './practice-stock.ts';
import { printOnly } from './print-only.ts';

/** One page that says what a trainee has shown and when, and nothing beyond it. */
export function ShownPage({ stock }: { readonly stock: PracticeStock }): ComponentChildren {
  const [path, setPath] = useState<PathRecord>(() => pagePath.read());
  const [said, setSaid] = useState('');
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const read = file.size > 500_000 ? undefined : readPath(await file.text());
    if (read === undefined) {
      setSaid('This is no record of practice.');
      return;
    }
    setPath(read);
    setSaid('The record is shown below. That of this device stays as it is.');
  };
  const mastered = [...path.items].flatMap(([key, item]) => {
    const title = titleOfKey(stock, key);
    return title !== undefined && isMastered(item) ? [{ key, title, item }] : [];
  });
  const hand = stock.handTasks.flatMap(({ id, title }) => {
    const seen = path.hand.get(id);
    return seen === undefined ? [] : [{ id, title, seen }];
  });
  return (
    <section class="trainer-sheet" data-part="shown" aria-labelledby="shown-title">
      <h2 id="shown-title">What was shown, and when</h2>
      <p class="mixed-line no-print">
        <label>
          Open the file of a trainee{' '}
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              void open(event.currentTarget.files?.[0]);
            }}
          />
        </label>
        <button
          type="button"
          class="button"
          onClick={() => {
            printOnly('shown');
          }}
        >
          Print this page
        </button>
        <span role="status">{said}</span>
      </p>
      <p>
        <strong>{path.name === '' ? 'No name was given' : path.name}</strong>
      </p>
      <h3>Cases and sums answered right three times in a row, on two days at least</h3>
      {mastered.length === 0 ? (
        <p>None.</p>
      ) : (
        <ul class="shown-list">
          {mastered.map(({ key, title, item }) => (
            <li key={key}>
              {title}: {item.right} right of {item.tried}, last on {dayWords(item.last)}
            </li>
          ))}
        </ul>
      )}
      <h3>Done by hand, and seen</h3>
      {hand.length === 0 ? (
        <p>None.</p>
      ) : (
        <ul class="shown-list">
          {hand.map(({ id, title, seen }) => (
            <li key={id}>
              {title}: seen by {seen.by}, {dayWords(seen.day)}
            </li>
          ))}
        </ul>
      )}
      <p>
        This page says what was answered and seen on those days, as the trainee’s own device kept
        it. It says nothing beyond that: whether somebody may work alone, the workshop decides.
        Printed on {dayWords(today())}.
      </p>
      <p class="sheet-blanks">
        <span>Trainee</span>
        <span>Trainer</span>
      </p>
    </section>
  );
}
