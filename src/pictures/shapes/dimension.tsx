import type { ComponentChildren } from 'preact';
import { Label, Line } from './drawing.tsx';
import { at, PAGE_WIDTH, TEXT_HEIGHT, textWidth } from './page.ts';

/** Arrow head at the end of a dimension line; `dx`, `dy` is the direction it points to. */
function Head(props: {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}): ComponentChildren {
  const { x, y, dx, dy } = props;
  const back = { x: x - 9 * dx, y: y - 9 * dy };
  return (
    <path
      class="pic-head"
      d={`M${at(x)} ${at(y)}L${at(back.x + 4 * dy)} ${at(back.y + 4 * dx)}L${at(back.x - 4 * dy)} ${at(back.y - 4 * dx)}Z`}
    />
  );
}

/** Horizontal dimension line with its value at `textY`. */
export function DimensionAcross(props: {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  /** Where the thin lines from the ends stop, at the thing that is measured. */
  readonly extendTo: number;
  readonly textY: number;
  readonly children: ComponentChildren;
}): ComponentChildren {
  const { from, to, y, extendTo, textY, children } = props;
  const overshoot = extendTo > y ? -5 : 5;
  return (
    <g>
      <Line x1={from} y1={extendTo} x2={from} y2={y + overshoot} kind="dimension" />
      <Line x1={to} y1={extendTo} x2={to} y2={y + overshoot} kind="dimension" />
      <Line x1={from} y1={y} x2={to} y2={y} kind="dimension" />
      <Head x={from} y={y} dx={-1} dy={0} />
      <Head x={to} y={y} dx={1} dy={0} />
      <Label x={(from + to) / 2} y={textY} anchor="middle">
        {children}
      </Label>
    </g>
  );
}

/** Vertical dimension line right of the thing that is measured, its texts right of the line. */
export function DimensionDown(props: {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly extendTo: number;
  readonly lines: readonly string[];
}): ComponentChildren {
  const { from, to, x, extendTo, lines } = props;
  const top = (from + to) / 2 - ((lines.length - 1) * TEXT_HEIGHT) / 2 + 7;
  return (
    <g>
      <Line x1={extendTo} y1={from} x2={x + 5} y2={from} kind="dimension" />
      <Line x1={extendTo} y1={to} x2={x + 5} y2={to} kind="dimension" />
      <Line x1={x} y1={from} x2={x} y2={to} kind="dimension" />
      <Head x={x} y={from} dx={0} dy={-1} />
      <Head x={x} y={to} dx={0} dy={1} />
      {lines.map((line, index) => (
        <Label
          key={line}
          x={Math.min(x + 11, PAGE_WIDTH - textWidth(line))}
          y={top + index * TEXT_HEIGHT}
        >
          {line}
        </Label>
      ))}
    </g>
  );
}

/** Texts left of the drawing with a line to the point they speak of. */
export function Leader(props: {
  readonly x: number;
  readonly y: number;
  readonly textRight: number;
  readonly lines: readonly string[];
}): ComponentChildren {
  const { x, y, textRight, lines } = props;
  const top = y - ((lines.length - 1) * TEXT_HEIGHT) / 2 + 7;
  return (
    <g>
      <Line x1={textRight + 6} y1={y} x2={x} y2={y} kind="dimension" />
      <circle class="pic-head" cx={at(x)} cy={at(y)} r="3" />
      {lines.map((line, index) => (
        <Label key={line} x={textRight} y={top + index * TEXT_HEIGHT} anchor="end">
          {line}
        </Label>
      ))}
    </g>
  );
}

/** A bar of known length, for checking a print with a ruler's proportions. */
export function ScaleBar(props: {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly text: string;
}): ComponentChildren {
  const { x, y, length, text } = props;
  return (
    <g>
      <path
        class="pic-scale"
        d={`M${at(x)} ${at(y - 7)}V${at(y)}H${at(x + length)}V${at(y - 7)}`}
      />
      <Label x={x} y={y - 14}>
        {text}
      </Label>
    </g>
  );
}
