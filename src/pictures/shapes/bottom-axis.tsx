import type { ComponentChildren } from 'preact';
import { Label, Line } from './drawing.tsx';
import { textWidth } from './page.ts';

/** Time or length axis with round ticks below a drawing. */
export function BottomAxis(props: {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly unit: string;
}): ComponentChildren {
  const { y, from, to, ticks, unit } = props;
  const unitLeft = to - textWidth(unit);
  return (
    <g>
      <Line x1={from} y1={y} x2={to} y2={y} />
      {ticks.map(({ x, text }) => (
        <g key={text}>
          <Line x1={x} y1={y} x2={x} y2={y + 7} />
          {(unit === '' || x + textWidth(text) / 2 < unitLeft - 8) && (
            <Label x={Math.max(x, textWidth(text) / 2)} y={y + 30} anchor="middle">
              {text}
            </Label>
          )}
        </g>
      ))}
      {unit !== '' && (
        <Label x={to} y={y + 30} anchor="end" tone="soft">
          {unit}
        </Label>
      )}
    </g>
  );
}
