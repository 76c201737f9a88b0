import type { ComponentChildren } from 'preact';
import type { DrawnCase } from '../../practice/draw-case.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { sitePath } from '../islands/site-path.ts';
import { permalink } from '../permalink.ts';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { WorkingSteps } from '../WorkingSteps.tsx';
import { withFullStop } from './with-full-stop.ts';

/** The right answer to a case, why, in steps, and the sheet that decides. */
export function CaseAnswer(props: {
  readonly drawn: DrawnCase;
  readonly worksheet: Worksheet;
}): ComponentChildren {
  const { drawn, worksheet } = props;
  const right = drawn.choices.find(({ isRight }) => isRight);
  return (
    <>
      <p>
        <strong>
          <UnbrokenUnits text={withFullStop(right?.text ?? '')} />
        </strong>{' '}
        <UnbrokenUnits text={drawn.outcome.verdict.sentence} />
      </p>
      <WorkingSteps working={drawn.working} />
      <p>
        <a href={permalink(sitePath(`/${worksheet.chapter}/`), worksheet.id, drawn.entries)}>
          The sheet that decides: {worksheet.title}
        </a>
      </p>
    </>
  );
}
