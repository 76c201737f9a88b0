import { describe, expect, it } from 'vitest';
import { benchOverlay } from '../../../src/ui/bench/bench-entries.ts';
import { EMPTY_BENCH, type BenchState } from '../../../src/ui/bench/bench-state.ts';
import {
  parseTableReel,
  readTableReel,
  tableReelText,
  type TableReel,
} from '../../../src/ui/bench/table-reel.ts';
import { putOnTable, setReelText } from '../../../src/ui/box/box-edits.ts';
import { layOnTable, tableReel } from '../../../src/ui/box/lay-on-table.ts';
import { offersOf } from '../../../src/ui/box/take-back.ts';
import { TABLE_KEY } from '../../../src/ui/islands/kept-opening.ts';
import { evaluate, fillEntries, type Entries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../../src/worksheets/registry.ts';
import type { ReelTexts } from '../../../src/worksheets/box/job.ts';
import { FakeStorage } from '../fake-storage.ts';
import { makeBox, makeJob, makeReel } from './some-box.ts';

const here = { job: 'j1', reel: 'r1' };
const boxWith = (texts: ReelTexts) => putOnTable(makeBox([makeJob([makeReel(1, texts)])]), here);
const laid = (texts: ReelTexts, projector = 'super-8'): TableReel => {
  const reel = tableReel(boxWith(texts), projector);
  if (reel === undefined) throw new Error('nothing on the table');
  return reel;
};
const sheet = (id: string) => {
  const found = worksheets.get(id);
  if (found === undefined) throw new Error(`no worksheet ${id}`);
  return found;
};
const bench: BenchState = {
  ...EMPTY_BENCH,
  benches: [
    { name: 'Club bench', entries: { 'projector.gauge': 'super-8', 'projector.filmFps': '18' } },
  ],
  reels: [{ name: 'Old reel', entries: { 'reel.lengthMetres': '99 m', 'reel.nativeFps': '16' } }],
};
const opened = (id: string, texts: ReelTexts, projector?: string) =>
  benchOverlay(sheet(id), {}, bench, laid(texts, projector));
const regatta: ReelTexts = {
  boxWords: 'Regatta',
  gauge: 'Super 8',
  size: '200 ft',
  lengthMetres: '60.4',
  nativeFps: '24',
};

describe('the reel on the table', () => {
  it('opens a sheet with its own numbers, measured length first, and says its name', () => {
    const overlay = opened('film-length', regatta);
    expect(overlay?.entries).toMatchObject({ gauge: 'super-8', lengthMetres: '60.4' });
    expect(overlay).toMatchObject({ name: 'Club bench', reel: 'r001 Regatta' });
  });

  it('is never mixed with the reel of the bench', () => {
    const overlay = opened('film-length', { gauge: 'Super 8' });
    expect(overlay?.entries['lengthMetres']).toBeUndefined();
    expect(JSON.stringify(opened('quotation', { gauge: 'Super 8' })?.entries)).not.toContain('16');
  });

  it('speaks over the bench about the rate that was measured on it, and over nothing else', () => {
    expect(opened('flash-match', regatta)?.entries['filmFps']).toBe('18');
    expect(opened('flash-match', regatta)?.reel).toBeUndefined();
    const measured = opened('flash-match', { ...regatta, filmFps: '17.2' });
    expect(measured?.entries['filmFps']).toBe('17.2');
    expect(measured?.reel).toBe('r001 Regatta');
  });

  it('brings its findings to the triage, and what nobody looked at as not looked at', () => {
    const overlay = opened('condition-triage', { ...regatta, 'finding.smell': 'vinegar' });
    expect(overlay?.entries).toMatchObject({ smell: 'vinegar', mould: 'not-noted' });
    expect(overlay?.entries['gauge']).toBe('super-8');
  });

  it('carries the words that keep it off the projector to every sheet', () => {
    expect(opened('film-length', { ...regatta, gauge: 'Standard 8' })?.refusal).toMatch(
      /Do not thread a Standard 8 reel on a Super 8 projector/u,
    );
    expect(
      opened('film-length', { ...regatta, 'finding.base': 'nitrate-suspected' })?.refusal,
    ).toMatch(/nitrate/iu);
    // Not looked at counts against it.
    expect(opened('film-length', regatta)?.refusal).toMatch(/^Not yet/u);
    expect(laid({ lengthMetres: '10' }).refusal).toMatch(/gauge is not known/u);
  });

  it('is judged anew when another bench is in use', () => {
    const judged = laid({ ...regatta, gauge: 'Standard 8' }, '8mm-type-r');
    const overlay = benchOverlay(sheet('film-length'), {}, bench, judged);
    expect(overlay?.refusal).toMatch(/not the one for which this reel was put on the table/u);
  });

  it('leaves an unusable text out', () => {
    expect(laid({ ...regatta, lengthMetres: 'long' }).entries['reel.lengthMetres']).toBe('200 ft');
    expect(laid({ ...regatta, nativeFps: 'slow' }).entries['reel.nativeFps']).toBeUndefined();
  });

  it('comes back from its stored text, and is nobody where that is damaged', () => {
    const reel = laid(regatta);
    expect(parseTableReel(tableReelText(reel))).toEqual(reel);
    for (const text of ['', '{', '[]', '{"version":2,"name":"x","job":"j1","reel":"r1"}', '7']) {
      expect(parseTableReel(text), text).toBeUndefined();
    }
    expect(
      parseTableReel('{"version":1,"name":"x","job":"j","reel":"r","entries":{"prices.fixed":7}}'),
    ).toMatchObject({ entries: {}, sheets: {}, refusal: '' });
  });

  it('never leaves an older reel speaking when the store is full', () => {
    const storage = new FakeStorage();
    const { open, page } = storage.openTab();
    layOnTable(laid(regatta), open, page);
    expect(readTableReel(open)?.name).toBe('r001 Regatta');
    storage.limit = 10;
    layOnTable(laid({ ...regatta, boxWords: 'Another' }), open, page);
    expect(storage.getItem(TABLE_KEY)).toBeNull();
    expect(readTableReel(open)).toBeUndefined();
    storage.limit = 5_000_000;
    layOnTable(laid(regatta), open, page);
    layOnTable(undefined, open, page);
    expect(storage.getItem(TABLE_KEY)).toBeNull();
  });
});

describe('answers taken back into the reel', () => {
  const offers = (id: string, entries: Entries = {}) => {
    const filled = fillEntries(sheet(id).inputs, entries);
    const { outcome } = evaluate(sheet(id), filled);
    if (outcome === undefined) throw new Error(`${id} has no answers`);
    return offersOf(sheet(id), filled, outcome);
  };

  it.each([
    ['film-length', 'lengthMetres'],
    ['reel-length', 'lengthMetres'],
    ['stopwatch', 'filmFps'],
    ['tachometer', 'filmFps'],
    ['flash-match', 'exposureSeconds'],
    ['match-finder', 'exposureSeconds'],
    ['sound-offset', 'soundOffset'],
    ['shrinkage', 'finding.shrinkagePercent'],
    ['condition-triage', 'finding.smell'],
  ])('%s offers %s, and the field can be used', (id, field) => {
    const offer = offers(id).find((each) => each.field === field);
    expect(offer?.text).toBeTruthy();
    const box = setReelText(boxWith(regatta), here, field as never, offer!.text);
    expect(box.jobs[0]?.reels[0]?.texts[field as never]).toBe(offer!.text);
  });

  it('opens the matching sheet with a match when its exposure was taken', () => {
    const taken = Object.fromEntries(offers('flash-match').map(({ field, text }) => [field, text]));
    const overlay = opened('flash-match', { ...regatta, ...taken });
    const { outcome } = evaluate(
      sheet('flash-match'),
      fillEntries(sheet('flash-match').inputs, overlay?.entries ?? {}),
    );
    expect(outcome?.answers['ripplePercent']?.value).toBeCloseTo(0, 3);
  });

  it('keeps which way the sound is off', () => {
    const [offer] = offers('sound-offset');
    expect(offer?.text).toMatch(/early|late|in step/u);
  });
});
