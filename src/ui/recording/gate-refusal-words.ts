import { BAND_COUNT } from '../../core/gate/band-light.ts';
import type { GateRefusal, PossibleAnswer } from '../../core/gate/recording/gate-reading.ts';
import { CAUSE_WORDS, REFUSAL_WORDS } from '../../core/gate/recording/gate-words.ts';
import { formatDuration, formatQuantity } from '../../quantity/format.ts';
import type { Refusal } from './recording-kind.ts';

function answerWords({ cause, filmFps }: PossibleAnswer): string {
  const { name } = CAUSE_WORDS[cause];
  return filmFps === undefined ? name : `${name}, film at ${formatQuantity(filmFps, 'fps', 4)}`;
}

/** How much of it there is, for a sentence of its own; empty where a number says nothing more. */
function amountWords({ reason, amount }: GateRefusal): string {
  if (amount === undefined) return '';
  const percent = formatQuantity(amount * 100, 'percent', 2);
  switch (reason) {
    case 'too-short':
      return ` What was read lasts ${formatQuantity(amount, 's', 2)}.`;
    case 'clipped':
      return ` That is ${percent} of the picture.`;
    case 'black':
      return ` ${percent} of the picture is black.`;
    case 'something-moves':
      return ` It changes the light there by ${percent}.`;
    case 'unexplained':
      return ` What is left unexplained is ${percent} of the light.`;
    default:
      return '';
  }
}

function placeOf({ seconds, band }: GateRefusal, fromSeconds: number): string | undefined {
  const parts = [
    ...(seconds === undefined ? [] : [`at ${formatDuration(fromSeconds + seconds)}`]),
    ...(band === undefined
      ? []
      : [`in band ${band + 1} of ${BAND_COUNT}, counted from the first row of the recording`]),
  ];
  return parts.length === 0 ? undefined : `${parts.join(', ')}.`;
}

/**
 * A recording of the gate that is not read, in words.
 *
 * @param fromSeconds  beginning of the part that was read, s
 */
export function gateRefusalWords(refusal: GateRefusal, fromSeconds: number): Refusal {
  const { reason, remedy } = REFUSAL_WORDS[refusal.reason];
  const answers = refusal.answers.map(answerWords);
  const named = answers.length === 0 ? '' : ` Either: ${answers.join('. Or: ')}.`;
  return {
    kind: 'refusal',
    says: `${reason}${amountWords(refusal)}${named}`,
    place: placeOf(refusal, fromSeconds),
    toDo: remedy,
  };
}
