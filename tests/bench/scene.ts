// The drawn home movie: a film frame, a camera frame, and how evenly a browser plays it. Prints, never fails.
import { loadavg } from 'node:os';
import { makeMixer } from '../../src/scene/camera/mix.ts';
import { picturePlan } from '../../src/scene/camera/views.ts';
import { makeAnyFilmInGate } from '../../src/scene/gate/any-film-in-gate.ts';
import { LOOKS, sideOf, type LookId } from '../../src/scene/looks/looks.ts';
import { shownOf } from '../../src/scene/side.ts';
import { onBuiltPage } from './parts/built-page.ts';
import { isLong } from './parts/is-long.ts';
import { processorTime, timeAPicture } from './parts/processor-time.ts';
import { middleAndTail } from './parts/times.ts';
import { makePaper } from '../scene/paper.ts';

const ROUNDS = 12;

function timed(run: (round: number) => void): string {
  const times = Array.from({ length: ROUNDS }, (_, round) => {
    const start = performance.now();
    run(round);
    return performance.now() - start;
  });
  return middleAndTail(times.slice(2));
}

for (const width of [640, 320]) {
  const film = makeAnyFilmInGate(makePaper, width);
  for (const id of ['sound', 'smear-up', 'soft', 'mould'] satisfies LookId[]) {
    const { film: faults } = sideOf(LOOKS[id]);
    console.log(
      `film frame at ${width}, ${id}: ${timed((round) => void film(40 + round, faults))}`,
    );
  }
  const side = sideOf(LOOKS['bands-up']);
  const shown = shownOf(side);
  const height = (width * 3) / 4;
  const bitmap = new Uint32Array(film(60, side.film).buffer);
  const out = new Uint32Array(width * height);
  const mixer = makeMixer(side.tone);
  const mixed = timed((round) => {
    const plan = picturePlan(shown, 'camera', 80 + round, height);
    mixer.mix(out, width, plan, () => bitmap, { from: 0, to: width });
  });
  console.log(`camera frame at ${width}, bands: ${mixed}`);
}

/** What the page is given to measure itself with. */
interface Timed {
  /** Work of the page before each picture of the screen, ms. */
  workMilliseconds: number[];
  /** The browser's own call, whose work is not counted. */
  nextPicture: typeof requestAnimationFrame;
}

/** Plays the scene of the built chapter for two seconds (six in the long run) and measures the gaps between pictures. */
await onBuiltPage(async (page, addressOf) => {
  await page.addInitScript(() => {
    const timed = globalThis as unknown as Timed;
    timed.workMilliseconds = [];
    timed.nextPicture = requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (callback) =>
      timed.nextPicture((now) => {
        const start = performance.now();
        callback(now);
        timed.workMilliseconds.push(performance.now() - start);
      });
  });
  await page.goto(addressOf('/gate/matching/'));
  const scene = page.locator('#scene-pulsing');
  await scene.locator('[data-part="open"]').click();
  await scene.locator('canvas[data-part="canvas"]:visible').waitFor();
  await scene.locator('[data-part="play"]').click();
  await page.waitForTimeout(1000);
  // Asked for by its name it takes its time.
  const isWhole = isLong || process.argv.includes('scene');
  // Processor time of the page's own thread, which other work on the machine does not lengthen.
  const watch = await page.context().newCDPSession(page);
  await watch.send('Performance.enable', { timeDomain: 'threadTicks' });
  const busySeconds = async (): Promise<number> => {
    const { metrics } = await watch.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN;
  };
  const browser = await page.context().browser()?.newBrowserCDPSession();
  if (browser === undefined) throw new Error('a page without a browser');
  const usedBefore = await processorTime(browser);
  const busyBefore = await busySeconds();
  const { gaps, work } = await page.evaluate(
    (pictures) =>
      new Promise<{ readonly gaps: readonly number[]; readonly work: readonly number[] }>(
        (resolve) => {
          const timed = globalThis as unknown as Timed;
          const found: number[] = [];
          let last: number | undefined;
          timed.workMilliseconds.length = 0;
          const tick = (now: number): void => {
            if (last !== undefined) found.push(now - last);
            last = now;
            if (found.length < pictures) timed.nextPicture(tick);
            else resolve({ gaps: found, work: timed.workMilliseconds });
          };
          timed.nextPicture(tick);
        },
      ),
    isWhole ? 360 : 120,
  );
  const busy = (1000 * ((await busySeconds()) - busyBefore)) / gaps.length;
  const used = timeAPicture(usedBefore, await processorTime(browser), gaps.length);
  const late = gaps.filter((gap) => gap > 25).length;
  const latePercent = ((100 * late) / gaps.length).toFixed(1);
  console.log(
    `display gap while it plays at 640: ${middleAndTail(gaps)} (bar 17 ms), ` +
      `${late} of ${gaps.length} later than 25 ms = ${latePercent} % (bar 2 %)`,
  );
  console.log(
    `processor time of the main thread, all its work together: ${busy.toFixed(1)} ms a picture of the screen`,
  );
  for (const line of used) console.log(line);
  console.log(
    `main thread before each of them: ${middleAndTail(work)} (bar 6 ms); load of the machine ` +
      `${loadavg()[0]?.toFixed(1) ?? ''}, of which this is about 2`,
  );
});
