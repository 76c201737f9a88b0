import { turnFilters } from '../../gate/picture-turn.ts';
import { commandRate } from '../command-rate.ts';
import { FILE_NAMES } from '../file-names.ts';
import { READ_MASTER_COMMAND, cropFilter, VIEWING_SECONDS_COMMAND } from '../viewing-commands.ts';
import {
  COUNT_PICTURES_COMMAND,
  describeCommand,
  DETECT_COMMAND,
  lookCommand,
} from '../recording-commands.ts';
import { SAMPLE_RATE_COMMAND } from '../sound-commands.ts';
import { commandWords } from './command-words.ts';
import { plannedKeep, type ReelScriptEntries } from './script-entries.ts';
import { EXPECTED_COLOURS, type ExpectedColour } from './script-words.ts';

/** What is asked of the recording before any work, and what it has to say. */
export interface RecordingQuestions {
  readonly describe: readonly string[];
  readonly detect: readonly string[];
  readonly count: readonly string[];
  readonly sampleRate: readonly string[];
  readonly readMaster: readonly string[];
  readonly viewingSeconds: readonly string[];
  /** One picture as it will be, without the name of its file. */
  readonly look: readonly string[];
  readonly cameraRate: string;
  readonly colour: ExpectedColour;
  /** Pictures that the recording must have at least; undefined where a file beside the script tells. */
  readonly fewestPictures: number | undefined;
}

/** Stands for the time of the first kept frame where only the file beside the script tells it. */
export const FIRST_KEPT_SECONDS = 'time of the first kept frame';

/** The questions to the files of a reel, as words, with the answers that its numbers ask for. */
export function recordingQuestions(entries: ReelScriptEntries): RecordingQuestions {
  const { recorded, crop, cameraFps } = entries;
  const { ends } = plannedKeep(entries);
  const filters = [
    ...turnFilters(recorded.turn),
    ...(crop === undefined ? [] : [cropFilter(crop)]),
  ];
  const seconds = Math.round((1000 * (ends?.first ?? 0)) / cameraFps.valueOf()) / 1000;
  const [program = '', seek = '', time = '', ...rest] = commandWords(
    lookCommand(FILE_NAMES.recording, filters, seconds),
  );
  const from = ends === undefined ? FIRST_KEPT_SECONDS : time;
  const [prober = '', ...detection] = commandWords(DETECT_COMMAND);
  return {
    describe: commandWords(describeCommand(FILE_NAMES.recording)),
    detect: [prober, '-nostdin', ...detection],
    count: commandWords(COUNT_PICTURES_COMMAND),
    sampleRate: commandWords(SAMPLE_RATE_COMMAND),
    readMaster: [...commandWords(READ_MASTER_COMMAND)],
    viewingSeconds: commandWords(VIEWING_SECONDS_COMMAND),
    look: [program, '-nostdin', '-y', '-v', 'error', seek, from, ...rest.slice(0, -1)],
    cameraRate: commandRate('cameraFps', cameraFps).rate,
    colour: EXPECTED_COLOURS[recorded.codeRange],
    fewestPictures: ends === undefined ? undefined : ends.last + 1,
  };
}
