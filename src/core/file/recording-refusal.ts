/** Why a recording of film cannot be read. */
export const REFUSAL_REASONS = [
  'too-short',
  'irregular-times',
  'camera-too-slow',
  'film-too-slow',
  'exposure-too-short',
  'nothing-told',
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** A recording that cannot be read: the reason, and the place where there is one. */
export interface RecordingRefusal {
  readonly kind: 'refused';
  readonly reason: RefusalReason;
  /** Time in the recording at which it shows, s. */
  readonly atSeconds?: number;
}
