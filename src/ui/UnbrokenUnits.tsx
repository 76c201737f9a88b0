import type { ComponentChildren } from 'preact';

/** A word with a slash in it: a unit such as frames/s, or a fraction. */
const WITH_SLASH = /(\S+\/\S+)/u;

/** A text in which no line ends after the slash of a unit, as some engines would have it. */
export function UnbrokenUnits({ text }: { readonly text: string }): ComponentChildren {
  // Split at a pattern with a group: every second part is what the group found.
  return text.split(WITH_SLASH).map((part, index) =>
    index % 2 === 1 ? (
      <span key={index} class="unbroken">
        {part}
      </span>
    ) : (
      part
    ),
  );
}
