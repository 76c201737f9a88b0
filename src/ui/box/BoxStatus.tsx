import type { ComponentChildren } from 'preact';
import type { Box } from '../../worksheets/box/job.ts';
import type { KeptSnapshot, KeptTrouble } from '../bench/kept-store.ts';

/** The last thing that happened, what can be done about it, and the box to go back to. */
export interface BoxSaid {
  readonly words: string;
  readonly isRefusal?: boolean;
  readonly act?: { readonly label: string; readonly run: () => void };
  readonly undo?: Box;
}

const TROUBLES: Readonly<Record<KeptTrouble, string>> = {
  blocked:
    'This browser lets the page keep nothing: the box lasts until you leave the page. Save it as a file.',
  full: 'The browser has no room left: the last changes are not kept and last until you leave the page. Save the box as a file.',
  'later-version':
    'What is kept here is from a later edition of this book. It is left alone; what you enter now lasts until you leave the page. Reload the page to fetch the newer edition.',
};

/** One line on top of the page: whether the box is kept, and what was done last. */
export function BoxStatus(props: {
  readonly snapshot: KeptSnapshot<Box>;
  readonly hasAside: boolean;
  readonly said: BoxSaid | undefined;
  readonly onUndo: (before: Box) => void;
}): ComponentChildren {
  const { snapshot, hasAside, said, onUndo } = props;
  const { trouble } = snapshot;
  const { undo, act } = said ?? {};
  return (
    <div class={`bench-status${trouble === undefined ? '' : ' bench-trouble'}`} role="status">
      <p>
        {trouble === undefined ? (
          'Kept on this device as you type. Nothing of it goes anywhere.'
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
