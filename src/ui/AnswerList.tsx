import type { ComponentChildren } from 'preact';
import { evaluate, fillEntries } from '../worksheets/evaluate.ts';
import type { Answer, AnyWorksheet, InputSpecs, Outcome } from '../worksheets/types.ts';
import { LEVEL_SIGNS } from './VerdictLine.tsx';

/**
 * The answers, or the same lines left blank while an entry is wrong: the form keeps its height, and
 * no old number stays on the page.
 */
export function AnswerList(props: {
  readonly instance: string;
  readonly worksheet: AnyWorksheet;
  readonly outcome: Outcome | undefined;
}): ComponentChildren {
  const isBlank = props.outcome === undefined;
  const shown = props.outcome ?? blankOutcome(props.worksheet);
  return (
    <section class="sheet-answers" aria-label="Answers">
      <p class="sheet-legend">What follows</p>
      <dl>
        {Object.entries(shown?.answers ?? {}).map(([key, answer]) => (
          <div class="answer" key={key} id={`${props.instance}-answer-${key}`}>
            <dt>{answer.label}</dt>
            <dd>{isBlank ? <span class="answer-blank">–</span> : <AnswerText answer={answer} />}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function AnswerText({ answer }: { readonly answer: Answer }): ComponentChildren {
  return (
    <>
      {answer.level !== undefined && (
        <span class={`answer-sign answer-${answer.level}`} title={LEVEL_SIGNS[answer.level].word}>
          {LEVEL_SIGNS[answer.level].mark}
          <span class="visually-hidden"> {LEVEL_SIGNS[answer.level].word}: </span>
        </span>
      )}
      <output>{answer.text}</output>
      {answer.note !== undefined && <span class="answer-note">{answer.note}</span>}
    </>
  );
}

function blankOutcome(worksheet: AnyWorksheet): Outcome | undefined {
  return evaluate(worksheet, fillEntries(worksheet.inputs as InputSpecs, {})).outcome;
}
