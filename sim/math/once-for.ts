/** A function whose value is computed once for each object, and kept as long as the object. */
export function onceFor<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let found = known.get(key);
    if (!found) {
      found = { value: make(key) };
      known.set(key, found);
    }
    return found.value;
  };
}
