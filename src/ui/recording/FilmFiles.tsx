import type { ComponentChildren } from 'preact';
import { FILE_NAMES } from '../../core/file/file-names.ts';
import { frameFilterCommands, frameFilterText } from '../../core/file/frame-filter.ts';
import { measuredKeepCsv } from '../../core/file/measured-keep-csv.ts';
import { sitePath } from '../islands/site-path.ts';
import { offerDownload } from '../offer-download.ts';
import { CommandLines } from './CommandLines.tsx';
import type { FilmReading } from './film-found.ts';
import type { FilmSettings } from './film-settings.ts';

/** The keep list to take away, and the commands that make the master of it. */
export function FilmFiles(props: {
  readonly found: FilmReading;
  readonly settings: FilmSettings;
  readonly isLive: boolean;
}): ComponentChildren {
  const { found, settings, isLive } = props;
  const { list, codeRange } = found;
  const { nativeFps, turn } = settings;
  const recorded = { turn, codeRange };
  const cameraFrames = list.frames.map(({ cameraFrame }) => cameraFrame);
  const commands = frameFilterCommands(nativeFps, recorded);
  return (
    <div class="recording-part">
      <p class="sheet-legend">Make the master</p>
      <ol>
        <li>
          Take the filter into the folder of the reel, beside a copy of the recording that is called{' '}
          <code>{FILE_NAMES.recording}</code>.{' '}
          {isLive && (
            <button
              type="button"
              onClick={() => {
                offerDownload({
                  fileName: FILE_NAMES.keepFilter,
                  mediaType: 'text/plain',
                  text: frameFilterText(cameraFrames, nativeFps, recorded),
                });
              }}
            >
              Download {FILE_NAMES.keepFilter}
            </button>
          )}
        </li>
        <li>
          Run one of the two commands: they differ in one option, which newer versions of ffmpeg
          spell another way. The master holds each film frame once, without loss, and no sound.
        </li>
        <li>
          Go on with <a href={sitePath('/file/files/')}>Files, space and checks</a>, as
          with any master.
        </li>
      </ol>
      <CommandLines label="From version 7 on" text={commands.current} />
      <CommandLines label="Older versions" text={commands.older} />
      {isLive && (
        <p>
          <button
            type="button"
            onClick={() => {
              offerDownload({
                fileName: 'keep-list.csv',
                mediaType: 'text/csv',
                text: measuredKeepCsv(list),
              });
            }}
          >
            Download keep-list.csv
          </button>
        </p>
      )}
    </div>
  );
}
