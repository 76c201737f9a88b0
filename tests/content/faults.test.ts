import { describe, expect, it } from 'vitest';
import { FAULT_GROUPS } from '../../src/schemas/fault.ts';
import { troubleSchema } from '../../src/schemas/trouble.ts';
import { LOOKS } from '../../src/scene/looks/looks.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { readFiles } from '../walls/source-files.ts';
import { readFaults, readTroubles } from './read-content.ts';

const faults = readFaults();
const troubles = readTroubles();
const chapters = readFiles('content/chapters', ['.mdx']);

/** Looks that a scene of a chapter shows. */
const inChapters = chapters.flatMap(({ text }) =>
  [...text.matchAll(/<Scene\b[^>]*>/gu)].flatMap(([tag]) =>
    [...tag.matchAll(/(?:look|against)="([\w-]+)"/gu)].map(([, id]) => id),
  ),
);

/** Looks of the home movie that neither the dictionary nor a chapter shows. */
const unseen = (shown: readonly (string | undefined)[]): readonly string[] =>
  Object.keys(LOOKS).filter((id) => id !== 'sound' && !shown.includes(id));

describe('the dictionary of faults', () => {
  it('has at least 28 faults, and some in every group', () => {
    expect(faults.length).toBeGreaterThanOrEqual(28);
    const groups = new Set(faults.map(({ group }) => group));
    expect([...groups].sort()).toEqual(Object.keys(FAULT_GROUPS).sort());
  });

  it('names each fault, and shows each look, once', () => {
    for (const key of ['id', 'name', 'look', 'seen'] as const) {
      expect(new Set(faults.map((fault) => fault[key])).size, key).toBe(faults.length);
    }
  });

  it.each(faults)('$id shows a look that is, and names a sheet that is', (fault) => {
    expect(Object.keys(LOOKS)).toContain(fault.look);
    if (fault.worksheet !== undefined) expect([...worksheets.keys()]).toContain(fault.worksheet);
    if (fault.section !== undefined) {
      const [path = ''] = fault.section.split('#');
      const plain = chapters.map(({ path: file }) => file.replaceAll(/\d+-/gu, ''));
      expect(plain).toContain(`content/chapters/${path}.mdx`);
    }
    expect(new Set(fault.cure).size).toBe(3);
    for (const text of [fault.seen, fault.cause, ...fault.cure]) expect(text).toMatch(/\.$/u);
  });

  it('leaves no look of the home movie unseen', () => {
    const shown = [...faults.map(({ look }) => look), ...inChapters];
    expect(unseen(shown)).toEqual([]);
    expect(unseen(shown.filter((look) => look !== 'dust'))).toEqual(['dust']);
  });

  it('gives safety before the cure where a hand or the film could be hurt', () => {
    const cureOf = (id: string): string =>
      faults.find((fault) => fault.id === id)?.cure.join(' ') ?? '';
    expect(cureOf('mould')).toMatch(/^Stop\..*lungs/u);
    expect(cureOf('hair')).toMatch(/^Lamp off, motor off, film out/u);
    expect(cureOf('lost-loop')).toMatch(/^Lamp off/u);
    expect(cureOf('torn-holes')).toMatch(/^Lamp off/u);
    expect(cureOf('warped')).toMatch(/^Stop/u);
    for (const id of ['breathing', 'smear-up', 'smear-down', 'smear-both', 'weave']) {
      expect(cureOf(id), id).toMatch(/plug/iu);
    }
    expect(cureOf('lamp-flicker')).toMatch(/^Take the film out.*qualified/u);
  });
});

describe('“What do you see?”', () => {
  it('has a line for every kind of trouble', () => {
    expect(troubles.length).toBeGreaterThanOrEqual(11);
  });

  it.each(troubles)('“$seen” leads to a fault with its picture', ({ id, fault, noPicture }) => {
    if (fault === undefined) {
      // Film that may be nitrate is never run: no bench has a picture of it.
      expect(id).toBe('nitrate');
      expect(noPicture).toMatch(/never run/u);
    } else {
      expect(faults.map((each) => each.id)).toContain(fault);
    }
  });

  it('refuses a line without a picture and without a reason', () => {
    const line = { id: 'x', seen: 'X', worksheet: 'flash-match', remedy: 'Y' };
    expect(troubleSchema.safeParse(line).success).toBe(false);
    expect(troubleSchema.safeParse({ ...line, fault: 'ghost' }).success).toBe(true);
  });
});
