import demoReading from './demo-film.json';
import { filmVerdict } from './film-answers.ts';
import type { FilmReading } from './film-found.ts';
import { filmReader, type FilmReader } from './film-reader.ts';
import { FilmReport } from './FilmReport.tsx';
import { filmSettings, type FilmSettings } from './film-settings.ts';
import type { RecordingKind } from './recording-kind.ts';

/** Recordings of running film. */
export const filmKind: RecordingKind<
  typeof filmSettings.sheet.inputs,
  FilmSettings,
  FilmReading,
  FilmReader
> = {
  title: 'A recording of film',
  question: 'Which camera frame stands for each film frame, read from the pictures themselves?',
  wanted:
    'The recording as the camera wrote it, of any length, at twice the film rate or more, with the exposure set by hand.',
  fields: filmSettings,
  openFields: [
    'filmFps',
    'flashesPerFrame',
    'openPercent',
    'exposureSeconds',
    'readoutSeconds',
    'nativeFps',
    'pictureTurn',
  ],
  demo: {
    path: '/recordings/film.mp4',
    name: 'film.mp4',
    found: demoReading as unknown as FilmReading,
  },
  // The demo was drawn the right way round, with a camera whose readout is known.
  demoEntries: { readoutSeconds: '12', pictureTurn: 'right' },
  makeReader: filmReader,
  verdict: filmVerdict,
  Report: FilmReport,
};
