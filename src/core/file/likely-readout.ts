import { makeGateLight } from '../gate/gate-light.ts';
import { NUMBERS_PER_FRAME, type BandMotion } from './band-motion.ts';
import type { CameraSlots } from './camera-slots.ts';
import type { RecordingBench } from './recording-bench.ts';
import { phaseEvidence } from './phase-evidence.ts';

/** Readout times that are tried, s. */
const READOUTS = [0, 0.004, 0.008, 0.012, 0.016, 0.02];
/** Camera frames from the middle of the recording that are asked. */
const ASKED_FRAMES = 600;
const PHASES = 24;

/**
 * The readout time under which the bands of the pictures agree best. The flicker of the gate passes
 * down the picture with it, so a wrong one sets the bands against each other.
 *
 * Model: evidence of the best phase of each camera frame ({@link phaseEvidence}), summed over 600
 * camera frames from the middle, for 0 to 20 ms in steps of 4 ms.
 *
 * @param motion  what was kept of the pictures
 * @param slots   slots of the camera frames
 * @param bench   projector and camera, readout time not known
 * @returns readout time, s
 * @source arithmetic
 */
export function likelyReadout(
  motion: BandMotion,
  slots: CameraSlots,
  bench: RecordingBench,
): number {
  const frames = motion.frameSeconds.length;
  const from = Math.max(0, Math.floor((frames - ASKED_FRAMES) / 2));
  const to = Math.min(frames, from + ASKED_FRAMES);
  const slotOfFrame = slots.slotOfFrame.slice(from, to);
  const first = slotOfFrame[0] ?? 0;
  for (let frame = 0; frame < slotOfFrame.length; frame += 1)
    slotOfFrame[frame] = (slotOfFrame[frame] ?? 0) - first;
  const light = makeGateLight(1, bench.shutter);
  let best = { readoutSeconds: 0, nats: -Infinity };
  for (const readoutSeconds of READOUTS) {
    if (readoutSeconds * slots.cameraFps > 1) break;
    const { bestNats: nats } = phaseEvidence({
      gram: motion.gram.subarray(from * NUMBERS_PER_FRAME, to * NUMBERS_PER_FRAME),
      slotOfFrame,
      slots: (slotOfFrame.at(-1) ?? 0) + 1,
      step: {
        light,
        filmFramesPerCameraFrame: bench.filmFps / slots.cameraFps,
        exposureFilmFrames: bench.exposureSeconds * bench.filmFps,
      },
      readoutFilmFrames: readoutSeconds * bench.filmFps,
      phases: PHASES,
      isCoarse: true,
    });
    if (nats > best.nats) best = { readoutSeconds, nats };
  }
  return best.readoutSeconds;
}
