import type { ComponentChildren } from 'preact';
import { at, PAGE_WIDTH } from './page.ts';

interface DrawingProps {
  /** Name of the picture, for its class. */
  readonly name: string;
  /** The picture in words, for a reader who cannot see it. */
  readonly alternative: string;
  readonly height: number;
  readonly width?: number;
  readonly children: ComponentChildren;
}

/** The outer SVG of a picture. Its colours and text sizes are in styles/pictures.css. */
export function Drawing(props: DrawingProps): ComponentChildren {
  const { name, alternative, height, width = PAGE_WIDTH, children } = props;
  return (
    <div class={`pic pic-${name}`}>
      <svg
        class="pic-svg"
        viewBox={`0 0 ${at(width)} ${at(height)}`}
        role="img"
        aria-label={alternative}
      >
        {children}
      </svg>
    </div>
  );
}

interface LabelProps {
  readonly x: number;
  readonly y: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly tone?: 'soft' | 'strong' | 'halo';
  readonly children: ComponentChildren;
}

/** A text; `y` is its base line. */
export function Label({ x, y, anchor = 'start', tone, children }: LabelProps): ComponentChildren {
  return (
    <text
      class={tone === undefined ? 'pic-text' : `pic-text pic-text-${tone}`}
      x={at(x)}
      y={at(y)}
      text-anchor={anchor}
    >
      {children}
    </text>
  );
}

interface LineProps {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly kind?: 'axis' | 'rule' | 'dash' | 'mark' | 'dimension';
}

export function Line({ x1, y1, x2, y2, kind = 'axis' }: LineProps): ComponentChildren {
  return <line class={`pic-${kind}`} x1={at(x1)} y1={at(y1)} x2={at(x2)} y2={at(y2)} />;
}

interface BoxProps {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly class: string;
  readonly radius?: number;
  readonly fill?: string;
}

export function Box(props: BoxProps): ComponentChildren {
  const { x, y, width, height, radius, fill } = props;
  return (
    <rect
      class={props.class}
      x={at(x)}
      y={at(y)}
      width={at(Math.max(0, width))}
      height={at(Math.max(0, height))}
      rx={radius === undefined ? undefined : at(radius)}
      fill={fill}
    />
  );
}

/** Diagonal hatch, the sign that goes with every tint. `id` must be unique on the page. */
export function HatchPattern({ id }: { readonly id: string }): ComponentChildren {
  return (
    <pattern
      id={id}
      width="8"
      height="8"
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <line class="pic-hatch" x1="4" y1="0" x2="4" y2="8" />
    </pattern>
  );
}
