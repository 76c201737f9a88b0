/** Puts a sentence about the page's address above a sheet, or at the top of the page's text. */
export function showAddressFault(sentence: string | undefined, sheet?: Element): void {
  if (sentence === undefined) return;
  const line = document.createElement('p');
  line.className = 'address-fault';
  line.setAttribute('role', 'status');
  line.textContent = sentence;
  const heading = document.querySelector('main h1');
  if (sheet !== undefined) sheet.before(line);
  else if (heading !== null) heading.after(line);
}
