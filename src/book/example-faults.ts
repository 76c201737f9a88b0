import type { Example } from '../schemas/example.ts';
import { evaluate, fillEntries } from '../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../worksheets/machine/types.ts';
import { plainSpaces } from './computed.ts';

/**
 * What a worked example states that its worksheet does not say: unknown inputs, refused entries, another
 * verdict, other answers. Empty when all of it holds.
 */
export function exampleFaults(worksheet: Worksheet, example: Example): readonly string[] {
  const specs = worksheet.inputs;
  const unknown = Object.keys(example.entries).filter((key) => !Object.hasOwn(specs, key));
  if (unknown.length > 0) {
    const known = Object.keys(specs).join(', ');
    return unknown.map((key) => `there is no input “${key}”; known: ${known}`);
  }
  const { outcome, message, messages } = evaluate(worksheet, fillEntries(specs, example.entries));
  if (outcome === undefined) {
    const reasons = Object.entries(messages).map(([key, reason]) => `${key}: ${reason}`);
    return [`it is refused: ${[...reasons, message ?? ''].join(' ').trim()}`];
  }
  const { verdict, answers } = outcome;
  const differs = (name: string, said: string, stated: string): readonly string[] =>
    plainSpaces(said) === plainSpaces(stated)
      ? []
      : [`${name} is stated as “${stated}”, the core says “${plainSpaces(said)}”`];
  return [
    ...differs('the verdict’s level', verdict.level, example.verdict.level),
    ...differs('the verdict', verdict.sentence, example.verdict.sentence),
    ...Object.entries(example.answers).flatMap(([key, stated]) => {
      const answer = Object.hasOwn(answers, key) ? answers[key] : undefined;
      return answer === undefined
        ? [`there is no answer “${key}”; known: ${Object.keys(answers).join(', ')}`]
        : differs(key, answer.text, stated);
    }),
  ];
}
