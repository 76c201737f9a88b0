import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { loadWorksheet } from '../islands/load-worksheet.ts';
import { PracticeView } from './PracticeView.tsx';
import {
  drawProblem,
  drawRound,
  type PracticeKind,
  type PracticeProblem,
} from './practice-problem.ts';
import { pagePractice } from './practice-store.ts';
import { ROUND_LENGTH, roundsWords, withRound, withTry, type Tally } from './practice-tally.ts';
import { RoundEnd } from './RoundEnd.tsx';

interface Turn {
  readonly number: number;
  readonly kind: PracticeKind;
  readonly worksheet: Worksheet;
  readonly problem: PracticeProblem;
}

/** A round of ten problems from anywhere in the book, each of another kind, and then the end. */
export function MixedPracticeView(props: {
  readonly kinds: readonly PracticeKind[];
}): ComponentChildren {
  const [round, setRound] = useState(() => drawRound(props.kinds, ROUND_LENGTH, Math.random));
  /** What became of the problems of this round, in order; a problem that was left has no entry. */
  const [results, setResults] = useState<ReadonlyMap<number, boolean>>(new Map());
  const [turn, setTurn] = useState<Turn>();
  const [ended, setEnded] = useState<Tally>();
  const [isMissing, setIsMissing] = useState(false);
  const place = useRef<HTMLDivElement>(null);

  const open = async (kinds: readonly PracticeKind[], number: number): Promise<void> => {
    const kind = kinds[number - 1];
    if (kind === undefined) return;
    try {
      const worksheet = await loadWorksheet(kind.worksheet);
      const problem = drawProblem(kind, worksheet, Math.random);
      setIsMissing(false);
      setTurn({ number, kind, worksheet, problem });
    } catch {
      setIsMissing(true);
    }
  };
  const right = [...results.values()].filter(Boolean).length;
  const number = turn?.number ?? 0;
  const isLast = number === round.length;

  const next = (): void => {
    if (!isLast) {
      void open(round, number + 1);
      return;
    }
    setTurn(undefined);
    setEnded(pagePractice.update((before) => withRound(before, right, round.length)));
  };
  const restart = (): void => {
    const fresh = drawRound(props.kinds, ROUND_LENGTH, Math.random);
    setRound(fresh);
    setResults(new Map());
    setEnded(undefined);
    void open(fresh, 1);
  };

  useEffect(() => void open(round, 1), []);
  useEffect(() => {
    const wanted = ended === undefined ? 'input' : '.round-end';
    place.current?.querySelector<HTMLElement>(wanted)?.focus();
  }, [number, ended]);

  if (ended !== undefined) {
    const missed = round.filter((_, index) => results.get(index + 1) !== true);
    return (
      <div ref={place}>
        <RoundEnd right={right} of={round.length} missed={missed} onRestart={restart}>
          {roundsWords(ended.rounds)}
        </RoundEnd>
      </div>
    );
  }
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
            // Other numbers do not undo a wrong one: the first entry of the turn counts.
            if (results.has(turn.number)) return;
            setResults(new Map([...results, [turn.number, isRight]]));
            pagePractice.update((before) => withTry(before, turn.kind.id, isRight));
          }}
        />
      )}
      {isMissing && (
        <p role="alert">
          This problem could not be loaded. Check that you are online, and try again.
        </p>
      )}
      <p class="mixed-line">
        <button type="button" class="button" onClick={next}>
          {isLast ? 'See how it went' : 'Next problem'}
        </button>
        <span role="status">
          {number > 0 && `Problem ${number} of ${round.length}`}
          {results.size > 0 && `, ${right} right of ${results.size} tried`}
        </span>
      </p>
    </div>
  );
}
