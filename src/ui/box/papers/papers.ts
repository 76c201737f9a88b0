import type { Job, Reel } from '../../../worksheets/box/job.ts';
import type { BenchTexts } from '../../bench/bench-state.ts';
import { conditionReports, jobSheets, labels, quotationPaper } from './bench-papers.ts';
import { consentPaper, receipt, returnNote } from './counter-papers.ts';
import type { Paper, PaperId } from './paper.ts';

/**
 * A paper of a job, filled in.
 *
 * @param reels  the reels that get a sheet of their own, where the paper has one for each
 */
export function makePaper(id: PaperId, job: Job, reels: readonly Reel[], bench: BenchTexts): Paper {
  switch (id) {
    case 'receipt':
      return receipt(job);
    case 'consent':
      return consentPaper(job);
    case 'condition':
      return conditionReports(job, reels);
    case 'jobSheets':
      return jobSheets(job, reels, bench);
    case 'quotation':
      return quotationPaper(job, bench);
    case 'labels':
      return labels(job);
    case 'returnNote':
      return returnNote(job);
  }
}
