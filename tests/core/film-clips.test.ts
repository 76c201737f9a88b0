import { describe, expect, it } from 'vitest';
import type { Judgement } from '../tools/film-clip/judge.ts';
import { acceptClip, acceptShares } from './file/accept-film-clips.ts';
import { ACCEPTANCE_SEEDS } from './file/film-clips.ts';

// Every seed is run by the long random run; these are enough to notice a change.
const SHARE = ACCEPTANCE_SEEDS.slice(4, 10);

describe('film clips filmed off a simulated projector', () => {
  const found: (Judgement | undefined)[] = [];

  it.each(SHARE)('seed %d keeps every film frame once', (seed) => {
    found.push(acceptClip(seed));
  });

  it('give whole frames wherever the camera took one', () => {
    expect(found).toHaveLength(SHARE.length);
    acceptShares(found, 5);
  });
});
