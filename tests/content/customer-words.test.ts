import { describe, expect, it } from 'vitest';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { readChapters } from './read-content.ts';

const bodies = new Map(
  readChapters().map(({ id, body, frontmatter }) => [id, `${JSON.stringify(frontmatter)} ${body}`]),
);
const text = (id: string): string => {
  const found = bodies.get(id);
  if (found === undefined)
    throw new Error(`no chapter ${id}; known: ${[...bodies.keys()].join(', ')}`);
  return found;
};

describe('what a customer reads', () => {
  const customer = [text('customer/options'), text('customer/time-and-quotation')].join('\n');

  it('is one number of copies: three sets, two places, one of them in another house', () => {
    expect(customer).not.toMatch(/two copies/iu);
    expect(customer.match(/three sets/giu)?.length).toBeGreaterThan(3);
    expect(customer).toMatch(/one of (?:them|the sets) in another house/u);
    expect(findWorksheet('customer-options').cautions.join(' ')).toMatch(/three sets/u);
  });

  it('has no word that only the trade knows for Standard 8', () => {
    expect(customer).not.toMatch(/type R/u);
    expect(customer).toMatch(/Standard 8, also called Regular 8 or Double 8/u);
  });

  it('claims no picture size that shows everything, and states what archives ask for', () => {
    expect(customer).not.toMatch(/can show all of it|fingernail|every Christmas/u);
    for (const practice of ['2048 × 1556', '2560 × 1875', '4096 × 3000']) {
      expect(customer).toContain(practice);
    }
  });

  it('promises no whole frames, but to look', () => {
    expect(customer).not.toMatch(/caught whole at least once|has every one of them, once/u);
    expect(customer).toMatch(/Where a picture is missing .* we tell you/u);
  });
});

describe('the light chapter', () => {
  const light = text('gate/light');
  const place = (words: string): number => {
    const found = light.indexOf(words);
    expect(found, words).toBeGreaterThan(0);
    return found;
  };

  it('sets the white balance after everything that changes colour', () => {
    const steps = light.slice(place('## Set the light at the bench'));
    const balance = steps.indexOf('id="white-balance"');
    for (const earlier of ['Put the diffuser in', 'Set the lamp or a filter', 'put a filter in']) {
      expect(steps.indexOf(earlier), earlier).toBeGreaterThan(0);
      expect(steps.indexOf(earlier), earlier).toBeLessThan(balance);
    }
  });

  it('takes heat out before it puts light in', () => {
    expect(place('## Less heat first')).toBeLessThan(place('## Set the light at the bench'));
    expect(light.indexOf('| heat |')).toBeLessThan(light.indexOf('| lamp |'));
  });

  it('allows a flat profile with 10 bits only, and says what it does to the sensitivity', () => {
    expect(light).toMatch(/flat one only if the camera records 10 bits or more/u);
    expect(light).toMatch(/force a high sensitivity/u);
  });

  it('takes two exposures of one frame only where the film stands', () => {
    const sheet = findWorksheet('density-range').cautions.join(' ');
    for (const words of [light, sheet]) {
      expect(words).not.toMatch(/one run of the film for each/u);
      expect(words).toMatch(/machine that stops on (?:each frame|it)/u);
    }
  });
});
