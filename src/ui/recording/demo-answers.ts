import { CAUSE_WORDS } from '../../core/gate/recording/gate-words.ts';
import { filmAnswers } from './film-answers.ts';
import { filmKind } from './film-kind.ts';
import { gateAnswers } from './gate-answers.ts';
import { gateKind } from './gate-kind.ts';
import type { RecordingKind } from './recording-kind.ts';
import type { Answer, InputSpecs } from '../../worksheets/machine/types.ts';

/** What the sheet of a demo recording gives, as the page prints it. */
export interface RecordingAnswers {
  /** The sheet, from the root of the site. */
  readonly address: string;
  readonly answers: readonly Pick<Answer, 'label' | 'text'>[];
}

/** Answers that a trainee writes down. */
const ASKED = ['Film rate', 'Flash rate', 'Beat', 'Film rate, mean', 'Film frames', 'Surely whole'];

/** The settings with which a sheet reads its own demo. */
function demoSettings<Specs extends InputSpecs, Settings, Found>({
  fields,
  demoEntries,
}: Pick<RecordingKind<Specs, Settings, Found>, 'fields' | 'demoEntries'>): Settings {
  const { settings } = fields.read(demoEntries ?? {});
  if (settings === undefined) throw new Error('the demo’s own entries are refused');
  return settings;
}

/**
 * What the sheet gives for a demo recording, for whoever checks a reading of it.
 *
 * @throws {Error} where the sheet no longer reads its demo with its own entries
 */
export function recordingAnswers(recording: 'empty-gate' | 'film'): RecordingAnswers {
  const isAsked = ({ label }: Answer): boolean => ASKED.includes(label);
  if (recording === 'film') {
    const { found } = filmKind.demo;
    return {
      address: '/file/whole-frames/#let-the-book-read-the-recording',
      answers: filmAnswers(found, demoSettings(filmKind)).filter(isAsked),
    };
  }
  const { found } = gateKind.demo;
  const [main] = found.causes;
  const cause = main === undefined ? 'none' : CAUSE_WORDS[main.cause].name;
  return {
    address: '/gate/measuring-speed/#from-a-recording-of-the-empty-gate',
    answers: [
      ...gateAnswers(found, demoSettings(gateKind)).filter(isAsked),
      { label: 'Main cause', text: cause },
    ],
  };
}
