import type { ComponentChildren } from 'preact';
import type { BenchState } from './bench-state.ts';
import type { BenchSnapshot } from './bench-store.ts';
import type { KeptTrouble } from './kept-store.ts';

/** The last thing that happened, and the state to go back to. */
export interface Said {
  readonly words: string;
  readonly isRefusal?: boolean;
  readonly undo?: BenchState;
}

const TROUBLES: Readonly<Record<KeptTrouble, string>> = {
  blocked:
    'This browser lets the page keep nothing: your bench lasts until you leave the page. Save it as a file or copy its link.',
  full: 'The browser has no room left: the last changes are not kept and last until you leave the page. Save them as a file.',
  'later-version':
    'What is kept here is from a later edition of this book. It is left alone; what you enter now lasts until you leave the page. Reload the page to fetch the newer edition.',
};

/** One line on top of the form: whether it is kept, and what was done last. */
export function BenchStatus(props: {
  readonly snapshot: BenchSnapshot;
  readonly hasAside: boolean;
  readonly said: Said | undefined;
  readonly onUndo: (before: BenchState) => void;
}): ComponentChildren {
  const { snapshot, hasAside, said, onUndo } = props;
  const { trouble } = snapshot;
  const undo = said?.undo;
  return (
    <div class={`bench-status${trouble === undefined ? '' : ' bench-trouble'}`} role="status">
      <p>
        {trouble === undefined ? (
          'Kept on this device as you type.'
        ) : (
          <span class="answer-care">▲ {TROUBLES[trouble]}</span>
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
