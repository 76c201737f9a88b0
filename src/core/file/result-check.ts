/** What stands for a picture: equal for equal pictures only, as a checksum is. */
export type FrameSignature = string | number;

/** What a result holds that the list does not ask for. */
export interface ExtraFrame {
  /** Frame of the result, counted from 0. */
  readonly resultFrame: number;
  /** Camera frame of the recording that it equals; undefined where there is none. */
  readonly cameraFrame: number | undefined;
}

/** Whether a result holds exactly the listed frames, in order. */
export interface ResultCheck {
  readonly isExact: boolean;
  /** Places in the list, counted from 0, whose frame the result lacks. */
  readonly missing: readonly number[];
  readonly extra: readonly ExtraFrame[];
}

/** Frames that must agree in a row before the two are taken to go on together. */
const AGREE = 3;
/** Farthest that the result may be ahead or behind. */
const FARTHEST = 400;

/**
 * Compares the frames of a result with the listed frames of the recording.
 *
 * Model: both are followed side by side; where they differ, the shortest jump is taken after which three
 * frames agree, or all that are left. Frames jumped over in the list are missing, in the result extra.
 *
 * @param recording     signature of each camera frame
 * @param cameraFrames  listed camera frames, counted from 0
 * @param result        signature of each frame of the result
 * @returns exact, or what is missing and what is extra
 * @source arithmetic
 * @example checkResult(['a', 'b', 'c', 'd'], [0, 2], ['a', 'c']) // { isExact: true, missing: [], extra: [] }
 */
export function checkResult(
  recording: readonly FrameSignature[],
  cameraFrames: readonly number[],
  result: readonly FrameSignature[],
): ResultCheck {
  const missing: number[] = [];
  const extra: ExtraFrame[] = [];
  const listed = cameraFrames.map((frame) => recording[frame]);
  const agrees = (list: number, frame: number): boolean => {
    for (let ahead = 0; ahead < AGREE; ahead += 1) {
      const listEnds = list + ahead >= listed.length;
      const resultEnds = frame + ahead >= result.length;
      if (listEnds || resultEnds) return ahead > 0 || (listEnds && resultEnds);
      if (listed[list + ahead] !== result[frame + ahead]) return false;
    }
    return true;
  };
  const jump = (list: number, frame: number): readonly [number, number] | undefined => {
    for (let length = 1; length <= FARTHEST; length += 1)
      for (let inList = 0; inList <= length; inList += 1)
        if (agrees(list + inList, frame + length - inList)) return [inList, length - inList];
    return undefined;
  };
  const places = new Map<FrameSignature, number>();
  for (const [frame, signature] of recording.entries())
    if (!places.has(signature)) places.set(signature, frame);
  const addExtra = (resultFrame: number): void => {
    const signature = result[resultFrame];
    extra.push({
      resultFrame,
      cameraFrame: signature === undefined ? undefined : places.get(signature),
    });
  };

  let list = 0;
  let frame = 0;
  while (list < listed.length || frame < result.length) {
    if (list < listed.length && frame < result.length && listed[list] === result[frame]) {
      list += 1;
      frame += 1;
      continue;
    }
    const [inList, inResult] = jump(list, frame) ?? [listed.length - list, result.length - frame];
    for (let each = 0; each < inList && list < listed.length; each += 1, list += 1)
      missing.push(list);
    for (let each = 0; each < inResult && frame < result.length; each += 1, frame += 1)
      addExtra(frame);
  }
  return { isExact: missing.length === 0 && extra.length === 0, missing, extra };
}
