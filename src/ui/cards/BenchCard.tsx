import type { ComponentChildren } from 'preact';
import { entryText } from '../../worksheets/machine/entry-text.ts';
import { evaluate, fillEntries, type Entries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet, WorkingStep } from '../../worksheets/machine/types.ts';
import type { Units } from '../bench/bench-state.ts';
import { LEVEL_SIGNS } from '../verdict-signs.ts';

/** Lines of entries and answers together that a card of A6 has room for. */
const MOST_LINES = 16;
const FEWEST_ANSWERS = 4;
const MOST_STEPS = 2;
/** Letters of verdict and caution that a card has room for; each further line costs one of the others. */
const SHORT_WORDS = 150;
const LETTERS_OF_A_LINE = 50;

interface Props {
  readonly worksheet: Worksheet;
  /** Texts that differ from the worksheet's defaults. */
  readonly entries: Entries;
  /** How lengths among the answers are shown. */
  readonly units?: Units;
  /** Whose numbers these are. */
  readonly origin: string;
  /** Address of the worksheet, for typing. */
  readonly address: string;
}

/** A worksheet as a card for the wall: question, numbers, answers, the sum and one caution. */
export function BenchCard(props: Props): ComponentChildren {
  const { worksheet, units = 'metric', origin, address } = props;
  const inputs = worksheet.inputs;
  const entries = fillEntries(inputs, props.entries);
  const { outcome, working } = evaluate(worksheet, entries);
  if (outcome === undefined) return null;
  const given = Object.entries(inputs)
    .filter(([key]) => entries[key]?.trim() !== '')
    .map(([key, spec]) => ({ key, label: spec.label, text: entryText(spec, entries[key] ?? '') }));
  const caution = outcome.cautions?.[0] ?? worksheet.cautions[0];
  const letters = outcome.verdict.sentence.length + (caution?.length ?? 0);
  const longWords = Math.ceil(Math.max(0, letters - SHORT_WORDS) / LETTERS_OF_A_LINE);
  const answers = Object.entries(outcome.answers)
    .slice(0, Math.max(FEWEST_ANSWERS, MOST_LINES - given.length - longWords))
    .map(([key, { label, text, imperial }]) => ({
      key,
      label,
      text: units === 'imperial' ? (imperial?.text ?? text) : text,
    }));
  return (
    <>
      <header class="card-head">
        <h3>{worksheet.title}</h3>
        <p>{worksheet.question}</p>
      </header>
      <p class="card-verdict">
        <span class={`card-sign card-sign-${outcome.verdict.level}`}>
          <span aria-hidden="true">{LEVEL_SIGNS[outcome.verdict.level].mark}</span>
          <span class="visually-hidden">{LEVEL_SIGNS[outcome.verdict.level].word}</span>
        </span>{' '}
        {outcome.verdict.sentence}
      </p>
      <Lines name="card-given" lines={given} />
      <Lines name="card-answers" lines={answers} />
      {longWords <= 2 && <Sums steps={working?.() ?? []} />}
      {caution !== undefined && (
        <p class="card-caution">
          <strong>▲ Caution.</strong> {caution}
        </p>
      )}
      <footer class="card-foot">
        <span>{origin}</span>
        <span class="card-address">{address}</span>
      </footer>
    </>
  );
}

function Lines(props: {
  readonly name: string;
  readonly lines: readonly {
    readonly key: string;
    readonly label: string;
    readonly text: string;
  }[];
}): ComponentChildren {
  return (
    <dl class={props.name}>
      {props.lines.map(({ key, label, text }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function Sums({ steps }: { readonly steps: readonly WorkingStep[] }): ComponentChildren {
  const shown = steps.filter(({ sum }) => sum !== undefined).slice(0, MOST_STEPS);
  return (
    shown.length > 0 && (
      <ul class="card-sums">
        {shown.map(({ words, sum }) => (
          <li key={words}>
            {words} <span class="card-sum">{sum}</span>
          </li>
        ))}
      </ul>
    )
  );
}
