import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { addEmpty, choose, copyCurrent, hasRoom, removeCurrent, rename } from './bench-edits.ts';
import { CURRENT, current, MOST, type BenchState, type Shelf } from './bench-state.ts';

interface Props {
  readonly shelf: Shelf;
  readonly state: BenchState;
  /** Makes a change; `words` say what was done, and offer to take it back. */
  readonly onEdit: (edit: (state: BenchState) => BenchState, words?: string) => void;
}

const WORDS = {
  benches: { one: 'bench', title: 'Bench in use', none: 'none yet' },
  reels: { one: 'reel', title: 'Reel on the table', none: 'none yet' },
} as const;

/** Chooses among the kept benches or reels; makes, copies, names and removes them. */
export function ShelfPicker({ shelf, state, onEdit }: Props): ComponentChildren {
  const words = WORDS[shelf];
  const chosen = current(state, shelf);
  const isFull = !hasRoom(state, shelf);
  const id = `pick-${shelf}`;
  return (
    <div class="shelf">
      <div class="shelf-pick">
        <label for={id}>{words.title}</label>
        <select
          id={id}
          value={String(state[CURRENT[shelf]])}
          disabled={chosen === undefined}
          onChange={(event) => {
            const place = Number(event.currentTarget.value);
            onEdit((before) => choose(before, shelf, place));
          }}
        >
          {chosen === undefined && <option value="0">{words.none}</option>}
          {state[shelf].map((item, index) => (
            <option key={index} value={String(index)}>
              {item.name}
            </option>
          ))}
        </select>
      </div>
      <NameField key={state[CURRENT[shelf]]} shelf={shelf} name={chosen?.name} onEdit={onEdit} />
      <div class="shelf-buttons">
        <button
          type="button"
          disabled={isFull}
          onClick={() => {
            onEdit((before) => addEmpty(before, shelf));
          }}
        >
          New {words.one}
        </button>
        <button
          type="button"
          disabled={isFull || chosen === undefined}
          onClick={() => {
            onEdit((before) => copyCurrent(before, shelf));
          }}
        >
          Copy<span class="visually-hidden"> this {words.one}</span>
        </button>
        <button
          type="button"
          disabled={chosen === undefined}
          onClick={() => {
            onEdit((before) => removeCurrent(before, shelf), `“${chosen?.name ?? ''}” is removed.`);
          }}
        >
          Remove<span class="visually-hidden"> this {words.one}</span>
        </button>
      </div>
    </div>
  );
}

function NameField(props: {
  readonly shelf: Shelf;
  readonly name: string | undefined;
  readonly onEdit: Props['onEdit'];
}): ComponentChildren {
  // What is being typed may end in a space or be empty; what is kept may not.
  const [draft, setDraft] = useState<string>();
  const id = `name-${props.shelf}`;
  return (
    <div class="shelf-name">
      <label for={id}>Its name</label>
      <input
        id={id}
        type="text"
        maxLength={MOST.nameLength}
        autocomplete="off"
        placeholder={props.shelf === 'benches' ? 'My bench' : 'Reel on the table'}
        value={draft ?? props.name ?? ''}
        onInput={(event) => {
          const typed = event.currentTarget.value;
          setDraft(typed);
          props.onEdit((before) => rename(before, props.shelf, typed));
        }}
        onBlur={() => {
          setDraft(undefined);
        }}
      />
    </div>
  );
}
