import { describe, it } from 'vitest';
import { checkRandomPlay } from './random-play.ts';

describe('two hundred random benches', () => {
  it('play without flashing too often', () => {
    checkRandomPlay(200, 320);
  });
});
