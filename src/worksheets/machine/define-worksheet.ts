import type {
  Answer,
  ExactOf,
  InputSpecs,
  Outcome,
  ValuesOf,
  VerdictLevel,
  WorkingStep,
  Worksheet,
  WorksheetRun,
} from './types.ts';

/** An answer before its label stands beside it; made with the builders in answers.ts. */
export type AnswerBody = Omit<Answer, 'label'>;

/** What a worksheet says of its findings; the keys of `answers` are those it has labels for. */
export interface OutcomeOf<Key extends string> extends Omit<Outcome, 'answers' | 'verdict'> {
  /** One plain sentence that answers the worksheet's question; printed on top of the answers. */
  readonly verdict: { readonly level: VerdictLevel; readonly sentence: string };
  /** Answers that do not apply to these numbers may be left out. */
  readonly answers: Readonly<Partial<Record<Key, AnswerBody>>>;
}

type KeyOfEach<Union> = Union extends unknown ? keyof Union : never;

/** Keys in what an outcome says that nothing prints: misspelt ones, and answers without a label. */
type Unprinted<Said extends OutcomeOf<Key>, Key extends string> =
  | Exclude<KeyOfEach<Said>, keyof OutcomeOf<Key>>
  | Exclude<KeyOfEach<Said['answers']>, Key>;

/**
 * Compiles only where everything that is said is printed. The compiler by itself lets a function
 * return more keys than were asked for, and a misspelt caution or answer would vanish without a word.
 */
type AllPrinted<Said extends OutcomeOf<Key>, Key extends string> = [Unprinted<Said, Key>] extends [
  never,
]
  ? unknown
  : { readonly misspeltOrWithoutLabel: Unprinted<Said, Key> };

/** A worksheet as its author writes it. */
export interface WorksheetDefinition<
  Specs extends InputSpecs,
  Found,
  Key extends string,
  Said extends OutcomeOf<Key> = OutcomeOf<Key>,
> extends Omit<Worksheet, 'inputs' | 'answerLabels' | 'run'> {
  readonly inputs: Specs;
  /** Label of every answer, in the order in which they are printed. */
  readonly answers: Readonly<Record<Key, string>>;
  /** Asks the core, once; outcome and working are two views of what it found. */
  find(values: ValuesOf<Specs>, exact: ExactOf<Specs>): Found;
  outcome(
    found: NoInfer<Found>,
    values: ValuesOf<Specs>,
  ): Said & AllPrinted<NoInfer<Said>, NoInfer<Key>>;
  /**
   * The steps with the reader's numbers put in.
   *
   * @param told  text of an answer as printed, by its key
   */
  working(
    found: NoInfer<Found>,
    told: (key: NoInfer<Key>) => string,
    values: ValuesOf<Specs>,
  ): readonly WorkingStep[];
}

function withLabels<Key extends string>(
  labels: Readonly<Record<Key, string>>,
  bodies: Readonly<Partial<Record<Key, AnswerBody>>>,
): Readonly<Record<string, Answer>> {
  const keys = Object.keys(labels) as Key[];
  return Object.fromEntries(
    keys.flatMap((key): readonly [string, Answer][] => {
      const body = bodies[key];
      return body === undefined ? [] : [[key, { label: labels[key], ...body }]];
    }),
  );
}

/**
 * Makes a worksheet of its definition. Inside, values, findings and keys of answers are typed from its
 * inputs and labels; outside, every worksheet has the same type and takes values that were read by its
 * own inputs.
 */
export function defineWorksheet<
  const Specs extends InputSpecs,
  Found,
  const Key extends string,
  Said extends OutcomeOf<Key>,
>(definition: WorksheetDefinition<Specs, Found, Key, Said>): Worksheet<Specs> {
  const { answers: labels, find, outcome, working, ...rest } = definition;
  return {
    ...rest,
    answerLabels: labels,
    run(values, exact): WorksheetRun {
      // evaluate.ts reads the values with these very inputs, so they have the types that these give.
      const read = values as ValuesOf<Specs>;
      const found = find(read, exact as ExactOf<Specs>);
      const said = outcome(found, read);
      const answers = withLabels(labels, said.answers);
      return {
        outcome: { ...said, answers },
        working: () => working(found, (key) => answers[key]?.text ?? '', read),
      };
    },
  };
}
