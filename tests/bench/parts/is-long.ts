/**
 * The test command measures just long enough to show each figure; `npm run bench -- --long` takes the many
 * rounds and long clips by which figures are compared.
 */
export const isLong = process.argv.includes('--long');
