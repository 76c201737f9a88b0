// Runs in a worker of its own, so that the page answers while a long recording is worked out.
import type { BandMotion } from '../../core/file/band-motion.ts';
import {
  filmPosition,
  type FilmPosition,
  type RecordingBench,
} from '../../core/file/film-position.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { readEmptyGate } from '../../core/gate/recording/read-empty-gate.ts';
import { filmFound } from './film-found.ts';
import type { ThinkingAnswer, ThinkingTask } from './thinking-messages.ts';

interface Film {
  readonly position: FilmPosition;
  readonly motion: BandMotion;
  readonly bench: RecordingBench;
}
let film: Film | undefined;

function say(answer: ThinkingAnswer): void {
  postMessage(answer);
}

function sayFilm({ position, motion, bench }: Film, ties: readonly KeepTie[]): void {
  say({ answer: 'film', found: filmFound(position, motion, bench, ties) });
}

addEventListener('message', ({ data }: MessageEvent<ThinkingTask>) => {
  switch (data.task) {
    case 'gate':
      say({ answer: 'gate', found: readEmptyGate(data.light, data.bench) });
      return;
    case 'film': {
      const { motion, bench } = data;
      const position = filmPosition(motion, bench);
      if (position.kind === 'refused') {
        say({ answer: 'film', found: position });
        return;
      }
      film = { position, motion, bench };
      sayFilm(film, []);
      return;
    }
    case 'ties':
      if (film !== undefined) sayFilm(film, data.ties);
  }
});
