// Seconds from what was kept of the pictures to the keep list, for 1,000 camera frames.
import { isLong } from './parts/is-long.ts';
import { readClip, clipOf } from '../core/file/film-clips.ts';

const SEEDS = isLong ? [3, 6, 7] : [3];
for (const seed of SEEDS) {
  const clip = clipOf(seed);
  const frames = clip.motion.frameSeconds.length;
  readClip(clip);
  const before = process.cpuUsage().user;
  const start = performance.now();
  readClip(clip);
  const seconds = (performance.now() - start) / 1000;
  const busy = (process.cpuUsage().user - before) / 1e6;
  const each = (value: number): string => ((value * 1000) / frames).toFixed(2);
  console.log(
    `film position and keep list, ${clip.clip.plan.camera.cameraFps.toFixed(2)} frames/s: ` +
      `${each(seconds)} s for 1,000 camera frames (${each(busy)} s of one core); to hold: 1 s`,
  );
}
