import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { LevelDraw } from './case-kind.ts';
import { drawnOne, drawnWhole, shuffled, type Chance } from './chance.ts';

const RANGE = /^from (-?[\d.]+) to (-?[\d.]+) by ([\d.]+)$/u;

/** A text to draw from as an entry: itself, or one number out of its range. */
export function drawnText(chance: Chance, text: string): string {
  const range = RANGE.exec(text);
  if (range === null) return text;
  const [, from = '', to = '', by = ''] = range;
  const steps = Math.round((Number(to) - Number(from)) / Number(by));
  const decimals = Math.max(...[from, by].map((each) => each.split('.')[1]?.length ?? 0));
  return (Number(from) + drawnWhole(chance, 0, steps) * Number(by)).toFixed(decimals);
}

function drawnOver(
  chance: Chance,
  keys: readonly string[],
  of: Readonly<Record<string, readonly string[]>>,
): Entries {
  return Object.fromEntries(
    keys.map((key) => [key, drawnText(chance, drawnOne(chance, of[key] ?? []) ?? '')]),
  );
}

/** Entries for one case: a story, what varies, and the findings put over it. */
export function drawnEntries(chance: Chance, draw: LevelDraw): Entries {
  const story = drawnOne(chance, draw.stories ?? []) ?? {};
  const { vary = {}, changes } = draw;
  const told = Object.fromEntries(
    Object.entries(story).map(([key, text]) => [key, drawnText(chance, text)]),
  );
  const varied = drawnOver(chance, Object.keys(vary), vary);
  if (changes === undefined) return { ...told, ...varied };
  const count = drawnWhole(chance, changes.least, changes.most);
  const keys = shuffled(chance, Object.keys(changes.of)).slice(0, count);
  return { ...told, ...varied, ...drawnOver(chance, keys, changes.of) };
}
