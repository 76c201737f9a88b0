import { FILE_NAMES } from './file-names.ts';
import { requireInterval } from '../../quantity/errors.ts';

/**
 * Time to make or check the checksums of files. Every byte has to be read once, so it is the slower
 * of reading and summing that counts.
 *
 * Model: bytes ÷ the smaller rate, exact when both go on side by side; where a program reads first
 * and sums afterwards, it takes longer.
 *
 * @param bytes                  bytes to check; ≥ 0
 * @param readBytesPerSecond     reading speed of the medium, bytes/s; > 0
 * @param digestBytesPerSecond   speed at which the computer sums, bytes/s; > 0
 * @returns time for one pass, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example checksumSeconds(100e9, 100e6, 500e6) // 1000
 */
export function checksumSeconds(
  bytes: number,
  readBytesPerSecond: number,
  digestBytesPerSecond: number,
): number {
  requireInterval('bytes', bytes, { minimum: 0 });
  requireInterval('readBytesPerSecond', readBytesPerSecond, { above: 0 });
  requireInterval('digestBytesPerSecond', digestBytesPerSecond, { above: 0 });
  return bytes / Math.min(readBytesPerSecond, digestBytesPerSecond);
}

/** A command line for each of the three systems in use. */
export interface SystemCommands {
  readonly linux: string;
  readonly macos: string;
  /** For PowerShell, which is on every Windows; the command prompt has no such tool. */
  readonly windows: string;
}

const LIST = FILE_NAMES.fileChecksums;

/** Every file of the folder and the folders in it, whatever its kind, except the list and hidden notes. */
const everyFile = (sum: string): string =>
  `find . -type f ! -name ${LIST} ! -name ".*" -exec ${sum} {} + > ${LIST}`;

/**
 * Commands that list a SHA-256 checksum of every file in a folder and the folders in it. All three
 * write the same list, so a list made on one system can be checked on another.
 *
 * Model: one line a file, 64 hexadecimal digits, two spaces, the name from the folder on. Names with
 * spaces are safe. Hidden files, whose names begin with a dot, are left out: the system rewrites them.
 *
 * @source common practice, no source
 */
export const CHECKSUM_COMMANDS: SystemCommands = {
  linux: everyFile('sha256sum'),
  macos: everyFile('shasum -a 256'),
  windows: `$folder = (Get-Item -Force -LiteralPath $PWD.ProviderPath).FullName.TrimEnd("\\"); $lines = Get-ChildItem -LiteralPath "$folder\\" -Recurse -File | Where-Object { $_.Name -ne "${LIST}" -and $_.Name -notlike ".*" } | ForEach-Object { (Get-FileHash -LiteralPath $_.FullName).Hash.ToLower() + "  ." + $_.FullName.Substring($folder.Length).Replace("\\", "/") }; [IO.File]::WriteAllText("$folder\\${LIST}", ($lines -join "\`n") + "\`n")`,
};

/**
 * Commands that read every file of the list again and name each one that is missing or differs. They
 * print no other line than OK lines when all is well.
 *
 * @source common practice, no source
 */
export const VERIFY_COMMANDS: SystemCommands = {
  linux: `sha256sum -c ${LIST}`,
  macos: `shasum -a 256 -c ${LIST}`,
  windows: `Get-Content -Encoding UTF8 -LiteralPath ${LIST} | ForEach-Object { $sum, $name = $_ -split "  ", 2; if ((Test-Path -LiteralPath $name) -and (Get-FileHash -LiteralPath $name).Hash -eq $sum) { "\${name}: OK" } else { "\${name}: FAILED" } }`,
};
