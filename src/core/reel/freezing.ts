import type { SourceStatus } from './gauges/gauge.ts';

/** One step of freezing a film or taking it out again. */
export interface FreezingStep {
  readonly what: string;
  readonly status: SourceStatus;
  readonly sources: readonly string[];
}

/**
 * How a film is packed, cooled, kept and thawed. A freezer holds the temperature and not the
 * humidity, so the bags decide.
 *
 * @source film-forever-8, filmcare-low-temperature, mccormick-goodhart-cmi, vitale-cold-storage
 * @source common practice, no source (where a step says so)
 */
export const FREEZING_STEPS: readonly FreezingStep[] = [
  {
    what: 'Ask a specialist first. Copy first where you can. Never nitrate.',
    status: 'practice',
    sources: ['common-practice'],
  },
  {
    what: 'Let film and packing rest a day in a dry room, at 30 to 40 % relative humidity.',
    status: 'seen',
    sources: ['film-forever-8', 'common-practice'],
  },
  {
    what: 'Take the acid strip out. Put the roll in a vented can, labelled with date and acid level.',
    status: 'practice',
    sources: ['common-practice'],
  },
  {
    what: 'Seal the can in a moisture-proof bag, air pressed out, with a humidity card that can be read from outside.',
    status: 'seen',
    sources: ['film-forever-8', 'mccormick-goodhart-cmi'],
  },
  {
    what: 'Put that into a second bag, with a second card.',
    status: 'practice',
    sources: ['mccormick-goodhart-cmi', 'common-practice'],
  },
  {
    what: 'Cool it in stages: a day in the refrigerator, then a frost-free freezer at about −18 °C, half full, and never one used for food.',
    status: 'seen',
    sources: ['film-forever-8', 'filmcare-low-temperature', 'common-practice'],
  },
  {
    what: 'Read the cards once a year; if the inner one shows damp, pack it again.',
    status: 'practice',
    sources: ['mccormick-goodhart-cmi', 'common-practice'],
  },
  {
    what: 'Thaw it closed: still sealed, a day in the refrigerator, then in the room, a night for a small roll, a day for 400 ft. Open it only then.',
    status: 'seen',
    sources: ['vitale-cold-storage', 'film-laboratory-storage', 'common-practice'],
  },
];
