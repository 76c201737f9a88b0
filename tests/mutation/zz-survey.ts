import { survey } from './survey.ts';
await survey((l) => console.log(l));
process.exit(0);
