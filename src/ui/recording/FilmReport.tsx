import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { LOST_FRAME_WORDS } from '../../core/file/recording-words.ts';
import { formatNumber } from '../../quantity/format.ts';
import { Picture as Curve } from '../../pictures/curve.tsx';
import { ResultTableView } from '../ResultExtras.tsx';
import { AnswerLines } from './AnswerLines.tsx';
import { filmAnswers, filmVerdict, stretchTable } from './film-answers.ts';
import type { FilmReading } from './film-found.ts';
import type { FilmReader } from './film-reader.ts';
import type { FilmSettings } from './film-settings.ts';
import { FilmCheck } from './FilmCheck.tsx';
import { FilmFiles } from './FilmFiles.tsx';
import { FilmSaving } from './FilmSaving.tsx';
import { KeepTable } from './KeepTable.tsx';
import { PictureStrip } from './PictureStrip.tsx';
import type { ReportProps } from './recording-kind.ts';
import { SoundLine } from './SoundLine.tsx';
import type { PicturesRate } from './sound-reading.ts';
import { TieFields } from './TieFields.tsx';

/** Said where the film is no longer held: its worker was ended, or ran out of memory. */
const TIES_LOST =
  'The tie could not be worked out: the recording is no longer held. Choose the file once more.';

/** The beginning of a recording that is listened to: the motor may run otherwise an hour later. */
const HEARD_SECONDS = 60;
/** Half the wander of an ordinary motor, where the told parts are not the parts that are heard. */
const WANDER_SHARE = 0.003;

/** Film rate of the pictures over the stretch that is heard. */
function startRate({ rates, filmFps }: FilmReading): PicturesRate {
  const heard = rates.filter(({ seconds }) => seconds < HEARD_SECONDS);
  const mean =
    heard.length === 0
      ? filmFps
      : heard.reduce((sum, point) => sum + point.filmFps, 0) / heard.length;
  return { filmFps: mean, errorFps: WANDER_SHARE * mean };
}

/** Everything that a recording of film tells. */
export function FilmReport(
  props: ReportProps<FilmSettings, FilmReading, FilmReader>,
): ComponentChildren {
  const { settings, source, reader, instance } = props;
  const [found, setFound] = useState(props.found);
  const [ties, setTies] = useState<readonly KeepTie[]>([]);
  const [isBusy, setIsBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | undefined>(undefined);
  const { list } = found;
  const hasStretches = list.stretches.length > 0;

  const tie = async (wanted: readonly KeepTie[]): Promise<void> => {
    setIsBusy(true);
    const tied = await reader?.withTies(wanted);
    setIsBusy(false);
    setTrouble(tied === undefined ? TIES_LOST : undefined);
    if (tied === undefined) return;
    setTies(wanted);
    setFound(tied);
  };

  return (
    <>
      {ties.length > list.conflicts.length && (
        <p class="recording-part" role="status">
          With your ties: {filmVerdict(found).sentence}
        </p>
      )}
      <AnswerLines label="What the pictures tell" answers={filmAnswers(found, settings)} />
      {source !== undefined && (
        <SoundLine
          file={source.file}
          question={{ fromSeconds: 0, seconds: HEARD_SECONDS, pictures: startRate(props.found) }}
        />
      )}
      {!props.isBrief && found.rates.length > 1 && (
        <div class="sheet-picture">
          <Curve picture={rateCurve(found)} instance={`${instance}-rate`} />
        </div>
      )}
      {hasStretches && <ResultTableView table={stretchTable(found)} />}
      {list.lostFilmFrames.length > 0 && (
        <p class="recording-part">
          Film frames without a camera frame: {list.lostFilmFrames.slice(0, 50).join(', ')}
          {list.lostFilmFrames.length > 50 && ' and more, as the gaps in the list show'}.{' '}
          {LOST_FRAME_WORDS.says} {LOST_FRAME_WORDS.toDo}
        </p>
      )}
      {hasStretches && source !== undefined && (
        <TieFields
          instance={instance}
          cameraFrames={found.cameraFrames}
          ties={ties}
          conflicts={list.conflicts}
          isBusy={isBusy}
          trouble={trouble}
          onChange={(wanted) => {
            void tie(wanted);
          }}
        />
      )}
      {!props.isBrief && list.frames.length > 0 && <ListParts {...props} found={found} />}
    </>
  );
}

/** The list with what is made of it: its pictures, files, saving and check. */
function ListParts(props: ReportProps<FilmSettings, FilmReading, FilmReader>): ComponentChildren {
  const { found, settings, source, reader, instance } = props;
  const { list } = found;
  const [place, setPlace] = useState(0);
  return (
    <>
      <KeepTable
        frames={list.frames}
        firstSeconds={found.firstSeconds}
        instance={instance}
        onLook={source === undefined ? undefined : setPlace}
      />
      {source !== undefined && (
        <PictureStrip
          file={source.file}
          frameSeconds={reader?.frameSeconds()}
          frames={list.frames}
          nativeFps={settings.nativeFps.valueOf()}
          turn={settings.turn}
          instance={instance}
          place={Math.min(place, list.frames.length - 1)}
          onPlace={setPlace}
        />
      )}
      <FilmFiles found={found} settings={settings} isLive={source !== undefined} />
      {source !== undefined && (
        <>
          <FilmCheck found={found} settings={settings} instance={instance} />
          <FilmSaving file={source.file} found={found} settings={settings} instance={instance} />
        </>
      )}
    </>
  );
}

function rateCurve({ rates }: FilmReading): Parameters<typeof Curve>[0]['picture'] {
  const speeds = rates.map(({ filmFps }) => filmFps);
  const slowest = formatNumber(Math.min(...speeds), 4);
  const fastest = formatNumber(Math.max(...speeds), 4);
  return {
    name: 'curve',
    alternative: `Film rate over the recording, between ${slowest} and ${fastest} frames/s.`,
    xLabel: 'time from the first camera frame, s',
    yLabel: 'film rate, frames/s',
    curves: [
      { label: '', points: rates.map(({ seconds, filmFps }) => ({ x: seconds, y: filmFps })) },
    ],
    marks: [],
  };
}
