import type { ComponentChildren } from 'preact';
import type { CurveData } from '../worksheets/machine/picture-data.ts';
import {
  extentOf,
  linearScale,
  roundedOutwards,
  roundTicks,
  tickText,
  type Extent,
} from './axis.ts';
import { markRows } from './curve/mark-rows.ts';
import { placeLabels } from './curve/label-place.ts';
import { Drawing, Label, Line } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH, pathThrough, TEXT_HEIGHT, textWidth } from './shapes/page.ts';

const PLOT_HEIGHT = 270;
/** Dash patterns in styles/pictures.css. */
const LINE_STYLES = 6;
const RIGHT = PAGE_WIDTH - 14;

interface Props {
  readonly picture: CurveData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

type Points = readonly { readonly x: number; readonly y: number }[];

/** A line chart: curves named on their lines, and upright marks such as the reader's own setting. */
export function Picture({ picture }: Props): ComponentChildren {
  const curves = picture.curves.map(({ label, points }) => ({
    label,
    points: points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
  }));
  const marks = picture.marks.filter(({ x }) => Number.isFinite(x));
  const points = curves.flatMap((curve) => curve.points);
  const across = extentOf([...points, ...marks].map(({ x }) => x));
  const up = verticalExtent(points);
  const xTicks = roundTicks(across, 6);
  const yTicks = roundTicks(up, 6);
  const yTexts = yTicks.values.map((value) => tickText(value, yTicks.decimals));
  const left = Math.max(...yTexts.map(textWidth)) + 14;
  const x = linearScale(across, { from: left, to: RIGHT });
  const placedMarks = markRows(
    marks.map((mark) => ({ label: mark.label, x: x(mark.x), width: textWidth(mark.label) })),
    { from: left, to: RIGHT },
  );
  const markRoom = Math.max(0, ...placedMarks.map(({ row }) => row + 1)) * TEXT_HEIGHT;
  const top = TEXT_HEIGHT + 12 + markRoom;
  const bottom = top + PLOT_HEIGHT;
  const y = linearScale(up, { from: bottom, to: top });
  const drawn = curves.map(({ label, points: own }) => ({
    label,
    points: own.map((point) => ({ x: x(point.x), y: y(point.y) })),
    width: textWidth(label),
  }));
  const names = placeLabels(
    drawn,
    { left: left + 4, right: RIGHT, top, bottom },
    placedMarks.map((mark) => mark.x),
  );
  const unplaced = drawn.flatMap(({ label }, index) =>
    label !== '' && names[index] === undefined ? [{ label, index }] : [],
  );
  const listTop = bottom + 2 * TEXT_HEIGHT + 14;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={listTop + unplaced.length * TEXT_HEIGHT}
    >
      <Label x={0} y={20} tone="soft">
        {picture.yLabel}
      </Label>
      {yTicks.values.map((value, index) => (
        <g key={value}>
          <Line x1={left} y1={y(value)} x2={RIGHT} y2={y(value)} kind="rule" />
          <Label x={left - 8} y={y(value) + 7} anchor="end">
            {yTexts[index]}
          </Label>
        </g>
      ))}
      <Line x1={left} y1={bottom} x2={RIGHT} y2={bottom} />
      {xTicks.values.map((value) => (
        <g key={value}>
          <Line x1={x(value)} y1={bottom} x2={x(value)} y2={bottom + 7} />
          <TickLabel x={x(value)} y={bottom + 30} text={tickText(value, xTicks.decimals)} />
        </g>
      ))}
      <Label x={RIGHT} y={bottom + 30 + TEXT_HEIGHT} anchor="end" tone="soft">
        {picture.xLabel}
      </Label>
      {placedMarks.map((mark) => (
        <g key={`${mark.x} ${mark.label}`}>
          <Line
            x1={mark.x}
            y1={TEXT_HEIGHT + 12 + mark.row * TEXT_HEIGHT}
            x2={mark.x}
            y2={bottom}
            kind="mark"
          />
          <Label
            x={mark.textX}
            y={TEXT_HEIGHT + 10 + (mark.row + 1) * TEXT_HEIGHT - 4}
            anchor={mark.anchor}
            tone="strong"
          >
            {mark.label}
          </Label>
        </g>
      ))}
      {drawn.map(({ points: line }, index) => (
        <CurveLine key={index} points={line} index={index} />
      ))}
      {drawn.map(({ label }, index) => {
        const place = names[index];
        return (
          place !== undefined && (
            <Label key={label} x={place.x} y={place.y} anchor="middle" tone="halo">
              {label}
            </Label>
          )
        );
      })}
      {unplaced.map(({ label, index }, row) => (
        <g key={label}>
          <line
            class={`pic-line pic-line-${index % LINE_STYLES}`}
            x1="0"
            x2="40"
            y1={at(listTop + row * TEXT_HEIGHT + 12)}
            y2={at(listTop + row * TEXT_HEIGHT + 12)}
          />
          <Label x={50} y={listTop + row * TEXT_HEIGHT + 19}>
            {label}
          </Label>
        </g>
      ))}
    </Drawing>
  );
}

/** Heights start at zero where that costs less than half of the chart. */
function verticalExtent(points: Points): Extent {
  const { from, to } = extentOf(points.map(({ y }) => y));
  const least = Math.min(...points.map(({ y }) => y));
  if (points.length > 0 && least >= 0 && (from < 0 || from <= to / 2)) {
    return roundedOutwards({ from: 0, to: to <= 0 ? 1 : to }, 6);
  }
  return roundedOutwards({ from, to }, 6);
}

function TickLabel(props: {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}): ComponentChildren {
  const half = textWidth(props.text) / 2;
  return (
    <Label x={Math.min(PAGE_WIDTH - half, props.x)} y={props.y} anchor="middle">
      {props.text}
    </Label>
  );
}

function CurveLine(props: { readonly points: Points; readonly index: number }): ComponentChildren {
  const [only] = props.points;
  if (only === undefined) return null;
  if (props.points.length === 1) {
    return <circle class="pic-head" cx={at(only.x)} cy={at(only.y)} r="5" />;
  }
  return (
    <path class={`pic-line pic-line-${props.index % LINE_STYLES}`} d={pathThrough(props.points)} />
  );
}
