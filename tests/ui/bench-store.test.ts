import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setText } from '../../src/ui/bench/bench-edits.ts';
import { benchJson } from '../../src/ui/bench/bench-schema.ts';
import { isRecord } from '../../src/ui/bench/is-record.ts';
import { EMPTY_BENCH, type BenchState } from '../../src/ui/bench/bench-state.ts';
import { makeBenchStore, type BenchStore } from '../../src/ui/bench/bench-store.ts';
import { ASIDE_KEY, BENCH_KEY } from '../../src/ui/islands/kept-opening.ts';
import { FakeStorage } from './fake-storage.ts';

const type =
  (field: 'projector.filmFps' | 'camera.cameraFps', text: string) =>
  (state: BenchState): BenchState =>
    setText(state, field, text);

function openTab(storage: FakeStorage): BenchStore {
  const { open, page } = storage.openTab();
  return makeBenchStore(open, page);
}

const damaged =
  '{"version":1,"benches":[{"name":"Club","entries":{"projector.filmFps":"18","camera.cameraFps":[]}}]}';

describe('the bench store', () => {
  it('is empty at first and keeps what is typed', () => {
    const storage = new FakeStorage();
    expect(openTab(storage).read()).toEqual({ state: EMPTY_BENCH });
    openTab(storage).update(type('projector.filmFps', '16 2/3'));
    expect(openTab(storage).read().state.benches[0]?.entries).toEqual({
      'projector.filmFps': '16 2/3',
    });
  });

  it('writes nothing for a change that changes nothing', () => {
    const storage = new FakeStorage();
    openTab(storage).update((state) => state);
    expect(storage.length).toBe(0);
  });

  it('keeps two tabs in step, and each edit works on the newest state', () => {
    const storage = new FakeStorage();
    const [here, there] = [openTab(storage), openTab(storage)];
    const seen: (string | undefined)[] = [];
    const stop = there.subscribe(() => {
      seen.push(there.read().state.benches[0]?.entries['projector.filmFps']);
    });
    here.update(type('projector.filmFps', '18'));
    there.update(type('camera.cameraFps', '25'));
    expect(seen).toEqual(['18', '18']);
    const both = { 'projector.filmFps': '18', 'camera.cameraFps': '25' };
    expect(here.read().state.benches[0]?.entries).toEqual(both);
    stop();
    here.update(type('projector.filmFps', '24'));
    expect(seen).toHaveLength(2);
    expect(there.read().state.benches[0]?.entries['projector.filmFps']).toBe('24');
  });

  it('tells its own page of each change once', () => {
    const store = openTab(new FakeStorage());
    let calls = 0;
    store.subscribe(() => {
      calls += 1;
    });
    store.update(type('projector.filmFps', '18'));
    expect(calls).toBe(1);
  });

  it('hears that the whole store was emptied, and that the page was brought back', () => {
    const { open, page } = new FakeStorage().openTab();
    const store = makeBenchStore(open, page);
    let calls = 0;
    store.subscribe(() => {
      calls += 1;
    });
    page.dispatchEvent(Object.assign(new Event('storage'), { key: null }));
    page.dispatchEvent(Object.assign(new Event('storage'), { key: 'scheme' }));
    page.dispatchEvent(Object.assign(new Event('pageshow'), { persisted: true }));
    page.dispatchEvent(Object.assign(new Event('pageshow'), { persisted: false }));
    expect(calls).toBe(2);
  });

  it('works on for this page where the store is blocked, and says so', () => {
    const storage = new FakeStorage();
    storage.isBlocked = true;
    const store = openTab(storage);
    expect(store.read()).toEqual({ state: EMPTY_BENCH, trouble: 'blocked' });
    const after = store.update(type('projector.filmFps', '18'));
    expect(after.trouble).toBe('blocked');
    expect(store.read().state.benches[0]?.entries['projector.filmFps']).toBe('18');
    expect(store.aside()).toEqual([]);
    store.dropAside();
    expect(store.clear()).toEqual({ state: EMPTY_BENCH, trouble: 'blocked' });
  });

  it('works on for this page where the store is full, and keeps again when there is room', () => {
    const storage = new FakeStorage();
    storage.limit = 20;
    const store = openTab(storage);
    expect(store.update(type('projector.filmFps', '18')).trouble).toBe('full');
    expect(storage.getItem(BENCH_KEY)).toBeNull();
    storage.limit = 5000;
    const after = store.update(type('camera.cameraFps', '25'));
    expect(after.trouble).toBeUndefined();
    expect(storage.getItem(BENCH_KEY)).toBe(benchJson(after.state));
    expect(Object.keys(after.state.benches[0]?.entries ?? {})).toHaveLength(2);
  });

  it('leaves a state of a later edition alone', () => {
    const storage = new FakeStorage();
    const later = '{"version":4,"benches":{"a":1}}';
    storage.setItem(BENCH_KEY, later);
    const store = openTab(storage);
    expect(store.read()).toEqual({ state: EMPTY_BENCH, trouble: 'later-version' });
    const after = store.update(type('projector.filmFps', '18'));
    expect(after.trouble).toBe('later-version');
    expect(after.state.benches[0]?.entries['projector.filmFps']).toBe('18');
    expect(storage.getItem(BENCH_KEY)).toBe(later);
  });

  it('moves a damaged text aside, whole, and goes on with what can be read', () => {
    const storage = new FakeStorage();
    storage.setItem(BENCH_KEY, damaged);
    const store = openTab(storage);
    const { state, trouble } = store.read();
    expect(trouble).toBeUndefined();
    expect(state.benches[0]?.entries).toEqual({ 'projector.filmFps': '18' });
    expect(store.aside()).toEqual([
      { text: damaged, faults: ['Club: camera.cameraFps is not a text'] },
    ]);
    expect(storage.getItem(BENCH_KEY)).toBe(benchJson(state));
    store.update(type('camera.cameraFps', '25'));
    expect(store.aside()).toHaveLength(1);
    store.dropAside();
    expect(store.aside()).toEqual([]);
    expect(store.read().state.benches[0]?.entries['camera.cameraFps']).toBe('25');
  });

  it('keeps several damaged texts, each once', () => {
    const storage = new FakeStorage();
    for (const text of [damaged, 'torn', damaged]) {
      storage.setItem(BENCH_KEY, text);
      openTab(storage).read();
    }
    expect(
      openTab(storage)
        .aside()
        .map(({ text }) => text),
    ).toEqual([damaged, 'torn']);
  });

  it('writes nothing over a damaged text that it has no room to keep', () => {
    const storage = new FakeStorage();
    storage.setItem(BENCH_KEY, damaged);
    storage.limit = damaged.length + 40;
    const store = openTab(storage);
    expect(store.read().trouble).toBe('full');
    expect(store.update(type('camera.cameraFps', '25')).trouble).toBe('full');
    expect(storage.getItem(BENCH_KEY)).toBe(damaged);
    storage.limit = 5000;
    expect(store.update(type('camera.cameraFps', '50')).trouble).toBeUndefined();
    expect(store.aside().map(({ text }) => text)).toEqual([damaged]);
  });

  it('shows what was kept aside even when that is damaged', () => {
    const storage = new FakeStorage();
    storage.setItem(ASIDE_KEY, 'torn too');
    expect(openTab(storage).aside()).toEqual([
      { text: 'torn too', faults: ['What was kept aside was itself damaged'] },
    ]);
  });

  it('clears everything, what was kept aside included', () => {
    const storage = new FakeStorage();
    storage.setItem(BENCH_KEY, damaged);
    const store = openTab(storage);
    store.read();
    expect(store.clear()).toEqual({ state: EMPTY_BENCH });
    expect(storage.length).toBe(0);
  });

  it('loses nothing of a text damaged anywhere at the first keystroke: it is kept whole, aside', () => {
    const whole = benchJson(
      [type('projector.filmFps', '16 2/3'), type('camera.cameraFps', '24000/1001')].reduce(
        (state, edit) => edit(state),
        EMPTY_BENCH,
      ),
    );
    /** Every text and key in a value, in order. */
    const textsIn = (value: unknown): readonly string[] => {
      if (Array.isArray(value)) return value.flatMap(textsIn);
      if (!isRecord(value)) return value === '' ? [] : [String(value)];
      return Object.entries(value).flatMap(([key, inner]) => [key, ...textsIn(inner)]);
    };
    const sorted = (value: unknown): readonly string[] => textsIn(value).toSorted();
    let aside = 0;
    fc.assert(
      fc.property(
        fc.nat(whole.length - 1),
        fc.constantFrom('cut', 'drop', 'change', 'double'),
        fc.constantFrom('0', '9', 'x', '"', '{', '}', ',', ':', '\u0000'),
        (at, how, character) => {
          const torn = {
            cut: whole.slice(0, at),
            drop: whole.slice(0, at) + whole.slice(at + 1),
            change: whole.slice(0, at) + character + whole.slice(at + 1),
            double: whole.slice(0, at) + whole.slice(Math.max(0, at - 9)),
          }[how];
          const storage = new FakeStorage();
          storage.setItem(BENCH_KEY, torn);
          const store = openTab(storage);
          store.update((state) => setText(state, 'projector.flashesPerFrame', '3'));
          if (store.aside().some(({ text }) => text === torn)) {
            aside += 1;
            return;
          }
          // A later edition's text is left as it is.
          if (storage.getItem(BENCH_KEY) === torn) return;
          const before = sorted(JSON.parse(torn));
          const after = [...sorted(JSON.parse(storage.getItem(BENCH_KEY) ?? ''))];
          for (const text of before) {
            const place = after.indexOf(text);
            expect(place, `${torn} lost “${text}”`).toBeGreaterThanOrEqual(0);
            after.splice(place, 1);
          }
        },
      ),
      { numRuns: 2000 },
    );
    expect(aside).toBeGreaterThan(500);
  });
});
