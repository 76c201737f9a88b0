import { isInTurn, turn } from './turn.ts';

/** How much of a long run the one test command takes, and how much `npm run test:fuzz` does. */
export interface SampleSize {
  /** What is counted. */
  readonly what: string;
  readonly command: number;
  readonly longRun: number;
}

/** Every run over drawn or spread cases that the test command shortens. Both runs start at the same case. */
export const SAMPLES = {
  entries: { what: 'random entries for each worksheet', command: 100, longRun: 10_000 },
  said: {
    what: 'random entries of each worksheet for levels that no example reaches',
    command: 60,
    longRun: 1000,
  },
  corners: { what: 'corners of the ranges of each worksheet', command: 48, longRun: 2048 },
  advice: { what: 'benches whose advice is fed back', command: 600, longRun: 10_000 },
  gates: { what: 'judged recordings of an empty gate', command: 2, longRun: 200 },
  simulated: { what: 'settings advised, and simulated', command: 60, longRun: 160 },
  found: { what: 'benches whose found settings are fed back', command: 200, longRun: 600 },
  cameras: { what: 'kinds of camera before an empty gate', command: 3, longRun: 13 },
  refusedRates: { what: 'camera rates of refused recordings', command: 1, longRun: 4 },
  taken: { what: 'random entries whose texts are taken away', command: 8, longRun: 40 },
  untold: { what: 'clips with a stretch that is not told', command: 1, longRun: 3 },
  counted: { what: 'clips whose bridged film frames are counted', command: 1, longRun: 4 },
  stands: { what: 'clips in which film stands', command: 1, longRun: 12 },
  chains: { what: 'recordings taken through the whole chain of files', command: 2, longRun: 4 },
  timelines: {
    what: 'pairs of native rate and timeline run through ffmpeg',
    command: 2,
    longRun: 6,
  },
  clips: { what: 'film clips off a simulated projector', command: 2, longRun: 54 },
} as const satisfies Readonly<Record<string, SampleSize>>;

/** True in `npm run test:fuzz`, which takes these samples whole. */
export const isLongRun = process.env['LONG_RUN'] === '1';

/** How much of a run is taken now. */
export function sizeOf(name: keyof typeof SAMPLES): number {
  const { command, longRun } = SAMPLES[name];
  return isLongRun ? longRun : command;
}

/**
 * As many of these cases as are taken now, spread over all of them; which ones is the turn of the commit.
 *
 * @throws {Error} where the table above has another count of them all
 */
export function someOf<Case>(cases: readonly Case[], name: keyof typeof SAMPLES): readonly Case[] {
  const { longRun } = SAMPLES[name];
  if (cases.length !== longRun) throw new Error(`${name}: ${cases.length} cases, not ${longRun}`);
  const taken = sizeOf(name);
  return Array.from({ length: taken }, (_, at) => {
    const spread = Math.floor((at * longRun) / taken);
    return cases[(spread + turn) % longRun]!;
  });
}

/**
 * Whether a case that takes turns with others is asked: one of so many in the test command, every one in the
 * long run and where texts are approved.
 */
export function isAsked(index: number, turns: number): boolean {
  return isLongRun || process.env['APPROVE'] !== undefined || isInTurn(index, turns);
}

/** Of cases that ask the same those that are asked. */
export function inTurn<Case>(cases: readonly Case[], turns: number): readonly Case[] {
  return cases.filter((_, index) => isAsked(index, turns));
}

/** One line for each, as the test command prints them. */
export function sampleLines(): readonly string[] {
  return [
    ...Object.values(SAMPLES).map(
      ({ what, command, longRun }) =>
        `${what}: ${command} here, ${longRun.toLocaleString('en')} in npm run test:fuzz`,
    ),
    `what takes turns: turn ${turn}, by the commit (TURN=${turn} asks the same again)`,
  ];
}
