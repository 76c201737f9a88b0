// Advice is fed back: every complete setting that a verdict, an answer or the finder recommends, as it is
// printed, goes through the sheet that recommended it and through its neighbours.
import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as fileSize } from '../../src/worksheets/file/file-size/worksheet.ts';
import { worksheet as flashMatch } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import { worksheet as keepList } from '../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as matchFinder } from '../../src/worksheets/gate/match-finder/worksheet.ts';
import { worksheet as shutterAngle } from '../../src/worksheets/gate/shutter-angle/worksheet.ts';
import type { Worksheet, Outcome } from '../../src/worksheets/machine/types.ts';
import { worksheet as wholeFrames } from '../../src/worksheets/file/whole-frames/worksheet.ts';
import { randomBench, seededRandom, type TypedBench } from '../tools/random-benches.ts';
import { simulateSetting } from '../tools/simulate-setting.ts';

/** Entries that a sheet has; the rest of a bench is not asked there. */
function entriesFor(worksheet: Worksheet, given: Entries): Entries {
  const known = Object.entries(given).filter(([key]) => key in worksheet.inputs);
  return fillEntries(worksheet.inputs, Object.fromEntries(known));
}

function outcomeOf(worksheet: Worksheet, given: Entries): Outcome {
  const { outcome, messages } = evaluate(worksheet, entriesFor(worksheet, given));
  if (outcome === undefined) {
    throw new Error(`${worksheet.id} refuses: ${JSON.stringify({ messages, given })}`);
  }
  return outcome;
}

interface Printed {
  readonly filmFps: string;
  readonly cameraFps: string;
  readonly exposureSeconds: string;
  /** In ms, where the advice asks for one. */
  readonly readoutSeconds?: string;
}

const SETTING = /film (?<film>[\d ./]+), camera (?<camera>[^,]+), exposure (?<exposure>1\/[\d.]+)/u;
const ORDER =
  /(?:run the film at (?<film>[^(]+?) frames\/s \([^)]*\) and )?set (?:the camera to (?<camera>.+?) frames\/s and )?(?<exposure>1\/[\d.]+) s/iu;
const READOUT = /readout of at most (?<readout>[\d.]+) ms/u;

const plain = (text: string): string =>
  text.replaceAll(/\s/gu, ' ').replaceAll(/ \(\d+(?:\.\d+)?\)/gu, '');

function readout(text: string): { readoutSeconds?: string } {
  if (text.includes('with a global shutter') && !text.includes('not even')) {
    return { readoutSeconds: '0' };
  }
  const found = READOUT.exec(text)?.groups?.['readout'];
  return found === undefined ? {} : { readoutSeconds: found };
}

/** 16 2/3, 30000/1001 or 16.10 as a number. */
const rateOf = (text: string): number =>
  text.split(' ').reduce((sum, part) => {
    const [top = 0, bottom = 1] = part.split('/').map(Number);
    return sum + top / bottom;
  }, 0);

/** The setting that an answer or the finder's verdict prints. */
function printedSetting(raw: string): Printed | undefined {
  const text = plain(raw);
  const groups = SETTING.exec(text)?.groups;
  if (groups === undefined) return undefined;
  const { film = '', camera = '', exposure = '' } = groups;
  return { filmFps: film, cameraFps: camera, exposureSeconds: exposure, ...readout(text) };
}

/** The setting that a verdict orders, filled up with what stays as it is. */
function orderedSetting(raw: string, now: TypedBench): Printed | undefined {
  const text = plain(raw);
  const groups = ORDER.exec(text)?.groups;
  if (groups === undefined) return undefined;
  return {
    filmFps: groups['film'] ?? now.filmFps,
    cameraFps: groups['camera'] ?? now.cameraFps,
    exposureSeconds: groups['exposure'] ?? now.exposureSeconds,
    ...readout(text),
  };
}

/** What each sheet must say of a setting that works. */
function passes(bench: Entries, isSample: boolean): void {
  const limit = Number(bench['rippleLimitPercent']);
  const match = outcomeOf(flashMatch, bench);
  expect(match.answers['ripplePercent']?.value).toBeLessThanOrEqual(limit * (1 + 1e-9));
  expect(match.verdict.level, JSON.stringify(bench)).toBe('good');
  expect(match.answers['wholeFrames']?.text).toBe('sure for every film frame');
  expect(match.answers['speedToleranceFps']?.text).not.toContain('no match');

  const finder = outcomeOf(matchFinder, {
    ...bench,
    filmKind: 'list',
    filmRates: bench['filmFps'] ?? '',
    cameraRates: bench['cameraFps'] ?? '',
    exposureKind: 'steps',
    exposureTimes: bench['exposureSeconds'] ?? '',
    speedErrorPercent: '0',
  });
  expect(finder.answers['usable']?.value, JSON.stringify(bench)).toBe(1);

  outcomeOf(shutterAngle, bench);
  // The sheets of the file know blades alike with hard edges, or take the same two entries.
  const isPlain = bench['pulldownBladeDegrees'] === '' && bench['edgeWipeDegrees'] === '';
  if (isPlain || 'pulldownBladeDegrees' in wholeFrames.inputs) {
    expect(outcomeOf(wholeFrames, bench).verdict.level, JSON.stringify(bench)).toBe('good');
  }
  if (!isSample) return;
  outcomeOf(fileSize, { fileFps: bench['cameraFps'] ?? '' });
  if (isPlain || 'pulldownBladeDegrees' in keepList.inputs) {
    expect(outcomeOf(keepList, bench).verdict.level, JSON.stringify(bench)).not.toBe('stop');
  }
}

const BENCHES = 10_000;
const SEED = 20_261_127;

describe('advice that works', () => {
  test('10,000 benches: what the verdict and the answer recommend passes every sheet', () => {
    const random = seededRandom(SEED);
    const seen = { works: 0, readout: 0, none: 0, fine: 0, film: 0 };
    for (let index = 0; index < BENCHES; index += 1) {
      const bench = randomBench(random);
      const { verdict, answers } = outcomeOf(flashMatch, bench);
      const answer = answers['setting'];
      if (answer === undefined) throw new Error('no answer');
      const answered = printedSetting(answer.text);
      if (answered === undefined) {
        expect(answer.text).toMatch(/^none/u);
        seen.none += 1;
        continue;
      }
      const ordered = orderedSetting(verdict.sentence, bench);
      if (ordered === undefined) {
        expect(verdict.level, verdict.sentence).toBe('good');
        seen.fine += 1;
      } else {
        // The verdict and the answer name one and the same setting, so it is fed back once.
        expect(verdict.level).not.toBe('good');
        expect(rateOf(ordered.filmFps)).toBeCloseTo(rateOf(answered.filmFps), 9);
        expect(ordered.exposureSeconds).toBe(answered.exposureSeconds);
        expect(rateOf(ordered.cameraFps)).toBeCloseTo(rateOf(answered.cameraFps), 9);
        expect(ordered.readoutSeconds).toBe(answered.readoutSeconds);
        if (ordered.filmFps !== bench.filmFps) seen.film += 1;
      }
      if (answered.readoutSeconds === undefined) seen.works += 1;
      else seen.readout += 1;
      passes({ ...bench, ...answered }, index % 10 === 5);
    }
    // Every kind of advice was met often, or the test has tested little.
    expect(seen.works).toBeGreaterThan(4000);
    expect(seen.readout).toBeGreaterThan(200);
    expect(seen.none).toBeGreaterThan(100);
    expect(seen.fine).toBeGreaterThan(100);
    expect(seen.film).toBeGreaterThan(100);
  }, 240_000);

  test('what is recommended stands a simulation of every blade, row and film frame', () => {
    const random = seededRandom(SEED + 1);
    let simulated = 0;
    for (let index = 0; index < 160; index += 1) {
      const bench = randomBench(random);
      const { answers } = outcomeOf(flashMatch, bench);
      const setting = printedSetting(answers['setting']?.text ?? '');
      if (setting === undefined) continue;
      simulated += 1;
      const found = simulateSetting({ ...bench, ...setting });
      const told = JSON.stringify({ ...bench, ...setting });
      expect(found.darkRows, told).toBe(0);
      expect(found.filmFramesWithoutWholeFrame, told).toBe(0);
      expect(found.ripplePercent, told).toBeLessThanOrEqual(
        Number(bench.rippleLimitPercent) + 0.02,
      );
    }
    expect(simulated).toBeGreaterThan(100);
  }, 120_000);

  test('the simulation finds what is wrong with settings known to fail', () => {
    const bench = randomBench(seededRandom(1));
    const club = {
      ...bench,
      filmFps: '18',
      flashesPerFrame: '3',
      openPercent: '50',
      pulldownBladeDegrees: '',
      edgeWipeDegrees: '',
      cameraFps: '25',
      exposureSeconds: '1/54',
      readoutSeconds: '16',
    };
    expect(simulateSetting(club).filmFramesWithoutWholeFrame).toBeGreaterThan(0);
    expect(simulateSetting({ ...club, exposureSeconds: '1/50' }).ripplePercent).toBeCloseTo(
      14.81,
      1,
    );
    expect(simulateSetting({ ...club, exposureSeconds: '1/125' }).darkRows).toBeGreaterThan(0);
  });

  test('24 frames/s with three blades at 25: 1/72 s at 30000/1001', () => {
    const outcome = outcomeOf(flashMatch, { filmFps: '24', readoutSeconds: '0' });
    expect(plain(outcome.verdict.sentence)).toContain(
      'Set the camera to 30000/1001 frames/s and 1/72 s.',
    );
    expect(plain(outcome.answers['setting']?.text ?? '')).toBe(
      'film 24, camera 30000/1001, exposure 1/72 s',
    );
  });

  test.each([
    ['0', 'works'],
    ['8', 'works'],
    ['', 'asks for the readout'],
    ['18', 'asks for a faster sensor'],
  ])(
    '24 frames/s with two blades, readout “%s” ms: film at 25, 1/50 s, camera 50 (%s)',
    (ms, what) => {
      const outcome = outcomeOf(flashMatch, {
        filmFps: '24',
        flashesPerFrame: '2',
        readoutSeconds: ms,
      });
      const sentence = plain(outcome.verdict.sentence);
      expect(sentence).toContain(
        'run the film at 25 frames/s (4.17 % faster) and set the camera to 50 frames/s and 1/50 s',
      );
      if (what === 'asks for the readout') {
        expect(sentence).toMatch(/Measure it: with a readout of at most 9\.75 ms this works/u);
      }
      if (what === 'asks for a faster sensor') expect(sentence).toContain('faster sensor');
    },
  );

  test('one flash for each film frame: says that nothing works, and why', () => {
    const { verdict } = outcomeOf(flashMatch, { flashesPerFrame: '1', readoutSeconds: '0' });
    expect(verdict.sentence).toContain('more blades');
  });

  test('the finder: what it names, best or nearest, passes every sheet', () => {
    const random = seededRandom(SEED + 2);
    const seen = { best: 0, nearest: 0, nothing: 0 };
    for (let index = 0; index < 600; index += 1) {
      const bench = randomBench(random);
      const rates = ['25; 50', '24000/1001; 30000/1001; 60000/1001', '25', '24; 25; 30; 50; 60'];
      const entries = {
        ...bench,
        filmKind: 'list',
        filmRates: `${bench.filmFps}; 18`,
        cameraRates: rates[index % rates.length] ?? '',
        exposureKind: index % 3 === 0 ? 'steps' : 'free',
        nativeFps: index % 2 === 0 ? '18' : '24',
        speedErrorPercent: '0.1',
      };
      const { verdict, answers } = outcomeOf(matchFinder, entries);
      const setting = printedSetting(verdict.sentence);
      if (setting === undefined) {
        expect(verdict.level).toBe('stop');
        seen.nothing += 1;
        continue;
      }
      if (answers['usable']?.value === 0) seen.nearest += 1;
      else seen.best += 1;
      passes({ ...bench, ...setting }, true);
    }
    expect(seen.best).toBeGreaterThan(150);
    expect(seen.nearest).toBeGreaterThan(80);
    expect(seen.nothing).toBeGreaterThan(10);
  }, 120_000);
});
