import { missingTools } from './ffmpeg.ts';

/** Says once for all unit tests, before they run, what this machine lacks. */
export function setup(): void {
  const missing = missingTools();
  if (missing !== undefined) console.warn(`\n${missing}\n`);
}
