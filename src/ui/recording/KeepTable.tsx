import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { KeptFrame } from '../../core/file/measured-keep-list.ts';
import { SAME_PICTURE_WORDS, STATUS_WORDS } from '../../core/file/recording-words.ts';

/** Lines at a time: a long reel has ten thousand. */
const PAGE = 20;

const SIGNS = { whole: '✓', unsure: '▲', blended: '✕', bridged: '▲' } as const;
const LEVELS = { whole: 'good', unsure: 'care', blended: 'stop', bridged: 'care' } as const;

/** The measured keep list, a page of lines at a time. */
export function KeepTable(props: {
  readonly frames: readonly KeptFrame[];
  readonly firstSeconds: number;
  readonly instance: string;
  /** Called with the place of a line that the reader wants to see. */
  readonly onLook: ((place: number) => void) | undefined;
}): ComponentChildren {
  const { frames, firstSeconds, instance, onLook } = props;
  const [from, setFrom] = useState(0);
  const shown = frames.slice(from, from + PAGE);
  const doubtful = frames.findIndex(
    ({ status, isSamePicture }, place) =>
      place >= from + PAGE && (status !== 'whole' || isSamePicture),
  );
  const used = [...new Set(shown.map(({ status }) => status))];
  const go = (place: number): void => {
    setFrom(Math.max(0, Math.min(frames.length - 1, place)));
  };
  return (
    <div class="recording-part">
      <div class="table-frame" tabIndex={0} role="region" aria-label="Keep list">
        <table>
          <caption>
            Keep list, line {from + 1} to {from + shown.length} of {frames.length}
          </caption>
          <thead>
            <tr>
              <th scope="col">Film frame</th>
              <th scope="col">Camera frame</th>
              <th scope="col">Time, s</th>
              <th scope="col">Margin, film frames</th>
              <th scope="col">What it is</th>
            </tr>
          </thead>
          <tbody>
            {shown.map(
              ({ filmFrame, cameraFrame, seconds, margin, status, isSamePicture }, line) => (
                <tr key={filmFrame}>
                  <td>
                    {onLook === undefined ? (
                      filmFrame
                    ) : (
                      <button
                        type="button"
                        class="recording-look"
                        aria-label={`Look at film frame ${filmFrame}`}
                        onClick={() => {
                          onLook(from + line);
                        }}
                      >
                        {filmFrame}
                      </button>
                    )}
                  </td>
                  <td>{cameraFrame}</td>
                  <td>{(seconds - firstSeconds).toFixed(3)}</td>
                  <td>{margin.toFixed(2).replace('-', '−')}</td>
                  <td>
                    <span class={`answer-${LEVELS[status]}`} aria-hidden="true">
                      {SIGNS[status]}
                    </span>{' '}
                    {status}
                    {isSamePicture && ', same picture twice?'}
                  </td>
                </tr>
              ),
            )}
          </tbody>
        </table>
      </div>
      <div class="recording-pager">
        <button
          type="button"
          disabled={from === 0}
          onClick={() => {
            go(from - PAGE);
          }}
        >
          Earlier lines
        </button>
        <button
          type="button"
          disabled={from + PAGE >= frames.length}
          onClick={() => {
            go(from + PAGE);
          }}
        >
          Later lines
        </button>
        {doubtful >= 0 && (
          <button
            type="button"
            onClick={() => {
              go(doubtful);
            }}
          >
            Next that is not sure
          </button>
        )}
        <label for={`${instance}-line`}>From film frame</label>
        <input
          id={`${instance}-line`}
          type="number"
          min={frames[0]?.filmFrame ?? 0}
          max={frames.at(-1)?.filmFrame ?? 0}
          value={shown[0]?.filmFrame ?? 0}
          onChange={(event) => {
            const wanted = event.currentTarget.valueAsNumber;
            const place = frames.findIndex(({ filmFrame }) => filmFrame >= wanted);
            if (place >= 0) go(place);
          }}
        />
      </div>
      <ul class="recording-words">
        {used.map((status) => (
          <li key={status}>
            {status}: {STATUS_WORDS[status].says} {status !== 'whole' && STATUS_WORDS[status].toDo}
          </li>
        ))}
        {shown.some(({ isSamePicture }) => isSamePicture) && (
          <li>
            {SAME_PICTURE_WORDS.says} {SAME_PICTURE_WORDS.toDo}
          </li>
        )}
      </ul>
    </div>
  );
}
