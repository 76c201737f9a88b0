// Writes what the core reads from the demo recordings, decoded by ffmpeg, into the examples that their
// sheets show before a file is there. To be run after the recordings were drawn anew or a reading changed.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../walls/source-files.ts';
import { readDemoFilm, readDemoGate } from './demo-readings.ts';

/** More digits than any sheet prints. */
const asPrinted = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(8)) : value;

const write = (name: string, value: unknown): void => {
  writeFileSync(
    join(projectFolder, 'src/ui/recording', name),
    `${JSON.stringify(value, asPrinted)}\n`,
  );
};

write('demo-gate.json', readDemoGate());
write('demo-film.json', readDemoFilm());
