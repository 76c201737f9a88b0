// Runs in a worker of its own, so that what writes files is loaded only when something is saved.
import Fraction from 'fraction.js';
import { copyPackets } from './save/copy-packets.ts';
import type { SavingAnswer, SavingTask } from './saving-messages.ts';
import { makeWatchCopy } from './watch/watch-copy.ts';

function say(answer: SavingAnswer): void {
  postMessage(answer);
}

const sayShare = ({ share }: { readonly share: number }): void => {
  say({ answer: 'progress', share });
};

async function save({ file, cameraFrames, filmFps, watch }: SavingTask): Promise<void> {
  const rate = new Fraction(filmFps);
  if (watch === undefined) {
    say({ answer: 'copied', copy: await copyPackets(file, cameraFrames, rate, sayShare) });
  } else {
    const outcome = await makeWatchCopy(file, cameraFrames, rate, watch, sayShare);
    say({ answer: 'watch-copy', outcome });
  }
}

addEventListener('message', ({ data }: MessageEvent<SavingTask>) => {
  save(data).catch((error: unknown) => {
    // Anything else is a mistake of the program, and shows as one on the page.
    setTimeout(() => {
      throw error;
    });
  });
});
