import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** Longer than the pause between two keys, shorter than a wait. */
const REST_MILLISECONDS = 700;

/**
 * A text for screen readers that is spoken when it has stood for a moment, so that typing is not
 * talked over. What the page opened with is not spoken: it stands there to be read.
 */
export function SpokenWhenResting({ text }: { readonly text: string }): ComponentChildren {
  const opening = useRef(text);
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => {
      setSpoken((before) => (before === '' && text === opening.current ? '' : text));
    }, REST_MILLISECONDS);
    return () => {
      clearTimeout(timer);
    };
  }, [text]);
  return (
    <span class="visually-hidden" role="status">
      {spoken}
    </span>
  );
}
