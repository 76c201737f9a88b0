import { describe, it } from 'vitest';
import { expectApproved } from '../tools/approved-text.ts';
import { constantLines, type Modules } from '../tools/constant-lines.ts';

// Every table, limit and word that the core gives away, as a person read it: a changed line must be meant
// (npm run approve writes the file again). Sources of the numbers stand in the code beside them.

const modules = import.meta.glob<Modules[string]>(
  ['../../src/core/**/*.ts', '../../src/quantity/*.ts'],
  { eager: true },
);

describe('the constants of the core', () => {
  it('are as they were read and approved', () => {
    expectApproved('tests/core/approved/constants.txt', constantLines(modules).join('\n'));
  });
});
