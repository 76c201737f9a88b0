import type { ComponentChildren } from 'preact';

interface Props {
  readonly right: number;
  readonly of: number;
  /** Titles of the kinds that were missed. */
  readonly missed: readonly string[];
  readonly seed: string;
  /** Address that asks for the same ten. */
  readonly link: string;
  readonly onAgain: () => void;
}

/** How a session went, and what comes back. */
export function SessionEnd({ right, of, missed, seed, link, onAgain }: Props): ComponentChildren {
  return (
    <div class="practice">
      <h3 tabIndex={-1}>End of the session</h3>
      <p>
        <strong>
          {right} of {of} right at the first answer.
        </strong>{' '}
        Stop here for today.
      </p>
      {missed.length > 0 && (
        <>
          <p>What you missed comes back after one, three and seven days:</p>
          <ul>
            {missed.map((title, place) => (
              <li key={place}>{title}</li>
            ))}
          </ul>
        </>
      )}
      <p>
        Set “{seed}”: <a href={link}>the link to the same ten</a>.
      </p>
      <p class="mixed-line">
        <button type="button" onClick={onAgain}>
          Another session
        </button>
      </p>
    </div>
  );
}
