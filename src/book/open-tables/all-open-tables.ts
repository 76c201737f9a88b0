import { getCollection } from 'astro:content';
import { findWorksheet } from '../../worksheets/registry.ts';
import { gaugeSourceTable, gaugeTable } from './gauge-tables.ts';
import { glossaryTable, sourceTable, worksheetTable } from './list-tables.ts';
import type { OpenTable } from './open-table.ts';
import { sweptOpenTable } from './swept-open-table.ts';

const EXPOSURES = ['24', '25', '30', '36', '48', '50', '54', '60', '72', '75', '100', '120'];

function gaugeKeys(): readonly string[] {
  const spec = findWorksheet('film-length').inputs['gauge'];
  return spec?.kind === 'choice' ? Object.keys(spec.options) : [];
}

function runningTimes(): OpenTable {
  return sweptOpenTable({
    id: 'running-times',
    title: 'Running times by gauge, length and film rate',
    about: 'Frames counted by the frames-to-the-foot convention where the gauge has one.',
    worksheet: 'film-length',
    rows: {
      gauge: gaugeKeys(),
      lengthMetres: [
        '25 ft',
        '50 ft',
        '100 ft',
        '200 ft',
        '400 ft',
        '15 m',
        '30 m',
        '60 m',
        '120 m',
      ],
      filmFps: ['16', '16 2/3', '18', '24', '25'],
    },
    fixed: { known: 'length' },
    answers: ['frames', 'lengthFeet', 'runningSeconds'],
  });
}

function matches(): OpenTable {
  return sweptOpenTable({
    id: 'matches',
    title: 'Ripple, beat and whole frames by film rate, flashes, camera rate and exposure',
    about:
      'Global shutter, open fraction 50 %. Exposures longer than the camera frame have no line.',
    worksheet: 'flash-match',
    rows: {
      filmFps: ['16', '16 2/3', '18', '20', '24', '25'],
      flashesPerFrame: ['2', '3', '4'],
      cameraFps: ['24', '25', '30000/1001', '50', '60000/1001'],
      exposureSeconds: EXPOSURES.map((denominator) => `1/${denominator}`),
    },
    fixed: { readoutSeconds: '0' },
    answers: [
      'ripplePercent',
      'rippleStops',
      'beatHz',
      'matchingExposureSeconds',
      'smallestCameraFps',
      'wholeFrames',
    ],
  });
}

/** The book's own look-up tables, each as long rows: one line for each combination. */
async function lookupTables(): Promise<readonly OpenTable[]> {
  const tables = await getCollection('tables');
  return tables.map(({ data }) =>
    sweptOpenTable({
      id: `table-${data.id}`,
      title: data.caption,
      about: data.note ?? 'A look-up table of the book.',
      worksheet: data.worksheet,
      rows: {
        ...data.rows,
        ...(data.across === undefined ? {} : { [data.across.input]: data.across.values }),
      },
      fixed: data.fixed,
      answers: data.answers,
    }),
  );
}

/** Every table that the site gives to machines; ids are file names under /data/. */
export async function allOpenTables(): Promise<readonly OpenTable[]> {
  return [
    gaugeTable(),
    gaugeSourceTable(),
    runningTimes(),
    matches(),
    ...(await lookupTables()),
    worksheetTable(),
    await glossaryTable(),
    await sourceTable(),
  ];
}
