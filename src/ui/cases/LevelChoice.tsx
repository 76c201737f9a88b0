import type { ComponentChildren } from 'preact';
import type { SessionLevel } from '../../practice/session.ts';

const LEVELS: readonly (readonly [SessionLevel, string])[] = [
  ['all', 'mixed'],
  [1, '1: one finding decides'],
  [2, '2: several findings'],
  [3, '3: something is missing'],
];

interface Props {
  readonly label: string;
  readonly level: SessionLevel;
  readonly onLevel: (level: SessionLevel) => void;
}

/** How hard the cases of a set may be. */
export function LevelChoice({ label, level, onLevel }: Props): ComponentChildren {
  return (
    <label>
      {label}{' '}
      <select
        value={String(level)}
        onChange={(event) => {
          const { value } = event.currentTarget;
          const chosen = LEVELS.find(([each]) => String(each) === value);
          if (chosen !== undefined) onLevel(chosen[0]);
        }}
      >
        {LEVELS.map(([each, words]) => (
          <option key={each} value={String(each)}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
