import { reelFileName, type ReelFileKind } from '../../core/job/reel-file-name.ts';
import type { Job, Reel } from './job.ts';

/** Name of a file of a reel, without its ending, from its number, date and title. */
export function reelFile(job: Job, reel: Reel, kind: ReelFileKind): string {
  const { number = '', year = '', title = '', boxWords = '' } = reel.texts;
  return reelFileName({
    job: job.texts.number ?? '',
    reel: number,
    date: year,
    title: title === '' ? boxWords : title,
    take: 1,
    kind,
  });
}
