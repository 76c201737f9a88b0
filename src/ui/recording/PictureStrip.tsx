import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { RecordingPictures } from '../../clip/recording-pictures.ts';
import type { KeptFrame } from '../../core/file/measured-keep-list.ts';
import type { PictureTurn } from '../../core/gate/picture-turn.ts';
import { drawPicture } from './picture-drawing.ts';

/** Columns of a small picture. */
const WIDTH = 480;
const NEIGHBOURS = [-1, 0, 1] as const;

interface Props {
  readonly file: Blob;
  readonly frameSeconds: Float64Array | undefined;
  readonly frames: readonly KeptFrame[];
  readonly nativeFps: number;
  readonly turn: PictureTurn;
  readonly instance: string;
  /** Place in the list of the film frame to look at. */
  readonly place: number;
  readonly onPlace: (place: number) => void;
}

/**
 * For one film frame the kept camera frame with its two neighbours, so that a person sees whether it is
 * right; and the kept frames as a film. Nothing moves before the reader starts it.
 */
export function PictureStrip(props: Props): ComponentChildren {
  const { frames, turn, instance, place, onPlace, nativeFps } = props;
  const pictures = useRef<Promise<RecordingPictures> | undefined>(undefined);
  const canvases = useRef<(HTMLCanvasElement | null)[]>([]);
  const film = useRef<HTMLCanvasElement>(null);
  const playing = useRef<AbortController | undefined>(undefined);
  const [isPlaying, setIsPlaying] = useState(false);
  const [trouble, setTrouble] = useState('');
  const [isOpen, setIsOpen] = useState(false);

  const open = (): Promise<RecordingPictures> =>
    (pictures.current ??= import('../../clip/recording-pictures.ts').then(({ RecordingPictures }) =>
      RecordingPictures.open(props.file, WIDTH, props.frameSeconds),
    ));
  const say = (error: unknown): void => {
    setTrouble(
      error instanceof Error ? error.message : 'The pictures of this recording cannot be shown.',
    );
  };
  useEffect(
    () => () => {
      playing.current?.abort();
      void pictures.current?.then((opened) => {
        opened.close();
      });
    },
    [],
  );

  const cameraFrame = frames[place]?.cameraFrame;
  useEffect(() => {
    if (!isOpen || isPlaying || cameraFrame === undefined) return undefined;
    let isWanted = true;
    const draw = async (): Promise<void> => {
      const opened = await open();
      for (const [at, beside] of NEIGHBOURS.entries()) {
        const canvas = canvases.current[at];
        if (!isWanted || canvas === null || canvas === undefined) return;
        const picture = await opened.pictureOfFrame(cameraFrame + beside);
        if (picture === undefined) canvas.width = canvas.height = 1;
        else {
          const { rotationDegrees } = opened.facts;
          drawPicture(canvas, picture.bitmap, { rotationDegrees, turn });
        }
      }
    };
    draw().catch(say);
    return () => {
      isWanted = false;
    };
  }, [isOpen, isPlaying, cameraFrame, turn]);

  const play = async (): Promise<void> => {
    const task = new AbortController();
    playing.current = task;
    setIsPlaying(true);
    try {
      const opened = await open();
      const { rotationDegrees } = opened.facts;
      const kept = frames.slice(place).map((frame) => frame.cameraFrame);
      let due = performance.now();
      for await (const { bitmap } of opened.film(kept)) {
        const wait = due - performance.now();
        if (wait > 0) {
          await new Promise((resolve) => {
            setTimeout(resolve, wait);
          });
        }
        // A machine that cannot keep up plays slower, and leaves no frame out.
        due = Math.max(due, performance.now() - 250) + 1000 / nativeFps;
        if (task.signal.aborted || film.current === null) {
          bitmap.close();
          break;
        }
        drawPicture(film.current, bitmap, { rotationDegrees, turn });
      }
    } catch (error) {
      say(error);
    }
    if (playing.current === task) setIsPlaying(false);
  };

  const frame = frames[place];
  if (frame === undefined) return null;
  return (
    <div class="recording-part">
      <p class="sheet-legend">Look for yourself</p>
      <div class="recording-pager">
        <button
          type="button"
          disabled={place === 0 || isPlaying}
          onClick={() => {
            setIsOpen(true);
            onPlace(place - 1);
          }}
        >
          Film frame before
        </button>
        <button
          type="button"
          disabled={place + 1 >= frames.length || isPlaying}
          onClick={() => {
            setIsOpen(true);
            onPlace(place + 1);
          }}
        >
          Next film frame
        </button>
        {!isOpen && (
          <button
            type="button"
            onClick={() => {
              setIsOpen(true);
            }}
          >
            Show its pictures
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            if (isPlaying) playing.current?.abort();
            else void play();
          }}
        >
          {isPlaying ? 'Stop' : `Play from here at ${Number(nativeFps.toFixed(3))} frames/s`}
        </button>
      </div>
      <p id={`${instance}-strip-words`} aria-live="polite">
        Film frame {frame.filmFrame}: camera frame {frame.cameraFrame} is kept ({frame.status}).
      </p>
      {isOpen && (
        <div class="recording-strip" hidden={isPlaying}>
          {NEIGHBOURS.map((beside, at) => (
            <figure key={beside} class={beside === 0 ? 'recording-kept' : ''}>
              <canvas
                width={4}
                height={3}
                role="img"
                aria-label={`Camera frame ${frame.cameraFrame + beside}${beside === 0 ? ', kept' : ''}`}
                ref={(canvas) => {
                  canvases.current[at] = canvas;
                }}
              />
              <figcaption>
                {frame.cameraFrame + beside}
                {beside === 0 && ', kept'}
              </figcaption>
            </figure>
          ))}
        </div>
      )}
      <canvas
        class="recording-film"
        hidden={!isPlaying}
        width={4}
        height={3}
        role="img"
        aria-label="The kept frames, one after the other"
        ref={film}
      />
      <p role="status">{trouble}</p>
    </div>
  );
}
