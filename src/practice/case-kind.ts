// What a kind of case is: the shape of an entry in content/cases.yaml.

import type { Entries } from '../worksheets/machine/evaluate.ts';

/** 1: one finding decides; 2: several do; 3: something is missing or does not go together. */
export type CaseLevel = 1 | 2 | 3;

export const CASE_LEVELS: readonly CaseLevel[] = [1, 2, 3];

/** Entries to draw from for one level. A text `from 16 to 20 by 0.5` stands for all of those numbers. */
export interface LevelDraw {
  /** Sets of entries that belong together; one is drawn. */
  readonly stories?: readonly Entries[] | undefined;
  /** Inputs drawn each for itself. */
  readonly vary?: Readonly<Record<string, readonly string[]>> | undefined;
  /** Findings put over the story: from `least` to `most` of them. */
  readonly changes?:
    | {
        readonly least: number;
        readonly most: number;
        readonly of: Readonly<Record<string, readonly string[]>>;
      }
    | undefined;
}

/** Something told that is no input of the sheet: the stick that the customer brings. */
export interface CaseFact {
  readonly label: string;
  /** Unit of a fact that is measured; a fact without one is words. */
  readonly unit?: string | undefined;
  readonly texts: readonly string[];
}

/**
 * What has to be so for a choice to be right, by `answer.KEY`, `level.KEY` (the level of an answer),
 * `outcome.level`, `outcome.sentence`, `entry.KEY` or `fact.KEY`. The text is met exactly, and a star
 * in it stands for any stretch; `<= 50` and `> fact.stick` compare the value.
 */
export type CaseCondition = Readonly<Record<string, string | readonly string[]>>;

/** A choice in words. Any one of its conditions makes it right; without conditions it never is. */
export interface CaseChoice {
  readonly text: string;
  readonly when: readonly CaseCondition[];
  /** What a trainee who chose it in vain should know. */
  readonly needs: string;
}

/** A likely slip of somebody who works it out: the same sheet with other entries, or another answer. */
export interface CaseSlip {
  readonly words: string;
  readonly answer?: string | undefined;
  readonly entries?: Entries | undefined;
}

export interface CaseKind {
  readonly id: string;
  readonly title: string;
  /** Part of the book. */
  readonly part: 'reel' | 'gate' | 'file' | 'customer';
  /** Sheet that decides. */
  readonly worksheet: string;
  /** What has happened, in a sentence or two. */
  readonly scene: string;
  readonly question: string;
  /** Inputs that are told, in this order; by default all that are drawn, in the order of the sheet. */
  readonly told?: readonly string[] | undefined;
  /** Answers of the sheet that are told as seen: how fast the recording pulses. */
  readonly seen?: readonly string[] | undefined;
  /** Picture of the sheet that stands beside what is told. */
  readonly picture?: string | undefined;
  readonly facts?: Readonly<Record<string, CaseFact>> | undefined;
  readonly levels: readonly [LevelDraw, LevelDraw, LevelDraw];
  /** Choices in words, of which the sheet makes one right. */
  readonly choices?: readonly CaseChoice[] | undefined;
  /** Choices that are figures: the sheet's answer, and what the slips come to. */
  readonly figure?: { readonly answer: string; readonly slips: readonly CaseSlip[] } | undefined;
  /** Choices that are settings, each judged by the sheet: just one must be good. */
  readonly settings?:
    | { readonly keys: readonly string[]; readonly of: readonly Entries[] }
    | undefined;
  /** Most choices shown; some kinds know more than fit on a phone. */
  readonly shown: number;
}
