import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as soundOffset } from '../../src/worksheets/file/sound-offset/worksheet.ts';
import { worksheet as soundRetiming } from '../../src/worksheets/file/sound-retiming/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string>): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome!.answers[key]!.value!;

describe('the worksheet on sound offset', () => {
  test('calls in step only what was looked at', () => {
    expect(run(soundOffset, {}).outcome!.verdict.level).toBe('note');
    expect(run(soundOffset, {}).outcome!.verdict.sentence).toContain('check');
    expect(run(soundOffset, { taken: 'found' }).outcome!.verdict.level).toBe('good');
  });

  test('says late or early, later or earlier, and never a sign', () => {
    const sentence = (entries: Record<string, string>): string =>
      run(soundOffset, entries).outcome!.verdict.sentence.replaceAll('\u00a0', ' ');
    const timeline = { filmFps: '18', deliveryFps: '25' };
    expect(sentence({ ...timeline, loopErrorFrames: '18' })).toBe(
      'The sound comes 1 s late: move it 25 frames earlier.',
    );
    expect(sentence({ ...timeline, loopErrorFrames: '-18' })).toBe(
      'The sound comes 1 s early: move it 25 frames later.',
    );
    const found = { ...timeline, taken: 'found', foundFrames: '25', foundWay: 'early' };
    expect(sentence(found)).toBe('The sound comes 1 s early: move it 25 frames later.');
    for (const loopErrorFrames of ['-18', '3']) {
      const { outcome, working } = run(soundOffset, { ...timeline, loopErrorFrames });
      const texts = [
        ...Object.values(outcome!.answers).flatMap(({ text, note }) => [text, note ?? '']),
        ...working!().flatMap(({ words, sum }) => [words, sum ?? '']),
      ].join(' ');
      expect(texts).not.toMatch(/[−-]\d|minus/u);
    }
    expect(
      value(run(soundOffset, { ...timeline, loopErrorFrames: '-3' }), 'offBySeconds'),
    ).toBeCloseTo(3 / 18, 12);
  });

  test('tells the direction in an answer of its own, as a copy without notes needs it', () => {
    const way = (entries: Record<string, string>): string =>
      run(soundOffset, entries).outcome!.answers['soundComes']!.text;
    expect(way({ loopErrorFrames: '2' })).toBe('late: move it earlier');
    expect(way({ loopErrorFrames: '-2' })).toBe('early: move it later');
    expect(way({})).toBe('with its picture, if threaded so');
    expect(way({ taken: 'found' })).toBe('with its picture');
    const lag = (takenFps: string): string =>
      run(soundRetiming, { takenFps, nativeFps: '24', shownFps: '24' }).outcome!.answers[
        'leftAsItIs'
      ]!.text;
    // A film run fast gives a recording that is over too soon.
    expect(lag('25')).toBe('runs ahead of the picture');
    expect(lag('24')).toBe('keeps up with the picture');
    expect(lag('23')).toBe('falls behind the picture');
  });

  test('puts what was found into the command, by the name of the file before it', () => {
    const commandsFor = (entries: Record<string, string>) =>
      run(soundOffset, { deliveryFps: '25', ...entries }).outcome!.commands!.map(
        ({ text }) => text,
      );
    const early = commandsFor({ taken: 'found', foundFrames: '25', foundWay: 'early' });
    expect(early[0]).toBe(
      'ffmpeg -i "corrected.wav" -af "adelay=delays=1000:all=1" -c:a pcm_s24le sound.wav',
    );
    expect(early[1]).toBe('sox "corrected.wav" -b 24 sound.wav pad 1');
    const late = commandsFor({ taken: 'found', foundFrames: '10', soundFile: 'fitted' });
    expect(late[0]).toContain('-i "fitted.wav" -af "atrim=start=0.4,');
    expect(commandsFor({})).toEqual([]);
  });

  test('ignores the loop when the track is read in the gate', () => {
    const entries = { system: '16mm-optical', taken: 'beside-frame', filmFps: '24' };
    const evaluation = run(soundOffset, { ...entries, loopErrorFrames: '5' });
    expect(value(evaluation, 'offBySeconds')).toBeCloseTo(26 / 24, 12);
    expect(evaluation.outcome!.verdict.sentence).toContain('early');
  });

  test('asks for the separation of a system it does not know', () => {
    expect(run(soundOffset, { system: 'other' }).messages).toHaveProperty('separationFrames');
    const given = run(soundOffset, { system: 'other', separationFrames: '27' });
    expect(value(given, 'separation')).toBe(27);
    expect(given.outcome!.answers['separationLength']!.text).toContain('not known');
  });

  test('says how each separation is known', () => {
    const [table] = run(soundOffset, {}).outcome!.tables!;
    const known = table!.rows.map(({ cells }) => cells.at(-1)!);
    expect(known.some((words) => words.includes('memory'))).toBe(true);
    expect(known.some((words) => words.includes('read in the source'))).toBe(true);
  });
});

describe('the worksheet on sound retiming', () => {
  const commands = (entries: Record<string, string>): readonly string[] =>
    run(soundRetiming, entries).outcome!.commands!.map(({ text }) => text);

  test('offers no command when nothing is wrong', () => {
    const right = { takenFps: '24', nativeFps: '24', shownFps: '24' };
    expect(commands(right)).toEqual([]);
    expect(run(soundRetiming, right).outcome!.verdict.level).toBe('good');
  });

  test('offers one step where pitch follows and two where it is kept', () => {
    const shown = { takenFps: '25', nativeFps: '24', shownFps: '30' };
    expect(commands(shown)).toHaveLength(2);
    const kept = commands({ ...shown, pitch: 'kept' });
    expect(kept).toHaveLength(4);
    expect(kept[0]).toContain('asetrate=46080');
    expect(kept[2]).toContain('-i "corrected.wav" -af "atempo=1.25" -c:a pcm_s24le fitted.wav');
  });

  test('starts from the recording when only the length has to be fitted', () => {
    const kept = { takenFps: '24', nativeFps: '24', shownFps: '25', pitch: 'kept' };
    expect(commands(kept)).toHaveLength(2);
    expect(commands(kept)[0]).toContain('-i "taken.wav"');
    expect(run(soundRetiming, kept).outcome!.verdict.level).toBe('care');
  });

  test('brings the pitch of the recording to that of the picture', () => {
    for (const [takenFps, nativeFps, shownFps] of [
      ['25', '24', '24'],
      ['16 2/3', '18', '25'],
      ['24000/1001', '24', '30000/1001'],
    ] as const) {
      const evaluation = run(soundRetiming, { takenFps, nativeFps, shownFps });
      const change = value(evaluation, 'correctedSampleRateHz') / 48_000;
      const heard = value(evaluation, 'takenSemitones') + 12 * Math.log2(change);
      expect(heard).toBeCloseTo(value(evaluation, 'shownSemitones'), 9);
    }
  });

  test('keeps typed fractions exact', () => {
    const { answers } = run(soundRetiming, {
      takenFps: '24000/1001',
      nativeFps: '24',
      shownFps: '25',
    }).outcome!;
    expect(answers['ratio']!.text).toContain('1001/960');
    expect(answers['correctedSampleRateHz']!.value).toBe(50_050);
  });
});
