import { CUSTOMER_SHEET } from './customer-sheet-plan.ts';
import { JOB_SHEET } from './job-sheet-plan.ts';
import type { Plan } from './plan.ts';

/** The gathered sheets by id. */
export const PLANS: ReadonlyMap<string, Plan> = new Map(
  [JOB_SHEET, CUSTOMER_SHEET].map((plan) => [plan.id, plan]),
);
