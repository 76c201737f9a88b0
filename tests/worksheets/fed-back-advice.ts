// Advice is fed back: every complete setting that a verdict, an answer or the finder recommends, as it is
// printed, goes through the sheet that recommended it and through its neighbours.
import { expect } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as fileSize } from '../../src/worksheets/file/file-size/worksheet.ts';
import { worksheet as flashMatch } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import { worksheet as keepList } from '../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as matchFinder } from '../../src/worksheets/gate/match-finder/worksheet.ts';
import { worksheet as shutterAngle } from '../../src/worksheets/gate/shutter-angle/worksheet.ts';
import type { Worksheet, Outcome } from '../../src/worksheets/machine/types.ts';
import { worksheet as wholeFrames } from '../../src/worksheets/file/whole-frames/worksheet.ts';
import { randomBench, seededRandom, type TypedBench } from '../tools/random-benches.ts';

export const SEED = 20_261_127;

/** Entries that a sheet has; the rest of a bench is not asked there. */
function entriesFor(worksheet: Worksheet, given: Entries): Entries {
  const known = Object.entries(given).filter(([key]) => key in worksheet.inputs);
  return fillEntries(worksheet.inputs, Object.fromEntries(known));
}

export function outcomeOf(worksheet: Worksheet, given: Entries): Outcome {
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

export const plain = (text: string): string =>
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
export function printedSetting(raw: string): Printed | undefined {
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
export function passes(bench: Entries, isSample: boolean): void {
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

/** Feeds the advice for that many drawn benches back; the first benches are the same, however many. */
export function feedBack(benches: number): void {
  const random = seededRandom(SEED);
  const seen = { works: 0, readout: 0, none: 0, fine: 0, film: 0 };
  for (let index = 0; index < benches; index += 1) {
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
  expect(seen.works).toBeGreaterThan(0.4 * benches);
  expect(seen.readout).toBeGreaterThan(0.02 * benches);
  expect(seen.none).toBeGreaterThan(0.01 * benches);
  expect(seen.fine).toBeGreaterThan(0.01 * benches);
  expect(seen.film).toBeGreaterThan(0.01 * benches);
}
