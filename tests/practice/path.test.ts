import { describe, expect, it } from 'vitest';
import {
  dayAfter,
  dueItems,
  EMPTY_PATH,
  isMastered,
  pathText,
  readPath,
  withAnswer,
  withChapter,
  withHand,
  withName,
  withSession,
  type PathRecord,
} from '../../src/practice/path.ts';
import { keyOf, SESSION_LENGTH, sessionItems, sheetItems } from '../../src/practice/session.ts';
import { readCaseKinds, readPractice } from '../content/read-content.ts';
import { makePathStore, PATH_KEY } from '../../src/ui/cases/path-store.ts';
import { readSetAddress, setLink } from '../../src/ui/cases/set-address.ts';
import { FakeStorage } from '../ui/fake-storage.ts';

const stock = { cases: readCaseKinds(), sums: readPractice() };
const answered = (path: PathRecord, isRight: boolean, day: string): PathRecord =>
  withAnswer(path, 'may-it-run:2', isRight, day);

describe('what was missed', () => {
  it('comes back after one, three and seven days, and is then done with', () => {
    let path = answered(EMPTY_PATH, false, '2026-11-27');
    const dues: (string | undefined)[] = [];
    for (const day of ['2026-11-28', '2026-12-01', '2026-12-08']) {
      dues.push(path.items.get('may-it-run:2')?.due);
      expect(dueItems(path, dayAfter(day, -1))).toEqual([]);
      expect(dueItems(path, day)).toEqual(['may-it-run:2']);
      path = answered(path, true, day);
    }
    expect(dues).toEqual(['2026-11-28', '2026-12-01', '2026-12-08']);
    expect(path.items.get('may-it-run:2')?.due).toBeUndefined();
    expect(isMastered(path.items.get('may-it-run:2')!)).toBe(true);
  });

  it('begins anew when it is missed again, and stays due when it is practised too early', () => {
    let path = answered(EMPTY_PATH, false, '2026-11-27');
    path = answered(path, true, '2026-11-27');
    expect(path.items.get('may-it-run:2')?.due).toBe('2026-11-28');
    path = answered(path, true, '2026-11-28');
    expect(path.items.get('may-it-run:2')?.due).toBe('2026-12-01');
    path = answered(path, false, '2026-12-01');
    expect(path.items.get('may-it-run:2')?.due).toBe('2026-12-02');
  });

  it('counts over the ends of months and leap days', () => {
    expect(dayAfter('2028-02-28', 1)).toBe('2028-02-29');
    expect(dayAfter('2026-12-31', 1)).toBe('2027-01-01');
  });
});

describe('a kind', () => {
  it('is not mastered by three right on one day', () => {
    let path = EMPTY_PATH;
    for (let count = 0; count < 3; count += 1) path = answered(path, true, '2026-11-27');
    expect(isMastered(path.items.get('may-it-run:2')!)).toBe(false);
    expect(isMastered(answered(path, true, '2026-11-28').items.get('may-it-run:2')!)).toBe(true);
  });
});

describe('the record', () => {
  const full = withSession(
    withHand(
      withChapter(
        withName(answered(EMPTY_PATH, false, '2026-11-27'), 'Ines'),
        'reel/gauges',
        '2026-11-26',
      ),
      'stop-in-time',
      { by: ' Tom ', day: '2026-11-27' },
    ),
    { day: '2026-11-27', seed: 'spring', right: 7, of: 10 },
  );

  it('reads what it writes', () => {
    expect(readPath(pathText(full))).toEqual(full);
    expect(full.hand.get('stop-in-time')?.by).toBe('Tom');
  });

  it('is undefined for a later version and for other files', () => {
    for (const text of [
      '',
      '{',
      '[]',
      'null',
      '{"version":1}',
      '{"kind":"practice-record","version":2}',
    ]) {
      expect(readPath(text)).toBeUndefined();
    }
  });

  it('passes over entries that are not as described', () => {
    const read = readPath(
      '{"kind":"practice-record","version":1,"name":7,"items":{"a":{"right":5,"tried":1},"__proto__":{"x":1}},"hand":{"b":{"by":"","day":"2026-11-27"}},"chapters":{"c":"soon"},"sessions":[{"day":"2026-11-27","seed":"s","right":11,"of":10}]}',
    );
    expect(read).toEqual(EMPTY_PATH);
  });

  it('lasts, and a record of a later edition is left alone', () => {
    const storage = new FakeStorage();
    makePathStore(() => storage).update(() => full);
    expect(makePathStore(() => storage).read()).toEqual(full);
    storage.setItem(PATH_KEY, '{"kind":"practice-record","version":9}');
    const store = makePathStore(() => storage);
    store.update((path) => withName(path, 'Ada'));
    expect(store.read().name).toBe('Ada');
    expect(storage.getItem(PATH_KEY)).toBe('{"kind":"practice-record","version":9}');
  });
});

describe('a session', () => {
  it('is ten questions, six cases and four sums, all of other kinds', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const items = sessionItems(stock, String(seed), 'all');
      expect(items).toHaveLength(SESSION_LENGTH);
      expect(new Set(items.map(({ id }) => id)).size).toBe(SESSION_LENGTH);
      expect(items.filter(({ type }) => type === 'case')).toHaveLength(6);
    }
  });

  it('is the same for the same seed and level, and another for another', () => {
    const spring = sessionItems(stock, 'spring', 1);
    expect(sessionItems(stock, 'spring', 1)).toEqual(spring);
    expect(sessionItems(stock, 'autumn', 1)).not.toEqual(spring);
    expect(sessionItems(stock, 'spring', 2)).not.toEqual(spring);
  });

  it('changes by one question at most where a kind is added or taken away', () => {
    const more = { ...stock, cases: [...stock.cases, { id: 'a-kind-of-next-year' }] };
    let changed = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const before = sessionItems(stock, String(seed), 'all').map((item) => JSON.stringify(item));
      const after = new Set(
        sessionItems(more, String(seed), 'all').map((item) => JSON.stringify(item)),
      );
      const lost = before.filter((item) => !after.has(item)).length;
      expect(lost, `seed ${seed}`).toBeLessThanOrEqual(1);
      changed += lost;
      const without = { ...stock, sums: stock.sums.slice(1) };
      const left = new Set(
        sessionItems(without, String(seed), 'all').map((item) => JSON.stringify(item)),
      );
      expect(before.filter((item) => !left.has(item)).length).toBeLessThanOrEqual(1);
    }
    // It does come up: six of so many kinds are drawn.
    expect(changed).toBeGreaterThan(10);
  });

  it('begins with what comes back, and passes over kinds that the book has no more', () => {
    const due = ['no-such-kind:1', 'may-it-run:3', 'flash-rate'];
    const items = sessionItems(stock, 'x', 'all', due);
    expect(items.slice(0, 2).map(keyOf)).toEqual(['may-it-run:3', 'flash-rate']);
    expect(items).toHaveLength(SESSION_LENGTH);
    expect(new Set(items.map(keyOf)).size).toBe(SESSION_LENGTH);
  });

  it('is found again by its link', () => {
    const link = setLink('spring 1/2 & more', 2);
    expect(readSetAddress(link.slice(link.indexOf('?')))).toEqual({
      seed: 'spring 1/2 & more',
      level: 2,
    });
    expect(readSetAddress('?set=a&level=9')).toEqual({ seed: 'a', level: 'all' });
    expect(readSetAddress('')).toBeUndefined();
  });
});

describe('a sheet of the trainer', () => {
  it('has the chosen kinds only, as many questions as asked, and is the same again', () => {
    const ids = ['may-it-run', 'flash-rate', 'which-gauge'];
    const items = sheetItems(stock, ids, 3, 8, 'class 1');
    expect(items).toHaveLength(8);
    expect([...new Set(items.map(({ id }) => id))].toSorted()).toEqual(ids.toSorted());
    expect(new Set(items.map(({ id, seed }) => `${id} ${seed}`)).size).toBe(8);
    expect(sheetItems(stock, ids, 3, 8, 'class 1')).toEqual(items);
    expect(sheetItems(stock, [], 1, 5, 'x')).toEqual([]);
  });
});
