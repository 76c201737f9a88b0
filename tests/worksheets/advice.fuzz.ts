import { test } from 'vitest';
import { SAMPLES } from '../tools/sample-sizes.ts';
import { feedBack } from './fed-back-advice.ts';

const BENCHES = SAMPLES.advice.longRun;

test(`${BENCHES} benches: what the verdict and the answer recommend passes every sheet`, () => {
  feedBack(BENCHES);
});
