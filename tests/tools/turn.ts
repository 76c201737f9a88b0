import { execFileSync } from 'node:child_process';

/**
 * Cases that ask the same of one more file, page or machine take turns: a run asks some of them, and which
 * ones follows from the commit. So a run can be repeated, and over the commits every case has its turn.
 * `TURN=5 npm test` asks what another run asked, which its output names.
 */
function turnOfCommit(): number {
  try {
    const commit = execFileSync('git', ['rev-parse', 'HEAD'], {
      cwd: import.meta.dirname,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return Number.parseInt(commit.slice(0, 6), 16) % 60;
  } catch {
    return 0;
  }
}

const chosen = Number(process.env['TURN'] ?? Number.NaN);

/** The turn of this run, 0 to 59: a number that 2, 3, 4, 5 and 6 turns divide alike. */
export const turn: number =
  Number.isSafeInteger(chosen) && chosen >= 0 ? chosen % 60 : turnOfCommit();

// Workers take the turn of the process that began them.
process.env['TURN'] = String(turn);

/** Whether a case of a list is asked in this run, where one of so many is. */
export function isInTurn(index: number, turns: number): boolean {
  return (index + turn) % turns === 0;
}
