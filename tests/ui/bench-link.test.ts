import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeOffer } from '../../src/ui/bench/bench-edits.ts';
import { benchLink, parseBenchLink } from '../../src/ui/bench/bench-link.ts';
import { currentTexts, EMPTY_BENCH } from '../../src/ui/bench/bench-state.ts';
import { anyBench } from './any-bench.ts';

const withoutPrivate = (texts: ReturnType<typeof currentTexts>) =>
  Object.fromEntries(
    Object.entries(texts).filter(([field]) => !/^(?:times|prices)\./u.test(field)),
  );

const fragmentOf = (link: string): string => link.slice(link.indexOf('#'));

describe('the link to a bench', () => {
  it('is the one of the contract', () => {
    const state = {
      ...EMPTY_BENCH,
      benches: [
        {
          name: 'Club',
          entries: { 'projector.filmFps': '16 2/3', 'camera.cameraRates': '25; 50' },
        },
      ],
      region: '25/50',
    } as const;
    expect(benchLink(state)).toBe('/bench/#b=1&n=Club&pf=16+2%2F3&cr=25%3B+50&m=25');
  });

  it('says the same to an empty browser as here', () => {
    const described = anyBench.filter(({ benches, reels }) => benches.length + reels.length > 0);
    fc.assert(
      fc.property(described, (state) => {
        const reading = parseBenchLink(fragmentOf(benchLink(state)));
        expect(reading?.ok).toBe(true);
        if (reading?.ok !== true) return;
        expect(reading.faults).toEqual([]);
        const there = currentTexts(takeOffer(EMPTY_BENCH, reading.offer));
        expect(there).toEqual(withoutPrivate(currentTexts(state)));
      }),
    );
  });

  it('never carries prices and handling times', () => {
    const state = {
      ...EMPTY_BENCH,
      benches: [
        { name: 'Club', entries: { 'prices.perReel': '4321.5', 'times.handlingSeconds': '9876' } },
      ],
    } as const;
    expect(benchLink(state)).toBe('/bench/#b=1&n=Club');
  });

  it('is not seen in a fragment that is about something else', () => {
    expect(parseBenchLink('')).toBeUndefined();
    expect(parseBenchLink('#examples')).toBeUndefined();
    expect(parseBenchLink('#n=Club&pf=18')).toBeUndefined();
  });

  it.each([
    ['of a later version', '#b=2&n=Club&pf=18', /later edition/u],
    ['with nothing in it', '#b=1', /no bench/u],
    ['with a region alone', '#b=1&m=25', /no bench/u],
    ['that never ends', `#b=1&n=${'x'.repeat(30_000)}`, /too long/u],
  ])('is refused whole: one %s', (_, fragment, reason) => {
    const reading = parseBenchLink(fragment);
    expect(reading?.ok === false && reading.reason).toMatch(reason);
  });

  it('passes over what it does not know, and says so', () => {
    const reading = parseBenchLink(
      `#b=1&n=A&pf=18&__proto__=x&constructor=y&m=12&pn=${'3'.repeat(2001)}`,
    );
    expect(reading).toMatchObject({
      ok: true,
      offer: { benches: [{ name: 'A', entries: { 'projector.filmFps': '18' } }], region: '' },
      faults: [
        '“__proto__” is not known here',
        '“constructor” is not known here',
        'projector.flashesPerFrame is too long',
        'the region is not one of the choices',
      ],
    });
  });

  it('is read without an error whatever stands in the fragment', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(parseBenchLink(`#b=1&n=A&${text}`)).toBeDefined();
        parseBenchLink(text);
      }),
    );
  });
});
