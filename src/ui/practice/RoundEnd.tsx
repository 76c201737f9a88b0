import type { ComponentChildren } from 'preact';
import type { PracticeKind } from './practice-problem.ts';

/** The end of a round: how it went, what to go over again, and how earlier rounds went. */
export function RoundEnd(props: {
  readonly right: number;
  readonly of: number;
  readonly missed: readonly PracticeKind[];
  readonly onRestart: () => void;
  readonly children: ComponentChildren;
}): ComponentChildren {
  const { right, of, missed, onRestart, children } = props;
  return (
    <div class="practice round-end" tabIndex={-1}>
      <h3>End of the round</h3>
      <p>
        <strong>
          {right} of {of} right at the first try.
        </strong>{' '}
        {children}
      </p>
      {missed.length > 0 && (
        <>
          <p>Go over these again, with their workings:</p>
          <ul>
            {missed.map(({ id, title }) => (
              <li key={id}>
                <a href={`#practice-${id}`}>{title}</a>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>Stop here for today, or after a break:</p>
      <p class="mixed-line">
        <button type="button" class="button" onClick={onRestart}>
          Another round
        </button>
      </p>
    </div>
  );
}
