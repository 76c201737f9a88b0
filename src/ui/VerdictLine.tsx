import type { ComponentChildren } from 'preact';
import { SpokenWhenResting } from './SpokenWhenResting.tsx';
import { UnbrokenUnits } from './UnbrokenUnits.tsx';
import type { Evaluation } from '../worksheets/machine/evaluate.ts';
import { LEVEL_SIGNS } from './verdict-signs.ts';

/** The worksheet's answer in one sentence; a screen reader hears it once typing rests. */
export function VerdictLine(props: {
  readonly instance: string;
  readonly evaluation: Evaluation;
}): ComponentChildren {
  const { outcome, message, messages } = props.evaluation;
  const wrongCount = Object.keys(messages).length;
  const level = outcome?.verdict.level;
  const sign = level === undefined ? { mark: '…', word: 'Waiting' } : LEVEL_SIGNS[level];
  const waiting =
    message ??
    (wrongCount === 1
      ? 'One entry below cannot be used yet.'
      : `${wrongCount} entries below cannot be used yet.`);
  const sentence = outcome?.verdict.sentence ?? waiting;
  return (
    <>
      <p class={`verdict verdict-${level ?? 'waiting'}`} id={`${props.instance}-verdict`}>
        <span class="verdict-sign">
          <span aria-hidden="true">{sign.mark}</span> {sign.word}
        </span>{' '}
        <span class="verdict-sentence">
          <UnbrokenUnits text={sentence} />
        </span>
      </p>
      <SpokenWhenResting text={`${sign.word}: ${sentence}`} />
    </>
  );
}
