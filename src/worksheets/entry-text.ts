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
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}
