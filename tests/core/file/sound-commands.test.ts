import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Fraction from 'fraction.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { respeedCommands, retempoCommands } from '../../../src/core/file/sound-commands.ts';
import { speedRatio } from '../../../src/core/file/sound-retiming.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg } from '../../tools/ffmpeg.ts';
import { isAsked } from '../../tools/sample-sizes.ts';
import { readSound } from '../../tools/sound-files.ts';

const SAMPLE_RATE = 48_000;
const TONE_HZ = 440;
const TAKEN_SECONDS = 10;

const cases = [
  ['18', '25'],
  ['24', '25'],
  ['18', '50/3'],
  ['24000/1001', '25'],
  ['24', '18'],
  ['1783/100', '18'],
].map(([taken, wanted]) => ({
  taken,
  wanted,
  ratio: speedRatio(new Fraction(taken!), new Fraction(wanted!)),
}));

/** Each command takes three of the rates in turn, the long run all. */
const casesFrom = (first: number): typeof cases => cases.filter((_, at) => isAsked(at + first, 2));

const hasSox = spawnSync('sox', ['--version']).status === 0;
const soxTitle = (title: string): string =>
  hasSox ? title : `${title} (SKIPPED: no sox is installed here)`;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sound-commands-'));
  if (ffmpeg === undefined) return;
  const tone = `sine=frequency=${TONE_HZ}:sample_rate=${SAMPLE_RATE}:duration=${TAKEN_SECONDS}`;
  runFfmpeg(['-f', 'lavfi', '-i', tone, 'taken.wav'], folder);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Words of a command line, quotes taken off. */
function words(command: string): readonly string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain!);
}

/**
 * Length and pitch of a sound, from its samples. Where pieces were overlapped, the joins disturb the
 * count of waves by a percent or so; a change of speed would be tens of percent.
 */
function measure(file: 'corrected.wav' | 'fitted.wav'): {
  readonly seconds: number;
  readonly toneHz: number;
  readonly rate: number;
} {
  const { samples, sampleRate: rate } = readSound(join(folder, file));
  const rises: number[] = [];
  for (let index = 1; index < samples.length; index += 1) {
    const before = samples[index - 1]!;
    const here = samples[index]!;
    if (before < 0 && here >= 0) rises.push(index - here / (here - before));
  }
  const waves = rises.length - 1;
  const toneHz = (waves * rate) / (rises.at(-1)! - rises[0]!);
  return { seconds: samples.length / rate, toneHz, rate };
}

function runHere(command: string): void {
  const [program, ...args] = words(command);
  if (program === 'ffmpeg') {
    runFfmpeg(args, folder);
    return;
  }
  const { status, stderr } = spawnSync(program!, args, { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command}: ${stderr}`);
}

describe('the command lines', () => {
  test('hold whole rates and no exponents', () => {
    for (const { ratio } of cases) {
      const { ffmpeg: line, sox } = respeedCommands(SAMPLE_RATE, ratio);
      for (const [, rate] of line.matchAll(/rate=([^,"]+)/gu)) expect(rate).toMatch(/^\d+$/u);
      expect(sox).toMatch(/speed \d+(?:\.\d+)? rate -v 48000$/u);
    }
    expect(respeedCommands(SAMPLE_RATE, new Fraction(25, 24)).ffmpeg).toBe(
      'ffmpeg -i "taken.wav" -af "asetrate=50000,aresample=48000" -c:a pcm_s24le corrected.wav',
    );
  });

  test('keep each tempo step between a half and two', () => {
    for (const factor of ['1/16', '1/3', '1/2', '1', '25/18', '2', '7/2', '16']) {
      const steps = [...retempoCommands(new Fraction(factor)).ffmpeg.matchAll(/atempo=([\d.]+)/gu)];
      const values = steps.map(([, value]) => Number(value));
      expect(values.every((value) => value >= 0.5 && value <= 2)).toBe(true);
      const product = values.reduce((all, value) => all * value, 1);
      expect(product).toBeCloseTo(new Fraction(factor).valueOf(), 9);
    }
  });

  test('are refused beyond sixteenfold', () => {
    expect(() => retempoCommands(new Fraction(17))).toThrow(/ratio/u);
  });
});

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('sound corrected by ffmpeg'), () => {
  test.each(casesFrom(0))('from $taken to $wanted has the right length and pitch', ({ ratio }) => {
    runHere(respeedCommands(SAMPLE_RATE, ratio).ffmpeg);
    const { seconds, toneHz, rate } = measure('corrected.wav');
    expect(rate).toBe(SAMPLE_RATE);
    // A resampler may leave off or add a few samples at the end.
    expect(Math.abs(seconds - TAKEN_SECONDS / ratio.valueOf())).toBeLessThan(0.005);
    expect(Math.abs(toneHz / (TONE_HZ * ratio.valueOf()) - 1)).toBeLessThan(1e-5);
  });

  test('keeps its pitch when only the length changes', () => {
    const ratio = new Fraction(25, 18);
    runHere(respeedCommands(SAMPLE_RATE, new Fraction(18, 25)).ffmpeg);
    const before = measure('corrected.wav');
    runHere(retempoCommands(ratio).ffmpeg);
    const { seconds, toneHz } = measure('fitted.wav');
    expect(Math.abs(seconds - before.seconds / ratio.valueOf())).toBeLessThan(0.1);
    expect(Math.abs(toneHz / before.toneHz - 1)).toBeLessThan(0.02);
  });
});

describe.skipIf(ffmpeg === undefined || !hasSox)(
  ffmpegTitle(soxTitle('sound corrected by sox')),
  () => {
    test.each(casesFrom(1))(
      'from $taken to $wanted has the right length and pitch',
      ({ ratio }) => {
        runHere(respeedCommands(SAMPLE_RATE, ratio).sox);
        const { seconds, toneHz, rate } = measure('corrected.wav');
        expect(rate).toBe(SAMPLE_RATE);
        expect(Math.abs(seconds - TAKEN_SECONDS / ratio.valueOf())).toBeLessThan(0.005);
        expect(Math.abs(toneHz / (TONE_HZ * ratio.valueOf()) - 1)).toBeLessThan(1e-5);
      },
    );

    test('keeps its pitch when only the length changes', () => {
      const ratio = new Fraction(18, 25);
      runHere(respeedCommands(SAMPLE_RATE, new Fraction(18, 25)).ffmpeg);
      const before = measure('corrected.wav');
      runHere(retempoCommands(ratio).sox);
      const { seconds, toneHz } = measure('fitted.wav');
      expect(Math.abs(seconds - before.seconds / ratio.valueOf())).toBeLessThan(0.1);
      expect(Math.abs(toneHz / before.toneHz - 1)).toBeLessThan(0.02);
    });
  },
);
