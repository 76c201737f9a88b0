// Runs in a worker of its own: decoding and measuring never hold the page up, and ending the worker
// frees everything at once, whatever the file does to it.
import { Logging, LogLevel } from 'mediabunny';
import { FramePictures } from './read/frame-pictures.ts';
import { measureRecording } from './read/measure-recording.ts';
import { asReadRefused } from './read/open-recording.ts';
import { readMonoSound } from './read/sound.ts';
import type { ReadingAnswer, ReadingTask } from './reading-messages.ts';

// What is wrong with a file is said on the page.
Logging.level = LogLevel.Errors;

let pictures: FramePictures | undefined;

function say(answer: ReadingAnswer, transfer: Transferable[] = []): void {
  postMessage(answer, { transfer });
}

async function sayPicture(found: ReturnType<FramePictures['picture']> | undefined): Promise<void> {
  const picture = await found;
  say({ answer: 'picture', picture }, picture === undefined ? [] : [picture.bitmap]);
}

async function read({ file, request }: Extract<ReadingTask, { task: 'read' }>): Promise<void> {
  const reading = await measureRecording(file, request, (progress) => {
    say({ answer: 'progress', progress });
  });
  const { frameSeconds, numbers } =
    reading.kind === 'gate'
      ? { frameSeconds: reading.light.frameSeconds, numbers: reading.light.bands }
      : { frameSeconds: reading.motion.frameSeconds, numbers: reading.motion.gram };
  say({ answer: 'read', outcome: reading }, [
    frameSeconds.buffer as ArrayBuffer,
    numbers.buffer as ArrayBuffer,
  ]);
}

async function readSound({
  file,
  fromSeconds,
  seconds,
}: Extract<ReadingTask, { task: 'sound' }>): Promise<void> {
  const found = await readMonoSound(file, fromSeconds, seconds);
  say({ answer: 'sound', found }, found.kind === 'sound' ? [found.sound.samples.buffer] : []);
}

async function answer(task: ReadingTask): Promise<void> {
  switch (task.task) {
    case 'read':
      return read(task);
    case 'sound':
      return readSound(task);
    case 'open-pictures': {
      pictures = await FramePictures.open(task.file, task.width, task.frameSeconds);
      const { frameCount, recording } = pictures;
      say({ answer: 'pictures-open', facts: recording.facts, frameCount });
      return;
    }
    case 'picture':
      return sayPicture(pictures?.picture(task.cameraFrame));
    case 'start-film':
      await pictures?.startFilm(task.cameraFrames);
      say({ answer: 'film-started' });
      return;
    case 'next-picture':
      return sayPicture(pictures?.next());
  }
}

// One task after the other: a picture is asked for while the one before is still being decoded.
let before: Promise<void> = Promise.resolve();
addEventListener('message', ({ data }: MessageEvent<ReadingTask>) => {
  before = before
    .then(() => answer(data))
    .catch((error: unknown) => {
      say({ answer: 'refused', refusal: asReadRefused(error).refusal });
    });
});
