/** Prints one part of the page alone; the style sheet hides the others while `data-printing` is set. */
export function printOnly(part: 'record' | 'questions' | 'answers' | 'shown'): void {
  const page = document.documentElement;
  page.dataset['printing'] = part;
  addEventListener(
    'afterprint',
    () => {
      delete page.dataset['printing'];
    },
    { once: true },
  );
  print();
}
