import Fraction from 'fraction.js';
import { quotation, type PriceEntry, type Quotation } from '../core/price-lines.ts';
import { formatMoney } from '../core/quantity/format-money.ts';
import { formatNumber } from '../core/quantity/format.ts';
import { defineWorksheet, type Answer, type ResultTable } from './types.ts';

interface ExactTerms {
  readonly runningSeconds: Fraction;
  readonly pricePerReel: Fraction;
  readonly pricePerMinute: Fraction;
  readonly fixedPrice: Fraction;
  readonly carrierPrice: Fraction;
  readonly discountPercent: Fraction;
  readonly minimumCharge: Fraction;
  readonly taxPercent: Fraction;
}

type MinuteRule = 'exact' | 'begun';

function minutesOf(reelCount: number, seconds: Fraction, rule: MinuteRule): Fraction {
  const perReel = seconds.div(60);
  return (rule === 'begun' ? perReel.ceil() : perReel).mul(reelCount);
}

function quotationOf(
  reelCount: number,
  carrierCount: number,
  rule: MinuteRule,
  exact: ExactTerms,
): Quotation {
  const entries: readonly PriceEntry[] = [
    { label: 'Reels', quantity: new Fraction(reelCount), unitPrice: exact.pricePerReel },
    {
      label: 'Minutes of film',
      quantity: minutesOf(reelCount, exact.runningSeconds, rule),
      unitPrice: exact.pricePerMinute,
    },
    {
      label: 'Discs or drives',
      quantity: new Fraction(carrierCount),
      unitPrice: exact.carrierPrice,
    },
    { label: 'Fixed part', quantity: new Fraction(1), unitPrice: exact.fixedPrice },
  ];
  return quotation(
    entries.filter(({ quantity, unitPrice }) => !quantity.mul(unitPrice).equals(0)),
    exact,
  );
}

function moneyAnswer(label: string, cents: number): Answer {
  return { label, text: formatMoney(cents), value: cents / 100, unit: '' };
}

function moneyOf(price: Fraction): string {
  const cents = price.mul(100);
  return cents.d === 1n ? formatMoney(cents.valueOf()) : formatNumber(price.valueOf(), 6);
}

function linesTable(result: Quotation, discountPercent: number, taxPercent: number): ResultTable {
  const row = (cells: readonly string[]) => ({ cells });
  const closing = (label: string, cents: number): { readonly cells: readonly string[] } =>
    row([label, '', '', formatMoney(cents)]);
  return {
    caption: 'Quotation, in your currency',
    columns: ['Item', 'Quantity', 'Price', 'Amount'],
    rows: [
      ...result.lines.map(({ label, quantity, unitPrice, cents }) =>
        row([label, formatNumber(quantity.valueOf(), 5), moneyOf(unitPrice), formatMoney(cents)]),
      ),
      closing('Sum', result.subtotalCents),
      ...(result.discountCents === 0
        ? []
        : [closing(`Discount ${formatNumber(discountPercent)} %`, -result.discountCents)]),
      ...(result.minimumExtraCents === 0
        ? []
        : [closing('Up to the minimum charge', result.minimumExtraCents)]),
      ...(taxPercent === 0
        ? []
        : [
            closing('Before tax', result.netCents),
            closing(`Tax ${formatNumber(taxPercent)} %`, result.taxCents),
          ]),
      closing('To pay', result.totalCents),
    ],
  };
}

function csvOf({ columns, rows }: ResultTable): string {
  const field = (text: string): string =>
    `"${text
      .replaceAll(/[\u00a0\u202f]/gu, '')
      .replaceAll('−', '-')
      .replaceAll('"', '""')}"`;
  return [columns, ...rows.map(({ cells }) => cells)]
    .map((cells) => cells.map(field).join(','))
    .join('\r\n');
}

const money = (label: string, fallback: string, accepted: string, help: string) =>
  ({
    kind: 'quantity',
    label,
    unit: 'money',
    minimum: 0,
    maximum: 100_000,
    default: fallback,
    accepted,
    help,
  }) as const;

export const worksheet = defineWorksheet({
  id: 'quotation',
  title: 'Quotation',
  question: 'What does this job cost, line by line?',
  chapter: 'customer/time-and-quotation',
  inputs: {
    reelCount: {
      kind: 'count',
      label: 'Reels',
      minimum: 0,
      maximum: 10_000,
      default: '12',
      accepted: '12',
      help: 'As counted on the table.',
    },
    runningSeconds: {
      kind: 'quantity',
      label: 'Running time of one reel',
      unit: 's',
      entryUnit: 'min',
      minimum: 0,
      maximum: 36_000,
      default: '3:20',
      accepted: '3:20 or 4 min',
      help: 'At its native rate. A bare number means minutes.',
    },
    pricePerReel: money(
      'Price of a reel',
      '4.00',
      '4 or 4.50',
      'For handling, whatever its length.',
    ),
    pricePerMinute: money('Price of a minute', '1.20', '1.20', 'For each minute of film.'),
    minuteRule: {
      kind: 'choice',
      label: 'Minutes are counted',
      options: { exact: 'exactly', begun: 'begun minutes of each reel' },
      default: 'exact',
      help: 'Say on the offer which of the two you use.',
    },
    carrierCount: {
      kind: 'count',
      label: 'Discs, sticks or drives',
      minimum: 0,
      maximum: 10_000,
      default: '2',
      accepted: '2',
      help: 'How many are handed over.',
    },
    carrierPrice: money('Price of each', '9.00', '9 or 9.50', 'Including writing and checking it.'),
    fixedPrice: money('Fixed part', '10.00', '10', 'Once for the job: taking in, packing, paper.'),
    discountPercent: {
      kind: 'quantity',
      label: 'Discount',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      default: '0',
      accepted: '0 or 7.5 %',
      help: 'Taken off the sum of the lines.',
    },
    minimumCharge: money('Minimum charge', '25.00', '25', 'Before tax, after the discount.'),
    taxPercent: {
      kind: 'quantity',
      label: 'Tax',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      default: '0',
      accepted: '0 or 19 %',
      help: 'On the sum before tax; 0 if you charge none. Your own tax rules decide.',
    },
  },
  model:
    'Each line is rounded to the cent, half a cent up. The discount is taken off the sum and rounded, what lacks to the minimum charge is added, tax is taken once on the whole. All sums are exact decimals, so the printed lines add up to the printed total.',
  compute({ reelCount, carrierCount, minuteRule, discountPercent, taxPercent }, exact) {
    const result = quotationOf(reelCount, carrierCount, minuteRule, exact);
    const table = linesTable(result, discountPercent, taxPercent);
    const total = formatMoney(result.totalCents);
    return {
      verdict: {
        level: 'note',
        sentence:
          result.minimumExtraCents > 0
            ? `The job comes to ${total}: the minimum charge applies.`
            : `The job comes to ${total}.`,
      },
      answers: {
        total: moneyAnswer('To pay', result.totalCents),
        net: moneyAnswer('Before tax', result.netCents),
        tax: moneyAnswer('Tax', result.taxCents),
        subtotal: moneyAnswer('Sum of the lines', result.subtotalCents),
        discount: moneyAnswer('Discount', result.discountCents),
        minimumExtra: moneyAnswer('Added to reach the minimum charge', result.minimumExtraCents),
        minutes: {
          label: 'Minutes charged',
          text: formatNumber(minutesOf(reelCount, exact.runningSeconds, minuteRule).valueOf(), 5),
          value: minutesOf(reelCount, exact.runningSeconds, minuteRule).valueOf(),
          unit: 'min',
        },
      },
      tables: [table],
      files: [{ fileName: 'quotation.csv', mediaType: 'text/csv', text: csvOf(table) }],
    };
  },
  working({ reelCount, carrierCount, minuteRule }, { answers }, exact) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { lines } = quotationOf(reelCount, carrierCount, minuteRule, exact);
    return [
      {
        words: 'Minutes of all reels.',
        sum: `${reelCount} × ${formatNumber(exact.runningSeconds.valueOf() / 60, 5)} min${minuteRule === 'begun' ? ', begun minutes whole' : ''} = ${text('minutes')}`,
      },
      ...lines.map(({ label, quantity, unitPrice, cents }) => ({
        words: `${label}: quantity times price, rounded to the cent.`,
        sum: `${formatNumber(quantity.valueOf(), 5)} × ${moneyOf(unitPrice)} = ${formatMoney(cents)}`,
      })),
      {
        words: 'Sum less discount, plus what lacks to the minimum charge.',
        sum: `${text('subtotal')} − ${text('discount')} + ${text('minimumExtra')} = ${text('net')}`,
      },
      { words: 'Plus tax.', sum: `${text('net')} + ${text('tax')} = ${text('total')}` },
    ];
  },
  cautions: [
    'Quote only after the reels were opened: length, splices and smell decide the price.',
    'Tax and what an offer binds you to differ from country to country; ask those who know.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
