import type { ComponentChildren } from 'preact';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import { AnswerText } from '../AnswerList.tsx';
import type { Units } from '../bench/bench-state.ts';
import { EntryField } from '../EntryField.tsx';
import { permalink } from '../permalink.ts';
import { sitePath } from '../islands/site-path.ts';
import { ResultTableView } from '../ResultExtras.tsx';
import { VerdictLine } from '../VerdictLine.tsx';
import { Blank } from './Blank.tsx';
import { fieldSpec, type GatheredStep, type WorksheetsById } from './gather.ts';
import type { Plan } from './plan.ts';

interface Props {
  readonly plan: Plan;
  readonly gathered: GatheredStep;
  readonly worksheets: WorksheetsById;
  readonly fields: Entries;
  readonly messages: Readonly<Record<string, string>>;
  readonly units: Units;
  /** Fields that still hold the book's own text. */
  readonly bookIds: ReadonlySet<string>;
  readonly onChange: (id: string, text: string) => void;
}

function Fields(props: Props & { readonly ids: readonly string[] }): ComponentChildren {
  const { plan, worksheets, fields, messages, ids, onChange } = props;
  return ids.map((id) => {
    const field = plan.fields[id];
    return (
      field !== undefined && (
        <EntryField
          key={id}
          id={`${plan.id}-${id}`}
          name={id}
          spec={fieldSpec(field, worksheets)}
          text={fields[id] ?? ''}
          message={messages[id]}
          onChange={(text) => {
            onChange(id, text);
          }}
        />
      )
    );
  });
}

function Answers(props: Props & { readonly instance: string }): ComponentChildren {
  const { gathered, units, instance } = props;
  return (
    <dl class="gathered-answers">
      {gathered.step.answers.map(({ key, label }) => {
        const answer = gathered.evaluation.outcome?.answers[key];
        return (
          <div class="answer" key={key} id={`${instance}-answer-${key}`}>
            <dt>{label ?? answer?.label ?? key}</dt>
            <dd>
              {answer === undefined ? (
                <span class="answer-blank">–</span>
              ) : (
                <AnswerText answer={answer} units={units} />
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

/** A step that is not on the sheet: its heading and a line to write on. */
export function UnchosenBlock(props: {
  readonly plan: Plan;
  readonly gathered: GatheredStep;
}): ComponentChildren {
  const { id, heading, chosen } = props.gathered.step;
  return (
    <li class="gathered-step" id={`${props.plan.id}-step-${id}`}>
      <h2>{heading}</h2>
      <label class="gathered-line">
        {chosen?.otherwise}
        <Blank name={`${id}/${heading}`} />
      </label>
    </li>
  );
}

/** One step of the sheet: its fields left, what follows from them right. */
export function GatheredBlock(props: Props): ComponentChildren {
  const { plan, gathered, bookIds } = props;
  const { step, worksheet, evaluation, entries } = gathered;
  const { outcome } = evaluation;
  // Apart from the ids of fields, whatever a step and a field are called.
  const instance = `${plan.id}-step-${step.id}`;
  const table = step.table === undefined ? undefined : outcome?.tables?.[0];
  const workshop = step.workshopFields ?? [];
  const open = step.fields.filter((id) => !workshop.includes(id));
  const isInvented = step.chosen !== undefined && workshop.every((id) => bookIds.has(id));
  return (
    <li class="gathered-step" id={instance}>
      <h2>{step.heading}</h2>
      {(step.showsVerdict || outcome === undefined) && (
        <VerdictLine instance={instance} evaluation={evaluation} />
      )}
      {isInvented && (
        <p class="gathered-invented">
          ▲ These are invented numbers of the book. Type your own, here or on your bench.
        </p>
      )}
      <div class="gathered-body">
        {open.length > 0 && (
          <div class="gathered-fields">
            <Fields {...props} ids={open} />
          </div>
        )}
        {step.answers.length > 0 && <Answers {...props} instance={instance} />}
      </div>
      {table !== undefined && (
        <div class={`gathered-table gathered-table-${step.table ?? 'plain'}`}>
          <ResultTableView table={table} />
        </div>
      )}
      {workshop.length > 0 && (
        <details class="gathered-workshop">
          <summary>For the workshop</summary>
          <div class="gathered-fields">
            <Fields {...props} ids={workshop} />
          </div>
        </details>
      )}
      <p class="gathered-more">
        <a href={permalink(sitePath(`/${worksheet.chapter}/`), worksheet.id, entries ?? {})}>
          Worksheet: {worksheet.title}
        </a>
      </p>
    </li>
  );
}
