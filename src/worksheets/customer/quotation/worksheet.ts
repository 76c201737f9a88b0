import Fraction from 'fraction.js';
import { exactStepByRule } from '../../../core/reel/film-length.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { quotation, type PriceEntry, type Quotation } from '../../../core/customer/price-lines.ts';
import { formatMoney } from '../../../quantity/format-money.ts';
import { formatDuration, formatNumber } from '../../../quantity/format.ts';
import { durationAnswer } from '../../machine/labelled-answers.ts';
import { nativeFpsInput } from '../../machine/film-inputs.ts';
import {
  carrierPriceInput,
  fixedPriceInput,
  minimumChargeInput,
  minuteRuleInput,
  pricePerMinuteInput,
  pricePerReelInput,
  reelCountInput,
  reelGaugeInput,
  reelLengthInput,
  taxPercentInput,
} from '../job-inputs.ts';
import { defineWorksheet, type Answer, type ResultTable } from '../../machine/types.ts';

interface Reels {
  readonly reelCount: number;
  readonly gauge: GaugeId;
  readonly runningSeconds: number | undefined;
  readonly minuteRule: MinuteRule;
  readonly carrierCount: number;
}

interface ExactTerms {
  readonly lengthMetres: Fraction;
  readonly nativeFps: Fraction;
  readonly pricePerReel: Fraction;
  readonly pricePerMinute: Fraction;
  readonly fixedPrice: Fraction;
  readonly carrierPrice: Fraction;
  readonly discountPercent: Fraction;
  readonly minimumCharge: Fraction;
  readonly taxPercent: Fraction;
}

type MinuteRule = 'exact' | 'begun';

/** Running time of one reel at its native rate, as typed or from its length, s. */
function reelSeconds({ gauge, runningSeconds }: Reels, exact: ExactTerms): Fraction {
  if (runningSeconds !== undefined) return new Fraction(runningSeconds);
  const frames = exact.lengthMetres.mul(1000).div(exactStepByRule(gauge, 'frames-per-foot'));
  return frames.div(exact.nativeFps);
}

/** Minutes charged for all reels, to the hundredth: what is printed is what is multiplied. */
function minutesOf(reels: Reels, exact: ExactTerms): Fraction {
  const perReel = reelSeconds(reels, exact).div(60);
  const charged = reels.minuteRule === 'begun' ? perReel.ceil() : perReel;
  return charged.mul(reels.reelCount).round(2);
}

function quotationOf(reels: Reels, exact: ExactTerms): Quotation {
  const entries: readonly PriceEntry[] = [
    { label: 'Reels', quantity: new Fraction(reels.reelCount), unitPrice: exact.pricePerReel },
    {
      label: 'Minutes of film',
      quantity: minutesOf(reels, exact),
      unitPrice: exact.pricePerMinute,
    },
    {
      label: 'Discs, sticks or drives',
      quantity: new Fraction(reels.carrierCount),
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
        row([label, formatNumber(quantity.valueOf(), 7), moneyOf(unitPrice), formatMoney(cents)]),
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

export const worksheet = defineWorksheet({
  id: 'quotation',
  title: 'Quotation',
  question: 'What does this job cost, line by line?',
  chapter: 'customer/time-and-quotation',
  inputs: {
    reelCount: reelCountInput,
    gauge: reelGaugeInput,
    lengthMetres: reelLengthInput,
    nativeFps: nativeFpsInput,
    runningSeconds: {
      kind: 'optional-quantity',
      label: 'Running time of one reel',
      unit: 's',
      entryUnit: 'min',
      minimum: 0,
      maximum: 36_000,
      default: '',
      accepted: '3:20 or 4 min',
      help: 'At its native rate, if you know it. Empty: from gauge, length and native rate. A bare number means minutes.',
    },
    pricePerReel: pricePerReelInput,
    pricePerMinute: pricePerMinuteInput,
    minuteRule: minuteRuleInput,
    carrierCount: {
      kind: 'count',
      label: 'Discs, sticks or drives',
      minimum: 0,
      maximum: 10_000,
      default: '1',
      accepted: '1 or 2',
      help: 'How many are handed over. A file to keep is large: the sheet on options tells how large.',
    },
    carrierPrice: carrierPriceInput,
    fixedPrice: fixedPriceInput,
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
    minimumCharge: minimumChargeInput,
    taxPercent: taxPercentInput,
  },
  model:
    'Running time from the length by the foot and the native rate, unless it is typed; minutes to the hundredth. Each line is rounded to the cent, half a cent up. The discount is taken off the sum and rounded, what is missing to the minimum charge is added, tax is taken once on the whole. All sums are exact decimals, so the printed lines add up to the printed total.',
  compute(reels, exact) {
    const { discountPercent, taxPercent } = reels;
    const result = quotationOf(reels, exact);
    const minutes = minutesOf(reels, exact).valueOf();
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
          text: formatNumber(minutes, 7),
          value: minutes,
          unit: 'min',
        },
        reelSeconds: durationAnswer('One reel runs', reelSeconds(reels, exact).valueOf()),
      },
      tables: [table],
      files: [{ fileName: 'quotation.csv', mediaType: 'text/csv', text: csvOf(table) }],
    };
  },
  working(reels, { answers }, exact) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { lines } = quotationOf(reels, exact);
    return [
      {
        words: 'Minutes of all reels, to the hundredth.',
        sum: `${reels.reelCount} × ${formatDuration(reelSeconds(reels, exact).valueOf())}${reels.minuteRule === 'begun' ? ', begun minutes whole' : ''} = ${text('minutes')}`,
      },
      ...lines.map(({ label, quantity, unitPrice, cents }) => ({
        words: `${label}: quantity times price, rounded to the cent.`,
        sum: `${formatNumber(quantity.valueOf(), 7)} × ${moneyOf(unitPrice)} = ${formatMoney(cents)}`,
      })),
      {
        words: 'Sum less discount, plus what is missing to the minimum charge.',
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
