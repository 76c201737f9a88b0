// Sound files of 24 bits, written and read sample by sample.
import { readFileSync, writeFileSync } from 'node:fs';

/** Sound as stored: whole samples of one channel after another. */
export interface Sound {
  readonly sampleRate: number;
  readonly bits: number;
  readonly channels: number;
  /** Samples of the first channel. */
  readonly samples: Int32Array;
}

/** Writes a sound of 24 bits, the same in each channel. */
export function writeSound(
  path: string,
  sampleRate: number,
  channels: number,
  samples: Int32Array,
): void {
  const frame = 3 * channels;
  const bytes = Buffer.alloc(44 + samples.length * frame);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(channels, 22);
  bytes.writeUInt32LE(sampleRate, 24);
  bytes.writeUInt32LE(sampleRate * frame, 28);
  bytes.writeUInt16LE(frame, 32);
  bytes.writeUInt16LE(24, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(samples.length * frame, 40);
  for (const [at, sample] of samples.entries()) {
    for (let channel = 0; channel < channels; channel += 1) {
      bytes.writeIntLE(sample, 44 + at * frame + channel * 3, 3);
    }
  }
  writeFileSync(path, bytes);
}

/** Reads a sound file of whole samples. */
export function readSound(path: string): Sound {
  const bytes = readFileSync(path);
  const format = bytes.indexOf('fmt ') + 8;
  const data = bytes.indexOf('data', format);
  const channels = bytes.readUInt16LE(format + 2);
  const sampleRate = bytes.readUInt32LE(format + 4);
  const bits = bytes.readUInt16LE(format + 14);
  const width = bits / 8;
  const count = Math.floor((bytes.length - data - 8) / (width * channels));
  const samples = Int32Array.from({ length: count }, (_, at) =>
    bytes.readIntLE(data + 8 + at * width * channels, width),
  );
  return { sampleRate, bits, channels, samples };
}

/** Time of the loudest sample, s. */
export function loudestSeconds({ samples, sampleRate }: Sound): number {
  let loudest = 0;
  for (let at = 0; at < samples.length; at += 1) {
    if (Math.abs(samples[at]!) > Math.abs(samples[loudest]!)) loudest = at;
  }
  return loudest / sampleRate;
}

/** Root of the mean square between two times, in steps of 24 bits. */
export function rmsBetween({ samples, sampleRate }: Sound, from: number, to: number): number {
  const part = samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate));
  return Math.sqrt(part.reduce((sum, sample) => sum + sample ** 2, 0) / part.length);
}
