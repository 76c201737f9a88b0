import type { ComponentChildren } from 'preact';
import type { RangeBarsData } from '../worksheets/machine/picture-data.ts';
import { extentOf, linearScale, roundTicks, tickText } from './axis.ts';
import { BottomAxis } from './shapes/bottom-axis.tsx';
import { Box, Drawing, HatchPattern, Label, Line } from './shapes/drawing.tsx';
import { PAGE_WIDTH, TEXT_HEIGHT } from './shapes/page.ts';

const LEFT = 4;
const RIGHT = PAGE_WIDTH - 14;
const BAR_HEIGHT = 24;
const ROW_HEIGHT = TEXT_HEIGHT + BAR_HEIGHT + 12;
/** Bars below the first at most; more are counted. */
const MOST_BARS = 6;

interface Props {
  readonly picture: RangeBarsData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** A range as a bar, and under it how much of it other ranges hold; what they miss is hatched. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { whole } = picture;
  const parts = picture.parts.slice(0, MOST_BARS);
  const leftOut = picture.parts.length - parts.length;
  const extent = extentOf([whole, ...parts].flatMap(({ from, to }) => [from, to]));
  const x = linearScale(extent, { from: LEFT, to: RIGHT });
  const hatch = `${instance}-hatch`;
  const bottom = 8 + (1 + parts.length) * ROW_HEIGHT;
  const ticks = roundTicks(extent, 8);
  const notes = [
    ...(parts.some((part) => missed(whole, part) > 1e-9) ? [`hatched: ${picture.missedText}`] : []),
    ...(leftOut > 0 ? [`${leftOut} more not drawn`] : []),
  ];
  const notesTop = bottom + 30 + TEXT_HEIGHT;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={notesTop + notes.length * TEXT_HEIGHT}
    >
      <defs>
        <HatchPattern id={hatch} />
      </defs>
      {[whole, ...parts].map((bar, row) => {
        const top = 8 + row * ROW_HEIGHT + TEXT_HEIGHT;
        const width = x(bar.to) - x(bar.from);
        return (
          <g key={row}>
            <Label x={LEFT} y={top - 8} tone="strong">
              {bar.label}
            </Label>
            {row > 0 && (
              <Box
                class="pic-share pic-outlined"
                x={x(whole.from)}
                y={top}
                width={x(whole.to) - x(whole.from)}
                height={BAR_HEIGHT}
                fill={`url(#${hatch})`}
              />
            )}
            <Box
              class={`${row === 0 ? 'pic-tint' : 'pic-fill'} pic-outlined pic-bar`}
              x={x(bar.from)}
              y={top}
              width={width}
              height={BAR_HEIGHT}
            />
          </g>
        );
      })}
      {[whole.from, whole.to].map((end) => (
        <Line key={end} x1={x(end)} y1={8 + TEXT_HEIGHT} x2={x(end)} y2={bottom} kind="dash" />
      ))}
      <BottomAxis
        y={bottom}
        from={LEFT}
        to={RIGHT}
        unit={picture.unit}
        ticks={ticks.values.map((value) => ({
          x: x(value),
          text: tickText(value, ticks.decimals),
        }))}
      />
      {notes.map((note, index) => (
        <Label key={note} x={LEFT} y={notesTop + index * TEXT_HEIGHT} tone="soft">
          {note}
        </Label>
      ))}
    </Drawing>
  );
}

type Range = RangeBarsData['whole'];

/** How much of a range another one leaves out. */
function missed(whole: Range, part: Range): number {
  const shared = Math.min(whole.to, part.to) - Math.max(whole.from, part.from);
  return whole.to - whole.from - Math.max(0, shared);
}
