import { describe, it } from 'vitest';
import { checkAgainstSteps, checkPictureShare, checkRowLight } from './row-truth.ts';

describe('ten thousand random benches', () => {
  it('hold the light that the core gives each row', () => {
    checkRowLight(10_000);
  });

  it('share the picture as the purity says', () => {
    checkPictureShare(10_000);
  });

  it('agree with a shutter that is walked through', () => {
    checkAgainstSteps(10_000);
  });
});
