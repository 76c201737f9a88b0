// Slices a recording in a worker of its own: with the worker the browser forgets the slices, of which a
// long film has tens of thousands, and keeps only the file that was made of them.
import { gatherHere } from './save/gather-ranges.ts';
import type { GatheringAnswer, GatheringTask } from './gathering-messages.ts';

addEventListener('message', ({ data: { file, ranges } }: MessageEvent<GatheringTask>) => {
  gatherHere(file, ranges).then(
    (part) => {
      postMessage({ answer: 'gathered', part } satisfies GatheringAnswer);
    },
    () => {
      postMessage({ answer: 'unreadable' } satisfies GatheringAnswer);
    },
  );
});
