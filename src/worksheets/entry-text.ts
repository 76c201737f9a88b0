import { UNITS } from '../core/quantity/units.ts';
import type { InputSpec } from './types.ts';

/** Symbol of the unit that a bare number in this input means; empty for counts and choices. */
export function entryUnitSymbol(spec: InputSpec): string {
  if (spec.kind === 'count' || spec.kind === 'choice') return '';
  return UNITS[spec.entryUnit ?? spec.unit].symbol;
}

/** An entry as it reads in a sentence: a choice by its words, a bare number with its unit. */
export function entryText(spec: InputSpec, text: string): string {
  if (spec.kind === 'choice') return spec.options[text] ?? text;
  if (text.trim() === '') return '–';
  const isFraction = /^\d+\s*\/\s*\d+$/u.test(text);
  const unit = entryUnitSymbol(spec);
  // A bare fraction of a time is in seconds, whatever unit a bare number has.
  const symbol = isFraction && unit === 'ms' ? 's' : unit;
  if (!/^[\d\s.,/]+$/u.test(text) || symbol === '') return text;
  // A whole number and its fraction stay together.
  const number = text.trim().replaceAll(/\s+/gu, '\u00a0');
  return symbol === '°' ? `${number}°` : `${number}\u00a0${inNumber(symbol, number)}`;
}

/** Unit in singular or plural, where it is a word. */
function inNumber(symbol: string, number: string): string {
  const size = Number(number.replace(',', '.'));
  if (symbol === 'frames' && size === 1) return 'frame';
  return (symbol === 'stop' || symbol === 'semitone') && size > 1 ? `${symbol}s` : symbol;
}
