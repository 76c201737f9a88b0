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
  /** Words before a unit such as frames/s that a line ends in the middle of. */
  const brokenUnits = (): readonly string[] => {
    const broken: string[] = [];
    const texts = page.document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
      const words = text.textContent ?? '';
      for (const { 0: unit, index } of words.matchAll(/frames\/s|mg\/m³|lp\/mm|rev\/min|MB\/s/gu)) {
        const range = page.document.createRange();
        range.setStart(text, index);
        range.setEnd(text, index + unit.length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) broken.push(words.slice(Math.max(0, index - 30), index + unit.length));
      }
    }
    return broken;
  };
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
    faults.push(...brokenUnits().map((words) => `a line ends inside the unit of “${words}”`));
    if (root.scrollWidth > width) faults.push(`${root.scrollWidth} px wide in ${width}`);
  }
  const foreign = page.performance
    .getEntriesByType('resource')
    .map(({ name }) => name)
    .filter((name) => !name.startsWith(location.origin) && !/^(?:blob|data):/u.test(name))
    .map((name) => `outside: ${name}`);
  return [...faults, ...(page.heardFaults ?? ['nothing listened']), ...foreign];
}
