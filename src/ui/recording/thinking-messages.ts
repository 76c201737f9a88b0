import type { BandMotion } from '../../core/file/band-motion.ts';
import type { RecordingBench } from '../../core/file/recording-bench.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import type { RecordingRefusal } from '../../core/file/recording-refusal.ts';
import type { BandLight } from '../../core/gate/band-light.ts';
import type {
  GateBench,
  GateReading,
  GateRefusal,
} from '../../core/gate/recording/gate-reading.ts';
import type { ClawNoiseReading, NoClawNoise } from '../../core/gate/recording/claw-noise.ts';
import type { FilmFound } from './film-found.ts';

/** What the thinking worker is asked; sums over a long recording take a while. */
export type ThinkingTask =
  | { readonly task: 'gate'; readonly light: BandLight; readonly bench: GateBench }
  /** Without a motion, of the one handed over before: it is large, and is moved, not copied. */
  | {
      readonly task: 'film';
      readonly motion: BandMotion | undefined;
      readonly bench: RecordingBench;
      readonly isReadoutMeasured: boolean;
    }
  /** Sound of one channel; moved, not copied. */
  | {
      readonly task: 'sound';
      readonly samples: Float32Array<ArrayBuffer>;
      readonly sampleRate: number;
      readonly expectedFilmFps: { readonly least: number; readonly most: number };
    }
  /** The film asked for last, with ties counted by hand. */
  | { readonly task: 'ties'; readonly ties: readonly KeepTie[] };

/** What it says; one answer to each task. */
export type ThinkingAnswer =
  | { readonly answer: 'gate'; readonly found: GateReading | GateRefusal }
  | { readonly answer: 'sound'; readonly found: ClawNoiseReading | NoClawNoise }
  | { readonly answer: 'film'; readonly found: FilmFound | RecordingRefusal };
