// Keeps the means of the scene's golden pictures anew: node tests/tools/keep-golden-scene.ts
// Look at the pictures first: what is kept here is what the test will hold on to.
import { writeFileSync } from 'node:fs';
import { makeAnyFilmInGate } from '../../src/scene/gate/any-film-in-gate.ts';
import { goldenBlocks, GOLDEN_FILE, GOLDEN_FILM_FRAMES } from '../scene/golden.ts';
import { makePaper } from '../scene/paper.ts';

const film = makeAnyFilmInGate(makePaper, 320);
const kept = Object.fromEntries(
  GOLDEN_FILM_FRAMES.map(([name, frame, faults]) => [name, goldenBlocks(film(frame, faults), 320)]),
);
const lines = Object.entries(kept).map(
  ([name, means]) => `  ${JSON.stringify(name)}: ${JSON.stringify(means)}`,
);
writeFileSync(GOLDEN_FILE, `{\n${lines.join(',\n')}\n}\n`);
