// What is said of the film rate by the sound beside that by the pictures: a wrong second reading is worse
// than none.
import { describe, expect, it } from 'vitest';
import { readClawNoise } from '../../src/core/gate/recording/claw-noise.ts';
import { soundSentence } from '../../src/ui/recording/sound-reading.ts';
import { PLAIN_SOUND, projectorSound } from '../tools/projector-sound.ts';

const PICTURES = { filmFps: 18, errorFps: 0.002 };
const HEARD = { kind: 'read', filmFps: 18.001, errorFps: 0.004, alternatives: [] } as const;

describe('the film rate by the sound', () => {
  it('agrees with the pictures, whether the claw is heard or its wind alone', () => {
    for (const isClawHeard of [true, false])
      expect(soundSentence({ ...HEARD, isClawHeard }, PICTURES)).toMatchObject({ level: 'good' });
  });

  it('speaks against the pictures where the claw is heard', () => {
    const reading = { ...HEARD, filmFps: 17.5, isClawHeard: true };
    expect(soundSentence(reading, PICTURES).sentence).toContain('does not agree');
  });

  it.each([
    ['beside pictures that say something else', PICTURES],
    ['where the pictures say nothing', undefined],
  ])('is no second reading without the claw, %s', (_, pictures) => {
    const { level, sentence } = soundSentence(
      { ...HEARD, filmFps: 17.5, isClawHeard: false },
      pictures,
    );
    expect(level).toBe('note');
    expect(sentence).toContain('No second reading');
  });

  it('never speaks against film at 16⅔ whose wind falls on the mains beside a motor that hums', () => {
    // The motor hums at three times 15.1; the blades blow at 50 Hz, where the hum of the mains is taken off.
    const plan = {
      ...{ ...PLAIN_SOUND, sampleRate: 16_000, seconds: 8, filmFps: 50 / 3, wander: 0 },
      ...{ clickLevel: 0, blades: 3, windLevel: 0.02, motorHertz: 45.33, motorLevel: 0.1 },
    };
    for (const seed of [29, 30, 31]) {
      const { samples, meanFps } = projectorSound(plan, seed);
      const found = readClawNoise(samples, plan.sampleRate);
      if (found.kind === 'none') continue;
      const pictures = { filmFps: meanFps, errorFps: 0.002 };
      expect(soundSentence(found, pictures).sentence).not.toContain('does not agree');
    }
  });
});
