import type { ComponentChildren } from 'preact';
import type { BandsData } from '../../worksheets/machine/picture-data.ts';
import { extentOf, linearScale, roundTicks, tickText } from '../axis.ts';
import { Box, Label, Line } from '../shapes/drawing.tsx';
import { at, pathThrough } from '../shapes/page.ts';
import { shownLuminance, veilOpacity, type Tone } from './flash-safety.ts';
import { cornerIndexes } from './corners.ts';
import { bandsFrame, exposureAtPhase } from './phase.ts';

const PICTURE = { left: 2, top: 36, width: 392, height: 294 };
const PROFILE = { left: 420, right: 626 };
const BOTTOM = PICTURE.top + PICTURE.height;

/** Below this many periods the picture has no visible gradient from top to bottom. */
const FLAT_PERIODS = 1e-4;

/** Deviations that no eye sees: of the veil's opacity, and of the trace in page units. */
const VEIL_TOLERANCE = 0.002;
const TRACE_TOLERANCE = 0.15;

/** Height of the whole drawing, page units. */
export const RECORDED_FRAME_HEIGHT = BOTTOM + 64;

interface Props {
  readonly picture: BandsData;
  readonly frameNumber: number;
  readonly tone: Tone;
  readonly instance: string;
}

/** A recorded frame of the evenly lit gate and, beside it, the light on each of its rows. */
export function RecordedFrame(props: Props): ComponentChildren {
  return (
    <g>
      <Label x={PICTURE.left} y={22} tone="strong">
        Recorded frame
      </Label>
      <Veil {...props} />
      <Profile {...props} />
    </g>
  );
}

function veilAt({ picture, tone }: Props, phase: number): number {
  const opacity = veilOpacity(shownLuminance(tone, exposureAtPhase(picture, phase)));
  return Math.round(opacity * 1000) / 1000;
}

/** True when the whole picture has one brightness: a global shutter, or no pattern at all. */
function isFlat({ exposureByPhase, periodsDownPicture }: BandsData): boolean {
  return periodsDownPicture < FLAT_PERIODS || exposureByPhase.length === 0;
}

/** White picture under a black veil; the veil repeats itself down the picture with the pattern. */
function Veil(props: Props): ComponentChildren {
  const { picture, frameNumber, instance } = props;
  const { phaseAtTop } = bandsFrame(picture, frameNumber);
  const { left, top, width, height } = PICTURE;
  const flat = isFlat(picture);
  const steps = picture.exposureByPhase.length;
  const period = flat ? height : height / picture.periodsDownPicture;
  const veils = Array.from({ length: steps + 1 }, (_, step) => veilAt(props, step / steps));
  return (
    <g>
      <Box class="pic-recorded" x={left} y={top} width={width} height={height} />
      {flat ? (
        <rect
          class="pic-veil"
          x={left}
          y={top}
          width={width}
          height={height}
          fill-opacity={veilAt(props, phaseAtTop)}
        />
      ) : (
        <>
          <linearGradient
            id={`${instance}-veil`}
            gradientUnits="userSpaceOnUse"
            spreadMethod="repeat"
            x1="0"
            x2="0"
            y1={top}
            y2={at(top + period)}
            gradientTransform={`translate(0 ${at(-phaseAtTop * period)})`}
          >
            {cornerIndexes(veils, VEIL_TOLERANCE).map((step) => (
              <stop
                key={step}
                class="pic-veil-stop"
                offset={Math.round((step / steps) * 10_000) / 10_000}
                stop-opacity={veils[step] ?? 0}
              />
            ))}
          </linearGradient>
          <rect x={left} y={top} width={width} height={height} fill={`url(#${instance}-veil)`} />
        </>
      )}
      <Box class="pic-outline" x={left} y={top} width={width} height={height} />
    </g>
  );
}

/** Light on each row, so that weak bands and their size can be read off. */
function Profile({ picture, frameNumber, instance }: Props): ComponentChildren {
  const { exposureByPhase, periodsDownPicture } = picture;
  const { phaseAtTop } = bandsFrame(picture, frameNumber);
  const percents = extentOf([0.9, 1.1, ...exposureByPhase].map((exposure) => exposure * 100));
  const x = linearScale(percents, { from: PROFILE.left + 6, to: PROFILE.right - 6 });
  const ticks = roundTicks(percents, 3);
  const steps = exposureByPhase.length;
  const flat = isFlat(picture);
  const perStep = flat ? 0 : PICTURE.height / periodsDownPicture / steps;
  // One period more than is seen, so that any frame is this line moved up by less than a period.
  const periods = flat ? 0 : Math.ceil(periodsDownPicture + 1);
  const across = [...exposureByPhase, exposureByPhase[0] ?? 1].map((share) => x(share * 100));
  const corners = cornerIndexes(across, TRACE_TOLERANCE).slice(0, -1);
  const flatX = x(exposureAtPhase(picture, phaseAtTop) * 100);
  const line = flat
    ? [
        { x: flatX, y: PICTURE.top },
        { x: flatX, y: BOTTOM },
      ]
    : Array.from({ length: periods + 1 }, (_, period) =>
        (period === periods ? [0] : corners).map((step) => ({
          x: across[step] ?? flatX,
          y: PICTURE.top + (period * steps + step) * perStep,
        })),
      ).flat();
  return (
    <g>
      <Label x={PROFILE.left} y={22} tone="strong">
        Light by row
      </Label>
      <clipPath id={`${instance}-rows`}>
        <rect
          x={PROFILE.left - 3}
          y={PICTURE.top}
          width={PROFILE.right - PROFILE.left + 6}
          height={PICTURE.height}
        />
      </clipPath>
      <Line x1={x(100)} y1={PICTURE.top} x2={x(100)} y2={BOTTOM} kind="mark" />
      <g clip-path={`url(#${instance}-rows)`}>
        <path
          class="pic-trace"
          d={pathThrough(line)}
          transform={`translate(0 ${at(-phaseAtTop * perStep * steps)})`}
        />
      </g>
      <Line x1={PROFILE.left} y1={BOTTOM} x2={PROFILE.right} y2={BOTTOM} />
      {ticks.values.map((value) => (
        <g key={value}>
          <Line x1={x(value)} y1={BOTTOM} x2={x(value)} y2={BOTTOM + 7} />
          <Label x={Math.min(x(value), 618)} y={BOTTOM + 30} anchor="middle">
            {tickText(value, ticks.decimals)}
          </Label>
        </g>
      ))}
      <Label x={PROFILE.right} y={BOTTOM + 56} anchor="end" tone="soft">
        % of the mean
      </Label>
    </g>
  );
}
