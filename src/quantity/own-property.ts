/**
 * What an object itself holds under a key. A key that comes from a text, such as `constructor` or
 * `__proto__` in a link, must not find what every object inherits.
 *
 * @returns the value, or undefined where the object has no such key of its own
 */
export function ownProperty<Value>(
  record: Readonly<Record<string, Value>>,
  key: string,
): Value | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
