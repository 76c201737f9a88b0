import type { ComponentChildren } from 'preact';
import { ownProperty } from '../quantity/own-property.ts';
import { entryUnitSymbol } from '../worksheets/machine/entry-text.ts';
import type { InputSpec } from '../worksheets/machine/types.ts';
import { hasOwnUnit } from './own-unit.ts';

interface Props {
  readonly id: string;
  readonly name: string;
  readonly spec: InputSpec;
  readonly text: string;
  readonly message: string | undefined;
  readonly onChange: (text: string) => void;
}

function printedText(spec: InputSpec, text: string): string {
  if (spec.kind === 'choice') return ownProperty(spec.options, text) ?? text;
  return text.trim() === '' ? '–' : text;
}

/** One field of a worksheet: label, entry, unit, help, and the message when the entry is refused. */
export function EntryField(props: Props): ComponentChildren {
  const { id, name, spec, text, message, onChange } = props;
  const isWrong = message !== undefined;
  const described = isWrong ? `${id}-message ${id}-help` : `${id}-help`;
  const symbol = entryUnitSymbol(spec, text);
  const take = ({
    currentTarget,
  }: {
    readonly currentTarget: { readonly value: string };
  }): void => {
    onChange(currentTarget.value);
  };
  return (
    <div class={`entry entry-${spec.kind}${isWrong ? ' entry-wrong' : ''}`}>
      <label for={id}>
        {spec.label}
        {(spec.kind === 'optional-quantity' ||
          ((spec.kind === 'list' || spec.kind === 'text') && spec.mayBeEmpty)) && (
          <span class="entry-optional"> (may be empty)</span>
        )}
      </label>
      <div class="entry-line">
        {spec.kind === 'choice' ? (
          <select
            id={id}
            name={name}
            value={text}
            autocomplete="off"
            aria-describedby={described}
            onChange={take}
          >
            {/* A value from a mangled link is kept visible until the reader chooses. */}
            {!Object.hasOwn(spec.options, text) && <option value={text}>{text}</option>}
            {Object.entries(spec.options).map(([key, label]) => (
              <option key={key} value={key} selected={key === text}>
                {label}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            name={name}
            type="text"
            value={text}
            autocomplete="off"
            spellcheck={false}
            aria-invalid={isWrong}
            aria-describedby={described}
            onInput={take}
          />
        )}
        {/* For paper: a field would cut a long entry off. */}
        <span
          class={text.trim() === '' ? 'entry-printed entry-printed-empty' : 'entry-printed'}
          aria-hidden="true"
        >
          {printedText(spec, text)}
        </span>
        {symbol !== '' && (
          <span class={hasOwnUnit(text) ? 'entry-unit entry-unit-unneeded' : 'entry-unit'}>
            {symbol}
          </span>
        )}
      </div>
      {isWrong && (
        <p class="entry-message" id={`${id}-message`}>
          {message}
        </p>
      )}
      <p class="entry-help" id={`${id}-help`}>
        {spec.help}
      </p>
    </div>
  );
}
