import type { Outcome, VerdictLevel } from '../../worksheets/machine/types.ts';

/** A verdict cut in two: what is, and what to set. */
export interface FrontVerdict {
  readonly level: VerdictLevel;
  /** First sentence. */
  readonly state: string;
  /** The sentence that says what to set, without its full stop; undefined where there is none. */
  readonly setting: string | undefined;
}

/** The verdict of the flash match for the front page, in the sheet's own words. */
export function frontVerdict({ verdict }: Outcome): FrontVerdict {
  const [state = '', second] = verdict.sentence.split(/(?<=\.)\s+(?=[A-Z])/u);
  const isSetting = second?.startsWith('Set ') === true;
  return {
    level: verdict.level,
    state,
    setting: isSetting ? second.replace(/\.$/u, '') : undefined,
  };
}
