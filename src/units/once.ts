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

/** Of each object what was made of it last, as long as what it is made with is the same. */
export function lastFor<Key extends object, With extends readonly unknown[], Value>(
  make: (key: Key, ...others: With) => Value,
): (key: Key, ...others: With) => Value {
  const made = new WeakMap<Key, { readonly others: With; readonly value: Value }>();
  return (key, ...others) => {
    const known = made.get(key);
    if (known?.others.every((other, i) => Object.is(other, others[i])) === true) return known.value;
    const value = make(key, ...others);
    made.set(key, { others, value });
    return value;
  };
}
