import { describe, expect, it } from 'vitest';
import { CASE_LEVELS } from '../../src/practice/case-kind.ts';
import { drawFaultCase, FAULT_CASES, type ShownFault } from '../../src/practice/fault-case.ts';
import { FAULT_GROUPS } from '../../src/schemas/fault.ts';
import { faultPictures } from '../../src/book/fault-pictures.ts';
import { readFaults } from '../content/read-content.ts';

const faults: readonly ShownFault[] = readFaults().map((fault) => {
  const { data, still } = faultPictures(fault.look, fault.name).fault;
  return { ...fault, scene: JSON.stringify(data), still, help: { href: '/', title: '' } };
});
const byName = new Map(faults.map((fault) => [fault.name, fault]));
const SEEDS = 300;

describe.each(FAULT_CASES)('recordings to judge: $id', (kind) => {
  const drawn = CASE_LEVELS.flatMap((level) =>
    Array.from({ length: SEEDS }, (_, seed) => drawFaultCase(kind, faults, level, `seed ${seed}`)),
  );

  it('have one right choice of four, no two alike, and a reason for every wrong one', () => {
    for (const { choices, level, seed } of drawn) {
      const place = `level ${level}, ${seed}`;
      expect(choices.filter(({ isRight }) => isRight).length, place).toBe(1);
      expect(new Set(choices.map(({ text }) => text)).size, place).toBe(choices.length);
      expect(choices.length, place).toBeGreaterThanOrEqual(3);
      for (const { reason } of choices) expect(reason.length, place).toBeGreaterThan(12);
    }
  });

  it('show every fault of the dictionary sooner or later', () => {
    expect(new Set(drawn.map(({ fault }) => fault.id)).size).toBe(faults.length);
  });

  it('are the same for the same seed', () => {
    const again = drawFaultCase(kind, faults, 2, 'spring');
    expect(drawFaultCase(kind, faults, 2, 'spring')).toEqual(again);
  });

  it('tell what is seen up to level 2, and never what it is called', () => {
    for (const { told, level, fault } of drawn) {
      expect(told, `${fault.id}, level ${level}`).toBe(level === 3 ? undefined : fault.seen);
      expect(told ?? '').not.toContain(fault.name);
    }
  });
});

/** Groups between which one first step may be right for both, by hand from the dictionary's cures. */
const NEAR: readonly (readonly [string, string])[] = [
  ['shutter', 'mixed'], // the exposure of one flash
  ['shutter', 'colour'], // black bars and too dark a picture
  ['running', 'film'], // clean the machine first
  ['lens', 'colour'], // lamp and diffuser
  ['film', 'colour'], // pink film, and a camera set for another light
  ['mixed', 'file'], // double in the recording, and in the copy
];

describe('what to do first', () => {
  const [, cure] = FAULT_CASES;
  if (cure === undefined) throw new Error('no such kind');

  it('is never asked among faults whose first steps could both be right', () => {
    for (let seed = 0; seed < SEEDS; seed += 1) {
      for (const level of CASE_LEVELS) {
        const { fault, choices } = drawFaultCase(cure, faults, level, String(seed));
        const others = choices.filter(({ isRight }) => !isRight);
        for (const { text, reason } of others) {
          const owner = faults.find((each) => reason.includes(`: ${each.name}.`));
          expect(owner?.cure[0], reason).toBe(text);
          expect(owner?.group, fault.id).not.toBe(fault.group);
          for (const pair of NEAR) {
            expect(pair.includes(fault.group) && pair.includes(owner?.group ?? ''), fault.id).toBe(
              false,
            );
          }
        }
      }
    }
  });
});

describe('naming a fault', () => {
  const [name] = FAULT_CASES;
  if (name === undefined) throw new Error('no such kind');

  it('offers other sorts at level 1 and neighbours from level 2 on', () => {
    for (let seed = 0; seed < SEEDS; seed += 1) {
      for (const level of CASE_LEVELS) {
        const { fault, choices } = drawFaultCase(name, faults, level, String(seed));
        const groups = choices
          .filter(({ isRight }) => !isRight)
          .map(({ text }) => byName.get(text)?.group);
        for (const group of groups) {
          expect(group !== undefined && group in FAULT_GROUPS).toBe(true);
          if (level === 1) expect(group).not.toBe(fault.group);
          else expect(group).toBe(fault.group);
        }
      }
    }
  });
});
