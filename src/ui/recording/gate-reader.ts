import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import type { BandLight } from '../../core/gate/band-light.ts';
import { BROKE_OFF, decode } from './decode.ts';
import { gateRefusalWords } from './gate-refusal-words.ts';
import type { GateSettings } from './gate-settings.ts';
import type { RecordingReader, Source } from './recording-kind.ts';
import { Thinking, ThinkingFailedError } from './thinking.ts';

/** Light of the part that was decoded last. */
interface Decoded {
  readonly file: Blob;
  readonly fromSeconds: number;
  readonly seconds: number;
  readonly light: BandLight;
}

function isOf(decoded: Decoded, { file }: Source, settings: GateSettings): boolean {
  const { fromSeconds, seconds } = settings;
  return (
    decoded.file === file && decoded.fromSeconds === fromSeconds && decoded.seconds === seconds
  );
}

/** Reads recordings of the empty gate. */
export function gateReader(): RecordingReader<GateSettings, GateReading> {
  const thinking = new Thinking();
  let last: Decoded | undefined;
  return {
    async read(source, settings, { signal, onProgress }) {
      const { fromSeconds, seconds, bench } = settings;
      let decoded = last;
      if (decoded === undefined || !isOf(decoded, source, settings)) {
        last = undefined;
        onProgress({ words: 'Reading the light of each frame', share: 0 });
        const reading = await decode(source.file, {
          want: 'gate',
          fromSeconds,
          seconds,
          signal,
          onProgress: ({ share }) => {
            onProgress({ words: 'Reading the light of each frame', share });
          },
        });
        if (reading === undefined || reading.kind === 'refusal') return reading;
        if (reading.kind !== 'gate') return BROKE_OFF;
        decoded = { file: source.file, fromSeconds, seconds, light: reading.light };
        last = decoded;
      }
      onProgress({ words: 'Finding out why the light changes', share: undefined });
      try {
        const answer = await thinking.ask({ task: 'gate', light: decoded.light, bench }, signal);
        if (answer === 'stopped' || answer.answer !== 'gate') return undefined;
        const { found } = answer;
        return found.kind === 'reading' ? found : gateRefusalWords(found, fromSeconds);
      } catch (error) {
        if (error instanceof ThinkingFailedError) return BROKE_OFF;
        throw error;
      }
    },
    end() {
      last = undefined;
      thinking.end();
    },
  };
}
