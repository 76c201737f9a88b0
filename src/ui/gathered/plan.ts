/** Where an input of a step gets its text; an input that is not named keeps the worksheet's default. */
export type From =
  | { readonly field: string }
  /** Answer of an earlier step: the id of the step and the key of the answer. */
  | { readonly step: string; readonly answer: string }
  | { readonly text: string };

/** A field of the whole sheet. Range, help and bench come from the worksheet input it is taken from. */
export interface PlanField {
  readonly worksheet: string;
  readonly input: string;
  /** Label in the words of this sheet, where the worksheet's own is not clear on its own. */
  readonly label?: string;
  /** What the sheet opens with, when not the worksheet's default. */
  readonly text?: string;
}

/** One block of the sheet: a worksheet run on the fields and on what earlier steps answered. */
export interface PlanStep {
  readonly id: string;
  readonly heading: string;
  readonly worksheet: string;
  readonly inputs: Readonly<Record<string, From>>;
  /** Fields that are filled in at this step; each field of the sheet at one step. */
  readonly fields: readonly string[];
  /** Answers shown, in order; a label here replaces the worksheet's. */
  readonly answers: readonly { readonly key: string; readonly label?: string }[];
  readonly showsVerdict: boolean;
  /** Show the worksheet's first table; with boxes to tick where the reader of the paper chooses. */
  readonly table?: 'plain' | 'ticks';
  /** Fields of this step that are the workshop's own business: folded away, and never on paper. */
  readonly workshopFields?: readonly string[];
  /**
   * The step stands on the sheet only when the workshop chooses so; until then there is a line to
   * write on. Its workshop fields are then private: they stay out of the address as well.
   */
  readonly chosen?: { readonly label: string; readonly otherwise: string };
}

/** A line to write on at the bench. Several parts (head, middle, end) share one label. */
export interface PlanLine {
  readonly label: string;
  readonly parts?: readonly string[];
}

/** What is found, measured and decided by hand, which no worksheet works out. */
export interface PlanRecord {
  readonly heading: string;
  readonly lines: readonly PlanLine[];
}

/**
 * A sheet that gathers worksheets about one job on one page. It computes nothing itself: it only says
 * which worksheet gets which text. `id` is its path and the prefix of its element ids.
 */
export interface Plan {
  readonly id: string;
  readonly title: string;
  /** Lines to fill in by hand or before printing; kept with the page's history entry alone. */
  readonly blanks: readonly string[];
  readonly fields: Readonly<Record<string, PlanField>>;
  /** Records above the steps and below them; kept as the blanks are. */
  readonly before?: readonly PlanRecord[];
  readonly after?: readonly PlanRecord[];
  readonly steps: readonly PlanStep[];
  /** Warn when field `gauge` does not go on the projector of the bench. */
  readonly warnsOfGauge?: true;
  /** Things to tick off on paper. */
  readonly ticks: readonly string[];
  /** Empty lines for notes. */
  readonly noteLines: number;
}

/** Inputs that each take the field of their own name. */
export function fromFields(...names: readonly string[]): Readonly<Record<string, From>> {
  return Object.fromEntries(names.map((name) => [name, { field: name }]));
}

/** Fields of the sheet that are inputs of one worksheet, under the worksheet's own names. */
export function fieldsOf(
  worksheet: string,
  ...inputs: readonly string[]
): Readonly<Record<string, PlanField>> {
  return Object.fromEntries(inputs.map((input) => [input, { worksheet, input }]));
}

/** The film as the copies for its owner are worked out from it, and how they are stored. */
export const FILM_FIELDS = ['gauge', 'lengthMetres', 'nativeFps', 'deliveryFps'] as const;
export const STORAGE_FIELDS = [
  'keepWidth',
  'keepHeight',
  'keepSamples',
  'megabitsPerSecond',
] as const;
