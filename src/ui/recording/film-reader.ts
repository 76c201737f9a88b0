import type { CodeRange } from '../../core/file/recorded-picture.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { REFUSAL_WORDS } from '../../core/file/recording-words.ts';
import type { RecordingFacts } from '../../clip/read/recording-facts.ts';
import { BROKE_OFF, decode, placeWords } from './decode.ts';
import type { FilmReading } from './film-found.ts';
import type { FilmSettings } from './film-settings.ts';
import type { ReadTools, RecordingReader, Refusal, Source } from './recording-kind.ts';
import type { ThinkingAnswer } from './thinking-messages.ts';
import { Thinking, ThinkingFailedError } from './thinking.ts';

/** What is kept of a file whose motion the thinking worker holds. */
interface Decoded {
  readonly file: Blob;
  readonly frameSeconds: Float64Array;
  readonly codeRange: CodeRange;
  readonly codedWidth: number;
  readonly codedHeight: number;
}

/** A reader of film recordings. */
export interface FilmReader extends RecordingReader<FilmSettings, FilmReading> {
  /** The reading done last, with ties counted by hand. Undefined when it is no longer held. */
  withTies(ties: readonly KeepTie[]): Promise<FilmReading | undefined>;
  /** Times of the camera frames of the file read last, s. */
  frameSeconds(): Float64Array | undefined;
}

const BT601: readonly string[] = ['smpte170m', 'bt470bg'];

/** Range and matrix that a file names, as the commands ask for them. */
export function codeRangeOf({ colour }: RecordingFacts): CodeRange {
  const { matrix, isFullRange } = colour;
  if (!isFullRange) return matrix === undefined ? 'limited-unnamed' : 'limited';
  if (matrix === 'bt709') return 'full-bt709';
  return matrix !== undefined && BT601.includes(matrix) ? 'full-bt601' : 'full-unnamed';
}

const READS = 'Reading the movement in each frame';

/** Reads recordings of film. */
export function filmReader(): FilmReader {
  const thinking = new Thinking();
  let last: Decoded | undefined;

  const asReading = (answer: ThinkingAnswer | 'stopped'): FilmReading | Refusal | undefined => {
    if (answer === 'stopped' || answer.answer !== 'film' || last === undefined) return undefined;
    const { found } = answer;
    if (found.kind === 'film') {
      const { codeRange, codedWidth, codedHeight } = last;
      return { ...found, codeRange, codedWidth, codedHeight };
    }
    const { says, toDo } = REFUSAL_WORDS[found.reason];
    return { kind: 'refusal', says, toDo, place: placeWords(found.atSeconds) };
  };

  const think = async (
    task: Parameters<Thinking['ask']>[0],
    signal: AbortSignal,
  ): Promise<FilmReading | Refusal | undefined> => {
    try {
      const answer = await thinking.ask(task, signal);
      // A worker that was ended has forgotten the film.
      const reading = asReading(answer);
      if (answer === 'stopped') last = undefined;
      return reading;
    } catch (error) {
      last = undefined;
      if (error instanceof ThinkingFailedError) return BROKE_OFF;
      throw error;
    }
  };

  return {
    async read(
      { file }: Source,
      { bench, isReadoutMeasured }: FilmSettings,
      { signal, onProgress }: ReadTools,
    ) {
      if (last?.file === file) {
        onProgress({ words: 'Following the film', share: undefined });
        return think({ task: 'film', motion: undefined, bench, isReadoutMeasured }, signal);
      }
      last = undefined;
      // The film before is forgotten: ending its worker frees what it held, and its leavings, at once.
      thinking.end();
      onProgress({ words: READS, share: 0 });
      const reading = await decode(file, {
        want: 'film',
        signal,
        onProgress: ({ share }) => {
          onProgress({ words: READS, share });
        },
      });
      if (reading === undefined || reading.kind === 'refusal') return reading;
      if (reading.kind !== 'film') return BROKE_OFF;
      const { motion, facts } = reading;
      const frameSeconds = motion.frameSeconds.slice();
      const { codedWidth, codedHeight } = facts;
      last = { file, frameSeconds, codeRange: codeRangeOf(facts), codedWidth, codedHeight };
      onProgress({ words: 'Following the film', share: undefined });
      return think({ task: 'film', motion, bench, isReadoutMeasured }, signal);
    },
    async withTies(ties) {
      if (last === undefined) return undefined;
      const reading = await think({ task: 'ties', ties }, new AbortController().signal);
      return reading?.kind === 'film' ? reading : undefined;
    },
    frameSeconds: () => last?.frameSeconds,
    end() {
      last = undefined;
      thinking.end();
    },
  };
}
