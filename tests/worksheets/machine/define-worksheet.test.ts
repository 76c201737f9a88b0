import { describe, expect, it, vi } from 'vitest';
import { quantity, words } from '../../../src/worksheets/machine/answers.ts';
import { defineWorksheet } from '../../../src/worksheets/machine/define-worksheet.ts';
import { evaluate } from '../../../src/worksheets/machine/evaluate.ts';

/** A small sheet whose author's three parts can be watched. */
function watchedSheet() {
  const found = vi.fn((frames: number) => ({ frames, seconds: frames / 18 }));
  const worked = vi.fn();
  const worksheet = defineWorksheet({
    id: 'running-time',
    title: 'Running time',
    question: 'How long does this film run?',
    chapter: 'reel/length',
    inputs: {
      frames: {
        kind: 'count',
        label: 'Frames',
        help: 'Counted.',
        minimum: 1,
        maximum: 10_000,
        default: '3600',
        accepted: '3600',
      },
    },
    answers: { frames: 'Frames', note: 'Spare frames', seconds: 'Running time' },
    model: 'Frames divided by film rate.',
    find: ({ frames }) => found(frames),
    outcome: ({ frames, seconds }, values) => ({
      verdict: { level: 'note', sentence: `${values.frames} frames run.` },
      // Not in the order of the labels; and the line on spare frames belongs to odd counts only.
      answers: {
        seconds: quantity(seconds, 's'),
        ...(frames % 2 === 1 && { note: words('one', { level: 'care' }) }),
        frames: quantity(frames, 'frames'),
      },
    }),
    working(findings, told, values) {
      worked(findings);
      return [
        { words: `of ${values.frames}`, sum: `${told('frames')} ÷ 18 = ${told('seconds')}` },
        { words: `spare: “${told('note')}”` },
      ];
    },
    cautions: ['Wind gently.'],
    sources: ['arithmetic'],
  });
  return { worksheet, found, worked };
}

describe('a worksheet that finds once', () => {
  it('asks once for each evaluation, whatever is read from it afterwards', () => {
    const { worksheet, found } = watchedSheet();
    const evaluation = evaluate(worksheet, { frames: '180' });
    expect(found).toHaveBeenCalledTimes(1);
    expect(evaluation.outcome?.answers['seconds']?.value).toBe(10);
    evaluation.working?.();
    evaluation.working?.();
    expect(found).toHaveBeenCalledTimes(1);
    evaluate(worksheet, { frames: '181' });
    expect(found).toHaveBeenCalledTimes(2);
  });

  it('asks nothing for an entry that is refused', () => {
    const { worksheet, found } = watchedSheet();
    expect(evaluate(worksheet, { frames: 'many' }).outcome).toBeUndefined();
    expect(found).not.toHaveBeenCalled();
  });

  it('works the steps out only when they are asked for, from the same findings', () => {
    const { worksheet, found, worked } = watchedSheet();
    const evaluation = evaluate(worksheet, { frames: '180' });
    expect(worked).not.toHaveBeenCalled();
    expect(evaluation.working?.()[0]).toEqual({
      words: 'of 180',
      sum: '180\u00a0frames ÷ 18 = 10\u00a0s',
    });
    expect(worked).toHaveBeenCalledTimes(1);
    expect(worked.mock.calls[0]?.[0]).toBe(found.mock.results[0]?.value);
  });

  it('prints the answers in the order of the labels, each under its own', () => {
    const { worksheet } = watchedSheet();
    const answers = evaluate(worksheet, { frames: '181' }).outcome?.answers ?? {};
    expect(Object.entries(answers).map(([key, { label }]) => [key, label])).toEqual([
      ['frames', 'Frames'],
      ['note', 'Spare frames'],
      ['seconds', 'Running time'],
    ]);
    expect(answers['note']).toEqual({ label: 'Spare frames', text: 'one', level: 'care' });
  });

  it('leaves an answer out that does not apply, and tells nothing in its place', () => {
    const { worksheet } = watchedSheet();
    const even = evaluate(worksheet, { frames: '180' });
    expect(Object.keys(even.outcome?.answers ?? {})).toEqual(['frames', 'seconds']);
    expect(even.working?.()[1]?.words).toBe('spare: “”');
    expect(evaluate(worksheet, { frames: '181' }).working?.()[1]?.words).toBe('spare: “one”');
  });

  it('knows the label of every answer without being run', () => {
    const { worksheet, found } = watchedSheet();
    expect(Object.entries(worksheet.answerLabels)).toEqual([
      ['frames', 'Frames'],
      ['note', 'Spare frames'],
      ['seconds', 'Running time'],
    ]);
    expect(found).not.toHaveBeenCalled();
  });

  it('keeps what the page says around the answers', () => {
    const { worksheet } = watchedSheet();
    expect(worksheet).toMatchObject({
      id: 'running-time',
      chapter: 'reel/length',
      cautions: ['Wind gently.'],
      sources: ['arithmetic'],
    });
    expect(evaluate(worksheet, {}).outcome?.verdict.sentence).toBe('3600 frames run.');
  });
});
