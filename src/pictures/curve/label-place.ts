interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle in page units. */
export interface PageBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a text is written: its middle and base line. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

const LINE_HEIGHT = 24;
const CANDIDATES = 25;
/** A name closer than this to another curve could be taken for its name, page units. */
const LEAST_CLEARANCE = 12;

/** Height of a line of points at x, by straight interpolation; undefined outside it. */
export function heightAt(points: readonly Point[], x: number): number | undefined {
  for (let index = 1; index < points.length; index += 1) {
    const before = points[index - 1];
    const after = points[index];
    if (before === undefined || after === undefined) continue;
    if (x < Math.min(before.x, after.x) || x > Math.max(before.x, after.x)) continue;
    const run = after.x - before.x;
    return run === 0 ? after.y : before.y + ((x - before.x) / run) * (after.y - before.y);
  }
  return undefined;
}

function overlap(first: PageBox, second: PageBox): boolean {
  return (
    first.left < second.right &&
    second.left < first.right &&
    first.top < second.bottom &&
    second.top < first.bottom
  );
}

/** Heights of a line inside the width of a box. */
function heightsAcross(points: readonly Point[], box: PageBox): readonly number[] {
  const heights: number[] = [];
  for (let step = 0; step <= 6; step += 1) {
    const height = heightAt(points, box.left + ((box.right - box.left) * step) / 6);
    if (height !== undefined) heights.push(height);
  }
  return heights;
}

/** Distance from a box to the nearest of the heights; 0 when one runs through it. */
function clearance(heights: readonly number[], box: PageBox): number {
  let least = Number.POSITIVE_INFINITY;
  for (const height of heights) {
    const above = box.top - height;
    const below = height - box.bottom;
    least = Math.min(least, Math.max(0, above, below));
  }
  return least;
}

/**
 * Places the name of each curve beside it: above or below, close to its own line, away from the
 * others. A curve with no free place gets none; its name is then printed in
 * a list under the chart.
 *
 * @param curves  points of each curve in page units, with the width its name needs
 * @param plot    area that the names must stay in
 * @param marks   x of upright lines, which a name crosses only where nothing else is free
 */
export function placeLabels(
  curves: readonly { readonly points: readonly Point[]; readonly width: number }[],
  plot: PageBox,
  marks: readonly number[],
): readonly (Place | undefined)[] {
  const used: PageBox[] = [];
  return curves.map(({ points, width }, own) => {
    let best: { place: Place; box: PageBox; score: number } | undefined;
    for (let candidate = 0; candidate < CANDIDATES; candidate += 1) {
      const room = plot.right - plot.left - width;
      if (room < 0) continue;
      const left = plot.left + (room * candidate) / (CANDIDATES - 1);
      const span: PageBox = { left, right: left + width, top: 0, bottom: 0 };
      const ownHeights = heightsAcross(points, span);
      if (ownHeights.length < 4) continue;
      const highest = Math.min(...ownHeights);
      const lowest = Math.max(...ownHeights);
      for (const top of [highest - LINE_HEIGHT - 5, lowest + 5]) {
        const box: PageBox = { ...span, top, bottom: top + LINE_HEIGHT };
        if (box.top < plot.top || box.bottom > plot.bottom) continue;
        if (used.some((other) => overlap(other, box))) continue;
        const others = curves.flatMap((curve, index) =>
          index === own ? [] : heightsAcross(curve.points, box),
        );
        const free = Math.min(60, clearance(others, box));
        if (free < LEAST_CLEARANCE) continue;
        // A steep stretch of the own line leaves the name far from most of it.
        const crossings = marks.filter((x) => x > box.left && x < box.right).length;
        const score = free - 0.4 * (lowest - highest) - 25 * crossings + candidate * 0.05;
        if (best === undefined || score > best.score) {
          best = { place: { x: left + width / 2, y: top + LINE_HEIGHT - 6 }, box, score };
        }
      }
    }
    if (best === undefined) return undefined;
    used.push(best.box);
    return best.place;
  });
}
