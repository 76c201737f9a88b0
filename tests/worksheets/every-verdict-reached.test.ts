import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { watchCode, type CodeWatch, type Unreached } from '../tools/reached-code.ts';
import { levelsReached, plainSpaces, reachingCases, type Evaluate } from './reaching-cases.ts';

// What a sheet can say is read off its code, not listed here: V8 counts which of its verdicts and refusals
// ran while the examples and the entries of reaching-entries.yaml were worked through.

/** Refusals of core that no entry of a sheet can reach, and what keeps them away. */
const GUARDS: Readonly<Record<string, string>> = {
  'src/core/reel/gauges.ts “pitch”':
    'the sheets ask for the short pitch by the rule of length, which refuses first',
  'src/core/customer/price-lines.ts “entries”': 'ranges of the inputs',
  'src/core/file/keep-ties.ts “tieFilmFrames”': 'the sheet puts film frame 0 first itself',
  'src/core/file/keep-ties.ts “filmFrame”': 'frames are counted by the sheet',
  'src/core/gate/shutter.ts “sectors”': 'the sheets make sectors of arcs or of a described shutter',
  'src/core/file/frame-filter.ts “cameraFrames”': 'the sheet has no measured list',
  'src/core/file/reel-script/script-entries.ts “cameraFrames”':
    'the sheet leaves the measured list to its file',
  'src/core/file/reel-script/script-entries.ts “cameraFps”':
    'a keep list that cannot be made is a verdict of the sheet',
  'src/core/file/reel-script/shell-quoting.ts “argument”': 'the inputs take no such names',
  'src/core/file/sound-separation.ts “system”': 'a choice of known systems',
  'src/core/gate/exposure-range.ts “spacingStops”':
    'density 6 in quarter stops takes fewer than 99 exposures',
  'src/core/gate/match-finder.ts “argument”': 'the inputs take shorter lists',
  'src/core/reel/acid-level.ts “acidLevel”': 'a choice of the published levels',
  'src/core/reel/shrinkage-class.ts “shrinkagePercent”': 'the classes cover all numbers',
  'src/core/reel/film-strip.ts “position”': 'the sheet draws holes where the gauge has them',
  'src/core/reel/shrinkage.ts “readingErrorMillimetres”':
    'no length is below 20 mm and no reading error above 2 mm',
  'src/core/reel/vapour-limits.ts “limit”': 'both vapours have limits',
  'src/worksheets/reel/shrinkage/places.ts “PLACES[0]”': 'the first place is always typed',
};

const isLevel = (node: ts.Node): boolean =>
  ts.isStringLiteral(node) &&
  ['good', 'care', 'stop', 'note'].includes(node.text) &&
  // Compared with, not given.
  !ts.isBinaryExpression(node.parent) &&
  !ts.isCaseClause(node.parent);

const isRefusal = (node: ts.Node): node is ts.NewExpression =>
  ts.isNewExpression(node) && /\bOutOfRangeError$/u.test(node.expression.getText());

const isSentence = (node: ts.Node): boolean =>
  ts.isPropertyAssignment(node) && node.name.getText() === 'sentence';

const isSheet = (path: string): boolean => path.startsWith('src/worksheets/');
const isCoreOrSheet = (path: string): boolean => path.startsWith('src/core/') || isSheet(path);

/** `path “argument”` of a refusal, which is how the guards are named. */
function nameOfRefusal({ path, code }: { readonly path: string; readonly code: string }): string {
  const argument = /OutOfRangeError\(\s*["']?([\w.[\]]+)/u.exec(code)?.[1] ?? code;
  return `${path} “${argument}”`;
}

let watch: CodeWatch;
let worksheets: ReadonlyMap<string, Worksheet>;
let evaluate: Evaluate;

beforeAll(async () => {
  watch = await watchCode();
  ({ worksheets } = await import('../../src/worksheets/registry.ts'));
  ({ evaluate } = await import('../../src/worksheets/machine/evaluate.ts'));
});

describe('what the sheets can say', () => {
  let unreached: Unreached;
  beforeAll(async () => {
    await watch.reset();
    levelsReached(worksheets, evaluate);
    unreached = await watch.taken();
  });

  it.each(reachingCases)('$id, at $entries', ({ id, entries, says, refuses }) => {
    const { outcome, message, messages } = evaluate(worksheets.get(id)!, entries);
    expect(message).toBeUndefined();
    const said = outcome && {
      level: outcome.verdict.level,
      sentence: plainSpaces(outcome.verdict.sentence),
    };
    expect(said).toEqual(says);
    const told = Object.entries(messages).map(([key, text]) => [key, plainSpaces(text)]);
    expect(Object.fromEntries(told)).toEqual(refuses ?? {});
  });

  it('every level and every verdict in the code is reached', async () => {
    const levels = await unreached(isSheet, isLevel);
    expect(levels.asked).toBeGreaterThan(100);
    const sentences = await unreached(isCoreOrSheet, isSentence);
    expect(sentences.asked).toBeGreaterThan(80);
    expect([...levels.places, ...sentences.places]).toEqual([]);
  });

  it('every refusal in the code is reached, or is a guard that no entry can reach', async () => {
    const { asked, places } = await unreached(isCoreOrSheet, isRefusal);
    expect(asked).toBeGreaterThan(30);
    const names = [...new Set(places.map(nameOfRefusal))].sort();
    expect(names).toEqual(Object.keys(GUARDS).sort());
  });

  it('is told apart: code that did not run is found, whatever stands around it', async () => {
    await watch.reset();
    evaluate(worksheets.get('speed-change')!, { shownFps: '18' });
    const unreachedByOne = await watch.taken();
    const { places } = await unreachedByOne(
      (path) => path.endsWith('file/speed-change/worksheet.ts'),
      isLevel,
    );
    expect(places.map(({ code }) => code)).toEqual(['"note"', '"care"']);
  });
});
