import type { ComponentChildren } from 'preact';
import type { Entries } from '../../worksheets/evaluate.ts';
import { AnswerText } from '../AnswerList.tsx';
import type { Units } from '../bench/bench-state.ts';
import { EntryField } from '../EntryField.tsx';
import { permalink } from '../permalink.ts';
import { ResultTableView } from '../ResultExtras.tsx';
import { VerdictLine } from '../VerdictLine.tsx';
import { fieldSpec, type GatheredStep, type WorksheetsById } from './gather.ts';
import type { Plan } from './plan.ts';

interface Props {
  readonly plan: Plan;
  readonly gathered: GatheredStep;
  readonly worksheets: WorksheetsById;
  readonly fields: Entries;
  readonly messages: Readonly<Record<string, string>>;
  readonly units: Units;
  readonly onChange: (id: string, text: string) => void;
}

/** One step of the sheet: its fields left, what follows from them right. */
export function GatheredBlock(props: Props): ComponentChildren {
  const { plan, gathered, worksheets, fields, messages, units, onChange } = props;
  const { step, worksheet, evaluation, entries } = gathered;
  const { outcome } = evaluation;
  // Apart from the ids of fields, whatever a step and a field are called.
  const instance = `${plan.id}-step-${step.id}`;
  const table = step.table === undefined ? undefined : outcome?.tables?.[0];
  return (
    <li
      class={step.keepsFieldsOffPaper ? 'gathered-step gathered-fields-off-paper' : 'gathered-step'}
      id={instance}
    >
      <h2>{step.heading}</h2>
      {(step.showsVerdict || outcome === undefined) && (
        <VerdictLine instance={instance} evaluation={evaluation} />
      )}
      <div class="gathered-body">
        {step.fields.length > 0 && (
          <div class="gathered-fields">
            {step.fields.map((id) => {
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
            })}
          </div>
        )}
        {step.answers.length > 0 && (
          <dl class="gathered-answers">
            {step.answers.map(({ key, label }) => {
              const answer = outcome?.answers[key];
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
        )}
      </div>
      {table !== undefined && (
        <div class={`gathered-table gathered-table-${step.table ?? 'plain'}`}>
          <ResultTableView table={table} />
        </div>
      )}
      <p class="gathered-more">
        <a href={permalink(`/${worksheet.chapter}/`, worksheet.id, entries ?? {})}>
          Worksheet: {worksheet.title}
        </a>
      </p>
    </li>
  );
}
