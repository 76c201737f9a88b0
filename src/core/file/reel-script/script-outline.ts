import type { FileName } from '../file-names.ts';
import { recordingQuestions, type RecordingQuestions } from './recording-questions.ts';
import type { ReelScriptEntries } from './script-entries.ts';
import { resultsOf, scriptSteps, type ScriptStep } from './script-steps.ts';
import { headLines } from './script-words.ts';
import { commentText } from './shell-quoting.ts';

/** What a shell has to know of its own: how each part of the chain is said in it, as lines. */
export interface ShellWriter {
  /** What stands before everything, such as the name of the shell. */
  readonly firstLines: readonly string[];
  /** How the script is called, and what has to be done before. */
  readonly call: string;
  readonly preparation: readonly string[];
  settings(entries: ReelScriptEntries): readonly string[];
  readonly functions: readonly string[];
  /** A line on the screen and in the log. */
  say(sentence: string): string;
  /** Whether everything is here that the entries name, and nothing in the way. */
  firstChecks(results: readonly FileName[], entries: ReelScriptEntries): readonly string[];
  /** What the recording says of itself: fields, rate, range and colours. */
  describe(asked: RecordingQuestions): readonly string[];
  countPictures(asked: RecordingQuestions): readonly string[];
  /** Fields, and pictures of uneven length. */
  lookForFields(asked: RecordingQuestions): readonly string[];
  sampleRate(asked: RecordingQuestions, sampleRateHz: number): readonly string[];
  /** Draws one picture, and ends here where only that was asked. */
  drawLook(asked: RecordingQuestions): readonly string[];
  beginStep(step: ScriptStep): string;
  work(step: ScriptStep, asked: RecordingQuestions): readonly string[];
  readonly endLog: string;
  readonly checksums: readonly string[];
}

/** Comment lines, which both shells begin with the same sign. */
export const comment = (lines: readonly string[]): readonly string[] =>
  lines.map((line) => (line === '' ? '#' : `# ${line}`));

function questions(shell: ShellWriter, asked: RecordingQuestions, sampleRateHz?: number) {
  return [
    shell.say('Ask the recording what it is'),
    ...comment(['What it says of itself: rate, range and colours as the numbers of the reel say.']),
    ...shell.describe(asked),
    ...comment(['Is it long enough?']),
    ...shell.countPictures(asked),
    ...comment([
      'What its pictures show: fields, or pictures of uneven length, in its first minute.',
      'A Matroska file rounds its times, so there only the mean rate above can tell.',
    ]),
    ...shell.lookForFields(asked),
    ...(sampleRateHz === undefined
      ? []
      : [
          ...comment(['Has the sound the sample rate that the numbers of the reel say?']),
          ...shell.sampleRate(asked, sampleRateHz),
        ]),
    '',
    ...comment(['One picture as it will be. Look at it before an hour of work.']),
    ...shell.drawLook(asked),
  ];
}

function checksums(shell: ShellWriter): readonly string[] {
  return [
    ...comment([
      'A checksum of every file in this folder and below, then each file is read back. The log',
      'ends here, because it is among the files.',
    ]),
    shell.say('List a checksum for every file of the folder, and read each file back'),
    shell.say('Everything was made. Whether every file reads back is said on the screen.'),
    shell.endLog,
    ...shell.checksums,
    shell.say('Done. Now look at first and last frame, a cut and a fast movement, and listen.'),
  ];
}

/** The chain of one reel in the words of a shell, without a mark at the head of the file. */
export function scriptText(entries: ReelScriptEntries, shell: ShellWriter): string {
  const steps = scriptSteps(entries);
  const asked = recordingQuestions(entries);
  const { sound, reelName } = entries;
  const lines = [
    ...shell.firstLines,
    ...comment([commentText(reelName), ...headLines(shell.call, shell.preparation)]),
    '',
    ...shell.settings(entries),
    '',
    ...shell.functions,
    '',
    ...comment(['Is everything here, and nothing in the way?']),
    ...shell.firstChecks(resultsOf(steps), entries),
    '',
    ...questions(shell, asked, sound?.sampleRateHz),
    ...steps.flatMap((step) => [
      '',
      ...comment(step.why),
      shell.beginStep(step),
      ...shell.work(step, asked),
    ]),
    '',
    ...checksums(shell),
  ];
  return `${lines.join('\n')}\n`;
}
