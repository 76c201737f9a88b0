import { evaluate, type Entries } from '../../worksheets/machine/evaluate.ts';
import type { ExactOf, InputSpecs, ValuesOf, Worksheet } from '../../worksheets/machine/types.ts';

/** Settings as read, or the message of each field that cannot be read. */
export interface SettingsRead<Settings> {
  readonly settings: Settings | undefined;
  readonly messages: Readonly<Record<string, string>>;
}

/** The fields beside a recording: they open with the bench and refuse entries as a worksheet does. */
export interface SettingsReader<Specs extends InputSpecs, Settings> {
  /** The fields as a sheet without answers, for whoever asks what the bench says to it. */
  readonly sheet: Worksheet<Specs>;
  read(entries: Entries): SettingsRead<Settings>;
}

/**
 * @param inputs  the fields
 * @param take    makes settings of what was read; may throw an `OutOfRangeError` that names a field
 */
export function settingsReader<const Specs extends InputSpecs, Settings>(
  inputs: Specs,
  take: (values: ValuesOf<Specs>, exact: ExactOf<Specs>) => Settings,
): SettingsReader<Specs, Settings> {
  let taken: Settings | undefined;
  const sheet: Worksheet<Specs> = {
    id: 'recording',
    title: '',
    question: '',
    chapter: '',
    inputs,
    model: '',
    cautions: [],
    sources: [],
    answerLabels: {},
    run(values, exact) {
      // evaluate reads the values with these very inputs.
      taken = take(values as ValuesOf<Specs>, exact as ExactOf<Specs>);
      const verdict = { level: 'note', sentence: '' } as const;
      return { outcome: { verdict, answers: {} }, working: () => [] };
    },
  };
  return {
    sheet,
    read(entries) {
      taken = undefined;
      const { messages, message, outcome } = evaluate(sheet, entries);
      return {
        settings: outcome === undefined ? undefined : taken,
        messages: message === undefined ? messages : { ...messages, '': message },
      };
    },
  };
}
