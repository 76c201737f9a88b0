import { isBareNumber } from '../quantity/parse-number.ts';
import { plainTyping } from '../quantity/typed-text.ts';

/** “50 ft” or “3:20” says itself what it is in; the unit for bare numbers beside it would mislead. */
export function hasOwnUnit(text: string): boolean {
  return plainTyping(text) !== '' && !isBareNumber(text);
}
