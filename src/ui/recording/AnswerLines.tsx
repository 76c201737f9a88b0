import type { ComponentChildren } from 'preact';
import type { Answer } from '../../worksheets/machine/types.ts';
import { AnswerText } from '../AnswerList.tsx';

/** Answers under each other, as in a worksheet. */
export function AnswerLines(props: {
  readonly label: string;
  readonly answers: readonly Answer[];
}): ComponentChildren {
  return (
    <div class="recording-part" role="group" aria-label={props.label}>
      <p class="sheet-legend">{props.label}</p>
      <dl class="recording-answers">
        {props.answers.map((answer) => (
          <div class="answer" key={answer.label}>
            <dt>{answer.label}</dt>
            <dd>
              <AnswerText answer={answer} units="metric" />
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
