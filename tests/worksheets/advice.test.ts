// What is recommended passes every sheet, and a simulation that shares nothing with them.
import { describe, expect, test } from 'vitest';
import { worksheet as flashMatch } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import { worksheet as matchFinder } from '../../src/worksheets/gate/match-finder/worksheet.ts';
import { randomBench, seededRandom } from '../tools/random-benches.ts';
import { SAMPLES, sizeOf } from '../tools/sample-sizes.ts';
import { simulateSetting } from '../tools/simulate-setting.ts';
import { feedBack, outcomeOf, passes, plain, printedSetting, SEED } from './fed-back-advice.ts';

const BENCHES = SAMPLES.advice.command;

describe('advice that works', () => {
  test(`${BENCHES} benches: what the verdict and the answer recommend passes every sheet`, () => {
    feedBack(BENCHES);
  }, 240_000);

  test('what is recommended stands a simulation of every blade, row and film frame', () => {
    const random = seededRandom(SEED + 1);
    let simulated = 0;
    for (let index = 0; index < sizeOf('simulated'); index += 1) {
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
    expect(simulated).toBeGreaterThan(0.625 * sizeOf('simulated'));
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
    const benches = sizeOf('found');
    for (let index = 0; index < benches; index += 1) {
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
    expect(seen.best).toBeGreaterThan(benches / 4);
    expect(seen.nearest).toBeGreaterThan((2 * benches) / 15);
    expect(seen.nothing).toBeGreaterThan(benches / 60);
  }, 120_000);
});
