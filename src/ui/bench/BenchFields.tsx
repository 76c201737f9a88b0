import type { ComponentChildren } from 'preact';
import type { StoredField } from '../../worksheets/machine/bench-table.ts';
import { BENCH_INPUTS } from '../../worksheets/bench/bench-inputs.ts';
import { parseEntry } from '../../worksheets/machine/evaluate.ts';
import type { InputSpec } from '../../worksheets/machine/types.ts';
import { EntryField } from '../EntryField.tsx';
import type { BenchTexts } from './bench-state.ts';

/** Message beside a field of the bench; an empty field is in order. */
export function benchMessage(field: StoredField, texts: BenchTexts): string | undefined {
  const spec: InputSpec = BENCH_INPUTS[field];
  const text = texts[field] ?? '';
  if (text.trim() === '') return undefined;
  const rate = parseEntry(BENCH_INPUTS['camera.cameraFps'], texts['camera.cameraFps'] ?? '');
  const read = parseEntry(spec, text, rate.ok ? (rate.value.value as number) : undefined);
  return read.ok ? undefined : read.reason;
}

interface Props {
  readonly texts: BenchTexts;
  readonly onText: (field: StoredField, text: string) => void;
}

function FieldList(props: Props & { readonly fields: readonly StoredField[] }): ComponentChildren {
  return props.fields.map((field) => {
    const text = props.texts[field] ?? '';
    return (
      <EntryField
        key={field}
        id={field.replace('.', '-')}
        name={field}
        spec={BENCH_INPUTS[field]}
        text={text}
        message={benchMessage(field, props.texts)}
        onChange={(typed) => {
          props.onText(field, typed);
        }}
      />
    );
  });
}

/** How many of the fields behind a word are filled in, and whether one of them cannot be used. */
export function moreWords(fields: readonly StoredField[], texts: BenchTexts): string {
  const filled = fields.filter((field) => (texts[field] ?? '') !== '');
  const wrong = filled.filter((field) => benchMessage(field, texts) !== undefined);
  if (wrong.length > 0) return ` (${wrong.length} cannot be used)`;
  return filled.length > 0 ? ` (${filled.length} filled in)` : '';
}

/** A group of fields: the few that most worksheets need, and the rest behind a word. */
export function BenchFields(
  props: Props & {
    readonly legend: string;
    readonly fields: readonly StoredField[];
    readonly more?: readonly StoredField[];
  },
): ComponentChildren {
  const { legend, fields, more, texts, onText } = props;
  return (
    <fieldset class="bench-group">
      <legend>{legend}</legend>
      <FieldList fields={fields} texts={texts} onText={onText} />
      {more !== undefined && (
        <details>
          <summary>
            More about the {legend.toLowerCase()}
            {moreWords(more, texts)}
          </summary>
          <FieldList fields={more} texts={texts} onText={onText} />
        </details>
      )}
    </fieldset>
  );
}
