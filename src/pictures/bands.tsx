import type { ComponentChildren } from 'preact';
import type { BandsData } from '../worksheets/machine/picture-data.ts';
import { Controls } from './bands/controls.tsx';
import { movingTone, stillTone } from './bands/flash-safety.ts';
import { SLOW_SPEED, usePlayer } from './bands/player.ts';
import { RECORDED_FRAME_HEIGHT, RecordedFrame } from './bands/recorded-frame.tsx';
import { Drawing } from './shapes/drawing.tsx';

interface Props {
  readonly picture: BandsData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** The recorded picture with its bands: still at first, moving at the true beat when asked. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const player = usePlayer(picture.cameraFps);
  const tone = player.isPlaying ? movingTone(picture, player.speed) : stillTone(picture);
  const exposures = picture.exposureByPhase;
  const ripple = Math.max(...exposures) - Math.min(...exposures);
  return (
    <div class="pic-bands-sheet">
      <Drawing name={picture.name} alternative={picture.alternative} height={RECORDED_FRAME_HEIGHT}>
        <RecordedFrame
          picture={picture}
          frameNumber={player.frameNumber}
          tone={tone}
          instance={instance}
        />
      </Drawing>
      <Controls
        player={player}
        instance={instance}
        contrast={tone.contrast}
        isSlowSafe={movingTone(picture, SLOW_SPEED).contrast === 1}
        doesMove={Math.abs(picture.phaseStepPerFrame) > 1e-9 && ripple > 1e-9}
      />
    </div>
  );
}
