/** How much of a long run the one test command takes, and how much `npm run test:fuzz` does. */
export interface SampleSize {
  /** What is counted. */
  readonly what: string;
  readonly command: number;
  readonly longRun: number;
}

/** Every run over drawn or spread cases that the test command shortens. Both runs start at the same seed. */
export const SAMPLES = {
  entries: { what: 'random entries for each worksheet', command: 300, longRun: 10_000 },
  corners: { what: 'corners of the ranges of each worksheet', command: 256, longRun: 2048 },
  advice: { what: 'benches whose advice is fed back', command: 1500, longRun: 10_000 },
  gates: { what: 'judged recordings of an empty gate', command: 8, longRun: 200 },
  clips: { what: 'film clips off a simulated projector', command: 3, longRun: 54 },
} as const satisfies Readonly<Record<string, SampleSize>>;

/** One line for each, as the test command prints them. */
export function sampleLines(): readonly string[] {
  return Object.values(SAMPLES).map(
    ({ what, command, longRun }) =>
      `${what}: ${command} here, ${longRun.toLocaleString('en')} in npm run test:fuzz`,
  );
}
