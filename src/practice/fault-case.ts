import type { CaseLevel } from './case-kind.ts';
import { drawnOne, seededChance, shuffled } from './chance.ts';
import type { DrawnChoice } from './draw-case.ts';

/** A fault of the dictionary with its picture, as practice fetches it. */
export interface ShownFault {
  readonly id: string;
  readonly name: string;
  readonly group: string;
  readonly seen: string;
  readonly cause: string;
  /** The cure, step by step. */
  readonly cure: readonly string[];
  /** What the scene plays, as the text that its element carries. */
  readonly scene: string;
  /** Name of its still. */
  readonly still: string;
  /** The sheet or section that helps. */
  readonly help: { readonly href: string; readonly title: string };
}

/** A kind of case that is judged by the eye: the scene plays a recording. */
export interface FaultCaseKind {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  /** What the choices are. */
  readonly asks: 'name' | 'cure';
}

export const FAULT_CASES: readonly FaultCaseKind[] = [
  {
    id: 'name-the-fault',
    title: 'What is wrong with this recording?',
    question: 'What do you see?',
    asks: 'name',
  },
  {
    id: 'cure-the-fault',
    title: 'This is on the screen. What now?',
    question: 'What do you do first?',
    asks: 'cure',
  },
];

/**
 * Groups whose faults look so unlike, and are cured so differently, that nobody who looked would take
 * one for the other: no second choice may be right as well.
 */
const FAR: Readonly<Record<string, readonly string[]>> = {
  shutter: ['running', 'film', 'lens', 'file'],
  mixed: ['running', 'film', 'lens'],
  running: ['shutter', 'lens', 'colour', 'file'],
  film: ['shutter', 'mixed', 'lens', 'file'],
  lens: ['shutter', 'mixed', 'running', 'file'],
  colour: ['mixed', 'running', 'file'],
  file: ['shutter', 'running', 'lens', 'colour'],
};

/** A fault as it is put to the trainee. */
export interface DrawnFault {
  readonly kind: string;
  readonly title: string;
  readonly level: CaseLevel;
  readonly seed: string;
  readonly question: string;
  readonly fault: ShownFault;
  /** What is seen, in words, where the level tells it. */
  readonly told: string | undefined;
  readonly choices: readonly DrawnChoice[];
  /** Why the right one is right, after it. */
  readonly why: string;
}

const SHOWN = 4;

const textOf = ({ asks }: FaultCaseKind, fault: ShownFault): string =>
  asks === 'name' ? fault.name : (fault.cure[0] ?? '');

/** Why another fault's choice is wrong: what one would have to see. */
const reasonFor = ({ asks }: FaultCaseKind, { name, seen }: ShownFault): string =>
  asks === 'name'
    ? `There you would see this: ${seen}`
    : `That is the first step where you see: ${name}.`;

/**
 * A recording with one fault of the dictionary, the same for the same seed. Level 1 tells what is seen
 * and offers faults of another sort; level 2 tells it and offers neighbours, level 3 shows the picture
 * alone. What to do first is only asked among unlike faults, where one answer is right.
 *
 * @param faults  the dictionary
 * @throws {Error} for a dictionary without faults
 */
export function drawFaultCase(
  kind: FaultCaseKind,
  faults: readonly ShownFault[],
  level: CaseLevel,
  seed: string,
): DrawnFault {
  const chance = seededChance(`${kind.id}/${level}/${seed}`);
  const fault = drawnOne(chance, faults);
  if (fault === undefined) throw new Error('a dictionary without faults');
  const isNear = kind.asks === 'name' && level > 1;
  const groups = isNear ? [fault.group] : (FAR[fault.group] ?? []);
  const right = textOf(kind, fault);
  const others = faults.filter(
    (other, index) =>
      other.id !== fault.id &&
      groups.includes(other.group) &&
      textOf(kind, other) !== right &&
      // Some faults share a step: it stands once.
      faults.findIndex((each) => textOf(kind, each) === textOf(kind, other)) === index,
  );
  const wrong = shuffled(chance, others)
    .slice(0, SHOWN - 1)
    .map((other) => ({
      text: textOf(kind, other),
      isRight: false,
      reason: reasonFor(kind, other),
    }));
  const choices = shuffled(chance, [{ text: right, isRight: true, reason: fault.cause }, ...wrong]);
  const { id, title, question } = kind;
  const told = level < 3 ? fault.seen : undefined;
  const why = kind.asks === 'name' ? fault.cause : `${fault.name}. ${fault.cause}`;
  return { kind: id, title, level, seed, question, fault, told, choices, why };
}
