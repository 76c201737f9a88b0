// The two recordings that a trainee reads as a task for the hands: what stands beside the task is what is
// true of them.
import { describe, expect, it } from 'vitest';
import { recordingAnswers } from '../../src/ui/recording/demo-answers.ts';
import { demoTruths } from '../tools/demo-recordings/demo-readings.ts';

const [gate, film] = demoTruths();

const textOf = (recording: 'empty-gate' | 'film', label: string): string => {
  const found = recordingAnswers(recording).answers.find((answer) => answer.label === label);
  if (found === undefined) throw new Error(`“${label}” is not printed`);
  return found.text;
};

function expectWithin(text: string, truth: number): void {
  const [, value, error] = /([\d.]+) ± ([\d.]+)/u.exec(text) ?? [];
  expect(Math.abs(Number(value) - truth), text).toBeLessThanOrEqual(Number(error));
}

describe('the tasks with a recording', () => {
  it('print what the empty gate truly did', () => {
    expectWithin(textOf('empty-gate', 'Film rate'), gate.filmFps);
    const flashes = gate.filmFps * gate.flashesPerFrame;
    expect(Number.parseFloat(textOf('empty-gate', 'Flash rate'))).toBeCloseTo(flashes, 1);
    const beat = Math.abs(flashes - 2 * gate.cameraFps);
    expect(Number.parseFloat(textOf('empty-gate', 'Beat'))).toBeCloseTo(beat, 1);
    expect(textOf('empty-gate', 'Main cause')).toContain('exposure');
  });

  it('print what the film truly held', () => {
    expectWithin(textOf('film', 'Film rate, mean'), film.filmFps);
    const whole = film.wholeFilmFrames!.filter((each) => each !== null);
    const frames = Math.max(...whole) - Math.min(...whole) + 1;
    expect(Math.abs(Number(textOf('film', 'Film frames')) - frames)).toBeLessThanOrEqual(1);
    expect(textOf('film', 'Surely whole')).toMatch(/%/u);
  });
});
