import type { ComponentChildren } from 'preact';
import type { Player } from './player.ts';

interface Props {
  readonly player: Player;
  readonly instance: string;
  /** Share of the true contrast that is shown now, 0…1. */
  readonly contrast: number;
  /** True when a quarter of the speed needs no lowered contrast. */
  readonly isSlowSafe: boolean;
  /** False when every recorded frame is alike. */
  readonly doesMove: boolean;
}

/** A held key must not turn single steps into flicker. */
function ignoreRepeats(event: KeyboardEvent): void {
  if (event.repeat) event.preventDefault();
}

/** Buttons of the moving picture, the warning that comes before them, and what is shown now. */
export function Controls(props: Props): ComponentChildren {
  const { player, instance } = props;
  const { isMotionReduced, isPlaying, isSlow } = player;
  const warningId = `${instance}-warning`;
  return (
    <div class="pic-controls">
      <p class="pic-warning" id={warningId}>
        <strong>Before you play:</strong> light and dark bands will move. If flicker harms you,
        leave the picture still or go frame by frame. Bands that would flash more than three times a
        second, and fine stripes, move with lowered contrast.
      </p>
      <div class="pic-buttons">
        <button
          type="button"
          class="pic-button"
          aria-disabled={isMotionReduced ? 'true' : undefined}
          aria-pressed={isPlaying ? 'true' : 'false'}
          aria-describedby={warningId}
          onClick={() => {
            if (!isMotionReduced) player.togglePlay();
          }}
        >
          <span class={isPlaying ? 'pic-icon-pause' : 'pic-icon-play'} aria-hidden="true" />
          {isMotionReduced ? 'Play is off: reduced motion' : 'Play / pause'}
        </button>
        <button
          type="button"
          class="pic-button"
          aria-pressed={isSlow ? 'true' : 'false'}
          onClick={player.toggleSlow}
        >
          ¼ speed
        </button>
        <button type="button" class="pic-button" onKeyDown={ignoreRepeats} onClick={player.step}>
          Next frame
        </button>
      </div>
      <p class="pic-state" aria-live={isPlaying ? 'off' : 'polite'}>
        Camera frame {player.frameNumber + 1}. {stateText(props)}
      </p>
    </div>
  );
}

function stateText({ player, contrast, isSlowSafe, doesMove }: Props): string {
  if (!doesMove) return 'Every frame looks like this one: nothing moves.';
  if (!player.isPlaying) return 'Still, at full contrast.';
  const speed = player.isSlow ? 'A quarter of the true speed' : 'True speed';
  if (contrast >= 1) return `${speed}, full contrast.`;
  const share = `${Math.max(1, Math.round(contrast * 100))}\u00a0%`;
  const hint = isSlowSafe && !player.isSlow ? ' ¼ speed shows it in full.' : '';
  return `${speed}, contrast lowered to ${share} for safety.${hint}`;
}
