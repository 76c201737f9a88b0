import type { ComponentChildren } from 'preact';
import type { FilmStripData } from '../worksheets/picture-data.ts';
import { linearScale, roundTicks, tickText } from './axis.ts';
import { DimensionAcross, DimensionDown, Leader, ScaleBar } from './shapes/dimension.tsx';
import { Box, Drawing, HatchPattern } from './shapes/drawing.tsx';
import { PAGE_WIDTH } from './shapes/page.ts';

const FRAMES = 3;
/** Room for texts left and right of the strip, page units. */
const SIDE = 138;
const TOP = 58;
const BOTTOM = 62;
const TALLEST = 440;

interface Props {
  readonly picture: FilmStripData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** A few frames of film to scale, with their dimensions. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { widthMillimetres, pitchMillimetres, stripes } = picture;
  const image = picture.picture;
  const lengthMillimetres = pitchMillimetres * FRAMES;
  const perMillimetre = Math.min(
    (PAGE_WIDTH - 2 * SIDE) / widthMillimetres,
    TALLEST / lengthMillimetres,
  );
  const stripWidth = widthMillimetres * perMillimetre;
  const left = (PAGE_WIDTH - stripWidth) / 2;
  const right = left + stripWidth;
  const bottom = TOP + lengthMillimetres * perMillimetre;
  const x = linearScale({ from: 0, to: widthMillimetres }, { from: left, to: right });
  const y = linearScale({ from: 0, to: lengthMillimetres }, { from: TOP, to: bottom });
  const hole = picture.perforations[0];
  const stripe = stripes[0];
  const middle = (top: number): number => top + image.centreMillimetres;
  const lastTop = (FRAMES - 1) * pitchMillimetres;
  const imageRight = x(image.leftMillimetres + image.widthMillimetres);
  return (
    <Drawing name={picture.name} alternative={picture.alternative} height={bottom + BOTTOM}>
      <defs>
        <HatchPattern id={`${instance}-hatch`} />
        <clipPath id={`${instance}-strip`}>
          <rect x={left} y={TOP} width={stripWidth} height={bottom - TOP} />
        </clipPath>
      </defs>
      <Film picture={picture} instance={instance} x={x} y={y} perMillimetre={perMillimetre} />
      <DimensionAcross from={left} to={right} y={42} extendTo={TOP} textY={28}>
        width {millimetres(widthMillimetres)}
      </DimensionAcross>
      <DimensionDown
        from={y(0)}
        to={y(pitchMillimetres)}
        x={right + 22}
        extendTo={right}
        lines={['pitch', millimetres(pitchMillimetres)]}
      />
      <DimensionDown
        from={y(middle(lastTop) - image.heightMillimetres / 2)}
        to={y(middle(lastTop) + image.heightMillimetres / 2)}
        x={right + 22}
        extendTo={imageRight}
        lines={['picture', millimetres(image.heightMillimetres)]}
      />
      <DimensionAcross
        from={x(image.leftMillimetres)}
        to={imageRight}
        y={bottom + 20}
        extendTo={y(middle(lastTop) + image.heightMillimetres / 2)}
        textY={bottom + 48}
      >
        picture {millimetres(image.widthMillimetres)}
      </DimensionAcross>
      {hole !== undefined && (
        <Leader
          x={x(hole.leftMillimetres + hole.widthMillimetres / 2)}
          y={y(hole.centreMillimetres + pitchMillimetres)}
          textRight={left - 22}
          lines={[
            'hole',
            `${plain(hole.widthMillimetres)} wide`,
            `${plain(hole.heightMillimetres)} high`,
          ]}
        />
      )}
      {stripe !== undefined && (
        <Leader
          x={x(stripe.leftMillimetres + stripe.widthMillimetres / 2)}
          y={y(lastTop + pitchMillimetres * 0.7)}
          textRight={left - 22}
          lines={[
            stripes.length === 1 ? 'stripe' : 'stripes',
            ...new Set(stripes.map((each) => millimetres(each.widthMillimetres))),
          ]}
        />
      )}
      <ScaleBar x={2} y={bottom + 48} {...scaleLength(perMillimetre)} />
    </Drawing>
  );
}

/** Millimetres with the decimals that the dimension has, three at most. */
function plain(value: number): string {
  return tickText(value, 3).replace(/\.?0+$/u, '');
}

function millimetres(value: number): string {
  return `${plain(value)}\u00a0mm`;
}

/** The longest round length that fits the corner of the drawing. */
function scaleLength(perMillimetre: number): { readonly length: number; readonly text: string } {
  const { step } = roundTicks({ from: 0, to: 110 / perMillimetre }, 2);
  return { length: step * perMillimetre, text: millimetres(step) };
}

interface FilmProps extends Props {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly perMillimetre: number;
}

function Film({ picture, instance, x, y, perMillimetre }: FilmProps): ComponentChildren {
  const { pitchMillimetres, widthMillimetres, perforations, stripes } = picture;
  const image = picture.picture;
  const length = pitchMillimetres * FRAMES;
  const cells = Array.from({ length: FRAMES + 2 }, (_, index) => (index - 1) * pitchMillimetres);
  return (
    <g clip-path={`url(#${instance}-strip)`}>
      <Box
        class="pic-tint"
        x={x(0)}
        y={y(0)}
        width={x(widthMillimetres) - x(0)}
        height={y(length) - y(0)}
      />
      {stripes.map((stripe) => (
        <Box
          key={stripe.leftMillimetres}
          class="pic-share pic-outlined"
          x={x(stripe.leftMillimetres)}
          y={y(0) - 2}
          width={stripe.widthMillimetres * perMillimetre}
          height={y(length) - y(0) + 4}
          fill={`url(#${instance}-hatch)`}
        />
      ))}
      {cells.map((top) => (
        <g key={top}>
          <Box
            class="pic-image pic-outlined"
            x={x(image.leftMillimetres)}
            y={y(top + image.centreMillimetres - image.heightMillimetres / 2)}
            width={image.widthMillimetres * perMillimetre}
            height={image.heightMillimetres * perMillimetre}
            radius={3}
          />
          {perforations.map((hole) => (
            <Box
              key={`${hole.leftMillimetres} ${hole.centreMillimetres}`}
              class="pic-blank pic-outlined"
              x={x(hole.leftMillimetres)}
              y={y(top + hole.centreMillimetres - hole.heightMillimetres / 2)}
              width={hole.widthMillimetres * perMillimetre}
              height={hole.heightMillimetres * perMillimetre}
              radius={4}
            />
          ))}
        </g>
      ))}
      <path
        class="pic-edge"
        d={`M${x(0)} ${y(0)}V${y(length)}M${x(widthMillimetres)} ${y(0)}V${y(length)}`}
      />
    </g>
  );
}
