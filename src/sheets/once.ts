/** Work that is done once a key. */

/** The same for objects, of which nothing is kept once they are gone: what is asked of one request by many layouts. */
export function onceFor<Key extends object, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const known = made.get(key);
    if (known !== undefined) return known.value;
    const value = make(key);
    made.set(key, { value });
    return value;
  };
}

/** The function, which remembers what it gave. */
export function once<Key, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new Map<Key, Value>();
  return (key) => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const value = make(key);
    made.set(key, value);
    return value;
  };
}
