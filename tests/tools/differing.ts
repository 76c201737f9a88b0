/**
 * Where numbers differ from those that are wanted by as much as is allowed or more, in words: one check for
 * thousands of numbers, because a check for each takes longer than all the rest of a test.
 *
 * @param most what every number may be off by
 * @param mostShare what it may be off by further, as a share of the number wanted
 */
export function differing(
  found: ArrayLike<number>,
  wanted: ArrayLike<number>,
  most: number,
  mostShare = 0,
): readonly string[] {
  const faults: string[] = [];
  if (found.length !== wanted.length) faults.push(`${found.length} for ${wanted.length} numbers`);
  for (let at = 0; at < wanted.length; at += 1) {
    const off = Math.abs(found[at]! - wanted[at]!);
    // A number that is none differs too.
    if (!(off < most + mostShare * Math.abs(wanted[at]!))) {
      faults.push(`number ${at}: ${found[at]!} for ${wanted[at]!}`);
    }
  }
  return faults;
}
