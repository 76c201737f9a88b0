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
 * @source filmforever-storage, filmcare-low-temperature, mccormick-goodhart, vitale-cold-storage
 * @source common practice, no source (where a step says so)
 */
export const FREEZING_STEPS: readonly FreezingStep[] = [
  {
    what: 'Ask a specialist first, and copy before you freeze where you can. Film that may be nitrate is not frozen here.',
    status: 'practice',
    sources: ['common-practice'],
  },
  {
    what: 'Let film and packing lie together at room temperature in dry air, 30 to 40 % relative humidity, for a day; the day is practice.',
    status: 'seen',
    sources: ['filmforever-storage', 'common-practice'],
  },
  {
    what: 'Take the acid strip out. Put the roll in a vented can or a card box, label it with number, date and acid level.',
    status: 'practice',
    sources: ['common-practice'],
  },
  {
    what: 'Seal it in a moisture-proof freezer bag with a humidity card inside that can be read. Fill the bag and press the air out: loose air moves moisture while it warms.',
    status: 'seen',
    sources: ['filmforever-storage', 'mccormick-goodhart'],
  },
  {
    what: 'Put that bag into a second one, with a second card between them.',
    status: 'practice',
    sources: ['mccormick-goodhart', 'common-practice'],
  },
  {
    what: 'Cool it in stages, against dew: a day in the refrigerator, then an upright frost-free freezer at about −18 °C, filled to half and not the one for food.',
    status: 'seen',
    sources: ['filmforever-storage', 'filmcare-low-temperature', 'common-practice'],
  },
  {
    what: 'Read the cards once a year. If the inner one shows damp, pack the film anew. In a power cut leave the door shut.',
    status: 'practice',
    sources: ['mccormick-goodhart', 'common-practice'],
  },
  {
    what: 'Thaw it closed: still sealed, a day in the refrigerator, then in the room until it is no longer cold, overnight for a small roll, a day for 400 ft. Open it only then; the times are practice.',
    status: 'seen',
    sources: ['vitale-cold-storage', 'film-laboratory-storage', 'common-practice'],
  },
];
