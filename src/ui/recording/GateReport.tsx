import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import { formatNumber } from '../../quantity/format.ts';
import { Picture as Curve } from '../../pictures/curve.tsx';
import { sitePath } from '../islands/site-path.ts';
import { ResultTableView } from '../ResultExtras.tsx';
import { AnswerLines } from './AnswerLines.tsx';
import { benchTexts } from './bench-texts.ts';
import { gateAnswers } from './gate-answers.ts';
import { causeTable, changeSentences } from './gate-change.ts';
import type { GateSettings } from './gate-settings.ts';
import type { ReportProps } from './recording-kind.ts';
import { SoundLine } from './SoundLine.tsx';

/** Everything that a recording of the empty gate tells. */
export function GateReport(props: ReportProps<GateSettings, GateReading>): ComponentChildren {
  const { found, settings, source, instance } = props;
  const changes = changeSentences(found, settings);
  return (
    <>
      <AnswerLines label="What the light tells" answers={gateAnswers(found, settings)} />
      {source !== undefined && (
        <SoundLine
          file={source.file}
          question={{
            fromSeconds: settings.fromSeconds,
            seconds: settings.seconds,
            pictures: found.filmRate,
          }}
        />
      )}
      {found.causes.length > 0 && <ResultTableView table={causeTable(found)} />}
      {changes.length > 0 && (
        <div class="recording-part">
          <p class="sheet-legend">What to change, and by how much</p>
          <ul>
            {changes.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
      {found.speed.length > 1 && (
        <div class="sheet-picture">
          <Curve picture={speedCurve(found)} instance={`${instance}-speed`} />
        </div>
      )}
      {source !== undefined && <TakeIntoBench found={found} isDemo={source.isDemo} />}
    </>
  );
}

function speedCurve({ speed, filmRate }: GateReading): Parameters<typeof Curve>[0]['picture'] {
  const slowest = formatNumber(filmRate?.slowestFps ?? 0, 5);
  const fastest = formatNumber(filmRate?.fastestFps ?? 0, 5);
  return {
    name: 'curve',
    alternative: `Film rate over the clip. Over one second it was ${slowest} frames/s at the slowest and ${fastest} frames/s at the fastest.`,
    xLabel: 'time from the start of the part read, s',
    yLabel: 'film rate, frames/s',
    curves: [
      { label: '', points: speed.map(({ seconds, filmFps }) => ({ x: seconds, y: filmFps })) },
    ],
    marks: [],
  };
}

function TakeIntoBench(props: {
  readonly found: GateReading;
  readonly isDemo: boolean;
}): ComponentChildren {
  const [taken, setTaken] = useState<'no' | 'kept' | 'page'>('no');
  const take = async (): Promise<void> => {
    const { takeIntoBench } = await import('./bench-taking.ts');
    setTaken(takeIntoBench(texts) ? 'kept' : 'page');
  };
  const texts = benchTexts(props.found);
  if (texts.length === 0) return null;
  const names = texts.map(({ name, text }) => `${name} ${text}`).join(' and ');
  return (
    <div class="recording-part">
      <button
        type="button"
        onClick={() => {
          void take();
        }}
      >
        Take {texts.map(({ name }) => name).join(' and ')} into your bench
      </button>
      {props.isDemo && (
        <p class="entry-help">These are the demo’s numbers, not your projector’s.</p>
      )}
      <p role="status">
        {taken !== 'no' && (
          <>
            {names} {texts.length > 1 ? 'are' : 'is'} in{' '}
            <a href={sitePath('/bench/')}>your bench</a>
            {taken === 'kept' ? '.' : ', for this page only: the browser cannot keep it.'}
          </>
        )}
      </p>
    </div>
  );
}
