import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { DrawnCase } from '../../practice/draw-case.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { loadPicture } from '../islands/load-picture.ts';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import type { PictureComponent } from '../WorksheetView.tsx';
import { CaseAnswer } from './CaseAnswer.tsx';
import { CaseTold } from './CaseTold.tsx';

interface Props {
  readonly drawn: DrawnCase;
  readonly worksheet: Worksheet;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
  /** Told of the first answer. */
  readonly onTried: (isRight: boolean) => void;
}

/** One case: what is found, the choices, and after the answer the reasons. */
export function CaseView(props: Props): ComponentChildren {
  const { drawn, worksheet, instance: id, onTried } = props;
  const [chosen, setChosen] = useState<number>();
  const [checked, setChecked] = useState<number>();
  const answered = checked === undefined ? undefined : drawn.choices[checked];

  return (
    <form
      class="practice case"
      aria-labelledby={`${id}-title`}
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen === undefined || checked !== undefined) return;
        setChecked(chosen);
        onTried(drawn.choices[chosen]?.isRight === true);
      }}
    >
      <h3 id={`${id}-title`} tabIndex={-1}>
        {drawn.title} <small>level {drawn.level}</small>
      </h3>
      <p>{drawn.scene}</p>
      <CaseTold told={drawn.told} />
      <CasePicture drawn={drawn} instance={id} />
      <fieldset disabled={checked !== undefined}>
        <legend>{drawn.question}</legend>
        {drawn.choices.map(({ text }, index) => (
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
          <CaseAnswer drawn={drawn} worksheet={worksheet} />
        </div>
      )}
    </form>
  );
}

/** The picture of the sheet that goes with a case, where it has one; loaded when it is shown. */
function CasePicture(props: {
  readonly drawn: DrawnCase;
  readonly instance: string;
}): ComponentChildren {
  const { drawn, instance } = props;
  const [Picture, setPicture] = useState<PictureComponent>();
  const data = drawn.outcome.pictures?.find(({ name }) => name === drawn.picture);
  useEffect(() => {
    if (drawn.picture === undefined) return;
    void loadPicture(drawn.picture).then(
      (loaded) => {
        setPicture(() => loaded);
      },
      () => {
        // The numbers tell the same.
      },
    );
  }, [drawn.picture]);
  if (Picture === undefined || data === undefined) return null;
  return (
    <div class="sheet-picture">
      <Picture picture={data as never} instance={`${instance}-picture`} />
    </div>
  );
}
