import { describe, expect, it } from 'vitest';
import type { Judgement } from '../tools/film-clip/judge.ts';
import { SAMPLES } from '../tools/sample-sizes.ts';
import { acceptClip, acceptShares } from './file/accept-film-clips.ts';
import { ACCEPTANCE_SEEDS } from './file/film-clips.ts';

// Every seed is run by the long random run; these are enough to notice a change.
const SHARE = ACCEPTANCE_SEEDS.filter((seed) => [5, 8].includes(seed));

describe('film clips filmed off a simulated projector', () => {
  const found: (Judgement | undefined)[] = [];

  it.each(SHARE)('seed %d keeps every film frame once', (seed) => {
    found.push(acceptClip(seed));
  });

  it('give whole frames wherever the camera took one', () => {
    expect(found).toHaveLength(SAMPLES.clips.command);
    acceptShares(found, SAMPLES.clips.command);
  });
});
