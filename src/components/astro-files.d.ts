// For tools that read TypeScript alone; `astro check` looks into the files themselves.
declare module '*.astro' {
  const component: (...args: never[]) => unknown;
  export default component;
}
