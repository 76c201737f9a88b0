import type { KeepRule } from '../../src/core/file/keep-list.ts';

/** Whether a tool that applies the rule to the number of a camera frame, as the commands do, keeps it. */
export function isKept(rule: KeepRule, cameraFrame: number): boolean {
  const isInside = cameraFrame >= rule.first && cameraFrame <= rule.last;
  return isInside && (cameraFrame * rule.step + rule.shift) % rule.cycle < rule.step;
}
