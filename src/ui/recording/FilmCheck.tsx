import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { FILE_NAMES } from '../../core/file/file-names.ts';
import { frameChecksums } from '../../core/file/frame-checksums.ts';
import { recordingChecksumCommands } from '../../core/file/recording-commands.ts';
import { checkResult, type ResultCheck } from '../../core/file/result-check.ts';
import { PICTURE_CHECKSUMS_COMMAND } from '../../core/file/viewing-commands.ts';
import { CommandLines } from './CommandLines.tsx';
import type { FilmReading } from './film-found.ts';
import type { FilmSettings } from './film-settings.ts';

/** Frames named in a sentence at most. */
const NAMED = 8;

function named(numbers: readonly number[]): string {
  const shown = numbers.slice(0, NAMED).join(', ');
  return numbers.length > NAMED ? `${shown} and ${numbers.length - NAMED} more` : shown;
}

/** What a comparison comes to, as a sentence. */
function checkSentence(check: ResultCheck, { list }: FilmReading): string {
  if (check.isExact) {
    return `The master holds exactly the ${list.frames.length} listed frames, in order, bit for bit.`;
  }
  const missing = check.missing.map((place) => list.frames[place]?.filmFrame ?? place);
  const extra = check.extra.map(({ resultFrame }) => resultFrame);
  return [
    'The master does not hold the listed frames.',
    ...(missing.length === 0 ? [] : [`Missing film frames: ${named(missing)}.`]),
    ...(extra.length === 0
      ? []
      : [`Pictures of the master that are not in the list: ${named(extra)}.`]),
    'Keep the recording. Run the filter again with this list, on the recording that was read here.',
  ].join(' ');
}

async function compare(files: readonly File[], found: FilmReading): Promise<string> {
  const find = async (name: string): Promise<readonly string[] | undefined> => {
    const file = files.find((each) => each.name === name);
    return file === undefined ? undefined : frameChecksums(await file.text());
  };
  const recording = await find(FILE_NAMES.recordingChecksums);
  const result = await find(FILE_NAMES.pictureChecksums);
  if (recording === undefined || result === undefined) {
    return `Choose both lists that the commands write, ${FILE_NAMES.recordingChecksums} and ${FILE_NAMES.pictureChecksums}, at once.`;
  }
  if (recording.length !== found.cameraFrames) {
    return `The list of the recording has ${recording.length} pictures, and ${found.cameraFrames} were read here: it is of another file.`;
  }
  const cameraFrames = found.list.frames.map(({ cameraFrame }) => cameraFrame);
  return checkSentence(checkResult(recording, cameraFrames, result), found);
}

/** Whether the master that was made by command holds exactly the listed frames. */
export function FilmCheck(props: {
  readonly found: FilmReading;
  readonly settings: FilmSettings;
  readonly instance: string;
}): ComponentChildren {
  const { found, settings, instance } = props;
  const [says, setSays] = useState('');
  const recorded = { turn: settings.turn, codeRange: found.codeRange };
  const commands = recordingChecksumCommands(recorded);
  return (
    <div class="recording-part">
      <p class="sheet-legend">Check the master</p>
      <p>
        These commands write a checksum of every picture, of the recording and of the master. Hand
        in both lists: the page says whether the master holds exactly the listed frames.
      </p>
      <CommandLines label="Of the recording" text={commands.current} />
      <CommandLines label="Of the recording, before version 5.1" text={commands.older} />
      <CommandLines label="Of the master" text={PICTURE_CHECKSUMS_COMMAND} />
      <label class="recording-label" for={`${instance}-lists`}>
        Both lists
      </label>
      <input
        id={`${instance}-lists`}
        type="file"
        multiple
        accept=".framemd5"
        onChange={(event) => {
          void compare([...(event.currentTarget.files ?? [])], found).then(setSays);
        }}
      />
      <p role="status">{says}</p>
    </div>
  );
}
