import { formatNumber } from '../../quantity/format.ts';
import type { ShutterDiscData } from '../machine/picture-data.ts';

/**
 * One turn of a shutter to scale, from arcs in any measure: only their proportion counts.
 *
 * @param blades    blades in the order they pass the gate, the pulldown blade last
 * @param openings  the opening before each blade
 * @param hasPulldown  whether the last blade is known to hide the move of the film
 */
export function shutterDiscPicture(
  blades: readonly number[],
  openings: readonly number[],
  hasPulldown = true,
): ShutterDiscData {
  const turn = [...blades, ...openings].reduce((sum, arc) => sum + arc, 0);
  const degrees = (arc: number): number => (360 * arc) / turn;
  const last = blades.length - 1;
  const sectors = blades.flatMap((blade, index): ShutterDiscData['sectors'] => [
    { degrees: degrees(openings[index] ?? 0), kind: 'opening' },
    {
      degrees: degrees(blade),
      kind: hasPulldown && index === last ? 'pulldown-blade' : 'blade',
    },
  ]);
  const list = (kinds: readonly string[]): string =>
    sectors
      .filter(({ kind }) => kinds.includes(kind))
      .map((sector) => `${formatNumber(sector.degrees, 3)}°`)
      .join(', ');
  const order = hasPulldown ? ', the pulldown blade last' : '';
  return {
    name: 'shutter-disc',
    alternative: `Shutter disc to scale. Blades: ${list(['blade', 'pulldown-blade'])}${order}. Openings: ${list(['opening'])}.`,
    sectors,
  };
}
