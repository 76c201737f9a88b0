import type { ComponentChildren } from 'preact';
import type { RepeatPatternData } from '../worksheets/machine/picture-data.ts';
import { repeatRows, type PlacedFrame, type RepeatRow } from './repeat-pattern/rows.ts';
import { Box, Drawing, HatchPattern, Label, Line } from './shapes/drawing.tsx';
import { at, labelsThatFit, PAGE_WIDTH, TEXT_HEIGHT, textWidth } from './shapes/page.ts';

const MOST_SLOTS = 25;
const MOST_ROWS = 5;
/** A film frame shown more often than this is drawn as one long bar. */
const MOST_CELLS = 120;
const ROW_HEIGHT = 118;
const FILM = { top: 34, height: 36 };
const OUTPUT = { top: 86, height: 16 };
const LEFT = 2;

interface Props {
  readonly picture: RepeatPatternData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** Film frames above, the output frames that show them below. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const all = repeatRows(picture.repeats, MOST_SLOTS);
  const rows = all.slice(0, MOST_ROWS);
  const leftOut = all.slice(MOST_ROWS).flatMap(({ frames }) => frames).length;
  const mostSlots = Math.max(1, ...rows.map(({ slots }) => slots));
  const slotWidth = Math.min(48, (PAGE_WIDTH - 2 * LEFT) / mostSlots);
  const legendTop = TEXT_HEIGHT + 10 + rows.length * ROW_HEIGHT;
  const hasLost = picture.repeats.some((count) => count === 0);
  const hatch = `${instance}-hatch`;
  const lines = [
    ...(hasLost ? ['×0, hatched: lost, in no output frame'] : []),
    ...(leftOut > 0 ? [`${leftOut} more film frames not drawn`] : []),
  ];
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={legendTop + lines.length * TEXT_HEIGHT}
    >
      <defs>
        <HatchPattern id={hatch} />
      </defs>
      <Label x={LEFT} y={24} tone="strong">
        Film frames, and output frames below
      </Label>
      {rows.map((row, index) => (
        <Row
          key={index}
          row={row}
          y={TEXT_HEIGHT + index * ROW_HEIGHT}
          slotWidth={slotWidth}
          hatch={hatch}
        />
      ))}
      {lines.map((line, index) => (
        <Label key={line} x={LEFT} y={legendTop + 18 + index * TEXT_HEIGHT} tone="soft">
          {line}
        </Label>
      ))}
    </Drawing>
  );
}

function Row(props: {
  readonly row: RepeatRow;
  readonly y: number;
  readonly slotWidth: number;
  readonly hatch: string;
}): ComponentChildren {
  const { row, y, slotWidth, hatch } = props;
  const { frames } = row;
  const centres = frames.map(({ slot, slots }) => LEFT + (slot + slots / 2) * slotWidth);
  const labels = (texts: readonly string[]): { centre: number; width: number }[] =>
    texts.map((text, index) => ({ centre: centres[index] ?? 0, width: textWidth(text) }));
  const numbered = labelsThatFit(labels(frames.map(({ number }) => String(number))), [
    ...frames.keys(),
  ]);
  const counted = labelsThatFit(
    labels(frames.map(({ repeats }) => `×${repeats}`)),
    rarestFirst(frames),
  );
  return (
    <g>
      {frames.map((frame, index) => (
        <FilmFrame
          key={frame.number}
          frame={frame}
          y={y}
          x={LEFT + frame.slot * slotWidth}
          slotWidth={slotWidth}
          hatch={hatch}
          hasNumber={numbered.has(index)}
          hasCount={counted.has(index)}
        />
      ))}
    </g>
  );
}

/** Indexes of frames, those with an unusual count before the common ones: they make the pattern. */
function rarestFirst(frames: readonly PlacedFrame[]): readonly number[] {
  const tally = new Map<number, number>();
  for (const { repeats } of frames) tally.set(repeats, (tally.get(repeats) ?? 0) + 1);
  const how = (index: number): number => tally.get(frames[index]?.repeats ?? 0) ?? 0;
  return [...frames.keys()].sort((first, second) => how(first) - how(second) || first - second);
}

function FilmFrame(props: {
  readonly frame: PlacedFrame;
  readonly x: number;
  readonly y: number;
  readonly slotWidth: number;
  readonly hatch: string;
  readonly hasNumber: boolean;
  readonly hasCount: boolean;
}): ComponentChildren {
  const { frame, x, y, slotWidth, hatch } = props;
  const width = frame.slots * slotWidth;
  const isLost = frame.repeats === 0;
  const tint = frame.number % 2 === 0 ? 'pic-blank' : 'pic-tint';
  const filmTop = y + FILM.top;
  const outputTop = y + OUTPUT.top;
  return (
    <g>
      {props.hasCount && (
        <Label x={x + width / 2} y={filmTop - 7} anchor="middle">
          ×{frame.repeats}
        </Label>
      )}
      <Box
        class={isLost ? 'pic-share' : tint}
        x={x + 1}
        y={filmTop}
        width={width - 2}
        height={FILM.height}
        {...(isLost ? { fill: `url(#${hatch})` } : {})}
      />
      <Box class="pic-outline" x={x + 1} y={filmTop} width={width - 2} height={FILM.height} />
      {props.hasNumber && !isLost && (
        <Label x={x + width / 2} y={filmTop + 26} anchor="middle" tone="strong">
          {frame.number}
        </Label>
      )}
      {frame.repeats > MOST_CELLS && (
        <Box
          class={`${tint} pic-outlined`}
          x={x + 1}
          y={outputTop}
          width={width - 2}
          height={OUTPUT.height}
        />
      )}
      {Array.from({ length: frame.repeats > MOST_CELLS ? 0 : frame.repeats }, (_, index) => {
        const left = x + index * slotWidth;
        return (
          <g key={index}>
            <Line
              x1={left + slotWidth / 2}
              y1={filmTop + FILM.height}
              x2={left + slotWidth / 2}
              y2={outputTop}
              kind="rule"
            />
            <Box
              class={`${tint} pic-outlined`}
              x={left + 1}
              y={outputTop}
              width={at(slotWidth - 2)}
              height={OUTPUT.height}
            />
          </g>
        );
      })}
    </g>
  );
}
