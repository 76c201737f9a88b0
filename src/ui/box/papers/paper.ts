// A paper as data: what stands on it, in order. One component draws all of them, and a test reads them.

export type PaperBlock =
  | { readonly kind: 'heading' | 'words'; readonly text: string }
  /** Label and what is known; an empty text is a line to write on. */
  | {
      readonly kind: 'fields';
      readonly fields: readonly (readonly [string, string])[];
      /** For long texts, such as names of files. */
      readonly isWide?: true;
    }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Boxes to tick; `ticked` is the option that is already said. */
  | {
      readonly kind: 'ticks';
      readonly rows: readonly {
        readonly text: string;
        readonly options: readonly string[];
        readonly ticked: string;
      }[];
    }
  | { readonly kind: 'lines'; readonly count: number }
  | { readonly kind: 'photos' | 'signatures'; readonly captions: readonly string[] }
  | {
      readonly kind: 'labels';
      readonly labels: readonly { readonly title: string; readonly lines: readonly string[] }[];
    };

/** One part of a paper that begins on a sheet of its own. */
export interface PaperSheet {
  readonly title: string;
  readonly blocks: readonly PaperBlock[];
}

export interface Paper {
  readonly id: PaperId;
  readonly title: string;
  readonly sheets: readonly PaperSheet[];
}

/** Edition of the forms, printed on each: papers of years ago are compared with those of today. */
export const FORM_EDITION = '1';

/** The papers of a job: what each is called on its button. */
export const PAPER_NAMES = {
  receipt: 'Receipt',
  consent: 'Consent',
  condition: 'Condition reports',
  jobSheets: 'Job sheets',
  quotation: 'Quotation',
  labels: 'Labels',
  returnNote: 'Return note',
} as const;
export type PaperId = keyof typeof PAPER_NAMES;

const ONES = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** A count in words, so that nobody can add a digit: 112 → one hundred and twelve. */
export function countWords(count: number): string {
  if (count < 20) return ONES[count] ?? String(count);
  if (count < 100) {
    const rest = count % 10;
    return `${TENS[Math.floor(count / 10)] ?? ''}${rest === 0 ? '' : `-${countWords(rest)}`}`;
  }
  const [unit, word] = count < 1000 ? [100, 'hundred'] : [1000, 'thousand'];
  const rest = count % unit;
  const joint = rest === 0 ? '' : rest < 100 ? ' and ' : ' ';
  return `${countWords(Math.floor(count / unit))} ${word}${joint}${rest === 0 ? '' : countWords(rest)}`;
}
