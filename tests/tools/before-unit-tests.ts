import { missingTools } from './ffmpeg.ts';
import { sampleLines } from './sample-sizes.ts';

/** Says once for all unit tests, before they run, what they leave to the long run and what this machine lacks. */
export function setup(): void {
  console.log(sampleLines().join('\n'));
  const missing = missingTools();
  if (missing !== undefined) console.warn(`\n${missing}\n`);
}
