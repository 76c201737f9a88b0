import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { GateReading, GateRefusal } from '../../../src/core/gate/recording/gate-reading.ts';
import { readEmptyGate } from '../../../src/core/gate/recording/read-empty-gate.ts';
import { filmPosition } from '../../../src/core/file/film-position.ts';
import { makeEqualShutter } from '../../../src/core/gate/shutter.ts';
import { filmFound, type FilmReading } from '../../../src/ui/recording/film-found.ts';
import { projectFolder } from '../../walls/source-files.ts';
import {
  bandsByHand,
  decodeLuma,
  frameSecondsOf,
  gramByHand,
  type DecodedLuma,
} from '../measured-by-hand.ts';

/** What a demo recording truly holds. */
export interface DemoTruth {
  readonly fileName: string;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly flashesPerFrame: number;
  readonly openFraction: number;
  readonly filmFps: number;
  readonly positions: readonly number[];
  /** For each camera frame the film frame that it shows whole; null where it shows none. */
  readonly wholeFilmFrames?: readonly (number | null)[];
}

/** The truth of both recordings: the empty gate, then the film. */
export function demoTruths(): readonly [DemoTruth, DemoTruth] {
  const text = readFileSync(join(projectFolder, 'tests/tools/demo-recordings/truth.json'), 'utf8');
  return JSON.parse(text) as [DemoTruth, DemoTruth];
}

export function demoPath({ fileName }: DemoTruth): string {
  return join(projectFolder, 'src/public/recordings', fileName);
}

const decoded = new Map<string, DecodedLuma>();

/** Its pictures as ffmpeg decodes them, once for all who ask. */
export function demoLuma(truth: DemoTruth): DecodedLuma {
  const known = decoded.get(truth.fileName) ?? decodeLuma(demoPath(truth), 320, 240, 8);
  decoded.set(truth.fileName, known);
  return known;
}

/** The demo gate as ffmpeg decodes it and the core reads it, with the entries that its sheet opens with. */
export function readDemoGate(): GateReading | GateRefusal {
  const [gate] = demoTruths();
  const path = demoPath(gate);
  const bands = bandsByHand(demoLuma(gate));
  const light = {
    frameSeconds: Float64Array.from(frameSecondsOf(path)),
    bands: Float64Array.from(bands.flat()),
    clippedShare: 0,
    blackShare: 0,
  };
  return readEmptyGate(light, {
    nominalFilmFps: 18,
    flashesPerFrame: 3,
    shutter: makeEqualShutter(3, 0.5),
    exposureSeconds: 1 / 50,
    readoutSeconds: undefined,
    mainsHz: undefined,
    rippleLimitPercent: 1,
    isReadUpwards: false,
  });
}

/** The demo film in the same way. */
export function readDemoFilm(): FilmReading {
  const [, film] = demoTruths();
  const path = demoPath(film);
  const motion = {
    frameSeconds: Float64Array.from(frameSecondsOf(path)),
    gram: Float64Array.from(gramByHand(demoLuma(film)).flatMap((numbers) => [...numbers])),
  };
  const bench = {
    filmFps: 18,
    shutter: makeEqualShutter(3, 0.5),
    exposureSeconds: 1 / 54,
    readoutSeconds: 0.012,
  };
  const position = filmPosition(motion, bench);
  if (position.kind === 'refused') throw new Error(position.reason);
  const found = filmFound({ position, motion, bench, isReadoutMeasured: true }, []);
  return { ...found, codeRange: 'limited', codedWidth: 320, codedHeight: 240 };
}
