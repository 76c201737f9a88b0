import { describe, expect, it } from 'vitest';
import type { Judgement } from '../tools/film-clip/judge.ts';
import { acceptClip, acceptShares } from './file/accept-film-clips.ts';
import { ACCEPTANCE_SEEDS } from './file/film-clips.ts';

describe('film clips of every acceptance seed', () => {
  const found: (Judgement | undefined)[] = [];

  it.each(ACCEPTANCE_SEEDS)('seed %d keeps every film frame once', (seed) => {
    found.push(acceptClip(seed));
  });

  it('gives whole frames wherever the camera took one', () => {
    expect(found).toHaveLength(ACCEPTANCE_SEEDS.length);
    acceptShares(found, 40);
  });
});
