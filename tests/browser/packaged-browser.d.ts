// The package is optional and may be absent, so what is used of it is declared here.
declare module '@sparticuz/chromium' {
  const chromium: { executablePath(): Promise<string> };
  export default chromium;
}
