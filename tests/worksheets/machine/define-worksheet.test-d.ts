// Mistakes of an author that must not compile. Read by the compiler only (`npm run check:types`): where
// one of them did compile, the compiler would report the directive above it as unused.
import { quantity } from '../../../src/worksheets/machine/answers.ts';
import {
  defineWorksheet,
  type WorksheetDefinition,
} from '../../../src/worksheets/machine/define-worksheet.ts';
import type { InputSpecs } from '../../../src/worksheets/machine/types.ts';

const frame = {
  id: 'running-time',
  title: 'Running time',
  question: 'How long does this film run?',
  chapter: 'reel/length',
  model: 'Frames divided by film rate.',
  cautions: [],
  sources: ['arithmetic'],
} as const;

const inputs = {
  frames: {
    kind: 'count',
    label: 'Frames',
    help: 'Counted.',
    minimum: 1,
    maximum: 10_000,
    default: '3600',
    accepted: '3600',
  },
  spareFrames: {
    kind: 'optional-quantity',
    label: 'Spare frames',
    help: 'Empty if none.',
    unit: 'frames',
    minimum: 1,
    maximum: 10_000,
    default: '',
    accepted: '10',
  },
  direction: {
    kind: 'choice',
    label: 'Direction',
    help: 'Forward as a rule.',
    options: { forward: 'forward', backward: 'backward' },
    default: 'forward',
  },
} as const satisfies InputSpecs;

const answers = { seconds: 'Running time' } as const;

/** The sheet without a mistake; each sheet below differs from it in one place. */
export const withoutMistake = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames, spareFrames = 0 }) => ({ seconds: (frames + spareFrames) / 18 }),
  outcome: ({ seconds }) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    answers: { seconds: quantity(seconds, 's') },
  }),
  working: ({ seconds }, told) => [{ words: `${seconds}`, sum: told('seconds') }],
});

export const misspeltAnswer = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  outcome: ({ seconds }) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    // @ts-expect-error -- `secnds` is a misspelt answer
    answers: { secnds: quantity(seconds, 's') },
  }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const answerWithoutLabel = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  // @ts-expect-error -- `minutes` has no label among the answers
  outcome: ({ seconds }) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    answers: { seconds: quantity(seconds, 's'), minutes: quantity(seconds / 60, 'min') },
  }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const answerWithoutLabelInOneCase = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  // @ts-expect-error -- `minutes` has no label among the answers
  outcome({ seconds }) {
    const verdict = { level: 'note', sentence: 'It runs.' } as const;
    if (seconds < 60) return { verdict, answers: { seconds: quantity(seconds, 's') } };
    return { verdict, answers: { minutes: quantity(seconds / 60, 'min') } };
  },
  working: (_found, told) => [{ words: told('seconds') }],
});

export const misspeltCautions = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  // @ts-expect-error -- `cautoins` would never be printed
  outcome: ({ seconds }) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    answers: { seconds: quantity(seconds, 's') },
    cautoins: ['Keep your fingers off the gate.'],
  }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const misspeltTold = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  outcome: ({ seconds }) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    answers: { seconds: quantity(seconds, 's') },
  }),
  // @ts-expect-error -- `secnds` is a misspelt answer
  working: (_found, told) => [{ words: told('secnds') }],
});

export const emptyFieldForgotten = defineWorksheet({
  ...frame,
  inputs,
  answers,
  // @ts-expect-error -- `spareFrames` may be left empty
  find: ({ frames, spareFrames }) => ({ seconds: (frames + spareFrames) / 18 }),
  outcome: () => ({ verdict: { level: 'note', sentence: 'It runs.' }, answers: {} }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const choiceTakenForNumber = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ direction }) => {
    // @ts-expect-error -- a choice is a key, not a number
    const turns: number = direction;
    return turns;
  },
  outcome: () => ({ verdict: { level: 'note', sentence: 'It runs.' }, answers: {} }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const optionThatIsNone = defineWorksheet({
  ...frame,
  inputs,
  answers,
  // @ts-expect-error -- `sideways` is none of the options
  find: ({ direction }) => direction === 'sideways',
  outcome: () => ({ verdict: { level: 'note', sentence: 'It runs.' }, answers: {} }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const misspeltInput = defineWorksheet({
  ...frame,
  inputs,
  answers,
  // @ts-expect-error -- `frmes` is no input
  find: ({ frmes }) => frmes,
  outcome: () => ({ verdict: { level: 'note', sentence: 'It runs.' }, answers: {} }),
  working: (_found, told) => [{ words: told('seconds') }],
});

export const misspeltFinding = defineWorksheet({
  ...frame,
  inputs,
  answers,
  find: ({ frames }) => ({ seconds: frames / 18 }),
  outcome: (found) => ({
    verdict: { level: 'note', sentence: 'It runs.' },
    // @ts-expect-error -- `secnds` was not found
    answers: { seconds: quantity(found.secnds, 's') },
  }),
  working: (_found, told) => [{ words: told('seconds') }],
});

type Labels = WorksheetDefinition<typeof inputs, number, 'frames' | 'seconds'>['answers'];

/** Every answer needs its label. */
// @ts-expect-error -- `frames` is an answer, and no label is given for it
export const labelForgotten: Labels = { seconds: 'Running time' };
