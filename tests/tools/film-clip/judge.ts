import type { TrueFrame } from './camera.ts';

/** A line of a keep list, as far as judging needs it. */
export interface Listed {
  readonly filmFrame: number;
  readonly cameraFrame: number;
  readonly status: string;
}

/** A row counts as holding one film frame when no more than this share comes from another. */
const PURE = 0.98;

/** What a keep list did to the film. */
export interface Judgement {
  readonly filmFrames: number;
  readonly lost: number;
  readonly doubled: number;
  /** Film frames for which the camera took a whole frame, and those that got one. */
  readonly possible: number;
  readonly whole: number;
  /** Lines that call a frame whole that is not, or place it in a film frame that the count misses. */
  readonly unmarkedErrors: number;
}

/** Judges a list by what each camera frame truly holds. */
export function judge(list: readonly Listed[], truth: readonly TrueFrame[]): Judgement {
  const mains = list.map(({ cameraFrame }) => truth[cameraFrame]!.main);
  const times = new Map<number, number>();
  for (const main of mains) times.set(main, (times.get(main) ?? 0) + 1);
  let lost = 0;
  let doubled = 0;
  for (let film = mains[0]!; film <= mains.at(-1)!; film += 1) {
    const count = times.get(film) ?? 0;
    if (count === 0) lost += 1;
    if (count > 1) doubled += 1;
  }
  const can = new Set(truth.filter(({ leastShare }) => leastShare >= PURE).map(({ main }) => main));
  const offset = mains[0]! - list[0]!.filmFrame;
  let possible = 0;
  let whole = 0;
  let unmarkedErrors = 0;
  for (const { filmFrame, cameraFrame, status } of list) {
    const { main, leastShare } = truth[cameraFrame]!;
    if (can.has(main)) possible += 1;
    if (can.has(main) && leastShare >= PURE) whole += 1;
    const isWrong = main - filmFrame !== offset;
    const isMarked = status === 'bridged';
    if ((isWrong && !isMarked) || (status === 'whole' && leastShare < PURE)) unmarkedErrors += 1;
  }
  return { filmFrames: list.length, lost, doubled, possible, whole, unmarkedErrors };
}
