import { describe, expect, it } from 'vitest';
import { bandMotionOfPictures, type BandMotion } from '../../src/core/file/band-motion.ts';
import { bestPath, slotChanges } from '../../src/core/file/best-path.ts';
import { cameraSlots, type CameraSlots } from '../../src/core/file/camera-slots.ts';
import { filmPosition } from '../../src/core/file/film-position.ts';
import { knotPhases } from '../../src/core/file/knot-spread.ts';
import { likelyReadout } from '../../src/core/file/likely-readout.ts';
import { measuredKeepList } from '../../src/core/file/measured-keep-list.ts';
import { pathStates } from '../../src/core/file/path-states.ts';
import { phaseEvidence, WITNESSES } from '../../src/core/file/phase-evidence.ts';
import { phaseModels } from '../../src/core/file/phase-models.ts';
import { rivalNats } from '../../src/core/file/rival-paths.ts';
import { toldPieces } from '../../src/core/file/told-pieces.ts';
import { makeGateLight } from '../../src/core/gate/gate-light.ts';
import { expectApproved } from '../tools/approved-text.ts';
import { namedToNineDigits as line } from '../tools/drawn-value.ts';
import { enteredBench } from './file/film-clips.ts';
import { shortFilms, type ShortFilm } from './short-recordings.ts';

// The sums that the reading of a film is made of, one after the other, kept to nine digits; and readings of
// short clips with frames missing and doubled, entries that are wrong and film that stands, each held
// against what was drawn (npm run approve writes the files again).

/** The recording as it is read, and the camera frame as drawn that each of its pictures shows. */
function filed({ clip, missing, doubled }: ShortFilm) {
  const kept = [...clip.pictures.keys()].filter((frame) => !missing.includes(frame));
  const seconds = Float64Array.from(kept, (frame) => clip.frameSeconds[frame]!);
  const sources = kept.map((frame) => (doubled.includes(frame - 1) ? frame - 1 : frame));
  const pictures = sources.map((frame) => clip.pictures[frame]!);
  return { motion: bandMotionOfPictures(pictures, seconds), sources };
}

function slotsOf(motion: BandMotion): CameraSlots {
  const slots = cameraSlots(motion.frameSeconds);
  if ('irregularSeconds' in slots) throw new Error('no clock');
  return slots;
}

function steps({ title, clip }: ShortFilm, motion: BandMotion): readonly string[] {
  const bench = enteredBench(clip.plan);
  const slots = slotsOf(motion);
  const { filmFps } = clip.plan.projector;
  const step = {
    light: makeGateLight(1, bench.shutter),
    filmFramesPerCameraFrame: filmFps / slots.cameraFps,
    exposureFilmFrames: bench.exposureSeconds * filmFps,
  };
  const question = {
    gram: motion.gram,
    slotOfFrame: slots.slotOfFrame,
    slots: slots.slots,
    step,
    readoutFilmFrames: bench.readoutSeconds * filmFps,
  };
  const coarse = phaseEvidence({ ...question, phases: 16, isCoarse: true });
  const fine = phaseEvidence({ ...question, phases: 24, isCoarse: false });
  const states = pathStates(slots.slots, 24, {
    filmFramesPerCameraFrame: (1.004 * filmFps) / slots.cameraFps,
    pieceSlots: Math.max(4, 0.5 * slots.cameraFps),
    rateReach: 0.035,
  });
  const path = bestPath(states, fine, 'all');
  const witnesses = (['even', 'odd'] as const).map((witness) => bestPath(states, fine, witness));
  const leads = rivalNats(states, fine, path, bench.shutter.sectors.length);
  return [
    line('slots', slots),
    line('products', motion.gram),
    line('models, seven frames', phaseModels(step, [-3, -2, -1, 0, 1, 2, 3], 6, true)),
    line('models, beside a gap', phaseModels(step, [-3, -1, 0, 1], 6, false)),
    // An exposure shorter than the dark of a blade: at some phases no light at all.
    line(
      'models, in the dark',
      phaseModels({ ...step, exposureFilmFrames: 0.12 }, [-1, 0, 1, 2], 12, true),
    ),
    line('coarse evidence', { ...coarse, steps: coarse.steps.all }),
    line('fine evidence', { ...fine, steps: WITNESSES.map((witness) => fine.steps[witness]) }),
    line('states', states),
    line('path', path),
    line('witnesses', witnesses),
    line('leads', leads),
    line('told', toldPieces(path, witnesses, leads, 24)),
    ...WITNESSES.map((witness) => line(`phases by ${witness}`, knotPhases(states, fine, witness))),
    line('changes', slotChanges(states, fine, path)),
    // Looked for in one of them: it takes as long as all the rest.
    ...(title === 'plain'
      ? [line('likely readout', likelyReadout(motion, slots, { ...bench, readoutSeconds: 0 }))]
      : []),
  ];
}

describe('the sums of a reading of film', () => {
  it.each(shortFilms)('of a short clip: $title', (drawn) => {
    const { title, clip } = drawn;
    const { motion, sources } = filed(drawn);
    const bench = enteredBench(clip.plan, { exposure: 1.02 });
    const position = filmPosition(motion, bench);
    const list =
      position.kind === 'refused' ? undefined : measuredKeepList(position, motion, bench);
    // The last tie of the film that stands lies where the pictures tell nothing.
    const ties = [
      { filmFrame: 5, cameraFrame: 12 },
      { filmFrame: 20, cameraFrame: 40 },
      ...(clip.plan.stands === undefined ? [] : [{ filmFrame: 30, cameraFrame: 51 }]),
    ];
    const tied =
      position.kind === 'refused' ? undefined : measuredKeepList(position, motion, bench, ties);
    if (position.kind === 'refused' || list === undefined) throw new Error('refused');

    // What is said to be whole shows its film frame and no other, at the speed the film really ran.
    const truths = list.frames.map(({ cameraFrame }) => clip.truth[sources[cameraFrame]!]!);
    const apart = list.frames.map(({ filmFrame }, at) => truths[at]!.main - filmFrame);
    const whole = [...list.frames.keys()].filter((at) => list.frames[at]!.status === 'whole');
    expect(new Set(whole.map((at) => apart[at])).size).toBe(1);
    for (const at of whole) expect(truths[at]!.leastShare).toBeGreaterThan(0.98);
    // Lost are the film frames that no picture of the file shows.
    const shownFrames = new Set(
      sources.map((frame) => clip.truth[frame]!.main - apart[whole[0]!]!),
    );
    const all = Array.from({ length: list.frames.at(-1)!.filmFrame + 1 }, (_, frame) => frame);
    expect(list.lostFilmFrames).toEqual(all.filter((frame) => !shownFrames.has(frame)));
    const [first, last] = [clip.truth[0]!, clip.truth.at(-1)!];
    const trueFps = (last.position - first.position) / clip.frameSeconds.at(-1)!;
    expect(Math.abs(position.filmFps / trueFps - 1)).toBeLessThan(0.005);
    const stands = (clip.plan.stands ?? []).map((each) => each / trueFps);
    expect(list.stands).toHaveLength(stands.length === 0 ? 0 : 1);
    for (const { fromSeconds, toSeconds } of list.stands) {
      expect(Math.abs(fromSeconds - stands[0]!)).toBeLessThan(0.15);
      expect(Math.abs(toSeconds - stands.at(-1)!)).toBeLessThan(0.15);
    }
    const lines = [
      `## ${title}`,
      ...steps(drawn, motion),
      line('position', position),
      line('list', list),
      line('tied', tied ?? {}),
    ];
    expectApproved(
      `tests/core/approved/film-steps-${title.replaceAll(/\W+/gu, '-')}.txt`,
      `${lines.join('\n')}\n`,
    );
  });
});
