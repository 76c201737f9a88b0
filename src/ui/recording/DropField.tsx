import type { ComponentChildren } from 'preact';
import type { Progress } from './recording-kind.ts';

/** Where a recording is dropped, chosen or pasted; while it is read, how far that is. */
export function DropField(props: {
  readonly id: string;
  readonly wanted: string;
  readonly progress: Progress | undefined;
  readonly onFile: (file: File) => void;
  readonly onDemo: () => void;
  readonly onCancel: () => void;
}): ComponentChildren {
  const { id, progress } = props;
  return (
    <div class="recording-drop">
      <label class="recording-label" for={`${id}-file`}>
        Your recording
      </label>
      <p class="entry-help" id={`${id}-wanted`}>
        {props.wanted}
      </p>
      <input
        id={`${id}-file`}
        type="file"
        accept="video/*,.mov,.mp4,.m4v,.mkv,.webm,.ts,.mts,.m2ts"
        aria-describedby={`${id}-wanted ${id}-private`}
        disabled={progress !== undefined}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) props.onFile(file);
        }}
      />
      <p class="entry-help" id={`${id}-private`}>
        Or drop it here, or paste it. It is read on this device; nothing of it is sent anywhere.
      </p>
      {progress === undefined ? (
        <button type="button" class="needs-scripts" onClick={props.onDemo}>
          Read the demo recording
        </button>
      ) : (
        <div class="recording-progress">
          <label for={`${id}-progress`}>{progress.words}</label>
          <progress
            id={`${id}-progress`}
            max={1}
            {...(progress.share === undefined ? {} : { value: progress.share })}
          />
          <button type="button" onClick={props.onCancel}>
            Cancel
          </button>
        </div>
      )}
    </div>
  );
}
