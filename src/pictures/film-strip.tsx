import type { ComponentChildren } from 'preact';
import type { FilmStripData } from '../worksheets/machine/picture-data.ts';
import { linearScale, roundTicks, tickText } from './axis.ts';
import { Film } from './film-strip/film.tsx';
import { DimensionAcross, DimensionDown, Leader, ScaleBar } from './shapes/dimension.tsx';
import { Drawing, HatchPattern } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH } from './shapes/page.ts';

const FRAMES = 3;
/** Room for texts left and right of the strip, page units. */
const SIDE = 138;
const TOP = 58;
const BOTTOM = 62;
const TALLEST = 440;

/** What a sound record is called beside the drawing. */
const SOUND_LINES = {
  magnetic: ['magnetic', 'stripe'],
  optical: ['optical', 'track'],
} as const;

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
          <rect x={at(left)} y={TOP} width={at(stripWidth)} height={at(bottom - TOP)} />
        </clipPath>
      </defs>
      <Film
        film={picture}
        lengthMillimetres={lengthMillimetres}
        left={left}
        top={TOP}
        perMillimetre={perMillimetre}
        clipId={`${instance}-strip`}
        hatchId={`${instance}-hatch`}
      />
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
          lines={[...SOUND_LINES[stripe.system], millimetres(stripe.widthMillimetres)]}
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
