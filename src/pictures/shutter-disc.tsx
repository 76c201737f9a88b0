import type { ComponentChildren } from 'preact';
import type { ShutterDiscData } from '../worksheets/machine/picture-data.ts';
import { tickText } from './axis.ts';
import { Box, Drawing, HatchPattern, Label } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH, TEXT_HEIGHT, textWidth } from './shapes/page.ts';
import { onCircle, placedAround, sectorPath, type PlacedSector } from './shutter-disc/ring.ts';

type Sector = ShutterDiscData['sectors'][number];
type Placed = PlacedSector<Sector>;

const RIM = 128;
const HUB = 24;
const CENTRE = { x: PAGE_WIDTH / 2, y: 62 + RIM };
const LABEL_RADIUS = RIM + 14;
const GATE = { width: 44, height: 34 };
const LEGEND = { top: CENTRE.y + RIM + 46, box: 30, gap: 24 };

interface Props {
  readonly picture: ShutterDiscData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** One turn of the shutter seen along its shaft, blades and openings to scale, the gate at the top. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { sectors } = picture;
  const first = sectors.findIndex(({ kind }) => kind === 'pulldown-blade');
  const placed = placedAround(sectors, Math.max(0, first));
  const hatch = `${instance}-hatch`;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={LEGEND.top + TEXT_HEIGHT + 4}
    >
      <defs>
        <HatchPattern id={hatch} />
      </defs>
      {placed.map((each) => (
        <path
          key={each.fromDegrees}
          class={`${SECTOR_CLASSES[each.sector.kind]} pic-outlined`}
          d={sectorPath(CENTRE, HUB, RIM, each.fromDegrees, each.sector.degrees)}
          fill={each.sector.kind === 'pulldown-blade' ? `url(#${hatch})` : undefined}
        />
      ))}
      <Box
        class="pic-outline"
        x={CENTRE.x - GATE.width / 2}
        y={CENTRE.y - RIM + 20}
        width={GATE.width}
        height={GATE.height}
        radius={4}
      />
      <Label x={CENTRE.x} y={24} anchor="middle" tone="strong">
        gate
      </Label>
      <path
        class="pic-dimension"
        d={`M${CENTRE.x} 30V${at(CENTRE.y - RIM + 20)}`}
        stroke-linecap="round"
      />
      <Turning />
      {labelsWithRoom(placed).map(({ text, x, y, anchor, isBlade }) => (
        <Label key={`${x} ${y}`} x={x} y={y} anchor={anchor} tone={isBlade ? 'strong' : 'soft'}>
          {text}
        </Label>
      ))}
      <Legend sectors={sectors} hatch={hatch} />
    </Drawing>
  );
}

const SECTOR_CLASSES: Readonly<Record<Sector['kind'], string>> = {
  blade: 'pic-fill',
  'pulldown-blade': 'pic-share',
  opening: 'pic-blank',
};

/** Arrow round the hub, the way the disc turns. */
function Turning(): ComponentChildren {
  const radius = HUB + 12;
  const from = onCircle(CENTRE, radius, 150);
  const to = onCircle(CENTRE, radius, -120);
  const back = onCircle(CENTRE, radius, -104);
  const side = onCircle(CENTRE, radius + 7, -103);
  const inside = onCircle(CENTRE, radius - 7, -103);
  return (
    <g>
      <circle class="pic-blank pic-outlined" cx={CENTRE.x} cy={CENTRE.y} r={radius + 10} />
      <path
        class="pic-edge"
        d={`M${at(from.x)} ${at(from.y)}A${radius} ${radius} 0 1 1 ${at(back.x)} ${at(back.y)}`}
      />
      <path
        class="pic-head"
        d={`M${at(to.x)} ${at(to.y)}L${at(side.x)} ${at(side.y)}L${at(inside.x)} ${at(inside.y)}Z`}
      />
      <circle class="pic-head" cx={CENTRE.x} cy={CENTRE.y} r="5" />
    </g>
  );
}

interface RimLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly isBlade: boolean;
}

function rimLabel({ sector, middleDegrees }: Placed): RimLabel {
  const { x, y } = onCircle(CENTRE, LABEL_RADIUS, middleDegrees);
  const sideways = (x - CENTRE.x) / LABEL_RADIUS;
  const below = (y - CENTRE.y) / LABEL_RADIUS;
  // The top belongs to the gate, so what stands there is written beside its label.
  const isTop = below < -0.97;
  return {
    text: `${tickText(sector.degrees, Number.isInteger(sector.degrees) ? 0 : 1)}°`,
    x: isTop ? CENTRE.x + 44 : x,
    y: isTop ? CENTRE.y - RIM - 10 : y + 9 + 9 * below,
    anchor: isTop || sideways > 0.25 ? 'start' : sideways < -0.25 ? 'end' : 'middle',
    isBlade: sector.kind !== 'opening',
  };
}

/** Labels in order of importance as long as none touches another: pulldown blade, wide sectors, rest. */
function labelsWithRoom(placed: readonly Placed[]): readonly RimLabel[] {
  const weight = ({ sector }: Placed): number =>
    sector.kind === 'pulldown-blade' ? 1000 : sector.degrees;
  const kept: { readonly label: RimLabel; readonly left: number; readonly right: number }[] = [];
  for (const each of [...placed].sort((a, b) => weight(b) - weight(a))) {
    const label = rimLabel(each);
    const width = textWidth(label.text);
    const left =
      label.x - (label.anchor === 'start' ? 0 : label.anchor === 'end' ? width : width / 2);
    const right = left + width;
    const isFree = kept.every(
      (other) =>
        left > other.right ||
        right < other.left ||
        Math.abs(label.y - other.label.y) >= TEXT_HEIGHT - 4,
    );
    if (isFree) kept.push({ label, left, right });
  }
  return kept.map(({ label }) => label);
}

function Legend(props: {
  readonly sectors: readonly Sector[];
  readonly hatch: string;
}): ComponentChildren {
  const entries = (['blade', 'pulldown-blade', 'opening'] as const)
    .filter((kind) => props.sectors.some((sector) => sector.kind === kind))
    .map((kind) => ({ kind, text: kind.replace('-', ' ') }));
  let x = 2;
  return (
    <g>
      {entries.map(({ kind, text }) => {
        const left = x;
        x += LEGEND.box + 10 + textWidth(text) + LEGEND.gap;
        return (
          <g key={kind}>
            <Box
              class={`${SECTOR_CLASSES[kind]} pic-outlined`}
              x={left}
              y={LEGEND.top}
              width={LEGEND.box}
              height={20}
              {...(kind === 'pulldown-blade' ? { fill: `url(#${props.hatch})` } : {})}
            />
            <Label x={left + LEGEND.box + 10} y={LEGEND.top + 18}>
              {text}
            </Label>
          </g>
        );
      })}
    </g>
  );
}
