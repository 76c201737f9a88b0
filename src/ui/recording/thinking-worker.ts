// Runs in a worker of its own, so that the page answers while a long recording is worked out.
import type { BandMotion } from '../../core/file/band-motion.ts';
import { filmPosition } from '../../core/file/film-position.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { readClawNoise } from '../../core/gate/recording/claw-noise.ts';
import { readEmptyGate } from '../../core/gate/recording/read-empty-gate.ts';
import { filmFound, type FollowedFilm } from './film-found.ts';
import type { ThinkingAnswer, ThinkingTask } from './thinking-messages.ts';

let film: FollowedFilm | undefined;
let held: BandMotion | undefined;

function say(answer: ThinkingAnswer): void {
  postMessage(answer);
}

function sayFilm(of: FollowedFilm, ties: readonly KeepTie[]): void {
  say({ answer: 'film', found: filmFound(of, ties) });
}

addEventListener('message', ({ data }: MessageEvent<ThinkingTask>) => {
  switch (data.task) {
    case 'gate':
      say({ answer: 'gate', found: readEmptyGate(data.light, data.bench) });
      return;
    case 'sound': {
      const { samples, sampleRate, expectedFilmFps } = data;
      say({ answer: 'sound', found: readClawNoise(samples, sampleRate, expectedFilmFps) });
      return;
    }
    case 'film': {
      const { motion = held, bench, isReadoutMeasured } = data;
      if (motion === undefined) throw new Error('no recording was handed over');
      held = motion;
      const position = filmPosition(motion, bench);
      if (position.kind === 'refused') {
        say({ answer: 'film', found: position });
        return;
      }
      film = { position, motion, bench, isReadoutMeasured };
      sayFilm(film, []);
      return;
    }
    case 'ties':
      if (film !== undefined) sayFilm(film, data.ties);
  }
});
