// What the tests noticed in the last mutation run that was kept (npm run mutate -- --keep).
import { existsSync, readFileSync } from 'node:fs';
import { LAST_RUN, readable, type LastRun } from '../mutation/last-run.ts';

console.log(
  existsSync(LAST_RUN)
    ? readable(JSON.parse(readFileSync(LAST_RUN, 'utf8')) as LastRun)
    : 'no run was kept yet: npm run mutate -- --keep',
);
