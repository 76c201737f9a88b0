import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { AnyWorksheet } from '../worksheets/types.ts';
import { WorkingSteps } from './WorkingSteps.tsx';
import { permalink } from './permalink.ts';
import { drawProblem, judge, type PracticeKind, type PracticeProblem } from './practice-problem.ts';

interface Props {
  readonly kind: PracticeKind;
  readonly worksheet: AnyWorksheet;
  /** Problem shown first; the static page and the live one show the same. */
  readonly first: PracticeProblem;
}

/** Practice on one kind of problem: fresh numbers, an entry to judge, the working to compare with. */
export function PracticeView({ kind, worksheet, first }: Props): ComponentChildren {
  const [problem, setProblem] = useState(first);
  const [text, setText] = useState('');
  const [judged, setJudged] = useState<string>();
  const [tally, setTally] = useState({ right: 0, tried: 0 });

  const judgement = judged === undefined ? undefined : judge(kind, problem, judged);
  const check = (): void => {
    const found = judge(kind, problem, text);
    setJudged(text);
    if (found.kind === 'unreadable') return;
    setTally(({ right, tried }) => ({
      right: right + (found.kind === 'right' ? 1 : 0),
      tried: tried + 1,
    }));
  };
  const another = (): void => {
    setProblem(drawProblem(kind, worksheet, Math.random));
    setText('');
    setJudged(undefined);
  };
  const id = `practice-${kind.id}`;

  return (
    <form
      class="practice"
      id={id}
      aria-labelledby={`${id}-title`}
      onSubmit={(event) => {
        event.preventDefault();
        check();
      }}
    >
      <h3 id={`${id}-title`}>{kind.title}</h3>
      <dl class="practice-told">
        {problem.told.map(({ label, text: told }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{told}</dd>
          </div>
        ))}
      </dl>
      <div class={judgement?.kind === 'unreadable' ? 'entry entry-wrong' : 'entry'}>
        <label for={`${id}-entry`}>{kind.question}</label>
        <div class="entry-line">
          <input
            id={`${id}-entry`}
            type="text"
            autocomplete="off"
            spellcheck={false}
            value={text}
            aria-invalid={judgement?.kind === 'unreadable'}
            aria-describedby={`${id}-judgement`}
            onInput={(event) => {
              setText(event.currentTarget.value);
              setJudged(undefined);
            }}
          />
          <button type="submit">Check</button>
          <button type="button" onClick={another}>
            Other numbers
          </button>
        </div>
        <p class="practice-judgement" id={`${id}-judgement`} role="status">
          {judgement?.kind === 'right' && (
            <span class="answer-good">✓ Right: {problem.answer.text}.</span>
          )}
          {judgement?.kind === 'wrong' && (
            <span class="answer-stop">
              ✕ Not yet: the right answer is {judgement.direction}. {kind.hint}
            </span>
          )}
          {judgement?.kind === 'unreadable' && (
            <span class="answer-stop">✕ {judgement.reason}</span>
          )}
        </p>
      </div>
      <details key={JSON.stringify(problem.entries)}>
        <summary>Answer and working</summary>
        <p>
          <strong>{problem.answer.text}.</strong> {problem.outcome.verdict.sentence}
        </p>
        <WorkingSteps working={problem.working} />
        <p>
          <a href={permalink(`/${worksheet.chapter}/`, worksheet.id, problem.entries)}>
            Open the worksheet on these numbers
          </a>
        </p>
      </details>
      {tally.tried > 0 && (
        <p class="practice-tally">
          {tally.right} right of {tally.tried} tried
        </p>
      )}
    </form>
  );
}
