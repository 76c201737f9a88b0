import type { ComponentChildren } from 'preact';
import { evaluate, fillEntries } from '../worksheets/machine/evaluate.ts';
import type { Answer, Worksheet, Outcome } from '../worksheets/machine/types.ts';
import type { Units } from './bench/bench-state.ts';
import { LEVEL_SIGNS } from './verdict-signs.ts';

/**
 * The answers, or the same lines left blank while an entry is wrong: the form keeps its height, and
 * no old number stays on the page.
 */
export function AnswerList(props: {
  readonly instance: string;
  readonly worksheet: Worksheet;
  readonly outcome: Outcome | undefined;
  readonly units: Units;
}): ComponentChildren {
  const isBlank = props.outcome === undefined;
  const shown = props.outcome ?? blankOutcome(props.worksheet);
  const { main, others } = rankedAnswers(shown?.answers ?? {});
  const lines = (answers: readonly (readonly [string, Answer])[]): ComponentChildren => (
    <dl>
      {answers.map(([key, answer]) => (
        <div class="answer" key={key} id={`${props.instance}-answer-${key}`}>
          <dt>{answer.label}</dt>
          <dd>
            {isBlank ? (
              <span class="answer-blank">–</span>
            ) : (
              <AnswerText answer={answer} units={props.units} />
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
  return (
    <div class="sheet-answers" role="group" aria-label="Answers">
      <p class="sheet-legend">What follows</p>
      {lines(main)}
      {others.length > 0 && (
        <details class="answers-more">
          <summary>{others.length} more answers</summary>
          {lines(others)}
        </details>
      )}
    </div>
  );
}

/** Answers that stand open; a sheet lists what matters most first. */
const MAIN_ANSWERS = 4;

/** What stands open, and what is folded away: never an answer that warns, nor a single line. */
export function rankedAnswers(answers: Outcome['answers']): {
  readonly main: readonly (readonly [string, Answer])[];
  readonly others: readonly (readonly [string, Answer])[];
} {
  const all = Object.entries(answers);
  const isMain = ([, { level }]: readonly [string, Answer], at: number): boolean =>
    at < MAIN_ANSWERS || level === 'care' || level === 'stop';
  const others = all.filter((line, at) => !isMain(line, at));
  return others.length < 2 ? { main: all, others: [] } : { main: all.filter(isMain), others };
}

export function AnswerText(props: {
  readonly answer: Answer;
  readonly units: Units;
}): ComponentChildren {
  const { answer, units } = props;
  const imperial = units === 'imperial' ? answer.imperial : undefined;
  return (
    <>
      {answer.level !== undefined && (
        <span class={`answer-sign answer-${answer.level}`} title={LEVEL_SIGNS[answer.level].word}>
          {LEVEL_SIGNS[answer.level].mark}
          <span class="visually-hidden"> {LEVEL_SIGNS[answer.level].word}: </span>
        </span>
      )}
      <span class="answer-value">{imperial?.text ?? answer.text}</span>
      {imperial !== undefined && <span class="answer-other-unit"> ({answer.text})</span>}
      {answer.note !== undefined && <span class="answer-note">{answer.note}</span>}
    </>
  );
}

function blankOutcome(worksheet: Worksheet): Outcome | undefined {
  return evaluate(worksheet, fillEntries(worksheet.inputs, {})).outcome;
}
