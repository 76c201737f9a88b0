import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as flashMatch } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import { worksheet } from '../../src/worksheets/gate/lamp-flicker/worksheet.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';

function outcomeOf(entries: Entries): Outcome {
  const { outcome, messages } = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  if (outcome === undefined) throw new Error(JSON.stringify(messages));
  return outcome;
}

/** The verdict with plain spaces. */
const sentenceOf = (entries: Entries): string =>
  outcomeOf(entries)
    .verdict.sentence.replaceAll(/[\u00a0\u202f]/gu, ' ')
    .replaceAll(/ \([\d.]+\) frames/gu, ' frames');

const valueOf = (entries: Entries, key: string): number =>
  outcomeOf(entries).answers[key]?.value ?? Number.NaN;

describe('lamp flicker', () => {
  test('a mains filament adds to a matched shutter what the shutter alone does not have', () => {
    expect(valueOf({}, 'shutterAlonePercent')).toBe(0);
    expect(valueOf({}, 'ripplePercent')).toBeGreaterThan(valueOf({}, 'lampAlonePercent'));
    expect(outcomeOf({}).verdict.level).toBe('stop');
  });

  test('a steady lamp changes nothing', () => {
    const steady = { depthPercent: '0', exposureSeconds: '1/50' };
    expect(valueOf(steady, 'ripplePercent')).toBeCloseTo(14.8148, 3);
    expect(sentenceOf(steady)).toContain('comes from the shutter');
    expect(sentenceOf(steady)).toContain('Set the camera to 50 frames/s and 1/54 s');
  });

  test('a fast switched LED is harmless, a slow one is not', () => {
    const led = { lampKind: 'switched', depthPercent: '100', onPercent: '30' };
    expect(outcomeOf({ ...led, lampHz: '25 kHz' }).verdict.level).toBe('good');
    expect(outcomeOf({ ...led, lampHz: '150' }).verdict.level).toBe('stop');
  });

  test('beats of lamp and camera, and of lamp and shutter', () => {
    const outcome = outcomeOf({ lampHz: '120', cameraFps: '25' });
    expect(outcome.answers['lampBeatHz']?.value).toBeCloseTo(5, 9);
    // 120 − 54 = 66 Hz lies 9 Hz below 3 × 25.
    expect(outcome.answers['differenceBeatHz']?.value).toBeCloseTo(9, 9);
  });

  test('the offered exposure holds whole lamp periods and fits the camera frame', () => {
    const seconds = valueOf({}, 'lampMatchSeconds');
    expect(seconds * 100).toBeCloseTo(Math.round(seconds * 100), 9);
    expect(seconds).toBeLessThanOrEqual(1 / 25);
    expect(outcomeOf({ lampHz: '20' }).answers['lampMatchSeconds']?.text).toBe('none fits');
  });
});

/** The three settings that a sentence tells to set, over those that are set now. */
function advised(sentence: string, now: Entries): Entries | undefined {
  const film = /run the film at (.+?) frames\/s \(/iu.exec(sentence)?.[1];
  const camera = /set the camera to (.+?) frames\/s/iu.exec(sentence)?.[1];
  const exposure = /(?:frames\/s and|set) (1\/[\d.]+|[\d.]+) s\b/iu.exec(sentence)?.[1];
  if (exposure === undefined) return undefined;
  return {
    ...now,
    ...(film === undefined ? {} : { filmFps: film }),
    ...(camera === undefined ? {} : { cameraFps: camera }),
    exposureSeconds: exposure,
  };
}

/** Least and most light of an exposure, added up in small steps of time over many phases of both. */
function simulatedRipplePercent(entries: Entries): number {
  const number = (key: string): number => {
    const [top, bottom = '1'] = (entries[key] ?? '')
      .replace(/^16 ?(?:2\/3|⅔)$/u, '50/3')
      .split('/');
    return Number(top) / Number(bottom);
  };
  const flashRate = number('filmFps') * 3;
  const seconds = number('exposureSeconds');
  const [lampHz, depth] = [number('lampHz'), number('depthPercent') / 100];
  let [least, most, sum, count] = [Infinity, 0, 0, 0];
  const steps = 1500;
  for (let shutterPhase = 0; shutterPhase < 1; shutterPhase += 1 / 24) {
    for (let lampPhase = 0; lampPhase < 1; lampPhase += 1 / 24) {
      let light = 0;
      for (let step = 0; step < steps; step += 1) {
        const time = ((step + 0.5) / steps) * seconds;
        if ((time * flashRate + shutterPhase) % 1 < 0.5) {
          light += 1 + depth * Math.sin(2 * Math.PI * (time * lampHz + lampPhase));
        }
      }
      least = Math.min(least, light);
      most = Math.max(most, light);
      sum += light;
      count += 1;
    }
  }
  return ((most - least) / (sum / count)) * 100;
}

describe('advice for a lamp that flickers beside a shutter that is not matched', () => {
  const benches = [18, 16, 24, 20]
    .flatMap((film) =>
      ['25', '50', '30'].map((cameraFps) => ({ filmFps: String(film), cameraFps })),
    )
    .flatMap((rates) =>
      ['1/50', '1/60', '1/100'].flatMap((exposureSeconds) =>
        ['0', '10', '30'].map((depthPercent) => ({
          ...rates,
          exposureSeconds,
          depthPercent,
          flashesPerFrame: '3',
          lampHz: '100',
        })),
      ),
    );

  test('is never the lamp alone while the shutter is over the limit', () => {
    let both = 0;
    for (const entries of benches) {
      const { verdict, answers } = outcomeOf(entries);
      const shutter = answers['shutterAlonePercent']!.value!;
      if (verdict.level === 'good' || shutter <= 1) continue;
      expect(verdict.sentence).toMatch(/^(?:Two things flicker|The ripple of)/u);
      expect(verdict.sentence).not.toContain('The lamp raises');
      both += 1;
    }
    expect(both).toBeGreaterThan(50);
  });

  test('passes the flash match, and says truly what the lamp leaves there', () => {
    let followed = 0;
    for (const entries of benches) {
      const sentence = sentenceOf(entries);
      const next = advised(sentence, entries);
      if (next === undefined) continue;
      // The flash match knows nothing of the lamp.
      const settings = Object.fromEntries(
        Object.entries(next).filter(([key]) => Object.hasOwn(flashMatch.inputs, key)),
      );
      const readout = /readout of at most ([\d.]+) ms/u.exec(sentence)?.[1];
      const { outcome, messages } = evaluate(
        flashMatch,
        fillEntries(flashMatch.inputs, {
          ...settings,
          readoutSeconds: readout === undefined ? '' : `${readout} ms`,
        }),
      );
      expect(messages, sentence).toEqual({});
      expect(outcome!.verdict.level, sentence).toBe('good');
      const then = outcomeOf(next).answers['ripplePercent']!.value!;
      const stillOver = sentence.includes('The lamp would still leave');
      expect(then > 1, sentence).toBe(stillOver);
      if (followed % 12 === 0) {
        expect(Math.abs(simulatedRipplePercent(next) - then), sentence).toBeLessThan(0.6);
      }
      followed += 1;
    }
    expect(followed).toBeGreaterThan(40);
  });
});
