import { convertUnit, UNITS } from '../../src/quantity/units.ts';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpec, InputSpecs, Worksheet } from '../../src/worksheets/machine/types.ts';
import { faultsOf } from './outcome-faults.ts';

/** Both ends of an input's range, as a reader would type them. */
export function endsOf(spec: InputSpec): readonly string[] {
  switch (spec.kind) {
    case 'choice':
      return Object.keys(spec.options);
    case 'text':
      return spec.mayBeEmpty ? ['', 'ß'.repeat(spec.longest)] : ['a', 'ß'.repeat(spec.longest)];
    case 'count':
      return [String(spec.minimum), String(spec.maximum)];
    case 'list':
    case 'quantity':
    case 'optional-quantity': {
      const shown = spec.entryUnit ?? spec.unit;
      const ends = [spec.minimum, spec.maximum].map((end) => {
        const number = String(Number(convertUnit(end, spec.unit, shown).toPrecision(15)));
        return `${number} ${UNITS[shown].symbol}`.trim();
      });
      if (spec.kind === 'list') return [...ends, ends.join('; ')];
      return spec.kind === 'optional-quantity' ? ['', ...ends] : ends;
    }
  }
}

/** Every combination of ends where there are few, else a spread of them that hits each end. */
function cornersOf(specs: InputSpecs, most: number): readonly Entries[] {
  const keys = Object.keys(specs);
  const ends = keys.map((key) => endsOf(specs[key]!));
  const total = ends.reduce((product, each) => product * each.length, 1);
  // A step that shares no factor with small counts walks through all digits of the mixed number.
  const step = total <= most ? 1 : Math.floor(total / most) | 1;
  const corners: Entries[] = [];
  for (let index = 0; index < total && corners.length < most; index += step) {
    let rest = index;
    const entries: Record<string, string> = {};
    keys.forEach((key, place) => {
      const choices = ends[place]!;
      entries[key] = choices[rest % choices.length]!;
      rest = Math.floor(rest / choices.length);
    });
    corners.push(entries);
  }
  return corners;
}

/** What is wrong at up to `most` corners of the ranges of a sheet, with the entries; the first five. */
export function cornerFaults(
  worksheet: Worksheet,
  most: number,
): readonly { readonly entries: Entries; readonly fault: string }[] {
  const specs = worksheet.inputs;
  return cornersOf(specs, most)
    .flatMap((entries, index) =>
      faultsOf(specs, evaluate(worksheet, entries), index % 100 === 0).map((fault) => ({
        entries,
        fault,
      })),
    )
    .slice(0, 5);
}
