import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as flashMatch } from '../../src/worksheets/gate/flash-match/worksheet.ts';
import { worksheet as keepList } from '../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as matchFinder } from '../../src/worksheets/gate/match-finder/worksheet.ts';
import type { Worksheet, Outcome } from '../../src/worksheets/machine/types.ts';
import { worksheet as wholeFrames } from '../../src/worksheets/file/whole-frames/worksheet.ts';
import { dice, steadyRun, unequalBlades, wholeFilmFrame } from '../tools/film-run.ts';

function outcomeOf(worksheet: Worksheet, entries: Entries): Outcome {
  const { outcome, messages } = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  if (outcome === undefined) throw new Error(`${worksheet.id}: ${JSON.stringify(messages)}`);
  return outcome;
}

interface BenchEntries extends Entries {
  readonly filmFps: string;
  readonly cameraFps: string;
  readonly exposureSeconds: string;
}

/** What every sheet says of one bench. */
function allSheets(bench: BenchEntries) {
  return {
    flash: outcomeOf(flashMatch, bench),
    whole: outcomeOf(wholeFrames, bench),
    keep: outcomeOf(keepList, { ...bench, rateErrorPercent: '0', wanderPercent: '0' }),
    finder: outcomeOf(matchFinder, {
      ...bench,
      filmRates: bench.filmFps,
      cameraRates: bench.cameraFps,
      exposureTimes: bench.exposureSeconds,
      speedErrorPercent: '0',
      // Every ripple is welcome, so that only whole frames can fail.
      rippleLimitPercent: '20',
    }),
  };
}

const DARK_ROWS = /some rows can stay dark: no promise/u;

/** The finder's table of reasons as one text. */
const reasons = ({ tables = [] }: Outcome): string =>
  tables.flatMap(({ rows }) => rows.map(({ cells }) => cells.join(' '))).join('\n');

describe('all sheets about one bench', () => {
  test('an exposure inside the dark: the same words everywhere, and no promise', () => {
    const { flash, whole, keep, finder } = allSheets({
      filmFps: '24',
      flashesPerFrame: '2',
      openPercent: '50',
      cameraFps: '50',
      exposureSeconds: '1/125',
      readoutSeconds: '0',
    });
    expect(flash.verdict.sentence).toMatch(DARK_ROWS);
    expect(flash.answers['wholeFrames']?.text).toMatch(DARK_ROWS);
    expect(flash.answers['smallestCameraFps']?.text).toBe('none');
    expect(whole.verdict.sentence).toMatch(DARK_ROWS);
    expect(whole.answers['wholeFrames']?.text).toMatch(DARK_ROWS);
    expect(whole.answers['smallestCameraFps']?.text).toBe('none');
    expect(whole.answers['longestReadoutMilliseconds']?.text).toBe('none');
    expect(keep.verdict.sentence).toMatch(DARK_ROWS);
    expect(keep.answers['sureFilmFrames']?.value).toBe(0);
    for (const outcome of [flash, whole, keep]) expect(outcome.verdict.level).toBe('stop');
    expect(finder.answers['usable']?.value).toBe(0);
    expect(reasons(finder)).toMatch(DARK_ROWS);
  });

  test('on random benches they give the same answer, and a film that runs bears it out', () => {
    const roll = dice(31);
    const seen = { sure: 0, unsure: 0, dark: 0 };
    for (let trial = 0; trial < 300; trial += 1) {
      const filmFps = 14 + Math.floor(14 * roll());
      const flashes = 2 + Math.floor(2 * roll());
      const openPercent = 40 + Math.floor(20 * roll());
      const cameraFps = [25, 30, 50, 60][Math.floor(4 * roll())] ?? 25;
      const seconds =
        roll() < 0.6
          ? Math.min(1 / cameraFps, 1 / filmFps / flashes)
          : (0.1 + 0.9 * roll()) / cameraFps;
      const readout = roll() < 0.4 ? 0 : Math.floor(((10 * roll()) / cameraFps) * 100);
      const bench: BenchEntries = {
        filmFps: String(filmFps),
        flashesPerFrame: String(flashes),
        openPercent: String(openPercent),
        cameraFps: String(cameraFps),
        exposureSeconds: (Math.floor(seconds * 1e7) / 1e7).toFixed(7),
        readoutSeconds: String(readout),
      };
      const { flash, whole, keep, finder } = allSheets(bench);
      const isDark = DARK_ROWS.test(whole.verdict.sentence);
      const isSure = whole.answers['wholeFrames']?.text === 'sure for every film frame';
      seen[isDark ? 'dark' : isSure ? 'sure' : 'unsure'] += 1;
      expect(DARK_ROWS.test(flash.verdict.sentence), JSON.stringify(bench)).toBe(isDark);
      expect(DARK_ROWS.test(keep.verdict.sentence)).toBe(isDark);
      expect(flash.answers['wholeFrames']?.text === 'sure for every film frame').toBe(isSure);
      expect(flash.answers['smallestCameraFps']?.text).toBe(
        whole.answers['smallestCameraFps']?.text,
      );
      if (!isSure) expect(finder.answers['usable']?.value).toBe(0);
      else expect(finder.answers['blended']?.value).toBe(0);
      if (!isSure && keep.verdict.level === 'good') {
        // A steady film can be kept whole without the promise, but only with windows to fall into.
        expect(isDark).toBe(false);
        expect(whole.answers['windowMilliseconds']?.value).toBeGreaterThan(0);
      }
      if (!isSure) continue;
      const model = {
        blades: unequalBlades(flashes, openPercent / 100, (1 - openPercent / 100) / flashes),
        wipe: 0,
        exposureSeconds: seconds,
        readoutSeconds: readout / 1000,
        cameraFps,
      };
      const run = steadyRun(filmFps, roll());
      const held = new Set<number>();
      for (let frame = 0; frame < 4 * cameraFps; frame += 1) {
        const film = wholeFilmFrame(model, run, frame / cameraFps, 9);
        if (film !== undefined) held.add(film);
      }
      for (let film = 2; film < 3 * filmFps; film += 1)
        expect(held.has(film), JSON.stringify({ bench, film })).toBe(true);
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
  }, 60_000);

  test('a readout that was not measured is the worst one in every sheet, in words too', () => {
    const bench = {
      filmFps: '18',
      flashesPerFrame: '3',
      openPercent: '50',
      cameraFps: '25',
      exposureSeconds: '1/54',
    };
    const open = allSheets({ ...bench, readoutSeconds: '' });
    const worst = allSheets({ ...bench, readoutSeconds: '40' });
    for (const [name, outcome] of Object.entries(open)) {
      expect(outcome.verdict.sentence, name).toContain('not measured: a whole camera frame');
      const known = worst[name as keyof typeof worst];
      expect(known.verdict.sentence, name).not.toContain('readout time is not measured');
      expect(outcome.verdict.level, name).toBe(known.verdict.level);
    }
    expect(open.flash.answers['wholeFrames']?.text).toBe(worst.flash.answers['wholeFrames']?.text);
    expect(open.keep.answers['sureFilmFrames']?.value).toBe(
      worst.keep.answers['sureFilmFrames']?.value,
    );
    const shutter = allSheets({ ...bench, readoutSeconds: '0' });
    expect(shutter.flash.verdict.level).toBe('good');
    expect(open.flash.verdict.level).not.toBe('good');
  });
});
