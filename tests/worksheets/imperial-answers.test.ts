import { describe, expect, it } from 'vitest';
import { quantity } from '../../src/worksheets/machine/answers.ts';

const spaced = (text: string | undefined): string | undefined => text?.replaceAll('\u00a0', ' ');

describe('a length among the answers', () => {
  it('comes in feet as well as metres', () => {
    const { text, imperial } = quantity(15.24, 'm', 3);
    expect(spaced(text)).toBe('15.2 m');
    expect(spaced(imperial?.text)).toBe('50 ft');
    expect(imperial?.value).toBeCloseTo(50, 9);
    expect(imperial?.unit).toBe('ft');
  });

  it('comes in inches as well as millimetres and centimetres', () => {
    expect(spaced(quantity(4.234, 'mm', 4).imperial?.text)).toBe('0.1667 in');
    expect(spaced(quantity(2.54, 'cm', 3).imperial?.text)).toBe('1 in');
  });

  it('is the only kind of answer that has two', () => {
    expect(quantity(18, 'fps')).not.toHaveProperty('imperial');
    expect(quantity(50, 'ft')).not.toHaveProperty('imperial');
  });
});
