// Least and most light of one exposure through equal hard-edged blades under a lamp that flickers.

/** Equal flashes: light from 0 to openFraction × period, then dark, and so on. */
export interface Pulses {
  readonly periodSeconds: number;
  readonly openFraction: number;
}

export interface Extremes {
  readonly least: number;
  readonly most: number;
}

/** A lit stretch inside an exposure. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

function litStretches(pulses: Pulses, start: number, end: number): readonly Stretch[] {
  const { periodSeconds, openFraction } = pulses;
  const stretches: Stretch[] = [];
  for (let flash = Math.floor(start / periodSeconds); flash * periodSeconds < end; flash += 1) {
    const from = Math.max(start, flash * periodSeconds);
    const to = Math.min(end, (flash + openFraction) * periodSeconds);
    if (to > from) stretches.push({ from, to });
  }
  return stretches;
}

/** Starts in one period at which an end of the exposure meets a blade edge, in order. */
function edgeStarts({ periodSeconds, openFraction }: Pulses, exposureSeconds: number) {
  const edges = [0, openFraction * periodSeconds];
  const starts = edges.flatMap((edge) => {
    const before = (edge - exposureSeconds) % periodSeconds;
    return [edge, before < 0 ? before + periodSeconds : before];
  });
  return [...starts, periodSeconds].sort((a, b) => a - b);
}

/** Whether both ends of the exposure stay in the light for starts between two edge starts. */
function areEndsLit(pulses: Pulses, exposureSeconds: number, middle: number): boolean {
  const isLit = (time: number): boolean => {
    const turns = time / pulses.periodSeconds;
    return turns - Math.floor(turns) < pulses.openFraction;
  };
  return isLit(middle) && isLit(middle + exposureSeconds);
}

/** Smooth lamp, 1 + depth·cos(2π·rate·t + φ), at its best and worst phase φ for each start. */
export function smoothLampLight(
  pulses: Pulses,
  exposureSeconds: number,
  lampHz: number,
  depth: number,
): Extremes {
  const omega = 2 * Math.PI * lampHz;
  let least = Infinity;
  let most = 0;
  // Light without lamp flicker, and the complex sum of the wave over the lit stretches.
  const tryStart = (start: number): { readonly real: number; readonly imaginary: number } => {
    let steady = 0;
    let real = 0;
    let imaginary = 0;
    for (const { from, to } of litStretches(pulses, start, start + exposureSeconds)) {
      steady += to - from;
      real += (Math.sin(omega * to) - Math.sin(omega * from)) / omega;
      imaginary += (Math.cos(omega * from) - Math.cos(omega * to)) / omega;
    }
    const swing = depth * Math.hypot(real, imaginary);
    least = Math.min(least, steady - swing);
    most = Math.max(most, steady + swing);
    return { real, imaginary };
  };
  const starts = edgeStarts(pulses, exposureSeconds);
  for (const [index, start] of starts.entries()) {
    const { real, imaginary } = tryStart(start);
    const next = starts[index + 1];
    if (next === undefined || next - start < 1e-12 * pulses.periodSeconds) continue;
    if (!areEndsLit(pulses, exposureSeconds, (start + next) / 2)) continue;
    // While both ends stay in the light, the sum runs along a circle of radius |c| about `centre`.
    const c = {
      real: Math.sin(omega * exposureSeconds) / omega,
      imaginary: (1 - Math.cos(omega * exposureSeconds)) / omega,
    };
    const [cos, sin] = [Math.cos(omega * start), Math.sin(omega * start)];
    const centre = {
      real: real - (c.real * cos - c.imaginary * sin),
      imaginary: imaginary - (c.real * sin + c.imaginary * cos),
    };
    const towards = Math.atan2(centre.imaginary, centre.real) - Math.atan2(c.imaginary, c.real);
    for (const angle of [towards, towards + Math.PI]) {
      const turns = (angle - omega * start) / (2 * Math.PI);
      const inside = start + (turns - Math.floor(turns)) / lampHz;
      if (inside < next) tryStart(inside);
    }
  }
  return { least, most };
}

/** Lamp that stands at `high` for onShare of its period and at `low` for the rest. */
interface Switching {
  readonly onShare: number;
  readonly high: number;
  readonly low: number;
}

/** Switched lamp at its best and worst phase φ for each start. */
export function switchedLampLight(
  pulses: Pulses,
  exposureSeconds: number,
  lampHz: number,
  { onShare, high, low }: Switching,
): Extremes {
  const period = 1 / lampHz;
  const lampEdges = [0, onShare * period];
  const onUntil = (time: number): number => {
    const whole = Math.floor(time / period);
    return whole * onShare * period + Math.min(time - whole * period, onShare * period);
  };
  let least = Infinity;
  let most = 0;
  const tryPhase = (stretches: readonly Stretch[], phase: number): void => {
    let steady = 0;
    let on = 0;
    for (const { from, to } of stretches) {
      steady += to - from;
      on += onUntil(to + phase) - onUntil(from + phase);
    }
    const light = low * steady + (high - low) * on;
    least = Math.min(least, light);
    most = Math.max(most, light);
  };
  // For one start, the light over φ is made of straight pieces that end where edges meet.
  const tryStart = (start: number): readonly Stretch[] => {
    const stretches = litStretches(pulses, start, start + exposureSeconds);
    if (stretches.length === 0) tryPhase(stretches, 0);
    for (const { from, to } of stretches) {
      for (const edge of lampEdges) {
        tryPhase(stretches, edge - from);
        tryPhase(stretches, edge - to);
      }
    }
    return stretches;
  };
  const starts = edgeStarts(pulses, exposureSeconds);
  for (const [index, start] of starts.entries()) {
    tryStart(start);
    const next = starts[index + 1];
    if (next === undefined || next - start < 1e-12 * pulses.periodSeconds) continue;
    const middle = (start + next) / 2;
    if (!areEndsLit(pulses, exposureSeconds, middle)) continue;
    // Both ends in the light: corners of the pieces lie where a blade edge inside and an end of the
    // exposure both meet a lamp edge. One lamp period later the same corner comes again.
    const inside = litStretches(pulses, middle, middle + exposureSeconds)
      .flatMap(({ from, to }) => [from, to])
      .slice(1, -1);
    for (const corner of inside) {
      for (const edge of lampEdges) {
        const phase = edge - corner;
        for (const other of lampEdges) {
          for (const end of [0, exposureSeconds]) {
            const turns = (other - phase - end - start) / period;
            const moved = start + (turns - Math.floor(turns)) * period;
            if (moved >= next) continue;
            tryPhase(litStretches(pulses, moved, moved + exposureSeconds), phase);
          }
        }
      }
    }
  }
  return { least, most };
}
