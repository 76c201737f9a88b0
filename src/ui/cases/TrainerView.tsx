import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { sheetItems, type SessionLevel } from '../../practice/session.ts';
import {
  caseTitles,
  drawable,
  drawItem,
  type DrawnItem,
  type PracticeStock,
} from './practice-stock.ts';
import { LevelChoice } from './LevelChoice.tsx';
import { printOnly } from './print-only.ts';
import { setLink } from './set-address.ts';
import { ShownPage } from './ShownPage.tsx';
import { AnswerSheet, QuestionSheet } from './TrainerSheets.tsx';

const MOST_QUESTIONS = 40;

interface Sheets {
  readonly seed: string;
  readonly level: SessionLevel;
  readonly items: readonly DrawnItem[];
}

/** Kinds, level, number and seed; from them the question sheet and the answer sheet. */
export function TrainerView({ stock }: { readonly stock: PracticeStock }): ComponentChildren {
  const cases = caseTitles(stock);
  const everyId = [...cases, ...stock.sums].map(({ id }) => id);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set(cases.map(({ id }) => id)));
  const [level, setLevel] = useState<SessionLevel>('all');
  const [count, setCount] = useState('10');
  const [seed, setSeed] = useState('class 1');
  const [sheets, setSheets] = useState<Sheets>();
  const [said, setSaid] = useState('');

  const make = async (): Promise<void> => {
    const number = Number(count);
    if (!Number.isInteger(number) || number < 1 || number > MOST_QUESTIONS) {
      setSaid(`Type a whole number from 1 to ${MOST_QUESTIONS}.`);
      return;
    }
    if (chosen.size === 0) {
      setSaid('Choose at least one kind.');
      return;
    }
    const ids = everyId.filter((id) => chosen.has(id));
    const wanted = sheetItems(drawable(stock), ids, level, number, seed.trim());
    try {
      const items = await Promise.all(wanted.map((item) => drawItem(stock, item)));
      setSheets({ seed: seed.trim(), level, items });
      setSaid(`${items.length} questions are ready below.`);
    } catch {
      setSheets(undefined);
      setSaid('A sheet could not be loaded. Check that you are online, and try again.');
    }
  };
  const choose = (ids: readonly string[], isOn: boolean): void => {
    const next = new Set(chosen);
    for (const id of ids) {
      if (isOn) next.add(id);
      else next.delete(id);
    }
    setChosen(next);
  };

  return (
    <>
      <form
        class="practice trainer-form"
        aria-labelledby="sheets-title"
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <h2 id="sheets-title" tabIndex={-1}>
          Make sheets
        </h2>
        <KindList title="Cases" kinds={cases} chosen={chosen} choose={choose} />
        <KindList title="Sums" kinds={stock.sums} chosen={chosen} choose={choose} />
        <div class="case-fields">
          <LevelChoice label="Level of the cases" level={level} onLevel={setLevel} />
          <label>
            Questions{' '}
            <input
              type="text"
              inputMode="numeric"
              value={count}
              onInput={(event) => {
                setCount(event.currentTarget.value);
              }}
            />
          </label>
          <label>
            Word or number of the set{' '}
            <input
              type="text"
              value={seed}
              maxLength={40}
              onInput={(event) => {
                setSeed(event.currentTarget.value);
              }}
            />
          </label>
        </div>
        <p class="mixed-line">
          <button type="submit">Make the sheets</button>
          <span role="status">{said}</span>
        </p>
        {sheets !== undefined && (
          <p class="mixed-line">
            <button
              type="button"
              onClick={() => {
                printOnly('questions');
              }}
            >
              Print the questions
            </button>
            <button
              type="button"
              onClick={() => {
                printOnly('answers');
              }}
            >
              Print the answers
            </button>
            <a href={setLink(sheets.seed, sheets.level)}>Ten questions for the class, by link</a>
          </p>
        )}
      </form>
      {sheets !== undefined && (
        <>
          <QuestionSheet {...sheets} />
          <AnswerSheet {...sheets} />
        </>
      )}
      <ShownPage stock={stock} />
    </>
  );
}

function KindList(props: {
  readonly title: string;
  readonly kinds: readonly { readonly id: string; readonly title: string }[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (ids: readonly string[], isOn: boolean) => void;
}): ComponentChildren {
  const { title, kinds, chosen, choose } = props;
  const ids = kinds.map(({ id }) => id);
  const isWhole = ids.every((id) => chosen.has(id));
  return (
    <fieldset class="kind-list">
      <legend>{title}</legend>
      <button
        type="button"
        onClick={() => {
          choose(ids, !isWhole);
        }}
      >
        {isWhole ? `No ${title.toLowerCase()}` : `All ${title.toLowerCase()}`}
      </button>
      {kinds.map((kind) => (
        <label key={kind.id} class="case-choice">
          <input
            type="checkbox"
            checked={chosen.has(kind.id)}
            onChange={(event) => {
              choose([kind.id], event.currentTarget.checked);
            }}
          />
          <span>{kind.title}</span>
        </label>
      ))}
    </fieldset>
  );
}
