import { ownProperty } from '../../quantity/own-property.ts';
import { isBareNumber } from '../../quantity/parse-number.ts';
import { plainTyping } from '../../quantity/typed-text.ts';
import { UNITS } from '../../quantity/units.ts';
import type { InputSpec } from './types.ts';

/**
 * Symbol of the unit that a bare number in this input means; empty for counts, choices and texts. A bare
 * fraction of a camera time is in seconds, whatever unit a bare number has.
 */
export function entryUnitSymbol(spec: InputSpec, text = ''): string {
  if (spec.kind === 'count' || spec.kind === 'choice' || spec.kind === 'text') return '';
  const { symbol } = UNITS[spec.entryUnit ?? spec.unit];
  return symbol === 'ms' && isBareFraction(text) ? 's' : symbol;
}

function isBareFraction(text: string): boolean {
  return /^[\d.,]+ ?\/ ?[\d.,]+$/u.test(plainTyping(text));
}

/** An entry as it reads in a sentence: a choice by its words, a bare number with its unit. */
export function entryText(spec: InputSpec, text: string): string {
  if (spec.kind === 'choice') return ownProperty(spec.options, text) ?? text;
  if (plainTyping(text) === '') return '–';
  if (spec.kind === 'text') return text;
  const symbol = entryUnitSymbol(spec, text);
  if (!isBareNumber(text) || /[;\n]/u.test(plainTyping(text)) || symbol === '') return text;
  // A whole number and its fraction stay together.
  const number = text.trim().replaceAll(/\s+/gu, '\u00a0');
  return symbol === '°' ? `${number}°` : `${number}\u00a0${inNumber(symbol, number)}`;
}

/** Unit in singular or plural, where it is a word. */
function inNumber(symbol: string, number: string): string {
  const size = Number(plainTyping(number).replace(',', '.'));
  if (symbol === 'frames' && size === 1) return 'frame';
  return (symbol === 'stop' || symbol === 'semitone') && size > 1 ? `${symbol}s` : symbol;
}
