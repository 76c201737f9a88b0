import type { UnitName } from '../../quantity/units.ts';

// The kinds of fields that a form can show, whether a worksheet's or the bench's.

interface FieldWords {
  readonly label: string;
  /** One or two plain sentences under the field: what it is and where the reader finds it. */
  readonly help: string;
}

/** A measured or set quantity; `find` receives a number in `unit`. */
export interface QuantityField extends FieldWords {
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

/** A quantity that may be left empty; `find` then receives `undefined`. */
export interface OptionalQuantityField extends Omit<QuantityField, 'kind'> {
  readonly kind: 'optional-quantity';
}

/** A whole number. */
export interface CountField extends FieldWords {
  readonly kind: 'count';
  /** What is counted, where readers may write it behind the number: `3600 frames`. */
  readonly unit?: UnitName;
  readonly minimum: number;
  readonly maximum: number;
  readonly accepted: string;
}

/** One of a few named possibilities; `find` receives the key. */
export interface ChoiceField<Key extends string = string> extends FieldWords {
  readonly kind: 'choice';
  readonly options: Readonly<Record<Key, string>>;
}

/** A name or a few words on one line; `find` receives the text without spaces at its ends. */
export interface TextField extends FieldWords {
  readonly kind: 'text';
  /** Characters at most. */
  readonly longest: number;
  readonly mayBeEmpty?: true;
  readonly accepted: string;
}

/** Several quantities separated by semicolons. */
export interface ListField extends FieldWords {
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
