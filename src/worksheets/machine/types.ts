import type Fraction from 'fraction.js';
import type { UnitName } from '../../quantity/units.ts';
import type { PictureData } from './picture-data.ts';

/** Places in the description of a reader's bench that an input can open with. */
export type BenchField =
  | 'projector.gauge'
  | 'projector.filmFps'
  | 'projector.speedChoice'
  | 'projector.fixedSpeeds'
  | 'projector.slowestFps'
  | 'projector.fastestFps'
  | 'projector.flashesPerFrame'
  | 'projector.openFraction'
  | 'projector.turnsPerFrame'
  | 'camera.cameraFps'
  | 'camera.cameraRates'
  | 'camera.exposureSeconds'
  | 'camera.exposureTimes'
  | 'camera.exposureChoice'
  | 'camera.readoutSeconds'
  | 'camera.sensorWidthMillimetres'
  | 'camera.pixelsAcross'
  | 'reel.gauge'
  | 'reel.nativeFps'
  | 'reel.lengthMetres'
  | 'reel.count'
  | 'camera.lensSteps'
  | 'times.handlingSeconds'
  | 'times.afterWorkSeconds'
  | 'times.repeatPercent'
  | 'times.hoursPerDay'
  | 'prices.perReel'
  | 'prices.perMinute'
  | 'prices.minuteRule'
  | 'prices.carrier'
  | 'prices.fixed'
  | 'prices.minimum'
  | 'prices.taxPercent'
  | 'region.mainsHz'
  | 'region.deliveryFps';

interface InputBase {
  readonly label: string;
  /** One or two plain sentences under the field: what it is and where the reader finds it. */
  readonly help: string;
  /** What the reader would type; read with the same parser as the reader's own text. */
  readonly default: string;
  readonly bench?: BenchField;
  /** True where another field of the bench must not stand in: a projector says nothing about a reel. */
  readonly onlyOwnBenchField?: boolean;
}

/** A measured or set quantity; `compute` receives a number in `unit`. */
export interface QuantityInput extends InputBase {
  readonly kind: 'quantity';
  readonly unit: UnitName;
  /** Unit meant by a bare number, when it differs from `unit` (readout times are typed in ms). */
  readonly entryUnit?: UnitName;
  /** Accepted range in `unit`, inclusive. */
  readonly minimum: number;
  readonly maximum: number;
  /** Entries that are accepted, shown when an entry is wrong, for instance `1/54, 18.5 ms or 166.7°`. */
  readonly accepted: string;
  /** Key of the rate input that turns a typed shutter angle into a time. */
  readonly angleOf?: string;
}

/** A quantity that may be left empty; `compute` then receives `undefined`. */
export interface OptionalQuantityInput extends Omit<QuantityInput, 'kind'> {
  readonly kind: 'optional-quantity';
}

/** A whole number. */
export interface CountInput extends InputBase {
  readonly kind: 'count';
  /** What is counted, where readers may write it behind the number: `3600 frames`. */
  readonly unit?: UnitName;
  readonly minimum: number;
  readonly maximum: number;
  readonly accepted: string;
}

/** One of a few named possibilities; `compute` receives the key. */
export interface ChoiceInput<Key extends string = string> extends InputBase {
  readonly kind: 'choice';
  readonly options: Readonly<Record<Key, string>>;
  readonly default: Key;
}

/** Several quantities separated by semicolons. */
export interface ListInput extends InputBase {
  readonly kind: 'list';
  readonly unit: UnitName;
  readonly entryUnit?: UnitName;
  readonly minimum: number;
  readonly maximum: number;
  readonly longest: number;
  /** An empty field is an empty list. */
  readonly mayBeEmpty?: true;
  readonly accepted: string;
}

export type InputSpec =
  QuantityInput | OptionalQuantityInput | CountInput | ChoiceInput | ListInput;
export type InputSpecs = Readonly<Record<string, InputSpec>>;

/** Value that `compute` receives for one input. */
export type ValueOf<Spec extends InputSpec> = Spec extends { kind: 'quantity' | 'count' }
  ? number
  : Spec extends { kind: 'optional-quantity' }
    ? number | undefined
    : Spec extends { kind: 'list' }
      ? readonly number[]
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
  readonly text: string;
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
