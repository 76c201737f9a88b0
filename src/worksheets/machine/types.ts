import type Fraction from 'fraction.js';
import type { BenchField } from './bench-table.ts';
import type {
  ChoiceField,
  CountField,
  ListField,
  OptionalQuantityField,
  QuantityField,
  TextField,
} from './field-types.ts';
import type { PictureData } from './picture-data.ts';

/** What a field of a worksheet has besides those of a form. */
interface Opening {
  /** What the reader would type; read with the same parser as the reader's own text. */
  readonly default: string;
  /** Field of the reader's bench that it opens with. */
  readonly bench?: BenchField;
  /** True where another field of the bench must not stand in: a projector says nothing about a reel. */
  readonly onlyOwnBenchField?: boolean;
}

export interface QuantityInput extends QuantityField, Opening {}
export interface OptionalQuantityInput extends OptionalQuantityField, Opening {}
export interface CountInput extends CountField, Opening {}
export interface ChoiceInput<Key extends string = string> extends ChoiceField<Key>, Opening {
  readonly default: Key;
}
export interface ListInput extends ListField, Opening {}
export interface TextInput extends TextField, Opening {}

export type InputSpec =
  | QuantityInput
  | OptionalQuantityInput
  | CountInput
  | ChoiceInput
  | ListInput
  | TextInput;
export type InputSpecs = Readonly<Record<string, InputSpec>>;

/** Value that `find` receives for one input. */
export type ValueOf<Spec extends InputSpec> = Spec extends { kind: 'quantity' | 'count' }
  ? number
  : Spec extends { kind: 'optional-quantity' }
    ? number | undefined
    : Spec extends { kind: 'list' }
      ? readonly number[]
      : Spec extends { kind: 'text' }
        ? string
        : Spec extends { kind: 'choice'; options: Readonly<Record<infer Key, string>> }
          ? Key
          : never;

export type ValuesOf<Specs extends InputSpecs> = {
  readonly [Key in keyof Specs]: ValueOf<Specs[Key]>;
};

/** The exact rationals behind the quantity inputs, for the sums where rounding would matter. */
export type ExactOf<Specs extends InputSpecs> = {
  readonly [Key in keyof Specs as Specs[Key]['kind'] extends 'quantity' ? Key : never]: Fraction;
} & {
  readonly [
    Key in keyof Specs as Specs[Key]['kind'] extends 'list' ? Key : never
  ]: readonly Fraction[];
};

/** `good`: go on. `care`: works with a condition. `stop`: do not do this. `note`: plain information. */
export type VerdictLevel = 'good' | 'care' | 'stop' | 'note';

/** One result line; made with the builders in answers.ts so that a value is formatted in one place. */
export interface Answer {
  readonly label: string;
  /** The value as printed everywhere: page, example, card, text copy. */
  readonly text: string;
  /** The bare value for CSV and JSON; undefined when the answer is words. */
  readonly value?: number;
  /** Symbol of the unit of `value`. */
  readonly unit?: string;
  /** The same in feet or inches, for a reader who asked for them. */
  readonly imperial?: { readonly text: string; readonly value: number; readonly unit: string };
  readonly level?: VerdictLevel;
  /** A few words on how to read it. */
  readonly note?: string;
}

/** A result that is a list, for instance the ranked settings of the match finder. */
export interface ResultTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly {
    readonly cells: readonly string[];
    readonly level?: VerdictLevel;
  }[];
}

/** A step of the working: words, and the sum with the reader's numbers put in. */
export interface WorkingStep {
  readonly words: string;
  readonly sum?: string;
}

/** A file the reader can take away, for instance a keep list. */
export interface ResultFile {
  readonly fileName: string;
  readonly mediaType: string;
  /** The text, or what fetches the code that writes it: only who takes the file needs that. */
  readonly text: string | (() => Promise<string>);
  /** True where a reader should see the text before taking it, as with a script. */
  readonly isShown?: true;
}

export interface Outcome {
  /** One plain sentence that answers the worksheet's question; printed on top of the answers. */
  readonly verdict: { readonly level: VerdictLevel; readonly sentence: string };
  readonly answers: Readonly<Record<string, Answer>>;
  readonly tables?: readonly ResultTable[];
  /** Cautions that apply to these numbers only. */
  readonly cautions?: readonly string[];
  /** Commands to copy, each with a label. */
  readonly commands?: readonly { readonly label: string; readonly text: string }[];
  readonly files?: readonly ResultFile[];
  readonly pictures?: readonly PictureData[];
}

/** What a worksheet made of a set of values. */
export interface WorksheetRun {
  readonly outcome: Outcome;
  /** The steps with the reader's numbers; worked out when asked for. */
  working(): readonly WorkingStep[];
}

/** A live calculator. The single object behind calculator, example, card, table and test. */
export interface Worksheet<Specs extends InputSpecs = InputSpecs> {
  /** Kebab-case noun; also the file name, the example file name and `?w=`. */
  readonly id: string;
  readonly title: string;
  /** The question of the worker that it answers. */
  readonly question: string;
  /** Chapter that teaches it, `part/chapter`, for instance `gate/matching`. */
  readonly chapter: string;
  readonly inputs: Specs;
  /** What is assumed and where it stops holding, for a reader who doubts the answer. */
  readonly model: string;
  /** Standing cautions, printed with every result. */
  readonly cautions: readonly string[];
  /** Ids in content/sources.yaml. */
  readonly sources: readonly string[];
  /** Label of every answer, in the order in which they are printed. */
  readonly answerLabels: Readonly<Record<string, string>>;
  /**
   * Works with values that were read by these inputs, by input key.
   *
   * @throws {OutOfRangeError} naming an input, for values that no entry range excludes
   */
  run(
    values: Readonly<Record<string, unknown>>,
    exact: Readonly<Record<string, unknown>>,
  ): WorksheetRun;
}
