/** Calls `wake` once for each element, when it is less than a thumb's scroll from the screen. */
export function whenNearScreen(
  elements: Iterable<HTMLElement>,
  wake: (element: HTMLElement) => Promise<void>,
): void {
  const observer = new IntersectionObserver(
    (entries) => {
      for (const entry of entries) {
        if (!entry.isIntersecting) continue;
        observer.unobserve(entry.target);
        void wake(entry.target as HTMLElement).catch(() => undefined);
      }
    },
    { rootMargin: '300px' },
  );
  for (const element of elements) observer.observe(element);
}
