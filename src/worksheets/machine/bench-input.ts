import { BENCH_TABLE, type StoredField } from './bench-table.ts';

/**
 * The input of a worksheet that opens with a field of the bench: the field's own reading, label, range
 * and help, which the sheet may put its own over. The site's build writes the field in place of the call,
 * so that a page is not sent the whole table; the name is therefore written out in the call.
 */
export function benchInput<Field extends StoredField>(
  field: Field,
): (typeof BENCH_TABLE)[Field]['field'] & { readonly bench: Field } {
  return { ...BENCH_TABLE[field].field, bench: field };
}
