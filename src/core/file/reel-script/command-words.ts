/**
 * The words of a command line of this book: parts between spaces, those in double quotes as one. The
 * book's commands use no other quoting.
 *
 * @param line  one command line
 * @returns the words, without their quotes
 * @throws {Error} for a line with signs that a shell would not take literally
 * @example commandWords('ffmpeg -i "my film.mkv" -an out.mkv') // ['ffmpeg', '-i', 'my film.mkv', '-an', 'out.mkv']
 */
export function commandWords(line: string): readonly string[] {
  const words = line.match(/"[^"$`\\]*"|[^\s"'$`\\|<>;&*?]+/gu) ?? [];
  if (words.join(' ') !== line) throw new Error(`not a plain command: ${line}`);
  return words.map((word) => (word.startsWith('"') ? word.slice(1, -1) : word));
}
