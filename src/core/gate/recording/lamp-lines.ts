import type { LightModel } from './light-model.ts';
import { bandAttenuation } from './line-columns.ts';
import { lineHz, type LightLine } from './light-lines.ts';

/** What shutter and exposure let through of a lamp's flicker. */
export interface LampFilter {
  readonly flashesPerFrame: number;
  readonly openFraction: number;
  readonly exposureSeconds: number;
}

/** An open fraction that nobody measured may be out by this, either way. Common practice, no source. */
const OPEN_FRACTION_SLACK = 0.15;

/** An exposure time as marked may be out by this, share. Common practice, no source. */
const EXPOSURE_SHARE = 0.02;

/** Soft blade edges take at most this much off the finer products, share. */
const SOFT_EDGE_SHARE = 0.4;

/** Depths of lamp that are tried, up to one that goes dark in between. */
const DEPTHS = Array.from({ length: 40 }, (_, index) => (index + 1) / 40);

/** Part of the squares of a lamp's lines that a real lamp may leave unexplained. */
const MOST_MISFIT = 0.15;

const STEPS = [-1, -0.5, 0, 0.5, 1];

const sinc = (turns: number): number =>
  turns === 0 ? 1 : Math.sin(Math.PI * turns) / (Math.PI * turns);

function rangeOf(values: readonly number[]): { readonly least: number; readonly most: number } {
  return { least: Math.min(...values), most: Math.max(...values) };
}

/** Swing of one line for a lamp that goes fully dark, the least and the most it can be. */
function swingRange(line: LightLine, hz: number, filter: LampFilter) {
  const { flashesPerFrame, openFraction, exposureSeconds } = filter;
  const harmonic = Math.abs(line.film) / flashesPerFrame;
  const shutter = rangeOf(
    STEPS.map((step) => {
      const open = Math.min(0.95, Math.max(0.05, openFraction + step * OPEN_FRACTION_SLACK));
      return Math.abs(sinc(harmonic * open));
    }),
  );
  const exposure = rangeOf(
    STEPS.map((step) => Math.abs(sinc(hz * exposureSeconds * (1 + step * EXPOSURE_SHARE)))),
  );
  return {
    least: (harmonic === 0 ? 1 : 1 - SOFT_EDGE_SHARE) * shutter.least * exposure.least,
    most: shutter.most * exposure.most,
  };
}

/**
 * Whether the lines laid to a lamp can come from one: behind a shutter and through an exposure time, a
 * lamp that flickers makes all of its lines in known proportion. One strong line among them without the
 * others is something else, such as an unequal blade at a rate that happens to be near.
 *
 * Model: the line 2m + h·F of a lamp of depth D swings by D·|sinc(h·d)|·|sinc((2m + h·F)·T)|; open
 * fraction d and exposure time T are taken with their usual slack.
 *
 * @param model   an explanation
 * @param filter  shutter and exposure of the bench
 * @returns true where no line is laid to a lamp, or a lamp of some depth explains those that are
 */
export function isLampPossible(model: LightModel, filter: LampFilter): boolean {
  const { refined, lines } = model;
  if (refined === undefined || !model.families.includes('lamp')) return true;
  const { motion, fit, meanFilmFps } = refined;
  const found = lines.flatMap((line, index) => {
    if (line.lamp === 0) return [];
    const hz = lineHz(line, meanFilmFps, motion.lampHz);
    const swing = Math.hypot(fit.factors[2 * index] ?? 0, fit.factors[2 * index + 1] ?? 0);
    return [
      {
        swing: swing / bandAttenuation(line, meanFilmFps, motion),
        ...swingRange(line, hz, filter),
      },
    ];
  });
  const all = found.reduce((sum, { swing }) => sum + swing ** 2, 0);
  return DEPTHS.some((depth) => {
    let misfit = 0;
    for (const { swing, least, most } of found) {
      misfit += Math.max(0, swing - depth * most, depth * least - swing) ** 2;
    }
    return misfit <= MOST_MISFIT * all;
  });
}
