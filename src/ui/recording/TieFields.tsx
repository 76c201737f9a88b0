import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { TieConflict } from '../../core/file/tied-places.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { TIE_WORDS } from '../../core/file/recording-words.ts';

/** Ties counted by hand, for stretches that the pictures do not tell. */
export function TieFields(props: {
  readonly instance: string;
  readonly ties: readonly KeepTie[];
  readonly conflicts: readonly TieConflict[];
  readonly isBusy: boolean;
  readonly onChange: (ties: readonly KeepTie[]) => void;
}): ComponentChildren {
  const { instance, ties, conflicts, isBusy, onChange } = props;
  const [filmFrame, setFilmFrame] = useState('');
  const [cameraFrame, setCameraFrame] = useState('');
  const film = Number(filmFrame);
  const camera = Number(cameraFrame);
  const isUsable =
    filmFrame.trim() !== '' &&
    cameraFrame.trim() !== '' &&
    Number.isInteger(film) &&
    Number.isFinite(camera) &&
    camera >= 0;
  const others = ties.filter((tie) => tie.filmFrame !== film);
  return (
    <div class="recording-part">
      <p class="sheet-legend">Ties counted by hand</p>
      <p>
        Count from a film frame of the list over the stretch that is not told. The camera frame is
        the middle of those that show the film frame clean.
      </p>
      <div class="recording-pager">
        <label for={`${instance}-tie-film`}>Film frame</label>
        <input
          id={`${instance}-tie-film`}
          inputMode="numeric"
          autocomplete="off"
          value={filmFrame}
          onInput={(event) => {
            setFilmFrame(event.currentTarget.value);
          }}
        />
        <label for={`${instance}-tie-camera`}>Camera frame</label>
        <input
          id={`${instance}-tie-camera`}
          inputMode="decimal"
          autocomplete="off"
          value={cameraFrame}
          onInput={(event) => {
            setCameraFrame(event.currentTarget.value);
          }}
        />
        <button
          type="button"
          disabled={!isUsable || isBusy}
          onClick={() => {
            onChange([...others, { filmFrame: film, cameraFrame: camera }]);
            setFilmFrame('');
            setCameraFrame('');
          }}
        >
          Add tie
        </button>
      </div>
      <ul role="status">
        {ties.map((tie) => {
          const conflict = conflicts.find(
            (each) =>
              each.tie.filmFrame === tie.filmFrame && each.tie.cameraFrame === tie.cameraFrame,
          );
          return (
            <li key={tie.filmFrame}>
              Film frame {tie.filmFrame} is camera frame {tie.cameraFrame}.{' '}
              {conflict !== undefined &&
                `${TIE_WORDS[conflict.reason].says} ${TIE_WORDS[conflict.reason].toDo} `}
              <button
                type="button"
                disabled={isBusy}
                aria-label={`Remove the tie of film frame ${tie.filmFrame}`}
                onClick={() => {
                  onChange(ties.filter((each) => each !== tie));
                }}
              >
                Remove
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
