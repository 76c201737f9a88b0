// Cards for judgement carry the rule and never a case: a filled-in verdict on the wall would be read as
// the verdict on the reel in hand. Their tables come from the core.

import { ACID_LEVELS } from '../../core/reel/acid-level.ts';
import { GAUGE_IDS, GAUGES } from '../../core/reel/gauges.ts';
import { formatNumber, formatQuantity } from '../../quantity/format.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  DOUBTFUL_SHRINKAGE_PERCENT,
  HIGHEST_ARCHIVE_CLASS_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
  MOST_POSSIBLE_SHRINKAGE_PERCENT,
} from '../../core/reel/shrinkage-class.ts';
import { pitchToleranceMillimetres, shrunkLengthMillimetres } from '../../core/reel/shrinkage.ts';
import { CLIMATE_ROWS, type StorageTerm } from '../../core/reel/storage-climate.ts';
import { triageRuleLines } from '../../core/reel/triage-card.ts';
import { POSITION_NAMES } from '../reel/perforation-words.ts';
import { hedge } from '../machine/provenance-words.ts';
import { VERDICT_NAMES } from '../reel/condition-triage/words.ts';
import type { ResultTable } from '../machine/types.ts';

/** The rule of a worksheet for the wall: how to look, the limits, what to do. */
export interface RuleCard {
  /** How to come to a finding, in one or two sentences. */
  readonly lead: string;
  readonly tables: readonly ResultTable[];
  readonly caution: string;
}

const percent = (value: number): string => formatQuantity(value, 'percent', 2);
/** Names and measures stay on one line of a narrow card. */
const unbroken = (text: string): string =>
  text.replaceAll(/(\d|Super) (?=mm\b|%|8\b|16\b)/gu, '$1\u00a0');
const bare = (value: number, digits: number): string => formatNumber(value, digits);

const triageCard: RuleCard = {
  lead: 'Each finding has its answer, and the most cautious one holds. “Not looked at” is a finding.',
  tables: [
    {
      caption: 'From the gravest down',
      columns: ['Answer', 'when any of these is so'],
      rows: triageRuleLines().map(({ verdict, findings }) => ({
        cells: [VERDICT_NAMES[verdict], unbroken(findings.join('; '))],
      })),
    },
  ],
  caution:
    'Polyester is let off the acid test and the limits of shrinkage, nothing else. Striped film is cleaned dry only. When your hand says stop, stop.',
};

const acidCard: RuleCard = {
  lead: 'Strip on the roll, can closed, one day at room temperature, compare at once in daylight. Between two colours take the higher. Not tested is not level 0.',
  tables: [
    {
      caption: 'Levels of the strip',
      columns: ['Level', 'Condition', 'What to do'],
      rows: ACID_LEVELS.map(({ level, condition, action }) => ({
        cells: [bare(level, 2), condition, action.replace(', packed as below', '')],
      })),
    },
  ],
  caution:
    'Open sour cans outdoors or under extraction, in nitrile gloves. Freeze only in two sealed bags with a humidity card, a day in the refrigerator on the way in and out, and open the bag only when it is warm. Nothing that may be nitrate.',
};

const least = percent(LEAST_MEANINGFUL_SHRINKAGE_PERCENT);
const limit = percent(CLAW_LIMIT_SHRINKAGE_PERCENT);
const highest = percent(HIGHEST_ARCHIVE_CLASS_PERCENT);
const most = percent(MOST_POSSIBLE_SHRINKAGE_PERCENT);

const shrinkageSpans: readonly (readonly [string, string])[] = [
  [`below −${least}, or ${most} and more`, 'a misreading: count again, check the gauge'],
  [`below ${least}`, 'no more than new film can differ'],
  [`${least} to below ${limit}`, 'slowly, loops watched, by cool light'],
  [`${limit} to below ${highest}`, 'not on claws or sprockets'],
  [`${highest} to below ${most}`, 'leave it closed, ask a specialist'],
  [`above ${percent(DOUBTFUL_SHRINKAGE_PERCENT)}`, 'the same, and count again'],
];

const smallGauges = GAUGE_IDS.filter((id) => id !== '35mm');

const shrinkageCard: RuleCard = {
  lead: 'Past the leader, over 100 pitches: first hole 0, last hole 100. At head, middle and end. The largest upper bound counts: what you read, plus the error of your rule and of new film.',
  tables: [
    {
      caption: '100 pitches of the long pitch, mm',
      columns: ['Gauge', 'New', `At ${limit}`, 'New may differ by'],
      rows: smallGauges.map((id) => {
        const length = GAUGES[id].pitch.long.hundredPitches.millimetres;
        const shortest = shrunkLengthMillimetres(length, CLAW_LIMIT_SHRINKAGE_PERCENT);
        return {
          cells: [
            GAUGES[id].name,
            bare(length, 5),
            bare(shortest, 5),
            `± ${bare(pitchToleranceMillimetres(id, 100), 2)}`,
          ],
        };
      }),
    },
    {
      caption: 'Acetate, upper bound',
      columns: ['Shrinkage', 'What to do'],
      rows: shrinkageSpans.map((cells) => ({ cells })),
    },
  ],
  caution:
    'Do not pull or flatten brittle film to measure it. The limits are practice of the trade.',
};

const gaugeCard: RuleCard = {
  lead: 'Past the leader: width across, place of the holes, and ten pitches from hole 0 to hole 10, in mm. New film; old film is up to 3 % shorter.',
  tables: [
    {
      caption: 'Gauges of the book',
      columns: ['Gauge', 'Wide', '10 pitches', 'Hole high', 'Holes'],
      rows: [
        ...GAUGE_IDS.map((id) => {
          const { name, filmWidth, pitch, perforation } = GAUGES[id];
          return {
            cells: [
              name,
              `${hedge(filmWidth)}${bare(filmWidth.millimetres, 4)}`,
              bare(pitch.long.hundredPitches.millimetres / 10, 4),
              `${hedge(perforation.height)}${bare(perforation.height.millimetres, 3)}`,
              perforation.positions.map((position) => POSITION_NAMES[position]).join('; or '),
            ],
          };
        }),
        {
          cells: [
            'double 8 not slit',
            bare(GAUGES['16mm'].filmWidth.millimetres, 4),
            bare(GAUGES['8mm-type-r'].pitch.long.hundredPitches.millimetres / 10, 4),
            bare(GAUGES['8mm-type-r'].perforation.height.millimetres, 3),
            'along both edges, twice as many as 16 mm',
          ],
        },
      ],
    },
  ],
  caution:
    '35 mm, or a film that fits nothing: it may be nitrate. Close the can, no lamp, no flame, ask an archive. Never thread a film to find out what it is.',
};

const TERM_WORDS: Readonly<Record<StorageTerm, string>> = {
  'active-use': 'in use',
  medium: 'ten years',
  extended: 'as long as can be',
};

const storageCard: RuleCard = {
  lead: 'Warmest temperature of the year and relative humidity where the film lies. The colder line is the better one.',
  tables: [
    {
      caption: 'Published climates',
      columns: ['To keep', 'Film', 'At most', 'Humidity'],
      rows: CLIMATE_ROWS.map(
        ({ term, films, warmestCelsius, driestPercent, dampestPercent, status }) => ({
          cells: [
            TERM_WORDS[term],
            films.length > 2 ? 'all' : films.map((film) => film.replaceAll('-', ' ')).join(', '),
            `${formatQuantity(warmestCelsius, 'celsius', 3)}${status === 'memory' ? '\u00a0*' : ''}`,
            unbroken(`${driestPercent}\u00a0to\u00a0${dampestPercent} %`),
          ],
        }),
      ),
    },
  ],
  caution:
    '* from memory. For acetate all this is the optimistic reading, and striped acetate sours sooner: test with strips. Bring cold film up closed, and open it warm.',
};

/** Rule cards by the id of their worksheet; every other worksheet has a card with numbers. */
export const ruleCards: ReadonlyMap<string, RuleCard> = new Map([
  ['condition-triage', triageCard],
  ['acid-level', acidCard],
  ['shrinkage', shrinkageCard],
  ['gauge-finder', gaugeCard],
  ['storage-climate', storageCard],
]);
