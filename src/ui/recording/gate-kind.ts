import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import demoReading from './demo-gate.json';
import { gateVerdict } from './gate-answers.ts';
import { gateReader } from './gate-reader.ts';
import { GateReport } from './GateReport.tsx';
import { gateSettings } from './gate-settings.ts';
import type { RecordingKind } from './recording-kind.ts';

/** Recordings of the lit, empty gate. */
export const gateKind: RecordingKind<
  typeof gateSettings.sheet.inputs,
  Parameters<typeof gateVerdict>[1],
  GateReading
> = {
  title: 'A recording of the empty gate',
  question: 'How strongly does the light flicker and why, and how fast does the film run?',
  wanted:
    'The lit gate without film, or with clear leader, filling the picture; ten seconds or more, everything on the camera set by hand.',
  fields: gateSettings,
  openFields: [
    'filmFps',
    'flashesPerFrame',
    'openPercent',
    'exposureSeconds',
    'fromSeconds',
    'seconds',
  ],
  demo: {
    path: '/recordings/empty-gate.mp4',
    name: 'empty-gate.mp4',
    found: demoReading as unknown as GateReading,
  },
  makeReader: gateReader,
  verdict: gateVerdict,
  Report: GateReport,
};
