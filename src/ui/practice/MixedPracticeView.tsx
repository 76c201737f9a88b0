import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { AnyWorksheet } from '../../worksheets/types.ts';
import { loadWorksheet } from '../load-worksheet.ts';
import { PracticeView } from './PracticeView.tsx';
import { drawProblem, type PracticeKind, type PracticeProblem } from './practice-problem.ts';

interface Turn {
  readonly number: number;
  readonly kind: PracticeKind;
  readonly worksheet: AnyWorksheet;
  readonly problem: PracticeProblem;
}

/** Any kind but the one before, so that the trainee has to see first what is asked. */
function anotherKind(kinds: readonly PracticeKind[], before: PracticeKind | undefined) {
  const others = kinds.length > 1 ? kinds.filter((kind) => kind !== before) : kinds;
  return others[Math.floor(Math.random() * others.length)];
}

/** Problems from anywhere in the book, one after the other, with one tally. */
export function MixedPracticeView(props: {
  readonly kinds: readonly PracticeKind[];
}): ComponentChildren {
  const [turn, setTurn] = useState<Turn>();
  const [isMissing, setIsMissing] = useState(false);
  const [tally, setTally] = useState({ right: 0, tried: 0 });
  const place = useRef<HTMLDivElement>(null);

  const next = async (): Promise<void> => {
    const kind = anotherKind(props.kinds, turn?.kind);
    if (kind === undefined) return;
    try {
      const worksheet = await loadWorksheet(kind.worksheet);
      const problem = drawProblem(kind, worksheet, Math.random);
      setIsMissing(false);
      setTurn((before) => ({ number: (before?.number ?? 0) + 1, kind, worksheet, problem }));
    } catch {
      setIsMissing(true);
    }
  };

  useEffect(() => void next(), []);
  useEffect(() => {
    place.current?.querySelector('input')?.focus();
  }, [turn?.number]);

  return (
    <div ref={place}>
      {turn !== undefined && (
        <PracticeView
          key={turn.number}
          kind={turn.kind}
          worksheet={turn.worksheet}
          first={turn.problem}
          instance="practice-mixed"
          onTried={(isRight) => {
            setTally(({ right, tried }) => ({
              right: right + (isRight ? 1 : 0),
              tried: tried + 1,
            }));
          }}
        />
      )}
      {isMissing && (
        <p role="alert">
          This problem could not be loaded. Look whether you are on line, and try the next one.
        </p>
      )}
      <p class="mixed-line">
        <button type="button" class="button" onClick={() => void next()}>
          Next problem
        </button>
        <span role="status">
          {tally.tried > 0 && `${tally.right} right of ${tally.tried} tried`}
        </span>
      </p>
    </div>
  );
}
