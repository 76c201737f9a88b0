import { describe, expect, it } from 'vitest';
import type { Judgement } from '../tools/film-clip/judge.ts';
import { acceptClip, acceptShares } from './file/accept-film-clips.ts';
import { ACCEPTANCE_SEEDS, LATER_SEEDS } from './file/film-clips.ts';
import { describeStands, STAND_SEEDS } from './file/film-stand-clips.ts';

describe.each([
  ['acceptance', ACCEPTANCE_SEEDS, 40],
  ['later', LATER_SEEDS, 15],
] as const)('film clips of every %s seed', (_, seeds, fewest) => {
  const found: (Judgement | undefined)[] = [];

  it.each(seeds)('seed %d keeps every film frame once', (seed) => {
    found.push(acceptClip(seed));
  });

  it('gives whole frames wherever the camera took one', () => {
    expect(found).toHaveLength(seeds.length);
    acceptShares(found, fewest);
  });
});

// The first twelve stand in film-untold.test.ts.
describeStands(12, STAND_SEEDS.later);
describeStands(24, STAND_SEEDS.latest);
