// Starts the mixed round when its button is pressed.
for (const round of document.querySelectorAll<HTMLElement>('mixed-practice')) {
  const button = round.querySelector('button');
  if (button === null) continue;
  button.hidden = false;
  button.addEventListener(
    'click',
    () => {
      void import('./start-mixed-practice.tsx').then(({ startMixedPractice }) =>
        startMixedPractice(round),
      );
    },
    { once: true },
  );
}
