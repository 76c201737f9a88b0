import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { CaseLevel } from '../../practice/case-kind.ts';
import type { DrawnChoice } from '../../practice/draw-case.ts';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';

interface Props {
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
  readonly title: string;
  readonly level: CaseLevel;
  readonly question: string;
  readonly choices: readonly DrawnChoice[];
  /** Shown after the first answer. */
  readonly answer: ComponentChildren;
  /** Told of the first answer. */
  readonly onTried: (isRight: boolean) => void;
  /** What the case tells and shows. */
  readonly children: ComponentChildren;
}

/** One question with choices of which one is right; it can be answered once. */
export function PickOne(props: Props): ComponentChildren {
  const { instance: id, title, level, question, choices, answer, onTried, children } = props;
  const [chosen, setChosen] = useState<number>();
  const [checked, setChecked] = useState<number>();
  const answered = checked === undefined ? undefined : choices[checked];

  return (
    <form
      class="practice case"
      aria-labelledby={`${id}-title`}
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen === undefined || checked !== undefined) return;
        setChecked(chosen);
        onTried(choices[chosen]?.isRight === true);
      }}
    >
      <h3 id={`${id}-title`} tabIndex={-1}>
        {title} <small>level {level}</small>
      </h3>
      {children}
      <fieldset disabled={checked !== undefined}>
        <legend>{question}</legend>
        {choices.map(({ text }, index) => (
          <label key={text} class="case-choice">
            <input
              type="radio"
              name={`${id}-choice`}
              checked={chosen === index}
              onChange={() => {
                setChosen(index);
              }}
            />
            <span>
              <UnbrokenUnits text={text} />
            </span>
          </label>
        ))}
      </fieldset>
      <p class="mixed-line">
        <button type="submit" disabled={chosen === undefined || checked !== undefined}>
          Check
        </button>
      </p>
      <p class="practice-judgement" role="status">
        {answered?.isRight === true && <span class="answer-good">✓ Right.</span>}
        {answered?.isRight === false && (
          <span class="answer-stop">
            ✕ Not this one. <UnbrokenUnits text={answered.reason} />
          </span>
        )}
      </p>
      {answered !== undefined && (
        <div class="case-reasons">
          <h4>Answer and reasons</h4>
          {answer}
        </div>
      )}
    </form>
  );
}
