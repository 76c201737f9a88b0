import type { ComponentChildren } from 'preact';
import type { SoundStripData } from '../worksheets/machine/picture-data.ts';
import { linearScale } from './axis.ts';
import { Box, Drawing, HatchPattern, Label, Line } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH, TEXT_HEIGHT, textWidth } from './shapes/page.ts';

const LEFT = 14;
const RIGHT = PAGE_WIDTH - 14;
const STRIP = { top: 92, height: 52, track: 12 };
const TRACK_TOP = STRIP.top + STRIP.height - STRIP.track;
/** Narrower frames are not drawn one by one, page units. */
const NARROWEST_FRAME = 6;

interface Props {
  readonly picture: SoundStripData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** A strip of film that runs to the right: the picture in the gate, its own sound, and where sound is read. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { separationFrames: sound, readFrames: read } = picture;
  const from = Math.min(0, sound, read) - 1;
  const to = Math.max(0, sound, read) + 2;
  const x = linearScale({ from, to }, { from: LEFT, to: RIGHT });
  const frame = x(1) - x(0);
  const hatch = `${instance}-hatch`;
  const measured = STRIP.top + STRIP.height + 24;
  const hasGap = picture.gapText !== '';
  const lastRow = measured + (hasGap ? 2.4 : 1.2) * TEXT_HEIGHT;
  return (
    <Drawing name={picture.name} alternative={picture.alternative} height={lastRow + TEXT_HEIGHT}>
      <defs>
        <HatchPattern id={hatch} />
      </defs>
      <Box class="pic-tint" x={LEFT} y={STRIP.top} width={RIGHT - LEFT} height={STRIP.height} />
      <Frames from={from} to={to} x={x} />
      <Box
        class="pic-share"
        x={LEFT}
        y={TRACK_TOP}
        width={RIGHT - LEFT}
        height={STRIP.track}
        fill={`url(#${hatch})`}
      />
      <path
        class="pic-edge"
        d={`M${LEFT} ${STRIP.top}H${RIGHT}M${LEFT} ${STRIP.top + STRIP.height}H${RIGHT}`}
      />
      <Box
        class="pic-fill pic-gate"
        x={x(0)}
        y={STRIP.top + 4}
        width={Math.max(4, frame - 2)}
        height={STRIP.height - STRIP.track - 8}
      />
      <Box
        class="pic-fill pic-sound"
        x={x(sound)}
        y={TRACK_TOP}
        width={Math.max(4, frame - 2)}
        height={STRIP.track}
      />
      <Pointer x={x(0) + frame / 2} row={0} end={STRIP.top + 14} text="picture in the gate" />
      <Pointer
        x={x(read) + frame / 2}
        row={1}
        end={TRACK_TOP + STRIP.track / 2}
        text={picture.readText}
      />
      <Measure
        from={x(0) + frame / 2}
        to={x(sound) + frame / 2}
        y={measured}
        text={picture.separationText}
      />
      {hasGap && (
        <Measure
          from={x(sound) + frame / 2}
          to={x(read) + frame / 2}
          y={measured + 1.3 * TEXT_HEIGHT}
          text={picture.gapText}
        />
      )}
      <Label x={RIGHT} y={lastRow + TEXT_HEIGHT - 6} anchor="end" tone="soft">
        film runs this way →
      </Label>
    </Drawing>
  );
}

function Frames(props: {
  readonly from: number;
  readonly to: number;
  readonly x: (frames: number) => number;
}): ComponentChildren {
  const { from, to, x } = props;
  if (x(1) - x(0) < NARROWEST_FRAME) return null;
  const first = Math.ceil(from);
  const count = Math.max(0, Math.floor(to) - first);
  return (
    <g>
      {Array.from({ length: count }, (_, index) => (
        <Box
          key={index}
          class="pic-image pic-outlined"
          x={x(first + index)}
          y={STRIP.top + 4}
          width={x(1) - x(0) - 2}
          height={STRIP.height - STRIP.track - 8}
        />
      ))}
    </g>
  );
}

/** A text over the strip and a line from it down to the film. */
function Pointer(props: {
  readonly x: number;
  readonly row: number;
  /** Where the line ends. */
  readonly end: number;
  readonly text: string;
}): ComponentChildren {
  const { x, row, end, text } = props;
  const y = 22 + row * TEXT_HEIGHT;
  const isRight = x + textWidth(text) > RIGHT;
  return (
    <g>
      <Line x1={x} y1={y - 16} x2={x} y2={end} kind="dimension" />
      <circle class="pic-head" cx={at(x)} cy={at(end)} r="4" />
      <Label x={isRight ? x - 8 : x + 8} y={y} anchor={isRight ? 'end' : 'start'} tone="strong">
        {text}
      </Label>
    </g>
  );
}

/** A length along the film with its text beside the line, kept on the page. */
function Measure(props: {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly text: string;
}): ComponentChildren {
  const { from, to, y, text } = props;
  const half = textWidth(text) / 2;
  const middle = Math.min(PAGE_WIDTH - half, Math.max(half, (from + to) / 2));
  return (
    <g>
      <Line x1={from} y1={STRIP.top + STRIP.height} x2={from} y2={y + 5} kind="dimension" />
      <Line x1={to} y1={STRIP.top + STRIP.height} x2={to} y2={y + 5} kind="dimension" />
      <Line x1={from} y1={y} x2={to} y2={y} kind="axis" />
      <Label x={middle} y={y + 22} anchor="middle" tone="halo">
        {text}
      </Label>
    </g>
  );
}
