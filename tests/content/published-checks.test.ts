import { describe, expect, it } from 'vitest';
import { readFiles } from '../walls/source-files.ts';
import { readSources } from './read-content.ts';

// Two sorts of tests stand in tests/published. Outside checks put a figure that the core works out
// beside one that somebody else printed, and only they count. Those in its folder `transcription`
// watch that a value, a list or a rule was copied rightly from its source; they prove nothing about
// the source, nor about the arithmetic.

const FOLDER = 'tests/published/';
const files = readFiles('tests/published', ['.test.ts']);
const isTranscription = (path: string): boolean => path.startsWith(`${FOLDER}transcription/`);
const outside = files.filter(({ path }) => !isTranscription(path));
const transcription = files.filter(({ path }) => isTranscription(path));
const sourceOf = (path: string): string => path.replace(/^.*\//u, '').replace('.test.ts', '');
const kinds = new Map(readSources().map(({ id, kind }) => [id, kind]));

/** Functions that only look a printed value up. */
const LOOK_UPS: ReadonlySet<string> = new Set([
  'acidLevelEntry',
  'acidRow',
  'exposureLimit',
  'filmStrip',
  'findSoundSystem',
  'frameStepMillimetres',
  'identifyGauge',
  'nativeRatesFor',
  'nitrateReasons',
  'shrinkageClass',
]);

/** What a test takes from the core, types apart. */
function coreNames(text: string): readonly string[] {
  const imports = text.matchAll(/import \{([^}]*)\} from '[./]*\/src\/(?:core|quantity)\/[^']+'/gu);
  return [...imports].flatMap(([, names = '']) =>
    names
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '' && !name.startsWith('type ')),
  );
}

/** Why a test is no outside check. */
function faultsOf(text: string): readonly string[] {
  const names = coreNames(text);
  // UNITS is a list of names; what the units are worth is asked of a library.
  const tables = names.filter((name) => /^[A-Z][A-Z_]+$/u.test(name) && name !== 'UNITS');
  const lookUps = names.filter((name) => LOOK_UPS.has(name));
  return [
    ...(names.length === 0 ? ['asks nothing of the core'] : []),
    ...tables.map((name) => `repeats the table ${name}`),
    ...lookUps.map((name) => `only looks up by ${name}`),
  ];
}

describe('checks against published figures', () => {
  it.each(outside)('$path works something out', ({ text }) => {
    expect(faultsOf(text)).toEqual([]);
  });

  it.each(outside)('$path is checked against more than another calculator', ({ path }) => {
    const kind = kinds.get(sourceOf(path));
    expect(kind).toBeDefined();
    expect(['calculator', 'practice']).not.toContain(kind);
  });

  it('are many, and from many sources', ({ annotate }) => {
    void annotate(
      `${outside.length} sources give outside checks, ${transcription.length} are transcribed`,
    );
    expect(outside.length).toBeGreaterThan(40);
    const sound = outside.filter(({ path }) =>
      ['standard', 'agency', 'archive', 'handbook', 'journal'].includes(
        kinds.get(sourceOf(path)) ?? '',
      ),
    );
    expect(sound.length).toBeGreaterThan(outside.length / 2);
  });

  it('would be caught repeating a table, looking up or asking nothing', () => {
    const repeat = "import { GAUGES } from '../../src/core/reel/gauges.ts';";
    expect(faultsOf(repeat)).toEqual(['repeats the table GAUGES']);
    const lookUp = "import { findSoundSystem } from '../../src/core/file/sound-separation.ts';";
    expect(faultsOf(lookUp)).toEqual(['only looks up by findSoundSystem']);
    expect(faultsOf("import { expect } from 'vitest';")).toEqual(['asks nothing of the core']);
    expect(faultsOf("import { beatHz } from '../../src/core/gate/beat.ts';")).toEqual([]);
  });
});

describe('checks of transcription', () => {
  it('name a source each', () => {
    expect(transcription.length).toBeGreaterThan(20);
    expect(transcription.map(({ path }) => sourceOf(path)).filter((id) => !kinds.has(id))).toEqual(
      [],
    );
  });
});
