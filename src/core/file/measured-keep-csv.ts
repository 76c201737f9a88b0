import type { MeasuredKeepList } from './measured-keep-list.ts';

/**
 * The measured keep list as a table, one line for each film frame: film frame, camera frame counted from
 * 0, its time in the file, s, margin in film frames, status, and whether it looks like the one before.
 *
 * @param list  measured keep list
 * @returns comma-separated text with a heading,
 *          `film_frame,camera_frame,time,margin,status,same_picture_twice`
 */
export function measuredKeepCsv(list: MeasuredKeepList): string {
  const lines = list.frames.map(
    ({ filmFrame, cameraFrame, seconds, margin, status, isSamePicture }) =>
      `${filmFrame},${cameraFrame},${seconds.toFixed(6)},${margin.toFixed(3)},${status},${isSamePicture ? 'maybe' : 'no'}`,
  );
  return `film_frame,camera_frame,time,margin,status,same_picture_twice\n${lines.join('\n')}\n`;
}
