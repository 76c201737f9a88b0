import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { formatBytes, formatDuration } from '../../quantity/format.ts';
import { CopyCommands } from './CopyCommands.tsx';
import type { FilmReading } from './film-found.ts';
import type { FilmSettings } from './film-settings.ts';
import { SaveSizes, type CopyForecast } from './SaveSizes.tsx';

interface Props {
  readonly file: Blob;
  readonly found: FilmReading;
  readonly settings: FilmSettings;
  readonly instance: string;
}

/** A file that the reader can take, or why there is none. */
type Saved =
  | { readonly stage: 'nothing' }
  | { readonly stage: 'working'; readonly words: string; readonly share: number | undefined }
  | { readonly stage: 'refused'; readonly says: string; readonly toDo: string }
  | {
      readonly stage: 'saved';
      readonly address: string;
      readonly fileName: string;
      readonly says: string;
      /** Wrapper of a copy whose pictures were all proven to stand alone. */
      readonly proven: 'mp4' | 'mov' | undefined;
      readonly remove: () => void;
    };

const NOTHING: Saved = { stage: 'nothing' };
const BROKE_OFF: Saved = {
  stage: 'refused',
  says: 'Saving broke off, and nothing was saved.',
  toDo: 'Leave the card or the drive in and try again, or use the commands above.',
};
/** Bits of one sample of the picture in a copy to watch: more than eyes ask for. */
const BITS_PER_PIXEL = 0.25;

/** Bit rate that the coder of a copy to watch is asked for. */
function watchBitsPerSecond({ codedWidth, codedHeight }: FilmReading, filmFps: number): number {
  return Math.round(Math.max(1e6, codedWidth * codedHeight * filmFps * BITS_PER_PIXEL));
}

/** The size beforehand; what cannot be told is told on saving. */
async function forecastOf(
  file: Blob,
  cameraFrames: readonly number[],
  filmFps: FilmSettings['nativeFps'],
  cameraFrameCount: number,
): Promise<CopyForecast> {
  try {
    const { forecastFilm } = await import('../../clip/save-film.ts');
    return await forecastFilm(file, { cameraFrames, filmFps }, cameraFrameCount);
  } catch {
    return { kind: 'unknown' };
  }
}

/** The kept frames as a file at the native rate, for those who use no command line. */
export function FilmSaving({ file, found, settings, instance }: Props): ComponentChildren {
  const [saved, setSaved] = useState<Saved>(NOTHING);
  const stop = useRef<AbortController | undefined>(undefined);
  const latest = useRef(saved);
  latest.current = saved;
  const frames = found.list.frames;
  const cameraFrames = frames.map(({ cameraFrame }) => cameraFrame);
  const { nativeFps: filmFps, turn } = settings;
  const bitsPerSecond = watchBitsPerSecond(found, filmFps.valueOf());
  const [forecast, setForecast] = useState<CopyForecast | undefined>(undefined);

  useEffect(
    () => () => {
      stop.current?.abort();
      if (latest.current.stage === 'saved') latest.current.remove();
    },
    [],
  );
  // A list changed by ties makes another film.
  useEffect(() => {
    if (latest.current.stage === 'saved') latest.current.remove();
    setSaved(NOTHING);
    let isLatest = true;
    setForecast(undefined);
    void forecastOf(file, cameraFrames, filmFps, found.cameraFrames).then((known) => {
      if (isLatest) setForecast(known);
    });
    return () => {
      isLatest = false;
    };
  }, [found]);

  const begin = async (
    words: string,
    work: (signal: AbortSignal, onProgress: (share: number) => void) => Promise<Saved>,
  ): Promise<void> => {
    if (latest.current.stage === 'saved') latest.current.remove();
    const task = new AbortController();
    stop.current = task;
    setSaved({ stage: 'working', words, share: 0 });
    let result: Saved = BROKE_OFF;
    try {
      result = await work(task.signal, (share) => {
        if (!task.signal.aborted) setSaved({ stage: 'working', words, share });
      });
    } catch {
      // Said as having broken off.
    }
    if (stop.current === task) setSaved(result);
  };

  const copy = (): Promise<void> =>
    begin('Copying the kept frames', async (signal, onProgress) => {
      const { saveFilm } = await import('../../clip/save-film.ts');
      const result = await saveFilm(file, { cameraFrames, filmFps, signal, onProgress });
      if (result.kind === 'refused') {
        const { sentence, advice } = result.refusal;
        return { stage: 'refused', says: sentence, toDo: advice };
      }
      const { frameCount, seconds, totalBytes } = result.checked;
      const address = URL.createObjectURL(result.file);
      return {
        stage: 'saved',
        address,
        fileName: `film-copied.${result.extension}`,
        says: `Ready, and read again: ${frameCount} film frames in ${formatDuration(seconds)}, ${formatBytes(totalBytes)}, each as the camera coded it. It stands as it was recorded and is not turned.${result.leavesSoundOut ? ' The recording’s sound is left out: it does not fit the film’s rate.' : ''} Leave the card or the drive in until the download has ended.`,
        proven: result.extension,
        remove: () => {
          URL.revokeObjectURL(address);
        },
      };
    });

  const watch = (): Promise<void> =>
    begin('Making the copy to watch', async (signal, onProgress) => {
      const { makeCopyToWatch, removeCopyToWatch } = await import('../../clip/save-film.ts');
      const request = { cameraFrames, filmFps, turn, bitsPerSecond, signal, onProgress };
      const result = await makeCopyToWatch(file, request);
      if (result.kind === 'refused') {
        const { sentence, advice } = result.refusal;
        return { stage: 'refused', says: sentence, toDo: advice };
      }
      const address = URL.createObjectURL(result.file);
      return {
        stage: 'saved',
        address,
        fileName: `viewing.${result.extension}`,
        says: `Ready, and read again: ${result.frameCount} film frames, ${formatBytes(result.totalBytes)}, ${result.codec} of 8 bits: to watch, not for the archive. The master is made by the commands above.${result.isMatrixAssumed ? ' The recording names no colour matrix; the copy says BT.709.' : ''}`,
        proven: undefined,
        remove: () => {
          URL.revokeObjectURL(address);
          void removeCopyToWatch(result.privateName);
        },
      };
    });

  const isWorking = saved.stage === 'working';
  return (
    <div class="recording-part">
      <p class="sheet-legend">Save from this page</p>
      <p>
        Without a command line: a copy of the kept frames as the camera coded them, where each of
        its pictures stands alone; or a copy to watch, coded anew by the browser.
      </p>
      <div id={`${instance}-sizes`}>
        <SaveSizes
          copy={forecast}
          watchBytes={((frames.length / filmFps.valueOf()) * bitsPerSecond) / 8}
        />
      </div>
      <div class="recording-pager">
        <button
          type="button"
          disabled={isWorking || forecast?.kind === 'refused'}
          aria-describedby={`${instance}-sizes`}
          onClick={() => {
            void copy();
          }}
        >
          Copy the kept frames unchanged
        </button>
        <button
          type="button"
          disabled={isWorking}
          onClick={() => {
            void watch();
          }}
        >
          Make a copy to watch
        </button>
      </div>
      {isWorking && (
        <div class="recording-progress">
          <label for={`${instance}-saving`}>{saved.words}</label>
          <progress
            id={`${instance}-saving`}
            max={1}
            {...(saved.share === undefined ? {} : { value: saved.share })}
          />
          <button
            type="button"
            onClick={() => {
              stop.current?.abort();
            }}
          >
            Cancel saving
          </button>
        </div>
      )}
      <p role="status">
        {saved.stage === 'refused' && `${saved.says} ${saved.toDo}`}
        {saved.stage === 'saved' && saved.says}
      </p>
      {saved.stage === 'saved' && (
        <p>
          <a class="button" href={saved.address} download={saved.fileName}>
            Download {saved.fileName}
          </a>
        </p>
      )}
      {saved.stage === 'saved' && saved.proven !== undefined && (
        <CopyCommands cameraFrames={cameraFrames} nativeFps={filmFps} wrapper={saved.proven} />
      )}
    </div>
  );
}
