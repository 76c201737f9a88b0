import { describe, expect, test } from 'vitest';
import { ACID_LEVELS } from '../../src/core/reel/acid-level.ts';
import { GAUGE_IDS, GAUGES } from '../../src/core/reel/gauges.ts';
import { worksheet as triage } from '../../src/worksheets/reel/condition-triage/worksheet.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { ruleCards, type RuleCard } from '../../src/worksheets/bench/rule-cards.ts';
import { VERDICT_NAMES } from '../../src/worksheets/reel/condition-triage/words.ts';

const cardOf = (id: string): RuleCard => {
  const card = ruleCards.get(id);
  if (card === undefined) throw new Error(`no rule card for ${id}`);
  return card;
};
const plain = (text: string): string => text.replaceAll(/\s/gu, ' ');
const textOf = (card: RuleCard): string =>
  plain(JSON.stringify([card.lead, card.tables, card.caution]));

describe('cards for judgement', () => {
  test('are those that hang where reels come in and are kept', () => {
    expect([...ruleCards.keys()].sort()).toEqual([
      'acid-level',
      'condition-triage',
      'gauge-finder',
      'shrinkage',
      'storage-climate',
    ]);
    for (const id of ruleCards.keys()) expect(worksheets.has(id)).toBe(true);
  });

  test.each([...ruleCards])('%s prints tables and no answer to a case', (id, card) => {
    expect(card.tables.length).toBeGreaterThan(0);
    for (const { rows, columns } of card.tables) {
      expect(rows.length).toBeGreaterThan(2);
      for (const { cells } of rows) expect(cells).toHaveLength(columns.length);
    }
    const worksheet = worksheets.get(id);
    if (worksheet === undefined) return;
    // Neither the sentence of the opening nor an answer of the sheet such as “nitrate: not suspected”.
    const { outcome } = evaluate(worksheet, fillEntries(worksheet.inputs, {}));
    expect(textOf(card)).not.toContain(plain(outcome?.verdict.sentence ?? 'none'));
    expect(textOf(card)).not.toMatch(/not suspected|nothing speaks for it|Points not looked at/u);
  });

  test('the triage card has every answer, gravest first, with what leads to it', () => {
    const [table] = cardOf('condition-triage').tables;
    expect(table?.rows.map(({ cells }) => cells[0])).toEqual([
      VERDICT_NAMES['do-not-open'],
      VERDICT_NAMES['not-here'],
      VERDICT_NAMES['not-yet'],
      VERDICT_NAMES['run-slowly'],
      VERDICT_NAMES.run,
    ]);
  });

  // Each phrase of the card, tried on the sheet with everything else in good order.
  test.each([
    ['acid level 3', { acidLevel: 'level-3' }],
    ['furry or damp mould', { mould: 'active' }],
    ['turns that stick', { deposit: 'sticky' }],
    ['brown powder, bubbles or drops', { deposit: 'brown-powder' }],
    ['a gauge that fits nothing', { gauge: 'other' }],
    ['shrinkage of 2.5 % or more', { shrinkagePercent: '2.5' }],
    ['shrinkage of 0.8 % or more', { shrinkagePercent: '0.8' }],
    ['Super 16', { gauge: 'super-16' }],
    ['35 mm', { gauge: '35mm', base: 'polyester' }],
    ['acid level 2', { acidLevel: 'level-2' }],
    ['cracks when bent', { brittleness: 'cracks' }],
    ['many torn holes', { perforations: 'many' }],
    ['strongly warped or curled', { warp: 'strong' }],
    ['white powder or crystals', { deposit: 'white-powder' }],
    ['a stripe that lifts', { stripe: 'lifting' }],
    ['anything but the stripe not looked at, tried, tested or measured', { mould: 'not-noted' }],
    ['splices coming apart', { splices: 'open' }],
    ['a shrinkage or a year that cannot be: look again', { shrinkagePercent: '-2' }],
    ['shrinkage from 0.3 % to below 0.8 %', { shrinkagePercent: '0.3' }],
    ['base unknown after the look', { base: 'unknown' }],
    ['acid level 1, or between 0 and 1', { acidLevel: 'between-0-and-1' }],
    ['acid level 1.5: copy it now', { acidLevel: 'level-1.5' }],
    ['vinegar, with the acid tested', { smell: 'vinegar' }],
    ['stiff', { brittleness: 'stiff' }],
    ['dry traces of mould: cleaned off first', { mould: 'dry-traces' }],
    ['a few torn holes: mended first', { perforations: 'few' }],
    ['doubtful splices: remade first', { splices: 'doubtful' }],
    ['slightly warped', { warp: 'slight' }],
    ['everything looked at, and none of the above', {}],
  ])('“%s” on the card is what the sheet says', (finding, changes) => {
    const row = cardOf('condition-triage').tables[0]?.rows.find(({ cells }) =>
      plain(cells[1] ?? '')
        .split('; ')
        .includes(finding),
    );
    const sound = {
      base: 'acetate',
      gauge: 'super-8',
      year: '1974',
      shrinkagePercent: '0.1',
      acidLevel: 'level-0',
      smell: 'none',
      deposit: 'none',
      mould: 'none',
      warp: 'flat',
      brittleness: 'supple',
      perforations: 'none',
      splices: 'sound',
      stripe: 'none',
    };
    const { outcome } = evaluate(triage, { ...sound, ...changes });
    expect(row?.cells[0]).toBe(outcome?.answers['verdict']?.text);
  });

  test('the acid card has every published level and what to do', () => {
    const rows = cardOf('acid-level').tables[0]?.rows ?? [];
    expect(rows.map(({ cells }) => cells[0])).toEqual(
      ACID_LEVELS.map(({ level }) => String(level)),
    );
    expect(cardOf('acid-level').caution).toContain('humidity card');
    expect(cardOf('acid-level').lead).toContain('Not tested is not level 0');
  });

  // SMPTE 149-2004 and ASA Z22.5-1947 print 423.42 mm and 30.000 in for 100 pitches.
  test('the shrinkage card has new length and limit of each gauge', () => {
    const rows = cardOf('shrinkage').tables[0]?.rows.map(({ cells }) => cells.slice(0, 3));
    expect(rows).toContainEqual(['Super 8', '423.42', '420.03']);
    expect(rows).toContainEqual(['16 mm', '762', '755.9']);
  });

  test('the gauge card tells every gauge of the book apart by width, pitch and holes', () => {
    const rows = cardOf('gauge-finder').tables[0]?.rows.map(({ cells }) => cells) ?? [];
    expect(rows.map(([name]) => name)).toEqual([
      ...GAUGE_IDS.map((id) => GAUGES[id].name),
      'double 8 not slit',
    ]);
    // Super 16 has the film of 16 mm; the picture tells it.
    const marks = rows.map(([, ...cells]) => cells.join(' '));
    expect(new Set(marks).size).toBe(rows.length);
    expect(cardOf('gauge-finder').caution).toContain('nitrate');
  });
});
