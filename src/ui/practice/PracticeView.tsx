import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { UNITS } from '../../quantity/units.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { hasOwnUnit } from '../own-unit.ts';
import { permalink } from '../permalink.ts';
import { sitePath } from '../islands/site-path.ts';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { WorkingSteps } from '../WorkingSteps.tsx';
import {
  bareUnit,
  drawProblem,
  judge,
  type PracticeKind,
  type PracticeProblem,
} from './practice-problem.ts';
import { kindWords, type KindTally } from './practice-tally.ts';

interface Props {
  readonly kind: PracticeKind;
  readonly worksheet: Worksheet;
  /** Problem shown first; the static page and the live one show the same. */
  readonly first: PracticeProblem;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
  /** Tries at this kind up to now; shown where the view has one kind for good. */
  readonly kept?: KindTally | undefined;
  /** True where the numbers belong to a set: no others are offered. */
  readonly hasFixedNumbers?: boolean;
  /** Told of the first readable entry for each problem; who listens keeps the tally. */
  readonly onTried?: (isRight: boolean) => void;
}

/** Practice on one kind of problem: fresh numbers, an entry to judge, the working to compare with. */
export function PracticeView(props: Props): ComponentChildren {
  const { kind, worksheet, first, instance: id, kept, onTried } = props;
  const [problem, setProblem] = useState(first);
  const [text, setText] = useState('');
  const [judged, setJudged] = useState<string>();
  const [isCounted, setIsCounted] = useState(false);

  const judgement = judged === undefined ? undefined : judge(kind, problem, judged);
  const check = (): void => {
    const found = judge(kind, problem, text);
    setJudged(text);
    if (found.kind === 'unreadable') return;
    if (!isCounted) onTried?.(found.kind === 'right');
    setIsCounted(true);
  };
  const another = (): void => {
    setProblem(drawProblem(kind, worksheet, Math.random));
    setText('');
    setJudged(undefined);
    setIsCounted(false);
  };
  const { symbol } = UNITS[bareUnit(kind)];

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
      <h3 id={`${id}-title`} tabIndex={props.hasFixedNumbers === true ? -1 : undefined}>
        {kind.title}
      </h3>
      <dl class="practice-told">
        {problem.told.map(({ label, text: told }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <UnbrokenUnits text={told} />
            </dd>
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
          {symbol !== '' && (
            <span class={hasOwnUnit(text) ? 'entry-unit entry-unit-unneeded' : 'entry-unit'}>
              {symbol}
            </span>
          )}
          <button type="submit">Check</button>
          {props.hasFixedNumbers !== true && (
            <button type="button" onClick={another}>
              Other numbers
            </button>
          )}
        </div>
        <p class="practice-judgement" id={`${id}-judgement`} role="status">
          {judgement?.kind === 'right' && (
            <span class="answer-good">✓ Right: {problem.answer.text}.</span>
          )}
          {judgement?.kind === 'wrong' && (
            <span class="answer-stop">
              ✕ Not yet: the right answer is {judgement.direction}. {judgement.slip ?? kind.hint}
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
          <strong>
            <UnbrokenUnits text={`${problem.answer.text}.`} />
          </strong>{' '}
          <UnbrokenUnits text={problem.outcome.verdict.sentence} />
        </p>
        <WorkingSteps working={problem.working} />
        <p>
          <a href={permalink(sitePath(`/${worksheet.chapter}/`), worksheet.id, problem.entries)}>
            Open the worksheet on these numbers
          </a>
        </p>
      </details>
      {kept !== undefined && kept.tried > 0 && <p class="practice-tally">{kindWords(kept)}</p>}
    </form>
  );
}
