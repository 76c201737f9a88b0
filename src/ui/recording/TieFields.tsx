import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { TieConflict } from '../../core/file/tied-places.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { TIE_WORDS } from '../../core/file/recording-words.ts';
import { readTie } from './tie-entry.ts';

/** A field of a tie, with what is wrong with it. */
function TieField(props: {
  readonly id: string;
  readonly label: string;
  readonly inputMode: 'numeric' | 'decimal';
  readonly text: string;
  readonly message: string | undefined;
  readonly onText: (text: string) => void;
}): ComponentChildren {
  const { id, label, inputMode, text, message, onText } = props;
  return (
    <>
      <label for={id}>{label}</label>
      <input
        id={id}
        inputMode={inputMode}
        autocomplete="off"
        value={text}
        aria-invalid={message !== undefined}
        {...(message === undefined ? {} : { 'aria-describedby': `${id}-message` })}
        onInput={(event) => {
          onText(event.currentTarget.value);
        }}
      />
      {message !== undefined && (
        <p class="entry-message" id={`${id}-message`}>
          {message}
        </p>
      )}
    </>
  );
}

/** Ties counted by hand, for stretches that the pictures do not tell. */
export function TieFields(props: {
  readonly instance: string;
  readonly cameraFrames: number;
  readonly ties: readonly KeepTie[];
  readonly conflicts: readonly TieConflict[];
  readonly isBusy: boolean;
  /** Said when the ties could not be worked out. */
  readonly trouble: string | undefined;
  readonly onChange: (ties: readonly KeepTie[]) => void;
}): ComponentChildren {
  const { instance, cameraFrames, ties, conflicts, isBusy, trouble, onChange } = props;
  const [filmText, setFilmText] = useState('');
  const [cameraText, setCameraText] = useState('');
  const [isAsked, setIsAsked] = useState(false);
  const entry = readTie(filmText, cameraText, cameraFrames);
  const messages =
    isAsked && !('tie' in entry) ? entry : { filmMessage: undefined, cameraMessage: undefined };
  const add = (): void => {
    setIsAsked(true);
    if (!('tie' in entry)) return;
    const { tie } = entry;
    onChange([...ties.filter(({ filmFrame }) => filmFrame !== tie.filmFrame), tie]);
    setFilmText('');
    setCameraText('');
    setIsAsked(false);
  };
  return (
    <div class="recording-part" role="group" aria-label="Ties counted by hand">
      <p class="sheet-legend">Ties counted by hand</p>
      <p>
        Take a film frame of the list before the stretch that is not told, count on from it through
        the stretch, and enter the first film frame after it that you can see. Its camera frame is
        the middle of those that show it clean.
      </p>
      <div class="recording-pager">
        <TieField
          id={`${instance}-tie-film`}
          label="Film frame"
          inputMode="numeric"
          text={filmText}
          message={messages.filmMessage}
          onText={setFilmText}
        />
        <TieField
          id={`${instance}-tie-camera`}
          label="Camera frame"
          inputMode="decimal"
          text={cameraText}
          message={messages.cameraMessage}
          onText={setCameraText}
        />
        <button type="button" disabled={isBusy} onClick={add}>
          Add tie
        </button>
      </div>
      <div role="status">
        {trouble !== undefined && <p class="entry-message">{trouble}</p>}
        {ties.length > 0 && (
          <ul>
            {ties.map((tie) => {
              const conflict = conflicts.find(
                (each) =>
                  each.tie.filmFrame === tie.filmFrame && each.tie.cameraFrame === tie.cameraFrame,
              );
              return (
                <li key={tie.filmFrame}>
                  Film frame {tie.filmFrame} is camera frame {tie.cameraFrame}.{' '}
                  {conflict !== undefined && (
                    <span class="entry-message">
                      Not used. {TIE_WORDS[conflict.reason].says}{' '}
                      {TIE_WORDS[conflict.reason].toDo}{' '}
                    </span>
                  )}
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
        )}
      </div>
    </div>
  );
}
