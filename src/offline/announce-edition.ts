import { sitePath } from '../ui/islands/site-path.ts';
import { safetySentence, type EditionNews } from './edition-news.ts';

/** What the reader pressed: the page to show once the new edition is in charge. */
let destination: string | undefined;

/**
 * Shows the line that a newer edition is ready, and what it corrects for safety; it stays until the
 * reader presses.
 *
 * @param news what the newer edition corrects
 * @param takeOver asks the waiting edition to take over; left out when it already has
 */
export function announceEdition(news: EditionNews, takeOver?: () => void): void {
  document.querySelector('.edition')?.remove();
  const line = document.createElement('p');
  line.className = 'edition';
  const isOfSafety = news.safetyPoints > 0;
  line.setAttribute('role', isOfSafety ? 'alert' : 'status');
  const press = (address: string): void => {
    destination = address;
    if (takeOver === undefined) goTo(address);
    else takeOver();
  };
  document.body.append(line);
  // Filled after it stands in the page, so that screen readers announce it.
  line.append('A newer edition is ready. ');
  if (isOfSafety) line.append(linkToSafety(news, press), ' ');
  line.append(reloadButton(press));
}

/**
 * Goes where the reader asked, once the new edition is in charge.
 *
 * @returns false when the reader has not asked for anything
 */
export function followReader(): boolean {
  if (destination === undefined) return false;
  goTo(destination);
  return true;
}

/** The list of corrections is a page of the new edition, so the new edition must be in charge first. */
function linkToSafety(news: EditionNews, press: (address: string) => void): HTMLElement {
  const sentence = document.createElement('strong');
  const link = document.createElement('a');
  link.href = sitePath(news.href);
  link.textContent = safetySentence(news);
  link.addEventListener('click', (event) => {
    event.preventDefault();
    press(link.href);
  });
  sentence.append(link, '.');
  return sentence;
}

function reloadButton(press: (address: string) => void): HTMLElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button';
  button.textContent = 'Reload';
  button.addEventListener('click', () => {
    press('');
  });
  return button;
}

/** Loads a page anew; an empty address is the open page. */
function goTo(address: string): void {
  const target = new URL(address, location.href);
  const isSamePage = target.pathname === location.pathname && target.search === location.search;
  if (address !== '') location.assign(address);
  // Within one page an address with an anchor scrolls and loads nothing.
  if (address === '' || isSamePage) location.reload();
}
