/** A mistake of a chapter, with the file and line where it stands. */
export class ChapterFault extends Error {
  override readonly name = 'ChapterFault';
}

/** What Astro makes of a component: called with the request, the props and the slots. */
type Component = (result: never, props: never, slots: never) => unknown;

function telling(place: unknown, name: string, error: unknown): unknown {
  if (error instanceof ChapterFault || typeof place !== 'string') return error;
  const reason = error instanceof Error ? error.message : String(error);
  return new ChapterFault(`${place}: <${name}>: ${reason}`, { cause: error });
}

/**
 * The component, which says of whatever goes wrong in it at which line of which chapter it stands. The
 * build writes that line into every component of a chapter as `chapterPlace`.
 */
export function inChapter<One extends Component>(name: string, component: One): One {
  const told = (
    result: never,
    props: Readonly<Record<string, unknown>> | undefined,
    slots: never,
  ): unknown => {
    const { chapterPlace, ...own } = props ?? {};
    const fail = (error: unknown): never => {
      throw telling(chapterPlace, name, error);
    };
    try {
      const made = component(result, own as never, slots);
      return made instanceof Promise ? made.catch(fail) : made;
    } catch (error) {
      return fail(error);
    }
  };
  // What marks it as a component of Astro, and its id, go with it.
  return Object.assign(told, component) as unknown as One;
}
