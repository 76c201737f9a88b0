import type { Job, Reel } from '../../../worksheets/box/job.ts';
import { REEL_FIELDS, type ReelField } from '../../../worksheets/box/reel-fields.ts';
import { entryText } from '../../../worksheets/machine/entry-text.ts';
import type { PaperBlock } from './paper.ts';

/** What a field of a reel says on paper: the words of a choice, a number with its unit. */
export function reelText(reel: Reel, field: ReelField): string {
  const text = (reel.texts[field] ?? '').trim();
  const spec = REEL_FIELDS[field];
  if (text === '' || spec.kind === 'words' || spec.kind === 'gauge' || spec.kind === 'sound') {
    return text;
  }
  return entryText(spec, text);
}

/** Fields of a reel with what they say; empty ones are lines to write on. */
export function reelFieldsBlock(reel: Reel, fields: readonly ReelField[]): PaperBlock {
  return {
    kind: 'fields',
    fields: fields.map((field) => [REEL_FIELDS[field].label, reelText(reel, field)] as const),
  };
}

/** Number, words, gauge: how each reel is named on every paper. */
export function reelHead(job: Job, reel: Reel): PaperBlock {
  return {
    kind: 'fields',
    fields: [
      ['Reel', reelText(reel, 'number')],
      ['Words on the box', reelText(reel, 'boxWords')],
      ['Gauge', reelText(reel, 'gauge')],
      ['Job', job.texts.number ?? ''],
    ],
  };
}

/** Length as it stands: measured, or as the reel claims. */
export function lengthText(reel: Reel): string {
  const measured = reelText(reel, 'lengthMetres');
  const size = reelText(reel, 'size');
  if (measured !== '') return measured;
  return size === '' ? '' : `${size} reel`;
}
