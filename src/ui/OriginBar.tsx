import type { ComponentChildren } from 'preact';
import { sitePath } from './islands/site-path.ts';

/** Whose numbers a sheet opens with. */
export type Origin = 'book' | 'bench' | 'link';

interface Props {
  readonly origin: Origin;
  /** The reader has changed an entry since. */
  readonly isChanged: boolean;
  /** The chapter gives this sheet numbers of its own, which the bench stands in for. */
  readonly isChapters: boolean;
  /** Name of the bench in use; undefined when it says nothing about this sheet. */
  readonly benchName: string | undefined;
  /** Name of the reel of the box on the table, where it speaks for this sheet. */
  readonly reelName?: string | undefined;
  /** Why that reel must not go on the projector. */
  readonly refusal?: string | undefined;
  /** Labels of the inputs whose entry from the bench this sheet cannot use. */
  readonly leftOut: readonly string[];
  readonly onChoose: (origin: 'book' | 'bench') => void;
}

/** Whose numbers a sheet shows: the bench's own, those of the reel on the table, or both. */
function shownNumbers(props: Props): string {
  const { origin, reelName, isChanged, isChapters, benchName = '' } = props;
  if (origin === 'link') return 'the numbers of the link';
  if (origin === 'book') return isChapters ? 'this chapter’s numbers' : 'the book’s numbers';
  const bench = `your bench${benchName === '' || (isChanged && reelName === undefined) ? '' : `: ${benchName}`}`;
  if (reelName !== undefined) {
    return `the reel on the table, ${reelName}${benchName === '' ? '' : ` and ${bench}`}`;
  }
  return isChapters && !isChanged ? 'your bench, not the chapter’s numbers' : bench;
}

/**
 * Says whose numbers the sheet shows, with one press from the bench to the book's and back. Its
 * height does not depend on what it says: the page must not move when the bench comes in.
 */
export function OriginBar(props: Props): ComponentChildren {
  const { origin, isChanged, benchName, reelName, refusal, leftOut, onChoose } = props;
  return (
    <div class="origin">
      <p class="origin-status">{`Showing ${shownNumbers(props)}${isChanged ? ', changed' : ''}`}</p>
      <div class="origin-choice">
        <button
          type="button"
          aria-pressed={origin === 'book' && !isChanged}
          onClick={() => {
            onChoose('book');
          }}
        >
          Book’s numbers
        </button>
        {benchName === undefined ? (
          <a href={sitePath('/bench/')}>Describe your bench</a>
        ) : (
          <button
            type="button"
            aria-pressed={origin === 'bench' && !isChanged}
            title={benchName === '' ? undefined : benchName}
            onClick={() => {
              onChoose('bench');
            }}
          >
            {reelName === undefined ? 'Your bench' : 'Your reel'}
          </button>
        )}
      </div>
      {origin === 'bench' && refusal !== undefined && (
        <p class="origin-left-out answer-stop">✕ {refusal}</p>
      )}
      {origin === 'bench' && leftOut.length > 0 && (
        <p class="origin-left-out">
          Not taken from your bench, because it does not fit this sheet: {leftOut.join(', ')}.
        </p>
      )}
    </div>
  );
}
