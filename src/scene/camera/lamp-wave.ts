import type { GateLight, LightPoint } from '../../core/gate/gate-light.ts';

/** Straight pieces that a wave of the lamp is made of; their mean differs from a sine's by under 0.3 %. */
const PIECES = 36;

/**
 * Light of a flickering lamp through an open gate, 1 + depth·cos over one flicker, scaled so that its
 * brightest is 1.
 *
 * @param lampHz  flicker of the lamp, Hz; > 0
 * @param depth   swing about the mean, share of it; 0–1
 */
export function lampWave(lampHz: number, depth: number): GateLight {
  const periodSeconds = 1 / lampHz;
  const points = Array.from({ length: PIECES + 1 }, (_, piece): LightPoint => {
    const part = piece / PIECES;
    const level = (1 + depth * Math.cos(2 * Math.PI * part)) / (1 + depth);
    return { seconds: part * periodSeconds, level };
  });
  const lightToPoint = [0];
  points.slice(1).forEach((point, index) => {
    const mean = (point.level + (points[index]?.level ?? 0)) / 2;
    lightToPoint.push((lightToPoint[index] ?? 0) + (mean * periodSeconds) / PIECES);
  });
  const total = lightToPoint[PIECES] ?? 0;
  return { periodSeconds, points, lightToPoint, meanLevel: total / periodSeconds };
}
