let isAsked = false;

/**
 * Shows the quiet line that a newer edition is ready; it stays until the reader reloads.
 *
 * @param takeOver asks the waiting edition to take over; left out when it already has
 */
export function announceEdition(takeOver?: () => void): void {
  if (isAsked) {
    location.reload();
    return;
  }
  document.querySelector('.edition')?.remove();
  const line = document.createElement('p');
  line.className = 'edition';
  line.setAttribute('role', 'status');
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button';
  button.textContent = 'Reload';
  button.addEventListener('click', () => {
    isAsked = true;
    if (takeOver === undefined) location.reload();
    else takeOver();
  });
  document.body.append(line);
  // Filled after it stands in the page, so that screen readers announce it.
  line.append('A newer edition is ready. ', button);
}
