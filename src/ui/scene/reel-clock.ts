/** What moves the reel: it runs only when asked, in sight, and where motion is welcome. */
export interface ReelClock {
  readonly isPlaying: boolean;
  play(): void;
  pause(): void;
}

/** A screen that was busy does not make up for it by a leap. */
const LONGEST_STEP_SECONDS = 0.1;

/**
 * A clock for an element.
 *
 * @param tick     called for each picture of the screen with the seconds gone by
 * @param changed  called when it starts or stops
 */
export function makeReelClock(
  element: HTMLElement,
  tick: (seconds: number) => void,
  changed: () => void,
): ReelClock {
  const reduced = matchMedia('(prefers-reduced-motion: reduce)');
  let isPlaying = false;
  let request = 0;
  let last: number | undefined;

  function frame(now: number): void {
    if (!isPlaying) return;
    if (last !== undefined) tick(Math.min(LONGEST_STEP_SECONDS, (now - last) / 1000));
    last = now;
    request = requestAnimationFrame(frame);
  }
  function pause(): void {
    if (!isPlaying) return;
    isPlaying = false;
    cancelAnimationFrame(request);
    changed();
  }
  function play(): void {
    if (isPlaying || reduced.matches) return;
    isPlaying = true;
    last = undefined;
    request = requestAnimationFrame(frame);
    changed();
  }
  new IntersectionObserver((entries) => {
    if (entries.some(({ isIntersecting }) => !isIntersecting)) pause();
  }).observe(element);
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) pause();
  });
  reduced.addEventListener('change', () => {
    pause();
    changed();
  });
  return {
    get isPlaying() {
      return isPlaying;
    },
    play,
    pause,
  };
}
