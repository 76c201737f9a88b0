import type { ComponentChildren } from 'preact';
import { fieldMessage } from '../../worksheets/box/reel-reading.ts';
import type { BoxField } from '../../worksheets/box/reel-fields.ts';
import { EntryField } from '../EntryField.tsx';

interface Props {
  readonly id: string;
  readonly field: BoxField;
  readonly text: string;
  readonly onChange: (text: string) => void;
}

/** One field of a job or of a reel, with its label, help and message. */
export function BoxFieldEntry({ id, field, text, onChange }: Props): ComponentChildren {
  if (field.kind === 'gauge' || field.kind === 'sound') return null;
  if (field.kind !== 'words') {
    return (
      <EntryField
        id={id}
        name={id}
        spec={field}
        text={text === '' ? field.default : text}
        message={fieldMessage(field, text)}
        onChange={onChange}
      />
    );
  }
  const common = {
    id,
    value: text,
    autocomplete: 'off',
    'aria-describedby': `${id}-help`,
  } as const;
  return (
    <div class="entry entry-words">
      <label for={id}>{field.label}</label>
      {field.isLong === true ? (
        <textarea
          {...common}
          rows={3}
          onInput={(event) => {
            onChange(event.currentTarget.value);
          }}
        />
      ) : (
        <input
          {...common}
          type="text"
          onInput={(event) => {
            onChange(event.currentTarget.value);
          }}
        />
      )}
      <p class="entry-help" id={`${id}-help`}>
        {field.help}
      </p>
    </div>
  );
}
