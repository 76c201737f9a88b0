// Colour scheme, kept in localStorage under "scheme" as "light" or "dark"; anything else means that
// the system decides. Runs before first paint, so that a dark room never sees a white flash.
(() => {
  const order = ['auto', 'light', 'dark'];
  const names = { auto: 'Auto', light: 'Light', dark: 'Dark' };
  const read = () => {
    try {
      const stored = localStorage.getItem('scheme');
      return order.includes(stored) ? stored : 'auto';
    } catch {
      return 'auto';
    }
  };
  let scheme = read();
  const apply = () => {
    if (scheme === 'auto') delete document.documentElement.dataset.scheme;
    else document.documentElement.dataset.scheme = scheme;
  };
  apply();
  addEventListener('DOMContentLoaded', () => {
    const button = document.querySelector('[data-scheme-switch]');
    const name = button?.querySelector('[data-scheme-name]');
    if (!button || !name) return;
    button.hidden = false;
    name.textContent = names[scheme];
    button.addEventListener('click', () => {
      scheme = order[(order.indexOf(scheme) + 1) % order.length];
      name.textContent = names[scheme];
      apply();
      try {
        localStorage.setItem('scheme', scheme);
      } catch {
        // A blocked store only means that the choice lasts for this page.
      }
    });
  });
})();
