// The sound of a projector beside a camera, made noise by noise; nothing comes from the book's own code.
import { makeChance, type Chance } from './film-clip/chance.ts';

/** Noises of one film frame: how many, how alike, how loud. */
export interface ProjectorSound {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly filmFps: number;
  /** Clicks of the claw in a film frame; the second and later ones this much as loud as the first. */
  readonly clicks: number;
  readonly laterClicks: number;
  readonly clickLevel: number;
  /** Spread of the moment of a click, s. */
  readonly jitterSeconds: number;
  /** Largest share by which the speed wanders. */
  readonly wander: number;
  /** Wind of the shutter: bursts in a film frame, level. */
  readonly blades: number;
  readonly windLevel: number;
  readonly motorHertz: number;
  readonly motorLevel: number;
  readonly mainsHertz: number;
  readonly mainsLevel: number;
  readonly hissLevel: number;
  readonly voiceLevel: number;
  readonly musicLevel: number;
  /** Gain before the limit at ±1. */
  readonly gain: number;
}

export const PLAIN_SOUND: ProjectorSound = {
  sampleRate: 48_000,
  seconds: 12,
  filmFps: 18,
  clicks: 1,
  laterClicks: 1,
  clickLevel: 0.15,
  jitterSeconds: 0.0005,
  wander: 0.003,
  blades: 0,
  windLevel: 0,
  motorHertz: 93,
  motorLevel: 0.03,
  mainsHertz: 50,
  mainsLevel: 0.05,
  hissLevel: 0.01,
  voiceLevel: 0,
  musicLevel: 0,
  gain: 1,
};

/** Times at which each film frame begins, from the speed in short steps. */
function frameTimes(
  chance: Chance,
  { filmFps, seconds, wander }: ProjectorSound,
): {
  readonly times: readonly number[];
  readonly meanFps: number;
} {
  const swings = [0.07, 0.19, 0.31].map((hertz) => ({
    hertz: hertz * chance.between(0.7, 1.3),
    turn: chance.between(0, 2 * Math.PI),
  }));
  const times: number[] = [];
  const step = 1 / 4000;
  let gone = chance.between(0, 1);
  const start = gone;
  for (let time = 0; time < seconds; time += step) {
    let speed = 1;
    for (const { hertz, turn } of swings)
      speed += (wander / 3) * Math.sin(2 * Math.PI * hertz * time + turn);
    const next = gone + filmFps * speed * step;
    if (Math.floor(next) > Math.floor(gone))
      times.push(time + (step * (Math.floor(next) - gone)) / (next - gone));
    gone = next;
  }
  return { times, meanFps: (gone - start) / seconds };
}

/** A ringing knock with a wide range of pitch. */
function addClick(
  into: Float64Array,
  sampleRate: number,
  at: number,
  level: number,
  chance: Chance,
): void {
  const from = Math.ceil(at * sampleRate);
  const turn = chance.between(0, 6);
  for (let sample = from; sample < from + 0.012 * sampleRate && sample < into.length; sample += 1) {
    if (sample < 0) continue;
    const age = sample / sampleRate - at;
    const ring =
      Math.sin(2 * Math.PI * 780 * age + turn) +
      0.7 * Math.sin(2 * Math.PI * 2350 * age) +
      0.6 * chance.normal();
    into[sample]! += level * Math.exp(-age / 0.0025) * ring;
  }
}

function addVoice(into: Float64Array, sampleRate: number, level: number, chance: Chance): void {
  let at = 0;
  while (at < into.length) {
    // A syllable: a pitch that glides, with formants, between pauses.
    const length = chance.between(0.08, 0.3) * sampleRate;
    const pitch = chance.between(90, 240);
    const glide = chance.between(-0.2, 0.2);
    const formants = [chance.between(300, 800), chance.between(900, 2300), 2800];
    const loud = level * chance.between(0.4, 1);
    let phase = 0;
    for (let each = 0; each < length && at + each < into.length; each += 1) {
      const share = each / length;
      phase += (pitch * (1 + glide * share)) / sampleRate;
      const age = (phase % 1) / pitch;
      let value = 0;
      for (const formant of formants)
        value += Math.exp(-age * 2 * Math.PI * 60) * Math.sin(2 * Math.PI * formant * age);
      into[Math.floor(at + each)]! += loud * Math.sin(Math.PI * share) * value * 0.5;
    }
    at += length + chance.between(0.02, chance.happens(0.2) ? 0.8 : 0.12) * sampleRate;
  }
}

function addMusic(into: Float64Array, sampleRate: number, level: number, chance: Chance): void {
  const beat = chance.between(0.22, 0.6) * sampleRate;
  const base = chance.between(60, 120);
  for (let from = 0; from < into.length; from += beat) {
    const notes = [0, 4, 7, 12].map(
      (half) => base * 2 ** ((half + chance.pick([0, 0, 2, 5])) / 12 + chance.pick([0, 1, 2])),
    );
    for (const note of notes) {
      for (let each = 0; each < beat * 1.5 && from + each < into.length; each += 1) {
        const age = each / sampleRate;
        let value = 0;
        for (let part = 1; part <= 8 && part * note < 0.45 * sampleRate; part += 1)
          value +=
            Math.sin(
              2 * Math.PI * part * note * age * (1 + 0.003 * Math.sin(2 * Math.PI * 5.5 * age)),
            ) / part;
        into[Math.floor(from + each)]! += level * 0.25 * Math.exp(-age * 3) * value;
      }
    }
    addClick(into, sampleRate, from / sampleRate, level * 0.8, chance);
  }
}

/** A hum of nine partials, a sample at a time; `ahead` is how far each partial is ahead of the one below, radians. */
function humOf(
  hertz: number,
  sampleRate: number,
  shares: readonly number[],
  ahead: number,
): () => number {
  const step = (2 * Math.PI * hertz) / sampleRate;
  const [stepCosine, stepSine] = [Math.cos(step), Math.sin(step)];
  const cosines = Float64Array.from(shares, (share, part) => share * Math.cos(ahead * part));
  const sines = Float64Array.from(shares, (share, part) => share * Math.sin(ahead * part));
  let [cosine, sine] = [1, 0];
  return () => {
    let value = 0;
    let real = cosine;
    let imaginary = sine;
    for (let part = 0; part < cosines.length; part += 1) {
      value += imaginary * cosines[part]! + real * sines[part]!;
      const next = real * cosine - imaginary * sine;
      imaginary = real * sine + imaginary * cosine;
      real = next;
    }
    const next = cosine * stepCosine - sine * stepSine;
    sine = cosine * stepSine + sine * stepCosine;
    cosine = next;
    return value;
  };
}

/** Makes the sound; the truth is the mean film rate over it. */
export function projectorSound(
  plan: ProjectorSound,
  seed: number,
): { readonly samples: Float32Array; readonly meanFps: number } {
  const chance = makeChance(seed);
  const { sampleRate } = plan;
  const sound = new Float64Array(Math.floor(plan.seconds * sampleRate));
  const { times, meanFps } = frameTimes(chance, plan);
  for (const [index, time] of times.entries()) {
    const period = (times[index + 1] ?? time + 1 / plan.filmFps) - time;
    for (let click = 0; click < plan.clicks; click += 1)
      addClick(
        sound,
        sampleRate,
        time + (click * period) / plan.clicks + plan.jitterSeconds * chance.normal(),
        plan.clickLevel * (click === 0 ? 1 : plan.laterClicks) * chance.between(0.7, 1.3),
        chance,
      );
    for (let blade = 0; blade < plan.blades; blade += 1) {
      const from = Math.floor((time + (blade / plan.blades) * period) * sampleRate);
      const length = (0.5 * period * sampleRate) / plan.blades;
      for (let each = 0; each < length && from + each < sound.length; each += 1)
        sound[from + each]! +=
          plan.windLevel * chance.normal() * Math.sin((Math.PI * each) / length);
    }
  }
  if (plan.voiceLevel > 0) addVoice(sound, sampleRate, plan.voiceLevel, chance);
  if (plan.musicLevel > 0) addMusic(sound, sampleRate, plan.musicLevel, chance);
  const parts = Array.from({ length: 9 }, (_, part) => 0.6 ** part * chance.between(0.4, 1));
  const mains = humOf(plan.mainsHertz, sampleRate, parts, 0);
  const motor = humOf(plan.motorHertz, sampleRate, parts, 1);
  return {
    samples: Float32Array.from(sound, (noises) => {
      const hums = plan.mainsLevel * mains() + plan.motorLevel * motor();
      const value = noises + plan.hissLevel * chance.normal() + hums;
      return Math.max(-1, Math.min(1, plan.gain * value));
    }),
    meanFps,
  };
}
