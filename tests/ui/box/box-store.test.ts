import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addReels,
  importJobs,
  moveReel,
  putOnTable,
  sameJob,
  setReelText,
  startJob,
} from '../../../src/ui/box/box-edits.ts';
import { boxJson, readBox } from '../../../src/ui/box/box-schema.ts';
import { BOX_ASIDE_KEY, BOX_KEY, makeBoxStore } from '../../../src/ui/box/box-store.ts';
import { parseBoxFile, parseBoxText } from '../../../src/ui/box/box-text.ts';
import { EMPTY_BOX, MOST_IN_BOX, reelOf } from '../../../src/worksheets/box/job.ts';
import { FakeStorage } from '../fake-storage.ts';
import { anyBox, makeBox, makeJob, makeReel } from './some-box.ts';

function openTab(storage: FakeStorage) {
  const { open, page } = storage.openTab();
  return makeBoxStore(open, page);
}
const first = { job: 'j1', reel: 'r1' };

describe('the box in the browser’s store', () => {
  it('comes back as it was kept, whatever was typed', () => {
    fc.assert(
      fc.property(anyBox, (box) => {
        expect(parseBoxText(boxJson(box))).toEqual({ kind: 'read', state: box, faults: [] });
        expect(parseBoxFile(boxJson(box, 2))).toEqual({ ok: true, state: box, faults: [] });
      }),
      { numRuns: 200 },
    );
  });

  it('keeps what two tabs type into two reels', () => {
    const storage = new FakeStorage();
    const [here, there] = [openTab(storage), openTab(storage)];
    here.update((box) => addReels(startJob(box), 'j1', [{}]));
    there.update((box) => setReelText(box, first, 'boxWords', 'Regatta'));
    here.update((box) => setReelText(box, { job: 'j1', reel: 'r2' }, 'boxWords', 'Boathouse'));
    const words = there.read().state.jobs[0]?.reels.map(({ texts }) => texts.boxWords);
    expect(words).toEqual(['Regatta', 'Boathouse']);
  });

  it('keeps typing on this page when the store is full, and what was stored before stays', () => {
    const storage = new FakeStorage();
    const tab = openTab(storage);
    tab.update((box) => setReelText(startJob(box), first, 'boxWords', 'Regatta'));
    const before = storage.getItem(BOX_KEY);
    storage.limit = (before ?? '').length + 10;
    const long = 'Oars '.repeat(100);
    expect(tab.update((box) => setReelText(box, first, 'notes', long)).trouble).toBe('full');
    expect(storage.getItem(BOX_KEY)).toBe(before);
    expect(reelOf(tab.read().state, first)?.texts.notes).toBe(long);
    // There is room again: nothing of it is lost.
    storage.limit = 5_000_000;
    expect(tab.update((box) => setReelText(box, first, 'who', 'Ada')).trouble).toBeUndefined();
    expect(reelOf(openTab(storage).read().state, first)?.texts.notes).toBe(long);
  });

  it('lasts for the page when the store is blocked', () => {
    const storage = new FakeStorage();
    storage.isBlocked = true;
    const tab = openTab(storage);
    expect(tab.update((box) => startJob(box)).trouble).toBe('blocked');
    expect(tab.read().state.jobs).toHaveLength(1);
  });

  it('starts no job in a full box, and adds no line to the job that is open', () => {
    const full = makeBox(Array.from({ length: MOST_IN_BOX.jobs }, () => makeJob([makeReel(1)])));
    expect(startJob(full)).toBe(full);
  });

  it('starts a job with one numbered line, under the terms of the last one', () => {
    const terms = 'Two weeks.';
    const { jobs, currentJob } = startJob(
      makeBox([{ ...makeJob([makeReel(1)]), texts: { terms } }]),
    );
    expect(jobs.at(-1)).toMatchObject({ id: currentJob, texts: { terms }, reels: [{ id: 'r1' }] });
    expect(jobs).toHaveLength(2);
  });

  it('reads on past what is damaged, and keeps the damaged text aside', () => {
    const storage = new FakeStorage();
    const box = makeBox([makeJob([makeReel(1, { boxWords: 'Regatta' }), makeReel(2)])]);
    const damaged = boxJson(box)
      .replace('"boxWords":"Regatta"', '"boxWords":"Regatta","colour":"faded","gauge":["x"]')
      .replace('"id":"r2"', '"id":7');
    storage.setItem(BOX_KEY, damaged);
    const tab = openTab(storage);
    const { state } = tab.read();
    expect(reelOf(state, first)?.texts).toEqual({ number: 'r001', boxWords: 'Regatta' });
    expect(state.jobs[0]?.reels).toHaveLength(2);
    const [aside] = tab.aside();
    expect(aside?.text).toBe(damaged);
    expect(aside?.faults.join(' ')).toMatch(/“colour”.*gauge is not a text.*has no id/u);
    tab.update((before) => setReelText(before, first, 'who', 'Tom'));
    expect(JSON.parse(storage.getItem(BOX_ASIDE_KEY) ?? '[]')).toHaveLength(1);
  });

  it.each(['', '{', '[]', '7', '"box"', '{"version":1,"jobs":5}', '{"jobs":[null,{"reels":[1]}]}'])(
    'makes something of %j',
    (text) => {
      const reading = parseBoxText(text);
      if (reading.kind !== 'read') throw new Error('a later version');
      expect(reading.faults.length).toBeGreaterThan(0);
      expect(parseBoxText(boxJson(reading.state))).toMatchObject({ faults: [] });
    },
  );

  it('leaves the box of a later edition alone', () => {
    const storage = new FakeStorage();
    const later = '{"version":2,"shelves":[]}';
    storage.setItem(BOX_KEY, later);
    const tab = openTab(storage);
    expect(tab.read().trouble).toBe('later-version');
    tab.update((box) => startJob(box));
    expect(storage.getItem(BOX_KEY)).toBe(later);
    expect(tab.read().state.jobs).toHaveLength(1);
    expect(parseBoxFile('{"version":2,"jobs":[]}')).toMatchObject({ ok: false });
  });

  it('refuses files that are no box, each with its reason', () => {
    const reasons = [
      'x',
      '{}',
      '{"version":1}',
      '{"version":0,"jobs":[]}',
      '{"version":1,"jobs":[]}',
    ];
    const said = reasons.map((text) => {
      const reading = parseBoxFile(text);
      return reading.ok ? '' : reading.reason;
    });
    expect(said.every((reason) => reason.endsWith('.'))).toBe(true);
    expect(new Set(said).size).toBeGreaterThan(3);
  });

  it('keeps 500 reels, every letter of a hundred typed, in less than a megabyte', () => {
    const storage = new FakeStorage();
    const reels = Array.from({ length: 500 }, (_, index) =>
      makeReel(index + 1, {
        boxWords: `Regatta, reel ${index} of the club`,
        gauge: 'Super 8',
        size: '200 ft',
        nativeFps: '18',
        notes: 'Two splices, a torn hole at 41 m. '.repeat(4),
      }),
    );
    storage.setItem(BOX_KEY, boxJson(makeBox([makeJob(reels)])));
    const tab = openTab(storage);
    for (let letters = 1; letters <= 100; letters += 1) {
      tab.update((box) =>
        setReelText(box, { job: 'j1', reel: 'r250' }, 'who', 'A'.repeat(letters)),
      );
    }
    expect(storage.getItem(BOX_KEY)?.length).toBeLessThan(1_000_000);
    const again = openTab(storage).read().state;
    expect(again.jobs[0]?.reels).toHaveLength(500);
    expect(reelOf(again, { job: 'j1', reel: 'r250' })?.texts.who).toHaveLength(100);
  });
});

describe('edits of the box', () => {
  it('change nothing else: the other reels stay the very same objects', () => {
    const box = makeBox([makeJob([makeReel(1), makeReel(2)])]);
    const next = setReelText(box, first, 'boxWords', 'x');
    expect(next.jobs[0]?.reels[1]).toBe(box.jobs[0]?.reels[1]);
    expect(setReelText(next, first, 'boxWords', 'x')).toBe(next);
  });

  it('write the way of a reel down, and take no move back without a reason', () => {
    const box = makeBox([makeJob([makeReel(1)])]);
    const step = { day: '2026-11-27', who: 'Ada', reason: '' };
    const named = moveReel(box, first, { ...step, state: 'named' });
    expect(reelOf(named, first)).toMatchObject({ state: 'named', log: [{ state: 'named' }] });
    expect(moveReel(named, first, { ...step, state: 'arrived' })).toBe(named);
    const back = moveReel(named, first, { ...step, state: 'arrived', reason: 'wrong can' });
    expect(reelOf(back, first)?.log).toHaveLength(2);
  });

  it('ask about a job whose number is here, and lose neither', () => {
    const here = makeBox([makeJob([makeReel(1, { who: 'Ada' })])]);
    const offered = makeBox([
      makeJob([makeReel(1, { who: 'Tom' })], 'j1', ' 2026-014 '),
      makeJob([makeReel(1)], 'j2', '2026-015'),
    ]);
    expect(sameJob(here, offered.jobs[0]!)?.id).toBe('j1');
    const take = (choice: 'replace' | 'keep-both' | 'skip') =>
      importJobs(here, offered, new Map([['j1', choice]]));
    const who = (box: ReturnType<typeof take>) =>
      box.jobs.map(({ reels }) => reels[0]?.texts.who ?? '');
    expect(who(take('skip'))).toEqual(['Ada', '']);
    expect(who(take('replace'))).toEqual(['Tom', '']);
    expect(who(take('keep-both'))).toEqual(['Ada', 'Tom', '']);
    expect(new Set(take('keep-both').jobs.map(({ id }) => id)).size).toBe(3);
    // Nothing chosen: nothing is written over.
    expect(who(importJobs(here, offered, new Map()))).toEqual(['Ada', '']);
  });

  it('take the reel from the table when a job that lacks it replaces its own', () => {
    const here = putOnTable(makeBox([makeJob([makeReel(1), makeReel(2)])]), {
      job: 'j1',
      reel: 'r2',
    });
    expect(here.onTable?.reel).toBe('r2');
    const offered = makeBox([makeJob([makeReel(1)])]);
    const next = importJobs(here, offered, new Map([['j1', 'replace']]));
    expect(next.onTable).toBeUndefined();
    expect(readBox(JSON.parse(boxJson(next)) as Record<string, unknown>).faults).toEqual([]);
    expect(importJobs(EMPTY_BOX, offered, new Map()).currentJob).toBe('j1');
  });
});
