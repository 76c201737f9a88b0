import { at } from '../shapes/page.ts';

/** A sector of the disc placed on the page: degrees from the top, against the way a clock turns. */
export interface PlacedSector<Sector> {
  readonly sector: Sector;
  readonly fromDegrees: number;
  readonly middleDegrees: number;
}

/**
 * Sectors in the order in which they pass the gate at the top. A disc that turns as a clock does
 * brings up what stands left of the top, so they are laid against the clock.
 *
 * @param first  index of the sector whose middle stands at the top
 */
export function placedAround<Sector extends { readonly degrees: number }>(
  sectors: readonly Sector[],
  first: number,
): readonly PlacedSector<Sector>[] {
  const turned = [...sectors.slice(first), ...sectors.slice(0, first)];
  const [top] = turned;
  let end = top === undefined ? 0 : -top.degrees / 2;
  return turned.map((sector) => {
    const fromDegrees = end;
    end += sector.degrees;
    return { sector, fromDegrees, middleDegrees: fromDegrees + sector.degrees / 2 };
  });
}

/** Point at an angle from the top, against the clock. */
export function onCircle(
  centre: { readonly x: number; readonly y: number },
  radius: number,
  degrees: number,
): { readonly x: number; readonly y: number } {
  const turn = (degrees * Math.PI) / 180;
  return { x: centre.x - radius * Math.sin(turn), y: centre.y - radius * Math.cos(turn) };
}

/** Outline of a sector between hub and rim. */
export function sectorPath(
  centre: { readonly x: number; readonly y: number },
  hub: number,
  rim: number,
  fromDegrees: number,
  degrees: number,
): string {
  // An arc of a whole turn has no direction; a hair less draws the same.
  const span = Math.min(degrees, 359.99);
  const isLarge = span > 180 ? 1 : 0;
  const corner = (radius: number, angle: number): string => {
    const { x, y } = onCircle(centre, radius, angle);
    return `${at(x)} ${at(y)}`;
  };
  const to = fromDegrees + span;
  return [
    `M${corner(rim, fromDegrees)}`,
    `A${rim} ${rim} 0 ${isLarge} 0 ${corner(rim, to)}`,
    `L${corner(hub, to)}`,
    `A${hub} ${hub} 0 ${isLarge} 1 ${corner(hub, fromDegrees)}Z`,
  ].join('');
}
