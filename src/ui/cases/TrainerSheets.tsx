import type { ComponentChildren } from 'preact';
import type { DrawnChoice } from '../../practice/draw-case.ts';
import type { SessionLevel } from '../../practice/session.ts';
import { UNITS } from '../../quantity/units.ts';
import { bareUnit } from '../practice/practice-problem.ts';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { WorkingSteps } from '../WorkingSteps.tsx';
import { withFullStop } from './with-full-stop.ts';
import { CaseTold } from './CaseTold.tsx';
import { FaultStill } from './FaultStill.tsx';
import type { DrawnItem } from './practice-stock.ts';

interface Props {
  readonly seed: string;
  readonly level: SessionLevel;
  readonly items: readonly DrawnItem[];
}

/** Letter in front of a choice: a, b, c … */
const letter = (place: number): string => String.fromCodePoint(97 + place);

const setWords = ({ seed, level, items }: Props): string =>
  `Set “${seed}”, level ${level === 'all' ? 'mixed' : level}, ${items.length} questions`;

/** The questions, to be answered with a pencil. */
export function QuestionSheet(props: Props): ComponentChildren {
  return (
    <section class="trainer-sheet" data-part="questions" aria-labelledby="question-sheet">
      <h2 id="question-sheet">Questions</h2>
      <p>{setWords(props)}</p>
      <p class="sheet-blanks">
        <span>Name</span>
        <span>Date</span>
      </p>
      <ol>
        {props.items.map((item, place) => (
          <li key={place}>
            <Question item={item} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Question({ item }: { readonly item: DrawnItem }): ComponentChildren {
  if (item.type === 'sum') {
    const { symbol } = UNITS[bareUnit(item.kind)];
    return (
      <>
        <h3>{item.kind.title}</h3>
        <CaseTold told={item.problem.told} />
        <p>{item.kind.question}</p>
        <p class="sheet-line">{symbol}</p>
      </>
    );
  }
  if (item.type === 'fault') {
    const { title, told, question, choices, fault } = item.drawn;
    return (
      <>
        <h3>{title}</h3>
        <FaultStill fault={fault} />
        {told !== undefined && <p>{told}</p>}
        <p>{question}</p>
        <Choices choices={choices} />
      </>
    );
  }
  const { title, scene, told, question, choices } = item.drawn;
  return (
    <>
      <h3>{title}</h3>
      <p>{scene}</p>
      <CaseTold told={told} />
      <p>{question}</p>
      <Choices choices={choices} />
    </>
  );
}

function Choices(props: { readonly choices: readonly DrawnChoice[] }): ComponentChildren {
  return (
    <ul class="sheet-choices">
      {props.choices.map(({ text }, place) => (
        <li key={text}>
          <span aria-hidden="true">☐</span> {letter(place)}) <UnbrokenUnits text={text} />
        </li>
      ))}
    </ul>
  );
}

/** The answers to the same questions, with reasons. */
export function AnswerSheet(props: Props): ComponentChildren {
  return (
    <section class="trainer-sheet" data-part="answers" aria-labelledby="answer-sheet">
      <h2 id="answer-sheet">Answers</h2>
      <p>{setWords(props)}</p>
      <ol>
        {props.items.map((item, place) => (
          <li key={place}>
            <Answer item={item} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Answer({ item }: { readonly item: DrawnItem }): ComponentChildren {
  if (item.type === 'sum') {
    return (
      <>
        <h3>{item.kind.title}</h3>
        <p>
          <strong>
            <UnbrokenUnits text={item.problem.answer.text} />
          </strong>
        </p>
        <WorkingSteps working={item.problem.working} />
      </>
    );
  }
  const { title, choices } = item.drawn;
  const place = choices.findIndex(({ isRight }) => isRight);
  const right = choices[place];
  if (item.type === 'fault') {
    return (
      <>
        <h3>{title}</h3>
        <p>
          <strong>
            {letter(place)}) {withFullStop(right?.text ?? '')}
          </strong>{' '}
          {item.drawn.why}
        </p>
        <p>Decided by the dictionary of faults.</p>
      </>
    );
  }
  const { outcome } = item.drawn;
  return (
    <>
      <h3>{title}</h3>
      <p>
        <strong>
          {letter(place)}) <UnbrokenUnits text={right?.text ?? ''} />
        </strong>{' '}
        <UnbrokenUnits text={outcome.verdict.sentence} />
      </p>
      <p>Decided by the sheet “{item.worksheet.title}”.</p>
    </>
  );
}
