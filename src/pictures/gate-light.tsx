import type { ComponentChildren } from 'preact';
import type { GateLightData } from '../worksheets/machine/picture-data.ts';
import { linearScale, roundTicks, tickText } from './axis.ts';
import { BottomAxis } from './shapes/bottom-axis.tsx';
import { Box, Drawing, HatchPattern, Label, Line } from './shapes/drawing.tsx';
import {
  at,
  labelsThatFit,
  labelStride,
  PAGE_WIDTH,
  pathThrough,
  textWidth,
} from './shapes/page.ts';

type Scale = (value: number) => number;
type Exposure = GateLightData['exposures'][number];

const LEFT = 12;
const RIGHT = PAGE_WIDTH - 12;
const LIGHT = { title: 24, top: 66, bottom: 176 };
const BARS = { title: 212, top: 256, bottom: 336 };
const HEIGHT = 376;
/** Narrower bars are drawn without outline, page units. */
const NARROWEST_OUTLINE = 4;

interface Props {
  readonly picture: GateLightData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** Gate light over time, what each exposure gathers of it, and how much that is. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { spanSeconds } = picture;
  const x = linearScale({ from: 0, to: spanSeconds }, { from: LEFT, to: RIGHT });
  const exposures = picture.exposures.filter(
    ({ startSeconds, endSeconds }) => endSeconds > 0 && startSeconds < spanSeconds,
  );
  const spanMilliseconds = spanSeconds * 1000;
  const ticks = roundTicks({ from: 0, to: spanMilliseconds }, 7);
  return (
    <Drawing name={picture.name} alternative={picture.alternative} height={HEIGHT}>
      <defs>
        <HatchPattern id={`${instance}-hatch`} />
        <clipPath id={`${instance}-gathered`}>
          {exposures.map((exposure) => (
            <Column
              key={exposure.startSeconds}
              exposure={exposure}
              x={x}
              top={LIGHT.top}
              bottom={LIGHT.bottom}
            />
          ))}
        </clipPath>
      </defs>
      <Light picture={picture} instance={instance} x={x} />
      <FilmFrames starts={picture.filmFrameStarts} span={spanSeconds} x={x} />
      <Exposures exposures={exposures} x={x} />
      <BottomAxis
        y={BARS.bottom}
        from={LEFT}
        to={RIGHT}
        unit="ms"
        ticks={ticks.values.map((value) => ({
          x: x(value / 1000),
          text: tickText(value, ticks.decimals),
        }))}
      />
    </Drawing>
  );
}

function clampedEdges(exposure: Exposure, x: Scale): { left: number; width: number } {
  const left = Math.max(LEFT, x(exposure.startSeconds));
  return { left, width: Math.max(0, Math.min(RIGHT, x(exposure.endSeconds)) - left) };
}

function Column(props: {
  readonly exposure: Exposure;
  readonly x: Scale;
  readonly top: number;
  readonly bottom: number;
}): ComponentChildren {
  const { left, width } = clampedEdges(props.exposure, props.x);
  return (
    <rect
      x={at(left)}
      y={props.top - 1}
      width={at(width)}
      height={at(props.bottom - props.top + 1)}
    />
  );
}

function Light(props: Props & { readonly x: Scale }): ComponentChildren {
  const { picture, instance, x } = props;
  const y = linearScale({ from: 0, to: 1 }, { from: LIGHT.bottom, to: LIGHT.top });
  const points = picture.light.map(({ seconds, level }) => ({ x: x(seconds), y: y(level) }));
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return null;
  // With so many edges the outline would be a black wall; the tint alone still tells light from dark.
  const isCrowded = points.length > (RIGHT - LEFT) / 1.5;
  const area = `${pathThrough([{ x: first.x, y: y(0) }, ...points, { x: last.x, y: y(0) }])}Z`;
  return (
    <g>
      <Label x={LEFT} y={LIGHT.title} tone="strong">
        Light in the gate, by film frame
      </Label>
      <path class="pic-tint" d={area} />
      <path d={area} fill={`url(#${instance}-hatch)`} clip-path={`url(#${instance}-gathered)`} />
      {!isCrowded && <path class="pic-trace" d={pathThrough(points)} />}
      <Line x1={LEFT} y1={LIGHT.bottom} x2={RIGHT} y2={LIGHT.bottom} />
    </g>
  );
}

function FilmFrames(props: {
  readonly starts: readonly number[];
  readonly span: number;
  readonly x: Scale;
}): ComponentChildren {
  const { starts, span, x } = props;
  const shown = starts.filter((start) => start >= 0 && start <= span);
  const rooms = shown.map((start, index) => x(shown[index + 1] ?? span) - x(start));
  const widest = textWidth(String(shown.length)) + 10;
  const stride = labelStride(Math.max(0, ...rooms), widest);
  // Past this density the boundaries would be a grey wall; the numbered ones stay.
  const isDense = stride > 3;
  return (
    <g>
      {shown.map((start, index) => {
        const isNumbered = index % stride === 0;
        if (isDense && !isNumbered) return null;
        return (
          <g key={start}>
            <Line x1={x(start)} y1={LIGHT.top - 26} x2={x(start)} y2={LIGHT.bottom} kind="dash" />
            <Line x1={x(start)} y1={BARS.top} x2={x(start)} y2={BARS.bottom} kind="dash" />
            {isNumbered && x(start) + textWidth(String(index + 1)) + 5 <= RIGHT && (
              <Label x={x(start) + 5} y={LIGHT.top - 8} tone="soft">
                {index + 1}
              </Label>
            )}
          </g>
        );
      })}
    </g>
  );
}

function Exposures(props: {
  readonly exposures: readonly Exposure[];
  readonly x: Scale;
}): ComponentChildren {
  const { exposures, x } = props;
  const fullShare = Math.max(1, ...exposures.map(({ share }) => share));
  const y = linearScale({ from: 0, to: fullShare }, { from: BARS.bottom, to: BARS.top });
  const labelled = labelledBars(exposures, x);
  return (
    <g>
      <Label x={LEFT} y={BARS.title} tone="strong">
        Light in each exposure, % of the mean
      </Label>
      {exposures.map((exposure, index) => {
        const { left, width } = clampedEdges(exposure, x);
        return (
          <g key={exposure.startSeconds}>
            <Box
              class="pic-fill"
              x={left}
              y={y(exposure.share)}
              width={width}
              height={BARS.bottom - y(exposure.share)}
            />
            {width > NARROWEST_OUTLINE && (
              <Box
                class="pic-outline"
                x={left}
                y={BARS.top}
                width={width}
                height={BARS.bottom - BARS.top}
              />
            )}
            {labelled.has(index) && (
              <Label x={labelX(exposure, x)} y={BARS.top - 8} anchor="middle">
                {shareText(exposure)}
              </Label>
            )}
          </g>
        );
      })}
      <Line x1={LEFT} y1={y(1)} x2={RIGHT} y2={y(1)} kind="mark" />
    </g>
  );
}

function shareText({ share }: Exposure): string {
  const percent = share * 100;
  return tickText(percent, percent < 9.95 ? 1 : 0);
}

function labelX(exposure: Exposure, x: Scale): number {
  const { left, width } = clampedEdges(exposure, x);
  const half = textWidth(shareText(exposure)) / 2;
  return Math.min(RIGHT - half, Math.max(LEFT + half, left + width / 2));
}

/** Bars that get their number: the lightest and the darkest first, then as many others as fit. */
function labelledBars(exposures: readonly Exposure[], x: Scale): ReadonlySet<number> {
  const shares = exposures.map(({ share }) => share);
  return labelsThatFit(
    exposures.map((exposure) => ({
      centre: labelX(exposure, x),
      width: textWidth(shareText(exposure)),
    })),
    [shares.indexOf(Math.max(...shares)), shares.indexOf(Math.min(...shares)), ...exposures.keys()],
  );
}
