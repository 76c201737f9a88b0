import { drawnValue } from './drawn-value.ts';

/** Modules as import.meta.glob gives them, by path. */
export type Modules = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** One line for a value; an object or a list of objects takes a line for each part. */
function linesOf(name: string, value: unknown): readonly string[] {
  const isList = Array.isArray(value);
  const isNested =
    typeof value === 'object' && value !== null && Object.getPrototypeOf(value) !== Map.prototype;
  const shown = { significantDigits: 12, longest: 100 };
  if (!isNested || (isList && value.every((part) => typeof part !== 'object'))) {
    return [`${name}: ${drawnValue(value, shown)}`];
  }
  return [
    `${name}:`,
    ...Object.entries(value).map(([key, part]) => `  ${key}: ${drawnValue(part, shown)}`),
  ];
}

/** Every exported table, limit and word of the modules; functions are left out. */
export function constantLines(modules: Modules): readonly string[] {
  return Object.entries(modules).flatMap(([path, exported]) => {
    const constants = Object.entries(exported).filter(([, value]) => typeof value !== 'function');
    if (constants.length === 0) return [];
    const said = constants
      .sort(([a], [b]) => a.localeCompare(b))
      .flatMap(([name, value]) => linesOf(name, value));
    return [`## ${path.replaceAll('../', '')}`, ...said, ''];
  });
}
