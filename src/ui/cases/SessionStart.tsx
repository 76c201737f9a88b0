import type { ComponentChildren } from 'preact';
import type { SessionLevel } from '../../practice/session.ts';
import { LevelChoice } from './LevelChoice.tsx';

interface Props {
  readonly level: SessionLevel;
  readonly onLevel: (level: SessionLevel) => void;
  /** Word or number of the set, as typed; empty for a set of the reader's own. */
  readonly seed: string;
  readonly onSeed: (seed: string) => void;
  readonly onStart: () => void;
}

/** What is asked before a session begins. */
export function SessionStart({ level, onLevel, seed, onSeed, onStart }: Props): ComponentChildren {
  return (
    <form
      class="practice session-start"
      aria-labelledby="session-title"
      onSubmit={(event) => {
        event.preventDefault();
        onStart();
      }}
    >
      <h3 id="session-title">A session of ten</h3>
      <p>
        Six cases and four sums, what you missed before first. With a word or number of your own,
        everybody who types it gets the same ten.
      </p>
      <div class="case-fields">
        <LevelChoice label="Level" level={level} onLevel={onLevel} />
        <label>
          Word or number of the set, if you have one{' '}
          <input
            type="text"
            value={seed}
            maxLength={40}
            autocomplete="off"
            onInput={(event) => {
              onSeed(event.currentTarget.value);
            }}
          />
        </label>
      </div>
      <p class="mixed-line">
        <button type="submit">Start</button>
      </p>
    </form>
  );
}
