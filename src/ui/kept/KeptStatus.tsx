import type { ComponentChildren } from 'preact';
import type { KeptTrouble } from '../bench/kept-store.ts';

/** The last thing that happened, what can be done about it, and the state to go back to. */
export interface Said<State> {
  readonly words: string;
  readonly isRefusal?: boolean;
  readonly act?: { readonly label: string; readonly run: () => void };
  readonly undo?: State;
}

/** What is said where all is well, and in trouble that is this page's own to tell. */
export interface KeptWords {
  readonly kept: string;
  readonly blocked: string;
  readonly full: string;
}

const LATER_VERSION =
  'What is kept here is from a later edition of this book. It is left alone; what you enter now lasts until you leave the page. Reload the page to fetch the newer edition.';

interface Props<State> {
  readonly words: KeptWords;
  readonly trouble: KeptTrouble | undefined;
  readonly hasAside: boolean;
  readonly said: Said<State> | undefined;
  readonly onUndo: (before: State) => void;
}

/** One line on top of bench or box: whether it is kept, and what was done last. */
export function KeptStatus<State>(props: Props<State>): ComponentChildren {
  const { words, trouble, hasAside, said, onUndo } = props;
  const { undo, act } = said ?? {};
  return (
    <div class={`bench-status${trouble === undefined ? '' : ' bench-trouble'}`} role="status">
      <p>
        {trouble === undefined ? (
          words.kept
        ) : (
          <span class="answer-care">
            ▲ {trouble === 'later-version' ? LATER_VERSION : words[trouble]}
          </span>
        )}
        {hasAside && (
          <>
            {' '}
            <a href="#kept-aside">Part of what was stored could not be read.</a>
          </>
        )}
      </p>
      {said !== undefined && (
        <p class={said.isRefusal === true ? 'bench-said answer-stop' : 'bench-said'}>
          {said.isRefusal === true && '✕ '}
          {said.words}{' '}
          {act !== undefined && (
            <button type="button" onClick={act.run}>
              {act.label}
            </button>
          )}
          {undo !== undefined && (
            <button
              type="button"
              onClick={() => {
                onUndo(undo);
              }}
            >
              Undo
            </button>
          )}
        </p>
      )}
    </div>
  );
}
