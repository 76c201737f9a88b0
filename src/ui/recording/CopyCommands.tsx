import type { ComponentChildren } from 'preact';
import { FILE_NAMES } from '../../core/file/file-names.ts';
import { packetDropCommands, type CommandShell } from '../../core/file/packet-drop-commands.ts';
import { packetDropScript } from '../../core/file/packet-drop-script.ts';
import { offerDownload } from '../offer-download.ts';
import { CommandLines } from './CommandLines.tsx';
import type { FilmSettings } from './film-settings.ts';

const SHELLS = {
  posix: {
    place: 'On Linux and macOS',
    fileName: FILE_NAMES.posixCopyScript,
    call: `sh ${FILE_NAMES.posixCopyScript}`,
  },
  windows: {
    place: 'In the Windows command prompt',
    fileName: FILE_NAMES.windowsCopyScript,
    call: FILE_NAMES.windowsCopyScript,
  },
} as const satisfies Readonly<Record<CommandShell, unknown>>;

/** The same copy by command, once every kept picture is proven to stand alone. */
export function CopyCommands(props: {
  readonly cameraFrames: readonly number[];
  readonly nativeFps: FilmSettings['nativeFps'];
  readonly wrapper: 'mp4' | 'mov';
}): ComponentChildren {
  const { cameraFrames, nativeFps, wrapper } = props;
  return (
    <div role="group" aria-label="The same copy by command">
      {(['posix', 'windows'] as const).map((shell) => {
        const proof = { isIntraOnly: true, wrapper } as const;
        const made = packetDropCommands(proof, cameraFrames, nativeFps, shell);
        if (made === undefined) return null;
        const { place, fileName, call } = SHELLS[shell];
        const [only = ''] = made.commands;
        if (made.join === undefined) {
          return (
            <CommandLines key={shell} label={`The same copy by command. ${place}`} text={only} />
          );
        }
        return (
          <div class="recording-command" key={shell}>
            <p class="sheet-legend">The same copy by command. {place}</p>
            <p>
              The list is too long for one line there, so the copy is made in {made.commands.length}{' '}
              parts and joined again, each step a line of one file. Take it into the folder of the
              reel, beside the recording called <code>{FILE_NAMES.recording}</code>, and run{' '}
              <code>{call}</code> there.
            </p>
            <button
              type="button"
              onClick={() => {
                offerDownload({
                  fileName,
                  mediaType: 'text/plain',
                  text: packetDropScript(made, shell),
                });
              }}
            >
              Download {fileName}
            </button>
          </div>
        );
      })}
    </div>
  );
}
