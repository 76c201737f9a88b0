/**
 * Text with a small first letter, to go on within a sentence. Names of gauges keep their capital.
 *
 * @param text  a phrase that starts with a capital letter
 * @returns the same phrase, first letter small
 * @example withSmallInitial('Splices not looked at') // 'splices not looked at'
 */
export function withSmallInitial(text: string): string {
  if (/^(?:Standard|Super) \d/u.test(text)) return text;
  return text.charAt(0).toLowerCase() + text.slice(1);
}
