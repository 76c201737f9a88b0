/**
 * Runs inside the blank page of the listening site: opens an address in a frame, brings every form of
 * it to life, scrolls through it, and gives what is wrong at the width of a desk and of a phone. A
 * frame, because the windows of some engines cannot be as narrow as a phone.
 */
export async function lookAtPage(address: string): Promise<readonly string[]> {
  const pause = (milliseconds: number): Promise<void> =>
    new Promise((resolve) => {
      setTimeout(resolve, milliseconds);
    });
  document.querySelector('iframe')?.remove();
  const frame = document.createElement('iframe');
  frame.style.cssText = 'width: 1280px; height: 800px; border: 0';
  frame.src = address;
  document.body.append(frame);
  await new Promise((resolve) => {
    frame.addEventListener('load', resolve, { once: true });
  });
  const page = frame.contentWindow as (Window & { heardFaults?: string[] }) | null;
  const root = frame.contentDocument?.documentElement;
  if (page === null || root === undefined) return ['no page came'];

  const faults: string[] = [];
  const forms = [...root.querySelectorAll<HTMLElement>('worksheet-form, practice-sheet')];
  for (const form of forms) form.dispatchEvent(new Event('focusin', { bubbles: true }));
  for (let waited = 0; forms.some(({ dataset }) => dataset['ready'] !== 'true'); waited += 20) {
    if (waited > 20_000) {
      faults.push('a form does not come to life');
      break;
    }
    await pause(20);
  }
  for (const details of root.querySelectorAll('details')) details.open = true;
  for (const width of [1280, 390]) {
    frame.style.width = `${width}px`;
    page.scrollTo(0, root.scrollHeight);
    await pause(30);
    if (root.scrollWidth > width) faults.push(`${root.scrollWidth} px wide in ${width}`);
  }
  const foreign = page.performance
    .getEntriesByType('resource')
    .map(({ name }) => name)
    .filter((name) => !name.startsWith(location.origin) && !/^(?:blob|data):/u.test(name))
    .map((name) => `outside: ${name}`);
  return [...faults, ...(page.heardFaults ?? ['nothing listened']), ...foreign];
}
