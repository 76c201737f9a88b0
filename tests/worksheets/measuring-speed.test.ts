import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as beat } from '../../src/worksheets/gate/speed-from-beat/worksheet.ts';
import { worksheet as stopwatch } from '../../src/worksheets/gate/stopwatch/worksheet.ts';
import { worksheet as tachometer } from '../../src/worksheets/gate/tachometer/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('worksheet tachometer', () => {
  test('says that the wanted rate is met when the error covers the difference', () => {
    expect(run(tachometer, { reading: '1001' }).outcome?.verdict.level).toBe('good');
    const fast = run(tachometer, { reading: '1005' }).outcome;
    expect(fast?.verdict.level).toBe('care');
    expect(fast?.verdict.sentence).toContain('faster than wanted');
    expect(run(tachometer, { reading: '990' }).outcome?.verdict.sentence).toContain('slower');
  });

  test('puts a reading beyond any projector beside its field', () => {
    expect(Object.keys(run(tachometer, { reading: '20000' }).messages)).toEqual(['reading']);
  });
});

describe('worksheet stopwatch', () => {
  test('uses the mean of two timings and says when they disagree', () => {
    const { outcome } = run(stopwatch, { timedSeconds: '66', secondTimedSeconds: '68' });
    expect(outcome?.answers['filmFps']?.value).toBeCloseTo(1200 / 67, 9);
    expect(outcome?.verdict.sentence).toContain('does not hold');
    const agreeing = run(stopwatch, { timedSeconds: '66', secondTimedSeconds: '66.5' }).outcome;
    expect(agreeing?.answers['agreement']?.level).toBe('good');
  });

  test('turns a length into frames only when the stretch is known as a length', () => {
    const typed = { lengthMillimetres: '8.468 m', gauge: 'super-8', timedSeconds: '100' };
    const byLength = run(stopwatch, { ...typed, countedBy: 'length' }).outcome;
    expect(byLength?.answers['filmFps']?.value).toBeCloseTo(20, 9);
    const byFrames = run(stopwatch, { ...typed, countedBy: 'frames' }).outcome;
    expect(byFrames?.answers['filmFps']?.value).toBe(12);
  });

  test('refuses a time that two presses could make up', () => {
    const { messages } = run(stopwatch, { timedSeconds: '1', reactionSeconds: '0.5' });
    expect(Object.keys(messages)).toEqual(['timedSeconds']);
  });

  test('is content with a timing long enough for half a per cent', () => {
    const entries = { frames: '3600', timedSeconds: '200', countErrorFrames: '0' };
    expect(run(stopwatch, entries).outcome?.verdict.level).toBe('good');
  });
});

describe('worksheet speed-from-beat', () => {
  test('asks for the nudge test while both sides are open', () => {
    const { outcome } = run(beat);
    expect(outcome?.verdict.sentence).toContain('speed the projector up');
    expect(outcome?.tables?.[0]?.rows).toHaveLength(2);
  });

  test('asks for a narrower window once the side is known', () => {
    const wide = run(beat, { observation: 'rises', slowestFps: '8', fastestFps: '40' }).outcome;
    expect(wide?.verdict.sentence).toContain('narrow the window');
  });

  test('says so when nothing in the window fits', () => {
    const none = run(beat, { slowestFps: '19', fastestFps: '21' }).outcome;
    expect(none?.verdict.level).toBe('stop');
    expect(none?.answers['candidateCount']?.value).toBe(0);
  });

  test('puts more pulses than half the camera frames beside the count', () => {
    expect(Object.keys(run(beat, { beatPulses: '130' }).messages)).toEqual(['beatPulses']);
  });

  test('warns when the beat is smaller than the error of the count', () => {
    const slow = run(beat, { beatPulses: '1', countErrorPulses: '1' }).outcome;
    expect(slow?.cautions?.join(' ')).toContain('longer time');
  });

  test('a picture turned over turns the way of the bands', () => {
    const sinking = { observation: 'bands-down' };
    expect(run(beat, sinking).outcome?.answers['filmFps']?.value).toBeCloseTo(46 / 3, 9);
    const turned = run(beat, { ...sinking, pictureWay: 'turned' }).outcome;
    expect(turned?.answers['filmFps']?.value).toBe(18);
    expect(turned?.tables?.[0]?.rows[0]?.cells.at(-1)).toBe('the beat rises; bands sink');
    // The nudge does not care which way up the picture is.
    const nudged = run(beat, { observation: 'rises', pictureWay: 'turned' }).outcome;
    expect(nudged?.answers['filmFps']?.value).toBe(18);
  });
});
