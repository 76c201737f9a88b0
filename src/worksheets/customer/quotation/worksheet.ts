import type Fraction from 'fraction.js';
import type { Quotation } from '../../../core/customer/price-lines.ts';
import { formatMoney } from '../../../quantity/format-money.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { duration } from '../../machine/answers.ts';
import { defineWorksheet, type AnswerBody } from '../../machine/define-worksheet.ts';
import type { ResultTable } from '../../machine/types.ts';
import { inputs } from './inputs.ts';
import { quotedJob } from './quoted.ts';

/** An amount of money in the reader's own currency, which has no name here. */
function money(cents: number): AnswerBody {
  return { text: formatMoney(cents), value: cents / 100, unit: '' };
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
  inputs,
  model:
    'Running time from the length by the foot and the native rate, unless it is typed; minutes to the hundredth. Each line is rounded to the cent, half a cent upwards. The discount is taken off the sum and rounded, any shortfall to the minimum charge is added, and tax is taken once on the whole. All sums are exact decimals, so the printed lines add up to the printed total.',
  answers: {
    total: 'To pay',
    net: 'Before tax',
    tax: 'Tax',
    subtotal: 'Sum of the lines',
    discount: 'Discount',
    minimumExtra: 'Added to reach the minimum charge',
    minutes: 'Minutes charged',
    reelSeconds: 'One reel runs',
  },
  find: quotedJob,
  outcome({ sums, minutes, reelSeconds }, { discountPercent, taxPercent }) {
    const table = linesTable(sums, discountPercent, taxPercent);
    const total = formatMoney(sums.totalCents);
    return {
      verdict: {
        level: 'note',
        sentence:
          sums.minimumExtraCents > 0
            ? `The job comes to ${total}: the minimum charge applies.`
            : `The job comes to ${total}.`,
      },
      answers: {
        total: money(sums.totalCents),
        net: money(sums.netCents),
        tax: money(sums.taxCents),
        subtotal: money(sums.subtotalCents),
        discount: money(sums.discountCents),
        minimumExtra: money(sums.minimumExtraCents),
        minutes: { text: formatNumber(minutes, 7), value: minutes, unit: 'min' },
        reelSeconds: duration(reelSeconds),
      },
      tables: [table],
      files: [{ fileName: 'quotation.csv', mediaType: 'text/csv', text: csvOf(table) }],
    };
  },
  working({ sums, minutes }, told, { reelCount, minuteRule }) {
    return [
      minuteRule === 'begun'
        ? {
            words: `Minutes of all reels; a reel of ${told('reelSeconds')} counts each minute begun as a whole one.`,
            sum: `${reelCount} × ${formatNumber(minutes / reelCount, 7)} min = ${told('minutes')} min`,
          }
        : {
            words: 'Minutes of all reels, to the hundredth.',
            sum: `${reelCount} × ${told('reelSeconds')} = ${told('minutes')} min`,
          },
      ...sums.lines.map((line) => ({
        words: `${line.label}: quantity times price, rounded to the cent.`,
        sum: `${formatNumber(line.quantity.valueOf(), 7)} × ${moneyOf(line.unitPrice)} = ${formatMoney(line.cents)}`,
      })),
      {
        words: 'Sum less discount, plus any shortfall to the minimum charge.',
        sum: `${told('subtotal')} − ${told('discount')} + ${told('minimumExtra')} = ${told('net')}`,
      },
      { words: 'Plus tax.', sum: `${told('net')} + ${told('tax')} = ${told('total')}` },
    ];
  },
  cautions: [
    'Quote only after you have opened the reels: length, splices and smell decide the price.',
    'Tax, and what an offer binds you to, differ from country to country: ask an adviser.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
