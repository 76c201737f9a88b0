import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addEmpty,
  choose,
  copyCurrent,
  freeName,
  hasRoom,
  hasRoomFor,
  removeCurrent,
  rename,
  setText,
  takeOffer,
} from '../../src/ui/bench/bench-edits.ts';
import { current, currentTexts, EMPTY_BENCH, MOST } from '../../src/ui/bench/bench-state.ts';
import { anyBench } from './any-bench.ts';

const shelf = fc.constantFrom('benches' as const, 'reels' as const);

describe('what the reader does to the bench', () => {
  it('the first entry on an empty page makes a bench', () => {
    const state = setText(EMPTY_BENCH, 'projector.filmFps', '18');
    expect(state.benches).toEqual([{ name: 'My bench', entries: { 'projector.filmFps': '18' } }]);
    expect(setText(EMPTY_BENCH, 'reel.lengthMetres', '50 ft').reels[0]?.entries).toEqual({
      'reel.lengthMetres': '50 ft',
    });
  });

  it('an emptied field is no longer there', () => {
    const state = setText(setText(EMPTY_BENCH, 'projector.filmFps', '18'), 'projector.filmFps', '');
    expect(state.benches[0]?.entries).toEqual({});
  });

  it('a typed text is what is said afterwards', () => {
    fc.assert(
      fc.property(anyBench, fc.string({ minLength: 1, maxLength: 50 }), (state, text) => {
        expect(currentTexts(setText(state, 'camera.cameraFps', text))['camera.cameraFps']).toBe(
          text,
        );
      }),
    );
  });

  it('a copy says the same under a name of its own, and can be removed again', () => {
    fc.assert(
      fc.property(anyBench, shelf, (state, where) => {
        fc.pre(state[where].length > 0);
        const copied = copyCurrent(state, where);
        expect(copied[where]).toHaveLength(state[where].length + 1);
        expect(current(copied, where)?.entries).toEqual(current(state, where)?.entries);
        expect(state[where].map(({ name }) => name)).not.toContain(current(copied, where)?.name);
        expect(removeCurrent(copied, where)[where]).toEqual(state[where]);
      }),
    );
  });

  it('removing leaves one in use while there is one', () => {
    fc.assert(
      fc.property(anyBench, shelf, (state, where) => {
        const left = removeCurrent(state, where);
        expect(current(left, where) === undefined).toBe(state[where].length <= 1);
      }),
    );
  });

  it('choosing a place that does not exist changes nothing', () => {
    const state = addEmpty(EMPTY_BENCH, 'benches');
    expect(choose(state, 'benches', 1)).toBe(state);
    expect(choose(state, 'benches', -1)).toBe(state);
    expect(choose(addEmpty(state, 'benches'), 'benches', 0).currentBench).toBe(0);
  });

  it('a name that is taken gets the next free number', () => {
    const taken = ['Club', 'Club (2)', 'Club (4)'].map((name) => ({ name, entries: {} }));
    expect(freeName('Club', taken)).toBe('Club (3)');
    expect(freeName('Club (2)', taken)).toBe('Club (3)');
    expect(freeName('Super 8', [{ name: 'Super 8', entries: {} }])).toBe('Super 8 (2)');
    expect(freeName('Other', taken)).toBe('Other');
    const long = 'x'.repeat(MOST.nameLength);
    const numbered = freeName(long, [{ name: long, entries: {} }]);
    expect(numbered.length).toBeLessThanOrEqual(MOST.nameLength);
    expect(numbered).not.toBe(long);
  });

  it('an emptied name falls back to the first one', () => {
    expect(rename(addEmpty(EMPTY_BENCH, 'benches'), 'benches', '  ').benches[0]?.name).toBe(
      'My bench',
    );
  });

  it('an offer is added beside what is there and is in use at once', () => {
    fc.assert(
      fc.property(anyBench, anyBench, (state, other) => {
        const taken = takeOffer(state, other);
        expect(taken.benches).toHaveLength(state.benches.length + other.benches.length);
        expect(taken.benches.slice(0, state.benches.length)).toEqual(state.benches);
        const first = other.benches[0];
        expect(current(taken, 'benches')?.entries).toEqual(
          (first ?? current(state, 'benches'))?.entries,
        );
        expect(taken.region).toBe(other.region === '' ? state.region : other.region);
        expect(taken.units).toBe(state.units);
      }),
    );
  });

  it('nothing is added where there is no room, and nothing is lost', () => {
    let state = EMPTY_BENCH;
    for (let index = 0; index < MOST.benches; index += 1) state = addEmpty(state, 'benches');
    expect(hasRoom(state, 'benches')).toBe(false);
    expect(addEmpty(state, 'benches')).toBe(state);
    const offer = { benches: [{ name: 'A', entries: {} }], reels: [], region: '' } as const;
    expect(hasRoomFor(state, offer)).toBe(false);
    expect(takeOffer(state, offer)).toBe(state);
  });
});
