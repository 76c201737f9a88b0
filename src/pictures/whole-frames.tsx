import type { ComponentChildren } from 'preact';
import type { WholeFramesData } from '../worksheets/machine/picture-data.ts';
import { tickText } from './axis.ts';
import { Box, Drawing, HatchPattern, Label } from './shapes/drawing.tsx';
import { PAGE_WIDTH, TEXT_HEIGHT, textWidth } from './shapes/page.ts';

type CameraFrame = WholeFramesData['cameraFrames'][number];

const MOST_FRAMES = 12;
const GAP = 8;
const BOX_HEIGHT = 64;
const TOP = 38;

interface Props {
  readonly picture: WholeFramesData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** Consecutive camera frames, each divided by the light of the film frames it holds. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const frames = picture.cameraFrames.slice(0, MOST_FRAMES);
  const leftOut = picture.cameraFrames.length - frames.length;
  const widest = Math.max(1, ...frames.flatMap((frame) => captions(frame).map(textWidth)));
  const perRow = Math.max(1, Math.min(6, Math.floor((PAGE_WIDTH + GAP) / (widest + GAP))));
  const boxWidth = (PAGE_WIDTH - 4 + GAP) / perRow - GAP;
  const rows = Math.ceil(frames.length / perRow);
  const captionLines = frames.every((frame) => captions(frame).length === 1) ? 1 : 2;
  const rowHeight = TEXT_HEIGHT + BOX_HEIGHT + captionLines * TEXT_HEIGHT + 18;
  const legendTop = TOP + rows * rowHeight + 4;
  const hatch = `${instance}-hatch`;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={legendTop + TEXT_HEIGHT * (leftOut > 0 ? 2 : 1) + 8}
    >
      <defs>
        <HatchPattern id={hatch} />
      </defs>
      <Label x={2} y={24} tone="strong">
        Camera frames and the film frames in them
      </Label>
      {frames.map((frame, index) => (
        <Frame
          key={index}
          frame={frame}
          number={index + 1}
          hatch={hatch}
          x={2 + (index % perRow) * (boxWidth + GAP)}
          y={TOP + Math.floor(index / perRow) * rowHeight}
          width={boxWidth}
        />
      ))}
      <Box class="pic-outline" x={2} y={legendTop} width={30} height={20} fill={`url(#${hatch})`} />
      <Label x={42} y={legendTop + 18}>
        light of a second film frame
      </Label>
      {leftOut > 0 && (
        <Label x={2} y={legendTop + 18 + TEXT_HEIGHT} tone="soft">
          {leftOut} more not drawn
        </Label>
      )}
    </Drawing>
  );
}

/** Whole percent, without calling a small part nothing or a large part everything. */
function percentText(share: number): string {
  const rounded = Math.round(share * 100);
  if (rounded >= 100) return '>99';
  if (rounded <= 0) return '<1';
  return tickText(rounded, 0);
}

/** The two lines under a box. */
function captions(frame: CameraFrame): readonly string[] {
  const { filmFrame, otherFilmFrame, purity, darkRows = 0 } = frame;
  if (otherFilmFrame === undefined && darkRows > 0) return [darkRows >= 1 ? 'dark' : 'dark rows'];
  if (purity > 1 - 1e-9) return ['whole'];
  const other = otherFilmFrame === undefined ? 'other' : String(otherFilmFrame);
  return [
    `${filmFrame}: ${percentText(purity)}\u00a0%`,
    `${other}: ${percentText(1 - purity)}\u00a0%`,
  ];
}

function Frame(props: {
  readonly frame: CameraFrame;
  readonly number: number;
  readonly hatch: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}): ComponentChildren {
  const { frame, number, hatch, x, y, width } = props;
  const { filmFrame, otherFilmFrame } = frame;
  const boxTop = y + TEXT_HEIGHT;
  const mainWidth = width * Math.min(1, Math.max(0, frame.purity));
  // Dark rows are left white at the foot of the box; where they lie in the picture is not drawn.
  const darkRows = frame.darkRows ?? 0;
  const lit = BOX_HEIGHT * (1 - darkRows);
  // The earlier film frame gives its light first, so it stands on the left.
  const otherIsEarlier = otherFilmFrame !== undefined && otherFilmFrame < filmFrame;
  const mainLeft = otherIsEarlier ? x + width - mainWidth : x;
  const otherLeft = otherIsEarlier ? x : x + mainWidth;
  return (
    <g>
      <Label x={x + 2} y={y + 20} tone="soft">
        {number}
      </Label>
      <Box class="pic-tint" x={mainLeft} y={boxTop} width={mainWidth} height={lit} />
      {frame.purity <= 1 - 1e-9 && darkRows < 1 && (
        <Box
          class="pic-share"
          x={otherLeft}
          y={boxTop}
          width={width - mainWidth}
          height={lit}
          fill={`url(#${hatch})`}
        />
      )}
      <Box class="pic-outline" x={x} y={boxTop} width={width} height={BOX_HEIGHT} />
      <text
        class="pic-text pic-text-large"
        x={Math.round(frame.purity > 0 ? mainLeft + mainWidth / 2 : x + width / 2)}
        y={boxTop + BOX_HEIGHT / 2 + 12}
        text-anchor="middle"
      >
        {darkRows >= 1 ? '–' : filmFrame}
      </text>
      {captions(frame).map((caption, line) => (
        <Label
          key={caption}
          x={x + width / 2}
          y={boxTop + BOX_HEIGHT + 22 + line * TEXT_HEIGHT}
          anchor="middle"
        >
          {caption}
        </Label>
      ))}
    </g>
  );
}
