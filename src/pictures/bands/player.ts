import { useEffect, useState } from 'preact/hooks';
import { frameAfter } from './phase.ts';

export const SLOW_SPEED = 1 / 4;

/** What moves the bands: state for the drawing and the actions of its buttons. */
export interface Player {
  readonly isMotionReduced: boolean;
  readonly isPlaying: boolean;
  readonly isSlow: boolean;
  readonly speed: number;
  readonly frameNumber: number;
  readonly togglePlay: () => void;
  readonly toggleSlow: () => void;
  readonly step: () => void;
}

/** True once the page is live and the reader's device asks for reduced motion. */
function useReducedMotion(): boolean {
  const [isReduced, setReduced] = useState(false);
  useEffect(() => {
    const query = globalThis.matchMedia('(prefers-reduced-motion: reduce)');
    const read = (): void => {
      setReduced(query.matches);
    };
    read();
    query.addEventListener('change', read);
    return () => {
      query.removeEventListener('change', read);
    };
  }, []);
  return isReduced;
}

/** Plays camera frames on the clock of the screen; starts still and stays still until asked. */
export function usePlayer(cameraFps: number): Player {
  const [wantsPlay, setWantsPlay] = useState(false);
  const [isSlow, setSlow] = useState(false);
  const [frameNumber, setFrameNumber] = useState(0);
  const isMotionReduced = useReducedMotion();
  const isPlaying = wantsPlay && !isMotionReduced;
  const speed = isSlow ? SLOW_SPEED : 1;

  useEffect(() => {
    if (!isPlaying) return undefined;
    let startedAt: number | undefined;
    const firstFrame = frameNumber;
    const draw = (now: number): void => {
      startedAt ??= now;
      setFrameNumber(firstFrame + frameAfter((now - startedAt) / 1000, cameraFps, speed));
      request = requestAnimationFrame(draw);
    };
    let request = requestAnimationFrame(draw);
    return () => {
      cancelAnimationFrame(request);
    };
    // The frame reached is the start of the next stretch, not a reason to start again.
  }, [isPlaying, speed, cameraFps]);

  return {
    isMotionReduced,
    isPlaying,
    isSlow,
    speed,
    frameNumber,
    togglePlay: () => {
      setWantsPlay(!isPlaying);
    },
    toggleSlow: () => {
      setSlow(!isSlow);
    },
    step: () => {
      setWantsPlay(false);
      setFrameNumber(frameNumber + 1);
    },
  };
}
