import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { LEVEL_SIGNS } from '../verdict-signs.ts';
import type { SoundQuestion, SoundReading } from './sound-reading.ts';

/** What the sound of the recording says of the film rate, beside the pictures. */
export function SoundLine(props: {
  readonly file: Blob;
  readonly question: SoundQuestion;
}): ComponentChildren {
  const { file, question } = props;
  const [reading, setReading] = useState<SoundReading | undefined>(undefined);
  useEffect(() => {
    const stop = new AbortController();
    setReading(undefined);
    void import('./sound-reading.ts')
      .then(({ readSoundOf }) => readSoundOf(file, question, stop.signal))
      .then((found) => {
        if (!stop.signal.aborted) setReading(found);
      })
      .catch(() => undefined);
    return () => {
      stop.abort();
    };
  }, [file]);
  return (
    <p class="recording-part" role="status" data-sound={reading?.level ?? 'waiting'}>
      {reading === undefined ? (
        'Listening to the sound of the recording…'
      ) : (
        <>
          {reading.level !== 'note' && (
            <span class={`answer-${reading.level}`} aria-hidden="true">
              {LEVEL_SIGNS[reading.level].mark}{' '}
            </span>
          )}
          <UnbrokenUnits text={reading.sentence} />
        </>
      )}
    </p>
  );
}
